import { expect, it } from 'vitest';
import { findAmounts, remembered } from '../../core/quantities/quantities';

it('reads a short text once for each way of reading it, a long one each time', () => {
  const read: string[] = [];
  const length = remembered(
    (text: string, twice: boolean) => {
      read.push(text);
      return text.length * (twice ? 2 : 1);
    },
    (twice: boolean) => `${twice}:`,
  );
  const long = 'x'.repeat(201);
  expect([length('ab', false), length('ab', true), length('ab', false), length(long, false), length(long, false)]).toEqual([2, 4, 2, 201, 201]);
  expect(read).toEqual(['ab', 'ab', long, long]);
}); // prettier-ignore

it('amounts that are read otherwise elsewhere are not mixed up', () => {
  const read = (...[text, options, liquid]: Parameters<typeof findAmounts>): number[] =>
    findAmounts(text, options, liquid).map(({ amount }) => amount.value);
  for (let again = 0; again < 2; again++) {
    expect(read('1 tbsp', { spoons: 'US' })).not.toEqual(read('1 tbsp', { spoons: 'metric' }));
    expect(read('2 oz', { spoons: 'US' })).not.toEqual(read('2 oz', { spoons: 'US' }, true));
    expect(read('1,500 mL', { spoons: 'US', decimal: 'point' })).not.toEqual(
      read('1,500 mL', { spoons: 'US', decimal: 'comma' }),
    );
  }
});
