// More invented spreadsheets, as other keepers would write them; each truth was written before the reader was run on it.
// All figures by hand: US tablespoon 14.78676478125 mL, cup 236.5882365 mL, quart 946.352946 mL (NIST Handbook 44).
import type { Varied } from './varied';

export const OTHER_KEEPERS: readonly Varied[] = [
  {
    name: 'a "sep=" line, units below the headings, two columns of one name, notes over two lines',
    text: `\uFEFFsep=;
Datum;Glas;Starter;Starter;Milch;Temp;Dauer;Ergebnis;Notiz
;;;ml;ml;°C;h;;
1.9.25;A;"8 Kapseln Blue Tin";;1000;38;36;weich;"erste
Charge"
7.9.25;A;1.9.25 A;50;950;38,5;36;fest;
`,
    jars: {
      4: { jar: '2025-09-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft', milkMl: 1000, note: 'erste' },
      6: { jar: '2025-09-07 a', seeds: ['2025-09-01 a'], ml: [50], generation: 2, hours: 36, celsius: 38.5, set: 'firm', milkMl: 950 },
    },
    says: [/units/],
  },
  {
    name: 'headings on two lines, groups above',
    text: `,,Seed,,,Hold,,Result,
Date,Jar,from,amount,Milk,hours,°F,set,
3/14/2025,A,10 caps Blue Tin,,1 qt whole,36,100,soft,
3/20/2025,A,3/14 A,3 tbsp,1 qt whole,36,100,firm,
`,
    jars: {
      3: { jar: '2025-03-14 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, celsius: 37.7778, set: 'soft', milk: 'whole milk', milkMl: 946.4 },
      4: { jar: '2025-03-20 a', seeds: ['2025-03-14 a'], ml: [44.4], generation: 2, hours: 36, set: 'firm', milk: 'whole milk' },
    },
  },
  {
    name: 'headings on two lines, the second carries the units and the rest of the words',
    text: `Date,Jar,Seed,Seed,Held,Bath,How it
made,,jar,ml,hours,deg C,set
2025-05-02,a,6 tablets Meadow Pot,,30,38,firm
2025-05-09,a,2025-05-02 a,40,30,38,soft
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 30, celsius: 38, set: 'firm' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 30, celsius: 38, set: 'soft' },
    },
  },
  {
    name: 'old line ends, trailing empty columns, decimal commas in quoted cells',
    text: 'Date,Jar,Seed,Amount,Temp,pH,Set,,,\r2025-05-02,a,6 tablets Meadow Pot,,"38,5","4,6",firm,,,\r2025-05-09,a,2025-05-02 a,40 ml,"37,5","4,35",soft,,,\r,,,,,,,,,\r',
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, celsius: 38.5, set: 'firm', ph: 4.6 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, celsius: 37.5, set: 'soft', ph: 4.35 },
    },
  },
  {
    name: 'hours and degrees as they are jotted down',
    text: `Date,Jar,Seed,Amount,Held,Warm,Set
2025-05-02,a,6 tablets Meadow Pot,,36-40,38°,firm
2025-05-09,a,2025-05-02 a,40 ml,~36,100F/38C,soft
2025-05-16,a,2025-05-09 a,40 ml,overnight,about 38 C,soft
2025-05-23,a,2025-05-16 a,40 ml,36 hrs (ish),100 deg F,soft
2025-05-30,a,2025-05-23 a,40 ml,1 1/2 days,99-101F,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 38, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 36, celsius: 37.7778, set: 'soft' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, celsius: 38, set: 'soft', note: 'overnight' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [40], generation: 4, hours: 36, celsius: 37.7778, set: 'soft' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [40], generation: 5, hours: 36, celsius: 37.7778, set: 'soft' },
    },
    says: [/“36-40” is a range/, /“~36” was taken as exact/, /“overnight” under “Held” could not be read/],
  },
  {
    name: 'dates in every dress',
    text: `Date,Jar,Seed,Amount
Sat 1 Nov 2025,A,9 caps Blue Tin,
"Nov 8th, 2025",A,1 Nov A,2 tbsp
15.XI.2025,A,8-Nov-25 A,2 tbsp
2025.11.22,A,15/11 A,2 tbsp
2025-11-29 00:00:00,A,"Nov. 22, 2025 - A",2 tbsp
"Saturday, 6 December 2025",A,29Nov25-A,2 tbsp
'2025-12-13,A,A (6th December),2 tbsp
20251220,A,Jar A from Dec 13th,2 tbsp
`,
    jars: {
      2: { jar: '2025-11-01 a', sources: ['Blue Tin'], pieces: [9], generation: 1 },
      3: { jar: '2025-11-08 a', seeds: ['2025-11-01 a'], ml: [29.6], generation: 2 },
      4: { jar: '2025-11-15 a', seeds: ['2025-11-08 a'], ml: [29.6], generation: 3 },
      5: { jar: '2025-11-22 a', seeds: ['2025-11-15 a'], ml: [29.6], generation: 4 },
      6: { jar: '2025-11-29 a', seeds: ['2025-11-22 a'], ml: [29.6], generation: 5 },
      7: { jar: '2025-12-06 a', seeds: ['2025-11-29 a'], ml: [29.6], generation: 6 },
      8: { jar: '2025-12-13 a', seeds: ['2025-12-06 a'], ml: [29.6], generation: 7 },
      9: { jar: '2025-12-20 a', seeds: ['2025-12-13 a'], ml: [29.6], generation: 8 },
    },
  },
  {
    name: 'jar cells with something beside the letter',
    text: `Date,Jar,Seed,Amount,Set
2025-05-02,A (plain),6 tablets Meadow Pot,,firm
2025-05-02,B - inulin,6 tablets Meadow Pot,,soft
2025-05-09,Jar 1,2025-05-02 A,40 ml,firm
2025-05-09,Jar #2,2025-05-02 B,40 ml,firm
2025-05-16,A1,2025-05-09 jar 2,40 ml,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, set: 'firm', note: 'plain' },
      3: { jar: '2025-05-02 b', sources: ['Meadow Pot'], pieces: [6], generation: 1, set: 'soft', note: 'inulin' },
      4: { jar: '2025-05-09 1', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-05-09 2', seeds: ['2025-05-02 b'], ml: [40], generation: 2, set: 'firm' },
      6: { jar: '2025-05-16 a1', seeds: ['2025-05-09 2'], ml: [40], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'jars with names, seeds by name',
    text: `Started,Name,Mother,How much,Set
2025-05-02,Otto,6 tablets Meadow Pot,,firm
2025-05-02,Left shelf,6 tablets Meadow Pot,,soft
2025-05-09,Frieda,Otto,40 ml,firm
2025-05-16,Karl,Frieda + left shelf,20 ml each,firm
2025-05-23,big jar,Karl,40 ml,firm
2025-05-30,Emil,the big jar,40 ml,firm
`,
    jars: {
      2: { jar: '2025-05-02 otto', sources: ['Meadow Pot'], pieces: [6], generation: 1, set: 'firm' },
      3: { jar: '2025-05-02 left shelf', sources: ['Meadow Pot'], pieces: [6], generation: 1, set: 'soft' },
      4: { jar: '2025-05-09 frieda', seeds: ['2025-05-02 otto'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-05-16 karl', seeds: ['2025-05-09 frieda', '2025-05-02 left shelf'], ml: [20, 20], generation: 3, set: 'firm' },
      6: { jar: '2025-05-23 big jar', seeds: ['2025-05-16 karl'], ml: [40], generation: 4, set: 'firm' },
      7: { jar: '2025-05-30 emil', seeds: ['2025-05-23 big jar'], ml: [40], generation: 5, set: 'firm' },
    },
  },
  {
    name: 'a batch word beside the letter, days carried down, ditto in the seed',
    text: `Date,Batch,Jar,Seed,Amount,Hours
2025-05-02,plain,a,6 tablets Meadow Pot,,36
,plain,b,"""",,36
2025-05-09,fibre,a,2 May plain b,3 EL,36
,,b,same,3 EL,36
,,c,″,3 EL,36
2025-05-16,fibre,a,9 May fibre c,3 EL,36
2025-05-23,fibre,a,prev,3 EL,36
`,
    jars: {
      2: { jar: '2025-05-02 plain a', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 36 },
      3: { jar: '2025-05-02 plain b', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 36 },
      4: { jar: '2025-05-09 fibre a', seeds: ['2025-05-02 plain b'], ml: [45], generation: 2 },
      5: { jar: '2025-05-09 fibre b', seeds: ['2025-05-02 plain b'], ml: [45], generation: 2 },
      6: { jar: '2025-05-09 fibre c', seeds: ['2025-05-02 plain b'], ml: [45], generation: 2 },
      7: { jar: '2025-05-16 fibre a', seeds: ['2025-05-09 fibre c'], ml: [45], generation: 3 },
      8: { jar: '2025-05-23 fibre a', seeds: ['2025-05-16 fibre a'], ml: [45], generation: 4 },
    },
    says: [/batch.*row above/i],
  },
  {
    name: 'a bare product, never with a count',
    text: `Date,Jar,Seed,Seed amt,Set
2025-05-02,a,Blue Tin,,firm
2025-05-02,b,Blue Tin,,soft
2025-05-09,a,2025-05-02 b,40 ml,firm
2025-07-09,a,Blue Tin,,firm
2025-07-16,a,the good one from before new year,40 ml,firm
2025-07-16,b,2025-07-09 a + Blue Tin,40 ml,firm
`,
    aside: [6],
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], generation: 1, set: 'firm' },
      3: { jar: '2025-05-02 b', sources: ['Blue Tin'], generation: 1, set: 'soft' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 b'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-07-09 a', sources: ['Blue Tin'], generation: 1, set: 'firm' },
      7: { jar: '2025-07-16 b', seeds: ['2025-07-09 a'], sources: ['Blue Tin'], ml: [40], generation: 2, set: 'firm' },
    },
    says: [/“Blue Tin” was taken as a product/],
  },
  {
    name: 'a product that comes up only later, twice',
    text: `Date,Jar,Seed,Seed amt
2025-05-02,a,12 caps Blue Tin,
2025-05-09,a,2025-05-02 a,40 ml
2025-07-09,a,Hill Pouch,
2025-07-16,a,Hill Pouch,
2025-07-23,a,somebody's leftovers,40 ml
`,
    aside: [6],
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2 },
      4: { jar: '2025-07-09 a', sources: ['Hill Pouch'], generation: 1 },
      5: { jar: '2025-07-16 a', sources: ['Hill Pouch'], generation: 1 },
    },
  },
  {
    name: 'figures under "Seed (tbsp)", shares in per cent, heaped spoons, cups',
    text: `Date,Jar,Seed,Seed (tbsp),Milk ml,Set
2025-05-02,a,12 caps Blue Tin,,1000,firm
2025-05-09,a,2025-05-02 a,3,1000,firm
2025-05-16,a,2025-05-09 a,5%,1000,firm
2025-05-23,a,2025-05-16 a,2 heaped,1000,firm
2025-05-30,a,2025-05-23 a,1/2 cup,1000,firm
2025-06-06,a,2025-05-30 a,2 heaped tbsp,1000,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [50], generation: 3, set: 'firm' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [30], generation: 4, set: 'firm' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [125], generation: 5, set: 'firm' },
      7: { jar: '2025-06-06 a', seeds: ['2025-05-30 a'], ml: [30], generation: 6, set: 'firm' },
    },
    says: [/“5%” was taken as 50 mL/, /heaped.*level/],
  },
  {
    name: 'milk in halves of a gallon and with its fat',
    text: `Date,Jar,Seed,Amount,Milk
2025-05-02,a,12 caps Blue Tin,,half gallon 2%
2025-05-09,a,2025-05-02 a,3 tbsp,1/2 gal 2% milk
2025-05-16,a,2025-05-09 a,3 tbsp,2 L whole
2025-05-23,a,2025-05-16 a,3 tbsp,2 quarts of half & half
2025-05-30,a,2025-05-23 a,3 tbsp,3.5 %
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1, milk: '2% milk', milkMl: 1892.7 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, milk: '2% milk', milkMl: 1892.7 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [44.4], generation: 3, milk: 'whole milk', milkMl: 2000 },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [44.4], generation: 4, milk: 'half and half', milkMl: 1892.7 },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [44.4], generation: 5, milk: '3.5% milk' },
    },
  },
  {
    name: 'several additions in a cell, and a column for each',
    text: `Date,Jar,Seed,Amount,Fibre,Inulin g,Oat bran (g)
2025-05-02,a,12 caps Blue Tin,,2T inulin + 1T oat bran,,
2025-05-09,a,2025-05-02 a,3 tbsp,,10,
2025-05-16,a,2025-05-09 a,3 tbsp,"potato starch (2 tbsp), acacia 1 tsp",0,8
2025-05-23,a,2025-05-16 a,3 tbsp,-,12 g,"7,5"
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1, additions: ['inulin', 'oat bran'], added: ['29.6 mL', '14.8 mL'] },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, additions: ['inulin'], added: ['10 g'] },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [44.4], generation: 3, additions: ['potato starch', 'acacia', 'oat bran'], added: ['29.6 mL', '4.9 mL', '8 g'] },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [44.4], generation: 4, additions: ['inulin', 'oat bran'], added: ['12 g', '7.5 g'] },
    },
  },
  {
    name: 'pH as written beside a strip or a meter',
    text: `Date;Jar;Seed;Amount;Acidity (pH);Set
2025-05-02;a;12 caps Blue Tin;;4,3;firm
2025-05-09;a;2025-05-02 a;3 tbsp;4.3 (strip);firm
2025-05-16;a;2025-05-09 a;3 tbsp;~4.4;firm
2025-05-23;a;2025-05-16 a;3 tbsp;pH 4.4;firm
2025-05-30;a;2025-05-23 a;3 tbsp;not measured;firm
2025-06-06;a;2025-05-30 a;3 tbsp;4.2 meter;firm
2025-06-13;a;2025-06-06 a;3 tbsp;43;firm
2025-06-20;a;2025-06-06 a;3 tbsp;n/a;firm
`,
    aside: [8],
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1, ph: 4.3, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, ph: 4.3, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [44.4], generation: 3, ph: 4.4, set: 'firm' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [44.4], generation: 4, ph: 4.4, set: 'firm' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [44.4], generation: 5, set: 'firm' },
      7: { jar: '2025-06-06 a', seeds: ['2025-05-30 a'], ml: [44.4], generation: 6, ph: 4.2, set: 'firm' },
      9: { jar: '2025-06-20 a', seeds: ['2025-06-06 a'], ml: [44.4], generation: 7, set: 'firm' },
    },
  },
  {
    name: 'signs of spoilage in other languages, and what is denied',
    text: `Date,Jar,Seed,Amount,Notes
2025-05-02,a,12 caps Blue Tin,,no pink or mould this time
2025-05-02,b,12 caps Blue Tin,,"kein Schimmel, riecht gut"
2025-05-02,c,12 caps Blue Tin,,leicht rosa am Rand
2025-05-02,d,12 caps Blue Tin,,sans moisissure
2025-05-02,e,12 caps Blue Tin,,taches roses
2025-05-02,f,12 caps Blue Tin,,sin moho
2025-05-02,g,12 caps Blue Tin,,muffa verde
2025-05-02,h,12 caps Blue Tin,,pleśń na wierzchu
2025-05-02,i,12 caps Blue Tin,,Deckel hat sich gewölbt
2025-05-02,j,12 caps Blue Tin,,smelled off
2025-05-02,k,12 caps Blue Tin,,never any sign of mold
2025-05-02,l,12 caps Blue Tin,,ging mooi dik worden zonder schimmel
2025-05-02,m,12 caps Blue Tin,,green spots on top
2025-05-02,n,12 caps Blue Tin,,"a bit of foam, fuzzy white patch"
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      3: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      4: { jar: '2025-05-02 c', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      5: { jar: '2025-05-02 d', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      6: { jar: '2025-05-02 e', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      7: { jar: '2025-05-02 f', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      8: { jar: '2025-05-02 g', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      9: { jar: '2025-05-02 h', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      10: { jar: '2025-05-02 i', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      11: { jar: '2025-05-02 j', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      12: { jar: '2025-05-02 k', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      13: { jar: '2025-05-02 l', sources: ['Blue Tin'], pieces: [12], generation: 1 },
      14: { jar: '2025-05-02 m', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
      15: { jar: '2025-05-02 n', sources: ['Blue Tin'], pieces: [12], generation: 1, spoiled: true },
    },
  },
  {
    name: 'start and end as moments',
    text: `Jar,Start,End,Seed,Amount,Bath C,Set,Cost,Moon
a,2025-05-02 19:00,2025-05-04 07:00,6 tablets Meadow Pot,,38,firm,3.50,full
a,2025-05-09 20:00,2025-05-11 06:30,2025-05-02 a,40 ml,38,soft,2.10,waning
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 36, celsius: 38, set: 'firm', note: 'Cost: 3.50' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 34.5, celsius: 38, set: 'soft', note: 'Moon: waning' },
    },
    says: [/from.*to.*36 h/i, /“Moon” is not one we know/],
  },
  {
    name: 'a day, a time in and a time out',
    text: `Date,Jar,Time in,Time out,Seed,Amount,Set
5/2/2025,a,7pm,9am next day,6 tablets Meadow Pot,,firm
5/9/2025,a,6:30 pm,8:30 am (+2),5/2/2025 a,40 ml,soft
5/16/2025,a,18:00,6:00,5/9/2025 a,40 ml,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 14, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 38, set: 'soft' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, hours: 12, set: 'soft' },
    },
    answers: { 'day order': 'month first' },
  },
  {
    name: 'whey, curd and frozen cubes as seed',
    text: `Date,Jar,Seed,Amount,Set
2025-05-02,a,6 tablets Meadow Pot,,firm
2025-05-09,a,whey from 2025-05-02 a,40 ml,firm
2025-05-16,a,curd of 9 May a,40 ml,firm
2025-05-23,a,2 frozen cubes of 2025-05-16 a,,firm
2025-05-30,a,2025-05-23 a (whey),2 tbsp,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'firm', part: 'whey' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, set: 'firm', part: 'curd' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], generation: 4, set: 'firm', note: 'frozen cubes' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [30], generation: 5, set: 'firm', part: 'whey' },
    },
  },
  {
    name: 'degrees that fit only one scale, against the heading or not',
    text: `Date,Jar,Seed,Amount,Temp (C)
2025-05-02,a,6 tablets Meadow Pot,,38
2025-05-09,a,2025-05-02 a,40 ml,100
2025-05-16,a,2025-05-09 a,40 ml,100F
2025-05-23,a,2025-05-16 a,40 ml,62
2025-05-24,a,2025-05-16 a,40 ml,50
2025-05-25,a,2025-05-16 a,40 ml,20
2025-05-26,a,2025-05-16 a,40 ml,380
2025-05-27,a,2025-05-16 a,40 ml,-5
`,
    aside: [5, 8, 9],
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, celsius: 38 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, celsius: 37.7778 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, celsius: 37.7778 },
      6: { jar: '2025-05-24 a', seeds: ['2025-05-16 a'], ml: [40], generation: 4, celsius: 50 },
      7: { jar: '2025-05-25 a', seeds: ['2025-05-16 a'], ml: [40], generation: 4, celsius: 20 },
    },
    says: [/“100” .*°F/, /“50” is an unusual temperature/, /“20” is an unusual temperature/],
  },
  {
    name: 'degrees Fahrenheit in the heading, one jar in Celsius',
    text: `Date,Jar,Seed,Amount,Temp (°F)
2025-05-02,a,6 tablets Meadow Pot,,101
2025-05-09,a,2025-05-02 a,3 T,38
2025-05-16,a,2025-05-09 a,3 T,38.5 C
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1, celsius: 38.3333 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, celsius: 38 },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [44.4], generation: 3, celsius: 38.5 },
    },
    says: [/“38” .*°C/],
  },
  {
    name: 'a spreadsheet’s day numbers in the seeds too',
    // 45779 is 2025-05-02 (45658 is 2025-01-01, and 121 days later is 2 May).
    text: `Date,Jar,Seed,Amount
45779,A,6 tablets Meadow Pot,
45779,B,6 tablets Meadow Pot,
45786,A,45779 B,40 ml
45793,A,45786-A + 45779 A,20 ml each
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [6], generation: 1 },
      3: { jar: '2025-05-02 b', sources: ['Meadow Pot'], pieces: [6], generation: 1 },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 b'], ml: [40], generation: 2 },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-09 a', '2025-05-02 a'], ml: [20, 20], generation: 3 },
    },
    says: [/“45779” was taken as a spreadsheet’s day number: 2025-05-02/],
  },
  {
    name: 'numbered batches, seeds as number and letter',
    text: `Batch #,Date,Jar,From,Qty,Hrs,Result
1,5/2/25,a,8 caps Blue Tin,,36,thin
1,5/2/25,b,8 caps Blue Tin,,36,firm
2,5/14/25,a,1b,3 T,36,firm
2,5/14/25,b,1-b,3 T,36,firm
3,5/20/25,a,#2 a,3 T,36,firm
4,5/26/25,a,batch 3 jar a,3 T,36,thick
`,
    jars: {
      2: { jar: '2025-05-02 1 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'runny', hours: 36 },
      3: { jar: '2025-05-02 1 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', hours: 36 },
      4: { jar: '2025-05-14 2 a', seeds: ['2025-05-02 1 b'], ml: [44.4], generation: 2, set: 'firm' },
      5: { jar: '2025-05-14 2 b', seeds: ['2025-05-02 1 b'], ml: [44.4], generation: 2, set: 'firm' },
      6: { jar: '2025-05-20 3 a', seeds: ['2025-05-14 2 a'], ml: [44.4], generation: 3, set: 'firm' },
      7: { jar: '2025-05-26 4 a', seeds: ['2025-05-20 3 a'], ml: [44.4], generation: 4, set: 'firm' },
    },
  },
  {
    name: 'one row for several jars',
    text: `Date,Jars,Seed,Amount each,Milk,Set
2025-05-02,"a, b, c",8 caps Blue Tin,,1 qt whole milk,firm
2025-05-09,a & b,2025-05-02 c,3 T,1 qt whole milk,firm
2025-05-16,a-c,2025-05-09 b,3 T,1 qt whole milk,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', milkMl: 946.4 },
      '2 b': { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      '2 c': { jar: '2025-05-02 c', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 c'], ml: [44.4], generation: 2, set: 'firm' },
      '3 b': { jar: '2025-05-09 b', seeds: ['2025-05-02 c'], ml: [44.4], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 b'], ml: [44.4], generation: 3, set: 'soft' },
      '4 b': { jar: '2025-05-16 b', seeds: ['2025-05-09 b'], ml: [44.4], generation: 3, set: 'soft' },
      '4 c': { jar: '2025-05-16 c', seeds: ['2025-05-09 b'], ml: [44.4], generation: 3, set: 'soft' },
    },
    says: [/3 jars/],
  },
  {
    name: 'Portuguese, semicolons, commas for decimals',
    text: `Data;Frasco;Iniciado de;Quantidade;Leite;Fibra;Horas;Temperatura;Consistência;pH;Observações
2 mai 2025;A;10 cápsulas Lata Azul;;1 L leite integral;;36;38,5;mole;;primeira vez
9 mai 2025;A;2 mai A;3 colheres de sopa;1 L leite integral;2 colheres de sopa inulina;36;38;firme;4,4;sem bolor
16 mai 2025;A;9 mai A;45 ml;1 L leite integral;;36;38;muito firme;4,3;mofo preto
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Lata Azul'], pieces: [10], generation: 1, hours: 36, celsius: 38.5, set: 'soft' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'firm', ph: 4.4, additions: ['inulina'] },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, hours: 36, celsius: 38, set: 'very firm', ph: 4.3, spoiled: true },
    },
  },
  {
    name: 'Polish, tabs',
    text: `Data\tSłoik\tZaczyn\tIlość\tMleko\tDodatek\tGodziny\tTemperatura\tKonsystencja\tUwagi
02.05.2025\tA\t10 kapsułek Niebieska Puszka\t\t1 l mleka\t\t36\t38\trzadki\t
09.05.2025\tA\t02.05.2025 A\t3 łyżki\t1 l mleka\t2 łyżki inuliny\t36\t38\tgęsty\tbez pleśni
16.05.2025\tA\t09.05 A\t3 łyżki\t1 l mleka\t\t36\t37,5\tbardzo gęsty\tpleśń
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Niebieska Puszka'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'runny' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, hours: 36, celsius: 37.5, set: 'very firm', spoiled: true },
    },
  },
  {
    name: 'Dutch, slashes, month in letters',
    text: `Datum;Potje;Geënt met;Hoeveelheid;Melk;Vezel;Uren;Graden;Dikte;Opmerkingen
2/5/2025;a;10 capsules Blauw Blik;;1 l volle melk;;36;38;dun;
14/5/2025;a;2/5/2025 a;3 eetlepels;1 l volle melk;2 el haverzemelen;36;38;dik;
28/5/2025;a;14/5 a;3 el;1 l volle melk;;36;38;erg dik;roze vlek
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blauw Blik'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'runny', milk: 'volle melk' },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, set: 'firm', additions: ['haverzemelen'] },
      4: { jar: '2025-05-28 a', seeds: ['2025-05-14 a'], ml: [45], generation: 3, hours: 36, set: 'very firm', spoiled: true },
    },
  },
  {
    name: 'Danish, years of two figures, a culture from a neighbour',
    text: `Dato;Glas;Startet fra;Mængde;Mælk;Timer;Temperatur;Resultat;Bemærkninger
02.05.25;a;kultur fra naboen;3 spsk;1 l sødmælk;36;38;blød;
09.05.25;a;02.05.25 a;3 spsk;1 l sødmælk;36;38;fast;
16.05.25;a;forrige;2 spsk;1 l sødmælk;36;38;meget fast;skimmel
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['kultur fra naboen'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'soft' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 3, hours: 36, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [30], generation: 4, hours: 36, set: 'very firm', spoiled: true },
    },
  },
  {
    name: 'Australian spoons, day first, words for how it went',
    text: `Day,Tub,Started with,Scoop,Milk,How long,How warm,How'd it go,Australian spoons
2/5/25,1,10 caps Blue Tin,,1L full cream,36h,38C,a bit runny,
14/5/25,1,2/5 #1,2 tbsp,1L full cream,36h,38C,nice and thick,
26/5/25,1,14/5 #1,2 tbsp,1L full cream,36h,38C,came out solid,
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'runny', milk: 'whole milk', milkMl: 1000 },
      3: { jar: '2025-05-14 1', seeds: ['2025-05-02 1'], ml: [40], generation: 2, hours: 36, set: 'firm' },
      4: { jar: '2025-05-26 1', seeds: ['2025-05-14 1'], ml: [40], generation: 3, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'the day’s order told by one date only, labels as seeds with a slash',
    lastLine: 'day first',
    text: `Label;Parent(s);Vol. seed [mL];Base;t [h];T [°C];Gel;Final pH;Discarded?
02/05/2025-A;8 x Blue Tin;;UHT whole;36;38;soft;4.6;no
02/05/2025-B;8 x Blue Tin;;UHT whole;36;38;firm;4.5;no
09/05/2025-A;02/05/2025-B;45;UHT whole;36;38;firm;4.4;yes
16/05/2025-A;02/05/2025-A / 02/05/2025-B;20/25;UHT whole;36;38;very firm;4.3;no
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft', ph: 4.6 },
      3: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm', ph: 4.5 },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 b'], ml: [45], generation: 2, hours: 36, set: 'firm', ph: 4.4, spoiled: true },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-02 a', '2025-05-02 b'], ml: [20, 25], generation: 2, hours: 36, set: 'very firm', ph: 4.3 },
    },
    says: [/day first/],
  },
  {
    name: 'texture, body or consistency in place of a set column; short years; a comment row',
    text: `made on,pot,seeded by,seed qty,body,remarks
5-2-25,x,10 caps Blue Tin,,loose,
-- moved house --,,,,,
5-14-25,x,5-2-25 x,3T,custardy,
5-27-25,x,5-14 x,3T,stiff,
`,
    jars: {
      2: { jar: '2025-05-02 x', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'soft' },
      4: { jar: '2025-05-14 x', seeds: ['2025-05-02 x'], ml: [44.4], generation: 2, set: 'spoonable' },
      5: { jar: '2025-05-27 x', seeds: ['2025-05-14 x'], ml: [44.4], generation: 3, set: 'very firm' },
    },
  },
  {
    name: 'years first with two figures',
    text: `Dag;Burk;Från;Mängd;Resultat
25-05-02;a;10 kapslar Blå Burk;;mjuk
25-05-09;a;25-05-02 a;3 msk;fast
25-05-23;a;25-05-09 a;3 msk;fast
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blå Burk'], pieces: [10], generation: 1, set: 'soft' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, set: 'firm' },
      4: { jar: '2025-05-23 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'numbered rows that are no jars, a generation column, seeds by day alone',
    text: `#,Date,Generation,Made from,Tbsp,Hours,Temp F,Came out
1,5/2/2025,1,10 caps Blue Tin + 5 caps Meadow Pot,,36,100,soft
2,5/14/2025,2,5/2/2025,3,36,100,firm
3,5/20/2025,3,previous,3,36,100,firm
4,5/28/2025,4,5/20,3,36,100,grainy
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin', 'Meadow Pot'], pieces: [10, 5], generation: 1, hours: 36, set: 'soft' },
      3: { jar: '2025-05-14 2', seeds: ['2025-05-02 1'], ml: [44.4], generation: 2, hours: 36, set: 'firm' },
      4: { jar: '2025-05-20 3', seeds: ['2025-05-14 2'], ml: [44.4], generation: 3, hours: 36, set: 'firm' },
      5: { jar: '2025-05-28 4', seeds: ['2025-05-20 3'], ml: [44.4], generation: 4, hours: 36 },
    },
    says: [/“grainy” is none of the five words/],
  },
]; // prettier-ignore
