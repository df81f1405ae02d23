// One opening of one ledger file: holds the ledger, or why it could not be opened, and answers every call with exactly
// one result. The same for the worker thread and for headless.
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { WRITES } from '../core/call-names';
import { type AppState, type CallName, contract, type Reply, type Result } from '../core/contract';
import { DEMO_NOW, DEMO_ZONE } from '../core/demo/invented-larder';
import { defaultPreferences } from '../core/ledger/default-preferences';
import type { Preferences } from '../core/ledger/records';
import { type RefusalCode, refusalSentence } from '../core/sentences';
import { handlers } from './calls';
import {
  backupsBeside,
  copiesOf,
  copyAside,
  goodBackups,
  holdingOf,
  makeBackup,
  putBack,
  restoreNewest,
  saveBeside,
} from './ledger/backup';
import { machineClock, stillClock } from './ledger/clock';
import { PlacedClock, playDemo } from './ledger/demo';
import { idGenerator } from './ledger/ids';
import type { Job } from './ledger/job';
import { judgeMore } from './ledger/judged';
import { Ledger, type LedgerOptions } from './ledger/ledger';
import { lookForLedger } from './ledger/open';
import { realFile } from './ledger/place';
import type { OpenMode, WorkerCall, WorkerStart } from './ledger/worker-protocol';
import { readOnly } from './ledger/read-only';
import { Refused, refusalOf } from './refusal';
import { salvage } from './ledger/salvage';
import { actByKey, nextRedo, nextUndo, wordsOf } from './ledger/undo';

const DAY_MS = 86_400_000;
/** So many acts that a backup does not hold are said in words. */
const WORDS_OF_ACTS = 5;

type TroubleKind = NonNullable<AppState['trouble']>['kind'];
const TROUBLE: Partial<Record<RefusalCode, TroubleKind>> = {
  damaged: 'damaged',
  'log damaged': 'damaged',
  'altered ledger': 'damaged',
  'not a ledger': 'foreign',
  'newer ledger': 'newer',
  'older ledger': 'older',
};

/** What makes a ledger that is not there yet, and may not be said to be kept where the file is gone. */
const KEEPING = new Set<string>([
  ...WRITES,
  'notes.bringIn',
  'ledger.backup',
  'archive.read',
  'handOver.read',
  'handOver.write',
] satisfies CallName[]);

interface Counts {
  readonly jars: number;
  readonly batches: number;
  readonly sources: number;
}
const counted = new WeakMap<Ledger, { readonly state: string; readonly counts: Counts }>();

/** How much there is: counted once for as long as nothing is recorded. */
function countsOf(ledger: Ledger): Counts {
  const { rows, state } = ledger;
  const known = counted.get(ledger);
  if (known && known.state === state) return known.counts;
  const counts = {
    jars: rows.count("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')"),
    batches: rows.count(
      "SELECT count(*) FROM batch b WHERE EXISTS (SELECT 1 FROM jar j WHERE j.batch = b.key AND j.state <> 'mistake')",
    ),
    sources: rows.count('SELECT count(*) FROM source'),
  };
  if (state !== null) counted.set(ledger, { state, counts });
  return counts;
}

export class Session {
  readonly #start: WorkerStart;
  #makeId: () => string;
  /** The file itself, where the one that was named is a link to it. */
  #file: string | null = null;
  readonly #defaults: Preferences;
  /** Moved only for the invented ledger, whose jars would otherwise all be months old. */
  readonly #clock: PlacedClock;
  #ledger: Ledger | null = null;
  /** Whether the ledger is an empty one in memory that stands for a file which is not there yet. */
  #begun = false;
  /** Whether the file is there and empty: the first thing recorded makes it a ledger, a look at it does not. */
  #hollow = false;
  #trouble: Refused | null = null;
  /** Whether the file is gone and no copy could be made of what is open. */
  #unsaved = false;

