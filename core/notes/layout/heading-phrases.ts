// What headings mean, in all languages that there is a table of. Where two mean different things by a word, the first counts.
import type { NoteColumn } from '../../contract';
import type { Language } from './language';
import { ENGLISH } from './languages/english';
import { GERMAN } from './languages/german';
import { FRENCH } from './languages/french';
import { SPANISH } from './languages/spanish';
import { ITALIAN } from './languages/italian';
import { DUTCH } from './languages/dutch';
import { PORTUGUESE } from './languages/portuguese';
import { SWEDISH } from './languages/swedish';
import { DANISH_NORWEGIAN } from './languages/danish-norwegian';
import { POLISH } from './languages/polish';

export const LANGUAGES: readonly Language[] = [
  ENGLISH,
  GERMAN,
  FRENCH,
  SPANISH,
  ITALIAN,
  DUTCH,
  PORTUGUESE,
  SWEDISH,
  DANISH_NORWEGIAN,
  POLISH,
];

/** Meaning and phrase, meaning by meaning in the order of NOTE_COLUMNS. */
export const headingPhrases = (meaning: Exclude<NoteColumn, 'ignore'>): string[] =>
  LANGUAGES.flatMap(({ headings }) => headings[meaning]?.split(',') ?? []);
