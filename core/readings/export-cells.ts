// Cells of a probe's export: which of them tell a time of day, a day, a figure. Knows no maker and no heading.
import { dayIn, findDay, type DayOrder, type FoundDay, type ReadDay } from '../text/days';
import { tidy } from '../quantities/quantities';

/** A time of day as written. */
export interface ReadClock {
  /** Seconds after midnight; of an elapsed time after the start. */
  readonly seconds: number;
  /** Morning or afternoon was written, or the hour can only be of 24. */
  readonly sure: boolean;
  readonly hasSeconds: boolean;
}

/** What a text tells of a time, and nothing else: no figure is left over in it. */
export interface ReadStamp {
  readonly day: FoundDay | null;
  readonly clock: ReadClock | null;
  /** Minutes ahead of UTC, where the text says so. */
  readonly offset: number | null;
}

/** Zones that exports name by letters; each is one offset (from memory). */
const ZONES: Readonly<Record<string, number>> = {
  z: 0, utc: 0, gmt: 0, wet: 0, west: 60, bst: 60, cet: 60, cest: 120, mez: 60, mesz: 120, eet: 120, eest: 180,
  est: -300, edt: -240, cst: -360, cdt: -300, mst: -420, mdt: -360, pst: -480, pdt: -420,
}; // prettier-ignore

const HALF = String.raw`(?:([ap])\.?\s?(?:m\.?)?(?![\p{L}\d]))?`;
const COLON = new RegExp(
  String.raw`(?<!\d)(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?(?!\d)\s*${HALF}`,
  'giu',
);
const LETTER = new RegExp(
  String.raw`(?<!\d)(\d{1,2})\s?h(?:\s?(\d{2})(?:\s?m(?:in)?\.?(?:\s?(\d{2})\s?s)?)?)?(?![\p{L}\d])()`,
  'giu',
);
const WHOLE_HOUR = /(?<!\d)(\d{1,2})()()\s*([ap])\.?\s?m\.?(?![\p{L}\d])/giu;
/** Not the end of a day: in "30.9.25 14.30" the clock stands last. */
const POINTS = new RegExp(String.raw`(?<![\d.])(\d{1,2})\.(\d{2})(?:\.(\d{2}))?(?![\d.])\s*${HALF}`, 'giu');
const SOLID = /(?<!\d)((?:19|20)\d{6})[T _-]?(\d{2})(\d{2})(\d{2})?(?!\d)/;
const OFFSET =
  /^\s*(?:(?:utc|gmt)\s?)?([+-])(\d{2}):?(\d{2})?(?![\d.,:])|^\s*(?:utc|gmt)([+-])(\d{1,2})(?!\d)/i;
const NAMED_ZONE = /^\s*\(?([a-z]{1,4})\)?(?![a-z])/i;
/** Morning and afternoon before the time, as some clocks write them. */
const HALF_BEFORE: readonly (readonly [RegExp, string])[] = [
  [/(?:上午|午前|오전)\s*/g, 'a'],
  [/(?:下午|午後|오후)\s*/g, 'p'],
];

function clockOf(match: RegExpExecArray): ReadClock | null {
  const [hour, minute, second] = [match[1], match[2] || '0', match[3] || '0'].map(Number) as [number, number, number];
  if (minute > 59 || second > 60) return null;
  const half = hour <= 12 ? match[4]?.toLowerCase() : undefined;
  if (half && hour < 1) return null;
  const hours = half ? (hour % 12) + (half === 'p' ? 12 : 0) : hour;
  return {
    seconds: hours * 3600 + minute * 60 + second,
    sure: half !== undefined || hour > 12 || hour === 0,
    hasSeconds: Boolean(match[3]),
  };
} // prettier-ignore

function offsetIn(after: string): { offset: number; length: number } | null {
  const told = OFFSET.exec(after);
  if (told) {
    const minutes = Number(told[2] ?? told[5]) * 60 + Number(told[3] ?? 0);
    return { offset: (told[1] ?? told[4]) === '-' ? -minutes : minutes, length: told[0].length };
  }
  const named = NAMED_ZONE.exec(after);
  const offset = ZONES[named?.[1]?.toLowerCase() ?? ''];
  return named && offset !== undefined ? { offset, length: named[0].length } : null;
}

const ZONE_SAID = /(?:utc|gmt)\s?([-+−])\s?(\d{1,2})(?::?(\d{2}))?(?!\d)/iu;
const ZONE_LINE =
  /\b(?:time ?zone|zeitzone|fuseau|tz|zona horaria|fuso)\b\W*([-+−]?)\s?(\d{1,2}):?(\d{2})(?!\d)/iu;
const ZONE_ALONE =
  /(?:^|[\s([,;])(utc|gmt|z|wet|west|bst|cet|cest|mez|mesz|eet|eest|est|edt|cst|cdt|mst|mdt|pst|pdt)(?=$|[\s)\],;.])/iu;

/** Minutes ahead of UTC that a heading or a line above the readings names: "Date Time, GMT+01:00", "Zeit (MEZ)"; else null. */
export function zoneIn(text: string): number | null {
  const told = ZONE_SAID.exec(text) ?? ZONE_LINE.exec(text);
  if (told) {
    const minutes = Number(told[2]) * 60 + Number(told[3] ?? 0);
    return told[1] === '-' || told[1] === '−' ? -minutes : minutes;
  }
  const name = ZONE_ALONE.exec(text)?.[1]?.toLowerCase();
  return name === undefined ? null : (ZONES[name] ?? null);
}

