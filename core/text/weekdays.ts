// Days of the week as they are written, from Sunday on, as `getUTCDay` counts them.

const SHORT = ['sun|so', 'mon|mo', 'tue|tues|di', 'wed|mi', 'thu|thur|thurs|do', 'fri|fr', 'sat|sa'];
const LONG = [
  'sundays?|sonntags?|dimanche|domingo|domenica|zondag|sondag',
  'mondays?|montags?|lundi|lunes|lunedi|maandag|mandag',
  'tuesdays?|dienstags?|mardi|martes|martedi|dinsdag|tisdag|tirsdag',
  'wednesdays?|mittwochs?|mercredi|miercoles|mercoledi|woensdag|onsdag',
  'thursdays?|donnerstags?|jeudi|jueves|giovedi|donderdag|torsdag',
  'fridays?|freitags?|vendredi|viernes|venerdi|vrijdag|fredag',
  'saturdays?|samstags?|samedi|sabado|sabato|zaterdag|lordag',
];
/** Their names anywhere in a plain text. */
export const WEEKDAYS: readonly RegExp[] = LONG.map((names) => new RegExp(`\\b(?:${names})\\b`));
const AT_BEGINNING = SHORT.map((names) => new RegExp(`^(?:${names})\\b`));
/** The source of an expression that finds any, short or in full. */
export const WEEKDAY = `(?:${[...SHORT, ...LONG].join('|')})`;

/** The day of the week that a plain text begins with or names, from Sunday (0) on. */
export function weekdayOf(said: string): number | null {
  const at = [AT_BEGINNING, WEEKDAYS].map((names) => names.findIndex((name) => name.test(said)));
  return at.find((one) => one >= 0) ?? null;
}

const BEHIND_LAST = new RegExp(
  `\\b((?:since |from |on )?last|on|from|letzte[nrm]?|vom|am) (${SHORT.join('|')})\\b\\.?`,
  'g',
);
/** A plain text with "last mon" as "last monday": by itself so short a word may be anything. */
export const weekdaysInFull = (said: string): string =>
  said.replace(BEHIND_LAST, (_, last: string, short: string) => {
    const day = SHORT.findIndex((names) => new RegExp(`^(?:${names})$`).test(short));
    return `${last} ${LONG[day]?.split('s?|')[0] ?? short}`;
  });

const LAST = new RegExp(String.raw`(?<![\p{L}\p{N}])${WEEKDAY}\.?,?\s*$`, 'iu');
/** What stands before a day, without the day of the week right beside it: "a of Tue " before "14/10/2025". */
export const withoutWeekdayLast = (before: string): string => before.replace(LAST, '');
