// What a column of notes may tell, and what follows from that: the one table that layout, conventions, rows and plan ask.
import type { NoteColumn } from '../contract';

/**
 * many: several columns may tell it. shared: a line above a table may tell it of all rows. one jar: it is told of a jar once
 * that is made. of line: one beside columns of jars is of the line's one jar. names: what stands there may be what jars go by.
 * words: records have words for it, figures tell none of it. prose: its cells may be long, and are heard for signs of
 * spoilage. goes on: its text may go on in the line below. stirred: its words become something else than words, and what
 * they say besides would be lost. of seeds: it tells of seeds or how much of them. unit: bare figures need one. day: it may
 * tell the day of a jar. dated: days may stand in it. no figures: decimal marks are not looked for in it.
 */
type Trait =
  | 'many' | 'shared' | 'one jar' | 'of line' | 'names' | 'words' | 'prose' | 'goes on' | 'stirred' | 'of seeds' | 'unit' | 'day'
  | 'dated' | 'no figures'; // prettier-ignore

/** In words, and with its traits. Of two meanings that a heading has, in one language or in two, the first counts. */
const MEANINGS: Readonly<Record<NoteColumn, readonly [string, ...Trait[]]>> = {
  date: ['the day', 'day', 'dated', 'no figures'],
  jar: ['the letter of the jar', 'of line', 'day', 'dated', 'no figures'],
  label: ['the label', 'day', 'dated', 'no figures'],
  seed: ['what seeded the jar', 'many', 'shared', 'of line', 'of seeds', 'dated', 'no figures'],
  amount: ['how much seed', 'shared', 'stirred', 'of seeds', 'unit'],
  milk: ['the milk', 'shared', 'stirred'],
  'milk amount': ['how much milk', 'shared', 'of seeds', 'unit'],
  addition: ['what was added', 'many', 'shared', 'goes on', 'stirred'],
  'addition amount': ['how much was added', 'many', 'shared', 'stirred', 'unit'],
  hours: ['the hours held', 'shared'],
  start: ['when the hold began', 'day', 'dated', 'no figures'],
  end: ['when the hold ended', 'many', 'no figures'],
  temperature: ['the temperature', 'shared'],
  set: ['how it set', 'one jar', 'of line', 'words', 'prose', 'goes on'],
  ph: ['the pH', 'one jar'],
  whey: ['the whey', 'one jar', 'prose'],
  smell: ['the smell', 'one jar', 'words', 'prose', 'goes on'],
  colour: ['the colour', 'one jar', 'names', 'words', 'prose', 'goes on'],
  texture: ['the texture', 'one jar', 'words', 'prose', 'goes on'],
  tang: ['the tang', 'one jar', 'words', 'prose'],
  volume: ['the final volume', 'shared', 'one jar', 'stirred', 'of seeds', 'unit'],
  vessel: ['the vessel', 'shared', 'names', 'stirred'],
  spoiled: ['whether it spoiled', 'one jar', 'prose'],
  price: ['the price'],
  note: ['notes', 'many', 'names', 'prose', 'goes on', 'no figures'],
  ignore: ['nothing', 'many', 'no figures'],
};

/** All that headings may mean, the first of two first. */
export const HEADED = (Object.keys(MEANINGS) as NoteColumn[]).filter(
  (one): one is Exclude<NoteColumn, 'ignore'> => one !== 'ignore',
);

/** Whether something follows from what a column tells; of no column nothing does. */
export const hasTrait = (meaning: NoteColumn | null | undefined, trait: Trait): boolean =>
  meaning !== null && meaning !== undefined && MEANINGS[meaning].includes(trait);

/** "The hours held". */
export const meaningInWords = (meaning: NoteColumn): string =>
  MEANINGS[meaning][0].replace(/^./, (first) => first.toUpperCase());

/** "the hours held". */
export const meaningWithin = (meaning: NoteColumn): string => MEANINGS[meaning][0];
