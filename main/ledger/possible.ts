// What can't be, whoever says it: a made jar of a day to come, something kept before there was anything to keep, more
// seed than the jar holds, a pH that no milk has. Refused with a sentence; what was recorded before stays as it is.
import { PH_POSSIBLE } from '../../core/quantities';
import { takenMl } from '../../core/ledger/portions';
import { YEARS_POSSIBLE } from '../../core/notes/days';
import type { Amount } from '../../core/ledger/basics';
import type { Outcome, Portion } from '../../core/ledger/records';
import type { Ledger } from './ledger';
import { Refused } from './refusal';
import type { Rows } from './rows';
import type { Row, Stored } from './tables';

/**
 * Refuses a batch's day that nobody keeps jars of, or that is still to come where a jar is said to be made.
 * @throws Refused 'day long past', 'day to come'
 */
export function refuseMadeOn(ledger: Ledger, day: string, states: readonly string[]): void {
  if (day < `${YEARS_POSSIBLE.first}-01-01`) throw new Refused('day long past', { day });
  if (day > ledger.clock.today() && states.includes('made')) throw new Refused('day to come', { day });
}

/**
 * Refuses a day on which a portion can't have been kept: before its jar was made, after today, or after it seeded a jar.
 * @param portion key of what is corrected; null for what is new
 * @throws Refused 'kept before made', 'kept day to come', 'portion kept later'
 */
export function refuseKeptOn(
  ledger: Ledger,
  jar: { readonly label: string; readonly madeOn: string | null },
  keptOn: string,
  portion: number | null,
): void {
  if (keptOn > ledger.clock.today()) throw new Refused('kept day to come', { day: keptOn });
  if (jar.madeOn !== null && keptOn < jar.madeOn) {
    throw new Refused('kept before made', { jar: jar.label, day: keptOn, madeOn: jar.madeOn });
  }
  if (portion === null) return;
  const [seeded] = seededBefore(ledger.rows, 's.portion = ? AND b.made_on < ?', [portion, keptOn]);
  if (seeded) throw laterPortion(ledger, seeded.jar, seeded.madeOn, jar.label, keptOn);
}

interface Seeded {
  readonly jar: number;
  readonly madeOn: string;
  readonly seed: number;
  readonly keptOn: string;
}

const seededBefore = (rows: Rows, where: string, values: readonly (number | string)[]): Seeded[] =>
  rows
    .prepare(
      `SELECT s.jar, b.made_on AS madeOn, p.jar AS seed, p.kept_on AS keptOn FROM seeding s
         JOIN portion p ON p.key = s.portion JOIN jar j ON j.key = s.jar JOIN batch b ON b.key = j.batch
        WHERE ${where} LIMIT 1`,
    )
    .all(...values) as Seeded[];

const labelOf = (ledger: Ledger, jar: number): string => ledger.index.jars.get(jar)?.label ?? 'this jar';

const laterPortion = (ledger: Ledger, jar: number, day: string, seed: string, keptOn: string): Refused =>
  new Refused('portion kept later', { jar: labelOf(ledger, jar), day, seed, keptOn });

/**
 * Refuses a day on which a jar can't have been gone: before it was made, or after today.
 * @throws Refused 'gone before made', 'gone day to come'
 */
export function refuseGoneOn(
  ledger: Ledger,
  jar: { readonly label: string; readonly madeOn: string | null },
  goneOn: string | null,
): void {
  if (goneOn === null) return;
  if (jar.madeOn !== null && goneOn < jar.madeOn) {
    throw new Refused('gone before made', { jar: jar.label, day: goneOn, madeOn: jar.madeOn });
  }
  if (goneOn > ledger.clock.today()) throw new Refused('gone day to come', { day: goneOn });
}

type Kept = Partial<Pick<Row<'jar'>, 'onShelf' | 'goneOn'>>;

/**
 * What is said of a jar's place, with what follows from it: a jar that is back on the shelf is gone on no day, and one that
 * is gone on a day is not on the shelf.
 * @throws Refused 'on the shelf and gone' where both are said at once
 */
export function shelfOrGone(label: string, said: Kept): Kept {
  const gone = said.goneOn !== undefined && said.goneOn !== null;
  if (said.onShelf === true && gone) throw new Refused('on the shelf and gone', { jar: label });
  if (said.onShelf === true) return { ...said, goneOn: null };
  return gone ? { ...said, onShelf: false } : said;
}

/**
 * Refuses a new day for a batch where something of its jars was kept earlier, where one of them was gone earlier, or where
 * one was seeded from what was kept later. Called with the day written.
 * @throws Refused 'kept before made', 'gone before made', 'portion kept later'
 */
