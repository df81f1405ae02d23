// Invented spreadsheets of many more keepers; each truth was written before the reader was run on it. Figures by hand:
// US tablespoon 14.78676478125 mL, cup 236.5882365 mL (NIST Handbook 44); metric spoons 15 mL and 5 mL (common practice).
import type { Varied } from './varied';

export const MORE_KEEPERS: readonly Varied[] = [
  {
    name: 'Dutch, two seeds as letters with a stroke between, decimal comma, a rule of blank cells',
    text: `Datum;Pot;Geënt met;Hoeveelheid;Melk;Vezel;Uren;Temp;Stevigheid;pH;Opmerking
02-05-2025;a;8 capsules Blauwe Bus;;1 l volle melk;;36;38,5;stevig;4,35;
02-05-2025;b;5 tabletten Weidepot;;1 l volle melk;;36;38,5;zacht;;
;;;;;;;;;;
14-05-2025;a;02-05-2025 a/b;2 el / 1 el;1 l volle melk;haverzemelen 2 el;30;38;heel stevig;4,2;geen schimmel
14-05-2025;b;02-05 a;3 el;1 l magere melk;;30;38;zacht;;
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blauwe Bus'], pieces: [8], generation: 1, hours: 36, celsius: 38.5, set: 'firm', ph: 4.35 },
      3: { jar: '2025-05-02 b', sources: ['Weidepot'], pieces: [5], generation: 1, hours: 36, celsius: 38.5, set: 'soft' },
      5: { jar: '2025-05-14 a', seeds: ['2025-05-02 a', '2025-05-02 b'], ml: [30, 15], generation: 2, hours: 30, celsius: 38, set: 'very firm', ph: 4.2, additions: ['haverzemelen'] },
      6: { jar: '2025-05-14 b', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 30, celsius: 38, set: 'soft' },
    },
  },
  {
    name: 'Spanish below merged headings, units on the second line',
    text: `,,Siembra,,Incubación,,
Fecha,Frasco,De,Cantidad (ml),Horas,°C,Resultado
13/06/2025,A,10 cápsulas Lata Azul,,36,38,firme
20/06/2025,A,13/06/2025 A,50,34,38,muy firme
20/06/2025,B,13/06/2025 A,40,34,38,cremoso
27/06/2025,A,20/06 B,45,36,37,líquido
`,
    jars: {
      3: { jar: '2025-06-13 a', sources: ['Lata Azul'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      4: { jar: '2025-06-20 a', seeds: ['2025-06-13 a'], ml: [50], generation: 2, hours: 34, celsius: 38, set: 'very firm' },
      5: { jar: '2025-06-20 b', seeds: ['2025-06-13 a'], ml: [40], generation: 2, hours: 34, celsius: 38, set: 'spoonable' },
      6: { jar: '2025-06-27 a', seeds: ['2025-06-20 b'], ml: [45], generation: 3, hours: 36, celsius: 37 },
    },
  },
  {
    name: 'American, two products on two lines of a cell, a blank column and blank rows, clock times',
    text: `Date,Jar,,Started With,How much,Start time,End time,Temp (F),How set
,,,,,,,,
5/2/2025,A,,"5 caps Blue Tin
3 tabs Meadow Pot",,7:30 PM,7:30 AM (+2),101,firm
,,,,,,,,
5/14/2025,A,,5/2 A,3 T,8 PM,8 AM (+2),100.5,very firm
5/14/2025,B,,5/2 A,1/4 cup,8 PM,6 PM next day,100,soft
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Blue Tin', 'Meadow Pot'], pieces: [5, 3], generation: 1, hours: 36, celsius: 38.3333, set: 'firm' },
      6: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, hours: 36, celsius: 38.0556, set: 'very firm' },
      7: { jar: '2025-05-14 b', seeds: ['2025-05-02 a'], ml: [59.1], generation: 2, hours: 22, celsius: 37.7778, set: 'soft' },
    },
  },
  {
    name: 'Swedish, days without a year, spoons, a jar of the week before',
    today: '2025-09-01',
    text: `Datum;Burk;Ympad från;Mängd;Timmar;Grader;Konsistens;Anteckning
12/5;a;8 kapslar Blå Burken;;36;38;fast;
12/5;b;8 kapslar Blå Burken;;36;38;mjuk;lukt av svamp?
26/5;a;12/5 a;3 msk;34;38;mycket fast;
26/5;b;12/5 a och 12/5 b;2 msk + 1 msk;34;38;fast;
`,
    jars: {
      2: { jar: '2025-05-12 a', sources: ['Blå Burken'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-12 b', sources: ['Blå Burken'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft' },
      4: { jar: '2025-05-26 a', seeds: ['2025-05-12 a'], ml: [45], generation: 2, hours: 34, celsius: 38, set: 'very firm' },
      5: { jar: '2025-05-26 b', seeds: ['2025-05-12 a', '2025-05-12 b'], ml: [30, 15], generation: 2, hours: 34, celsius: 38, set: 'firm' },
    },
  },
  {
    name: 'lengths of every kind: days and hours, a colon, half hours, words',
    text: `Made,Jar,Seed,Seed ml,Held,Set
2025-05-02,a,8 caps Blue Tin,,1d 12h,firm
2025-05-09,a,2025-05-02 a,50,36:30,firm
2025-05-16,a,2025-05-09 a,50,1.5 days,firm
2025-05-23,a,2025-05-16 a,50,1 day 6 hours,firm
2025-05-30,a,2025-05-23 a,50,30h30,firm
2025-06-06,a,2025-05-30 a,50,30 hrs 30 min,firm
2025-06-13,a,2025-06-06 a,50,32-36 h,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [50], generation: 2, hours: 36.5, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [50], generation: 3, hours: 36, set: 'firm' },
      5: { jar: '2025-05-23 a', seeds: ['2025-05-16 a'], ml: [50], generation: 4, hours: 30, set: 'firm' },
      6: { jar: '2025-05-30 a', seeds: ['2025-05-23 a'], ml: [50], generation: 5, hours: 30.5, set: 'firm' },
      7: { jar: '2025-06-06 a', seeds: ['2025-05-30 a'], ml: [50], generation: 6, hours: 30.5, set: 'firm' },
      8: { jar: '2025-06-13 a', seeds: ['2025-06-06 a'], ml: [50], generation: 7, hours: 34, set: 'firm' },
    },
  },
  {
    name: 'Polish, the day only on the first row of a batch',
    text: `Data;Słoik;Zaczyn;Ilość;Mleko;Godziny;Temperatura;Konsystencja;Uwagi
5.05.2025;1;8 kapsułek Niebieska Puszka;;1 l mleko pełne;36;38°;gęsty;
;2;8 kapsułek Niebieska Puszka;;1 l mleko pełne;36;38°;rzadki;
12.05.2025;1;5.05.2025 1;3 łyżki;1 l mleko pełne;34;38°;bardzo gęsty;
;2;5.05.2025 1;50 ml;1 l mleko pełne;34;38°;gęsty;różowe plamy
`,
    jars: {
      2: { jar: '2025-05-05 1', sources: ['Niebieska Puszka'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-05 2', sources: ['Niebieska Puszka'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'runny' },
      4: { jar: '2025-05-12 1', seeds: ['2025-05-05 1'], ml: [45], generation: 2, hours: 34, celsius: 38, set: 'very firm' },
      5: { jar: '2025-05-12 2', seeds: ['2025-05-05 1'], ml: [50], generation: 2, hours: 34, celsius: 38, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'Italian, months in words, spoons, a bare degree',
    text: `Data di preparazione\tVasetto\tPartito da\tQuantità\tLatte\tDurata\tTemp.\tConsistenza\tNote
2 maggio 2025\tA\t10 capsule Scatola Blu\t\tintero 1 l\t36 ore\t38°\tcompatto\t
9 maggio 2025\tA\t2 maggio A\t3 cucchiai\tintero 1 l\t34 ore\t38°\tmolto denso\tbuono
9 maggio 2025\tB\t2 maggio A\t2 cucchiai e 1 cucchiaino\tintero 1 l\t34 ore\t37,5°\tmorbido\t
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Scatola Blu'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [45], generation: 2, hours: 34, celsius: 38, set: 'very firm', note: 'buono' },
      4: { jar: '2025-05-09 b', seeds: ['2025-05-02 a'], ml: [35], generation: 2, hours: 34, celsius: 37.5, set: 'soft' },
    },
  },
  {
    name: 'jars by running numbers, seeds by number with and without a mark',
    text: `#,Date,From,How much,Milk,Hrs,Set
1,2025-05-02,12 caps Blue Tin,,1 L whole,36,thick
2,2025-05-02,12 caps Blue Tin,,1 L whole,36,thin
3,2025-05-09,#1,40 mL,1 L whole,36,thick
4,2025-05-09,2,40 mL,1 L skim,36,thick
5,2025-05-16,#3 + #4,20 mL each,1 L whole,36,thick
6,2025-05-16,"3, 4",30 mL + 10 mL,1 L whole,36,thick
7,2025-05-23,jar 6,40 mL,1 L whole,36,thick
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blue Tin'], pieces: [12], generation: 1, hours: 36, set: 'firm' },
      3: { jar: '2025-05-02 2', sources: ['Blue Tin'], pieces: [12], generation: 1, hours: 36, set: 'runny' },
      4: { jar: '2025-05-09 3', seeds: ['2025-05-02 1'], ml: [40], generation: 2, hours: 36, set: 'firm' },
      5: { jar: '2025-05-09 4', seeds: ['2025-05-02 2'], ml: [40], generation: 2, hours: 36, set: 'firm' },
      6: { jar: '2025-05-16 5', seeds: ['2025-05-09 3', '2025-05-09 4'], ml: [20, 20], generation: 3, hours: 36, set: 'firm' },
      7: { jar: '2025-05-16 6', seeds: ['2025-05-09 3', '2025-05-09 4'], ml: [30, 10], generation: 3, hours: 36, set: 'firm' },
      8: { jar: '2025-05-23 7', seeds: ['2025-05-16 6'], ml: [40], generation: 4, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'several products in one cell by commas, a count before each and no word for pieces',
    text: `date,jar,seed,amount,result
2026-02-01,a,"3 Heron caps, 2 Lantern tabs",,firm
2026-02-01,b,3x Heron + 2x Lantern,,firm
2026-02-01,c,"3 Heron, 2 Lantern",,firm
2026-02-01,d,3 Heron; 2 Lantern,,firm
2026-02-08,a,2026-02-01 c,45 ml,firm
`,
    jars: {
      2: { jar: '2026-02-01 a', sources: ['Heron', 'Lantern'], pieces: [3, 2], generation: 1, set: 'firm' },
      3: { jar: '2026-02-01 b', sources: ['Heron', 'Lantern'], pieces: [3, 2], generation: 1, set: 'firm' },
      4: { jar: '2026-02-01 c', sources: ['Heron', 'Lantern'], pieces: [3, 2], generation: 1, set: 'firm' },
      5: { jar: '2026-02-01 d', sources: ['Heron', 'Lantern'], pieces: [3, 2], generation: 1, set: 'firm' },
      6: { jar: '2026-02-08 a', seeds: ['2026-02-01 c'], ml: [45], generation: 2, set: 'firm' },
    },
  },
  {
    name: 'capsules called just that beside the one product of capsules',
    text: `date,jar,seed,pieces,result
2026-02-01,a,Blue Tin capsules,10,firm
2026-02-01,b,capsules,5,firm
2026-02-01,c,5 capsules,,soft
2026-02-08,a,2026-02-01 b,45 ml,firm
`,
    jars: {
      2: { jar: '2026-02-01 a', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'firm' },
      3: { jar: '2026-02-01 b', sources: ['Blue Tin'], pieces: [5], generation: 1, set: 'firm' },
      4: { jar: '2026-02-01 c', sources: ['Blue Tin'], pieces: [5], generation: 1, set: 'soft' },
      5: { jar: '2026-02-08 a', seeds: ['2026-02-01 b'], ml: [45], generation: 2, set: 'firm' },
    },
    says: [/“capsules” was taken as “?Blue Tin/],
  },
  {
    name: 'begun and ended in one cell, by the clock',
    text: `Date,Jar,Seed,Amount,In the bath,Set
02.05.2025,a,8 caps Blue Tin,,19:00 - 07:00,firm
09.05.2025,a,02.05.2025 a,40 ml,7pm to 7am,soft
16.05.2025,a,09.05.2025 a,40 ml,18.30–6.30,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 12, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 12, set: 'soft' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, hours: 12, set: 'soft' },
    },
  },
  {
    name: 'two dates, made and taken out, with the end a full moment',
    text: `Made on,Made at,Taken out,Jar,Seeded from,ml,°F,Result,Eaten on,Cost
2025-05-02,19:00,2025-05-04 07:00,a,8 tablets Meadow Pot,,100,firm,2025-05-10,3.20
2025-05-09,19:00,2025-05-11 05:00,a,2025-05-02 a,50,100,very firm,2025-05-20,
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Meadow Pot'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778, set: 'firm', note: '2025-05-10' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [50], generation: 2, hours: 34, celsius: 37.7778, set: 'very firm', note: '2025-05-20' },
    },
  },
  {
    name: 'Portuguese, jar and seed as one code each, fractions',
    text: `Código;Data;Iniciado com;Quantidade;Leite;Horas;Temperatura (°C);Como ficou;Observações
P1;05/05/2025;10 cápsulas Lata Azul;;1 L integral;36;38;firme;
P2;13/05/2025;P1;¼ xícara;1 L integral;34;38;muito firme;sem mofo
P3;20/05/2025;P2;3 colheres de sopa;1 L integral;34;37,5;mole;
`,
    jars: {
      2: { jar: '2025-05-05 p1', sources: ['Lata Azul'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-13 p2', seeds: ['2025-05-05 p1'], generation: 2, hours: 34, celsius: 38, set: 'very firm' },
      4: { jar: '2025-05-20 p3', seeds: ['2025-05-13 p2'], ml: [45], generation: 3, hours: 34, celsius: 37.5, set: 'soft' },
    },
    // Nobody here can vouch for the size of a xícara.
    says: [/“¼ xícara” under “Quantidade” could not be read as an amount/],
  },
  {
    name: 'units in square brackets, T for temperature and t for time, additions in columns of their own',
    text: `Datum;Glas;Impfgut;Impfmenge [mL];Milch [mL];Inulin [g];Haferkleie [g];T [°C];t [h];Konsistenz
05.05.2025;1;10 Kapseln Blaue Dose;;1000;10;;38,0;36;fest
12.05.2025;1;05.05.2025 1;50;950;;12,5;38,0;34;sehr fest
12.05.2025;2;05.05.2025 1;50;950;10;5;38,5;34;weich
`,
    jars: {
      2: { jar: '2025-05-05 1', sources: ['Blaue Dose'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm', milkMl: 1000, additions: ['Inulin'], added: ['10 g'] },
      3: { jar: '2025-05-12 1', seeds: ['2025-05-05 1'], ml: [50], generation: 2, hours: 34, celsius: 38, set: 'very firm', milkMl: 950, additions: ['Haferkleie'], added: ['12.5 g'] },
      4: { jar: '2025-05-12 2', seeds: ['2025-05-05 1'], ml: [50], generation: 2, hours: 34, celsius: 38.5, set: 'soft', milkMl: 950, additions: ['Inulin', 'Haferkleie'], added: ['10 g', '5 g'] },
    },
  },
  {
    name: 'jars named by letters only, bare pieces beside products, bare millilitres beside jars',
    text: `Day,Jar,Seed,Amount,Set
2025-05-02,p,Blue Tin,8,firm
2025-05-09,q,p,45,firm
2025-05-16,r,q,50,soft
`,
    answers: { 'unit:Amount': 'mL' },
    jars: {
      2: { jar: '2025-05-02 p', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      3: { jar: '2025-05-09 q', seeds: ['2025-05-02 p'], ml: [45], generation: 2, set: 'firm' },
      4: { jar: '2025-05-16 r', seeds: ['2025-05-09 q'], ml: [50], generation: 3, set: 'soft' },
    },
  },
  {
    name: 'Danish, a hold from and to, minutes, a product of powder by weight',
    text: `Dato;Glas;Podet med;Mængde;Mælk;Sat ind;Taget ud;Varme;Fasthed;Noter
05-05-2025;A;2 g Blå Pulver;;1 l sødmælk;18:00;06:00;38;fast;
13-05-2025;A;05-05-2025 A;3 spsk;1 l sødmælk;18:00;14-05-2025 20:00;38;meget fast;ingen skimmel
`,
    jars: {
      2: { jar: '2025-05-05 a', sources: ['Blå Pulver'], generation: 1, hours: 12, celsius: 38, set: 'firm' },
      3: { jar: '2025-05-13 a', seeds: ['2025-05-05 a'], ml: [45], generation: 2, hours: 26, celsius: 38, set: 'very firm' },
    },
  },
  {
    name: 'wide: a line a day, columns of their own for each jar below merged headings',
    text: `Date,Jar A,,,Jar B,,,Hours
,Seed,Amount,Set,Seed,Amount,Set,
2025-05-02,8 caps Blue Tin,,firm,8 caps Meadow Pot,,soft,36
2025-05-09,2025-05-02 A,40 ml,firm,,,,34
2025-05-16,2025-05-09 A,40 ml,pink streaks,2025-05-02 B,30 ml,soft,34
`,
    jars: {
      3: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      '3 b': { jar: '2025-05-02 b', sources: ['Meadow Pot'], pieces: [8], generation: 1, hours: 36, set: 'soft' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 34, set: 'firm' },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, hours: 34, spoiled: true },
      '5 b': { jar: '2025-05-16 b', seeds: ['2025-05-02 b'], ml: [30], generation: 2, hours: 34, set: 'soft' },
    },
    says: [/read as the jars a and b/],
  },
  {
    name: 'wide: German, the number of the glass at the end of each heading',
    text: `Datum;Starter Glas 1;Menge Glas 1;Konsistenz Glas 1;Starter Glas 2;Menge Glas 2;Konsistenz Glas 2;Temp
02.05.2025;8 Kapseln Blaue Dose;;fest;8 Kapseln Blaue Dose;;weich;38
09.05.2025;02.05.2025 2;40 ml;fest;02.05.2025 1;3 EL;weich;38
`,
    jars: {
      2: { jar: '2025-05-02 1', sources: ['Blaue Dose'], pieces: [8], generation: 1, celsius: 38, set: 'firm' },
      '2 2': { jar: '2025-05-02 2', sources: ['Blaue Dose'], pieces: [8], generation: 1, celsius: 38, set: 'soft' },
      3: { jar: '2025-05-09 1', seeds: ['2025-05-02 2'], ml: [40], generation: 2, celsius: 38, set: 'firm' },
      '3 2': { jar: '2025-05-09 2', seeds: ['2025-05-02 1'], ml: [45], generation: 2, celsius: 38, set: 'soft' },
    },
  },
  {
    name: 'two seeds of one jar, each with an amount, a pH and a note of its own: no wide sheet',
    text: `Date,Jar,Seed 1,Amount 1,pH 1,Note 1,Seed 2,Amount 2,pH 2,Note 2,Set
2025-05-02,a,8 caps Blue Tin,,4.4,,,,,,firm
2025-05-09,a,2025-05-02 a,30 ml,4.5,calm,5 caps Meadow Pot,,4.4,mild,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.4, set: 'firm' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], sources: ['Meadow Pot'], ml: [30], pieces: [5], generation: 2, ph: 4.5, set: 'soft', note: 'mild' },
    },
  },
  {
    name: 'long: one thing a line',
    text: `Date,Jar,Item,Value
2025-05-02,a,seed,8 caps Blue Tin
2025-05-02,a,hours,36
2025-05-02,a,set,firm
2025-05-09,a,seed,2025-05-02 a
2025-05-09,a,amount,40 ml
2025-05-09,a,set,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      5: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'soft' },
    },
    says: [/“Item” was read as headings/],
  },
  {
    name: 'hours and degrees in one cell, in three ways',
    text: `Date,Jar,Seed,Amt,Temp/Time,Set
5/2/2025,a,8 caps Blue Tin,,100F/36h,firm
5/14/2025,a,5/2 a,2T,101 / 34,soft
5/15/2025,a,5/14 a,2T,101F 36 hrs,soft
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778, set: 'firm' },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [29.6], generation: 2, hours: 34, celsius: 38.3333, set: 'soft' },
      4: { jar: '2025-05-15 a', seeds: ['2025-05-14 a'], ml: [29.6], generation: 3, hours: 36, celsius: 38.3333, set: 'soft' },
    },
  },
  {
    name: 'a title and a keyed day above each block',
    text: `Batch 1,,,
Date,2025-05-02,,
Jar,Seed,Amount,Set
a,8 caps Blue Tin,,firm
b,8 caps Blue Tin,,soft
Batch 2,,,
Date,2025-05-09,,
Jar,Seed,Amount,Set
a,2 May a,40 ml,firm
`,
    jars: {
      4: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'firm' },
      5: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      9: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, set: 'firm' },
    },
    says: [/“Batch 2” stands above the headings/],
  },
  {
    name: 'bare figures below headings that tell their unit',
    text: `Date,Jar,Seed,Seed T,Milk qt,Temp F,Hours,Fiber tsp,Set by (h)
5/2/25,a,8 caps Blue Tin,,1,100,36,2,12
5/14/25,a,5/2 a,3,1,101,34,1,10
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778, milkMl: 946, added: ['9.9 mL'], note: 'Set by (h): 12' },
      3: { jar: '2025-05-14 a', seeds: ['2025-05-02 a'], ml: [44.4], generation: 2, hours: 34, celsius: 38.3333, milkMl: 946, added: ['4.9 mL'] },
    },
  },
  {
    name: 'days written in six ways, seeds as letters of the batch before, halves of two',
    text: `Made,Jar,Seed,Amount
Sat May 3 '25,a,8 caps Blue Tin,
Sat May 3 '25,b,8 caps Blue Tin,
2025. 05. 10.,a,a/b,40 ml each
17.V.2025,a,10 May a,2 tbsp per cup
May-24-25,a,17 May a,40 ml
20250531,d,24 May a,40 ml
7th of June 2025,a,1/2 d + 1/2 b,40 ml
`,
    jars: {
      2: { jar: '2025-05-03 a', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      3: { jar: '2025-05-03 b', sources: ['Blue Tin'], pieces: [8], generation: 1 },
      4: { jar: '2025-05-10 a', seeds: ['2025-05-03 a', '2025-05-03 b'], ml: [40, 40], generation: 2 },
      5: { jar: '2025-05-17 a', seeds: ['2025-05-10 a'], generation: 3, note: '2 tbsp per cup' },
      6: { jar: '2025-05-24 a', seeds: ['2025-05-17 a'], ml: [40], generation: 4 },
      7: { jar: '2025-05-31 d', seeds: ['2025-05-24 a'], ml: [40], generation: 5 },
      8: { jar: '2025-06-07 a', seeds: ['2025-05-31 d', '2025-05-03 b'], ml: [20, 20], generation: 6, note: '1/2' },
    },
    says: [/“2 tbsp per cup” under “Amount” could not be read as an amount/],
  },
]; // prettier-ignore
