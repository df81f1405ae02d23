// Electron security checklist, item 18 (no file://) and 7 (content policy): what app:// serves and what it refuses.
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CONTENT_POLICY, serve } from '../../main/page-protocol';

const folder = mkdtempSync(join(tmpdir(), 'jarline-protocol-'));
const page = join(folder, 'page');
const photographs = join(folder, 'photographs');
const hash = 'a'.repeat(64);
mkdirSync(join(page, 'assets'), { recursive: true });
mkdirSync(photographs);
writeFileSync(join(folder, 'secret.js'), 'secret');
writeFileSync(join(page, 'index.html'), '<!doctype html>');
writeFileSync(join(page, 'assets/main.js'), 'export {}');
writeFileSync(join(photographs, `${hash}.jpg`), 'jpeg');
symlinkSync(join(folder, 'secret.js'), join(page, 'assets/link.js'));
symlinkSync(folder, join(page, 'out'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const get = (url: string, method = 'GET'): Promise<Response> => serve({ url, method }, page, photographs);

describe('item 18: app:// serves the page and photographs, nothing else', () => {
  it.each([
    ['app://jarline/index.html', 'text/html; charset=utf-8'],
    ['app://jarline/assets/main.js', 'text/javascript; charset=utf-8'],
    [`app://jarline/photograph/${hash}.jpg`, 'image/jpeg'],
  ])('serves %s', async (url, type) => {
    const reply = await get(url);
    expect(reply.status).toBe(200);
    expect(reply.headers.get('Content-Type')).toBe(type);
  });

  it.each([
    ['app://jarline/../secret.js', 'a step up'],
    ['app://jarline/assets/../../secret.js', 'steps up inside'],
    ['app://jarline/%2e%2e/secret.js', 'an encoded step up'],
    ['app://jarline/%2E%2E%2Fsecret.js', 'an encoded slash'],
    ['app://jarline/assets%2fmain.js', 'an encoded slash, within'],
    ['app://jarline/assets%5cmain.js', 'an encoded backslash'],
    ['app://jarline/..\\secret.js', 'a backslash'],
    ['app://jarline//etc/passwd', 'an absolute path'],
    ['app://jarline/C:/secret.js', 'a drive'],
    ['app://jarline/assets/main.js%00.html', 'a null'],
    ['app://jarline/.hidden.js', 'a hidden file'],
    ['app://jarline/', 'a folder'],
    ['app://jarline/jarline.sqlite', 'a kind the page does not use'],
    ['app://evil/index.html', 'another host'],
    ['app://jarline.evil/index.html', 'a host that begins alike'],
    ['app://user@jarline/index.html', 'credentials'],
    ['file:///etc/passwd', 'file://'],
    ['https://jarline/index.html', 'https'],
    [`app://jarline/photograph/../${hash}.jpg`, 'a step up from photographs'],
    ['app://jarline/photograph/short.jpg', 'a photograph not named by its hash'],
  ])('refuses %s (%s)', async (url) => {
    expect((await get(url)).ok).toBe(false);
  });

  it.each(['app://jarline/assets/link.js', 'app://jarline/out/secret.js'])(
    'follows no link out: %s',
    async (url) => {
      expect((await get(url)).status).toBe(404);
    },
  );

  it('serves no photograph while no ledger is open', async () => {
    expect(
      (await serve({ url: `app://jarline/photograph/${hash}.jpg`, method: 'GET' }, page, null)).status,
    ).toBe(404);
  });

  it('answers GET only', async () => {
    expect((await get('app://jarline/index.html', 'POST')).status).toBe(405);
  });
});

it('item 7: every reply, also a refusal, carries the content policy', async () => {
  expect(CONTENT_POLICY).toBe(
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'",
  );
  for (const url of ['app://jarline/index.html', 'app://jarline/none.js', 'file:///etc/passwd']) {
    expect((await get(url)).headers.get('Content-Security-Policy')).toBe(CONTENT_POLICY);
  }
});
