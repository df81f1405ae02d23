// Reads what an act touched as the facts that the rule book is asked about (core/rules/asked-facts.ts), with the neighbours its
// rules need: the one place that knows in which tables they lie. A fixed number of statements, however much was touched.
import type {
  Facts,
  HoldFact,
  InterruptionFact,
  JarFact,
  Measured,
  MovementFact,
  ObservationFact,
  PackageFact,
  PortionFact,
  SeedingFact,
  StayFact,
  ToldFact,
  UseFact,
} from '../../../core/rules/asked-facts';
import { momentText } from '../../../core/ledger/stored-moments';
import type { Rows } from '../facts/fact-rows';

/** Keys of what is asked about. */
export interface Touched {
  readonly jars: ReadonlySet<number>;
  readonly holds: readonly number[];
  readonly packages: readonly number[];
}

/** Of so large a share of the ledger all is read: quicker than to look for each. */
const ALL_SHARE = 0.3;

/**
 * Facts that were there before the newest act and that it changed, took or brought back. What it made has keys from @first on:
 * those are found by their keys, since an import makes some hundred thousand.
 */
const WRITTEN = `
  WITH written (key, kind) AS MATERIALIZED (
    SELECT DISTINCT r.key, r.kind FROM journal j JOIN record r ON r.key = j.record WHERE j.act = @act AND r.made_in <> @act)`;
/**
 * The same of what was written before and of what was made. A jar that was made is touched by itself. By no index but the
 * key: by that of another column nearly all rows lie before @first.
 */
const either = (select: string, from: string, kind: string, where: string, made = where): string =>
  `SELECT ${select} FROM written w CROSS JOIN ${kind} t ON t.key = w.key ${from} WHERE w.kind = '${kind}' AND ${where}
   UNION SELECT ${select} FROM ${kind} t NOT INDEXED ${from} WHERE t.key >= @first AND ${made}`;
const of = (kind: string, column = 'jar'): string =>
  either(`t.${column}`, '', kind, `t.${column} IS NOT NULL`, `t.${column} < @first`);
const through = (kind: string, table: string): string =>
  either(
    'o.jar',
    `CROSS JOIN ${table} o ON o.key = t.${table}`,
    kind,
    `t.${table} IS NOT NULL`,
    `o.jar < @first`,
  );
const ofPackage = (table: string): string =>
  `SELECT t.jar FROM written w CROSS JOIN use u ON u.package = w.key CROSS JOIN ${table} t ON t.key = u.${table}
    WHERE w.kind = 'package'`;

/** Jars that a fact written by an act belongs to, by what is there after it. */
const TOUCHED_JARS = `${WRITTEN}
  SELECT key FROM written WHERE kind = 'jar'
  UNION ALL SELECT key FROM jar WHERE key >= @first
  UNION SELECT j.key FROM written w CROSS JOIN jar j ON j.batch = w.key WHERE w.kind = 'batch'
  UNION SELECT s.jar FROM written w CROSS JOIN stay s ON s.hold = w.key WHERE w.kind = 'hold'
  UNION ${either('s.jar', 'CROSS JOIN stay s ON s.hold = t.hold', 'interruption', 'true')}
  UNION ${['stay', 'milk', 'portion', 'addition', 'seeding', 'observation', 'movement', 'lab_result', 'serving', 'photograph'].map((kind) => of(kind)).join('\n  UNION ')}
  UNION ${of('seeding', 'from_jar')}
  UNION SELECT json_extract(before, '$.jar') FROM journal
         WHERE act = @act AND op = 'take' AND json_extract(before, '$.jar') IS NOT NULL
  UNION SELECT s.from_jar FROM journal j CROSS JOIN jar t ON t.key = j.record CROSS JOIN seeding s ON s.jar = t.key
         WHERE j.act = @act AND j.op = 'change' AND s.from_jar IS NOT NULL AND json_extract(j.before, '$.state') IS NOT t.state
  UNION SELECT p.jar FROM journal j CROSS JOIN portion p ON p.key = json_extract(j.before, '$.portion')
         WHERE j.act = @act AND j.op = 'take'
  UNION SELECT o.jar FROM journal j CROSS JOIN observation o ON o.key = json_extract(j.before, '$.observation')
         WHERE j.act = @act AND j.op = 'take'
  UNION ${through('movement', 'portion')}
  UNION ${through('lab_result', 'portion')}
  UNION ${through('acidity', 'observation')}
  UNION ${['milk', 'addition', 'seeding'].map((table) => through('use', table)).join('\n  UNION ')}
  UNION ${['milk', 'addition', 'seeding'].map(ofPackage).join('\n  UNION ')}`;

