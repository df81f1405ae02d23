// The fixture of every test of the real window: a ledger to begin with, a clock that stands still; anything the page or
// the main process complains of fails the test. The tests of a worker share one window, which is put back between them.
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { type ElectronApplication, type Page, _electron, expect, test as base } from '@playwright/test';
import { findRuntime, machineFlags } from '../main/launch/runtime.mjs';
import { PAGE } from '../main/page-protocol';
import { ownDisplay } from './displays';
import { keepMoves, LATE_MS, watchMoves, watchReads } from './late';
import { madeLedger } from './made-ledger';
import { watchNetwork } from './network';

const root = resolve(import.meta.dirname, '..');
/** Holds the program back until playwright listens: without it a window that opens early is now and then missed. */
const holdBack = join(
  dirname(createRequire(import.meta.url).resolve('playwright-core/package.json')),
  'lib/server/electron/loader.js',
);
/** Said by Chromium on machines without a desktop, and by the inspector that the tests work through. */
const HARMLESS = [
  /ERROR:bus\.cc|Failed to connect to the bus/,
  /^Debugger (listening|attached|ending)|^For help, see: https:\/\/nodejs\.org/,
  /^DevTools listening/,
  /^Waiting for the debugger/,
  // How long a read took is told, and is no fault.
  /^jarline: slow: /,
  // A busy machine: the page's first frame asks for input handling before the widget's host is bound.
  /ERROR:interface_endpoint_client.*blink\.mojom\.Widget(Host)?\b/,
  // Also of a window that is gone while its last frame is on its way: pages that were printed.
  /ERROR:(x11_software_bitmap_presenter|viz_main_impl|gpu_|gl_|command_buffer|angle_|vaapi|object_proxy|atom_cache|gl_surface)/,
];

export interface Settings {
  /** What to begin with: no ledger yet, an empty one, the invented one, or a copy of a ledger file. */
  seed: 'none' | 'empty' | 'demo' | (string & {});
  now: string;
  /** Content size of the window in CSS pixels. */
  size: { width: number; height: number };
  /** What the system says of its language and region. */
  systemLocale: string;
}

/** Of the page's own address, with the same calls, and nothing that happens by itself: its styles, to be read. */
const STILL = (): string => {
  const [styles = ''] = readdirSync(join(root, 'dist/renderer/assets')).filter((name) =>
    name.endsWith('.css'),
  );
  return new URL(`assets/${styles}`, PAGE).href;
};

/** Seeds that are no file to be copied. */
const WITHOUT_FILE: readonly string[] = ['none', 'empty', 'demo'];
const isFile = (seed: Settings['seed']): boolean => !WITHOUT_FILE.includes(seed);

/** A ledger file and when it was last written to, its log too: the same text means that nothing was kept since. */
const lastWritten = (file: string): string =>
  JSON.stringify(
    [file, `${file}-wal`].map((one) => {
      const { mtimeMs = null, size = null } = statSync(one, { throwIfNoEntry: false }) ?? {};
      return [one, mtimeMs, size];
    }),
  );

type ColorScheme = 'light' | 'dark' | 'no-preference' | null;
/** As a program starts, whatever the tests before have asked the page to take for granted. */
const AT_START = { media: null, reducedMotion: 'no-preference', forcedColors: 'none' } as const;

/** The running program: start it again, forgive what a test provokes on purpose. */
export class Program {
  app!: ElectronApplication;
  page!: Page;
  readonly dataFolder = mkdtempSync(join(tmpdir(), 'jarline-e2e-'));
  /** Where the open ledger lies, and its photographs and backups beside it. */
  ledgerFolder = this.dataFolder;
  readonly complaints: string[] = [];
  /** Main stderr not yet ended by a line break. */
  #rest = '';
  #forgiven: RegExp[] = [...HARMLESS];
  #settings: Settings;
  #colorScheme: ColorScheme;
  /** Ledgers made for tests after the first: each in a folder of its own. */
  #ledgers = 0;
  /** What the ledger held when it was handed to a test. */
  #handedOver = '';

