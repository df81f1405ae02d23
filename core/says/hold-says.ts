// What is said of one hold: how long it goes on, what failed, where its readings settled.
import { storedMoment } from '../ledger/stored-moments';
import { clockWords, lateWords, lengthWords } from './today-says';

interface Times {
  readonly began: string | null;
  /** Nobody noted when it began: it is taken for the moment at which it was recorded. */
  readonly assumed: boolean;
  readonly ended: string | null;
  readonly ends: string | null;
  readonly minutesLeft: number | null;
  readonly runs: boolean;
}

const minutesBetween = (from: string, to: string): number =>
  Math.round((storedMoment(to).seconds - storedMoment(from).seconds) / 60);
const on = (moment: string, now: string): string => {
  const words = clockWords(moment, now);
  return /^\d\d:/.test(words) ? `at ${words}` : words;
};

/** Where nobody noted when it began. */
export const assumedStart = (began: string, now: string): string =>
  `Its start is taken as ${clockWords(began, now)}, when it was recorded: correct it if it began earlier.`;

/** How it stands, large: "24 h 50 min", and the rest of the sentence. */
export function holdTitle(hold: Times, now: string): { readonly title: string; readonly rest: string } {
  const said = stands(hold, now);
  return hold.assumed && hold.began !== null && hold.ended === null
    ? { ...said, rest: `${said.rest} ${assumedStart(hold.began, now)}` }
    : said;
}

function stands(hold: Times, now: string): { readonly title: string; readonly rest: string } {
  const { began, ended, ends, minutesLeft, runs } = hold;
  if (ended !== null)
    return began === null
      ? { title: 'Over', rest: `It ended ${on(ended, now)}. When it began is not noted.` }
      : {
          title: lengthWords(minutesBetween(began, ended)),
          rest: `in warmth, until ${clockWords(ended, now)}.`,
        };
  if (began === null) return { title: 'Not noted', rest: 'When this hold began is not noted.' };
  if (!runs && minutesBetween(began, now) >= 0)
    return { title: 'End not noted', rest: `It began ${on(began, now)}, and nobody noted when it ended.` };
  if (minutesLeft === null)
    return {
      title: lengthWords(Math.max(0, minutesBetween(began, now))),
      rest: 'in warmth so far. When it ends is not noted.',
    };
  if (minutesLeft <= 0)
    return {
      title: 'Take out now',
      rest:
        minutesLeft === 0
          ? 'Its time is over.'
          : `The take-out was due ${lateWords(-minutesLeft)} ago. Look and smell first, taste nothing.`,
    };
  return {
    title: lengthWords(minutesLeft),
    rest: `left. Out ${on(ends ?? now, now)}, into ice water, then the fridge.`,
  };
}

/** "Look now, until 08:00." */
export const lookSays = (hours: number, until: string, late: number, now: string): string =>
  late > 0
    ? `Look now: the look at ${hours} h was due ${lateWords(late)} ago.`
    : `Look now, until ${clockWords(until, now)}.`;

/** What failed, as a heading. */
export const FAILED = {
  power: 'Power cut',
  heater: 'Heater off',
  lid: 'Lid off',
  other: 'Interrupted',
} as const;

/** "Power cut, 2 h, from 07:10." */
export function interruptionSays(
  one: {
    readonly what: keyof typeof FAILED;
    readonly from: string | null;
    readonly to: string | null;
    readonly hours: number | null;
  },
  now: string,
): string {
  const { what, from, to, hours } = one;
  const length =
    from !== null && to !== null
      ? lengthWords(minutesBetween(from, to))
      : hours === null
        ? null
        : lengthWords(Math.round(hours * 60));
  const parts = [length, from === null ? null : `from ${clockWords(from, now)}`];
  const told = [FAILED[what], ...parts.filter((part) => part !== null)].join(', ');
  return length === null && to === null ? `${told}. How long is not noted.` : `${told}.`;
}

/** Where the readings settled, and whether it was ever too warm. @param plannedC °C, null where nobody said */
export function warmthOfHoldSays(
  told: {
    readonly settledAt: number | null;
    readonly minutesToSettle: number | null;
    readonly minutesAbove45: number;
  },
  plannedC: number | null,
): string {
  const { settledAt, minutesToSettle, minutesAbove45 } = told;
  if (minutesAbove45 > 0)
    return `Above 45 °C for ${lengthWords(minutesAbove45)}: some of the culture may be harmed.`;
  if (settledAt === null) return 'Not settled yet, and never too warm.';
  const settled =
    minutesToSettle === null || minutesToSettle < 1
      ? 'Settled'
      : `Settled after ${lateWords(minutesToSettle)}`;
  const off = plannedC === null ? 0 : settledAt - plannedC;
  if (Math.abs(off) < 1) return `${settled}, never too warm.`;
  return `${settled}, but ${Math.abs(off).toFixed(1)} °C ${off < 0 ? 'cooler' : 'warmer'} than planned.`;
}

/** How that was worked out. */
export const warmthOfHoldWhy = (
  told: {
    readonly settledAt: number | null;
    readonly minutesToSettle: number | null;
    readonly minutesAbove45: number;
    readonly warmHours: { readonly low: number; readonly mid: number; readonly high: number } | null;
  },
  probe: string,
  leftOut: number,
): string[] => [
  `By the readings ${probe}.`,
  ...(told.settledAt === null
    ? ['They never stayed within half a degree for an hour.']
    : [
        `They settled at ${told.settledAt.toFixed(1)} °C${told.minutesToSettle === null ? '' : `, ${lengthWords(told.minutesToSettle)} after the start`}: within half a degree for an hour.`,
      ]),
  `Above 45 °C for ${lengthWords(told.minutesAbove45)}, by the probe and not by the jars.`,
  ...(told.warmHours
    ? [
        `Warm hours of the jars: ${told.warmHours.mid.toFixed(1)}, and ${told.warmHours.low.toFixed(1)} to ${told.warmHours.high.toFixed(1)} by all that may be. They never excuse a late look.`,
      ]
    : []),
  ...(leftOut > 0
    ? [
        `${leftOut === 1 ? 'One reading was' : `${leftOut} readings were`} left out: no bath and no jar warms and cools that fast.`,
      ]
    : []),
];

/** A hold in a list: "ran 36 h, until 4 May at 08:00", "24 h 50 min left". */
export function holdInList(hold: Times, now: string): string {
  const { title, rest } = holdTitle(hold, now);
  return `${title} ${rest}`;
}
