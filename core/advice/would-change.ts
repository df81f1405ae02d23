// What would change the place of one that may be used: the same cost, solved for what a keeper can see. Figures are whole
// numbers as they are said; each said one does change the order, and the nearest whole number short of it does not.
import { shown } from '../vigour/score';
import { daysWords } from '../vigour/words';
import { placeCostOf } from './looks';
import type { NextInput, Ranked, SeedCandidate } from './next';
import { delayOfOneDay, MOST_CHANCE, weakFrom } from './seed-cost';

/** Costs closer than this (in their unit) are as good as equal. */
const APART = 0.005;
/** Rounding in the sums must not count as a change. */
const HAIR = 1e-9;
/** Days looked at where the keeper has no limit of their own: longer is nothing to go by. */
const MOST_DAYS = { fridge: 60, freezer: 730, dried: 730 } as const;
const KEPT = { fridge: 'in the fridge', freezer: 'in the freezer', dried: 'dried' } as const;

/** Whether cost alone could put the one before the other. */
const costDecides = (one: Ranked, other: Ranked): boolean =>
  [one, other].every(({ tells }) => tells === 'seen' || tells === 'unseen') &&
  (one.tells === other.tells || one.kind === 'fresh start' || other.kind === 'fresh start');

/** The first whole number on the way from one to another that changes something, where the last one does. */
function firstThat(from: number, to: number, changes: (figure: number) => boolean): number | null {
  const step = Math.sign(to - from) || 1;
  if (!changes(to)) return null;
  let [low, high] = [0, Math.abs(to - from)];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (changes(from + step * middle)) high = middle;
    else low = middle + 1;
  }
  return from + step * high;
}

interface Turn {
  readonly seed: SeedCandidate;
  /** Chance of a weak jar as it stands. */
  readonly weak: number;
  /** Whether a good jar from it has to become dearer, or cheaper, than this. */
  readonly dearer: boolean;
  readonly than: number;
  /** The other's batch: a score of the same batch would move both. */
  readonly otherBatch: string | null;
}

const beyond = ({ dearer, than }: Turn, cost: number): boolean =>
  dearer ? cost > than + HAIR : cost < than - HAIR;

/** Whether a score would move it and leave the other where it is. */
const hasOwnScore = ({ seed, otherBatch }: Turn): boolean =>
  seed.vigour !== null && seed.batch !== otherBatch;

/** Weak jars in 100 at which the order turns; null where no chance would do it. */
function turningWeak(turn: Turn, input: NextInput): number | null {
  const now = Math.round(100 * turn.weak);
  const [from, to] = turn.dearer ? [now + 1, 100 * MOST_CHANCE] : [now - 1, 1];
  if (turn.dearer ? from > to : from < to) return null;
  return firstThat(from, to, (figure) => beyond(turn, placeCostOf(turn.seed, figure / 100, input)));
}

/** Score of its batch at which the order turns; null where none within 0 to 100 would do it. */
function turningScore(turn: Turn, input: NextInput): number | null {
  const { seed, dearer } = turn;
  if (!seed.vigour) return null;
  const now = shown(seed.vigour.points);
  const [from, to] = dearer ? [now - 1, 0] : [now + 1, 100];
  if (dearer ? from < to : from > to) return null;
  return firstThat(from, to, (figure) =>
    beyond(turn, placeCostOf(seed, weakFrom(seed, input, figure), input)),
  );
}

/** Days more or less at which the order turns; null where none would do it before it is too old. */
function turningDays(turn: Turn, input: NextInput): number | null {
  const { seed, dearer, weak } = turn;
  const { fridgeDays, freezerDays } = input.limits;
  const most = (seed.place === 'fridge' ? fridgeDays : freezerDays) ?? MOST_DAYS[seed.place];
  const room = Math.floor(dearer ? most - seed.days : seed.days);
  if (room < 1) return null;
  const way = dearer ? 1 : -1;
  const hours = delayOfOneDay(seed.place);
  return firstThat(1, room, (more) => {
    const kept = {
      ...seed,
      days: seed.days + way * more,
      delayHours: seed.delayHours + way * more * hours,
    };
    return beyond(turn, placeCostOf(kept, weak, input));
  });
}

/** "if 12 in 100 of its jars came out weak instead of 6, or if …"; null where no figure would turn the order. */
function figuresIn(turn: Turn, input: NextInput): string | null {
  const { seed, dearer, weak } = turn;
  const ofOwn = hasOwnScore(turn);
  const [chance, days] = [turningWeak(turn, input), turningDays(turn, input)];
  const score = ofOwn ? turningScore(turn, input) : null;
  const said = [
    ...(chance === null
      ? []
      : [`${chance} in 100 of its jars came out weak instead of ${Math.round(100 * weak)}`]),
    ...(score === null || !seed.vigour
      ? []
      : [`its batch scored ${score} or ${dearer ? 'less' : 'more'} instead of ${shown(seed.vigour.points)}`]),
    ...(days === null
      ? []
      : [`it had stood ${KEPT[seed.place]} for ${daysWords(days)} ${dearer ? 'more' : 'less'}`]),
  ];
  const [last, ...before] = said.toReversed();
  if (last === undefined) return null;
  const all = before.length === 0 ? `if ${last}` : `${before.toReversed().map((one) => `if ${one}`).join(', ')}, or if ${last}`; // prettier-ignore
  return `${all}.${ofOwn && score === null ? ' No score of its batch would do it alone.' : ''}`;
}

