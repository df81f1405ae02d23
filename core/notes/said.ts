// What reading a file says besides its rows: assumptions, and questions with the answers they take.

/** What was assumed, of a row or of the file as a whole (null). */
export interface Said {
  readonly row: number | null;
  readonly sentence: string;
  /** Where it can be said to be otherwise: goes into `answers`, with one of these; what it was taken as. */
  readonly id?: string;
  readonly choices?: readonly Choice[];
  readonly chosen?: string;
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface Question {
  readonly id: string;
  readonly row: number | null;
  readonly sentence: string;
  readonly choices: readonly Choice[];
  readonly blocks: boolean;
  /** Newly told spoilage: comes first. */
  readonly urgent?: true;
}

/** What is collected about the file as a whole. */
export interface FileSays {
  readonly said: Said[];
  readonly questions: Question[];
}
