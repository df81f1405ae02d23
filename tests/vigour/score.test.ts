// How a score is made: what counts, what is corrected, and what is never done.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constantProfile } from '../../core/growth/warm-hours';
import { missingHourCoefficient } from '../../core/vigour/corrections';
import { siblingEffects } from '../../core/vigour/effects';
import { judgeLine, keepersUsual } from '../../core/vigour/line';
import { suspectSays } from '../../core/says/suspects-says';
import { MADE_AS_EVER } from '../../core/vigour/evidence';
import { lineReasons, standingSentence } from '../../core/says/vigour-says';
import { missingWarmth, scoreJar } from '../../core/vigour/score';
import type { JarEvidence, Seen } from '../../core/vigour/jar-evidence';
import { usualOf, usualOfAll } from '../../core/vigour/usual';
import { usualWords } from '../../core/says/vigour-words';
import { STANDING_RULES } from '../../core/vigour/standing';
import { timesSeen } from '../../core/says/correction-says';
import { daysWords } from '../../core/quantities/typed-days';

const unseen: Seen = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, setAfterHours: null, setByHours: null, setWord: null,
  whey: null, ph: null, phHow: null, tang: null,
}; // prettier-ignore
let next = 1;
const jar = (more: Partial<JarEvidence> & { seen?: Partial<Seen> | null } = {}): JarEvidence => {
  const { seen = { setWord: 'firm' }, ...rest } = more;
  return {
    key: next++, label: 'a jar', madeOn: '2026-01-01', batch: 1, hold: 1, lines: [1], mixes: false, generation: 3,
    founding: false, spoiled: false, spoiledUnopened: false, held: null, outcome: seen && { ...unseen, ...seen }, additions: [], milk: null, made: { ...MADE_AS_EVER, seedMl: null }, seed: 'jar 1', seedBatch: null,
    profile: null, warmth: null, heldHours: 36, seedStorage: null, ...rest,
  }; // prettier-ignore
};
const usual = usualOf([[jar({ seen: { setWord: 'firm', ph: 4.35, phHow: 'meter', whey: 'a little', setAfterHours: 11, setByHours: 13, earlyCheckHours: 8, earlyPh: 5.2 } })]], usualOfAll([])); // prettier-ignore
const points = (seen: Partial<Seen>): number => scoreJar(jar({ seen }), usual)?.points ?? Number.NaN;
/** A line of one plain jar a batch: batch 1 is the founding one, generation = batch. */
const lineOf = (make: (batch: number) => JarEvidence[], batches: number): ReturnType<typeof judgeLine> => {
  const jars = Array.from({ length: batches }, (_, i) => make(i + 1).map((j) => ({ ...j, batch: i + 1, hold: i + 1, generation: i + 1, madeOn: `2026-${String(i + 1).padStart(2, '0')}-01`, seed: `jar ${i}`, seedBatch: i === 0 ? null : i }))).flat(); // prettier-ignore
  return judgeLine(1, jars, keepersUsual([1], jars), 1);
};
const words = ['runny', 'soft', 'spoonable', 'firm', 'very firm'] as const;

const endPhBy = (phHow: 'meter' | 'strip'): number => points({ setWord: 'firm', ph: 4.9, phHow });

