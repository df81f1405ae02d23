// Rows of jars that are in the ledger already: how a changed row differs, what is asked about it, and what an answer changes.
import { exactDay } from '../../text/rough-days';
import { discardOf } from '../../safety/take-out';
import { readFacts, spelledAlike } from '../rows/row-facts';
import { plain, tidy } from '../../quantities/quantities';
import type { OwnCells, LedgerFacts, LedgerView, NotesInput, PlannedChange, PlannedJar } from '../notes-plan';
import { type FileContext, RowLog } from '../rows/row-cells';
import { hasTrait } from '../meanings';
import { labelOf, type NoteRow, seedNames } from '../rows/note-row';
import { answersOf } from './plan-jar';
import { ANOTHER } from '../rows/same-place';
import { headingKey } from '../rows/same-row';
import { question, quoted } from '../notes-says';

/** Questions whose answer changes what a row is taken to mean; their answers are kept with the row. */
const ANSWERABLE = ['set', 'thrown', 'sign', 'bubbles', 'slime', 'thing', 'fibre', 'each', 'sum'] as const;
/** Of these, the ones about how much of each seed. */
const OF_AMOUNTS: readonly string[] = ['each', 'sum'];

/** Goes into `answers`; where one line is several jars, with the jar's letter. */
const changedId = ({ id }: NoteRow): string => id.replace(/^row:/, 'changed:');

/** Whether the keeper said to take a changed row over. */
export const takesOver = (row: NoteRow, answers: NotesInput['answers']): boolean =>
  (answers[changedId(row)] ?? answers[`changed:${row.row.line}`])?.trim().toLowerCase() === 'take over';

/** How a row differs from the jar that is there, in words. What the row leaves blank is kept, and said to be. */
function differencesOf(row: NoteRow, now: LedgerFacts, spoiledDiffers: boolean, urgent: boolean): string[] {
  const differences: string[] = [];
  const { facts } = row;
  if (!facts) return differences;
  const compare = (name: string, before: string | number | null, after: string | number | null): void => {
    if (String(before ?? '').toLowerCase() === String(after ?? '').toLowerCase()) return;
    const blank = after === null || after === '';
    differences.push(
      `${name} ${blank ? 'blank' : after} here, ${before === null || before === '' ? 'blank' : before} in the ledger${blank ? ' (which keeps it)' : ''}`,
    );
  };
  const degrees = (value: number | undefined | null): number | null =>
    value === undefined || value === null ? null : Number(value.toFixed(1));
  compare('hours', now.hours, facts.hours);
  compare('temperature in °C', degrees(now.temperature), degrees(facts.temperature?.value));
  compare('milk', now.milk, facts.milk);
  compare('set', now.setWord, facts.outcome?.setWord ?? null);
  compare('pH', now.ph, facts.outcome?.ph ?? null);
  compare('additions', now.additions.join(' + '), facts.additions.map(({ name }) => name).join(' + '));
  compare('seeds', now.seeds.toSorted().join(' + '), seedNames(row).toSorted().join(' + '));
  if (spoiledDiffers) differences.push('spoiled no here, yes in the ledger (which keeps it)');
  // Words that tell of spoilage are what the urgent question is about already.
  if (differences.length === 0 && !urgent) compare('note', now.note, row.log.noteText() || null);
  return differences;
}

/** Cells of rows as they last came in, by jar; gathered once for a reading. */
const gathered = new WeakMap<LedgerView, ReadonlyMap<string, OwnCells>>();

function cellsBefore(ledger: LedgerView, uid: string): OwnCells {
  const there =
    gathered.get(ledger) ??
    new Map(
      ledger.forms.flatMap(({ rows }) => [...rows()].map(({ uid: jar, cells }) => [jar, cells] as const)),
    );
  gathered.set(ledger, there);
  return there.get(uid) ?? {};
}

/** Which cells of a row are not those that came in: what records don't compare, as an amount or the vessel. */
function differingCells(now: OwnCells, before: OwnCells): string[] {
  const byKey = (cells: OwnCells): Map<string, string> =>
    new Map(Object.entries(cells).map(([heading, text]) => [headingKey(heading), tidy(text).trim()]));
  const [mine, theirs] = [byKey(now), byKey(before)];
  const names = new Map(
    [...Object.keys(before), ...Object.keys(now)].map((name) => [headingKey(name), name]),
  );
  const said = (text: string | undefined): string => (text === undefined ? 'blank' : `“${quoted(text)}”`);
  return [...names].flatMap(([key, name]) =>
    plain(mine.get(key) ?? '') === plain(theirs.get(key) ?? '')
      ? []
      : [
          `${name === '' ? 'the day' : `“${name}”`} ${said(mine.get(key))} here, ${said(theirs.get(key))} when it came in`,
        ],
  );
}

/**
 * Asks about a row whose jar is in the ledger already and reads otherwise now. Newly told spoilage is urgent.
 * @param hanging the lines of this file whose jars descend from it
 */
