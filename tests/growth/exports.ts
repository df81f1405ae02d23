// Invented exports of probes, in the habits that such files have: one run of readings in any dress.

/** A reading: seconds of the civil clock at the place, and °C. */
export interface Point {
  readonly civil: number;
  readonly celsius: number;
}

const two = (value: number): string => String(value).padStart(2, '0');
const SHORT = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const GERMAN = 'Januar Februar März April Mai Juni Juli August September Oktober November Dezember'.split(
  ' ',
);

const partsOf = (civil: number) => {
  const d = new Date(civil * 1000);
  return {
    y: d.getUTCFullYear(), mo: d.getUTCMonth() + 1, d: d.getUTCDate(), h: d.getUTCHours(), mi: d.getUTCMinutes(), s: d.getUTCSeconds(),
  }; // prettier-ignore
};
const clock24 = (civil: number): string => {
  const { h, mi } = partsOf(civil);
  return `${two(h)}:${two(mi)}`;
};
const clock12 = (civil: number, am = ' AM', pm = ' PM'): string => {
  const { h, mi } = partsOf(civil);
  return `${h % 12 || 12}:${two(mi)}${h < 12 ? am : pm}`;
};
const iso = (civil: number): string => new Date(civil * 1000).toISOString().slice(0, 19);
const f = (celsius: number): number => (celsius * 9) / 5 + 32;
const figure = (value: number, mark = '.'): string => value.toFixed(1).replace('.', mark);
const dmy = (civil: number, mark: string): string => {
  const { y, mo, d } = partsOf(civil);
  return [two(d), two(mo), y].join(mark);
};
const mdy = (civil: number, mark = '/'): string => {
  const { y, mo, d } = partsOf(civil);
  return [two(mo), two(d), y].join(mark);
};

/** One habit: what a file looks like. `offset`: minutes that the place is ahead of UTC. */
export type Dress = (points: readonly Point[], offset: number) => string;

const lines = (head: readonly string[], rows: readonly string[], end = '\n'): string => [...head, ...rows].join(end) + end; // prettier-ignore
const of =
  (head: readonly string[], row: (point: Point, i: number, first: number) => string): Dress =>
  (points) =>
    lines(head, points.map((point, i) => row(point, i, points[0]?.civil ?? 0))); // prettier-ignore

