// Sheets whose rows are no jars: wide ones, with columns of their own for each jar of a line ("A set", "B set"), and long
// ones, with a line for each thing told ("set", "firm"). Both become rows of jars, and it is said.
import { plain, tidy } from '../../quantities/quantities';
import { hasTrait } from '../meanings';
import { assumed } from '../notes-says';
import type { Row, Table } from '../table/table-rows';
import type { Headed } from './heading-lines';
import { meaningOfCells } from './column-cells';
import { headingMeaning } from './headings';
import { mergeColumns } from './merged-columns';

const LABEL = String.raw`(?:jar|glass?|gl(?:ä|ae)ser|pot|bocal|frasco|tarro|vasetto|burk|krukke|słoik)?\s*[#(]?\s*(\p{L}|\d{1,2})\)?`;
const LABEL_FIRST = new RegExp(`^${LABEL}[\\s:_./-]+(\\p{L}.+)$`, 'iu');
const LABEL_LAST = new RegExp(`^(.*\\p{L}.*?)[\\s:_./-]+${LABEL}$`, 'iu');
interface OfJar {
  readonly index: number;
  readonly label: string;
  readonly what: string;
  /** What its heading says was stirred in: "B (inulin)". */
  readonly added?: string | undefined;
}

/** A heading taken apart into a jar's letter and what is told of it, with the letter first or last. */
function splitHeadings(names: readonly string[], pattern: RegExp, labelFirst: boolean): OfJar[] {
  return names.flatMap((name, index) => {
    const found = pattern.exec(tidy(name));
    if (!found) return [];
    const [label = '', what = ''] = labelFirst ? [found[1], found[2]] : [found[2], found[1]];
    return [{ index, label: label.toLowerCase(), what }];
  });
}

const unique = <Item>(items: Iterable<Item>): Item[] => [...new Set(items)];

/** Columns that belong to jars, or none: at least two jars, each with a seed and something told of the jar made. */
function columnsOfJars(names: readonly string[]): OfJar[] {
  for (const [pattern, first] of [
    [LABEL_FIRST, true],
    [LABEL_LAST, false],
  ] as const) {
    const columns = splitHeadings(names, pattern, first);
    const shared = columns.filter(
      ({ what }) => columns.filter((one) => plain(one.what) === plain(what)).length > 1,
    );
    const meanings = new Set(shared.map(({ what }) => headingMeaning(what)?.meaning));
    const told = [...meanings].some((meaning) => hasTrait(meaning, 'one jar'));
    if (meanings.has('seed') && told) return shared;
  }
  return [];
}

/** "Seed, A, B, C": columns of their own for jars that have one seed, each with one thing told of its jar, or none. */
function columnsOfLabels({ names, rows }: Headed): OfJar[] {
  const found = names.map((name) => BARE_LABEL.exec(tidy(name)));
  const labels = found.map((label) => label?.[1]?.toLowerCase() ?? null);
  const first = labels.findIndex((label) => label === 'a' || label === '1');
  const after = labels.findIndex((label, at) => at > first && label !== following(labels[at - 1] ?? null));
  const run = first < 0 ? [] : labels.slice(first, after < 0 ? labels.length : after);
  const meanings = names.map((name) => headingMeaning(name)?.meaning);
  const others = meanings.filter((_, at) => at < first || at >= first + run.length);
  if (run.length < 2 || others.includes('jar')) return [];
  const cells = rows.slice(0, SAMPLE).flatMap((row) => row.cells.slice(first, first + run.length));
  const told = meaningOfCells(
    cells,
    new Set((['seed', 'set', 'ph', 'amount'] as const).filter((one) => !others.includes(one))),
  );
  // Figures that tell nothing are a taster's marks as well.
  const words = cells.filter((cell) => /\p{L}{2}/u.test(cell));
  if (told === null && words.length < cells.filter((cell) => tidy(cell) !== '').length / 2) return [];
  const what = told === null ? 'Notes' : told === 'ph' ? 'pH' : told;
  return run.map((label, at) => {
    const [, , within, behind] = found[first + at] ?? [];
    return { index: first + at, label: label ?? '', what, added: within ?? behind };
  });
}

/** "A", "Jar B", "B (inulin)", "C: oat bran". */
const BARE_LABEL = new RegExp(String.raw`^${LABEL}(?:\s*\(([^()]+)\)|\s*[:=–-]\s*(\p{L}.*))?$`, 'iu');
/** The label after another: b after a, 2 after 1. */
const following = (label: string | null): string | null =>
  label === null
    ? null
    : /\d/.test(label)
      ? String(Number(label) + 1)
      : String.fromCodePoint((label.codePointAt(0) ?? 0) + 1);

