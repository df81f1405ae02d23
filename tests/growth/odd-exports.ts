// More invented exports of probes, each a habit of its own, with what must be read from it written down beside it.
import type { Around } from '../../core/readings/export-times';

/* Each row of the table is a habit: a row is a row. */
interface Read {
  /** Seconds since 1970. */
  readonly at: number;
  readonly celsius: number;
}
export interface OddExport {
  readonly text: string;
  readonly around: Around;
  readonly points: readonly Read[];
  readonly where?: 'air' | 'bath' | 'jar';
}

const BEGAN = Date.parse('2026-02-10T19:40:00+01:00') / 1000;
const around: Around = {
  began: BEGAN, ended: null, beganOffset: 60, endedOffset: null, dates: 'day first', offsetAt: () => 60, now: BEGAN + 2 * 86_400,
}; // prettier-ignore

/** A night and a day, a reading every ten minutes, in half degrees: the same in both scales. */
const points: readonly Read[] = Array.from({ length: 145 }, (_, i) => ({
  at: BEGAN + i * 600,
  celsius: Math.round((37.5 - 8 * Math.exp(-i / 8)) * 2) / 2,
}));
const two = (value: number): string => String(value).padStart(2, '0');
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
/** Parts of the civil clock at the place. */
const parts = (at: number, offset = 60) => {
  const d = new Date((at + offset * 60) * 1000);
  return {
    y: d.getUTCFullYear(),
    mo: d.getUTCMonth() + 1,
    d: d.getUTCDate(),
    h: d.getUTCHours(),
    mi: d.getUTCMinutes(),
    wd: 'Sun Mon Tue Wed Thu Fri Sat'.split(' ')[d.getUTCDay()],
  };
};
const day = (at: number, mark = '.'): string => {
  const p = parts(at);
  return [two(p.d), two(p.mo), p.y].join(mark);
};
const isoDay = (at: number): string => {
  const p = parts(at);
  return `${p.y}-${two(p.mo)}-${two(p.d)}`;
};
const clock = (at: number, mark = ':'): string => {
  const p = parts(at);
  return `${two(p.h)}${mark}${two(p.mi)}`;
};
const twelve = (at: number): string => {
  const p = parts(at);
  return `${p.h % 12 || 12}:${two(p.mi)}`;
};
const half = (at: number): string => (parts(at).h < 12 ? 'AM' : 'PM');
const c = (value: number, mark = '.'): string => value.toFixed(1).replace('.', mark);
const f = (value: number, mark = '.'): string => ((value * 9) / 5 + 32).toFixed(1).replace('.', mark);
const file = (
  head: readonly string[],
  row: (p: Read, i: number) => string | string[],
  tail: readonly string[] = [],
): string => [...head, ...points.flatMap((p, i) => row(p, i)), ...tail].join('\n');
const of = (text: string, more: Partial<OddExport> = {}): OddExport => ({ text, around, points, ...more });
const since = (p: Read): number => p.at - BEGAN;

