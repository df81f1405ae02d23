// What stands in the kitchen now: holds that run with the jars in them, and what is kept back.
import type { Reply } from '../../../core/contract';
import type { Amount } from '../../../core/ledger/basics';
import { piecesLeft, portionName } from '../../../core/ledger/portions';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { assumedStart } from '../../../core/says/hold-says';
import { todayWords } from '../../../core/says/today-says';
import { portionEntries } from '../entries/kept-entries';
import type { Ledger } from '../ledger';
import { emptyPortions } from '../entries/left-of-rows';
import { type RunningHold, runningHolds } from './running-holds';

type Now = Reply<'family.now'>;

/** What a hold asks for, as it was told before it told of each look: the look that is open or comes next, then the take-out. */
function lookOf({ ends, asks }: RunningHold, offset: number): Now['holds'][number]['look'] {
  const { what, look } = asks;
  if (what === 'take-out' || look === null)
    return { what: 'take-out', from: ends, by: ends, due: what === 'take-out' };
  const moment = (seconds: number): string => momentText(seconds, offset);
  return { what: 'early look', from: moment(look.opens), by: moment(look.at), due: what === 'look' };
}

function holdsThatRun(ledger: Ledger, now: string): Now['holds'] {
  return runningHolds(ledger, now).map((running) => {
    const { hold, label, began, assumed, ends, jars, asks } = running;
    return {
      hold: hold.uid,
      batch: ledger.rows.uidOf('batch', jars[0]?.batch ?? 0),
      label,
      began,
      assumed: assumed ? assumedStart(began, now) : null,
      ends,
      look: lookOf(running, storedMoment(began).offset),
      ...todayWords(label, began, asks, now),
      jars: jars.map((jar) => ({ key: jar.key, id: jar.uid, label: jar.label })),
    };
  });
}

/** What is kept apart and not gone or used up, the latest kept first. */
function keptBack(ledger: Ledger): Now['kept'] {
  const { rows, index } = ledger;
  const { family } = index;
  const empty = emptyPortions(rows);
  return portionEntries(rows, null)
    .filter(({ key, jar, goneOn }) => goneOn === null && family.has(jar) && !empty.has(key))
    .flatMap((portion): Now['kept'] => {
      const jar = index.jar(portion.jar);
      const taken = rows.where('seeding', 'portion', portion.key);
      const pieces = piecesLeft(portion, taken.map(({ actual }): Amount | null => actual)); // prettier-ignore
      if (pieces === 0) return [];
      return [
        {
          id: portion.uid,
          jar: jar.uid,
          key: jar.key,
          label: jar.label,
          name: portionName(portion),
          place: portion.place,
          pieces: pieces ?? portion.pieces,
          keptOn: portion.keptOn,
          reserve: portion.reserve,
        },
      ];
    })
    .toSorted((a, b) => b.keptOn.localeCompare(a.keptOn) || a.label.localeCompare(b.label));
}

export function familyNow(ledger: Ledger): Now {
  const now = ledger.clock.now();
  return { now, holds: holdsThatRun(ledger, now), kept: keptBack(ledger) };
}
