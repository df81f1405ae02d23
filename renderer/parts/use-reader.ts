// Reading and writing fields as this keeper prefers, with today and the local offset filled in.
import { useMemo } from 'react';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import type { Amount } from '../../core/ledger/basics';
import type { Preferences } from '../../core/ledger/records';
import { printNoted } from '../../core/quantities/printing';
import { printRange } from '../../core/quantities/day-ranges';
import { printDay } from '../../core/quantities/typed-days';
import { useAppState } from '../state/store';
import { makeReader, type Reader, type Writer } from './reading';

const pad = (n: number): string => String(n).padStart(2, '0');

/** The offset of a local time on this machine: "+01:00". */
function offsetAt(local: string): string {
  const minutes = -new Date(local).getTimezoneOffset();
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${pad(Math.floor(size / 60))}:${pad(size % 60)}`;
}

/** An amount that was worked out, as one would write it: to a hundredth, from 100 on to a tenth. */
const rounded = (value: number): number => Number(value.toFixed(value < 100 ? 2 : 1));

/** As it was typed; a figure whose unit stood elsewhere (at the head of its column) carries it along. */
const typedAmount = ({ typed, value, unit }: Amount): string =>
  typed === null
    ? `${rounded(value)} ${unit}`
    : unit === 'pieces' || /\p{L}/u.test(typed)
      ? typed
      : // "3" below a heading of spoons: what it was worth.
        `${Number(typed.replace(',', '.')) === value ? typed.trim() : rounded(value)} ${unit}`;

/** Stored values as text for a field: as typed, else as one would write it. A correction sends only what was typed over. */
export function makeWriter(preferences: Preferences): Writer {
  return {
    amount: typedAmount,
    noted: (amount) => printNoted(amount, preferences),
    temperature: (temperature) => temperature.typed ?? `${temperature.value} °C`,
    moment: (moment) => `${printDay(moment.slice(0, 10), preferences.dates)} ${moment.slice(11, 16)}`,
    day: (day) => printDay(day, preferences.dates),
    made: ({ madeOn, madeFrom: from, madeTo: to }) =>
      madeOn !== null
        ? printDay(madeOn, preferences.dates)
        : from !== null && to !== null
          ? printRange({ from, to }, preferences.dates)
          : '',
    number: String,
  };
}

/** The open ledger's keeper's preferences. */
export const usePreferences = (): Preferences => useAppState()?.preferences ?? NEUTRAL_PREFERENCES;

/** The reader and writer of the open ledger's keeper. */
export function useReader(): { readonly reader: Reader; readonly writer: Writer; readonly today: string } {
  const state = useAppState();
  const preferences = usePreferences();
  const today = state?.today ?? '1970-01-01';
  return useMemo(
    () => ({ reader: makeReader(preferences, today, offsetAt), writer: makeWriter(preferences), today }),
    [preferences, today],
  );
}
