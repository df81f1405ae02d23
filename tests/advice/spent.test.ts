// What jars, what is stirred in and starts cost, by hand from prices and sizes: 3.00 for 2 L is 0.15 for 100 mL.
import { describe, expect, it } from 'vitest';
import { priceOf, usualCosts, type Taken } from '../../core/advice/spent';
import { costsSentence, unpricedWords, usualWords } from '../../core/says/cost-says';
import { demoSession, must } from '../ledger/ledger-files';

const carton = { size: { value: 2000, unit: 'mL' as const }, minor: 300, currency: 'EUR' };
const bag = { size: { value: 500, unit: 'g' as const }, minor: 450, currency: 'EUR' };
const milk = (jar: number, value: number | null, from: Taken['package'] = carton): Taken => ({
  what: 'milk', of: jar, jar, name: 'milk', amount: value === null ? null : { value, unit: 'mL' }, package: from,
}); // prettier-ignore
const fibre = (jar: number, value: number, unit: 'g' | 'mL', from: Taken['package'] = bag): Taken => ({
  what: 'addition', of: jar, jar, name: jar % 2 ? 'Acacia' : 'acacia', amount: { value, unit }, package: from,
}); // prettier-ignore

describe('a price', () => {
  it.each([
    [milk(1, 1000), { minor: 150, currency: 'EUR' }],
    [fibre(1, 20, 'g'), { minor: 18, currency: 'EUR' }],
    [fibre(1, 30, 'mL'), 'not weighed'],
    [milk(1, 1000, null), 'no package'],
    [milk(1, 1000, { ...carton, minor: null }), 'no price'],
    [milk(1, 1000, { ...carton, size: null }), 'no size'],
    [milk(1, 1000, { ...carton, size: { value: 0, unit: 'mL' } }), 'no size'],
    [milk(1, null), 'no amount'],
  ])('of %o is %o', (taken, price) => expect(priceOf(taken)).toEqual(price));
});

describe('usual costs', () => {
  it('are medians over jars; two cartons of one jar are added; a jar with a part unpriced is not priced', () => {
    const [of] = usualCosts([
      milk(1, 1000), milk(1, 200), milk(2, 1000), milk(3, 900), milk(4, 900), milk(4, 50, null), milk(5, null),
    ]); // prettier-ignore
    // 180, 150 and 135: the median is 150.
    expect(of).toMatchObject({ what: 'milk', usual: { minor: 150, currency: 'EUR' }, priced: 3, of: 5 });
    expect(of && unpricedWords(of)).toBe('in one jar: no package is noted; in one jar: how much went in is not noted');
  }); // prettier-ignore

  it('are of one money, the commonest, and never add two', () => {
    const pounds = { ...carton, currency: 'GBP' };
    const [of] = usualCosts([milk(1, 1000), milk(2, 1000), milk(3, 1000, pounds)]);
    expect(of).toMatchObject({ usual: { minor: 150, currency: 'EUR' }, priced: 2, unpriced: [{ why: 'other money', times: 1 }] }); // prettier-ignore
  });

  it('take one thing under two ways of writing it for one', () => {
    const all = usualCosts([fibre(1, 20, 'g'), fibre(2, 20, 'g'), fibre(3, 30, 'mL')]);
    expect(all).toHaveLength(1);
    expect(all[0]).toMatchObject({ what: 'addition', priced: 2, of: 3 });
  });

  it('of a start are those of all jars of its batch together', () => {
    const box = { size: { value: 40, unit: 'pieces' as const }, minor: 2000, currency: 'EUR' };
    const start = (batch: number, jar: number): Taken => ({
      what: 'start', of: batch, jar, name: 'Blue Tin', amount: { value: 5, unit: 'pieces' }, package: box,
    }); // prettier-ignore
    const [of] = usualCosts([start(1, 1), start(1, 2), start(2, 3), start(2, 4)]);
    // Five of forty at 20.00 are 2.50, twice.
    expect(of && usualWords(of)).toBe('5.00 EUR for two jars');
    expect(costsSentence(of ? [of] : [])).toBe('What a jar costs is not known; starting a line costs 5.00 EUR for two jars.');
  }); // prettier-ignore

  it('say that nothing is known, and what to do', () => {
    expect(costsSentence([])).toMatch(/^What a jar costs is not known: note size and price/);
  });
});

it('the invented ledger: 23 of 45 capsules at 18.50 and 8 of 24 at 12.40 started three jars', () => {
  const { costs } = must(demoSession(), 'cost.list', {});
  // 18.50 × 23 / 45 + 12.40 × 8 / 24 = 13.59.
  expect(costs.find(({ what }) => what === 'start')).toMatchObject({ says: '13.59 GBP for three jars', of: 1, unpricedSays: null }); // prettier-ignore
  for (const cost of costs) expect(cost.priced + cost.unpriced.reduce((sum, { times }) => sum + times, 0)).toBe(cost.of);
}); // prettier-ignore
