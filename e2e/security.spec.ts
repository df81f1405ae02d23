// The Electron security checklist, held against the real window. Items that need no window are in tests/security.
// Item 19 (fuses) is held against the package: electron-builder.yml sets them, main/launch/package.mjs reads them back.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CALLS } from '../core/call-names';
import { CONTENT_POLICY, PAGE } from '../main/page-protocol';
import { WENT_OUT } from './network';
import { expect, test } from './window';

// In one window, which is to be at the three doors.
test.describe.configure({ mode: 'default' });

const OUTSIDE = 'https://example.invalid/';

// What a test here asks for on purpose, and the walls refuse.
test.beforeEach(({ program }) => program.forgive(new RegExp(`${WENT_OUT}: ${OUTSIDE}`)));

test('whatever the main process would send is counted', async ({ app, program }) => {
  await app.evaluate(() => {
    const { connect } = process.getBuiltinModule('node:net');
    const socket = connect({
      port: 9,
      host: '127.0.0.1',
      lookup: (_name, _how, done) => done(null, '127.0.0.1', 4),
    });
    socket.on('error', () => undefined);
    socket.destroy();
  });
  await expect.poll(() => program.complaints).toEqual([`main: ${WENT_OUT}: a socket was connected`]);
  program.forgive(/a socket was connected/);
});

test('items 1, 7 and 18: the page comes from app:// with the content policy in the header', async ({
  app,
  page,
}) => {
  expect(page.url()).toBe(PAGE);
  expect(await page.evaluate(() => location.protocol)).toBe('app:');
  const policy = await app.evaluate(
    async ({ net }, url) => (await net.fetch(url)).headers.get('content-security-policy'),
    PAGE,
  );
  expect(policy).toBe(CONTENT_POLICY);
});

test('item 1: everything the page loads is its own', async ({ app, page }) => {
  // A reload that cuts the first loading short is complained of by the main process.
  await expect
    .poll(() =>
      app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.isLoading()),
    )
    .toBe(false);
  await Promise.all([
    page.waitForEvent('load'),
    app.evaluate(({ BrowserWindow, session }) => {
      const loaded: string[] = [];
      Object.assign(globalThis, { loaded });
      session.defaultSession.webRequest.onCompleted((details) => void loaded.push(details.url));
      BrowserWindow.getAllWindows()[0]?.webContents.reloadIgnoringCache();
    }),
  ]);
  const loaded = (): Promise<string[]> =>
    app.evaluate(() => (globalThis as unknown as { loaded: string[] }).loaded);
  await expect
    .poll(async () => (await loaded()).filter((url) => url.endsWith('.js')).length)
    .toBeGreaterThan(0);
  await page.evaluate(() => document.fonts.ready);
  expect((await loaded()).filter((url) => !url.startsWith('app://jarline/'))).toEqual([]);
});

test('item 2: no Node in the page', async ({ page }) => {
  const found = await page.evaluate(() =>
    ['require', 'process', 'module', 'exports', 'Buffer', 'global', '__dirname', 'ipcRenderer'].filter(
      (name) => name in globalThis,
    ),
  );
  expect(found).toEqual([]);
});

test('items 3 and 4: context isolation and sandbox hold on the other side of the wall', async ({ page }) => {
  const walls = await page.evaluate(
    () =>
      (window as unknown as { jarline: { walls: { sandboxed: boolean; contextIsolated: boolean } } }).jarline
        .walls,
  );
  expect(walls).toEqual({ sandboxed: true, contextIsolated: true });
});

test('item 3: what the page does to its own world does not reach the preload', async ({ page }) => {
  const reply = await page.evaluate(async () => {
    type Any = (this: unknown, ...given: unknown[]) => unknown;
    // The page may draw meanwhile: its own scripts get what they asked for, anyone else is refused.
    const refuse = (original: unknown): Any =>
      function (...given) {
        if ((new Error().stack ?? '').includes('app://jarline/assets/'))
          return (original as Any).apply(this, given);
        throw new Error('reached');
      };
    const { push, map } = Array.prototype;
    const { fromEntries } = Object;
    Object.assign(Array.prototype, { push: refuse(push), map: refuse(map) });
    Object.assign(Object, { fromEntries: refuse(fromEntries) });
    try {
      return await window.jarline.call['app.state']({});
    } finally {
      Object.assign(Array.prototype, { push, map }); // the test's own reply needs them
      Object.assign(Object, { fromEntries });
    }
  });
  expect(reply).toHaveProperty('ok');
});

test('item 5: permissions are refused', async ({ page, program }) => {
  program.forgive(/permission|Permission/);
  const answers = await page.evaluate(async () => ({
    notifications: await Notification.requestPermission(),
    camera: await navigator.mediaDevices.getUserMedia({ video: true }).then(
      () => 'granted',
      () => 'refused',
    ),
    place: await new Promise((done) => {
      navigator.geolocation.getCurrentPosition(
        () => done('granted'),
        () => done('refused'),
      );
    }),
  }));
  expect(answers).toEqual({ notifications: 'denied', camera: 'refused', place: 'refused' });
});

