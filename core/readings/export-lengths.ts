// Lengths of time in an export: since a start ("0 days 01:20:00", "1d 2h 5m", "PT1H30M"), and between two readings.

const CLOCK = /^(?:(\d+)\s*(?:d|days?|tage?n?|jours?|d[ií]as?|giorni|dagen)[\s,]*|(\d+)\.)(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?$/iu; // prettier-ignore
const LETTERS =
  /^(?:p)?(?:(\d+)\s*(?:d|days?|tage?n?|jours?|d[ií]as?)[\s,]*)?t?(?:(\d+)\s*(?:h|hours?|hrs?|std|stunden?)\.?[\s,]*)?(?:(\d+)\s*(?:m|mins?|minut\w*)\.?[\s,]*)?(?:(\d+)(?:[.,]\d+)?\s*(?:s|secs?|seconds?|sek\w*)\.?)?$/iu;

const inSeconds = ([days, hours, minutes, seconds]: readonly (string | undefined)[]): number =>
  ((Number(days ?? 0) * 24 + Number(hours ?? 0)) * 60 + Number(minutes ?? 0)) * 60 + Number(seconds ?? 0);

/** A length of time with its units, in seconds; null for anything else, also for "19:40", which is a time of day. */
export function readLength(cell: string): number | null {
  const text = cell.trim();
  const clock = CLOCK.exec(text);
  if (clock) return inSeconds([clock[1] ?? clock[2], clock[3], clock[4], clock[5]]);
  const letters = /\d/.test(text) ? LETTERS.exec(text) : null;
  return letters ? inSeconds(letters.slice(1)) : null;
}

const BETWEEN =
  /interval|every|\brate\b|period|takt|cadence|\bpas de\b|frequen|zeitabstand|messabstand|alle\b/iu;
const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^(?:s|secs?|seconds?|sek\w*)$/iu, 1],
  [/^(?:m|mins?|minut\w*)$/iu, 60],
  [/^(?:h|hours?|hrs?|std|stunden?|heures?|horas?|ore)$/iu, 3600],
];

/** Seconds between two readings, where a line above them says so: "Interval: 10 min", "Rate (s): 600", "Takt 00:10:00". */
export function intervalIn(line: string): number | null {
  if (!BETWEEN.test(line)) return null;
  const clock = /(\d{1,2}):(\d{2}):(\d{2})/.exec(line);
  if (clock) return inSeconds([undefined, ...clock.slice(1)]) || null;
  const figure = /(\d+(?:[.,]\d+)?)/.exec(line);
  if (!figure) return null;
  const words = `${line.slice(figure.index + figure[0].length)} ${line.slice(0, figure.index)}`.match(/\p{L}+/gu) ?? []; // prettier-ignore
  const unit = words.flatMap((word) => UNITS.find(([pattern]) => pattern.test(word))?.[1] ?? [])[0];
  return unit === undefined ? null : Number(figure[1]?.replace(',', '.')) * unit || null;
}
