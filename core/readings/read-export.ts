// A probe's export as text → readings as moments in °C, with what could not be read and what was assumed. The one place
// that a file of readings is read; it knows no maker, only what makes the rows run on evenly. Never throws.
import { fromFahrenheit } from '../quantities/quantities';
import { readFigure, readStamp, unitIn, zoneIn, type Letter, type ReadStamp } from './export-cells';
import { stampIn, timeColumns } from './export-layout';
import { layRows, type Laid, type Where } from './export-rows';
import { civilTimes, momentsOf, type Around, type At, type Civil } from './export-times';

export interface ExportReading {
  /** Line of the file, the first being 1. */
  readonly row: number;
  readonly at: At;
  readonly celsius: number;
  /** As it stands in the file: "195.8 °F". */
  readonly shown: string;
}

export interface ReadExport {
  /** In the order of time, each moment once. */
  readonly readings: readonly ExportReading[];
  /** Rows that should be readings and can't be read. */
  readonly leftOut: readonly { readonly row: number; readonly sentence: string }[];
  readonly unit: Letter;
  readonly heading: string | null;
  /** What was assumed, and what else was done, in sentences. */
  readonly says: readonly string[];
  /** Why there are none; null where there are. */
  readonly trouble: 'no readings' | 'no day' | null;
}

/** Above this a bare middle temperature is in °F (a jar is held near 38 °C, which is 100 °F), above the next in kelvin. */
const FAHRENHEIT_ABOVE = 55;
const KELVIN_ABOVE = 250;
/** A hold so long is never as hot as this (°C): a heading that says so stands over figures in °F. */
const LONG_HOLD = 3 * 3600;
/** More readings than this are kept as means of each minute. */
const MOST = 10_000;

const middle = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
/** As Map.groupBy, which the window's runtime lacks. */
function grouped<T>(all: readonly T[], by: (one: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const one of all) {
    const group = groups.get(by(one));
    if (group) group.push(one);
    else groups.set(by(one), [one]);
  }
  return groups;
}
const toCelsius = (value: number, unit: Letter): number =>
  unit === 'F' ? fromFahrenheit(value) : unit === 'K' ? value - 273.15 : value;
const unitWord = (unit: Letter): string => (unit === 'K' ? 'K' : `°${unit}`);

const UNITS_SINCE = new Map([[1 / 60, 'minutes'], [1 / 3600, 'hours']]); // prettier-ignore

interface Raw {
  readonly row: number;
  readonly stamp: ReadStamp | number;
  readonly day: ReadStamp | null;
  readonly value: number;
  readonly unit: Letter | null;
}
type LeftOut = ReadExport['leftOut'][number];

function rawRows(laid: Laid): { raw: Raw[]; leftOut: LeftOut[]; others: number[] } {
  const { layout, scale, split } = laid;
  const [column = 0] = laid.figures;
  const raw: Raw[] = [];
  const leftOut: LeftOut[] = [];
  const others: number[] = [];
  let day: ReadStamp | null = null;
  for (const [at, row] of laid.rows.entries()) {
    const stamp = stampIn(row, layout);
    const cell = row.cells[column] ?? '';
    const figure = readFigure(split ? `${cell}.${row.cells[column + 1] ?? ''}` : cell);
    const alone = stamp === null ? dayAlone(row.cells) : null;
    if (alone) day = alone;
    if (stamp !== null && figure) {
      const told = scale === null ? null : unitIn(row.cells[scale] ?? '');
      raw.push({ row: row.line, stamp, day, value: figure.value, unit: figure.unit ?? told });
    } else if (at > laid.first && stamp !== null) {
      const only = cell.trim() === '' ? 'no temperature' : `only “${cell.trim().slice(0, 30)}”`;
      leftOut.push({ row: row.line, sentence: `There is a time in this row, but ${only}.` });
    } else if (at > laid.first && figure && row.cells.length >= 2 && !alone) {
      leftOut.push({ row: row.line, sentence: 'There is a temperature in this row, but no time that can be read.' });
    } else if (at > laid.first && row.cells.some((one) => one.trim() !== '')) others.push(row.line);
  }
  return { raw, leftOut, others };
} // prettier-ignore

