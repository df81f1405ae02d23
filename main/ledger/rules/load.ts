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
  StayFact,
  UseFact,
} from '../../../core/rules/facts';
import { momentText } from '../../../core/ledger/moments';
import { whereabouts } from '../projection/jar';
import { outcomes } from '../projection/outcome';
import type { Rows } from '../rows';

/** Keys of what is asked about. */
export interface Touched {
  readonly jars: ReadonlySet<number>;
  readonly holds: readonly number[];
  readonly packages: readonly number[];
}

/** Of so large a share of the ledger all is read: quicker than to look for each. */
const ALL_SHARE = 0.3;

/** Facts that an act wrote: made, changed, taken or brought back. */
const WRITTEN = `
  WITH written (key, kind, made) AS MATERIALIZED (
    SELECT key, kind, 1 FROM record WHERE made_in = @act
    UNION SELECT r.key, r.kind, r.made_in = @act FROM journal j JOIN record r ON r.key = j.record WHERE j.act = @act)`;
const of = (kind: string, column = 'jar', table = kind): string =>
  `SELECT t.${column} FROM written w CROSS JOIN ${table} t ON t.key = w.key WHERE w.kind = '${kind}' AND t.${column} IS NOT NULL`;
const through = (kind: string, table: string): string =>
  `SELECT o.jar FROM written w CROSS JOIN ${kind} t ON t.key = w.key CROSS JOIN ${table} o ON o.key = t.${table}
    WHERE w.kind = '${kind}' AND t.${table} IS NOT NULL`;
const ofPackage = (table: string): string =>
  `SELECT t.jar FROM written w CROSS JOIN use u ON u.package = w.key CROSS JOIN ${table} t ON t.key = u.${table}
    WHERE w.kind = 'package'`;

/** Jars that a fact written by an act belongs to, by what is there after it. */
const TOUCHED_JARS = `${WRITTEN}
  SELECT key FROM written WHERE kind = 'jar'
  UNION SELECT j.key FROM written w CROSS JOIN jar j ON j.batch = w.key WHERE w.kind = 'batch' AND NOT w.made
  UNION SELECT s.jar FROM written w CROSS JOIN stay s ON s.hold = w.key WHERE w.kind = 'hold' AND NOT w.made
  UNION SELECT s.jar FROM written w CROSS JOIN interruption t ON t.key = w.key CROSS JOIN stay s ON s.hold = t.hold
         WHERE w.kind = 'interruption'
  UNION ${['stay', 'milk', 'portion', 'addition', 'seeding', 'observation', 'movement'].map((kind) => of(kind)).join('\n  UNION ')}
  UNION ${of('seeding', 'from_jar')}
  UNION SELECT json_extract(before, '$.jar') FROM journal
         WHERE act = @act AND op = 'take' AND json_extract(before, '$.jar') IS NOT NULL
  UNION SELECT p.jar FROM journal j CROSS JOIN portion p ON p.key = json_extract(j.before, '$.portion')
         WHERE j.act = @act AND j.op = 'take'
  UNION SELECT o.jar FROM journal j CROSS JOIN observation o ON o.key = json_extract(j.before, '$.observation')
         WHERE j.act = @act AND j.op = 'take'
  UNION ${through('movement', 'portion')}
  UNION ${through('acidity', 'observation')}
  UNION ${['milk', 'addition', 'seeding'].map((table) => through('use', table)).join('\n  UNION ')}
  UNION ${['milk', 'addition', 'seeding'].map(ofPackage).join('\n  UNION ')}`;

/** What an act touched. */
export function touchedBy(rows: Rows, act: number): Touched {
  const keys = (sql: string): number[] => rows.prepare(sql).pluck().all({ act }) as number[];
  return {
    jars: new Set(keys(TOUCHED_JARS)),
    holds: keys(`${WRITTEN} SELECT key FROM written WHERE kind = 'hold'`),
    packages: keys(`${WRITTEN} SELECT key FROM written WHERE kind = 'package'`),
  };
}

/** A row that the tables would not take, to be looked at by the rules all the same. */
export interface Pending {
  readonly seeding?: Omit<SeedingFact, 'key' | 'writtenIn'>;
  readonly observation?: ObservationFact;
  readonly hold?: HoldFact;
  /** Said to be on the shelf and to be gone on a day: one movement can't tell both. */
  readonly bothSaid?: { readonly jar: number; readonly goneOn: string };
  readonly day?: { readonly batch: number; readonly madeOn: string | null };
}

interface JarRow {
  key: number;
  batch: number;
  day: string | null;
  word: string | null;
  letter: string;
  state: JarFact['state'] | 'not made';
  volumeMl: number | null;
  mistakeIn: number | null;
}

