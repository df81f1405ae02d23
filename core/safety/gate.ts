// The gate at take-out, before any tasting: look, then smell. It only ever sides with caution; it is no food-safety test and
// gives way to the local food-safety authority.
import { atTheGate, NOT_SET_SIGN, type Look, type SeenOfJar } from './seen';
import type { Gate, Measured } from '../shapes/safety-codes';

/**
 * Highest pH that may speak for a jar. 21 CFR 131.200 (yogurt) as amended by 88 FR 22907 of 2023-04-14: a pH of 4.6 or lower
 * is the acidity requirement.
 */
const GATE_PH = 4.6;

/** Whether a value speaks for a jar: by a meter alone, checked in buffer that day. Any other may stop, and never pass. */
export const meterShows = ({ ph, how, checked }: Measured): boolean =>
  how === 'meter' && checked === true && ph <= GATE_PH;

/** A value that would speak for a jar if the meter had been checked. */
const wouldShow = ({ ph, how, checked }: Measured): boolean =>
  how === 'meter' && checked !== true && ph <= GATE_PH;

/** Things that sweeten and thicken nothing. Whatever else is stirred in may gel by itself (common practice, no source). */
const THICKENS_NOTHING = ['sugar', 'cane sugar', 'brown sugar', 'lactose', 'glucose', 'dextrose', 'fructose', 'sucrose', 'honey', 'maple syrup', 'syrup', 'salt', 'vanilla']; // prettier-ignore
export const thickens = (addition: string): boolean =>
  !THICKENS_NOTHING.includes(addition.trim().toLowerCase());

/** Set words that can be said only of a curd that holds together; runny and soft may be said of milk that has not set. */
const HOLDS: readonly Look['setWord'][] = ['spoonable', 'firm', 'very firm'];

/** What was noted at the gate. */
export interface AtGate {
  /** A curd holds together, curds and whey among them; false: it pours like milk; null: not noted. */
  readonly curd: boolean | null;
  /** It smells sour; false: somebody smelled, and it does not; null: not noted. */
  readonly sour: boolean | null;
  /** A meter showed 4.6 or less. */
  readonly metered: boolean;
  /** A meter showed 4.6 or less, and nobody checked it that day, or it failed: it proves nothing. */
  readonly unchecked: Measured | null;
  /** A value above 4.6, however it was measured. */
  readonly above: Measured | null;
  readonly looked: boolean;
}

/** What the looks at take-out and after the chill say; of two that differ, the one that speaks against the jar. */
export function atGate({ looks }: Pick<SeenOfJar, 'looks'>): AtGate {
  const those = looks.filter(atTheGate);
  const notSet = those.some(
    ({ setState, signs }) =>
      setState === 'not set' ||
      signs.some(({ kind, answer }) => kind === NOT_SET_SIGN && answer !== 'not so'),
  );
  const holds = those.some(({ setState, setWord }) => setState === 'set' || HOLDS.includes(setWord));
  const smelled = those.flatMap(({ sour }) => (sour === null ? [] : [sour]));
  const values = those.flatMap(({ acidity }) => acidity);
  return {
    curd: notSet ? false : holds ? true : null,
    sour: smelled.length === 0 ? null : smelled.every(Boolean),
    metered: values.some(meterShows),
    unchecked: values.find(wouldShow) ?? null,
    above: values.find(({ ph }) => ph > GATE_PH) ?? null,
    looked: those.some(({ looked }) => looked === true),
  };
}

/**
 * The gate of one jar by itself.
 * Passes: it smells sour and a curd holds together, or a meter, checked that day, shows 4.6 or less.
 * Fails: it pours like milk, or it is not sour, without such a pH; also thick, since spores curdle milk without acid, too.
 * No set word makes a jar sour.
 */
export function gateOf(seen: Pick<SeenOfJar, 'looks' | 'additions'>): Gate {
  const { curd, sour, metered } = atGate(seen);
  if (metered) return 'passed';
  if (curd === false || sour === false) return 'failed';
  if (curd === null || sour === null) return 'not noted';
  return seen.additions.some(thickens) ? 'thickened' : 'passed';
}