const FRESH = {
  dearer: 'if what starts a line were dearer, or lines lasted less long',
  cheaper: 'if what starts a line were cheaper, or lines lasted longer',
} as const;

const apart = (one: Ranked, other: Ranked): number => Math.abs((one.placeCost ?? 0) - (other.placeCost ?? 0));

/** "A good jar from it costs 0.14 EUR less.": by what it costs, whatever it counts as for its place. */
function gapSays(ranked: Ranked, other: Ranked, unit: string): string {
  const more = (ranked.cost ?? 0) - (other.cost ?? 0);
  if (Math.abs(more) < APART) return 'A good jar from either costs the same.';
  const far = Math.abs(more).toFixed(2);
  const gap = unit !== 'jars' ? `${far} ${unit}` : Number(far) < 1 ? `${far} of a jar` : `${far} jars`;
  return `A good jar from it costs ${gap} ${more < 0 ? 'less' : 'more'}.`;
}

/** What would turn the order of two that cost decides between. @param act "lose its place to 3 Mar b" */
function turned(
  ranked: Ranked,
  other: Ranked,
  first: boolean,
  act: string,
  seeds: ReadonlyMap<string, SeedCandidate>,
  input: NextInput,
): string {
  const costs = gapSays(ranked, other, input.unit);
  const fresh = ranked.kind === 'fresh start';
  // A fresh start has nothing to be seen yet: its own costs are said, and what would move the other.
  const [moving, still] = fresh ? [other, ranked] : [ranked, other];
  const seed = moving.id === null ? undefined : seeds.get(moving.id);
  if (!seed || moving.weakChance === null || still.placeCost === null)
    throw new Error('a seed is held against a seed or a fresh start');
  const turn: Turn = {
    seed,
    weak: moving.weakChance,
    dearer: first !== fresh,
    than: still.placeCost,
    otherBatch: (still.id !== null && seeds.get(still.id)?.batch) || null,
  };
  if (fresh) {
    const chance = turningWeak(turn, input);
    const own = FRESH[first ? 'dearer' : 'cheaper'];
    return chance === null
      ? `It would ${act} only ${own}. ${costs}`
      : `It would ${act} ${own}, or if ${chance} in 100 jars from the other came out weak instead of ${Math.round(100 * turn.weak)}. ${costs}`;
  }
  const figures = figuresIn(turn, input);
  if (figures !== null) return `It would ${act} ${figures} ${costs}`;
  const looked = hasOwnScore(turn) ? 'chance of a weak jar, score or time kept' : 'chance of a weak jar or time kept'; // prettier-ignore
  return `No ${looked} alone would make it ${act}. ${costs}`;
}

/**
 * The nearest before it (of the first of all: after it) that is further off than as good as equal, where cost decides all the
 * way there. A fresh start is held against its neighbour alone.
 */
function nextApart(at: number, all: readonly Ranked[]): Ranked | null {
  const ranked = all[at];
  if (!ranked || ranked.kind === 'fresh start') return null;
  const onTheWay = at === 0 ? all.slice(1).filter((one) => costDecides(ranked, one)) : all.slice(0, at).toReversed(); // prettier-ignore
  const found = onTheWay.findIndex((one) => apart(ranked, one) >= APART || !costDecides(ranked, one));
  const other = onTheWay[found];
  return other && costDecides(ranked, other) ? other : null;
}

/**
 * What would change the place of one that may be used, against the one before it (of the first: the one that would take its
 * place). What stands last for another reason than cost says what has to be looked into; a score is never said to change it.
 * @param all of what may be used, in order @param seeds the candidates, by id
 */
export function wouldChange(
  at: number,
  all: readonly Ranked[],
  seeds: ReadonlyMap<string, SeedCandidate>,
  input: NextInput,
): string {
  const ranked = all[at];
  if (!ranked || all.length < 2) return 'Nothing else may be used, so nothing would.';
  if (ranked.tells === 'held line') {
    const { label } = (ranked.id !== null && seeds.get(ranked.id)?.heldAncestor) || { label: 'that jar' };
    return `Looking into ${label} would change its place, and no score would: it stands after the others until that hold is lifted with a written reason.`;
  }
  if (ranked.tells === 'in doubt')
    return 'No score would change its place: it stands after every seed without such a doubt, unless what was written down of it is wrong and is corrected.';
  const other = at === 0 ? all.find((next, i) => i > 0 && costDecides(ranked, next)) : all[at - 1];
  if (!other) return 'Cost alone would change nothing: what else is kept has to be looked into first, or is in doubt.'; // prettier-ignore
  if (!costDecides(ranked, other))
    return `It stands after ${other.label} until somebody writes down how it came out.`;
  const first = at === 0;
  if (apart(ranked, other) >= APART) {
    const act = first ? `lose its place to ${other.label}` : `come before ${other.label}`;
    return turned(ranked, other, first, act, seeds, input);
  }
  const equal = `It is as good as ${other.label}: either may come first (less than 0.01 apart).`;
  const next = nextApart(at, all);
  if (!next) return equal;
  const act = `come ${first ? 'after' : 'before'} ${next.label}`;
  return `${equal} ${turned(ranked, next, first, act, seeds, input)}`;
}
