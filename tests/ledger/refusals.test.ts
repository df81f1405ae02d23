// Whatever comes in: it is answered, refused with a sentence where it makes no sense, and then nothing has changed.
import { describe, expect, it } from 'vitest';
import { CALLS, type CallName } from '../../core/call-names';
import { contract } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { handlers } from '../../main/calls';
import { checkInput, checkReply } from '../../main/check-call';
import { HOST_CALLS, type WorkerCall } from '../../main/ledger/worker-protocol';
import { newSession, smallFamily, stateOf } from './ledger-files';

const session = newSession();
const { jars, batches, source } = smallFamily(session);
const before = stateOf(session);
const acts = (): unknown => session.ledger.db.prepare('SELECT count(*) FROM act').pluck().get();
const actsBefore = acts();

const NO_ONE = '00000000-0000-7000-8000-000000000000';
const huge = 'x'.repeat(10_000_000);

/** Inputs that no call takes, and what could make sense only with other ids. */
const nonsense: readonly (readonly [string, unknown])[] = [
  ['null', null],
  ['a text', 'jar'],
  ['a number', 7],
  ['a list', []],
  ['an extra key', { more: 1 }],
  ['a 10 MB text in every field', Object.fromEntries(['id', 'jar', 'text', 'key', 'json', 'file', 'act', 'how', 'reason'].map((key) => [key, huge]))],
  ['a key of Object', JSON.parse('{"__proto__": {"id": 1}, "constructor": 2}')],
  ['undefined in a field', { id: undefined, jar: undefined }],
  ['NaN and infinity', { limit: Number.NaN, keys: [Number.POSITIVE_INFINITY] }],
  ['ids that are none', { id: "' OR 1=1; --", jar: '../../etc/passwd' }],
]; // prettier-ignore

const worker = CALLS.filter((name) => !(HOST_CALLS as readonly string[]).includes(name)) as WorkerCall[];

function answer(name: CallName, input: unknown) {
  const checked = checkInput(name, input);
  return checked.ok ? checkReply(name, session.answer(name as WorkerCall, checked.value)) : checked;
}

it('every call of the contract has a handler, or is the host’s', () => {
  expect(Object.keys(handlers).toSorted()).toEqual([...worker].toSorted());
});

describe.each(CALLS)('%s', (name) => {
  it.each(nonsense)('refuses %s', (_what, input) => {
    const result = answer(name, input);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(refusalSentence(result.error)).toMatch(/^[^\n]{5,500}\.$/);
  });

  it('answers {} by the contract or refuses it', () => {
    // Without any field most calls make no sense; those that take none are answered.
    const takesNothing = contract[name].input.safeParse({}).success;
    if ((HOST_CALLS as readonly string[]).includes(name) || ['act.redo', 'ledger.backup'].includes(name))
      return;
    expect(answer(name, {}).ok).toBe(takesNothing);
  });
});

const unknownIds: readonly (readonly [WorkerCall, unknown])[] = [
  ['jar.get', { id: NO_ONE }],
  ['batch.get', { id: NO_ONE }],
  ['photograph.list', { jar: NO_ONE }],
  ['photograph.line', { jar: NO_ONE }],
  ['batch.correct', { id: NO_ONE, changes: { word: 'x' } }],
  ['hold.correct', { id: NO_ONE, changes: { hours: 3 } }],
  ['jar.correct', { id: NO_ONE, changes: { milk: 'x' } }],
  ['jar.correct', { id: jars[0], changes: { hold: NO_ONE } }],
  ['jar.correct', { id: jars[0], changes: { milkPackage: NO_ONE } }],
  ['jar.mistake', { id: NO_ONE }],
  ['seeding.set', { jar: NO_ONE, seedings: [] }],
  ['addition.set', { jar: NO_ONE, additions: [] }],
  ['outcome.save', { jar: NO_ONE, outcome: null, onShelf: null }],
  ['caution.clear', { jar: NO_ONE, of: jars[0], reason: 'looked' }],
  ['act.undo', { act: NO_ONE }],
  // Nothing to change, or an id of another kind.
  ['jar.correct', { id: batches[0], changes: { milk: 'x' } }],
  ['batch.correct', { id: batches[0], changes: {} }],
  ['batch.correct', { id: source, changes: { word: 'x' } }],
  ['addition.set', { jar: jars[0], additions: [] }],
];

it.each(unknownIds)('%s refuses %j', (name, input) => {
  const result = answer(name, input);
  expect(result.ok).toBe(false);
  if (!result.ok) expect(['not found', 'nothing changed']).toContain(result.error.code);
});

it('and after all of that nothing has changed', () => {
  expect(stateOf(session)).toBe(before);
  expect(acts()).toBe(actsBefore);
});
