// The rows of a probe's export: how its cells are held apart, which columns tell the time, which the temperature.
import type { Row } from '../notes/table/table-rows';
import { readTable, SEPARATORS } from '../notes/table/text-table';
import { plain } from '../quantities/quantities';
import { readFigure, readStamp, type ReadStamp } from './export-cells';

/** Rows that layout is chosen by. */
const SAMPLE = 300;

/** How the rows tell the time. */
export type Layout =
  | { readonly by: 'clock'; readonly columns: readonly number[]; readonly hasDay: boolean }
  /** Seconds after the start: `per` is how many of the column's unit make a second. */
  | { readonly by: 'elapsed' | 'epoch'; readonly column: number; readonly perSecond: number }
  /** Day numbers of a spreadsheet. */
  | { readonly by: 'serial'; readonly column: number };

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
  /** How many rows of the sample are readings. */
  readonly fits: number;
}

const ELAPSED = /elapsed|since|laufzeit|dauer|duration|vergangen|ecoule|transcurrid|trascors|verstreken/;
const TEMPERATURE =
  /temp|°|celsius|fahrenheit|\bt\d?\b|degc|degf|reading|value|wert|messwert|probe|sensor|grad/;
const OTHER = /humid|\brh\b|%|feuchte|humed|umid|batt|volt|\bmv\b|press|druck|hpa|dew|taupunkt|lux|light|signal|rssi|set ?point|\bset\b|soll|target|ziel|alarm|\bmin\b|\bmax\b|\bavg\b|mean/; // prettier-ignore
const INDEX =
  /^(?:#|no\.?|nr\.?|n°|num(?:ber)?|index|id|record|entry|sample|seq|count|row|line|zeile|datensatz)(?:\W|$)/;
const CLOCK_HEADING = /\btime|clock|zeit|uhr|heure|hora\b|\bora\b|\btijd|\btid\b|klo|klok|godz/;
const PLACES = {
  bath: /bath|water|wasser|\bbad\b|eau|agua|acqua|extern|\bext\b|probe/,
  jar: /\bjars?\b|milk|glas|milch|lait|latte|leche|dummy|extern|\bext\b|probe/,
  air: /\bair\b|ambient|room|luft|raum|box|intern|\bint\b/,
} as const;
export type Where = keyof typeof PLACES;

/** Cells of a line held apart by blanks. */
const blanks = (text: string): Row[] =>
  text.split(/\r\n|\r|\n/).map((line, at) => ({ line: at + 1, cells: line.trim().split(/\s+/) }));

/** The last figure of a line, and all that stands before it: "Feb 10 2026 7:40 PM 84.1". */
const tails = (text: string): Row[] =>
  text.split(/\r\n|\r|\n/).map((line, at) => {
    const parts = /^(.*\S)\s+([-+]?\d+(?:[.,]\d+)?\s*°?\s*[CF]?)$/i.exec(line.trim());
    return { line: at + 1, cells: parts ? [parts[1] ?? '', parts[2] ?? ''] : [line.trim()] };
  });

const rowsBy = (text: string): (readonly Row[])[] => [
  ...SEPARATORS.map((separator) => readTable(text, undefined, separator).rows),
  blanks(text),
  tails(text),
];

type Kind = 'moment' | 'day' | 'clock' | 'half' | 'figure' | 'scale' | null;
const kinds = new Map<string, Kind>();
function kindOf(cell: string): Kind {
  const text = cell.trim();
  if (text === '') return null;
  const known = kinds.get(text);
  if (known !== undefined) return known;
  if (kinds.size > 20_000) kinds.clear();
  const kind = kindAnew(text);
  kinds.set(text, kind);
  return kind;
}
function kindAnew(text: string): Kind {
  if (/^[ap]\.?\s?m\.?$/i.test(text)) return 'half';
  if (/^(?:°\s*)?[CF]$|^celsius$|^fahrenheit$/i.test(text)) return 'scale';
  if (/^\d{1,2}\.\d{2}$/.test(text) || readFigure(text)) {
    const stamp = /^\d{8}$/.test(text) ? readStamp(text) : null;
    return stamp?.day ? 'day' : 'figure';
  }
  const stamp = readStamp(text);
  return stamp?.day ? (stamp.clock ? 'moment' : 'day') : stamp?.clock ? 'clock' : null;
}

interface Column {
  readonly at: number;
  readonly counts: Record<NonNullable<Kind>, number>;
  readonly values: readonly number[];
  readonly heading: string;
}

function columnsOf(rows: readonly Row[], headings: readonly string[]): Column[] {
  const width = Math.min(
    40,
    rows.reduce((most, { cells }) => Math.max(most, cells.length), 0),
  );
  return Array.from({ length: width }, (_, at) => {
    const counts = { moment: 0, day: 0, clock: 0, half: 0, figure: 0, scale: 0 };
    const values: number[] = [];
    for (const { cells } of rows) {
      const kind = kindOf(cells[at] ?? '');
      if (kind) counts[kind] += 1;
      const figure = kind === 'figure' ? readFigure(cells[at] ?? '') : null;
      if (figure) values.push(figure.value);
    }
    return { at, counts, values, heading: plain(headings[at] ?? '') };
  });
}

const rises = (values: readonly number[]): boolean =>
  values.length > 1 && values.every((value, i) => i === 0 || value > (values[i - 1] ?? 0));
const isIndex = ({ heading, values }: Column): boolean =>
  INDEX.test(heading) ||
  (values.length > 2 &&
    values.every((value, i) => Number.isInteger(value) && (i === 0 || value === (values[i - 1] ?? 0) + 1)));

function elapsedUnit({ heading, values }: Column): number | null {
  if (/\bms\b|milli/.test(heading)) return 1000;
  if (/\bs\b|sec|sek|\(s\)/.test(heading)) return 1;
  if (/min/.test(heading)) return 1 / 60;
  if (/\bh\b|hour|hrs|stund|heure|hora|\bore\b|uur/.test(heading)) return 1 / 3600;
  if (/\bday|tage\b/.test(heading)) return 1 / 86_400;
  return ELAPSED.test(heading) || (/\btime|zeit\b/.test(heading) && values[0] === 0) ? 1 / 60 : null;
}

/** A clock with a point, "19.40", under a heading that says so: by itself it could be a temperature. */
const isDotted = ({ heading, values }: Column, rows: number): boolean =>
  CLOCK_HEADING.test(heading) &&
  values.length >= rows / 2 &&
  values.every((value) => value >= 0 && value < 24 && Math.round((value % 1) * 100) < 60);

function layoutOf(columns: readonly Column[], rows: number): Layout | null {
  const most = (kind: NonNullable<Kind>): Column | undefined =>
    columns
      .toSorted((a, b) => b.counts[kind] - a.counts[kind])
      .find(({ counts }) => counts[kind] >= Math.max(1, rows / 2));
  const half = most('half');
  const join = (...given: (Column | undefined)[]): number[] => {
    const own = given.flatMap((column) => (column ? [column.at] : [])).toSorted((a, b) => a - b);
    // "Feb 10, 2026, 7:40 PM": a year in a cell of its own between them.
    const isYear = (value: number): boolean => Number.isInteger(value) && value >= 1990 && value <= 2100;
    const between = columns.filter(
      ({ at, values }) =>
        at > (own[0] ?? 0) && at < (own.at(-1) ?? 0) && values.length > 0 && values.every(isYear),
    );
    return [...own, ...between.map(({ at }) => at)].toSorted((a, b) => a - b);
  };
  const moment = most('moment');
  if (moment) return { by: 'clock', columns: join(moment, half), hasDay: true };
  const day = most('day');
  const clock = most('clock') ?? (day && columns.find((column) => column !== day && isDotted(column, rows)));
  if (day && clock) return { by: 'clock', columns: join(day, clock, half), hasDay: true };
  const numbers = columns.filter(({ values }) => values.length >= Math.max(1, rows / 2));
  const within = ({ values }: Column, low: number, high: number): boolean =>
    values.every((value) => value >= low && value < high);
  for (const [low, perSecond] of [
    [1e9, 1],
    [1e12, 1000],
    [1e15, 1e6],
  ] as const) {
    const epoch = numbers.find((column) => within(column, low, low * 4.2));
    if (epoch) return { by: 'epoch', column: epoch.at, perSecond };
  }
  const serial = numbers.find(
    (column) => within(column, 36_526, 73_050) && column.values.some((value) => !Number.isInteger(value)),
  );
  if (serial) return { by: 'serial', column: serial.at };
  const elapsedClock = clock && ELAPSED.test(clock.heading);
  if (clock && !elapsedClock) return { by: 'clock', columns: join(clock, half), hasDay: false };
  if (clock) return { by: 'elapsed', column: clock.at, perSecond: 1 };
  const elapsed = numbers.find(
    (column) => rises(column.values) && !INDEX.test(column.heading) && elapsedUnit(column) !== null,
  );
  return elapsed ? { by: 'elapsed', column: elapsed.at, perSecond: elapsedUnit(elapsed) ?? 1 } : null;
}

const timeColumns = (layout: Layout): readonly number[] =>
  layout.by === 'clock' ? layout.columns : [layout.column];

/** What the time cells of a row tell, or null. Elapsed times come as a clock of as many seconds. */
export function stampIn({ cells }: Row, layout: Layout): ReadStamp | number | null {
  if (layout.by === 'clock') {
    const stamp = readStamp(layout.columns.map((at) => cells[at] ?? '').join(' '));
    return stamp?.clock && (!layout.hasDay || stamp.day) ? stamp : null;
  }
  const figure = readFigure(cells[layout.column] ?? '')?.value ?? null;
  if (layout.by === 'serial') return figure;
  if (figure !== null) return figure / layout.perSecond;
  return layout.by === 'elapsed' ? (readStamp(cells[layout.column] ?? '')?.clock?.seconds ?? null) : null;
}

function scored(column: Column, where: Where): number {
  const { heading, values } = column;
  let score = 0;
  if (TEMPERATURE.test(heading)) score += 4;
  if (OTHER.test(heading)) score -= 6;
  if (isIndex(column)) score -= 10;
  for (const [place, words] of Object.entries(PLACES))
    if (words.test(heading)) score += place === where ? 2 : -1;
  const likely = values.filter((value) => value > 10 && value < 130).length / Math.max(1, values.length);
  return score + 3 * likely;
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

function lay(all: readonly Row[], where: Where): Laid | null {
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
  const layout = layoutOf(columns, sample.length);
  if (!layout) return null;
  const taken = new Set(timeColumns(layout));
  const figures = columns
    .filter((column) => !taken.has(column.at) && column.values.length > 0 && column.values.length + 1 >= sample.length / 3)
    .map((column) => ({ at: column.at, score: scored(column, where), isIndex: isIndex(column) }))
    .filter((column) => column.score > -4)
    .toSorted((a, b) => b.score - a.score || a.at - b.at); // prettier-ignore
  const [best] = figures;
  if (!best) return null;
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
  };
} // prettier-ignore

/** The text's rows by the separator that makes most of them readings; null where none does. */
export function layRows(text: string, where: Where): Laid | null {
  let best: Laid | null = null;
  // Of two that read as many rows the one that finds a day in them.
  const worth = (laid: Laid | null): number =>
    laid ? 2 * laid.fits + Number(laid.layout.by !== 'clock' || laid.layout.hasDay) : 0;
  for (const rows of rowsBy(text)) {
    const laid = lay(rows, where);
    if (worth(laid) > worth(best)) best = laid;
  }
  return best;
}
