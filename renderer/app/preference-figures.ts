// Figures of the preferences, as typed: a limit in whole numbers, and how many hours a jar lags behind its bath. Pure.
import { DEFAULT_TIME_CONSTANT } from '../../core/growth/jar-temperature';
import { Preferences } from '../../core/ledger/records';
import { parseHours } from '../../core/quantities/quantities';

/** How a figure is read and what is said of it. */
export interface FigureWords {
  /** Null where it is left empty; undefined where it can't be read. */
  readonly read: (text: string) => number | null | undefined;
  readonly problem: string;
  /** Shown in the field while it is empty: what then holds. */
  readonly empty: string;
}

/** A limit from 1 to `most`; empty is no limit. */
export const limitUpTo = (most: number): FigureWords => ({
  read: (text) => {
    if (text.trim() === '') return null;
    const number = Number(text);
    return /^\s*\d+\s*$/.test(text) && number >= 1 && number <= most ? number : undefined;
  },
  problem: `Type a whole number from 1 to ${most}, or leave it empty for no limit.`,
  empty: 'no limit',
});

/** Days from 1 to 3650; empty is what is usual. */
export const USUAL_DAYS: FigureWords = {
  ...limitUpTo(3650),
  problem: 'Type a whole number from 1 to 3650, or leave it empty for what is usual.',
  empty: 'as usual',
};

const { low, middle, high } = DEFAULT_TIME_CONSTANT;

/** Hours by which a jar lags behind what a probe outside it reads (its time constant): "1.5", "1 h 30", "45 min". */
export const JAR_LAG: FigureWords & { readonly hint: string } = {
  read: (text) => {
    if (text.trim() === '') return null;
    const typed = parseHours(text);
    if (!typed.ok) return undefined;
    const hours = Math.round(typed.hours * 100) / 100;
    return Preferences.shape.jarFollowsHours.safeParse(hours).success ? hours : undefined;
  },
  problem: 'Type hours from 0.05 to 24, such as “1.5” or “45 min”, or leave it empty.',
  empty: 'measured, or usual',
  hint: `After this many hours a jar has come about two thirds (63 %) of the way to the warmth of its bath. Left empty, the program measures it wherever one probe stood in a bath and another in a jar in it at the same time; with no such readings it is taken to be ${middle}\u00a0h, and anything from ${low} to ${high}\u00a0h possible.`,
};