/** "Date: 10 Feb 2026" above times that have no day of their own. */
function dayAlone(cells: readonly string[]): ReadStamp | null {
  const text = cells.filter((cell) => cell.trim() !== '').join(' ');
  const stamp = readStamp(text.replace(/^[^\d]*?[:=]\s*/, '')) ?? readStamp(text);
  return stamp?.day ? stamp : null;
}

interface Scale {
  readonly unit: Letter;
  readonly says: string;
}
function scaleOf(laid: Laid, raw: readonly Raw[], seconds: number): Scale {
  const [column = 0] = laid.figures;
  const cell = raw.find(({ unit }) => unit !== null)?.unit ?? null;
  const heading = unitIn(laid.headings[column] ?? '');
  const above = laid.rows.slice(0, laid.first).map(({ cells }) => unitIn(cells.join(' : ')));
  const said = heading ?? above.findLast((unit) => unit !== null) ?? null;
  if (cell) return { unit: cell, says: `Read as ${unitWord(cell)}, as it stands beside the figures.` };
  const usual = middle(raw.map(({ value }) => value));
  if (said === 'C' && usual > 60 && usual < 150 && seconds > LONG_HOLD)
    return { unit: 'F', says: `The heading says °C, but nothing is held at ${Math.round(usual)} °C for hours: read as °F.` };
  if (said) return { unit: said, says: `Read as ${unitWord(said)}, as the heading says.` };
  const unit = usual > KELVIN_ABOVE ? 'K' : usual > FAHRENHEIT_ABOVE ? 'F' : 'C';
  return { unit, says: `No scale is written in the file: read as ${unitWord(unit)}, going by the figures.` };
} // prettier-ignore

/** Civil times of a layout that has no clock in its rows. */
function plainTimes(raw: readonly Raw[], laid: Laid, around: Around): Civil[] | null {
  const figures = raw.map(({ stamp }) => stamp as number);
  if (laid.layout.by === 'epoch') {
    return figures.map((seconds) => {
      const offset = around.beganOffset ?? around.offsetAt(seconds);
      return { seconds: seconds + offset * 60, offset };
    });
  }
  // Day 0 of a spreadsheet is 30 December 1899.
  if (laid.layout.by === 'serial') return figures.map((days) => ({ seconds: Math.round((days - 25_569) * 86_400), offset: null }));
  const told = laid.rows.slice(0, laid.first).map(({ cells }) => dayAlone(cells)).findLast((stamp) => stamp?.clock);
  const began = around.began === null ? undefined : around.began + (around.beganOffset ?? 0) * 60;
  const start = told ? civilTimes([told], [null], around).times[0]?.seconds : began;
  // Hours to three places are seconds off: all of them full minutes, nearly, are full minutes.
  const minute = (seconds: number): number => Math.round(seconds / 60) * 60;
  const full = figures.every((seconds) => Math.abs(seconds - minute(seconds)) <= 2);
  return start === undefined ? null : figures.map((seconds) => ({ seconds: start + (full ? minute(seconds) : seconds), offset: null }));
} // prettier-ignore

/** Minutes ahead of UTC that the heading of the times, or a line above that speaks of a zone, names. */
function zoneOf({ headings, layout, rows, first }: Laid): number | null {
  if (layout.by === 'epoch' || layout.by === 'elapsed') return null;
  const heading = timeColumns(layout).map((at) => headings[at] ?? '').join(' ');
  const above = rows.slice(0, first).map(({ cells }) => cells.filter((cell) => cell.trim() !== '').join(' '));
  const told = above.filter((line) => /zone|fuseau|\btz\b|utc|gmt|fuso/iu.test(line)).flatMap((line) => zoneIn(line) ?? []);
  return zoneIn(heading) ?? told[0] ?? null;
} // prettier-ignore

