// Invented spreadsheets as a keeper’s friend would hand them over; each truth was written before the reader was run on it.
// Figures by hand: US tablespoon 14.78676478125 mL, teaspoon a third of it, cup 236.5882365 mL (NIST Handbook 44); metric
// spoons 15 and 5 mL (common practice).
import type { Varied } from './varied';

const today = '2026-03-01';

export const FRIENDS_KEEPERS: readonly Varied[] = [
  {
    name: 'batch and jar as one number with a point, seeds by it',
    text: `Date;Jar no.;Starter;Starter amount;Result
05.01.2026;1.1;8 caps Blue Tin;;firm
05.01.2026;1.2;8 caps Blue Tin;;soft
12.01.2026;2.1;1.2;3 EL;firm
19.01.2026;3.1;2.1;3 EL;firm
19.01.2026;3.2;2.1 + 1.1;3 EL + 1 EL;very firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 1.1', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 1.2', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 2.1', seeds: ['2026-01-05 1.2'], ml: [45], generation: 2, set: 'firm' },
      5: { jar: '2026-01-19 3.1', seeds: ['2026-01-12 2.1'], ml: [45], generation: 3, set: 'firm' },
      6: { jar: '2026-01-19 3.2', seeds: ['2026-01-12 2.1', '2026-01-05 1.1'], ml: [45, 15], generation: 3, set: 'very firm' },
    },
  },
  {
    name: 'everything in capitals, as typed on an old machine',
    text: `DATE,JAR,STARTER,QTY,MILK,HRS,TEMP,SET,REMARKS
5 JAN 2026,A,8 CAPS BLUE TIN,,WHOLE,36,100F,FIRM,
12 JAN 2026,A,5 JAN A,3 TBSP,WHOLE,36 H,100 F,VERY FIRM,LITTLE WHEY
19 JAN 2026,B,12 JAN A,1/4 CUP,WHOLE,34,101 F,SOFT,PINK SPOT ON TOP
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['BLUE TIN'], pieces: [8], generation: 1, hours: 36, celsius: 37.778, set: 'firm', milk: 'whole milk' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, hours: 36, set: 'very firm', note: 'LITTLE WHEY' },
      4: { jar: '2026-01-19 b', seeds: ['2026-01-12 a'], ml: [59.1], generation: 3, hours: 34, set: 'soft', spoiled: true, note: 'PINK SPOT ON TOP' },
    },
  },
  {
    name: 'amounts in words',
    text: `Day,Jar,Made from,How much,Set
5 January 2026,a,eight capsules of Blue Tin,,firm
12 January 2026,a,5 January a,three tablespoons,firm
19 January 2026,a,12 January a,half a cup,soft
26 January 2026,a,19 January a,a tablespoon,soft
2 February 2026,a,26 January a,two and a half tablespoons,firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, set: 'firm' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [118.3], generation: 3, set: 'soft' },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [14.8], generation: 4, set: 'soft' },
      6: { jar: '2026-02-02 a', seeds: ['2026-01-26 a'], ml: [37], generation: 5, set: 'firm' },
    },
  },
  {
    name: 'the headings of seed and amount changed about',
    text: `Date,Jar,Amount,Seed,Notes
2026-01-05,a,8 caps Blue Tin,,
2026-01-12,a,2026-01-05 a,45 ml,
2026-01-19,a,2026-01-12 a,45 ml,smooth
2026-01-26,a,2026-01-19 a,30 ml,
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, note: 'smooth' },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [30], generation: 4 },
    },
  },
  {
    name: 'how it set as a mark of five, what a mark means said above',
    text: `Set: 1 = liquid and 5 = very firm,,,,
Date,Jar,Seed,Amount,Set (1-5)
2026-01-05,a,8 caps Blue Tin,,4
2026-01-12,a,2026-01-05 a,45 ml,3
2026-01-19,a,2026-01-12 a,45 ml,5
`,
    today,
    jars: {
      3: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, note: '4' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, note: '3' },
      5: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, note: '5' },
    },
  },
  {
    name: 'when it was opened, eaten up and given away: days that are no ends of a hold',
    text: `Made,Jar,From,ml,Opened,Eaten,Given to
05/01/2026,a,8 caps Blue Tin,,08/01/2026,20/01/2026,
13/01/2026,a,05/01/2026 a,45,14/01/2026,25/01/2026,neighbour
20/01/2026,a,13/01/2026 a,45,,,sister
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, note: '20/01/2026' },
      3: { jar: '2026-01-13 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, note: 'neighbour' },
      4: { jar: '2026-01-20 a', seeds: ['2026-01-13 a'], ml: [45], generation: 3, note: 'sister' },
    },
  },
  {
    name: 'a keeper’s own count of generations beside the jar, the mother with hers',
    text: `date,jar,gen,mother,mother gen,tbsp,set
2026-01-05,a,0,8 caps Blue Tin,,,firm
2026-01-12,a,1,2026-01-05 a,0,3,firm
2026-01-19,a,2,2026-01-12 a,1,3,soft
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, set: 'firm', note: 'gen: 1' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [44.4], generation: 3, set: 'soft', note: 'gen: 2' },
    },
  },
  {
    name: 'a hold in minutes, degrees with their doubt, two scales in one cell',
    text: `Date,Jar,Seed,Amount,Hold (min),Temp
2026-01-05,a,8 caps Blue Tin,,2160,38 ± 1 °C
2026-01-12,a,2026-01-05 a,45 ml,2040,37-39 °C
2026-01-19,a,2026-01-12 a,45 ml,2160,38 °C / 100 °F
2026-01-26,a,2026-01-19 a,45 ml,1800,approx. 38C
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 34, celsius: 38 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, hours: 36, celsius: 38 },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [45], generation: 4, hours: 30, celsius: 38 },
    },
  },
  {
    name: 'a moment with a T, times of the jar out on the next line of the cell',
    text: `When,Jar,Seed,Vol,Out
2026-01-05T19:00,a,8 caps Blue Tin,,2026-01-07T07:00
2026-01-12T18:30:00Z,a,2026-01-05 a,45 ml,2026-01-14T06:30
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 36 },
    },
  },
  {
    name: 'headings that are whole questions',
    text: `When did I make it?,Which jar is it?,Which jar did I take as starter?,How much of it did I use?,How long was it warm?,How warm was it?,How did it turn out?,Anything to remark?
5 Jan 2026,a,8 caps Blue Tin,,36 h,38 C,firm,
12 Jan 2026,a,5 Jan a,3 tbsp,34 h,38 C,soft,fed the cat with it
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 34, celsius: 38, set: 'soft', note: 'fed the cat with it' },
    },
  },
  {
    name: 'German, days of the week and no year, seeds as “vom” a day, spoons as words',
    text: `Tag;Glas;Woher;Wieviel;Std.;Grad;Wie geworden;Sonst noch
Mo, 5.1.;A;8 Kapseln Blue Tin;;36;38;stichfest;
Mo, 12.1.;A;vom 5.1.;drei Esslöffel;36;38;weich;wenig Molke
Mo, 19.1.;B;A vom 12.1.;2 Essl.;34;37,5;sehr fest;riecht angenehm säuerlich
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'soft', note: 'wenig Molke' },
      4: { jar: '2026-01-19 b', seeds: ['2026-01-12 a'], ml: [30], generation: 3, hours: 34, celsius: 37.5, set: 'very firm' },
    },
  },
  {
    name: 'the amount before the jar with “of”, two in one cell, none in a column',
    text: `Date,Jar,Inoculum,Result
2026-01-05,a,4 caps Blue Tin + 4 tabs Meadow Pot,firm
2026-01-05,b,8 caps Blue Tin,soft
2026-01-12,a,3T of 5 Jan a + 1T of 5 Jan b,firm
2026-01-12,b,60 mL of jar b (5 Jan),soft
2026-01-19,a,2 Tbs. each of 12 Jan a and 12 Jan b,firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin', 'Meadow Pot'], pieces: [4, 4], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a', '2026-01-05 b'], ml: [45, 15], generation: 2, set: 'firm' },
      5: { jar: '2026-01-12 b', seeds: ['2026-01-05 b'], ml: [60], generation: 2, set: 'soft' },
      6: { jar: '2026-01-19 a', seeds: ['2026-01-12 a', '2026-01-12 b'], ml: [30, 30], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'control and trial jars by their words, the trial named in the heading of its addition',
    text: `Date,Jar,Seed,Seed mL,Inulin (g),Oat bran (tsp),Set
2026-01-05,control,8 caps Blue Tin,,0,0,firm
2026-01-12,control,5 Jan control,45,0,0,firm
2026-01-12,inulin,5 Jan control,45,10,0,very firm
2026-01-12,bran,5 Jan control,45,0,2,soft
2026-01-19,control,12 Jan inulin,45,0,0,firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 control', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', additions: [] },
      3: { jar: '2026-01-12 control', seeds: ['2026-01-05 control'], ml: [45], generation: 2, set: 'firm', additions: [] },
      4: { jar: '2026-01-12 inulin', seeds: ['2026-01-05 control'], ml: [45], generation: 2, set: 'very firm', additions: ['Inulin'], added: ['10 g'] },
      5: { jar: '2026-01-12 bran', seeds: ['2026-01-05 control'], ml: [45], generation: 2, set: 'soft', additions: ['Oat bran'], added: ['10 mL'] },
      6: { jar: '2026-01-19 control', seeds: ['2026-01-12 inulin'], ml: [45], generation: 3, set: 'firm', additions: [] },
    },
  },
  {
    name: 'a legend below the table, a line of plans, an average',
    text: `Date,Jar,Seed,Amount,pH
2026-01-05,a,8 caps Blue Tin,,4.4
2026-01-12,a,2026-01-05 a,45 ml,4.3
2026-01-12,b,2026-01-05 a,45 ml,4.5
Average,,,,4.4
,,,,
a = plain,,,,
b = with bran,,,,
to do: buy more capsules,,,,
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, ph: 4.3 },
      4: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], ml: [45], generation: 2, ph: 4.5 },
    },
    says: [/line of totals/, /“to do: buy more capsules” was taken as a remark/],
  },
  {
    name: 'results in a word or two of one’s own, some of them in marks',
    text: `Date,Jar,Seed,Amount,Result
2026-01-05,a,8 caps Blue Tin,,👍
2026-01-12,a,2026-01-05 a,45 ml,perfect
2026-01-19,a,2026-01-12 a,45 ml,meh
2026-01-26,a,2026-01-19 a,45 ml,thick but grainy
2026-02-02,a,2026-01-26 a,45 ml,failed to set
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3 },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [45], generation: 4, set: 'firm' },
      6: { jar: '2026-02-02 a', seeds: ['2026-01-26 a'], ml: [45], generation: 5, set: 'runny', spoiled: true },
    },
    says: [/“perfect” is none of the five words/, /“meh” is none of the five words/],
  },
  {
    name: 'jar sizes and weights beside the jar, empty and full',
    text: `Date,Jar,Jar size,Empty (g),Full (g),Seed,Seed (g),Milk
2026-01-05,a,1 qt,410,1390,8 caps Blue Tin,,whole milk
2026-01-12,a,1 pint,300,780,2026-01-05 a,45,whole milk
2026-01-19,a,1 pint,300,785,2026-01-12 a,45,2% milk
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, milk: 'whole milk', note: '410' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, milk: 'whole milk', note: '780' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, milk: '2% milk', note: '785' },
    },
  },
  {
    name: 'the share of seed as one to so many, with the milk beside it',
    text: `Date,Jar,Seed,Ratio,Milk (ml),Set
2026-01-05,a,8 caps Blue Tin,,1000,firm
2026-01-12,a,2026-01-05 a,1:20,1000,firm
2026-01-19,a,2026-01-12 a,1:25,1000,soft
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', milkMl: 1000 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, set: 'firm', milkMl: 1000, note: '1:20' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, set: 'soft', milkMl: 1000, note: '1:25' },
    },
  },
  {
    name: 'newest first, blank rows and columns, the day only on the first jar of it',
    text: `,Date,,Jar,Starter,,Amt,Texture
,,,,,,,
,19 Jan 2026,,b,12 Jan a,,3 tbsp,firm
,,,a,12 Jan a,,3 tbsp,soft
,,,,,,,
,12 Jan 2026,,a,5 Jan a,,3 tbsp,firm
,,,,,,,
,5 Jan 2026,,a,8 caps Blue Tin,,,firm
`,
    today,
    jars: {
      3: { jar: '2026-01-19 b', seeds: ['2026-01-12 a'], ml: [44.4], generation: 3, set: 'firm' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [44.4], generation: 3, set: 'soft' },
      6: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, set: 'firm' },
      8: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
    },
  },
  {
    name: 'several things in one cell of results: set, whey, taste, each between semicolons',
    text: `Date,Jar,Seed,Amount,Result
2026-01-05,a,8 caps Blue Tin,,"firm; no whey; mild"
2026-01-12,a,2026-01-05 a,45 ml,"soft; lots of whey; very tangy"
2026-01-19,a,2026-01-12 a,45 ml,"thick, tart, smelled of yeast"
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, set: 'soft' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'who made it, the weather, where it stood: columns that a ledger has no place for',
    text: `Date,Who,Room °C,Shelf,Jar,Starter,Amount,Bath °C,Set,Rating
2026-01-05,Robin,19,top,a,8 caps Blue Tin,,38,firm,8/10
2026-01-12,Kim,21,middle,a,2026-01-05 a,45 ml,38,soft,6/10
2026-01-19,Robin,18,top,a,2026-01-12 a,45 ml,37.5,firm,9/10
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, celsius: 38, set: 'firm', note: 'Robin' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, celsius: 38, set: 'soft', note: '21' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, celsius: 37.5, set: 'firm', note: '9/10' },
    },
  },
  {
    name: 'a title with batch and day above each block, seeds by batch and letter',
    text: `Batch 1 - 5 Jan 2026,,,
Jar,Seed,mL,How it set
a,8 caps Blue Tin,,firm
b,8 caps Blue Tin,,soft
Batch 2 - 12 Jan 2026,,,
Jar,Seed,mL,How it set
a,batch 1 a,45,firm
b,batch 1 b,45,firm
Batch 3 - 19 Jan 2026,,,
Jar,Seed,mL,How it set
a,batch 2 b,45,soft
`,
    today,
    jars: {
      3: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      4: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      7: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, set: 'firm' },
      8: { jar: '2026-01-12 b', seeds: ['2026-01-05 b'], ml: [45], generation: 2, set: 'firm' },
      11: { jar: '2026-01-19 a', seeds: ['2026-01-12 b'], ml: [45], generation: 3, set: 'soft' },
    },
  },
  {
    name: 'days without a year as month and day, begun and ended by p and a',
    text: `date,jar,starter,amt,in,out next day,temp,how firm
1/5,a,8 caps Blue Tin,,7p,7a,100,firm
1/12,a,1/5 a,3T,7:30p,8a,101,soft
1/19,b,1/12 a,2T + 1t,8p,7a,99.5,v firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 12, celsius: 37.778, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, hours: 12.5, celsius: 38.333, set: 'soft' },
      4: { jar: '2026-01-19 b', seeds: ['2026-01-12 a'], ml: [34.5], generation: 3, hours: 11, celsius: 37.5, set: 'very firm' },
    },
  },
  {
    name: 'two pH, when it set, whether it spoiled with the reason behind it',
    text: `Date,Jar,Seed,Amount,pH start,pH end,Time to set,Spoiled?
2026-01-05,a,8 caps Blue Tin,,6.6,4.4,20 h,no
2026-01-12,a,2026-01-05 a,45 ml,6.5,4.3,14 h,no
2026-01-19,a,2026-01-12 a,45 ml,6.5,4.5,16 h,yes - pink film
2026-01-19,b,2026-01-12 a,45 ml,6.5,4.4,16 h,no - just the fibre
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4, note: 'pH start: 6.6' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, ph: 4.3, note: 'Time to set: 14 h' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, ph: 4.5, spoiled: true, note: 'yes - pink film' },
      5: { jar: '2026-01-19 b', seeds: ['2026-01-12 a'], ml: [45], generation: 3, ph: 4.4, note: 'no - just the fibre' },
    },
  },
  {
    name: 'British, short years with points, where it stood, semi-skimmed, dessertspoons',
    text: `Date,Jar,Made with,How much,Milk,Kept warm in,Hrs,Result,Remarks
05.01.26,A,8 caps Blue Tin,,1 litre semi-skimmed,airing cupboard,30,set well,
12.01.26,A,A of 05.01.26,2 dessertspoons,1 litre semi-skimmed,airing cupboard,34,barely set,left a bit longer
19.01.26,A,A of 12.01.26,3 tablespoons,1 pint whole,water bath,36,set firm,
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'firm', milk: 'semi-skimmed milk', milkMl: 1000, note: 'airing cupboard' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [20], generation: 2, hours: 34, set: 'soft', note: 'left a bit longer' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [45], generation: 3, hours: 36, set: 'firm', milk: 'whole milk' },
    },
  },
  {
    name: 'German, Charge und Glas, aus welcher Charge und welchem Glas in zwei Spalten',
    text: `Charge;Datum;Glas;aus Charge;aus Glas;EL;h;Festigkeit;Bemerkung
1;05.01.2026;a;Blue Tin, 8 Kapseln;;;36;fest;
1;05.01.2026;b;Blue Tin, 8 Kapseln;;;36;weich;
2;12.01.2026;a;1;b;3;36;sehr fest;etwas Molke
3;19.01.2026;a;2;a;3;34;fest;
`,
    today,
    jars: {
      2: { jar: '2026-01-05 1 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      3: { jar: '2026-01-05 1 b', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'soft' },
      4: { jar: '2026-01-12 2 a', seeds: ['2026-01-05 1 b'], ml: [45], generation: 2, hours: 36, set: 'very firm', note: 'etwas Molke' },
      5: { jar: '2026-01-19 3 a', seeds: ['2026-01-12 2 a'], ml: [45], generation: 3, hours: 34, set: 'firm' },
    },
  },
  {
    name: 'jars in brackets, thrown out said where it set, arrows for the seed',
    text: `Day,Jar,Seed,Amount,Set
Jan 5 2026,(a),8 caps Blue Tin,,firm
Jan 12 2026,(a),→ Jan 5 (a),45 ml,DISCARDED - fuzz
Jan 12 2026,(b),→ Jan 5 (a),45 ml,soft
Jan 19 2026,(a),→ Jan 12 (b),45 ml,firm
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, spoiled: true },
      4: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], ml: [45], generation: 2, set: 'soft' },
      5: { jar: '2026-01-19 a', seeds: ['2026-01-12 b'], ml: [45], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'days jotted down in a hurry: the month behind, the day alone the next time',
    text: `Made,Jar,Seed,Amt (tbsp),Set,Whey,Taste
2026 Jan 5,a,8 caps Blue Tin,,firm,none,mild
12-Jan,a,5 Jan a,3,firm,tiny bit,a bit sour
19th Jan,a,12-Jan a,3,soft,lots,very sour
Mon 26 Jan,a,19th Jan a,2.5,firm,no,sour
`,
    today,
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, set: 'firm' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [44.4], generation: 3, set: 'soft' },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [37], generation: 4, set: 'firm' },
    },
  },
  {
    name: 'a log of lines with a colon in each cell, no headings',
    text: `5 Jan 2026,jar a,seed: 8 caps Blue Tin,set: firm
12 Jan 2026,jar a,seed: 5 Jan a,set: soft
12 Jan 2026,jar b,seed: 5 Jan a,set: firm
19 Jan 2026,jar a,seed: 12 Jan b,set: firm
`,
    today,
    jars: {
      1: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      2: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, set: 'soft' },
      3: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], generation: 2, set: 'firm' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 b'], generation: 3, set: 'firm' },
    },
  },
];
