// Columns that are new to rows of the ledger, or gone: asked about once for the whole file, not row by row.
import { discardOf } from '../../safety/take-out';
import { readAs, takesColumn } from './changes';
import type { Column, Layout } from '../layout/column-meanings';
import type { FileSays, Question, Said } from '../said';
import type { NotesInput } from '../notes-plan';
import type { FileContext } from '../rows/row-cells';
import { hasTrait } from '../meanings';
import type { NoteRow } from '../rows/note-row';
import { assumed, question } from '../notes-says';

/** Whether a column of a row tells more than the others do. */
function tells(row: NoteRow, column: Column, context: FileContext, input: NotesInput): boolean {
  if (column.meaning === 'ignore') return false;
  if (hasTrait(column.meaning, 'of seeds')) return true;
  const others = (row.other?.added ?? []).filter((heading) => heading !== column.heading);
  const said = (without: readonly string[]): string => {
    const { facts, log } = readAs(row, context, input.answers, without);
    return JSON.stringify([facts, log.noteText()]);
  };
  return said(others) !== said([...others, column.heading]);
}

/** What is asked and said of the columns that are new to rows of the ledger, or gone. */
export function askColumns(
  rows: readonly NoteRow[],
  layout: Layout,
  context: FileContext,
  input: NotesInput,
): FileSays {
  const questions: Question[] = [];
  const said: Said[] = [];
  const known = rows.filter(({ other, here }) => other !== null && here !== null);
  for (const column of layout.columns) {
    const { heading } = column;
    const under = known.filter(({ other }) => other?.added.includes(heading));
    if (under.length === 0 || takesColumn(heading, input.answers)) continue;
    const telling = under.filter((row) => !row.readSame && tells(row, column, context, input));
    if (telling.length === 0) said.push({ row: null, sentence: assumed.newColumn(heading) });
    else
      questions.push({
        id: `column:${heading}`,
        row: null,
        sentence: question.newColumn(heading, telling.length),
        choices: [
          { value: 'take over', label: 'Take it over' },
          { value: 'leave', label: 'Leave the ledger as it is' },
        ],
        blocks: false,
      });
  }
  const gone = new Set(known.flatMap(({ other }) => other?.gone ?? []));
  said.push(...[...gone].map((heading) => ({ row: null, sentence: assumed.columnGone(heading) })));
  return { questions, said };
}

/** Takes away what is asked, or wrong, of a row only because of new columns that are not taken over. */
export function hushColumns(row: NoteRow, input: NotesInput, context: FileContext): void {
  const without = (row.other?.added ?? []).filter((heading) => !takesColumn(heading, input.answers));
  if (without.length === 0) return;
  const said = ({ log }: NoteRow): string[] =>
    [...log.questions, ...log.problems].map(({ sentence }) => sentence);
  const kept = new Set(said(readAs(row, context, input.answers, without)));
  const hushed = new Set(
    said(readAs(row, context, input.answers, [])).filter((sentence) => !kept.has(sentence)),
  );
  const { questions, problems } = row.log;
  questions.splice(0, questions.length, ...questions.filter(({ sentence }) => !hushed.has(sentence)));
  problems.splice(0, problems.length, ...problems.filter(({ sentence }) => !hushed.has(sentence)));
}

/** Whether a row that is there already tells under a new column that its jar spoiled, which the ledger does not know. */
export function newlySpoiled(row: NoteRow, { ledger }: NotesInput): boolean {
  const uid = row.here ?? '';
  if (row.other === null || row.other.added.length === 0 || row.facts === null || ledger.mistaken.has(uid))
    return false;
  const { outcome } = row.facts;
  return outcome !== null && discardOf(outcome) !== null && ledger.factsOf(uid)?.spoiled === false;
}