/** Times that begin at nought, or run past a day, and have no day: how long it ran, where the hold did not begin at midnight. */
function sinceStart(laid: Laid, raw: readonly Raw[], { began, beganOffset }: Around): Laid {
  const { layout } = laid;
  if (layout.by !== 'clock' || layout.hasDay || layout.columns.length > 1) return laid;
  const clocks = raw.map(({ stamp }) => (stamp as ReadStamp).clock?.seconds ?? 0);
  const rises = clocks.every((one, i) => i === 0 || one > (clocks[i - 1] ?? 0));
  const midnight = began === null ? 0 : (((began + (beganOffset ?? 0) * 60) % 86_400) + 86_400) % 86_400;
  const far = Math.min(midnight, 86_400 - midnight) > 2 * 3600;
  const lasts = clocks.some((one) => one >= 86_400) || (clocks[0] === 0 && far);
  return rises && lasts ? { ...laid, layout: { by: 'elapsed', column: layout.columns[0] ?? 0, perSecond: 1 } } : laid;
} // prettier-ignore

interface Timed {
  readonly raw: Raw;
  readonly at: At;
}

/** Readings of a clock without seconds that share a minute are spread over it. */
function spread(timed: readonly Timed[]): { timed: Timed[]; spread: boolean } {
  const groups = grouped(timed, ({ at }) => at.seconds);
  const shared = [...groups.values()].filter((group) => group.length > 1 && group.some(({ raw }) => raw.value !== group[0]?.raw.value));
  const noSeconds = timed.every(({ at }) => at.seconds % 60 === 0);
  if (!noSeconds || shared.length < 3 || shared.length < groups.size / 5) return { timed: [...timed], spread: false };
  const size = [...groups.values()].reduce((most, group) => Math.max(most, group.length), 0);
  const apart = ({ raw, at }: Timed, i: number): Timed => ({
    raw,
    at: { ...at, seconds: at.seconds + Math.floor((60 * i) / size) },
  });
  return { timed: [...groups.values()].flatMap((group) => group.map(apart)), spread: true };
} // prettier-ignore

/** Means of each minute, where a probe read so often that nothing is gained by keeping all. */
function thinned(readings: readonly ExportReading[]): ExportReading[] {
  if (readings.length <= MOST) return [...readings];
  return [...grouped(readings, ({ at }) => Math.floor(at.seconds / 60)).values()].flatMap((group) => {
    // Not the mean: one impossible reading would be spread over the minute.
    const sorted = group.toSorted((a, b) => a.celsius - b.celsius);
    const median = sorted[Math.floor(sorted.length / 2)];
    return median
      ? [{ ...median, at: { ...median.at, seconds: Math.floor(median.at.seconds / 60) * 60 } }]
      : [];
  });
}

const nothing = (trouble: ReadExport['trouble']): ReadExport => ({
  readings: [], leftOut: [], unit: 'C', heading: null, says: [], trouble,
}); // prettier-ignore

/** Each moment once; of two that differ the first stands. */
function once(readings: readonly ExportReading[], leftOut: LeftOut[]): ExportReading[] {
  const seen = new Map<number, ExportReading>();
  for (const reading of readings) {
    const before = seen.get(reading.at.seconds);
    if (!before) seen.set(reading.at.seconds, reading);
    else if (Math.abs(before.celsius - reading.celsius) > 1e-9)
      leftOut.push({ row: reading.row, sentence: `Row ${before.row} has a reading of the same moment already, ${before.shown}.` });
  }
  return [...seen.values()].toSorted((a, b) => a.at.seconds - b.at.seconds);
} // prettier-ignore

