// A keeper's spreadsheet, from text to what it would add: text → table → layout → conventions → rows → plan.
import { plain } from '../quantities/quantities';
import { readConventions } from './conventions/file-conventions';
import { readLayout, type Layout } from './layout/column-meanings';
import { runsSideways } from './layout/heading-lines';
import type { NotesInput, NotesPlan, NotesReading } from './notes-plan';
import { askColumns } from './plan/new-columns';
import { planRows } from './plan/plan-rows';
import { previewOf } from './plan/preview';
import { collectRows, nameRows, type NoteRow } from './rows/note-rows';
import { readFacts } from './rows/row-facts';
import { RowLog, type CellContext } from './rows/row-cells';
import type { FileSays, Said } from './said';
import { knownSeeds, type Taught } from './seeds/known-seeds';
import { seedRow } from './seeds/seed-row';
import { readTable, type Table } from './table/text-table';

/** Names that a file teaches, until it teaches no more: a second reading finds nothing that the first did not. */
const MOST_LESSONS = 8;

/** Reads a file as far as it can be: what it adds, and everything that is to be said about it. */
export function readNotes(input: NotesInput): NotesReading {
  const table = { ...readTable(input.text, input.step, input.separator ?? null), look: input.look };
  const layout = readLayout(table, input.mapping, input.answers);
  const code = whyNotNotes(table, layout);
  if (code !== null)
    return { ok: false, code, params: { headings: layout.columns.map(({ heading }) => heading) } };
  const { conventions, says } = readConventions(layout, table.separator, input);
  const taught: Taught = { products: new Map(), cultures: new Set() };
  for (let lesson = 1; ; lesson += 1) {
    const said: Said[] = [...layout.assumptions, ...says.said];
    const context: CellContext = { conventions, answers: input.answers, names: new Map() };
    const rows = namedRows(layout, context, input, said);
    const known = knownSeeds(rows, conventions, input, taught);
    for (const [at, row] of rows.entries()) {
      input.step?.(at, rows.length);
      row.facts = readFacts(row.cells, row.log, context, row.identity.day);
      seedRow(row, known, conventions, input);
    }
    const planned = planRows(rows, known, context, input);
    const fresh = planned.plan.sources.filter(({ name }) => !known.named.has(plain(name)));
    if (lesson < MOST_LESSONS && learnt(fresh, taught)) continue;
    const columns = askColumns(rows, layout, context, input);
    const about: FileSays = {
      said: [...said, ...columns.said],
      questions: [...layout.questions, ...says.questions, ...columns.questions],
    };
    return {
      ok: true,
      preview: previewOf(rows, planned, layout, conventions, about, input),
      plan: { ...planned.plan, headings: layout.columns.map(({ heading }) => heading) },
    };
  }
}

/** Why a table is no notes of jars, or null. */
function whyNotNotes(
  table: Table,
  { columns, rows, tabular }: Layout,
): (NotesReading & { ok: false })['code'] | null {
  const meanings = new Set(columns.map(({ meaning }) => meaning));
  if (runsSideways(table)) return 'notes sideways';
  if (rows.length === 0) return 'notes empty';
  if (!(['date', 'start', 'label', 'jar'] as const).some((meaning) => meanings.has(meaning)))
    return tabular ? 'notes without days' : 'notes not a table';
  if (!meanings.has('seed')) return tabular ? 'notes without seeds' : 'notes not a table';
  return null;
}

/** The rows of jars, each with its day and letter, and the jar of the ledger that it is. */
function namedRows(layout: Layout, context: CellContext, input: NotesInput, said: Said[]): NoteRow[] {
  const rows = collectRows(layout, context.conventions, input, said);
  nameRows(rows, layout, input, ({ row, cells, identity }) => {
    input.look?.();
    return readFacts(cells, new RowLog(row.line), { ...context, names: new Map() }, identity.day);
  });
  return rows;
}

/** Takes in what a plan teaches. @returns whether any of it was new */
function learnt(sources: NotesPlan['sources'], { products, cultures }: Taught): boolean {
  const before = products.size + cultures.size;
  for (const { name, receivedFrom } of sources) {
    if (receivedFrom !== null) cultures.add(plain(name));
    else if (!products.has(plain(name))) products.set(plain(name), name);
  }
  return products.size + cultures.size > before;
}
