// Invented spreadsheets of further habits: what is told once for many rows, in crosses, in a second table, in words. Each truth was
// read off the sheet by hand. Figures by hand: US tablespoon 14.78676478125 mL, quart 946.352946 mL (NIST Handbook 44); metric
// tablespoon 15 mL (common practice, no source).
import type { Varied } from './varied';

export const LATER_KEEPERS: readonly Varied[] = [
  {
    name: 'seed, milk and hours told once, above the table',
    text: `Yoghurt of spring,,,
Seed: 12 capsules Blue Tin,,,
Milk,whole 1 L,,
Hours: 36,,,
Date,Jar,Temp,Set
2025-05-02,a,38 °C,firm
2025-05-02,b,38 °C,soft
`,
    jars: {
      6: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1, hours: 36, celsius: 38, set: 'firm', milkMl: 1000 },
      7: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [12], generation: 1, hours: 36, celsius: 38, set: 'soft', milkMl: 1000 },
    },
    says: [/“Seed: 12 capsules Blue Tin” was taken to hold for the rows below/, /“Yoghurt of spring” stands above/],
  },
  {
    name: 'a block for each batch, its day and its seed above',
    text: `2 May 2025,,
Seed: 8 caps Blue Tin,,
Jar,Amount,Set
a,,firm
b,,soft

9 May 2025,,
Seed: 2 May b,,
Jar,Amount,Set
a,45 ml,firm
b,30 ml,soft
`,
    jars: {
      4: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      5: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      10: { jar: '2025-05-09 a', seeds: ['2025-05-02 b'], ml: [45], generation: 2, set: 'firm' },
      11: { jar: '2025-05-09 b', seeds: ['2025-05-02 b'], ml: [30], generation: 2, set: 'soft' },
    },
  },
  {
    name: 'crosses below amounts and below set words',
    text: `Date,Jar,Seed,3 tbsp,2 tbsp,Inulin,Runny,Soft,Firm
2025-05-02,a,8 caps Blue Tin,,,x,,x,
2025-05-09,a,2025-05-02 a,x,,,,,x
2025-05-16,a,2025-05-09 a,,x,x,x,,
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft', additions: ['Inulin'] },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [29.6], generation: 3, set: 'runny', additions: ['Inulin'] },
    },
    says: [/“Runny”, “Soft” and “Firm” have crosses below/, /“3 tbsp” and “2 tbsp” have crosses below/],
  },
  {
    name: 'days in words',
    text: `When,Jar,Seed,Amount
first of August 2025,a,8 caps Blue Tin,
tenth of August 2025,a,first of August a,40 ml
August the twenty-second 2025,a,10 Aug a,40 ml
`,
    jars: {
      2: { jar: '2025-08-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-08-10 a', seeds: ['2025-08-01 a'], ml: [40], generation: 2 },
      4: { jar: '2025-08-22 a', seeds: ['2025-08-10 a'], ml: [40], generation: 3 },
    },
  },
  {
    name: 'a second table that tells how the batches of the first came out',
    text: `Batch,Date,Seed,Amount
1,2025-05-02,8 caps Blue Tin,
2,2025-05-09,1,40 ml

Batch,pH,Set
2,4.4,soft
1,4.5,firm
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', ph: 4.5 },
      3: { jar: '2025-05-09 2', seeds: ['2025-05-02 1'], ml: [40], generation: 2, set: 'soft', ph: 4.4 },
    },
    says: [/“Batch pH Set” heads another table, which tells more of jars above/],
  },
  {
    name: 'figures and their units in columns of their own',
    text: `Date,Jar,Seed,Qty,Unit,Milk,Milk qty,Milk unit
2025-05-02,a,Blue Tin,8,caps,whole,1,L
2025-05-09,a,2025-05-02 a,3,cl,whole,1,L
2025-05-16,a,2025-05-09 a,45,ml,whole,950,ml
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, milkMl: 1000 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [30], generation: 2, milkMl: 1000 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, milkMl: 950 },
    },
    says: [/“Unit” was taken as the units of “Qty”/],
  },
  {
    name: 'names of jars beside days under a heading that nobody knows',
    text: `Name,Born,Child of,Spoons (tbsp)
Alma,2025-05-02,8 caps Blue Tin,
Bert,2025-05-09,Alma,3
Cleo,2025-05-16,Bert,2
`,
    jars: {
      2: { jar: '2025-05-02 alma', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-05-09 bert', seeds: ['2025-05-02 alma'], ml: [44.4], generation: 2 },
      4: { jar: '2025-05-16 cleo', seeds: ['2025-05-09 bert'], ml: [29.6], generation: 3 },
    },
  },
  {
    name: 'the same headings below “Seed” and below “Jar”',
    text: `Seed,,,Jar,,,Hold,
Date,Jar,Amount,Date,Jar,Milk,Hours,Temp
,,8 caps Blue Tin,2025-05-02,a,1 L whole,36,38
2025-05-02,a,45 ml,2025-05-09,a,1 L whole,36,38
2025-05-09,a,40 ml,2025-05-16,b,1 L whole,34,38
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38 },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, celsius: 38 },
      5: { jar: '2025-05-16 b', seeds: ['2025-05-09 a'], ml: [40], generation: 3, hours: 34, celsius: 38 },
    },
  },
  {
    name: 'a German bath in degrees is no “bad”',
    text: `Datum;Glas;Impfung;EL;Std;Bad °C;Wie fest
3.1.26;A;10 Kps. Blue Tin;;36,5;38,0;weich
17.1.26;A;3.1. A;3;36;38,5;fest
`,
    jars: {
      2: { jar: '2026-01-03 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36.5, celsius: 38, set: 'soft' },
      3: { jar: '2026-01-17 a', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 36, celsius: 38.5, set: 'firm' },
    },
  },
  {
    name: 'years on lines of their own and no headings',
    text: `2025,,,
May 2,a,8 caps Blue Tin,firm
May 9,a,May 2 a,firm
Dec 30,a,May 9 a,soft
2026,,,
Jan 6,a,Dec 30 a,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], generation: 2, set: 'firm' },
      4: { jar: '2025-12-30 a', seeds: ['2025-05-09 a'], generation: 3, set: 'soft' },
      6: { jar: '2026-01-06 a', seeds: ['2025-12-30 a'], generation: 4, set: 'soft' },
    },
  },
  {
    name: 'seeds with arrows, possessives and slashes; halves of the day in words',
    text: `Date,In,Out,Jar,Seed
2025-05-02,7 in the evening,9 o'clock in the morning (+2),A,8 caps Blue Tin
2025-05-09,19:00,07:00 +2,A,A (2 May) → 45 ml
2025-05-16,8 at night,8 in the morning next day,A,45ml of 9 May's A
2025-05-23,,,A,A/16-May (40 ml)
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 38 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, hours: 12 },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [40], generation: 4 },
    },
  },
  {
    name: 'headings that count: “No. of tbsp”, “Qts milk”, “# hrs”',
    text: `Date,Jar,Seed,No. of tbsp,Qts milk,F°,# hrs
5/2/25,A,8 caps Blue Tin,,1,100,36
5/14/25,A,5/2 A (gen 1),3,1,99.5,36
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778, milkMl: 946.4 },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, hours: 36, celsius: 37.5, milkMl: 946.4 },
    },
  },
  {
    name: 'batches and jars by number, the product among the amounts',
    text: `Batch #,Jar #,Date started,Starter batch #,Starter jar #,Starter qty (ml),Final pH
1,1,2025-05-02,,,8 caps Blue Tin,4.4
2,1,2025-05-09,1,1,45,4.5
2,2,2025-05-09,1,1,30,4.5
3,1,2025-05-16,2,2,45,4.3
`,
    jars: {
      2: { jar: '2025-05-02 1 1', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4 },
      3: { jar: '2025-05-09 2 1', seeds: ['2025-05-02 1 1'], ml: [45], generation: 2, ph: 4.5 },
      4: { jar: '2025-05-09 2 2', seeds: ['2025-05-02 1 1'], ml: [30], generation: 2, ph: 4.5 },
      5: { jar: '2025-05-16 3 1', seeds: ['2025-05-09 2 2'], ml: [45], generation: 3, ph: 4.3 },
    },
  },
  {
    name: 'remarks that go on in the line below, and “no - pink” to whether it was fine',
    text: `Date,Jar,Seed,Fine?,Notes
2025-05-02,a,8 caps Blue Tin,yes,firm
,,,,a bit of whey
2025-05-09,a,2025-05-02 a,no - pink,soft
,,,,thrown out
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, note: 'a bit of whey' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], generation: 2, spoiled: true, note: 'thrown out' },
    },
    says: [/goes on with what row 2 says/],
  },
  {
    name: 'jars called by the colours of their lids',
    text: `Date,Lid,Seed,Amount,Set
2 May 2025,red,8 caps Blue Tin,,firm
2 May 2025,blue,8 caps Blue Tin,,soft
9 May 2025,red,2 May blue,45ml,firm
16 May 2025,red,blue lid 2 May,45ml,firm
`,
    jars: {
      2: { jar: '2025-05-02 red', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-02 blue', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2025-05-09 red', seeds: ['2025-05-02 blue'], ml: [45], generation: 2, set: 'firm' },
      5: { jar: '2025-05-16 red', seeds: ['2025-05-02 blue'], ml: [45], generation: 2, set: 'firm' },
    },
  },
  {
    name: 'several days in one cell: the jar was made on the first',
    text: `Date,Jar,Seed,Amount,Set
2–4 May 2025,a,8 caps Blue Tin,,firm
9-11 May 2025,a,2 May a,40 ml,firm
May 16-18 2025,a,9 May a,40 ml,soft
5/23-5/25/2025,a,16 May a,40 ml,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, set: 'soft' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [40], generation: 4, set: 'soft' },
    },
  },
  {
    name: 'months on lines of their own, days as figures',
    text: `May 2025,,,
2,a,8 caps Blue Tin,firm
9,a,2 May a,firm
June 2025,,,
6,a,9 May a,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], generation: 2, set: 'firm' },
      5: { jar: '2025-06-06 a', seeds: ['2025-05-09 a'], generation: 3, set: 'soft' },
    },
    says: [/“June 2025” was taken as the month of the days below/],
  },
  {
    name: 'year, month and day in columns of their own; cells that tell nothing',
    text: `Year,Month,Day,Jar,Seed,Seed (mL),pH
2025,5,2,a,8 caps Blue Tin,NA,4.4
2025,5,9,a,2 May a,45.0,#N/A
2025,May,16,a,9 May a,NA,-
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], generation: 3 },
    },
  },
  {
    name: 'seeds by the day of the week',
    text: `Date,Jar,Seed,Hours,Start,End
Mon 5 May 2025,a,8 caps Blue Tin,36+,,
Mon 12 May 2025,a,last Monday's,,7p,7a
Fri 16 May 2025,a,Monday's a,,,
`,
    jars: {
      2: { jar: '2025-05-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36 },
      3: { jar: '2025-05-12 a', seeds: ['2025-05-05 a'], generation: 2, hours: 12 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-12 a'], generation: 3 },
    },
  },
  {
    name: 'German, short headings, “v. Glas” for the seed and “+ Inulin?” above crosses',
    text: `Nr.;Dat.;v. Glas;Mge.;+ Inulin?;Tmp.;Std.;Erg.
1;2.5.25;8 Kps Blue Tin;;x;38;36;fest
2;9.5.25;1;3 EL;;38;36;weich
3;16.5.25;2;3 EL;x;38;36;fest
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'firm', additions: ['Inulin'] },
      3: { jar: '2025-05-09 2', seeds: ['2025-05-02 1'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'soft' },
      4: { jar: '2025-05-16 3', seeds: ['2025-05-09 2'], ml: [45], generation: 3, hours: 36, celsius: 38, set: 'firm', additions: ['Inulin'] },
    },
  },
  {
    name: 'no table at all: each thing beside its name, a jar after the other',
    text: `Date: 2025-05-02
Jar: a
Seed: 8 caps Blue Tin
Set: firm

Date: 2025-05-09
Jar: a
Seed: 2025-05-02 a
Amount: 45 ml
Set: soft
`,
    jars: {
      1: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      6: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, set: 'soft' },
    },
    says: [/a name that comes again was taken to begin the next jar/],
  },
  {
    name: 'each thing beside its name, a jar a line',
    text: `* Date: 2025-05-02; Jar: a; Seed: 8 caps Blue Tin; Set: firm
* Date: 2025-05-09; Jar: a; Seed: 2025-05-02 a; Set: soft
`,
    jars: {
      1: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      2: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], generation: 2, set: 'soft' },
    },
  },
  {
    name: 'what was seen at several hours: only the last is how it set',
    text: `Date,Jar,Seed,8h,12h,24h,36h
2025-05-02,a,8 caps Blue Tin,liquid,soft,firm,very firm
2025-05-09,a,2025-05-02 a,liquid,liquid,soft,firm
next: 2025-05-16,,,,,,
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'very firm', note: '8h: liquid' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], generation: 2, set: 'firm', note: '24h: soft' },
    },
    says: [/“8h” was taken as a look before the end/, /“next: 2025-05-16”/],
  },
  {
    name: 'two seeds and how much of each in columns that name them by letter alone',
    text: `Date,Jar,Seed A,Seed B,A ml,B ml,Set?
2025-05-02,a,8 caps Blue Tin,,,,✅
2025-05-02,b,6 tabs Meadow Pot,,,,✅
2025-05-09,a,2025-05-02 a,2025-05-02 b,30,15,❌
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-05-02 b', sources: ['Meadow Pot'], pieces: [6], generation: 1 },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a', '2025-05-02 b'], ml: [30, 15], generation: 2, set: 'runny', spoiled: true },
    },
  },
  {
    name: 'a row a batch, what was stirred in beside the letters of its jars',
    text: `Date,Seeded from,Amount,Milk,Hours,Temp,A (plain),B (inulin),C (potato starch),Remarks
03/01/2026,12 capsules Hazel Mix,,1 l whole,36,38,firm,soft,,
12/01/2026,3 Jan A,3 tbsp,1 l whole,36,38,firm,firm,spoonable,
21/01/2026,12 Jan C,3 tbsp,1 l whole,35,38,very firm,,,
`,
    jars: {
      2: { jar: '2026-01-03 a', sources: ['Hazel Mix'], pieces: [12], generation: 1, hours: 36, set: 'firm', additions: [] },
      '2 b': { jar: '2026-01-03 b', sources: ['Hazel Mix'], pieces: [12], generation: 1, hours: 36, set: 'soft', additions: ['inulin'] },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 36, set: 'firm', additions: [] },
      '3 b': { jar: '2026-01-12 b', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 36, set: 'firm', additions: ['inulin'] },
      '3 c': { jar: '2026-01-12 c', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 36, set: 'spoonable', additions: ['potato starch'] },
      4: { jar: '2026-01-21 a', seeds: ['2026-01-12 c'], ml: [45], generation: 3, hours: 35, set: 'very firm', additions: [] },
    },
  },
  {
    name: 'German, ends by day and clock without a year, a row a batch',
    text: `Datum;Angesetzt mit;Menge;Start;Ende;A;B
3.1.2026;10 Kapseln Haselmix;;20:00;5.1. 8:00;fest;weich
12.1.2026;3.1. A;3 EL;20:00;14.1. 18:00;fest;weich
`,
    jars: {
      2: { jar: '2026-01-03 a', sources: ['Haselmix'], pieces: [10], generation: 1, hours: 36, set: 'firm' },
      '2 b': { jar: '2026-01-03 b', sources: ['Haselmix'], pieces: [10], generation: 1, hours: 36, set: 'soft' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 46, set: 'firm' },
      '3 b': { jar: '2026-01-12 b', seeds: ['2026-01-03 a'], ml: [45], generation: 2, hours: 46, set: 'soft' },
    },
  },
]; // prettier-ignore
