// The shelf is looked through once for all that ask of it while nothing changes: what changes it is seen at once.
import { expect, it } from 'vitest';
import type { Reply } from '../../core/contract';
import { getShelf } from '../../main/ledger/reads/read-shelf';
import {
  batchOf,
  FIRM,
  fromSource,
  must,
  newFile,
  openSession,
  plainJar,
  plainSource,
} from '../ledger/ledger-files';

it('is the same until something is recorded, here or by another program, taken back, or the day is another', () => {
  const file = newFile();
  const session = openSession(file, 'create');
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const jars = ['a', 'b'].map((letter) =>
    plainJar(letter, { seedings: [fromSource(source)], outcome: FIRM }),
  );
  const [a = '', b = ''] = must(session, 'batch.record', batchOf('2026-03-09', jars)).jars;
  const seen = (): string[] => getShelf(session.ledger).items.map(({ label }) => label);
  const first = getShelf(session.ledger);
  must(session, 'today.list', {});
  expect(getShelf(session.ledger)).toBe(first);
  expect(seen()).toEqual(['9 Mar a', '9 Mar b']);

  must(session, 'shelf.eat', { id: a, all: true });
  expect(seen()).toEqual(['9 Mar b']);
  const other = openSession(file);
  must(other, 'shelf.eat', { id: b, all: true, meant: true });
  other.close();
  expect(seen()).toEqual([]);
  must(session, 'act.undo', { act: null });
  expect(seen()).toEqual(['9 Mar b']);

  const item = (): Reply<'shelf.get'>['items'][number] | undefined => getShelf(session.ledger).items[0];
  const eatBy = item()?.eatBy?.on;
  must(session, 'facts.record', { facts: [{ kind: 'setting', name: 'eat fridge days', value: 12 }] });
  expect(item()?.eatBy?.on).not.toBe(eatBy);
  session.setNow('2026-03-20T00:00:00+01:00');
  expect(getShelf(session.ledger).today).toBe('2026-03-20');
  // Within an act that may be taken back nothing is kept.
  session.ledger.db.exec('BEGIN');
  const within = getShelf(session.ledger);
  expect(getShelf(session.ledger)).not.toBe(within);
  session.ledger.db.exec('ROLLBACK');
  session.close();
});

it('names no day to eat by before somebody has looked: then it does', () => {
  const session = openSession(newFile(), 'create');
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const jars = [plainJar('a', { seedings: [fromSource(source)] })];
  const [a = ''] = must(session, 'batch.record', batchOf('2026-03-09', jars)).jars;
  session.setNow('2026-03-12T09:00:00+01:00');
  const told = () => {
    const { sentence, items } = must(session, 'shelf.get', {});
    return [sentence, items[0]?.says.below, items[0]?.eatBy?.says].join(' ');
  };
  expect(told()).toMatch(/^Look at 9 Mar a and smell it first\. .*look first look and smell first, then by/);
  expect(told()).not.toMatch(/eat by/i);
  must(session, 'outcome.save', { jar: a, outcome: FIRM, onShelf: null });
  expect(told()).toMatch(/^Eat 9 Mar a .*eat by/);
  session.close();
});
