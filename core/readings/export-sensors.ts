// Which sensor is read, where one file holds several: a row for each by turns, with its name in a column, or one part of the
// file below the other. Of columns beside each other the layout chooses (export-rows.ts).
import type { Row } from '../notes/table/table-rows';
import { plain } from '../quantities/quantities';

/** How well a name or a heading fits what is asked for, and a temperature at all; more is better. */
export type Fits = (name: string) => number;

export interface Sensor {
  readonly name: string;
  readonly rows: readonly Row[];
}

/** What the rows of one layout are, each with the text of its time; null: no reading. */
export interface Told {
  readonly row: Row;
  readonly time: string | null;
  readonly celsius: number | null;
}

/** Sensors read equally often: a rare word is a remark, no sensor. */
const ALIKE = 1.5;
const MOST_SENSORS = 12;
/** Of one that is much colder than another nobody says that it stood in the warm bath. */
const COLDER = 0.8;

const NAMES = /sensor|probe|channel|kanal|\bch\b|location|\bort\b|name|device|\bid\b|port|fuhler|messstelle|sonde|capteur|canal|position|what|type|parameter|quantity|grosse/u; // prettier-ignore

const middle = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
const alike = (sizes: readonly number[]): boolean => Math.max(...sizes) <= ALIKE * Math.min(...sizes);

/** Hours that two lists of times have in common, as a share of the shorter. */
function inCommon(a: readonly string[], b: readonly string[]): number {
  const hour = (time: string): string =>
    /^\d{9,}/.test(time) ? time.slice(0, -3) : time.replace(/:\d{2}(:\d{2})?([.,]\d+)?/, '');
  const [first, second] = [new Set(a.map(hour)), new Set(b.map(hour))];
  const both = [...first].filter((one) => second.has(one)).length;
  return both / Math.max(1, Math.min(first.size, second.size));
}

function grouped(told: readonly Told[], by: (one: Told) => string): Map<string, Told[]> {
  const groups = new Map<string, Told[]>();
  for (const one of told) {
    const key = by(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}

/** A column of names that take turns from the first row to the last, each as often. */
function byColumn(told: readonly Told[], headings: readonly string[]): Map<string, Told[]> | null {
  const read = told.filter(({ time }) => time !== null);
  const width = read.reduce((most, { row }) => Math.max(most, row.cells.length), 0);
  for (let at = 0; at < Math.min(width, 40); at += 1) {
    const groups = grouped(read, ({ row }) => (row.cells[at] ?? '').trim());
    if (groups.size < 2 || groups.size > MOST_SENSORS || groups.has('')) continue;
    const names = [...groups.keys()];
    if (!names.every((name) => /\p{L}/u.test(name)) && !NAMES.test(plain(headings[at] ?? ''))) continue;
    const parts = [...groups.values()];
    const turns = read.filter(({ row }, i) => i > 0 && row.cells[at] !== read[i - 1]?.row.cells[at]).length;
    const times = grouped(read, ({ time }) => time ?? '');
    const shared = times.size <= 0.6 * read.length;
    if (alike(parts.map(({ length }) => length)) && turns >= 0.6 * read.length && (shared || NAMES.test(plain(headings[at] ?? ''))))
      return groups;
  }
  return null;
} // prettier-ignore

/** Parts of the file, each with lines of its own above it, that tell of the same hours. */
function byPart(told: readonly Told[]): Map<string, Told[]> | null {
  const parts: { above: string[]; read: Told[] }[] = [];
  let above: string[] = [];
  for (const one of told) {
    const text = one.row.cells.filter((cell) => cell.trim() !== '').join(' ');
    if (one.time === null) {
      if (text !== '') above.push(text);
    } else {
      if (above.length > 0 || parts.length === 0) parts.push({ above, read: [] });
      above = [];
      parts.at(-1)?.read.push(one);
    }
  }
  const most = Math.max(0, ...parts.map(({ read }) => read.length));
  const large = parts.filter(({ read }) => read.length >= most / ALIKE && read.length > 1);
  const [first, ...others] = large.map(({ read }) => read.map(({ time }) => time ?? ''));
  if (!first || others.length === 0 || large.length > MOST_SENSORS) return null;
  if (!others.every((times) => inCommon(first, times) >= 0.8)) return null;
  const lines = large.map((part) => part.above);
  return new Map(
    large.map(({ read }, i) => {
      const own = lines[i]?.find((line) => lines.every((other, at) => at === i || !other.includes(line)));
      return [own ?? `${i + 1}`, read];
    }),
  );
}

/**
 * The sensor to read, where there are several; null where the file holds one.
 * @param warm whether it stood in the warmth: of equals a cold one is not meant
 */
export function sensorOf(told: readonly Told[], headings: readonly string[], hasDay: boolean, fits: Fits, warm: boolean): Sensor | null {
  const groups = byColumn(told, headings) ?? (hasDay ? byPart(told) : null);
  if (!groups) return null;
  const all = [...groups].map(([name, read]) => ({
    name, read, fit: fits(plain(name)), warmth: middle(read.flatMap(({ celsius }) => celsius ?? [])),
  }));
  const best = Math.max(...all.map(({ fit }) => fit));
  const equal = all.filter(({ fit }) => fit === best);
  const warmest = Math.max(...equal.map(({ warmth }) => warmth));
  const meant = equal.find(({ warmth }) => !warm || warmth >= COLDER * warmest);
  if (!meant) return null;
  const others = new Set(all.flatMap(({ read }) => (read === meant.read ? [] : read.map(({ row }) => row))));
  const rows = told.flatMap(({ row }) => (others.has(row) ? [] : [row]));
  // What stands between the others' rows goes with them.
  const [first] = meant.read;
  const last = meant.read.at(-1);
  const from = first ? rows.indexOf(first.row) : 0;
  return { name: meant.name, rows: rows.slice(0, last ? Math.max(from, rows.indexOf(last.row)) + 1 : undefined) };
} // prettier-ignore
