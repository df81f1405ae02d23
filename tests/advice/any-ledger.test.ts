// No ledger makes judgement or advice fail: generated ledgers with gaps, mixes, holes, mistakes and undone acts, every read.
import { expect, it } from 'vitest';
import { Generated } from '../ledger/generated-ledgers';

const LEDGERS = 25;

it('answers every read of judgement and advice, whatever the ledger', { timeout: 300_000 }, () => {
  for (let seed = 1000; seed < 1000 + LEDGERS; seed++) {
    const ledger = new Generated(seed);
    const family = ledger.ask('family.get', {});
    if (!family.ok) throw new Error(family.error.code);
    const { lines, jars } = family.value;
    for (const line of [null, ...lines.map(({ id }) => id)]) {
      expect(ledger.ask('advice.next', { line }).ok).toBe(true);
      expect(ledger.ask('advice.restart', { line }).ok).toBe(true);
      if (line === null) continue;
      expect(ledger.ask('judgement.line', { line }).ok).toBe(true);
      const [verdict, next] = [ledger.ask('advice.line', { line }), ledger.ask('advice.next', { line })];
      if (!verdict.ok || !next.ok) throw new Error(`no verdict on a line of ledger ${seed}`);
      const { seed: chosen, verdict: word } = verdict.value;
      const [first] = next.value.ranking;
      if (chosen) expect([chosen.jar, chosen.label]).toEqual([first?.jar, first?.label]);
      expect(next.value.sentence.startsWith('Seed the next batch from')).toBe(
        word !== 'start afresh' && chosen !== null,
      );
    }
    expect(ledger.ask('advice.freshStart', {}).ok).toBe(true);
    for (const { id } of jars) {
      const reply = ledger.ask('judgement.jar', { jar: id });
      // A lost jar has nothing to judge: that is a refusal with a sentence, and no failure.
      if (!reply.ok) expect([seed, reply.error.code]).toEqual([seed, 'not found']);
    }
  }
});
