// One open ledger: its file, its rows, its acts and the family in memory. Handlers (reads/, writes/) work on this.
import type Database from 'better-sqlite3';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import type { Preferences } from '../../core/ledger/records';
import { jarLabel, type LabelParts } from '../../core/lineage/labels';
import { Acts } from './facts/open-act';
import type { Clock } from './clock';
import { changesOf, countOfChanges } from './facts/act-changes';
import { FamilyIndex } from './family-index';
import { closeLedger, copyChecked, isCheckedLater, openInMemory, openLedger } from './open';
import { PageCheck } from './page-check';
import { identityOf } from './place';
import { Rows } from './facts/fact-rows';
import { askRules, explain } from './rules/ask';
import { pendingOf } from './rules/pending';

/** More facts than this in one act, and the family is counted again from all of them. */
const MANY_CHANGES = 2000;

export interface LedgerOptions {
  readonly clock: Clock;
  readonly newId: () => string;
  /** What a keeper reads and writes who never said otherwise. */
  readonly defaults?: Preferences;
  readonly mode: 'open' | 'create';
  /** As OpenOptions has it. */
  readonly checkLaterFrom?: number | undefined;
  readonly demo: boolean;
}

/** Where an open ledger's file is now: where it was, nowhere to be found, cut short, or with another file in its place. */
export type Whereabouts = 'there' | 'gone' | 'cut' | 'another';

export class Ledger {
  readonly rows: Rows;
  readonly acts: Acts;
  readonly #index: FamilyIndex;
  /** Version of the file that the index shows, and the one that was last told of. */
  #seen: number;
  #told: number;
  /** Whether a call that only reads is being answered, and whether to look for what another process has written. */
  #reading = false;
  #look = true;

  /** null for a ledger in memory. */
  #identity: ReturnType<typeof identityOf>;

  /** What is checked of a file once it is open; null for a ledger in memory. */
  pages: PageCheck | null = null;

  private constructor(
    readonly file: string,
    readonly db: Database.Database,
    readonly clock: Clock,
    readonly newId: () => string,
    readonly defaults: Preferences = NEUTRAL_PREFERENCES,
  ) {
    this.#identity = db.memory ? null : identityOf(file);
    this.rows = new Rows(db);
    this.acts = new Acts(this.rows, clock, newId);
    this.#index = new FamilyIndex(this.rows);
    this.#seen = this.#dataVersion();
    this.#told = this.#seen;
    this.acts.ask = (act, { kind, why, sameLabelMeant = null }) =>
      askRules(this, { act, kind, why, sameLabelMeant });
    this.acts.explain = (act, row) => {
      const pending = pendingOf(this.rows, row);
      if (pending) explain(this, act, pending);
    };
    this.acts.settle = (act) => {
      const now = this.#dataVersion();
      const many = countOfChanges(this.rows, act) > MANY_CHANGES;
      const settled = this.#index.settle(changesOf(this.rows, act), many, now !== this.#seen);
      return () => {
        settled();
        this.#seen = now;
      };
    };
  }

  /**
   * @param file the file itself, no link to it (realFile): its companions lie beside it
   * @throws Refused for every file that can't be opened
   */
  static open(file: string, options: LedgerOptions): Ledger {
    const later = isCheckedLater(file, options);
    const db = openLedger(file, options);
    try {
      const ledger = new Ledger(file, db, options.clock, options.newId, options.defaults);
      ledger.pages = new PageCheck(db, !later);
      return ledger;
    } catch (error) {
      db.close();
      throw error;
    }
  }

  /** An empty ledger in memory that stands for a file that is not there yet. */
  static inMemory(
    file: string,
    options: Omit<LedgerOptions, 'mode' | 'demo'> & { readonly demo?: boolean },
  ): Ledger {
    return new Ledger(
      file,
      openInMemory({ demo: false, ...options }),
      options.clock,
      options.newId,
      options.defaults,
    );
  }

