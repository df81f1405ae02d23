// What was seen of a jar in its own hold that leaves it in doubt: no stop, for nobody saw it spoil, but it comes after every
// seed without such a doubt, and no score lifts it. Said in the words of the take-out gate, as beside the jar itself.
import { gateReasonSentence, takeOutGate } from '../ledger/gate';
import { matesPowerCutSentence, type MatesPowerCut } from '../ledger/hold-mates';
import type { Outcome } from '../ledger/records';

/**
 * A sentence for each doubt: what the gate asks about (a slow start, a power cut, a pH above 4.6, fine bubbles), whether or
 * not its questions were all answered, and a power cut that only jars of the same hold tell of. Empty where there is none,
 * and where the gate condemns the jar, which is said as a stop.
 */
export function doubtsAbout(
  outcome: Omit<Outcome, 'jar'> | null,
  mates: MatesPowerCut | null,
): readonly string[] {
  const cut = mates !== null && (outcome === null || outcome.powerCut === null) ? [matesPowerCutSentence(mates)] : []; // prettier-ignore
  if (outcome === null) return cut;
  const { verdict, reasons } = takeOutGate(outcome, true);
  return verdict === 'discard' ? [] : [...reasons.map(gateReasonSentence), ...cut];
}
