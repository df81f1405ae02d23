// One language that keepers head their columns in.
import type { NoteColumn } from '../../contract';

/** What headings mean: by meaning, phrases parted by commas. */
export type Headings = Readonly<Partial<Record<Exclude<NoteColumn, 'ignore'>, string>>>;

export interface Language {
  readonly headings: Headings;
  /** Headings as a keeper writes them, and what each means. */
  readonly example: Readonly<Record<string, NoteColumn>>;
}
