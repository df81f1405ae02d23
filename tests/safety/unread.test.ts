// No remark is unheard: what nobody has answered is quoted where its jar is offered, in any language.
import { expect, it } from 'vitest';
import { batchOf, fromSource, must, newSession, plainJar, plainSource, unseen } from '../ledger/ledger-files';

it('a remark is quoted in the ranking entry of its jar until it is answered, and again once its text is changed', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const outcome = { ...unseen, setWord: 'firm' as const };
  const { jars } = must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(source)], outcome, onShelf: true })])); // prettier-ignore
  const [jar = ''] = jars;
  const reasons = (): readonly string[] =>
    must(session, 'advice.next', {}).ranking.find((one) => one.jar === jar)?.reasons ?? [];
  const { ids } = must(session, 'facts.record', { facts: [{ kind: 'remark', jar, text: 'haisee vähän oudolta' }] }); // prettier-ignore
  const [remark = ''] = ids;
  expect(reasons()).toContain('Its note says: “haisee vähän oudolta”.');
  must(session, 'facts.correct', { kind: 'remark', id: remark, changes: { readAs: 'fine' } });
  expect(reasons().join(' ')).not.toContain('oudolta');
  must(session, 'facts.correct', { kind: 'remark', id: remark, changes: { text: 'haisee oudolta' } });
  expect(reasons()).toContain('Its note says: “haisee oudolta”.');
});
