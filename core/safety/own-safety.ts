// What was seen of one jar, as far as it speaks of that jar alone. What other jars say of it: core/lineage/cautions.ts.
import { addDays } from '../quantities/typed-days';
import { atGate, gateOf, thickens } from './gate';
import { afterOpening, spoiling, type Look, type SeenOfJar } from './seen';
import type { RemarkStand } from './remarks';
import { slowStart } from './slow-start';
import type { JarSafety } from '../shapes/safety-codes';

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
 * @param remarked what the remarks on it come to @param madeOn its day
 */
export function ownSafety(seen: SeenOfJar, remarked: RemarkStand, madeOn: string | null): JarSafety {
  const signs = seen.looks.flatMap(spoiling);
  const gate = gateOf(seen);
  const start = slowStart(seen.looks);
  const { sour, metered, curd, above } = atGate(seen);
  const late = start?.kind === 'too late';
  const discard =
    signs.length > 0
      ? 'spoiled'
      : gate === 'failed' || late
        ? 'not set'
        : remarked === 'stops'
          ? 'remark'
          : null;
  const passed = gate === 'passed' && discard === null;
  return {
    discard,
    gate: late ? 'failed' : gate,
    acid: metered || sour === true ? true : sour,
    metered,
    noAcid:
      curd === null && !metered && above !== null && above.how !== 'not said'
        ? { ph: above.ph, how: above.how }
        : null,
    plain: !seen.additions.some(thickens),
    clean: passed && start === null && seenClean(seen, madeOn),
    opened: discard === 'spoiled' && gate !== 'failed' ? firstOpened(seen) : null,
    start: start?.kind ?? null,
    remarkLooks: remarked === 'looks',
    forever: start !== null || signs.includes('bath water got in') || signs.includes('foul smell'),
  };
}
