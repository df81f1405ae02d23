// Invented spreadsheets of habits that no other file here has: seeds by the row they stand in, by code, by what is above; days as codes
// and in words; lengths in days and halves; both scales at once; lines that are no jars. Each truth was read off the sheet by hand, before
// the reader was run on it. Figures by hand: US tablespoon 14.78676478125 mL, cup 236.5882365 mL, quart 946.352946 mL (NIST Handbook 44);
// metric tablespoon 15 mL (common practice, no source).
import type { Varied } from './varied';

export const UNSEEN_KEEPERS: readonly Varied[] = [
  {
    name: 'seeds by the row they stand in',
    text: `Date,Jar,Seeded from,Amount
2026-01-05,a,8 caps Blue Tin,
2026-01-05,b,10 caps Blue Tin,
2026-01-12,a,row 2,3 tbsp
2026-01-12,b,see row 3,3 tbsp
2026-01-19,a,line 4,2 tbsp
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [10], generation: 1 },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
      5: { jar: '2026-01-12 b', seeds: ['2026-01-05 b'], ml: [44.4], generation: 2 },
      6: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [29.6], generation: 3 },
    },
    says: [/“row 2” was taken as 5 Jan 2026 a/],
  },
  {
    name: 'days and jars in one code of figures, seeds by code',
    text: `Code,Seed,Hours,Set
260105A,8 caps Blue Tin,30,firm
260105B,8 caps Blue Tin,30,soft
260112A,260105A,36,firm
260119A,260112A + 260105B,36,firm
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'firm' },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'soft' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36, set: 'firm' },
      5: { jar: '2026-01-19 a', seeds: ['2026-01-12 a', '2026-01-05 b'], generation: 3, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'days in words with their ordinal, the year told once',
    text: `When made,Jar,From,How long
5th of January 2026,a,8 caps Blue Tin,1½ d
Monday the 12th of January,a,the 5th of January,a day and a half
Jan 19th,a,12th Jan,1 day 12 h
January 26,a,19 January,1.5 days
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36 },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], generation: 4, hours: 36 },
    },
  },
  {
    name: 'both scales in one column, with and without their letter',
    text: `Date,Jar,Seed,Temp
2026-01-05,a,8 caps Blue Tin,38
2026-01-12,a,2026-01-05 a,100.4
2026-01-19,a,2026-01-12 a,37.5 C
2026-01-26,a,2026-01-19 a,99.5F
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, celsius: 38 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, celsius: 38 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, celsius: 37.5 },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], generation: 4, celsius: 37.5 },
    },
  },
  {
    name: 'lines that are no jars between those that are, and sums below',
    text: `Date,Jar,Seed,Hours,Set
2026-01-05,a,8 caps Blue Tin,30,firm
(new thermometer from here on),,,,
2026-01-12,a,2026-01-05 a,36,soft
--- holidays ---,,,,
,,,,
2026-01-26,a,2026-01-12 a,36,firm
Mean,,,34,
Total jars,3,,,
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'firm' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36, set: 'soft' },
      7: { jar: '2026-01-26 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36, set: 'firm' },
    },
    says: [/new thermometer/, /holidays/, /Mean/, /Total/],
  },
  {
    name: 'the seed is as above, in words, marks and arrows',
    text: `Date,Jar,Seed,Amount
2026-01-05,a,8 caps Blue Tin,
2026-01-12,a,2026-01-05 a,3 tbsp
2026-01-12,b,same,same
2026-01-12,c,as above,"
2026-01-12,d,↑,↑
2026-01-12,e,from above,3 tbsp
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
      4: { jar: '2026-01-12 b', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
      5: { jar: '2026-01-12 c', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
      6: { jar: '2026-01-12 d', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
      7: { jar: '2026-01-12 e', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2 },
    },
  },
  {
    name: 'jars by nicknames, possessive and together',
    text: `Date,Nickname,Fed with,Set
2026-01-05,Bertha,8 caps Blue Tin,firm
2026-01-05,Otto,8 caps Blue Tin,soft
2026-01-12,Clara,Bertha,firm
2026-01-19,Doris,Otto & Clara,firm
2026-01-26,Emil,Doris's,firm
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 bertha', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 otto', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 clara', seeds: ['2026-01-05 bertha'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-19 doris', seeds: ['2026-01-05 otto', '2026-01-12 clara'], generation: 3, set: 'firm' },
      6: { jar: '2026-01-26 emil', seeds: ['2026-01-19 doris'], generation: 4, set: 'firm' },
    },
  },
  {
    name: 'German on its side, decimal commas, parted by semicolons',
    text: `Datum;05.01.2026;12.01.2026;19.01.2026
Glas;A;A;A
Angesetzt mit;8 Kapseln Blue Tin;05.01. A;12.01. A
Menge;;3 EL;2 EL
Dauer (Tage);1,5;1,5;1,25
Temperatur;38,5;37,5 °C;38
pH;4,4;4,35;4,5
Konsistenz;fest;weich;fest
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38.5, ph: 4.4, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, hours: 36, celsius: 37.5, ph: 4.35, set: 'soft' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [30], generation: 3, hours: 30, celsius: 38, ph: 4.5, set: 'firm' },
    },
  },
  {
    name: 'units in the headings, in every way to write them',
    text: `Date [yyyy-mm-dd],Jar,Seed,"Seed, tbsp",Milk / L,Hold_h,"Temp. (°F)",Inulin in g
2026-01-05,a,8 caps Blue Tin,,1,30,101,
2026-01-12,a,2026-01-05 a,3,1.5,36,100,4
2026-01-19,a,2026-01-12 a,2,1,36,99.5,
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, celsius: 38.3333, milkMl: 1000 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [44.4], generation: 2, hours: 36, celsius: 37.7778, milkMl: 1500, additions: ['Inulin'], added: ['4 g'] },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [29.6], generation: 3, hours: 36, celsius: 37.5, milkMl: 1000 },
    },
  },
  {
    name: 'two tables side by side, a blank column between them',
    text: `Date,Jar,Seed,Set,,Shopping,Cost
2026-01-05,a,8 caps Blue Tin,firm,,Blue Tin,19.90
2026-01-12,a,2026-01-05 a,soft,,milk 1 L,1.29
2026-01-19,a,2026-01-12 a,firm,,,
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, set: 'soft' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, set: 'firm' },
    },
    says: [/Shopping/],
  },
  {
    name: 'Finnish headings, which nobody here vouches for: what cells prove, and the rest asked',
    text: `Päivä;Purkki;Siemen;Tunnit;Lämpö
5.1.2026;a;8 caps Blue Tin;30 h;38 °C
12.1.2026;a;5.1.2026 a;36 h;38 °C
19.1.2026;a;12.1.2026 a;36 h;37,5 °C
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, celsius: 38 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36, celsius: 38 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36, celsius: 37.5 },
    },
  },
  {
    name: 'in and out as the day of the week with its time',
    text: `Date,Jar,Seed,In,Out
2026-01-05,a,8 caps Blue Tin,Mon 19:00,Wed 7:00
2026-01-12,a,2026-01-05 a,Mon 8 pm,Tue 8 pm
2026-01-19,a,2026-01-12 a,Mon 7pm,Wed 7am
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 24 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36 },
    },
  },
  {
    name: 'boxes that are ticked, cells of errors and of nothing',
    text: `Date,Jar,Seed,Hours,pH,Spoiled?,Set
2026-01-05,a,8 caps Blue Tin,30,#N/A,☐,firm
2026-01-05,b,8 caps Blue Tin,TBD,4.4,☑,soft
2026-01-12,a,2026-01-05 a,36,?,☐,n/a
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'firm' },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4, set: 'soft', spoiled: true },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36 },
    },
  },
  {
    name: 'the day and the milk once for all jars of a batch, as merged cells leave them',
    text: `Date,Milk,Jar,Seed,Set
2026-01-05,1 L whole milk,a,8 caps Blue Tin,firm
,,b,8 caps Blue Tin,soft
2026-01-12,1.5 L whole milk,a,2026-01-05 a,firm
,,b,2026-01-05 b,firm
,,c,2026-01-05 a,soft
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-12 b', seeds: ['2026-01-05 b'], generation: 2, set: 'firm' },
      6: { jar: '2026-01-12 c', seeds: ['2026-01-05 a'], generation: 2, set: 'soft' },
    },
  },
  {
    name: 'seeds by the colour of a sticker',
    text: `Date,Sticker,From which,Set
2026-01-05,red,8 caps Blue Tin,firm
2026-01-05,green,8 caps Blue Tin,soft
2026-01-12,blue,the red one,firm
2026-01-19,yellow,green sticker,firm
2026-01-26,white,blue + yellow,firm
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 red', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 green', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 blue', seeds: ['2026-01-05 red'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-19 yellow', seeds: ['2026-01-05 green'], generation: 2, set: 'firm' },
      6: { jar: '2026-01-26 white', seeds: ['2026-01-12 blue', '2026-01-19 yellow'], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'parts of two seeds in hundredths and as a ratio',
    text: `Date,Jar,Seed,Set
2026-01-05,a,8 caps Blue Tin,firm
2026-01-05,b,8 caps Blue Tin,soft
2026-01-12,a,50% 2026-01-05 a + 50% 2026-01-05 b,firm
2026-01-19,a,2026-01-12 a (2 tbsp) and 2026-01-05 b (1 tbsp),firm
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2026-01-05 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2026-01-12 a', seeds: ['2026-01-05 a', '2026-01-05 b'], generation: 2, set: 'firm' },
      5: { jar: '2026-01-19 a', seeds: ['2026-01-12 a', '2026-01-05 b'], ml: [29.6, 14.8], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'French, every cell a sentence of its own',
    text: `Fait le;Pot;Ensemencé avec;Durée;Température;Résultat
lundi 5 janvier 2026;A;10 gélules Blue Tin;pendant 30 heures;à 38 degrés;bien pris
lundi 12 janvier 2026;A;le pot A du 5 janvier;pendant 36 heures;à 37,5 degrés;ferme
lundi 19 janvier 2026;A;pot A du 12 janvier;un jour et demi;38 degrés;crémeux
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 30, celsius: 38, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36, celsius: 37.5, set: 'firm' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36, celsius: 38, set: 'spoonable' },
    },
  },
  {
    name: 'a running number for jars, seeds by number with a word or a mark, “prev”',
    text: `No.,Date,Source,Amt (ml)
1,05-Jan-26,8 caps Blue Tin,
2,12-Jan-26,#1,45
3,19-Jan-26,prev,45
4,26-Jan-26,no. 2,30
5,02-Feb-26,jar 3 + jar 4,20+20
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 1', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2026-01-12 2', seeds: ['2026-01-05 1'], ml: [45], generation: 2 },
      4: { jar: '2026-01-19 3', seeds: ['2026-01-12 2'], ml: [45], generation: 3 },
      5: { jar: '2026-01-26 4', seeds: ['2026-01-12 2'], ml: [30], generation: 3 },
      6: { jar: '2026-02-02 5', seeds: ['2026-01-19 3', '2026-01-26 4'], ml: [20, 20], generation: 4 },
    },
  },
  {
    name: 'spoons and cups as they are said: heaped, level, a quarter, one and a half',
    text: `Date,Jar,Seed,How much seed,Milk
2026-01-05,a,8 caps Blue Tin,,2 cups whole milk
2026-01-12,a,2026-01-05 a,1½ tbsp,two cups whole milk
2026-01-19,a,2026-01-12 a,¼ cup,1 1/2 qt whole milk
2026-01-26,a,2026-01-19 a,two tablespoons,2c whole milk
2026-02-02,a,2026-01-26 a,half a cup,1 quart whole milk
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, milkMl: 473.2 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], ml: [22.2], generation: 2, milkMl: 473.2 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], ml: [59.1], generation: 3, milkMl: 1419.5 },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], ml: [29.6], generation: 4, milkMl: 473.2 },
      6: { jar: '2026-02-02 a', seeds: ['2026-01-26 a'], ml: [118.3], generation: 5, milkMl: 946.4 },
    },
  },
  {
    name: 'what was done told as a diary: verbs as headings',
    text: `Started,Jar,Used,Then left (hrs),It was,Thoughts
5 Jan 2026,a,8 Blue Tin capsules,30,nice and firm,smells fresh
12 Jan 2026,a,jar a from 5 Jan,36,rather soft,
19 Jan 2026,a,jar a from last week,36,very thick,best so far
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, set: 'firm' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36, set: 'soft' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36, set: 'very firm' },
    },
  },
  {
    name: 'the month once for the days below it, in a column of its own',
    text: `Month,Day,Jar,Seed,Hours
Jan 2026,5,a,8 caps Blue Tin,30
,12,a,5 Jan a,36
,19,a,12 Jan a,36
Feb 2026,2,a,19 Jan a,36
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30 },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, hours: 36 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, hours: 36 },
      5: { jar: '2026-02-02 a', seeds: ['2026-01-19 a'], generation: 4, hours: 36 },
    },
  },
  {
    name: 'German, a running number under a heading nobody knows, long headings with units',
    text: `Lfd. Nr.;Ansatz vom;geimpft mit Glas Nr.;Impfmenge (EL);Milch (ml);Brutdauer (h);Brut-Temp. (°C);pH nach 24 h;Beurteilung;Fotos
1;05.01.2026;8 Kapseln Blue Tin;;1000;30;38;4,8;stichfest;IMG_1.jpg
2;12.01.2026;1;3;1000;36;38;4,7;weich;
3;19.01.2026;2;3;1000;36;37,5;4,6;sehr fest, etwas Molke;IMG_9.jpg
4;26.01.2026;2+3;2+1;1000;36;38;;flüssig;
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 1', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 30, celsius: 38, set: 'firm', milkMl: 1000, note: 'IMG_1.jpg' },
      3: { jar: '2026-01-12 2', seeds: ['2026-01-05 1'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'soft', milkMl: 1000 },
      4: { jar: '2026-01-19 3', seeds: ['2026-01-12 2'], ml: [45], generation: 3, hours: 36, celsius: 37.5, set: 'very firm', milkMl: 1000 },
      5: { jar: '2026-01-26 4', seeds: ['2026-01-12 2', '2026-01-19 3'], ml: [30, 15], generation: 4, hours: 36, celsius: 38, milkMl: 1000 },
    },
    says: [/“flüssig”: did it pour like milk/],
  },
  {
    name: 'tasters’ figures below their names are no hours, ticks of what went in',
    text: `Date,Jar,Seed,Inulin?,Oat bran?,Anna,Robin
2026-01-05,a,8 caps Blue Tin,y,n,7,8
2026-01-12,a,2026-01-05 a,n,y,9,6
2026-01-19,a,2026-01-12 a,n,n,8,8
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, additions: ['Inulin'], note: 'Anna: 7' },
      3: { jar: '2026-01-12 a', seeds: ['2026-01-05 a'], generation: 2, additions: ['Oat bran'], note: 'Robin: 6' },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-12 a'], generation: 3, additions: [] },
    },
    says: [/“Anna” is not one we know/],
  },
  {
    name: 'how it was made in one cell, with the milk it went into; arrows both ways',
    text: `Date,Jar,How,Result
05/01/2026,a,started with 8 caps of Blue Tin in 1 L milk,firm
13/01/2026,a,3 EL of 5 Jan in 1 L whole milk,soft
19/01/2026,a,45 ml ← 13/1,firm
26/01/2026,a,-> 19/1 a,firm
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-01-05 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm', milk: 'milk', milkMl: 1000 },
      3: { jar: '2026-01-13 a', seeds: ['2026-01-05 a'], ml: [45], generation: 2, set: 'soft', milk: 'whole milk', milkMl: 1000 },
      4: { jar: '2026-01-19 a', seeds: ['2026-01-13 a'], ml: [45], generation: 3, set: 'firm' },
      5: { jar: '2026-01-26 a', seeds: ['2026-01-19 a'], generation: 4, set: 'firm' },
    },
  },
];
