// Rows that were seeded from a jar which the file itself says spoiled or was thrown out: whether it was that jar is asked, with its
// mates to choose from, and what hangs on it is said before anything comes in.
import { dayName } from '../../text/rough-days';
import type { NotesInput } from '../notes-plan';
import { question } from '../notes-says';
import { isAdded, labelOf, type NoteRow, putTo } from '../rows/note-row';
import { filled } from '../rows/row-cells';

const spoiled = ({ facts }: NoteRow): boolean =>
  facts?.outcome != null && (facts.outcome.spoiledSaid || facts.outcome.signs.length > 0);

/** Rows that add a jar: by the row that seeded them, and by their batch. */
function related(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
  look: NotesInput['look'],
): { readonly children: ReadonlyMap<NoteRow, NoteRow[]>; readonly batches: ReadonlyMap<string, NoteRow[]> } {
  const [children, batches] = [new Map<NoteRow, NoteRow[]>(), new Map<string, NoteRow[]>()];
  for (const row of rows) {
    look?.();
    if (!isAdded(row)) continue;
    putTo(batches, batchOf(row), row);
    for (const { part } of row.seeds) {
      const seed = 'jar' in part.from ? byId.get(part.from.jar.id) : undefined;
      if (seed) putTo(children, seed, row);
    }
  }
  return { children, batches };
}
const batchOf = ({ identity }: NoteRow): string => `${dayName(identity)}|${identity.word ?? ''}`;

/** How many rows descend from one. */
function hangingOn(row: NoteRow, children: ReadonlyMap<NoteRow, readonly NoteRow[]>): number {
  const found = new Set<NoteRow>();
  const open = [row];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (const child of children.get(next) ?? [])
      if (!found.has(child)) {
        found.add(child);
        open.push(child);
      }
  return found.size;
}

/** Other jars of a row's batch that did not spoil, as a seed is written: "2026-01-12 b". */
const matesOf = (
  row: NoteRow,
  batch: readonly NoteRow[],
): { readonly value: string; readonly label: string }[] =>
  batch
    .filter(
      (one) => one !== row && one.identity.day !== null && one.identity.between === null && !spoiled(one),
    )
    .map((one) => ({
      value: [one.identity.day, one.identity.word, one.identity.letter].filter(Boolean).join(' '),
      label: labelOf(one),
    }));

/** Asks of each row whether its seed was the jar that spoiled; the answer stands in for its cell. */
export function askSpoiledSeeds(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
  { answers, look }: Pick<NotesInput, 'answers' | 'look'>,
): void {
  const { children, batches } = related(rows, byId, look);
  for (const [seed, seeded] of children) {
    if (!isAdded(seed) || !spoiled(seed)) continue;
    const hanging = hangingOn(seed, children);
    for (const row of seeded) {
      const [cell, another] = filled(row.cells, 'seed');
      const id = `cell:${row.row.line}:${cell?.column.heading ?? ''}`;
      const asWritten = { value: cell?.text ?? '', label: 'It was this one' };
      if (
        !cell ||
        another ||
        row.seeds.length > 1 ||
        row.id !== `row:${row.row.line}` ||
        answers[id] !== undefined
      )
        continue;
      row.log.questions.push({
        id,
        row: row.row.line,
        sentence: question.seedSpoiled(labelOf(seed), hanging),
        choices: [asWritten, ...matesOf(seed, batches.get(batchOf(seed)) ?? [])],
        blocks: false,
      });
    }
  }
}
