// Facts that an import lets wait and writes together lie there as if each had been written by itself.
import { describe, expect, it } from 'vitest';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import type { OpenAct } from '../../main/ledger/facts/open-act';
import { tableOf } from '../../main/ledger/facts/tables';
import { type Bare, bareLedger, troubles } from './facts-in-memory';

/** All that lies there, ids of records replaced by their length. */
const everything = ({ db }: Bare): unknown =>
  ['record', ...FACT_KINDS.map(tableOf)].map((table) => [
    table,
    (db.prepare(`SELECT * FROM ${table} ORDER BY key`).all() as { uid?: string }[]).map((row) =>
      row.uid === undefined ? row : { ...row, uid: row.uid.length },
    ),
  ]);

/** A batch for each number, each seeded from the one before, with what else an import writes. */
function some(act: OpenAct, many: number): number[] {
  const source = act.insert('source', { name: 'Blue Tin', notePrivate: true }).key;
  const file = act.insert('noteFile', { name: 'notes.csv', headings: ['Date'] }).key;
  const jars: number[] = [];
  for (let at = 0; at < many; at += 1) {
    const day = new Date(Date.parse('2026-01-01') + at * 86_400_000).toISOString().slice(0, 10);
    const batch = act.insert('batch', { madeOn: day }).key;
    const jar = act.insert('jar', { batch, letter: 'a', state: 'made', finalVolume: { value: at + 1, unit: 'mL', typed: null } }).key; // prettier-ignore
    const from = jars.at(-1);
    act.insert('seeding', from === undefined ? { jar, source } : { jar, fromJar: from });
    if (at % 3 === 0) {
      const observation = act.insert('observation', { jar, stage: 'not said', setWord: 'firm' }).key;
      act.insert('acidity', { observation, ph: 4.3, how: 'meter' });
      act.insert('remark', { observation, field: 'note', text: 'thick', private: true });
    }
    act.insert('noteRow', { file, line: at + 2, occurrence: 1, cellsSha: `row ${at}`, jar });
    jars.push(jar);
  }
  return jars;
}

describe('facts written together', () => {
  it.each([1, 7, 9, 70, 400])('%i of each are as if written one by one', (many) => {
    const [one, other] = [bareLedger(), bareLedger()];
    one.act((act) => void some(act, many));
    other.act((act) => {
      act.together();
      some(act, many);
    });
    expect(everything(other)).toEqual(everything(one));
    expect(troubles(other.db)).toEqual([]);
    // The next act goes on from there.
    for (const bare of [one, other]) bare.act((act) => void some(act, 2));
    expect(everything(other)).toEqual(everything(one));
  });

  it('are there when they are asked for, changed or taken away in the same act', () => {
    const bare = bareLedger();
    bare.act((act) => {
      act.together();
      const [first = 0, second = 0] = some(act, 5);
      expect(bare.rows.get('jar', second).letter).toBe('a');
      act.update('jar', second, { letter: 'b' });
      act.insert('remark', { jar: first, field: 'note', text: 'x', private: true });
      expect([...bare.rows.all('remark')].length).toBe(3);
      const [remark] = bare.rows.where('remark', 'jar', first);
      act.remove('remark', remark?.key ?? 0);
    });
    expect(bare.rows.where('jar', 'letter', 'b').length).toBe(1);
    expect(troubles(bare.db)).toEqual([]);
  });

  it('that the tables refuse are refused with the same words and the row that it is, and nothing is left', () => {
    const bare = bareLedger();
    const told: unknown[] = [];
    bare.acts.explain = (_act, { kind, columns }) => void told.push([kind, columns.letter]);
    const before = everything(bare);
    const spoil = (act: OpenAct): void => {
      const [first = 0] = some(act, 100);
      const { batch } = bare.rows.get('jar', first);
      for (let at = 0; at < 20; at += 1)
        act.insert('jar', { batch, letter: at === 13 ? 'x'.repeat(30) : `j${at}`, state: 'made' });
    };
    expect(() => bare.act(spoil)).toThrow(/CHECK constraint failed/);
    expect(() =>
      bare.act((act) => {
        act.together();
        spoil(act);
      }),
    ).toThrow(/CHECK constraint failed/);
    expect(told).toEqual([['jar', 'x'.repeat(30)], ['jar', 'x'.repeat(30)]]); // prettier-ignore
    expect(everything(bare)).toEqual(before);
    bare.act((act) => void some(act, 3));
    expect(troubles(bare.db)).toEqual([]);
  });
});
