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
  /** It carries something that does not show in it yet. */
  readonly unseen: number;
  /** It shows in it: its jars spoil. */
  readonly shows: number;
}

/** Common practice and judgement, no source: what they are worth is measured in simulated kitchens (npm run bench:verdict). */
export const CARRIED_RULES = {
  /** Chance a batch that it catches something, and that what is carried shows in the next. */
  catches: 0.004,
  shows: 0.22,
  /** Chance that a whole batch spoils by an accident of its own. */
  accident: 0.0007,
  /** Chance that a jar spoils by itself, and where it shows or an accident does it. */
  spoilsAlone: 0.015,
  spoilsShown: 0.97,
  /** A chance below this is not said: no line reaches it of which no batch spoiled. */
  toldFrom: 0.1,
} as const;

type States = readonly [clean: number, unseen: number, shown: number];

/** How well what was seen of a batch agrees with each state. */
function agrees({ jars, spoiled }: SpoilRecord): States {
  const { spoilsAlone, spoilsShown, accident } = CARRIED_RULES;
  const by = (chance: number): number => chance ** spoiled * (1 - chance) ** (jars - spoiled);
  const alone = (1 - accident) * by(spoilsAlone) + accident * by(spoilsShown);
  return [alone, alone, by(spoilsShown)];
}

/** States of the next batch from those of its seed. */
function next([clean, unseen, shown]: States): States {
  const { catches, shows } = CARRIED_RULES;
  return [clean * (1 - catches), clean * catches + unseen * (1 - shows), unseen * shows + shown];
}

/** What the evidence about a batch tells of its seed. */
function back([clean, unseen, shown]: States): States {
  const { catches, shows } = CARRIED_RULES;
  return [(1 - catches) * clean + catches * unseen, (1 - shows) * unseen + shows * shown, shown];
}

const times = (a: States, b: States): States => [a[0] * b[0], a[1] * b[1], a[2] * b[2]];
function scaled(states: States): States {
  const total = states[0] + states[1] + states[2];
  return [states[0] / total, states[1] / total, states[2] / total];
}

/**
 * What the next batch from each batch may carry, all that spoiled taken in.
 * @param batches in order of making, each after the one that seeded it
 */
export function carriedFrom(batches: readonly SpoilRecord[]): Carried[] {
  const evidence = batches.map(agrees);
  const told = batches.map((): States => [1, 1, 1]);
  for (let at = batches.length - 1; at >= 0; at--) {
    const parent = batches[at]?.parent ?? null;
    told[at] = scaled(back(evidence[at] as States));
    if (parent !== null) evidence[parent] = scaled(times(evidence[parent] as States, told[at] as States));
  }
  const states: States[] = [];
  batches.forEach(({ parent }, at) => {
    const seed = parent === null ? null : (states[parent] as States);
    // Without what the batch itself told of its seed, which would count twice.
    const rest: States = seed === null ? [1, 0, 0] : divided(seed, told[at] as States);
    states.push(scaled(times(next(rest), evidence[at] as States)));
  });
  return states.map((state) => {
    const [, unseen, shows] = next(state);
    return { unseen, shows };
  });
}

const LEAST = 1e-300;
const divided = (a: States, b: States): States =>
  scaled([a[0] / Math.max(LEAST, b[0]), a[1] / Math.max(LEAST, b[1]), a[2] / Math.max(LEAST, b[2])]);

/** What is carried unseen ends the line once it shows, some batches on, each of which counts a little less: so much counts now. */
const LATER_ON = (CARRIED_RULES.shows * LATER) / (1 - (1 - CARRIED_RULES.shows) * LATER);

/**
 * What that costs in jars' worth: where it shows, a batch is lost and a fresh start has to follow, since by then all that is
 * kept shares it.
 * @param batch jars of a batch, @param start what a fresh start costs (jars)
 */
export const carriedCost = ({ unseen, shows }: Carried, batch: number, start: number): number =>
  (shows + LATER_ON * unseen) * (batch + start);
