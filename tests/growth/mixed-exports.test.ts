// Exports put together from habits at random: how a day and a clock are written, which columns stand around, what is
// above and below, how figures are marked. Whatever the mixture, what was measured is what is read.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { broughtIn } from '../../core/readings/brought-in';
import type { Around } from '../../core/readings/export-times';
import { readExport } from '../../core/readings/read-export';
import { runs } from '../runs';

interface Read {
  readonly at: number;
  readonly celsius: number;
}
const two = (value: number): string => String(value).padStart(2, '0');
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
interface Clock {
  readonly y: number;
  readonly mo: number;
  readonly d: number;
  readonly h: number;
  readonly mi: number;
}
const civil = (at: number, offset: number): Clock => {
  const d = new Date((at + offset * 60) * 1000);
  return { y: d.getUTCFullYear(), mo: d.getUTCMonth() + 1, d: d.getUTCDate(), h: d.getUTCHours(), mi: d.getUTCMinutes() };
}; // prettier-ignore

/** Ways to write a day, with the order that a keeper's region would tell. */
const DAYS = {
  iso: ['day first', ({ y, mo, d }: Clock) => `${y}-${two(mo)}-${two(d)}`],
  points: ['day first', ({ y, mo, d }: Clock) => `${two(d)}.${two(mo)}.${y}`],
  'short points': ['day first', ({ y, mo, d }: Clock) => `${d}.${mo}.${y % 100}`],
  slashes: ['day first', ({ y, mo, d }: Clock) => `${two(d)}/${two(mo)}/${y}`],
  'US slashes': ['month first', ({ y, mo, d }: Clock) => `${mo}/${d}/${y}`],
  'year first': ['day first', ({ y, mo, d }: Clock) => `${y}/${mo}/${d}`],
  named: ['day first', ({ y, mo, d }: Clock) => `${d} ${MONTHS[mo - 1]} ${y}`],
  hyphens: ['day first', ({ y, mo, d }: Clock) => `${two(d)}-${MONTHS[mo - 1]}-${y}`],
} as const;
const CLOCKS = {
  minutes: ({ h, mi }: Clock) => `${two(h)}:${two(mi)}`,
  seconds: ({ h, mi }: Clock) => `${two(h)}:${two(mi)}:00`,
  'no zero': ({ h, mi }: Clock) => `${h}:${two(mi)}`,
  points: ({ h, mi }: Clock) => `${two(h)}.${two(mi)}`,
  'points and seconds': ({ h, mi }: Clock) => `${two(h)}.${two(mi)}.00`,
  letters: ({ h, mi }: Clock) => `${two(h)}h${two(mi)}`,
  twelve: ({ h, mi }: Clock) => `${h % 12 || 12}:${two(mi)} ${h < 12 ? 'AM' : 'PM'}`,
  'small twelve': ({ h, mi }: Clock) => `${h % 12 || 12}:${two(mi)}:00 ${h < 12 ? 'am' : 'pm'}`,
} as const;
const ABOVE = {
  nothing: [],
  'a title': ['Kitchen probe'],
  'a title and a gap': ['Kitchen probe', ''],
  'keys and values': ['Model: two', 'Interval: 10 min', 'Unit number: 4'],
  comments: ['# exported by the probe', '# all is well'],
} as const;
const BELOW = {
  nothing: [],
  'a gap': ['', ''],
  'an end': ['End of data'],
  'a sum of it': ['', 'Max: 39', 'Min: 20'],
} as const;
const HEAD_T = [
  'Temperature',
  'Temp',
  'Value',
  'Reading',
  'T',
  'Bath',
  'Wasser',
  'CH1',
  'Probe 1',
  'Température',
  '',
];
/** Columns beside: heading, cell. */
const BESIDE = {
  none: null,
  'a running number': ['No.', (i: number) => String(i + 1)],
  battery: ['Battery (%)', (i: number) => String(100 - Math.floor(i / 20))],
  humidity: ['Humidity', (i: number) => String(45 + (i % 4))],
  'humidity in percent': ['RH %', (i: number) => `${(45 + (i % 4)).toFixed(1)}%`],
  state: ['Status', () => 'OK'],
  'an empty column': ['', () => ''],
  target: ['Set', () => '37.5'],
  'dew point': ['Dew point', (i: number) => (11 + (i % 3) / 2).toFixed(1)],
  room: ['Room', (i: number) => (20.5 + (i % 3) / 2).toFixed(1)],
  volts: ['Batt V', (i: number) => (3.1 - i / 1000).toFixed(2)],
  signal: ['RSSI', (i: number) => String(-60 - (i % 5))],
  event: ['Event', (i: number) => (i % 50 === 20 ? 'Button pressed' : '')],
  device: ['Device', () => 'P-204'],
} as const;
/** Without a heading only these can't be taken for the temperature. */
const TOLD_APART: readonly string[] = [
  'none',
  'a running number',
  'state',
  'an empty column',
  'target',
  'event',
  'device',
];
type Key<T> = keyof T & string;
const keys = <T extends object>(of: T): Key<T>[] => Object.keys(of) as Key<T>[];

