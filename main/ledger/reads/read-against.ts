// What speaks against a jar as a seed beside its cautions: its own hold, its hold-mates and notes, and its way back. Worked
// out for the whole family at once, and kept as long as nothing is recorded.
import { asksAbout, doubtsAbout, inDoubtBecause, type NotesBeside } from '../../../core/safety/doubts';
import type { KeptSeed } from '../../../core/advice/advice-reply';
import { wayBackOf, type InDoubt } from '../../../core/safety/way-back';
import { powerCutOfMates, type HoldMate, type MatesPowerCut } from '../../../core/safety/hold-mates';
import { spoilageNoted } from '../../../core/safety/remarks';
import { quoteSentence } from '../../../core/says/safety-says';
import { unreadRemarks } from '../derived/unread';
import type { JarRecord } from '../../../core/vigour/evidence';
import type { Judged } from '../judged';
import type { Ledger } from '../ledger';
import { notesOf } from '../derived/columns-of-jars';
import { interruptions } from '../derived/interruptions';

type Against = Pick<KeptSeed, 'doubts' | 'asks' | 'quotes'> & {
  /** The nearest jar in doubt that it descends from. */
  readonly doubtful: number | null;
};

/** What was kept apart and has words of spoilage in its note, by the jars it seeded. */
function potsInDoubt({ rows, index }: Ledger): ReadonlyMap<number, InDoubt> {
  const found = new Map<number, InDoubt>();
  const pots = [...notesOf(rows, 'portion')].flatMap(([key, note]) => {
    const words = spoilageNoted(note, null);
    return words === null ? [] : [{ key, words }];
  });
  for (const { key, words } of pots) {
    const { jar: of } = rows.get('portion', key);
    const { label } = index.jar(of);
    const mark = {
      jar: of,
      label: `what was kept apart of ${label}`,
      because: `“${words}” was written down of it`,
    };
    for (const { jar } of rows.where('seeding', 'portion', key)) {
      // A jar that is only planned, or was entered by mistake, is no seed.
      if (index.family.has(jar)) found.set(jar, mark);
    }
  }
  return found;
}

const NO_NOTES: NotesBeside = { jar: null, hold: null, batch: null };

const byOutcome = new WeakMap<NonNullable<JarRecord['outcome']>, string | null>();

/** As inDoubtBecause; where an outcome is all there is to go by, kept with it, since acts leave most outcomes as they are. */
function ownDoubt(
  outcome: JarRecord['outcome'],
  mates: MatesPowerCut | null,
  notes: NotesBeside,
): string | null {
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
  const unread = unreadRemarks(rows);
  const wayBack = wayBackOf(family, inDoubt, potsInDoubt(ledger));
  return (key) => {
    const [outcome, mates, beside] = [outcomeOf(key), matesCut(key), notes(key)];
    return {
      doubts: doubtsAbout(outcome, mates, beside),
      asks: [...asksAbout(outcome, mates, beside), ...wayBack.looks(key)],
      quotes: (unread.get(key) ?? []).map(quoteSentence),
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
