// A hold as it is lived with, through the calls: jars come in later, are moved, come out one by one; the power fails; looks
// and readings are noted. Each is one act, and undone it leaves the ledger as it was. Invented.
import { expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromSource, must, newSession, plainJar, plainSource, refusalOf, stateOf } from '../ledger/ledger-files'; // prettier-ignore

const at = (hour: number): string =>
  new Date(Date.parse('2026-03-14T05:30:00Z') + hour * 3_600_000).toISOString().replace('.000Z', 'Z');

function world(): { session: Session; hold: string; jars: readonly string[]; batch: string } {
  const session = newSession();
  session.setNow(at(0));
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const holds = [{ startedAt: at(0), endedAt: null, hours: 36, planned: { value: 38, unit: '°C' as const, typed: '38' }, probe: null, readings: [], note: null }];
  const seedings = [fromSource(source)];
  const { jars, batch } = must(session, 'batch.record', batchOf('2026-03-14', ['a', 'b', 'c'].map((letter) => plainJar(letter, { seedings, hold: letter === 'c' ? null : 0 })), { holds }));
  return { session, hold: must(session, 'batch.get', { id: batch }).holds[0]?.id ?? '', jars, batch };
} // prettier-ignore

/** Records something, and holds its undo to the state before. */
function undone<N extends 'hold.takeOut' | 'hold.putIn' | 'hold.move' | 'hold.interrupt' | 'hold.look' | 'readings.note'>(
  session: Session,
  name: N,
  input: Input<N>,
): void {
  const before = stateOf(session);
  const { act } = must(session, name, input) as { act: string };
  expect(stateOf(session)).not.toBe(before);
  must(session, 'act.undo', { act });
  expect(stateOf(session)).toBe(before);
  must(session, 'act.redo', {});
} // prettier-ignore

it('jars come in later, are moved, and come out one by one; with the last the hold ends', () => {
  const { session, hold, jars } = world();
  const [a, b, c] = jars as [string, string, string];
  session.setNow(at(2));
  undone(session, 'hold.putIn', { hold, jars: [c] });
  expect(refusalOf(session, 'hold.putIn', { hold, jars: [c] }).code).toBe('stays overlap');
  const shown = () => must(session, 'hold.get', { id: hold });
  expect(shown().jars.map(({ letter, inside, stays }) => [letter, inside, stays[0]?.came])).toEqual([['a', true, null], ['b', true, null], ['c', true, at(2)]]); // prettier-ignore
  session.setNow(at(10));
  undone(session, 'hold.move', { hold, jars: [b] });
  expect(shown().jars.find(({ id }) => id === b)).toMatchObject({
    inside: false,
    stays: [{ came: at(0), went: at(10) }],
  });
  const [other] = must(session, 'hold.now', {}).holds.filter((one) => one.hold !== hold);
  expect(other).toMatchObject({ began: at(10), ends: at(36) });
  // And back again.
  session.setNow(at(12));
  must(session, 'hold.move', { hold: other!.hold, jars: [b], to: hold });
  expect(must(session, 'hold.now', {}).holds.map((one) => one.hold)).toEqual([hold]);
  expect(shown().jars.find(({ id }) => id === b)).toMatchObject({ inside: true, stays: [{ went: at(10) }, { came: at(12), went: null }] }); // prettier-ignore
  session.setNow(at(30));
  expect(must(session, 'hold.takeOut', { hold, jars: [a] }).ended).toBe(false);
  expect(refusalOf(session, 'hold.takeOut', { hold, jars: [a] }).code).toBe('not in this hold');
  session.setNow(at(36.5));
  undone(session, 'hold.takeOut', { hold });
  expect(shown()).toMatchObject({ ended: at(36.5), runs: false, title: '36 h 30 min' });
  expect(refusalOf(session, 'hold.takeOut', { hold }).code).toBe('hold ended');
  // Hours of a jar are those of its stays.
  const family = must(session, 'family.get', {}).jars;
  expect(Object.fromEntries(family.map(({ letter, holdHours }) => [letter, holdHours]))).toEqual({
    a: 30,
    b: 36.5,
    c: 34.5,
  });
  session.close();
});

