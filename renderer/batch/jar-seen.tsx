// What was seen of a jar, and whether it may be eaten: what speaks against it first.
import { isSeenOut } from '../../core/ledger/seen-out';
import { doubtSays } from '../../core/says/seed-looks-says';
import { discardHead, gateReasonSentence } from '../../core/says/safety-says';
import { onlyNormal, takeOutGate } from '../../core/safety/take-out';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import { seenWords } from './jar-says';
import type { Jar } from './record-text';

interface Props {
  readonly record: Jar;
  readonly mates: MatesPowerCut | null;
  /** Whether it may be eaten, where that is not said once for all. */
  readonly eats: string | null;
  /** That nothing was seen yet is said once for all. */
  readonly once: boolean;
  /** What is said above of several jars. */
  readonly above: ReadonlySet<string>;
}

export const UNSEEN = 'Outcome unknown so far.';
/** It was made, and nobody said how it turned out. */
export const isUnseen = ({ jar, outcome }: Jar): boolean => !isSeenOut(outcome) && jar.state === 'made';

/** What its gate has against a jar that was looked at. What is said of several is said once, above them. */
export function gateSays({ outcome, additions }: Jar): readonly string[] {
  const gate = isSeenOut(outcome) && outcome && takeOutGate(outcome, true, additions.map(({ name }) => name)); // prettier-ignore
  return !gate || gate.verdict === 'open' ? [] : gate.reasons.map(gateReasonSentence);
}

/** What was seen. What stands in the cells below is not said a second time. */
export function JarSeen({ record, mates, eats, once, above }: Props) {
  const { outcome, discard } = record;
  const cut =
    mates && (outcome === null || outcome.powerCut === null)
      ? doubtSays({ code: 'failed in its hold', ...mates })
      : null;
  const names = record.additions.map(({ name }) => name);
  const gate = outcome === null || !isSeenOut(outcome) ? null : takeOutGate(outcome, true, names);
  const against = gateSays(record);
  const own = against.filter((one) => !above.has(one));
  const uncertain = (gate?.verdict === 'ask' && !onlyNormal(gate) && own.length > 0) || cut !== null;
  const says = seenWords(outcome);
  return (
    <div className={discard !== null || uncertain ? 'notice caution seen' : 'seen'}>
      {discard !== null && <p className="gate-head">{discardHead(discard)}</p>}
      {[...against, cut].map(
        (one) =>
          one && (
            <p key={one} className={above.has(one) ? 'visually-hidden' : undefined}>
              {one}
            </p>
          ),
      )}
      {isUnseen(record) && <p className={once ? 'visually-hidden' : 'soft'}>{UNSEEN}</p>}
      {says !== '' && <p>{says}</p>}
      {outcome?.note && outcome.note.length > 24 && <p>{outcome.note}</p>}
      {eats !== null && !against.includes(eats) && <p>{eats}</p>}
    </div>
  );
}
