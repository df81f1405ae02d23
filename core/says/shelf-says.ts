// The shelf in words: what to eat first, by when and why, what it alone carries, and what is said where something that is no
// food was eaten. That nothing forbids a jar is never said to be proof.
import type { Portion } from '../ledger/records';
import { portionName } from '../ledger/portions';
import type { ByDay, Opened, SeedByDay } from '../shelf/by-when';
import { addDays, daysBetween } from '../quantities/typed-days';
import { dayLabel } from '../lineage/labels';
import type { Discard } from '../shapes/safety-codes';
import type { ShelfGroup } from '../shapes/shelf-calls';
import { discardHead, discardWord } from './safety-says';

/** "13 May", with its year where that is not this one. */
const dayOnShelf = (day: string, today: string): string =>
  dayLabel(day, day.slice(0, 4) !== today.slice(0, 4));

type Apart = Pick<Portion, 'part' | 'place' | 'reserve'> & {
  readonly form: 'pot' | 'cubes' | 'flakes' | 'jar';
  /** Left of it. */
  readonly pieces: number | null;
};

/** "12 cubes of 30 Nov a", "lidded pot of 5 Apr a"; a jar that was kept whole is called as it was. */
export function keptCalled(label: string, { form, part, place, pieces, reserve }: Apart): string {
  if (form === 'jar') return label;
  if (form === 'cubes' && place !== 'dried' && part !== 'whey' && part !== 'curd') {
    const count = pieces === null ? '' : `${Math.round(pieces)} `;
    const thawed = place === 'fridge' ? 'thawed ' : '';
    return `${count}${thawed}${pieces === 1 ? 'cube' : 'cubes'} of ${label}`;
  }
  if (place === 'fridge' && !part) return reserve ? `lidded pot of ${label}` : `pot of ${label}`;
  return `${portionName({ part, place, pieces, reserve })} of ${label}`;
}

const ON: Readonly<Record<Opened['by'], readonly [dated: string, undated: string]>> = {
  opened: ['opened', 'opened, day not noted'],
  eaten: ['some eaten', 'some eaten, day not noted'],
  seed: ['seed taken', 'seed taken, day not noted'],
  given: ['some given away', 'some given away, day not noted'],
  'kept apart': ['some kept apart', 'some kept apart, day not noted'],
};

/** "opened 27 Apr", "seed taken 27 Apr"; null where it was not opened. */
export function openedSays(opened: Opened | null, today: string): string | null {
  if (opened === null) return null;
  const [dated, undated] = ON[opened.by];
  return opened.on === null ? undated : `${dated} ${dayOnShelf(opened.on, today)}`;
}

/**
 * "eat by 13 May"; of a day that has passed "eat-by 13 May has passed".
 * @param unseen nobody has noted how it came out: no day is named before someone has looked
 */
export function eatBySays({ on }: ByDay, today: string, unseen = false): string {
  if (on === null) return 'thawed, day not noted';
  if (unseen && on >= today) return `look and smell first, then by ${dayOnShelf(on, today)}`;
  return on < today ? `eat-by ${dayOnShelf(on, today)} has passed` : `eat by ${dayOnShelf(on, today)}`;
}

/** "seed by 6 May"; after that "best as seed until 6 May, at most until 13 May"; after that "too old to seed". */
export function seedBySays({ on, until }: SeedByDay, today: string): string {
  if (on === null) return 'thawed, day not noted';
  if (until !== null && until < today) return `too old to seed since ${dayOnShelf(until, today)}`;
  if (on >= today) return `seed by ${dayOnShelf(on, today)}`;
  const most = until === null ? '' : `, at most until ${dayOnShelf(until, today)}`;
  return `best as seed until ${dayOnShelf(on, today)}${most}`;
}

/** How much is left, in words. @param amount printed @param held printed: what it held at first */
export function leftSays(amount: string | null, held: string | null, pieces: string | null): string {
  if (pieces !== null) return amount === null ? `${pieces} left` : `${pieces} left, ${amount}`;
  if (amount === null) return 'amount not noted';
  return held === null || held === amount ? amount : `${amount} of ${held}`;
}

/** What stands below a thing's name on its board. */
export interface Below {
  readonly group: ShelfGroup;
  readonly discard: Discard | null;
  readonly nextSeedOf: readonly string[];
  readonly eatBy: ByDay | null;
  readonly seedBy: SeedByDay | null;
  /** Nobody has noted how it came out. */
  readonly unseen: boolean;
  /** A moment; null where nobody said when it comes out of warmth. */
  readonly outAt: string | null;
}

/** The one thing: that it is the next seed, by when to eat it or to seed from it, or why it is neither. */
export function belowSays(
  { group, discard, nextSeedOf, eatBy, seedBy, unseen, outAt }: Below,
  today: string,
): string {
  switch (group) {
    case 'discard':
      return discard === null ? 'discard it' : `${discardWord(discard).toLowerCase()}: discard it`;
    case 'aside':
      return 'not food, not seed';
    case 'warm':
      return outAt === null
        ? 'in warmth'
        : `out ${dayOnShelf(outAt.slice(0, 10), today)}, ${outAt.slice(11, 16)}`;
  }
  if (nextSeedOf.length > 0) return `next seed of ${nextSeedOf.join(' and ')}${unseen ? ': look first' : ''}`;
  if (unseen && group === 'eat') return 'look first';
  if (group === 'seed') return seedBy === null ? 'kept for seed' : seedBySays(seedBy, today);
  return eatBy === null ? '' : eatBySays(eatBy, today);
}

