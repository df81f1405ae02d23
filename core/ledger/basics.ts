// The small types every record is built from. Owns shapes only; parsing of what people type is core/quantities.
import { z } from 'zod';
import { showsNothing } from './blank';

/** A permanent id, UUIDv7 (RFC 9562), lower case. */
export const Uid = z.string().regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, {
  message: 'this is not the id of a record',
});
export type Uid = z.infer<typeof Uid>;

const daysInMonth = (year: number, month: number): number =>
  month === 2
    ? (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
      ? 29
      : 28
    : [4, 6, 9, 11].includes(month)
      ? 30
      : 31;

/** Whether text is a real civil day written YYYY-MM-DD, of the years 1900 to 2999. */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  return (
    year >= 1900 && year <= 2999 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month)
  );
}

/** A civil day, YYYY-MM-DD. Text end to end: no time zone can move it. */
export const Day = z.string().refine(isDay, { message: 'this is not a day written as 2026-03-14' });
export type Day = z.infer<typeof Day>;

const MOMENT = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,3})?)?(?:Z|[+-](\d{2}):(\d{2}))$/;

/** Whether text is a moment of a real day and time, with an offset of 18 hours at most. */
export function isMoment(text: string): boolean {
  const parts = MOMENT.exec(text);
  if (!parts) return false;
  const [hour, minute, second, offsetHour, offsetMinute] = parts.slice(2).map((part) => Number(part ?? 0));
  const time = (hour ?? 0) < 24 && (minute ?? 0) < 60 && (second ?? 0) < 60;
  return (
    time &&
    isDay(parts[1] ?? '') &&
    (offsetHour ?? 0) * 60 + (offsetMinute ?? 0) <= 1080 &&
    (offsetMinute ?? 0) < 60
  );
}

/** A moment with its offset, ISO 8601: 2026-03-14T18:30:00+01:00 or …Z. */
export const Moment = z
  .string()
  .regex(MOMENT, { message: 'this is not a moment written as 2026-03-14T18:30:00+01:00' })
  .refine(isMoment, { message: 'there is no such day, time or offset' });
export type Moment = z.infer<typeof Moment>;

/** Text a keeper typed: trimmed by the writer, bounded so that no field can hold a file. */
export const Line = z.string().max(200);

/** A name as it is given: something of it has to be seen. Names kept before this was asked are still read. */
export const Name = Line.min(1).refine((text) => !showsNothing(text), {
  message: 'nothing of this can be seen; it needs a name',
});

/** The path of a file: no system has names with a NUL in them. */
export const FilePath = z
  .string()
  .max(4096)
  .refine((text) => !text.includes('\0'), {
    message: 'this holds a character that no name of a file has',
  });

export const Prose = z.string().max(10_000);

const typed = z.string().max(200).nullable();

/** An amount in a stored unit, beside what was typed. A powder typed in spoons stays mL: never turned into grams. */
export const Amount = z.strictObject({
  value: z.number().nonnegative().max(1e15),
  unit: z.enum(['mL', 'g', 'pieces', 'CFU']),
  typed,
});
export type Amount = z.infer<typeof Amount>;

/** A temperature in °C, beside what was typed. */
export const Temperature = z.strictObject({
  value: z.number().min(-90).max(150),
  unit: z.literal('°C'),
  typed,
});
export type Temperature = z.infer<typeof Temperature>;

/** A price in minor units of a currency (ISO 4217), beside what was typed. */
export const Price = z.strictObject({
  minor: z.int().nonnegative().max(1e12),
  currency: z.string().regex(/^[A-Z]{3}$/, { message: 'this is not a currency such as EUR' }),
  typed,
});
export type Price = z.infer<typeof Price>;