export const DRESSES: Readonly<Record<string, Dress>> = {
  'junk heading, a line of units, month first, AM and PM, °F': of(
    ['Probe 3 export', 'units,F', 'time,reading'],
    ({ civil, celsius }) => `${mdy(civil)} ${clock12(civil)},${figure(f(celsius))}`,
  ),
  'ISO, °C': of(['time,T (°C)'], ({ civil, celsius }) => `${iso(civil)},${figure(celsius)}`),
  'semicolons, points, decimal comma': of(['Zeit;Temperatur °C'], ({ civil, celsius }) => `${dmy(civil, '.')} ${clock24(civil)};${figure(celsius, ',')}`),
  'day and time in columns of their own, °F in the heading': of(['No.,Date,Time,Temp(°F),RH(%)'], ({ civil, celsius }, i) => `${i + 1},${mdy(civil)},${clock12(civil)},${figure(f(celsius))},${48 + (i % 9)}`),
  'tabs, no heading': of([], ({ civil, celsius }) => `${dmy(civil, '/')} ${clock24(civil)}\t${figure(celsius)}`),
  'seconds of the epoch': (points, offset) => lines(['timestamp,temperature_c'], points.map(({ civil, celsius }) => `${civil - offset * 60},${figure(celsius)}`)),
  'milliseconds of the epoch, °F by the figures': (points, offset) => lines(['ts;value'], points.map(({ civil, celsius }) => `${(civil - offset * 60) * 1000};${figure(f(celsius))}`)),
  'UTC with a Z': (points, offset) => lines(['at,celsius'], points.map(({ civil, celsius }) => `${iso(civil - offset * 60)}Z,${figure(celsius)}`)),
  'offsets written': (points, offset) => lines(['Timestamp|Water|Battery (V)'], points.map(({ civil, celsius }) => `${iso(civil)}${offset < 0 ? '-' : '+'}${two(Math.abs(offset) / 60)}:00|${figure(celsius)}|2.98`)),
  'figures with their scale beside them': of(['Date/Time,Probe'], ({ civil, celsius }) => `"${SHORT[partsOf(civil).mo - 1]} ${partsOf(civil).d}, ${partsOf(civil).y} ${clock12(civil)}",${figure(f(celsius))}°F`),
  'day numbers of a spreadsheet': of(['When,Degrees C'], ({ civil, celsius }) => `${(civil / 86_400 + 25_569).toFixed(8)},${figure(celsius)}`),
  'newest first': (points) => lines(['time,temp C'], points.map(({ civil, celsius }) => `${iso(civil).replace('T', ' ')},${figure(celsius)}`).toReversed()),
  'quoted, decimal comma between commas': of(['"Datum","Temperatur (°C)"'], ({ civil, celsius }) => `"${dmy(civil, '.')} ${clock24(civil)}","${figure(celsius, ',')}"`),
  'unquoted decimal comma between commas': of(['Datum,Temperatur (°C)'], ({ civil, celsius }) => `${dmy(civil, '.')} ${clock24(civil)},${figure(celsius, ',')}`),
  'held apart by spaces': of(['Date       Time   Temp'], ({ civil, celsius }) => `${iso(civil).slice(0, 10)} ${clock24(civil)}  ${figure(celsius)}`),
  'month by its name, held apart by spaces': of([], ({ civil, celsius }) => `${partsOf(civil).d} ${SHORT[partsOf(civil).mo - 1]} ${partsOf(civil).y} ${clock12(civil)} ${figure(celsius)}`),
  'a German month, points in the clock': of(['Zeitpunkt;Wert'], ({ civil, celsius }) => `${partsOf(civil).d}. ${GERMAN[partsOf(civil).mo - 1]} ${partsOf(civil).y} ${clock24(civil).replace(':', '.')} Uhr;${figure(celsius, ',')} °C`),
  'compact': of(['STAMP,TEMP_F'], ({ civil, celsius }) => `${iso(civil).replaceAll(/[-:]/g, '')},${figure(f(celsius))}`),
  'two probes and the room': of(['Time;Room °C;Bath °C;Jar °C'], ({ civil, celsius }) => `${iso(civil)};21.5;${figure(celsius)};${figure(celsius - 0.7)}`),
  'a day above times without one': (points) => lines(['Logger 7', `Start date: ${iso(points[0]?.civil ?? 0).slice(0, 10)}`, 'Time,Temp (C)'], points.map(({ civil, celsius }) => `${clock24(civil)}:00,${figure(celsius)}`)),
  'minutes since the start': of(['elapsed (min),temperature (°F)'], ({ civil, celsius }, _, first) => `${(civil - first) / 60},${figure(f(celsius))}`),
  'hours, minutes and seconds since the start': of(['Elapsed,Temp °C'], ({ civil, celsius }, _, first) => `${two(Math.floor((civil - first) / 3600))}:${two(((civil - first) / 60) % 60)}:00,${figure(celsius)}`),
  'a.m. and p.m., day first, years of two figures': of(['Fecha,Hora,Temp.'], ({ civil, celsius }) => `${dmy(civil, '/').replace(/20(\d\d)$/, '$1')},${clock12(civil, ' a. m.', ' p. m.')},${figure(celsius)}`),
  'a footer and blank lines, CRLF': (points) => lines(['Sep log', '', 'date,temp [C]'], [...points.map(({ civil, celsius }) => `${iso(civil).replace('T', ' ')},${figure(celsius)}`), '', 'Maximum,39.9', 'End of file'], '\r\n'),
  'a column for the scale': of(['when,value,unit'], ({ civil, celsius }) => `${iso(civil).replace('T', ' ')},${figure(f(celsius))},F`),
  'morning and afternoon in a column of their own': of(['Date,Time,,Reading F'], ({ civil, celsius }) => `${mdy(civil)},${clock12(civil, ', AM', ', PM').replace(/, /, ',')},${figure(f(celsius))}`),
  'kelvin': of(['t,temp (K)'], ({ civil, celsius }) => `${iso(civil)},${(celsius + 273.15).toFixed(2)}`),
  'years first with slashes and a name of the zone': (points, offset) => lines(['Time,Temperature'], points.map(({ civil, celsius }) => `${iso(civil).slice(0, 10).replaceAll('-', '/')} ${clock24(civil)} ${offset === 60 ? 'CET' : 'UTC'},${figure(offset === 60 || offset === 0 ? celsius : celsius)}`)),
  'a clock of twelve hours that says neither morning nor afternoon': of(['date,time,temp'], ({ civil, celsius }) => `${mdy(civil)},${clock12(civil, '', '')},${figure(celsius)}`),
  'points in a clock of its own': of(['Pvm;Klo;C'], ({ civil, celsius }) => `${dmy(civil, '.')};${clock24(civil).replace(':', '.')};${figure(celsius, ',')}`),
  'minutes written with h': of(['Heure;Température (°C)'], ({ civil, celsius }) => `${dmy(civil, '/')} ${clock24(civil).replace(':', 'h')};${figure(celsius, ',')}`),
}; // prettier-ignore
