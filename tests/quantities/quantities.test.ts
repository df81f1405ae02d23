// Quantities against published conversion factors. Sources:
// NIST Handbook 44 appendix C (US gallon 231 cubic inches = 3.785411784 L; ounce 28.349523125 g; pound 453.59237 g);
// the degree Fahrenheit by its definition. Spoons of other regions: common practice, no source.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  MEASURES, OUNCE_G, POUND_G, fromFahrenheit, parseAmount, parseHours, parsePh, parsePrice, parseTemperature, printAmount, printTemperature,
  type SpoonSystem,
} from '../../core/quantities/quantities'; // prettier-ignore

const read = (text: string, spoons: SpoonSystem = 'US', liquid = false) => {
  const parsed = parseAmount(text, { spoons }, liquid);
  return parsed.ok ? [parsed.amount.value, parsed.amount.unit] : parsed.code;
};

describe('kitchen measures', () => {
  it('US measures equal NIST Handbook 44 to the last digit printed', () => {
    expect(MEASURES.US.teaspoon).toBe(4.92892159375);
    expect(MEASURES.US.tablespoon).toBe(14.78676478125);
    expect(MEASURES.US['fluid ounce']).toBe(29.5735295625);
    expect(MEASURES.US.cup).toBe(236.5882365);
    expect(MEASURES.US.pint).toBe(473.176473);
    expect(MEASURES.US.quart).toBe(946.352946);
    expect(MEASURES.US.quart / MEASURES.US.tablespoon).toBe(64);
    expect(OUNCE_G).toBe(28.349523125);
    expect(POUND_G).toBe(453.59237);
  });

  it('metric, Australian and UK imperial spoons (common practice; imperial from memory)', () => {
    expect(MEASURES.metric.tablespoon).toBe(15);
    expect(MEASURES.Australia.tablespoon).toBe(20);
    expect(MEASURES['UK imperial'].tablespoon).toBeCloseTo(17.7581640625, 10);
    expect(MEASURES['UK imperial'].pint).toBeCloseTo(568.26125, 10);
    expect(MEASURES['UK imperial']['fluid ounce']).toBeCloseTo(28.4130625, 10);
  });
});

describe('amounts as people type them', () => {
  it.each([
    ['3 tbsp', 44.36029434375], ['3T', 44.36029434375], ['3t', 14.78676478125], ['4 tablespoons', 59.147059125],
    ['2 Tbsp.', 29.5735295625], ['¼ cup', 59.147059125], ['1/4 cup', 59.147059125], ['1½ cups', 354.88235475],
    ['1 1/2 cups', 354.88235475], ['1-1/2 cups', 354.88235475], ['1 qt', 946.352946], ['a quart', 946.352946],
    ['half gallon', 1892.705892], ['½ gal', 1892.705892], ['half a cup', 118.29411825], ['8 fl oz', 236.588236500],
    ['100 ml', 100], ['100ml', 100], ['1,5 L', 1500], ['1.5 l', 1500], ['2 dl', 200], ['25 cl', 250], ['1,000 ml', 1000],
    ['0,25 l', 250], ['two tablespoons', 29.5735295625], ['3 EL', 45], ['1 TL', 5], ['2 c. à s.', 30], ['3 cuillères à soupe', 45],
    ['2 cucharadas', 30], ['3 cucchiai', 45], ['2 msk', 30], ['2 spsk', 30], ['2 eetlepels', 30], ['3 łyżki', 45],
    ['2 colheres de sopa', 30], ['1 c. à c.', 5], ['３ tbsp', 44.36029434375],
  ] as const)('%s', (text, ml) => {
    const parsed = parseAmount(text, { spoons: 'US' });
    expect(parsed.ok && parsed.amount.unit).toBe('mL');
    expect(parsed.ok && parsed.amount.value).toBeCloseTo(ml, 8);
  }); // prettier-ignore

  it('masses, pieces and counts', () => {
    expect(read('12 g')).toEqual([12, 'g']);
    expect(read('1,2 kg')).toEqual([1200, 'g']);
    expect(read('2 oz')).toEqual([56.69904625, 'g']);
    expect(read('1 lb')).toEqual([453.59237, 'g']);
    expect(read('8 oz', 'US', true)).toEqual([236.5882365, 'mL']);
    expect(read('10 capsules')).toEqual([10, 'pieces']);
    expect(read('5 tabs')).toEqual([5, 'pieces']);
    expect(read('a sachet')).toEqual([1, 'pieces']);
    expect(read('10 Kapseln')).toEqual([10, 'pieces']);
    expect(read('10 billion CFU')).toEqual([1e10, 'CFU']);
    expect(read('1e9 CFU')).toEqual([1e9, 'CFU']);
    expect(read('2×10^8 CFU')).toEqual([2e8, 'CFU']);
    expect(read('2 × 10⁸ CFU')).toEqual([2e8, 'CFU']);
    expect(read('10 Mrd. KBE')).toEqual([1e10, 'CFU']);
  });

  it('takes the middle of a range and says so', () => {
    const parsed = parseAmount('2-3 tbsp', { spoons: 'metric' });
    expect(parsed.ok && parsed.amount.value).toBe(37.5);
    expect(parsed.ok && parsed.assumed).toEqual([{ kind: 'range', low: 2, high: 3 }]);
  });

  it('refuses what it cannot read, without guessing', () => {
    expect(read('some')).toBe('amount not read');
    expect(read('')).toBe('amount not read');
    expect(read('-3 tbsp')).toBe('amount below zero');
    expect(read('3')).toBe('amount without unit');
    expect(read('3 tbsp or so of the old one')).toBe('amount not read');
    expect(read('5000000 ml')).toBe('amount too large');
  });

  it('the region decides a bare spoon', () => {
    expect(read('3 tbsp', 'Australia')).toEqual([60, 'mL']);
    expect(read('3 tbsp', 'metric')).toEqual([45, 'mL']);
    expect(read('3 metric tbsp', 'US')).toEqual([45, 'mL']);
    expect(read('1 US cup', 'metric')).toEqual([236.5882365, 'mL']);
  });
});

