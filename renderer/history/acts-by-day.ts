// The diary's entries and the headings of its days. Pure.
import type { Reply } from '../../core/contract';

/** One act as the diary shows it. */
export type Entry = Reply<'history.list'>['acts'][number];

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'] as const; // prettier-ignore

/** "Sunday, 3 May 2026". @param day YYYY-MM-DD */
export function dayHeading(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, date)).getUTCDay()] ?? '';
  return `${weekday}, ${date} ${MONTHS[month - 1] ?? ''} ${year}`;
}

/** What was written on one day stands together, in the order given. @param entries each with its moment */
export function byDay<E extends { readonly at: string }>(
  entries: readonly E[],
): { readonly day: string; readonly entries: readonly E[] }[] {
  const days: { day: string; entries: E[] }[] = [];
  for (const entry of entries) {
    const day = entry.at.slice(0, 10);
    const last = days.at(-1);
    if (last?.day === day) last.entries.push(entry);
    else days.push({ day, entries: [entry] });
  }
  return days;
} // prettier-ignore
