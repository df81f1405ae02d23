// Which ledger is open, and changing it: the keeper's own, another file, a new one, the demo. No electron here:
// dialogs and the like come in as doors, so that the headless host and the tests use the same code.
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import type { AppState, CallName, Parsed, Reply, Result } from '../core/contract';
import type { RefusalCode } from '../core/sentences';
import { checkInput, checkReply } from './check-call';
import { type JobWatch, LedgerHost, LedgerThreads } from './host';
import type { OpenMode, WorkerCall } from './ledger/worker-protocol';
import { writeOver } from './ledger/place';
import { refusalOf } from './refusal';

/** A ledger to open or to make, an archive to read, any file to write. */
export type Choosing = 'open' | 'create' | 'open archive' | 'save';

interface PageSize {
  readonly width: number;
  readonly height: number;
}

/** What only the system can do. Headless there is nobody to ask. */
export interface Doors {
  /** The system's file dialog; null where the keeper thought better of it. */
  readonly chooseFile: (what: Choosing, startAt: string) => Promise<string | null>;
  readonly showFolder: (file: string) => void;
  /** A document on pages of that size (mm): as the bytes of a PDF, or on paper by the system's dialog. */
  readonly pdfOf: (html: string, page: PageSize) => Promise<Uint8Array>;
  /** The keeper's leave to use the camera for one photograph. */
  readonly askCamera: () => Promise<boolean>;
  readonly onPaper: (html: string, page: PageSize) => Promise<boolean>;
}

export interface Setting {
  readonly workerFile: URL;
  readonly version: string;
  readonly timeZone: string;
  /** The system's locale, or null. */
  readonly locale: () => string | null;
  /** The moment that the clock of a ledger stands still at from when it is opened; null: it goes on. */
  readonly now: () => string | null;
  /** Where a keeper's first ledger goes; null headless, where every file is named. */
  readonly defaultFile: string | null;
  readonly doors: Doors;
  readonly changed: () => void;
  /** The keeper's own ledger that is open now, to be opened at the next start. Never the demo. */
  readonly remember: (file: string) => void;
}

type Refused = Extract<Result<never>, { ok: false }>;
const refuse = (code: RefusalCode, params: Refused['error']['params'] = {}): Refused => ({
  ok: false,
  error: { code, params },
});

interface Out {
  readonly field: 'file' | 'folder';
  readonly called: string;
}

/** What a call would write, and how the page would call it, where the keeper is to say where. */
function outOf(input: unknown): Out | null {
  for (const field of ['file', 'folder'] as const) {
    const told = (input as Record<string, unknown> | null)?.[field];
    if (typeof told === 'object' && told !== null && 'name' in told && !('bytes' in told))
      return { field, called: String(told.name) };
  }
  return null;
}

