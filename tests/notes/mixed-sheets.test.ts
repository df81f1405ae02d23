// Sheets put together from keepers' habits at random: what columns are called, how days, amounts, hours and seeds are
// written, what stands in one cell or in two. Whatever the mixture: what was noted is what is read, or it is asked about.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../runs';
import { read, seedLabels, sourceNames, type Read } from './read';

interface Jar {
  readonly day: Date;
  readonly at: number;
  readonly of: number;
  readonly from: Jar | null;
  /** A second seed, as much of it, where seeds are mixed. */
  readonly also: Jar | null;
  readonly source: string | null;
  readonly seedMl: number;
  readonly pieces: number;
  readonly milkMl: number;
  readonly fibre: readonly [string, number] | null;
  readonly hours: number;
  readonly celsius: number;
  readonly start: number;
  readonly set: string;
  readonly ph: number | null;
  readonly note: string;
  readonly batch: number;
}
const two = (value: number): string => String(value).padStart(2, '0');
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const parts = (day: Date) => ({ y: day.getUTCFullYear(), m: day.getUTCMonth() + 1, d: day.getUTCDate() });
const iso = (day: Date): string => day.toISOString().slice(0, 10);

/** How a day is written; the second without its year. */
const DAYS = {
  iso: [iso, iso],
  points: [(x: Date) => `${two(parts(x).d)}.${two(parts(x).m)}.${parts(x).y}`, (x: Date) => `${parts(x).d}.${parts(x).m}.`],
  'short points': [(x: Date) => `${parts(x).d}.${parts(x).m}.${parts(x).y % 100}`, (x: Date) => `${parts(x).d}.${parts(x).m}.`],
  slashes: [(x: Date) => `${two(parts(x).d)}/${two(parts(x).m)}/${parts(x).y}`, (x: Date) => `${parts(x).d}/${parts(x).m}`],
  'US slashes': [(x: Date) => `${parts(x).m}/${parts(x).d}/${parts(x).y % 100}`, (x: Date) => `${parts(x).m}/${parts(x).d}`],
  named: [(x: Date) => `${parts(x).d} ${MONTHS[parts(x).m - 1]} ${parts(x).y}`, (x: Date) => `${parts(x).d} ${MONTHS[parts(x).m - 1]}`],
  'US named': [(x: Date) => `${MONTHS[parts(x).m - 1]} ${parts(x).d}, ${parts(x).y}`, (x: Date) => `${MONTHS[parts(x).m - 1]} ${parts(x).d}`],
  weekday: [(x: Date) => `${'Sun Mon Tue Wed Thu Fri Sat'.split(' ')[x.getUTCDay()]} ${two(parts(x).d)}/${two(parts(x).m)}/${parts(x).y}`, (x: Date) => `${parts(x).d}/${parts(x).m}`],
} as const; // prettier-ignore
const HEADINGS = {
  day: ['Date', 'Made', 'Day', 'Made on', 'Started', 'When', 'Datum', 'When made'],
  jar: ['Jar', 'Lid', 'Letter', 'Glass', 'Pot', 'Jar no.', 'Glas'],
  seed: ['Seed', 'Parent', 'From', 'Started with', 'Seeded from', 'Made from', 'Starter', 'Mother jar', 'Angesetzt mit'],
  seedAmount: ['Amount', 'How much', 'Seed amount', 'Amt of seed', 'Qty', 'Menge', 'Starter amount'],
  milk: ['Milk', 'Milk used', 'Milch', 'Type of milk'],
  fibre: ['Fibre', 'Fiber', 'Stirred in', 'Added', 'Extra', 'Additions', 'Ballaststoff'],
  hours: ['Hours', 'Hrs', 'Time in', 'h', 'Held', 'Hours warm', 'Stunden', 'Incubation'],
  warmth: ['Temp', 'Bath', 'Temperature', 'Warmth', 'Set to', 'Temperatur'],
  set: ['Set', 'Result', 'How was it', 'Outcome', 'Came out', 'Consistency'],
  ph: ['pH', 'pH value', 'ph'],
  note: ['Notes', 'Remarks', 'Comments', 'Note', 'Bemerkungen'],
} as const;
type Slot = keyof typeof HEADINGS;
const NOTES = ['', '', '', 'smooth', 'a bit sharp', 'Ida liked it', 'grainy at the bottom', 'best so far'];
const SETS = ['firm', 'very firm', 'spoonable', 'soft', 'runny'];

