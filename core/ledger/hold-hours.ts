// How long a jar was warm. One place for it: whoever asks for hours asks here.
import type { Hold } from './records';

const HOUR = 3_600_000;

/** Length of a hold (h): between its two moments where both are known, else as noted; null where neither is. */
export function holdHours(hold: Pick<Hold, 'startedAt' | 'endedAt' | 'hours'>): number | null {
  if (hold.startedAt === null || hold.endedAt === null) return hold.hours;
  const hours = (Date.parse(hold.endedAt) - Date.parse(hold.startedAt)) / HOUR;
  return hours > 0 ? hours : hold.hours;
}

/** Hours to a hundredth, as they are replied: a minute is no more than that. */
export const toHundredth = (hours: number | null): number | null =>
  hours === null ? null : Math.round(hours * 100) / 100;
