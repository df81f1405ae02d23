// Where the headings stand, what each column means, and which lines are rows of jars.
import type { NoteColumn } from '../contract';
import { findAmounts, parseHours, parsePh, parseTemperature, plain, tidy } from '../quantities';
import { cellDay, findDay, serialDay } from './days';
import { bareHeading, headingMeaning, headingUnit, isUnit } from './headings';
import { assumed } from './says';
import type { Row, Table } from './table';
import { isNothing, readSet, readYesNo } from './words';

export interface Column {
  readonly index: number;
  /** As written; "Column 3" where the file has no headings. */
  readonly heading: string;
  readonly meaning: NoteColumn;
  /** The unit its heading tells, as written there. */
  readonly unit: string | null;
  /** Nothing told what it is: its text goes to the note under its heading. */
  readonly known: boolean;
  /** A column named after one addition, with nothing but amounts: "Inulin (g)". */
  readonly additionName: string | null;
}

export interface Said {
  readonly row: number | null;
  readonly sentence: string;
}

export interface Layout {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly emptyLines: readonly number[];
  readonly assumptions: readonly Said[];
}

const MOST_HEADING_LINES = 25;
const isEmpty = (row: Row): boolean => row.cells.every((cell) => tidy(cell) === '');
const isNumber = (text: string): boolean => /^-?\d+(?:[.,]\d+)?$/.test(tidy(text));
const isDataCell = (text: string): boolean => isNumber(text) || cellDay(text) !== null || /\d/.test(text);

function headingScore(row: Row): number {
  let score = 0;
  for (const cell of row.cells) {
    if (tidy(cell) === '' || cell.length > 60) continue;
    if (cellDay(cell) || isNumber(cell)) {
      score -= 1;
      continue;
    }
    const found = headingMeaning(cell);
    if (found) score += found.sure === 3 ? 1 : 0.6;
  }
  return score;
}

/** The row of headings, or null where the first full row is already one of jars. */
function findHeadings(rows: readonly Row[]): Row | null {
  let best: Row | null = null;
  let bestScore = 1.5;
  for (const row of rows.slice(0, MOST_HEADING_LINES)) {
    const score = headingScore(row);
    if (score > bestScore) {
      best = row;
      bestScore = score;
    }
  }
  if (best) return best;
  const wide = rows.filter((row) => row.cells.filter((cell) => tidy(cell) !== '').length > 2);
  const [first, ...others] = wide;
  // Words we don't know, and no figures in them, above rows that have figures: headings all the same.
  if (
    first &&
    others.length > 0 &&
    !first.cells.some(isDataCell) &&
    others.slice(0, 5).every((row) => row.cells.some(isDataCell))
  )
    return first;
  return null;
}

/** A second line of headings: nothing but units and words of headings, no figures, no days. */
function isSecondLine(row: Row | undefined): row is Row {
  const cells = row?.cells.map(tidy).filter(Boolean) ?? [];
  if (cells.length < 2 || cells.some((cell) => isDataCell(cell) || cell.length > 30)) return false;
  const told = cells.filter((cell) => isUnit(cell) || headingMeaning(cell) !== null);
  return told.length >= 2 && told.length >= cells.length * 0.6;
}

/** One heading out of two lines of them: "Starter" above "ml" is "Starter (ml)". */
function joinHeadings(above: string, below: string): string {
  if (below === '' || above === '') return above || below;
  return isUnit(below) ? `${above} (${below})` : `${above} ${below}`;
}

