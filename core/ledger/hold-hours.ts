// How long a jar was warm. One place for it: whoever asks for hours asks here.
import type { Hold } from './records';

/** From when to when something was warm (ms since 1970), and the hours that were noted of it. */
export interface Warm {
  readonly from: number | null;
  readonly to: number | null;
  readonly hours: number | null;
}

const HOUR = 3_600_000;

/**
 * Nothing that a culture sets at about 38 °C is set sooner (h). Common yoghurt, the quickest, takes 4 to 8 hours at 42 °C
 * (common practice, no source).
 */
export const LEAST_SETTING_HOURS = 4;

/** Between the two moments where both are known (none at all where they are one), else as noted; null where neither is. */
const hoursOf = ({ from, to, hours }: Warm): number | null =>
  from !== null && to !== null && to >= from ? (to - from) / HOUR : hours;

/** Length of a hold (h): between its two moments where both are known, else as noted; null where neither is. */
export function holdHours(hold: Pick<Hold, 'startedAt' | 'endedAt' | 'hours'>): number | null {
  const at = (moment: string | null): number | null => (moment === null ? null : Date.parse(moment));
  return hoursOf({ from: at(hold.startedAt), to: at(hold.endedAt), hours: hold.hours });
}

/** Hours of a jar: those of its stays together; null where it had none, or those of one are not known. */
export function stayedHours(stays: readonly Warm[]): number | null {
  const hours = stays.map(hoursOf);
  if (hours.length === 0 || hours.includes(null)) return null;
  return hours.reduce<number>((sum, one) => sum + (one ?? 0), 0);
}

/** Hours to a hundredth, as they are replied: a minute is no more than that. */
export const toHundredth = (hours: number | null): number | null =>
  hours === null ? null : Math.round(hours * 100) / 100;
