// What a jar, a cup and a good jar cost, by hand from prices and sizes: 3.00 for 2 L is 1.50 a litre.
import { afterAll, describe, expect, it } from 'vitest';
import { costSheet, type JarTaken } from '../../core/advice/cost-sheet';
import type { Taken } from '../../core/advice/spent';
import { costedSays, sheetHead } from '../../core/says/cost-sheet-says';
import { batchOf, FIRM, fromSource, must, newSession, plainJar, plainSource } from '../ledger/ledger-files';

const carton = { size: { value: 2000, unit: 'mL' as const }, minor: 300, currency: 'EUR' };
const milk = (value: number, from: Taken['package'] = carton): Taken => ({
  what: 'milk', of: 1, jar: 1, name: 'milk', amount: { value, unit: 'mL' }, package: from,
}); // prettier-ignore
const fibre = (from: Taken['package']): Taken => ({
  what: 'addition', of: 1, jar: 1, name: 'acacia', amount: { value: 20, unit: 'g' }, package: from,
}); // prettier-ignore
const bag = { size: { value: 500, unit: 'g' as const }, minor: 450, currency: 'EUR' };
const jar = (taken: Taken[], more: Partial<JarTaken> = {}): JarTaken => ({
  taken, volume: 1000, cameOut: 'unknown', ...more,
}); // prettier-ignore

describe('a sheet of costs', () => {
  it('takes jars that are priced whole, and else says “at least”; nothing without a price counts as nothing', () => {
    const sheet = costSheet(
      [jar([milk(1000), fibre(bag)]), jar([milk(1000)]), jar([milk(1000), fibre(null)])],
      'EUR',
      250,
    );
    // 1.50 + 0.18 and 1.50: the middle is 1.59; the third is left out, it has a part without a price.
    expect(sheet.jar).toEqual({ minor: 159, jars: 2, of: 3, atLeast: false });
    expect(sheet.cup?.minor).toBeCloseTo(39.75);
    const partly = costSheet([jar([milk(1000), fibre(null)])], 'EUR', 250);
    expect(partly.jar).toEqual({ minor: 150, jars: 1, of: 1, atLeast: true });
    expect(costedSays(partly.jar, 'EUR')).toBe('at least 1.50 EUR');
    expect(costSheet([jar([milk(1000, null), fibre(bag)])], 'EUR', 250).jar).toBeNull();
    // Two moneys are never added.
    expect(costSheet([jar([milk(1000)])], 'GBP', 250).jar).toBeNull();
  });

  it('shares what all seen jars cost among the good ones: a weak one counts half, a discarded none', () => {
    const seen = (cameOut: JarTaken['cameOut']): JarTaken => jar([milk(1000)], { cameOut });
    // Four jars of 1.50 for 1 + ½ + ½ + 0 good ones.
    expect(costSheet([seen('good'), seen('weak'), seen('weak'), seen('discarded'), seen('unknown')], 'EUR', 250).goodJar?.minor).toBe(300);
    expect(costSheet([seen('discarded')], 'EUR', 250).goodJar).toBeNull();
  }); // prettier-ignore

  it('says first how a cup stands beside the shop’s, and what to do where nothing is known', () => {
    const sheet = costSheet([jar([milk(1000)])], 'EUR', 250);
    expect(sheetHead(sheet, 100, 'EUR').sentence).toBe(
      'A cup of your own costs 0.63 EUR less than the shop’s.',
    );
    expect(sheetHead(sheet, 20, 'EUR').sentence).toBe(
      'A cup of your own costs 0.18 EUR more than the shop’s.',
    );
    expect(sheetHead({ jar: null, cup: null, goodJar: null }, 100, 'EUR').reason).toContain('litre of milk');
    const partly = costSheet([jar([milk(1000), fibre(null)])], 'EUR', 250);
    expect(sheetHead(partly, 100, 'EUR').sentence).toContain('at most 0.63 EUR less');
  });
});

describe('its calls', () => {
  const session = newSession();
  afterAll(() => session.close());
  it('take a price of milk for milk of no noted carton, one of the shop, and forget both again', () => {
    const source = must(session, 'source.save', plainSource('Blue Tin')).id;
    must(
      session,
      'batch.record',
      batchOf('2026-03-09', [
        plainJar('a', {
          seedings: [fromSource(source)],
          milk: 'whole milk',
          milkAmount: { value: 900, unit: 'mL', typed: null },
          finalVolume: { value: 1000, unit: 'mL', typed: null },
          outcome: FIRM,
        }),
      ]),
    );
    const before = must(session, 'cost.sheet', {});
    expect(before.figures[0]).toMatchObject({ what: 'jar', minor: null, says: 'not known' });
    must(session, 'cost.prices', { prices: { milkPerLitre: 120, shop: { minor: 250, ml: 500 } } });
    const { figures, bars, currency } = must(session, 'cost.sheet', {});
    // 900 mL at 1.20 a litre is 1.08; a quarter of it 0.27; the shop asks 1.25 for 250 mL.
    expect(figures.map(({ what, minor }) => [what, minor]).slice(0, 3)).toEqual([['jar', 108], ['cup', 27], ['good jar', 108]]); // prettier-ignore
    expect(bars.map(({ minor }) => minor)).toEqual([27, 125]);
    expect(currency).toBe('EUR');
    // The same price is what advice counts with: one answer everywhere.
    expect(must(session, 'cost.list', {}).sentence).toContain('1.08 EUR');
    must(session, 'act.undo', { act: null });
    expect(must(session, 'cost.sheet', {})).toEqual(before);
  });
});
