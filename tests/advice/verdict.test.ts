// One verdict, whatever is asked: lines walked batch by batch, in which no two things said may pull apart, and each sentence
// keeps to its length.
import { describe, expect, it } from 'vitest';
import { FALLEN_BY } from '../../core/vigour/level/line-level';
import { dayLabel } from '../../core/lineage/labels';
import { VERDICTS } from '../../core/shapes/advice-replies';
import { slopeLine } from '../../renderer/vigour/plot-scale';
import { walk, type Look } from './walk';
import { runs } from '../runs';

const LINES = runs(80);
/** From here on the first so many meet every reason. */
const FROM = 121;
const looks = Array.from({ length: LINES }, (_, number) => walk(FROM + number)).flat();
/** Where it was said, for whoever reads a failure. */
const at = ({ batches, verdict, next, line }: Look): string =>
  `${batches} batches: ${verdict.sentence} | ${next.sentence} | ${line.sentence}`;
const called = ({ judgement: { standing } }: Look): boolean =>
  standing === 'slipping' || standing === 'worn out';

const inHundred = (chance: number | null | undefined): number => Math.round(100 * (chance ?? 0));
const seeds = ({ next }: Look) =>
  next.ranking.filter(({ kind, allowed }) => allowed && kind !== 'fresh start');
const entryOf = (look: Look) => (seed: { jar: string | null; portion: string | null }) =>
  look.next.ranking.find(({ jar, portion }) => jar === seed.jar && portion === seed.portion);
/** Chances said of a seed: "about 12 in 100 jars", "About 12 in 100 such jars"; a chance below 1 in 50 is said as hardly any. */
const chancesIn = (sentences: readonly string[]): number[] =>
  sentences.flatMap((text) =>
    [...text.matchAll(/about (\d+) in 100 (?:such )?jars/gi)].map(([, chance]) => Number(chance)),
  );

