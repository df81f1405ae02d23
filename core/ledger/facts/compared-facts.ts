// Trials: jars of a batch that differ in one thing, and tastings of them.
import { day, flag, line, maybe, moment, name, number, oneOf, ref, usually, whole } from './fact-fields';

export const compared = {
  trial: {
    batch: ref('batch'),
    differsIn: name(),
    /** Of doses: what the keeper expected before anyone tasted. */
    expected: maybe(oneOf(['more is better', 'less is better'])),
  },
  treatment: {
    trial: ref('trial'),
    jar: ref('jar'),
    name: name(),
    /** How much of what differs, where it is a matter of how much. */
    dose: maybe(number(0, 1e9)),
  },
  /** A tasting. */
  session: {
    trial: maybe(ref('trial')),
    day: day(),
    kind: oneOf(['rank', 'score', 'pair', 'triangle']),
    /** From what the order was drawn. */
    draw: maybe(line()),
    /** Who poured; one who also tastes knows which jar is which. */
    pouredBy: maybe(ref('taster')),
    /** When it was told which code was which jar. */
    revealedAt: maybe(moment()),
  },
  taster: { name: name(), private: usually(true, flag()) },
  tasterAvoids: { taster: ref('taster'), allergen: name() },
  /** A spoonful before a taster: codes are each taster's own. */
  serving: {
    session: ref('session'),
    taster: ref('taster'),
    place: whole(1, 100),
    jar: ref('jar'),
    portion: maybe(ref('portion')),
    code: whole(100, 999),
  },
  /** Exactly one of rank, score, word and picked. Equal ranks are ties. */
  mark: {
    serving: ref('serving'),
    aspect: name(),
    rank: maybe(whole(1, 100)),
    score: maybe(number(-1e6, 1e6)),
    word: maybe(line()),
    picked: maybe(flag()),
  },
} as const;
