// Hard stops: what may not be used as seed whatever it scores, and the keeper's own limits.
import type { Preferences } from '../ledger/records';
import type { SeedStop } from '../shapes/seed-codes';
import type { SeedCandidate, SeedLimits } from './seed-candidate';

/** The limits among a keeper's preferences. */
export const limitsOf = (
  kept: Pick<Preferences, 'seedFridgeDays' | 'seedFreezerDays' | 'mostGenerations'>,
): SeedLimits => ({
  fridgeDays: kept.seedFridgeDays,
  freezerDays: kept.seedFreezerDays,
  generation: kept.mostGenerations,
});

const limitIn = (place: SeedCandidate['place'], limits: SeedLimits): number | null =>
  place === 'fridge' ? limits.fridgeDays : limits.freezerDays;

/** The keeper's limit in days where a candidate reaches it today: it is a seed for the last time; else null. */
export function lastDayOf(
  { place, days }: Pick<SeedCandidate, 'place' | 'days'>,
  limits: SeedLimits,
): number | null {
  const limit = limitIn(place, limits);
  return days === limit ? limit : null;
}

/** Hard stops of a candidate, gravest first. Scores are not among what it reads. */
export function stopsOf(
  candidate: Omit<SeedCandidate, 'vigour' | 'own' | 'delayHours'>,
  limits: SeedLimits,
): SeedStop[] {
  const { caution, place, days, daysLeast, generation, atLeast, acidNotThere } = candidate;
  const stops: SeedStop[] = [];
  if (candidate.spoiled) stops.push({ code: 'spoiled' });
  if (caution?.level === 'condemned' || caution?.level === 'set aside')
    stops.push({ code: caution.level, caution });
  for (const stop of candidate.stops) {
    if (stop === 'not set') stops.push({ code: 'failed the gate', above: null });
    else if (stop === 'remark')
      stops.push({ code: stop, quote: candidate.quotes.find((one) => one.stops === true) ?? null });
    else if (stop !== 'spoiled' && stop !== 'set aside' && stop !== 'no acid') stops.push({ code: stop });
  }
  if (acidNotThere !== null) stops.push({ code: 'failed the gate', above: acidNotThere });
  if (candidate.inHold) stops.push({ code: 'in its hold' });
  const limit = limitIn(place, limits);
  if (limit !== null && days > limit)
    stops.push({ code: 'too old', place, days, limit, ...(daysLeast !== undefined && { least: daysLeast }) });
  const next = generation + 1;
  if (limits.generation !== null && next > limits.generation)
    stops.push({ code: "keeper's limit", generation: next, atLeast, limit: limits.generation });
  return stops;
}
