// A keeper's spreadsheet, from text to what it would add: text → table → layout → conventions → rows → plan.
import type { NoteColumn } from '../contract';
import { cellDay, findDay } from '../text/days';
import { exactDay } from '../text/rough-days';
import { plain } from '../quantities/quantities';
import { readConventions } from './conventions/file-conventions';
import type { Conventions } from './conventions/file-habits';
import { KeptStages } from './kept-stages';
import { tellsTime } from './layout/heading-lines';
import { type Column, readLayout, type Layout } from './layout/column-meanings';
import { hasTrait } from './meanings';
import type { NotesInput, NotesPlan, NotesReading } from './notes-plan';
import { askColumns } from './plan/new-columns';
import { MEANS, withEarlierChoices } from './plan/earlier-choices';
import { planRows } from './plan/plan-rows';
import { columnsOf } from './plan/columns-said';
import { previewOf } from './plan/preview';
import { writtenIn } from './plan/telling';
import { collectRows } from './rows/collect-rows';
import { nameRows } from './rows/name-rows';
import { copyOf, isNew, type NoteRow } from './rows/note-row';
import { readFacts, spelledAlike } from './rows/row-facts';
import { ALL_SUSPICIOUS } from './rows/outcomes';
import { RowLog, type CellContext, type FileContext, type RowFacts } from './rows/row-cells';
import type { FileSays, Question, Said } from './said';
import { columnSays, question } from './notes-says';
import { knownSeeds, wordsOfSeeds, type Taught } from './seeds/known-seeds';
import { saySources } from './seeds/ask-sources';
import { LAST_BEFORE } from './seeds/seed-by-name';
import { seedRow } from './seeds/seed-row';
import { readTable } from './table/text-table';

/** Names that a file teaches, until it teaches no more: a second reading finds nothing that the first did not. */
const MOST_LESSONS = 8;

/** Reads a file as far as it can be: what it adds, and everything that is to be said about it. */
export function readNotes(asked: NotesInput): NotesReading {
  const given = { ...asked, answers: { ...meaningsKept(asked.ledger), ...asked.answers } };
  const kept = given.stages ?? new KeptStages();
  kept.look = given.look;
  const separator = given.separator ?? null;
  const table = kept.take('table', [given.text, separator], () => {
    kept.forget();
    // What is kept asks the reading that goes on from it.
    return { ...readTable(given.text, given.step, separator), look: () => kept.look?.() };
  });
  const layoutBy = (stage: string, by: NotesInput): Layout =>
    kept.take(
      stage,
      [table, JSON.stringify(by.mapping), answersTo(/^(?:means:|which )/, by), by.title ?? ''],
      () => readLayout(table, by),
    );
  const alone = layoutBy('layout', given);
  const names = alone.columns.map(({ heading }) => heading);
  const { said: ofEarlier, ...choices } = withEarlierChoices(names, given, given.ledger.choices);
  const input = { ...given, ...choices };
  const layout = ofEarlier.length === 0 ? alone : layoutBy('layout with earlier choices', input);
  const code = whyNotNotes(layout);
  const headings = layout.columns.map(({ heading }) => heading);
  if (code !== null) {
    const question = askWhich(code, layout);
    return question ? onlyAsked(question, layout) : { ok: false, code, params: { headings } };
  }
  const { conventions, says } = kept.take(
    'conventions',
    [layout, input.today, input.preferences.spoons, answersTo(/^(?:day order|spoons|unit:)/, input)],
    () => readConventions(layout, table.separator, input),
  );
  const collected = kept.take('rows', [layout, conventions, answersTo(/^cell:/, input)], (): Collected => {
    const about: Said[] = [];
    return { rows: collectRows(layout, conventions, input, about), said: about };
  });
  const words = kept.take('seeds', [collected], () => wordsOfSeeds(collected.rows, conventions, input.look));
  const factsOf = factsKept(kept, conventions, input);
  const taught: Taught = { products: new Map(), cultures: new Set() };
  for (let lesson = 1; ; lesson += 1) {
    const said: Said[] = [...ofEarlier, ...layout.assumptions, ...says.said];
    const context: FileContext = { conventions, answers: input.answers, names: new Map() };
    const rows = namedRows(collected, layout, context, input, said);
    const known = knownSeeds(rows, words, input, taught);
    for (const [at, row] of rows.entries()) {
      input.step?.(at, rows.length);
      row.facts = spelledAlike(factsOf(row), context.names);
      seedRow(row, known, conventions, input);
    }
    const planned = planRows(rows, known, context, input);
    const fresh = planned.plan.sources.filter(({ name }) => !known.named.has(plain(name)));
    if (lesson < MOST_LESSONS && learnt(fresh, taught)) continue;
    const columns = askColumns(rows, layout, context, input);
    const sources = saySources(known.open, input);
    const about: FileSays = {
      said: [...said, ...sources.said, ...columns.said],
      questions: [
        ...layout.questions.filter(({ id }) => asksOfNew(id, rows)),
        ...says.questions,
        ...sources.questions,
        ...askLetters(known.lettersAlone, input),
        ...columns.questions,
      ],
    };
    return {
      ok: true,
      preview: previewOf(rows, planned, layout, conventions, about, input),
      plan: { ...planned.plan, spoons: writtenIn(planned.adding, conventions), headings },
    };
  }
}

