// Which names among the seeds are products: a name that starts a line and is no jar is one, unless it may be a jar's nickname.
import { isNothing, plain } from '../../quantities/quantities';
import { findDay } from '../../text/days';
import { isDitto } from '../cells/cell-words';
import {
  CULTURE,
  FUNCTION_WORDS,
  PIECE_WITHIN,
  PIECE_WORD,
  PREVIOUS,
  PRODUCT,
  SAME_DAY,
  STRONG,
  WEAK,
  words,
} from '../cells/seed-words';
import { hasTrait } from '../meanings';
import type { NotesInput } from '../notes-plan';
import type { NoteRow } from '../rows/note-row';
import type { SeedIndex } from './seed-index';
import { sourceName } from './seed-sources';

/** A name has no more words. */
const MOST_WORDS = 5;

/** How jars are told apart by sight. "Green Pot" may be one, "Meadow Pot" is a name. */
const BY_SIGHT =
  /^(?:green|blue|red|white|yellow|black|brown|orange|pink|purple|grey|gray|big|small|large|little|tall|short|wide|left|right|new|first|second|top|bottom|back|front|gr[uü]n\p{L}*|blau\p{L}*|rot\p{L}*|weiss\p{L}*|gelb\p{L}*|schwarz\p{L}*|braun\p{L}*|gross\p{L}*|klein\p{L}*|hoh\p{L}*|link\p{L}*|recht\p{L}*|neu\p{L}*|erst\p{L}*|zweit\p{L}*)$/u;

/** Whether words are a name with "Pot" in it: each begins with a capital, and they do not tell a pot by its looks. */
function isNamedPot(name: string): boolean {
  const others = name.split(/\s+/).filter((word) => plain(word) !== 'pot');
  return (
    others.length > 0 &&
    name.split(/\s+/).every((word) => /^\p{Lu}/u.test(word)) &&
    !others.every((word) => BY_SIGHT.test(plain(word)))
  );
}

/** "Old Mill caps", "Good Morning tablets": what is counted in pieces is bought, whatever its name says beside that of it. */
const isBoughtInPieces = (name: string): boolean =>
  PIECE_WORD.test(name) &&
  words(name.replace(PIECE_WITHIN, ' ')).some((word) => word.length > 1 && !FUNCTION_WORDS.test(word));

/** Words of a text that can be no jar: no day, no figure, no single letter, nothing that points at a jar. */
function bareName(text: string): string | null {
  const name = sourceName(text);
  const said = plain(name);
  const parts = words(name);
  const points =
    !isBoughtInPieces(name) && FUNCTION_WORDS.test(isNamedPot(name) ? said.replace(/\bpot\b/g, ' ') : said);
  return parts.length === 0 ||
    parts.length > MOST_WORDS ||
    /[\d?]/.test(name) ||
    parts.every((word) => word.length < 2) ||
    points ||
    [PREVIOUS, SAME_DAY, CULTURE, PRODUCT, /\p{L}'s\b/u].some((other) => other.test(said)) ||
    isDitto(text) ||
    isNothing(text)
    ? null
    : name;
}

/** Whether a piece of a cell points at a jar, by its day, its name or its place. */
const namesJar = (piece: string, jars: SeedIndex): boolean =>
  jars.names(piece) || findDay(piece) !== null || [PREVIOUS, SAME_DAY].some((one) => one.test(plain(piece)));

/**
 * Names that start a line anywhere and can be no jar: nothing beside them in their cell is one, and nothing that is told of jars
 * calls one so. Plain name → the name as first written.
 */
export function namesThatStart(
  rows: readonly NoteRow[],
  jars: SeedIndex,
  look?: NotesInput['look'],
): Map<string, string> {
  const found = new Map<string, string>();
  for (const row of rows) {
    look?.();
    const told = row.cells.filter(({ column, text }) => column.meaning === 'seed' && text.trim() !== '');
    const pieces = told.flatMap(({ text }) => text.split(STRONG).flatMap((piece) => piece.split(WEAK)));
    if (pieces.some((piece) => namesJar(piece, jars))) continue;
    for (const piece of pieces) {
      const name = bareName(piece);
      if (name !== null && !found.has(plain(name))) found.set(plain(name), name);
    }
  }
  for (const name of nicknames(rows, found)) found.delete(name);
  return found;
}

/** "Called Bertha": the words after it are a name. */
const CALLED = /\b(?:called|named|nicknamed|aka|alias|genannt|heisst)\s+(.+)/u;

/** Names by which cells call jars that were not seeded by them: a lid's colour, a vessel, "called Bertha". */
function nicknames(rows: readonly NoteRow[], names: ReadonlyMap<string, string>): Set<string> {
  const found = new Set<string>();
  if (names.size === 0) return found;
  const bySaid = new Map([...names.keys()].map((name) => [words(name).join(' '), name]));
  for (const { cells } of rows) {
    const seeds = plain(
      cells.flatMap(({ column, text }) => (column.meaning === 'seed' ? text : [])).join(' '),
    );
    const called = cells.flatMap(({ column: { meaning }, text }) => {
      if (!hasTrait(meaning, 'names') || text.trim() === '') return [];
      if (meaning !== 'note') return runsOf(words(text));
      const after = CALLED.exec(plain(text))?.[1];
      return [words(text).join(' '), ...(after === undefined ? [] : startsOf(words(after)))];
    });
    for (const said of called) {
      const name = bySaid.get(said);
      if (name !== undefined && !seeds.includes(name)) found.add(name);
    }
  }
  return found;
}

/** The first words of a text: one, two, up to as many as a name has. */
const startsOf = (said: readonly string[]): string[] =>
  said.slice(0, MOST_WORDS).map((_, at) => said.slice(0, at + 1).join(' '));
/** All words of a text that stand side by side. */
const runsOf = (said: readonly string[]): string[] => said.flatMap((_, at) => startsOf(said.slice(at)));
