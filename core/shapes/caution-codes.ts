// What a caution is: how a spoiled jar touches another, and how gravely. Codes only.
export const CAUTION_LEVELS = ['condemned', 'set aside', 'look'] as const;
export type CautionLevel = (typeof CAUTION_LEVELS)[number];
/**
 * How a spoiled jar touches another. 'seeded by it': directly (steps 1) or further down. 'same batch': a mate of which nobody
 * noted whether it stood in the same hold. 'same hold, not set': a mate of a jar that only did not set. 'seeded before': from a jar that showed its sign after opening, more than seven days before it. 'from
 * a mate': descends from a set-aside mate, not from the spoiled jar.
 */
export const CAUTION_RELATIONS = [
  'itself', 'seeded by it', 'same hold', 'same batch', 'seeded it', 'same seed', 'same package', 'same hold, not set', 'seeded before', 'from a mate',
] as const; // prettier-ignore
export type CautionRelation = (typeof CAUTION_RELATIONS)[number];

export interface Caution {
  /** The spoiled jar. */
  readonly of: number;
  readonly level: CautionLevel;
  readonly relation: CautionRelation;
  readonly steps: number;
  /** The nearest set-aside mate, where it descends from one. */
  readonly via: number | null;
  /** The written reason that lifted it, or null while it stands. */
  readonly cleared: string | null;
  /** It ended by itself: on each path two successive generations passed the gate and were seen clean again. */
  readonly ended: boolean;
  /** It is of those that end by themselves. */
  readonly mayEnd: boolean;
  /** Where it stands: the reason that lifted it before, for what was known of the spoilage then. */
  readonly liftedBefore: string | null;
}

/** Whether a caution stands: neither lifted nor ended. */
export const stands = ({ cleared, ended }: Pick<Caution, 'cleared' | 'ended'>): boolean =>
  cleared === null && !ended;
