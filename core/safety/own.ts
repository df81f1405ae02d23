// What was seen of one jar, as far as it speaks of that jar alone. What other jars say of it: cautions.ts.
import { addDays } from '../quantities/typed-days';
import { atGate, gateOf, thickens, type Gate } from './gate';
import { afterOpening, spoiling, type Look, type Measured, type SeenOfJar } from './seen';
import { slowStart, type SlowStart } from './slow-start';

/** Why a jar is neither food nor seed; null where it is not so. A remark counts as *discard* until it is answered. */
export const DISCARDS = ['spoiled', 'not set', 'remark'] as const;
export type Discard = (typeof DISCARDS)[number];

/** What lineage keeps of the safety of one jar. */
export interface JarSafety {
  readonly discard: Discard | null;
  readonly gate: Gate;
  /** That it smells sour or shows 4.6 or less; false: neither was found; null: nothing was noted. */
  readonly acid: boolean | null;
  /** A meter showed 4.6 or less. */
  readonly metered: boolean;
  /** A pH above 4.6 was measured, and nothing says that it set: unknown is not *not set*, and milk without acid is no seed. */
  readonly noAcid: Pick<Measured, 'ph' | 'how'> | null;
  /** Nothing was stirred in that may thicken. */
  readonly plain: boolean;
  /** It passed the gate and was seen clean again five days later, or on opening. Seen clean is no test for germs. */
  readonly clean: boolean;
  /** Its signs were first seen after opening, in a jar without one before: the day of the first, and that of opening. */
  readonly opened: { readonly signOn: string | null; readonly openedOn: string | null } | null;
  /** What the first day told against it. */
  readonly start: SlowStart['kind'] | null;
  /** Cautions because of it never end by themselves: bath water, a foul smell, a slow start. */
  readonly forever: boolean;
}

/** Days after take-out from which a look at an unopened jar tells that it stayed clean. */
const STAYED_DAYS = 5;

const dayOf = (look: Look | undefined): string | null => look?.day ?? null;

function seenClean({ looks }: SeenOfJar, madeOn: string | null): boolean {
  if (looks.some((look) => spoiling(look).length > 0)) return false;
  const out = dayOf(looks.find(({ stage }) => stage === 'take-out')) ?? madeOn;
  return looks.some(
    (look) =>
      look.looked === true &&
      (afterOpening(look) || (look.day !== null && out !== null && look.day >= addDays(out, STAYED_DAYS))),
  );
}

/** When the signs were first seen, where that was after opening; null where any was there before, or nobody said when. */
function firstOpened(seen: SeenOfJar): JarSafety['opened'] {
  const telling = seen.looks.filter((look) => spoiling(look).length > 0);
  // On the very day of opening it was there before.
  if (telling.length === 0 || !telling.every((look) => afterOpening(look) && (look.daysOpen ?? 0) > 0)) return null; // prettier-ignore
  const [first] = telling.toSorted((a, b) => (a.daysOpen ?? 0) - (b.daysOpen ?? 0));
  const days = first?.daysOpen ?? null;
  const signOn =
    dayOf(first) ?? (seen.openedOn !== null && days !== null ? addDays(seen.openedOn, days) : null);
  const openedOn = seen.openedOn ?? (signOn !== null && days !== null ? addDays(signOn, -days) : null);
  return { signOn, openedOn };
}

/**
 * The safety of one jar by what was seen of it.
 * @param remarked words of spoilage stand in a remark that nobody has answered @param madeOn its day
 */
export function ownSafety(seen: SeenOfJar, remarked: boolean, madeOn: string | null): JarSafety {
  const signs = seen.looks.flatMap(spoiling);
  const gate = gateOf(seen);
  const start = slowStart(seen.looks);
  const { sour, metered, curd, above } = atGate(seen);
  const late = start?.kind === 'too late';
  const discard =
    signs.length > 0 ? 'spoiled' : gate === 'failed' || late ? 'not set' : remarked ? 'remark' : null;
  const passed = gate === 'passed' && discard === null;
  return {
    discard,
    gate: late ? 'failed' : gate,
    acid: metered || sour === true ? true : sour,
    metered,
    noAcid: curd === null && !metered && above !== null && above.how !== 'not said' ? { ph: above.ph, how: above.how } : null, // prettier-ignore
    plain: !seen.additions.some(thickens),
    clean: passed && start === null && seenClean(seen, madeOn),
    opened: discard === 'spoiled' && gate !== 'failed' ? firstOpened(seen) : null,
    start: start?.kind ?? null,
    forever: start !== null || signs.includes('bath water got in') || signs.includes('foul smell'),
  };
}

/** Of which nothing was seen. */
export const UNSEEN: JarSafety = {
  discard: null, gate: 'not noted', acid: null, metered: false, noAcid: null, plain: true, clean: false, opened: null, start: null, forever: false,
}; // prettier-ignore