describe('a score', () => {
  it('is 75 for what is usual, by whatever was recorded of it', () => {
    expect(points({ setWord: 'firm' })).toBeCloseTo(75, 6);
    expect(points({ ph: 4.35, phHow: 'meter' })).toBeCloseTo(75, 6);
    expect(
      points({ setAfterHours: 11, setByHours: 13, earlyCheckHours: 8, earlyPh: 5.2, whey: 'a little' }),
    ).toBeCloseTo(75, 6);
  });
  it('counts speed most, and whey by its distance from the usual, either way', () => {
    expect(points({ setWord: 'firm', setAfterHours: 22, setByHours: 26 })).toBeLessThan(
      points({ setWord: 'spoonable', setAfterHours: 11, setByHours: 13 }),
    );
    expect(points({ setWord: 'firm', whey: 'none' })).toBeLessThan(75);
    expect(points({ setWord: 'firm', whey: 'some' })).toBeCloseTo(
      points({ setWord: 'firm', whey: 'none' }),
      9,
    );
  });
  it('stays a figure where a set time of next to nothing was written down', () => {
    const odd = usualOf([[jar({ seen: { setAfterHours: 5e-324 } })]], usualOfAll([]));
    expect(Number.isFinite(scoreJar(jar({ seen: { setAfterHours: 11, setByHours: 13 } }), odd)?.points)).toBe(true);
    expect(Number.isFinite(scoreJar(jar({ seen: { setAfterHours: 0 } }), odd)?.points ?? 0)).toBe(true);
  }); // prettier-ignore
  it('lets a strip decide little', () => {
    expect(75 - endPhBy('strip')).toBeLessThan((75 - endPhBy('meter')) / 3);
  });
  it('says what was missing and is less sure of it', () => {
    const bare = scoreJar(jar(), usual);
    const whole = scoreJar(jar({ seen: { setWord: 'firm', ph: 4.35, phHow: 'meter', setAfterHours: 11, setByHours: 13, earlyCheckHours: 8, earlyPh: 5.2, earlySet: 'starting', whey: 'a little' } }), usual); // prettier-ignore
    expect(bare?.missing).toContain('set time');
    expect(whole?.missing).toEqual([]);
    expect(bare!.high - bare!.low).toBeGreaterThan(whole!.high - whole!.low);
    expect([bare?.width, (whole?.width ?? 0) < 10]).toEqual([20, true]);
  });
  it('never takes hold hours for set time, and gives nothing to the spoiled or the unseen', () => {
    expect(scoreJar(jar({ heldHours: 60 }), usual)?.points).toBeCloseTo(75, 6);
    expect(scoreJar(jar({ spoiled: true }), usual)).toBeNull();
    expect(scoreJar(jar({ seen: null }), usual)).toBeNull();
    expect(scoreJar(jar({ seen: {} }), usual)).toBeNull();
  });
});

const PLAIN = { additions: '', milk: null };
const scored = (additions: string[], value: number, more: Partial<JarEvidence> = {}) => ({
  jar: jar({ additions, ...more }),
  points: value,
});

describe('fibre and culture', () => {
  it('are told apart by siblings of one seed in one hold, and only by them', () => {
    const effects = siblingEffects([scored([], 75), scored(['oat bran'], 35)], PLAIN);
    expect(effects.get('oat bran')?.seen).toBe(-40);
    // Two odd jars prove little: ten points at most until a third set of siblings shows it.
    expect(effects.get('oat bran')?.points).toBe(-10);
    const sets = [1, 2, 3].flatMap((batch) => [
      scored([], 75, { batch }),
      scored(['oat bran'], 35, { batch }),
    ]);
    // Normal prior of 20 and a difference spread of 7: −40 × 3 × 400 / (3 × 400 + 49).
    expect(siblingEffects(sets, { additions: '', milk: null }).get('oat bran')?.points).toBeCloseTo(
      (-40 * 1200) / 1249,
      6,
    );
    expect(siblingEffects([scored([], 75), scored(['oat bran'], 35, { hold: 2 })], PLAIN).size).toBe(0);
    expect(siblingEffects([scored([], 75), scored(['oat bran'], 35, { seed: 'jar 9' })], PLAIN).size).toBe(0);
  });
  it('are a suspect, and uncorrected, where every jar has it from some generation on', () => {
    const line = lineOf((batch) => [jar({ additions: batch > 6 ? ['oat bran'] : [], seen: { setWord: batch > 6 ? 'soft' : 'firm' } })], 10); // prettier-ignore
    expect(line.blocked).toEqual(['oat bran']);
    expect(line.suspects.map(suspectSays)[0]).toContain("oat bran and culture can't be told apart");
    expect(line.batches.at(-1)?.points).toBe(line.batches.at(-1)?.uncorrected);
  });
  it('are named where a line falls with a fibre in every jar, and the culture is not blamed for it', () => {
    const line = lineOf((batch) => [jar({ additions: batch > 6 ? ['oat bran'] : [], seen: { setWord: batch > 6 ? 'soft' : 'firm' } })], 12); // prettier-ignore
    expect(['steady', 'no slip seen']).toContain(line.standing);
    expect(standingSentence(line)).toMatch(
      /Whether that is the culture or the oat bran can't be told apart here\.$/,
    );
    expect(lineReasons(line, [])[0]).toContain('oat bran');
    // Plain again and still soft: then it was the culture.
    const after = lineOf((batch) => [jar({ additions: batch > 6 && batch < 10 ? ['oat bran'] : [], seen: { setWord: batch > 6 ? 'soft' : 'firm' } })], 14); // prettier-ignore
    expect(['slipping', 'worn out']).toContain(after.standing);
    expect([after.blocked, after.suspects]).toEqual([[], []]);
  });
  it('are told apart by any jar without it since it came, whichever batch that is in (property)', () => {
    const FIBRES = ['oat bran', 'acacia fibre', 'potato starch'];
    // Since the seventh batch some are plain, some have one fibre in every jar, some each jar another.
    const made = fc.array(fc.constantFrom('plain', 'oat bran', 'a fibre each'), {
      minLength: 6,
      maxLength: 6,
    });
    fc.assert(
      fc.property(made, (later) => {
        const line = lineOf((batch) => {
          const how = later[batch - 7] ?? 'plain';
          const seen = { setWord: batch > 6 ? ('soft' as const) : ('firm' as const) };
          const each = how === 'a fibre each' ? FIBRES : [how === 'plain' ? '' : how];
          return each.map((one) => jar({ additions: one === '' ? [] : [one], seen }));
        }, 12);
        const stays = later.slice(-2).every((how) => how === 'oat bran');
        expect(line.blocked).toEqual(stays ? ['oat bran'] : []);
        // What is said of it counts the batches of which every jar had it.
        const run = later.length - 1 - later.findLastIndex((how) => how !== 'oat bran');
        expect(line.suspects.filter(({ code }) => code === 'treatment')).toEqual(
          stays ? [{ code: 'treatment', name: 'oat bran', batches: run, generation: 13 - run }] : [],
        );
      }),
      { numRuns: 60 },
    );
  });
});

