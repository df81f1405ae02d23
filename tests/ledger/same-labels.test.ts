// Undo and redo never bring back a label that has been taken since; what the keeper meant before may come back.
import { describe, expect, it } from 'vitest';
import { batchOf, must, newSession, plainJar, refusalOf } from './ledger-files';

const DAY = '2026-03-01';

describe('undoing what would bring back an equal label', () => {
  it('is refused with a sentence where another jar has taken it since', () => {
    const session = newSession();
    const first = must(session, 'batch.record', batchOf(DAY, [plainJar('a')]));
    const mistake = must(session, 'jar.mistake', { id: first.jars[0] ?? '', why: null });
    must(session, 'batch.record', batchOf(DAY, [plainJar('a')]));
    const refused = refusalOf(session, 'act.undo', { act: mistake.act });
    expect(refused.code).toBe('label back');
    expect(refused.sentence).toContain('1 Mar a');
    // Out of the way, it comes back.
    const [second = ''] = must(session, 'batch.list', { before: null, limit: 10 })
      .batches.flatMap(({ jars }) => jars.map(({ id }) => id))
      .filter((id) => id !== first.jars[0]);
    must(session, 'jar.correct', { id: second, changes: { letter: 'b' } });
    must(session, 'act.undo', { act: mistake.act });
    const labels = must(session, 'jar.find', { text: '1 Mar', limit: 10, notAfter: null }).jars.map(
      ({ label }) => label,
    );
    expect(labels.toSorted()).toEqual(['1 Mar a', '1 Mar b']);
    session.close();
  });

  it('is refused for a batch taken back and for one whose word or day comes back', () => {
    const session = newSession();
    const first = must(session, 'batch.record', batchOf(DAY, [plainJar('a')], { word: 'plain' }));
    const undone = must(session, 'act.undo', { act: first.act });
    must(session, 'batch.record', batchOf(DAY, [plainJar('a')], { word: 'Plain' }));
    expect(refusalOf(session, 'act.undo', { act: undone.act }).code).toBe('label back');

    const other = must(session, 'batch.record', batchOf('2026-03-05', [plainJar('a')], { word: 'oat' }));
    const moved = must(session, 'batch.correct', { id: other.batch, changes: { word: 'rye' } });
    const taker = must(session, 'batch.record', batchOf('2026-03-05', [plainJar('b')], { word: 'oat' }));
    must(session, 'jar.correct', { id: taker.jars[0] ?? '', changes: { letter: 'a' } });
    expect(refusalOf(session, 'act.undo', { act: moved.act }).code).toBe('label back');
    session.close();
  });

  it('goes ahead where both labels stood before, as the keeper meant', () => {
    const session = newSession();
    const first = must(session, 'batch.record', batchOf(DAY, [plainJar('a')]));
    const twin = must(session, 'batch.record', batchOf(DAY, [plainJar('a')], { sameLabelMeant: true }));
    const mistake = must(session, 'jar.mistake', { id: first.jars[0] ?? '', why: null });
    // Something else about the twin is changed since: that takes no label.
    must(session, 'jar.correct', { id: twin.jars[0] ?? '', changes: { onShelf: true } });
    must(session, 'act.undo', { act: mistake.act });
    expect(must(session, 'jar.find', { text: '1 Mar a', limit: 10, notAfter: null }).jars.length).toBe(2);
    session.close();
  });
});
