// A seed as the tests of advice take it: a good jar of a good batch, five days in the fridge.
import { adviseNext } from '../../core/advice/seed-ranking';
import { nextSays } from '../../core/says/next-says';
import type { NextInput, SeedCandidate } from '../../core/advice/seed-candidate';
import { CAUTION_LEVELS, type CautionRelation } from '../../core/shapes/caution-codes';
import type { SeedCaution } from '../../core/shapes/seed-codes';

/** A caution of a level because of 9 May a. */
export const cautionOf = (level: (typeof CAUTION_LEVELS)[number]): SeedCaution => ({
  level,
  relation: ({ condemned: 'itself', 'set aside': 'seeded by it', look: 'seeded it' } as const)[
    level
  ] satisfies CautionRelation,
  steps: 1,
  spoiled: level === 'condemned' ? null : '9 May a',
});

export const seedOf = (label: string, more: Partial<SeedCandidate> = {}): SeedCandidate => ({
  id: label, label, kind: 'jar', batch: label, lines: ['heron'], generation: 4, atLeast: false, pastUnknown: false,
  discard: null, spoiled: false, stops: [], passed: true, acidNotThere: null, caution: null,
  doubts: [], asks: [], quotes: [], inHold: false, keptSaid: true, place: 'fridge', days: 5, delayHours: 0.7, outcomeKnown: true,
  vigour: { points: 75, low: 68, high: 82 }, level: null, own: null,
  scored: { by: 'batch', range: { points: 75, low: 68, high: 82 }, counted: [], own: null, weak: null, apart: null, leftOut: null }, ...more,
}); // prettier-ignore

/** Costs and chances of a keeper with a line of eight generations. */
export const KEEPER = {
  unit: 'EUR',
  costs: { freshStart: 30, jarsPerGeneration: 4, jar: 2, weakKeeps: 0.25, unplanned: 12 },
  weak: [0.2, 0.05, 0.05, 0.05, 0.06, 0.08, 0.1, 0.15],
  discarded: [0.02],
  ended: [0.02],
  lastSeen: 8,
  jarsTell: 40,
  freshStart: { cost: 3.4, generations: 9 },
  freshLabel: 'a fresh start from Blue Tin',
  blocked: [],
  lineNames: new Map([['heron', 'Heron']]),
} as const satisfies Partial<NextInput>;

/** A ranking with all that is said of it. */
export const adviceSaid = (input: NextInput) => {
  const advice = adviseNext(input);
  const said = nextSays(advice, input);
  return { ...advice, ...said, warnings: said.lastOf.map(({ says }) => says) };
};
