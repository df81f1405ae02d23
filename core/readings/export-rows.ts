// The rows of a probe's export: which way of cutting it makes the most readings, and which of its columns hold the temperature.
import type { Row } from '../notes/table/table-rows';
import { plain } from '../quantities/quantities';
import { readFigure } from './export-cells';
import {
  columnsOf,
  isIndex,
  kindOf,
  layoutOf,
  middle,
  rises,
  stampIn,
  timeColumns,
  timeText,
  type Column,
  type Layout,
} from './export-layout';
import { intervalIn } from './export-lengths';
import { sensorOf } from './export-sensors';
import { rowsBy } from './export-text';

/** Of a probe that reads much colder than another in the same file nobody says that it stood in the warmth. */
const COLDER = 0.8;
/** Rows that layout is chosen by. */
const SAMPLE = 300;

export interface Laid {
  readonly rows: readonly Row[];
  readonly layout: Layout;
  /** Columns that may be temperatures, the likeliest first. */
  readonly figures: readonly number[];
  /** A column that says the scale of each row. */
  readonly scale: number | null;
  /** Index of the first row that is a reading. */
  readonly first: number;
  readonly headings: readonly string[];
  /** Decimals stand in the cell behind: "28,9" where commas hold the cells apart. */
  readonly split: boolean;
  /** How many rows are readings. */
  readonly fits: number;
  /** How well the words over its figures, and the figures, fit a temperature. */
  readonly score: number;
  /** Seconds between two rows that have no time of their own, as a line above them says. */
  readonly every?: number;
  /** Which sensor was chosen, where the file tells of several by rows; null: it holds one. */
  readonly sensor: string | null;
}

const TEMPERATURE =
  /temp|°|celsius|fahrenheit|\bt\d?\b|degc|degf|reading|value|wert|messwert|probe|sensor|grad/;
const OTHER =
  /humid|\brh\b|%|feuchte|humed|umid|batt|volt|\bmv\b|press|druck|hpa|dew|taupunkt|lux|light|signal|rssi|set ?point|\bset\b|soll|target|ziel|alarm|\bmin\b|\bmax\b/;
const MEAN = /\bavg\b|average|mean|mittel|moyen|media\b/; // prettier-ignore
const PLACES = {
  bath: /bath|water|wasser|\bbad\b|eau|agua|acqua|extern|\bext\b|probe/,
  jar: /\bjars?\b|milk|glas|milch|lait|latte|leche|dummy|extern|\bext\b|probe/,
  air: /\bair\b|ambient|room|luft|raum|box|intern|\bint\b/,
} as const;
export type Where = keyof typeof PLACES;

/** How well a heading or a sensor's name fits where the probe stood. */
function named(heading: string, where: Where): number {
  let score = 0;
  if (TEMPERATURE.test(heading)) score += 4;
  if (OTHER.test(heading)) score -= 6;
  if (MEAN.test(heading)) score -= 3;
  for (const [place, words] of Object.entries(PLACES))
    if (words.test(heading)) score += place === where ? 2 : -1;
  return score;
}

function scored(column: Column, where: Where): number {
  const { heading, values } = column;
  const score = named(heading, where) - (isIndex(column) ? 10 : 0);
  const likely = values.filter((value) => value > 10 && value < 130).length / Math.max(1, values.length);
  // What never changes is what was aimed at, or a room: where another column changes, that one was measured.
  const still = values.length > 5 && values.every((value) => value === values[0]);
  return score + 3 * likely - (still ? 3 : 0);
}

/** A cell of decimals stands behind most figures of a column. */
function isSplit(rows: readonly Row[], at: number, headings: readonly string[]): boolean {
  const whole = rows.filter(({ cells }) => /^\s*-?\d{1,3}$/.test(cells[at] ?? ''));
  const parted = whole.filter(({ cells }) => /^\d{1,2}\s*(?:°?\s*[CF])?$/i.test(cells[at + 1] ?? ''));
  const wider =
    headings.length === 0
      ? parted.every(({ cells }) => cells.length === at + 2 && /^\d\D*$/.test(cells[at + 1] ?? ''))
      : parted.every(({ cells }) => cells.length > headings.length);
  return whole.length > 1 && parted.length >= 0.7 * rows.length && wider;
}

