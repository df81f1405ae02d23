// What a probe's readings are taken for: a swing, another time, a fault. Newton's law of warming gives what a jar can do; the
// appliances are of the trade (no thermostat worth the name: common practice, no source).
import { describe, expect, it } from 'vitest';
import { profileOf } from '../../core/growth/reading-profile';
import { settledOf } from '../../core/growth/settling';

/** A reading every five minutes for so many hours. */
const every5 = (hours: number, celsius: (hour: number) => number) =>
  Array.from({ length: 12 * hours + 1 }, (_, i) => ({ hour: i / 12, celsius: celsius(i / 12) }));

describe('where an appliance settles', () => {
  it('takes a heater that swings by two and a half degrees whole', () => {
    const swinging = settledOf(every5(24, (hour) => 38 + 2.5 * Math.sin(2 * Math.PI * hour)));
    expect(swinging?.level).toBeCloseTo(38, 0);
    expect(swinging?.swing).toBeGreaterThan(2.2);
  });

  it('takes a probe that hangs four degrees cooler at the end for another time, not for a swing', () => {
    const still = every5(24, (hour) => (hour < 21.5 ? 38 : 34));
    expect(settledOf(still)?.level).toBeCloseTo(38, 1);
    expect(settledOf(still)?.swing).toBeLessThan(0.5);
  });
});

it('a fault of the probe is known beside a jar that warms as fast as a jar in a bath can', () => {
  // A pint jar follows a bath within two hours (τ): in half an hour from 20 °C towards 38 °C it gains four degrees.
  const jar = (hour: number): number => 38 - 18 * Math.exp(-hour / 2);
  const readings = Array.from({ length: 24 }, (_, i) => ({ hour: i / 2, celsius: jar(i / 2) }));
  const between = [...readings, { hour: 0.25, celsius: 70 }];
  expect(jar(0.5) - jar(0)).toBeGreaterThan(3.9);
  expect(profileOf(between).leftOut).toEqual([{ hour: 0.25, celsius: 70 }]);
}); // prettier-ignore
