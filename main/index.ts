// The program's start: one instance, one window, one open ledger.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import {
  BrowserWindow,
  Notification,
  app,
  dialog,
  nativeTheme,
  powerMonitor,
  protocol,
  session,
  shell,
} from 'electron';
import type { MenuId } from '../core/call-names';
import type { AppState, Reply, Result } from '../core/contract';
import { CameraPass } from './camera-pass';
import { type DayWatch, watchDay } from './day-watch';
import { Handed, handedBytes, handedFile } from './handed-files';
import { listen, tell } from './ipc';
import { machineClock } from './ledger/clock';
import { realFile } from './ledger/place';
import { photographFolder } from './ledger/worker-protocol';
import { localeOfSystem } from './locale';
import { keepMemory, readMemory } from './memory';
import { setMenu } from './menu';
import { type Choosing, type Doors, OpenLedger } from './open-ledger';
import { noticer } from './notices';
import { type Options, readOptions } from './options';
import { PAGE, SCHEME, serve } from './page-protocol';
import { closeApp, closeSession } from './walls';
import { windowOptions } from './page-window';
import { onPaper, pdfOf } from './print-page';

const built = import.meta.dirname;
/** Pinned: another name here would look to a keeper like all jars gone. */
const DATA_FOLDER = 'Jarline';

const options = optionsOrExit();
app.setPath('userData', options.userData ?? join(app.getPath('appData'), DATA_FOLDER));
closeApp(app);
protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true } }]);

interface Notices {
  readonly look: () => Promise<void>;
  readonly stop: () => void;
}
const NOTICE_EVERY_MS = 60_000;
const NO_NOTICES: Notices = { look: () => Promise.resolve(), stop: () => undefined };

if (app.requestSingleInstanceLock()) begin();
else {
  process.stderr.write('jarline: it is open already; its window has been brought to the front.\n');
  app.exit(0);
}

