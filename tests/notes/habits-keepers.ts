// Invented spreadsheets of keepers with habits of layout: days, seeds and warmth told once for a batch, headings in two lines, letters
// above groups, sheets that lie on their side, spans by the day of the week, boxes ticked. Each truth was read off the sheet by hand.
// Figures by hand: US tablespoon 14.78676478125 mL, cup 236.5882365 mL (NIST Handbook 44); metric tablespoon 15 mL (common practice, no
// source).
import type { TruthJar, Varied } from './varied';

const today = '2026-03-01';
/** The first jar of most sheets. */
const FIRST: TruthJar = { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' };
const SECOND: TruthJar = { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' };
const NEXT: TruthJar = { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, set: 'soft' };

export const HABITS_KEEPERS: readonly Varied[] = [
  {
    name: 'the letter stands behind the day, and b before a',
    text: `Date,Seed,Set
2026-01-05 b,8 caps Blue Tin,soft
2026-01-05 a,8 caps Blue Tin,firm
2026-01-12 b,2026-01-05 a,firm
2026-01-19 a,2026-01-12 b,soft
`,
    today,
    jars: {
      2: SECOND,
      3: FIRST,
      4: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-19 a', seeds: ['2026-01-12 b'], generation: 3, set: 'soft' },
    },
  },
  {
    name: 'a sheet on its side, jars named across, nothing in the corner',
    text: `,5 Jan 2026 A,5 Jan 2026 B,12 Jan 2026 A
Seeded from,8 caps Blue Tin,8 caps Blue Tin,5 Jan A
Milk,whole,whole,whole
Hours,36,36,34
How it set,firm,soft,soft
`,
    today,
    jars: { 2: { ...FIRST, hours: 36, milk: 'whole milk' }, 3: { ...SECOND, hours: 36 }, 4: { ...NEXT, hours: 34 } },
  },
  {
    name: 'headings in two lines, the upper one above a group',
    text: `Day,Jar,Starter,,Warmth,,Result
,,from,how much,hours,temp,
2026-01-05,a,8 caps Blue Tin,,30,38,firm
2026-01-12,a,2026-01-05 a,45 ml,36,38.5,soft
`,
    today,
    jars: { 3: { ...FIRST, hours: 30, celsius: 38 }, 4: { ...NEXT, ml: [45], hours: 36, celsius: 38.5 } },
  },
  {
    name: 'letters above groups of columns',
    text: `Date,A,,,B,,
,seed,hours,set,seed,hours,set
2026-01-05,8 caps Blue Tin,36,firm,8 caps Blue Tin,36,soft
2026-01-12,2026-01-05 a,34,soft,2026-01-05 b,34,runny
`,
    today,
    jars: {
      3: { ...FIRST, hours: 36 },
      '3 b': { ...SECOND, hours: 36 },
      4: { ...NEXT, hours: 34 },
      '4 b': { jar: '2026-01-12 b', seeds: ['2026-01-05 b'], generation: 2, hours: 34, set: 'runny' },
    },
  },
  {
    name: 'day, seed and milk merged over a batch, the fibre told of each jar',
    text: `Date,Seed,Milk,Jar,Fibre,Set
2026-01-05,8 caps Blue Tin,whole,a,none,firm
,,,b,inulin 10 g,soft
2026-01-12,2026-01-05 a,skim,a,none,soft
,,,b,,firm
`,
    today,
    jars: {
      2: { ...FIRST, milk: 'whole milk' },
      3: { ...SECOND, milk: 'whole milk', additions: ['inulin'] },
      4: { ...NEXT, milk: 'skim milk' },
      5: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], generation: 2, set: 'firm', milk: 'skim milk', additions: [] },
    },
    says: [/Nothing stands under “Seed” here, nor a day: it was taken from the row above: “2026-01-05 a”/],
  },
  {
    name: 'jars by number in words, the seed as in the row above',
    text: `Day made,Jar,Starter,Result
5 Jan 2026,1,8 caps Blue Tin,firm
,2,8 caps Blue Tin,soft
12 Jan,1,5 Jan no 1,firm
,2,5 Jan nr. 2,soft
,3,same as last one,soft
`,
    today,
    jars: {
      2: { ...FIRST, jar: '2026-01-05 1' },
      3: { ...SECOND, jar: '2026-01-05 2' },
      4: { jar: '2026-01-12 1', seeds: ['2026-01-05 1'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-12 2', seeds: ['2026-01-05 2'], generation: 2, set: 'soft' },
      6: { jar: '2026-01-12 3', seeds: ['2026-01-05 2'], generation: 2, set: 'soft' },
    },
  },
  {
    name: 'from one day of the week to another, whatever stands above',
    text: `Date,Jar,Seed,Warm,Set
2026-01-05,a,8 caps Blue Tin,Mon 8pm–Wed 8am,firm
2026-01-12,a,2026-01-05 a,Mon 8 pm - Wed 6 am,soft
2026-01-19,a,2026-01-12 a,8pm to 6am +2d,firm
`,
    today,
    jars: {
      2: { ...FIRST, hours: 36 },
      3: { ...NEXT, hours: 34 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 34, set: 'firm' },
    },
  },
  {
    name: 'both scales of a warmth, with and without their letters',
    text: `Date,Jar,Seed,Temp
2026-01-05,a,8 caps Blue Tin,38 °C / 100 °F
2026-01-12,a,2026-01-05 a,99.5 (37.5)
2026-01-19,a,2026-01-12 a,37.5/99.5
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, celsius: 38 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, celsius: 37.5 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, celsius: 37.5 },
    },
  },
  {
    name: 'spoons heaped and struck off in short, the same again in short',
    text: `Angesetzt,Glas,Geimpft mit,Menge,Stunden warm,Ergebnis
Mo 5.1.26,1,8 Kapseln Blue Tin,,30,fest
Mo 12.1.26,1,5.1. Glas 1,3 gestr. EL,36,weich
"",2,dito,3 geh. EL,36,fest
`,
    today,
    jars: {
      2: { ...FIRST, jar: '2026-01-05 1', hours: 30 },
      3: { jar: '2026-01-12 1', seeds: ['2026-01-05 1'], ml: [45], generation: 2, hours: 36, set: 'soft' },
      4: { jar: '2026-01-12 2', seeds: ['2026-01-05 1'], ml: [45], generation: 2, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'boxes ticked for mould, and last Monday in short',
    text: `Day,Date,Jar,Seed,Set,Mould?
Mon,05/01/26,a,8 caps Blue Tin,firm,N
Mon,12/01/26,a,last Mon,soft,FALSE
Mon,19/01/26,a,last Monday's,firm,☐
Mon,26/01/26,a,last Mon.,firm,☑
`,
    today,
    jars: {
      2: FIRST,
      3: NEXT,
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, set: 'firm' },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], generation: 4, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'Polish words that no heading is known by',
    text: `Data,Litera,Z czego,Ile,Ile godzin
5.01.2026,a,8 kapsułek Blue Tin,,30
12.01.2026,a,5.01 a,3 łyżki,36
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 36 },
    },
  },
  {
    name: 'two units in one heading, the unit before the word, hours under “Time in”, two products by a stroke',
    text: `Day;Jar;Started with;mL / pcs;L milk;g inulin;Bath C;In at;Time in;How was it
05.01.2026;K1.1;Brook caps / Larch tablets;8 caps;1;-;38;20:30;34h;firm
05.01.2026;K1.2;Fern sachets;8;0,8;5;37,5;20:00;36h;soft
12.01.2026;K2.1;K1.1;45;0,8;;38;19:45;34h;soft
19.01.2026;K3.1;K2.1;30;1;4;38;21:00;35h;firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 k1.1', sources: ['Brook', 'Larch'], pieces: [8], generation: 1, hours: 34, celsius: 38, set: 'firm', milkMl: 1000, additions: [] },
      3: { jar: '2026-01-05 k1.2', sources: ['Fern'], pieces: [8], generation: 1, hours: 36, set: 'soft', milkMl: 800, additions: ['inulin'] },
      4: { jar: '2026-01-12 k2.1', seeds: ['2026-01-05 k1.1'], ml: [45], generation: 2, hours: 34, set: 'soft', milkMl: 800 },
      5: { jar: '2026-01-19 k3.1', seeds: ['2026-01-12 k2.1'], ml: [30], generation: 3, hours: 35, set: 'firm', milkMl: 1000, added: ['4 g'] },
    },
    says: [/“Brook caps” is called “Brook” here/, /“Time in” was taken as the hours held/],
  },
  {
    name: 'litres of milk without their unit, answered once',
    text: `Day;Jar;Started with;Qty;Milk
05.01.2026;a;Fern sachets;8 sachets;1
12.01.2026;a;05.01. a;45 ml;0,8
`,
    today,
    answers: { 'unit:Milk': 'L' },
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Fern'], pieces: [8], generation: 1, milkMl: 1000 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, milkMl: 800 },
    },
  },
  {
    name: 'words in brackets around the seed, shares of two jars, scores of two tasters',
    text: `Date,Jar,Seed,Ida,Tom,Rating
2026-01-05,a,new (Blue Tin 8 caps),7,8,★★★★☆
2026-01-12,a,own (5 Jan a),6,7,***
2026-01-19,a,1/2 12 Jan a + 1/2 5 Jan a,8,,5 stars
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, note: 'Ida: 7' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, note: 'Seed: own' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a', '2026-01-05 a'], generation: 3, note: 'Rating: 5 stars' },
    },
  },
];
