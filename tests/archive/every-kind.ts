// A small ledger with a record of every kind, some of them changed, taken away and undone, and one photograph.
import type { Input } from '../../core/contract';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import { tableOf } from '../../main/ledger/facts/tables';
import type { Session } from '../../main/session';
import {
  batchOf,
  fromJar,
  must,
  newFile,
  openSession,
  plainJar,
  smallFamily,
  unseen,
} from '../ledger/ledger-files';

/** A JPEG that holds nothing but a picture (marker values by ITU-T T.81, table B.1, from memory). */
export function picture(size: number): Uint8Array<ArrayBuffer> {
  const before = [0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 30, 0, 40, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0]; // prettier-ignore
  const bytes = new Uint8Array(size).fill(1);
  bytes.set(before);
  bytes.set([0xff, 0xd9], size - 2);
  return bytes;
}

/** Kinds of which a ledger has no record. */
export const kindsMissing = ({ ledger }: Session): string[] =>
  FACT_KINDS.filter((kind) => ledger.rows.count(`SELECT count(*) FROM ${tableOf(kind)}`) === 0);

/** Holds, trials, tastings and the rest, that only facts.record takes. */
function record(session: Session, a: string, b: string, batch: string): void {
  const facts: Input<'facts.record'>['facts'] = [
    { kind: 'appliance', ref: 'box', name: 'Warm box', type: 'box' },
    { kind: 'toolCheck', tool: 'meter', name: null, day: '2026-03-01', shown: 4.02 },
    { kind: 'carries', name: 'Oat bran', allergen: 'gluten' },
    { kind: 'setting', name: 'eat fridge days', value: 14 },
    { kind: 'hold', ref: 'hold', appliance: 'box', began: '2026-02-28T18:00:00+01:00', ended: '2026-03-01T20:00:00Z' },
    { kind: 'stay', jar: a, hold: 'hold' },
    { kind: 'interruption', hold: 'hold', what: 'power', hours: 1.5 },
    { kind: 'series', ref: 'series', hold: 'hold', place: 'bath', heading: 'T1', scale: '°C' },
    { kind: 'milk', jar: b, name: 'whole milk', actual: { value: 900, unit: 'mL', typed: '900 ml' } },
    { kind: 'addition', jar: b, name: '=1+1', actual: { value: 0.1, unit: 'g', typed: null } },
    { kind: 'portion', ref: 'cubes', jar: a, form: 'cubes', place: 'freezer', pieces: 6, keptOn: '2026-03-02', reserve: true },
    { kind: 'movement', portion: 'cubes', what: 'freezer', at: '2026-03-02T10:00:00+01:00' },
    { kind: 'movement', jar: a, what: 'eaten', day: '2026-03-03', amount: { value: 100, unit: 'g', typed: null } },
    { kind: 'observation', ref: 'seen', jar: a, stage: 'take-out', setState: 'set', looked: true, at: '2026-03-01T21:00:00Z' },
    { kind: 'acidity', observation: 'seen', ph: 4.35, how: 'meter', checked: true },
    { kind: 'sign', observation: 'seen', sign: 'tint', answer: 'the fibre' },
    { kind: 'remark', jar: a, text: 'line one\r\nline "two"; \u2028 乳', readAs: 'fine' },
    { kind: 'labResult', jar: a, what: 'count', value: 1.25e9, unit: 'CFU/mL', sampledOn: '2026-03-04' },
    { kind: 'trial', ref: 'trial', batch, differsIn: 'the fibre' },
    { kind: 'treatment', trial: 'trial', jar: a, name: 'none' },
    { kind: 'session', ref: 'tasting', trial: 'trial', day: '2026-03-05', task: 'score', draw: 'by lot' },
    { kind: 'taster', ref: 'taster', name: 'taster A' },
    { kind: 'tasterAvoids', taster: 'taster', allergen: 'oats' },
    { kind: 'serving', ref: 'spoon', session: 'tasting', taster: 'taster', place: 1, jar: a, code: 123 },
    { kind: 'mark', serving: 'spoon', aspect: 'liking', score: 7 },
    { kind: 'reminderDone', what: 'take-out', about: a, at: '2026-03-01T22:00:00Z' },
  ]; // prettier-ignore
  const { ids } = must(session, 'facts.record', { facts });
  const series = ids[facts.findIndex(({ kind }) => kind === 'series')] ?? '';
  const at = (hour: number): string => `2026-02-28T${19 + hour}:00:00+01:00`;
  must(session, 'readings.add', {
    series,
    readings: [0, 1].map((hour) => ({ at: at(hour), c: 37.1 + hour })),
  });
  must(session, 'readings.add', { series, readings: [{ at: at(2), c: 39 }] });
  must(session, 'readings.leaveOut', { series, at: [at(1)] });
}

