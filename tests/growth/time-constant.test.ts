// How fast a jar follows its bath. Newton's law in closed form for a bath at one temperature, T = T∞ − (T∞ − T0)·e^(−t/τ)
// (textbook, from memory), gives the readings; the fit must find τ again.
import { describe, expect, it } from 'vitest';
import { fitTimeConstant, timeConstantOf } from '../../core/growth/time-constant';
import { followsSays } from '../../core/says/warmth-says';
import { bathsAndJars } from '../../core/vigour/baths';
import type { HoldRecord } from '../../core/vigour/evidence';
import { batchOf, fromSource, must, newSession, plainJar, plainSource, unseen } from '../ledger/ledger-files';

const steps = Array.from({ length: 37 }, (_, i) => i / 6);
const bathAt = (celsius: number) => steps.map((hour) => ({ hour, celsius }));
const jarWith = (tau: number, wrong: (i: number) => number = () => 0) =>
  steps.map((hour, i) => ({ hour, celsius: 38 - 18 * Math.exp(-hour / tau) + wrong(i) }));

describe('a time constant', () => {
  it.each([0.4, 0.8, 1.5, 3])('of %s h is found again from readings in bath and jar', (tau) => {
    const fit = fitTimeConstant({ bath: bathAt(38), jar: jarWith(tau) });
    expect(fit!.middle / tau).toBeGreaterThan(0.97);
    expect(fit!.middle / tau).toBeLessThan(1.03);
    expect(fit!.low).toBeLessThanOrEqual(tau);
    expect(fit!.high).toBeGreaterThanOrEqual(tau);
  });
  it('is less sure where the probe is off by half a degree now and then', () => {
    const even = fitTimeConstant({ bath: bathAt(38), jar: jarWith(0.8) });
    const rough = fitTimeConstant({ bath: bathAt(38), jar: jarWith(0.8, (i) => (i % 2 ? 0.5 : -0.5)) });
    expect(rough!.high - rough!.low).toBeGreaterThan(even!.high - even!.low);
  });
  it('shows in a jar that is three degrees from its bath, not in one that is hardly apart', () => {
    const from = (start: number) =>
      steps.map((hour) => ({ hour, celsius: 38 - (38 - start) * Math.exp(-hour / 0.8) }));
    expect(fitTimeConstant({ bath: bathAt(38), jar: from(33) })!.middle).toBeCloseTo(0.8, 1);
    expect(fitTimeConstant({ bath: bathAt(38), jar: from(36) })).toBeNull();
  });
  it('is not made up where the readings can show none', () => {
    expect(fitTimeConstant({ bath: bathAt(38), jar: bathAt(38) })).toBeNull();
    expect(fitTimeConstant({ bath: bathAt(38), jar: jarWith(1).slice(0, 4) })).toBeNull();
    expect(fitTimeConstant({ bath: bathAt(38), jar: jarWith(1).map(({ hour, celsius }) => ({ hour: hour + 99, celsius })) })).toBeNull(); // prettier-ignore
    expect(fitTimeConstant({ bath: [], jar: [] })).toBeNull();
  });
  it("is the keeper's where said, else measured, else a usual range that says that nobody measured it", () => {
    const seen = [{ bath: bathAt(38), jar: jarWith(0.8) }];
    expect(timeConstantOf(1.2, seen)).toMatchObject({ middle: 1.2, from: 'your figure' });
    expect(timeConstantOf(null, seen).from).toBe('measured');
    expect(timeConstantOf(null, [])).toMatchObject({ low: 0.5, middle: 1, high: 2, from: 'usual range' });
    expect(followsSays(timeConstantOf(null, []))).toContain('Nobody measured it');
  });
});

const reading = (minutes: number, value: number) => ({
  at: new Date(Date.parse('2026-03-01T18:00:00Z') + minutes * 60_000)
    .toISOString()
    .replace('.000Z', '+00:00'),
  temperature: { value, unit: '°C' as const, typed: null },
});
const readings = (of: (hour: number) => number) => Array.from({ length: 49 }, (_, i) => reading(i * 15, of(i / 4))); // prettier-ignore
const hold = (probe: 'bath' | 'jar' | null, given: ReturnType<typeof readings>) => ({
  startedAt: '2026-03-01T18:00:00+00:00', endedAt: '2026-03-02T06:00:00+00:00', hours: null, planned: null, probe,
  readings: given, note: null,
}); // prettier-ignore

