// What each column of a table means: from its heading, its neighbours and what stands in it. What the cells prove outweighs
// any heading; of what is left over the text goes to the note under its heading, and that is said.
import { NOTE_COLUMNS, type NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { cellDay } from '../../text/days';
import { saysHowSet } from '../../text/look-words';
import type { NotesInput } from '../notes-plan';
import type { Question, Said } from '../said';
import { hasTrait, meaningInWords } from '../meanings';
import { assumed, question } from '../notes-says';
import { type Row, type Table, withoutMargin } from '../table/table-rows';
import { fitsDays, fitsMinutes, namesJar, share } from './column-cells';
import { readHeadingLines, tellsTime, upright } from './heading-lines';
import { headingMeaning, headingSaysDays, headingUnit } from './headings';
import { fromRecords } from './record-lines';
import type { Marks } from './taster-marks';
import { unfold } from './unfold';
import { byMarks, byClocks, byCells } from './by-cells';
import { foundFor, byHeadings, byAdditions } from './by-headings';
import { byOtherRows, bySeedNames, byLines } from './by-names';
import { type Draft, type Drafts, has, saying, sayFromCells } from './column-drafts';

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
