// What a random keeper's numbers stand for: days, moments, amounts.
import type { Amount } from '../../core/ledger/basics';

export const START = Date.parse('2026-03-10T12:00:00Z');
const DAY = 86_400_000;
export const day = (n: number): string =>
  new Date(START + (n % 24) * DAY - 16 * DAY).toISOString().slice(0, 10);
export const at = (n: number, hours: number): string =>
  `${new Date(START + (n % 24) * DAY - 16 * DAY + hours * 3_600_000).toISOString().slice(0, 19)}+00:00`;
export const dayAfter = (from: string, days: number): string =>
  new Date(Date.parse(from) + days * DAY).toISOString().slice(0, 10);
export const ml = (value: number): Amount => ({ value, unit: 'mL', typed: null });
export const g = (value: number): Amount => ({ value, unit: 'g', typed: null });
export const pieces = (value: number): Amount => ({ value, unit: 'pieces', typed: null });
export const pick = <T>(list: readonly T[], n: number): T => list[n % list.length] as T;
