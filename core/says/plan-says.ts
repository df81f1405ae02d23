// What a plan comes to in words: when to start, what goes in, how it is likely to come out, what it costs, what runs short.
import type { Doublings, Expected } from '../plan/scaling';
import { dayLabel } from '../lineage/labels';
import { costedSays } from './cost-sheet-says';
import { clockWords } from './today-says';

export interface PlannedSays {
  readonly volume: number;
  /** Seed of jars (mL); 0 where none. */
  readonly seed: number;
  readonly pieces: boolean;
  readonly doublings: Doublings | null;
  readonly expected: { readonly low: string; readonly high: string; readonly jars: number } | null;
  readonly cost: { readonly minor: number; readonly atLeast: boolean } | null;
  readonly additions: readonly string[];
}

/** "14:30 to 22:30", "tomorrow 06:30 to 10:30": a window of starts; one that has begun ends only. */
function windowWords({ from, to }: { readonly from: string; readonly to: string }, now: string): string {
  const end = to.slice(11, 16);
  if (Date.parse(from) - Date.parse(now) < 30 * 60_000) return `now or by ${end}`;
  const begins = clockWords(from, now);
  if (from !== to) return `${begins.replace(' at ', ' ')} to ${end}`;
  return /^\d\d:/.test(begins) ? `at ${begins}` : begins;
}

/** When to start, backwards from when one is awake. */
export function startSays(
  windows: readonly { readonly from: string; readonly to: string }[],
  hours: number,
  now: string,
): { readonly start: string; readonly reason: string } {
  const [first, second] = windows;
  const looks = [12, 24].filter((hour) => hour < hours);
  const moments = [...looks, hours].map(String);
  const at =
    moments.length === 1 ? (moments[0] ?? '') : `${moments.slice(0, -1).join(', ')} and ${moments.at(-1)}`;
  if (!first)
    return {
      start: 'No start puts every look into the hours you are awake.',
      reason: `They would be at ${at} h after the start. The look at 12 h matters most.`,
    };
  return {
    start: `Start ${windowWords(first, now)}${second ? `, or ${windowWords(second, now)}` : ''}.`,
    reason: `Then the looks at ${at} h fall into the hours you are awake.`,
  };
}

const whole = (value: number): string => String(Math.round(value));
const spread = (low: number, high: number): string =>
  whole(low) === whole(high) ? whole(low) : `${whole(low)} to ${whole(high)}`;

/** "Seed is 1 part in 20, about 4 doublings." */
function seedSays(jar: PlannedSays): string | null {
  const { doublings } = jar;
  if (doublings === null) return null;
  if (!jar.pieces) {
    if (jar.seed <= 0) return null;
    return `Seed is 1 part in ${whole(jar.volume / jar.seed)}, about ${whole(doublings.mid)} doublings.`;
  }
  return `From pieces the culture doubles about ${spread(doublings.low, doublings.high)} times: what a piece holds is known to a factor of three, after its best-before to a tenth.`;
}

const added = (names: readonly string[]): string =>
  names.length === 0 ? 'Plain' : `With ${names.join(' and ')}`;

/** How such jars came out so far, each kind once. */
function likelySays(jars: readonly PlannedSays[]): string[] {
  const kinds = new Map(jars.map((jar) => [added(jar.additions), jar.expected]));
  return [...kinds].flatMap(([kind, expected]) =>
    expected === null
      ? []
      : [`${kind}: ${expected.low === expected.high ? expected.low : `${expected.low} to ${expected.high}`}, as most of your ${expected.jars} such jars.`],
  ); // prettier-ignore
}

const inHundred = (part: number): string => whole(part * 100);

/** How often such jars come out uneven or do not set. */
const unevenSays = (first: boolean, { low, mid, high, basis }: Expected): string =>
  basis === 'your own record' && low !== null && high !== null
    ? `Of your own ${first ? 'first' : 'later'} jars ${inHundred(low)} to ${inHundred(high)} in 100 came out runny or soft.`
    : `About ${inHundred(mid)} in 100 jars of a ${first ? 'first' : 'later'} batch come out uneven or do not set (common practice; your own record is still short).`;

function costSays(jars: readonly PlannedSays[], currency: string): string {
  const known = jars.flatMap(({ cost }) => cost ?? []);
  if (known.length === 0) return 'What a jar costs is not known: its milk has no price.';
  const all = {
    minor: known.reduce((sum, { minor }) => sum + minor, 0),
    atLeast: known.length < jars.length || known.some(({ atLeast }) => atLeast),
  };
  const each = { minor: Math.round(all.minor / known.length), atLeast: all.atLeast };
  return jars.length === 1
    ? `The jar costs ${costedSays(each, currency)}.`
    : `A jar costs ${costedSays(each, currency)}, all ${jars.length} together ${costedSays(all, currency)}.`;
}

/** "Oat bran runs short: 40 g are needed, 12 g are left." */
const shortSays = (one: {
  readonly what: string;
  readonly needed: number;
  readonly has: number;
  readonly unit: string;
}): string =>
  `${one.what.slice(0, 1).toUpperCase()}${one.what.slice(1)} runs short: ${whole(one.needed)} ${one.unit} needed, ${whole(one.has)} ${one.unit} there.`;

/** Which seed still serves when one is back. */
export function servesSays(
  serves: readonly { readonly name: string; readonly until: string | null; readonly still: boolean }[],
  back: string,
): string {
  const still = serves.filter((one) => one.still).map(({ name }) => name);
  const day = dayLabel(back, false);
  if (still.length === 0)
    return `Nothing that is kept will still serve as seed on ${day}. Freeze some cubes before you go, or start afresh then.`;
  return `When you are back on ${day}, ${still.slice(0, 3).join(', ')}${still.length > 3 ? ` and ${still.length - 3} more` : ''} will still serve as seed. Look and smell first.`;
}

/** Everything but the start, the most pressing first. */
export function restSays(plan: {
  readonly jars: readonly PlannedSays[];
  readonly first: boolean;
  readonly uneven: Expected;
  readonly currency: string;
  readonly short: readonly {
    readonly what: string;
    readonly needed: number;
    readonly has: number;
    readonly unit: string;
  }[];
  readonly filled: number | null;
  readonly warnings: readonly string[];
  readonly serves: string | null;
}): string[] {
  const { jars, filled } = plan;
  if (jars.length === 0) return [...plan.warnings, ...(plan.serves === null ? [] : [plan.serves])];
  const seeds = [...new Set(jars.flatMap((jar) => seedSays(jar) ?? []))];
  const likely = likelySays(jars);
  return [
    ...plan.short.map(shortSays),
    ...(filled !== null && filled < jars.length
      ? [`The milk at hand fills ${filled} of ${jars.length} jars.`]
      : []),
    ...plan.warnings,
    ...(plan.serves === null ? [] : [plan.serves]),
    ...seeds,
    ...likely,
    unevenSays(plan.first, plan.uneven),
    costSays(jars, plan.currency),
  ];
}