/** What headings of files before were said to mean: kept with the first row that came in with the answer. */
const meaningsKept = ({ answered }: NotesInput['ledger']): Record<string, string> =>
  Object.fromEntries(
    [...answered.values()].flatMap((answers) => [...answers].filter(([id]) => id.startsWith(MEANS))),
  );

/** The rows of jars, nothing known of them yet but their cells, and what is said of the other lines. */
interface Collected {
  readonly rows: readonly NoteRow[];
  readonly said: readonly Said[];
}

/** The answers to some questions, as one text. */
const answersTo = (ids: RegExp, { answers }: NotesInput): string =>
  JSON.stringify(Object.entries(answers).filter(([id]) => ids.test(id)));

/** What the cells of a row tell, said in its log: read once for the same cells and answers. */
function factsKept(
  kept: KeptStages,
  conventions: Conventions,
  { answers }: NotesInput,
): (row: NoteRow) => RowFacts {
  const told = new Map<number, string>();
  for (const [id, answer] of Object.entries(answers)) {
    const line = Number(/^[^:]+:(\d+)/.exec(id)?.[1] ?? 0);
    told.set(line, `${told.get(line) ?? ''}${JSON.stringify([id, answer])}`);
  }
  return (row) => {
    const { line } = row.row;
    const cells = row.cells.flatMap(({ column, text }): unknown[] => [column, text]);
    const day = exactDay(row.identity);
    const of = [conventions, day, told.get(line), answers[ALL_SUSPICIOUS], ...cells];
    const read = kept.take(row.id, of, () => {
      const log = new RowLog(line);
      return { log, facts: readFacts(row.cells, log, { conventions, answers }, day) };
    });
    row.log.take(read.log);
    return read.facts;
  };
}

/** Why a table is no notes of jars, or null. */
function whyNotNotes({ columns, rows, tabular }: Layout): (NotesReading & { ok: false })['code'] | null {
  const meanings = new Set(columns.map(({ meaning }) => meaning));
  if (rows.length === 0) return 'notes empty';
  // Days on which jars were taken out, and no others: on which they were made is asked.
  const tellsDay = ({ meaning, index }: Column): boolean =>
    meaning === 'date' || meaning === 'label' || meaning === 'start' ||
    (meaning === 'jar' && rows.some(({ cells }) => findDay(cells[index] ?? '') !== null)); // prettier-ignore
  const out = columns.find(({ meaning }) => meaning === 'end');
  if (out && rows.some(({ cells }) => cellDay(cells[out.index] ?? '') !== null))
    if (!columns.some(tellsDay) && !rows.some(tellsTime)) return 'notes without days';
  if (![...meanings].some((meaning) => hasTrait(meaning, 'day')))
    return tabular ? 'notes without days' : 'notes not a table';
  if (!meanings.has('seed')) return tabular ? 'notes without seeds' : 'notes not a table';
  return null;
}