const inDays = (on: string, today: string): string => {
  const days = daysBetween(today, on);
  if (days === 0) return 'today';
  return days === 1 ? 'by tomorrow' : `by ${dayOnShelf(on, today)}`;
};

const WHY_FIRST: Readonly<Record<ByDay['because'], string>> = {
  unopened: 'It has stood longest.',
  opened: 'It is open.',
  'opened, day not noted': 'It is open, and nobody noted since when.',
  thawed: 'It was thawed, and is not frozen again.',
  'thawed, day not noted': 'It was thawed, and nobody noted when.',
  frozen: 'It has been frozen longest.',
};

/** What the first words rest on. */
export interface ShelfHead {
  /** To be thrown out, by name. */
  readonly discard: { readonly name: string; readonly discard: Discard } | null;
  /** To be eaten first; `seed`: it is the next seed, or the last of a line; `look`: what has to be minded before. */
  readonly first: {
    readonly name: string;
    readonly eatBy: ByDay;
    readonly opened: Opened | null;
    readonly seed: boolean;
    readonly look: string | null;
    /** Nobody has noted how it came out. */
    readonly unseen: boolean;
  } | null;
  /** Past its day. */
  readonly past: { readonly name: string; readonly count: number } | null;
  /** So many things are kept at all, and so many of them are in warmth. */
  readonly kept: number;
  readonly warm: number;
} // prettier-ignore

/** The first words of the shelf: what to do, and the one reason. */
export function shelfHead({ discard, first, past, kept, warm }: ShelfHead, today: string): { sentence: string; reason: string } {
  if (discard !== null) return { sentence: `Discard ${discard.name}.`, reason: discardHead(discard.discard) };
  if (first !== null) {
    const by = first.eatBy.on === null ? 'today' : inDays(first.eatBy.on, today);
    const why = first.look ?? (
      first.opened !== null && first.eatBy.because === 'unopened' ? 'It has stood longest, and is open.' : WHY_FIRST[first.eatBy.because]);
    if (first.unseen)
      return { sentence: `Look at ${first.name} and smell it first.`, reason: 'Nobody has noted how it came out. When in doubt, discard.' };
    return first.seed
      ? { sentence: `Eat ${first.name} ${by}, but take seed first.`, reason: why }
      : { sentence: `Eat ${first.name} first, ${by}.`, reason: why };
  }
  if (past !== null)
    return {
      sentence: past.count === 1 ? `${past.name} is past its day.` : `${past.count} here are past their day.`,
      reason: 'Look and smell, and when in doubt, discard.',
    };
  if (kept > warm) return { sentence: 'Nothing here waits to be eaten.', reason: 'What is kept is kept for seed.' };
  if (warm > 0) return { sentence: 'Nothing is out of warmth yet.', reason: 'Nothing is tasted before it is taken out and looked at.' };
  return { sentence: 'Nothing is kept.', reason: 'A jar stands here from the day it is made.' };
} // prettier-ignore

/** One question for all of which nobody said whether they are still there; `rest` holds of each. */
export const askedSays = (names: readonly string[]): { sentence: string; rest: string } => ({
  sentence: names.length === 1 ? `Is ${names[0]} still there?` : `Are these ${names.length} still there?`,
  rest: 'Nothing was noted of it since it came out of warmth.',
});

/** Of jars of which nobody said for so long that they are taken for gone. */
export const longUnsaidSays = (count: number): string =>
  count === 1
    ? 'One jar of more than two months ago is taken to be gone: nobody said so. If it is still there, discard it.'
    : `${count} jars of more than two months ago are taken to be gone: nobody said so. What is still there, discard.`;

/** Who asks whom where something was eaten that is no food. No diagnosis, no comfort. */
const ASK_WHOM =
  'Eat no more of it, and keep what is left apart. If anyone feels unwell, is pregnant, frail, ill or under treatment, or fed it to a baby, ask a doctor or your poison information service, and say what was eaten and when.';

/** @param because what stands against it, as a sentence */
export const eatenSays = (name: string, because: string): string =>
  `Some of ${name} was eaten. ${because} ${ASK_WHOM}`;

/** Of what was given away and is no food: whoever has it is told. */
export const givenSays = (name: string, to: string | null, because: string): string =>
  `${name} was given to ${to ?? 'someone'}. ${because} Tell them to discard it, and not to taste it.`;

/** Beside what was given away and nothing stands against. */
export function givenBySays(by: string | null, today: string): string {
  if (by === null) return 'day not noted';
  return by < today ? `its day, ${dayOnShelf(by, today)}, has passed` : `to be eaten by ${dayOnShelf(by, today)}`;
} // prettier-ignore

/** That it was kept for seed, before it is opened. */
export const keptForSeedSays = (name: string): string =>
  `${name} is kept for seed, unopened. Once it is open it is no longer that: take the seed first.`;

export const thawedAgainSays = (name: string): string =>
  `${name} was thawed before. What was thawed is not frozen again: each time, what spoils food had time to grow.`;

export const openedAlreadySays = (name: string): string =>
  `${name} has been opened already, so it is not kept unopened.`;

/** What giving needs beside the jar, said when it is given. */
export const GIVING =
  'Out of the cold two hours at most, one above 32 °C; then the fridge. Say what is in it: milk, and what was stirred in.';

/** By which day it would have to be eaten that was given on one. */
export const givenBy = (on: string | null, days: number): string | null =>
  on === null ? null : addDays(on, days);
