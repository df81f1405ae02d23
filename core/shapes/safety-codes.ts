// The words of safety that other rooms need as well: what stops a jar, what the gate and the clocks of the first day said,
// and what lineage keeps of one jar. Codes only; core/safety finds them, core/says makes the sentences.
import type { DiscardSign } from '../ledger/records';
import type { Caution, CautionLevel } from './caution-codes';

/** A pH and how it was measured. */
export interface Measured {
  readonly ph: number;
  readonly how: 'meter' | 'strip' | 'not said';
  /** Whether the meter was checked in buffer that day; null: not noted, which proves as little as *no*. */
  readonly checked: boolean | null;
}

/**
 * passed; failed: not set, in its own word; thickened: it smells sour, and its set says nothing because of what was stirred in,
 * so that a plain mate or the meter has to speak; not noted: neither passed nor failed.
 */
export type Gate = 'passed' | 'failed' | 'thickened' | 'not noted';

/** What the clocks of the first day told. */
export interface SlowStart {
  /**
   * too late: discard, not set in time. meter only: not sour at 24 h, so that only a meter at take-out lets it be eaten, and
   * nothing lets it seed. look: not sour, or above 5.7, at 12 h; or loose at 24 h.
   */
  readonly kind: 'too late' | 'meter only' | 'look';
  /** Hours at which it was seen; null: not said, taken for twelve. */
  readonly hours: number | null;
  readonly ph: number | null;
  readonly loose: boolean;
  readonly sourless: boolean;
}

/** Why a jar is neither food nor seed; null where it is not so. A remark counts as *discard* until it is answered. */
export const DISCARDS = ['spoiled', 'not set', 'remark'] as const;
export type Discard = (typeof DISCARDS)[number];

/** What lineage keeps of the safety of one jar. */
export interface JarSafety {
  readonly discard: Discard | null;
  readonly gate: Gate;
  /** That it smells sour or shows 4.6 or less; false: neither was found; null: nothing was noted. */
  readonly acid: boolean | null;
  /** A meter, checked that day, showed 4.6 or less. */
  readonly metered: boolean;
  /** A pH above 4.6 was measured, and nothing says that it set: unknown is not *not set*, and milk without acid is no seed. */
  readonly noAcid: Pick<Measured, 'ph' | 'how'> | null;
  /** Nothing was stirred in that may thicken. */
  readonly plain: boolean;
  /** It passed the gate and was seen clean again five days later, or on opening. Seen clean is no test for germs. */
  readonly clean: boolean;
  /** Its signs were first seen after opening, in a jar without one before: the day of the first, and that of opening. */
  readonly opened: { readonly signOn: string | null; readonly openedOn: string | null } | null;
  /** What the first day told against it. */
  readonly start: SlowStart['kind'] | null;
  /** The keeper has read a remark on it as *look*. */
  readonly remarkLooks: boolean;
  /** Cautions because of it never end by themselves: bath water, a foul smell, a slow start. */
  readonly forever: boolean;
}

/** Of which nothing was seen. */
export const UNSEEN: JarSafety = {
  discard: null, gate: 'not noted', acid: null, metered: false, noAcid: null, plain: true, clean: false, opened: null, start: null, remarkLooks: false, forever: false,
}; // prettier-ignore

/**
 * What stops a jar. The three of *discard*; set aside because of a spoiled jar; needs the meter: half its batch or more did
 * not set; slow start: not sour at 24 h, so that a meter may let it be eaten and nothing lets it seed; no acid: a pH above
 * 4.6 was measured, and nothing says that it set.
 */
export const SAFETY_STOPS = [
  'spoiled',
  'not set',
  'remark',
  'set aside',
  'needs the meter',
  'slow start',
  'no acid',
] as const;
export type SafetyStop = (typeof SAFETY_STOPS)[number];

/** What has to be looked at or asked first. */
export const SAFETY_LOOKS = ['caution', 'slow start', 'thickened', 'not noted', 'remark'] as const;
export type SafetyLook = (typeof SAFETY_LOOKS)[number];

/** The one answer on a jar. */
export interface Answer {
  readonly discard: Discard | null;
  readonly level: CautionLevel | null;
  /** The caution that counts of those that stand on it: the gravest. */
  readonly because: Caution | null;
  /** Whether anything forbids it, as far as is known; that nothing does is no proof. */
  readonly eat: boolean;
  readonly seed: boolean;
  /** Gravest first. */
  readonly stops: readonly SafetyStop[];
  /** The value that *no acid* rests on. */
  readonly noAcid: JarSafety['noAcid'];
  readonly looks: readonly SafetyLook[];
}

/** What stops a candidate for seed: those, and the keeper's own limits. */
export const STOP_CODES = [
  'spoiled', 'condemned', 'set aside', 'failed the gate', 'remark', 'needs the meter', 'slow start', 'in its hold', 'too old', "keeper's limit",
] as const; // prettier-ignore

/** Why the gate says what it says of a form. */
export type GateReason =
  | { readonly code: 'sign'; readonly signs: readonly DiscardSign[] }
  | { readonly code: 'said' | 'bubbles' | 'thickened' }
  /** thick: it held together, and does not smell sour. unchecked: what a meter showed that nobody had checked. */
  | { readonly code: 'not set'; readonly thick: boolean; readonly unchecked: number | null }
  /** A meter showed 4.6 or less, and was not checked that day. failed: it was, and it was wrong. */
  | { readonly code: 'unchecked'; readonly ph: number; readonly failed: boolean }
  | { readonly code: 'too late'; readonly hours: number; readonly ph: number }
  | { readonly code: 'acid'; readonly ph: number; readonly how: Measured['how'] }
  | ({ readonly code: 'slow start' } & SlowStart)
  | { readonly code: 'power cut'; readonly hours: number | null };

/** What a remark may say became of its jar. */
export const GONE_WORDS = ['eaten up', 'discarded', 'gone'] as const;
export type GoneWord = (typeof GONE_WORDS)[number];
