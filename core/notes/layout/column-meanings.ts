// What each column of a table means: from its heading, its neighbours and what stands in it. What the cells prove outweighs
// any heading; of what is left over the text goes to the note under its heading, and that is said.
import { NOTE_COLUMNS, type NoteColumn } from '../../contract';
import { isNothing, findAmounts, parseTemperature, plain, tidy } from '../../quantities/quantities';
import { cellDay, daysBetween, findDay, withoutSureDays } from '../../text/days';
import { readSpan } from '../../text/moments';
import { withoutWeekdayLast } from '../../text/weekdays';
import { PIECE_WITHIN } from '../cells/seed-words';
import { milkName, readYesNo } from '../cells/cell-words';
import { saysHowSet } from '../../text/look-words';
import type { NotesInput } from '../notes-plan';
import type { Question, Said } from '../said';
import { hasTrait, meaningInWords } from '../meanings';
import { assumed, question } from '../notes-says';
import { type Row, type Table, withoutMargin } from '../table/table-rows';
import {
  FIBREISH,
  hoursOrDegrees,
  isAmount,
  isClock,
  isNumber,
  isWarmth,
  MOST_DAYS,
  MASS_UNIT,
  meaningOfCells,
  fitsDays,
  fitsMinutes,
  fitsMeaning,
  provenOtherwise,
  SEED_PART,
  share,
  VOLUME_UNIT,
  withDay,
} from './column-cells';
import { readHeadingLines, tellsTime, upright } from './heading-lines';
import { bareHeading, headingMeaning, headingSaysDays, headingUnit, type HeadingMeaning } from './headings';
import { fromRecords } from './record-lines';
import { marksOf, type Marks } from './taster-marks';
import { unfold } from './unfold';
import { namedBySeeds } from './named-by-seeds';
import { namesOtherRows } from './seeds-by-days';

export interface Column {
  readonly index: number;
  /** As written; "Column 3" where the file has no headings. */
  readonly heading: string;
  readonly meaning: NoteColumn;
  /** The unit its heading tells, as written there. */
  readonly unit: string | null;
  /** How many hours one of its bare figures is: 24 under "Days", a sixtieth under "(min)". */
  readonly hoursEach: number;
  /** Nothing told what it is: its text goes to the note under its heading. */
  readonly known: boolean;
  /** A column named after one addition, with nothing but amounts: "Inulin (g)". */
  readonly additionName: string | null;
  /** It holds marks that tasters gave. */
  readonly marks: Marks | null;
  /** Under a heading of its own, what stands in it told what it means: whoever brings it in looks at that first. */
  readonly doubtful: boolean;
}

export interface Layout {
  /** Whether it is a table at all: it has headings, or its lines fall into the same columns. */
  readonly tabular: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly emptyLines: readonly number[];
  readonly assumptions: readonly Said[];
  readonly questions: readonly Question[];
  /** Called for each row where all are gone through; may throw to stop. */
  readonly look?: (() => void) | undefined;
}

/** Rows that a column's meaning is looked for in. */
const SAMPLE = 400;

