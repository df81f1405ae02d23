// Where a bath or a jar settles, and when: the temperature it comes to and stays at. Settled is within half a degree for an
// hour (common practice, no source). A heater that swings further than that is taken by the mean of each hour.
import type { WarmPoint } from './warm-hours';

const WITHIN = 0.5;
const HOUR = 1;
/** Readings this far from where it settled are of another time: warming up, taken out. */
const AWAY = 3;

export interface Settled {
  /** °C. */
  readonly level: number;
  /** Hours after the first reading. */
  readonly hour: number;
  /** Half the way from its cool to its warm end, once settled (°C); 95 of 100 readings lie within. */
  readonly swing: number;
  /** It swings too far to stay within half a degree: settled is the mean of an hour. */
  readonly byMean: boolean;
}

/** A value with the hours that it stands for. */
export interface Weighed {
  readonly value: number;
  readonly hours: number;
}

/** The value below which a part of the hours lies. */
export function weighedQuantile(all: readonly Weighed[], part: number): number {
  const sorted = all.toSorted((a, b) => a.value - b.value);
  const total = sorted.reduce((sum, { hours }) => sum + hours, 0);
  let sum = 0;
  for (const { value, hours } of sorted) {
    sum += hours;
    if (sum >= part * total) return value;
  }
  return sorted.at(-1)?.value ?? Number.NaN;
}

/** Each reading with half the time to the readings before and after it. */
export const weighed = (profile: readonly WarmPoint[]): Weighed[] =>
  profile.map(({ hour, celsius }, i) => ({
    value: celsius,
    hours: ((profile[i + 1]?.hour ?? hour) - (profile[i - 1]?.hour ?? hour)) / 2,
  }));

interface Hourly {
  readonly point: WarmPoint;
  /** Mean of the hour that begins with it. */
  readonly mean: number;
}

/** The mean of each hour that begins with a reading and lies wholly within them; each reading is looked at twice. */
function hourlyMeans(profile: readonly WarmPoint[]): Hourly[] {
  const found: Hourly[] = [];
  const area = (i: number): number => {
    const [from, to] = [profile[i], profile[i + 1]];
    return from && to ? ((from.celsius + to.celsius) / 2) * (to.hour - from.hour) : 0;
  };
  let [sum, end] = [0, 0];
  for (const [i, point] of profile.entries()) {
    const until = point.hour + HOUR;
    while (end < profile.length - 1 && (profile[end + 1]?.hour ?? 0) <= until + 1e-9) sum += area(end++);
    const [from, to] = [profile[end], profile[end + 1]];
    const rest = until - (from?.hour ?? until);
    if (!from || (!to && rest > 1e-9)) break;
    const celsius = to ? from.celsius + ((to.celsius - from.celsius) * rest) / (to.hour - from.hour) : 0;
    found.push({ point, mean: (sum + (rest > 0 && to ? ((from.celsius + celsius) / 2) * rest : 0)) / HOUR });
    if (end > i) sum -= area(i);
    else end = i + 1;
  }
  return found;
}

/** The temperature that most of the hours' means lie round. */
function levelOf(hourly: readonly Hourly[]): number {
  const sorted = hourly.map(({ mean }) => mean).toSorted((a, b) => a - b);
  let [best, most, to] = [0, 0, 0];
  for (const [from, low] of sorted.entries()) {
    while (to < sorted.length && (sorted[to] ?? 0) <= low + 2 * WITHIN) to++;
    if (to - from > most) [best, most] = [from, to - from];
  }
  return sorted[best + Math.floor(most / 2)] ?? Number.NaN;
}

/** When the line to a point first comes within half a degree of a level. */
function crossing(before: WarmPoint | undefined, point: WarmPoint, level: number): number {
  if (!before || Math.abs(before.celsius - level) <= WITHIN) return point.hour;
  const edge = before.celsius < level ? level - WITHIN : level + WITHIN;
  const part = (edge - before.celsius) / (point.celsius - before.celsius);
  return part >= 0 && part <= 1 ? before.hour + part * (point.hour - before.hour) : point.hour;
}

/** The first point from which all readings of an hour lie within half a degree; null where there is none. */
function steadyFrom(profile: readonly WarmPoint[], level: number): number | null {
  const last = profile.at(-1)?.hour ?? 0;
  let from: number | null = null;
  for (const [i, point] of profile.entries()) {
    if (Math.abs(point.celsius - level) > WITHIN) {
      if (from !== null && point.hour - (profile[from]?.hour ?? 0) >= HOUR) break;
      from = null;
    } else from ??= i;
    if (from !== null && point.hour - (profile[from]?.hour ?? 0) >= HOUR) break;
  }
  const point = from === null ? undefined : profile[from];
  if (!point || from === null || last - point.hour < HOUR - 1e-9) return null;
  return crossing(profile[from - 1], point, level);
}

/**
 * Where readings settle.
 * @param profile hours rising, gaps bridged
 * @returns null where they run for less than an hour, or never stay
 */
export function settledOf(profile: readonly WarmPoint[]): Settled | null {
  const hourly = hourlyMeans(profile);
  if (hourly.length === 0) return null;
  const rough = levelOf(hourly);
  const firstMean = (level: number): number | null => {
    const found = hourly.find(
      ({ point, mean }) => Math.abs(mean - level) <= WITHIN && Math.abs(point.celsius - level) <= AWAY,
    );
    return found?.point.hour ?? null;
  };
  const after = (hour: number): Weighed[] => {
    const points = profile.filter((point) => point.hour >= hour && Math.abs(point.celsius - rough) <= AWAY);
    return weighed(points).filter(({ hours }) => hours > 0);
  };
  const began = firstMean(rough);
  if (began === null) return null;
  const level = weighedQuantile(after(began), 0.5);
  const steady = steadyFrom(profile, level);
  const hour = steady ?? firstMean(level) ?? began;
  const settled = after(hour);
  return {
    level: steady === null ? level : weighedQuantile(settled, 0.5),
    hour,
    swing: (weighedQuantile(settled, 0.975) - weighedQuantile(settled, 0.025)) / 2,
    byMean: steady === null,
  };
}