/** @param file where it is made */
export function everyKind(file = newFile()): Session {
  const session = openSession(file, 'create');
  const { source, jars, batches } = smallFamily(session);
  const box = must(session, 'package.save', {
    package: {
      id: null, of: 'source', source, name: 'a box', size: { value: 30, unit: 'pieces', typed: '30' }, price: { minor: 1999, currency: 'EUR', typed: '19.99' },
      boughtOn: '2026-02-01', openedOn: null, bestBefore: null, note: 'from the corner',
    },
  }); // prettier-ignore
  must(session, 'source.save', { source: { id: null, name: 'Meadow Pot', form: 'capsules', strains: [{ genus: 'Lactobacillus', species: 'inventus', designation: 'MP 1', countPerPiece: 5e8 }], blendTotalPerPiece: null, guaranteed: null, receivedFrom: null, knownGenerations: null, note: 'kept cool' } }); // prettier-ignore
  const about = { madeFrom: '2026-03-03', madeTo: '2026-03-09' };
  must(session, 'batch.record', batchOf(null, [plainJar('r', { seedings: [fromJar(jars[0])] })], about));
  record(session, jars[0], jars[1], batches[0] ?? '');
  const seeding = must(session, 'batch.get', { id: batches[0] ?? '' }).jars[0]?.seedings[0]?.seeding.id ?? '';
  must(session, 'facts.record', {
    facts: [{ kind: 'use', package: box.id, seeding, amount: { value: 10, unit: 'pieces', typed: null } }],
  });
  must(session, 'photograph.add', { jar: jars[0], bytes: picture(500), caption: 'from above' });
  const { photograph } = must(session, 'photograph.add', {
    jar: jars[1],
    bytes: picture(600),
    caption: null,
  });
  must(session, 'photograph.remove', { id: photograph.id, why: 'blurred' });
  must(session, 'outcome.save', {
    jar: jars[2],
    outcome: { ...unseen, signs: ['pink'], setWord: 'firm', ph: 4.2 },
    onShelf: false,
  });
  must(session, 'caution.clear', { jar: jars[3], of: jars[2], reason: 'stood in another box' });
  must(session, 'advice.choose', { line: null, jar: null });
  const notes = 'Date,Jar,Started from,Hours,Set\n2026-03-07,x,10 capsules Blue Tin,24,firm\n';
  must(session, 'notes.bringIn', { file: { name: 'kitchen.csv', bytes: new TextEncoder().encode(notes) } });
  must(session, 'preferences.save', { ...must(session, 'app.state', {}).preferences, theme: 'dark' });
  must(session, 'draft.save', { key: 'batch', json: '{"half":"said"}' });
  byHand(session, jars[1]);
  must(session, 'jar.correct', { id: jars[1], changes: { vessel: 'quart jar' } });
  must(session, 'jar.correct', { id: jars[1], changes: { vessel: 'pint jar' } });
  must(session, 'act.undo', { act: null });
  must(session, 'act.undo', { act: null });
  must(session, 'act.redo', {});
  return session;
}

/** What no call of today makes by itself: an answer about notes, and a form from another ledger that waits. */
function byHand({ ledger }: Session, jar: string): void {
  ledger.db
    .prepare(
      "INSERT INTO ledger (key, uid, name, own, demo, made_at, made_at_off) VALUES (2, ?, 'next door', 0, 0, 0, 0)",
    )
    .run('019ced65-d5c0-7000-a1d5-d8f7c8caa890');
  ledger.acts.run('ledger.merge', 'a hand-over', null, (act) => {
    const about = ledger.rows.keyOf('jar', jar);
    const batch = ledger.rows.uidOf('batch', ledger.rows.get('jar', about).batch);
    const form = JSON.stringify({ batch, letter: 'a', state: 'made', vessel: 'a cup' });
    act.insert('received', { about, fromLedger: 2, formNo: 2, form });
    act.insertFrom(
      'appliance',
      { name: 'their box' },
      { uid: '019ced65-d5c0-7000-a1d5-d8f7c8caa891', home: 2, homeForm: 3 },
    );
    const [row] = ledger.rows.all('noteRow');
    if (row) act.insert('noteAnswer', { noteRow: row.key, question: 'whole?', answer: 'yes' });
  });
}