/** A wide sheet as rows of jars. */
function unfoldWide(headed: Headed): Headed | null {
  if (!headed.headings) return null;
  const several = columnsOfJars(headed.names);
  const columns = several.length > 0 ? several : columnsOfLabels(headed);
  if (columns.length === 0) return null;
  const mine = new Set(columns.map(({ index }) => index));
  const shared = headed.names.flatMap((_, index) => (mine.has(index) ? [] : [index]));
  const lone = shared.map((index) => headingMeaning(headed.names[index] ?? '')?.meaning);
  if (several.length > 0 && lone.some((meaning) => hasTrait(meaning, 'of line'))) return null;
  const labels = unique(columns.map(({ label }) => label));
  const told = unique(columns.map(({ what }) => plain(what)));
  const at = (label: string, what: string): number =>
    columns.find((one) => one.label === label && plain(one.what) === what)?.index ?? -1;
  const added = new Map(columns.map((one) => [one.label, one.added]));
  const stirred = [...added.values()].some((one) => one !== undefined) && !lone.includes('addition');
  const rows = headed.rows.flatMap((row) =>
    labels.flatMap((label): Row[] => {
      const own = told.map((what) => row.cells[at(label, what)] ?? '');
      if (own.every((cell) => tidy(cell) === '')) return [];
      const picked = pick(row, [...shared, ...told.map((what) => at(label, what))], label);
      return [stirred ? { ...picked, cells: [...picked.cells, added.get(label) ?? ''] } : picked];
    }),
  );
  const whats = told.map((what) => columns.find((one) => plain(one.what) === what)?.what ?? what);
  const names = [
    ...shared.map((index) => headed.names[index] ?? ''),
    ...whats,
    'Jar',
    ...(stirred ? ['Added'] : []),
  ];
  const sentence = assumed.wide(labels);
  return { ...headed, names, rows, assumptions: [...headed.assumptions, { row: null, sentence }] };
}

/** Some cells of a row, and a letter behind them; long ones stay whole. */
function pick(row: Row, columns: readonly number[], label: string): Row {
  const cells = [...columns.map((index) => row.cells[index] ?? ''), label];
  const long = new Map(
    columns.flatMap((index, place) =>
      row.long?.has(index) ? [[place, row.long.get(index) ?? ''] as const] : [],
    ),
  );
  return { line: row.line, cells, part: label, ...(long.size > 0 ? { long } : {}) };
}

/** Lines of a long sheet that are looked at to know it. */
const SAMPLE = 400;
const MOST_ITEMS = 40;

/** A long sheet as rows of jars. */
function unfoldLong(headed: Headed): Headed | null {
  const { names, rows } = headed;
  if (!headed.headings || rows.length < 4 || names.some((name) => headingMeaning(name)?.meaning === 'seed'))
    return null;
  const sample = rows.slice(0, SAMPLE);
  const item = names.findIndex((_, index) => {
    const told = sample.map(({ cells }) => headingMeaning(cells[index] ?? ''));
    const sure = told.filter((found) => found?.sure === 3);
    const meanings = new Set(sure.map((found) => found?.meaning));
    return sure.length >= sample.length * 0.8 && meanings.size >= 3 && meanings.has('seed');
  });
  const value = item + 1;
  if (item < 1 || value >= names.length || rows.some(({ long }) => long !== undefined)) return null;
  const keys = names.flatMap((_, index) => (index === item || index === value ? [] : [index]));
  const items = unique(rows.map(({ cells }) => tidy(cells[item] ?? '')).filter(Boolean));
  if (items.length > MOST_ITEMS) return null;
  const jars = new Map<string, { row: Row; told: Map<string, string> }>();
  for (const row of rows) {
    const key = keys.map((index) => plain(row.cells[index] ?? '')).join('|');
    const jar = jars.get(key) ?? { row, told: new Map<string, string>() };
    jars.set(key, jar);
    const name = tidy(row.cells[item] ?? '');
    const before = jar.told.get(name);
    const text = row.cells[value] ?? '';
    jar.told.set(name, before === undefined ? text : `${before}; ${text}`);
  }
  return {
    ...headed,
    names: [...keys.map((index) => names[index] ?? ''), ...items],
    rows: [...jars.values()].map(({ row, told }) => ({
      line: row.line,
      cells: [...keys.map((index) => row.cells[index] ?? ''), ...items.map((name) => told.get(name) ?? '')],
    })),
    assumptions: [
      ...headed.assumptions,
      { row: null, sentence: assumed.long(names[item] ?? '', names[value] ?? '') },
    ],
  };
}

/** The rows of a sheet as rows of jars, whichever way it is laid out. */
export const unfold = (headed: Headed, look: Table['look']): Headed =>
  mergeColumns(unfoldWide(headed) ?? unfoldLong(headed) ?? headed, look);
