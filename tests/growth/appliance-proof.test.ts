// Runs that prove an appliance, invented by Newton's law; the time constant against its published example.
import { describe, expect, it } from 'vitest';
import { logRegression } from '../../core/growth/log-regression';
import { proofOf, type ProofSeries } from '../../core/growth/proof';
import { profileOf } from '../../core/growth/reading-profile';
import { checkPasses, meterCheckedOn } from '../../core/growth/tool-checks';
import { proofSays } from '../../core/says/appliance-says';

/** Every five minutes for so many hours, warming up to a level. */
const warming = (level: number, tau: number, hours = 30, swing = 0, minutes = 5, from = 20) =>
  Array.from({ length: Math.round((hours * 60) / minutes) + 1 }, (_, i) => {
    const hour = (i * minutes) / 60;
    return { hour, celsius: level - (level - from) * Math.exp(-hour / tau) + swing * Math.sin(hour * 4) };
  });
const centre = (readings = warming(38, 0.7), place: ProofSeries['place'] = 'bath'): ProofSeries => ({
  place,
  spot: 'centre',
  readings,
});
const edge = (readings = warming(37.6, 0.7)): ProofSeries => ({ place: 'bath', spot: 'edge', readings }); // prettier-ignore

describe('a time constant by log regression', () => {
  it('is that of the published worksheet', () => {
    // First-order cooling, university worksheet WG11_10 (check-values §14): printed 0.569.
    const cooling = [[0.1, 16.7], [0.5, 8.1], [1, 3.3], [2, 0.6], [3, 0.1]].map(([time = 0, by = 0]) => ({ time, by })); // prettier-ignore
    const fit = logRegression(cooling)!;
    expect(fit.middle).toBeCloseTo(0.569149, 6);
    expect(fit.low).toBeLessThan(0.569149);
    expect(fit.high).toBeGreaterThan(0.569149);
  });
  it('is exact where nothing strays, and none where it does not come nearer', () => {
    const exact = logRegression([0, 1, 2, 3].map((time) => ({ time, by: 18 * Math.exp(-time / 0.8) })))!;
    expect(exact.middle).toBeCloseTo(0.8, 9);
    expect(exact.high - exact.low).toBeLessThan(1e-6);
    expect(logRegression([0, 1, 2, 3].map((time) => ({ time, by: 3 + time })))).toBeNull();
    expect(logRegression([{ time: 0, by: 3 }, { time: 1, by: 2 }])).toBeNull(); // prettier-ignore
  });
});

describe('a reading that leaps', () => {
  it('is a fault of the probe where no jar can follow: a quart jar in water warms by 2.4 °C at most in five minutes', () => {
    // Newton's law with a time constant of 35 min (conduction, computed): 18 °C · (1 − e^(−5/35)) = 2.4, so there and back 4.8.
    const fastest = 18 * (1 - Math.exp(-5 / 35));
    const leap = (celsius: number) => {
      const readings = warming(38, 0.7).map((one, i) => (i === 200 ? { ...one, celsius: one.celsius + celsius } : one));
      return profileOf(readings).leftOut.length;
    };
    expect([leap(fastest), leap(2 * fastest), leap(2 * fastest + 1), leap(-2 * fastest - 1)]).toEqual([0, 0, 1, 1]);
  });
}); // prettier-ignore