/** A day that is written only where it changes holds for the rows below it. */
function filledDown(all: readonly Row[]): readonly Row[] {
  const clocks = all.filter(({ cells }) => cells.some((cell) => kindOf(cell) === 'clock'));
  const [first] = clocks;
  const at = first?.cells.findIndex((cell) => kindOf(cell) === 'day') ?? -1;
  const empty = clocks.filter(({ cells }) => (cells[at] ?? '').trim() === '').length;
  if (at < 0 || empty < clocks.length / 3) return all;
  const below = new Set(clocks);
  let day = '';
  return all.map((row) => {
    if (!below.has(row)) return row;
    day = (row.cells[at] ?? '').trim() || day;
    return { ...row, cells: row.cells.with(at, day) };
  });
}

/** Where each sensor has a time of its own, the one beside the figures that are read. */
function timeBeside(columns: readonly Column[], layout: Layout, figure: number, figures: number, rows: number): Layout {
  if (layout.by !== 'clock' || layout.columns.length > 1) return layout;
  const moments = columns.filter(({ counts }) => counts.moment >= rows / 2);
  const beside = moments.findLast(({ at }) => at < figure);
  return moments.length > 1 && moments.length === figures && beside ? { ...layout, columns: [beside.at] } : layout;
} // prettier-ignore