describe('what is said of a line', () => {
  const ofPh = (values: readonly number[]) => lineOf((batch) => [jar({ seen: { ph: values[batch - 1] ?? null, phHow: 'meter' } })], values.length); // prettier-ignore
  it('says how likely it is that a called line has fallen, once', () => {
    const line = ofPh([4.5, 4.3, 4.31, 4.3, 4.38, 4.42, 4.47, 4.53, 4.58]);
    expect(['slipping', 'worn out']).toContain(line.standing);
    expect(
      lineReasons(line, []).filter((reason) => reason.startsWith('The chance that it stands')),
    ).toHaveLength(1);
  });
  it('does not call a loss too small to matter, however evenly it goes', () => {
    // Eight batches, each 0.01 sourer short of the one before: a point a generation, and no tie.
    const line = ofPh([4.3, 4.3, 4.31, 4.32, 4.33, 4.34, 4.35, 4.36, 4.37]);
    expect(line.trend?.mannKendall.pFalling).toBeLessThan(0.0003);
    expect(['steady', 'no slip seen']).toContain(line.standing);
  });
  it('names poor latest batches that are no slip yet', () => {
    const words = ['firm', 'firm', 'firm', 'firm', 'firm', 'firm', 'firm', 'firm', 'runny'] as const;
    const line = lineOf((batch) => [jar({ seen: { setWord: words[batch - 1] ?? 'firm' } })], words.length);
    expect(['steady', 'no slip seen']).toContain(line.standing);
    expect(lineReasons(line, []).join(' ')).toMatch(
      /The latest batch, of 1 Sep 2026, stands at \d+, far below/,
    );
    const even = lineOf(() => [jar()], 9);
    expect(lineReasons(even, []).join(' ')).not.toContain('far below');
  });
  it('claims no interval where set words leave none', () => {
    expect(standingSentence(lineOf(() => [jar()], 9))).toMatch(
      /^Steady over 8 comparable batches: it neither gains nor loses\. /,
    );
  });
});

const cool = (batch: number): JarEvidence[] => {
  const short = batch === 6;
  return [jar({ profile: constantProfile(short ? 16 : 36, 38), heldHours: short ? 16 : 36, seen: { setWord: short ? 'soft' : 'firm', setAfterHours: 11, setByHours: 13 } })]; // prettier-ignore
};

const row = (missing: number, value: number) => ({ missing, points: value });

