// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop or answer a doubt; the keeper decides.
import { shown } from '../vigour/score';
import { stopsOf } from './stops';
import type { NextAdvice, NextInput, Ranked, SeedCandidate } from './seed-candidate';
import { looksOf, placeCostOf } from './looks';
import { inOrder } from './ranking-order';
import { seedCost, weakFrom } from './seed-cost';

/** Whether it was seen how a jar came out; one in doubt comes last. */
const tellsOf = ({ doubts, outcomeKnown }: SeedCandidate): Ranked['tells'] =>
  doubts.length > 0 ? 'in doubt' : outcomeKnown ? 'seen' : 'unseen';

function rankOf(candidate: SeedCandidate, input: NextInput): Ranked {
  const { id, label, kind, doubts, keptSaid, passed, discard, days } = candidate;
  const stops = stopsOf(candidate, input.limits);
  const allowed = stops.length === 0;
  const weak = weakFrom(candidate, input);
  return {
    id,
    label,
    kind,
    allowed,
    tells: tellsOf(candidate),
    doubts,
    looks: looksOf(candidate),
    keptSaid,
    passed,
    discard,
    level: candidate.caution?.level ?? null,
    stops,
    cost: allowed ? seedCost(candidate, weak, input) : null,
    placeCost: allowed ? placeCostOf(candidate, weak, input) : null,
    own: candidate.own && shown(candidate.own.points),
    days,
    worth: candidate.level?.worth ?? null,
    carries: candidate.level?.carries ?? 0,
    weakChance: allowed ? weak : null,
    candidate,
  };
}

const freshStart = ({ freshLabel, freshStart: { cost } }: NextInput): Ranked => ({
  id: null,
  label: freshLabel,
  kind: 'fresh start',
  allowed: true,
  tells: 'seen',
  doubts: [],
  looks: [],
  keptSaid: true,
  passed: true,
  discard: null,
  level: null,
  stops: [],
  cost,
  placeCost: cost,
  own: null,
  days: 0,
  worth: null,
  carries: 0,
  weakChance: null,
  candidate: null,
});

/** Ranks what could seed the next batch. */
export function adviseNext(input: NextInput): NextAdvice {
  const seeds = input.candidates.map((candidate) => rankOf(candidate, input));
  const [usable, stopped] = [seeds.filter(({ allowed }) => allowed), seeds.filter(({ allowed }) => !allowed)];
  const lastOf = [...input.lineNames.keys()].flatMap((line) => {
    const carries = usable.flatMap(({ candidate }) => (candidate?.lines.includes(line) ? candidate : []));
    const [only] = carries;
    return carries.length === 1 && only ? [{ only, line }] : [];
  });
  return {
    jar: input.costs.jar,
    ranking: [...inOrder(usable, freshStart(input), input.costs.jar), ...stopped],
    nothingMayBeUsed: usable.length === 0,
    lastOf,
  };
}
