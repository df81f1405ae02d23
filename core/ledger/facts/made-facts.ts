// What is made: batches, jars, what went into them, what seeded them, and the parts of them that are kept apart.
import { PARTS, PLACES } from '../records';
import { amount, day, flag, line, maybe, name, oneOf, ref, usually, whole, words } from './fact-fields';

const JAR_STATES = ['planned', 'made', 'not made', 'mistake', 'lost'] as const;
const VOLUME_KNOWN = ['measured', 'filled to the vessel', 'milk plus seed'] as const;
const PORTION_FORMS = ['pot', 'cubes', 'flakes', 'jar'] as const;

export const made = {
  /** Jars made on one day from one heating of milk. A range where the day is known no better: "about mid January". */
  batch: {
    madeOn: maybe(day()),
    madeFrom: maybe(day()),
    madeTo: maybe(day()),
    /** A short word of the keeper's: the label is then "14 Mar plain b". */
    word: maybe(line()),
    /** What the keeper calls the line that this batch founds. */
    lineName: maybe(line()),
  },
  /** One vessel and its contents. */
  jar: {
    batch: ref('batch'),
    letter: words(1, 20),
    /**
     * Planned jars are never counted; 'not made' is a planned one that came to nothing, 'mistake' a stub, 'lost' one
     * that nobody can name.
     */
    state: oneOf(JAR_STATES),
    vessel: maybe(line()),
    finalVolume: maybe(amount()),
    finalVolumeKnown: maybe(oneOf(VOLUME_KNOWN)),
  },
  /** Milk that went in. In a made jar `actual` null is unknown, never "as planned". */
  milk: { jar: ref('jar'), name: maybe(line()), planned: maybe(amount()), actual: maybe(amount()) },
  /** A fibre, starch, sugar or other thing stirred in; amounts as of milk. */
  addition: { jar: ref('jar'), name: name(), planned: maybe(amount()), actual: maybe(amount()) },
  /** A part of a jar kept apart. It is itself the movement that split it off its jar, or another portion. */
  portion: {
    jar: ref('jar'),
    ofPortion: maybe(ref('portion')),
    part: maybe(oneOf(PARTS)),
    form: usually('pot', oneOf(PORTION_FORMS)),
    place: oneOf(PLACES),
    /** Kept back on purpose as seed. */
    reserve: usually(false, flag()),
    pieces: maybe(whole(1, 10_000)),
    amount: maybe(amount()),
    keptOn: day(),
  },
  /** One edge: exactly one of fromJar and source. It is itself the movement "used as seed". */
  seeding: {
    jar: ref('jar'),
    fromJar: maybe(ref('jar')),
    source: maybe(ref('source')),
    portion: maybe(ref('portion')),
    part: maybe(oneOf(PARTS)),
    planned: maybe(amount()),
    actual: maybe(amount()),
    /** Seedings of a jar with the same number: one of these, and nobody is sure which. */
    either: maybe(whole(1, 1000)),
  },
} as const;
