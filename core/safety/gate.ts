// The take-out gate: what is settled about a jar before anything is tasted, and the one definition of *spoiled*.
// It only ever sides with caution; it is no food-safety test and gives way to the local food-safety authority.
import type { DiscardSign, Outcome } from '../ledger/records';

/**
 * Highest pH that may speak for a jar that has not set. 21 CFR 131.200 (yogurt) as amended by 88 FR 22907 of
 * 2023-04-14: a pH of 4.6 or lower is the acidity requirement.
 */
export const GATE_PH = 4.6;

type Shown = Pick<Outcome, 'spoiledSaid' | 'setAtTakeOut' | 'ph' | 'phHow'> & {
  readonly signs: readonly DiscardSign[];
};

/** Whether a pH above 4.6 was read, however it was measured: of a jar that has set, no good sign and no proof. */
export function acidMissing(outcome: Pick<Outcome, 'ph'>): boolean {
  return outcome.ph !== null && outcome.ph > GATE_PH;
}

/** Whether a pH at or below 4.6 was shown: by a meter alone, for a strip can't decide it, nor can a pH of unknown origin. */
export function acidShown(outcome: Pick<Outcome, 'ph' | 'phHow'>): boolean {
  return outcome.ph !== null && outcome.phHow === 'meter' && outcome.ph <= GATE_PH;
}

/** Whether the gate itself condemns a jar: said to be not set at the end of the hold, and no such pH shown. */
export function failsGate(outcome: Pick<Outcome, 'setAtTakeOut' | 'ph' | 'phHow'>): boolean {
  return outcome.setAtTakeOut === false && !acidShown(outcome);
}

/**
 * Whether an outcome means *spoiled*: a discard sign was seen, the keeper said so, or it failed the take-out gate.
 * "The fibre did this" never changes the answer. No outcome is unknown, not spoiled: callers pass recorded ones only.
 */
export function isSpoiled(outcome: Shown): boolean {
  return outcome.signs.length > 0 || outcome.spoiledSaid || failsGate(outcome);
}

/** Whether words for texture tell of fine bubbles: normal for this kind of culture, yet uncertain. */
export function tellsOfBubbles(texture: string | null): boolean {
  return texture !== null && /\b(bubbl|fizz|effervesc)/i.test(texture);
}

export type GateReason =
  | { readonly code: 'sign'; readonly signs: readonly DiscardSign[] }
  | { readonly code: 'said' | 'not set' | 'bubbles' }
  | { readonly code: 'acid'; readonly ph: number; readonly how: Outcome['phHow'] }
  | { readonly code: 'slow start'; readonly loose: boolean; readonly sourless: boolean }
  | { readonly code: 'power cut'; readonly hours: number | null };

export interface GateVerdict {
  /**
   * discard: not food, not seed, don't taste. ask: uncertain, ask before tasting. unanswered: a question of the gate
   * is still open. open: nothing here speaks against tasting (which is no proof).
   */
  readonly verdict: 'discard' | 'ask' | 'unanswered' | 'open';
  readonly reasons: readonly GateReason[];
}

/**
 * Works through the gate in order: discard signs, set or acid, then what is uncertain (a pH above 4.6 in a jar that has
 * set, a slow start, a power cut, fine bubbles). "The fibre did this" is no part of it. Whether the jar had set when the power failed is rarely known, so every power cut is asked about.
 * @param looked whether the keeper has looked and smelled; no signs listed is not the same as none seen.
 */
export function takeOutGate(
  outcome: Shown &
    Pick<Outcome, 'earlySet' | 'earlySour' | 'texture' | 'bubbles' | 'powerCut' | 'powerCutHours'>,
  looked: boolean,
): GateVerdict {
  const against: GateReason[] = [];
  if (outcome.signs.length > 0) against.push({ code: 'sign', signs: outcome.signs });
  if (outcome.spoiledSaid) against.push({ code: 'said' });
  if (failsGate(outcome)) against.push({ code: 'not set' });
  if (against.length > 0) return { verdict: 'discard', reasons: against };

  const loose = outcome.earlySet === 'loose';
  const sourless = outcome.earlySour === false;
  const uncertain: GateReason[] = [];
  if (outcome.ph !== null && acidMissing(outcome))
    uncertain.push({ code: 'acid', ph: outcome.ph, how: outcome.phHow });
  if (loose || sourless) uncertain.push({ code: 'slow start', loose, sourless });
  if (outcome.powerCut === true) uncertain.push({ code: 'power cut', hours: outcome.powerCutHours });
  if (outcome.bubbles === 'fine' || tellsOfBubbles(outcome.texture)) uncertain.push({ code: 'bubbles' });
  if (outcome.setAtTakeOut === null || !looked) return { verdict: 'unanswered', reasons: uncertain };
  return uncertain.length > 0 ? { verdict: 'ask', reasons: uncertain } : { verdict: 'open', reasons: [] };
}

const hoursInWords = (hours: number): string => (hours === 1 ? 'an hour' : `${hours} hours`);

/** That warmth failed during a hold, and what that means. @param hours null: nobody said how long */
export const failedSentence = (what: string, hours: number | null): string =>
  `${what} during the hold${hours === null ? '' : `, for ${hoursInWords(hours)}`}. ` +
  'If it had not set by then, spoilage organisms had time, and acid that comes later does not undo a toxin. ' +
  'When in doubt, discard.';

/** Whether all that is asked about is normal for this kind of culture: no sign of spoiling, and never dressed as one. */
export const onlyNormal = ({ reasons }: GateVerdict): boolean =>
  reasons.length > 0 && reasons.every(({ code }) => code === 'bubbles');

/** What a gate's reason means, in calm words. */
export function gateReasonSentence(reason: GateReason): string {
  switch (reason.code) {
    case 'sign':
      return `Seen: ${reason.signs.join(', ')}. Discard the whole jar. Do not taste it, and do not use it as seed.`;
    case 'said':
      return 'You said it is spoiled. Discard the whole jar. Do not taste it, and do not use it as seed.';
    case 'not set':
      return 'Not set, and no pH at or below 4.6 shown by a meter. Discard: not food, not seed.';
    case 'acid':
      return (
        `A pH of ${reason.ph}${reason.how === null ? '' : ` by ${reason.how}`} is above 4.6, and that is no good sign: ` +
        'the acid is not there yet. Do not taste on this. Hold it longer and measure again; when in doubt, discard.'
      );
    case 'slow start':
      return (
        `A slow start: ${reason.loose && reason.sourless ? 'still loose and not sour' : reason.loose ? 'still loose' : 'not sour'} ` +
        'at the early check. Spoilage organisms had time, and acid that comes later does not undo a toxin. ' +
        'When in doubt, discard.'
      );
    case 'power cut':
      return failedSentence('The power failed', reason.hours);
    case 'bubbles':
      return (
        'Fine bubbles alone are normal for this kind of culture, and still uncertain. Ask someone who knows it. ' +
        'With foam, a lifted lid or a torn curd, discard.'
      );
  }
}
