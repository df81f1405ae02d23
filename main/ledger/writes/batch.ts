// Recording a batch as a whole, and correcting the batch and its times in warmth.
import type { BatchEntry, Parsed, Reply } from '../../../core/contract';
import type { Hold } from '../../../core/ledger/records';
import type { Ledger } from '../ledger';
import { Refused } from '../refusal';
import { refuseDay } from '../seed-rules';
import { addSeeding, labelsInShort, outcomeRow, packageKey, seedingRow } from './parts';
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

export function recordBatch(ledger: Ledger, given: BatchEntry): Reply<'batch.record'> {
  const entry = tidy(given);
  const jars = entry.jars.map((jar) => {
    mustSay(jar, 'letter');
    return { ...jar, letter: jar.letter.toLowerCase() };
  });
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
    for (const addition of jar.additions) mustSay(addition, 'name');
  }

  const done = ledger.acts.mustRun('batch.record', labelsInShort(labelled), null, (act) => {
    const batch = act.insert('batch', { madeOn: entry.madeOn, word: entry.word, note: entry.note });
    const holds = entry.holds.map((hold) =>
      act.insert('hold', { ...hold, batch: batch.key, basis: 'recorded' }),
    );
    const uids = jars.map((jar) => {
      const { additions, seedings, outcome, hold, milkPackage, ...fields } = jar;
      const made = act.insert('jar', {
        ...fields,
        batch: batch.key,
        hold: hold === null ? null : (holds[hold]?.key ?? null),
        milkPackage: packageKey(ledger, milkPackage, 'milk'),
      });
      for (const addition of additions) {
        act.insert('addition', {
          ...addition,
          jar: made.key,
          package: packageKey(ledger, addition.package, 'addition'),
        });
      }
      for (const seeding of seedings) addSeeding(ledger, act, seedingRow(ledger, made.key, seeding));
      if (outcome) act.insert('outcome', outcomeRow(made.key, outcome));
      return made.uid;
    });
    if (entry.draft !== null) ledger.rows.prepare('DELETE FROM draft WHERE key = ?').run(entry.draft);
    return { batch: batch.uid, jars: uids };
  });
  return { act: done.act.uid, ...done.value };
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
  const done = ledger.acts.mustRun('batch.correct', batchSubject(ledger, key), tidy(input.why), (act) => {
    if (madeOn !== null && madeOn !== now.madeOn) refuseDay(ledger.rows, key, madeOn);
    act.update('batch', key, changes as Partial<typeof now>);
  });
  return { act: done.act.uid };
}

export function correctHold(ledger: Ledger, input: Parsed<'hold.correct'>): Reply<'hold.correct'> {
  const changes = tidy(input.changes);
  const key = ledger.rows.keyOf('hold', input.id);
  const now = ledger.rows.get('hold', key);
  checkHold({ ...now, ...(changes as Partial<typeof now>) });
  const subject = batchSubject(ledger, now.batch);
  const done = ledger.acts.mustRun('hold.correct', subject, tidy(input.why), (act) => {
    act.update('hold', key, changes as Partial<typeof now>);
  });
  return { act: done.act.uid };
}