const share = (cells: readonly string[], test: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(test).length / cells.length;

const SEEDISH =
  /\b(?:capsules?|caps|tablets?|tabs|sachets?|kapseln|tabletten|beutel|gelules|comprimes|capsulas|comprimidos|compresse|capsule|tabletter|kapslar|kapsler|kapsulki|tabletki)\b/;
const MILKISH =
  /\b(?:milk|whole|skim\w*|uht|half|cream|milch|lait|leche|latte|melk|leite|mjolk|maelk|mleko|sahne|creme)\b/;
const FIBREISH =
  /\b(?:fib(?:re|er)|inulin\w*|starch|bran|acacia|oat|chicory|psyllium|pectin\w*|starke|kleie|hafer|amidon|fecule|son|almidon|salvado|amido|crusca|zetmeel|zemelen|amido|farelo|starkelse|kli|stivelse|skrobia|otreby|sugar|zucker|sucre|honey)\b/;

const number = (cell: string): number => (isNumber(cell) ? Number(tidy(cell).replace(',', '.')) : Number.NaN);
const withDay = (cell: string): boolean => findDay(cell) !== null;

/** What stands in a column decides where its heading does not. Strictest first; null where nothing fits. */
function meaningOfCells(cells: readonly string[], free: ReadonlySet<NoteColumn>): NoteColumn | null {
  const filled = cells.filter((cell) => tidy(cell) !== '');
  if (filled.length === 0) return null;
  const most = (test: (cell: string) => boolean, least = 0.7): boolean => share(filled, test) >= least;
  const tests: readonly (readonly [NoteColumn, () => boolean])[] = [
    ['date', () => most((cell) => cellDay(cell) !== null || serialDay(cell) !== null, 0.8)],
    ['seed', () => most((cell) => SEEDISH.test(plain(cell)) || withDay(cell), 0.5)],
    ['temperature', () => most((cell) => (/°|\d\s*(?:deg\w*\.?\s*)?[FC]\b/i.test(tidy(cell)) && parseTemperature(cell).ok) || (number(cell) >= 85 && number(cell) <= 115), 0.8)],
    ['ph', () => most((cell) => number(cell) >= 3 && number(cell) <= 7 && /[.,]/.test(cell) && parsePh(cell).ok, 0.8)],
    ['set', () => most((cell) => readSet(cell).kind === 'word', 0.6)],
    ['milk', () => most((cell) => MILKISH.test(plain(cell)), 0.6)],
    ['addition', () => most((cell) => FIBREISH.test(plain(cell)), 0.6)],
    ['jar', () => most((cell) => /^[#]?\s*[\p{L}]$/u.test(tidy(cell)), 0.9)],
    ['hours', () => most((cell) => (parseHours(cell).ok && /[a-z]/i.test(cell)) || (number(cell) >= 6 && number(cell) <= 72), 0.9)],
    ['temperature', () => most((cell) => number(cell) >= 30 && number(cell) <= 48, 0.9)],
    ['amount', () => most((cell) => findAmounts(cell, { spoons: 'US' }, true).length > 0, 0.6)],
  ]; // prettier-ignore
  return tests.find(([meaning, fits]) => free.has(meaning) && fits())?.[0] ?? null;
}

const MANY: ReadonlySet<NoteColumn> = new Set<NoteColumn>([
  'note',
  'ignore',
  'addition',
  'addition amount',
  'seed',
  'end',
]);
/** "Seed date", "From batch": a part of what names the seed. */
const SEED_PART =
  /\b(?:seed|seeds|parent|from|mother|starter|source|inoculum|quelle|mutter|starterglas)\b.*\b(?:date|day|batch|jar|letter|datum|glas|tag)\b/;

/** A cell that holds an amount and next to nothing else. */
function isAmount(cell: string): boolean {
  if (isNumber(cell) || /^[\d.,]+(?:\s*[/+;&]\s*[\d.,]+)+$/.test(tidy(cell))) return true;
  const found = findAmounts(cell, { spoons: 'US' }, true);
  if (found.length === 0 || found.some(({ amount }) => amount.unit === 'pieces')) return false;
  let rest = tidy(cell);
  for (const amount of found.toReversed()) rest = `${rest.slice(0, amount.start)} ${rest.slice(amount.end)}`;
  return findDay(rest) === null && rest.replace(/[^\p{L}]/gu, '').length <= 5;
}
const VOLUME_UNIT = /^(?:%|ml|cl|dl|l|tbsps?|tbs|t|tsp|el|tl|msk|spsk|cups?)\.?$/i;
const MASS_UNIT = /^(?:g|gr|grams?|oz|ml|tbsps?|tsp|el|tl|msk)\.?$/i;

/** @param mapping heading → meaning, where the keeper rematched it. */
export function readLayout(table: Table, mapping: Readonly<Record<string, NoteColumn>>): Layout {
  const assumptions: Said[] = [];
  const filled = table.rows.filter((row) => !isEmpty(row));
  const emptyLines = table.rows.filter(isEmpty).map((row) => row.line);
  const headings = findHeadings(filled);
  if (!headings && filled.length > 0) assumptions.push({ row: null, sentence: assumed.noHeadings() });
  const above = headings ? filled.slice(0, filled.indexOf(headings)) : [];
  for (const row of above)
    assumptions.push({
      row: row.line,
      sentence: assumed.titles(row.cells.map(tidy).filter(Boolean).join(' ')),
    });
  let rows = headings ? filled.slice(filled.indexOf(headings) + 1) : filled;
  const [next] = rows;
  const second = headings && isSecondLine(next) ? next : null;
  if (second) {
    rows = rows.slice(1);
    assumptions.push({
      row: second.line,
      sentence: second.cells.every((cell) => tidy(cell) === '' || isUnit(cell))
        ? assumed.unitsBelow(second.cells.map(tidy).filter(Boolean).join(', '))
        : assumed.headingsBelow(second.cells.map(tidy).filter(Boolean).join(', ')),
    });
  }
  if (headings) {
    const wanted = headings.cells.map(bareHeading).join('|');
    rows = rows.filter((row) => {
      const again = row.cells.map(bareHeading).join('|') === wanted;
      if (again) assumptions.push({ row: row.line, sentence: assumed.headingsAgain() });
      return !again;
    });
  }
  const width = Math.max(
    headings?.cells.length ?? 0,
    second?.cells.length ?? 0,
    headings ? 0 : Math.max(0, ...rows.map((row) => row.cells.length)),
  );
  const chosen = new Map(Object.entries(mapping).map(([heading, meaning]) => [plain(heading), meaning]));
  const names = Array.from(
    { length: width },
    (_, index) =>
      joinHeadings(tidy(headings?.cells[index] ?? ''), tidy(second?.cells[index] ?? '')) ||
      `Column ${index + 1}`,
  ).map((name, index, all) => {
    const before = all.slice(0, index).filter((other) => plain(other) === plain(name)).length;
    return before === 0 ? name : `${name} #${before + 1}`;
  });
  const cellsOf = (index: number): string[] => rows.slice(0, 400).map((row) => row.cells[index] ?? '');
  const meanings: (NoteColumn | null)[] = names.map((name) => chosen.get(plain(name)) ?? null);
  const additionNames = new Map<number, string>();
  const taken = new Set<NoteColumn>(meanings.filter((meaning) => meaning !== null));

  // "Start" without an end is the day, or nothing we know.
  const ends = names.some((name) => headingMeaning(name)?.meaning === 'end');

  // Headings, the surest first, so that "Date" wins over "Date opened".
  const guesses = names.map((name, index) => ({
    index,
    found: /^Column \d+$/.test(name) ? null : headingMeaning(name.replace(/ #\d+$/, '')),
  }));
  for (const sure of [3, 2] as const) {
    for (const { index, found } of guesses) {
      if (found?.sure !== sure || meanings[index] !== null) continue;
      let { meaning } = found;
      if (meaning === 'start' && !ends) {
        if (
          taken.has('date') ||
          share(
            cellsOf(index).filter((cell) => tidy(cell) !== ''),
            withDay,
          ) < 0.6
        )
          continue;
        meaning = 'date';
      }
      const before = meanings[index - 1] ?? guesses[index - 1]?.found?.meaning ?? null;
      const filledCells = cellsOf(index).filter((cell) => tidy(cell) !== '');
      const unit = headingUnit(names[index] ?? '');
      const figures = share(filledCells, isAmount);
      // "Milk, Amount": an amount beside a column that tells none of its own belongs to that.
      const beside = cellsOf(index - 1).filter((cell) => tidy(cell) !== '');
      const tellsNone = share(beside, (cell) => findAmounts(cell, { spoons: 'US' }, true).length > 0) < 0.3;
      if (meaning === 'amount' && before === 'milk' && tellsNone) meaning = 'milk amount';
      if (meaning === 'amount' && before === 'addition' && tellsNone) meaning = 'addition amount';
      if (SEED_PART.test(plain(names[index] ?? '')) && figures < 0.8) meaning = 'seed';
      const volumes = (unit !== null && VOLUME_UNIT.test(unit)) || share(filledCells, isNumber) < 0.5;
      const otherSeed = guesses.some((guess) => guess.index !== index && guess.found?.meaning === 'seed');
      if (meaning === 'seed' && volumes && (figures >= 0.8 || (otherSeed && unit !== null && figures >= 0.4)))
        meaning = 'amount';
      if (meaning === 'milk' && taken.has('milk') && figures >= 0.8) meaning = 'milk amount';
      if (
        meaning === 'addition' &&
        figures >= 0.8 &&
        guesses.some((guess) => guess.index !== index && guess.found?.meaning === 'addition')
      )
        meaning = 'addition amount';
      const several =
        MANY.has(meaning) || (meaning === 'amount' && meanings.filter((one) => one === 'seed').length > 1);
      if (taken.has(meaning) && !several) {
        assumptions.push({ row: null, sentence: assumed.secondColumn(names[index] ?? '', meaning) });
        continue;
      }
      meanings[index] = meaning;
      taken.add(meaning);
    }
  }
  const spare = new Set(
    guesses
      .filter(({ index, found }) => found !== null && meanings[index] === null)
      .map(({ index }) => index),
  );

  // Then what stands in the columns.
  const free = new Set<NoteColumn>(
    (
      ['date', 'seed', 'temperature', 'ph', 'set', 'milk', 'addition', 'jar', 'hours', 'amount'] as const
    ).filter((meaning) => !taken.has(meaning)),
  );
  if (taken.has('label')) for (const meaning of ['date', 'jar'] as const) free.delete(meaning);
  for (let index = 0; index < width; index += 1) {
    if (meanings[index] !== null || spare.has(index)) continue;
    const cells = cellsOf(index).filter((cell) => tidy(cell) !== '');
    if (cells.length === 0) continue;
    const name = names[index] ?? '';
    const unit = headingUnit(name);
    const inUnits = unit !== null && MASS_UNIT.test(unit) && share(cells, isAmount) >= 0.8;
    // "Inulin" above amounts, or above crosses where it went in.
    const fibre =
      FIBREISH.test(plain(name)) &&
      share(cells, (cell) => isAmount(cell) || readYesNo(cell) !== null || isNothing(cell)) >= 0.8;
    if (headings && (inUnits || fibre)) {
      additionNames.set(
        index,
        unit === null ? name : bareHeading(name).replace(new RegExp(`\\s${unit}$`, 'i'), ''),
      );
      meanings[index] = 'addition';
      assumptions.push({ row: null, sentence: assumed.column(name, 'the amount of one addition') });
      continue;
    }
    const meaning = meaningOfCells(cells, free);
    if (meaning === null) continue;
    meanings[index] = meaning;
    free.delete(meaning);
    assumptions.push({ row: null, sentence: assumed.column(name, meaning) });
  }
  // A label column of nothing but dates, or letters, is that.
  for (let index = 0; index < width; index += 1) {
    if (meanings[index] !== 'label') continue;
    const cells = cellsOf(index).filter((cell) => tidy(cell) !== '');
    if (!meanings.includes('date') && share(cells, (cell) => cellDay(cell) !== null) >= 0.8)
      meanings[index] = 'date';
    else if (!meanings.includes('jar') && share(cells, (cell) => tidy(cell).length <= 2) >= 0.8)
      meanings[index] = 'jar';
  }
  // A texture column of set words, where nothing else tells how a jar set.
  if (!meanings.includes('set')) {
    const at = meanings.findIndex(
      (meaning, index) =>
        (meaning === 'texture' || meaning === 'spoiled') &&
        share(
          cellsOf(index).filter((cell) => tidy(cell) !== ''),
          (cell) => readSet(cell).kind === 'word',
        ) >= 0.6,
    );
    if (at >= 0) {
      meanings[at] = 'set';
      assumptions.push({ row: null, sentence: assumed.column(names[at] ?? '', 'set') });
    }
  }
  const columns = names.map((heading, index): Column => {
    const meaning = meanings[index] ?? null;
    const some = cellsOf(index).some((cell) => tidy(cell) !== '');
    if (meaning === null && some && !spare.has(index))
      assumptions.push({ row: null, sentence: assumed.unknownColumn(heading) });
    return {
      index,
      heading,
      meaning: meaning ?? 'note',
      unit: headingUnit(heading),
      known: meaning !== null,
      additionName: additionNames.get(index) ?? null,
    };
  });
  return { columns, rows, emptyLines, assumptions };
}
