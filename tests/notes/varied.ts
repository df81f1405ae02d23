// Invented spreadsheets with what each must give, written before the reader was run on them. All figures by hand:
// spoons from the published measures (US 14.78676478125 mL; metric kitchens 15 mL).
export interface TruthJar {
  /** day and letter: "2025-10-15 a" (with the batch word between, where there is one) */
  readonly jar: string;
  readonly seeds?: readonly string[];
  readonly sources?: readonly string[];
  readonly generation: number;
  readonly ml?: readonly number[];
  readonly pieces?: readonly number[];
  readonly hours?: number;
  readonly celsius?: number;
  readonly set?: string;
  readonly ph?: number;
  readonly additions?: readonly string[];
  /** Amounts of the additions, in order: "29.6 mL". */
  readonly added?: readonly string[];
  readonly milk?: string;
  readonly milkMl?: number;
  readonly part?: string;
  /** Words that must stand in the note. */
  readonly note?: string;
  readonly spoiled?: boolean;
}
export interface Varied {
  readonly name: string;
  readonly text: string;
  readonly today?: string;
  /** By line; where one line is several jars, the others by line and letter ("2 b"). */
  readonly jars: Readonly<Record<number | string, TruthJar>>;
  /** Lines left aside. */
  readonly aside?: readonly number[];
  /** The last line decides how the others are read, so a file without it is another file: the order it settles, or 'clash'. */
  readonly lastLine?: 'day first' | 'month first' | 'clash';
  readonly answers?: Readonly<Record<string, string>>;
  /** Each must be said by a problem, a question or an assumption. */
  readonly says?: readonly RegExp[];
}

