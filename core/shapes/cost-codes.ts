// What things cost, and why something has no price. Codes and figures only.

/** Why something has no price. 'not weighed': spoonfuls of what is sold by weight. */
export const UNPRICED = [
  'no package',
  'no price',
  'no size',
  'no amount',
  'not weighed',
  'other money',
] as const;
export type Unpriced = (typeof UNPRICED)[number];

/** An amount of money in minor units of its currency. */
export interface Spent {
  readonly minor: number;
  readonly currency: string;
}

/** What one thing usually costs. */
export interface UsualCost {
  readonly what: 'milk' | 'addition' | 'start';
  readonly name: string;
  /** In minor units, whole; null where none could be priced. */
  readonly usual: Spent | null;
  /** Jars, or of a start batches: so many were priced, of so many. */
  readonly priced: number;
  readonly of: number;
  /** Of the others, why, the commonest first. */
  readonly unpriced: readonly { readonly why: Unpriced; readonly times: number }[];
  /** Jars in what costs so much: more than one only of a start (the median). */
  readonly jars: number;
}
