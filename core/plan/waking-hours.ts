// When to start, backwards from when one is awake: the looks at 12 and 24 h and the take-out must fall into waking hours.
const MINUTE = 60;
const DAY_MINUTES = 1440;
/** Starts are proposed so far ahead (h), in steps of so many minutes. */
const AHEAD = 48;
const STEP = 30;
/** Hours after the start at which jars are looked at. */
export const LOOK_HOURS: readonly number[] = [12, 24];

/** Minutes after midnight; `to` may lie past midnight. */
export interface Waking {
  readonly from: number;
  readonly to: number;
}

export interface StartWindow {
  /** Seconds since 1970: any start from the one to the other will do. */
  readonly from: number;
  readonly to: number;
}

const isAwake = (minute: number, { from, to }: Waking): boolean =>
  to >= from ? minute >= from && minute <= to : minute >= from || minute <= to;

/**
 * Windows in which a hold can start so that its start, its looks and its take-out fall into waking hours.
 * @param now seconds since 1970
 * @param hours length of the hold
 * @param offsetAt minutes that the keeper's clock is ahead of UTC at a moment
 */
export function startWindows(
  now: number,
  hours: number,
  waking: Waking,
  offsetAt: (seconds: number) => number,
): StartWindow[] {
  const minuteOf = (seconds: number): number =>
    (((Math.round(seconds / MINUTE) + offsetAt(seconds)) % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
  const step = STEP * MINUTE;
  const first = Math.ceil(now / step) * step;
  const moments = [0, ...LOOK_HOURS.filter((hour) => hour < hours), hours];
  const windows: { from: number; to: number }[] = [];
  for (let start = first; start <= now + AHEAD * 3600; start += step) {
    if (!moments.every((hour) => isAwake(minuteOf(start + hour * 3600), waking))) continue;
    const last = windows.at(-1);
    if (last && last.to === start - step) last.to = start;
    else windows.push({ from: start, to: start });
  }
  return windows;
}