/** A name that every file system takes. */
const plainName = (called: string): string =>
  called
    .replaceAll(/[\\/:*?"<>|\p{Cc}]+/gu, ' ')
    .replace(/^[\s.]+|[\s.]+$/g, '')
    .slice(0, 120) || 'jarline';

export class OpenLedger {
  readonly #setting: Setting;
  readonly #threads: LedgerThreads;
  #host: LedgerHost;
  /** The keeper's own file: what the demo is left for. */
  #own: string | null;
  #demoFolder: string | null = null;
  /** The invented ledger as it was when it was made: playing it takes far longer than writing it out again. */
  #demoAsMade: Buffer | null = null;
  /** Openings one after another, whoever asks. */
  #turn: Promise<unknown> = Promise.resolve();

  /** @param file the ledger to begin with: made where it is missing; null for none yet */
  constructor(setting: Setting, file: string | null) {
    this.#setting = setting;
    this.#threads = new LedgerThreads(setting.workerFile);
    this.#own = file;
    this.#host = this.#begin(file, 'open or create');
  }

  /** The open file, or null. */
  get file(): string | null {
    return this.#host.start.file;
  }

  /** Answers any call of the contract. Never rejects. */
  async call(name: CallName, rawInput: unknown, job: JobWatch | null = null): Promise<Result<unknown>> {
    const input = checkInput(name, rawInput);
    if (!input.ok) return input;
    if (name === 'label.print') return this.#printLabels(input.value as Parsed<'label.print'>);
    if (name === 'camera.ask') return { ok: true, value: { allowed: await this.#setting.doors.askCamera() } };
    if (name === 'report.print') return this.#printReport(input.value as Parsed<'report.print'>);
    const out = outOf(input.value);
    if (out !== null) return this.#writeOut(name, input.value as object, out, job);
    switch (name) {
      case 'ledger.fromArchive':
        return this.#inTurn(() => this.#openArchive(input.value as Parsed<'ledger.fromArchive'>, job));
      case 'ledger.open':
      case 'ledger.create': {
        const mode = name === 'ledger.open' ? 'open' : 'create';
        return this.#inTurn(() => this.#openNamed((input.value as { file: string | null }).file, mode));
      }
      case 'ledger.openDemo':
        return this.#inTurn(() => this.#openDemo());
      case 'ledger.leaveDemo':
        return this.#inTurn(() => this.#leaveDemo());
      case 'ledger.recover':
        if ((input.value as { how: string }).how !== 'show folder') break;
        if (this.file !== null) this.#setting.doors.showFolder(this.file);
        return this.#ask('app.state', {}, null);
    }
    return this.#ask(name, rawInput, job);
  }

  /** Closes the file in order; removes a demo. */
  async close(): Promise<void> {
    await this.#turn;
    await this.#host.close();
    await this.#threads.end();
    this.#dropDemo();
  }

  #ask(
    name: Parameters<LedgerHost['call']>[0],
    input: unknown,
    job: JobWatch | null,
  ): Promise<Result<unknown>> {
    // A worker that died took no recorded act with it: open the file again.
    if (!this.#host.alive) this.#host = this.#begin(this.file, 'open');
    return this.#host.call(name, input, job);
  }

  #inTurn(work: () => Promise<Result<unknown>>): Promise<Result<unknown>> {
    const result = this.#turn.then(work).catch((error: unknown) => {
      const refused = refusalOf(error);
      if (refused) return { ok: false as const, error: refused.refusal };
      process.stderr.write(
        `jarline: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
      );
      return refuse('unexpected', { ref: 'opening' });
    });
    this.#turn = result;
    return result;
  }

  #begin(file: string | null, mode: OpenMode): LedgerHost {
    const { version, timeZone, now, changed } = this.#setting;
    const locale = this.#setting.locale();
    const host: LedgerHost = new LedgerHost(
      this.#threads,
      { file, mode, now: now(), timeZone, locale, version },
      () => {
        if (host === this.#host) changed();
      },
    );
    return host;
  }

  /** The file asked for, or the one the keeper chooses. A first ledger needs no choice. */
  async #openNamed(asked: string | null, mode: 'open' | 'create'): Promise<Result<unknown>> {
    const { doors, defaultFile } = this.#setting;
    const first = mode === 'create' && defaultFile !== null && this.#own === null && !existsSync(defaultFile);
    const near = this.#own ?? defaultFile ?? resolve('jarline.sqlite');
    const chosen = asked ?? (first ? defaultFile : await doors.chooseFile(mode, near));
    if (chosen === null) return this.#ask('app.state', {}, null);
    const file = resolve(chosen);
    if (file === this.file && mode === 'open') {
      // Open already; where it could not be, or is gone since, it is tried again.
      const state = await this.#ask('app.state', {}, null);
      if (!state.ok || (state.value as AppState).ledger !== null) return state;
    }
    if (mode === 'open' && !existsSync(file)) return refuse('no such file', { file });
    if (mode === 'create' && existsSync(file)) return refuse('file exists', { file });
    const result = await this.#change(file, mode);
    if (result.ok) this.#keep(file);
    return result;
  }

  /** Asks where a file is to go, then does what writes it. */
  async #writeOut(
    name: CallName,
    input: object,
    { field, called }: Out,
    job: JobWatch | null,
  ): Promise<Result<unknown>> {
    const path = await this.#chooseOut(called);
    if (path === null) return refuse('cancelled');
    return this.#ask(name as WorkerCall, { ...input, [field]: { path } }, job);
  }

  async #printLabels({ file, ...asked }: Parsed<'label.print'>): Promise<Result<unknown>> {
    const sheets = await this.#ask('label.sheet', asked, null);
    if (!sheets.ok) return sheets;
    const { html, pages } = sheets.value as Reply<'label.sheet'>;
    const done = await this.#print(html, asked.layout.page, file);
    return done.ok ? { ok: true, value: { ...done.value, pages: pages.length } } : done;
  }

  async #printReport({ report, file }: Parsed<'report.print'>): Promise<Result<unknown>> {
    const made = await this.#ask('report.get', { report }, null);
    if (!made.ok) return made;
    const { html, page } = made.value as Reply<'report.get'>;
    return this.#print(html, page, file);
  }

  /** A document as a PDF where the keeper says, or on paper. */
  async #print(
    html: string,
    page: PageSize,
    file: Parsed<'label.print'>['file'],
  ): Promise<Result<{ file: string | null }>> {
    const { doors } = this.#setting;
    if (file === null) {
      const done = await doors.onPaper(html, page);
      return done ? { ok: true, value: { file: null } } : refuse('cancelled');
    }
    const path = 'path' in file ? file.path : await this.#chooseOut(file.name);
    if (path === null) return refuse('cancelled');
    const bytes = await doors.pdfOf(html, page);
    try {
      writeOver(path, bytes);
    } catch (error) {
      const refused = refusalOf(error, path);
      if (!refused) throw error;
      return { ok: false, error: refused.refusal };
    }
    return { ok: true, value: { file: path } };
  }

  #chooseOut(called: string): Promise<string | null> {
    const near = join(dirname(this.#own ?? this.#setting.defaultFile ?? resolve('x')), plainName(called));
    return this.#setting.doors.chooseFile('save', near);
  }

  /** A new ledger out of an archive: made where nothing lies yet, and only if all of the archive comes in. */
  async #openArchive(told: Parsed<'ledger.fromArchive'>, job: JobWatch | null): Promise<Result<unknown>> {
    const { doors, defaultFile } = this.#setting;
    const near = this.#own ?? defaultFile ?? resolve('jarline.sqlite');
    const archive = told.archive ?? (await doors.chooseFile('open archive', dirname(near)));
    if (archive === null) return refuse('cancelled');
    const first = defaultFile !== null && this.#own === null && !existsSync(defaultFile);
    const chosen = told.file ?? (first ? defaultFile : await doors.chooseFile('create', near));
    if (chosen === null) return refuse('cancelled');
    const file = resolve(chosen);
    if (existsSync(file)) return refuse('file exists', { file });
    const making = this.#begin(file, 'open or begin');
    const read = await making.call('archive.read', { file: { path: archive } }, job);
    await making.close();
    if (!read.ok) return read;
    const result = await this.#change(file, 'open');
    if (result.ok) this.#keep(file);
    return result;
  }

  async #openDemo(): Promise<Result<unknown>> {
    const folder = mkdtempSync(join(tmpdir(), 'jarline-demo-'));
    const file = join(folder, 'demo.sqlite');
    if (this.#demoAsMade) writeFileSync(file, this.#demoAsMade);
    const result = await this.#change(file, this.#demoAsMade ? 'open' : 'demo', () => {
      // Whole in its file as long as nothing lies in a log beside it.
      const log = statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0;
      if (log === 0) this.#demoAsMade ??= readFileSync(file);
    });
    if (result.ok) {
      this.#dropDemo();
      this.#demoFolder = folder;
    } else rmSync(folder, { recursive: true, force: true });
    return result;
  }

  async #leaveDemo(): Promise<Result<unknown>> {
    if (this.#demoFolder === null) return refuse('no demo');
    const result = await this.#change(this.#own, 'open');
    if (result.ok) this.#dropDemo();
    return result;
  }

  /**
   * Opens another file and only then closes the present one. A file that is not a ledger, or a newer program's, is
   * refused and the present one stays; a damaged one is shown with its ways out.
   * @param opened called once it is open, before anything can be asked of it
   */
  async #change(
    file: string | null,
    mode: OpenMode,
    opened: () => void = () => undefined,
  ): Promise<Result<unknown>> {
    // Where none is open its thread opens this one.
    if (this.file === null) await this.#host.close();
    const host = this.#begin(file, mode);
    const result = checkReply('app.state', await host.call('app.state', {}));
    const state = result.ok ? (result.value as AppState) : null;
    const kept = state?.trouble && state.trouble.kind !== 'damaged';
    if (state === null || kept) {
      await host.close();
      return kept ? refuse('ledger refused', { sentence: state?.trouble?.sentence ?? '' }) : result;
    }
    opened();
    const before = this.#host;
    this.#host = host;
    await before.close();
    this.#setting.changed();
    return result;
  }

  #keep(file: string): void {
    this.#own = file;
    this.#dropDemo();
    this.#setting.remember(file);
  }

  #dropDemo(): void {
    if (this.#demoFolder !== null) rmSync(this.#demoFolder, { recursive: true, force: true });
    this.#demoFolder = null;
  }
}
