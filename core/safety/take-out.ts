// The take-out gate as a form shows it: what is settled about a jar before anything is tasted, and the one definition of
// *discard* for what a form tells. Codes only; core/says/safety-says.ts makes the sentences.
import type { Outcome } from '../ledger/records';
import { atGate, gateOf } from './gate';
import { ownSafety } from './own-safety';
import { looksOf, NOT_SET_SIGN, type SeenOfJar, type Shown } from './seen';
import { slowStart } from './slow-start';
import type { Discard, GateReason } from '../shapes/safety-codes';

export interface GateVerdict {
  /**
   * discard: not food, not seed, don't taste. ask: uncertain, ask before tasting. unanswered: a question of the gate
   * is still open. open: nothing here speaks against tasting (which is no proof).
   */
  readonly verdict: 'discard' | 'ask' | 'unanswered' | 'open';
  readonly reasons: readonly GateReason[];
}

/** Whether all that is asked about is normal for this kind of culture: no sign of spoiling, and never dressed as one. */
export const onlyNormal = ({ reasons }: GateVerdict): boolean =>
  reasons.length > 0 && reasons.every(({ code }) => code === 'bubbles');

const seenIn = (outcome: Shown, additions: readonly string[]): SeenOfJar => ({
  looks: looksOf(outcome),
  additions,
  openedOn: null,
});

/**
 * Why what a form tells means that a jar is neither food nor seed; null where it doesn't. "The fibre did this" never changes
 * that. No outcome is unknown: callers pass recorded ones.
 */
export const discardOf = (outcome: Shown): Discard | null =>
  ownSafety(seenIn(outcome, []), null, null).discard;

/** Whether words for texture tell of fine bubbles: normal for this kind of culture, yet to be asked about. */
export const tellsOfBubbles = (texture: string | null): boolean =>
  texture !== null && /\b(bubbl|fizz|effervesc)/i.test(texture);

function againstIt(outcome: Shown, seen: SeenOfJar): GateReason[] {
  const { curd, unchecked } = atGate(seen);
  const start = slowStart(seen.looks);
  const signs = outcome.signs.filter((sign) => sign !== NOT_SET_SIGN);
  const failed = gateOf(seen) === 'failed';
  return [
    ...(signs.length > 0 ? [{ code: 'sign' as const, signs }] : []),
    ...(outcome.spoiledSaid ? [{ code: 'said' as const }] : []),
    ...(failed ? [{ code: 'not set' as const, thick: curd === true, unchecked: unchecked?.ph ?? null }] : []),
    ...(start?.kind === 'too late' ? [{ code: 'too late' as const, hours: start.hours ?? 0, ph: start.ph ?? 0 }] : []),
  ]; // prettier-ignore
}

/** What leaves a jar uncertain that is not discarded. */
function uncertain(
  outcome: Shown & Pick<Outcome, 'texture' | 'bubbles' | 'powerCut' | 'powerCutHours'>,
  seen: SeenOfJar,
): GateReason[] {
  const { above, metered, unchecked } = atGate(seen);
  const gate = gateOf(seen);
  const start = slowStart(seen.looks);
  return [
    ...(above && !metered ? [{ code: 'acid' as const, ph: above.ph, how: above.how }] : []),
    // Only where something rests on it: what smells sour and holds together needs no meter.
    ...(unchecked && gate !== 'passed'
      ? [{ code: 'unchecked' as const, ph: unchecked.ph, failed: unchecked.checked === false }]
      : []),
    ...(start ? [{ code: 'slow start' as const, ...start }] : []),
    ...(outcome.powerCut === true ? [{ code: 'power cut' as const, hours: outcome.powerCutHours }] : []),
    ...(gate === 'thickened' ? [{ code: 'thickened' as const }] : []),
    ...(outcome.bubbles === 'fine' || tellsOfBubbles(outcome.texture) ? [{ code: 'bubbles' as const }] : []),
  ];
}

/**
 * Works through the gate in order: discard signs, smell and curd or acid, then what is uncertain (a pH above 4.6, a slow start,
 * a power cut, a set that what was stirred in may have made, fine bubbles). "The fibre did this" is no part of it. Whether the
 * jar had set when the power failed is rarely known, so every power cut is asked about.
 * @param looked whether the keeper has looked and smelled; no signs listed is not the same as none seen
 * @param additions names of what was stirred in
 */
export function takeOutGate(
  outcome: Parameters<typeof uncertain>[0],
  looked: boolean,
  additions: readonly string[] = [],
): GateVerdict {
  const seen = seenIn(outcome, additions);
  const against = againstIt(outcome, seen);
  if (against.length > 0) return { verdict: 'discard', reasons: against };
  const reasons = uncertain(outcome, seen);
  if (gateOf(seen) === 'not noted' || !looked) return { verdict: 'unanswered', reasons };
  return { verdict: reasons.length > 0 ? 'ask' : 'open', reasons };
}
