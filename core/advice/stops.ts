// Hard stops: what may not be used as seed whatever it scores, and the keeper's own limits.
import type { Preferences } from '../ledger/records';
import { stopSentence } from '../says/safety-says';
import { daysWords } from '../quantities/typed-days';
import type { SeedCandidate, Stop, SeedLimits } from './seed-candidate';

/** The limits among a keeper's preferences. */
export const limitsOf = (
  kept: Pick<Preferences, 'seedFridgeDays' | 'seedFreezerDays' | 'mostGenerations'>,
): SeedLimits => ({
  fridgeDays: kept.seedFridgeDays,
  freezerDays: kept.seedFreezerDays,
  generation: kept.mostGenerations,
});

const LIFTS = {
  'not set': null,
  remark: 'Answered that it is no spoilage, it would be judged by what was seen.',
  'needs the meter':
    'A meter, checked that day, that shows 4.6 or less, written down, would let it in again.',
  'slow start': null,
} as const;

const stopOf = (stop: keyof typeof LIFTS): Stop => ({
  code: stop === 'not set' ? 'failed the gate' : stop,
  says: stopSentence(stop),
  lifts: LIFTS[stop],
});

/** Hard stops of a candidate, gravest first. Scores are not among what it reads. */
export function stopsOf(
  candidate: Omit<SeedCandidate, 'vigour' | 'own' | 'delayHours'>,
  limits: SeedLimits,
): Stop[] {
  const stops: Stop[] = [];
  if (candidate.spoiled) stops.push({ code: 'spoiled', says: stopSentence('spoiled'), lifts: null });
  if (candidate.caution === 'condemned')
    stops.push({ code: 'condemned', says: candidate.cautionSays ?? 'It is condemned.', lifts: null });
  if (candidate.caution === 'set aside')
    stops.push({
      code: 'set aside',
      says: candidate.cautionSays ?? 'It is set aside because of a spoiled jar.',
      lifts: 'Only a written reason lifts it.',
    });
  for (const stop of candidate.stops)
    if (stop !== 'spoiled' && stop !== 'set aside' && stop !== 'no acid') stops.push(stopOf(stop));
  if (candidate.acidNotThere !== null)
    stops.push({
      code: 'failed the gate',
      says: candidate.acidNotThere,
      lifts: 'Written down that it had set at take-out, it would come back, in doubt because of its pH.',
    });
  if (candidate.inHold)
    stops.push({
      code: 'in its hold',
      says: 'It may still be in its hold: nobody has written down that it is out.',
      lifts: 'Once it is out and written down how it was then, it is judged by that.',
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
