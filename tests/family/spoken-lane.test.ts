// Which line the strip above the drawing speaks of.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { VERDICTS, type VerdictWord } from '../../core/shapes/advice-replies';
import { betterLane, spokenLane } from '../../renderer/family/spoken-lane';

const known = (words: readonly (VerdictWord | null | undefined)[]) => (lane: number) => words[lane];

it('a worn line that happens to be newest does not hide one with good seed', () => {
  const verdict = known(['start afresh', 'go on, but look first']);
  expect(spokenLane({ pressed: null, newest: 0, inSight: [0, 1], verdict })).toBe(1);
});

it('the line the keeper turned to goes before every other, while it is in sight', () => {
  const verdict = known(['start afresh', 'go on']);
  expect(spokenLane({ pressed: 0, newest: 1, inSight: [0, 1], verdict })).toBe(0);
  expect(spokenLane({ pressed: 0, newest: 1, inSight: [1], verdict })).toBe(1);
});

it('nothing is said before all in sight are known, so that it need not be taken back', () => {
  expect(
    spokenLane({ pressed: null, newest: 0, inSight: [0, 1], verdict: known(['go on', undefined]) }),
  ).toBeNull();
});

it('a line in sight is spoken of, and none of them has better seed (property)', () => {
  const word = fc.option(fc.constantFrom(...VERDICTS));
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 6 }), fc.nat(), (words, pick) => {
      const inSight = words.map((_, lane) => lane);
      const newest = pick % words.length;
      const lane = spokenLane({ pressed: null, newest, inSight, verdict: known(words) });
      expect(inSight).toContain(lane);
      if (words.includes('go on')) expect(words[lane ?? -1]).toBe('go on');
      if (words.some((one) => one !== 'start afresh' && one !== null))
        expect(words[lane ?? -1]).not.toBe('start afresh');
      if (words.every((one) => one === words[0])) expect(lane).toBe(newest);
    }),
  );
});

it('a line that is ended is not left to speak for all: the best of the others is spoken of, or said beside it (property)', () => {
  const worst = ['start afresh', 'nothing left'] as const;
  const word = fc.constantFrom(...VERDICTS, 'nothing left' as const);
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 6 }), fc.nat(), (words, pick) => {
      const verdict = (lane: number) => words[lane];
      const all = words.map((_, lane) => lane);
      const here = pick % words.length;
      const lane =
        spokenLane({ pressed: null, newest: here, inSight: [here], elsewhere: all, verdict }) ?? -1;
      const beside = betterLane(here, all, verdict);
      const [own, said] = [worst.indexOf(words[here] as never), worst.indexOf(words[lane] as never)];
      if (own === -1) expect([lane, beside]).toEqual([here, null]);
      // None is better than the one that is spoken of, and the better one is said beside the one turned to.
      else if (words.some((one) => !worst.includes(one as never))) expect(said).toBe(-1);
      else if (words.includes('start afresh')) expect(said).toBe(0);
      if (own !== -1) expect(beside ?? here).toBe(lane);
    }),
  );
  const reading = (lane: number) => (['start afresh', undefined] as const)[lane];
  expect(
    spokenLane({ pressed: null, newest: 0, inSight: [0], elsewhere: [0, 1], verdict: reading }),
  ).toBeNull();
});
