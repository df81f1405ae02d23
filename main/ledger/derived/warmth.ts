// What one jar had of the warmth of its holds.
import { stayedHours } from '../../../core/ledger/hold-hours';
import { type HoldEntry, holdFrom } from '../entries/hold-entry';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';

type Warmth = HoldEntry;

/** What one jar had of its holds: those it stood in, from when to when it did. */
function warmthOf(stays: readonly Stay[], holdOf: (hold: number) => Warmth): Warmth | null {
  const [first, ...others] = stays;
  if (!first) return null;
  const own = ({ hold, came, went }: Stay): Warmth => {
    const its = holdOf(hold);
    return came === null && went === null
      ? its
      : {
          ...its,
          startedAt: came ?? its.startedAt,
          endedAt: went ?? its.endedAt,
          // Hours of a hold are not those of a jar that left it by itself.
          hours: went === null ? its.hours : null,
        };
  };
  if (others.length === 0) return own(first);
  const all = stays.map(own);
  const last = all.at(-1) as Warmth;
  return {
    ...last,
    startedAt: all[0]?.startedAt ?? null,
    // Between two holds it was not warm, so its hours are theirs together.
    endedAt: null,
    hours: stayedHours(
      all.map(({ startedAt, endedAt, hours }) => ({ from: at(startedAt), to: at(endedAt), hours })),
    ),
    readings: all.flatMap(({ readings }) => readings),
  };
}

type Stay = Pick<FactRow<'stay'>, 'hold' | 'came' | 'went'>;
const at = (moment: string | null): number | null => (moment === null ? null : Date.parse(moment));

/** What one jar had of its holds; null where it stood in none. */
export const warmthOfJar = (facts: Rows, jar: number): Warmth | null =>
  warmthOf(facts.where('stay', 'jar', jar), (hold) =>
    holdFrom(facts, {
      row: facts.get('hold', hold),
      series: facts.where('series', 'hold', hold)[0],
      note: undefined,
    }),
  );

/** The same for every jar, each hold read once: jars that stood in one share its record. */
export function warmths(facts: Rows): (jar: number) => Warmth | null {
  const holds = new Map<number, Warmth>();
  const series = new Map<number, FactRow<'series'>>();
  for (const one of facts.all('series')) if (!series.has(one.hold)) series.set(one.hold, one);
  for (const row of facts.all('hold'))
    holds.set(row.key, holdFrom(facts, { row, series: series.get(row.key), note: undefined }));
  const stays = new Map<number, Stay[]>();
  for (const stay of facts.all('stay')) {
    const others = stays.get(stay.jar);
    if (others) others.push(stay);
    else stays.set(stay.jar, [stay]);
  }
  return (jar) => warmthOf(stays.get(jar) ?? [], (hold) => holds.get(hold) as Warmth);
}