const habit = fc.record({
  days: fc.constantFrom(...(Object.keys(DAYS) as (keyof typeof DAYS)[])),
  names: fc.constantFrom('letters', 'capitals', 'numbers', 'in the day', 'one a batch', 'K1.2', 'running'),
  seeds: fc.constantFrom('whole day', 'short day'),
  amounts: fc.constantFrom('own column', 'unit in the heading', 'with the seed', 'spoons'),
  milk: fc.constantFrom('together', 'litres in the heading', 'mL in the heading', 'kind only', 'litres beside the kind'),
  fibre: fc.constantFrom('name first', 'amount first', 'name and heading', 'spoons', 'dash where none'),
  hours: fc.constantFrom('bare', 'h', ' h', ' hours', ':00', 'start and hours', 'start and end', 'span'),
  style: fc.constantFrom('as it is', 'capitals', 'underscores', 'colons'),
  mix: fc.boolean(),
  quotes: fc.boolean(),
  warmth: fc.constantFrom('bare C', 'cell C', 'heading C', 'cell F', 'bare F', 'heading F'),
  comma: fc.boolean(),
  delimiter: fc.constantFrom(',', ';', '\t'),
  heads: fc.record(Object.fromEntries(Object.entries(HEADINGS).map(([slot, all]) => [slot, fc.nat(all.length - 1)])) as Record<Slot, fc.Arbitrary<number>>),
  turned: fc.nat(3),
  newestFirst: fc.boolean(),
  blank: fc.boolean(),
  /** Day and line are told once for the jars of a batch. */
  merged: fc.boolean(),
  beside: fc.constantFrom('none', 'when it went in', 'price', 'taste of ten', 'running number'), /* 'running number': never the only name of a jar */
  ph: fc.boolean(),
  note: fc.boolean(),
}); // prettier-ignore
type Habit = typeof habit extends fc.Arbitrary<infer H> ? H : never;

/** Eight batches of one to three jars, each seeded from a jar of the batch before. */
function family(random: (n: number) => number, one: Habit): Jar[] {
  const jars: Jar[] = [];
  let before: Jar | null = null;
  let other: Jar | null = null;
  let day = Date.UTC(2025, 2 + random(6), 1 + random(25));
  for (let batch = 0; batch < 8; batch += 1) {
    const of = one.names === 'one a batch' ? 1 : 1 + random(3);
    const made: Jar[] = Array.from({ length: of }, (_, at) => ({
      day: new Date(day), at, of, from: before, also: other, batch,
      source: before === null ? (['Brook caps', 'Larch tablets', 'Fern sachets'][random(3)] ?? null) : null,
      seedMl: [30, 45, 60][random(3)] ?? 30, pieces: 4 + random(6), milkMl: [1000, 800, 500, 1500][random(4)] ?? 1000,
      fibre: at === 0 ? null : ([['inulin', 10], ['oat bran', 12], ['potato starch', 8]][random(3)] as [string, number]),
      hours: 30 + random(8), celsius: [37, 37.5, 38, 39][random(4)] ?? 38, start: 18 + random(4), set: SETS[random(5)] ?? 'firm',
      ph: random(3) === 0 ? 4.2 + random(4) / 10 : null, note: NOTES[random(NOTES.length)] ?? '',
    })); // prettier-ignore
    jars.push(...made);
    before = made[random(made.length)] ?? null;
    other = made.find((jar) => jar !== before) ?? null;
    day += (8 + random(5)) * 86_400_000;
  }
  return jars;
}

const named = (jar: Jar, jars: readonly Jar[], one: Habit): string =>
  one.names === 'capitals' ? 'ABC'.charAt(jar.at)
  : one.names === 'numbers' ? String(jar.at + 1)
  : one.names === 'K1.2' ? `K${jar.batch + 1}.${jar.at + 1}`
  : one.names === 'running' ? `#${jars.indexOf(jar) + 1}`
  : 'abc'.charAt(jar.at); // prettier-ignore

