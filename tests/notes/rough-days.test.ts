// Days that a sheet tells only roughly come in as ranges: what the jar is called, what it seeded, and no figure made of it.
import { expect, it } from 'vitest';
import { daysOf, roughDay } from '../../core/text/rough-days';
import { must, newSession } from '../ledger/ledger-files';

const sheet = (text: string) => ({ file: { name: 'winter.csv', bytes: new TextEncoder().encode(text) } });

/** What each text tells, in a year where it writes none: first and last day; common usage, no source. */
const TOLD: readonly (readonly [text: string, from: string | null, to?: string])[] = [
  ['about 15 Jan 2026', '2026-01-12', '2026-01-18'],
  ['~ 15.1.2026', '2026-01-12', '2026-01-18'],
  ['ca. 15. Januar', '2026-01-12', '2026-01-18'],
  ['etwa 15.1.26', '2026-01-12', '2026-01-18'],
  ['mid January', '2026-01-11', '2026-01-20'],
  ['Mid-Jan 2026', '2026-01-11', '2026-01-20'],
  ['Mitte Februar', '2026-02-11', '2026-02-20'],
  ['early March', '2026-03-01', '2026-03-10'],
  ['Anfang März 2026', '2026-03-01', '2026-03-10'],
  ['late February', '2026-02-21', '2026-02-28'],
  ['end of Feb 2024', '2024-02-21', '2024-02-29'],
  ['Ende Dezember', '2026-12-21', '2026-12-31'],
  ['Jan 2025', '2025-01-01', '2025-01-31'],
  ["Jan '25", '2025-01-01', '2025-01-31'],
  ['in April', '2026-04-01', '2026-04-30'],
  ['between 3 and 9 Jan', '2026-01-03', '2026-01-09'],
  ['between 28 Dec and 3 Jan 2026', '2025-12-28', '2026-01-03'],
  ['zwischen dem 3. und dem 9. Januar', '2026-01-03', '2026-01-09'],
  ['3 or 4 May 2026', '2026-05-03', '2026-05-04'],
  ['15 Jan 2026', null],
  ['January 26', null],
  ['Sat 15 Oct, evening', null],
  ['2026', null],
  ['36 h', null],
  ['plain', null],
];

it.each(TOLD.map(([text, from, to = '']) => ({ text, from, to })))('“$text”', ({ text, from, to }) => {
  const rough = roughDay(text, 'day first');
  expect(rough && daysOf(rough, 2026)).toEqual(from === null ? null : { from, to });
});

it('come in as ranges, with the year of their neighbours, and seed what came after them', () => {
  const session = newSession();
  const file = sheet(`Date,Jar,Seed,Out,Set
mid January 2025,a,8 caps Blue Tin,36 h,firm
mid January 2025,b,8 caps Blue Tin,36 h,soft
2025-01-26,a,mid January 2025 a,36 h,firm
between 2 and 6 Feb,a,26 Jan 2025 a,36 h,firm
late Feb,a,about 4 Feb a,36 h,firm
`);
  const preview = must(session, 'notes.preview', file);
  expect(preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
  expect(preview.problems).toEqual([]);
  expect(preview.assumptions.map(({ sentence }) => sentence)).toContain(
    '“mid January 2025” is known only roughly: between 11 Jan 2025 and 20 Jan 2025.',
  );
  expect(must(session, 'notes.bringIn', file)).toMatchObject({ jars: 5 });
  const { jars } = must(session, 'family.get', {});
  const label = (id: string | null) => jars.find((jar) => jar.id === id)?.label ?? null;
  expect(jars.map((jar) => [jar.label, jar.madeOn, jar.madeBetween, jar.seeds.map((seed) => label(seed.jar) ?? seed.source)])).toEqual([
    ['about 15 Jan a', null, { from: '2025-01-11', to: '2025-01-20' }, ['Blue Tin']],
    ['about 15 Jan b', null, { from: '2025-01-11', to: '2025-01-20' }, ['Blue Tin']],
    ['26 Jan a', '2025-01-26', null, ['about 15 Jan a']],
    ['about 4 Feb a', null, { from: '2025-02-02', to: '2025-02-06' }, ['26 Jan a']],
    ['about 24 Feb a', null, { from: '2025-02-21', to: '2025-02-28' }, ['about 4 Feb a']],
  ]); // prettier-ignore
  expect(must(session, 'notes.bringIn', file)).toMatchObject({ jars: 0, seedings: 0, changed: 0 });
});

it('a range reaches no further than today, and one that begins later stays aside', () => {
  const session = newSession();
  const { today } = must(session, 'app.state', {});
  const [year, month] = today.split('-');
  const file = sheet(`Date,Jar,Seed
${year}-${month}-01,a,8 caps Blue Tin
between ${year}-${month}-01 and ${Number(year) + 1}-01-05,b,8 caps Blue Tin
about ${Number(year) + 1}-06-15,c,8 caps Blue Tin
`);
  const { problems } = must(session, 'notes.preview', file);
  expect(problems.map(({ row }) => row)).toEqual([4]);
  must(session, 'notes.bringIn', file);
  const { jars } = must(session, 'family.get', {});
  expect(jars.find(({ madeBetween }) => madeBetween !== null)?.madeBetween?.to).toBe(today);
});
