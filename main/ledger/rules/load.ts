// Reads what an act touched as the facts that the rule book is asked about (core/rules/facts.ts), with the neighbours its
// rules need: the one place that knows in which tables they lie. A fixed number of statements, however much was touched.
import type {
  Facts,
  HoldFact,
  JarFact,
  Measured,
  MovementFact,
  ObservationFact,
  PackageFact,
  PortionFact,
  SeedingFact,
  UseFact,
} from '../../../core/rules/facts';
import type { Rows } from '../rows';

/** Keys of what is asked about. */
export interface Touched {
  readonly jars: ReadonlySet<number>;
  readonly holds: readonly number[];
  readonly packages: readonly number[];
}

/** Of so large a share of the ledger all is read: quicker than to look for each. */
const ALL_SHARE = 0.3;

const WRITTEN = 'SELECT row_key FROM journal WHERE act = @act AND table_name =';
/** Jars that a row written by an act belongs to, by what is there after it. */
const TOUCHED_JARS = `
  SELECT row_key FROM journal WHERE act = @act AND table_name = 'jar'
  UNION SELECT key FROM jar WHERE batch IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'batch' AND before IS NOT NULL)
  UNION SELECT key FROM jar WHERE hold IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'hold' AND before IS NOT NULL)
  UNION SELECT jar FROM portion WHERE key IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'portion')
  UNION SELECT jar FROM outcome WHERE key IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'outcome')
  UNION SELECT jar FROM addition WHERE key IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'addition')
  UNION SELECT jar FROM seeding WHERE key IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'seeding')
  UNION SELECT from_jar FROM seeding WHERE from_jar IS NOT NULL AND key IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'seeding')
  UNION SELECT jar FROM seeding WHERE package IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'package')
  UNION SELECT jar FROM addition WHERE package IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'package')
  UNION SELECT key FROM jar WHERE milk_package IN (SELECT row_key FROM journal WHERE act = @act AND table_name = 'package')`;

/** What an act touched. */
export function touchedBy(rows: Rows, act: number): Touched {
  const keys = (sql: string): number[] => rows.prepare(sql).pluck().all({ act }) as number[];
  return {
    jars: new Set(keys(TOUCHED_JARS)),
    holds: keys(`${WRITTEN} 'hold'`),
    packages: keys(`${WRITTEN} 'package'`),
  };
}

/** A row that the tables would not take, to be looked at by the rules all the same. */
export interface Pending {
  readonly seeding?: Omit<SeedingFact, 'key' | 'writtenIn'>;
  readonly observation?: ObservationFact;
  readonly day?: { readonly batch: number; readonly madeOn: string | null };
}

interface JarRow {
  key: number;
  batch: number;
  day: string | null;
  word: string | null;
  letter: string;
  state: JarFact['state'];
  volumeMl: number | null;
  on_shelf: number | null;
  mistakeIn: number | null;
  gone_on: string | null;
  hold: number | null;
}

const JARS = `
  SELECT j.key, j.batch, b.made_on AS day, b.word, j.letter, j.state, j.on_shelf, j.gone_on, j.hold,
         CASE j.final_volume_unit WHEN 'mL' THEN j.final_volume_value END AS volumeMl,
         CASE j.state WHEN 'mistake' THEN (
           SELECT max(act) FROM journal WHERE table_name = 'jar' AND row_key = j.key
              AND json_extract(after, '$.state') = 'mistake' AND json_extract(before, '$.state') IS NOT 'mistake'
         ) END AS mistakeIn
    FROM jar j JOIN batch b ON b.key = j.batch`;

const jarFact = ({ on_shelf, gone_on: _gone, hold: _hold, ...row }: JarRow): JarFact => ({
  ...row,
  stillThere: on_shelf === 1,
});

interface AmountRow {
  amount_value: number | null;
  amount_unit: Measured['unit'] | null;
}
const measured = ({ amount_value: value, amount_unit: unit }: AmountRow): Measured | null =>
  value === null || unit === null ? null : { value, unit };

class Loader {
  readonly #rows: Rows;
  /** The jars asked about as a JSON list; null: all there are. */
  readonly #list: string | null;

  constructor(rows: Rows, jars: ReadonlySet<number>) {
    this.#rows = rows;
    const all = jars.size > 50 && jars.size > rows.count('SELECT count(*) FROM jar') * ALL_SHARE;
    this.#list = all ? null : JSON.stringify([...jars]);
  }

  /** Rows of which one column is of the jars asked about. */
  #of<T>(select: string, column: string): T[] {
    if (this.#list === null) return this.#rows.prepare(`${select} ORDER BY 1`).all() as T[];
    const among = `${column} IN (SELECT value FROM json_each(?))`;
    return this.#rows.prepare(`${select} WHERE ${among} ORDER BY 1`).all(this.#list) as T[];
  }