/** What a heading means is asked only where it stands above something of a row that is not in the ledger yet. */
const asksOfNew = (id: string, rows: readonly NoteRow[]): boolean =>
  !id.startsWith(MEANS) || rows.some((row) => isNew(row) && row.own[id.slice(MEANS.length)] !== undefined);

/** What tells the row's own jar is no seed of it. */
const NAMES_THE_JAR: ReadonlySet<NoteColumn> = new Set(['date', 'jar', 'label']);

/** Which column tells the days, or the seeds, where none is known to and one may; else null. */
function askWhich(code: (NotesReading & { ok: false })['code'], { columns, rows }: Layout): Question | null {
  const days = code === 'notes without days';
  if (!days && code !== 'notes without seeds') return null;
  const may = columns.filter(({ meaning, known, index }) => {
    if (known && NAMES_THE_JAR.has(meaning)) return false;
    const cells = rows.map((row) => row.cells[index] ?? '').filter((cell) => cell.trim() !== '');
    return cells.filter((cell) => (days ? /\d/ : /\p{L}/u).test(cell)).length > cells.length / 2;
  });
  if (may.length === 0) return null;
  // Those of which nobody knows anything else come first.
  const open = ({ meaning, known }: Column): boolean => !known || meaning === 'note';
  const choices = [...may.filter(open), ...may.filter((column) => !open(column))].map(({ heading }) => ({
    value: heading,
    label: heading,
  }));
  return {
    id: days ? 'which days' : 'which seeds',
    row: null,
    sentence: question.whichColumn(days),
    choices,
    blocks: true,
  };
}

/** Nothing is read before a question is answered. */
const onlyAsked = (asked: Question, layout: Layout): NotesReading => ({
  ok: true,
  plan: {
    sources: [],
    jars: [],
    changes: [],
    spoons: null,
    headings: layout.columns.map(({ heading }) => heading),
  },
  preview: {
    columns: columnsOf(layout).map((column) => ({ ...column, says: columnSays.later() })),
    rows: [],
    problems: [],
    questions: [{ ...asked, choices: [...asked.choices] }],
    assumptions: [...layout.assumptions],
  },
});

/** The rows of jars, each with its day and letter, and the jar of the ledger that it is. */
function namedRows(
  { rows: collected, said: about }: Collected,
  layout: Layout,
  context: CellContext,
  input: NotesInput,
  said: Said[],
): NoteRow[] {
  // Spread out at once, so many would be more than the stack holds.
  for (const one of about) said.push(one);
  const rows = collected.map((row) => {
    input.look?.();
    return copyOf(row);
  });
  nameRows(rows, layout, input, ({ row, cells, identity }) => {
    input.look?.();
    return readFacts(cells, new RowLog(row.line), context, exactDay(identity));
  });
  return rows;
}

/** Asks once what a letter alone means as a seed, where several jars have it. */
function askLetters([first, ...others]: readonly NoteRow[], { answers }: NotesInput): Question[] {
  if (!first || answers['letter alone'] !== undefined) return [];
  const cell = first.cells.find(({ column, text }) => column.meaning === 'seed' && text.trim() !== '');
  return [
    {
      id: 'letter alone',
      row: null,
      sentence: question.letterAlone(cell?.text.trim() ?? '', first.row.line, others.length),
      choices: [
        { value: LAST_BEFORE, label: 'The one made last before' },
        { value: 'leave', label: 'Leave these rows aside' },
      ],
      blocks: false,
    },
  ];
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
