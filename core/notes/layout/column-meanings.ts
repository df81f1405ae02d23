// What each column of a table means: from its heading, its neighbours and what stands in it.
import type { NoteColumn } from '../../contract';
import { findAmounts, plain, tidy } from '../../quantities';
import {
  FIBREISH,
  MANY,
  MASS_UNIT,
  SEED_PART,
  fitsDays,
  VOLUME_UNIT,
  isAmount,
  isNumber,
  meaningOfCells,
  provenOtherwise,
  share,
  withDay,
} from './column-cells';
import { cellDay, withoutSureDays } from '../cells/days';
import { readHeadingLines } from './heading-lines';
import type { Said } from '../said';
import { bareHeading, headingMeaning, headingSaysDays, headingUnit } from './headings';
import { assumed } from '../says';
import type { Row, Table } from '../table/text-table';
import { isNothing, readSet, readYesNo } from '../cells/words';

export interface Column {
  readonly index: number;
  /** As written; "Column 3" where the file has no headings. */
  readonly heading: string;
  readonly meaning: NoteColumn;
  /** The unit its heading tells, as written there. */
  readonly unit: string | null;
  /** Hours told in days. */
  readonly inDays: boolean;
  /** Nothing told what it is: its text goes to the note under its heading. */
  readonly known: boolean;
  /** A column named after one addition, with nothing but amounts: "Inulin (g)". */
  readonly additionName: string | null;
}

export interface Layout {
  /** Whether it is a table at all: it has headings, or its lines fall into the same columns. */
  readonly tabular: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly emptyLines: readonly number[];
  readonly assumptions: readonly Said[];
}

/** @param mapping heading → meaning, where the keeper rematched it. */
export function readLayout(table: Table, mapping: Readonly<Record<string, NoteColumn>>): Layout {
  const headed = readHeadingLines(table);
  const { headings, names, rows, emptyLines } = headed;
  const assumptions: Said[] = [...headed.assumptions];
  const chosen = new Map(Object.entries(mapping).map(([heading, meaning]) => [plain(heading), meaning]));
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
      const proven = provenOtherwise(
        found.meaning,
        cellsOf(index).filter((cell) => tidy(cell) !== ''),
      );
      let meaning = proven ?? found.meaning;
      if (proven) assumptions.push({ row: null, sentence: assumed.column(names[index] ?? '', proven) });
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
      // "Seed ml" above days names the seeds all the same.
      const seeds = share(filledCells, (cell) => withoutSureDays(cell) !== tidy(cell));
      if (meaning === 'amount' && seeds >= 0.5 && !taken.has('seed') && !otherSeed) meaning = 'seed';
      if (meaning === 'milk' && taken.has('milk') && figures >= 0.8) meaning = 'milk amount';
      if (
        meaning === 'addition' &&
        figures >= 0.8 &&
        guesses.some((guess) => guess.index !== index && guess.found?.meaning === 'addition')
      )
        meaning = 'addition amount';
      const several =
        MANY.has(meaning) ||
        (meaning === 'amount' && guesses.filter((guess) => guess.found?.meaning === 'seed').length > 1);
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
  for (let index = 0; index < names.length; index += 1) {
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
      assumptions.push({ row: null, sentence: assumed.additionColumn(name) });
      continue;
    }
    const meaning = meaningOfCells(cells, free);
    if (meaning === null) continue;
    meanings[index] = meaning;
    free.delete(meaning);
    assumptions.push({ row: null, sentence: assumed.column(name, meaning) });
  }
  // A label column of nothing but dates, or letters, is that.
  for (let index = 0; index < names.length; index += 1) {
    if (meanings[index] !== 'label') continue;
    const cells = cellsOf(index).filter((cell) => tidy(cell) !== '');
    if (!meanings.includes('date') && share(cells, (cell) => cellDay(cell) !== null) >= 0.8)
      meanings[index] = 'date';
    else if (!meanings.includes('jar') && share(cells, (cell) => tidy(cell).length <= 2) >= 0.8)
      meanings[index] = 'jar';
  }
  // Marks out of ten are no set words.
  for (const [at, meaning] of meanings.entries()) {
    if (meaning !== 'set' || chosen.has(plain(names[at] ?? ''))) continue;
    const cells = cellsOf(at).filter((cell) => tidy(cell) !== '');
    if (share(cells, (cell) => /\d/.test(cell) && !/\p{L}/u.test(cell)) < 0.6) continue;
    meanings[at] = null;
    spare.add(at);
    assumptions.push({ row: null, sentence: assumed.figuresForSet(names[at] ?? '') });
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
    const saysDays = meaning === 'hours' && headingSaysDays(heading);
    const inDays = saysDays && fitsDays(cellsOf(index));
    if (saysDays && !inDays) assumptions.push({ row: null, sentence: assumed.hoursNotDays(heading) });
    const some = cellsOf(index).some((cell) => tidy(cell) !== '');
    if (meaning === null && some && !spare.has(index))
      assumptions.push({ row: null, sentence: assumed.unknownColumn(heading) });
    const apart = chosen.has(plain(heading)) ? undefined : headingMeaning(heading)?.apart;
    if (meaning === 'note' && apart !== undefined && some)
      assumptions.push({ row: null, sentence: assumed.keptApart(heading, apart) });
    if (meaning === 'price' && some) assumptions.push({ row: null, sentence: assumed.keptPrice(heading) });
    return {
      index,
      heading,
      meaning: meaning ?? 'note',
      unit: headingUnit(heading),
      inDays,
      known: meaning !== null,
      additionName: additionNames.get(index) ?? null,
    };
  });
  const widths = table.rows.map(({ cells }) => cells.length);
  const alike = share(widths, (width) => width > 2 && width === widths[0]) >= 0.7;
  return { tabular: headings !== null || alike, columns, rows, emptyLines, assumptions };
}
