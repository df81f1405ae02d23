// As many points of a profile as can be told apart in a drawing: of each stretch of time the coolest and the warmest, so that
// no dip and no peak goes missing. Pure.
import type { WarmPoint } from '../growth/warm-hours';

const MOST = 400;

/** @param profile hours rising @returns at most `most` of its points, first and last among them, in order */
export function thinned(profile: readonly WarmPoint[], most = MOST): readonly WarmPoint[] {
  const [first] = profile;
  const last = profile.at(-1);
  if (!first || !last || profile.length <= most) return profile;
  const stretches = Math.max(1, Math.floor((most - 2) / 2));
  const long = (last.hour - first.hour) / stretches || 1;
  const kept = new Map<number, [WarmPoint, WarmPoint]>();
  for (const point of profile.slice(1, -1)) {
    const stretch = Math.min(stretches - 1, Math.floor((point.hour - first.hour) / long));
    const [low, high] = kept.get(stretch) ?? [point, point];
    kept.set(stretch, [
      point.celsius < low.celsius ? point : low,
      point.celsius > high.celsius ? point : high,
    ]);
  }
  const inner = [...kept.values()].flatMap((pair) => [...new Set(pair)]).toSorted((a, b) => a.hour - b.hour);
  return [first, ...inner, last];
}
