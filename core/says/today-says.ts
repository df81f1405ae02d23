// What the place of today says of a hold that runs, from its figures: what is due, or quietly how it stands.
import { dayLabel } from '../lineage/labels';
import { storedMoment, momentText } from '../ledger/stored-moments';
import type { NextLook } from '../ledger/running';

export interface TodayWords {
  readonly title: string;
  readonly rest: string;
}

const DAY = 86_400;

/** "08:00", "tomorrow at 08:00", "4 May at 08:00", as the clock stands now. */
function clockWords(moment: string, now: string): string {
  const { offset, seconds } = storedMoment(now);
  const local = momentText(storedMoment(moment).seconds, offset);
  const time = local.slice(11, 16);
  const day = local.slice(0, 10);
  const on = (days: number): string => momentText(seconds + days * DAY, offset).slice(0, 10);
  if (day === on(0)) return time;
  if (day === on(1)) return `tomorrow at ${time}`;
  if (day === on(-1)) return `yesterday at ${time}`;
  return `${dayLabel(day, false)} at ${time}`;
}

/** "since an hour", "11 h": how long something has lasted, in whole hours. */
const lasted = (from: string, now: string): string => {
  const hours = Math.floor((storedMoment(now).seconds - storedMoment(from).seconds) / 3600);
  return hours < 1 ? 'less than an hour' : `${hours} h`;
};

/** @param label of the batch that stands in it, @param look what it asks for next, @param ends when it is planned to end */
export function todayWords(
  hold: { readonly label: string; readonly began: string; readonly ends: string | null },
  look: NextLook,
  now: string,
): TodayWords {
  const { label, began, ends } = hold;
  const out = ends === null ? `in warmth for ${lasted(began, now)}` : `out ${clockWords(ends, now)}`;
  if (look.due && look.what === 'early look')
    return { title: `Look at ${label} by ${clockWords(look.by ?? now, now)}.`, rest: `In warmth, ${out}.` };
  if (look.due)
    return { title: `Take ${label} out.`, rest: `It was due ${clockWords(look.by ?? now, now)}.` };
  const next =
    look.what === 'early look' ? `Look from ${clockWords(look.from ?? now, now)}, ${out}.` : `${out.charAt(0).toUpperCase()}${out.slice(1)}.`; // prettier-ignore
  return { title: `${label} is in warmth.`, rest: next };
}
