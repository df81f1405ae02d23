// What safety reads of jars (core/safety/seen.ts), from the facts: every observation with its moment, values and signs.
import type { Look, SeenOfJar } from '../../../core/safety/seen';
import type { Observed } from '../entries/outcome-of-jar';

const HOUR = 3_600_000;

/** The local day of a moment told with its offset. */
const dayOf = (at: string | null): string | null => at?.slice(0, 10) ?? null;

/** @param warmFrom when the jar came into warmth, in milliseconds; null: not known */
function lookOf({ row, acidity, signs }: Observed, warmFrom: number | null): Look {
  const { stage, daysOpen, looked, setState, setWord, sour } = row;
  const since = row.at === null || warmFrom === null ? null : (Date.parse(row.at) - warmFrom) / HOUR;
  return {
    stage, daysOpen, looked, setState, setWord, sour,
    day: row.day ?? dayOf(row.at),
    hoursIn: row.hoursIn ?? (since !== null && since >= 0 ? since : null),
    acidity: acidity.map(({ ph, how, checked }) => ({ ph, how, checked })),
    signs: signs.map(({ kind, answer }) => ({ kind, answer })),
  }; // prettier-ignore
}

/** What was seen of one jar. @param openedOn the day it was opened, where that is known */
export const seenOf = (
  observed: readonly Observed[],
  additions: readonly string[],
  openedOn: string | null,
  warmFrom: number | null,
): SeenOfJar => ({ looks: observed.map((one) => lookOf(one, warmFrom)), additions, openedOn });