function lay(given: readonly Row[], where: Where): Laid | null {
  const all = filledDown(given);
  // Whatever stands above, readings are the rows that hold a figure beside a time.
  const busy = all.filter(({ cells }) => {
    const found = cells.slice(0, 40).map(kindOf);
    return found.filter((kind) => kind !== null && kind !== 'half').length >= 2;
  });
  const sample = busy.slice(0, SAMPLE);
  if (sample.length === 0) return null;
  const firstBusy = all.indexOf(sample[0] as Row);
  const above = all.slice(0, firstBusy).filter(({ cells }) => cells.some((cell) => /\p{L}|°|#/u.test(cell)));
  const width = sample.at(-1)?.cells.length ?? 0;
  const heads = above.findLast(
    ({ cells }) =>
      cells.filter((cell) => cell.trim() !== '').length >= Math.min(2, width) &&
      !cells.some((cell) => ['moment', 'clock'].includes(kindOf(cell) ?? '')),
  );
  const headings = heads?.cells ?? [];
  const columns = columnsOf(sample, headings);
  const found = layoutOf(columns, sample.length);
  if (!found) return null;
  const taken = new Set(timeColumns(found));
  const warmest = columns.reduce((most, { at, values }) => (taken.has(at) ? most : Math.max(most, middle(values))), 0);
  const cold = ({ values }: Column): number => Number(where !== 'air' && middle(values) < COLDER * Math.min(warmest, 130));
  const figures = columns
    .filter((column) => !taken.has(column.at) && column.values.length > 0 && column.values.length + 1 >= sample.length / 3)
    .map((column) => ({ at: column.at, score: scored(column, where), cold: cold(column) }))
    .filter((column) => column.score > -4)
    .toSorted((a, b) => b.score - a.score || a.cold - b.cold || a.at - b.at); // prettier-ignore
  const [best] = figures;
  if (!best) return null;
  const layout = timeBeside(columns, found, best.at, figures.length, sample.length);
  const readings = all.map((row) => stampIn(row, layout) !== null && readFigure(row.cells[best.at] ?? '') !== null);
  const first = readings.indexOf(true);
  if (first < 0) return null;
  return {
    rows: all,
    layout,
    figures: figures.filter(({ score }) => score >= best.score - 2).map(({ at }) => at),
    scale: columns.find(({ at, counts }) => !taken.has(at) && counts.scale >= sample.length / 2)?.at ?? null,
    first,
    headings,
    split: isSplit(sample, best.at, headings),
    fits: readings.filter(Boolean).length,
    // A cut that leaves as many headings as cells, one of them over the temperature, is the one that was meant.
    score:
      best.score +
      Number(headings.length === width && named(plain(headings[best.at] ?? ''), where) > 0) -
      Number(headings.length > 0 && headings.length !== width),
    sensor: null,
  };
} // prettier-ignore

/** The rows of one sensor, where the file tells of several by rows. */
function ofOneSensor(laid: Laid, where: Where): Laid {
  const { rows, layout, figures, headings } = laid;
  const told = rows.map((row) => {
    const celsius = readFigure(row.cells[figures[0] ?? 0] ?? '')?.value ?? null;
    const time = celsius !== null && stampIn(row, layout) !== null ? timeText(row.cells, layout) : null;
    return { row, time, celsius };
  });
  const hasDay = layout.by !== 'clock' || layout.hasDay;
  const sensor = sensorOf(told, headings, hasDay, (name) => named(name, where), where !== 'air');
  const own = sensor && lay(sensor.rows, where);
  return own ? { ...own, sensor: sensor.name } : laid;
}

/** Rows of figures alone with the seconds since the first behind them, where a line above says how often it was read. */
function timedRows(rows: readonly Row[]): { rows: readonly Row[]; every: number } | null {
  const isRead = ({ cells }: Row): boolean => {
    const texts = cells.map((cell) => cell.trim()).filter((text) => text !== '');
    return texts.length > 0 && texts.length < 6 && texts.every((text) => readFigure(text) !== null);
  };
  const first = rows.findIndex((row, i) => isRead(row) && rows.slice(i, i + 3).every(isRead));
  const every = rows.slice(0, Math.max(0, first)).flatMap(({ cells }) => intervalIn(cells.join(' ')) ?? [])[0];
  if (every === undefined) return null;
  const figure = ({ cells }: Row): number => readFigure(cells[0] ?? '')?.value ?? NaN;
  const read = rows.slice(first).filter(isRead);
  const numbers = read.map(figure);
  const counted = numbers.length > 2 && rises(numbers) && numbers.every(Number.isInteger);
  const start = numbers[0] ?? 0;
  const order = new Map(read.map((row, i) => [row, (counted ? figure(row) - start : i) * every]));
  const timed = rows.map((row) => ({ ...row, cells: [...row.cells, order.has(row) ? String(order.get(row)) : 'elapsed (s)'] }));
  return { rows: timed, every };
} // prettier-ignore

/** Of two ways to cut the rows the one that reads more of them; of two that read nearly as many, the better headed. */
function isBetter(laid: Laid, than: Laid | null): boolean {
  if (than === null) return true;
  const near = Math.abs(laid.fits - than.fits) <= 0.05 * Math.max(laid.fits, than.fits);
  if (near && laid.score !== than.score) return laid.score > than.score;
  // One that finds a day, too.
  const worth = ({ fits, layout }: Laid): number => 2 * fits + Number(layout.by !== 'clock' || layout.hasDay);
  return worth(laid) > worth(than);
}

/** The text's rows by the separator that makes most of them readings; null where none does. */
export function layRows(text: string, where: Where): Laid | null {
  let best: Laid | null = null;
  for (const rows of rowsBy(text)) {
    const laid = lay(rows, where);
    if (laid && isBetter(laid, best)) best = laid;
  }
  if (best) return ofOneSensor(best, where);
  for (const rows of rowsBy(text)) {
    const timed = timedRows(rows);
    const laid = timed && lay(timed.rows, where);
    if (timed && laid && isBetter(laid, best)) best = { ...laid, every: timed.every };
  }
  return best;
}