test('item 6: nothing can be fetched, from outside or from the page itself', async ({ page, program }) => {
  program.forgive(/Content Security Policy|Fetch API/);
  for (const url of [OUTSIDE, PAGE, 'file:///etc/passwd', 'http://127.0.0.1:1/']) {
    const fetched = await page.evaluate(
      (from) =>
        fetch(from).then(
          () => 'fetched',
          () => 'refused',
        ),
      url,
    );
    expect(fetched, url).toBe('refused');
  }
});

test('item 7: a script, a style and an image from outside the policy do nothing', async ({
  page,
  program,
}) => {
  program.forgive(/Content Security Policy/);
  const seen = await page.evaluate(async (outside) => {
    const violated: string[] = [];
    document.addEventListener('securitypolicyviolation', (event) => violated.push(event.effectiveDirective));
    const script = document.createElement('script');
    script.textContent = 'window.reached = true';
    const style = document.createElement('style');
    style.textContent = 'body { outline: 7px solid red }';
    const image = document.createElement('img');
    image.src = `${outside}x.png`;
    const far = document.createElement('script');
    far.src = `${outside}x.js`;
    document.head.append(script, style, far);
    document.body.append(image);
    await new Promise((done) => setTimeout(done, 300));
    const outline = getComputedStyle(document.body).outlineWidth;
    for (const element of [script, style, far, image]) element.remove();
    return { violated: violated.toSorted(), reached: 'reached' in window, outlined: outline === '7px' };
  }, OUTSIDE);
  expect(seen).toEqual({
    violated: ['img-src', 'script-src-elem', 'script-src-elem', 'style-src-elem'],
    reached: false,
    outlined: false,
  });
});

test('items 8, 9 and 10: no insecure content, no experimental or extra features', async ({ app }) => {
  const args = await app.evaluate(() => process.argv.join(' '));
  expect(args).not.toMatch(
    /enable-blink-features|enable-experimental|allow-running-insecure-content|disable-web-security/,
  );
});

test('items 11 and 12: a web view is an element like any other', async ({ app, page }) => {
  const working = await page.evaluate((outside) => {
    const view = document.createElement('webview');
    view.setAttribute('src', outside);
    document.body.append(view);
    const has = 'loadURL' in view;
    view.remove();
    return has;
  }, OUTSIDE);
  expect(working).toBe(false);
  expect(await app.evaluate(({ webContents }) => webContents.getAllWebContents().length)).toBe(1);
});

const LEAVING: Record<string, (outside: string) => void> = {
  'setting the address': (outside) => void (location.href = outside),
  'a link': (outside) => {
    const link = document.createElement('a');
    link.href = outside;
    document.body.append(link);
    link.click();
    link.remove();
  },
  'a form': (outside) => {
    const form = document.createElement('form');
    form.action = outside;
    document.body.append(form);
    form.submit();
    form.remove();
  },
  'a frame': (outside) => {
    const frame = document.createElement('iframe');
    frame.src = outside;
    document.body.append(frame);
    setTimeout(() => frame.remove(), 200);
  },
};
for (const [how, leave] of Object.entries(LEAVING)) {
  test(`item 13: the page can't be left by ${how}`, async ({ app, page, program }) => {
    program.forgive(/Content Security Policy|ERR_BLOCKED_BY_CSP|--trace-warnings/);
    await page.evaluate(leave, OUTSIDE);
    await page.waitForTimeout(400);
    expect(page.url()).toBe(PAGE);
    expect(
      await app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows().map((one) => one.webContents.getURL()),
      ),
    ).toEqual([PAGE]);
    expect(await page.evaluate(() => document.getElementById('root') !== null)).toBe(true);
  });
}

test('item 14: no new window opens', async ({ app, page }) => {
  const opened = await page.evaluate(
    (outside) => [window.open(outside), window.open('app://jarline/index.html')],
    OUTSIDE,
  );
  expect(opened).toEqual([null, null]);
  expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
});

test('item 15: a click on any kind of address hands nothing to the system', async ({
  app,
  page,
  program,
}) => {
  program.forgive(/Content Security Policy|Not allowed to load|Failed to launch/);
  await app.evaluate(({ shell }) => {
    const handed: string[] = [];
    Object.assign(globalThis, { handed });
    shell.openExternal = async (url) => void handed.push(url);
  });
  for (const url of ['file:///etc/passwd', 'mailto:a@example.invalid', 'smb://host/share', OUTSIDE]) {
    await page.evaluate((href) => {
      const link = document.createElement('a');
      link.href = href;
      link.target = '_blank';
      document.body.append(link);
      link.click();
      link.remove();
    }, url);
  }
  await page.waitForTimeout(300);
  expect(await app.evaluate(() => (globalThis as unknown as { handed: string[] }).handed)).toEqual([]);
  expect(page.url()).toBe(PAGE);
});

