// What an act and a read cost in steps, whatever the ledger holds: jars of the family that are looked at, and rows of the family
// in memory that are walked over. Milliseconds are the benchmark's.
import { afterEach, expect, it, vi } from 'vitest';
import { Family } from '../../core/lineage/family';
import { FamilyColumns } from '../../core/lineage/counting';
import { writeJars } from '../bench/ledger-rows';
import { recordingEntry } from './recording-entry';
import { must, newFile, openSession } from './ledger-files';

afterEach(() => void vi.restoreAllMocks());

/** Looks at a jar of the family, and jars walked over, while something is done. */
function stepsOf(work: () => unknown): number {
  let steps = 0;
  const { slot } = FamilyColumns.prototype;
  vi.spyOn(FamilyColumns.prototype, 'slot').mockImplementation(function (this: FamilyColumns, key) {
    steps++;
    return slot.call(this, key);
  });
  const { get } = Object.getOwnPropertyDescriptor(Family.prototype, 'keys') ?? {};
  vi.spyOn(Family.prototype, 'keys', 'get').mockImplementation(function (this: Family) {
    const keys = get?.call(this) as number[];
    steps += keys.length;
    return keys;
  });
  work();
  vi.restoreAllMocks();
  return steps;
}

/** Steps of each thing that a keeper does, in a line of so many jars, five to a batch. */
function stepsIn(jars: number): Record<string, number> {
  const session = openSession(newFile(), 'create');
  session.ledger.acts.run('notes.bringIn', 'notes.csv', null, (act) => writeJars(act, jars));
  const uids = session.ledger.db
    .prepare('SELECT r.uid FROM jar j JOIN record r ON r.key = j.key ORDER BY j.key')
    .pluck()
    .all() as string[];
  // Of which nothing was measured: its mates are asked.
  const seed = uids[301] as string;
  const entry = { ...recordingEntry(0, seed), madeOn: '2020-01-01' };
  const steps = {
    'recording a jar': stepsOf(() => must(session, 'batch.record', entry)),
    'opening its seed after it': stepsOf(() => must(session, 'jar.get', { id: seed })),
    'undoing it': stepsOf(() => must(session, 'act.undo', { act: null })),
    'how the ledger stands': stepsOf(() => must(session, 'app.state', {})),
  };
  session.close();
  return steps;
}

it('takes as many steps in a ledger of four times as many jars', () => {
  const few = stepsIn(400);
  expect(few['recording a jar']).toBeGreaterThan(0);
  expect(stepsIn(1600)).toEqual(few);
});

it('counts how much there is once for as long as nothing is recorded', () => {
  const session = openSession(newFile(), 'create');
  const { rows } = session.ledger;
  const counted = vi.spyOn(rows, 'count');
  const jars = (): [number | undefined, number] => {
    counted.mockClear();
    const there = must(session, 'app.state', {}).ledger?.jars;
    return [there, counted.mock.calls.filter(([sql]) => sql.includes('FROM jar')).length];
  };
  must(session, 'batch.record', recordingEntry(0, null));
  expect([jars()[0], jars()]).toEqual([1, [1, 0]]);
  must(session, 'batch.record', recordingEntry(1, null));
  expect([jars()[0], jars()]).toEqual([2, [2, 0]]);
  must(session, 'act.undo', { act: null });
  expect(jars()[0]).toBe(1);
  const other = openSession(session.ledger.file);
  must(other, 'batch.record', recordingEntry(2, null));
  other.close();
  expect(jars()[0]).toBe(2);
  session.close();
});
