// What a spreadsheet would add to a ledger. Owns the shapes between reading (core/notes) and writing (main/ledger/bring-in-notes.ts).
import type { NoteColumn, NotesPreview } from '../contract';
import type { Amount } from '../ledger/basics';
import type { DayRange } from '../quantities/day-ranges';
import type { ToldOutcome } from './told-outcome';
import type { Addition, Jar, Preferences, Seeding, Source } from '../ledger/records';
import type { Temperature } from '../ledger/basics';
import type { KeptStages } from './kept-stages';

/** A row's own cells by heading, blanks left out. Under the empty heading: the day above, where it has none of its own. */
export type OwnCells = Readonly<Record<string, string>>;

/** A jar of the ledger, as far as reading notes needs it. */
export interface LedgerJar {
  readonly uid: string;
  /** Where only a range of days is known, the one in its middle. */
  readonly day: string | null;
  readonly between: DayRange | null;
  readonly word: string | null;
  readonly letter: string;
  /** Planned only: its label is taken, but it can't have seeded anything. */
  readonly planned: boolean;
}

/** What the ledger has of a jar, to say how a changed row differs. */
export interface LedgerFacts {
  readonly hours: number | null;
  readonly temperature: number | null;
  readonly milk: string | null;
  readonly setWord: string | null;
  readonly ph: number | null;
  readonly spoiled: boolean;
  readonly additions: readonly string[];
  readonly seeds: readonly string[];
  readonly note: string | null;
}

export interface LedgerView {
  readonly jars: readonly LedgerJar[];
  readonly sources: readonly {
    readonly name: string;
    readonly culture: boolean;
    readonly form: Source['form'];
  }[];
  /** Jars entered by mistake: a row that is one of them is here, and no seed of anything. */
  readonly mistaken: ReadonlySet<string>;
  /** Rows as they last came in → uid of the jar each is: by the hash of its cells and its occurrence. */
  readonly raw: ReadonlyMap<string, string>;
  /** What was read of them, hashed. */
  readonly read: ReadonlySet<string>;
  /** The headings under which they came in, and the rows under each set of them. */
  readonly forms: readonly NotedForm[];
  /** What was chosen about the columns of files that came in, in order. */
  readonly choices: readonly KeptChoice[];
  /** By jar: what was answered about its row, by question. */
  readonly answered: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** Jars that came from notes: from which file, and on which line of it they stood last. */
  readonly fromNotes: ReadonlyMap<string, { readonly file: string; readonly line: number }>;
  readonly factsOf: (uid: string) => LedgerFacts | null;
}

/** What a rule says against one row. */
export interface RowRefused {
  /** The row's id in the plan. */
  readonly id: string;
  readonly sentence: string;
  /** The keeper's word would let it in; else it can't be. */
  readonly asks: boolean;
}

/** What was chosen about a file with such headings. */
export interface KeptChoice {
  readonly headings: readonly string[];
  readonly question: string;
  readonly answer: string;
}

/** Rows that came in under the same headings. */
export interface NotedForm {
  readonly headings: readonly string[];
  /** Each with the jar it is, in the order in which they came in. Read when they are asked for. */
  readonly rows: () => Iterable<{
    readonly uid: string;
    readonly cells: OwnCells;
    readonly occurrence: number;
  }>;
}

/** A row as it is kept, to be known again. */
export interface NotedRow {
  /** Of its own cells. */
  readonly sha: string;
  /** Of what was read of it. */
  readonly read: string;
  /** 1 for the first row with these cells, 2 for the second, … */
  readonly occurrence: number;
  readonly cells: OwnCells;
  /** Headings of the file that it is kept without: new columns that the keeper has not taken over. */
  readonly without: readonly string[];
  /** What the keeper answered about it. */
  readonly answers: readonly { readonly question: string; readonly answer: string }[];
}