/** A cell that tells nothing, in whatever column. */
const UNTOLD = /^(?:[-–—]*|#?n\/?a|#[a-z]+[!?])$/i;

/** One column while its meaning is looked for. */
interface Draft {
  readonly index: number;
  readonly name: string;
  /** What stands in it, blanks left out. */
  readonly cells: readonly string[];
  /** Matched by the keeper. */
  readonly chosen: boolean;
  found: HeadingMeaning | null;
  meaning: NoteColumn | null;
  /** Its heading is a known one, and yet it is a second one or proven otherwise: kept in the note. */
  spare: boolean;
  /** What stands in it told what it means, and no heading. */
  fromCells: boolean;
  additionName: string | null;
  marks: Marks | null;
}

/** All columns while their meanings are looked for, and what is said of them. */
interface Drafts {
  readonly all: readonly Draft[];
  readonly said: Said[];
  readonly questions: Question[];
  /** Whether the table has headings of its own. */
  readonly headed: boolean;
  /** The first rows. */
  readonly rows: readonly Row[];
  readonly look: Table['look'];
}

const has = ({ all }: Drafts, meaning: NoteColumn): boolean => all.some((one) => one.meaning === meaning);
const saying = ({ said }: Drafts, sentence: string): number => said.push({ row: null, sentence });
/** Says that what stands in a column, and not its heading, told what it is. */
function sayFromCells(drafts: Drafts, draft: Draft, meaning: NoteColumn): void {
  draft.fromCells = true;
  saying(drafts, assumed.column(draft.name, meaning));
}

/** The columns of a table, by the keeper's own mapping and answers first. */
export function readLayout(
  whole: Table,
  { mapping, answers, title }: Pick<NotesInput, 'mapping' | 'answers' | 'title'>,
): Layout {
  const table = withoutMargin(whole);
  const records = fromRecords(table);
  const turned = upright(records);
  const { headings, names, rows, emptyLines, assumptions } = unfold(
    readHeadingLines(turned, title),
    table.look,
  );
  const chosen = new Map([
    ...Object.entries(answers).flatMap(([id, answer]) => meantBy(id, answer)),
    ...Object.entries(mapping).map(([heading, meaning]) => [plain(heading), meaning] as const),
  ]);
  // A line that tells the day or the year of those below it stands in no column.
  const sample = rows.slice(0, SAMPLE).filter((row) => {
    table.look?.();
    return !tellsTime(row);
  });
  const all = names.map((name, index): Draft => {
    table.look?.();
    const meaning = chosen.get(plain(name)) ?? null;
    return {
      index,
      name,
      cells: sample.flatMap((row) =>
        UNTOLD.test(tidy(row.cells[index] ?? '')) ? [] : (row.cells[index] ?? ''),
      ),
      chosen: meaning !== null,
      found: null,
      meaning,
      spare: false,
      fromCells: false,
      additionName: null,
      marks: null,
    };
  });
  for (const draft of all) {
    table.look?.();
    draft.found = foundFor(draft);
  }
  const drafts: Drafts = {
    all,
    said: [
      ...(turned === table
        ? []
        : [{ row: null, sentence: turned === records ? assumed.records() : assumed.sideways() }]),
      ...assumptions,
    ],
    questions: [],
    headed: headings !== null,
    rows: rows.slice(0, SAMPLE),
    look: table.look,
  };
  for (const find of [
    byOtherRows,
    byMarks,
    byHeadings,
    byClocks,
    byAdditions,
    bySeedNames,
    byLines,
    byCells,
    corrected,
  ]) {
    table.look?.();
    find(drafts);
  }
  const columns = all.map((draft) => columnOf(draft, drafts));
  const widths = turned.rows.map(({ cells }) => cells.length);
  const alike = share(widths, (width) => width > 2 && width === widths[0]) >= 0.7;
  return {
    tabular: headings !== null || alike,
    columns,
    rows,
    emptyLines,
    assumptions: drafts.said,
    questions: drafts.questions,
    look: table.look,
  };
}

/** Where no heading says what seeded each jar, or one says so above something else: cells that name jars of other rows. */
function byOtherRows(drafts: Drafts): void {
  const { all, rows } = drafts;
  if (has(drafts, 'seed') || all.some(({ found }) => found?.meaning === 'seed')) return;
  const days = all.filter(({ cells, chosen, meaning }) =>
    chosen ? meaning === 'date' : share(cells, (cell) => cellDay(cell) !== null) >= 0.8,
  );
  for (const draft of all) {
    if (draft.chosen || days.length === 0) continue;
    const tells = days.some(({ index }) => index !== draft.index && namesOtherRows(draft.index, index, rows));
    if (!tells) continue;
    draft.meaning = 'seed';
    sayFromCells(drafts, draft, 'seed');
    return;
  }
}

/** What the heading of a column means; words within a longer one mean nothing that none of its cells may be. */
function foundFor({ name, cells }: Draft): HeadingMeaning | null {
  const found = /^Column \d+$/.test(name) ? null : headingMeaning(name.replace(/ #\d+$/, ''));
  const wordsAlone = share(cells, (cell) => !/\d/.test(cell)) >= 0.8;
  if (found === null || cells.length === 0 || fitsMeaning(found.meaning, cells)) return found;
  // "Time in" above "31h" is no time of day, and "Set to" above degrees says of no jar how it set.
  return ['start', 'end', 'set', 'seed'].includes(found.meaning) || (found.sure === 2 && wordsAlone)
    ? null
    : found;
}

/** Headings, the surest first, so that "Date" wins over "Date opened". */
function byHeadings(drafts: Drafts): void {
  // What can't be what its heading says comes last: "Day" above weekdays, beside a "Date".
  const named = namedByHeadings(drafts);
  const order = drafts.all
    .filter(({ found, meaning }) => found !== null && meaning === null)
    .map((draft) => {
      drafts.look?.();
      return { draft, rank: rankOf(draft) + (draft === named ? 10 : 0) };
    })
    .toSorted((a, b) => b.rank - a.rank);
  for (const { draft } of order) {
    drafts.look?.();
    byHeading(draft, drafts);
  }
  for (const draft of drafts.all) draft.spare ||= draft.found !== null && draft.meaning === null;
}

/** Of several columns that may name the jars, "Which" and "Jar", the one that the seeds go by. */
function namedByHeadings({ all, rows }: Drafts): Draft | undefined {
  const of = (meaning: NoteColumn): Draft[] => all.filter(({ found }) => found?.meaning === meaning);
  const [jars, seeds] = [of('jar'), of('seed').map(({ index }) => index)];
  const days = of('date')[0]?.index ?? -1;
  return jars.length < 2 || seeds.length === 0
    ? undefined
    : jars.find(({ index }) => namedBySeeds(index, seeds, rows, days) !== null);
}

const rankOf = ({ found, cells }: Draft): number =>
  found === null ? 0 : (fitsMeaning(found.meaning, cells) && !counts(found, cells) ? 10 : 0) + found.sure;

/** "No." above 1, 2, 3 and so on, or back from the last: it counts rows, where another column names the jars. */
const counts = ({ meaning }: HeadingMeaning, cells: readonly string[]): boolean =>
  meaning === 'jar' &&
  cells.length > 3 &&
  new Set(cells.slice(1).map((cell, at) => Number(cell) - Number(cells[at]))).size === 1 &&
  Math.abs(Number(cells[1]) - Number(cells[0])) === 1;

/** Gives a column the meaning of its heading, as far as its cells and the other columns agree. */
function byHeading(draft: Draft, drafts: Drafts): void {
  const words = draft.found ? [draft.found.meaning, ...(draft.found.others ?? [])] : [];
  const told = words.find((meaning) => fitsMeaning(meaning, draft.cells)) ?? words[0] ?? 'note';
  if (
    draft.found &&
    counts(draft.found, draft.cells) &&
    drafts.all.some(({ cells }) => share(cells, namesJar) >= 0.6)
  ) {
    draft.spare = true;
    return;
  }
  const proven = provenOtherwise(told, draft.cells);
  if (proven) sayFromCells(drafts, draft, proven);
  const meaning = besideOthers(draft, proven ?? told, drafts);
  if (meaning === null) {
    draft.spare = true;
    return;
  }
  const others = drafts.all.filter((one) => one.found?.meaning === 'seed').length;
  const several = hasTrait(meaning, 'many') || (meaning === 'amount' && others > 1);
  draft.spare = has(drafts, meaning) && !several;
  if (draft.spare && draft.cells.length > 0) saying(drafts, assumed.secondColumn(draft.name, meaning));
  if (!draft.spare) draft.meaning = meaning;
}

/** Whether days of a second column are when holds ended that began on those of the first, told beside times of day. */
function endsHolds(draft: Draft, drafts: Drafts): boolean {
  const first = drafts.all.find(({ meaning }) => meaning === 'date');
  const timed = drafts.all.some(
    ({ found, cells }) =>
      found?.meaning === 'end' || found?.meaning === 'start' || share(cells, isClock) >= 0.8,
  );
  if (!first || !timed) return false;
  const pairs = drafts.rows
    .map(({ cells }) => [findDay(cells[first.index] ?? ''), findDay(cells[draft.index] ?? '')] as const)
    .filter(([began, ended]) => began !== null && ended !== null);
  return (['day first', 'month first'] as const).some((order) => {
    const days = pairs.map(([began, ended]) => (began && ended ? daysBetween(began, ended, order) : null));
    return (
      days.some((count) => count !== null && count > 0) &&
      share(days, (count) => count !== null && count >= 0 && count <= MOST_DAYS) >= 0.8
    );
  });
}

/** Headings that may be said of a time of day as well as of how long. */
const TIME_WORD =
  /^(?:time|zeit|uhrzeit|temps|heure|tiempo|hora|tempo|ora|tijd|tid|klokkeslett?|czas|godzina)$/;

/** What a heading means beside the others and above its cells: an amount beside the milk is the milk's; null: nothing. */
function besideOthers(draft: Draft, told: NoteColumn, drafts: Drafts): NoteColumn | null {
  const { index, name, cells } = draft;
  const others = drafts.all.filter((one) => one !== draft);
  let meaning = told;
  // "Time in" above "19:00 - 21.5. 7:00" tells both ends.
  if (meaning === 'start' && share(cells, (cell) => readSpan(cell, 'day first') !== null) >= 0.8)
    return 'hours';
  // "Start" without an end is the day, or nothing we know.
  if (meaning === 'start' && !drafts.all.some(({ found }) => found?.meaning === 'end')) {
    if (has(drafts, 'date') || share(cells, withDay) < 0.6) return null;
    meaning = 'date';
  }
  // "Time" above times of day tells no length.
  if (meaning === 'hours' && TIME_WORD.test(plain(name)) && share(cells, isClock) >= 0.8) {
    if (others.some(({ found }) => found?.meaning === 'end')) meaning = 'start';
    else if (share(cells, (cell) => /[ap]\.?m\b|uhr/i.test(cell)) >= 0.5) return null;
  }
  // "Bad °C" is a bath in German.
  const provesWarmth = (): boolean =>
    share(cells, (cell) => isNumber(cell) && parseTemperature(cell).ok) >= 0.8;
  const unit = headingUnit(name);
  if (
    (meaning === 'spoiled' || hasTrait(meaning, 'words')) &&
    unit !== null &&
    /^[CF]$/.test(unit) &&
    provesWarmth()
  )
    meaning = 'temperature';
  // "Date in, Time in, Date out, Time out"
  if (meaning === 'date' && has(drafts, 'date') && endsHolds(draft, drafts)) return 'end';
  const left = drafts.all[index - 1];
  const before = left?.meaning ?? left?.found?.meaning ?? null;
  // Cells are gone through only for the meanings that ask them: every column of every file comes by here.
  let amounts: number | null = null;
  const figures = (): number => (amounts ??= share(cells, isAmount));
  // "Milk, Amount": an amount beside a column that tells none of its own belongs to that.
  const tellsNone = (): boolean =>
    share(left?.cells ?? [], (cell) => findAmounts(cell, { spoons: 'US' }, true).length > 0) < 0.3;
  if (meaning === 'amount' && before === 'milk' && tellsNone()) meaning = 'milk amount';
  if (meaning === 'amount' && before === 'addition' && tellsNone()) meaning = 'addition amount';
  if (SEED_PART.test(plain(name)) && figures() < 0.8) meaning = 'seed';
  const otherSeed = others.some((one) => one.found?.meaning === 'seed' && share(one.cells, isAmount) < 0.8);
  // "Seed (g)" beside the seeds is how much of them.
  const volumes = (): boolean =>
    (unit !== null && (VOLUME_UNIT.test(unit) || (otherSeed && MASS_UNIT.test(unit)))) ||
    share(cells, isNumber) < 0.5;
  const least = otherSeed && unit !== null ? 0.4 : 0.8;
  if (meaning === 'seed' && volumes() && figures() >= least) meaning = 'amount';
  // "Seed ml" above days names the seeds all the same.
  const days = (): number => share(cells, (cell) => withoutSureDays(cell) !== tidy(cell));
  if (meaning === 'amount' && !has(drafts, 'seed') && !otherSeed && days() >= 0.5) meaning = 'seed';
  if (meaning === 'milk' && (has(drafts, 'milk') || saysHowMuch(name, cells)) && figures() >= 0.8)
    meaning = 'milk amount';
  // "Fibre tsp" above bare figures names what went in itself.
  if (
    meaning === 'addition' &&
    unit !== null &&
    share(cells, isNumber) >= 0.8 &&
    !others.some(({ found }) => found?.meaning === 'addition')
  )
    draft.additionName = withoutUnit(name, unit);
  if (meaning === 'addition' && figures() >= 0.8 && others.some(({ found }) => found?.meaning === 'addition'))
    meaning = 'addition amount';
  return meaning;
}

/** Bare figures that are no fat of a milk: all of litres, or all of millilitres. */
const saysHowMuch = (name: string, cells: readonly string[]): boolean => {
  const figures = cells.map((cell) => (isNumber(cell) ? Number(tidy(cell).replace(',', '.')) : Number.NaN));
  return (
    milkName(bareHeading(name)) === null &&
    cells.length > 0 &&
    (figures.every((one) => one <= 2.5) || figures.every((one) => one >= 100))
  );
};

/** Marks out of ten are no words and no days: they are kept under their heading. */
function byMarks(drafts: Drafts): void {
  for (const draft of drafts.all) {
    if (draft.chosen) continue;
    draft.marks = marksOf(draft.name, draft.cells, draft.found?.meaning ?? null);
    if (draft.marks === null) continue;
    draft.meaning = 'note';
    saying(drafts, assumed.mark(draft.name, draft.marks.most));
  }
}

/** Times of day under a heading that tells none: when the hold began, and when it ended. */
function byClocks(drafts: Drafts): void {
  const clocks = drafts.all.filter(
    ({ meaning, found, cells }) =>
      meaning === null &&
      (found === null || ['date', 'hours', 'start'].includes(found.meaning)) &&
      share(cells, isClock) >= 0.8,
  );
  const [first, second] = clocks;
  const [start, end] = [has(drafts, 'start'), has(drafts, 'end')];
  const take = (draft: Draft | undefined, meaning: 'start' | 'end', what: string): void => {
    if (!draft) return;
    draft.meaning = meaning;
    draft.spare = false;
    saying(drafts, assumed.clockColumn(draft.name, what));
  };
  // One time alone tells no length.
  if (!start && (end || second)) take(first, 'start', 'when the hold began');
  if (!end && (start || second)) take(start ? first : second, 'end', 'when the hold ended');
}

/** A heading as written, without the unit it tells. */
const withoutUnit = (written: string, unit: string | null): string => {
  // "+ inulin?" asks whether it went in.
  const name = tidy(written).replace(/^[+&]\s*|\s*\?+$/g, '');
  return unit === null
    ? name
    : tidy(name.replace(/[([{].*?[)\]}]/g, ' '))
        .trim()
        .replace(new RegExp(`[\\s,/]+(?:in )?${unit}\\.?$|^${unit}\\s+(?:of\\s+)?`, 'i'), '');
};

/** More grams than anyone stirs into a jar (common practice, no source). */
const weighsJars = (cell: string): boolean => Number(tidy(cell).replace(',', '.')) > 200;

/** "Inulin" above amounts, or above crosses where it went in. */
function byAdditions(drafts: Drafts): void {
  if (!drafts.headed) return;
  // "With what" above counts of pieces is no addition.
  const seeds = drafts.all.find(
    ({ meaning, chosen, cells }) =>
      meaning === 'addition' && !chosen && share(cells, (cell) => PIECE_WITHIN.test(cell)) >= 0.5,
  );
  if (seeds && !has(drafts, 'seed')) {
    seeds.meaning = 'seed';
    sayFromCells(drafts, seeds, 'seed');
  }
  for (const draft of drafts.all)
    if (draft.chosen && draft.meaning === 'addition' && share(draft.cells, isAmount) >= 0.8)
      draft.additionName = withoutUnit(draft.name, headingUnit(draft.name));
  for (const draft of drafts.all) {
    const { name, cells } = draft;
    if (draft.meaning !== null || draft.spare || cells.length === 0) continue;
    const unit = headingUnit(name);
    // A jar weighs hundreds of grams: that much is stirred into none.
    const inUnits =
      unit !== null &&
      MASS_UNIT.test(unit) &&
      share(cells, (cell) => isAmount(cell) && !weighsJars(cell)) >= 0.8;
    const went = (cell: string): boolean => isAmount(cell) || readYesNo(cell) !== null || isNothing(cell);
    if (!inUnits && !(FIBREISH.test(plain(name)) && share(cells, went) >= 0.8)) continue;
    draft.additionName = withoutUnit(name, unit);
    draft.meaning = 'addition';
    saying(drafts, assumed.additionColumn(name));
  }
}

/** What columns of jars' names, and of their seeds, may have been taken for. */
const MAY_NAME: ReadonlySet<NoteColumn | null> = new Set([
  null,
  'jar',
  'label',
  'colour',
  'vessel',
  'note',
  'addition',
]);

/** Of two columns one names jars and the other goes by those names: whatever stands above them. @returns whether one pair does */
function byPairs(drafts: Drafts, days: number): boolean {
  const open = drafts.all.filter(
    ({ chosen, meaning, cells }) => !chosen && MAY_NAME.has(meaning) && cells.length > 2,
  );
  const pairs = open.flatMap((jar) =>
    open.flatMap((seed) => {
      const named = seed === jar ? null : namedBySeeds(jar.index, [seed.index], drafts.rows, days);
      return named === null ? [] : [{ jar, seed, named }];
    }),
  );
  const [pair, other] = pairs;
  if (!pair || other) return false;
  if (pair.jar.meaning !== 'jar') saying(drafts, assumed.jarColumn(pair.jar.name, pair.named));
  sayFromCells(drafts, pair.seed, 'seed');
  Object.assign(pair.jar, { meaning: 'jar', spare: false });
  Object.assign(pair.seed, { meaning: 'seed', spare: false });
  return true;
}

/** A column of names that the seeds go by names the jars, and one that goes by the names of jars tells seeds, whatever stands above. */
function bySeedNames(drafts: Drafts): void {
  const of = (...wanted: readonly NoteColumn[]): number[] =>
    drafts.all
      .filter(({ meaning }) => meaning !== null && wanted.includes(meaning))
      .map(({ index }) => index);
  const [jars, seeds, [days = -1]] = [of('jar', 'label'), of('seed'), of('date')];
  if (seeds.length === 0 && byPairs(drafts, days)) return;
  const counting = drafts.all.find(
    ({ chosen, meaning, found, cells }) =>
      !chosen && meaning === 'jar' && found !== null && counts(found, cells),
  );
  if (counting && seeds.length > 0 && namedBySeeds(counting.index, seeds, drafts.rows, days) === null) {
    const names = drafts.all.find(
      ({ index, chosen, meaning }) =>
        !chosen && hasTrait(meaning, 'names') && namedBySeeds(index, seeds, drafts.rows, days) !== null,
    );
    if (names) {
      Object.assign(counting, { meaning: null, spare: true });
      names.meaning = 'jar';
      saying(drafts, assumed.secondColumn(counting.name, 'jar'));
      return;
    }
  }
  if (jars.length > 0 === seeds.length > 0) return;
  for (const draft of drafts.all) {
    if (draft.chosen || (draft.meaning !== null && !hasTrait(draft.meaning, 'names'))) continue;
    const named =
      seeds.length > 0
        ? namedBySeeds(draft.index, seeds, drafts.rows, days)
        : jars.map((jar) => namedBySeeds(jar, [draft.index], drafts.rows, days)).find((one) => one !== null);
    if (named === null || named === undefined) continue;
    draft.meaning = seeds.length > 0 ? 'jar' : 'seed';
    draft.spare = false;
    if (seeds.length > 0) saying(drafts, assumed.jarColumn(draft.name, named));
    else sayFromCells(drafts, draft, 'seed');
    return;
  }
}

/** Longest name of a line, and most lines: more are no lines. */
const LINE_NAME = { longest: 30, most: 12 } as const;
const LETTER = /^#?\s*\p{L}$/u;

/** What stands in a column, plain; where a row has no day of its own, what stands above it: told once for a batch. */
function downBatches(index: number, days: number, rows: readonly Row[]): string[] {
  let above = '';
  return rows.map(({ cells }) => {
    const own = plain(cells[index] ?? '');
    if (own !== '' || tidy(cells[days] ?? '') !== '') above = own;
    return above;
  });
}

/** Words that come again and again, and set jars of one day and letter apart, tell lines or batches: "Porch", "Attic". */
function byLines(drafts: Drafts): void {
  const { all, rows } = drafts;
  const label = all.find(({ meaning }) => meaning === 'label');
  const repeated = ({ cells }: Draft): boolean => new Set(cells.map(plain)).size <= cells.length / 3;
  if (label && (!label.chosen || !repeated(label))) return;
  const days = all.find(({ meaning }) => meaning === 'date')?.index ?? -1;
  const letters =
    all.find(({ chosen, cells }) => !chosen && share(cells, (cell) => LETTER.test(tidy(cell))) >= 0.9) ??
    all.find(({ meaning }) => meaning === 'jar');
  if (days < 0 || !letters) return;
  const alike = (by: readonly number[]): number => {
    const columns = by.map((index) => downBatches(index, days, rows));
    return rows.length - new Set(rows.map((_, at) => columns.map((cells) => cells[at]).join('|'))).size;
  };
  const before = alike([days, letters.index]);
  if (before < 2) return;
  const apart = ({ index }: Draft): boolean => alike([days, letters.index, index]) <= before / 10;
  const line =
    label ??
    all.find(
      (draft) => draft !== letters && namesLines(draft, downBatches(draft.index, days, rows)) && apart(draft),
    );
  if (!line) return;
  // What was said of it before holds no more.
  const second = drafts.said.findIndex(({ sentence }) => sentence === assumed.secondColumn(line.name, 'jar'));
  if (second >= 0) drafts.said.splice(second, 1);
  Object.assign(line, { meaning: 'label', spare: false });
  Object.assign(letters, { meaning: 'jar', spare: false });
  saying(drafts, assumed.lines(line.name));
}

/** Whether a column of which nobody knows anything else holds a few names, each of many rows. */
function namesLines({ chosen, found, meaning }: Draft, values: readonly string[]): boolean {
  const cells = values.filter((value) => value !== '');
  const names = new Set(cells);
  return (
    !chosen &&
    (found === null || meaning === null || meaning === 'jar') &&
    cells.length >= values.length * 0.8 &&
    names.size <= Math.min(LINE_NAME.most, cells.length / 3) &&
    [...names].every((name) => /\p{L}/u.test(name) && name.length <= LINE_NAME.longest)
  );
}

/** Meanings that cells alone can show. */
const SHOWN_BY_CELLS = [
  'date',
  'seed',
  'temperature',
  'ph',
  'set',
  'milk',
  'addition',
  'jar',
  'hours',
  'amount',
] as const;

/** Then what stands in the columns that no heading told of. */
function byCells(drafts: Drafts): void {
  const free = new Set<NoteColumn>(SHOWN_BY_CELLS.filter((meaning) => !has(drafts, meaning)));
  const label = drafts.all.find(({ meaning }) => meaning === 'label');
  if (label) free.delete('jar');
  if (has(drafts, 'start') && has(drafts, 'end')) free.delete('hours');
  // A label may tell the day as well.
  if (label && share(label.cells, withDay) >= 0.5) free.delete('date');
  for (const draft of drafts.all) {
    const { name, cells } = draft;
    if (draft.meaning !== null || draft.spare || cells.length === 0) continue;
    if (looksBefore(draft, drafts)) {
      draft.meaning = 'note';
      saying(drafts, assumed.keptApart(name, 'a look before the end'));
      continue;
    }
    const within = openTo(draft, free, drafts);
    const meaning =
      asksHoursOrDegrees(draft, within, drafts) ?? meaningOfCells(cells, within) ?? ofALetter(draft, within);
    if (meaning === null) continue;
    draft.meaning = meaning;
    if (meaning === 'note') continue;
    free.delete(meaning);
    sayFromCells(drafts, draft, meaning);
  }
}

/** "8h", "after 12 hours", and nothing else: when a jar was looked at. */
const LOOK = /^(?:after |nach |at )?(\d+(?:[.,]\d+)?) ?(?:h|hrs?|hours?|std|stunden)$/;
const lookedAfter = (name: string): number =>
  Number(LOOK.exec(plain(name))?.[1]?.replace(',', '.') ?? Number.NaN);

/** Whether a column tells what was seen at an hour before the last: that is no outcome. */
const looksBefore = ({ name }: Draft, drafts: Drafts): boolean =>
  has(drafts, 'hours') || has(drafts, 'set')
    ? LOOK.test(plain(name))
    : drafts.all.some((other) => lookedAfter(other.name) > lookedAfter(name));

const HOUR_UNIT = /^(?:h|hrs?|hours?|std|stunden|days?|tage?|d)\.?$/i;
/** What a column can be by the unit that its heading tells: an amount for each of several seeds, no hours in millilitres. */
function openTo({ name }: Draft, free: ReadonlySet<NoteColumn>, drafts: Drafts): ReadonlySet<NoteColumn> {
  const unit = headingUnit(name);
  if (unit === null || LOOK.test(plain(name))) return free;
  const told: NoteColumn | null = HOUR_UNIT.test(unit)
    ? 'hours'
    : /^(?:deg )?[CF]$/i.test(unit)
      ? 'temperature'
      : null;
  if (told !== null) return new Set(free.has(told) ? [told] : []);
  if (!VOLUME_UNIT.test(unit) && !MASS_UNIT.test(unit)) return free;
  const seeds = drafts.all.filter(({ meaning }) => meaning === 'seed').length;
  return new Set<NoteColumn>(
    (['amount', 'milk', 'addition'] as const).filter(
      (one) => free.has(one) || (one === 'amount' && seeds > 1),
    ),
  );
}

/** "A ml" above bare figures: how much of the seed that a letter stands for. */
const ofALetter = ({ name, cells }: Draft, open: ReadonlySet<NoteColumn>): NoteColumn | null =>
  headingUnit(name) !== null &&
  open.has('amount') &&
  /^(?:\p{L}|\d{1,2})$/u.test(withoutUnit(name, headingUnit(name))) &&
  share(cells, isNumber) >= 0.8
    ? 'amount'
    : null;

/** Bare figures from 30 to 48 are hours or degrees: with both still open and nothing else to tell, that is asked. */
function asksHoursOrDegrees(
  { name, cells, index }: Draft,
  free: ReadonlySet<NoteColumn>,
  drafts: Drafts,
): NoteColumn | null {
  if (!drafts.headed || !free.has('hours') || !free.has('temperature') || !hoursOrDegrees(cells)) return null;
  const open = drafts.all.filter(
    (one) =>
      one.index !== index &&
      one.meaning === null &&
      !one.spare &&
      one.cells.length > 0 &&
      share(one.cells, (cell) => isNumber(cell) || isWarmth(cell)) >= 0.8,
  );
  if (open.length > 0) return null;
  drafts.questions.push({
    id: `means:${name}`,
    row: null,
    sentence: question.hoursOrDegrees(name),
    choices: [
      { value: 'hours', label: 'The hours held' },
      { value: 'temperature', label: 'The temperature in °C' },
    ],
    blocks: false,
  });
  return 'note';
}

/** "2026-01-05 b", "5 Jan, jar 2": a day and the letter of a jar beside it. */
function namesJar(cell: string): boolean {
  const text = tidy(cell);
  const found = findDay(text);
  const beside = found
    ? `${withoutWeekdayLast(text.slice(0, found.start))} ${text.slice(found.end)}`.trim()
    : '';
  return /^[\s,;:(_-]*(?:\p{L}\d?|(?:jar|glas|pot|no\.?|nr\.?|#)\s*(?:\p{L}|\d{1,2}))\)?$/iu.test(beside);
}

/** What a first look took for something that its cells are not. */
function corrected(drafts: Drafts): void {
  // Days with letters beside them name the jars, whatever stands above, where nothing else does.
  const nameless = !has(drafts, 'label') && !has(drafts, 'jar');
  const naming = drafts.all.find(
    ({ meaning, chosen, cells }) =>
      nameless && !chosen && (meaning === null || meaning === 'date') && share(cells, namesJar) >= 0.6,
  );
  if (naming) {
    if (naming.meaning === null) sayFromCells(drafts, naming, 'label');
    naming.meaning = 'label';
  }
  for (const draft of drafts.all) {
    // A label column of nothing but dates, or letters, is that.
    if (draft.meaning === 'label') {
      const days = share(draft.cells, (cell) => cellDay(cell) !== null);
      const letters = share(draft.cells, (cell) => tidy(cell).length <= 2);
      if (!has(drafts, 'date') && days >= 0.8) draft.meaning = 'date';
      else if (!has(drafts, 'jar') && letters >= 0.8) draft.meaning = 'jar';
    }
  }
  // "Parent, Vol": a volume right beside the seeds is theirs, where nothing else tells how much.
  const volume = drafts.all.find(({ meaning, chosen }) => meaning === 'volume' && !chosen);
  if (volume && !has(drafts, 'amount') && drafts.all[volume.index - 1]?.meaning === 'seed') {
    volume.meaning = 'amount';
    sayFromCells(drafts, volume, 'amount');
  }
  // A texture column of set words, where nothing else tells how a jar set.
  const texture = drafts.all.find(
    ({ meaning, cells }) =>
      (meaning === 'texture' || meaning === 'spoiled') && share(cells, saysHowSet) >= 0.6,
  );
  if (texture && !has(drafts, 'set')) {
    texture.meaning = 'set';
    sayFromCells(drafts, texture, 'set');
  }
}

/** What an answer says that a heading means. */
function meantBy(id: string, answer: string): (readonly [string, NoteColumn])[] {
  if (id === 'which seeds' || id === 'which days')
    return [[plain(answer), id === 'which seeds' ? 'seed' : 'date']];
  const meaning = NOTE_COLUMNS.find((one) => one === answer.trim().toLowerCase());
  return id.startsWith('means:') && meaning !== undefined
    ? [[plain(id.slice('means:'.length)), meaning]]
    : [];
}

/** What does a heading that nobody knows tell: notes, or anything that no other column tells yet. */
function askMeaning(name: string, drafts: Drafts): Question {
  const open = NOTE_COLUMNS.filter(
    (meaning) => meaning !== 'note' && (hasTrait(meaning, 'many') || !has(drafts, meaning)),
  );
  const choices = ['note' as const, ...open].map((value) => ({ value, label: meaningInWords(value) }));
  return { id: `means:${name}`, row: null, sentence: question.unknownColumn(name), choices, blocks: false };
}

/** A column as it is read, with what is to be said of it. */
function columnOf(
  { index, name, cells, chosen, meaning, spare, fromCells, additionName, marks }: Draft,
  drafts: Drafts,
): Column {
  const saysDays = meaning === 'hours' && headingSaysDays(name);
  const inDays = saysDays && fitsDays(cells);
  const inMinutes = meaning === 'hours' && /^min/i.test(headingUnit(name) ?? '') && fitsMinutes(cells);
  const some = cells.length > 0;
  if (saysDays && !inDays) saying(drafts, assumed.hoursNotDays(name));
  if (meaning === null && some && !spare) drafts.questions.push(askMeaning(name, drafts));
  const apart = chosen ? undefined : headingMeaning(name)?.apart;
  if (meaning === 'note' && apart !== undefined && some) saying(drafts, assumed.keptApart(name, apart));
  if (meaning === 'price' && some) saying(drafts, assumed.keptPrice(name));
  return {
    index,
    heading: name,
    meaning: meaning ?? 'note',
    unit: headingUnit(name),
    hoursEach: inDays ? 24 : inMinutes ? 1 / 60 : 1,
    known: meaning !== null,
    additionName,
    marks: meaning === 'note' ? marks : null,
    doubtful: fromCells && drafts.headed && !chosen,
  };
}