/** What an act touched. */
export function touchedBy(rows: Rows, act: number): Touched {
  const first = rows.prepare('SELECT min(key) FROM record WHERE made_in = ?').pluck().get(act) as
    number | null;
  const keys = (sql: string): number[] => rows.prepare(sql).pluck().all({ act, first }) as number[];
  return {
    jars: new Set(keys(TOUCHED_JARS)),
    holds:
      keys(`${WRITTEN} SELECT key FROM written WHERE kind = 'hold' UNION ALL SELECT key FROM hold WHERE key >= @first
      UNION ${of('interruption', 'hold')}`),
    packages: keys(
      `${WRITTEN} SELECT key FROM written WHERE kind = 'package' UNION ALL SELECT key FROM package WHERE key >= @first`,
    ),
  };
}

/** A fact that the tables would not take, to be looked at by the rules all the same. */
export interface Pending {
  readonly seeding?: Omit<SeedingFact, 'key' | 'writtenIn'>;
  readonly observation?: Omit<ObservationFact, 'key'>;
  readonly hold?: HoldFact;
  readonly stay?: StayFact;
  readonly day?: { readonly batch: number } & Pick<JarFact, 'day' | 'first' | 'last'>;
}
/** The key of what is not there yet. */
const NEW = Number.MAX_SAFE_INTEGER;

const JARS = `
  SELECT j.key, j.batch, b.made_on AS day, coalesce(b.made_on, b.made_from) AS first, coalesce(b.made_on, b.made_to) AS last,
         b.word, j.letter, j.state,
         j.final_volume_v AS amount_v, j.final_volume_u AS amount_u,
         CASE j.state WHEN 'mistake' THEN (
           SELECT max(act) FROM journal
            WHERE record = j.key AND op = 'change' AND json_extract(before, '$.state') IS NOT 'mistake'
         ) END AS mistakeIn
    FROM jar j JOIN batch b ON b.key = j.batch`;

interface AmountRow {
  amount_v: number | null;
  amount_u: Measured['unit'] | null;
}
const measured = ({ amount_v: value, amount_u: unit }: AmountRow): Measured | null =>
  value === null || unit === null ? null : { value, unit };

const moment = (at: number | null, off: number | null): string | null =>
  at === null ? null : momentText(at, off ?? 0);
interface DayRow {
  day: string | null;
  at: number | null;
  at_off: number | null;
}
const dayIn = ({ day, at, at_off }: DayRow): string | null => day ?? moment(at, at_off)?.slice(0, 10) ?? null;

type Edge = Pick<SeedingFact, 'jar' | 'fromJar'>;