/** Two things that are said of one line, held side by side: true where they agree. */
const AGREE: Readonly<Record<string, (look: Look) => boolean>> = {
  'what may not seed is offered by none': (look) =>
    [look.verdict.seed, ...look.verdict.asGood, ...seeds(look)].every((one) => !one?.jar || look.maySeed.get(one.jar) === true),
  'a seed has one chance, in the verdict, in the ranking, in its reasons and on its card': (look) =>
    look.next.ranking.every(({ allowed, weakChance, reasons, lines }) =>
      !allowed || chancesIn([...reasons, ...lines]).every((chance) => chance === inHundred(weakChance))),
  'the verdict says the chance of its own seed, or the least of all that is left': (look) => {
    const { reason, seed, verdict } = look.verdict;
    if (!('inHundred' in reason)) return true;
    const own = seed && entryOf(look)(seed);
    const of = verdict === 'start afresh' ? seeds(look).filter(({ doubts }) => doubts.length === 0) : own ? [own] : [];
    return Math.min(...of.map(({ weakChance }) => inHundred(weakChance))) === reason.inHundred;
  },
  'an older jar promises more only than a newer one that may be used and says more weak jars': (look) => {
    const { reason, seed } = look.verdict;
    const keyOf = (jar: string | null | undefined): number => Number(jar?.slice('jar '.length));
    return reason.code !== 'older is better' ||
      seeds(look).some(({ kind, jar, weakChance }) => (kind === 'jar' || kind === 'older sibling') && keyOf(jar) > keyOf(seed?.jar) && inHundred(weakChance) > reason.inHundred);
  },
  'a reserve promises more only than something fresh that says more weak jars': (look) => {
    const { reason } = look.verdict;
    return reason.code !== 'reserve is better' || seeds(look).some(({ kind, weakChance }) => kind !== 'reserve' && inHundred(weakChance) > reason.inHundred);
  },
  'a reserve is kept back while something fresh is as good': (look) => {
    const kindOf = (one: Parameters<ReturnType<typeof entryOf>>[0]) => entryOf(look)(one)?.kind;
    return !look.verdict.seed || kindOf(look.verdict.seed) === 'reserve' || look.verdict.verdict === 'start afresh' || look.verdict.asGood.every((one) => kindOf(one) !== 'reserve');
  },
  'a line has fallen by one figure': ({ verdict: { reason }, line }) =>
    reason.code !== 'fallen' || line.sentence.includes(`about ${reason.points} points below its early batches`),
  'a line is called from the batch on at which it was': ({ line, judgement }) =>
    (line.standing === 'slipping' || line.standing === 'worn out') === (judgement.firstCalled !== null) &&
    (line.calledAt !== null) === (judgement.firstCalled !== null),
  'go on says nothing of a seed that has to be looked at, or that nobody saw or said to be kept': (look) => {
    const own = look.verdict.seed && entryOf(look)(look.verdict.seed);
    return look.verdict.verdict !== 'go on' || !own || (own.looks.length === 0 && own.doubts.length === 0 && !own.reasons.some((text) => text.startsWith('Nobody has')));
  },
  'what stands against the newest jar is said of no seed but one to be looked at': ({ verdict: { verdict, seed, against } }) =>
    against === null || seed?.jar !== against.jar || seed.portion !== null || verdict === 'go on, but look first',
  'nothing may be used, said by all or by none': (look) =>
    look.next.nothingMayBeUsed === (seeds(look).length === 0) &&
    (!look.next.nothingMayBeUsed || look.verdict.verdict === 'start afresh' || look.verdict.verdict === 'too early to say'),
  'too little tells of restarts, in the long sentence and the short one': ({ restart }) =>
    restart.sentence.startsWith('It is too early to say') !== restart.sure && restart.short.startsWith('It is too early to say') !== restart.sure,
  'since when it slips is said of a line that does, and a slope of none that fell at once': ({ line, judgement }) =>
    (line.since === null || judgement.firstCalled !== null) && (line.since !== null || judgement.firstCalled === null) && !(/at once/.test(line.since ?? '') && /each generation|points a generation/.test(line.sentence)),
  'a loss with each generation is said only with a range of losses, and near its early level only of what stands near it': ({ line }) =>
    !/with each generation \((?:0\.0|from)/.test(line.sentence) && (!line.sentence.includes('near its early level again') || (line.drop ?? 99) < FALLEN_BY / 2),
  'what can’t be told apart is the same in the verdict, the line and the ranking': ({ verdict: { reason }, line, next }) =>
    (reason.code !== 'untold' || reason.treatments.every((one) => line.blocked.includes(one))) &&
    line.blocked.every((one) => next.suggestions.some((text) => text.includes(one)) && line.suspects.some((text) => text.includes(one))),
}; // prettier-ignore

/** What is said, and drawn, of one line under one meaning: each list may hold one figure only. */
function story({ line, verdict, jars, judgement }: Look): Record<string, readonly string[]> {
  const ofLine = [line.sentence, line.since ?? '', ...line.reasons, ...line.why.inputs.map(({ value }) => value), ...line.why.assumptions];
  const texts = [...ofLine, verdict.sentence, verdict.because, ...jars];
  const said = (pattern: RegExp, of = texts): string[] => of.flatMap((text) => [...text.matchAll(pattern)].map(([, figure]) => figure ?? ''));
  const day = line.batches.find(({ batch }) => batch === line.cameDownAt)?.madeOn;
  const calledDown = judgement.firstCalled !== null;
  const points = (value: number | null): string[] => (value === null ? [] : [String(Math.round(value))]);
  const drawn = slopeLine(line)?.at ?? [];
  const [first, last] = [drawn[0], drawn.at(-1)];
  const generations = last && first ? (line.batches[last.index]?.generation ?? 0) - (line.batches[first.index]?.generation ?? 0) : 0;
  const down = line.cameDown === 'with each generation';
  return {
    // Whatever else is told of a line that came down, no other day is.
    'day since which it has come down': calledDown ? [...said(/(\d{1,2} [A-Z][a-z]{2} \d{4})/g, ofLine), ...(day ? [dayLabel(day, true)] : [])] : [],
    'loss with each generation': down ? [...said(/loses about ([\d.]+) points/g), (-(line.slope ?? 0)).toFixed(1), ...(generations > 0 && last && first ? [((first.middle - last.middle) / generations).toFixed(1)] : [])] : [],
    'fall at once': said(/fell by about (\d+) point/g),
    'points below its early batches': [...said(/about (\d+) points? below its early batches/g), ...(calledDown && said(/points? below its early/g).length > 0 ? points(line.drop) : [])],
    'early level': [...said(/early level of (\d+)/g), ...said(/early batches stood at (\d+)/g), ...points(line.baseline)],
    'slope of a line that is not called': calledDown ? [] : [...said(/(?:loses|gains) about ([\d.]+) points a generation/g), ...(said(/points a generation \(/g).length > 0 && Math.abs(line.slope ?? 0) >= 0.05 ? [Math.abs(line.slope ?? 0).toFixed(1)] : [])],
  };
} // prettier-ignore

describe(`${LINES} generated lines, walked batch by batch`, () => {
  it.each(Object.entries(AGREE))('%s', (_, agree) => {
    expect(looks.filter((look) => !agree(look)).map(at)).toEqual([]);
  });

  it('are told one story: under one meaning one day, one rate and one early level in every sentence and mark', () => {
    const told = looks.map((look) => ({ look, story: story(look) }));
    const parted = told.flatMap(({ look, story: of }) =>
      Object.entries(of).flatMap(([meaning, figures]) => (new Set(figures).size > 1 ? [`${meaning}: ${figures.join(', ')} | ${at(look)}`] : [])),
    );
    expect(parted).toEqual([]);
    // Each is met, in more than one place.
    for (const meaning of Object.keys(told[0]?.story ?? {})) expect(told.some(({ story: of }) => (of[meaning]?.length ?? 0) > 1), meaning).toBe(true);
  }); // prettier-ignore

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
      const parts = said.split(/(?<=\.)\s/);
      const count = (text: string): number => text.split(/\s+/).filter(Boolean).length;
      expect(count(parts[0] ?? ''), said).toBeLessThanOrEqual(15);
      // The reason, whole, before what to do with nothing at home.
      const { sentence, also, because } = look.verdict;
      const decided = also !== null && sentence.endsWith(also) ? sentence.slice(0, -also.length).trim() : sentence;
      const bare = decided.slice(decided.indexOf('. ') + 2);
      expect(bare.length, said).toBeLessThanOrEqual(110);
      // What has to be minded of a seed is no reason to take it.
      const minded = ['look', 'unseen', 'not said to be kept', 'changed', 'tastes changed'].includes(look.verdict.reason.code);
      expect(because.toLowerCase(), said).toBe(`${minded ? 'nothing that is kept promises more.' : 'because'} ${bare}`.toLowerCase());
      const reason = bare.replace(/\d{1,2} [A-Z][a-z]{2}( \d{4})? [a-z]|\d{4}-\d\d-\d\d [a-z]/g, 'LABEL');
      expect(count(reason), said).toBeLessThanOrEqual(20);
      expect((reason.replace(/\d+ in 100/, 'N').match(/\bN\b|\d+/g) ?? []).length, said).toBeLessThanOrEqual(1);
      if (look.verdict.verdict === 'start afresh' && look.verdict.asGood[0])
        expect(also, said).toMatch(/^(Without capsules at home|Until you have a new culture), seed once more from /);
    }
  }); // prettier-ignore

  it('meet every verdict, and every reason that a line without notes can have', () => {
    for (const word of VERDICTS) expect(looks.some(({ verdict }) => verdict.verdict === word), word).toBe(true);
    const met = new Set(looks.map(({ verdict: { reason } }) => reason.code));
    for (const code of ['older is better', 'reserve is better', 'unseen', 'untold', 'weak jars to come', 'slipping', 'not said to be kept'] as const) expect(met, code).toContain(code);
  }); // prettier-ignore
});