const habit = fc.record({
  day: fc.constantFrom(...keys(DAYS)),
  clock: fc.constantFrom(...keys(CLOCKS)),
  together: fc.constantFrom('one cell', 'two cells'),
  join: fc.constantFrom(' ', ', ', 'T'),
  delimiter: fc.constantFrom(',', ';', '\t'),
  comma: fc.boolean(),
  scale: fc.constantFrom('C', 'F'),
  unit: fc.constantFrom('heading', 'brackets', 'cell', 'none'),
  title: fc.constantFrom(...HEAD_T),
  above: fc.constantFrom(...keys(ABOVE)),
  below: fc.constantFrom(...keys(BELOW)),
  before: fc.constantFrom(...keys(BESIDE)),
  after: fc.constantFrom(...keys(BESIDE)),
  first: fc.constantFrom('time', 'temperature'),
  newestFirst: fc.boolean(),
  quoted: fc.boolean(),
  ends: fc.constantFrom('\n', '\r\n'),
  mark: fc.boolean(),
  headings: fc.constantFrom('once', 'none', 'again'),
  lost: fc.constantFrom('', '--', 'ERR', 'no signal'),
  start: fc.integer({ min: 0, max: 700 * 144 }),
  every: fc.constantFrom(60, 300, 600, 900),
});
type Habit = typeof habit extends fc.Arbitrary<infer H> ? H : never;

function written(one: Habit, points: readonly Read[], offset: number): string {
  const mark = one.comma && one.delimiter !== ',' ? ',' : '.';
  const cell = (text: string): string =>
    one.quoted || text.includes(one.delimiter) ? `"${text}"` : text;
  const figure = ({ celsius }: Read): string => {
    const value = one.scale === 'C' ? celsius : (celsius * 9) / 5 + 32;
    return value.toFixed(1).replace('.', mark) + (one.unit === 'cell' ? ` °${one.scale}` : '');
  };
  const title = { heading: `${one.title} °${one.scale}`, brackets: `${one.title} (°${one.scale})`, cell: one.title, none: one.title }[one.unit].trim();
  const [, day] = DAYS[one.day];
  const time = (at: number): string[] => {
    const now = civil(at, offset);
    const [d, c] = [day(now), CLOCKS[one.clock](now)];
    return one.together === 'two cells' ? [d, c] : [`${d}${one.day === 'iso' ? one.join : ' '}${c}`];
  };
  const timeHead = one.together === 'two cells' ? ['Date', 'Time'] : ['Date and time'];
  const [before, after] = [BESIDE[one.before], BESIDE[one.after]];
  const line = (t: readonly string[], f: string, i: number | null): string =>
    [
      ...(before ? [i === null ? before[0] : before[1](i)] : []),
      ...(one.first === 'time' ? [...t, f] : [f, ...t]),
      ...(after ? [i === null ? after[0] : after[1](i)] : []),
    ].map(cell).join(one.delimiter);
  const rows = points.map((p, i) => line(time(p.at), figure(p), i));
  const bare = [one.before, one.after].every((beside) => TOLD_APART.includes(beside));
  const head = one.headings === 'none' && bare ? [] : [line(timeHead, title, null)];
  const lost = line(time(points[60]?.at ?? 0), one.lost, 60);
  const body = one.newestFirst ? rows.toReversed() : rows;
  const all = [...ABOVE[one.above], ...head, ...body.slice(0, 60), ...(one.headings === 'again' ? head : []), lost, ...body.slice(60), ...BELOW[one.below]];
  return (one.mark ? '\ufeff' : '') + all.join(one.ends);
} // prettier-ignore

describe('an export of habits at random', () => {
  it('is read as it was measured', () => {
    fc.assert(
      fc.property(habit, (one) => {
        const offset = 60;
        const began = Date.UTC(2025, 0, 1) / 1000 + one.start * 600 - offset * 60;
        const points = Array.from({ length: 140 }, (_, i) => ({
          at: began + i * one.every,
          celsius: Math.round((37.5 - 8 * Math.exp((-i * one.every) / 5000)) * 2) / 2,
        }));
        const given: Around = {
          began, ended: null, beganOffset: offset, endedOffset: null, dates: DAYS[one.day][0],
          offsetAt: () => offset, now: began + 4 * 86_400,
        }; // prettier-ignore
        const told = broughtIn(readExport(written(one, points, offset), 'bath', given), given);
        expect(told.readings.map(({ at, celsius }) => [at.seconds, Number(celsius.toFixed(1))])).toEqual(
          points.map(({ at, celsius }) => [at, celsius]),
        );
        expect(told.gaps).toEqual([]);
      }),
      { numRuns: runs(40) },
    );
  }, 600_000);
});
