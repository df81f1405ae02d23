// What is said of what was stirred in: never as a fact what chance could do too, and never silent where lines gainsay each other.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectsSay } from '../../core/says/effects-says';
import type { LineJudgement } from '../../core/vigour/line';

type Effect = LineJudgement['effects'][number];
const effect = (points: number, sets: number, error: number): Effect => ({
  name: 'oat fibre',
  points,
  seen: points,
  error,
  sets,
});
const line = (key: number, effects: readonly Effect[]) =>
  ({ line: key, effects }) as unknown as LineJudgement;
const says = (own: Effect, others: readonly Effect[]): string =>
  effectsSay(line(1, [own]), () => [line(1, [own]), ...others.map((one, at) => line(at + 2, [one]))], (key) => `line ${key}`).join(' '); // prettier-ignore

describe('what an addition does', () => {
  it('is said as what may be where chance could do it too', () => {
    expect(says(effect(-10, 1, 6.6), [])).toBe(
      'Oat fibre may take about 10 points, seen once beside jars of the same seed and hold made as usual; that can be chance.',
    );
    expect(says(effect(16, 3, 3.9), [])).toMatch(/^Oat fibre adds about 16 points, seen 3 times beside .* usual\.$/);
  });

  it('is never claimed where another line shows the other way: both are told with their figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 40 }), fc.integer({ min: -40, max: -5 }), fc.boolean(), (up, down, turned) => {
        const [own, other] = turned ? [down, up] : [up, down];
        const said = says(effect(own, 3, 3.9), [effect(other, 2, 4.8)]);
        expect(said).toContain(`in line 2 it ${other < 0 ? 'takes' : 'adds'} about ${Math.abs(other)}`);
        expect(said).toContain("what oat fibre does by itself can't be told");
      }),
    );
    expect(says(effect(16, 3, 3.9), [effect(14, 2, 4.8)])).not.toContain('line 2');
  });
}); // prettier-ignore
