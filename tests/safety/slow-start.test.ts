// The clocks of the first day, each rule with its reason. Hours and values: the trade's rule; why they matter: S. aureus makes
// toxin in milk at 35 °C within 6 to 12 h (PMC547554); B. cereus is held back at pH 5.0 or less (doi
// 10.1111/j.1365-2672.1990.tb02913.x). The 24 h and 5.3 by analogy with the degree-hours of fermented sausage.
import { describe, expect, it } from 'vitest';
import { gateReasonSentence } from '../../core/says/safety-says';
import { ownSafety } from '../../core/safety/own-safety';
import { slowStart } from '../../core/safety/slow-start';
import { look, seen } from './seen-in-words';

const early = (hoursIn: number | null, more: Parameters<typeof look>[1] = {}) =>
  look('early', { hoursIn, ...more });
const ph = (value: number, how: 'meter' | 'strip' = 'meter') => ({
  acidity: [{ ph: value, how, checked: true }],
});
const kind = (...looks: Parameters<typeof slowStart>[0]) => slowStart(looks)?.kind ?? null;

describe('by the clock', () => {
  it.each([
    ['at 8 h nothing is late yet', early(8, { sour: false, setState: 'loose', ...ph(6.2) }), null],
    ['not sour at 12 h: organisms had time', early(12, { sour: false }), 'look'],
    ['above 5.7 at 12 h', early(12, ph(5.71)), 'look'],
    ['5.7 at 12 h is not above it', early(12, ph(5.7)), null],
    ['above 5.7 at 12 h by a strip: a strip may stop', early(12, ph(6, 'strip')), 'look'],
    ['sour but loose at 12 h is on its way', early(12, { sour: true, setState: 'loose' }), null],
    ['loose at 12 h, and nobody smelled it', early(12, { setState: 'loose' }), 'look'],
    ['above 5.3 at 24 h: not set in time', early(24, ph(5.31)), 'too late'],
    ['5.3 at 24 h', early(24, ph(5.3)), null],
    ['not sour at 24 h: only the meter lets it be eaten', early(24, { sour: false }), 'meter only'],
    ['sour but loose at 24 h: the gate decides', early(24, { sour: true, setState: 'loose' }), 'look'],
    ['above 5.3 at take-out after 36 h was above it at 24', look('take-out', { hoursIn: 36, ...ph(5.4) }), 'too late'],
    ['not sour, and nobody said when', early(null, { sour: false }), 'look'],
  ] as const)('%s', (_why, one, found) => expect(kind(one)).toBe(found)); // prettier-ignore
  it('of several looks the gravest counts, and a good later one undoes nothing', () =>
    expect(kind(early(12, { sour: false }), early(24, { sour: true, setState: 'set', ...ph(4.4) }))).toBe(
      'look',
    ));
});

describe('what follows', () => {
  const sour = look('take-out', { setState: 'set', sour: true, looked: true });
  it('later acid does not undo a toxin: late at 24 h is discarded though it sets and smells sour in the end', () =>
    expect(ownSafety(seen([early(24, ph(5.6)), sour]), null, null)).toMatchObject({
      discard: 'not set',
      gate: 'failed',
    }));
  it('a slow start never ends by itself, and is no clean generation', () => {
    const late = look('later', { day: '2026-03-20', looked: true });
    const [slow, usual] = [early(12, { sour: false }), early(12, { sour: true })].map((one) => ownSafety(seen([one, sour, late]), null, '2026-03-01'));
    expect(slow).toMatchObject({ discard: null, forever: true, clean: false });
    expect(usual).toMatchObject({ discard: null, forever: false, clean: true });
  }); // prettier-ignore
  it('a generation was seen clean five days after take-out, not a day sooner, or on opening (the meaning of the words)', () => {
    const seenOn = (later: Parameters<typeof look>[0], day: string): boolean =>
      ownSafety(seen([sour, look(later, { day, looked: true })]), null, '2026-03-01').clean;
    expect([seenOn('later', '2026-03-05'), seenOn('later', '2026-03-06'), seenOn('opened', '2026-03-03')]).toEqual([false, true, true]);
  }); // prettier-ignore
  it('nobody looked: the first day is unknown, and that is no caution', () => {
    expect(kind(sour)).toBeNull();
  });
  it('is said: not for the vulnerable, not to be given away, never undone by acid', () => {
    const start = slowStart([early(12, { sour: false })]);
    expect(start && gateReasonSentence({ code: 'slow start', ...start })).toMatch(
      /^A slow start: not sour at 12 h\..*does not undo a toxin.*vulnerable.*given away.*When in doubt, discard\.$/,
    );
  });
});
