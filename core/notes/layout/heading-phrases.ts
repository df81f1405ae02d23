// What headings mean, in all languages that there is a table of. Where two mean different things by a word, the first counts.
import type { NoteColumn } from '../../contract';
import type { Language } from './language';
import { ENGLISH } from './languages/english';
import { GERMAN } from './languages/german';
import { OTHER_LANGUAGES } from './languages/other-languages';

export const LANGUAGES: readonly Language[] = [ENGLISH, GERMAN];

/** The phrases that head columns of a meaning. */
export const headingPhrases = (meaning: Exclude<NoteColumn, 'ignore'>): string[] =>
  [...LANGUAGES.map(({ headings }) => headings), ...OTHER_LANGUAGES].flatMap(
    (headings) => headings[meaning]?.split(',') ?? [],
  );
