// Rows handed over and merged: by id, with their home and their form there; contradictions wait; what is private stays.
import { expect, it } from 'vitest';
import { handOver, type HandedRows } from '../../main/ledger/facts/hand-over';
import { invertAct } from '../../main/ledger/facts/invert';
import { decideReceived, mergeRows, type Merged } from '../../main/ledger/facts/merge';
import { type Bare, bareLedger, stateOf, troubles } from './facts-in-memory';

/** As it would go through a file. */
const through = (handed: HandedRows): HandedRows => JSON.parse(JSON.stringify(handed)) as HandedRows;

function takeIn({ rows, acts }: Bare, handed: HandedRows): Merged | null {
  return (
    acts.run('ledger.merge', 'a hand-over', null, (act) => mergeRows(rows, act, through(handed)))?.value ??
    null
  );
}

function giver() {
  const bare = bareLedger();
  const { add } = bare;
  const source = add('source', { name: 'Blue Tin', note: 'from the shelf behind', notePrivate: true });
  add('strain', { source, place: 1, genus: 'Lactobacillus', species: 'x', designation: 'inv-1' });
  const box = add('package', {
    of: 'source',
    source,
    name: 'Blue Tin',
    price: { minor: 1999, currency: 'EUR', typed: null },
  });
  const first = add('batch', { madeFrom: '2026-02-26', madeTo: '2026-03-02' });
  const second = add('batch', { madeOn: '2026-03-05' });
  const a = add('jar', { batch: first, letter: 'a', state: 'made' });
  const mate = add('jar', { batch: first, letter: 'b', state: 'made' });
  const c = add('jar', { batch: second, letter: 'c', state: 'made' });
  const started = add('seeding', { jar: a, source });
  add('use', { package: box, seeding: started });
  const seeded = add('seeding', { jar: c, fromJar: a });
  const observation = add('observation', { jar: a, stage: 'take-out', setState: 'set' });
  add('acidity', { observation, ph: 4.4, how: 'meter' });
  const shown = add('remark', { jar: c, field: 'note', text: 'for Ida', private: false });
  const secret = add('remark', { jar: c, field: 'note', text: 'do not tell', private: true });
  return { ...bare, a, mate, c, seeded, observation, shown, secret };
}

it('hands over a jar with all it descends from, and nothing private', () => {
  const { rows, c, a, mate } = giver();
  const handed = handOver(rows, c);
  const text = JSON.stringify(handed);
  expect(text).toContain('for Ida');
  expect(text).not.toMatch(/do not tell|shelf behind|1999/);
  const uids = handed.records.map(({ uid }) => uid);
  expect(uids).toContain(rows.uidOf('jar', a));
  expect(uids).not.toContain(rows.uidOf('jar', mate));
  expect(handed.records.map(({ kind }) => kind).toSorted()).toEqual([
    'acidity', 'batch', 'batch', 'jar', 'jar', 'observation', 'package', 'remark', 'seeding', 'seeding', 'source', 'strain', 'use',
  ]); // prettier-ignore
});

it('is taken in whole, once, and can be undone and taken in again', () => {
  const from = giver();
  const to = bareLedger();
  const before = stateOf(to.db);
  const handed = handOver(from.rows, from.c);
  expect(takeIn(to, handed)).toEqual({ added: 13, renewed: 0, waiting: 0 });
  expect(troubles(to.db)).toEqual([]);
  const home = to.db.prepare('SELECT key FROM ledger WHERE uid = ?').pluck().get(handed.ledger.uid);
  expect(to.db.prepare('SELECT DISTINCT home FROM record').pluck().all()).toEqual([home]);
  // The same family, record by record.
  const again = handOver(to.rows, to.rows.keyOf('jar', from.rows.uidOf('jar', from.c)));
  const sorted = ({ records }: HandedRows) =>
    records
      .toSorted((x, y) => (x.uid < y.uid ? -1 : 1))
      .map(({ uid, home: of, form }) => ({ uid, of, form }));
  expect(sorted(again)).toEqual(sorted(handed));
  expect(takeIn(to, handed)).toBeNull();
  const act = Number(to.db.prepare('SELECT max(key) FROM act').pluck().get());
  to.act((open) => invertAct(to.rows, open, act), act);
  expect(stateOf(to.db)).toBe(before);
  expect(takeIn(to, handed)).toMatchObject({ added: 13 });
  expect(troubles(to.db)).toEqual([]);
});

it('takes over what its home changed since, and lets wait what was changed on both sides', () => {
  const from = giver();
  const to = bareLedger();
  takeIn(to, handOver(from.rows, from.c));
  const here = (kind: 'remark' | 'observation', key: number): number =>
    to.rows.keyOf(kind, from.rows.uidOf(kind, key));
  from.act((act) => act.update('observation', from.observation, { setWord: 'firm' }));
  from.act((act) => act.update('remark', from.shown, { text: 'for Ida and Tom' }));
  to.act((act) => act.update('remark', here('remark', from.shown), { text: 'from the club' }));
  expect(takeIn(to, handOver(from.rows, from.c))).toEqual({ added: 0, renewed: 1, waiting: 1 });
  expect(to.rows.get('observation', here('observation', from.observation)).setWord).toBe('firm');
  expect(to.rows.get('remark', here('remark', from.shown)).text).toBe('from the club');
  const [received] = to.rows.all('received');
  expect(received).toMatchObject({ about: here('remark', from.shown), decided: null });
  // Asked once, not with each copy.
  expect(takeIn(to, handOver(from.rows, from.c))).toBeNull();
  to.act((act) => decideReceived(to.rows, act, received?.key ?? 0, 'took received'));
  expect(to.rows.get('remark', here('remark', from.shown)).text).toBe('for Ida and Tom');
  expect(troubles(to.db)).toEqual([]);
});

