// Invented spreadsheets laid out in odd ways; each truth was written before the reader was run on it. Figures by hand:
// US tablespoon 14.78676478125 mL, cup 236.5882365 mL (NIST Handbook 44); metric spoons 15 mL (common practice).
import type { Varied } from './varied';

export const ODD_KEEPERS: readonly Varied[] = [
  {
    name: 'a line for each batch, its jars below, headings again and again',
    text: `Batch of 2 May 2025,,,
Jar,Seed,Amount,Set
a,8 caps Blue Tin,,soft
b,8 caps Blue Tin,,firm
,,,
Batch of 9 May 2025,,,
Jar,Seed,Amount,Set
a,2 May b,40 ml,firm
b,2 May b,40 ml,very firm
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      8: { jar: '2025-05-09 a', seeds: ['2025-05-02 b'], ml: [40], generation: 2, set: 'firm' },
      9: { jar: '2025-05-09 b', seeds: ['2025-05-02 b'], ml: [40], generation: 2, set: 'very firm' },
    },
    says: [/“Batch of 2 May 2025” was taken as the day of the rows below/],
  },
  {
    name: 'start day, start time, end day and end time in four columns',
    text: `Start date;Start time;End date;End time;Jar;Seed;Amount;Temp °C
02.05.2025;19:00;04.05.2025;07:00;A;8 Kapseln Blue Tin;;38
14.05.2025;20.30;16.05.2025;6.00;A;02.05.2025 A;45 ml;38
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38 },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 33.5, celsius: 38 },
    },
  },
  {
    name: 'generation words and thanks in the seed, a seed of the future, a jar that seeds itself',
    text: `date,jar,came from,how much,comments
2025-05-02,a,8 caps Blue Tin (thanks Mum!),,
2025-05-09,a,2025-05-02 a - the creamy one,3 Tbsp,
2025-05-16,a,2025-05-23 a,3 Tbsp,
2025-05-23,a,2025-05-23 a,3 Tbsp,
2025-05-30,a,2025-05-09 a,3 Tbsp,"tastes like pink grapefruit, lovely"
`,
    aside: [4, 5],
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, note: 'the creamy one' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-09 a'], ml: [44.4], generation: 3 },
    },
    says: [/pink grapefruit/],
  },
  {
    name: 'Fahrenheit as bare figures, hours as days, amounts in ounces and dessert spoons',
    text: `Date made,Jar,Seed from,Seed amt.,Days,Temp,Set?
May 2 2025,A,8 tablets Meadow Pot,,1.5,100,Y
May 9 2025,A,May 2 A,2 oz,1.5,99.5,firm
May 16 2025,A,May 9 A,1/4 c,2,101,Soft set
May 23 2025,A,May 16 A,2 Tb + 1 tsp,1.5,100,N
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [59.1], generation: 2, hours: 36, celsius: 37.5, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [59.1], generation: 3, hours: 48, celsius: 38.3333, set: 'soft' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [34.5], generation: 4, hours: 36, set: 'runny', spoiled: true },
    },
    says: [/fluid ounces/, /“100” has no scale\. It was read as °F/],
  },
  {
    name: 'a table with an outer frame of pipes and a rule below the headings',
    text: `| Date       | Jar | Seed            | Amount | Set  |
|------------|-----|-----------------|--------|------|
| 2025-05-02 | a   | 8 caps Blue Tin |        | firm |
| 2025-05-09 | a   | 2025-05-02 a    | 40 ml  | soft |
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'soft' },
    },
  },
  {
    name: 'columns held apart by runs of spaces',
    text: `Date        Jar  Seed              Amount  Set
2025-05-02  a    8 caps Blue Tin   -       firm
2025-05-09  a    2025-05-02 a      40 ml   soft
2025-05-16  a    2025-05-09 a      40 ml   very firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'soft' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, set: 'very firm' },
    },
  },
  {
    name: 'seeds in two columns, each with its own amount',
    text: `Date,Jar,Seed 1,Amount 1,Seed 2,Amount 2,Set
2025-05-02,a,8 caps Blue Tin,,,,firm
2025-05-02,b,5 tablets Meadow Pot,,,,firm
2025-05-09,a,2025-05-02 a,30 ml,2025-05-02 b,10 ml,soft
2025-05-16,a,2025-05-09 a,40 ml,,,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-02 b', sources: ['Meadow Pot'], pieces: [5], generation: 1, set: 'firm' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a', '2025-05-02 b'], ml: [30, 10], generation: 2, set: 'soft' },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, set: 'soft' },
    },
  },
  {
    name: 'seed day and seed letter in columns of their own',
    text: `Date,Letter,Seed date,Seed letter,Seed amount,Product,Pieces
5/2/25,a,,,,Blue Tin,8
5/14/25,a,5/2/25,a,3 T,,
5/14/25,b,5/2/25,a,2 T,,
5/27/25,a,5/14/25,b,3 T,,
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2 },
      4: { jar: '2025-05-14 b', seeds: ['2025-05-02 a'], ml: [29.6], generation: 2 },
      5: { jar: '2025-05-27 a', seeds: ['2025-05-14 b'], ml: [44.4], generation: 3 },
    },
  },
  {
    name: 'Italian with a decimal comma and "q.b.", zero for nothing, crosses for additions',
    text: `Data;Vasetto;Partito da;Dose;Inulina;Crusca;Ore;Temp.;Risultato;Note
2/5/25;A;10 capsule Scatola Blu;;x;;36;38,5;morbido;
14/5/25;A;2/5/25 A;3 cucchiai;x;x;36;38;sodo;senza muffa
28/5/25;A;14/5/25 A;q.b.;;0;36;38;molto sodo;muffa
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Scatola Blu'], pieces: [10], generation: 1, hours: 36, celsius: 38.5, set: 'soft', additions: ['Inulina'] },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'firm', additions: ['Inulina', 'Crusca'] },
      4: { jar: '2025-05-28 a', seeds: ['2025-05-14 a'], generation: 3, hours: 36, set: 'very firm', additions: [], spoiled: true, note: 'q.b.' },
    },
  },
  {
    name: 'Spanish, days of the week, "de" between',
    text: `Fecha,Tarro,Semilla,Cantidad,Leche,Horas,Grados,Cómo cuajó,Observaciones
viernes 2 de mayo de 2025,A,10 cápsulas Lata Azul,,1 litro,36,38,blando,
viernes 9 de mayo de 2025,A,2 de mayo A,3 cucharadas,1 litro,36,38,firme,sin moho ni olor malo
viernes 16 de mayo de 2025,A,el anterior,3 cucharadas,1 litro,36,38,muy firme,se puso rosa
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Lata Azul'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'soft' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 36, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3, hours: 36, set: 'very firm', spoiled: true },
    },
  },
  {
    name: 'jars of every day numbered on, seeds as "jar 3" and "3+4"',
    text: `Jar number,Made,Mother jar,ml,Outcome
1,2025-05-02,8 caps Blue Tin,,soft
2,2025-05-02,8 caps Blue Tin,,firm
3,2025-05-09,Jar 2,40,firm
4,2025-05-09,no. 2,40,firm
5,2025-05-16,3+4,"20, 20",firm
6,2025-05-23,5 (the firm one),40,firm
7,2025-05-30,9,40,firm
`,
    aside: [8],
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      3: { jar: '2025-05-02 2', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      4: { jar: '2025-05-09 3', seeds: ['2025-05-02 2'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-05-09 4', seeds: ['2025-05-02 2'], ml: [40], generation: 2, set: 'firm' },
      6: { jar: '2025-05-16 5', seeds: ['2025-05-09 3', '2025-05-09 4'], ml: [20, 20], generation: 3, set: 'firm' },
      7: { jar: '2025-05-23 6', seeds: ['2025-05-16 5'], ml: [40], generation: 4, set: 'firm' },
    },
  },
  {
    name: 'a jar code of its own as the label, used for seeds',
    text: `Code,Date,Seed code,Seed (mL),Firmness 
BT-01,2025-05-02,Blue Tin x 8,,soft
BT-02,2025-05-09,BT-01,40,firm
BT-03,2025-05-16,bt-02,40,firm
BT-04,2025-05-23,BT03,40,firm
`,
    jars: {
      2: { jar: '2025-05-02 bt-01', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      3: { jar: '2025-05-09 bt-02', seeds: ['2025-05-02 bt-01'], ml: [40], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 bt-03', seeds: ['2025-05-09 bt-02'], ml: [40], generation: 3, set: 'firm' },
      5: { jar: '2025-05-23 bt-04', seeds: ['2025-05-16 bt-03'], ml: [40], generation: 4, set: 'firm' },
    },
  },
  {
    name: 'no jar column, one jar a day, French',
    text: `Date;À partir de;Combien;Lait;Température;Durée;Résultat;Remarques
02/05/2025;10 gélules Boîte Bleue;;1 L demi-écrémé;38°C;1 jour et demi;liquide;
14/05/2025;le précédent;2 c. à soupe;1 L demi-écrémé;38°C;36h;ferme;
28/05/2025;celui du 14/05;2 c. à soupe;1 L demi-écrémé;38°C;36h;très ferme;pas de moisissure
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Boîte Bleue'], pieces: [10], generation: 1, hours: 36, celsius: 38 },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [30], generation: 2, hours: 36, celsius: 38, set: 'firm' },
      4: { jar: '2025-05-28 a', seeds: ['2025-05-14 a'], ml: [30], generation: 3, hours: 36, celsius: 38, set: 'very firm' },
    },
  },
  {
    name: 'spoiled in a tick column, "kept?" beside, set words in the notes only',
    text: `date,jar,seed,seed amount,spoiled?,kept?,notes
2025-05-02,a,8 caps Blue Tin,,no,yes,set firm
2025-05-09,a,2025-05-02 a,40 ml,yes,no,"pink, binned"
2025-05-09,b,2025-05-02 a,40 ml,,yes,very thick
2025-05-16,a,2025-05-09 b,40 ml,x,no,dropped it
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, note: 'set firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, spoiled: true },
      4: { jar: '2025-05-09 b', seeds: ['2025-05-02 a'], ml: [40], generation: 2 },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-09 b'], ml: [40], generation: 3, spoiled: true },
    },
    says: [/“kept\?” is not one we know/],
  },
  // The last two were read wrongly at first; their truth is by hand from the text alone.
  {
    name: 'fractions that are no days, hours and degrees in one cell',
    text: `Batch,Date,Seed,Milk,Hold,Result,pH
1,Oct 15 2025,Blue Tin 10 caps,1 gal whole,36h @ 100F,soft,4.5
2,Oct 22 2025,1/4 cup of batch 1,1 gal whole,36h @ 100F,firm,4.4
3,Oct 29 2025,1/4 cup of batch 2,1 gal whole,38h @ 101F,great! thick,4.3
4,Nov 5 2025,1/4 cup #3 + 2 caps Blue Tin,1 gal 2%,36h @ 100F,thin/watery,4.7
`,
    jars: {
      2: { jar: '2025-10-15 1', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, celsius: 37.7778, set: 'soft', ph: 4.5 },
      3: { jar: '2025-10-22 2', seeds: ['2025-10-15 1'], ml: [59.1], generation: 2, hours: 36, celsius: 37.7778, set: 'firm', ph: 4.4 },
      4: { jar: '2025-10-29 3', seeds: ['2025-10-22 2'], ml: [59.1], generation: 3, hours: 38, celsius: 38.3333, set: 'firm', ph: 4.3 },
      5: { jar: '2025-11-05 4', seeds: ['2025-10-29 3'], sources: ['Blue Tin'], ml: [59.1], pieces: [2], generation: 4, hours: 36, ph: 4.7, milk: '2% milk' },
    },
    says: [/“36h @ 100F” was taken as held for 36h at 100F/],
  },
  {
    name: 'somebody’s starter, amounts after their seeds, "Temp/Time"',
    text: `Date,Jar,Seed,Amt,Temp/Time,Set
10/15/2025,A,3 T of 10/1/2025 B (friend's),,100/36,firm
10/1/2025,B,from Anna's starter,1/2 c,100/36,firm
10/22/2025,A,"3T from A, 10/15/2025",,100/36,firm
10/22/2025,B,10/15/2025A; 1T + 10/1/2025B; 1T,,100/36,firm
`,
    jars: {
      2: { jar: '2025-10-15 a', seeds: ['2025-10-01 b'], ml: [44.4], generation: 3, hours: 36, celsius: 37.7778, set: 'firm' },
      3: { jar: '2025-10-01 b', sources: ["Anna's starter"], ml: [118.3], generation: 2, hours: 36, set: 'firm' },
      4: { jar: '2025-10-22 a', seeds: ['2025-10-15 a'], ml: [44.4], generation: 4, hours: 36, set: 'firm' },
      5: { jar: '2025-10-22 b', seeds: ['2025-10-15 a', '2025-10-01 b'], ml: [14.8, 14.8], generation: 4, hours: 36, set: 'firm' },
    },
    says: [/received culture/],
  },
]; // prettier-ignore
