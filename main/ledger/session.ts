// One opening of one ledger file: holds the ledger, or why it could not be opened, and answers every call with exactly
// one result. The same for the worker thread and for headless.
import { randomBytes } from 'node:crypto';
import { basename, extname } from 'node:path';
import type { AppState, Result } from '../../core/contract';
import { DEMO_TODAY } from '../../core/demo/larder';
import { defaultPreferences } from '../../core/ledger/default-preferences';
import type { Preferences } from '../../core/ledger/records';
import { type RefusalCode, refusalSentence } from '../../core/sentences';
import { handlers } from '../calls';
import { backupNames, goodBackups, makeBackup, restoreNewest } from './backup';
import { machineClock, stillClock } from './clock';
import { PlacedClock, playDemo } from './demo';
import { idGenerator } from './ids';
import type { Job } from './job';
import { Ledger } from './ledger';
import type { WorkerCall, WorkerStart } from './protocol';
import { Refused, refusalOfSqlite } from './refusal';
import { salvage } from './salvage';
import { nextRedo, nextUndo, wordsOf } from './undo';

const DAY_MS = 86_400_000;
/** A morning of the invented ledger's last day, also when it is opened again. */
const DEMO_NOW = `${DEMO_TODAY}T10:00:00+01:00`;

type TroubleKind = NonNullable<AppState['trouble']>['kind'];
const TROUBLE: Partial<Record<RefusalCode, TroubleKind>> = {
  damaged: 'damaged',
  'altered ledger': 'damaged',
  'not a ledger': 'foreign',
  'newer ledger': 'newer',
};

export class Session {
  readonly #start: WorkerStart;
  #makeId: () => string;
  readonly #defaults: Preferences;
  /** Moved only for the invented ledger, whose jars would otherwise all be months old. */
  readonly #clock: PlacedClock;
  #ledger: Ledger | null = null;
  #trouble: Refused | null = null;

  constructor(start: WorkerStart) {
    this.#start = start;
    this.#clock = new PlacedClock(start.now === null ? machineClock(start.timeZone) : stillClock(start.now));
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

  #open(mode: WorkerStart['mode']): void {
    const { file } = this.#start;
    if (file === null) return;
    try {
      this.#ledger = Ledger.open(file, {
        clock: this.#clock,
        newId: this.#newId,
        defaults: this.#defaults,
        mode: mode === 'open' ? 'open' : 'create',
        demo: mode === 'demo',
      });
      this.#trouble = null;
      if (mode === 'demo') playDemo((name, input) => this.answer(name as WorkerCall, input), this.#clock);
      if (this.#ledger.about.demo) this.#clock.moveTo(this.#start.now ?? DEMO_NOW);
    } catch (error) {
      this.close();
      this.#trouble =
        error instanceof Refused ? error : new Refused('unexpected', { ref: unexpected(error) });
    }
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

  /** Takes the place of a file that is not there: an empty ledger in memory, so that reading makes no file. */
  readAsEmpty(): void {
    this.#ledger = Ledger.inMemory(this.#start.file ?? '', {
      clock: this.#clock,
      newId: this.#newId,
      defaults: this.#defaults,
    });
    this.#trouble = null;
  }

  /**
   * Answers a call whose input keeps to the contract. Never throws: what a keeper can mend comes back as a refusal, and a
   * fault of the program as 'unexpected' with a ref, its stack on stderr under the same ref.
   */
  answer(name: WorkerCall, input: unknown, job: Job = noJob): Result<unknown> {
    try {
      const handler = handlers[name] as (session: Session, input: unknown, job: Job) => unknown;
      return { ok: true, value: handler(this, input, job) };
    } catch (error) {
      const refused = error instanceof Refused ? error : refusalOfSqlite(error);
      if (refused) return { ok: false, error: refused.refusal };
      return { ok: false, error: { code: 'unexpected', params: { ref: unexpected(error) } } };
    }
  }

  state(): AppState {
    const { file, version } = this.#start;
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
            name: basename(ledger.file, extname(ledger.file)),
            file: ledger.file,
            jars: ledger.rows.count("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')"),
            batches: ledger.rows.count(
              "SELECT count(*) FROM batch b WHERE EXISTS (SELECT 1 FROM jar j WHERE j.batch = b.key AND j.state <> 'mistake')",
            ),
            sources: ledger.rows.count('SELECT count(*) FROM source'),
          }
        : null,
      trouble: this.#trouble && file !== null ? this.#troubleShown(this.#trouble, file) : null,
      undo: undo ? wordsOf(undo) : null,
      redo: redone ? wordsOf(redone as Parameters<typeof wordsOf>[0]) : null,
      preferences: ledger?.preferences ?? this.#defaults,
    };
  }

  #troubleShown({ refusal }: Refused, file: string): NonNullable<AppState['trouble']> {
    const kind = TROUBLE[refusal.code as RefusalCode] ?? 'unreadable';
    return {
      kind,
      sentence: refusalSentence(refusal),
      file,
      backups: kind === 'damaged' ? goodBackups(file) : [],
    };
  }

  backup(): { file: string; bytes: number } {
    return makeBackup(this.ledger.db, this.ledger.file, this.#clock);
  }

  /** Whether another process, headless or a second window, has recorded something since this was last asked. */
  changedElsewhere(): boolean {
    return this.#ledger?.changedElsewhere() ?? false;
  }

  /** A backup where there is something new since the last and that one is a day old. @returns whether one was made */
  backupIfDue(): boolean {
    const ledger = this.#ledger;
    if (!ledger || ledger.about.demo) return false;
    const last = ledger.rows.prepare('SELECT at FROM act ORDER BY key DESC LIMIT 1').pluck().get();
    if (typeof last !== 'string') return false;
    const [newest] = backupNames(ledger.file);
    if (newest) {
      const made = Date.parse(newest.madeAt);
      if (Date.parse(last) <= made || this.#clock.milliseconds() - made < DAY_MS) return false;
    }
    this.backup();
    return true;
  }

  /**
   * A way out of a damaged ledger; opens what was recovered.
   * @throws Refused 'nothing to recover', 'no backup', 'nothing readable', or why the file is out of reach
   */
  recover(how: 'newest backup' | 'save what can be read'): AppState {
    const { file } = this.#start;
    if (this.#ledger || !this.#trouble || file === null) throw new Refused('nothing to recover');
    if (TROUBLE[this.#trouble.refusal.code as RefusalCode] !== 'damaged') throw this.#trouble;
    if (how === 'newest backup') restoreNewest(file, this.#clock);
    else salvage(file, this.#clock, this.#newId);
    this.#open('open');
    return this.state();
  }

  close(): void {
    this.#ledger?.close();
    this.#ledger = null;
  }
}

const noJob: Job = { step: () => undefined };

/** Writes a fault's stack to stderr. @returns the ref under which it stands there */
export function unexpected(error: unknown): string {
  const ref = randomBytes(4).toString('hex');
  const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`jarline: fault ${ref}: ${stack}\n`);
  return ref;
}