it('a look is noted jar by jar: typed again it is the same look, at 24 h it is another; today asks until every jar had it', () => {
  const { session, hold, jars } = world();
  const [a, b] = jars as [string, string];
  session.setNow(at(8));
  const today = () => must(session, 'today.list', {}).items[0];
  expect(today()).toMatchObject({ kind: 'look', due: true, title: 'Look at 14 Mar by 17:30.' });
  undone(session, 'hold.look', { hold, jars: [{ jar: a, set: 'starting', sour: true, ph: null }] });
  expect(today()?.kind).toBe('look');
  const both = [
    { jar: a, set: 'set' as const, sour: true, ph: 4.9 },
    { jar: b, set: 'loose' as const, sour: null, ph: null },
  ];
  must(session, 'hold.look', { hold, jars: both });
  expect(today()).toMatchObject({ kind: 'in warmth', due: false });
  expect(must(session, 'hold.get', { id: hold }).jars.map(({ look }) => look)).toEqual([
    { set: 'set', sour: true, ph: 4.9, hours: 8, at: at(8) },
    { set: 'loose', sour: null, ph: null, hours: 8, at: at(8) },
  ]);
  expect(must(session, 'facts.list', { kind: 'observation', of: a }).facts).toHaveLength(1);
  session.setNow(at(24.5));
  expect(must(session, 'hold.get', { id: hold })).toMatchObject({ lookNow: { hours: 24 } });
  must(session, 'hold.look', { hold, jars: [{ jar: b, set: 'loose', sour: false, ph: null }] });
  expect(must(session, 'facts.list', { kind: 'observation', of: b }).facts).toHaveLength(2);
  // Not sour by smell at 24 h: only the meter lets it pass for eating, and it is no seed (trade practice of the gate).
  const safety = must(session, 'batch.get', { id: must(session, 'hold.get', { id: hold }).batches[0]!.id });
  expect(safety.jars.find(({ jar }) => jar.id === b)?.safety).toMatchObject({ seed: false });
  // Everything taken back: the look is gone.
  must(session, 'hold.look', { hold, jars: [{ jar: b, set: null, sour: null, ph: null }] });
  expect(must(session, 'facts.list', { kind: 'observation', of: b }).facts).toHaveLength(1);
  session.close();
});

it('the power fails with one press and is back with another; readings by hand join one series', () => {
  const { session, hold, jars, batch } = world();
  session.setNow(at(7));
  undone(session, 'hold.interrupt', { hold, what: 'power', began: at(7) });
  const shown = () => must(session, 'hold.get', { id: hold });
  expect(shown().interruptions[0]?.says).toMatch(/^Power cut, from .*How long is not noted\.$/);
  const [{ id } = { id: '' }] = shown().interruptions;
  must(session, 'hold.interrupt', { hold, id, what: 'power', began: at(7), ended: at(9) });
  expect(shown().interruptions.map(({ says }) => says)).toEqual(['Power cut, 2 h, from 12:30.']);
  expect(must(session, 'batch.get', { id: batch }).interruptions).toHaveLength(1);
  expect(refusalOf(session, 'hold.interrupt', { hold, what: 'lid', began: at(9), ended: at(8) }).code).toBe('invalid'); // prettier-ignore
  undone(session, 'readings.note', { hold, where: 'bath', c: 36.4 });
  session.setNow(at(8));
  must(session, 'readings.note', { hold, where: 'bath', c: 38.1 });
  must(session, 'readings.note', { hold, where: 'jar', jar: jars[0], c: 35 });
  expect(refusalOf(session, 'readings.note', { hold, where: 'bath', c: 39, at: at(8) }).code).toBe('reading differs'); // prettier-ignore
  expect(refusalOf(session, 'readings.note', { hold, where: 'jar', jar: jars[2], c: 35 }).code).toBe('probe elsewhere'); // prettier-ignore
  expect(shown().series.map(({ place, c, jar }) => [place, c, jar])).toEqual([['bath', [36.4, 38.1], null], ['jar', [35], '14 Mar a']]); // prettier-ignore
  expect(shown().warmth?.says).toBe('Not settled yet, and never too warm.');
  session.close();
});

const UNTIMED = {
  startedAt: null,
  endedAt: null,
  hours: 36,
  planned: null,
  probe: null,
  readings: [],
  note: null,
};

