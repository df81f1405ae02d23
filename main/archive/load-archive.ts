// The lines of an archive into the tables of an empty ledger, in one transaction. The triggers, which write the journal,
// stand aside meanwhile: the journal comes in as it is, and what they hold is asked of the whole instead (ledger-findings.ts).
import type Database from 'better-sqlite3';
import { SqliteError } from 'better-sqlite3';
import type { z } from 'zod';
import { type ArchiveLine, FACT_LINES, type LineKind, LINES } from '../../core/archive/archive-format';
import { FACT_KINDS, type FactKind, FACTS, fieldsOf, isRef } from '../../core/ledger/facts/all-facts';
import { wrongIn } from '../../core/ledger/facts/wrong';
import { storedMoment } from '../../core/ledger/stored-moments';
import { plainIssue } from '../../core/plain-issue';
import { findingSentence } from '../../core/says/check-says';
import { recordFindings, ruleFindings } from '../ledger/ledger-findings';
import { columnsOf, type Stored, tableOf, toColumns, type Value, valuesOf } from '../ledger/facts/tables';
import type { Job } from '../ledger/job';
import type { Ledger } from '../ledger/ledger';
import { Refused } from '../refusal';
import { linesIn, type OpenArchive, parseShallow, Unreadable } from './open-archive';

/** How often is told how far it is (lines). */
const EVERY = 500;

interface Known {
  readonly key: number;
  readonly kind: FactKind;
}

/** Fills the tables. One line that is not as it should be ends it. */
class Loader {
  readonly #db: Database.Database;
  readonly #archive: OpenArchive;
  readonly #job: Job;
  readonly #ledgers = new Map<string, number>();
  readonly #acts = new Map<string, number>();
  readonly #records = new Map<string, Known>();
  readonly #blocks = new Map<string, number>();
  #done = 0;

  constructor(db: Database.Database, archive: OpenArchive, job: Job) {
    this.#db = db;
    this.#archive = archive;
    this.#job = job;
  }

  /** Every line of one kind, checked. What the tables say against it is said of its line. */
  #each<T>(of: string, schema: z.ZodType<T>, take: (line: T, where: string) => void): void {
    for (const { where, json } of linesIn(this.#archive, of)) {
      if (this.#done++ % EVERY === 0) this.#job.step(this.#done, null, 'reading records');
      const line = schema.safeParse(json);
      if (!line.success) throw wrong(where, line.error, json);
      try {
        take(line.data, where);
      } catch (error) {
        if (!(error instanceof SqliteError) || !error.code.startsWith('SQLITE_CONSTRAINT')) throw error;
        throw new Unreadable(`${where}: ${error.message.slice(0, 200)}`);
      }
    }
  }

  #lines<K extends LineKind>(of: K, take: (line: ArchiveLine<K>, where: string) => void): void {
    this.#each(of, LINES[of] as unknown as z.ZodType<ArchiveLine<K>>, take);
  }

