// Rows of jars → what they add to the ledger and change in it. What can't be, or hangs on what can't be, stays aside.
import { plain } from '../../quantities/quantities';
import type { NotesInput, NotesPlan, PlannedChange, PlannedJar } from '../notes-plan';
import type { NoteRow } from '../rows/note-row';
import type { FileContext } from '../rows/row-cells';
import type { KnownSeeds } from '../seeds/known-seeds';
import type { SourceMention } from '../named-seeds';
import { askChanged, readAgain, takeOver, takesOver } from './changes';
import { leaveImpossible, possibleChanges } from './impossible';
import { hushColumns, newlySpoiled } from './new-columns';
import { withChoices } from './earlier-choices';
import { planJar, withSources } from './plan-jar';
import { askSpoiledSeeds } from './spoiled-seeds';
import { rowsBrought } from './rows-brought';
import { linesBelow, refuseLoops, seededBy, waitForSeeds, waitToTakeOver } from './seed-order';

export interface PlannedRows {
  readonly plan: Omit<NotesPlan, 'headings' | 'spoons'>;
  /** Rows of new jars. */
  readonly adding: readonly NoteRow[];
  /** Rows whose jar of the ledger changes, and those whose change a rule refused. */
  readonly changing: ReadonlySet<NoteRow>;
  readonly refused: ReadonlySet<NoteRow>;
  /** How many rows that stay aside one answer would bring in, by the question's id. */
  readonly brought: ReadonlyMap<string, number>;
}

/** Plans what rows add and change. */
export function planRows(
  rows: readonly NoteRow[],
  { byId }: KnownSeeds,
  context: FileContext,
  input: NotesInput,
): PlannedRows {
  refuseLoops(rows, byId);
  waitForSeeds(rows, byId);
  askSpoiledSeeds(rows, byId, input);
  const possible = leaveImpossible(rows, byId, input);
  const adding = rows.filter((row) => possible.has(row));
  const sources = new NewSources(input.ledger.sources);
  const sourceOf = (source: SourceMention): string => sources.nameOf(source);
  const jars = Array.from(possible, ([row, jar]) => withSources(jar, row, sourceOf));
  const { wanted, refused } = wantedChanges(rows, byId, context, sourceOf, input);
  const changes = possibleChanges(jars, [...wanted.keys()], (change) => wanted.get(change), input);
  const changing = new Set(changes.flatMap((change) => wanted.get(change) ?? []));
  return {
    plan: { sources: sources.all(), jars: withChoices(jars, input), changes },
    adding,
    changing,
    brought: rowsBrought(rows, byId),
    refused: new Set([...refused, ...[...wanted.values()].filter((row) => !changing.has(row))]),
  };
}

/** What an answer or a new column changes of the jar that a row already is; null where nothing. */
function changeAgain(
  row: NoteRow,
  planned: (row: NoteRow, without?: readonly string[]) => PlannedJar,
  context: FileContext,
  input: NotesInput,
): PlannedChange | null {
  const again = readAgain(row, input, context);
  hushColumns(row, input, context);
  if (!again) return null;
  return {
    uid: row.here ?? '',
    planned: planned(again.now, again.without),
    before: planned(again.before),
    whole: false,
    columns: again.columns,
    amounts: again.amounts,
  };
}

/** What answers change of jars that are there, and the row that each is of; rows whose new columns can't be taken over. */
function wantedChanges(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
  context: FileContext,
  sourceOf: (source: SourceMention) => string,
  input: NotesInput,
): { wanted: Map<PlannedChange, NoteRow>; refused: NoteRow[] } {
  const wanted = new Map<PlannedChange, NoteRow>();
  const refused: NoteRow[] = [];
  const planned = (row: NoteRow, without: readonly string[] = []): PlannedJar =>
    planJar(row, byId, ({ name }) => name, input, without);
  const readsAsBefore = (row: NoteRow): boolean => input.ledger.read.has(planned(row).noted.read);
  const seeded = seededBy(rows, byId);
  for (const row of rows) {
    input.look?.();
    // A row whose reading is the same as what came in before, only written otherwise, is here already.
    if (row.clash !== null && row.log.problems.length === 0 && readsAsBefore(row)) row.here = row.clash;
    if (row.other !== null) row.readSame = readsAsBefore(row);
    if (newlySpoiled(row, input)) Object.assign(row, { clash: row.here, here: null });
    let change: PlannedChange | null = null;
    if (row.here !== null) {
      change = changeAgain(row, planned, context, input);
      if (change?.columns && row.log.problems.length > 0) {
        refused.push(row);
        change = null;
      }
    } else if (row.clash !== null) {
      askChanged(row, input, () => linesBelow(row, seeded));
      row.taken =
        row.log.questions.some(({ id }) => id.startsWith('changed')) && takesOver(row, input.answers);
      if (row.taken) waitToTakeOver(row, byId);
      if (row.taken && row.log.problems.length === 0) {
        change = takeOver(row, planJar(row, byId, sourceOf, input));
        // The question is answered; it comes first of the row's.
        row.log.questions.shift();
      }
    }
    if (change !== null) wanted.set(change, row);
  }
  return { wanted, refused };
}

/** Sources that a plan names and the ledger has not, each once. */
class NewSources {
  readonly #known: ReadonlyMap<string, string>;
  readonly #new = new Map<string, { name: string; source: SourceMention; mixed: boolean }>();

  constructor(known: NotesInput['ledger']['sources']) {
    this.#known = new Map(known.map(({ name }) => [plain(name), name]));
  }

  /** The name a source goes by: the ledger's spelling, else the first in the notes. */
  nameOf(source: SourceMention): string {
    const key = plain(source.name);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const there = this.#new.get(key) ?? { name: source.name.slice(0, 200), source, mixed: false };
    this.#new.set(key, there);
    if (there.source.form === null && source.form !== null) there.source = source;
    else if (source.form !== null && there.source.form !== source.form) there.mixed = true;
    return there.name;
  }

  all(): NotesPlan['sources'] {
    return [...this.#new.values()].map(({ name, source, mixed }) => ({
      name,
      form: mixed ? null : source.form,
      receivedFrom: source.culture ? name : null,
      knownGenerations: source.generations ?? null,
    }));
  }
}
