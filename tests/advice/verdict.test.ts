// One verdict, whatever is asked: lines walked batch by batch, in which no two things said may pull apart, and each sentence
// keeps to its length.
import { describe, expect, it } from 'vitest';
import { VERDICTS } from '../../core/shapes/advice-replies';
import { walk, type Look } from './walk';

const LINES = 200;
const looks = Array.from({ length: LINES }, (_, seed) => walk(seed + 1)).flat();
/** Where it was said, for whoever reads a failure. */
const at = ({ batches, verdict, next, standingSays }: Look): string =>
  `${batches} batches: ${verdict.sentence} | ${next.sentence} | ${standingSays}`;
const called = ({ judgement: { standing } }: Look): boolean =>
  standing === 'slipping' || standing === 'worn out';

describe('200 generated lines, walked batch by batch', () => {
  it('have the seed of the verdict first in the ranking, and a fresh start where it says so', () => {
    for (const look of looks) {
      const { verdict, next } = look;
      const [first] = next.ranking;
      if (verdict.seed) expect([first?.jar ?? null, first?.label], at(look)).toEqual([verdict.seed.jar, verdict.seed.label]);
      expect(first?.kind === 'fresh start', at(look)).toBe(verdict.verdict === 'start afresh');
      if (verdict.verdict === 'take the reserve') expect(first?.kind).toBe('reserve');
      for (const { label } of verdict.asGood) expect(next.ranking.find((one) => one.label === label)?.allowed, at(look)).toBe(true);
    }
  }); // prettier-ignore

  it('are told the same by every call', () => {
    for (const look of looks) {
      const { verdict, next, restart, freshStarts, judgement } = look;
      const afresh = verdict.verdict === 'start afresh';
      expect(next.sentence.startsWith('Seed the next batch from'), at(look)).toBe(!afresh);
      if (!afresh && verdict.seed) expect(next.sentence, at(look)).toContain(verdict.seed.label);
      const reached = (restart.today ?? 0) >= restart.from;
      if (restart.sure && reached && !afresh) expect(restart.sentence).toContain('the verdict is to go on');
      if (restart.sure && !reached && afresh)
        expect(restart.sentence).toContain('the verdict is to start afresh');
      for (const sentence of freshStarts)
        expect(sentence.includes('the verdict is to'), at(look)).toBe(!afresh);
      // What is said of the line and why the verdict is as it is.
      const { code } = verdict.reason;
      if (code === 'steady') expect(judgement.standing).toBe('steady');
      if (code === 'no slip seen') expect(called(look), at(look)).toBe(false);
      if (code === 'fallen' || code === 'slipping') expect(called(look), at(look)).toBe(true);
      if (code === 'few batches') expect(judgement.standing, at(look)).toBe('too few batches to say');
    }
  });

  it('are told it in at most fifteen words, then the reason in at most twenty with at most one number', () => {
    for (const look of looks) {
      const said = look.verdict.sentence.replace(/\d{1,2} [A-Z][a-z]{2}( \d{4})? [a-z]|\d{4}-\d\d-\d\d [a-z]/g, 'LABEL');
      const without = /Without capsules at home/.test(said) ? 2 : 1;
      const parts = said.split(/(?<=\.)\s/);
      const count = (text: string): number => text.split(/\s+/).filter(Boolean).length;
      expect(count(parts.slice(0, without).join(' ')), said).toBeLessThanOrEqual(15);
      const reason = parts.slice(without).join(' ');
      expect(count(reason), said).toBeLessThanOrEqual(20);
      expect((reason.replace(/\d+ in 100/, 'N').match(/\bN\b|\d+/g) ?? []).length, said).toBeLessThanOrEqual(1);
    }
  }); // prettier-ignore

  it('meet every verdict that needs no reserve', () => {
    for (const word of VERDICTS)
      if (word !== 'take the reserve') expect(looks.some(({ verdict }) => verdict.verdict === word), word).toBe(true);
  }); // prettier-ignore
});
