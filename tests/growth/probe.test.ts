// The invented export of a bath probe: a junk heading, a reading every ten minutes, a gap of two hours, one impossible spike.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jarFollows } from '../../core/growth/jar-temperature';
import { readProbe } from '../../core/growth/probe';
import { profileOf } from '../../core/growth/reading-profile';
import { warmthOf } from '../../core/growth/warm-hours';

const text = readFileSync(new URL('bath-probe.csv', import.meta.url), 'utf8');
const file = readProbe(text);

describe('a probe file', () => {
  it('is read whole: month first, °F, thirty-six hours', () => {
    expect(file.startedAt).toBe('2026-02-10T19:40');
    expect(file.unit).toBe('°F');
    expect(file.unitKnown).toBe('said in the file');
    expect(file.problems).toEqual([]);
    expect(file.readings).toHaveLength(text.trim().split('\n').length - 3);
    expect(file.readings.at(-1)?.hour).toBeCloseTo(36, 9);
    expect(file.readings[0]?.celsius).toBeCloseTo(((84.1 - 32) * 5) / 9, 9);
  });

  it('has its one spike left out and its one gap bridged, and both are said', () => {
    const { profile, leftOut, gaps, says } = profileOf(file.readings);
    expect(leftOut).toHaveLength(1);
    expect(leftOut[0]?.celsius).toBeCloseTo(91, 1);
    expect(leftOut[0]?.hour).toBeCloseTo(25, 9);
    expect(gaps).toHaveLength(1);
    expect(gaps[0]!.to - gaps[0]!.from).toBeCloseTo(2, 9);
    expect(says).toHaveLength(2);
    expect(says[0]).toContain('91.0 °C');
    expect(says[1]).toContain('2 h 0 min');
    expect(warmthOf(profile)?.minutesAboveDamage).toBe(0);
  });

  it('gives fewer warm hours for the jar than for the bath it stands in', () => {
    const { profile } = profileOf(file.readings);
    const bath = warmthOf(profile);
    const jar = warmthOf(jarFollows(profile, 1, 28));
    expect(jar!.warmHours.middle).toBeLessThan(bath!.warmHours.middle);
    expect(bath!.warmHours.middle).toBeGreaterThan(25);
    expect(bath!.warmHours.high).toBeLessThan(36);
  });
});

describe('other probes', () => {
  it.each([
    ['ISO, °C', 'time,T (°C)\n2026-02-10T19:40:00,28.9\n2026-02-10T19:50:00,30.1', '2026-02-10T19:40', 30.1],
    ['day first, decimal comma', 'Zeit;Temperatur °C\n13.02.2026 07:40;28,9\n13.02.2026 07:50;30,1', '2026-02-13T07:40', 30.1],
    ['tabs, bare figures', '10/02/2026 23:50\t28.9\n11/02/2026 00:00\t30.1', '2026-02-10T23:50', 30.1],
    ['bare Fahrenheit', '2026-02-10 19:40 100.4\n2026-02-10 19:50 98.6', '2026-02-10T19:40', 37],
  ])('%s', (_, source, startedAt, last) => {
    const read = readProbe(source);
    expect(read.startedAt).toBe(startedAt);
    expect(read.readings.at(-1)?.hour).toBeCloseTo(1 / 6, 9);
    expect(read.readings.at(-1)?.celsius).toBeCloseTo(last, 9);
  }); // prettier-ignore

  it('say which lines can not be read', () => {
    const read = readProbe(
      '2026-02-10 19:40,37\nnoise\n2026-02-10 19:50,\n2026-02-31 19:50,37\n2026-02-10 20:00,37.5',
    );
    expect(read.problems.map(({ line }) => line)).toEqual([2, 3, 4]);
    expect(readProbe('').problems[0]?.sentence).toContain('No readings');
    expect(readProbe('').startedAt).toBeNull();
  });
});