export interface NotesInput {
  /** The name of the file, without its folder. */
  readonly file: string;
  readonly text: string;
  /** What the sheet is called, or the file: it may tell the day, the month or the year of its rows. */
  readonly title?: string;
  /** What holds cells apart, where that is known; null: it is looked for. */
  readonly separator?: '\t' | null;
  readonly mapping: Readonly<Record<string, NoteColumn>>;
  readonly answers: Readonly<Record<string, string>>;
  readonly today: string;
  readonly preferences: Pick<Preferences, 'spoons'>;
  readonly ledger: LedgerView;
  /** A hash of text, at most 64 characters. */
  readonly hash: (text: string) => string;
  /**
   * What the rule book says against a plan, by rows: the first of each. Left out: nothing is asked.
   * @param changes of jars that are there
   */
  readonly refuse?:
    ((jars: readonly PlannedJar[], changes: readonly PlannedChange[]) => readonly RowRefused[]) | undefined;
  /** What is kept from one reading of a file to the next; left out: nothing. */
  readonly stages?: KeptStages | undefined;
  /** Called now and then with rows read; may throw to stop. */
  readonly step?: ((done: number, total: number) => void) | undefined;
  /** Called for each row in every pass that does more than glance at it; may throw to stop. */
  readonly look?: (() => void) | undefined;
}

export interface PlannedSeeding {
  /** Exactly one is set: a jar of this file by its id in the plan, a jar of the ledger by its uid, a source by its name. */
  readonly fromRow: string | null;
  readonly fromUid: string | null;
  readonly source: string | null;
  /** Whey or curd, where the notes tell it. */
  readonly part: Seeding['part'];
  readonly amount: Amount | null;
}

export interface PlannedJar {
  /** Names it within the plan: several jars may stand on one line. */
  readonly id: string;
  readonly line: number;
  readonly label: string;
  /** null where only a range of days is told, from the first to the last. */
  readonly madeOn: string | null;
  readonly madeFrom: string | null;
  readonly madeTo: string | null;
  readonly word: string | null;
  readonly letter: string;
  readonly hold: { readonly hours: number | null; readonly planned: Temperature | null } | null;
  readonly fields: Pick<Jar, 'vessel' | 'finalVolume' | 'finalVolumeKnown' | 'milk' | 'milkAmount' | 'note'>;
  readonly additions: readonly Pick<Addition, 'name' | 'actual'>[];
  readonly seedings: readonly PlannedSeeding[];
  readonly outcome: ToldOutcome | null;
  readonly noted: NotedRow;
}

/** A jar of the ledger that a row changes, by an answer of the keeper's. */
export interface PlannedChange {
  readonly uid: string;
  /** The row as it reads now, its answers included. */
  readonly planned: PlannedJar;
  /** Everything the row tells is taken over; else only what the answers, or columns that are new, change. */
  readonly whole: boolean;
  /** Not `whole`: how the row read before those. */
  readonly before: PlannedJar | null;
  /** Columns that are new are taken over. */
  readonly columns: boolean;
  /** Whether the amounts of its seeds are taken over. */
  readonly amounts: boolean;
}

export interface NotesPlan {
  /** Sources that are not in the ledger yet. */
  readonly sources: readonly Pick<Source, 'name' | 'form' | 'receivedFrom' | 'knownGenerations'>[];
  /** Seeds before what they seeded. */
  readonly jars: readonly PlannedJar[];
  /** Jars of the ledger that change; after the new ones, which may have seeded them. */
  readonly changes: readonly PlannedChange[];
  /** Whose spoons and cups its amounts were written in; null: it has none. */
  readonly spoons: Preferences['spoons'] | null;
  /** The file's headings, in order. */
  readonly headings: readonly string[];
}

export type NotesReading =
  | {
      readonly ok: false;
      readonly code: 'notes empty' | 'notes not a table' | 'notes without days' | 'notes without seeds';
      readonly params: { readonly headings: string[] };
    }
  | { readonly ok: true; readonly preview: NotesPreview; readonly plan: NotesPlan };
