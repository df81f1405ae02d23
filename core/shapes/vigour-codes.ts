// The words of judgement that other rooms need as well: the parts of a score, what is said of a line, what may be behind a fall.

export const PART_NAMES = ['set time', 'early pH', 'early set', 'end pH', 'set word', 'whey'] as const;
export type PartName = (typeof PART_NAMES)[number];

/** What is said of a line. */
export const STANDINGS = [
  'too few batches to say',
  'steady',
  'no slip seen',
  'slipping',
  'worn out',
] as const;
export type Standing = (typeof STANDINGS)[number];

export const ASPECTS = ['seed amount', 'seed part', 'dose', 'vessel', 'carton', 'hold hours'] as const;
export type Aspect = (typeof ASPECTS)[number];

/** How much or what it is now, and what it was; numbers in mL (seed), in `unit` (dose), or in hours of a hold. */
export interface MadeChange {
  readonly aspect: Aspect;
  readonly now: number | string;
  readonly before: number | string | null;
  readonly unit: string | null;
}

/** What else than the culture may be behind a fall. */
export type Suspect =
  /** Never corrected for: it came later, with no sibling to tell it by. */
  | {
      readonly code: 'treatment';
      readonly name: string;
      readonly batches: number;
      readonly generation: number;
    }
  | {
      readonly code: 'made otherwise';
      readonly since: string | null;
      readonly changes: readonly MadeChange[];
    }
  | { readonly code: 'ran cool' | 'short of warmth'; readonly days: readonly (string | null)[] }
  | { readonly code: 'old seed'; readonly batches: number; readonly olderThan: number };

/** What a correction of a score is for. */
export type CorrectionFor =
  | { readonly code: 'short of warmth'; readonly hours: number }
  /** Hours by which its storage should delay the jar beyond what is usual; below 0: less. */
  | {
      readonly code: 'seed waited';
      readonly fridgeDays: number;
      readonly frozenDays: number;
      readonly usualDays: number;
      readonly hours: number;
    }
  /** What siblings show that it does (points), and in how many sets of them. */
  | { readonly code: 'treatment'; readonly does: number; readonly sets: number };
