// What is typed at an early look, and what a plot of a hold shows. Words a cook types: common practice, no source.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinned } from '../../core/readings/thinned';
import { lookText, readLook, type Seen } from '../../renderer/hold/look-text';
import { nameAt, stretches, timeTicks } from '../../renderer/hold/plot-times';

const none = new Map<string, Seen>();
const read = (text: string, others = none) => {
  const answer = readLook(text, others);
  return answer.ok ? lookText(answer.seen) : 'not read';
};

describe('a cell of the early look', () => {
  it.each([
    ['', ''],
    ['?', ''],
    ['starting, sour', 'starting, sour'],
    ['Starting and sour', 'starting, sour'],
    ['sta so', 'starting, sour'],
    ['loose', 'loose'],
    ['l', 'loose'],
    ['loose but not sour', 'loose, not sour'],
    ['not set, not sour', 'not set, not sour'],
    ['set sour pH 5.1', 'set, sour, pH 5.1'],
    ['set; 5,1', 'set, pH 5.1'],
    ['sour', 'sour'],
    ['lose', 'not read'],
    ['s', 'not read'],
    ['set, loose', 'not read'],
    ['sour, not sour', 'not read'],
    ['pH 51', 'not read'],
    ['as z', 'not read'],
  ])('%j is %j', (text, shown) => expect(read(text)).toBe(shown));
  it('is the one named by "as"', () => {
    const a: Seen = { set: 'starting', sour: true, ph: null };
    expect(read('as a', new Map([['a', a]]))).toBe('starting, sour');
  });
  it('reads back whatever it writes', () => {
    const seen = fc.record({
      set: fc.constantFrom('loose', 'starting', 'set', 'not set', null),
      sour: fc.constantFrom(true, false, null),
      ph: fc.option(fc.integer({ min: 35, max: 70 }).map((tenths) => tenths / 10)),
    }) as fc.Arbitrary<Seen>;
    fc.assert(
      fc.property(seen, (one) => {
        expect(readLook(lookText(one), none)).toEqual({ ok: true, seen: one });
      }),
    );
  });
});

describe('the plot', () => {
  it('puts the name of a series where its line does not run through it', () => {
    const line = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 20, maxLength: 80 });
    fc.assert(
      fc.property(line, fc.boolean(), (steps, above) => {
        const points = steps.map((step, i) => ({ x: i * 8, y: 100 + step }));
        const { x, y } = points[nameAt(points, 36, above)]!;
        const over = points.filter((point) => point.x >= x && point.x <= x + 36).map((point) => point.y);
        // The name stands 10 px off its point: the line stays on its own side.
        if (above) expect(Math.min(...over)).toBeGreaterThan(y - 10);
        else expect(Math.max(...over)).toBeLessThan(y + 10);
      }),
    );
  });
  it('keeps the coolest and the warmest of readings that are too many to draw, and their order', () => {
    const points = fc.array(fc.double({ min: -5, max: 95, noNaN: true }), { minLength: 1, maxLength: 900 });
    fc.assert(
      fc.property(points, (celsius) => {
        const profile = celsius.map((one, i) => ({ hour: i / 60, celsius: one }));
        const drawn = thinned(profile, 100);
        expect(drawn.length).toBeLessThanOrEqual(100);
        expect(Math.min(...drawn.map((one) => one.celsius))).toBe(Math.min(...celsius));
        expect(Math.max(...drawn.map((one) => one.celsius))).toBe(Math.max(...celsius));
        expect(drawn).toEqual(profile.filter((one) => drawn.includes(one)));
        expect([drawn[0], drawn.at(-1)]).toEqual([profile[0], profile.at(-1)]);
      }),
      { numRuns: 40 },
    );
  });
  it('draws a line for each stretch that was read, and dots between them', () => {
    const series = {
      id: '', place: 'bath' as const, jar: null, readings: 4, leftOut: 0, at: [0, 60, 7200, 7260], c: [30, 31, 37, 38],
      gaps: [{ from: '1970-01-01T00:01:00Z', to: '1970-01-01T02:00:00Z', minutes: 119 }],
    }; // prettier-ignore
    const { read: lines, gaps } = stretches(series, (at) => at / 60, (c) => c); // prettier-ignore
    expect(lines).toEqual(['0.0 30.0 L1.0 31.0', '120.0 37.0 L121.0 38.0']);
    expect(gaps).toEqual(['1.0 31.0 L120.0 37.0']);
  });
  it('writes full hours of the local clock, and the day at midnight', () => {
    const from = Date.parse('2026-05-20T01:00:00+02:00') / 1000;
    const words = timeTicks({ from, to: from + 36 * 3600 }, 120, 900).map((tick) => tick.words);
    expect(words).toEqual(['04:00', '08:00', '12:00', '16:00', '20:00', '21 May', '04:00', '08:00', '12:00']);
  });
});