describe('temperatures', () => {
  // NIST Special Publication 811, appendix B.8 gives the definition; figures to four digits.
  it.each([
    ['40 F', 4.4444], ['98.6F', 37], ['99°F', 37.2222], ['100', 37.7778], ['101 F', 38.3333], ['106 deg F', 41.1111], ['110 °F', 43.3333],
    ['38,2 °C', 38.2], ['38', 38], ['38.5C', 38.5], ['37-38 °C', 37.5], ['100°-102°F', 38.3333], ['４０℃', 40], ['101º F', 38.3333],
  ] as const)('%s', (text, celsius) => {
    const parsed = parseTemperature(text);
    expect(parsed.ok && parsed.temperature.value).toBeCloseTo(celsius, 4);
  }); // prettier-ignore

  it('says when the scale was assumed and refuses the impossible', () => {
    const bare = parseTemperature('100');
    expect(bare.ok && bare.scaleAssumed).toBe('°F');
    const written = parseTemperature('100 F');
    expect(written.ok && written.scaleAssumed).toBeNull();
    expect(parseTemperature('1010F').ok).toBe(false);
    expect(parseTemperature('warm').ok).toBe(false);
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 300, noNaN: true }), (f) => {
        expect(fromFahrenheit(f) * 1.8 + 32).toBeCloseTo(f, 9);
      }),
    );
  });
});

describe('hours, pH, prices', () => {
  it.each([
    ['36', 36], ['36h', 36], ['36 hrs', 36], ['1.5 days', 36], ['1 1/2 days', 36], ['a day and a half', 36], ['1d 12h', 36],
    ['36 Std.', 36], ['34-36', 35], ['36:30', 36.5], ['36 heures', 36], ['1,5 Tage', 36], ['2160 min', 36], ['36 h 30 min', 36.5],
  ] as const)('%s', (text, hours) => {
    const parsed = parseHours(text);
    expect(parsed.ok && parsed.hours).toBeCloseTo(hours, 9);
  }); // prettier-ignore

  it('does not make up hours', () => {
    expect(parseHours('overnight').ok).toBe(false);
    expect(parseHours('').ok).toBe(false);
    expect(parseHours('-3').ok).toBe(false);
  });

  it('reads pH', () => {
    expect(parsePh('4.28')).toMatchObject({ ok: true, ph: 4.28 });
    expect(parsePh('4,28')).toMatchObject({ ok: true, ph: 4.28 });
    expect(parsePh('pH 4.3 (strip)')).toMatchObject({ ok: true, ph: 4.3, how: 'strip' });
    expect(parsePh('428')).toMatchObject({ ok: false, code: 'pH impossible' });
    expect(parsePh('sour')).toMatchObject({ ok: false, code: 'pH not read' });
  });

  it('reads prices in minor units', () => {
    expect(parsePrice('€3,49', 'USD')).toMatchObject({ price: { minor: 349, currency: 'EUR' } });
    expect(parsePrice('$4.99', 'EUR')).toMatchObject({ price: { minor: 499, currency: 'USD' } });
    expect(parsePrice('1.234,50 €', 'EUR')).toMatchObject({ price: { minor: 123450 } });
    expect(parsePrice('3.49', 'GBP')).toMatchObject({ price: { minor: 349, currency: 'GBP' } });
    expect(parsePrice('cheap', 'GBP')).toMatchObject({ ok: false });
  });
});

describe('printing', () => {
  const spoons = { volumes: 'spoons', spoons: 'US' } as const;
  const metric = { volumes: 'metric', spoons: 'US' } as const;
  it('prints by preference', () => {
    expect(printAmount({ value: 44.36029434375, unit: 'mL', typed: null }, spoons)).toBe('3 tbsp');
    expect(printAmount({ value: 44.36029434375, unit: 'mL', typed: null }, metric)).toBe('44 mL');
    expect(printAmount({ value: 59.147059125, unit: 'mL', typed: null }, spoons)).toBe('¼ cup');
    expect(printAmount({ value: 946.352946, unit: 'mL', typed: null }, spoons)).toBe('1 quart');
    expect(printAmount({ value: 946.352946, unit: 'mL', typed: null }, metric)).toBe('946 mL');
    expect(printAmount({ value: 2.46, unit: 'mL', typed: null }, spoons)).toBe('½ tsp');
    expect(printAmount({ value: 1e10, unit: 'CFU', typed: null }, metric)).toBe('1 × 10^10 CFU');
    expect(printTemperature({ value: 38.3333333333, unit: '°C', typed: null }, { temperatures: '°F' })).toBe(
      '101 °F',
    );
    expect(printTemperature({ value: 38.3333333333, unit: '°C', typed: null }, { temperatures: '°C' })).toBe(
      '38.3 °C',
    );
  });

  it('what is printed in metric reads back as what was stored, to the printed digits', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 5000, noNaN: true }), (ml) => {
        const back = parseAmount(printAmount({ value: ml, unit: 'mL', typed: null }, metric), {
          spoons: 'US',
        });
        expect(back.ok && Math.abs(back.amount.value - ml) / ml).toBeLessThan(0.06);
      }),
    );
  });
});
