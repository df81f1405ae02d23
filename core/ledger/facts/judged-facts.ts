// What was judged: cautions lifted with a reason, seeds chosen, laboratory results.
import {
  day,
  document,
  flag,
  line,
  maybe,
  name,
  number,
  oneOf,
  ref,
  usually,
  whole,
  words,
} from './fact-fields';
import { SIGN_ANSWERS, SIGN_KINDS } from './seen-facts';

export const judged = {
  /** Why cautions were lifted, once for as many jars as the keeper marked. */
  reason: { text: words(3, 10_000), private: usually(true, flag()) },
  lift: { reason: ref('reason'), jar: ref('jar'), ofJar: ref('jar') },
  /** What was known of the spoilage when a caution was lifted. Compared by form: undo raises numbers too. */
  liftKnew: {
    lift: ref('lift'),
    sign: maybe(ref('record')),
    kind: oneOf([...SIGN_KINDS, 'not set']),
    answer: maybe(oneOf(SIGN_ANSWERS)),
    /** Seen after opening, and on which day (null: not known). */
    opened: flag(),
    daysOpen: maybe(whole(0, 365)),
  },
  /** What the keeper chose to seed from, with the advice as it stood then. No jar: a fresh start. */
  choice: {
    /** The line that was asked about (its founding batch); null: all that is kept. */
    line: maybe(ref('batch')),
    jar: maybe(ref('jar')),
    portion: maybe(ref('portion')),
    label: name(),
    place: whole(1, 1_000_000),
    modelVersion: whole(1, 1_000_000),
    advice: document(),
  },
  /** Of exactly one of jar and portion. `what` 'count' is the measured density, in CFU/mL. */
  labResult: {
    jar: maybe(ref('jar')),
    portion: maybe(ref('portion')),
    sampledOn: maybe(day()),
    laboratory: maybe(line()),
    what: name(),
    value: number(-1e15, 1e15),
    unit: name(),
    bound: usually('=', oneOf(['<', '=', '>'])),
  },
} as const;