test('item 17: a caller that is not the page is refused', async ({ app }) => {
  // A second window with the same preload, at an address of its own: as far as an intruder could get.
  const reply = await app.evaluate(async ({ app: main, BrowserWindow }) => {
    const preload = `${main.getAppPath()}/dist/preload/preload.cjs`;
    const stranger = new BrowserWindow({
      show: false,
      webPreferences: { sandbox: true, contextIsolation: true, preload },
    });
    await stranger.loadURL('app://jarline/index.html');
    const said: unknown = await stranger.webContents.executeJavaScript(
      "window.jarline.call['app.state']({})",
    );
    const cancelled: unknown = await stranger.webContents.executeJavaScript("window.jarline.cancel('x')");
    stranger.destroy();
    return { said, cancelled };
  });
  expect(reply.said).toEqual({ ok: false, error: { code: 'forbidden', params: {} } });
  expect(reply.cancelled).toBe(false);
});

test('item 17: every request is validated', async ({ page }) => {
  const codes = await page.evaluate(async () => {
    const call = window.jarline.call as unknown as Record<
      string,
      (input: unknown, job?: unknown) => Promise<{ ok: boolean; error?: { code: string } }>
    >;
    const code = async (name: string, input: unknown, job?: unknown): Promise<string> =>
      (await call[name]?.(input, job))?.error?.code ?? 'accepted';
    return [
      await code('app.state', null),
      await code('app.state', { extra: 1 }),
      await code('jar.get', { id: 'x'.repeat(10_000_000) }),
      await code('draft.save', { key: 'k', json: 7 }),
      await code('app.state', {}, 'a-job-for-a-read'),
      await code('ledger.backup', {}, { not: 'a name' }),
    ];
  });
  expect(codes).toEqual(['invalid', 'invalid', 'invalid', 'invalid', 'forbidden', 'forbidden']);
});

test('item 17: the page names no file by its path', async ({ page, program }) => {
  const wanted = join(program.dataFolder, 'wanted.csv');
  writeFileSync(wanted, 'date,seed\n1 Mar 2026,Blue Tin\n');
  const made = join(program.dataFolder, 'made.sqlite');
  const codes = await page.evaluate(
    async ([read, make]) => {
      const call = window.jarline.call as unknown as Record<
        string,
        (input: unknown, job?: unknown) => Promise<{ ok: boolean; error?: { code: string } }>
      >;
      const asked: [string, unknown][] = [
        ['notes.preview', { file: { path: read } }],
        ['notes.bringIn', { file: { path: read } }],
        ['notes.preview', { file: { path: read, name: 'a.csv', bytes: new Uint8Array(1) } }],
        ['ledger.open', { file: make }],
        ['ledger.create', { file: make }],
        ['ledger.create', { file: [make] }],
      ];
      const found: (string | undefined)[] = [];
      for (const [name, input] of asked) found.push((await call[name]?.(input, 'a-job'))?.error?.code);
      return found;
    },
    [wanted, made],
  );
  expect(codes).toEqual(Array.from({ length: 6 }, () => 'forbidden'));
  expect(existsSync(made)).toBe(false);
});

test('item 20: the page has the calls of the contract, frozen, and no way to name a channel', async ({
  page,
}) => {
  const seen = await page.evaluate(() => {
    const bridge = window.jarline as unknown as Record<string, Record<string, unknown>>;
    const before = bridge['call']?.['app.state'];
    try {
      (bridge['call'] as Record<string, unknown>)['app.state'] = () => 'mine';
    } catch {
      // Refused loudly in strict code, silently elsewhere: what counts is that it did not change.
    }
    return {
      top: Object.keys(bridge).toSorted(),
      calls: Object.keys(bridge['call'] ?? {}).toSorted(),
      events: Object.keys(bridge['on'] ?? {}).toSorted(),
      frozen: [bridge, bridge['call'], bridge['on']].every((part) => Object.isFrozen(part)),
      same: before === bridge['call']?.['app.state'],
    };
  });
  expect(seen).toEqual({
    top: ['call', 'cancel', 'on', 'walls'],
    calls: [...CALLS].toSorted(),
    events: ['changed', 'handed', 'menu', 'progress'],
    frozen: true,
    same: true,
  });
});

test('item 20: an event brings its payload and nothing of Electron', async ({ app, page }) => {
  const heard = page.evaluate(
    () =>
      new Promise((done) => {
        (window.jarline.on.menu as (hear: (...given: unknown[]) => void) => void)((...given) =>
          done({ given, sender: JSON.stringify(given).includes('sender') }),
        );
      }),
  );
  await page.waitForTimeout(100);
  await app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('screen.family')?.click());
  expect(await heard).toEqual({ given: [{ id: 'screen.family' }], sender: false });
});
