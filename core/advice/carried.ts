// What a seed may carry on unseen: a contamination that is there before anything shows. A batch in which nearly every jar
// spoils is commonly no accident of that day: its seed brought it, and what shares that past brings it too. A hidden chain of
// three states along the seeds (clean, carried unseen, shown), told by which batches spoiled; now and then a batch spoils by an
// accident of its own day (Pearl 1988, belief propagation,
// from memory). It weighs costs; what may be used at all is for the safety rules to say.

import { LATER } from './worth';

/** One batch: what seeded it, and of how many jars that were looked at so many spoiled. */
export interface SpoilRecord {
  /** Place of the batch that seeded it, before it in the list; null: sources or an unknown past. */
  readonly parent: number | null;
  readonly jars: number;
  readonly spoiled: number;
}

/** Chances for a batch seeded from one. */
export interface Carried {
  /** It carries something that does not show in it yet, by how far that has grown. */
  readonly unseen: readonly number[];
  /** It shows in it: its jars spoil. */
  readonly shows: number;
}

/** Common practice and judgement, no source: what they are worth is measured in simulated kitchens (npm run bench:verdict). */
export const CARRIED_RULES = {
  /** Chance a batch that it catches something. */
  catches: 0.004,
  /** Chance a batch that what is carried unseen grows by one of its steps, after the last of which it shows. */
  grows: 0.64,
  /** Chance that a whole batch spoils by an accident of its own. */
  accident: 0.0007,
  /** Chance that a jar spoils by itself, and where it shows or an accident does it. */
  spoilsAlone: 0.015,
  spoilsShown: 0.97,
  /** A chance below this is not said: no line reaches it of which no batch spoiled. */
  toldFrom: 0.1,
} as const;

/** Steps in which it grows before it shows; so many and `grows` make it show after three batches at the earliest, five on average. */
const STEPS = 3;
/** Weights of clean, the steps unseen, shown. */
type States = readonly number[];
const SHOWN = STEPS + 1;
const PLACES = Array.from({ length: STEPS + 2 }, (_, state) => state);

/** How well what was seen of a batch agrees with each state. */
function agrees({ jars, spoiled }: SpoilRecord): States {
  const { spoilsAlone, spoilsShown, accident } = CARRIED_RULES;
  const by = (chance: number): number => chance ** spoiled * (1 - chance) ** (jars - spoiled);
  const alone = (1 - accident) * by(spoilsAlone) + accident * by(spoilsShown);
  return PLACES.map((state) => (state === SHOWN ? by(spoilsShown) : alone));
}

/** Chance that a batch is one state further than its seed. */
const onwards = (state: number): number =>
  state === SHOWN ? 0 : state === 0 ? CARRIED_RULES.catches : CARRIED_RULES.grows;

/** States of the next batch from those of its seed. */
const next = (states: States): States =>
  states.map(
    (weight, at) =>
      weight * (1 - onwards(at)) + (at === 0 ? 0 : (states[at - 1] as number) * onwards(at - 1)),
  );

/** What the evidence about a batch tells of its seed. */
const back = (states: States): States =>
  states.map((weight, at) => weight * (1 - onwards(at)) + (states[at + 1] ?? 0) * onwards(at));

const times = (a: States, b: States): States => a.map((one, at) => one * (b[at] as number));
function scaled(states: States): States {
  const total = states.reduce((sum, one) => sum + one, 0);
  return states.map((one) => one / total);
}

/**
 * What the next batch from each batch may carry, all that spoiled taken in.
 * @param batches in order of making, each after the one that seeded it
 */
export function carriedFrom(batches: readonly SpoilRecord[]): Carried[] {
  const evidence = batches.map(agrees);
  const told = batches.map((): States => PLACES.map(() => 1));
  for (let at = batches.length - 1; at >= 0; at--) {
    const parent = batches[at]?.parent ?? null;
    told[at] = scaled(back(evidence[at] as States));
    if (parent !== null) evidence[parent] = scaled(times(evidence[parent] as States, told[at] as States));
  }
  const states: States[] = [];
  batches.forEach(({ parent }, at) => {
    const seed = parent === null ? null : (states[parent] as States);
    // Without what the batch itself told of its seed, which would count twice.
    const rest: States =
      seed === null ? PLACES.map((state) => (state === 0 ? 1 : 0)) : divided(seed, told[at] as States);
    states.push(scaled(times(next(rest), evidence[at] as States)));
  });
  return states.map((state) => {
    const unseen = next(state);
    return { unseen: unseen.slice(1, SHOWN), shows: unseen[SHOWN] as number };
  });
}

const LEAST = 1e-300;
const divided = (a: States, b: States): States =>
  scaled(a.map((one, at) => one / Math.max(LEAST, b[at] as number)));

/** What is carried unseen ends the line once it shows, some batches on, each of which counts a little less: by step, so much counts now. */
const LATER_ON = Array.from({ length: STEPS }, (_, step) => {
  const one = (CARRIED_RULES.grows * LATER) / (1 - (1 - CARRIED_RULES.grows) * LATER);
  return one ** (STEPS - step);
});

export const NOTHING_CARRIED: Carried = { unseen: [], shows: 0 };

/** The chance that anything is carried. */
export const mayCarry = ({ unseen, shows }: Carried): number => unseen.reduce((sum, one) => sum + one, shows);

/**
 * What that costs in jars' worth: where it shows, a batch is lost and a fresh start has to follow, since by then all that is
 * kept shares it.
 * @param batch jars of a batch, @param start what a fresh start costs (jars)
 */
export const carriedCost = ({ unseen, shows }: Carried, batch: number, start: number): number =>
  unseen.reduce((sum, one, step) => sum + (LATER_ON[step] as number) * one, shows) * (batch + start);
