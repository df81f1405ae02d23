// Warm hours of what stood in a hold, with the band of all that may be. Pure.
import { jarFollows } from '../growth/jar-temperature';
import type { Band } from '../growth/storage';
import { warmthOf, type Warmth, type WarmPoint } from '../growth/warm-hours';
import type { HoldWarmth } from './jar-evidence';

/** The profiles that the jar may have had: by the middle, and by both ends of how fast it follows the probe. */
function profilesOf({ profile, outside }: HoldWarmth): readonly (readonly WarmPoint[])[] {
  if (!outside || outside.follows.low === outside.follows.high) return [profile];
  const { read, startsAt, follows } = outside;
  return [profile, jarFollows(read, follows.low, startsAt), jarFollows(read, follows.high, startsAt)];
}

/** Warmth by each of them that tells anything. */
export const warmthsOf = (warmth: HoldWarmth): Warmth[] =>
  profilesOf(warmth).flatMap((profile) => warmthOf(profile) ?? []);

/** The band of all of them. @param usual the one in the middle */
export const bandIn = (found: readonly Warmth[], usual: Warmth): Band => ({
  low: Math.min(...found.map(({ warmHours }) => warmHours.low)),
  middle: usual.warmHours.middle,
  high: Math.max(...found.map(({ warmHours }) => warmHours.high)),
});

/** Warm hours of what stood in a hold, with the band of all that may be; null where nothing is known. */
export function warmHoursOf(warmth: HoldWarmth): Band | null {
  const found = warmthsOf(warmth);
  return found[0] ? bandIn(found, found[0]) : null;
}
