// What a keeper calls a line: said wherever the line is named, one act that can be undone.
import { expect, it } from 'vitest';
import { ask, must, newSession, smallFamily } from './ledger-files';

it('is said of the line on every screen, is one act, and undo brings the day back', () => {
  const session = newSession();
  smallFamily(session);
  const named = () => must(session, 'family.get', {}).lines[0];
  const before = named();
  if (!before) throw new Error('no line');
  must(session, 'line.name', { line: before.id, name: '  Heron ', why: null });
  expect(named()?.name).toBe('Heron');
  expect(must(session, 'judgement.line', { line: before.id }).name).toBe('Heron');
  expect(must(session, 'family.drawing', { spacing: 'generation' }).lanes[0]?.name).toBe('Heron');
  const [act] = must(session, 'history.list', { record: null, before: null, limit: 1 }).acts;
  expect(act?.says).toBe(`called the line of ${before.name} “Heron”`);
  expect(act?.changes).toMatchObject([{ field: 'line name', before: null, after: 'Heron' }]);
  expect(ask(session, 'line.name', { line: before.id, name: 'Heron', why: null })).toMatchObject({
    error: { code: 'nothing changed' },
  });
  must(session, 'act.undo', { act: null });
  expect(named()?.name).toBe(before.name);
});

it('is refused for a batch that founds no line', () => {
  const session = newSession();
  const [, later] = smallFamily(session).batches;
  expect(ask(session, 'line.name', { line: later ?? '', name: 'Heron', why: null })).toMatchObject({
    error: { code: 'not found', params: { kind: 'line' } },
  });
});
