// A package in words: how much is left of it, and its days. Pure.
import type { Reply } from '../../core/contract';
import type { Preferences } from '../../core/ledger/records';
import { printAmount, printPrice } from '../../core/quantities/quantities';
import { pricePerUnit } from './source-text';

export type Bought = Reply<'package.list'>['packages'][number];

/** "22 of 45 left", "36 g left"; null where its size or what was taken is not known. */
export function leftWords({ size, left }: Bought, preferences: Preferences): string | null {
  if (size === null || left === null) return null;
  if (left === 0) return 'used up';
  return size.unit === 'pieces'
    ? `${left} of ${size.value} left`
    : `${printAmount({ ...size, value: left, typed: null }, preferences)} left`;
}

/** "opened 19 Oct 2025 · best before 31 Dec 2026". */
export const dayWords = (one: Bought, day: (text: string) => string): string =>
  [
    one.boughtOn ? `bought ${day(one.boughtOn)}` : null,
    one.openedOn ? `opened ${day(one.openedOn)}` : 'opened: not noted',
    one.bestBefore ? `best before ${day(one.bestBefore)}` : null,
  ]
    .filter(Boolean)
    .join(' · ');

/** "18.50 GBP, 0.41 GBP a piece". */
export const priceWords = (one: Bought): string =>
  one.price === null
    ? 'price not noted'
    : [printPrice(one.price), pricePerUnit(one)].filter((words) => words !== null).join(', ');