describe('warmth', () => {
  it('is enough where a jar has had twelve warm hours after it set', () => {
    // A day and a half at 38 °C for a culture that sets in about a day leaves half a day to firm: common practice, no source.
    expect(missingWarmth(36, 24, 0)).toBe(0);
    expect(missingWarmth(35, 24, 0)).toBe(1);
    expect(missingWarmth(36, 24, 3)).toBe(3);
    expect(missingWarmth(null, 24, 3)).toBe(0);
  });

  it.each([
    [9, 'That batch is left out: it says nothing of the culture.'],
    [8, 'Those batches are left out: they say nothing of the culture.'],
  ])('names every batch that ran cool, from batch %s on', (from, words) => {
    const line = lineOf((batch) => [jar({ profile: constantProfile(36, batch < from ? 38 : 29), seen: { setWord: batch < from ? 'firm' : 'soft' } })], 9); // prettier-ignore
    const [suspect] = line.suspects.filter(({ code }) => code === 'ran cool').map(suspectSays);
    expect(suspect).toContain(words);
  });
  it('is left out where it ran three degrees cooler than usual and more, which no sum makes up for (common practice, no source)', () => {
    const at = (celsius: number) => lineOf((batch) => [jar({ profile: constantProfile(36, batch < 9 ? 38 : celsius), seen: { setWord: 'firm' } })], 9).suspects.some(({ code }) => code === 'ran cool');
    expect([36, 34].map(at)).toEqual([false, true]);
  }); // prettier-ignore
  it('is corrected for only where the hold fell short of what the seed needed', () => {
    const line = lineOf(cool, 8);
    const corrected = line.batches.filter(({ scores }) =>
      scores.some(({ corrections }) => corrections.length > 0),
    );
    expect(corrected.map(({ batch }) => batch)).toEqual([6]);
    expect(corrected[0]!.points!).toBeGreaterThan(corrected[0]!.uncorrected!);
  });
  it('explains a runny jar of a hold that was far too short, and lifts none above what is usual', () => {
    // From runny to firm are three set words, however many hours were short.
    const line = lineOf((batch) => {
      const held = batch === 9 ? 4 : 36;
      return [jar({ profile: constantProfile(held, 38), heldHours: held, seen: { setWord: batch === 9 ? 'runny' : 'firm', setAfterHours: batch === 9 ? null : 11, setByHours: batch === 9 ? null : 13 } })];
    }, 9); // prettier-ignore
    const newest = line.batches.at(-1);
    expect([newest?.uncorrected, newest?.points].map((points) => Math.round(points ?? 0))).toEqual([15, 75]);
  });
  it('has its coefficient fitted from the fifth batch on, and stays near its prior on little evidence', () => {
    const few = [row(0, 75), row(0, 75), row(4, 35), row(0, 75)];
    expect(missingHourCoefficient(few)).toMatchObject({ fitted: false, mean: 5 });
    const fitted = missingHourCoefficient([...few, row(0, 75)]);
    expect(fitted.fitted).toBe(true);
    expect(fitted.mean).toBeGreaterThan(5);
    expect(fitted.mean).toBeLessThan(10);
    expect(fitted.sd).toBeLessThan(2.5);
  });
});

const lineOfWord = (key: number, index: number) => Array.from({ length: 6 }, (_, i) => jar({ lines: [key], batch: key + i, hold: key + i, generation: i + 1, madeOn: `2026-0${i + 1}-0${key % 9 || 1}`, seen: { setWord: words[index] ?? null } })); // prettier-ignore

describe('a line', () => {
  it('is judged by batch medians, not by the jar chosen as seed', () => {
    const line = lineOf((batch) => (batch === 1 ? [jar()] : (['firm', 'soft', 'soft'] as const).map((setWord) => jar({ seen: { setWord } }))), 4); // prettier-ignore
    const best = Math.max(...line.batches[2]!.scores.map(({ points }) => points));
    expect(line.batches[2]!.points!).toBeLessThan(best - 10);
  });
  it('that began badly is shown beside the others', () => {
    const jars = [...lineOfWord(100, 3), ...lineOfWord(200, 3), ...lineOfWord(300, 1)];
    const keeper = keepersUsual([100, 200, 300], jars);
    const poor = judgeLine(300, jars, keeper, 3);
    expect(poor.batches.at(-1)?.points).toBeCloseTo(75, 0);
    expect(poor.startedAt).toBeLessThan(45);
    expect(judgeLine(100, jars, keeper, 3).startedAt).toBeCloseTo(75, 0);
  });
  it('of very even batches alarms at no single soft one', () => {
    const line = lineOf((batch) => [jar({ seen: { setWord: batch === 9 ? 'soft' : 'firm' } })], 9);
    expect(line.firstCalled).toBeNull();
  });
});

