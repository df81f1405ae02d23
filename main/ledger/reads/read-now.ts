// What stands in the kitchen now: holds that run with the jars in them, and what is kept back.
import type { Reply } from '../../../core/contract';
import type { Amount } from '../../../core/ledger/basics';
import { piecesLeft, portionName } from '../../../core/ledger/portions';
import { endsAt, nextLook, stillRuns } from '../../../core/ledger/running';
import { todayWords } from '../../../core/says/today-says';
import { batchDay, calledDay } from '../../../core/lineage/labels';
import { portionEntries } from '../entries/kept-entries';
import type { Ledger } from '../ledger';
import { emptyPortions } from '../entries/left-of-rows';
import { outcomes } from '../entries/outcome-of-jar';

type Now = Reply<'family.now'>;

/** Holds that began and that nobody ended, the earliest due first. */
function holdsThatRun(ledger: Ledger, now: string): Now['holds'] {
  const { rows, index } = ledger;
  const { family } = index;
  const begun = rows.prepare('SELECT key FROM hold WHERE ended IS NULL AND began IS NOT NULL').pluck().all() as number[]; // prettier-ignore
  const found = begun.flatMap((key): Now['holds'] => {
    const { began, plannedTo, hours } = rows.get('hold', key);
    if (began === null || !stillRuns({ began, plannedTo, hours }, now)) return [];
    const inside = rows
      .where('stay', 'hold', key)
      .filter(({ jar, went }) => went === null && family.has(jar))
      .map(({ jar }) => jar);
    const seen = outcomes(rows, inside);
    const jars = inside
      .filter((jar) => {
        const { spoiled, onShelf } = index.jar(jar);
        return !spoiled && onShelf !== false && (seen.get(jar)?.setAtTakeOut ?? null) === null;
      })
      .map((jar) => index.jar(jar))
      .toSorted((a, b) => a.letter.localeCompare(b.letter) || a.key - b.key);
    const [first] = jars;
    if (!first) return [];
    const earlySeen = jars.every((jar) => {
      const outcome = seen.get(jar.key);
      return outcome !== undefined && [outcome.earlySet, outcome.earlyPh, outcome.earlySour].some((one) => one !== null); // prettier-ignore
    });
    const ends = endsAt({ began, plannedTo, hours });
    const look = nextLook({ began, plannedTo, hours, earlySeen }, now);
    const batch = rows.get('batch', first.batch);
    const label = [batchDay(calledDay(batch), false) ?? 'a batch', batch.word].filter(Boolean).join(' ');
    return [
      {
        hold: rows.uidOf('hold', key),
        batch: batch.uid,
        label,
        began,
        ends,
        look,
        ...todayWords({ label, began, ends }, look, now),
        jars: jars.map((jar) => ({ key: jar.key, id: jar.uid, label: jar.label })),
      },
    ];
  });
  const due = ({ look }: Now['holds'][number]): number => Date.parse(look.by ?? '9999-12-31T00:00:00Z');
  return found.toSorted((a, b) => Number(b.look.due) - Number(a.look.due) || due(a) - due(b));
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
