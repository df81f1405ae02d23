// What asks for something today: holds that run, what falls due on the shelf, checks of tools that rest on them.
import type { Reply } from '../../../core/contract';
import { checkDueSays, shelfDueSays, todayWords } from '../../../core/says/today-says';
import { daysBetween } from '../../../core/quantities/typed-days';
import { JUDGED_UNASKED } from '../../../core/vigour/judged-unasked';
import type { Ledger } from '../ledger';
import { listTools } from './read-appliances';
import { reminders } from './read-reminders';
import { getShelf } from './read-shelf';
import { type RunningHold, runningHolds } from './running-holds';

type Item = Reply<'today.list'>['items'][number];

/** A meter is checked on the day it is to prove something, so it is asked for so long before a take-out (min). */
const BEFORE_TAKE_OUT = 12 * 60;

const ofHold = ({ hold, label, began, asks }: RunningHold, now: string): Item => ({
  id: `${hold.uid} ${asks.what}${asks.what === 'look' ? ` ${asks.look?.hours ?? ''}` : ''}`,
  kind: asks.what,
  due: asks.what !== 'in warmth',
  lateMinutes: asks.lateMinutes,
  ...todayWords(label, began, asks, now),
  of: { kind: 'hold', id: hold.uid },
});

/** Tools that were checked before and are due again: a meter only where a jar comes out of warmth today. */
function ofTools(ledger: Ledger, holds: readonly RunningHold[], today: string): Item[] {
  const out = holds.find(({ asks }) => asks.minutesLeft !== null && asks.minutesLeft <= BEFORE_TAKE_OUT);
  return listTools(ledger).tools.flatMap(({ tool, day, due }): Item[] => {
    if (day === null || !due || (tool === 'meter' && !out)) return [];
    const said = checkDueSays(tool, daysBetween(day, today), out?.label ?? null);
    return [
      {
        id: `${tool} ${today}`,
        kind: 'check',
        due: false,
        lateMinutes: 0,
        ...said,
        of: { kind: 'tool', id: tool },
      },
    ];
  });
}

function ofShelf(ledger: Ledger, today: string): Item[] {
  // There it is told on the shelf alone.
  if (ledger.index.jars.size > JUDGED_UNASKED) return [];
  const shelf = getShelf(ledger);
  const due = shelf.due.map(({ id, name, what, on }): Item => ({
    id: `${id} ${what} ${on}`,
    kind: what,
    due: on === today,
    lateMinutes: 0,
    ...shelfDueSays(name, what, on === today),
    of: { kind: 'kept', id },
  }));
  return [...due, ...reminders(ledger, shelf)];
}

/** What is due first; among those a hold before the shelf. */
export function todayList(ledger: Ledger): Reply<'today.list'> {
  const { clock } = ledger;
  const now = clock.now();
  const today = clock.today();
  const holds = runningHolds(ledger, now);
  const items = [
    ...holds.map((hold) => ofHold(hold, now)),
    ...ofTools(ledger, holds, today),
    ...ofShelf(ledger, today),
  ];
  return { now, items: items.toSorted((a, b) => Number(b.due) - Number(a.due)) };
}
