// Invented spreadsheets with habits that no other sheet here has; each truth is by hand from the text alone. Figures: US
// tablespoon 14.78676478125 mL, quart 946.352946 mL (NIST Handbook 44); metric tablespoon 15 mL (common practice).
import type { Varied } from './varied';

export const FURTHER_KEEPERS: readonly Varied[] = [
  {
    name: 'a batch a row, its jars as columns',
    text: `Batch,Date,Seed,Milk,A,B,C
1,2025-04-01,12 caps Blue Tin,1 L whole,firm,soft,runny
2,2025-04-08,1A,1 L whole,firm,firm,
3,2025-04-15,2B,1 L whole,very firm,firm,firm
`,
    jars: {
      2: { jar: '2025-04-01 1 a', sources: ['Blue Tin'], pieces: [12], generation: 1, set: 'firm', milkMl: 1000 },
      '2 b': { jar: '2025-04-01 1 b', sources: ['Blue Tin'], pieces: [12], generation: 1, set: 'soft' },
      '2 c': { jar: '2025-04-01 1 c', sources: ['Blue Tin'], pieces: [12], generation: 1, set: 'runny' },
      3: { jar: '2025-04-08 2 a', seeds: ['2025-04-01 1 a'], generation: 2, set: 'firm' },
      '3 b': { jar: '2025-04-08 2 b', seeds: ['2025-04-01 1 a'], generation: 2, set: 'firm' },
      4: { jar: '2025-04-15 3 a', seeds: ['2025-04-08 2 b'], generation: 3, set: 'very firm' },
      '4 b': { jar: '2025-04-15 3 b', seeds: ['2025-04-08 2 b'], generation: 3, set: 'firm' },
      '4 c': { jar: '2025-04-15 3 c', seeds: ['2025-04-08 2 b'], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'on its side: a column for each jar',
    text: `Jar,1,2,3,4
Date,2025-05-01,2025-05-01,2025-05-08,2025-05-15
Seed,10 caps Blue Tin,10 caps Blue Tin,2,3
ml,,,45,45
Set,soft,firm,firm,firm
`,
    jars: {
      2: { jar: '2025-05-01 1', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'soft' },
      3: { jar: '2025-05-01 2', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'firm' },
      4: { jar: '2025-05-08 3', seeds: ['2025-05-01 2'], ml: [45], generation: 2, set: 'firm' },
      5: { jar: '2025-05-15 4', seeds: ['2025-05-08 3'], ml: [45], generation: 3, set: 'firm' },
    },
    says: [/lies on its side/],
  },
  {
    name: 'last week’s, a count in brackets, a word that is no length',
    text: `When,Which,Started from,How much,How long,Temp,How did it turn out
5 May 2025,a,starter capsules Blue Tin (10),,overnight + 8h,100,nice and thick
12 May 2025,a,last week's a,1/4 cup,36-40h,100F,thick
12 May 2025,b,last week's,1/4 cup,36-40h,38C,a bit loose
19 May 2025,a,last week's b,1/4 cup,1.5d,100F,thick
26 May 2025,a,b from two weeks ago,2 Tbsp,36h,100F,runny
`,
    jars: {
      2: { jar: '2025-05-05 a', sources: ['Blue Tin'], pieces: [10], generation: 1, celsius: 37.7778, set: 'firm', note: 'overnight + 8h' },
      3: { jar: '2025-05-12 a', seeds: ['2025-05-05 a'], ml: [59.1], generation: 2, hours: 38, set: 'firm' },
      4: { jar: '2025-05-12 b', seeds: ['2025-05-05 a'], ml: [59.1], generation: 2, hours: 38, celsius: 38, set: 'soft' },
      5: { jar: '2025-05-19 a', seeds: ['2025-05-12 b'], ml: [59.1], generation: 3, hours: 36, set: 'firm' },
      6: { jar: '2025-05-26 a', seeds: ['2025-05-12 b'], ml: [29.6], generation: 3, hours: 36, set: 'runny' },
    },
    says: [/“overnight \+ 8h” under “How long” could not be read/],
  },
  {
    name: 'halves of two jars of one day, the milk as a heading',
    text: `Date,Jar,Seed,Half & half (qt),Hours,Result
2025-05-02,a,10 caps Blue Tin,1,36,soft
2025-05-02,b,10 caps Blue Tin,0.5,36,soft
2025-05-09,a,half a half b of 2025-05-02,1,36,firm
2025-05-16,a,1/2 cup of #a from May 9,1,36,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'soft', milk: 'half and half', milkMl: 946.4 },
      3: { jar: '2025-05-02 b', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, set: 'soft', milk: 'half and half', milkMl: 473.2 },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-02 a', '2025-05-02 b'], generation: 2, hours: 36, set: 'firm', milkMl: 946.4, note: 'half' },
      5: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [118.3], generation: 3, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'a hold of two parts',
    text: `Date,Jar,Seed,Amount,Hold,Set
2025-05-02,a,10 caps Blue Tin,,"8 h at 38, then 20 h at 36",firm
2025-05-09,a,2 May a,40 ml,36h @ 38C,firm
2025-05-16,a,9 May a,40 ml,24h 38C + 12h 38C,firm
`,
    jars: {
      2: { jar: '2025-05-02 a', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 28, set: 'firm', note: '8 h at 38, then 20 h at 36' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-02 a'], ml: [40], generation: 2, hours: 36, celsius: 38, set: 'firm' },
      4: { jar: '2025-05-16 a', seeds: ['2025-05-09 a'], ml: [40], generation: 3, hours: 36, celsius: 38, set: 'firm' },
    },
    says: [/taken as 28 h held in all\. Its parts differ in temperature/],
  },
  {
    name: 'the day out in a column of its own, beside the time out',
    text: `Date in,Time in,Date out,Time out,Jar,Seed,Seed amount,pH,Set (1=runny 5=v firm)
6/1/25,8:00 PM,6/3/25,8:00 AM,A,8 caps Blue Tin,,4.5,3
6/14/25,7:30 PM,6/16/25,6:30 AM,A,6/1/25 A,40 ml,4.4,4
6/14/25,1930,6/16/25,0630,B,6/1/25 A,40 ml,4.35,5
`,
    jars: {
      2: { jar: '2025-06-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, ph: 4.5, note: '3' },
      3: { jar: '2025-06-14 a', seeds: ['2025-06-01 a'], ml: [40], generation: 2, hours: 35, ph: 4.4, note: '4' },
      4: { jar: '2025-06-14 b', seeds: ['2025-06-01 a'], ml: [40], generation: 2, hours: 35, ph: 4.35, note: '5' },
    },
  },
  {
    name: 'German, lines of title and sum, times in two columns, last week’s',
    text: `Joghurt-Tagebuch;;;;;;;;
;;;;;;;;
Angesetzt am;Glas Nr.;Impfung mit;Menge (EL);Milch;Zugabe;von;bis;Ergebnis
1.2.26;1;10 Kapseln Blaue Dose;;1 l H-Milch;;18:00;06:00;stichfest
8.2.26;1;Glas 1 vom 1.2.;3;1 l H-Milch;1 EL Inulin;18:00;07:30;cremig
15.2.26;1;letzte Woche;3;1 l H-Milch;-;19:00;07:00;etwas flüssig
Summe;3 Gläser;;6;;;;;
`,
    jars: {
      4: { jar: '2026-02-01 1', sources: ['Blaue Dose'], pieces: [10], generation: 1, hours: 12, set: 'firm', milkMl: 1000 },
      5: { jar: '2026-02-08 1', seeds: ['2026-02-01 1'], ml: [45], generation: 2, hours: 13.5, set: 'spoonable', additions: ['Inulin'] },
      6: { jar: '2026-02-15 1', seeds: ['2026-02-08 1'], ml: [45], generation: 3, hours: 12 },
    },
  },
  {
    name: 'weekdays under “Day”, the day itself under “Date”',
    text: `Day,Date,Jar,Seed,Amt,Set
Mon,7/7/25,A,8 caps Blue Tin,,soft
Mon,7/14/25,A,7/7 A,40 ml,firm
Mon,7/21/25,A,prev,40 ml,firm
`,
    jars: {
      2: { jar: '2025-07-07 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft', note: 'Mon' },
      3: { jar: '2025-07-14 a', seeds: ['2025-07-07 a'], ml: [40], generation: 2, set: 'firm' },
      4: { jar: '2025-07-21 a', seeds: ['2025-07-14 a'], ml: [40], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'another table below, and lines of least and most',
    text: `Jars,,,,
Date,Jar,Seed,Amount,pH
2025-08-01,a,8 caps Blue Tin,,4.5
2025-08-08,a,2025-08-01 a,40 ml,4.3
Min,,,,4.3
Best so far,,,,4.3
,,,,
Shopping,,,,
Item,Shop,Price,Qty,
Blue Tin,corner,12.50,1,
Milk,corner,1.20,4,
`,
    jars: {
      3: { jar: '2025-08-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, ph: 4.5 },
      4: { jar: '2025-08-08 a', seeds: ['2025-08-01 a'], ml: [40], generation: 2, ph: 4.3 },
    },
    says: [/“Item Shop Price Qty” heads another table/, /“Milk corner 1.20 4” belongs to another table/, /“Min 4.3” was taken as a line of totals/, /“Best so far 4.3” was taken as a remark/],
  },
  {
    name: 'jars by name, "je 2", sums of spoons',
    text: `Name;Datum;Mutter;EL;Milch;Std;Grad;Urteil
Anna;1.8.25;10 Kapseln "Blaue Dose";;Vollmilch 1 Liter;36;38;gut, fest
Berta;8.8.25;Anna;3;Vollmilch 1 Liter;36;38;zu dünn
Clara;15.8.25;Anna + Berta;je 2;Vollmilch 1 Liter;36;38;fest
Dora;22.8.25;Clara, Berta;2+1;Vollmilch 1 Liter;36;38;fest
Ella;29.8.25;Dora;2 + 1 TL;Vollmilch 1 Liter;36;38;fest
`,
    jars: {
      2: { jar: '2025-08-01 anna', sources: ['Blaue Dose'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm' },
      3: { jar: '2025-08-08 berta', seeds: ['2025-08-01 anna'], ml: [45], generation: 2, hours: 36, set: 'runny' },
      4: { jar: '2025-08-15 clara', seeds: ['2025-08-01 anna', '2025-08-08 berta'], ml: [30, 30], generation: 3, hours: 36, set: 'firm' },
      5: { jar: '2025-08-22 dora', seeds: ['2025-08-15 clara', '2025-08-08 berta'], ml: [30, 15], generation: 4, hours: 36, set: 'firm' },
      6: { jar: '2025-08-29 ella', seeds: ['2025-08-22 dora'], ml: [35], generation: 5, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'a heading nobody knows above the names of jars, arrows, "vol" beside it',
    text: `id,made,chain,vol,°C
1A,01/08/25,Blue Tin caps x8,,36
2A,14/08/25,1A ->,40 mL,36
2B,14/08/25,<- 1A,40 mL,36
3A,28/08/25,2A & 2B,20 mL/20 mL,36
`,
    jars: {
      2: { jar: '2025-08-01 1a', sources: ['Blue Tin'], pieces: [8], generation: 1, celsius: 36 },
      3: { jar: '2025-08-14 2a', seeds: ['2025-08-01 1a'], ml: [40], generation: 2, celsius: 36 },
      4: { jar: '2025-08-14 2b', seeds: ['2025-08-01 1a'], ml: [40], generation: 2, celsius: 36 },
      5: { jar: '2025-08-28 3a', seeds: ['2025-08-14 2a', '2025-08-14 2b'], ml: [20, 20], generation: 3, celsius: 36 },
    },
  },
  {
    name: 'wide, the seed by the number of the jar alone: asked about once for all rows',
    text: `Date,Jar 1 seed,Jar 1 result,Jar 2 seed,Jar 2 result,Temp
2025-08-01,8 caps Blue Tin,soft,8 caps Meadow Pot,firm,38
2025-08-08,jar 1,firm,jar 2,firm,38
2025-08-15,jar 2,firm,jar 2,soft,38
`,
    answers: { 'letter alone': 'last before' },
    jars: {
      2: { jar: '2025-08-01 1', sources: ['Blue Tin'], pieces: [8], generation: 1, celsius: 38, set: 'soft' },
      '2 2': { jar: '2025-08-01 2', sources: ['Meadow Pot'], pieces: [8], generation: 1, celsius: 38, set: 'firm' },
      3: { jar: '2025-08-08 1', seeds: ['2025-08-01 1'], generation: 2, celsius: 38, set: 'firm' },
      '3 2': { jar: '2025-08-08 2', seeds: ['2025-08-01 2'], generation: 2, celsius: 38, set: 'firm' },
      4: { jar: '2025-08-15 1', seeds: ['2025-08-08 2'], generation: 3, celsius: 38, set: 'firm' },
      '4 2': { jar: '2025-08-15 2', seeds: ['2025-08-08 2'], generation: 3, celsius: 38, set: 'soft' },
    },
  },
  {
    name: 'how many jars a batch filled, batches as seeds, when they set',
    text: `Batch #;Jars made;Seed jar;Seed vol;Started;Set after;Texture
1;3;10 caps Blue Tin;;2025-05-01;14h;runny
2;2;1;60 ml;2025-05-09;11h;firm
3;2;2;60 ml;2025-05-17;11h;v. firm
`,
    jars: {
      2: { jar: '2025-05-01 1', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'runny', note: 'Jars made: 3' },
      3: { jar: '2025-05-09 2', seeds: ['2025-05-01 1'], ml: [60], generation: 2, set: 'firm', note: 'Set after: 11h' },
      4: { jar: '2025-05-17 3', seeds: ['2025-05-09 2'], ml: [60], generation: 3, set: 'very firm' },
    },
  },
  {
    name: 'two parents with an amount beside each',
    text: `Jar ID,Made,Parent A,Parent A amt,Parent B,Parent B amt,Type of seed
J1,2025-05-01,Blue Tin,10 caps,,,capsules
J2,2025-05-01,Meadow Pot,5 tabs,,,tablets
J3,2025-05-08,J1,30 ml,J2,15 ml,jars
J4,2025-05-15,J3,45 ml,,,frozen
`,
    jars: {
      2: { jar: '2025-05-01 j1', sources: ['Blue Tin'], pieces: [10], generation: 1 },
      3: { jar: '2025-05-01 j2', sources: ['Meadow Pot'], pieces: [5], generation: 1 },
      4: { jar: '2025-05-08 j3', seeds: ['2025-05-01 j1', '2025-05-01 j2'], ml: [30, 15], generation: 2 },
      5: { jar: '2025-05-15 j4', seeds: ['2025-05-08 j3'], ml: [45], generation: 3, note: 'frozen' },
    },
  },
  {
    name: 'a year on a line of its own, headings that gain a column below the next',
    text: `2025
Date,Seed,Jar,Amt,Set
Apr 1,8 caps Blue Tin,A,,soft
Apr 14,Apr 1 A,A,40 ml,firm
Dec 28,Apr 14 A,A,40 ml,firm
2026
Date,Seed,Jar,Amt,Set,pH
Jan 5,Dec 28 A,A,40 ml,firm,4.4
Jan 14,Jan 5 A,A,40 ml,firm,4.3
`,
    jars: {
      3: { jar: '2025-04-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft' },
      4: { jar: '2025-04-14 a', seeds: ['2025-04-01 a'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-12-28 a', seeds: ['2025-04-14 a'], ml: [40], generation: 3, set: 'firm' },
      8: { jar: '2026-01-05 a', seeds: ['2025-12-28 a'], ml: [40], generation: 4, set: 'firm', ph: 4.4 },
      9: { jar: '2026-01-14 a', seeds: ['2026-01-05 a'], ml: [40], generation: 5, set: 'firm', ph: 4.3 },
    },
    says: [/“2026” was taken as the year of the rows below/],
  },
  {
    name: 'hours and degrees by their heading, the seed’s day without a year the other way round',
    text: `When,Jar,From,How much,Held (hrs@C),Outcome
2025-05-01 7pm,a,8 caps Blue Tin,,36@38,Soft
2025-05-09 8pm,a,a (05-01),45,36@38,Firm
2025-05-17 7.30pm,a,a (05-09) 50 ml,,34@38.5,Firm
`,
    answers: { 'unit:How much': 'mL' },
    jars: {
      2: { jar: '2025-05-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft' },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-01 a'], ml: [45], generation: 2, hours: 36, celsius: 38, set: 'firm' },
      4: { jar: '2025-05-17 a', seeds: ['2025-05-09 a'], ml: [50], generation: 3, hours: 34, celsius: 38.5, set: 'firm' },
    },
  },
  {
    name: 'German, "Ansatz" above the number of the batch',
    text: `Datum,Ansatz,Glas,Starter von,Menge,Std.,Temp.,Ergebnis,Verdorben
1.5.2025,1,a,8 Kapseln Blaue Dose,,36,38,weich,nein
1.5.2025,1,b,8 Kapseln Blaue Dose,,36,38,fest,nein
9.5.2025,2,a,1b,3 EL,36,38,fest,nein
17.5.2025,3,a,2a,3 EL,36,38,fest,"ja, rosa"
`,
    jars: {
      2: { jar: '2025-05-01 1 a', sources: ['Blaue Dose'], pieces: [8], generation: 1, hours: 36, celsius: 38, set: 'soft' },
      3: { jar: '2025-05-01 1 b', sources: ['Blaue Dose'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      4: { jar: '2025-05-09 2 a', seeds: ['2025-05-01 1 b'], ml: [45], generation: 2, hours: 36, set: 'firm' },
      5: { jar: '2025-05-17 3 a', seeds: ['2025-05-09 2 a'], ml: [45], generation: 3, hours: 36, set: 'firm', spoiled: true },
    },
  },
  {
    name: 'seed and amount in one cell without a word between, days that look like fractions',
    text: `Date,Jar,Made with
5/1/25,A,10 caps Blue Tin
5/9/25,A,5/1 A 3T
5/17/25,A,5/9 A 3T
5/25/25,A,the 17th A 2T
`,
    answers: { spoons: 'metric' },
    jars: {
      2: { jar: '2025-05-01 a', sources: ['Blue Tin'], pieces: [10], generation: 1 },
      3: { jar: '2025-05-09 a', seeds: ['2025-05-01 a'], ml: [45], generation: 2 },
      4: { jar: '2025-05-17 a', seeds: ['2025-05-09 a'], ml: [45], generation: 3 },
      5: { jar: '2025-05-25 a', seeds: ['2025-05-17 a'], ml: [30], generation: 4 },
    },
  },
  {
    name: 'a culture and an inoculum, which is how much; moments in and out',
    text: `Batch,Start,Stop,Culture,Inoculum,Milk,Setpoint,Result,pH
B1,2025-05-01 18:00,2025-05-03 06:00,Blue Tin caps,10,whole 1L,38C,firm,4.4
B2,2025-05-09 18:00,2025-05-11 06:00,B1,5%,whole 1L,38C,firm,4.3
B3,2025-05-17 18:00,2025-05-19 06:00,B2,40 mL,skim 1L,38C,soft,4.5
`,
    jars: {
      2: { jar: '2025-05-01 b1', sources: ['Blue Tin'], pieces: [10], generation: 1, hours: 36, celsius: 38, set: 'firm', ph: 4.4, milkMl: 1000 },
      3: { jar: '2025-05-09 b2', seeds: ['2025-05-01 b1'], ml: [50], generation: 2, hours: 36, celsius: 38, set: 'firm', ph: 4.3 },
      4: { jar: '2025-05-17 b3', seeds: ['2025-05-09 b2'], ml: [40], generation: 3, hours: 36, celsius: 38, set: 'soft', ph: 4.5, milk: 'skim milk' },
    },
  },
  {
    name: 'jars by the colours of their lids, which are no sign of spoilage',
    text: `Date,Lid colour,From lid,Hrs,Result
5/1/25,red,8 caps Blue Tin,36,soft
5/1/25,blue,8 caps Blue Tin,36,firm
5/14/25,pink,blue,36,firm
5/27/25,green,pink,36,very firm
`,
    jars: {
      2: { jar: '2025-05-01 red', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'soft' },
      3: { jar: '2025-05-01 blue', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      4: { jar: '2025-05-14 pink', seeds: ['2025-05-01 blue'], generation: 2, hours: 36, set: 'firm' },
      5: { jar: '2025-05-27 green', seeds: ['2025-05-14 pink'], generation: 3, hours: 36, set: 'very firm' },
    },
  },
  {
    name: 'weeks by number, told once for their jars, and seeds by week',
    text: `week,jar,date,seeded from,qty,result
1,a,1 May,10 caps Blue Tin,,soft
,b,,10 caps Blue Tin,,firm
2,a,8 May,wk1 b,40 ml,firm
,b,,wk 1 b,40 ml,firm
3,a,15 May,week 2 a,40 ml,firm
`,
    today: '2025-08-01',
    jars: {
      2: { jar: '2025-05-01 1 a', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'soft' },
      3: { jar: '2025-05-01 1 b', sources: ['Blue Tin'], pieces: [10], generation: 1, set: 'firm' },
      4: { jar: '2025-05-08 2 a', seeds: ['2025-05-01 1 b'], ml: [40], generation: 2, set: 'firm' },
      5: { jar: '2025-05-08 2 b', seeds: ['2025-05-01 1 b'], ml: [40], generation: 2, set: 'firm' },
      6: { jar: '2025-05-15 3 a', seeds: ['2025-05-08 2 a'], ml: [40], generation: 3, set: 'firm' },
    },
  },
  {
    name: 'everything in millilitres and grams, the total too',
    text: `Jar,Made,Seed,Seed ml,Milk ml,Total ml,Inulin g,g bran,Set
1,5/1/25,8 caps Blue Tin,,950,950,0,,soft
2,5/14/25,1,50,950,1000,10,,firm
3,5/27/25,2,50,950,1000,0,8,firm
`,
    jars: {
      2: { jar: '2025-05-01 1', sources: ['Blue Tin'], pieces: [8], generation: 1, set: 'soft', milkMl: 950, additions: [] },
      3: { jar: '2025-05-14 2', seeds: ['2025-05-01 1'], ml: [50], generation: 2, set: 'firm', additions: ['Inulin'], added: ['10 g'] },
      4: { jar: '2025-05-27 3', seeds: ['2025-05-14 2'], ml: [50], generation: 3, set: 'firm', additions: ['bran'], added: ['8 g'] },
    },
    says: [/final volume in the notes was taken as measured/],
  },
  {
    name: 'in words of one’s own: what, when, with what',
    text: `What,When,With what,How long,How hot,How it went
Jar A,May 1 2025,8 capsules of Blue Tin,a day and a half,100,soft
Jar B,May 1 2025,8 capsules of Blue Tin,a day and a half,100,good - firm
Jar A,May 9 2025,"jar B, May 1",36 hours,100,firm!
`,
    jars: {
      2: { jar: '2025-05-01 a', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, celsius: 37.7778, set: 'soft' },
      3: { jar: '2025-05-01 b', sources: ['Blue Tin'], pieces: [8], generation: 1, hours: 36, set: 'firm' },
      4: { jar: '2025-05-09 a', seeds: ['2025-05-01 b'], generation: 2, hours: 36, set: 'firm' },
    },
  },
  {
    name: 'German, the glasses as columns by their names',
    text: `Datum;Starter;Glas 1;Glas 2
1.5.25;8 Kapseln Blaue Dose;fest, etwas Molke;weich
14.5.25;Glas 1;fest;fest
`,
    answers: { 'letter alone': 'last before' },
    jars: {
      2: { jar: '2025-05-01 1', sources: ['Blaue Dose'], pieces: [8], generation: 1, set: 'firm' },
      '2 2': { jar: '2025-05-01 2', sources: ['Blaue Dose'], pieces: [8], generation: 1, set: 'soft' },
      3: { jar: '2025-05-14 1', seeds: ['2025-05-01 1'], generation: 2, set: 'firm' },
      '3 2': { jar: '2025-05-14 2', seeds: ['2025-05-01 1'], generation: 2, set: 'firm' },
    },
  },
  {
    name: 'tasters’ marks under bare numbers are no jars, “w/” is with',
    text: `Batch,Date,Seeded w/,1,2,3
x,2025-05-01,8 caps Blue Tin,4,5,3
y,2025-05-09,x,4,4,4
z,2025-05-17,y,5,5,4
`,
    jars: {
      2: { jar: '2025-05-01 x', sources: ['Blue Tin'], pieces: [8], generation: 1, note: '2: 5' },
      3: { jar: '2025-05-09 y', seeds: ['2025-05-01 x'], generation: 2, note: '1: 4' },
      4: { jar: '2025-05-17 z', seeds: ['2025-05-09 y'], generation: 3, note: '3: 4' },
    },
  },
]; // prettier-ignore