  constructor(start: WorkerStart) {
    this.#start = start;
    const { now, timeZone } = start;
    this.#clock = new PlacedClock(
      now === null ? machineClock(timeZone) : stillClock(now, timeZone),
      timeZone,
    );
    this.#defaults = defaultPreferences(start.locale);
    this.#makeId = this.#idsFromNow();
    this.#open(start.mode);
  }

  readonly #newId = (): string => this.#makeId();

  /** Ids rise with the clock. Where that is put back they begin anew: they can't run ahead of what it says. */
  #idsFromNow(): () => string {
    return idGenerator({ milliseconds: this.#clock.milliseconds, random: randomBytes });
  }

  /** From here on the clock stands still at that moment (with its offset). */
  setNow(moment: string): void {
    this.#clock.moveTo(moment);
    this.#makeId = this.#idsFromNow();
  }

  #open(mode: OpenMode): void {
    const named = this.#start.file;
    if (named === null) return;
    this.#trouble = null;
    this.#begun = false;
    this.#hollow = false;
    try {
      const file = realFile(named);
      this.#file = file;
      const size = mode === 'open or begin' ? lookForLedger(file) : null;
      this.#hollow = size === 0;
      if (this.#hollow) return;
      if (mode === 'demo') this.#makeDemo(file);
      else if (size === -1) this.#begin(file, false);
      else this.#ledger = this.#openOrMake(file, mode);
      if (this.#ledger?.about.demo) this.#clock.moveTo(this.#start.now ?? DEMO_NOW, DEMO_ZONE);
    } catch (error) {
      this.close();
      this.#trouble = this.#refusal(error);
    }
  }

  get #options(): Omit<LedgerOptions, 'mode' | 'demo'> {
    const { checkLaterFrom } = this.#start;
    return { clock: this.#clock, newId: this.#newId, defaults: this.#defaults, checkLaterFrom };
  }

  #openOrMake(file: string, mode: OpenMode): Ledger {
    const options = { ...this.#options, demo: false };
    if (mode !== 'open or create' || existsSync(file))
      return Ledger.open(file, { ...options, mode: mode === 'create' ? 'create' : 'open' });
    try {
      return Ledger.open(file, { ...options, mode: 'create' });
    } catch (error) {
      // Another program was faster: then it is there now.
      if (this.#refusal(error).refusal.code !== 'file exists') throw error;
      return Ledger.open(file, { ...options, mode: 'open' });
    }
  }

  #begin(file: string, demo: boolean): void {
    this.#ledger = Ledger.inMemory(file, { ...this.#options, demo });
    this.#begun = true;
  }

  /** The invented ledger is whole before there is a file of it. */
  #makeDemo(file: string): void {
    if (lookForLedger(file) >= 0) throw new Refused('file exists', { file });
    this.#begin(file, true);
    playDemo((name, input) => this.#handle(name as WorkerCall, input, noJob), this.#clock);
    this.#put();
  }

  /** Writes what was begun in memory to its file, and goes on with that. @throws Refused 'file exists' */
  #put(): void {
    const begun = this.ledger;
    this.#ledger = null;
    this.#begun = false;
    begun.put();
    begun.close();
    this.#ledger = Ledger.open(begun.file, { ...this.#options, mode: 'open', demo: false });
  }

  /** The open ledger. @throws Refused: why there is none */
  get ledger(): Ledger {
    if (this.#ledger) return this.#ledger;
    throw this.#trouble ?? new Refused('no ledger');
  }

  /** Why the file could not be opened, or null. */
  get trouble(): Refused | null {
    return this.#trouble;
  }

  /**
   * Answers a call whose input keeps to the contract. Never throws: what a keeper can mend comes back as a refusal, and a
   * fault of the program as 'unexpected' with a ref, its stack on stderr under the same ref.
   */
  answer(name: WorkerCall, input: unknown, job: Job = noJob): Result<unknown> {
    const keeping = KEEPING.has(name);
    try {
      if (this.#hollow && !keeping && lookForLedger(this.#file ?? '') === 0)
        throw new Refused('empty file', { file: this.#start.file });
      if (this.#hollow || (this.#begun && existsSync(this.#file ?? ''))) this.#open('open');
      this.#lookWhereabouts(keeping ? 'before' : null);
      // Nothing is recorded in a ledger that is not known to be whole.
      if (keeping) while (this.#ledger?.pages?.known === false) this.checkPages();
    } catch (error) {
      const { refusal } = this.#refusal(error);
      // The state of the program tells the trouble itself.
      if (name !== 'app.state' || this.#trouble === null) return { ok: false, error: refusal };
    }
    const result = this.#handle(name, input, job);
    if (!result.ok || !keeping) return result;
    try {
      if (this.#begun) return this.#putOrAgain(name, input, job, result);
      // A file that went away meanwhile took this with it.
      this.#lookWhereabouts('after');
      return result;
    } catch (error) {
      return { ok: false, error: this.#refusal(error).refusal };
    }
  }

  /**
   * Checks a little more of a ledger that is open (page-check.ts). A damaged one is let go, as one that can't be opened is.
   * @returns whether any is left
   * @throws Refused 'damaged'
   */
  checkPages(): boolean {
    const ledger = this.#ledger;
    if (ledger === null || ledger.pages === null) return false;
    try {
      ledger.pages.next();
      return !ledger.pages.done;
    } catch (error) {
      const refused = this.#refusal(error);
      this.#ledger = null;
      this.#trouble = refused;
      ledger.abandon('cut');
      throw refused;
    }
  }

  /** Judges a little more of what reads rest on (judged.ts). @returns whether any is left */
  judgeMore(): boolean {
    const ledger = this.#ledger;
    return ledger !== null && ledger.reading(() => judgeMore(ledger));
  }

  /** The first thing recorded makes the file; where another program made it meanwhile, it is recorded there. */
  #putOrAgain(name: WorkerCall, input: unknown, job: Job, result: Result<unknown>): Result<unknown> {
    try {
      this.#put();
      return result;
    } catch (error) {
      this.#open('open or begin');
      if (this.#refusal(error).refusal.code !== 'file exists' || this.#begun) throw error;
      return this.answer(name, input, job);
    }
  }

  #handle(name: WorkerCall, input: unknown, job: Job): Result<unknown> {
    const before = this.#ledger;
    const kept = before?.acts.kept;
    try {
      if (before && job !== noJob) before.rows.look = job.look;
      const handler = handlers[name] as (session: Session, input: unknown, job: Job) => unknown;
      const work = (): unknown => handler(this, input, job);
      const reads = contract[name].kind === 'read' && before !== null;
      return { ok: true, value: reads ? readOnly(name, before.db, () => before.reading(work)) : work() };
    } catch (error) {
      const refused = this.#refusal(error);
      // What is on the disk is not to be denied, whatever went wrong behind it.
      if (before === null || before.acts.kept === kept) return { ok: false, error: refused.refusal };
      process.stderr.write(`jarline: after it was kept: ${refusalSentence(refused.refusal)}\n`);
      return { ok: false, error: new Refused('kept, no answer').refusal };
    } finally {
      if (before) before.rows.look = null;
    }
  }

  #refusal(error: unknown): Refused {
    return refusalOf(error, this.#file ?? undefined) ?? new Refused('unexpected', { ref: unexpected(error) });
  }

  /**
   * Refuses to go on with a file that is no longer where it was opened, and first keeps all that this connection has of it.
   * @param acted whether what was asked for was recorded before this was noticed; null for what records nothing
   * @throws Refused 'ledger gone', 'ledger replaced'
   */
  #lookWhereabouts(acted: 'before' | 'after' | null): void {
    const ledger = this.#ledger;
    const where = ledger?.whereabouts(this.#start.file ?? ledger.file) ?? 'there';
    if (ledger === null || where === 'there') return;
    const code = where === 'gone' ? 'ledger gone' : 'ledger replaced';
    const file = this.#start.file;
    let copy: string | null = null;
    try {
      if (!ledger.about.demo) copy = saveBeside(ledger.db, ledger.file, this.#clock);
    } catch (error) {
      // What only the log still holds: closing would merge it into what is left of the file.
      if (where === 'cut' && !this.#unsaved) copyAside(ledger.file, this.#clock);
      // Still held: the next call tries again.
      this.#unsaved = true;
      process.stderr.write(`jarline: ${refusalSentence(this.#refusal(error).refusal)}\n`);
      throw new Refused(code, { file, acted, unsaved: true });
    }
    this.#trouble = new Refused(code, { file, copy });
    this.#ledger = null;
    ledger.abandon(where);
    throw new Refused(code, { file, copy, acted });
  }

  state(): AppState {
    const { file: named, version } = this.#start;
    const ledger = this.#ledger;
    const undo = ledger ? nextUndo(ledger.rows) : null;
    const redo = ledger ? nextRedo(ledger.rows) : null;
    const redone = redo
      ? ledger?.rows.prepare('SELECT * FROM act WHERE key = ?').get(redo.undoes)
      : undefined;
    return {
      version,
      today: this.#clock.today(),
      ledger: ledger
        ? {
            ...ledger.about,
            name: basename(named ?? ledger.file, extname(named ?? ledger.file)),
            file: named ?? ledger.file,
            ...countsOf(ledger),
          }
        : null,
      trouble: this.#trouble && named !== null ? this.#troubleShown(this.#trouble, named) : null,
      undo: undo ? wordsOf(undo) : null,
      redo: redone ? wordsOf(redone as Parameters<typeof wordsOf>[0]) : null,
      preferences: ledger?.preferences ?? this.#defaults,
    };
  }

  #troubleShown({ refusal }: Refused, named: string): NonNullable<AppState['trouble']> {
    const kind = TROUBLE[refusal.code as RefusalCode] ?? 'unreadable';
    return {
      kind,
      sentence: refusalSentence(refusal),
      file: named,
      backups: kind === 'damaged' ? goodBackups(this.#file ?? named) : [],
    };
  }

  backup(): { file: string; bytes: number } {
    return makeBackup(this.ledger.db, this.ledger.file, this.#clock);
  }

  /**
   * Whether what is shown may be old: another process has recorded something, or the file is no longer where it was, since
   * this was last asked.
   */
  changedElsewhere(): boolean {
    // Known, and said at each call: a copy is not tried every second.
    if (this.#unsaved) return false;
    try {
      this.#lookWhereabouts(null);
    } catch (error) {
      if (this.#ledger === null && error instanceof Refused) return true;
      throw error;
    }
    return this.#ledger?.changedElsewhere() ?? false;
  }

  /**
   * A backup where there is something new since the last and none was made within a day. One that seems to be from a day
   * to come was made by a clock that was ahead and holds nothing up.
   * @param within how long ago the last must be (ms)
   * @returns whether one was made
   */
  backupIfDue(within = DAY_MS): boolean {
    const ledger = this.#ledger;
    if (!ledger || this.#begun || ledger.about.demo) return false;
    // Beside a place where the ledger no longer lies nobody looks for one.
    if (ledger.whereabouts(this.#start.file ?? ledger.file) !== 'there') return false;
    const { uid, last } = holdingOf(ledger.db);
    if (last === null) return false;
    const copies = copiesOf(ledger.file, uid);
    const age = (copy: { madeAt: string }): number => this.#clock.milliseconds() - Date.parse(copy.madeAt);
    if (copies.some((copy) => copy.last === last || (age(copy) >= 0 && age(copy) < within))) return false;
    this.backup();
    return true;
  }

  /** As backupIfDue, where nobody asked for it and so nobody is answered: what keeps it from that is said on stderr. */
  backUpByItself(within = DAY_MS): void {
    try {
      this.backupIfDue(within);
    } catch (error) {
      const { code } = this.#refusal(error).refusal;
      const { refusal } = new Refused('no backup made', {
        file: this.#file ?? '',
        full: code === 'disk full',
      });
      process.stderr.write(`jarline: ${refusalSentence(refusal)}\n`);
    }
  }

  /** The backups of the open ledger, and what going back to each would do. */
  backups(): Reply<'ledger.backups'> {
    const ledger = this.ledger;
    if (this.#begun) return { backups: [] };
    return {
      backups: backupsBeside(ledger.db, ledger.file).map(({ gone, ...backup }) => ({
        ...backup,
        gone: gone.length,
        says: gone.slice(0, WORDS_OF_ACTS).map((key) => wordsOf(actByKey(ledger.rows, key))),
      })),
    };
  }

  /**
   * Goes back to a backup. What is there now becomes one itself first.
   * @throws Refused 'not a backup', or why it can't be put there: then the ledger is open as it was
   */
  restore(backup: string): AppState {
    const ledger = this.ledger;
    if (this.#begun || ledger.about.demo) throw new Refused('not a backup', { file: backup });
    try {
      putBack(ledger.file, backup, () => {
        this.backup();
        ledger.close();
        this.#ledger = null;
      });
    } finally {
      if (this.#ledger === null) this.#open('open');
    }
    return this.state();
  }

  /**
   * A way out of a damaged ledger; opens what was recovered.
   * @throws Refused 'nothing to recover', 'no backup', 'nothing readable', or why the file is out of reach
   */
  recover(how: 'newest backup' | 'save what can be read'): AppState {
    const file = this.#file;
    if (this.#ledger || !this.#trouble || file === null) throw new Refused('nothing to recover');
    if (TROUBLE[this.#trouble.refusal.code as RefusalCode] !== 'damaged') throw this.#trouble;
    if (how === 'newest backup') restoreNewest(file, this.#clock);
    else salvage(file, this.#clock, this.#newId);
    this.#open('open');
    return this.state();
  }

  /** Closes the file. What goes wrong with that is said on stderr: everything acknowledged is on the disk already. */
  close(): void {
    const ledger = this.#ledger;
    try {
      // Beside the thread that owns the ledger that one looks after it.
      if (!this.#start.beside) this.#lookWhereabouts(null);
      this.#ledger?.close();
    } catch (error) {
      const { refusal } = this.#refusal(error);
      const moved = refusal.code === 'ledger gone' || refusal.code === 'ledger replaced';
      const says = moved ? refusal
        : new Refused('not closed in order', { file: ledger?.file ?? '', full: refusal.code === 'disk full' }).refusal; // prettier-ignore
      process.stderr.write(`jarline: ${refusalSentence(says)}\n`);
    }
    this.#ledger = null;
    this.#begun = false;
  }
}

const noJob: Job = { step: () => undefined, look: () => undefined };

/** Writes a fault's stack to stderr. @returns the ref under which it stands there */
export function unexpected(error: unknown): string {
  const ref = randomBytes(4).toString('hex');
  const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`jarline: fault ${ref}: ${stack}\n`);
  return ref;
}
