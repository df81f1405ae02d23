// Recording a batch as a whole, and correcting the batch and its times in warmth.
import type { BatchEntry, Parsed, Reply } from '../../../core/contract';
import type { Hold } from '../../../core/ledger/records';
import type { Ledger } from '../ledger';
import { refuseEndToCome, refuseGoneOn, refuseMadeOn, refuseMovedBatch, refuseTooMuchSeed, shelfOrGone, type SeenJar } from '../possible'; // prettier-ignore
import { Refused } from '../refusal';
import { refuseDay } from '../seed-rules';
import type { OpenAct } from '../acts';
import type { Row } from '../tables';
import { refuseHeldSeeds, seedKeys } from './held-seeds';
import { addSeeding, labelsInShort, outcomeRow, packageKey, seedingRow, standingJar } from './parts';
import { inOrder, mustSay, tidy, whenOf } from './tidy';

const lower = (text: string | null): string => text?.toLowerCase() ?? '';

/** A jar that the same day, word and letter name already; jars entered by mistake and lost ones don't count. */
export function jarLabelled(
  ledger: Ledger,
  madeOn: string,
  word: string | null,
  letter: string,
  except: ReadonlySet<number> = new Set(),
): boolean {
  return ledger.acts
    .jarsOfDay(madeOn)
    .some(
      (jar) =>
        jar.state !== 'lost' &&
        !except.has(jar.key) &&
        lower(jar.word) === lower(word) &&
        lower(jar.letter) === lower(letter),
    );
}

export function checkHold(hold: Partial<Pick<Hold, 'startedAt' | 'endedAt'>>): void {
  inOrder('The time in warmth', whenOf(hold.startedAt), whenOf(hold.endedAt));
}

type NewJar = Omit<BatchEntry['jars'][number], 'hold'>;

/** A jar with all that belongs to it. @returns its uid */
function insertJar(ledger: Ledger, act: OpenAct, batch: number, hold: number | null, jar: NewJar): string {
  const { additions, seedings, outcome, milkPackage, ...fields } = jar;
  const { madeOn, word } = ledger.rows.get('batch', batch);
  const label = madeOn === null ? `jar ${jar.letter}` : ledger.labelFor({ madeOn, word, letter: jar.letter });
  refuseGoneOn(ledger, { label, madeOn }, fields.goneOn);
  const made = act.insert('jar', {
    ...fields,
    ...shelfOrGone(label, { onShelf: fields.onShelf, goneOn: fields.goneOn }),
    batch,
    hold,
    milkPackage: packageKey(ledger, milkPackage, 'milk'),
  });
  for (const addition of additions) {
    act.insert('addition', {
      ...addition,
      jar: made.key,
      package: packageKey(ledger, addition.package, 'addition'),
    });
  }
  for (const seeding of seedings) addSeeding(ledger, act, seedingRow(ledger, act, made.key, seeding));
  refuseTooMuchSeed(ledger, { key: made.key, letter: fields.letter });
  if (outcome) act.insert('outcome', outcomeRow(made.key, outcome));
  return made.uid;
}

