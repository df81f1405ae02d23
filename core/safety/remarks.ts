// Spoilage that stands only in words: "pink streaks" under colour, "black mould on top" in the note, and no sign ticked.
// The vocabulary, with its negations, is that of a keeper's notes (remark-words.ts). Words stop a jar until the keeper has answered
// the remark; that no such word stands in it makes it fine for nobody.
import { clausesOf, withoutAnswered, readRemark } from './remark-words';
import { plain, remembered } from '../quantities/quantities';
import type { DiscardSign, Outcome } from '../ledger/records';

type InWords = Pick<Outcome, 'colour' | 'smell' | 'texture' | 'note'>;

const lines = (note: string | null): string[] => (note ?? '').split(/\r?\n/);

/** What the remarks about a jar come to: one that stops it until it is answered; one that the keeper read as *look*. */
export type RemarkStand = 'stops' | 'looks' | null;

/** Whether a plain word of spoilage stands in a remark. @param field under "smell", "off" alone says that it smells off */
export const tellsOfSpoiling = (text: string, field: 'note' | 'texture' | 'smell' | 'colour'): boolean =>
  lines(text).some((line) => passagesIn(line, field === 'smell').length > 0);

/** A doubtful passage: the words as they were written, and the signs they name; none for "spoiled" or "slimy". */
export interface SpoilagePassage {
  readonly words: string;
  readonly signs: readonly DiscardSign[];
}

/** All jars of a ledger are asked about after each act, and few texts change. */
const passagesIn = remembered(readPassages, (smelled: boolean) => (smelled ? 'smell:' : 'text:'));

function readPassages(text: string, smelled: boolean): readonly SpoilagePassage[] {
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
 * Passages of an outcome's free text that tell of spoilage and are not denied in the text itself ("no mould"), each once, in the
 * order they stand: what a form asks about before it is recorded.
 */
export function spoilagePassages(outcome: InWords): readonly SpoilagePassage[] {
  const found = new Map<string, SpoilagePassage>();
  for (const [text, smelled] of [
    [outcome.colour ?? '', false],
    [outcome.smell ?? '', true],
    [outcome.texture ?? '', false],
    ...lines(outcome.note).map((line): [string, boolean] => [line, false]),
  ] as [string, boolean][]) {
    for (const passage of passagesIn(text, smelled)) {
      const key = plain(passage.words);
      if (!found.has(key)) found.set(key, passage);
    }
  }
  return [...found.values()];
}

/** A power cut that a note tells of, with its length (h) where that is told; null where it tells of none. */
export const powerCutNoted = (note: string | null): { readonly hours: number | null } | null =>
  note === null || note.trim() === '' ? null : readRemark(note).powerCut;

/** Whether the program itself doubts something that a remark tells: a power cut, or words that it asks about. */
export const remarkInDoubt = (text: string): boolean =>
  powerCutNoted(text) !== null || readRemark(text).asks.length > 0;
