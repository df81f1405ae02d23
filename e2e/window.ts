// The fixture of every test of the real window: a fresh data folder, a seed, a clock that stands still; anything the
// page or the main process complains of fails the test.
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { type ElectronApplication, type Page, _electron, test as base } from '@playwright/test';
import { findRuntime, machineFlags } from '../main/launch/runtime.mjs';

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
  // A busy machine: the page's first frame asks for input handling before the widget's host is bound.
  /ERROR:interface_endpoint_client.*blink\.mojom\.Widget(Host)?\b/,
  /ERROR:(viz_main_impl|gpu_|gl_|command_buffer|angle_|vaapi|object_proxy|atom_cache|gl_surface)/,
];

export interface Settings {
  /** The ledger to begin with: none, the invented one, or a copy of a ledger file. */
  seed: 'none' | 'demo' | (string & {});
  now: string;
  /** Content size of the window in CSS pixels. */
  size: { width: number; height: number };
  /** What the system says of its language and region. */
  systemLocale: string;
  /** More for the command line. */
  flags: string[];
}

/** The running program: start it again, forgive what a test provokes on purpose. */
export class Program {
  app!: ElectronApplication;
  page!: Page;
  readonly dataFolder = mkdtempSync(join(tmpdir(), 'jarline-e2e-'));
  readonly complaints: string[] = [];
  /** Main stderr not yet ended by a line break. */
  #rest = '';
  readonly #forgiven: RegExp[] = [...HARMLESS];
  readonly #settings: Settings;
  readonly #colorScheme: 'light' | 'dark' | 'no-preference' | null;

  constructor(settings: Settings, colorScheme: 'light' | 'dark' | 'no-preference' | null) {
    this.#settings = settings;
    this.#colorScheme = colorScheme;
    const { seed } = settings;
    if (seed !== 'none' && seed !== 'demo') copyFileSync(seed, join(this.dataFolder, 'jarline.sqlite'));
  }

  /** Complaints that match are expected by the test. */
  forgive(...patterns: RegExp[]): void {
    this.#forgiven.push(...patterns);
  }

  /** Opens the window; with the same data folder as before. */
  async open(): Promise<void> {
    const { seed, now, size, systemLocale, flags } = this.#settings;
    const env: Record<string, string> = {
      TZ: 'Europe/Berlin',
      TMPDIR: this.dataFolder,
      LC_ALL: systemLocale,
    };
    for (const [name, value] of Object.entries(process.env)) if (value !== undefined) env[name] ??= value;
    delete env['ELECTRON_RUN_AS_NODE'];
    this.app = await _electron.launch({
      executablePath: findRuntime().executable,
      args: [
        '-r',
        holdBack,
        root,
        `--user-data-dir=${this.dataFolder}`,
        `--now=${now}`,
        ...(seed === 'demo' ? ['--demo'] : []),
        ...flags,
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
      if (message.type() === 'error') this.#complain('console', message.text());
    });
    this.page.on('pageerror', (error) => this.#complain('page', error.stack ?? error.message));
    this.page.on('crash', () => this.#complain('page', 'crashed'));
    await this.app.evaluate(({ BrowserWindow }, wanted) => {
      BrowserWindow.getAllWindows()[0]?.setContentSize(wanted.width, wanted.height);
    }, size);
    await this.page.waitForLoadState('load');
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

  #complain(who: string, text: string): void {
    if (text.trim() === '' || this.#forgiven.some((pattern) => pattern.test(text))) return;
    this.complaints.push(`${who}: ${text}`);
  }

  /** What was complained of and not forgiven, also by a pattern given after the fact. */
  get unforgiven(): string[] {
    return this.complaints.filter((line) => !this.#forgiven.some((pattern) => pattern.test(line)));
  }
}

interface Fixtures {
  program: Program;
  app: ElectronApplication;
}

export const test = base.extend<Settings & Fixtures>({
  seed: ['none', { option: true }],
  now: ['2026-05-20T09:00:00+02:00', { option: true }],
  size: [{ width: 1280, height: 860 }, { option: true }],
  systemLocale: ['C.UTF-8', { option: true }],
  flags: [[], { option: true }],
  program: async ({ seed, now, size, systemLocale, flags, colorScheme }, use) => {
    const program = new Program({ seed, now, size, systemLocale, flags }, colorScheme ?? null);
    try {
      await program.open();
      await use(program);
      if (program.app.process().exitCode === null && program.app.process().signalCode === null)
        await program.close();
    } finally {
      rmSync(program.dataFolder, { recursive: true, force: true, maxRetries: 5 });
    }
    base.expect(program.unforgiven, 'what the window and the main process complained of').toEqual([]);
  },
  app: async ({ program }, use) => use(program.app),
  page: async ({ program }, use) => use(program.page),
});

export { expect } from '@playwright/test';
