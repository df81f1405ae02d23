// One language that keepers head their columns in.
import type { NoteColumn } from '../../contract';

export interface Language {
  /** What headings mean: by meaning, phrases parted by commas. */
  readonly headings: Readonly<Partial<Record<Exclude<NoteColumn, 'ignore'>, string>>>;
  /** Headings as a keeper writes them, and what each means. */
  readonly example: Readonly<Record<string, NoteColumn>>;
}
