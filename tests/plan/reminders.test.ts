// What is reminded of ahead of time: by the rule, and through the calls, in the invented ledger and in one of a few jars.
import { expect, it } from 'vitest';
import { reserveLacks, shortOf } from '../../core/plan/reminders';
import { demoSession, must } from '../ledger/ledger-files';

it('pieces are short where fewer are at home than the last start took; of what is not known nothing is said', () => {
  const stock = (left: number | null) => ({ id: 's', name: 'Blue Tin', took: 20, left });
  expect([19, 20, 21, 0, null].map((left) => shortOf([stock(left)]).length)).toEqual([1, 0, 0, 1, 0]);
});

it('a line wants a reserve from its third batch on, where none is kept or all of it is too old', () => {
  const lacks = (batches: number, ...reserves: (string | null)[]) => reserveLacks({ batches, reserves }, '2026-05-03');
  expect(lacks(2)).toBeNull();
  expect(lacks(3)).toBe('none');
  expect(lacks(9, '2026-05-02')).toBe('too old');
  expect(lacks(9, '2026-05-02', '2026-05-03')).toBeNull();
  expect(lacks(9, null)).toBeNull();
}); // prettier-ignore

it('the invented kitchen is reminded of both, beside what is due; done, it is reminded no more', () => {
  const session = demoSession();
  const items = () => must(session, 'today.list', {}).items;
  const [first, ...others] = items();
  expect(first).toMatchObject({ kind: 'look', due: true });
  // 23 of 45 capsules went into the start of the line that is worn out: 22 are left.
  expect(others.find(({ kind }) => kind === 'order pieces')).toMatchObject({
    due: false,
    title: 'Order Blue Tin.',
    rest: 'Heron may need a fresh start: 22 pieces are left, and the last start took 23.',
    of: { kind: 'source' },
  });
  const reserve = () => items().find(({ kind }) => kind === 'reserve');
  expect(reserve()).toMatchObject({ due: false, title: 'Time for a reserve of Lantern.' });
  const jar = reserve()?.of.id ?? '';
  const kept = must(session, 'shelf.get', {}).items.find(({ id }) => id === jar);
  expect(kept).toMatchObject({ reserveOf: ['Lantern'], nextSeedOf: ['Lantern'] });
  // A reserve of twelve cubes; the rest stays a jar.
  must(session, 'shelf.freeze', {
    id: jar,
    into: 12,
    amount: { value: 180, unit: 'mL', typed: null },
    forSeed: true,
  });
  expect(reserve()).toBeUndefined();
  expect(must(session, 'shelf.get', {}).items.find(({ id }) => id === jar)?.left.amount).toEqual({ value: 720, unit: 'mL' }); // prettier-ignore
  session.close();
});
