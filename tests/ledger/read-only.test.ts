// What reads can't write, whatever is tried; what writes still can afterwards.
import { expect, it, vi } from 'vitest';
import { readOnly } from '../../main/ledger/read-only';
import { batchOf, must, newSession, plainJar, smallFamily } from './ledger-files';

it('a reading call can write nothing, and the next act is kept', () => {
  const session = newSession();
  smallFamily(session);
  const { db } = session.ledger;
  for (const sql of ["INSERT INTO draft VALUES ('a', '{}', 0, 0)", 'DELETE FROM draft', 'DROP TABLE draft'])
    expect(() => readOnly('jar.find', db, () => db.exec(sql))).toThrow(/readonly/);
  expect(must(session, 'family.get', {}).jars.length).toBe(4);
  must(session, 'batch.record', batchOf('2026-03-14', [plainJar('a')]));
  expect(must(session, 'family.get', {}).jars.length).toBe(5);
});

it('one that takes long is told of by its name, another is not', () => {
  const told: string[] = [];
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => told.push(String(text)) > 0);
  const { db } = newSession().ledger;
  const busy = (): number => {
    const { user } = process.cpuUsage();
    while (process.cpuUsage().user - user < 20_000);
    return 7;
  };
  expect(readOnly('jar.find', db, busy, 0.01)).toBe(7);
  expect(readOnly('jar.get', db, () => 7)).toBe(7);
  vi.restoreAllMocks();
  expect(told).toEqual([expect.stringMatching(/^jarline: slow: jar\.find took \d+\.\d s\n$/)]);
});
