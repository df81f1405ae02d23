// What reads can't write, whatever is tried; what writes still can afterwards.
import { expect, it } from 'vitest';
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
