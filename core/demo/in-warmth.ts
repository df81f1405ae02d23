// What stands in the bath while the invented kitchen is visited: a batch of the evening before, its probe's readings, and a
// power cut in the night. The look at 12 h falls due on the scenario's last morning. Invented like all of it.
import { DEMO_TODAY } from './invented-larder';
import { from, jar, spoons, type DemoBatch } from './scenario-shapes';

/** Made before supper, put into the warm bath at half past ten. */
export const inWarmth: DemoBatch = {
  day: '2026-05-02',
  word: null,
  note: null,
  holds: [],
  jars: [
    jar('a', from('2026-04-22 b'), null, null),
    jar('b', from('2026-04-22 b'), null, null, { additions: [spoons('acacia fibre', 2, 1.5)] }),
    jar('c', from('2026-04-22 b'), null, null, { additions: [spoons('chicory inulin', 1.5)] }),
  ],
};

export const warmth = {
  planned: 37,
  /** Hours it is to take: from half past ten in the evening to half past six, two mornings on. */
  hours: 32,
  began: '2026-05-02T22:30:00+01:00',
  powerCut: { began: '2026-05-03T02:40:00+01:00', ended: '2026-05-03T03:25:00+01:00' },
  /** When the readings were copied from the probe. */
  read: `${DEMO_TODAY}T09:40:00+01:00`,
} as const;

const MINUTE = 60_000;
const START = Date.parse(warmth.began);
/** Minutes after the start at which the power went and came back. */
const [OFF, ON] = [250, 295] as const;

/** °C in the bath so many minutes after the start: jars from the counter cool it, then it swings about what is planned. */
function celsiusAt(minute: number): number {
  const warmed = 37.1 - 3.4 * Math.exp(-minute / 70) + 0.25 * Math.sin(minute / 38);
  return Math.round((warmed - lostAt(minute)) * 10) / 10;
}

/** °C that the power cut has cost by then: a straight fall, then half of it back in half an hour. */
function lostAt(minute: number): number {
  if (minute < OFF) return 0;
  return minute < ON ? (2.6 * (minute - OFF)) / (ON - OFF) : 2.6 * Math.exp(-(minute - ON) / 45);
}

/** A reading every quarter of an hour up to the last morning. */
export const readings: readonly { readonly at: string; readonly c: number }[] = Array.from(
  { length: 1 + Math.floor((Date.parse(warmth.read) - START) / (15 * MINUTE)) },
  (_, i) => ({
    at: new Date(START + i * 15 * MINUTE + 60 * MINUTE).toISOString().replace('.000Z', '+01:00'),
    c: celsiusAt(i * 15),
  }),
);
