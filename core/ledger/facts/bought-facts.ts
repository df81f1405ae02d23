// What is bought, received or owned: sources and their strains, packages, appliances, and what was used of a package.
import { SOURCE_FORMS } from '../records';
import {
  amount,
  day,
  flag,
  line,
  maybe,
  name,
  number,
  oneOf,
  positive,
  price,
  prose,
  ref,
  usually,
  whole,
} from './fact-fields';

export const bought = {
  /** Something a line can be started from. */
  source: {
    name: name(),
    form: maybe(oneOf(SOURCE_FORMS)),
    /** Of a received culture: from whom, and how many generations it is known to have run (null: past unknown). */
    receivedFrom: maybe(line()),
    knownGenerations: maybe(whole(1, 100_000)),
    /** Whether declared counts are guaranteed to the end of shelf life or only at manufacture. */
    guaranteed: maybe(oneOf(['manufacture', 'expiry'])),
    /** Declared count of all strains together in one piece (CFU), where the label gives only a total. */
    blendCount: maybe(positive(1e15)),
    note: maybe(prose()),
    /** A private text stays with its keeper when records are handed over. */
    notePrivate: usually(true, flag()),
  },
  /** A strain as the label of a source declares it: never a claim that it is alive in a jar. */
  strain: {
    source: ref('source'),
    /** Its place on the label, 1 the first. */
    place: whole(1, 100),
    genus: line(),
    species: line(),
    designation: line(),
    /** Declared count in one piece (CFU). */
    count: maybe(positive(1e15)),
  },
  /** One bought box, bottle or carton. Exposure and cost follow it. */
  package: {
    of: oneOf(['source', 'milk', 'addition']),
    source: maybe(ref('source')),
    name: name(),
    size: maybe(amount()),
    price: maybe(price()),
    boughtOn: maybe(day()),
    openedOn: maybe(day()),
    bestBefore: maybe(day()),
  },
  /** What keeps warm. */
  appliance: { name: name(), kind: maybe(oneOf(['bath', 'box', 'cooker', 'other'])) },
  /** What a tool showed when it was checked: a meter in buffer (pH), a thermometer in ice water, a glass of water in the fridge (°C). */
  toolCheck: {
    tool: oneOf(['meter', 'thermometer', 'fridge']),
    name: maybe(line()),
    day: day(),
    shown: number(-90, 150),
  },
  /** An allergen of whatever is stirred in or poured under this name. */
  carries: { name: name(), allergen: name() },
  /** A figure that the keeper set: a limit of the shelf, a price, hours awake. One of each name. */
  setting: { name: name(), value: number(-1e12, 1e12) },
  /** So much of a package into exactly one of these; `batch` is the common pot, which touches all jars of the batch. */
  use: {
    package: ref('package'),
    amount: maybe(amount()),
    milk: maybe(ref('milk')),
    addition: maybe(ref('addition')),
    seeding: maybe(ref('seeding')),
    batch: maybe(ref('batch')),
  },
} as const;
