// The columns of a table while their meanings are looked for, and what is said of them.
import type { NoteColumn } from '../../contract';
import type { Question, Said } from '../said';
import { assumed } from '../notes-says';
import type { Row, Table } from '../table/table-rows';
import type { HeadingMeaning } from './headings';
import type { Marks } from './taster-marks';

/** One column while its meaning is looked for. */
export interface Draft {
  readonly index: number;
  readonly name: string;
  /** What stands in it, blanks left out. */
  readonly cells: readonly string[];
  /** Matched by the keeper. */
  readonly chosen: boolean;
  found: HeadingMeaning | null;
  meaning: NoteColumn | null;
  /** Its heading is a known one, and yet it is a second one or proven otherwise: kept in the note. */
  spare: boolean;
  /** What stands in it told what it means, and no heading. */
  fromCells: boolean;
  additionName: string | null;
  marks: Marks | null;
}

/** All columns while their meanings are looked for, and what is said of them. */
export interface Drafts {
  readonly all: readonly Draft[];
  readonly said: Said[];
  readonly questions: Question[];
  /** Whether the table has headings of its own. */
  readonly headed: boolean;
  /** The first rows. */
  readonly rows: readonly Row[];
  readonly look: Table['look'];
}

export const has = ({ all }: Drafts, meaning: NoteColumn): boolean =>
  all.some((one) => one.meaning === meaning);

export const saying = ({ said }: Drafts, sentence: string): number => said.push({ row: null, sentence });

/** Says that what stands in a column, and not its heading, told what it is. */
export function sayFromCells(drafts: Drafts, draft: Draft, meaning: NoteColumn): void {
  draft.fromCells = true;
  saying(drafts, assumed.column(draft.name, meaning));
}

/** "No." above 1, 2, 3 and so on, or back from the last: it counts rows, where another column names the jars. */
export const counts = ({ meaning }: HeadingMeaning, cells: readonly string[]): boolean =>
  meaning === 'jar' &&
  cells.length > 3 &&
  new Set(cells.slice(1).map((cell, at) => Number(cell) - Number(cells[at]))).size === 1 &&
  Math.abs(Number(cells[1]) - Number(cells[0])) === 1;
