// Warmth: holds, which jars stayed in them, what interrupted them, and series of readings.
import { flag, line, maybe, moment, number, oneOf, positive, ref, temperature, usually } from './fact-fields';

export const warm = {
  /** A time in warmth. Of no batch: one bath warms two, and proving an appliance has no jars. */
  hold: {
    appliance: maybe(ref('appliance')),
    /** The batch it was entered with, where no jar stays in it. */
    batch: maybe(ref('batch')),
    purpose: usually('jars', oneOf(['jars', 'proof'])),
    plannedFrom: maybe(moment()),
    plannedTo: maybe(moment()),
    planned: maybe(temperature()),
    began: maybe(moment()),
    ended: maybe(moment()),
    /** How long it was held (h), where only that is known. Never a set time. */
    hours: maybe(positive(1000)),
    /** 'notes': told apart only by figures in a keeper's notes. */
    basis: usually('recorded', oneOf(['recorded', 'notes'])),
    /** Of a proof: whether all places of the appliance were filled with jars of water or milk. */
    filled: maybe(flag()),
  },
  /** A jar in a hold, from when to when. No two stays of a jar overlap. */
  stay: {
    jar: ref('jar'),
    hold: ref('hold'),
    came: maybe(moment()),
    went: maybe(moment()),
    plannedCame: maybe(moment()),
    plannedWent: maybe(moment()),
  },
  /** Warmth that failed, from–to or for so many hours; `wasSet`: whether the jars had set by then. */
  interruption: {
    hold: ref('hold'),
    what: oneOf(['power', 'heater', 'lid', 'other']),
    began: maybe(moment()),
    ended: maybe(moment()),
    hours: maybe(number(0, 1000)),
    wasSet: maybe(flag()),
  },
  /** Readings of one probe in one place; a probe moved is a new series. */
  series: {
    hold: ref('hold'),
    place: maybe(oneOf(['air', 'bath', 'jar'])),
    jar: maybe(ref('jar')),
    /** Its newest block of readings. */
    block: maybe(ref('block')),
    /** Heading of its column in a probe's export, how its clock was read, and its scale there. */
    heading: maybe(line()),
    clock: maybe(line()),
    scale: maybe(oneOf(['°C', '°F'])),
    /** Where in the appliance the probe stood. */
    spot: maybe(oneOf(['centre', 'edge'])),
  },
} as const;
