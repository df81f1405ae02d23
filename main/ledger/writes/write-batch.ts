// Recording a batch as a whole, and correcting the batch and its times in warmth.
import type { BatchEntry, Parsed, Reply } from '../../../core/contract';
import type { Ledger } from '../ledger';
import { Refused } from '../../refusal';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { calledDay, lineName, lineWords } from '../../../core/lineage/labels';
import { addHold as addWarmth, changeHold } from '../entries/hold-entry';
import { addJar as keepJar, changeJar } from '../entries/jar-entry';
import { addAddition, addSeeding } from '../entries/kept-entries';
import { addBatch, changeBatch, refuseHalfRange } from '../entries/larder-entries';
import { addOutcome } from '../entries/outcome-entry';
import type { OpenAct } from '../facts/open-act';
import type { Row } from '../facts/tables';
import { labelsInShort, packageKey, refuseLoose, seedingRow, shelfOrGone, standingJar } from './write-parts';
import { mustSay, tidy } from '../tidy-typed';

type NewJar = Omit<BatchEntry['jars'][number], 'hold'>;

/** A jar with all that belongs to it. @returns its uid */
export function insertJar(
  ledger: Ledger,
  act: OpenAct,
  batch: number,
  hold: number | null,
  jar: NewJar,
): string {
  const { additions, seedings, outcome, milkPackage, ...fields } = jar;
  const row = ledger.rows.get('batch', batch);
  const label = ledger.labelFor({ ...calledDay(row), word: row.word, letter: fields.letter });
  const key = keepJar(act, {
    ...fields,
    ...shelfOrGone(label, {
      onShelf: fields.onShelf,
      goneOn: fields.goneOn,
    }),
    batch,
    hold,
    milkPackage: packageKey(ledger, milkPackage, 'milk'),
  });
  for (const addition of additions) {
    addAddition(act, {
      ...addition,
      jar: key,
      package: packageKey(ledger, addition.package, 'addition'),
    });
  }
  for (const seeding of seedings) addSeeding(act, seedingRow(ledger, act, key, seeding));
  if (outcome) addOutcome(act, key, refuseLoose(outcome));
  return ledger.rows.uidOf('jar', key);
}

/**
 * From when a hold is planned whose hours are known, of a batch made today, and of which nobody noted when it began: from now,
 * as long as nobody says how a jar of it came out. Null: nothing is planned.
 */
function plannedFrom(
  { clock }: Ledger,
  madeOn: string | null,
  hold: Pick<BatchEntry['holds'][number], 'startedAt' | 'endedAt' | 'hours'>,
  jars: readonly { readonly made: boolean; readonly seen: boolean }[],
): string | null {
  const untimed = hold.startedAt === null && hold.endedAt === null && hold.hours !== null;
  const goesOn = jars.some(({ made }) => made) && jars.every(({ seen }) => !seen);
  if (!untimed || !goesOn || madeOn !== clock.today()) return null;
  const { seconds, offset } = storedMoment(clock.now());
  return momentText(seconds, offset);
}

export function recordBatch(ledger: Ledger, given: Parsed<'batch.record'>): Reply<'batch.record'> {
  const entry = tidy(given);
  const jars = entry.jars.map((jar) => {
    mustSay(jar, 'letter');
    return { ...jar, letter: jar.letter.toLowerCase() };
  });
  const labelled = jars.map(({ letter }) => ({
    letter,
    label: ledger.labelFor({ ...calledDay(entry), word: entry.word, letter }),
  }));
  refuseHalfRange(entry);
  for (const jar of jars) {
    if (jar.hold !== null && jar.hold >= entry.holds.length)
      throw new Refused('no such hold', { jar: jar.letter });
    for (const addition of jar.additions) mustSay(addition, 'name');
  }
  const done = ledger.acts.mustRun(
    'batch.record',
    labelsInShort(labelled),
    entry.why,
    (act) => {
      const { madeOn, madeFrom, madeTo, word, note } = entry;
      const batch = addBatch(act, { madeOn, madeFrom, madeTo, word, note });
      const holds = entry.holds.map((hold, at) => {
        const own = jars
          .filter((jar) => jar.hold === at)
          .map(({ state, outcome }) => ({ made: state === 'made', seen: outcome !== null }));
        // Of jars that are only planned a start is a plan, too.
        if (hold.endedAt === null && own.length > 0 && own.every(({ made }) => !made))
          return addWarmth(act, { ...hold, startedAt: null, batch, basis: 'recorded' }, hold.startedAt);
        const from = plannedFrom(ledger, madeOn, hold, own);
        return addWarmth(act, { ...hold, batch, basis: 'recorded' }, from);
      });
      const uids = jars.map(({ hold, ...jar }) =>
        insertJar(ledger, act, batch, hold === null ? null : (holds[hold] ?? null), jar),
      );
      return { batch: ledger.rows.uidOf('batch', batch), jars: uids };
    },
    entry.draft,
    entry.sameLabelMeant,
  );
  return { act: done.act.uid, ...done.value };
}

/** The batch behind an id, made on a day or between two. @throws Refused 'not found', 'batch without a day' */
function standingBatch(ledger: Ledger, uid: string): Row<'batch'> {
  const found = ledger.rows.get('batch', ledger.rows.keyOf('batch', uid));
  if (found.madeOn === null && found.madeFrom === null) throw new Refused('batch without a day');
  return found;
}

