// Rows of jars → what they add to the ledger and change in it. What can't be, or hangs on what can't be, stays aside.
import { plain } from '../../quantities';
import type { NotesInput, NotesPlan, PlannedChange } from '../notes-plan';
import type { NoteRow } from '../rows/note-rows';
import type { CellContext } from '../rows/row-cells';
import type { KnownSeeds } from '../seeds/known-seeds';
import type { SourceMention } from '../seeds/seed-index';
import { answeredChange, askChanged, takeOver, takesOver } from './changes';
import { leaveImpossible, possibleChanges } from './impossible';
import { planJar } from './plan-jar';
import { linesBelow, refuseLoops, seededBy, seedsFirst, waitForSeeds, waitToTakeOver } from './seed-order';

export interface PlannedRows {
  readonly plan: NotesPlan;
  /** Rows of new jars. */
  readonly adding: readonly NoteRow[];
  /** Rows whose jar of the ledger changes, and those whose change a rule refused. */
  readonly changing: ReadonlySet<NoteRow>;
  readonly refused: ReadonlySet<NoteRow>;
}

/** Plans what rows add and change. */
export function planRows(
  rows: readonly NoteRow[],
  { byId }: KnownSeeds,
  context: CellContext,
  input: NotesInput,
): PlannedRows {
  refuseLoops(rows, byId);
  waitForSeeds(rows, byId);
  leaveImpossible(rows, byId, input);
  const adding = rows.filter(
    (row) => row.here === null && row.clash === null && row.repeats === null && row.log.problems.length === 0,
  );
  const sources = new NewSources(input.ledger.sources);
  const sourceOf = (source: SourceMention): string => sources.nameOf(source);
  const jars = seedsFirst(adding, byId).map((row) => planJar(row, byId, sourceOf, input));
  const wanted = wantedChanges(rows, byId, context, sourceOf, input);
  const changes = possibleChanges(jars, [...wanted.keys()], (change) => wanted.get(change), input);
  const changing = new Set(changes.flatMap((change) => wanted.get(change) ?? []));
  return {
    plan: { sources: sources.all(), jars, changes },
    adding,
    changing,
    refused: new Set([...wanted.values()].filter((row) => !changing.has(row))),
  };
}

/** What answers change of jars that are there, and the row that each is of. */
function wantedChanges(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
  context: CellContext,
  sourceOf: (source: SourceMention) => string,
  input: NotesInput,
): Map<PlannedChange, NoteRow> {
  const wanted = new Map<PlannedChange, NoteRow>();
  const seeded = seededBy(rows, byId);
  for (const row of rows) {
    const asWritten = () => planJar(row, byId, ({ name }) => name, input);
    // A row whose reading is the same as what came in before, only written otherwise, is here already.
    if (row.clash !== null && row.log.problems.length === 0) {
      const [, reading = ''] = asWritten().fingerprint.split(':');
      if (input.ledger.read.has(reading)) row.here = row.clash;
    }
    let change: PlannedChange | null = null;
    if (row.here !== null) change = answeredChange(row, input, context, asWritten);
    else if (row.clash !== null) {
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
  return wanted;
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
    }));
  }
}