describe('a bath and a jar of one batch that were both read', () => {
  const hour = (after: number) => new Date(Date.parse('2026-03-01T18:00:00Z') + after * 3_600_000).toISOString();
  /** Read every half hour from `from` to `to`; recorded from and to the same hours unless told otherwise. */
  const read = (
    probe: 'bath' | 'jar',
    celsius: number,
    [from, to]: readonly [number, number] = [0, 36],
    more: Partial<HoldRecord> = {},
  ): HoldRecord => ({
    startedAt: hour(from),
    endedAt: hour(to),
    hours: null,
    planned: null,
    probe,
    readings: Array.from({ length: (to - from) * 2 + 1 }, (_, i) => ({
      at: hour(from + i / 2),
      temperature: { value: celsius, unit: '°C' as const, typed: null },
    })),
    ...more,
  });
  const planned = (value: number) => ({ planned: { value, unit: '°C' as const, typed: null } });
  /** Bath and jar by the temperature that marks each. */
  const paired = (holds: readonly HoldRecord[]) => {
    const { pairs, unclear } = bathsAndJars(holds);
    return [pairs.map(({ bath, jar }) => [bath[0]?.celsius, jar[0]?.celsius]), unclear];
  };

  it('are a pair where their times lie in one another', () => {
    expect(paired([read('bath', 38), read('jar', 37)])).toEqual([[[38, 37]], 0]);
    expect(paired([read('bath', 38), read('jar', 37, [2, 30])])).toEqual([[[38, 37]], 0]);
    // Two jars read in one bath.
    expect(paired([read('bath', 38), read('jar', 37), read('jar', 36)])).toEqual([[[38, 37], [38, 36]], 0]);
  });
  it('are none where they ran one after the other, or hardly met', () => {
    expect(paired([read('bath', 38, [0, 12]), read('jar', 37, [12, 36])])).toEqual([[], 0]);
    expect(paired([read('bath', 38, [0, 20]), read('jar', 37, [10, 36])])).toEqual([[], 0]);
  });
  it('are none where they were meant to be at different warmths', () => {
    expect(paired([read('bath', 38, [0, 36], planned(38)), read('jar', 42, [0, 36], planned(43))])).toEqual([[], 0]);
    expect(paired([read('bath', 38, [0, 36], planned(38)), read('jar', 37, [0, 36], planned(38))])).toEqual([[[38, 37]], 0]);
  });
  it('go by what is recorded alike where two baths were read, and are left out where that does not tell', () => {
    const two = [read('bath', 38, [0, 36], planned(38)), read('bath', 42, [0, 36], planned(42))];
    expect(paired([...two, read('jar', 37, [0, 36], planned(38)), read('jar', 41, [0, 36], planned(42))])).toEqual([[[38, 37], [42, 41]], 0]);
    expect(paired([...two, read('jar', 37)])).toEqual([[], 1]);
    // Two baths at one warmth, the second begun an hour later: a jar begun with it stood in it.
    const later = [read('bath', 38), read('bath', 39, [1, 36])];
    expect(paired([...later, read('jar', 36, [1, 36])])).toEqual([[[39, 36]], 0]);
    expect(paired([...later, read('jar', 36, [3, 30])])).toEqual([[], 1]);
  });
  it('go by their readings where nobody wrote down start and end', () => {
    const unsaid = { startedAt: null, endedAt: null };
    expect(paired([read('bath', 38, [0, 36], unsaid), read('jar', 37, [0, 36], unsaid)])).toEqual([[[38, 37]], 0]);
    expect(paired([read('bath', 38, [0, 12], unsaid), read('jar', 37, [12, 36], unsaid)])).toEqual([[], 0]);
  });
  it('are named where they were left out', () => {
    expect(followsSays(timeConstantOf(null, [], 1))).toContain('The readings in one jar were left out: more than one bath');
    expect(followsSays(timeConstantOf(null, [{ bath: bathAt(38), jar: jarWith(0.8) }], 2))).toContain('The readings in 2 jars were left out');
    expect(followsSays(timeConstantOf(null, []))).not.toContain('left out');
  });
}); // prettier-ignore

describe('figures of a jar', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const seedings = [fromSource(source)];
  const outcome = { ...unseen, setWord: 'firm' as const };
  const record = (day: string, holds: ReturnType<typeof hold>[]) =>
    must(session, 'batch.record', batchOf(day, holds.map((_, i) => plainJar('abc'[i] ?? '', { seedings, outcome, hold: i })), { holds })).jars; // prettier-ignore
  const figures = (jar = '') => must(session, 'judgement.jar', { jar }).figures;
  const why = (jar: string | undefined, name: string): string => figures(jar).find((figure) => figure.name === name)?.why.assumptions.join(' ') ?? ''; // prettier-ignore
  const hot = record('2026-03-01', [
    hold(
      'bath',
      readings((hour) => (hour > 2 && hour < 4 ? 47 : 38)),
    ),
  ]);

  it('say plain hours first, warm hours with their band, and minutes above 45 °C where something was read', () => {
    expect(figures(hot[0]).map(({ name }) => name)).toEqual([
      'hours held',
      'warm hours',
      'minutes above 45 °C',
    ]);
    expect(figures(hot[0])[0]?.shown).toBe('12.0 h');
    expect(figures(hot[0])[1]?.shown).toMatch(/^\d+\.\d h \(\d+\.\d to \d+\.\d\)$/);
    expect(figures(hot[0])[2]?.shown).toMatch(/^\d+ min/);
    expect(figures(hot[0])[1]?.why.source).toContain('10.1006/jtbi.1993.1099');
  });
  it('say that the culture is not declared, and that nobody measured how the jar follows the bath', () => {
    expect(why(hot[0], 'warm hours')).toContain('plain hours come first');
    expect(why(hot[0], 'warm hours')).toContain('Nobody measured it');
  });
  it('measure it where one batch had a probe in bath and jar, and then use it for every jar', () => {
    const before = figures(hot[0])[1]?.shown;
    record('2026-02-28', [hold('bath', readings(() => 38)), hold('jar', readings((hour) => 38 - 18 * Math.exp(-hour / 3)))]);
    expect(why(hot[0], 'warm hours')).toMatch(/time constant of (2\.9|3\.0|3\.1) h .* measured/);
    expect(figures(hot[0])[1]?.shown).not.toBe(before);
  }); // prettier-ignore
  it('go by the keeper’s own figure where one is said', () => {
    const { preferences } = must(session, 'app.state', {});
    must(session, 'preferences.save', { ...preferences, jarFollowsHours: 1.5 });
    expect(why(hot[0], 'warm hours')).toContain('time constant of 1.5 h, as you said');
  });
});