export function askChanged(row: NoteRow, input: NotesInput, hanging: () => readonly number[]): void {
  const { ledger, answers } = input;
  const uid = row.clash ?? '';
  const taken = takesOver(row, answers);
  // What else the row would be asked counts only once it is taken over.
  const own = taken ? [...row.log.questions] : [];
  row.log.questions.length = 0;
  const now = ledger.factsOf(uid);
  const outcome = row.facts?.outcome ?? null;
  const spoiled = outcome !== null && discardOf(outcome) !== null;
  const planned = ledger.jars.some((jar) => jar.uid === uid && jar.planned);
  const urgent = now !== null && spoiled && !now.spoiled && !planned;
  if (!ledger.fromNotes.has(uid) && !urgent) {
    row.log.ask('same label', question.byHand(labelOf(row)));
    return;
  }
  const differences = now ? differencesOf(row, now, now.spoiled && !spoiled, urgent) : [];
  const told = differences.length > 0 ? differences : differingCells(row.own, cellsBefore(ledger, uid));
  const spoiledNow = (): string =>
    question.spoiledNow(
      row.row.line,
      labelOf(row),
      outcome?.signs ?? [],
      now?.setWord ?? null,
      differences,
      hanging(),
    );
  const sentence = row.guessed
    ? urgent
      ? `${spoiledNow()} ${question.byPlace(labelOf(row))}`
      : question.changedByPlace(labelOf(row), told)
    : urgent
      ? spoiledNow()
      : question.changed(labelOf(row), told);
  row.log.questions.push(
    {
      id: changedId(row),
      row: row.row.line,
      sentence,
      choices: [
        { value: 'take over', label: row.guessed ? 'The same jar: take it over' : 'Take it over' },
        ...(row.guessed ? [{ value: ANOTHER, label: 'Another jar: bring it in' }] : []),
        { value: 'leave', label: 'Leave the ledger as it is' },
      ],
      blocks: false,
      ...(urgent ? { urgent } : {}),
    },
    ...own,
  );
}

/** A changed row as the keeper said to take it over. */
export const takeOver = (row: NoteRow, planned: PlannedJar): PlannedChange => ({
  uid: row.clash ?? '',
  planned,
  whole: true,
  before: null,
  columns: false,
  amounts: true,
});

/** Whether the keeper said to take a new column over for the rows that are there. */
export const takesColumn = (heading: string, answers: NotesInput['answers']): boolean =>
  answers[`column:${heading}`]?.trim().toLowerCase() === 'take over';

/** A row as it reads with some of its columns and answers only. */
export function readAs(
  row: NoteRow,
  context: FileContext,
  answers: NotesInput['answers'],
  without: readonly string[],
): NoteRow {
  const log = new RowLog(row.row.line);
  const cells = row.cells.filter(({ column }) => !without.includes(column.heading));
  const facts = readFacts(cells, log, { ...context, answers }, exactDay(row.identity));
  return { ...row, cells, facts: spelledAlike(facts, new Map(context.names)), log };
}

/** Of a row that is there already: how it read before its new answers and columns, and how it reads with them. */
export interface Again {
  readonly before: NoteRow;
  readonly now: NoteRow;
  /** New headings that are not taken over. */
  readonly without: readonly string[];
  readonly columns: boolean;
  readonly amounts: boolean;
}

/** What newly answered questions and newly taken columns of a row that is there already change, or null where none was. */
export function readAgain(row: NoteRow, input: NotesInput, context: FileContext): Again | null {
  if ((row.here ?? '') === '' || row.repeats !== null) return null;
  const { answers } = input;
  const { line } = row.row;
  const old = input.ledger.answered.get(row.here ?? '');
  const told = answersOf(line, answers);
  const fresh = ANSWERABLE.filter((kind) => told.has(kind) && old?.has(kind) !== true);
  const added = row.other?.added ?? [];
  const without = added.filter((heading) => !takesColumn(heading, answers));
  const columns = without.length < added.length;
  if (fresh.length === 0 && !columns) return null;
  const unanswered = Object.fromEntries(
    Object.entries(answers).filter(([id]) => !fresh.some((kind) => id === `${kind}:${line}`)),
  );
  const ofSeeds = row.cells.some(
    ({ column }) =>
      added.includes(column.heading) &&
      !without.includes(column.heading) &&
      hasTrait(column.meaning, 'of seeds'),
  );
  return {
    before: readAs(row, context, unanswered, added),
    now: readAs(row, context, answers, without),
    without,
    columns,
    amounts: fresh.some((kind) => OF_AMOUNTS.includes(kind)) || ofSeeds,
  };
}

/** Whether a question of a row that is there already is still open. */
export function staysOpen(row: NoteRow, id: string, input: NotesInput): boolean {
  const kind = id.slice(0, id.indexOf(':'));
  return row.repeats === null && input.ledger.answered.get(row.here ?? '')?.has(kind) !== true;
}