function cells(jar: Jar, jars: readonly Jar[], one: Habit): [string, string][] {
  const figure = (value: number): string => String(value).replace('.', one.comma && one.delimiter !== ',' ? ',' : '.');
  const [whole, short] = DAYS[one.days];
  const head = (slot: Slot): string => HEADINGS[slot][one.heads[slot]] ?? '';
  const byName = one.names === 'K1.2' || one.names === 'running';
  const seedName = (from: Jar): string => {
    if (byName) return named(from, jars, one);
    const day = (one.seeds === 'short day' ? short : whole)(from.day);
    return one.names === 'one a batch' ? day : `${day} ${named(from, jars, one)}`;
  };
  const ofEach = one.amounts === 'spoons' ? `${jar.seedMl / 15} tbsp` : `${jar.seedMl} mL`;
  const mixed = jar.from !== null && jar.also !== null && one.mix;
  const amount = jar.from === null ? `${jar.pieces} pcs` : mixed ? `${ofEach} + ${ofEach}` : ofEach;
  const seed = jar.from === null ? (jar.source ?? '') : [jar.from, ...(jar.also && one.mix ? [jar.also] : [])].map(seedName).join(' + ');
  const fibre = jar.fibre;
  const end = new Date(jar.day.getTime() + (jar.start + jar.hours) * 3_600_000);
  const warm = figure(one.warmth.endsWith('F') ? (jar.celsius * 9) / 5 + 32 : jar.celsius);
  const scale = one.warmth.slice(-1);
  const own = one.names === 'in the day';
  return [
    [head('day'), own ? `${whole(jar.day)} ${named(jar, jars, one)}` : whole(jar.day)],
    ...(own || one.names === 'one a batch' ? [] : [[head('jar'), named(jar, jars, one)] as [string, string]]),
    ...(one.amounts === 'with the seed' ? [[head('seed'), mixed ? [jar.from, jar.also].flatMap((from) => (from ? [`${ofEach} of ${seedName(from)}`] : [])).join(' + ') : `${amount} ${jar.from === null ? '' : 'of '}${seed}`] as [string, string]]
      : [[head('seed'), seed], [one.amounts === 'unit in the heading' ? `${head('seedAmount')} (mL)` : head('seedAmount'), one.amounts === 'unit in the heading' && jar.from !== null ? (mixed ? `${jar.seedMl} + ${jar.seedMl}` : String(jar.seedMl)) : amount]] as [string, string][]),
    ...(one.milk === 'together' ? [[head('milk'), `${figure(jar.milkMl / 1000)} l whole milk`]]
      : one.milk === 'litres in the heading' ? [['L milk', figure(jar.milkMl / 1000)]]
      : one.milk === 'mL in the heading' ? [['Milk (mL)', String(jar.milkMl)]]
      : one.milk === 'kind only' ? [[head('milk'), 'whole']]
      : [[head('milk'), 'whole'], ['Milk L', figure(jar.milkMl / 1000)]]) as [string, string][],
    [one.fibre === 'name and heading' ? `${head('fibre')} (g)` : head('fibre'),
      fibre === null ? (one.fibre === 'dash where none' ? '-' : '')
      : one.fibre === 'amount first' ? `${fibre[1]} g ${fibre[0]}` : one.fibre === 'spoons' ? `${fibre[1] / 4} tbsp ${fibre[0]}` : one.fibre === 'name and heading' ? `${fibre[0]} ${fibre[1]}` : `${fibre[0]} ${fibre[1]}g`],
    ...(one.hours.startsWith('start') ? [['Start', `${two(jar.start)}:00`] as [string, string]] : []),
    one.hours === 'span' ? [head('hours'), `${two(jar.start)}:00 - ${(one.seeds === 'short day' ? short : whole)(end)} ${two(end.getUTCHours())}:00`]
    : one.hours === 'start and end' ? ['End', `${(one.seeds === 'short day' ? short : whole)(end)} ${two(end.getUTCHours())}:00`] : [head('hours'), `${jar.hours}${{ bare: '', h: 'h', ' h': ' h', ' hours': ' hours', ':00': ':00', 'start and hours': '', span: '' }[one.hours]}`],
    [one.warmth.startsWith('heading') ? `${head('warmth')} °${scale}` : head('warmth'), one.warmth.startsWith('cell') ? `${warm} °${scale}` : warm],
    [head('set'), jar.set],
    ...(one.ph ? [[head('ph'), jar.ph === null ? '' : figure(Number(jar.ph.toFixed(1)))] as [string, string]] : []),
    ...(one.beside === 'price' ? [['Price of milk', figure(1.29)]] : one.beside === 'when it went in' && !one.hours.startsWith('start') ? [['Went in', `${jar.start % 12} pm`]] : one.beside === 'taste of ten' ? [['Taste /10', String(5 + (jar.batch % 5))]] : []) as [string, string][],
    ...(one.note ? [[head('note'), jar.note] as [string, string]] : []),
  ]; // prettier-ignore
}

