// When the keeper is awake, as it is kept among the ledger's own figures: minutes after midnight.
import type { Rows } from '../facts/fact-rows';

export const AWAKE_SETTINGS = { from: 'awake from minutes', to: 'awake to minutes' } as const;
/** Common practice, no source. */
const USUAL = { from: '06:30', to: '22:30' } as const;

export const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
const timeOf = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** Times as 06:30; the usual ones where none were told. */
export function ownAwake(rows: Rows): { from: string; to: string } {
  const kept = new Map([...rows.all('setting')].map(({ name, value }) => [name, value]));
  const of = (which: 'from' | 'to'): string => {
    const minute = kept.get(AWAKE_SETTINGS[which]);
    return typeof minute === 'number' && Number.isInteger(minute) && minute >= 0 && minute < 1440
      ? timeOf(minute)
      : USUAL[which];
  };
  return { from: of('from'), to: of('to') };
}
