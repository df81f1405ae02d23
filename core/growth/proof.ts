// Whether an appliance is proven: a run of a day and a night with water or milk in all its places, read at the centre and the
// edge every five minutes. Limits are common practice, no source; nothing is passed that was not read.
import type { BathAndJar } from './time-constant';
import { logRegression, type FittedConstant } from './log-regression';
import { profileOf } from './reading-profile';
import { settledOf, weighed, weighedQuantile } from './settling';
import type { WarmPoint } from './warm-hours';

export const PROOF_LIMITS = {
  /** °C at the centre, for `part` of the time once settled. */
  low: 36.5,
  high: 39.5,
  part: 0.95,
  /** °C, never above this anywhere. */
  most: 43,
  hours: 24,
  /** A reading at least so often (min), a little slack for the logger's clock. */
  every: 5.5,
} as const;

/** Readings of one probe; hours of one clock for all, and the hour of the day (0 to 24) at hour 0. */
export interface ProofSeries {
  readonly place: 'air' | 'bath' | 'jar';
  readonly spot: 'centre' | 'edge' | null;
  readonly readings: readonly WarmPoint[];
}

const PROOF_LACKS = [
  'no readings', 'not filled', 'filled not noted', 'too short', 'no night', 'too seldom', 'no centre', 'no edge', 'never settles',
  'too cool', 'too warm', 'too hot',
] as const; // prettier-ignore
export type ProofLack = (typeof PROOF_LACKS)[number];

export interface ProofFigures {
  readonly settledAt: number | null;
  readonly minutesToSettle: number | null;
  /** Half the way from cool to warm, once settled (°C). */
  readonly swing: number | null;
  /** Of the time once settled, the part within the limits. */
  readonly within: number | null;
  readonly warmest: number | null;
  /** °C by which the edge is cooler than the centre, once both have settled. */
  readonly edgeCooler: number | null;
  /** °C by which a jar is cooler than its bath, once both have settled. */
  readonly jarCooler: number | null;
  /** h. */
  readonly timeConstant: FittedConstant | null;
  readonly hours: number;
}

export interface Proof extends ProofFigures {
  readonly passes: boolean;
  readonly lacks: readonly ProofLack[];
}

const NIGHT_FROM = 0;
const NIGHT_TO = 5;

/** Whether the whole night, midnight to five, lies within the run. */
function hasNight(from: number, to: number, hourOfDay: number): boolean {
  const first = from + (((NIGHT_FROM - ((hourOfDay + from) % 24)) % 24) + 24) % 24;
  return first + NIGHT_TO - NIGHT_FROM <= to;
} // prettier-ignore

function at(profile: readonly WarmPoint[], hour: number): number {
  const after = profile.findIndex((point) => point.hour >= hour);
  const [from, to] = [profile[after - 1], profile[after]];
  if (!to) return profile.at(-1)?.celsius ?? Number.NaN;
  if (!from || to.hour === from.hour) return to.celsius;
  return from.celsius + ((to.celsius - from.celsius) * (hour - from.hour)) / (to.hour - from.hour);
}

/** A jar that is this near to its bath (°C) tells of the probes, not of how it follows. */
const NEAR = 0.5;
/** A bath that moves more than this (°C) while a jar warms is no bath at one temperature. */
const STEADY = 1;

/** τ of a jar in a bath, from its warming up; null where the bath did not stand still, or nothing is seen of it. */
function constantOf({ bath, jar }: BathAndJar): FittedConstant | null {
  const settledJar = settledOf(jar);
  const settledBath = settledOf(bath);
  const [first] = jar;
  if (!settledJar || !settledBath || !first) return null;
  const warming = jar.filter(({ hour, celsius }) => hour <= settledJar.hour && settledJar.level - celsius > NEAR);
  const baths = warming.map(({ hour }) => at(bath, hour));
  if (baths.some((celsius) => Math.abs(celsius - settledBath.level) > STEADY)) return null;
  // Towards where the jar itself settles: two probes differ by more than a jar lags.
  return logRegression(warming.map(({ hour, celsius }) => ({ time: hour - first.hour, by: settledJar.level - celsius })));
} // prettier-ignore

