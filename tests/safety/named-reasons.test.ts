// Rules of the trade that rest on more than one jar or more than one look, each with its reason. The rules: trade practice, the
// acid of 4.6: 21 CFR 131.200 as amended by 88 FR 22907; why a slow start matters: PMC547554 (toxin within 6 to 12 h at 35 °C).
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOf } from '../../core/safety/answer';
import { ownSafety } from '../../core/safety/own-safety';
import { familyOf, type Told } from '../lineage/short-families';
import { look, seen } from './seen-in-words';

const meter = (ph: number, checked: boolean | null = true) => ({
  acidity: [{ ph, how: 'meter' as const, checked }],
});
const out = (more: Parameters<typeof look>[1] = {}) => look('take-out', more);
const GOOD = { setState: 'set', setWord: 'firm', sour: true } as const;
const POURS = { setState: 'not set', sour: true } as const;
const safe = (looks: Parameters<typeof seen>[0], additions: readonly string[] = []) =>
  ownSafety({ ...seen(looks), additions }, null, '2026-03-01');

/** Jars of one batch and one hold, seeded from one jar, each with what was seen of it. */
function batch(...safeties: ReturnType<typeof safe>[]) {
  const jars = safeties.map((safety, at): Told => ({
    key: at + 2,
    batch: 2,
    hold: 20,
    from: [{ fromJar: 1 }],
    safety,
    spoiled: safety.discard !== null,
  }));
  return familyOf([{ key: 1, batch: 1, hold: 1, from: [{ source: 1, pieces: 8 }] }, ...jars]);
}
const answers = (...safeties: ReturnType<typeof safe>[]) => {
  const family = batch(...safeties);
  return safeties.map((_, at) => answerOf(family, at + 2));
};

describe('thick because of what was stirred in', () => {
  const thick = safe([out(GOOD)], ['potato starch']);
  it('shows nothing by itself: spores curdle milk without acid, and starch thickens it', () =>
    expect(answers(thick)[0]?.looks).toContain('thickened'));
  it('passes by its sour smell beside a plain mate of the same seed and hold that passed', () =>
    expect(answers(thick, safe([out(GOOD)]))[0]?.looks).toEqual([]));
  it('a mate that is not plain, that nobody smelled, or of another seed vouches for nothing', () => {
    expect(answers(thick, safe([out(GOOD)], ['oat bran']))[0]?.looks).toContain('thickened');
    expect(answers(thick, safe([out({ setState: 'set', setWord: 'firm' })]))[0]?.looks).toContain(
      'thickened',
    );
    const other = familyOf([
      { key: 1, batch: 1, hold: 1, from: [{ source: 1, pieces: 8 }] },
      { key: 2, batch: 2, hold: 20, from: [{ fromJar: 1 }], safety: thick },
      { key: 3, batch: 2, hold: 20, from: [{ source: 1, pieces: 8 }], safety: safe([out(GOOD)]) },
    ]);
    expect(answerOf(other, 2).looks).toContain('thickened');
  });
});

describe('half a batch or more not set', () => {
  const [good, failed, measured] = [
    safe([out(GOOD)]),
    safe([out(POURS)]),
    safe([out({ ...GOOD, ...meter(4.4) })]),
  ];
  it('a mate needs the meter to be eaten or to seed: what kept the others from setting may be in it', () =>
    expect(answers(good, failed)[0]).toMatchObject({ eat: false, seed: false, stops: ['needs the meter'] }));
  it('a meter at 4.6 or less answers for the jar it was held into', () =>
    expect(answers(measured, failed)[0]).toMatchObject({ eat: true, seed: true, stops: [] }));
  it('fewer than half only ask to look', () =>
    expect(answers(good, good, failed)[0]).toMatchObject({ eat: true, seed: true, level: 'look' }));
});

describe('not sour at 24 h', () => {
  const slow = look('early', { hoursIn: 24, sour: false });
  it('is no food without the meter, and no seed with it: acid that comes later undoes no toxin', () => {
    expect(answers(safe([slow, out(GOOD)]))[0]).toMatchObject({
      eat: false,
      seed: false,
      stops: ['slow start'],
    });
    expect(answers(safe([slow, out({ ...GOOD, ...meter(4.3) })]))[0]).toMatchObject({
      eat: true,
      seed: false,
    });
  });
  it('an unchecked meter, and a strip, answer nothing', () => {
    for (const acidity of [meter(4.3, false).acidity, [{ ph: 4.3, how: 'strip' as const, checked: null }]])
      expect(answers(safe([slow, out({ ...GOOD, acidity })]))[0]?.eat).toBe(false);
  });
});

