// How fast a jar follows its bath. Newton's law in closed form for a bath at one temperature, T = T∞ − (T∞ − T0)·e^(−t/τ)
// (textbook, from memory), gives the readings; the fit must find τ again.
import { describe, expect, it } from 'vitest';
import { fitTimeConstant, timeConstantOf } from '../../core/growth/time-constant';
import { batchOf, fromSource, must, newSession, plainJar, plainSource, unseen } from '../ledger/helpers';

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
    expect(timeConstantOf(null, []).says).toContain('Nobody measured it');
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
    record('2026-03-05', [hold('bath', readings(() => 38)), hold('jar', readings((hour) => 38 - 18 * Math.exp(-hour / 3)))]);
    expect(why(hot[0], 'warm hours')).toMatch(/time constant of (2\.9|3\.0|3\.1) h .* measured/);
    expect(figures(hot[0])[1]?.shown).not.toBe(before);
  }); // prettier-ignore
  it('go by the keeper’s own figure where one is said', () => {
    const { preferences } = must(session, 'app.state', {});
    must(session, 'preferences.save', { ...preferences, jarFollowsHours: 1.5 });
    expect(why(hot[0], 'warm hours')).toContain('time constant of 1.5 h, as you said');
  });
});