const days = new Map<string, FoundDay | null>();
/** The same day stands in hundreds of rows. */
function dayOf(text: string): FoundDay | null {
  const known = days.get(text);
  if (known !== undefined) return known;
  if (days.size > 500) days.clear();
  const found = findDay(text);
  days.set(text, found);
  return found;
}

/** Year to second held apart by one mark throughout, as names of files are: "2026-02-10-19-40-00". */
const ONE_MARK = /^(\d{4})[-_.](\d{2})[-_.](\d{2})[-_.](\d{2})[-_.:](\d{2})(?:[-_.:](\d{2}))?/;

const plainText = (text: string): string => {
  const half = HALF_BEFORE.find(([pattern]) => pattern.test(text));
  const moved = half ? `${text.replace(half[0], ' ')} ${half[1]}m` : text;
  const plain = tidy(moved.replace(/[年月]/g, '-').replace(/日/g, ' ')).replace(/^'(?=\d)/, '');
  return plain.replace(
    ONE_MARK,
    (...[, y, mo, d, h, mi, sec]) => `${y}-${mo}-${d} ${h}:${mi}:${sec ?? '00'}`,
  );
};

/** Reads a text that tells a day, a time of day, or both; null where it tells neither, or something besides. */
export function readStamp(raw: string): ReadStamp | null {
  if (!/\d/.test(raw)) return null;
  const text = plainText(raw);
  const solid = SOLID.exec(text);
  if (solid) {
    const clock = clockOf(/(\d\d)(\d\d)(\d\d)?()/.exec(`${solid[2]}${solid[3]}${solid[4] ?? ''}`) as RegExpExecArray); // prettier-ignore
    const rest = text.slice(solid.index + solid[0].length);
    const zone = offsetIn(rest);
    const left = `${text.slice(0, solid.index)} ${rest.slice(zone?.length ?? 0)}`;
    const day = dayOf(solid[1] ?? '');
    return clock && day && !/\d/.test(left) ? { day, clock, offset: zone?.offset ?? null } : null;
  }
  for (const pattern of [COLON, LETTER, WHOLE_HOUR, POINTS]) {
    const found = [...text.matchAll(pattern)];
    for (const match of pattern === POINTS ? found.toReversed() : found) {
      const clock = clockOf(match);
      if (!clock) continue;
      const after = text.slice(match.index + match[0].length);
      const zone = offsetIn(after);
      const left =
        `${text.slice(0, match.index).replace(/[T:]$/, '')} ${after.slice(zone?.length ?? 0)}`.trim();
      const day = /\d/.test(left) ? dayOf(left) : null;
      const over = day ? `${tidy(left).slice(0, day.start)}${tidy(left).slice(day.end)}` : left;
      if (/\d/.test(over)) continue;
      if (day && clock.seconds >= 86_400) return null;
      return { day, clock, offset: zone?.offset ?? null };
    }
  }
  const day = dayOf(text);
  return day && !/\d/.test(`${text.slice(0, day.start)}${text.slice(day.end)}`)
    ? { day, clock: null, offset: null }
    : null;
}

/** A found day in an order, with the year that is meant where none is written. */
export function dayNumber(found: FoundDay, order: DayOrder, year: number): number | null {
  const day: ReadDay | null = dayIn(found, order);
  return day && Date.UTC(day.year ?? year, day.month - 1, day.day) / 86_400_000;
}

export type Letter = 'C' | 'F' | 'K';
export interface ReadFigure {
  readonly value: number;
  readonly unit: Letter | null;
}

const FIGURE =
  /^\+?(-?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*(?:°|\*|deg(?:rees?|\.)?|grad)?\s*(c(?:elsius)?|f(?:ahrenheit)?|k(?:elvin)?)?\.?$/iu;

/** A cell that is a figure, with its scale where one stands beside it; null where it is anything else. */
export function readFigure(cell: string): ReadFigure | null {
  const found = FIGURE.exec(tidy(cell.replace(/[Â\ufffd]/g, '')));
  if (!found) return null;
  const unit = found[2]?.[0]?.toUpperCase() as Letter | undefined;
  return { value: Number((found[1] ?? '').replace(',', '.')), unit: unit ?? null };
}

const UNIT = new RegExp(
  [
    /(celsius|centigrade|fahrenheit|kelvin)/,
    /(?:°|deg(?:rees?)?\.?\s?|[([_/,;:=-]\s?|\b(?:units?|in|temp(?:erature)?|scale|skala|einheit)\W*)([cfk])(?![\p{L}\d])/u,
    /^\W*([cfk])\W*$/,
  ]
    .map(({ source }) => source)
    .join('|'),
  'giu',
);

/** The scale that a heading or a line before the readings names; null where it names none, or more than one. */
export function unitIn(text: string): Letter | null {
  const letters = new Set(
    [...tidy(text.replace(/[Â\ufffd]/g, '')).matchAll(UNIT)].map((match) =>
      (match[1] ?? match[2] ?? match[3] ?? '')[0]?.toUpperCase(),
    ),
  );
  const [letter] = letters;
  return letters.size === 1 ? (letter as Letter) : null;
}