it('a seed from the freezer never blames the line with its first batch, a fresh one does', () => {
  // Fifteen weeks frozen: half a power of ten for the freezing and 0.13 a week (Salem, Fathi & Awad 2005), 2.5 in all; at eight points
  // for each the batch comes out a set word poorer with the culture in perfect health.
  const fallen = (freezings: number): number =>
    lineOf((batch) => [
      jar({
        seen: { setWord: batch === 10 ? 'spoonable' : 'firm' },
        seedStorage: { fridgeDays: 3, frozenDays: batch === 10 ? 105 * freezings : 0, freezings: batch === 10 ? freezings : 0 },
      }),
    ], 10).look?.fallen ?? 0; // prettier-ignore
  // The first raises no question of a fall, which would have the next poor batch call it.
  expect(fallen(1)).toBeLessThan(STANDING_RULES.asked);
  expect(fallen(0)).toBeGreaterThan(STANDING_RULES.asked);
});

describe('jars made otherwise than usual', () => {
  const fibres = ['acacia fibre', 'oat bran', 'chicory inulin', 'potato starch'] as const;
  it('are compared like any other where a keeper always varies the fibre', () => {
    const line = lineOf((batch) => [jar({ additions: [fibres[batch % 4] ?? ''] })], 9);
    expect(line.batches.filter(({ points }) => points !== null)).toHaveLength(8);
    expect(line.usualTreatment.additions).toBeNull();
    expect(line.blocked).toEqual([]);
  });
  it('are not left out for a milk that nobody wrote down', () => {
    const line = lineOf((batch) => [jar({ milk: batch % 2 ? 'whole milk' : null })], 8);
    expect(line.batches.every(({ unlike }) => unlike === null)).toBe(true);
  });
  it('are compared, corrected, once two sets of siblings show what the fibre does', () => {
    const line = lineOf((batch) => [jar(), ...(batch > 2 ? [jar({ additions: ['oat bran'], seen: { setWord: 'soft' } })] : [])], 8); // prettier-ignore
    const last = line.batches.at(-1);
    expect(last?.comparable).toHaveLength(2);
    expect(last!.points!).toBeGreaterThan(65);
    expect(line.firstCalled).toBeNull();
  });
});

describe('the delay that a day in the fridge costs', () => {
  // Seeds of two to twenty days, and jars that set 0.35 h later for each day: what the fit must find again.
  const waited = (seen: (days: number) => Partial<Seen>) =>
    lineOf((batch) => {
      const days = 2 + ((batch * 7) % 19);
      return ['a', 'b'].map(() => jar({ seedStorage: { fridgeDays: days, frozenDays: 0, freezings: 0 }, seen: seen(days) }));
    }, 14); // prettier-ignore

  it("is the keeper's own once it is known half as closely again, by set times", () => {
    const line = waited((days) => ({ setWord: 'firm', setAfterHours: 11 + 0.35 * days, setByHours: 12 + 0.35 * days })); // prettier-ignore
    expect(line.perDay?.own).toBe(true);
    expect(line.perDay!.posterior.mean).toBeCloseTo(0.35, 1);
    expect(line.perDay!.posterior.sd).toBeLessThan(line.perDay!.prior.sd / 2);
    expect(lineReasons(line, []).join(' ')).toMatch(/A day in the fridge costs its seed about 0\.3\d h .* by your own 26 jars/); // prettier-ignore
  });
  it('is learned from the early pH where nobody saw the set time', () => {
    const line = waited((days) => ({ setWord: 'firm', earlyCheckHours: 8, earlyPh: 5 + 0.04 * days }));
    expect(line.perDay?.jars).toBe(26);
    expect(line.perDay!.posterior.mean).toBeGreaterThan(line.perDay!.prior.mean);
  });
  it('stays the published one where seeds all waited alike, or no speed was seen', () => {
    const alike = lineOf(() => [jar({ seen: { setWord: 'firm', setAfterHours: 11, setByHours: 13 } })], 14);
    expect(alike.perDay?.own).toBe(false);
    expect(waited(() => ({ setWord: 'firm' })).perDay).toMatchObject({ own: false, jars: 0 });
  });
});

it('what is usual is said in a keeper’s words', () => {
  expect(usualWords('set word', 3.25)).toBe('between firm and very firm');
  expect(usualWords('set word', 4)).toBe('very firm');
  expect(usualWords('whey', 0)).toBe('none');
  expect(usualWords('set time', 12)).toBe('12.0 h');
  expect(usualWords('end pH', 4.3)).toBe('4.30');
  expect([daysWords(1), daysWords(2), timesSeen(1), timesSeen(3)]).toEqual([
    '1 day', '2 days', 'seen once', 'seen 3 times',
  ]); // prettier-ignore
});