export function recordBatch(ledger: Ledger, given: Parsed<'batch.record'>): Reply<'batch.record'> {
  const entry = tidy(given);
  const jars = entry.jars.map((jar) => {
    mustSay(jar, 'letter');
    return { ...jar, letter: jar.letter.toLowerCase() };
  });
  refuseMadeOn(
    ledger,
    entry.madeOn,
    jars.map(({ state }) => state),
  );
  const labelled = jars.map(({ letter }) => ({
    letter,
    label: ledger.labelFor({ madeOn: entry.madeOn, word: entry.word, letter }),
  }));
  if (!entry.sameLabelMeant) {
    const seen = new Set<string>();
    for (const { letter, label } of labelled) {
      if (seen.has(letter) || jarLabelled(ledger, entry.madeOn, entry.word, letter)) {
        throw new Refused('same label', { label, mayMean: true });
      }
      seen.add(letter);
    }
  }
  for (const hold of entry.holds) checkHold(hold);
  for (const jar of jars) {
    if (jar.hold !== null && jar.hold >= entry.holds.length)
      throw new Refused('no such hold', { jar: jar.letter });
    const label = ledger.labelFor({ madeOn: entry.madeOn, word: entry.word, letter: jar.letter });
    const endedAt = jar.hold === null ? null : (entry.holds[jar.hold]?.endedAt ?? null);
    refuseEndToCome(ledger, endedAt, [{ label, setAtTakeOut: jar.outcome?.setAtTakeOut ?? null }]);
    for (const addition of jar.additions) mustSay(addition, 'name');
  }

  const seedings = jars.flatMap((jar) => jar.seedings);
  refuseHeldSeeds(ledger, seedKeys(ledger, seedings), entry.why);

  const done = ledger.acts.mustRun(
    'batch.record',
    labelsInShort(labelled),
    entry.why,
    (act) => {
      const batch = act.insert('batch', { madeOn: entry.madeOn, word: entry.word, note: entry.note });
      const holds = entry.holds.map((hold) =>
        act.insert('hold', { ...hold, batch: batch.key, basis: 'recorded' }),
      );
      const uids = jars.map(({ hold, ...jar }) =>
        insertJar(ledger, act, batch.key, hold === null ? null : (holds[hold]?.key ?? null), jar),
      );
      return { batch: batch.uid, jars: uids };
    },
    entry.draft,
  );
  return { act: done.act.uid, ...done.value };
}

/** The batch behind an id, with its day. @throws Refused 'not found', 'batch without a day' */
function standingBatch(ledger: Ledger, uid: string): Row<'batch'> & { readonly madeOn: string } {
  const found = ledger.rows.get('batch', ledger.rows.keyOf('batch', uid));
  if (found.madeOn === null) throw new Refused('batch without a day');
  return { ...found, madeOn: found.madeOn };
}

/** One more jar of a recorded batch. @throws Refused 'same label', 'hold of another batch', and as recordBatch */
export function addJar(ledger: Ledger, input: Parsed<'batch.addJar'>): Reply<'batch.addJar'> {
  const batch = standingBatch(ledger, input.batch);
  const { hold, ...given } = tidy(input.jar);
  mustSay(given, 'letter');
  for (const addition of given.additions) mustSay(addition, 'name');
  const jar = { ...given, letter: given.letter.toLowerCase() };
  refuseMadeOn(ledger, batch.madeOn, [jar.state]);
  const label = ledger.labelFor({ madeOn: batch.madeOn, word: batch.word, letter: jar.letter });
  if (!input.sameLabelMeant && jarLabelled(ledger, batch.madeOn, batch.word, jar.letter)) {
    throw new Refused('same label', { label });
  }
  const holdKey = ledger.rows.keyOrNull('hold', hold);
  if (holdKey !== null && ledger.rows.get('hold', holdKey).batch !== batch.key) {
    throw new Refused('hold of another batch');
  }
  const why = tidy(input.why);
  refuseHeldSeeds(ledger, seedKeys(ledger, jar.seedings), why);
  const done = ledger.acts.mustRun(
    'batch.addJar',
    label,
    why,
    (act) => insertJar(ledger, act, batch.key, holdKey, jar),
    input.draft,
  );
  return { act: done.act.uid, jar: done.value };
}

const seenJar = (ledger: Ledger, { key, label }: { key: number; label: string }): SeenJar => ({
  label,
  setAtTakeOut: ledger.rows.where('outcome', 'jar', key)[0]?.setAtTakeOut ?? null,
});