describe('a run of an appliance', () => {
  it('proves it where a day and a night were read at centre and edge', () => {
    const proof = proofOf([centre(), edge()], 20, true);
    expect(proof).toMatchObject({ passes: true, lacks: [], within: 1 });
    expect(proof.settledAt).toBeCloseTo(38, 1);
    expect(proof.edgeCooler).toBeCloseTo(0.4, 1);
    // Newton: 0.7 h · ln(18 / 0.5).
    expect(proof.minutesToSettle).toBeCloseTo(0.7 * Math.log(36) * 60, -1);
    expect(proofSays(proof)).toMatch(/^Proven: it settles at 38\.0 °C after 2 h 3\d min\.$/);
  });
  it.each([
    ['not filled', [centre(), edge()], 20, false],
    ['filled not noted', [centre(), edge()], 20, null],
    ['too short', [centre(warming(38, 0.7, 20)), edge()], 20, true],
    ['no night', [centre(warming(38, 0.7, 24.2)), edge(warming(38, 0.7, 24.2))], 2, true],
    ['too seldom', [centre(warming(38, 0.7, 30, 0, 10)), edge()], 20, true],
    ['no centre', [edge()], 20, true],
    ['no edge', [centre()], 20, true],
    ['too cool', [centre(warming(36, 0.7)), edge()], 20, true],
    ['too warm', [centre(warming(40, 0.7)), edge()], 20, true],
    ['too warm', [centre(warming(38.6, 0.7, 30, 1.5)), edge()], 20, true],
    ['too hot', [centre(), edge(warming(43.5, 0.7))], 20, true],
    ['no readings', [], 20, true],
  ] as const)('does not where: %s', (lack, series, hour, filled) => {
    const proof = proofOf(series, hour, filled);
    expect(proof.passes).toBe(false);
    expect(proof.lacks).toContain(lack);
    expect(proofSays(proof)).toMatch(/^Not proven: /);
  });
  it('holds for 95 % of the time once settled, read every five minutes (common practice, no source)', () => {
    /** A spell at 36 °C for a part of the time that is left once it has settled. */
    const coolFor = (part: number) =>
      warming(38, 0.7).map(({ hour, celsius }) => ({ hour, celsius: hour >= 12 && hour < 12 + part * 27.5 ? 36 : celsius }));
    expect(proofOf([centre(coolFor(0.03)), edge()], 20, true).lacks).toEqual([]);
    expect(proofOf([centre(coolFor(0.07)), edge()], 20, true).lacks).toEqual(['too cool']);
    const every = (minutes: number) => proofOf([centre(warming(38, 0.7, 30, 0, minutes)), edge()], 20, true).lacks;
    expect([every(5), every(6)]).toEqual([[], ['too seldom']]);
  }); // prettier-ignore
  it('with a probe in bath and jar says how the jar follows, and by how much it stays behind', () => {
    const bath = Array.from({ length: 361 }, (_, i) => ({ hour: i / 12, celsius: 38 }));
    const jar = { place: 'jar' as const, spot: null, readings: warming(37.4, 0.8) };
    const proof = proofOf([centre(bath), edge(), jar], 20, true);
    expect(proof.jarCooler).toBeCloseTo(0.6, 2);
    expect(proof.timeConstant!.middle).toBeCloseTo(0.8, 2);
    // Warm from the start it tells too, as long as it is further off than what counts as settled (half a degree).
    const from = (celsius: number) => ({ ...jar, readings: warming(37.4, 0.8, 30, 0, 5, celsius) });
    expect(proofOf([centre(bath), edge(), from(36)], 20, true).timeConstant!.middle).toBeCloseTo(0.8, 2);
    expect(proofOf([centre(bath), edge(), from(37.2)], 20, true).timeConstant).toBeNull();
    // A bath that sways by less than the trade's settled band of three degrees (36.5–39.5 °C) tells; one that leaves it does not.
    const swaying = (by: number) => bath.map(({ hour }) => ({ hour, celsius: 38 + by * Math.sin(hour * 3) }));
    expect(proofOf([centre(swaying(0.7)), edge(), jar], 20, true).timeConstant?.middle).toBeCloseTo(0.8, 1);
    expect(proofOf([centre(swaying(1.5)), edge(), jar], 20, true).timeConstant).toBeNull();
    // A bath that itself warms up tells nothing by this line.
    expect(proofOf([centre(), edge(), jar], 20, true).timeConstant).toBeNull();
  });
});

describe('a tool', () => {
  it('is trusted as far as its check goes (limits: common practice, no source; 40 °F: FDA, USDA)', () => {
    expect([4.01, 4.1, 3.93].map((shown) => checkPasses({ tool: 'meter', shown }))).toEqual([
      true,
      true,
      true,
    ]);
    expect([4.2, 3.8, 7].map((shown) => checkPasses({ tool: 'meter', shown }))).toEqual([
      false,
      false,
      false,
    ]);
    expect([0, 0.4, -0.5, 1].map((shown) => checkPasses({ tool: 'thermometer', shown }))).toEqual([true, true, true, false]); // prettier-ignore
    expect([3, 4.44, 5].map((shown) => checkPasses({ tool: 'fridge', shown }))).toEqual([true, true, false]);
  });
  it('that nobody checked that day proves nothing', () => {
    const checks = [
      { tool: 'meter' as const, day: '2026-03-01', shown: 4.5 },
      { tool: 'meter' as const, day: '2026-03-01', shown: 4.02 },
      { tool: 'meter' as const, day: '2026-03-02', shown: 4.6 },
    ];
    expect(['2026-03-01', '2026-03-02', '2026-03-03'].map((day) => meterCheckedOn(checks, day))).toEqual([true, false, null]); // prettier-ignore
  });
});
