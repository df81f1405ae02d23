// What can't be within one fact, whoever tells it. What can't be beside other facts is asked where they are known. Pure.
import type { FactKind } from './fact-fields';
import { REMARKED } from './seen-facts';

type Given = Readonly<Record<string, unknown>>;
export interface Wrong {
  readonly field: string;
  /** Goes after the field's name: "is only possible of a tint or a jelly". */
  readonly problem: string;
}

/** Exactly one of these fields is filled. */
const EXACTLY_ONE: Partial<Record<FactKind, readonly string[]>> = {
  seeding: ['fromJar', 'source'],
  use: ['milk', 'addition', 'seeding', 'batch'],
  remark: REMARKED,
  sign: ['observation', 'remark'],
  movement: ['jar', 'portion'],
  labResult: ['jar', 'portion'],
  mark: ['rank', 'score', 'word', 'picked'],
};

/** The first of each pair is no later, or no more, than the second. */
const IN_ORDER: Partial<Record<FactKind, readonly (readonly [string, string])[]>> = {
  hold: [
    ['began', 'ended'],
    ['plannedFrom', 'plannedTo'],
  ],
  stay: [
    ['came', 'went'],
    ['plannedCame', 'plannedWent'],
  ],
  interruption: [['began', 'ended']],
  observation: [['setAfterHours', 'setByHours']],
};

/** When it was: a day or a moment, not both. */
const WHEN: ReadonlySet<FactKind> = new Set(['observation', 'movement']);
/** What only goes with something else of the same fact. */
const ONLY_WITH: Partial<
  Record<FactKind, readonly (readonly [field: string, other: string, values: readonly unknown[]])[]>
> = {
  observation: [
    ['daysOpen', 'stage', ['opened', 'later']],
    ['powerCutHours', 'powerCut', [true]],
  ],
  series: [['jar', 'place', ['jar']]],
};
const FIBRE_EXPLAINS: readonly unknown[] = ['tint', 'jelly', 'tint or jelly'];

const filled = (value: unknown): boolean => value !== null && value !== undefined;
// Of what is no moment nothing is known: it is refused for that.
const sizeOf = (value: unknown): number => (typeof value === 'string' ? Date.parse(value) : Number(value));

/** What is wrong within a fact, or null. Fields are those of FACTS, with references in any form. */
export function wrongIn(kind: FactKind, fact: Given): Wrong | null {
  const one = EXACTLY_ONE[kind];
  if (one && one.filter((field) => filled(fact[field])).length !== 1) {
    return { field: one.join(', '), problem: 'exactly one of these is needed' };
  }
  for (const [first, second] of IN_ORDER[kind] ?? []) {
    if (filled(fact[first]) && filled(fact[second]) && sizeOf(fact[first]) > sizeOf(fact[second])) {
      return { field: second, problem: `is before ${first}` };
    }
  }
  if (WHEN.has(kind) && filled(fact.day) && filled(fact.at)) {
    return { field: 'day', problem: 'is given beside a moment; one of the two is enough' };
  }
  for (const [field, other, values] of ONLY_WITH[kind] ?? []) {
    if (filled(fact[field]) && !values.includes(fact[other])) {
      return { field, problem: `only goes with ${other} ${values.map(String).join(' or ')}` };
    }
  }
  if (kind === 'sign' && fact.answer === 'the fibre' && !FIBRE_EXPLAINS.includes(fact.kind)) {
    return { field: 'answer', problem: 'a fibre explains a tint or a jelly and nothing else' };
  }
  return null;
}
