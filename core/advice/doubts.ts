// What was seen of a jar in its own hold that speaks against it as a seed. A doubt is no stop, for nobody saw it spoil, but it
// comes after every seed without one, and no score lifts it. Said in the words of the take-out gate, as beside the jar itself.
import { acidShown, GATE_PH, gateReasonSentence, takeOutGate, type GateReason } from '../ledger/gate';
import { matesPowerCutSentence, type MatesPowerCut } from '../ledger/hold-mates';
import type { Outcome } from '../ledger/records';
import { spoilageSaid } from '../ledger/spoilage-words';

type Seen = Omit<Outcome, 'jar'>;

/** Set words that can be said only of a jar that has set; runny and soft may be said of one that has not. */
const SETS: readonly Outcome['setWord'][] = ['spoonable', 'firm', 'very firm'];

/** Whether somebody wrote down that it set: at take-out, or by a word that says so. */
const knownToSet = ({ setAtTakeOut, setWord }: Seen): boolean => setAtTakeOut ?? SETS.includes(setWord);

interface Weighed {
  readonly against: readonly GateReason[];
  /** Fine bubbles are all there is, in a jar that set or has its acid: normal for this kind of culture, so no doubt. */
  readonly bubblesAlone: boolean;
}

function weigh(outcome: Seen, mates: MatesPowerCut | null): Weighed {
  const { verdict, reasons } = takeOutGate(outcome, true);
  const against = verdict === 'discard' ? [] : reasons;
  const cut = mates !== null && outcome.powerCut === null;
  const good = knownToSet(outcome) || (outcome.setAtTakeOut === null && acidShown(outcome));
  const bubblesAlone = !cut && good && against.length > 0 && against.every(({ code }) => code === 'bubbles');
  return { against, bubblesAlone };
}

/**
 * A sentence for each doubt: words that tell of spoilage, what the gate asks about (a slow start, a power cut, a pH above 4.6, fine bubbles that are not
 * alone), whether or not its questions were all answered, and a power cut that only jars of the same hold tell of. Empty
 * where there is none, and where the gate condemns the jar, which is said as a stop.
 */
export function doubtsAbout(outcome: Seen | null, mates: MatesPowerCut | null): readonly string[] {
  const cut = mates !== null && (outcome === null || outcome.powerCut === null) ? [matesPowerCutSentence(mates)] : []; // prettier-ignore
  if (outcome === null) return cut;
  if (takeOutGate(outcome, true).verdict === 'discard') return [];
  const { against, bubblesAlone } = weigh(outcome, mates);
  return [...spoilageWords(outcome), ...(bubblesAlone ? [] : [...against.map(gateReasonSentence), ...cut])];
}

/** Words of spoilage that were written down and never answered: nobody ticked a sign, and nobody said what else it is. */
function spoilageWords(outcome: Seen): string[] {
  const words = spoilageSaid(outcome);
  return words === null
    ? []
    : [
        `“${words}” was written down of it, and nobody has said that this is no spoilage. When in doubt, discard.`,
      ];
}

/** What is normal by itself and is still to be looked at before it seeds anything: fine bubbles alone (common practice). */
export function asksAbout(outcome: Seen | null, mates: MatesPowerCut | null): readonly string[] {
  return outcome !== null && weigh(outcome, mates).bubblesAlone && spoilageSaid(outcome) === null
    ? [
        'Fine bubbles were seen; alone they are normal for this kind of culture. Look and smell first. With foam, a lifted lid or a torn curd, discard.',
      ]
    : [];
}

/**
 * Why a jar is no seed although nobody said that it did not set: a meter read more than 4.6, and nothing says that it set.
 * Unknown is not "not set", so it is not condemned; milk without its acid seeds nothing all the same. Null where that is
 * not so: a strip, or a pH of which nobody said how it was read, decides nothing and is a doubt.
 */
export function acidNotThere(outcome: Seen | null): string | null {
  if (outcome === null || outcome.setAtTakeOut !== null || knownToSet(outcome)) return null;
  const { ph, phHow } = outcome;
  return ph !== null && phHow === 'meter' && ph > GATE_PH
    ? `A meter showed a pH of ${ph}, above 4.6, and nobody has written down that it had set.`
    : null;
}
