// What an export tells of a hold: which readings count, which leap impossibly, where it settled and when. Pure.
import { toFahrenheit } from '../quantities/quantities';
import { profileOf } from '../growth/reading-profile';
import { settledOf, type Settled } from '../growth/settling';
import { warmthOf } from '../growth/warm-hours';
import type { ExportReading, ReadExport } from './read-export';
import type { Around } from './export-times';

const HOUR = 3600;

export interface BroughtIn {
  readonly readings: readonly ExportReading[];
  /** Readings that are kept beside them and count no more. */
  readonly impossible: readonly ExportReading[];
  readonly leftOut: readonly { readonly row: number; readonly sentence: string }[];
  /** Seconds since 1970, with the offset that the clock had. */
  readonly gaps: readonly { readonly from: ExportReading; readonly to: ExportReading }[];
  readonly settledAt: { readonly value: number; readonly unit: '°C' | '°F' } | null;
  /** After the start of the hold; where that is not known, after the first reading. */
  readonly minutesToSettle: number | null;
  readonly minutesAbove45: number;
  readonly settled: Settled | null;
  readonly says: readonly string[];
}

const shownIn = (celsius: number, unit: '°C' | '°F'): number =>
  Number((unit === '°F' ? toFahrenheit(celsius) : celsius).toFixed(1));

/** Readings within the hold, where most of them lie in it; else all, and it is said. */
function withinHold(all: readonly ExportReading[], { began, ended }: Around): { inside: readonly ExportReading[]; says: string[] } {
  const inside = all.filter(({ at }) => (began === null || at.seconds >= began - 60) && (ended === null || at.seconds <= ended + 60));
  if (inside.length === all.length) return { inside, says: [] };
  const outside = all.length - inside.length;
  if (inside.length < 2 || inside.length < all.length / 10)
    return { inside: all, says: ['These readings lie outside the time that is noted for this hold: check its start and end, or the clock of the probe.'] };
  return { inside, says: [`${outside === 1 ? 'One reading lies' : `${outside} readings lie`} before or after the hold and ${outside === 1 ? 'is' : 'are'} kept, but not counted here.`] };
} // prettier-ignore

const hourOf = (seconds: number): number => seconds / HOUR;

/** Readings that count and those that leap impossibly, with the gaps between them. */
export function profiled(read: ReadExport): Pick<BroughtIn, 'readings' | 'impossible' | 'gaps'> {
  const byHour = new Map(read.readings.map((reading) => [hourOf(reading.at.seconds), reading]));
  const back = ({ hour }: { hour: number }): ExportReading[] =>
    [byHour.get(hour)].flatMap((one) => one ?? []);
  const points = read.readings.map(({ at, celsius }) => ({ hour: hourOf(at.seconds), celsius }));
  const { profile, leftOut: leaps, gaps } = profileOf(points);
  return {
    readings: profile.flatMap(back),
    impossible: leaps.flatMap(back),
    gaps: gaps.flatMap(({ from, to }) => {
      const [a, b] = [byHour.get(from), byHour.get(to)];
      return a && b ? [{ from: a, to: b }] : [];
    }),
  };
}

/** What readings of a hold amount to. */
export function broughtIn(read: ReadExport, around: Around): BroughtIn {
  const unit = read.unit === 'F' ? '°F' : '°C';
  const { readings, impossible, gaps } = profiled(read);
  const { inside, says } = withinHold(readings, around);
  const inHold = inside.map(({ at, celsius }) => ({ hour: hourOf(at.seconds), celsius }));
  const settled = settledOf(inHold);
  const began = around.began ?? inside[0]?.at.seconds ?? 0;
  const reached = settled && Math.max(0, settled.hour * 60 - began / 60);
  return {
    readings,
    impossible,
    leftOut: [
      ...read.leftOut,
      ...impossible.map(({ row, shown }) => ({ row, sentence: `${shown}: no bath and no jar warms and cools that fast.` })),
    ].toSorted((a, b) => a.row - b.row),
    gaps,
    settledAt: settled && { value: shownIn(settled.level, unit), unit },
    minutesToSettle: reached === null ? null : Math.round(reached),
    minutesAbove45: Math.round(warmthOf(inHold)?.minutesAboveDamage ?? 0),
    settled,
    says: [
      ...read.says,
      ...says,
      ...(gaps.length > 0 ? ['A straight line stands in for what was not read.'] : []),
      ...(settled?.byMean ? [`It swings by more than half a degree: settled is the mean of an hour.`] : []),
    ],
  };
} // prettier-ignore