/** One more jar of a recorded batch. @throws Refused 'hold of another batch', and as recordBatch */
export function addJar(ledger: Ledger, input: Parsed<'batch.addJar'>): Reply<'batch.addJar'> {
  const batch = standingBatch(ledger, input.batch);
  const { hold, ...given } = tidy(input.jar);
  mustSay(given, 'letter');
  for (const addition of given.additions) mustSay(addition, 'name');
  const jar = { ...given, letter: given.letter.toLowerCase() };
  const label = ledger.labelFor({ ...calledDay(batch), word: batch.word, letter: jar.letter });
  const holdKey = ledger.rows.keyOrNull('hold', hold);
  if (holdKey !== null && ledger.rows.get('hold', holdKey).batch !== batch.key) {
    throw new Refused('hold of another batch');
  }
  const done = ledger.acts.mustRun(
    'batch.addJar',
    label,
    tidy(input.why),
    (act) => insertJar(ledger, act, batch.key, holdKey, jar),
    input.draft,
    // Not meant is not asked: the form for one more jar has no way to say so yet.
    input.sameLabelMeant || null,
  );
  return { act: done.act.uid, jar: done.value };
}

/** One more time in warmth of a recorded batch. @throws Refused 'jar of another batch', 'is a mistake' */
export function addHold(ledger: Ledger, input: Parsed<'batch.addHold'>): Reply<'batch.addHold'> {
  const batch = standingBatch(ledger, input.batch);
  const hold = tidy(input.hold);
  const jars = input.jars.map((uid) => standingJar(ledger, uid));
  const stray = jars.find((jar) => jar.batch !== batch.key);
  if (stray) throw new Refused('jar of another batch', { jar: stray.label });
  const subject = batchSubject(ledger, batch.key);
  const done = ledger.acts.mustRun(
    'batch.addHold',
    subject,
    tidy(input.why),
    (act) => {
      const own = jars.map(({ state, outcomeKnown }) => ({ made: state === 'made', seen: outcomeKnown }));
      const from = plannedFrom(ledger, batch.madeOn, hold, own);
      const made = addWarmth(act, { ...hold, batch: batch.key, basis: 'recorded' }, from);
      for (const jar of jars) changeJar(act, jar.key, { hold: made });
      return ledger.rows.uidOf('hold', made);
    },
    input.draft,
  );
  return { act: done.act.uid, hold: done.value };
}

/** Labels of a batch's jars that can be seen; of a batch without any, its day. */
function batchSubject(ledger: Ledger, batch: number): string {
  const keys = ledger.rows.prepare('SELECT key FROM jar WHERE batch = ? ORDER BY key').pluck().all(batch);
  const jars = (keys as number[]).map((key) => ledger.index.jar(key));
  const standing = jars.filter((jar) => jar.state !== 'mistake');
  return labelsInShort(standing.length > 0 ? standing : jars);
}

export function correctBatch(ledger: Ledger, input: Parsed<'batch.correct'>): Reply<'batch.correct'> {
  const changes = tidy(input.changes);
  const key = ledger.rows.keyOf('batch', input.id);
  const done = ledger.acts.mustRun(
    'batch.correct',
    batchSubject(ledger, key),
    tidy(input.why),
    (act) => {
      changeBatch(act, key, changes);
    },
    input.draft,
  );
  return { act: done.act.uid };
}

/**
 * Says between which days a batch was made, where the day is not known.
 * @throws Refused 'not found', 'range of days', 'nothing changed', and as the rule book says
 */
export function tellAbout(ledger: Ledger, input: Parsed<'batch.about'>): Reply<'batch.about'> {
  const { madeFrom, madeTo } = input;
  refuseHalfRange({ madeOn: null, madeFrom, madeTo });
  const key = ledger.rows.keyOf('batch', input.id);
  const done = ledger.acts.mustRun(
    'batch.about',
    batchSubject(ledger, key),
    tidy(input.why),
    (act) => act.update('batch', key, { madeOn: null, madeFrom, madeTo }),
    input.draft,
  );
  return { act: done.act.uid };
}

export function correctHold(ledger: Ledger, input: Parsed<'hold.correct'>): Reply<'hold.correct'> {
  const changes = tidy(input.changes);
  const key = ledger.rows.keyOf('hold', input.id);
  const { batch } = ledger.rows.get('hold', key);
  const subject = batch === null ? 'time in warmth' : batchSubject(ledger, batch);
  const done = ledger.acts.mustRun(
    'hold.correct',
    subject,
    tidy(input.why),
    (act) => {
      changeHold(act, key, changes);
    },
    input.draft,
  );
  return { act: done.act.uid };
}

/**
 * Names a line where its founding batch lies; without a name it is called by that batch again.
 * @throws Refused 'not found' for a batch that founds no line
 */
export function nameLine(ledger: Ledger, input: Parsed<'line.name'>): Reply<'line.name'> {
  const name = tidy(input.name);
  const key = ledger.rows.keyOf('batch', input.line);
  if (!ledger.index.family.lines.some(({ batch }) => batch === key))
    throw new Refused('not found', { kind: 'line' });
  const row = ledger.rows.get('batch', key);
  const called = { ...calledDay(row), word: row.word };
  const now = lineWords(lineName(called, row.lineName));
  const subject = `${now} ${name === null ? lineWords(lineName(called)) : `“${name}”`}`;
  const done = ledger.acts.mustRun('line.name', subject, tidy(input.why), (act) => {
    act.update('batch', key, { lineName: name });
  });
  return { act: done.act.uid };
}
