// What the columns were taken as, each with one of its cells and how that was read.
import { exactDay } from '../../text/rough-days';
import type { NotesPreview } from '../../contract';
import type { Amount } from '../../ledger/basics';
import { batchDay } from '../../lineage/labels';
import { tidy } from '../../quantities/quantities';
import { readYesNo } from '../cells/cell-words';
import type { Column, Layout } from '../layout/column-meanings';
import { columnSays } from '../notes-says';
import { labelOf, seedNames, type NoteRow } from '../rows/note-row';
import { filled } from '../rows/row-cells';

/** Rows that are looked through for a cell that was read. */
const LOOKED_THROUGH = 50;

/** Each column with what it was taken as, the first things that stand in it, and how one of them was read. */
export const columnsOf = (
  { columns, rows }: Layout,
  read: readonly NoteRow[] = [],
): NotesPreview['columns'] =>
  columns.map((column) => {
    const { heading, known, meaning, index } = column;
    const examples = examplesOf(rows, index);
    const says = sayOf(column, examples, read);
    const doubtful = column.doubtful && examples.length > 0 ? { doubtful: true as const } : {};
    return { heading, meaning: known ? meaning : null, examples, says, ...doubtful };
  });

/** The first three things that stand in a column. */
function examplesOf(rows: Layout['rows'], index: number): string[] {
  const found = new Set<string>();
  for (const { cells } of rows) {
    const text = tidy(cells[index] ?? '').slice(0, 80);
    if (text !== '') found.add(text);
    if (found.size === 3) break;
  }
  return [...found];
}

function sayOf(column: Column, [first]: readonly string[], read: readonly NoteRow[]): string {
  const { meaning, marks, known } = column;
  if (first === undefined) return columnSays.nothing();
  if (marks) return columnSays.marks(marks.most);
  if (meaning === 'ignore') return columnSays.leftOut();
  if (meaning === 'note' || meaning === 'price' || !known) return columnSays.kept(first);
  for (const row of read.slice(0, LOOKED_THROUGH)) {
    const text = (row.cells.find((cell) => cell.column.index === column.index)?.text ?? '').trim();
    const taken = text === '' ? null : readAs(row, column, text);
    if (taken !== null) return columnSays.read(text, taken);
  }
  return columnSays.notRead(first);
}

const amounts = (given: readonly (Amount | null)[]): string | null =>
  given.flatMap((one) => (one === null ? [] : `${Number(one.value.toFixed(2))} ${one.unit}`)).join(' and ') ||
  null;

/** What the cell of a row was read as, in words; null where it was not. */
function readAs(row: NoteRow, { meaning }: Column, text: string): string | null {
  const { identity, facts, seeds } = row;
  const outcome = facts?.outcome ?? null;
  switch (meaning) {
    case 'date':
      return batchDay({ madeOn: exactDay(identity), about: identity.day }, true);
    case 'jar':
      return identity.letter === null ? null : `jar ${identity.letter}`;
    case 'label':
      return identity.day === null ? null : labelOf(row);
    case 'seed':
      return seedNames(row).join(' and ') || null;
    case 'amount':
      return amounts(seeds.map(({ amount }) => amount));
    case 'milk':
      return facts?.milk ?? null;
    case 'milk amount':
      return amounts([facts?.milkAmount ?? null]);
    case 'addition':
      return facts?.additions.map(({ name, actual }) => [amounts([actual]), name].filter(Boolean).join(' ')).join(' and ') || null;
    case 'addition amount':
      return amounts(facts?.additions.map(({ actual }) => actual) ?? []);
    case 'hours':
    case 'start':
    case 'end':
      // Where another column tells the hours, these are kept.
      if (meaning !== 'hours' && filled(row.cells, 'hours').length > 0) return null;
      return facts?.hours == null ? null : `${Number(facts.hours.toFixed(2))} h held`;
    case 'temperature':
      return facts?.temperature ? `${Number(facts.temperature.value.toFixed(1))} °C` : null;
    case 'set':
      return outcome?.setAtTakeOut === false ? 'not set' : (outcome?.setWord ?? null);
    case 'ph':
      return outcome?.ph == null ? null : `pH ${outcome.ph}`;
    case 'whey':
    case 'tang':
    case 'smell':
    case 'colour':
    case 'texture':
      return outcome?.[meaning] ?? null;
    case 'volume':
      return amounts([facts?.volume ?? null]);
    case 'vessel':
      return facts?.vessel ?? null;
    case 'spoiled':
      return readYesNo(text) === false ? 'not spoiled' : outcome?.spoiledSaid ? 'spoiled' : null;
    default:
      return null;
  }
} // prettier-ignore