export const VARIED: readonly Varied[] = [
  {
    name: 'German, semicolons, decimal comma, points in dates',
    text: `Datum;Glas;Angesetzt mit;Menge;Milch;Ballaststoff;Stunden;Temperatur;Konsistenz;pH-Wert;Bemerkungen
15.10.2025;a;10 Kapseln Blaue Dose + 5 Tabletten Wiesentopf;;1 l Vollmilch;2 EL Akazienfaser;30;38,2 °C;fest;4,35;
15.10.2025;b;8 Kapseln Blaue Dose;;1 l Vollmilch;;30;38,2 °C;weich;;
19.10.2025;a;15.10. b;3 EL;1 l Vollmilch;2 EL Haferkleie;36 Std.;38 °C;sehr fest;4,28;kein Schimmel
23.10.2025;a;19.10.2025 a und 15.10.2025 a;2 EL + 2 EL;1,5 l Vollmilch;;36;38;stichfest;;rosa Streifen am Rand
`,
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Blaue Dose', 'Wiesentopf'], pieces: [10, 5], generation: 1, hours: 30, celsius: 38.2, set: 'firm', ph: 4.35, additions: ['Akazienfaser'] },
      3: { jar: '2025-10-15 b', sources: ['Blaue Dose'], pieces: [8], generation: 1, hours: 30, celsius: 38.2, set: 'soft' },
      4: { jar: '2025-10-19 a', seeds: ['2025-10-15 b'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'very firm', ph: 4.28, additions: ['Haferkleie'] },
      5: { jar: '2025-10-23 a', seeds: ['2025-10-19 a', '2025-10-15 a'], ml: [30, 30], generation: 3, hours: 36, celsius: 38, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'French, tabs',
    text: `Date\tPot\tEnsemencé avec\tQuantité\tLait\tFibre\tHeures\tTempérature\tConsistance\tRemarques
03/11/2025\tA\t10 gélules Boîte Bleue\t\t1 litre lait entier\tinuline de chicorée 2 c. à s.\t36 h\t38 °C\tferme\t
14/11/2025\tA\t03/11/2025 A\t3 c. à s.\t1 litre lait entier\t\t36 h\t37,5 °C\ttrès ferme\tpas de moisi
14/11/2025\tB\tmême jour A\t2 c. à s.\t1 litre lait entier\t\t34 h\t37,5 °C\tcrémeux\tmoisi sur le dessus
`,
    jars: {
      2: { jar: '2025-11-03 a', sources: ['Boîte Bleue'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm', additions: ['inuline de chicorée'] },
      3: { jar: '2025-11-14 a', seeds: ['2025-11-03 a'], ml: [45], generation: 2, hours: 36, celsius: 37.5, set: 'very firm' },
      4: { jar: '2025-11-14 b', seeds: ['2025-11-14 a'], ml: [30], generation: 3, hours: 34, celsius: 37.5, set: 'spoonable', spoiled: true },
    },
  },
  {
    name: 'newest first, ISO days, units in the headings, pipes',
    text: `Made on|Jar|Seeded from|Seed (ml)|Milk (ml)|Hold h|Temp (C)|Result
2026-01-20|b|2026-01-10 a|50|950|36|38|thick
2026-01-20|a|2026-01-10 a|40|960|36|38|like custard
2026-01-10|a|2026-01-01 a|50|950|34|37.5|set hard
2026-01-01|a|12 sachets Hill Packet||1000|40|38|thin
`,
    jars: {
      2: { jar: '2026-01-20 b', seeds: ['2026-01-10 a'], ml: [50], generation: 3, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2026-01-20 a', seeds: ['2026-01-10 a'], ml: [40], generation: 3, hours: 36, celsius: 38, set: 'spoonable' },
      4: { jar: '2026-01-10 a', seeds: ['2026-01-01 a'], ml: [50], generation: 2, hours: 34, celsius: 37.5, set: 'very firm' },
      5: { jar: '2026-01-01 a', sources: ['Hill Packet'], pieces: [12], generation: 1, hours: 40, celsius: 38, set: 'runny' },
    },
  },
  {
    name: 'full labels in one column, no year, a title above',
    text: `Our culture log
,,,,
Batch,Made from,How much,Hours,Temp,How was it
12 Nov a,Blue Tin x10,,36,100F,firm
12 Nov b,Blue Tin x8,,36,100F,firm
20 Nov a,12 Nov b,3 tbsp,36,101F,spoonable
2 Jan a,20 Nov a,2 tbsp,36,101F,soft
`,
    today: '2026-03-01',
    jars: {
      4: { jar: '2025-11-12 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'firm' },
      5: { jar: '2025-11-12 b', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      6: { jar: '2025-11-20 a', seeds: ['2025-11-12 b'], ml: [44.4], generation: 2, hours: 36, set: 'spoonable' },
      7: { jar: '2026-01-02 a', seeds: ['2025-11-20 a'], ml: [29.6], generation: 3, hours: 36, set: 'soft' },
    },
  },
  {
    name: 'numbered jars',
    text: `No,Date,From,Amount,Hours,Set
#1,2025-09-01,6 tablets Meadow Pot,,36,firm
#2,2025-09-01,6 tablets Meadow Pot,,36,soft
#3,2025-09-09,#1,2 Tbsp,36,firm
#4,2025-09-16,#3 + #2,1 tbsp each,40,very firm
#5,2025-09-20,jar 4,3 T,1.5 days,firm
`,
    jars: {
      2: { jar: '2025-09-01 1', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 36, set: 'firm' },
      3: { jar: '2025-09-01 2', sources: ['Meadow Pot'], pieces: [6], generation: 1, hours: 36, set: 'soft' },
      4: { jar: '2025-09-09 3', seeds: ['2025-09-01 1'], ml: [29.6], generation: 2, hours: 36, set: 'firm' },
      5: { jar: '2025-09-16 4', seeds: ['2025-09-09 3', '2025-09-01 2'], ml: [14.8, 14.8], generation: 3, hours: 40, set: 'very firm' },
      6: { jar: '2025-09-20 5', seeds: ['2025-09-16 4'], ml: [44.4], generation: 4, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'mixed seeds of jars and pieces, quoted cells over two lines',
    text: `Date,Jar,Starter,Amount,Hours,Notes
10/15/25,a,starter: Blue Tin (10 caps),,36,
10/15/25,b,10 capsules Blue Tin; 5 tablets Meadow Pot,,36,"first line
second line"
10/23/25,a,2 T of 10/15 a + 5 capsules blue tin,,36,
10/30/25,a,"10/23/25 a, 10/15/25 b",2 Tbsp + 1 Tbsp,36,
11/06/25,a,b from 10/15,3 tbsp,36,turned black at the rim
`,
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36 },
      3: { jar: '2025-10-15 b', sources: ['Blue Tin', 'Meadow Pot'], pieces: [10, 5], generation: 1, hours: 36 },
      5: { jar: '2025-10-23 a', seeds: ['2025-10-15 a'], sources: ['Blue Tin'], ml: [29.6], pieces: [5], generation: 2, hours: 36 },
      6: { jar: '2025-10-30 a', seeds: ['2025-10-23 a', '2025-10-15 b'], ml: [29.6, 14.8], generation: 3, hours: 36 },
      7: { jar: '2025-11-06 a', seeds: ['2025-10-15 b'], ml: [44.4], generation: 2, hours: 36, spoiled: true },
    },
  },
  {
    name: 'a spreadsheet’s day numbers, no letters, Spanish',
    // 45945 is 2025-10-15 (45658 is 2025-01-01, and 287 days later is 15 October).
    text: `Fecha;Iniciado con;Cantidad;Leche;Horas;Temperatura;Resultado
45945;10 cápsulas Lata Azul;;1 l leche entera;36;38;firme
45953;15/10/2025;3 cucharadas;1 l leche entera;36;38;muy firme
45961;23/10/2025;2 cda;1 l leche entera;36;38;líquido
`,
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Lata Azul'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-10-23 a', seeds: ['2025-10-15 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'very firm' },
      4: { jar: '2025-10-31 a', seeds: ['2025-10-23 a'], ml: [30], generation: 3, hours: 36, celsius: 38 },
    },
  },
  {
    name: 'problems: seed later, own ancestor, unknown, impossible figures, what hangs on them',
    lastLine: 'clash',
    text: `Date,Jar,Seed,Amount,Hours,Temp,pH
2025-10-01,a,10 capsules Blue Tin,,36,100F,4.4
2025-10-08,a,2025-10-20 a,3 tbsp,36,100F,4.4
2025-10-20,a,2025-10-01 a,3 tbsp,36,100F,4.4
2025-10-22,a,2025-10-22 a,3 tbsp,36,100F,4.4
2025-10-24,a,2025-10-22 a,3 tbsp,36,100F,4.4
2025-10-26,a,the best one of the summer,3 tbsp,36,100F,4.4
2025-10-28,a,2025-10-20 a,3 tbsp,36,100F,44
2025-10-30,a,2025-10-20 a,-3 tbsp,36,100F,4.4
2025-11-01,a,2025-10-20 a,3 tbsp,36,380 C,4.4
2025-11-03,a,2025-10-20 b,3 tbsp,36,100F,4.4
2025-13-03,a,2025-10-20 a,3 tbsp,36,100F,4.4
2025-11-05,a,2025-10-20 a,3 tbsp,36,100F,4.3
2025-11-05,a,2025-10-01 a,3 tbsp,30,100F,4.3
`,
    aside: [3, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14],
    jars: {
      2: { jar: '2025-10-01 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, ph: 4.4 },
      4: { jar: '2025-10-20 a', seeds: ['2025-10-01 a'], ml: [44.4], generation: 2, hours: 36, ph: 4.4 },
    },
  },
  {
    name: 'headings we do not know',
    text: `Alpha,Beta,Gamma,Delta,Epsilon,Zeta
10/15/25,a,10 capsules Blue Tin,,100F,firm
10/15/25,b,10 capsules Blue Tin,,101F,soft
10/23/25,a,10/15/25 b,3 tbsp,100F,very firm
10/29/25,a,10/23/25 a,2 tbsp,100F,firm
`,
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Blue Tin'], pieces: [10], generation: 1, celsius: 37.7778, set: 'firm' },
      3: { jar: '2025-10-15 b', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'soft' },
      4: { jar: '2025-10-23 a', seeds: ['2025-10-15 b'], ml: [44.4], generation: 2, set: 'very firm' },
      5: { jar: '2025-10-29 a', seeds: ['2025-10-23 a'], ml: [29.6], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'no headings at all',
    text: `2025-10-15,a,10 capsules Blue Tin,,36h,100F,firm
2025-10-23,a,2025-10-15 a,3 tbsp,36h,100F,very firm
2025-10-29,a,2025-10-23 a,2 tbsp,34h,101F,soft
`,
    jars: {
      1: { jar: '2025-10-15 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'firm' },
      2: { jar: '2025-10-23 a', seeds: ['2025-10-15 a'], ml: [44.4], generation: 2, hours: 36, set: 'very firm' },
      3: { jar: '2025-10-29 a', seeds: ['2025-10-23 a'], ml: [29.6], generation: 3, hours: 34, set: 'soft' },
    },
  },
  {
    name: 'Swedish, month names, blank days carried down, totals, repeated headings, ditto marks',
    text: `Datum,Burk,Startad från,Mängd,Mjölk,Timmar,Temp °C,Resultat,Anteckningar
15 okt 2025,a,10 kapslar Blå Burk,,1 l mjölk,36,38,fast,
,b,8 kapslar Blå Burk,,1 l mjölk,36,38,mjuk,
Datum,Burk,Startad från,Mängd,Mjölk,Timmar,Temp °C,Resultat,Anteckningar
23 okt 2025,a,15 okt b,3 msk,1 l mjölk,36,38,krämig,inget mögel
30 okt 2025,a,förra,2 msk,1 l mjölk,"""",38,fast,mögel på ytan
Summa,,,,4 l,144,,,
`,
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Blå Burk'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-10-15 b', sources: ['Blå Burk'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft' },
      5: { jar: '2025-10-23 a', seeds: ['2025-10-15 b'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'spoonable' },
      6: { jar: '2025-10-30 a', seeds: ['2025-10-23 a'], ml: [30], generation: 3, hours: 36, celsius: 38, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'a batch column beside the letters, traps for spoilage, not set',
    text: `Batch,Day,Jar,Seed,Qty,Held for,How did it set,pH,Remarks
Heron,1 Sep 2025,a,10 caps Blue Tin,,36 hrs,didn't set,4.3,orange zest added
Heron,1 Sep 2025,b,10 caps Blue Tin,,36 hrs,never set,,
Lantern,1 Sep 2025,a,jar from the neighbouring club,4 tbsp,36 hrs,drinkable,,no mould and not pink
Heron,9 Sep 2025,a,1 Sep Heron a,¼ cup,a day and a half,firm,,"smelled foul, threw it out"
Lantern,9 Sep 2025,a,1 Sep Lantern a,1/4 cup,36 hrs,solid,,lid had lifted
`,
    jars: {
      2: { jar: '2025-09-01 Heron a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'runny', ph: 4.3, spoiled: false },
      3: { jar: '2025-09-01 Heron b', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'runny', spoiled: true },
      4: { jar: '2025-09-01 Lantern a', sources: ['jar from the neighbouring club'], ml: [59.1], generation: 2, hours: 36, set: 'runny', spoiled: false },
      5: { jar: '2025-09-09 Heron a', seeds: ['2025-09-01 Heron a'], ml: [59.1], generation: 2, hours: 36, set: 'firm', spoiled: true },
      6: { jar: '2025-09-09 Lantern a', seeds: ['2025-09-01 Lantern a'], ml: [59.1], generation: 3, hours: 36, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'Italian and Polish words, metric, newest first without years',
    text: `Data;Vasetto;Iniziato da;Quantità;Latte;Ore;Temperatura;Consistenza
3 feb;a;20 gen a;3 cucchiai;1 l latte intero;36;38;compatto
20 gen;a;10 dic b;3 cucchiai;1 l latte intero;36;38;cremoso
10 dic;b;10 capsule Scatola Blu;;1 l latte intero;36;38;morbido
`,
    today: '2026-03-01',
    jars: {
      2: { jar: '2026-02-03 a', seeds: ['2026-01-20 a'], ml: [45], generation: 3, hours: 36, set: 'firm' },
      3: { jar: '2026-01-20 a', seeds: ['2025-12-10 b'], ml: [45], generation: 2, hours: 36, set: 'spoonable' },
      4: { jar: '2025-12-10 b', sources: ['Scatola Blu'], pieces: [10], generation: 1, hours: 36, set: 'soft' },
    },
  },
  {
    name: 'seed of a day with one jar, last batch, amounts with units in cells, full labels as seeds with dashes',
    text: `date made,jar,seed from,seed amount,milk,fiber,fiber amount,hrs,temp f,set,comments
2025-10-15,A,20251001a,100 ml,0.9 L whole milk,oat bran,12 g,36,100,firm,
2025-10-01,A,Blue Tin 12 tablets,,1 L whole milk,none,,36,99,soft,
2025-10-22,A,2025-10-15-A,100ml,900 ml whole milk,Oat Bran,10 g,36,100,firm,
2025-10-29,A,last batch,half a cup,900 ml whole milk,,,36,100,firm,
`,
    jars: {
      2: { jar: '2025-10-15 a', seeds: ['2025-10-01 a'], ml: [100], generation: 2, hours: 36, celsius: 37.7778, set: 'firm', additions: ['oat bran'] },
      3: { jar: '2025-10-01 a', sources: ['Blue Tin'], pieces: [12], generation: 1, hours: 36, set: 'soft' },
      4: { jar: '2025-10-22 a', seeds: ['2025-10-15 a'], ml: [100], generation: 3, hours: 36, set: 'firm', additions: ['oat bran'] },
      5: { jar: '2025-10-29 a', seeds: ['2025-10-22 a'], ml: [118.3], generation: 4, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'ways to name seeds',
    text: `Date,Jar,Started from,Amount,Hours,Temp,Set
10/15/25,A,Blue Tin,10 capsules,36,100,firm
10/15/25,B,Blue Tin + Meadow Pot,10 capsules + 5 tablets,36,100,firm
10/23/25,B,10/15/25,3 tbsp,36,100,firm
10/24/25,A,A & B from 10/15/25,2 tbsp each,36,100,firm
10/25/25,A,10/15/25 A+B,2T+1T,36,100,firm
10/27/25,A,10/15/25A,3 tablespoons,36,100,firm
10/28/25,A,B of 10/23,3 tbs,36,100,firm
10/30/25,A,Oct 27 A,3 tbs.,36,100,firm
10/31/25,A,#A 10-30-25,3 tblsp,36 hr,100,firm
11/01/25,A,10/31/25 A or 10/30/25 A,3 T,36,100,firm
11/02/25,A,10/15/25 z,3 T,36,100,firm
`,
    aside: [4, 8, 11, 12],
    jars: {
      2: { jar: '2025-10-15 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'firm' },
      3: { jar: '2025-10-15 b', sources: ['Blue Tin', 'Meadow Pot'], pieces: [10, 5], generation: 1, hours: 36, set: 'firm' },
      5: { jar: '2025-10-24 a', seeds: ['2025-10-15 a', '2025-10-15 b'], ml: [29.6, 29.6], generation: 2, hours: 36, set: 'firm' },
      6: { jar: '2025-10-25 a', seeds: ['2025-10-15 a', '2025-10-15 b'], ml: [29.6, 14.8], generation: 2, hours: 36, set: 'firm' },
      7: { jar: '2025-10-27 a', seeds: ['2025-10-15 a'], ml: [44.4], generation: 2, hours: 36, set: 'firm' },
      9: { jar: '2025-10-30 a', seeds: ['2025-10-27 a'], ml: [44.4], generation: 3, hours: 36, set: 'firm' },
      10: { jar: '2025-10-31 a', seeds: ['2025-10-30 a'], ml: [44.4], generation: 4, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'batch numbers, seed named by batch and letter, texture column as set, half & half',
    text: `date;batch;jar;from batch;from jar;seed amt;milk;fibre;fibre amt;held;temp;texture;ph;comments
2025-10-01;1;a;10 caps Blue Tin;;;1 qt whole;acacia;2 T;30 h;101;firm;;
2025-10-05;2;a;1;a;3 T;1 qt half & half;;;30 h;101;thick;4,28;
2025-10-09;3;a;batch 2 jar a;;3 T;1 qt half-and-half;;;30 h;101;thick;4,28;
`,
    jars: {
      2: { jar: '2025-10-01 1 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 30, celsius: 38.3333, set: 'firm', additions: ['acacia'] },
      3: { jar: '2025-10-05 2 a', seeds: ['2025-10-01 1 a'], ml: [44.4], generation: 2, hours: 30, set: 'firm', ph: 4.28 },
      4: { jar: '2025-10-09 3 a', seeds: ['2025-10-05 2 a'], ml: [44.4], generation: 3, hours: 30, set: 'firm', ph: 4.28 },
    },
  },
  {
    name: 'points between, month first because one date shows it',
    lastLine: 'month first',
    text: `Date,Jar,Started from,Amount
10.12.25,a,10 capsules Blue Tin,
10.15.25,a,10.12.25 a,3 tbsp
`,
    jars: {
      2: { jar: '2025-10-12 a', sources: ['Blue Tin'], pieces: [10], generation: 1 },
      3: { jar: '2025-10-15 a', seeds: ['2025-10-12 a'], ml: [44.4], generation: 2 },
    },
  },
  {
    name: 'points between and nothing else to tell: day first',
    text: `Date;Jar;Started from;Amount
03.04.2025;a;10 capsules Blue Tin;
05.06.2025;a;3.4.2025 a;40 ml
`,
    jars: {
      2: { jar: '2025-04-03 a', sources: ['Blue Tin'], pieces: [10], generation: 1 },
      3: { jar: '2025-06-05 a', seeds: ['2025-04-03 a'], ml: [40], generation: 2 },
    },
  },
]; // prettier-ignore