  /** Rows with these keys. */
  #by<T>(select: string, column: string, keys: Iterable<number>): T[] {
    const list = [...keys];
    if (list.length === 0) return [];
    const among = `${column} IN (SELECT value FROM json_each(?))`;
    return this.#rows.prepare(`${select} WHERE ${among} ORDER BY 1`).all(JSON.stringify(list)) as T[];
  }

  seedings(): SeedingFact[] {
    const select = `
      SELECT s.key, s.jar, s.from_jar, s.portion, s.amount_value, s.amount_unit,
             CASE WHEN f.state = 'mistake' THEN (
               SELECT min(act) FROM journal WHERE table_name = 'seeding' AND row_key = s.key) END AS writtenIn
        FROM seeding s LEFT JOIN jar f ON f.key = s.from_jar`;
    type Found = AmountRow &
      Pick<SeedingFact, 'key' | 'jar' | 'portion' | 'writtenIn'> & { from_jar: number | null };
    const found = new Map<number, Found>();
    for (const row of this.#of<Found>(select, 's.jar')) found.set(row.key, row);
    if (this.#list !== null) for (const row of this.#of<Found>(select, 's.from_jar')) found.set(row.key, row);
    return [...found.values()].map(({ key, jar, from_jar: fromJar, portion, writtenIn, ...amount }) => ({
      key, jar, fromJar, portion, writtenIn, amount: measured(amount),
    })); // prettier-ignore
  }

  /** The jars asked about and their neighbours. */
  jars(neighbours: Iterable<number>): JarRow[] {
    const found = new Map<number, JarRow>();
    for (const row of this.#of<JarRow>(JARS, 'j.key')) found.set(row.key, row);
    const missing = new Set([...neighbours].filter((key) => !found.has(key)));
    for (const row of this.#by<JarRow>(JARS, 'j.key', missing)) found.set(row.key, row);
    return [...found.values()];
  }

  /** All seedings among jars of some days. */
  sameDay(days: ReadonlySet<string>): { jar: number; fromJar: number }[] {
    return days.size === 0
      ? []
      : (this.#rows
          .prepare(
            `SELECT s.jar, s.from_jar AS fromJar FROM batch b JOIN jar j ON j.batch = b.key JOIN seeding s ON s.jar = j.key
               JOIN jar f ON f.key = s.from_jar JOIN batch o ON o.key = f.batch
              WHERE o.made_on = b.made_on AND b.made_on IN (SELECT value FROM json_each(?))`,
          )
          .all(JSON.stringify([...days])) as { jar: number; fromJar: number }[]);
  }

  portions(used: Iterable<number>): (PortionFact & { readonly goneOn: string | null })[] {
    const select =
      'SELECT key, jar, part, pieces, kept_on, gone_on, reserve, amount_value, amount_unit FROM portion';
    type Found = AmountRow & Pick<PortionFact, 'key' | 'jar' | 'part' | 'pieces'> & { kept_on: string; gone_on: string | null; reserve: number }; // prettier-ignore
    const found = new Map<number, Found>();
    for (const row of this.#of<Found>(select, 'jar')) found.set(row.key, row);
    const missing = new Set([...used].filter((key) => !found.has(key)));
    for (const row of this.#by<Found>(select, 'key', missing)) found.set(row.key, row);
    return [...found.values()].map(({ kept_on, gone_on, reserve, key, jar, part, pieces, ...amount }) => ({
      key, jar, part, pieces, amount: measured(amount), keptOn: kept_on, goneOn: gone_on, reserve: reserve === 1,
    })); // prettier-ignore
  }

  holds(keys: Iterable<number>): HoldFact[] {
    return this.#by('SELECT key, started_at AS began, ended_at AS ended, hours FROM hold', 'key', keys);
  }

  outcomes(): { observations: ObservationFact[]; interruptions: { jar: number; hours: number }[] } {
    // Told on: the latest day on which these days of being open were written.
    const found = this.#of<{
      jar: number; ph: number | null; early_ph: number | null; set_after_hours: number | null; set_by_hours: number | null;
      set_at_take_out: number | null; power_cut_hours: number | null; opened_days: number | null; toldOn: string | null;
    }>(
      `SELECT jar, ph, early_ph, set_after_hours, set_by_hours, set_at_take_out, power_cut_hours, opened_days,
              CASE WHEN opened_days IS NOT NULL THEN (
                SELECT max(substr(a.at, 1, 10)) FROM journal w JOIN act a ON a.key = w.act
                 WHERE w.table_name = 'outcome' AND w.row_key = outcome.key
                   AND json_extract(w.after, '$.opened_days') IS opened_days
                   AND json_extract(w.before, '$.opened_days') IS NOT opened_days) END AS toldOn
         FROM outcome`,
      'jar',
    ); // prettier-ignore
    return {
      observations: found.map((row) => ({
        jar: row.jar,
        toldOn: row.toldOn,
        daysOpen: row.opened_days,
        acidity: [row.ph, row.early_ph].filter((ph) => ph !== null),
        setAfterHours: row.set_after_hours,
        setByHours: row.set_by_hours,
        setAtTakeOut: row.set_at_take_out === null ? null : row.set_at_take_out === 1,
      })),
      interruptions: found.flatMap(({ jar, power_cut_hours: hours }) =>
        hours === null ? [] : [{ jar, hours }],
      ),
    };
  }

  uses(): UseFact[] {
    const used = (select: string, column: string): UseFact[] => this.#of<UseFact>(select, column);
    return [
      ...used(`SELECT key AS jar, milk_package AS package, 'milk' AS "as", NULL AS source FROM jar`, 'key'),
      ...used(`SELECT jar, package, 'addition' AS "as", NULL AS source FROM addition`, 'jar'),
      ...used(`SELECT jar, package, 'source' AS "as", source FROM seeding`, 'jar'),
    ].filter((use) => use.package !== null);
  }

  packages(keys: Iterable<number>): PackageFact[] {
    return this.#by(
      'SELECT key, name, "of", source, bought_on AS boughtOn, opened_on AS openedOn FROM package',
      'key',
      keys,
    );
  }
}

/**
 * @param label what a jar is called
 * @param alsoDays days whose seedings among their own jars are wanted in any case
 */
export function loadFacts(
  rows: Rows,
  touched: Touched,
  label: (jar: JarFact) => string,
  pending: Pending = {},
  alsoDays: Iterable<string> = [],
): Facts {
  const asked = new Set(touched.jars);
  if (pending.seeding) asked.add(pending.seeding.jar);
  if (pending.seeding?.fromJar) asked.add(pending.seeding.fromJar);
  if (pending.observation) asked.add(pending.observation.jar);
  if (pending.day) for (const { key } of rows.where('jar', 'batch', pending.day.batch)) asked.add(key);
  const load = new Loader(rows, asked);
  const seedings = load.seedings();
  if (pending.seeding) seedings.push({ ...pending.seeding, key: Number.MAX_SAFE_INTEGER, writtenIn: null });
  const found = load.jars(
    seedings.flatMap(({ jar, fromJar }) => (fromJar === null ? [jar] : [jar, fromJar])),
  );
  const jars = new Map(found.map((row) => [row.key, withDay(jarFact(row), pending)]));
  const days = new Set(alsoDays);
  for (const { jar, fromJar } of seedings) {
    const day = jars.get(jar)?.day;
    if (fromJar !== null && day && jars.get(fromJar)?.day === day) days.add(day);
  }
  const portions = load.portions(seedings.flatMap(({ portion }) => portion ?? []));
  const { observations, interruptions } = load.outcomes();
  if (pending.observation) observations.push(pending.observation);
  const stays = found.flatMap(({ key, hold }) =>
    hold === null || !asked.has(key) ? [] : [{ jar: key, hold }],
  );
  const uses = load.uses();
  return {
    // What an act took away is asked about no more.
    touched: new Set([...asked].filter((key) => jars.has(key))),
    jars,
    seedings,
    sameDay: [...load.sameDay(days), ...(pending.seeding ? [pending.seeding] : [])],
    portions: new Map(portions.map((portion) => [portion.key, portion])),
    movements: [
      ...found.flatMap(({ key, gone_on: day }) => gone(key, null, day)),
      ...portions.flatMap(({ key, jar, goneOn }) => gone(jar, key, goneOn)),
    ],
    holds: new Map(
      load
        .holds(new Set([...touched.holds, ...stays.map(({ hold }) => hold)]))
        .map((hold) => [hold.key, hold]),
    ),
    stays,
    interruptions,
    observations,
    packages: new Map(
      load
        .packages(new Set([...touched.packages, ...uses.map((use) => use.package)]))
        .map((one) => [one.key, one]),
    ),
    uses,
    label,
  };
}

const gone = (jar: number, portion: number | null, day: string | null): MovementFact[] =>
  day === null ? [] : [{ jar, portion, kind: 'gone', day }];

const withDay = (jar: JarFact, { day }: Pending): JarFact =>
  day && day.batch === jar.batch ? { ...jar, day: day.madeOn } : jar;