/** "+01:00"; nothing for UTC itself. */
const zoneWords = (minutes: number): string => {
  if (minutes === 0) return '';
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${minutes < 0 ? '−' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
};

const listed = (rows: readonly number[]): string =>
  `${rows.length === 1 ? 'Row' : 'Rows'} ${rows.slice(0, 5).join(', ')}${rows.length > 5 ? ` and ${rows.length - 5} more` : ''}`;

/**
 * Reads an export.
 * @param where where the probe stood: it chooses among several columns of temperatures
 */
export function readExport(text: string, where: Where, around: Around): ReadExport {
  const rows = layRows(text, where);
  if (!rows) return nothing('no readings');
  const laid = sinceStart(rows, rawRows(rows).raw, around);
  const { raw: found, leftOut, others } = rawRows(laid);
  const zone = zoneOf(laid);
  // Newest first: turned round, so that the night the clocks change runs forward.
  const first = laid.layout.by === 'clock' ? directionOf(found, around) : 1;
  const raw = first < 0 ? found.toReversed() : found;
  const says: string[] = [];
  let times: Civil[] | null;
  if (laid.layout.by === 'clock') {
    const stamps = raw.map(({ stamp }) => stamp as ReadStamp);
    const civil = civilTimes(stamps, raw.map(({ day }) => day), around);
    times = civil.placed ? civil.times : null;
    if (civil.either) says.push(`Days are read with the ${civil.order === 'month first' ? 'month' : 'day'} first, as you write them: the file leaves it open.`);
    else if (!laid.layout.hasDay) says.push('The rows have no day: the first is taken to be nearest the start of the hold.');
  } else times = plainTimes(raw, laid, around);
  if (!times) return nothing('no day');
  if (zone !== null && times.some(({ offset }) => offset === null)) {
    times = times.map(({ seconds, offset }) => ({ seconds, offset: offset ?? zone }));
    says.push(`Its clock is read as UTC${zoneWords(zone)}, as the file says.`);
  }
  const { at, changed } = momentsOf(times, around);
  if (changed) says.push(`The clocks were put ${changed} that night: the hour is counted ${changed === 'back' ? 'twice, as it was lived' : 'as none'}.`);
  const timed = raw.flatMap((one, i) => (at[i] ? [{ raw: one, at: { ...at[i], seconds: Math.round(at[i].seconds) } }] : []));
  const spreadOut = spread(timed);
  if (spreadOut.spread) says.push('The clock shows no seconds: readings of one minute are spread over it.');
  const moments = spreadOut.timed.map(({ at: one }) => one.seconds);
  const length = moments.reduce((a, b) => Math.max(a, b), -Infinity) - moments.reduce((a, b) => Math.min(a, b), Infinity);
  const scale = scaleOf(laid, raw, length);
  const readings = thinned(once(spreadOut.timed.map(({ raw: { row, value, unit }, at: one }) => ({
    row, at: one, celsius: toCelsius(value, unit ?? scale.unit), shown: `${value} ${unitWord(unit ?? scale.unit)}`,
  })), leftOut));
  const [column = 0] = laid.figures;
  const heading = (laid.sensor ?? laid.headings[column])?.trim().slice(0, 200) || null;
  says.unshift(scale.says);
  if (laid.every !== undefined) says.push(`Rows have no time: one every ${laid.every % 60 === 0 ? `${laid.every / 60} min` : `${laid.every} s`}, as the file says.`);
  if (laid.layout.by === 'elapsed' && laid.layout.guessed) says.push(`The first column is read as ${UNITS_SINCE.get(laid.layout.perSecond) ?? 'seconds'} since the start.`);
  if (laid.sensor !== null) says.push(`The file holds several sensors: “${laid.sensor.slice(0, 60)}” is read.`);
  if (laid.figures.length > 1) says.push(`Several columns hold temperatures: ${heading ? `“${heading}”` : `column ${column + 1}`} is read.`);
  if (readings.length < raw.length && raw.length > MOST) says.push('The probe read more often than once a minute: of each minute the middle reading is kept.');
  if (others.length > 0) says.push(`${listed(others)} hold${others.length === 1 ? 's' : ''} no reading and ${others.length === 1 ? 'was' : 'were'} passed over.`);
  return { readings, leftOut: leftOut.toSorted((a, b) => a.row - b.row), unit: scale.unit, heading, says, trouble: null };
} // prettier-ignore

/** 1 where the rows run forward in time, −1 where the newest stands first. */
function directionOf(raw: readonly Raw[], around: Around): 1 | -1 {
  const stamps = raw.map(({ stamp }) => stamp as ReadStamp);
  const { times } = civilTimes(stamps, raw.map(({ day }) => day), around);
  const steps = times.slice(1).map(({ seconds }, i) => seconds - (times[i]?.seconds ?? 0));
  // Times without days run on by themselves; turned round they step back a little, again and again.
  const back = steps.filter((step) => step < 0).length;
  return back > steps.length / 2 ? -1 : 1;
} // prettier-ignore
