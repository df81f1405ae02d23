// What speaks against a jar as a seed beside its cautions: its own hold, its hold-mates and notes, and its way back. Worked
// out for the whole family at once, and kept as long as nothing is recorded.
import {
  asksAbout,
  doubtsAbout,
  heldShort,
  inDoubtBecause,
  type NotesBeside,
} from '../../../core/safety/doubts';
import type { KeptSeed } from '../../../core/advice/seed-candidate';
import { wayBackOf, type InDoubt } from '../../../core/safety/way-back';
import { powerCutOfMates, type HoldMate } from '../../../core/safety/hold-mates';
import type { InShort, MatesPowerCut } from '../../../core/shapes/seed-codes';
import { asksToLook, remarksAbout } from '../derived/unread';
import type { JarRecord } from '../../../core/vigour/evidence';
import type { Judged } from '../judged';
import type { Ledger } from '../ledger';
import { notesOf } from '../derived/columns-of-jars';
import { interruptions } from '../derived/interruptions';

type Against = Pick<KeptSeed, 'doubts' | 'asks' | 'quotes'> & {
  /** The nearest jar in doubt that it descends from. */
  readonly doubtful: number | null;
};

const NO_NOTES: NotesBeside = { jar: null, hold: null, batch: null };

const byOutcome = new WeakMap<NonNullable<JarRecord['outcome']>, readonly InShort[] | null>();

/** As inDoubtBecause; where an outcome is all there is to go by, kept with it, since acts leave most outcomes as they are. */
function ownDoubt(
  outcome: JarRecord['outcome'],
  mates: MatesPowerCut | null,
  notes: NotesBeside,
): readonly InShort[] | null {
  const alone = mates === null && notes.jar === null && notes.hold === null && notes.batch === null;
  if (outcome === null && alone) return null;
  if (outcome === null || !alone) return inDoubtBecause(outcome, mates, notes);
  const before = byOutcome.get(outcome);
  if (before !== undefined) return before;
  const because = inDoubtBecause(outcome, mates, notes);
  byOutcome.set(outcome, because);
  return because;
}

function workOut(ledger: Ledger, judged: Judged): (jar: number) => Against {
  const { rows, index } = ledger;
  const { family } = index;
  const outcomeOf = (key: number): JarRecord['outcome'] => judged.records.get(key)?.outcome ?? null;
  const [jars, holds, batches] = [notesOf(rows, 'jar'), notesOf(rows, 'hold'), notesOf(rows, 'batch')];
  const noNotes = jars.size === 0 && holds.size === 0 && batches.size === 0;
  const notes = (key: number): NotesBeside => {
    if (noNotes) return NO_NOTES;
    const { hold, batch } = index.jar(key);
    return {
      jar: jars.get(key) ?? null,
      hold: hold === null ? null : (holds.get(hold) ?? null),
      batch: batches.get(batch) ?? null,
    };
  };
  const mate = (key: number): HoldMate<number> => {
    const { label, hold } = index.jar(key);
    return { label, jar: { id: key, hold }, outcome: outcomeOf(key) };
  };
  // Few batches ever have a power cut, so only their jars are held together.
  const cut = new Map<number, HoldMate<number>[]>();
  for (const [key, { outcome }] of judged.records) {
    if (outcome?.powerCut !== true) continue;
    const { batch } = index.jar(key);
    cut.set(batch, [...(cut.get(batch) ?? []), mate(key)]);
  }
  const interrupted = interruptions(rows);
  // What was recorded of its hold counts before what another jar tells.
  const matesCut = (key: number): MatesPowerCut | null => {
    const own = interrupted.get(key);
    if (own) return { label: null, ...own };
    if (cut.size === 0) return null;
    const told = cut.get(index.jar(key).batch);
    return told ? powerCutOfMates(mate(key), told) : null;
  };
  const inDoubt = new Map<number, InDoubt>();
  for (const key of family.keys) {
    const because = ownDoubt(outcomeOf(key), matesCut(key), notes(key));
    if (because !== null) inDoubt.set(key, { jar: key, label: index.jar(key).label, because });
  }
  const remarks = remarksAbout(rows, null, true);
  const wayBack = wayBackOf(family, inDoubt);
  const hoursOf = (key: number): number | null => judged.all.byKey.get(key)?.heldHours ?? null;
  return (key) => {
    const [outcome, mates, beside] = [outcomeOf(key), matesCut(key), notes(key)];
    const own = remarks.get(key) ?? [];
    return {
      doubts: [...doubtsAbout(outcome, mates, beside), ...(outcome === null ? [] : heldShort(hoursOf(key)))],
      asks: [
        ...asksAbout(outcome, mates, beside),
        ...own.filter(asksToLook).map((remark) => ({ code: 'remark' as const, remark })),
        ...wayBack.looks(key),
      ],
      quotes: own.filter(({ readAs }) => readAs === null),
      doubtful: wayBack.doubtful(key),
    };
  };
}

const known = new WeakMap<Judged, (jar: number) => Against>();

/** What speaks against each jar. @param judged the judgement of the ledger as it stands, which is another after each act */
export function againstIn(ledger: Ledger, judged: Judged): (jar: number) => Against {
  const before = known.get(judged);
  if (before) return before;
  const now = workOut(ledger, judged);
  known.set(judged, now);
  return now;
}