export function refuseMovedBatch(ledger: Ledger, batch: number, day: string): void {
  const kept = ledger.rows
    .prepare(
      `SELECT p.jar, p.kept_on AS keptOn FROM portion p JOIN jar j ON j.key = p.jar
        WHERE j.batch = ? AND p.kept_on < ? LIMIT 1`,
    )
    .get(batch, day) as { jar: number; keptOn: string } | undefined;
  if (kept)
    throw new Refused('kept before made', { jar: labelOf(ledger, kept.jar), day: kept.keptOn, madeOn: day });
  for (const jar of ledger.rows.where('jar', 'batch', batch)) {
    refuseGoneOn(ledger, { label: labelOf(ledger, jar.key), madeOn: day }, jar.goneOn);
  }
  const [seeded] = seededBefore(ledger.rows, 'j.batch = ? AND p.kept_on > b.made_on', [batch]);
  if (seeded)
    throw laterPortion(ledger, seeded.jar, seeded.madeOn, labelOf(ledger, seeded.seed), seeded.keptOn);
}

/** Refuses a seed from a portion that was kept after the jar was made. @throws Refused 'portion kept later' */
export function refuseLaterPortion(ledger: Ledger, row: Stored['seeding']): void {
  if (row.portion === null || row.fromJar === null) return;
  const { keptOn } = ledger.rows.get('portion', row.portion);
  const madeOn = ledger.rows
    .prepare('SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = ?')
    .pluck()
    .get(row.jar) as string | null;
  if (madeOn !== null && keptOn > madeOn)
    throw laterPortion(ledger, row.jar, madeOn, labelOf(ledger, row.fromJar), keptOn);
}

/** Volumes are rounded when they are measured and turned into mL: a hundredth more is the same. */
const ROUNDING = 1.01;

/**
 * Refuses more seed than a jar holds, and more from a jar than that one held. Only what is given as volume is compared.
 * Called with the rows written.
 * @throws Refused 'seed more than jar'
 */
export function refuseTooMuchSeed(ledger: Ledger, jar: Pick<Row<'jar'>, 'key' | 'letter'>): void {
  const { rows } = ledger;
  const volumeOf = (key: number): number | null => {
    const { finalVolume } = rows.get('jar', key);
    return finalVolume?.unit === 'mL' ? finalVolume.value : null;
  };
  const nameOf = (key: number): string => ledger.index.jars.get(key)?.label ?? `jar ${jar.letter}`;
  const refuse = (holder: number, seed: number, volume: number): never => {
    throw new Refused('seed more than jar', {
      jar: nameOf(holder),
      seed: Math.round(seed),
      volume: Math.round(volume),
    });
  };
  let all = 0;
  for (const seeding of rows.where('seeding', 'jar', jar.key)) {
    const portion = seeding.portion === null ? null : rows.get('portion', seeding.portion);
    const ml =
      portion === null
        ? seeding.amount?.unit === 'mL'
          ? seeding.amount.value
          : null
        : takenMl(portion, seeding.amount);
    if (ml === null) continue;
    all += ml;
    const held = seeding.fromJar === null ? null : volumeOf(seeding.fromJar);
    if (held !== null && seeding.fromJar !== null && ml > held * ROUNDING) refuse(seeding.fromJar, ml, held);
  }
  const holds = volumeOf(jar.key);
  if (holds !== null && all > holds * ROUNDING) refuse(jar.key, all, holds);
}

/**
 * Refuses a portion that is more than its jar held. Only volumes are compared; whey is not: what a strained jar is said to
 * hold may be what stayed in the cloth.
 * @throws Refused 'portion more than jar'
 */
export function refuseLargerPortion(
  jar: { readonly label: string; readonly finalVolume: Amount | null },
  { part, amount }: Pick<Portion, 'part' | 'amount'>,
): void {
  const { label, finalVolume } = jar;
  if (part === 'whey' || amount?.unit !== 'mL' || finalVolume?.unit !== 'mL') return;
  if (amount.value > finalVolume.value * ROUNDING) {
    throw new Refused('portion more than jar', {
      jar: label,
      portion: Math.round(amount.value),
      volume: Math.round(finalVolume.value),
    });
  }
}

/** Hours by which an end may lie ahead of the clock: people round to the full hour. */
const AHEAD_HOURS = 1;

/**
 * Refuses the end of a hold that is still to come where a jar of it is said to have been set at take-out. An end to come
 * alone is a plan. What was seen later of a jar is never refused for the end that was planned.
 * @throws Refused 'taken out before the end'
 */
export function refuseEndToCome(ledger: Ledger, endedAt: string | null, jars: readonly SeenJar[]): void {
  if (endedAt === null || Date.parse(endedAt) <= ledger.clock.milliseconds() + AHEAD_HOURS * 3_600_000)
    return;
  const out = jars.find(({ setAtTakeOut }) => setAtTakeOut === true);
  if (out) {
    throw new Refused('taken out before the end', {
      jar: out.label,
      day: endedAt.slice(0, 10),
      time: endedAt.slice(11, 16),
    });
  }
}

/** A jar of a hold, and whether it is said to have been set when it was taken out. */
export interface SeenJar {
  readonly label: string;
  readonly setAtTakeOut: boolean | null;
}

/** @throws Refused 'pH impossible' */
export function refusePh(outcome: Pick<Outcome, 'ph' | 'earlyPh'>): void {
  for (const ph of [outcome.ph, outcome.earlyPh]) {
    if (ph !== null && (ph < PH_POSSIBLE.least || ph > PH_POSSIBLE.most))
      throw new Refused('pH impossible', { ph });
  }
}