  /** Writes a ledger in memory to the file it stands for. @throws Refused 'file exists' where something lies there now */
  put(): void {
    copyChecked(this.db, [this.file]);
  }

  /**
   * Where the file is now. SQLite goes on writing into a file that was moved, deleted or replaced, and nobody who looks
   * under its name would find that.
   * @param named the name it was opened by: a link may lead elsewhere by now
   */
  whereabouts(named: string): Whereabouts {
    if (this.#identity === null) return 'there';
    const now = identityOf(named);
    if (now === null) return 'gone';
    if (now.same !== this.#identity.same) return 'another';
    // A ledger never gets shorter by itself, whichever of us writes to it.
    if (now.size < this.#identity.size) return 'cut';
    this.#identity = now;
    return 'there';
  }

  /** Rises when another process has written to the file. */
  #dataVersion(): number {
    return Number(this.db.pragma('data_version', { simple: true }));
  }

  /** Whether another process has written to the file since this was last asked. */
  changedElsewhere(): boolean {
    const now = this.#dataVersion();
    if (now === this.#told) return false;
    this.#told = now;
    return true;
  }

  /** Whether another process has written since the family in memory was read: so it can be within a transaction. */
  get behind(): boolean {
    return this.#dataVersion() !== this.#seen;
  }

  /** Another text once anything may have been written, by whomever; null within a transaction, which may be taken back. */
  get state(): string | null {
    if (this.db.inTransaction) return null;
    return `${this.rows.count('SELECT total_changes()')} ${this.#dataVersion()}`;
  }

  /** The family in memory, read again where another process has changed the file since. */
  get index(): FamilyIndex {
    if (this.#look && !this.db.inTransaction) {
      const now = this.#dataVersion();
      if (now !== this.#seen) {
        this.#index.rebuild();
        this.#seen = now;
      }
      this.#look = !this.#reading;
    }
    return this.#index;
  }

  /** Runs a call that only reads. It sees one family: whether another process has written is looked at once. */
  reading<T>(work: () => T): T {
    this.#reading = true;
    try {
      return work();
    } finally {
      this.#reading = false;
      this.#look = true;
    }
  }

  /**
   * Fills an empty ledger with a whole one, in one transaction. It is no act: the acts come with it.
   * @param work writes all of it; may throw Refused, and then nothing is kept
   */
  fill(work: () => void): void {
    this.db.exec('BEGIN IMMEDIATE');
    try {
      work();
      this.rows.forget();
      const settled = this.#index.settle([], true);
      this.db.exec('COMMIT');
      settled();
      this.#seen = this.#dataVersion();
    } catch (error) {
      if (this.db.inTransaction) this.db.exec('ROLLBACK');
      this.rows.forget();
      throw error;
    }
  }

  get preferences(): Preferences {
    const [row] = this.rows.all('preferences');
    if (!row) return this.defaults;
    const { key: _key, uid: _uid, ...preferences } = row;
    return preferences;
  }

  get about(): { uid: string; demo: boolean } {
    const row = this.db.prepare('SELECT uid, demo FROM ledger WHERE own = 1').get() as {
      uid: string;
      demo: number;
    };
    return { uid: row.uid, demo: row.demo === 1 };
  }

  /** How a jar that is not there yet would be labelled among those that are. */
  labelFor(parts: LabelParts): string {
    return jarLabel(parts, this.index.needsYear(parts));
  }

  /**
   * Lets go of a file that is no longer where it was. Its log is merged into it, wherever it is: left under the name, it
   * would be taken for the log of what lies there now. Where others have written to the log since, it is theirs.
   */
  abandon(where: Whereabouts): void {
    try {
      if (where !== 'cut' && this.#dataVersion() === this.#seen) this.db.pragma('wal_checkpoint(TRUNCATE)');
    } finally {
      this.db.close();
    }
  }

  /** @throws what kept it from being closed in order (closeLedger) */
  close(): void {
    closeLedger(this.db);
  }
}
