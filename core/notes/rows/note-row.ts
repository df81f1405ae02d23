// One row of a jar while the file is read, and what it is called.
import { exactDay } from '../../text/rough-days';
import type { Amount } from '../../ledger/basics';
import { jarLabel } from '../../lineage/labels';
import type { NotesInput, OwnCells } from '../notes-plan';
import { nameOfSeed, type SeedPart } from '../named-seeds';
import type { Row } from '../table/table-rows';
import type { Identity } from './identity';
import { type Cell, RowLog, type RowFacts } from './row-cells';

/** How the columns of a row differ from those under which it came in. */
export interface OtherColumns {
  /** Its headings that are new and under which it says something. */
  readonly added: readonly string[];
  /** Headings under which it said something and which the file has no more. */
  readonly gone: readonly string[];
  /** Which of the rows with the same cells it was. */
  readonly occurrence: number;
}

/** One row of a jar while the file is read. */
export interface NoteRow {
  /** Its line, and its letter where one line is several jars. */
  readonly id: string;
  readonly row: Row;
  readonly log: RowLog;
  readonly cells: readonly Cell[];
  readonly identity: Identity;
  readonly own: OwnCells;
  /** The year that a line above tells, where the row's own day has none. */
  readonly yearTold: number | null;
  readonly rawText: string;
  readonly raw: string;
  occurrence: number;
  /** uid of the jar it already is. */
  here: string | null;
  /** It was known only by the columns that were there before: which are new, or gone. */
  other: OtherColumns | null;
  /** It reads as it did when it came in. */
  readSame: boolean;
  /** The label is taken in the ledger by a jar this row is not, or not any more. */
  clash: string | null;
  repeats: number | null;
  /** It names no letter: which jar it changed from is told by its day and place alone. */
  guessed: boolean;
  /** It changed, and the keeper said to take it over. */
  taken: boolean;
  facts: RowFacts | null;
  seeds: { part: SeedPart; amount: Amount | null }[];
}

/** A row before anything is known of it but what stands in it. */
export const newRow = (
  known: Pick<NoteRow, 'id' | 'row' | 'log' | 'cells' | 'identity' | 'own' | 'yearTold'>,
  rawText: string,
  hash: NotesInput['hash'],
): NoteRow => ({
  ...known,
  rawText,
  raw: hash(rawText),
  occurrence: 1,
  here: null,
  other: null,
  readSame: false,
  clash: null,
  repeats: null,
  guessed: false,
  taken: false,
  facts: null,
  seeds: [],
});

/** A row as it was collected, for another reading to go on from. */
export function copyOf(row: NoteRow): NoteRow {
  const log = new RowLog(row.log.row);
  log.take(row.log);
  return { ...row, log, identity: { ...row.identity }, seeds: [] };
}

/** Whether the ledger has no jar that a row is, or goes by the label of. */
export const isNew = ({ here, clash }: NoteRow): boolean => here === null && clash === null;
/** Whether a row is left aside: its jar would be new, and something is wrong with it. */
export const isAside = (row: NoteRow): boolean => isNew(row) && row.log.problems.length > 0;
/** Whether a row adds a jar, as far as is known. */
export const isAdded = (row: NoteRow): boolean =>
  isNew(row) && row.repeats === null && row.log.problems.length === 0;

/** Puts an item with the others of its key. */
export function putTo<Key, Item>(groups: Map<Key, Item[]>, key: Key, item: Item): void {
  const there = groups.get(key);
  if (there) there.push(item);
  else groups.set(key, [item]);
}

export const seedNames = ({ seeds }: NoteRow): string[] => seeds.map(({ part }) => nameOfSeed(part.from));
export const labelOf = ({ identity }: NoteRow): string =>
  jarLabel(
    {
      madeOn: exactDay(identity),
      about: identity.day,
      word: identity.word,
      letter: identity.letter ?? '?',
    },
    true,
  );