function optionsOrExit(): Options {
  try {
    return readOptions(process.argv.slice(1));
  } catch (error) {
    process.stderr.write(`jarline: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
}

/** Asked at each opening: a test puts the clock of a running program elsewhere. */
function clockNow(): string | null {
  return readOptions(process.argv.slice(1)).now;
}

function begin(): void {
  const memoryFile = join(app.getPath('userData'), 'jarline.json');
  let memory = readMemory(memoryFile);
  let window: BrowserWindow | null = null;
  const page = (): Electron.WebContents | null => window?.webContents ?? null;
  nativeTheme.themeSource = memory.theme;

  const raise = (): void => bringToFront(window);
  const handed = new Handed((file) => {
    raise();
    if (file.kind === 'ledger') chooseFromMenu('ledger.open');
    else tell(page(), 'handed', handedBytes(file.path));
  });
  const remember = (change: Partial<typeof memory>): void => {
    memory = { ...memory, ...change };
    keepOrSay(memoryFile, memory);
  };

  const camera = new CameraPass();
  const defaultFile = join(app.getPath('userData'), 'jarline.sqlite');
  const last = [memory.lastLedger, defaultFile].find((file) => file !== null && existsSync(file)) ?? null;
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  const ledger = new OpenLedger(
    {
      workerFile: new URL('worker.js', import.meta.url),
      version: app.getVersion(),
      locale: () =>
        localeOfSystem(process.platform, process.env, () => app.getPreferredSystemLanguages()[0] ?? ''),
      timeZone,
      now: clockNow,
      defaultFile,
      doors: doorsWith(camera, handed),
      changed: () => {
        tell(page(), 'changed', {});
        void notices.look();
      },
      remember: (file) => remember({ lastLedger: file }),
    },
    options.ledger ?? (options.demo ? null : last),
  );
  // A clock that stands still is a test's or a picture's: there nothing happens by itself.
  const notices =
    options.now === null
      ? watchDue(
          ledger,
          () => memory.told,
          (told) => remember({ told }),
          raise,
        )
      : NO_NOTICES;
  const demo = options.demo ? ledger.call('ledger.openDemo', {}) : Promise.resolve();
  // A clock that stands still has no midnight.
  const day = options.now === null ? watchToday(timeZone, () => tell(page(), 'changed', {})) : null;

  const setTheme = (theme: typeof memory.theme): void => {
    if (theme === memory.theme) return;
    nativeTheme.themeSource = theme;
    remember({ theme });
    showMenu();
  };
  /** The keeper's own ledger says which theme; the demo and the three doors keep what was chosen last. */
  const followTheme = (_name: string, result: Result<unknown>): void => {
    const theme = themeOf(result);
    if (theme !== null) setTheme(theme);
  };
  const chooseFromMenu = (id: MenuId): void => {
    const theme = /^theme\.(system|light|dark)$/.exec(id)?.[1] as typeof memory.theme | undefined;
    if (theme) setTheme(theme);
    tell(page(), 'menu', { id });
  };
  const showMenu = (): void => setMenu(chooseFromMenu, memory.theme, !app.isPackaged);

  // Chained, not awaited at the top: that would keep an ES module from ever getting ready.
  void app.whenReady().then(async () => {
    closeSession(session.defaultSession, camera);
    protocol.handle(SCHEME, (request) =>
      serve(
        request,
        join(built, '../renderer'),
        ledger.file === null ? null : photographFolder(realFile(ledger.file)),
      ),
    );
    listen(ledger, page, followTheme);
    showMenu();
    window = new BrowserWindow(
      windowOptions(nativeTheme.shouldUseDarkColors, join(built, '../preload/preload.cjs')),
    );
    window.once('ready-to-show', () => window?.show());
    window.on('closed', () => (window = null));
    await demo; // so that the page's first question already finds it
    await window.loadURL(PAGE);
    handed.pageIsUp();
    if (options.smoke) await reportAndQuit(ledger);
  });

  hearOfFiles(handed, raise);
  app.on('window-all-closed', () => app.quit());
  for (const watch of [day, notices]) app.on('will-quit', () => watch?.stop());
  closeBeforeQuit(ledger);
}

/** Hears of files at the start, from a second start (of which nothing else counts: the window is this one) and from the system. */
function hearOfFiles(handed: Handed, raise: () => void): void {
  const take = (words: readonly string[], folder: string): void => {
    const file = handedFile(words, folder, app.getAppPath());
    if (file !== null) handed.take(file);
  };
  take(options.words, process.cwd());
  app.on('second-instance', (_event, args, folder) => {
    raise();
    take(readOptions(args.slice(1)).words, folder);
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    take([path], '/');
  });
}

/** The theme that a keeper's own ledger asks for, where a reply tells of one. */
function themeOf(result: Result<unknown>): AppState['preferences']['theme'] | null {
  const state = result.ok ? (result.value as Partial<AppState> | null) : null;
  return state?.ledger && !state.ledger.demo && state.preferences ? state.preferences.theme : null;
}

/** Not worth refusing what the keeper asked for: the next start then begins where this one did. */
function keepOrSay(file: string, memory: Parameters<typeof keepMemory>[1]): void {
  try {
    keepMemory(file, memory);
  } catch (error) {
    process.stderr.write(`jarline: ${file} could not be written: ${String(error)}\n`);
  }
}

function bringToFront(window: BrowserWindow | null): void {
  if (window?.isMinimized()) window.restore();
  window?.focus();
}

/** Tells the system of what falls due while the program runs, and at its start of what fell due before. No network. */
function watchDue(
  ledger: OpenLedger,
  told: () => readonly string[],
  keep: (told: string[]) => void,
  raise: () => void,
): Notices {
  const look = noticer({
    async today() {
      const state = (await ledger.call('app.state', {})) as Result<AppState>;
      if (!state.ok || state.value.ledger === null || state.value.ledger.demo || !Notification.isSupported())
        return null;
      const list = (await ledger.call('today.list', {})) as Result<Reply<'today.list'>>;
      return list.ok ? list.value.items : null;
    },
    told,
    keep: (ids) => keep([...ids]),
    show({ title, body }) {
      const notification = new Notification({ title, body });
      notification.on('click', raise);
      notification.show();
    },
  });
  const timer = setInterval(() => void look(), NOTICE_EVERY_MS);
  void app.whenReady().then(() => {
    powerMonitor.on('resume', () => void look());
    return look();
  });
  return { look, stop: () => clearInterval(timer) };
}

/** Tells of each new day, also when the machine wakes up on one. */
function watchToday(timeZone: string, changed: () => void): DayWatch {
  const watch = watchDay(machineClock(timeZone).today, changed, (ms, work) => {
    const timer = setInterval(work, ms);
    return () => clearInterval(timer);
  });
  void app.whenReady().then(() => {
    powerMonitor.on('resume', watch.look);
    powerMonitor.on('unlock-screen', watch.look);
  });
  return watch;
}

/** Quitting waits until the ledger's file is closed in order. */
function closeBeforeQuit(ledger: OpenLedger): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void ledger.close().finally(() => {
      closed = true;
      app.quit();
    });
  });
}

async function chooseFile(what: Choosing, startAt: string): Promise<string | null> {
  const ledgers = [{ name: 'Jarline ledgers', extensions: ['jarline', 'sqlite'] }];
  if (what === 'create' || what === 'save') {
    const filters = what === 'create' ? ledgers : [];
    const { canceled, filePath } = await dialog.showSaveDialog({ defaultPath: startAt, filters });
    return canceled || filePath === '' ? null : filePath;
  }
  const filters = what === 'open' ? ledgers : [{ name: 'Archives', extensions: ['zip'] }];
  const chosen = await dialog.showOpenDialog({ defaultPath: startAt, filters, properties: ['openFile'] });
  return chosen.canceled ? null : (chosen.filePaths[0] ?? null);
}

function doorsWith(camera: CameraPass, handed: Handed): Doors {
  return {
    // A ledger that the system has handed over has been chosen already.
    chooseFile: async (what, startAt) =>
      (what === 'open' ? handed.ledger() : null) ?? chooseFile(what, startAt),
    showFolder: (file) => shell.showItemInFolder(file),
    pdfOf,
    onPaper,
    askCamera: () => askCamera(camera),
  };
}

/** Asks before each single use of the camera; a yes is good for the request that follows. */
async function askCamera(camera: CameraPass): Promise<boolean> {
  const { response } = await dialog.showMessageBox({
    type: 'question',
    message: 'Use the camera for one photograph?',
    detail: 'It is switched off once the photograph is taken. You are asked again each time.',
    buttons: ['Use it once', 'No'],
    defaultId: 0,
    cancelId: 1,
  });
  if (response === 0) camera.give();
  return response === 0;
}

/** For `--smoke`: the page is up; does the ledger answer? */
async function reportAndQuit(ledger: OpenLedger): Promise<void> {
  const state = await ledger.call('app.state', {});
  process.stdout.write(state.ok ? 'ok\n' : `failed: ${state.error.code}\n`);
  process.exitCode = state.ok ? 0 : 1;
  app.quit();
}
