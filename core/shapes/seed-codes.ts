// What speaks against a jar as a seed: what its own hold leaves in doubt, what is to be looked at first, what stops it. Codes
// and figures; core/says/seed-looks-says.ts makes the sentences.
import type { FailedWhat } from '../ledger/hold-interruptions';
import type { Caution, CautionLevel } from './caution-codes';
import type { REMARKED_OF } from './remark-calls';
import type { GateReason, Measured } from './safety-codes';

/** A power cut that another jar of the same hold tells of, or whatever else failed that was recorded of the hold itself. */
export interface MatesPowerCut {
  /** The jar that tells of it; null where it was recorded of the hold. */
  readonly label: string | null;
  readonly hours: number | null;
  /** What failed; the power where nothing is said. */
  readonly what?: readonly FailedWhat[];
}

/** What its own hold leaves in doubt: no stop, for nobody saw it spoil. */
export type Doubt =
  | GateReason
  | ({ readonly code: 'failed in its hold' } & MatesPowerCut)
  /** Only a note tells of it. */
  | {
      readonly code: 'failed by a note';
      readonly hours: number | null;
      readonly where: 'jar' | 'hold' | 'batch';
    }
  /** Hours of its stays in warmth together: fewer than anything sets in. */
  | { readonly code: 'held short'; readonly hours: number };

/** Why a jar is in doubt as what others descend from. */
export type InShort =
  | Extract<GateReason, { code: 'acid' | 'slow start' | 'power cut' }>
  | { readonly code: 'failed'; readonly hours: number | null; readonly what: readonly FailedWhat[] };

/** A caution on a seed, with the spoiled jar by its name. */
export interface SeedCaution extends Pick<Caution, 'relation' | 'steps'> {
  readonly level: CautionLevel;
  /** The spoiled jar, by its label; null where it is the jar itself. */
  readonly spoiled: string | null;
}

/** A remark, word for word. */
export interface Quoted {
  /** What it was written about. */
  readonly of: (typeof REMARKED_OF)[number];
  readonly text: string;
  /** A plain word of spoilage stands in it: it stops what it is about until the keeper answers. */
  readonly stops?: boolean;
}

/** What has to be looked at first, although it leaves no doubt of the jar itself. */
export type SeedLook =
  | { readonly code: 'caution'; readonly caution: SeedCaution }
  | Extract<GateReason, { code: 'slow start' }>
  /** Fine bubbles alone: normal for this kind of culture. */
  | { readonly code: 'fine bubbles' }
  /** A remark that nobody has answered, or that the keeper has read as *look*. */
  | { readonly code: 'remark'; readonly remark: Quoted }
  /** A caution that was lifted with a reason. label: whose on the way back; null: its own. */
  | {
      readonly code: 'lifted';
      readonly label: string | null;
      readonly because: string;
      readonly reason: string;
    }
  | { readonly code: 'descends from doubt'; readonly label: string; readonly because: readonly InShort[] }
  /** It has stood for longer than jars are commonly kept. */
  | {
      readonly code: 'long in the fridge';
      readonly days: number;
      /** Where only a range is known. */ readonly least?: number;
    };

/** Where a seed is kept. */
export type SeedPlace = 'fridge' | 'freezer' | 'dried';

/** Why a candidate may not be used. */
export type SeedStop =
  | { readonly code: 'spoiled' | 'needs the meter' | 'slow start' | 'in its hold' }
  /** The remark that nobody has answered, where it is at hand. */
  | { readonly code: 'remark'; readonly quote: Quoted | null }
  | { readonly code: 'condemned' | 'set aside'; readonly caution: SeedCaution }
  /** above: the pH that was measured where nothing says that it set; null: it did not set. */
  | { readonly code: 'failed the gate'; readonly above: Pick<Measured, 'ph' | 'how'> | null }
  | {
      readonly code: 'too old';
      readonly place: SeedPlace;
      readonly days: number;
      readonly least?: number;
      readonly limit: number;
    }
  | {
      readonly code: "keeper's limit";
      readonly generation: number;
      readonly atLeast: boolean;
      readonly limit: number;
    };
