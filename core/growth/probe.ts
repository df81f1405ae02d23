// A probe's export as text → readings. Knows no maker: finds the rows that hold a time and a temperature, the order of
// day and month from what makes the times run evenly, and says which lines it could not read.
import { isDay } from '../ledger/basics';
import { fromFahrenheit } from '../quantities/quantities';
import type { WarmPoint } from './warm-hours';

export interface ProbeFile {
  /** Civil time of the first reading, "2026-02-10T19:40"; null where no row could be read. */
  readonly startedAt: string | null;
  /** Hours after the first reading; clock changes in between are not known to the file. */
  readonly readings: readonly WarmPoint[];
  readonly unit: '°C' | '°F';
  readonly unitKnown: 'said in the file' | 'assumed from the figures';
  readonly problems: readonly { readonly line: number; readonly sentence: string }[];
}

interface Stamp {
  readonly figures: readonly [number, number, number];
  readonly yearFirst: boolean;
  readonly minutes: number;
}

const STAMP =
  /(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})[T ,;\t]+(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*([ap])?\.?(?:m\b\.?)?/i;

function stampOf(text: string): { stamp: Stamp; rest: string } | null {
  const found = STAMP.exec(text);
  if (!found) return null;
  const [whole, a, b, c, hourText, minuteText, secondText, half] = found;
  let hour = Number(hourText);
  const minute = Number(minuteText);
  if (hour > 23 || minute > 59 || (half && (hour < 1 || hour > 12))) return null;
  if (half) hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return {
    stamp: {
      figures: [Number(a), Number(b), Number(c)],
      yearFirst: (a ?? '').length === 4,
      minutes: hour * 60 + minute + Number(secondText ?? 0) / 60,
    },
    rest: text.slice(found.index + whole.length),
  };
}

const two = (n: number): string => String(n).padStart(2, '0');

/** Minutes since the epoch of a civil time; null where the day does not exist in that order. */
function minutesOf(stamp: Stamp, dayFirst: boolean): number | null {
  const [a, b, c] = stamp.figures;
  const [year, month, date] = stamp.yearFirst ? [a, b, c] : dayFirst ? [c, b, a] : [c, a, b];
  const day = `${year < 100 ? 2000 + year : year}-${two(month)}-${two(date)}`;
  return isDay(day)
    ? Date.UTC(year < 100 ? 2000 + year : year, month - 1, date) / 60_000 + stamp.minutes
    : null;
}

/** First number after the time: a decimal comma is one unless a comma separates the cells. */
function figureOf(rest: string, commaSeparates: boolean): number | null {
  const pattern = commaSeparates ? /[-+]?\d+(?:\.\d+)?/ : /[-+]?\d+(?:[.,]\d+)?/;
  const found = pattern.exec(rest);
  return found ? Number(found[0].replace(',', '.')) : null;
}

/** Span in which the times run, where each order of day and month is possible: the shorter one is meant. */
function spanOf(minutes: readonly (number | null)[]): number {
  const known = minutes.filter((m) => m !== null);
  const impossible = minutes.length - known.length;
  if (known.length === 0) return Number.POSITIVE_INFINITY;
  return Math.max(...known) - Math.min(...known) + impossible * 1e9;
}

/** Reads the text of a probe's export. Never throws: what can't be read is among the problems. */
export function readProbe(text: string): ProbeFile {
  const lines = text.split(/\r\n|\r|\n/);
  const problems: { line: number; sentence: string }[] = [];
  const found: { line: number; stamp: Stamp; figure: number; said: 'C' | 'F' | null }[] = [];
  let saidInHead: 'C' | 'F' | null = null;
  let first = true;
  const separators = lines.filter((line) => STAMP.test(line)).join('\n');
  const commaSeparates = !separators.includes(';') && !separators.includes('\t') && separators.includes(',');
  lines.forEach((line, index) => {
    if (line.trim() === '') return;
    const stamp = stampOf(line);
    if (!stamp) {
      const unit =
        /(?:°|deg(?:rees)?|units?|temp\w*)[^a-z]*\(?\b([CF])\b|\b(celsius|fahrenheit)\b|°\s*([CF])/i.exec(
          line,
        );
      const letter = unit?.[1] ?? unit?.[2] ?? unit?.[3];
      if (letter) saidInHead = letter[0]?.toUpperCase() === 'F' ? 'F' : 'C';
      // Headings before the first reading are no problem; a line among the readings is.
      if (!first)
        problems.push({ line: index + 1, sentence: 'No time and temperature were found in this line.' });
      return;
    }
    first = false;
    const figure = figureOf(stamp.rest, commaSeparates);
    if (figure === null) {
      problems.push({ line: index + 1, sentence: 'There is a time in this line, but no temperature.' });
      return;
    }
    const own = /°?\s*\b([CF])\b/i.exec(stamp.rest)?.[1]?.toUpperCase();
    found.push({
      line: index + 1,
      stamp: stamp.stamp,
      figure,
      said: own === 'C' || own === 'F' ? own : null,
    });
  });
  const dayFirst =
    spanOf(found.map(({ stamp }) => minutesOf(stamp, true))) <
    spanOf(found.map(({ stamp }) => minutesOf(stamp, false)));
  const figures = found.map(({ figure }) => figure).toSorted((a, b) => a - b);
  const middle = figures[Math.floor(figures.length / 2)] ?? 0;
  const said = saidInHead ?? found.find((row) => row.said)?.said ?? null;
  const unit = said ?? (middle > 60 ? 'F' : 'C');
  const timed = found.flatMap(({ line, stamp, figure }) => {
    const minutes = minutesOf(stamp, dayFirst);
    if (minutes === null) {
      problems.push({ line, sentence: 'The date in this line does not exist.' });
      return [];
    }
    return [{ minutes, celsius: unit === 'F' ? fromFahrenheit(figure) : figure }];
  });
  const start = Math.min(...timed.map(({ minutes }) => minutes));
  if (timed.length === 0) {
    problems.push({
      line: 1,
      sentence: 'No readings were found. Each line needs a date, a time and a temperature.',
    });
  }
  return {
    startedAt: timed.length === 0 ? null : new Date(start * 60_000).toISOString().slice(0, 16),
    readings: timed.map(({ minutes, celsius }) => ({ hour: (minutes - start) / 60, celsius })),
    unit: unit === 'F' ? '°F' : '°C',
    unitKnown: said ? 'said in the file' : 'assumed from the figures',
    problems: problems.toSorted((a, b) => a.line - b.line),
  };
}
