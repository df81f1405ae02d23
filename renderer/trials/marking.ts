// How far a tasting is, as it is kept while one taster marks: what was said of each bowl and which stand where. Pure.
import type { Input } from '../../core/contract';
import type { Session } from './trial-types';

export type Stage = 'pour' | 'hand' | 'taste' | 'order' | 'reveal';

export interface Marking {
  readonly stage: Stage;
  /** Who marks. */
  readonly taster: string | null;
  /** Which of the bowls is before them. */
  readonly at: number;
  /** By code and aspect. */
  readonly words: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Codes from liked most to liked least; those as good as each other share a place. */
  readonly order: readonly (readonly number[])[];
  /** Of two or three: the one that was chosen. */
  readonly picked: number | null;
  /** Who is left out today. */
  readonly skipped: readonly string[];
}

type Served = Session['tasters'][number];

export const codesOf = ({ servings }: Pick<Served, 'servings'>): number[] => servings.map(({ code }) => code);

/** What a taster has marked already, as it was typed. */
export function markingOf(taster: Served, skipped: readonly string[], stage: Stage): Marking {
  const words: Record<string, Record<string, string>> = {};
  const ranks = new Map<number, number[]>();
  let picked: number | null = null;
  for (const { code, marks } of taster.servings)
    for (const mark of marks) {
      if (mark.word !== null) words[code] = { ...words[code], [mark.aspect]: mark.word };
      if (mark.rank !== null) ranks.set(mark.rank, [...(ranks.get(mark.rank) ?? []), code]);
      if (mark.picked === true) picked = code;
    }
  const order = [...ranks].toSorted(([a], [b]) => a - b).map(([, codes]) => codes);
  return { stage, taster: taster.taster, at: 0, words, order, picked, skipped };
}

/** Whose turn it is: the next who has not marked and is not left out; then it is time to reveal. */
export function nextTurn(tasters: readonly Served[], skipped: readonly string[], but: string | null = null): Marking {
  const next = tasters.find(({ taster, done }) => !done && taster !== but && !skipped.includes(taster));
  if (next) return markingOf(next, skipped, 'hand');
  return { stage: 'reveal', taster: null, at: 0, words: {}, order: [], picked: null, skipped };
} // prettier-ignore

/** Puts a bowl into the next place, or takes it back from where it stands. */
export const placed = (order: Marking['order'], code: number): Marking['order'] =>
  order.flat().includes(code)
    ? order.map((place) => place.filter((one) => one !== code)).filter((place) => place.length > 0)
    : [...order, [code]];

/** Makes a place as good as the one before it, or parts them again. @param at the second of the two codes */
export function tied(order: Marking['order'], at: number): Marking['order'] {
  const place = order.findIndex((one) => one.includes(at));
  const own = order[place] ?? [];
  const within = own.indexOf(at);
  if (within > 0)
    return [...order.slice(0, place), own.slice(0, within), own.slice(within), ...order.slice(place + 1)];
  if (place < 1) return order;
  return [...order.slice(0, place - 1), [...(order[place - 1] ?? []), ...own], ...order.slice(place + 1)];
}

/** Whether all that is tested is said. */
export const isWhole = (task: Session['task'], taster: Pick<Served, 'servings'>, { order, picked }: Marking): boolean =>
  task === 'rank' || task === 'score' ? order.flat().length === taster.servings.length : picked !== null; // prettier-ignore

type Mark = Input<'mark.record'>['marks'][number];

/** What is recorded of one taster: ranks (equal places share the first of theirs) or the choice, and the words. */
export function marksOf(task: Session['task'], taster: Pick<Served, 'servings'>, { words, order, picked }: Marking): Mark[] {
  const before = (place: number): number => order.slice(0, place).flat().length;
  const overall =
    task === 'rank' || task === 'score'
      ? order.flatMap((codes, place) => codes.map((code): Mark => ({ code, rank: before(place) + 1 })))
      : codesOf(taster).map((code): Mark => ({ code, picked: code === picked }));
  const said = codesOf(taster).flatMap((code) =>
    Object.entries(words[code] ?? {}).map(([aspect, word]): Mark => ({ code, aspect, word })),
  );
  return [...overall, ...said];
} // prettier-ignore
