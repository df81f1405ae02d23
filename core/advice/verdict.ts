// The verdict on a line: the one function that says whether to go on, from which jar, or to start afresh, and the one reason
// that decides. It is read off the ranking and the posterior behind it, so no other reading of them can say otherwise. Codes
// and figures; core/says/verdict-says.ts makes the sentence.
import { changedIn } from '../vigour/changed';
import { FALLEN_BY } from '../vigour/level/line-level';
import type { LineJudgement } from '../vigour/line';
import { STANDING_RULES } from '../vigour/standing';
import { pointsBelow } from '../vigour/trend';
import type { VerdictWord, VerdictReason } from '../shapes/advice-replies';
import type { SeedLook } from '../shapes/seed-codes';
import { AS_GOOD_COST } from './ties';
import type { NextAdvice, Ranked } from './seed-candidate';

/** As it is replied, but what is to be looked at is still a code. */
export type VerdictBecause =
  Exclude<VerdictReason, { code: 'look' }> | { readonly code: 'look'; readonly look: SeedLook };

export interface Verdict {
  readonly word: VerdictWord;
  readonly reason: VerdictBecause;
  /** Id of the seed; null: a fresh start, or none yet. */
  readonly seed: Ranked | null;
  /** What is as good as the seed, in order; of a fresh start without capsules at home the best that is left. */
  readonly asGood: readonly Ranked[];
  /** What has to be looked at before the seed is used. */
  readonly look: readonly SeedLook[];
}

const inHundred = ({ weakChance }: Ranked): number => Math.round(100 * (weakChance ?? 0));

/** Why a fresh start stands first. @param seeds all else that may be used, in order */
function afreshBecause(judgement: LineJudgement, seeds: readonly Ranked[]): VerdictBecause {
  const [best] = seeds;
  if (!best) return { code: 'nothing may be used' };
  if (best.tells === 'in doubt') return { code: 'all in doubt' };
  const { trend } = judgement;
  // The least of all: what is said then holds whichever of them is used.
  const chance = Math.min(...seeds.filter(({ tells }) => tells !== 'in doubt').map(inHundred));
  // Without what it may carry on from a spoiled batch, going on would pay.
  if (best.carries > 0 && (best.worth ?? 0) + best.carries > 0) return { code: 'may be carried' };
  // A figure is named only where it is reason enough by itself.
  if (chance >= 20) return { code: 'weak jars to come', inHundred: chance };
  const fallen = trend ? pointsBelow(trend) : 0;
  const called = judgement.standing === 'slipping' || judgement.standing === 'worn out';
  return called && fallen >= 10 ? { code: 'fallen', points: fallen } : { code: 'a start pays' };
}

/** What is to be looked at before a seed is used. */
function lookBecause(judgement: LineJudgement, seed: Ranked): VerdictBecause | null {
  const [look] = seed.looks;
  if (look !== undefined) return { code: 'look', look };
  if (seed.tells === 'unseen') return { code: 'unseen' };
  const changed = changedIn(judgement);
  if (changed) return changed;
  if (judgement.blocked.length > 0 && (judgement.trend?.drop ?? 0) > 10)
    return { code: 'untold', treatments: [...judgement.blocked] };
  return seed.keptSaid ? null : { code: 'not said to be kept' };
}

/** Why a reserve stands first: said as it is, so that a dear one is never praised above a fresh jar that only waits. */
function reserveBecause(reserve: Ranked, seeds: readonly Ranked[]): VerdictBecause {
  const fresh = seeds.filter(({ kind }) => kind !== 'reserve');
  const [first] = fresh;
  if (!first) return { code: 'nothing fresh' };
  const waits = first.tells !== reserve.tells || first.looks.length > 0;
  if (waits && (first.cost ?? Infinity) <= (reserve.cost ?? Infinity))
    return { code: 'fresh waits', label: first.label, doubt: first.tells === 'in doubt' };
  // A chance is named only where it is the better one.
  return fresh.some((other) => inHundred(other) > inHundred(reserve))
    ? { code: 'reserve is better', inHundred: inHundred(reserve) }
    : { code: 'reserve stands higher' };
}

/** Whether a jar of a later day may be used too and promises less, by the chance that is said of both. */
const newerIsWorse = (seed: Ranked, seeds: readonly Ranked[]): boolean =>
  seeds.some(
    (other) =>
      (other.kind === 'jar' || other.kind === 'older sibling') &&
      other.days < seed.days &&
      inHundred(other) > inHundred(seed),
  );

/** Why going on from a seed with nothing to look at is right. @param seeds all that may be used, in order */
function goOnBecause(
  judgement: LineJudgement,
  seed: Ranked,
  seeds: readonly Ranked[],
): { word: VerdictWord; reason: VerdictBecause } {
  const compared = judgement.batches.filter(({ points }) => points !== null).length;
  const { standing } = judgement;
  if (seed.kind === 'reserve') return { word: 'take the reserve', reason: reserveBecause(seed, seeds) };
  if (compared < STANDING_RULES.fewest)
    return { word: 'too early to say', reason: { code: 'few batches', batches: compared } };
  if (seed.kind === 'older sibling' && newerIsWorse(seed, seeds))
    return { word: 'go on', reason: { code: 'older is better', inHundred: inHundred(seed) } };
  if (standing === 'slipping' || standing === 'worn out')
    return { word: 'go on, but look first', reason: { code: 'slipping', inHundred: inHundred(seed) } };
  // Not yet sure enough to be called a slip, and still to be said.
  const { trend } = judgement;
  if (standing !== 'steady' && trend && trend.drop > FALLEN_BY)
    return { word: 'go on', reason: { code: 'stands lower', points: pointsBelow(trend) } };
  return { word: 'go on', reason: { code: standing === 'steady' ? 'steady' : 'no slip seen' } };
}

/** The verdict on one line. @param next the ranking of what carries the line */
export function verdictOf(judgement: LineJudgement, next: NextAdvice): Verdict {
  const offered = next.ranking.filter(({ allowed }) => allowed);
  const [first] = offered;
  const seeds = offered.filter(({ kind }) => kind !== 'fresh start');
  if (!first || first.kind === 'fresh start') {
    const waiting = next.ranking.find(
      ({ stops }) => stops.length > 0 && stops.every(({ code }) => code === 'in its hold'),
    );
    if (seeds.length === 0 && waiting)
      return {
        word: 'too early to say',
        reason: { code: 'in its hold', label: waiting.label },
        seed: null,
        asGood: [],
        look: [],
      };
    const best = seeds[0] ?? null;
    const reason = afreshBecause(judgement, seeds);
    const noMore = reason.code === 'all in doubt' || reason.code === 'may be carried';
    const left = best && !noMore ? [best] : [];
    return {
      word: 'start afresh',
      reason,
      seed: first ?? null,
      asGood: left,
      look: left.flatMap(({ looks }) => looks),
    };
  }
  const close = AS_GOOD_COST * next.jar;
  // A reserve is kept back while something fresh is as good.
  const asGood = seeds
    .slice(1)
    .filter(
      (other) =>
        other.tells === first.tells &&
        (other.kind !== 'reserve' || first.kind === 'reserve') &&
        Math.abs((other.placeCost ?? 0) - (first.placeCost ?? 0)) <= close,
    );
  const looked = lookBecause(judgement, first);
  const said =
    looked && first.kind !== 'reserve'
      ? { word: 'go on, but look first' as const, reason: looked }
      : goOnBecause(judgement, first, seeds);
  return { ...said, seed: first, asGood, look: first.looks };
}
