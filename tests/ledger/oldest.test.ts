// A ledger that a program of the oldest released version wrote is opened by this one, and goes on. The file is as that program left it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { FIRST_VERSION, latestOf, migrations } from '../../main/ledger/migrations/all-migrations';
import { troubles } from '../facts/facts-in-memory';
import { batchOf, fromJar, must, newFile, openSession, plainJar } from './ledger-files';

const LATER = '2026-04-01T18:00:00+02:00';

it(`of version ${FIRST_VERSION}, with its family, its cautions and what can be undone`, () => {
  const file = newFile();
  const kept = gunzipSync(readFileSync(join(import.meta.dirname, `version-${FIRST_VERSION}.sqlite.gz`)));
  // As SQLite's file format has it: the version that a program gives its file, 60 bytes into it.
  expect(kept.readUInt32BE(60)).toBe(FIRST_VERSION);
  writeFileSync(file, kept);
  const session = openSession(file, 'open', LATER);
  const { db } = session.ledger;
  expect(db.pragma('user_version', { simple: true })).toBe(latestOf(migrations));
  expect(troubles(db)).toEqual([]);
  const { jars } = must(session, 'family.get', {});
  // Reckoned by hand: 45 ml in 946 ml each time is log2(946 / 45) = 4.394 doublings; the last jar had 30 ml of generation 3
  // and 15 ml of generation 2.
  const each = Math.log2(946 / 45);
  expect(jars.map(({ label, generation, cautions }) => [label, generation.deepest, generation.shallowest, Number(generation.mean.toFixed(6)), cautions.map(({ level }) => level)])).toEqual([
    ['1 Mar a', 1, 1, 1, []],
    ['5 Mar a', 2, 2, 2, ['look']],
    ['9 Mar a', 3, 3, 3, ['set aside']],
    ['9 Mar b', 3, 3, 3, ['condemned']],
    ['13 Mar a', 4, 3, Number((11 / 3).toFixed(6)), ['look']],
  ]); // prettier-ignore
  const mixed = (2 / 3) * (3 * each) + (1 / 3) * (2 * each);
  expect(jars.map(({ doublings }) => doublings.transfers?.toFixed(9))).toEqual(
    [0, each, 2 * each, 2 * each, mixed].map((value) => value.toFixed(9)),
  );
  const last = jars.at(-1)?.id ?? '';
  expect(must(session, 'jar.get', { id: last }).record.jar.vessel).toBe('a quart jar');
  const more = must(session, 'batch.record', batchOf('2026-03-20', [plainJar('a', { seedings: [fromJar(last)] })])); // prettier-ignore
  expect(must(session, 'family.get', {}).jars.find(({ id }) => id === more.jars[0])?.generation.deepest).toBe(5); // prettier-ignore
  must(session, 'act.undo', { act: null });
  // What that program did last, it undone and did again.
  must(session, 'act.undo', { act: null });
  expect(must(session, 'jar.get', { id: last }).record.jar.vessel).toBeNull();
  session.close();
});