function sheetOf(jars: readonly Jar[], one: Habit): string {
  const rows = jars.map((jar, at) => [...(one.beside === 'running number' && one.names !== 'one a batch' ? [['No.', String(at + 1)] as [string, string]] : []), ...cells(jar, jars, one)]);
  const turn = <T>(row: T[]): T[] => [...row.slice(0, 2), ...row.slice(2 + one.turned), ...row.slice(2, 2 + one.turned)];
  const quoted = (cell: string): string => (one.quotes || cell.includes(one.delimiter) ? `"${cell}"` : cell);
  const styled = (heading: string): string =>
    one.style === 'capitals' ? heading.toUpperCase() : one.style === 'underscores' ? heading.replaceAll(' ', '_') : one.style === 'colons' ? `${heading}:` : heading;
  const day = HEADINGS.day[one.heads.day];
  const merged = one.merged && one.names !== 'in the day' ? rows.map((row, at) => (jars[at]?.at === 0 ? row : row.map(([heading, cell]): [string, string] => [heading, heading === day ? '' : cell]))) : rows;
  const lines = (one.newestFirst ? rows : merged).map((row) => turn(row).map(([, cell]) => quoted(cell)).join(one.delimiter));
  const head = turn(rows[0] ?? []).map(([heading]) => quoted(styled(heading))).join(one.delimiter);
  const body = one.newestFirst ? lines.toReversed() : lines;
  return [head, ...(one.blank ? body.flatMap((line, i) => (i % 5 === 4 ? [line, ''] : [line])) : body)].join('\n');
} // prettier-ignore

/** What was noted, and what was read, jar by jar: what is asked about is not yet read. */
function compared(jars: readonly Jar[], notes: Read, one: Habit): { wanted: unknown[]; got: unknown[] } {
  const label = (jar: Jar): string => `${iso(jar.day)} ${named(jar, jars, one).replace('#', '').toLowerCase()}`;
  const wanted = jars.map((jar) => ({
    jar: label(jar),
    seeds: [jar.from, ...(one.mix && jar.from !== null ? [jar.also] : [])].flatMap((from) => (from ? [label(from)] : [])),
    sources: jar.source === null ? [] : [jar.source.replace(/ (?:caps|tablets|sachets)$/, '')],
    amount: jar.from === null ? jar.pieces : jar.seedMl,
    hours: jar.hours,
    celsius: jar.celsius,
    milk: one.milk === 'kind only' ? null : jar.milkMl,
    fibre: jar.fibre?.[0] ?? null,
    set: jar.set,
    ph: one.ph ? (jar.ph === null ? null : Number(jar.ph.toFixed(1))) : null,
  }));
  const got = notes.plan.jars.map((jar) => ({
    jar: `${jar.madeOn} ${jar.letter.toLowerCase()}`,
    seeds: seedLabels(notes, jar).map((name) => name.toLowerCase()),
    sources: sourceNames(jar).map((name) => name.replace(/ (?:caps|tablets|sachets)$/, '')),
    // A tablespoon of a US kitchen or of a metric one.
    amount: jar.seedings.map(({ amount }) => Math.round((amount?.value ?? 0) / 15 + 0.02) * 15 === 0 || amount?.unit === 'pieces' ? amount?.value : Math.round((amount?.value ?? 0) / 15 + 0.02) * 15)[0] ?? null,
    hours: jar.hold?.hours ?? null,
    celsius: jar.hold?.planned ? Number(jar.hold.planned.value.toFixed(1)) : null,
    milk: jar.fields.milkAmount?.value ?? null,
    fibre: jar.additions[0]?.name ?? null,
    set: jar.outcome?.setWord ?? null,
    ph: jar.outcome?.ph ?? null,
  })); // prettier-ignore
  const order = (a: { jar: string }, b: { jar: string }): number => (a.jar < b.jar ? -1 : 1);
  return { wanted: wanted.toSorted(order), got: got.toSorted(order) };
}

describe('a sheet of habits at random', () => {
  it('is read as it was noted', () => {
    fc.assert(
      fc.property(habit, fc.infiniteStream(fc.nat(1_000_000)), (one, stream) => {
        const random = (n: number): number => (stream.next().value as number) % n;
        const jars = family(random, one);
        const notes = read(sheetOf(jars, one), { today: '2026-03-01' });
        const { wanted, got } = compared(jars, notes, one);
        if (notes.preview.questions.some(({ blocks }) => blocks)) return;
        expect(got).toEqual(wanted);
      }),
      { numRuns: runs(60) },
    );
  }, 600_000);
});
