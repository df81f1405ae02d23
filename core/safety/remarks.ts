// Spoilage that stands only in words: "pink streaks" under colour, "black mould on top" in the note, and no sign ticked.
// The vocabulary, with its negations, is that of a keeper's notes (remark-words.ts). What was asked about and is no
// spoilage stands in the note in one fixed form, so that it is asked once and anyone can read what was answered.
import { clausesOf, withoutAnswered, readRemark } from './remark-words';
import { plain } from '../quantities/quantities';
import type { DiscardSign, Outcome } from '../ledger/records';

type InWords = Pick<Outcome, 'colour' | 'smell' | 'texture' | 'note'>;

const DENIED = /^Asked about “([^”]*)”: not spoilage, /;
const quotable = (words: string): string => words.replace(/[“”"]/g, '’').trim();
const lines = (note: string | null): string[] => (note ?? '').split(/\r?\n/);

/** A doubtful passage: the words as they were written, and the signs they name; none for "spoiled" or "slimy". */
export interface SpoilagePassage {
  readonly words: string;
  readonly signs: readonly DiscardSign[];
}

/** Texts that were read before: all jars of a ledger are asked about after each act, and few texts change. */
const read = new Map<string, readonly SpoilagePassage[]>();
const MOST_READ = 50_000;

function passagesIn(text: string, smelled: boolean): readonly SpoilagePassage[] {
  const key = `${smelled ? 'smell' : 'text'}:${text}`;
  const known = read.get(key);
  if (known) return known;
  if (read.size >= MOST_READ) read.clear();
  const found = readPassages(text, smelled);
  read.set(key, found);
  return found;
}

function readPassages(text: string, smelled: boolean): SpoilagePassage[] {
  return clausesOf(withoutAnswered(text)).flatMap((clause): SpoilagePassage[] => {
    // Under "smell", "off" alone says that it smells off.
    const remark = readRemark(smelled ? `smells ${clause}` : clause);
    const doubtful =
      remark.signs.length > 0 ||
      remark.spoiledSaid ||
      remark.thrownOut ||
      remark.asks.some(({ kind }) => kind === 'slime' || kind === 'uncertain sign');
    const words = clause.trim().replace(/[,;.!。，；！।]+$/, '');
    return doubtful ? [{ words, signs: remark.signs }] : [];
  });
}

/**
 * Passages of an outcome's free text that tell of spoilage: neither denied in the text itself ("no mould") nor asked about
 * and answered. Each once, in the order they stand. They never make a jar spoiled by themselves: they are asked about.
 * @param answers another note in which an answer may stand
 */
export function spoilagePassages(
  outcome: InWords,
  answers: string | null = null,
): readonly SpoilagePassage[] {
  const answered = new Set(
    [...lines(outcome.note), ...lines(answers)].flatMap((line) => {
      const words = DENIED.exec(line)?.[1];
      return words === undefined ? [] : [plain(words)];
    }),
  );
  const found = new Map<string, SpoilagePassage>();
  for (const [text, smelled] of [
    [outcome.colour ?? '', false],
    [outcome.smell ?? '', true],
    [outcome.texture ?? '', false],
    ...lines(outcome.note).flatMap((line): [string, boolean][] => (DENIED.test(line) ? [] : [[line, false]])),
  ] as [string, boolean][]) {
    for (const passage of passagesIn(text, smelled)) {
      const key = plain(quotable(passage.words));
      if (!answered.has(key) && !found.has(key)) found.set(key, passage);
    }
  }
  return [...found.values()];
}

/** The words of an outcome that tell of spoilage and were not denied, as they were written; null where there are none. */
export function spoilageSaid(outcome: InWords): string | null {
  const passages = spoilagePassages(outcome);
  return passages.length === 0 ? null : passages.map(({ words }) => words).join('; ');
}

/**
 * The words of a note beside the outcome (a jar's, a pot's, a batch's) that tell of spoilage and were not denied, in it
 * or in the outcome's own note; null where there are none.
 */
export function spoilageNoted(note: string | null, answers: string | null): string | null {
  if (note === null || note.trim() === '') return null;
  const passages = spoilagePassages({ colour: null, smell: null, texture: null, note }, answers);
  return passages.length === 0 ? null : passages.map(({ words }) => words).join('; ');
}

/** A power cut that a note tells of, with its length (h) where that is told; null where it tells of none. */
export const powerCutNoted = (note: string | null): { readonly hours: number | null } | null =>
  note === null || note.trim() === '' ? null : readRemark(note).powerCut;

/**
 * The note with the keeper's answer that some passages are no spoilage.
 * @param what what it is instead, in the keeper's words
 */
export function spoilageDenied(
  note: string | null,
  passages: readonly SpoilagePassage[],
  what: string,
): string {
  const answer = what.trim().replace(/\s+/g, ' ');
  const said = passages.map(({ words }) => `Asked about “${quotable(words)}”: not spoilage, ${answer}`);
  return [...(note === null || note.trim() === '' ? [] : [note.trim()]), ...said].join('\n');
}
