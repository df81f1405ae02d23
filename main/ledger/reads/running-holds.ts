// Holds that began and that nobody ended, with the jars that still stand in them and what each asks for now.
import { beganOrPlanned, endsAt, stillRuns } from '../../../core/ledger/running';
import { storedMoment } from '../../../core/ledger/stored-moments';
import { batchDay, calledDay, dayNamed } from '../../../core/lineage/labels';
import { asksNow, type HoldAsks } from '../../../core/plan/hold-looks';
import { outcomes } from '../entries/outcome-of-jar';
import type { KnownJar } from '../family-index';
import type { Rows } from '../facts/fact-rows';
import type { Row } from '../facts/tables';
import type { Ledger } from '../ledger';

export interface RunningHold {
  readonly hold: Row<'hold'>;
  /** As noted, or as planned where nobody noted it: then it is `assumed`. */
  readonly began: string;
  readonly assumed: boolean;
  readonly ends: string | null;
  /** What the batches in it are called: "2 May", "2 May and 3 May plain". */
  readonly label: string;
  readonly jars: readonly KnownJar[];
  /** Of each jar, the hours after the start at which somebody looked at it. */
  readonly seenHours: readonly (readonly number[])[];
  readonly asks: HoldAsks;
}

/** An early look of which nobody said when is taken for the one at so many hours. */
const EARLY = 12;

/** Hours after a moment (s) at which somebody looked at a jar. */
export const seenHours = (rows: Rows, jar: number, began: number): number[] =>
  rows.where('observation', 'jar', jar).flatMap(({ at, hoursIn, stage }) => {
    if (hoursIn !== null) return [hoursIn];
    if (at !== null) return [(storedMoment(at).seconds - began) / 3600];
    return stage === 'early' ? [EARLY] : [];
  });

/** "2 May", "2 May plain and 3 May": the batches of some jars, the earliest first. */
export function labelOfBatches({ rows }: Ledger, batches: readonly number[]): string {
  const dayOf = (batch: Row<'batch'>): string => dayNamed(calledDay(batch)) ?? '';
  const names = [...new Set(batches)]
    .map((key) => rows.get('batch', key))
    .toSorted((a, b) => dayOf(a).localeCompare(dayOf(b)) || a.key - b.key)
    .map((batch) => [batchDay(calledDay(batch), false) ?? 'a batch', batch.word].filter(Boolean).join(' '));
  return names.length < 3 ? names.join(' and ') : `${names[0]} and ${names.length - 1} other batches`;
}

/** So many letters are listed; more are counted. */
const MOST_LETTERS = 5;

/**
 * What a hold is called by what stands in it, or stood; where jars of its batch stood in another one, by its own: "1 Apr c".
 * @param jars keys of those that are meant; all that stood in it unless given
 */
export function labelOfHold(
  ledger: Ledger,
  hold: Row<'hold'>,
  jars: readonly number[] = ledger.rows.where('stay', 'hold', hold.key).map(({ jar }) => jar),
): string {
  const { rows, index } = ledger;
  const batches = [...new Set(jars.map((jar) => rows.get('jar', jar).batch))];
  if (batches.length === 0 && hold.batch !== null) batches.push(hold.batch);
  const [batch] = batches;
  if (batch === undefined) return 'a hold';
  const label = labelOfBatches(ledger, batches);
  const mates = batches.length > 1 ? [] : rows.where('jar', 'batch', batch);
  const alone = mates.every(({ key }) =>
    rows.where('stay', 'jar', key).every((stay) => stay.hold === hold.key),
  );
  const there = [...new Set(jars)].filter((key) => index.family.has(key)).map((key) => index.jar(key).letter);
  const letters = there.toSorted((a, b) => a.localeCompare(b));
  if (alone || letters.length === 0) return label;
  const more = letters.length - MOST_LETTERS;
  return `${label} ${letters.slice(0, MOST_LETTERS).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Jars that came into a hold, were not taken out of it, and of which nobody has seen how they came out. */
export function jarsInside({ rows, index }: Ledger, hold: number): KnownJar[] {
  const inside = rows
    .where('stay', 'hold', hold)
    .filter(({ jar, went }) => went === null && index.family.has(jar))
    .map(({ jar }) => jar);
  const seen = outcomes(rows, inside);
  return [...new Set(inside)]
    .map((jar) => index.jar(jar))
    .filter(
      ({ key, spoiled, onShelf }) =>
        !spoiled && onShelf !== false && (seen.get(key)?.setAtTakeOut ?? null) === null,
    )
    .toSorted((a, b) => a.batch - b.batch || a.letter.localeCompare(b.letter) || a.key - b.key);
}

/** The one that asks for something first. */
export function runningHolds(ledger: Ledger, now: string): RunningHold[] {
  const { rows } = ledger;
  const { seconds } = storedMoment(now);
  const begun = rows
    .prepare(
      "SELECT key FROM hold WHERE ended IS NULL AND coalesce(began, planned_from) IS NOT NULL AND purpose = 'jars'",
    )
    .pluck()
    .all() as number[];
  const found = begun.flatMap((key): RunningHold[] => {
    const hold = rows.get('hold', key);
    const { plannedTo, hours } = hold;
    const began = beganOrPlanned(hold);
    if (began === null || !stillRuns({ began, plannedTo, hours }, now)) return [];
    const jars = jarsInside(ledger, key);
    if (jars.length === 0) return [];
    const ends = endsAt({ began, plannedTo, hours });
    const start = storedMoment(began).seconds;
    const seen = jars.map((jar) => seenHours(rows, jar.key, start));
    const label = labelOfHold(ledger, hold, jars.map(({ key: jar }) => jar)); // prettier-ignore
    const asks = asksNow(start, ends === null ? null : storedMoment(ends).seconds, seen, seconds);
    return [{ hold, began, assumed: hold.began === null, ends, label, jars, seenHours: seen, asks }];
  });
  const rank = { 'take-out': 0, look: 1, 'in warmth': 2 } as const;
  const next = ({ asks: { look, ends } }: RunningHold): number => look?.at ?? ends ?? Infinity;
  return found.toSorted((a, b) => rank[a.asks.what] - rank[b.asks.what] || next(a) - next(b));
}