it('knows its own when it comes back: older forms are nothing new, other ones wait', () => {
  const from = giver();
  const to = bareLedger();
  takeIn(to, handOver(from.rows, from.c));
  const jar = to.rows.keyOf('jar', from.rows.uidOf('jar', from.c));
  from.act((act) => act.update('observation', from.observation, { setWord: 'firm' }));
  const state = stateOf(from.db);
  expect(takeIn(from, handOver(to.rows, jar))).toBeNull();
  expect(stateOf(from.db)).toBe(state);
  to.act((act) => act.update('jar', jar, { vessel: 'a cup' }));
  expect(takeIn(from, handOver(to.rows, jar))).toEqual({ added: 0, renewed: 0, waiting: 1 });
  expect(from.rows.get('jar', from.c).vessel).toBeNull();
  expect(troubles(from.db)).toEqual([]);
});

it('what speaks against a jar goes along, without the private words', () => {
  const from = giver();
  const [told] = ['discard', 'fine'].map((readAs) =>
    from.add('remark', {
      jar: from.a,
      field: 'smell',
      text: `secret ${readAs}`,
      private: true,
      readAs: readAs as 'discard',
    }),
  );
  from.add('sign', { remark: from.secret, kind: 'fuzz', answer: 'seen' });
  const to = bareLedger();
  const handed = handOver(from.rows, from.c);
  expect(JSON.stringify(handed)).not.toMatch(/secret|do not tell/);
  takeIn(to, handed);
  expect(to.rows.get('remark', to.rows.keyOf('remark', from.rows.uidOf('remark', told ?? 0)))).toMatchObject({
    text: '(kept private)',
    readAs: 'discard',
    private: true,
  });
  expect([...to.rows.all('sign')]).toMatchObject([{ kind: 'fuzz', answer: 'seen' }]);
  expect([...to.rows.all('remark')]).toHaveLength(3);
  // It comes home and says nothing new.
  expect(takeIn(from, handOver(to.rows, to.rows.keyOf('jar', from.rows.uidOf('jar', from.c))))).toBeNull();
});

it('a stranger can’t speak for this ledger: what it is said to have written is here, or is not its own', () => {
  const from = giver();
  const to = bareLedger();
  const own = String(to.db.prepare('SELECT uid FROM ledger WHERE own = 1').pluck().get());
  const handed = handOver(from.rows, from.c);
  const claimed = handed.records.map((record) => ({ ...record, home: own }));
  const before = stateOf(to.db);
  expect(() => takeIn(to, { ledger: { uid: own, name: null }, records: claimed })).toThrow(
    'hand-over claims ours',
  );
  expect(stateOf(to.db)).toBe(before);
  takeIn(to, { ledger: handed.ledger, records: claimed });
  expect(
    to.db.prepare("SELECT count(*) FROM record WHERE home = 1 AND kind <> 'received'").pluck().get(),
  ).toBe(0);
  // And of what is ours nothing is written over, whatever form a stranger says it has.
  const mine = bareLedger();
  takeIn(mine, handed);
  const home = mine.add('batch', { madeOn: '2026-02-01' });
  const jar = mine.add('jar', { batch: home, letter: 'z', state: 'made' });
  const uid = mine.rows.uidOf('jar', jar);
  const batch = mine.rows.uidOf('batch', home);
  const id = String(mine.db.prepare('SELECT uid FROM ledger WHERE own = 1').pluck().get());
  const form = { batch, letter: 'q', state: 'made' };
  takeIn(mine, {
    ledger: handed.ledger,
    records: [{ uid, kind: 'jar', home: id, homeForm: 1_000_000, form }],
  });
  expect(mine.rows.get('jar', jar).letter).toBe('z');
});

it('what was taken away here stays away', () => {
  const from = giver();
  const to = bareLedger();
  takeIn(to, handOver(from.rows, from.c));
  to.act((act) => act.remove('remark', to.rows.keyOf('remark', from.rows.uidOf('remark', from.shown))));
  expect(takeIn(to, handOver(from.rows, from.c))).toBeNull();
});

it('what points nowhere, or can’t be read, is refused whole', () => {
  const from = giver();
  const to = bareLedger();
  const { ledger, records } = handOver(from.rows, from.c);
  const without = { ledger, records: records.filter(({ kind }) => kind !== 'source') };
  expect(() => takeIn(to, without)).toThrow('handed incomplete');
  const odd = {
    ledger,
    records: records.map((one) => (one.kind === 'acidity' ? { ...one, form: { ...one.form, ph: 99 } } : one)),
  };
  expect(() => takeIn(to, odd)).toThrow('handed unreadable');
  expect(to.db.prepare('SELECT count(*) FROM record').pluck().get()).toBe(0);
  expect(to.db.prepare('SELECT count(*) FROM ledger').pluck().get()).toBe(1);
});