const JARS = `
  SELECT j.key, j.batch, b.made_on AS day, b.word, j.letter, j.state,
         CASE j.final_volume_u WHEN 'mL' THEN j.final_volume_v END AS volumeMl,
         CASE j.state WHEN 'mistake' THEN (
           SELECT max(act) FROM journal
            WHERE record = j.key AND op = 'change' AND json_extract(before, '$.state') IS NOT 'mistake'
         ) END AS mistakeIn
    FROM jar j JOIN batch b ON b.key = j.batch`;

const jarFact = (row: JarRow, stillThere: boolean): JarFact => ({
  ...row,
  state: row.state === 'not made' ? 'planned' : row.state,
  stillThere,
});

interface AmountRow {
  amount_v: number | null;
  amount_u: Measured['unit'] | null;
}
const measured = ({ amount_v: value, amount_u: unit }: AmountRow): Measured | null =>
  value === null || unit === null ? null : { value, unit };

interface MovedRow extends AmountRow {
  key: number;
  on: number | null;
  kind: Moved['kind'];
  day: string | null;
  at: number | null;
  at_off: number;
}
type Moved = Parameters<typeof whereabouts>[0][number];
type Whereabouts = ReturnType<typeof whereabouts>;

const MOVED = 'SELECT key, OWNER AS "on", kind, day, at, at_off, amount_v, amount_u FROM movement';

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
      SELECT s.key, s.jar, s.from_jar, s.portion, s.actual_v AS amount_v, s.actual_u AS amount_u,
             CASE WHEN f.state = 'mistake' THEN (SELECT made_in FROM record WHERE key = s.key) END AS writtenIn
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

  /** What became of jars, or of portions, by the last word on each. */
  #whereabouts(rows: readonly MovedRow[]): ReadonlyMap<number, Whereabouts> {
    const moved = new Map<number, Moved[]>();
    for (const { on, kind, day, at, at_off, ...amount } of rows.toSorted((a, b) => a.key - b.key)) {
      if (on === null) continue;
      const one = {
        kind,
        day,
        at: at === null ? null : momentText(at, at_off),
        amount:
          amount.amount_v === null
            ? null
            : { value: amount.amount_v, unit: amount.amount_u ?? 'mL', typed: null },
      };
      moved.set(on, [...(moved.get(on) ?? []), one]);
    }
    return new Map(Array.from(moved, ([on, all]) => [on, whereabouts(all)]));
  }

  jarsMoved(): ReadonlyMap<number, Whereabouts> {
    return this.#whereabouts(this.#of<MovedRow>(`${MOVED.replace('OWNER', 'jar')}`, 'jar'));
  }

  portions(used: Iterable<number>): (PortionFact & { readonly goneOn: string | null })[] {
    const select = 'SELECT key, jar, part, pieces, kept_on, reserve, amount_v, amount_u FROM portion';
    type Found = AmountRow & Pick<PortionFact, 'key' | 'jar' | 'part' | 'pieces'> & { kept_on: string; reserve: number }; // prettier-ignore
    const found = new Map<number, Found>();
    for (const row of this.#of<Found>(select, 'jar')) found.set(row.key, row);
    const missing = new Set([...used].filter((key) => !found.has(key)));
    for (const row of this.#by<Found>(select, 'key', missing)) found.set(row.key, row);
    const moved = this.#whereabouts(
      this.#by<MovedRow>(MOVED.replace('OWNER', 'portion'), 'portion', found.keys()),
    );
    return [...found.values()].map(({ kept_on, reserve, key, jar, part, pieces, ...amount }) => ({
      key, jar, part, pieces, amount: measured(amount), keptOn: kept_on, reserve: reserve === 1,
      goneOn: moved.get(key)?.onShelf === false ? (moved.get(key)?.goneOn ?? kept_on) : null,
    })); // prettier-ignore
  }

  holds(keys: Iterable<number>): HoldFact[] {
    const moment = (at: number | null, off: number): string | null =>
      at === null ? null : momentText(at, off);
    return this.#by<{
      key: number;
      began: number | null;
      began_off: number;
      ended: number | null;
      ended_off: number;
      hours: number | null;
    }>('SELECT key, began, began_off, ended, ended_off, hours FROM hold', 'key', keys).map(
      ({ key, began, began_off, ended, ended_off, hours }) => ({
        key,
        began: moment(began, began_off),
        ended: moment(ended, ended_off),
        hours,
      }),
    );
  }

  stays(): StayFact[] {
    return this.#of<StayFact & { key: number }>('SELECT key, jar, hold FROM stay', 'jar').map(
      ({ jar, hold }) => ({ jar, hold }),
    );
  }

  /** Days on which days of being open were told, by jar: the latest of each. */
  #toldOn(): ReadonlyMap<number, string> {
    const told = this.#of<{ jar: number; at: number; at_off: number }>(
      `SELECT o.jar, a.at, a.at_off FROM (SELECT key, jar, days_open FROM observation WHERE days_open IS NOT NULL) o
         JOIN record r ON r.key = o.key
         JOIN act a ON a.key = coalesce((SELECT max(j.act) FROM journal j WHERE j.record = o.key AND j.op <> 'take'
           AND json_extract(j.before, '$.days_open') IS NOT o.days_open), r.made_in)`,
      'o.jar',
    );
    const found = new Map<number, string>();
    for (const { jar, at, at_off } of told) {
      const day = momentText(at, at_off).slice(0, 10);
      if (day > (found.get(jar) ?? '')) found.set(jar, day);
    }
    return found;
  }

  outcomes(): { observations: ObservationFact[]; interruptions: { jar: number; hours: number }[] } {
    const found = outcomes(
      this.#rows.facts,
      this.#list === null ? null : (JSON.parse(this.#list) as number[]),
    );
    const told = this.#toldOn();
    return {
      observations: Array.from(
        found,
        ([jar, { ph, earlyPh, openedDays, setAfterHours, setByHours, setAtTakeOut }]) => ({
          jar,
          toldOn: told.get(jar) ?? null,
          daysOpen: openedDays,
          acidity: [ph, earlyPh].filter((one) => one !== null),
          setAfterHours,
          setByHours,
          setAtTakeOut,
        }),
      ),
      interruptions: Array.from(found).flatMap(([jar, { powerCutHours: hours }]) =>
        hours === null ? [] : [{ jar, hours }],
      ),
    };
  }

  uses(): UseFact[] {
    const used = (table: string, as: string, source: string): UseFact[] =>
      this.#of<UseFact>(
        `SELECT t.jar, u.package, '${as}' AS "as", ${source} AS source FROM ${table} t JOIN use u ON u.${table} = t.key`,
        't.jar',
      );
    return [
      ...used('milk', 'milk', 'NULL'),
      ...used('addition', 'addition', 'NULL'),
      ...used('seeding', 'source', 't.source'),
    ];
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
  if (pending.bothSaid) asked.add(pending.bothSaid.jar);
  if (pending.day) for (const { key } of rows.where('jar', 'batch', pending.day.batch)) asked.add(key);
  const load = new Loader(rows, asked);
  const seedings = load.seedings();
  if (pending.seeding) seedings.push({ ...pending.seeding, key: Number.MAX_SAFE_INTEGER, writtenIn: null });
  const found = load.jars(
    seedings.flatMap(({ jar, fromJar }) => (fromJar === null ? [jar] : [jar, fromJar])),
  );
  const moved = load.jarsMoved();
  const jars = new Map(
    found.map((row) => [
      row.key,
      withDay(
        jarFact(row, moved.get(row.key)?.onShelf === true || row.key === pending.bothSaid?.jar),
        pending,
      ),
    ]),
  );
  const days = new Set(alsoDays);
  for (const { jar, fromJar } of seedings) {
    const day = jars.get(jar)?.day;
    if (fromJar !== null && day && jars.get(fromJar)?.day === day) days.add(day);
  }
  const portions = load.portions(seedings.flatMap(({ portion }) => portion ?? []));
  const { observations, interruptions } = load.outcomes();
  if (pending.observation) observations.push(pending.observation);
  const stays = load.stays();
  const wanted = new Set([...touched.holds, ...stays.map(({ hold }) => hold)]);
  const holds = new Map(load.holds(wanted).map((hold) => [hold.key, hold]));
  if (pending.hold) holds.set(pending.hold.key, pending.hold);
  const uses = load.uses();
  return {
    // What an act took away is asked about no more.
    touched: new Set([...asked].filter((key) => jars.has(key))),
    jars,
    seedings,
    sameDay: [...load.sameDay(days), ...(pending.seeding ? [pending.seeding] : [])],
    portions: new Map(portions.map((portion) => [portion.key, portion])),
    movements: [
      ...Array.from(moved).flatMap(([key, { goneOn }]) => gone(key, null, goneOn)),
      ...(pending.bothSaid ? gone(pending.bothSaid.jar, null, pending.bothSaid.goneOn) : []),
      ...portions.flatMap(({ key, jar, goneOn }) => gone(jar, key, goneOn)),
    ],
    holds,
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
