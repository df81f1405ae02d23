// What became of a jar or a portion.
import { amount, day, maybe, moment, oneOf, ref, text, whole } from './fact-fields';

const MOVEMENT_KINDS = [
  'fridge', 'freezer', 'thawed', 'opened', 'eaten', 'given', 'discarded', 'gone', 'still there',
] as const; // prettier-ignore
export type MovementKind = (typeof MOVEMENT_KINDS)[number];

export const kept = {
  /**
   * Of exactly one of jar and portion, on a day, at a moment, or nobody said when. An amount of null is some where it was
   * eaten, all where it was given or discarded.
   */
  movement: {
    jar: maybe(ref('jar')),
    portion: maybe(ref('portion')),
    kind: oneOf(MOVEMENT_KINDS),
    day: maybe(day()),
    at: maybe(moment()),
    amount: maybe(amount()),
    pieces: maybe(whole(1, 10_000)),
    /** Id of the hand-over that went with it. */
    handOver: maybe(text(/^[0-9a-f-]{36}$/)),
  },
} as const;
