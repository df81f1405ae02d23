// What is left of a package, and which lines a source began: by the jars that were made of them. Checked by arithmetic.
import { expect, it } from 'vitest';
import type { Session } from '../../main/session';
import { batchOf, fromSource, must, newSession, plainJar, plainSource } from './ledger-files';

const packageOf = (session: Session, source: string | null, name: string, pieces: number): string =>
  must(session, 'package.save', {
    package: { id: null, of: source === null ? 'addition' : 'source', source, name, size: { value: pieces, unit: source === null ? 'g' : 'pieces', typed: null }, price: null, boughtOn: null, openedOn: null, bestBefore: null, note: null },
    why: null,
    draft: null,
  }).id; // prettier-ignore
const left = (session: Session, id: string) =>
  must(session, 'package.list', {}).packages.find((one) => one.id === id);

it('counts down by what made jars took, and undo gives it back', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const tin = packageOf(session, source, 'Blue Tin, 30', 30);
  const bag = packageOf(session, null, 'acacia fibre', 250);
  expect(left(session, tin)).toMatchObject({ left: 30, uses: 0 });
  const from = { ...fromSource(source, 8), package: tin };
  const addition = {
    name: 'acacia fibre',
    planned: { value: 12.5, unit: 'g' as const, typed: null },
    actual: null,
    package: bag,
  };
  must(session, 'batch.record', batchOf('2026-03-01', [
    plainJar('a', { seedings: [from], additions: [addition] }),
    plainJar('b', { seedings: [from], state: 'planned' }),
  ])); // prettier-ignore
  expect(left(session, tin)).toMatchObject({ left: 22, uses: 1 });
  expect(left(session, bag)).toMatchObject({ left: 237.5, uses: 1 });
  const [began] = must(session, 'source.list', {}).sources;
  const [line] = must(session, 'family.get', {}).lines;
  expect(began?.lines).toEqual([{ id: line?.id, name: line?.name }]);
  must(session, 'act.undo', { act: null });
  expect(left(session, tin)).toMatchObject({ left: 30, uses: 0 });
  expect(must(session, 'source.list', {}).sources[0]?.lines).toEqual([]);
});

it('is not known where an amount is in another unit, and never below nothing', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const tin = packageOf(session, source, 'Blue Tin, 30', 30);
  const jar = (pieces: number, unit: 'pieces' | 'g') =>
    plainJar('a', {
      seedings: [{ ...fromSource(source), package: tin, amount: { value: pieces, unit, typed: null } }],
    });
  must(session, 'batch.record', batchOf('2026-03-01', [jar(40, 'pieces')]));
  expect(left(session, tin)?.left).toBe(0);
  must(session, 'batch.record', batchOf('2026-03-02', [jar(2, 'g')]));
  expect(left(session, tin)).toMatchObject({ left: null, uses: 2 });
});
