// What a keeper is shown before anything comes in: columns, rows, problems, questions, assumptions.
import type { NotesPreview } from '../../contract';
import type { Conventions } from '../conventions/file-habits';
import type { Layout } from '../layout/column-meanings';
import { NO_LINE } from '../layout/heading-lines';
import type { NotesInput } from '../notes-plan';
import type { NoteRow } from '../rows/note-row';
import type { FileSays } from '../said';
import { staysOpen } from './changes';
import { columnsOf } from './columns-said';
import type { PlannedRows } from './plan-rows';
import { fileLevelSays, previewRow, spoonsSaid, withinBudget } from './telling';

/** The preview of a plan. @param about what is said about the file as a whole */
export function previewOf(
  rows: readonly NoteRow[],
  { adding, changing, refused, brought }: PlannedRows,
  layout: Layout,
  conventions: Conventions,
  about: FileSays,
  input: NotesInput,
): NotesPreview {
  const spoons = spoonsSaid([...adding, ...[...changing].filter((row) => row.taken)], conventions);
  input.look?.();
  const isNew = (row: NoteRow): boolean => row.here === null && (row.clash === null || row.taken);
  const whole: NotesPreview = {
    columns: columnsOf(layout, rows),
    rows: [
      ...layout.emptyLines.map((row) => ({
        row,
        state: 'empty' as const,
        label: null,
        seeds: [],
        says: 'Nothing stands here.',
      })),
      ...rows.map((row) => {
        input.look?.();
        return previewRow(row, changing.has(row));
      }),
    ].toSorted((a, b) => a.row - b.row),
    problems: rows
      .filter((row) => (isNew(row) && row.repeats === null) || refused.has(row))
      .flatMap((row) => row.log.problems),
    questions: [
      ...about.questions,
      ...(spoons.question ? [spoons.question] : []),
      ...rows.flatMap((row) =>
        row.log.questions.filter(({ id }) => row.here === null || staysOpen(row, id, input)),
      ),
    ]
      .toSorted((a, b) => Number(b.urgent ?? false) - Number(a.urgent ?? false))
      .map((one) => {
        const brings = brought.get(one.id);
        return { ...one, choices: [...one.choices], ...(brings === undefined ? {} : { brings }) };
      }),
    assumptions: [
      ...about.said,
      ...spoons.said,
      ...fileLevelSays(adding, layout),
      ...rows.filter(isNew).flatMap((row) => row.log.assumptions),
    ].map((one) => (one.row === NO_LINE ? { ...one, row: null } : one)),
  };
  return withinBudget(whole, input.text.length);
}