/** One more time in warmth of a recorded batch. @throws Refused 'times crossed', 'jar of another batch', 'is a mistake', 'taken out before the end' */
export function addHold(ledger: Ledger, input: Parsed<'batch.addHold'>): Reply<'batch.addHold'> {
  const batch = standingBatch(ledger, input.batch);
  const hold = tidy(input.hold);
  checkHold(hold);
  const jars = input.jars.map((uid) => standingJar(ledger, uid));
  const stray = jars.find((jar) => jar.batch !== batch.key);
  if (stray) throw new Refused('jar of another batch', { jar: stray.label });
  refuseEndToCome(
    ledger,
    hold.endedAt,
    jars.map((jar) => seenJar(ledger, jar)),
  );
  const subject = batchSubject(ledger, batch.key);
  const done = ledger.acts.mustRun(
    'batch.addHold',
    subject,
    tidy(input.why),
    (act) => {
      const made = act.insert('hold', { ...hold, batch: batch.key, basis: 'recorded' });
      for (const jar of jars) act.update('jar', jar.key, { hold: made.key });
      return made.uid;
    },
    input.draft,
  );
  return { act: done.act.uid, hold: done.value };
}

/** Labels of a batch's jars that can be seen; of a batch without any, its day. */
export function batchSubject(ledger: Ledger, batch: number): string {
  const keys = ledger.rows.prepare('SELECT key FROM jar WHERE batch = ? ORDER BY key').pluck().all(batch);
  const jars = (keys as number[]).map((key) => ledger.index.jar(key));
  const standing = jars.filter((jar) => jar.state !== 'mistake');
  return labelsInShort(standing.length > 0 ? standing : jars);
}

export function correctBatch(ledger: Ledger, input: Parsed<'batch.correct'>): Reply<'batch.correct'> {
  const changes = tidy(input.changes);
  const key = ledger.rows.keyOf('batch', input.id);
  const now = ledger.rows.get('batch', key);
  const madeOn = changes.madeOn ?? now.madeOn;
  const word = changes.word === undefined ? now.word : changes.word;
  if (madeOn !== null && (madeOn !== now.madeOn || lower(word) !== lower(now.word))) {
    const own = ledger.rows.where('jar', 'batch', key).filter(({ state }) => state !== 'mistake');
    const keys = new Set(own.map((jar) => jar.key));
    for (const { letter, state } of own) {
      if (state !== 'lost' && jarLabelled(ledger, madeOn, word, letter, keys)) {
        throw new Refused('same label', { label: ledger.labelFor({ madeOn, word, letter }) });
      }
    }
  }
  const done = ledger.acts.mustRun(
    'batch.correct',
    batchSubject(ledger, key),
    tidy(input.why),
    (act) => {
      const moved = madeOn !== null && madeOn !== now.madeOn;
      if (moved) {
        const states = ledger.rows.where('jar', 'batch', key).map(({ state }) => state);
        refuseMadeOn(ledger, madeOn, states);
        refuseDay(ledger.rows, key, madeOn);
      }
      act.update('batch', key, changes as Partial<typeof now>);
      if (moved) refuseMovedBatch(ledger, key, madeOn);
    },
    input.draft,
  );
  return { act: done.act.uid };
}

export function correctHold(ledger: Ledger, input: Parsed<'hold.correct'>): Reply<'hold.correct'> {
  const changes = tidy(input.changes);
  const key = ledger.rows.keyOf('hold', input.id);
  const now = ledger.rows.get('hold', key);
  const next = { ...now, ...(changes as Partial<typeof now>) };
  checkHold(next);
  if (next.endedAt !== now.endedAt) {
    const jars = ledger.rows.where('jar', 'hold', key).map((jar) => ledger.index.jar(jar.key));
    refuseEndToCome(ledger, next.endedAt, jars.map((jar) => seenJar(ledger, jar))); // prettier-ignore
  }
  const subject = batchSubject(ledger, now.batch);
  const done = ledger.acts.mustRun(
    'hold.correct',
    subject,
    tidy(input.why),
    (act) => {
      act.update('hold', key, changes as Partial<typeof now>);
    },
    input.draft,
  );
  return { act: done.act.uid };
}