it('a batch recorded on the day it is made is in warmth from then on, though nobody noted when it began', () => {
  const session = newSession();
  session.setNow(at(0));
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const made = (day: string, part: Partial<Input<'batch.record'>['jars'][number]> = {}) =>
    must(session, 'batch.record', batchOf(day, [plainJar('a', { seedings: [fromSource(source)], hold: 0, ...part })], { holds: [UNTIMED] })); // prettier-ignore
  // Neither of one made before, nor of one of which somebody says at once how it came out.
  made('2026-03-13');
  expect(must(session, 'family.now', {}).holds).toEqual([]);
  const { jars, batch } = made('2026-03-14');
  const [running] = must(session, 'family.now', {}).holds;
  expect(running).toMatchObject({ began: at(0), ends: at(36), jars: [{ id: jars[0] }] });
  expect(running?.assumed).toMatch(/taken as 05:30, when it was recorded/);
  expect(must(session, 'today.list', {}).items[0]).toMatchObject({
    kind: 'in warmth',
    title: '14 Mar: 36 h left.',
  });
  // What nobody noted stays not noted.
  const [hold] = must(session, 'batch.get', { id: batch }).holds;
  expect(hold).toMatchObject({ startedAt: null, endedAt: null, hours: 36 });
  expect(must(session, 'hold.get', { id: hold!.id })).toMatchObject({
    runs: true,
    began: at(0),
    title: '36 h',
  });
  // Once somebody notes when it began, that counts.
  must(session, 'hold.correct', { id: hold!.id, changes: { startedAt: at(-4) } });
  expect(must(session, 'family.now', {}).holds[0]).toMatchObject({ ends: at(32), assumed: null });
  must(session, 'act.undo', { act: null });
  session.setNow(at(5));
  must(session, 'hold.takeOut', { hold: hold!.id });
  expect(must(session, 'family.now', {}).holds).toEqual([]);
  // It came out after five hours by the start that was taken and shown: not after the thirty-six that were planned.
  const heldHours = () => must(session, 'family.get', {}).jars.find(({ id }) => id === jars[0])?.holdHours;
  expect(heldHours()).toBe(5);
  must(session, 'hold.correct', { id: hold!.id, changes: { startedAt: at(-1) } });
  expect(heldHours()).toBe(6);
  must(session, 'act.undo', { act: null });
  // Taken out when the plan was over, its hours are as planned.
  must(session, 'act.undo', { act: null });
  session.setNow(at(36));
  must(session, 'hold.takeOut', { hold: hold!.id });
  expect(heldHours()).toBe(36);
  session.close();
});

it('of jars that come out one by one of a hold whose start nobody noted, none was held for the planned hours', () => {
  const session = newSession();
  session.setNow(at(0));
  const seedings = [fromSource(must(session, 'source.save', plainSource('Blue Tin')).id)];
  const { jars } = must(session, 'batch.record', batchOf('2026-03-14', ['a', 'b'].map((letter) => plainJar(letter, { seedings, hold: 0 })), { holds: [UNTIMED] }));
  const [{ hold } = { hold: '' }] = must(session, 'hold.now', {}).holds;
  session.setNow(at(5));
  must(session, 'hold.takeOut', { hold, jars: [jars[0] ?? ''] });
  session.setNow(at(36));
  must(session, 'hold.takeOut', { hold });
  expect(must(session, 'family.get', {}).jars.map(({ letter, holdHours }) => [letter, holdHours])).toEqual([['a', 5], ['b', 36]]);
  session.close();
}); // prettier-ignore

it('two holds of one batch are told apart by their jars; of one alone its day says enough', () => {
  const { session, hold, jars } = world();
  const labels = () => must(session, 'hold.list', {}).holds.map(({ label }) => label);
  expect(labels()).toEqual(['14 Mar']);
  session.setNow(at(10));
  must(session, 'hold.move', { hold, jars: [jars[1] ?? ''] });
  expect(labels()).toEqual(['14 Mar b', '14 Mar a, b']);
  expect(must(session, 'today.list', {}).items.map(({ title }) => title.split(/[:.]/)[0])).toEqual(expect.arrayContaining([expect.stringContaining('14 Mar a'), expect.stringContaining('14 Mar b')]));
  expect(must(session, 'hold.get', { id: hold }).label).toBe('14 Mar a, b');
  session.close();
}); // prettier-ignore