describe('what was measured', () => {
  it('a meter that was not checked in buffer passes no jar that pours', () => {
    expect(safe([out({ ...POURS, ...meter(4.2, false) })]).discard).toBe('not set');
    expect(safe([out({ ...POURS, ...meter(4.2) })]).discard).toBeNull();
  });
  it('a strip may stop and never pass', () => {
    const strip = (ph: number) => ({ acidity: [{ ph, how: 'strip' as const, checked: null }] });
    expect(safe([out({ ...POURS, ...strip(4.2) })]).discard).toBe('not set');
    expect(answers(safe([out({ ...strip(5.2) })]))[0]?.stops).toEqual(['no acid']);
  });
});

describe('what was parted of a jar', () => {
  const pink = { ...look('take-out', GOOD), signs: [{ kind: 'pink' as const, answer: 'seen' as const }] };
  const mould = {
    ...look('opened', { day: '2026-03-20', daysOpen: 10 }),
    signs: [{ kind: 'fuzz' as const, answer: 'seen' as const }],
  };
  it('cubes carry the caution of their jar: freezing makes nothing safe', () => {
    const family = batch(safe([pink]), safe([out(GOOD)]));
    expect(answerOf(family, 2, { on: '2026-03-02' })).toMatchObject({ discard: 'spoiled', seed: false });
    expect(answerOf(family, 3, { on: '2026-03-02' })).toMatchObject({ level: 'set aside', seed: false });
  });
  it('a pot parted before the jar was opened, or long before the sign, is to be looked at; one parted later is stopped', () => {
    const family = batch(safe([out(GOOD), mould]));
    expect(answerOf(family, 2, { on: '2026-03-05' })).toMatchObject({
      discard: null,
      level: 'look',
      seed: true,
    });
    expect(answerOf(family, 2, { on: '2026-03-16' })).toMatchObject({ discard: 'spoiled', seed: false });
  });
  it('such a pot has whatever else stands on its jar', () => {
    const family = batch(safe([out(GOOD), mould]), safe([pink]));
    expect(answerOf(family, 2, { on: '2026-03-05' })).toMatchObject({
      discard: null,
      level: 'set aside',
      seed: false,
    });
  });
});

describe('the first day', () => {
  it('nobody looked: it is unknown, which is no caution', () => {
    expect(safe([out(GOOD)]).start).toBeNull();
    expect(answers(safe([out(GOOD)]))[0]).toMatchObject({ eat: true, seed: true, looks: [] });
  });
  it('the clock runs through a power cut: 12 h by the clock are 12 h, however cold half of them were', () =>
    expect(safe([look('early', { hoursIn: 12, sour: false }), out(GOOD)]).start).toBe('look'));
});

describe('no figure lifts a stop (property: any acidity, by any meter)', () => {
  const anyPh = fc.array(fc.tuple(fc.double({ min: 3, max: 7, noNaN: true }), fc.constantFrom(true, false, null)), { maxLength: 3 }); // prettier-ignore
  const measured = (values: readonly (readonly [number, boolean | null])[]) =>
    safe([
      out({ ...GOOD, acidity: values.map(([ph, checked]) => ({ ph, how: 'meter' as const, checked })) }),
    ]);
  it('a set-aside jar stays so, a spoiled one is neither food nor seed, and nothing lets a late one seed', () => {
    const spoiled = safe([out({ ...GOOD, signs: [{ kind: 'pink', answer: 'seen' }] })]);
    fc.assert(
      fc.property(anyPh, (values) => {
        const [bad, mate] = answers(spoiled, measured(values));
        expect([mate?.stops.includes('set aside'), mate?.eat, mate?.seed]).toEqual([true, false, false]);
        expect([bad?.eat, bad?.seed]).toEqual([false, false]);
        const acidity = values.map(([ph, checked]) => ({ ph, how: 'meter' as const, checked }));
        const pink = safe([out({ ...GOOD, acidity, signs: [{ kind: 'pink', answer: 'seen' }] })]);
        expect(answers(pink)[0]).toMatchObject({ discard: 'spoiled', eat: false, seed: false });
        const late = safe([look('early', { hoursIn: 24, sour: false }), out({ ...GOOD, acidity })]);
        expect(answers(late)[0]?.seed).toBe(false);
      }),
    );
  });
});