  #prepare(table: string, columns: readonly string[]): Database.Statement {
    const places = columns.map(() => '?').join(', ');
    return this.#db.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${places})`);
  }

  load(): void {
    this.#loadLedgers();
    this.#loadActs();
    this.#loadRecords();
    this.#loadReadings();
    for (const kind of FACT_KINDS) this.#loadFacts(kind);
    this.#loadSteps();
    const draft = this.#prepare('draft', ['key', 'json', 'saved_at', 'saved_at_off']);
    this.#lines('drafts', ({ key, json, savedAt }) => draft.run(key, json, ...momentOf(savedAt)));
  }

  #loadLedgers(): void {
    const columns = ['key', 'uid', 'name', 'own', 'demo', 'made_at', 'made_at_off'];
    const insert = this.#prepare('ledger', columns);
    const own = this.#db.prepare(
      'UPDATE ledger SET uid = ?, name = ?, demo = ?, made_at = ?, made_at_off = ? WHERE key = 1',
    );
    this.#lines('ledgers', ({ no, id, name, own: isOwn, demo, madeAt }, where) => {
      if (isOwn !== (no === 1))
        throw new Unreadable(`${where}: the first ledger is the archive’s own, and no other`);
      this.#ledgers.set(id, no);
      if (isOwn) own.run(id, name ?? null, Number(demo), ...momentOf(madeAt));
      else insert.run(no, id, name ?? null, 0, Number(demo), ...momentOf(madeAt));
    });
    if (![...this.#ledgers.values()].includes(1)) throw new Unreadable('it does not say whose ledger it is');
  }

  #loadActs(): void {
    const insert = this.#prepare('act', [
      'key',
      'uid',
      'kind',
      'at',
      'at_off',
      'subject',
      'why',
      'undoes',
      'ledger',
    ]);
    const undone = this.#prepare('undone_with', ['act', 'undoes']);
    this.#lines('acts', ({ no, id, kind, at, subject, why, undoes = [], ledger }, where) => {
      const [first = null, ...others] = undoes.map((one) => found(this.#acts, one, where));
      const home = ledger === undefined ? 1 : found(this.#ledgers, ledger, where);
      insert.run(no, id, kind, ...momentOf(at), subject, why ?? null, first, home);
      for (const other of others) undone.run(no, other);
      this.#acts.set(id, no);
    });
  }

  #loadRecords(): void {
    const columns = ['key', 'uid', 'kind', 'made_in', 'home', 'home_form', 'form_no', 'gone_in'];
    const insert = this.#prepare('record', columns);
    this.#lines('records', ({ no, id, kind, madeIn, home, homeForm, form, goneIn }, where) => {
      const of = home === undefined ? 1 : found(this.#ledgers, home, where);
      const gone = goneIn === undefined ? null : found(this.#acts, goneIn, where);
      insert.run(no, id, tableOf(kind), found(this.#acts, madeIn, where), of, homeForm ?? null, form, gone);
      this.#records.set(id, { key: no, kind });
    });
  }

  #loadReadings(): void {
    const block = this.#prepare('reading_block', ['key', 'sha', 'n', 'follows']);
    const reading = this.#prepare('reading', ['block', 'no', 'at', 'at_off', 'c', 'left_out']);
    this.#lines('readings', ({ no, sha256, count, follows, readings }, where) => {
      block.run(no, sha256, count, follows === undefined ? null : found(this.#blocks, follows, where));
      this.#blocks.set(sha256, no);
      for (const one of readings)
        reading.run(no, one.no, ...momentOf(one.at), one.c, Number(one.leftOut ?? false));
    });
  }

  /** A form with keys in place of ids. */
  #stored(kind: FactKind, form: Readonly<Record<string, unknown>>, where: string): Partial<Stored<FactKind>> {
    const problem = wrongIn(kind, form);
    if (problem) throw new Unreadable(`${where}: ${problem.field}: ${problem.problem}`);
    const fact: Record<string, unknown> = {};
    for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
      const value = form[name] ?? null;
      fact[name] = isRef(as) && typeof value === 'string' ? this.#key(as, value, where) : value;
    }
    return fact as Partial<Stored<FactKind>>;
  }

  #key(as: string, id: string, where: string): number {
    if (as === 'block') return found(this.#blocks, id, where);
    if (as === 'ledger') return found(this.#ledgers, id, where);
    const known = found(this.#records, id, where);
    if (as !== 'record' && known.kind !== as)
      throw new Unreadable(`${where}: it points at a record of another kind`);
    return known.key;
  }

  #loadFacts(kind: FactKind): void {
    const insert = this.#prepare(tableOf(kind), ['key', ...columnsOf(kind)]);
    this.#each(
      `facts/${kind}`,
      FACT_LINES[kind] as z.ZodType<Record<string, unknown>>,
      ({ id, ...form }, where) => {
        const known = found(this.#records, String(id), where);
        if (known.kind !== kind) throw new Unreadable(`${where}: its record is of another kind`);
        if (kind === 'received') checkReceived(form, this.#records, where);
        insert.run(known.key, ...valuesOf(kind, this.#stored(kind, form, where)));
      },
    );
  }

  #loadSteps(): void {
    const insert = this.#prepare('journal', ['key', 'act', 'record', 'op', 'before']);
    this.#lines('steps', ({ no, act, record, did, before, homeForm }, where) => {
      const { key, kind } = found(this.#records, record, where);
      const form = before === undefined ? null : this.#before(kind, before, homeForm, where);
      insert.run(no, found(this.#acts, act, where), key, did, form && JSON.stringify(form));
    });
  }

  /** A form before as the journal keeps it: columns, without what is null. */
  #before(
    kind: FactKind,
    before: Record<string, unknown>,
    homeForm: number | undefined,
    where: string,
  ): Record<string, Value> {
    const { id: _id, ...line } = FACT_LINES[kind].shape;
    const form = (FACT_LINES[kind].omit({ id: true }) as z.ZodType<Record<string, unknown>>).safeParse(
      before,
    );
    if (!form.success || Object.keys(line).length === 0)
      throw new Unreadable(`${where}: the form before can’t be read`);
    const columns = toColumns(kind, this.#stored(kind, form.data, where));
    const filled = Object.entries(columns).filter(([, value]) => value !== null);
    return Object.fromEntries(
      homeForm === undefined ? filled : [...filled, ['home_form', homeForm]],
    ) as Record<string, Value>;
  }
}

const momentOf = (text: string): [number, number] => {
  const { seconds, offset } = storedMoment(text);
  return [seconds, offset];
};

/** @throws Unreadable where it is not in the archive, or only behind what points at it */
function found<T>(known: ReadonlyMap<string, T>, id: string, where: string): T {
  const one = known.get(id);
  if (one === undefined) throw new Unreadable(`${where}: it points at what is not in the archive`);
  return one;
}

function wrong(where: string, error: z.ZodError, json: unknown): Unreadable {
  const [first] = error.issues;
  const path = first?.path.map(String).join('.') ?? '';
  const problem = first ? plainIssue(first, json) : 'not understood';
  return new Unreadable(`${where}: ${`${path}${path === '' ? '' : ': '}${problem}`.slice(0, 200)}`);
}

/** A form that waits must be one of what it is about. */
function checkReceived(
  form: Record<string, unknown>,
  records: ReadonlyMap<string, Known>,
  where: string,
): void {
  const about = found(records, String(form.about), where).kind;
  const waiting = parseShallow(String(form.form), where);
  if (!FACTS[about].safeParse(waiting).success)
    throw new Unreadable(`${where}: the form that waits can’t be read`);
}

/** Takes the triggers away while it works, and puts the same ones back. */
function withoutTriggers(db: Database.Database, work: () => void): void {
  const triggers = db
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid")
    .all() as {
    name: string;
    sql: string;
  }[];
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`);
  work();
  for (const { sql } of triggers) db.exec(sql);
}

/**
 * Loads an archive into an empty ledger.
 * @param beside keeps what lies beside the ledger, just before the ledger itself is kept; its answer is called where that fails
 * @throws Refused 'ledger not empty', 'cancelled'; Unreadable with what is wrong
 */
export function loadLines(
  ledger: Ledger,
  archive: OpenArchive,
  job: Job,
  beside: () => { undo: () => void },
): void {
  const { db } = ledger;
  let kept: { undo: () => void } | null = null;
  try {
    ledger.fill(() => {
      const count = Number(
        db.prepare('SELECT (SELECT count(*) FROM act) + (SELECT count(*) FROM draft)').pluck().get(),
      );
      if (count > 0) throw new Refused('ledger not empty');
      db.pragma('defer_foreign_keys = ON');
      withoutTriggers(db, () => new Loader(db, archive, job).load());
      job.step(0, null, 'checking the rules');
      // What points nowhere can't be asked about: the rules come after.
      for (const finding of recordFindings(db)) throw new Unreadable(findingSentence(finding));
      for (const finding of ruleFindings(db)) throw new Unreadable(findingSentence(finding));
      kept = beside();
    });
  } catch (error) {
    (kept as { undo: () => void } | null)?.undo();
    throw error;
  }
}
