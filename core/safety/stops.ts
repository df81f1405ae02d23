// Hard stops: what may not be used as seed whatever it scores, and the keeper's own limits.
import type { Preferences } from '../ledger/records';
import { daysWords } from '../vigour/words';
import type { SeedCandidate } from '../advice/next';

/** The keeper's own limits; null is none. */
export interface SeedLimits {
  readonly fridgeDays: number | null;
  readonly freezerDays: number | null;
  readonly generation: number | null;
}

/** The limits among a keeper's preferences. */
export const limitsOf = (
  kept: Pick<Preferences, 'seedFridgeDays' | 'seedFreezerDays' | 'mostGenerations'>,
): SeedLimits => ({
  fridgeDays: kept.seedFridgeDays,
  freezerDays: kept.seedFreezerDays,
  generation: kept.mostGenerations,
});

export type StopCode =
  'spoiled' | 'condemned' | 'on hold' | 'failed the gate' | 'in its hold' | 'too old' | "keeper's limit";
export interface Stop {
  readonly code: StopCode;
  readonly says: string;
  /** What would lift it; null where nothing does. */
  readonly lifts: string | null;
}

/** Hard stops of a candidate, gravest first. Scores are not among what it reads. */
export function stopsOf(
  candidate: Omit<SeedCandidate, 'vigour' | 'own' | 'delayHours'>,
  limits: SeedLimits,
): Stop[] {
  const stops: Stop[] = [];
  if (candidate.spoiled)
    stops.push({
      code: 'spoiled',
      says: 'It is spoiled. Discard it: it is neither food nor seed.',
      lifts: null,
    });
  if (candidate.caution === 'condemned')
    stops.push({ code: 'condemned', says: candidate.cautionSays ?? 'It is condemned.', lifts: null });
  if (candidate.caution === 'on hold')
    stops.push({
      code: 'on hold',
      says: candidate.cautionSays ?? 'It is on hold because of a spoiled jar.',
      lifts: 'Only a written reason lifts the hold.',
    });
  if (candidate.failedGate)
    stops.push({
      code: 'failed the gate',
      says: 'It had not set at take-out, and no pH at or below 4.6 was shown by a meter.',
      lifts: null,
    });
  if (candidate.acidNotThere !== null)
    stops.push({
      code: 'failed the gate',
      says: candidate.acidNotThere,
      lifts: 'Written down that it had set at take-out, it would come back, in doubt because of its pH.',
    });
  if (candidate.inHold)
    stops.push({
      code: 'in its hold',
      says: 'It may still be in its hold: nobody has written down how it was at take-out.',
      lifts: 'Written down how it was at take-out, it would be judged by that.',
    });
  const limit = candidate.place === 'fridge' ? limits.fridgeDays : limits.freezerDays;
  if (limit !== null && candidate.days > limit)
    stops.push({
      code: 'too old',
      says: `It has stood ${candidate.place === 'fridge' ? 'in the fridge' : candidate.place === 'freezer' ? 'in the freezer' : 'dried'} for ${daysWords(candidate.days)}; your limit is ${limit}.`,
      lifts: `A limit of ${daysWords(candidate.days)} or more, among your preferences, would let it in again.`,
    });
  if (limits.generation !== null && candidate.generation + 1 > limits.generation)
    stops.push({
      code: "keeper's limit",
      says: `The next jar would be of generation ${candidate.generation + 1}${candidate.atLeast ? ' at least' : ''}; your limit is ${limits.generation}.`,
      lifts: `A limit of ${candidate.generation + 1} generations or more, among your preferences, would let it in again.`,
    });
  return stops;
}
