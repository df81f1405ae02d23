// How the rows of an export tell the time: what each column holds, and which of them make a moment.
import type { Row } from '../notes/table/table-rows';
import { plain } from '../quantities/quantities';
import { readFigure, readStamp, type ReadStamp } from './export-cells';
import { readLength } from './export-lengths';

/** No hold is read for longer (s). */
const LONGEST_RUN = 120 * 3600;
/** How the rows tell the time. */
export type Layout =
  | {
      readonly by: 'clock';
      readonly columns: readonly number[];
      readonly hasDay: boolean;
      /** A column of "1940" or "194000", and how many digits it has. */
      readonly solid?: { readonly column: number; readonly digits: 4 | 6 };
      /** Year, month, day, hour, minute and perhaps second, each in a column of its own, in this order. */
      readonly parts?: true;
    }
  /** Seconds after the start: `per` is how many of the column's unit make a second. */
  | {
      readonly by: 'elapsed' | 'epoch';
      readonly column: number;
      readonly perSecond: number;
      readonly guessed?: true;
    }
  /** Day numbers of a spreadsheet. */
  | { readonly by: 'serial'; readonly column: number; readonly fraction?: number };

const ELAPSED = /elapsed|since|laufzeit|dauer|duration|vergangen|ecoule|transcurrid|trascors|verstreken/;
const INDEX =
  /^(?:#|no\.?|nr\.?|n°|num(?:ber)?|index|id|record|entry|sample|seq|count|row|line|zeile|datensatz)(?:\W|$)/;
const CLOCK_HEADING = /\btime|clock|zeit|uhr|heure|hora\b|\bora\b|\btijd|\btid\b|klo|klok|godz/;

export type Kind = 'moment' | 'day' | 'clock' | 'length' | 'half' | 'figure' | 'scale' | null;
const kinds = new Map<string, Kind>();
export function kindOf(cell: string): Kind {
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
  if (stamp) return stamp.day ? (stamp.clock ? 'moment' : 'day') : 'clock';
  return readLength(text) === null ? null : 'length';
}

/** "1.10.25" is a day and a clock with points: a day where few of them differ, or where another column holds the clock. */
const DAY_OR_CLOCK = /^\d{1,2}\.(?:0?[1-9]|1[0-2])\.\d{2}$/;

export interface Column {
  readonly at: number;
  readonly counts: Record<NonNullable<Kind>, number>;
  readonly values: readonly number[];
  readonly heading: string;
}

export function columnsOf(rows: readonly Row[], headings: readonly string[]): Column[] {
  const width = Math.min(
    40,
    rows.reduce((most, { cells }) => Math.max(most, cells.length), 0),
  );
  return Array.from({ length: width }, (_, at) => {
    const counts = { moment: 0, day: 0, clock: 0, length: 0, half: 0, figure: 0, scale: 0 };
    const values: number[] = [];
    const either: string[] = [];
    for (const { cells } of rows) {
      const kind = kindOf(cells[at] ?? '');
      if (kind === 'clock' && DAY_OR_CLOCK.test((cells[at] ?? '').trim())) either.push(cells[at] ?? '');
      if (kind) counts[kind] += 1;
      const figure = kind === 'figure' ? readFigure(cells[at] ?? '') : null;
      if (figure) values.push(figure.value);
    }
    const { day, clock } = counts;
    if (either.length > 0 && either.length === clock && new Set(either).size * 3 <= clock)
      Object.assign(counts, { day: day + clock, clock: 0 });
    return { at, counts, values, heading: plain(headings[at] ?? '') };
  });
}

export const middle = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
export const rises = (values: readonly number[]): boolean =>
  values.length > 1 && values.every((value, i) => i === 0 || value > (values[i - 1] ?? 0));
export const isIndex = ({ heading, values }: Column): boolean =>
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
const isDotted = ({ heading, values }: Column, rows: number, said = CLOCK_HEADING.test(heading)): boolean =>
  said &&
  values.length >= rows / 2 &&
  values.every((value) => value >= 0 && value < 24 && Math.round((value % 1) * 100) < 60);

/** "1940" or "194000" beside a day, or under a heading that says so. */
function solidClock(
  columns: readonly Column[],
  day: Column | undefined,
  rows: number,
): { column: number; digits: 4 | 6 } | null {
  for (const column of columns) {
    const { at, heading, values } = column;
    const most = values.reduce((a, b) => Math.max(a, b), 0);
    const digits = most > 9999 ? 6 : 4;
    const minutes = values.map((value) => (digits === 6 ? Math.floor(value / 100) : value));
    const clock = minutes.every((one) => one >= 0 && one < 2400 && one % 100 < 60);
    const said = CLOCK_HEADING.test(heading) || (day !== undefined && at === day.at + 1);
    if (said && clock && values.length >= rows / 2 && most > 150 && values.every(Number.isInteger))
      return { column: at, digits };
  }
  return null;
}

/** Words over columns that each hold a part of the moment. */
const PARTS = [
  /^(?:year|yr|yyyy|jahr|ano|annee|anno|jaar)$/, /^(?:month|mon|mm|monat|mes|mois|mese|maand)$/,
  /^(?:day|dd|tag|dia|jour|giorno|dag)$/, /^(?:hours?|hr|hh|stunde|hora|heure|ora|uur)$/,
  /^(?:minutes?|min|minuto|minuut)$/, /^(?:seconds?|sec|ss|sekunde|segundo|seconde)$/,
]; // prettier-ignore
function partsOf(columns: readonly Column[]): number[] | null {
  const found = PARTS.map((word) => columns.find(({ heading }) => word.test(heading))?.at);
  const at = found.flatMap((one) => one ?? []);
  return found.slice(0, 5).includes(undefined) ? null : at;
}

export function layoutOf(columns: readonly Column[], rows: number): Layout | null {
  const parts = partsOf(columns);
  if (parts) return { by: 'clock', columns: parts, hasDay: true, parts: true };
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
  // Without headings the one right behind the day, where another column is left to be the temperature.
  const bare =
    columns.every(({ heading }) => heading === '') &&
    columns.filter(({ values }) => values.length > rows / 2).length > 1;
  const clock =
    most('clock') ??
    (day &&
      columns.find(
        (column) => column !== day && isDotted(column, rows, (bare && column.at === day.at + 1) || undefined),
      ));
  if (day && clock) return { by: 'clock', columns: join(day, clock, half), hasDay: true };
  const solid = day && solidClock(columns, day, rows);
  if (solid) return { by: 'clock', columns: [day.at, solid.column], hasDay: true, solid };
  const numbers = columns.filter(({ values }) => values.length >= Math.max(1, rows / 2));
  const within = ({ values }: Column, low: number, high: number): boolean =>
    values.every((value) => value >= low && value < high);
  for (const [low, perSecond] of [
    [1e9, 1],
    [1e12, 1000],
    [1e15, 1e6],
    [1e18, 1e9],
  ] as const) {
    const epoch = numbers.find((column) => within(column, low, low * 4.2));
    if (epoch) return { by: 'epoch', column: epoch.at, perSecond };
  }
  const serial = numbers.find(
    (column) => within(column, 36_526, 73_050) && column.values.some((value) => !Number.isInteger(value)),
  );
  if (serial) return { by: 'serial', column: serial.at };
  const whole = numbers.find((column) => within(column, 36_526, 73_050));
  const fraction = whole && numbers.find((column) => column.at === whole.at + 1 && within(column, 0, 1));
  if (whole && fraction) return { by: 'serial', column: whole.at, fraction: fraction.at };
  const elapsedClock = clock && ELAPSED.test(clock.heading);
  if (clock && !elapsedClock) return { by: 'clock', columns: join(clock, half), hasDay: false };
  if (clock) return { by: 'elapsed', column: clock.at, perSecond: 1 };
  const length = most('length');
  if (length) return { by: 'elapsed', column: length.at, perSecond: 1 };
  const elapsed = numbers.find(
    (column) => rises(column.values) && !INDEX.test(column.heading) && elapsedUnit(column) !== null,
  );
  if (elapsed) return { by: 'elapsed', column: elapsed.at, perSecond: elapsedUnit(elapsed) ?? 1 };
  const counted = numbers.find(
    (column) => column.at === 0 && column.values[0] === 0 && rises(column.values) && !isIndex(column),
  );
  return counted
    ? { by: 'elapsed', column: 0, perSecond: likelyUnit(counted.values.at(-1) ?? 0), guessed: true }
    : null;
}

/** Hours, minutes or seconds since the start: the longest unit in which a hold could have lasted so long. */
const likelyUnit = (last: number): number =>
  [1 / 3600, 1 / 60].find((perSecond) => last / perSecond <= LONGEST_RUN) ?? 1;

export const timeColumns = (layout: Layout): readonly number[] => {
  if (layout.by === 'clock') return layout.columns;
  return layout.by === 'serial' && layout.fraction !== undefined
    ? [layout.column, layout.fraction]
    : [layout.column];
};

/** What the time cells of a row tell, or null. Elapsed times come as a clock of as many seconds. */
export function stampIn({ cells }: Row, layout: Layout): ReadStamp | number | null {
  if (layout.by === 'clock') {
    const stamp = readStamp(timeText(cells, layout));
    return stamp?.clock && (!layout.hasDay || stamp.day) ? stamp : null;
  }
  const figure = readFigure(cells[layout.column] ?? '')?.value ?? null;
  if (layout.by === 'serial')
    return (
      figure &&
      figure + (layout.fraction === undefined ? 0 : (readFigure(cells[layout.fraction] ?? '')?.value ?? 0))
    );
  if (figure !== null) return figure / layout.perSecond;
  const cell = cells[layout.column] ?? '';
  return layout.by === 'elapsed' ? (readLength(cell) ?? readStamp(cell)?.clock?.seconds ?? null) : null;
}

/** The time cells of a row as one text. */
export function timeText(cells: readonly string[], layout: Layout): string {
  if (layout.by !== 'clock') return (cells[layout.column] ?? '').trim();
  const { columns, solid, parts } = layout;
  const texts = columns.map((at) => (cells[at] ?? '').trim());
  if (parts) {
    const [year, month, day, hour, minute, second = '0'] = texts.map((text) => text.padStart(2, '0'));
    return `${year}-${month}-${day} ${hour}:${minute}:${second.padStart(2, '0')}`;
  }
  if (!solid) return texts.join(' ');
  return columns
    .map((at, i) => {
      const text = texts[i] ?? '';
      if (at !== solid.column) return text;
      return text.padStart(solid.digits, '0').replaceAll(/(\d\d)(?=\d)/g, '$1:');
    })
    .join(' ');
}
