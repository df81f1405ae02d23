// How the temperatures of a jar are known, in words: what was left out of its readings, what stands in for gaps, and how it
// follows a probe outside it.
import type { ReadingsProfile } from '../growth/reading-profile';
import type { TimeConstant } from '../growth/time-constant';
import type { HoldWarmth } from '../vigour/jar-evidence';

const clock = (hours: number): string => {
  const minutes = Math.round(hours * 60);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};
const degrees = (celsius: number): string => `${celsius.toFixed(1)} °C`;

/** What was done with readings, a sentence each. */
const profileSays = ({ leftOut, gaps }: Pick<ReadingsProfile, 'leftOut' | 'gaps'>): string[] => [
  ...leftOut.map(
    ({ hour, celsius }) =>
      `Left out: ${degrees(celsius)} at ${clock(hour)}. No jar warms and cools that fast.`,
  ),
  ...gaps.map(
    ({ from, to }) =>
      `Nothing was read for ${clock(to - from)} from ${clock(from)} on. A straight line stands in for it.`,
  ),
];

const hours = (value: number): string => `${value < 1 ? value.toFixed(2) : value.toFixed(1)} h`;

/** What is said of jars that were read in one of several baths. */
const unclearSays = (unclear: number): string =>
  unclear === 0
    ? ''
    : ` The readings in ${unclear === 1 ? 'one jar' : `${unclear} jars`} were left out: more than one bath was read at that time, and nothing recorded says which of them ${unclear === 1 ? 'it' : 'each'} stood in.`;

/** How a jar is taken to follow a probe outside it. */
export function followsSays({ low, middle, high, from, unclear }: TimeConstant): string {
  const taken = `The jar is taken to follow what the probe read with a time constant of ${hours(middle)}`;
  if (from === 'your figure') return `${taken}, as you said.`;
  const range = `${taken} (${hours(low)} to ${hours(high)})`;
  return from === 'measured'
    ? `${range}, measured where you had a probe in the bath and one in a jar.${unclearSays(unclear)}`
    : `${range}. Nobody measured it: a probe in bath and jar at once would.${unclearSays(unclear)}`;
}

/** What the temperatures of a hold rest on, a sentence each. */
export const warmthSays = ({ outside, probeSaid, read }: HoldWarmth): string[] => [
  ...(outside ? [followsSays(outside.follows)] : []),
  ...(probeSaid ? [] : ['Nobody said where the probe stood: it is taken to have been in the bath.']),
  ...profileSays(read),
];
