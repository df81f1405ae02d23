// Words of a cell that are none of its own are taken for the one they mean; others are told which there are.
import { expect, it } from 'vitest';
import { TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { readField } from '../../renderer/parts/field-text';
import type { Reader } from '../../renderer/parts/reading';

it.each([
  [TANGS, 'sour', 'clear'],
  [TANGS, 'very sour', 'sharp'],
  [TANGS, 'Mild', 'mild'],
  [TANGS, '', null],
  [WHEYS, 'no', 'none'],
  [WHEYS, 'a little', 'a little'],
] as const)('of %j “%s” is %j', (words, typed, value) => {
  expect(readField(words, typed, {} as Reader)).toMatchObject({ ok: true, value });
});

it('what means none of them is told the words', () => {
  expect(readField(TANGS, 'blue', {} as Reader)).toMatchObject({ ok: false, sentence: 'Type one of: none, mild, clear, sharp.' });
}); // prettier-ignore
