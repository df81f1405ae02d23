// Moments as they are told (ISO 8601 with an offset) and as they are stored: seconds since 1970 in UTC, and the offset in
// minutes. Order goes by the seconds: texts with offsets sort wrongly in the night the clocks change.

export interface StoredMoment {
  /** Seconds since 1970 in UTC; parts of a second are dropped. */
  readonly seconds: number;
  /** Minutes by which the clock was ahead of UTC. */
  readonly offset: number;
}

/** @throws RangeError where the text is no moment */
export function storedMoment(text: string): StoredMoment {
  const at = Date.parse(text);
  if (Number.isNaN(at)) throw new RangeError(`${text} is no moment`);
  const offset = /([+-])(\d{2}):(\d{2})$/.exec(text);
  const minutes = offset ? Number(offset[2]) * 60 + Number(offset[3]) : 0;
  return { seconds: Math.floor(at / 1000), offset: offset?.[1] === '-' ? -minutes : minutes };
}

const two = (value: number): string => String(value).padStart(2, '0');

/** "2026-03-14T18:30:00+01:00"; with Z where the offset is 0. */
export function momentText(seconds: number, offset: number): string {
  const local = new Date((seconds + offset * 60) * 1000).toISOString().slice(0, 19);
  if (offset === 0) return `${local}Z`;
  const minutes = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** When a day began on the clock by which a moment was told (milliseconds since 1970). @param now a moment with its offset */
export const dayBegan = (day: string, now: string): number =>
  Date.parse(`${day}T00:00:00Z`) - storedMoment(now).offset * 60_000;