/** Half the readings lie above this, once settled. */
const levelOf = (profile: readonly WarmPoint[]): number | null => settledOf(profile)?.level ?? null;
const apart = (
  one: readonly WarmPoint[] | undefined,
  other: readonly WarmPoint[] | undefined,
): number | null => {
  const [a, b] = [one && levelOf(one), other && levelOf(other)];
  return a === null || b === null || a === undefined || b === undefined ? null : a - b;
};

/**
 * What a run proves.
 * @param hourOfDay hour of the day at hour 0 of the readings
 * @param filled whether all places held jars; null: nobody noted it
 */
export function proofOf(series: readonly ProofSeries[], hourOfDay: number, filled: boolean | null): Proof {
  const read = series
    .map((one) => ({ ...one, profile: profileOf(one.readings).profile }))
    .filter(({ profile }) => profile.length > 1);
  const spot = (wanted: 'centre' | 'edge') => read.filter((one) => one.spot === wanted);
  const centre = spot('centre')[0]?.profile;
  const edge = spot('edge')[0]?.profile;
  const settled = centre && settledOf(centre);
  const after = centre && settled ? weighed(centre.filter(({ hour }) => hour >= settled.hour)) : [];
  const total = after.reduce((sum, { hours }) => sum + hours, 0);
  const part = (keep: (celsius: number) => boolean): number =>
    after.reduce((sum, { value, hours }) => sum + (keep(value) ? hours : 0), 0) / (total || 1);
  const within = total > 0 ? part((value) => value >= PROOF_LIMITS.low && value <= PROOF_LIMITS.high) : null;
  const all = read.flatMap(({ profile }) => profile);
  const [bath, jar] = [read.find(({ place }) => place === 'bath'), read.find(({ place }) => place === 'jar')];
  const from = Math.max(...read.map(({ profile }) => profile[0]?.hour ?? 0));
  const to = Math.min(...read.map(({ profile }) => profile.at(-1)?.hour ?? 0));
  const hours = read.length > 0 ? Math.max(0, to - from) : 0;
  const warmest = all.length > 0 ? all.reduce((most, { celsius }) => Math.max(most, celsius), -Infinity) : null;
  const gaps = (profile: readonly WarmPoint[]): { value: number; hours: number }[] =>
    profile.slice(1).map(({ hour }, i) => ({ value: hour - (profile[i]?.hour ?? hour), hours: 1 }));
  const seldom = read.some(({ profile }) => 60 * weighedQuantile(gaps(profile), 0.9) > PROOF_LIMITS.every);
  const level = after.length > 0 ? weighedQuantile(after, 0.5) : null;
  const lacks: ProofLack[] = read.length === 0 ? ['no readings'] : [
    ...(filled === false ? ['not filled' as const] : filled === null ? ['filled not noted' as const] : []),
    ...(hours < PROOF_LIMITS.hours - 0.1 ? ['too short' as const] : hasNight(from, to, hourOfDay) ? [] : ['no night' as const]),
    ...(seldom ? ['too seldom' as const] : []),
    ...(centre ? [] : ['no centre' as const]),
    ...(edge ? [] : ['no edge' as const]),
    ...(centre && !settled ? ['never settles' as const] : []),
    ...(within !== null && level !== null && within < PROOF_LIMITS.part ? [level < 38 ? 'too cool' as const : 'too warm' as const] : []),
    ...(warmest !== null && warmest > PROOF_LIMITS.most ? ['too hot' as const] : []),
  ];
  return {
    passes: lacks.length === 0,
    lacks,
    settledAt: settled?.level ?? null,
    minutesToSettle: settled && centre ? Math.round((settled.hour - (centre[0]?.hour ?? 0)) * 60) : null,
    swing: settled?.swing ?? null,
    within,
    warmest,
    edgeCooler: apart(centre, edge),
    jarCooler: apart(bath?.profile, jar?.profile),
    timeConstant: bath && jar ? constantOf({ bath: bath.profile, jar: jar.profile }) : null,
    hours,
  };
} // prettier-ignore
