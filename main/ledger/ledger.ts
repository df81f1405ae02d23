// One open ledger: its file, its rows, its acts and the family in memory. Handlers (reads/, writes/) work on this.
import type Database from 'better-sqlite3';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import type { Preferences } from '../../core/ledger/records';
import { jarLabel, type LabelParts } from '../../core/lineage/labels';
import { Acts } from './acts';
import type { Clock } from './clock';
import { FamilyIndex } from './family-index';
import { closeLedger, openInMemory, openLedger } from './open';
import { Rows } from './rows';

export interface LedgerOptions {
  readonly clock: Clock;
  readonly newId: () => string;
  /** What a keeper reads and writes who never said otherwise. */
  readonly defaults?: Preferences;
  readonly mode: 'open' | 'create';
  readonly demo: boolean;
}

export class Ledger {
  readonly rows: Rows;
  readonly acts: Acts;
  readonly #index: FamilyIndex;
  /** Version of the file that the index shows, and the one that was last told of. */
  #seen: number;
  #told: number;

  private constructor(
    readonly file: string,
    readonly db: Database.Database,
    readonly clock: Clock,
    readonly newId: () => string,
    readonly defaults: Preferences = NEUTRAL_PREFERENCES,
  ) {
    this.rows = new Rows(db);
    this.acts = new Acts(this.rows, clock, newId);
    this.#index = new FamilyIndex(this.rows);
    this.#seen = this.#dataVersion();
    this.#told = this.#seen;
    this.acts.settle = (act) => {
      const now = this.#dataVersion();
      const settled = this.#index.settle(this.acts.changesOf(act), now !== this.#seen);
      return () => {
        settled();
        this.#seen = now;
      };
    };
  }

  /** @throws Refused for every file that can't be opened */
  static open(file: string, options: LedgerOptions): Ledger {
    const db = openLedger(file, options);
    try {
      return new Ledger(file, db, options.clock, options.newId, options.defaults);
    } catch (error) {
      db.close();
      throw error;
    }
  }

  /** An empty ledger in memory that stands for a file that is not there yet. */
  static inMemory(file: string, options: Pick<LedgerOptions, 'clock' | 'newId' | 'defaults'>): Ledger {
    return new Ledger(file, openInMemory(options), options.clock, options.newId, options.defaults);
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

  /** The family in memory, read again where another process has changed the file since. */
  get index(): FamilyIndex {
    if (!this.db.inTransaction) {
      const now = this.#dataVersion();
      if (now !== this.#seen) {
        this.#index.rebuild();
        this.#seen = now;
      }
    }
    return this.#index;
  }

  get preferences(): Preferences {
    const [row] = this.rows.all('preferences');
    if (!row) return this.defaults;
    const { key: _key, uid: _uid, revision: _revision, ...preferences } = row;
    return preferences;
  }

  get about(): { uid: string; demo: boolean } {
    const row = this.db.prepare('SELECT uid, demo FROM ledger').get() as { uid: string; demo: number };
    return { uid: row.uid, demo: row.demo === 1 };
  }

  /** How a jar that is not there yet would be labelled among those that are. */
  labelFor(parts: LabelParts): string {
    return jarLabel(parts, this.index.needsYear(parts));
  }

  close(): void {
    closeLedger(this.db);
  }
}