const ROUND_RANGES = `
  WITH RECURSIVE asked (key) AS MATERIALIZED (SELECT value FROM json_each(@asked)),
    made (first, last) AS (
      SELECT coalesce(b.made_on, b.made_from), coalesce(b.made_on, b.made_to)
        FROM asked a CROSS JOIN jar j ON j.key = a.key CROSS JOIN batch b ON b.key = j.batch
      UNION ALL SELECT @first, @last),
    span (first, last) AS MATERIALIZED (SELECT min(first), max(last) FROM made),
    up (key) AS (SELECT key FROM asked
      UNION SELECT s.from_jar FROM up CROSS JOIN seeding s ON s.jar = up.key
        CROSS JOIN jar f ON f.key = s.from_jar CROSS JOIN batch b ON b.key = f.batch
       WHERE coalesce(b.made_on, b.made_to) >= (SELECT first FROM span)),
    down (key) AS (SELECT key FROM asked
      UNION SELECT s.jar FROM down CROSS JOIN seeding s ON s.from_jar = down.key
        CROSS JOIN jar c ON c.key = s.jar CROSS JOIN batch b ON b.key = c.batch
       WHERE b.made_from <= (SELECT last FROM span))
  SELECT s.jar, s.from_jar AS fromJar FROM up CROSS JOIN seeding s ON s.jar = up.key WHERE s.from_jar IS NOT NULL
  UNION SELECT s.jar, s.from_jar FROM down CROSS JOIN seeding s ON s.from_jar = down.key`;

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
      SELECT s.key, s.jar, s.from_jar, s.portion,
             CASE WHEN s.either IS NULL THEN s.actual_v END AS amount_v, s.actual_u AS amount_u,
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
  jars(neighbours: Iterable<number>): Map<number, JarFact> {
    type Found = AmountRow & Omit<JarFact, 'volume'>;
    const found = new Map<number, JarFact>();
    const take = ({ amount_v, amount_u, ...row }: Found): void => {
      found.set(row.key, { ...row, volume: measured({ amount_v, amount_u }) });
    };
    for (const row of this.#of<Found>(JARS, 'j.key')) take(row);
    const missing = new Set([...neighbours].filter((key) => !found.has(key)));
    for (const row of this.#by<Found>(JARS, 'j.key', missing)) take(row);
    return found;
  }

  /**
   * Seedings round the jars asked about, where days are ranges: then a path may lead back in time, a loop need not stay
   * within one day, and what seeded a jar of a range must have been made before what that seeded. What was surely made
   * before any jar asked about can be in neither. None in a ledger without ranges.
   */
  roundRanges(asked: ReadonlySet<number>, day: Pending['day']): Edge[] {
    const ranged = 'SELECT EXISTS (SELECT 1 FROM batch WHERE made_from IS NOT NULL)';
    if (!day?.first && this.#rows.count(ranged) === 0) return [];
    const span = { first: day?.first ?? null, last: day?.last ?? null };
    return this.#rows.prepare(ROUND_RANGES).all({ asked: JSON.stringify([...asked]), ...span }) as Edge[];
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

  /** What became of the jars asked about and of what seeded or was seeded by them, and of these portions. */
  movements(jars: Iterable<number>, portions: Iterable<number>): MovementFact[] {
    const select = `SELECT m.key, coalesce(m.jar, p.jar) AS jar, m.portion, m.kind, m.day, m.at, m.at_off, m.pieces,
        m.amount_v, m.amount_u FROM movement m LEFT JOIN portion p ON p.key = m.portion`;
    type Found = AmountRow & DayRow & Pick<MovementFact, 'key' | 'jar' | 'portion' | 'kind'> & { pieces: number | null }; // prettier-ignore
    const found = [
      ...this.#by<Found>(select, 'm.jar', jars),
      ...this.#by<Found>(select, 'm.portion', portions),
    ];
    return found
      .toSorted((a, b) => a.key - b.key)
      .map(({ key, jar, portion, kind, pieces, ...rest }) => ({
        key, jar, portion, kind, pieces, day: dayIn(rest), at: moment(rest.at, rest.at_off), amount: measured(rest),
      })); // prettier-ignore
  }

  /** Portions of the jars asked about, those that seeded them, and those that these were split off. */
  portions(used: Iterable<number>): Map<number, PortionFact> {
    const select =
      'SELECT key, jar, of_portion AS ofPortion, part, place, pieces, kept_on AS keptOn, reserve, amount_v, amount_u FROM portion';
    type Found = AmountRow & Omit<PortionFact, 'amount' | 'reserve'> & { reserve: number };
    const found = new Map<number, PortionFact>();
    const take = ({ reserve, amount_v, amount_u, ...row }: Found): void => {
      found.set(row.key, { ...row, reserve: reserve === 1, amount: measured({ amount_v, amount_u }) });
    };
    for (const row of this.#of<Found>(select, 'jar')) take(row);
    const missing = new Set([...used].filter((key) => !found.has(key)));
    for (const row of this.#by<Found>(select, 'key', missing)) take(row);
    return found;
  }

  holds(keys: Iterable<number>): Map<number, HoldFact> {
    type Found = Pick<HoldFact, 'key' | 'hours'> & {
      began: number | null;
      began_off: number | null;
      ended: number | null;
      ended_off: number | null;
    };
    const select = 'SELECT key, began, began_off, ended, ended_off, hours FROM hold';
    return new Map(
      this.#by<Found>(select, 'key', keys).map(({ key, hours, ...row }) => [
        key,
        { key, hours, began: moment(row.began, row.began_off), ended: moment(row.ended, row.ended_off) },
      ]),
    );
  }

  stays(): StayFact[] {
    type Found = Pick<StayFact, 'key' | 'jar' | 'hold'> & {
      came: number | null;
      came_off: number | null;
      went: number | null;
      went_off: number | null;
    };
    return this.#of<Found>('SELECT key, jar, hold, came, came_off, went, went_off FROM stay', 'jar').map(
      ({ key, jar, hold, ...row }) => ({
        key,
        jar,
        hold,
        came: moment(row.came, row.came_off),
        went: moment(row.went, row.went_off),
      }),
    );
  }

  interruptions(holds: Iterable<number>): InterruptionFact[] {
    type Found = Pick<InterruptionFact, 'hold' | 'hours'> & {
      began: number | null;
      began_off: number | null;
      ended: number | null;
      ended_off: number | null;
    };
    const select = 'SELECT hold, began, began_off, ended, ended_off, hours FROM interruption';
    return this.#by<Found>(select, 'hold', holds).map(({ hold, hours, ...row }) => ({
      hold,
      hours,
      began: moment(row.began, row.began_off),
      ended: moment(row.ended, row.ended_off),
    }));
  }

  observations(): ObservationFact[] {
    // Told on: the latest day on which these days of being open were written.
    type Found = DayRow &
      Pick<
        ObservationFact,
        'key' | 'jar' | 'portion' | 'setAfterHours' | 'setByHours' | 'daysOpen' | 'powerCutHours'
      > & {
        stage: string;
        set_state: string | null;
        tasted: number;
        told: number | null;
        told_off: number | null;
      };
    const found = this.#of<Found>(
      `SELECT o.key, o.jar, o.portion, o.stage, o.day, o.at, o.at_off, o.set_state,
              coalesce(o.set_word, o.whey, o.tang) IS NOT NULL AS tasted, o.set_after_hours AS setAfterHours,
              o.set_by_hours AS setByHours, o.days_open AS daysOpen, o.power_cut_hours AS powerCutHours,
              a.at AS told, a.at_off AS told_off
         FROM observation o LEFT JOIN record r ON r.key = o.key AND o.days_open IS NOT NULL
         LEFT JOIN act a ON a.key = coalesce((
           SELECT max(w.act) FROM journal w WHERE w.record = r.key AND w.op <> 'take'
              AND json_extract(w.before, '$.days_open') IS NOT o.days_open), r.made_in)`,
      'o.jar',
    );
    const acidity = new Map<number, number[]>();
    const measures = this.#of<{ observation: number; ph: number }>(
      'SELECT a.observation, a.ph FROM acidity a JOIN observation o ON o.key = a.observation',
      'o.jar',
    );
    for (const { observation, ph } of measures)
      acidity.set(observation, [...(acidity.get(observation) ?? []), ph]);
    return found.map(({ stage, set_state, tasted, told, told_off, day, at, at_off, ...same }) => ({
      ...same,
      day: dayIn({ day, at, at_off }),
      at: moment(at, at_off),
      toldOn: moment(told, told_off)?.slice(0, 10) ?? null,
      acidity: acidity.get(same.key) ?? [],
      setAtTakeOut: stage !== 'take-out' || set_state === null ? null : set_state === 'set',
      out: stage === 'not said' ? tasted === 1 : stage !== 'early',
    }));
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

  told(): ToldFact[] {
    const told = (what: string, from: string, column: string): ToldFact[] =>
      this.#of<ToldFact>(`SELECT ${column} AS jar, '${what}' AS what FROM ${from}`, column);
    return [
      ...told('measured', 'lab_result t', 't.jar'),
      ...told('measured', 'portion p JOIN lab_result t ON t.portion = p.key', 'p.jar'),
      ...told('tasted', 'serving t', 't.jar'),
      ...told('photographed', 'photograph t', 't.jar'),
    ].filter(({ jar }) => jar !== null);
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
  if (pending.stay) asked.add(pending.stay.jar);
  if (pending.day) for (const { key } of rows.where('jar', 'batch', pending.day.batch)) asked.add(key);
  const load = new Loader(rows, asked);
  const seedings = load.seedings();
  if (pending.seeding) seedings.push({ ...pending.seeding, key: NEW, writtenIn: null });
  const portions = load.portions(seedings.flatMap(({ portion }) => portion ?? []));
  const neighbours = new Set([...portions.values()].map(({ jar }) => jar));
  for (const { jar, fromJar } of seedings)
    for (const key of [jar, fromJar]) if (key !== null) neighbours.add(key);
  const behind = load.roundRanges(asked, pending.day);
  for (const { jar, fromJar } of behind)
    for (const key of [jar, fromJar]) if (key !== null) neighbours.add(key);
  const jars = load.jars(neighbours);
  if (pending.day) moveTo(jars, pending.day);
  const days = new Set(alsoDays);
  for (const { jar, fromJar } of seedings) {
    const day = jars.get(jar)?.day;
    if (fromJar !== null && day && jars.get(fromJar)?.day === day) days.add(day);
  }
  const stays = load.stays();
  if (pending.stay) stays.push(pending.stay);
  const wanted = new Set([...touched.holds, ...stays.map(({ hold }) => hold)]);
  const holds = load.holds(wanted);
  if (pending.hold) holds.set(pending.hold.key, pending.hold);
  const uses = load.uses();
  const packages = load.packages(new Set([...touched.packages, ...uses.map((use) => use.package)]));
  return {
    // What an act took away is asked about no more.
    touched: new Set([...asked].filter((key) => jars.has(key))),
    jars,
    seedings,
    sameDay: [...load.sameDay(days), ...behind, ...(pending.seeding ? [pending.seeding] : [])],
    portions,
    movements: load.movements(jars.keys(), portions.keys()),
    holds,
    stays,
    interruptions: load.interruptions(wanted),
    observations: [
      ...load.observations(),
      ...(pending.observation ? [{ ...pending.observation, key: NEW }] : []),
    ],
    told: load.told(),
    packages: new Map(packages.map((one) => [one.key, one])),
    uses,
    label,
  };
}

function moveTo(jars: Map<number, JarFact>, { batch, ...when }: NonNullable<Pending['day']>): void {
  for (const jar of jars.values()) if (jar.batch === batch) jars.set(jar.key, { ...jar, ...when });
}