export const ODD: Readonly<Record<string, OddExport>> = {
  'a ctime stamp': of(
    file(['stamp\ttemp'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.wd} ${MONTHS[p.mo - 1]} ${p.d} ${clock(at)}:00 ${p.y}\t${c(celsius)}`;
    }),
  ),
  'RFC 2822 with its offset': of(
    file(['Date;Value'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.wd}, ${p.d} ${MONTHS[p.mo - 1]} ${p.y} ${clock(at)}:00 +0100;${c(celsius)}`;
    }),
  ),
  'the long name of a zone behind': of(
    file(['When;Value'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.wd} ${MONTHS[p.mo - 1]} ${two(p.d)} ${p.y} ${clock(at)}:00 GMT+0100 (Central European Standard Time);${c(celsius)}`;
    }),
  ),
  'as a server logs': of(
    file([], ({ at, celsius }) => {
      const p = parts(at);
      return `[${two(p.d)}/${MONTHS[p.mo - 1]}/${p.y}:${clock(at)}:00 +0100] temp=${c(celsius)}C`;
    }),
  ),
  'day-Mon-yy': of(
    file(['Date,Time,Probe F'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.d}-${MONTHS[p.mo - 1]}-26,${clock(at)},${f(celsius)}`;
    }),
  ),
  'solid day and solid clock': of(
    file(
      ['DATE;TIME;T'],
      ({ at, celsius }) => `${isoDay(at).replaceAll('-', '')};${clock(at, '')};${c(celsius, ',')}`,
    ),
  ),
  'solid day and solid clock with seconds': of(
    file(
      ['DATE,TIME,T(C)'],
      ({ at, celsius }) => `${isoDay(at).replaceAll('-', '')},${clock(at, '')}00,${c(celsius)}`,
    ),
  ),
  'fractions of a second': of(
    file(['t,v'], ({ at, celsius }) => `${isoDay(at)}T${clock(at)}:00.000,${c(celsius)}`),
  ),
  'seconds of the epoch with fractions': of(
    file(['time,degC'], ({ at, celsius }) => `${at}.00,${c(celsius)}`),
  ),
  'nanoseconds of the epoch': of(
    file(['name,time,value'], ({ at, celsius }) => `probe,${at}000000000,${c(celsius)}`),
  ),
  'zone in the heading': of(
    file(
      ['"#","Date Time, GMT+00:00","Temp, °F"'],
      ({ at, celsius }, i) => `${i + 1},${isoDay(at - 3600)} ${clock(at - 3600)},${f(celsius)}`,
    ),
  ),
  'UTC in the heading': of(
    file(
      ['Timestamp (UTC);Temp'],
      ({ at, celsius }) => `${day(at - 3600)} ${clock(at - 3600)};${c(celsius, ',')}`,
    ),
  ),
  'zone above': of(
    file(
      ['Device: 7', 'Time zone: UTC-05:00', 'Time,Reading (F)'],
      ({ at, celsius }) => `${isoDay(at - 6 * 3600)} ${clock(at - 6 * 3600)},${f(celsius)}`,
    ),
  ),
  'day written only where it changes': of(
    file(
      ['Day;Time;Temp °C'],
      ({ at, celsius }, i) =>
        `${i === 0 || clock(at) === '00:00' ? day(at) : ''};${clock(at)};${c(celsius, ',')}`,
    ),
  ),
  'two sensors in rows by turns': of(
    file(['time,sensor,temperature'], ({ at, celsius }) => [
      `${isoDay(at)} ${clock(at)},room,21.5`,
      `${isoDay(at)} ${clock(at)},bath,${c(celsius)}`,
    ]),
  ),
  'two sensors in rows, seconds apart': of(
    file(['time;channel;value'], ({ at, celsius }) => [
      `${isoDay(at)} ${clock(at)}:00;Bath water;${c(celsius)}`,
      `${isoDay(at)} ${clock(at)}:07;Cupboard air;22.0`,
    ]),
  ),
  'what was measured stands in a column': of(
    file(['when,what,value,unit'], ({ at, celsius }, i) => [
      `${isoDay(at)} ${clock(at)},temperature,${f(celsius)},°F`,
      `${isoDay(at)} ${clock(at)},humidity,${48 + (i % 5)},%`,
    ]),
  ),
  'two sensors one below the other': of(
    [
      'Sensor: cupboard air',
      'Time,°C',
      ...points.map(({ at }) => `${isoDay(at)} ${clock(at)},21.0`),
      '',
      'Sensor: bath',
      'Time,°C',
      ...points.map(({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)}`),
    ].join('\n'),
  ),
  'each sensor with a time of its own': of(
    file(
      ['Time A;Air;Time B;Bath'],
      ({ at, celsius }) => `${isoDay(at)} ${clock(at)}:03;21.0;${isoDay(at)} ${clock(at)}:00;${c(celsius)}`,
    ),
  ),
  'both scales in columns': of(
    file(
      ['Time,Temp F,Temp C'],
      ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${f(celsius)},${c(celsius)}`,
    ),
  ),
  'ten lines above': of(
    file(
      [
        'Logger export',
        'Serial;0001',
        'Started;10.02.2026 19:40',
        'Stopped;11.02.2026 19:40',
        'Interval;10 min',
        'High alarm;45,0 °C',
        'Low alarm;30,0 °C',
        'Samples;145',
        'Calibrated;01.01.2026 09:00;37,0',
        '',
        'Nr.;Datum;Uhrzeit;Messwert',
      ],
      ({ at, celsius }, i) => `${i + 1};${day(at)};${clock(at)}:00;${c(celsius, ',')}`,
    ),
  ),
  'every cell quoted, semicolons': of(
    file(
      ['"Datum";"Uhrzeit";"Temp. [°C]"'],
      ({ at, celsius }) => `"${day(at)}";"${clock(at)}";"${c(celsius, ',')}"`,
    ),
  ),
  'ordinal sign for degree': of(
    file(
      ['Fecha y hora;Temperatura (ºC)'],
      ({ at, celsius }) => `${day(at, '/')} ${clock(at)};${c(celsius, ',')}`,
    ),
  ),
  'one sign for degrees C beside figures': of(
    file(['日時,温度'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.y}年${p.mo}月${p.d}日 ${clock(at)},${c(celsius)}℃`;
    }),
  ),
  'one sign for degrees F in the heading': of(
    file(['Time,Value ℉'], ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${f(celsius)}`),
  ),
  'a French month': of(
    file(['Date et heure;Température'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.d} févr. ${p.y} à ${clock(at)};${c(celsius, ',')}`;
    }),
  ),
  'Polish headings': of(
    file(['Data;Godzina;Temperatura'], ({ at, celsius }) => `${day(at)};${clock(at)};${c(celsius, ',')}`),
  ),
  'Dutch headings, hyphens': of(
    file(['Datum;Tijd;Temperatuur'], ({ at, celsius }) => `${day(at, '-')};${clock(at)};${c(celsius, ',')}`),
  ),
  'no leading zeros, year of two figures': of(
    file(['d;t'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.d}.${p.mo}.26 ${p.h}:${two(p.mi)};${c(celsius, ',')}`;
    }),
  ),
  'morning and afternoon behind a thin space': of(
    file(['Time,Temp'], ({ at, celsius }) => {
      const p = parts(at);
      return `"${p.mo}/${p.d}/26, ${twelve(at)}\u202f${half(at)}",${f(celsius)}`;
    }),
    { around: { ...around, dates: 'month first' } },
  ),
  'morning and afternoon before': of(
    file(['Time,Temp'], ({ at, celsius }) => `${isoDay(at)} ${half(at)} ${twelve(at)},${c(celsius)}`),
  ),
  'a table of bars': of(
    file(
      ['| time | temp (°C) |', '|------|------|'],
      ({ at, celsius }) => `| ${isoDay(at)} ${clock(at)} | ${c(celsius)} |`,
    ),
  ),
  'typed by hand with dashes': of(
    file(['Tue evening, bath'], ({ at, celsius }) => `${clock(at)} - ${c(celsius)}`),
  ),
  'typed by hand with equals signs': of(
    file([], ({ at, celsius }) => `${day(at)} ${clock(at)} = ${c(celsius)} °C`),
  ),
  'elapsed in days and a clock': of(
    file(
      ['elapsed,value'],
      (p) =>
        `${Math.floor(since(p) / 86400)} days ${two(Math.floor((since(p) % 86400) / 3600))}:${two((since(p) % 3600) / 60)}:00,${c(p.celsius)}`,
    ),
  ),
  'elapsed in days, hours and minutes by letters': of(
    file(
      ['run time;temp'],
      (p) =>
        `${Math.floor(since(p) / 86400)}d ${Math.floor((since(p) % 86400) / 3600)}h ${(since(p) % 3600) / 60}m;${c(p.celsius)}`,
    ),
  ),
  'elapsed hours with a decimal comma': of(
    file(
      ['Zeit [h];Temp [°C]'],
      (p) => `${(since(p) / 3600).toFixed(4).replace('.', ',')};${c(p.celsius, ',')}`,
    ),
  ),
  'elapsed seconds': of(file(['Time (s),Ch1 (C)'], (p) => `${since(p)},${c(p.celsius)}`)),
  'elapsed hours and minutes past a day': of(
    file(
      ['Laufzeit;°C'],
      (p) => `${Math.floor(since(p) / 3600)}:${two((since(p) % 3600) / 60)};${c(p.celsius, ',')}`,
    ),
  ),
  'elapsed without a heading': of(
    file([], (p) => `${two(Math.floor(since(p) / 3600))}:${two((since(p) % 3600) / 60)}:00,${c(p.celsius)}`),
  ),
  'elapsed minutes, the start above': of(
    file(['Start: 10.02.2026 19:40', 'min;°C'], (p) => `${since(p) / 60};${c(p.celsius, ',')}`),
    { around: { ...around, began: null } },
  ),
  'numbers of samples and an interval': of(
    file(
      ['Start: 2026-02-10 19:40', 'Interval: 10 min', 'Sample,Temp (F)'],
      (p, i) => `${i + 1},${f(p.celsius)}`,
    ),
  ),
  'an interval of seconds, no number': of(
    file(['Logging interval (s): 600', 'Started 10/02/2026 19:40:00', 'Temperature'], (p) => c(p.celsius)),
  ),
  'day numbers with a decimal comma': of(
    file(
      ['Zeit;Wert'],
      ({ at, celsius }) => `${((at + 3600) / 86400 + 25569).toFixed(6).replace('.', ',')};${c(celsius, ',')}`,
    ),
  ),
  'a probe that lost contact': of(
    file(
      ['time,temp'],
      ({ at, celsius }, i) =>
        `${isoDay(at)} ${clock(at)},${i === 40 || i === 41 ? '-127.0' : i === 70 ? 'NaN' : i === 90 ? '85.0' : c(celsius)}`,
    ),
    { points: points.filter((_, i) => ![40, 41, 70, 90].includes(i)) },
  ),
  'a year before the seconds, all by tabs, plus sign': of(
    file(['year\tmonth\tday\thour\tminute\ttemp'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.y}\t${p.mo}\t${p.d}\t${p.h}\t${p.mi}\t+${c(celsius)}`;
    }),
  ),
  'humidity first, temperature second, then dew point': of(
    file(
      ['Zeitstempel;Luftfeuchte;Temperatur;Taupunkt'],
      ({ at, celsius }, i) =>
        `${day(at)} ${clock(at)};${(60 + (i % 7)).toFixed(1).replace('.', ',')};${c(celsius, ',')};${c(18.5, ',')}`,
    ),
  ),
  'set temperature beside it': of(
    file(['time,set,actual'], ({ at, celsius }) => `${isoDay(at)} ${clock(at)},38.0,${c(celsius)}`),
  ),
  'an apostrophe before times': of(
    file(['time;temp'], ({ at, celsius }) => `'${day(at)} ${clock(at)};${c(celsius, ',')}`),
  ),
  'units in a row of their own below the headings': of(
    file(
      ['Date,Time,Temp', 'dd/mm/yyyy,hh:mm,°F'],
      ({ at, celsius }) => `${day(at, '/')},${clock(at)},${f(celsius)}`,
    ),
  ),
  'words for morning and evening': of(
    file(
      ['Ημερομηνία;Ώρα;Θερμοκρασία'],
      ({ at, celsius }) =>
        `${day(at, '/')};${twelve(at)} ${parts(at).h < 12 ? 'π.μ.' : 'μ.μ.'};${c(celsius, ',')}`,
    ),
  ),
  'Russian headings': of(
    file(['Дата;Время;Температура, °C'], ({ at, celsius }) => `${day(at)};${clock(at)};${c(celsius, ',')}`),
  ),
  'newest first without a day': of(
    ['time,temp', ...points.toReversed().map(({ at, celsius }) => `${clock(at)},${c(celsius)}`)].join('\n'),
    { points: points },
  ),

  'two sensors beside each other, numbered': of(
    file(['Date;Time;Ch1;Ch2'], ({ at, celsius }) => `${day(at)};${clock(at)};21,3;${c(celsius, ',')}`),
  ),
  'three numbered in rows': of(
    file(['Date,Time,Ch,Temp'], ({ at, celsius }) =>
      [1, 2, 3].map((ch) => `${day(at, '/')},${clock(at)},${ch},${ch === 2 ? c(celsius) : 20 + ch}`),
    ),
  ),
  'a state beside it, by turns': of(
    file(
      ['time,temp,heater'],
      ({ at, celsius }, i) => `${isoDay(at)} ${clock(at)},${c(celsius)},${i % 2 ? 'ON' : 'OFF'}`,
    ),
  ),
  'an alarm now and then': of(
    file(
      ['time;temp;alarm'],
      ({ at, celsius }, i) => `${day(at)} ${clock(at)};${c(celsius, ',')};${i % 9 === 0 ? 'LOW' : 'OK'}`,
    ),
  ),
  'a weekday in a column': of(
    file(
      ['Tag;Datum;Uhrzeit;Temp'],
      ({ at, celsius }) =>
        `${['So', 'Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa'][new Date((at + 3600) * 1000).getUTCDay()]};${day(at)};${clock(at)};${c(celsius, ',')}`,
    ),
  ),
  'parts for two days below each other': of(
    [
      `10.02.2026`,
      'Zeit;Temp',
      ...points.slice(0, 26).map(({ at, celsius }) => `${clock(at)};${c(celsius, ',')}`),
      '',
      '11.02.2026',
      'Zeit;Temp',
      ...points.slice(26).map(({ at, celsius }) => `${clock(at)};${c(celsius, ',')}`),
    ].join('\n'),
  ),
  'a break in the middle with lines of its own': of(
    [
      'time,temp',
      ...points.slice(0, 60).map(({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)}`),
      '--- download ---',
      'time,temp',
      ...points.slice(60).map(({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)}`),
    ].join('\n'),
  ),
  'min mean max of each ten minutes': of(
    file(
      ['Time,Min,Mean,Max'],
      ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius - 0.2)},${c(celsius)},${c(celsius + 0.2)}`,
    ),
  ),
  'Celsius in a heading, Kelvin beside': of(
    file(
      ['t;T/K;T/°C'],
      ({ at, celsius }) => `${isoDay(at)}T${clock(at)};${(celsius + 273.15).toFixed(2)};${c(celsius)}`,
    ),
  ),
  'a unit in each cell, with a blank and a comma': of(
    file(['Zeitpunkt;Bad'], ({ at, celsius }) => `${day(at)}, ${clock(at)} Uhr;${c(celsius, ',')} Grad C`),
  ),
  'degrees Fahrenheit spelt out': of(
    file(
      ['When;How warm'],
      ({ at, celsius }) => `${isoDay(at)} ${clock(at)};${f(celsius)} degrees Fahrenheit`,
    ),
  ),
  'Spanish, twelve hours, a. m.': of(
    file(
      ['"Fecha";"Hora";"Temp °F"'],
      ({ at, celsius }) =>
        `"${day(at, '/')}";"${twelve(at)}:00 ${parts(at).h < 12 ? 'a. m.' : 'p. m.'}";"${f(celsius, ',')}"`,
    ),
  ),
  'US days, years of two, twelve hours glued': of(
    file(['Record,Stamp,Deg F'], ({ at, celsius }, i) => {
      const p = parts(at);
      return `${i},${p.mo}/${p.d}/26 ${twelve(at)}${half(at).toLowerCase()},${f(celsius)}`;
    }),
    { around: { ...around, dates: 'month first' } },
  ),
  'ISO basic with a zone': of(
    file(
      ['ts\tval'],
      ({ at, celsius }) =>
        `${isoDay(at - 3600).replaceAll('-', '')}T${clock(at - 3600, '')}00Z\t${c(celsius)}`,
    ),
  ),
  'milliseconds since the start': of(file(['millis,tempC'], (p) => `${since(p) * 1000},${c(p.celsius)}`)),
  'seconds since the start, no heading': of(file([], (p) => `${since(p)};${c(p.celsius)}`)),
  'uptime by letters': of(
    file(
      ['uptime,temp'],
      (p) => `${Math.floor(since(p) / 3600)}h${two((since(p) % 3600) / 60)}m00s,${c(p.celsius)}`,
    ),
  ),
  'a sheet of a spreadsheet: day number and part of a day apart': of(
    file(
      ['Date;Time;T'],
      ({ at, celsius }) =>
        `${Math.floor((at + 3600) / 86400 + 25569)};${(((at + 3600) % 86400) / 86400).toFixed(6).replace('.', ',')};${c(celsius, ',')}`,
    ),
  ),
  'comment marks above': of(
    file(
      ['# probe 4', '# tz: +00:00', '# columns: time, temperature [degC]'],
      ({ at, celsius }) => `${isoDay(at - 3600)} ${clock(at - 3600)} ${c(celsius)}`,
    ),
  ),
  'empty cells between': of(
    file(['Time;;;Temp'], ({ at, celsius }) => `${day(at)} ${clock(at)};;;${c(celsius, ',')}`),
  ),
  'a trailing comma': of(
    file(['Time,Temp,'], ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)},`),
  ),
  'a first row torn off': of(
    file([':00,29.1'], ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)}`),
  ),
  'a repeated heading every fifty rows': of(
    file([], ({ at, celsius }, i) => [
      ...(i % 50 === 0 ? ['time,temp (C)'] : []),
      `${isoDay(at)} ${clock(at)},${c(celsius)}`,
    ]),
  ),
  'bath and jar, jar wanted': of(
    file(['time;Bad;Glas'], ({ at, celsius }) => `${day(at)} ${clock(at)};38,0;${c(celsius, ',')}`),
    { where: 'jar' },
  ),
  'inside and outside, the box wanted': of(
    file(
      ['Time,Indoor Temp,Outdoor Temp'],
      ({ at, celsius }) => `${isoDay(at)} ${clock(at)},${c(celsius)},4.0`,
    ),
    { where: 'air' },
  ),
  'Japanese afternoon': of(
    file(['日付,時刻,温度(℃)'], ({ at, celsius }) => {
      const p = parts(at);
      return `${p.y}/${p.mo}/${p.d},${p.h < 12 ? '午前' : '午後'}${twelve(at)},${c(celsius)}`;
    }),
  ),
  'JSON a line': of(
    file([], ({ at, celsius }) => `{"time":"${isoDay(at)}T${clock(at)}:00+01:00","temp":${c(celsius)}}`),
  ),
  'key and value': of(
    file([], ({ at, celsius }) => `time=${isoDay(at)}T${clock(at)}:00 temp=${c(celsius)} hum=45`),
  ),
  'summed at the end': of(
    file(['Datum;Temp'], ({ at, celsius }) => `${day(at)} ${clock(at)};${c(celsius, ',')}`, [
      'Mittelwert;36,4',
      'Maximum;37,5;11.02.2026 10:00',
      'Ende;11.02.2026 19:40',
    ]),
  ),
  'decimal comma, comma between, clock of seconds': of(
    file(['Date,Time,Temp'], ({ at, celsius }) => `${day(at, '/')},${clock(at)}:00,${c(celsius, ',')}`),
  ),
  'semicolon and blanks around': of(
    file(['Date ; Temp'], ({ at, celsius }) => ` ${day(at)}  ${clock(at)} ;  ${c(celsius, ',')} `),
  ),
  'German half words': of(
    file(
      ['Datum;Uhrzeit;Wert'],
      ({ at, celsius }) =>
        `${day(at)};${twelve(at)} ${parts(at).h < 12 ? 'vorm.' : 'nachm.'};${c(celsius, ',')}`,
    ),
  ),
  'hours with a decimal point since start, in German': of(
    file(['Stunden;Grad'], (p) => `${(since(p) / 3600).toFixed(3)};${c(p.celsius)}`),
  ),
  'one cell of day and clock with a hyphen': of(
    file(['stamp;c'], ({ at, celsius }) => `${isoDay(at)}-${clock(at, '-')}-00;${c(celsius)}`),
  ),
  'one cell with underscores': of(
    file(['stamp;c'], ({ at, celsius }) => `${isoDay(at).replaceAll('-', '_')}_${clock(at)};${c(celsius)}`),
  ),
};