  constructor(settings: Settings, colorScheme: ColorScheme) {
    this.#settings = settings;
    this.#colorScheme = colorScheme;
    const { seed } = settings;
    if (!['none', 'empty', 'demo'].includes(seed))
      copyFileSync(seed, join(this.dataFolder, 'jarline.sqlite'));
  }

  get #ownFile(): string {
    return join(this.dataFolder, 'jarline.sqlite');
  }

  /** Complaints that match are expected by the test. */
  forgive(...patterns: RegExp[]): void {
    this.#forgiven.push(...patterns);
  }

  /** Opens the window; with the same data folder as before. */
  async open(): Promise<void> {
    const { seed, now, size, systemLocale } = this.#settings;
    const env: Record<string, string> = {
      TZ: 'Europe/Berlin',
      TMPDIR: this.dataFolder,
      LC_ALL: systemLocale,
    };
    for (const [name, value] of Object.entries(process.env)) if (value !== undefined) env[name] ??= value;
    delete env['ELECTRON_RUN_AS_NODE'];
    const display = ownDisplay();
    if (display !== undefined) env['DISPLAY'] = display;
    this.app = await _electron.launch({
      executablePath: findRuntime().executable,
      args: [
        '-r',
        holdBack,
        root,
        `--user-data-dir=${this.dataFolder}`,
        `--now=${now}`,
        ...(seed === 'demo' ? ['--demo'] : []),
        // Chromium's own picture of a camera that is not there.
        '--use-fake-device-for-media-stream',
        ...machineFlags(),
      ],
      env,
      colorScheme: this.#colorScheme,
      timeout: 30_000,
    });
    this.app.process().stderr?.on('data', (bytes: Buffer) => {
      const lines = (this.#rest + String(bytes)).split('\n');
      this.#rest = lines.pop() ?? '';
      for (const line of lines) this.#complain('main', line);
    });
    this.page = await this.app.firstWindow();
    this.page.on('console', (message) => {
      // The browser's own dress for a text, which the policy of the page refuses.
      const ofStill = message.location().url === STILL() && /inline style/.test(message.text());
      if (message.type() === 'error' && !ofStill) this.#complain('console', message.text());
    });
    this.page.on('pageerror', (error) => this.#complain('page', error.stack ?? error.message));
    // The system's own dialog is shown to nobody.
    this.page.on('filechooser', () => undefined);
    this.page.on('crash', () => this.#complain('page', 'crashed'));
    await this.#resize(size);
    await watchReads(this.app);
    await watchNetwork(this.app, this.page, (text) => this.#complain('page', text));
    if (LATE_MS > 0) await watchMoves(this.page);
    await this.page.waitForLoadState('load');
    await this.#opened();
  }

  /** For the first test of a window: what the seed asks for beyond what the program opens by itself. */
  async begin(): Promise<void> {
    await this.open();
    const { seed } = this.#settings;
    if (seed === 'empty' && !(await this.#change(seed))) throw new Error('no empty ledger could be made');
    // A large ledger keeps its first questions waiting; which file it lies in is known.
    else this.#handedOver = isFile(seed) ? lastWritten(this.#ownFile) : await this.#holding();
  }

  /**
   * Puts a window that other tests have used back to how a program of its own would have started, through the same calls
   * as the page's.
   * @returns false where that is not possible: then a program of its own is needed
   */
  async putBack(settings: Settings, colorScheme: ColorScheme): Promise<boolean> {
    if (!this.running || this.unforgiven.length > 0 || this.page.isClosed()) return false;
    const { seed: before, now, systemLocale } = this.#settings;
    [this.#settings, this.#colorScheme] = [settings, colorScheme];
    await this.page.emulateMedia({ ...AT_START, colorScheme });
    await this.#resize(settings.size);
    await this.page.mouse.move(0, 0);
    const { windows, theme } = await this.app.evaluate(({ BrowserWindow, nativeTheme }) => {
      const all = BrowserWindow.getAllWindows();
      all[0]?.webContents.setZoomFactor(1);
      return { windows: all.length, theme: nativeTheme.themeSource };
    });
    if (windows !== 1) return false;
    const sameStart = now === settings.now && systemLocale === settings.systemLocale && theme === 'system';
    let untouched = sameStart && before === settings.seed && (await this.#holding()) === this.#handedOver;
    if (untouched) {
      await this.#reload();
      // Whatever the page was still about to do, such as keeping a draft, it has done now.
      untouched = (await this.#holding()) === this.#handedOver;
    }
    if (!untouched && !(await this.#change(settings.seed))) return false;
    if (this.unforgiven.length > 0) return false;
    this.complaints.length = 0;
    this.#forgiven = [...HARMLESS];
    return true;
  }

  get running(): boolean {
    const { exitCode, signalCode } = this.app.process();
    return exitCode === null && signalCode === null;
  }

  /** Ends it in order. */
  async close(): Promise<void> {
    await this.app.close();
  }

  /** Ends it as a power cut would. */
  async kill(): Promise<void> {
    const gone = new Promise((done) => this.app.process().once('exit', done));
    this.app.process().kill('SIGKILL');
    await gone;
  }

  /** What the clock stands at when it is opened again. */
  set now(moment: string) {
    this.#settings = { ...this.#settings, now: moment };
  }

  /** Ends it in order if it still runs, and removes all that it kept. */
  async end(): Promise<void> {
    try {
      if (this.running) await this.close();
    } finally {
      rmSync(this.dataFolder, { recursive: true, force: true, maxRetries: 5 });
    }
  }

  /** From the next opening on, clock, system and theme are as by a start of the program. */
  async #asStarted(): Promise<void> {
    await this.app.evaluate(({ Menu }, { now, systemLocale }) => {
      Menu.getApplicationMenu()?.getMenuItemById('theme.system')?.click();
      process.env['LC_ALL'] = systemLocale;
      process.argv = process.argv.map((one) => (one.startsWith('--now=') ? `--now=${now}` : one));
    }, this.#settings);
  }

  async #resize(size: Settings['size']): Promise<void> {
    await this.app.evaluate(({ BrowserWindow }, wanted) => {
      BrowserWindow.getAllWindows()[0]?.setContentSize(wanted.width, wanted.height);
    }, size);
  }

  /** Loads the page anew. */
  async #reload(): Promise<void> {
    await this.#loaded();
    await this.page.reload();
    await this.#opened();
  }

  /** Not while it loads: the main process complains of a loading that is cut short. */
  async #loaded(): Promise<void> {
    await expect
      .poll(() =>
        this.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.isLoading()),
      )
      .toBe(false);
  }

  /**
   * Opens what a test begins with while the page is away, so that it neither keeps a draft in it nor draws it twice.
   * @returns false for what can't be come to from another ledger
   */
  async #change(seed: Settings['seed']): Promise<boolean> {
    await this.#loaded();
    await this.page.goto(STILL());
    await this.#asStarted();
    if (!(await this.#openLedger(seed))) return false;
    this.#handedOver = await this.#holding();
    await this.page.goto(PAGE);
    await this.#opened();
    return true;
  }

  /** Waits until the page has heard what is open and shows a screen: a test begins as a keeper would, with a page to see. */
  async #opened(): Promise<void> {
    await this.page.locator('main.screen:not([aria-busy])').waitFor({ timeout: 30_000 });
  }

  /** Which ledger is open and when it was last written to; while there is none, all that the program says of itself. */
  async #holding(): Promise<string> {
    const state = await this.page.evaluate(() => window.jarline.call['app.state']({}));
    if (!state.ok || state.value.ledger === null) return JSON.stringify(state);
    return lastWritten(state.value.ledger.file);
  }

  /**
   * Opens what a test begins with, as the page would; the system's dialog answers with a file of the test's own.
   * @returns false for what can't be come to from another ledger
   */
  async #openLedger(seed: Settings['seed']): Promise<boolean> {
    const folder = join(this.dataFolder, `ledger-${++this.#ledgers}`);
    mkdirSync(folder);
    const file = join(folder, 'jarline.sqlite');
    if (isFile(seed)) copyFileSync(seed, file);
    await this.app.evaluate(({ dialog }, filePath) => {
      dialog.showSaveDialog = async () => ({ canceled: false, filePath });
      dialog.showOpenDialog = async () => ({ canceled: false, filePaths: [filePath] });
    }, file);
    const opened = await this.page.evaluate(async (asked) => {
      const { call } = window.jarline;
      switch (asked) {
        case 'none': // From the invented ledger only: nothing leads back from a first ledger of one's own.
          return call['ledger.leaveDemo']({});
        case 'demo':
          return call['ledger.openDemo']({});
        case 'empty':
          return call['ledger.create']({ file: null });
        default:
          return call['ledger.open']({ file: null });
      }
    }, seed);
    if (!opened.ok || opened.value.trouble !== null) return false;
    const { ledger } = opened.value;
    this.ledgerFolder = ledger === null ? this.dataFolder : dirname(ledger.file);
    return (ledger === null) === (seed === 'none');
  }

  #complain(who: string, text: string): void {
    if (text.trim() === '' || this.#forgiven.some((pattern) => pattern.test(text))) return;
    this.complaints.push(`${who}: ${text}`);
  }

  /** What was complained of and not forgiven, also by a pattern given after the fact. */
  get unforgiven(): string[] {
    return this.complaints.filter((line) => !this.#forgiven.some((pattern) => pattern.test(line)));
  }
}

/** The window that the tests of a worker share. */
class Shared {
  #program: Program | null = null;

  /** A program as the settings ask for it: the one there is, put back, or a new one. */
  async lend(settings: Settings, colorScheme: ColorScheme): Promise<Program> {
    if (await this.#program?.putBack(settings, colorScheme)) return this.#program!;
    await this.end();
    this.#program = new Program(settings, colorScheme);
    await this.#program.begin();
    return this.#program;
  }

  /** Ends the window. What it complains of while it ends fails like anything else. */
  async end(): Promise<void> {
    const program = this.#program;
    this.#program = null;
    if (!program) return;
    await program.end();
    expect(program.unforgiven, COMPLAINTS).toEqual([]);
  }
}

const COMPLAINTS = 'what the window and the main process complained of';

interface Fixtures {
  program: Program;
  app: ElectronApplication;
}

interface OfAWorker {
  shared: Shared;
  /** Ledgers of so many invented jars. */
  sixty: string;
  hundredThousand: string;
}

/** Made once for all tests of a worker, and only when one needs it. */
async function lend(wanted: Parameters<typeof madeLedger>[0], use: (file: string) => Promise<void>) {
  const { file, folder } = madeLedger(wanted);
  await use(file);
  rmSync(folder, { recursive: true, force: true });
}

/* oxlint-disable no-empty-pattern -- playwright reads from the pattern which fixtures are asked for: none */
export const test = base.extend<Settings & Fixtures, OfAWorker>({
  seed: ['none', { option: true }],
  now: ['2026-05-20T09:00:00+02:00', { option: true }],
  size: [{ width: 1280, height: 860 }, { option: true }],
  systemLocale: ['C.UTF-8', { option: true }],
  shared: [
    async ({}, use) => {
      const shared = new Shared();
      await use(shared);
      await shared.end();
    },
    { scope: 'worker' },
  ],
  // Here and not with the tests that ask for them: those of a file with workers of its own would come last of all, and long.
  sixty: [
    async ({}, use) => lend({ jars: 60, shape: 'bushy', daysApart: 4, spoiledOneIn: 30 }, use),
    { scope: 'worker' },
  ],
  hundredThousand: [
    async ({}, use) => lend({ jars: 100_000, shape: 'bushy', daysApart: 0.2 }, use),
    { scope: 'worker', timeout: 240_000 },
  ],
  program: async ({ shared, seed, now, size, systemLocale, colorScheme }, use) => {
    const program = await shared.lend({ seed, now, size, systemLocale }, colorScheme ?? null);
    await use(program);
    if (LATE_MS > 0 && program.running && !program.page.isClosed())
      await keepMoves(program.page, test.info().title);
    expect(program.unforgiven, COMPLAINTS).toEqual([]);
  },
  app: async ({ program }, use) => use(program.app),
  page: async ({ program }, use) => use(program.page),
});

export { expect } from '@playwright/test';
