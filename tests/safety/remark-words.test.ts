// How keepers write of spoilage and power cuts in their notes. The words: common practice, no source.
import { describe, expect, it } from 'vitest';
import { tellsOfSpoiling } from '../../core/safety/remarks';
import { readRemark } from '../../core/safety/remark-words';
import { MISHAPS } from '../../core/safety/mishap-words';
import { SPOILAGE } from '../../core/safety/spoilage-words';
import { read } from '../notes/read';

describe('signs in a keeper’s own words', () => {
  it.each([
    ['lid had blown off', 'lifted lid'],
    ['Lid blown off in the night', 'lifted lid'],
    ['puffed up lid', 'lifted lid'],
    ['lid was puffed up', 'lifted lid'],
    ['the lids were swollen', 'lifted lid'],
    ['Deckel aufgebläht', 'lifted lid'],
    ['water from the bath got in', 'bath water got in'],
    ['bath water in the jar', 'bath water got in'],
    ['Wasser aus dem Wasserbad eingedrungen', 'bath water got in'],
    ['verschimmelt', 'fuzz'],
    ['angeschimmelt am Rand', 'fuzz'],
    ['smells of vomit', 'foul smell'],
    ['smelt like rotten eggs', 'foul smell'],
    ['smells a bit off', 'foul smell'],
    ['riecht nach Erbrochenem', 'foul smell'],
    ['a suspicious smell', 'foul smell'],
    ['gas blew the lid off', 'lifted lid'],
    ['white fluff on top', 'fuzz'],
    ['some kind of fungus', 'fuzz'],
  ])('%s: %s', (text, sign) => expect(readRemark(text).signs).toEqual([sign]));

  it.each([
    'lid on loosely',
    'no water got in',
    'the lid was never puffed up',
    'smells of yoghurt',
    'bath at 38, water topped up',
    'nicht verschimmelt',
    'does not smell of vomit',
    'changed the water in the bath',
    'put the jars in the bath',
    'looked for mould and found none',
    'checked for pink streaks: none',
    'mold none',
    'light and fluffy',
  ])('%s: nothing', (text) => expect(readRemark(text).signs).toEqual([]));

  it.each(['made me sick', 'threw up after eating it', 'doubtful, I would not eat it'])(
    '%s: asked about',
    (text) => expect(tellsOfSpoiling(text, 'note')).toBe(true),
  );
  it.each([
    'breaker tripped overnight',
    'unplugged by mistake for the night',
    'the machine switched itself off for 8 h',
    'bath was off for 2 hours',
    'The heater went out in the night',
    'Wasserbad war aus',
    'Gerät fiel aus',
  ])('%s: a power cut', (text) => expect(readRemark(text).powerCut).not.toBeNull());
  it.each(['spoiled? no', 'slimy? no, silky', 'Mould? Nein.'])('%s: answered in itself', (text) =>
    expect(tellsOfSpoiling(text, 'note')).toBe(false),
  );
  it.each(['spoiled? not sure', 'mould? no idea', 'pink? no, orange mould'])(
    '%s: still asked about',
    (text) => expect(tellsOfSpoiling(text, 'note')).toBe(true),
  );
  it.each([
    'unplugged the bath at the end',
    'turned the bath off after 36 h',
    'bath was off by 2 degrees',
    'Bad war aus Edelstahl',
    'the thermometer was off',
  ])('%s: no power cut', (text) => expect(readRemark(text).powerCut).toBeNull());
  it('how long the bath was off is told', () =>
    expect(readRemark('bath was off for 2 hours').powerCut).toEqual({ hours: 2 }));

  it('no mould but pink is pink', () => expect(readRemark('no mould but pink').signs).toEqual(['pink']));
});

describe.each(SPOILAGE)('$tells, $language: $words', ({ tells, stops, not }) => {
  const told = (text: string): boolean => {
    const { signs, spoiledSaid, thrownOut, asks } = readRemark(text);
    const asked = (kind: string): boolean => asks.some((one) => one.kind === kind);
    if (tells === 'spoiled') return spoiledSaid;
    if (tells === 'thrown out') return thrownOut;
    if (tells === 'not eaten') return spoiledSaid && asked('uncertain sign');
    if (tells === 'like a fibre') return asked('fibre');
    if (tells === 'bubbles' || tells === 'slime') return asked(tells);
    return signs.includes(tells);
  };
  it.each(stops)('%s', (text) => expect(told(text)).toBe(true));
  it.each(not)('not: %s', (text) => expect(told(text)).toBe(false));
  it('is found among other words, by a comma and in capitals', () => {
    for (const text of stops) expect(told(`Took it out in the evening, ${text.toUpperCase()}`)).toBe(true);
  });
});

describe.each(MISHAPS)('$befell, $language', ({ asks, not }) => {
  const asked = (text: string): boolean => readRemark(text).asks.some(({ kind }) => kind === 'mishap');
  it.each(asks)('%s: asked about, and no sign', (text) => {
    for (const said of [text, `Took it out in the evening, ${text.toUpperCase()}`]) {
      expect([said, asked(said)]).toEqual([said, true]);
      expect([said, readRemark(said).signs, readRemark(said).spoiledSaid]).toEqual([said, [], false]);
    }
  });
  it.each(not)('%s: nothing befell it', (text) => expect(asked(text)).toBe(false));
});

describe('a language without a table', () => {
  // Words may stop, and are quoted in any language: answered-remarks.test.ts holds that no remark is unheard.
  it.each(['плесень', 'カビ', '发霉了', '곰팡이', 'फफूंद लग गई', 'küf var'])(
    '%s is no sign by itself: nobody has vouched for a list of it',
    (text) => expect(readRemark(text).signs).toEqual([]),
  );
});

describe('what only the keeper can tell is asked', () => {
  it.each(['slimy at first, as usual', 'schleimig', 'ropy'])('%s: slime or the culture’s threads', (text) => {
    const remark = readRemark(text);
    expect(remark.asks.map(({ kind }) => kind)).toEqual(['slime']);
    expect([remark.signs, remark.spoiledSaid]).toEqual([[], false]);
  });
  it('not slimy is no question', () => expect(readRemark('not slimy').asks).toEqual([]));
  it.each(['do not eat', "DON'T EAT!", 'nicht mehr essen', 'inedible'])(
    '%s: counts as spoiled until it is answered',
    (text) => {
      const remark = readRemark(text);
      expect(remark.spoiledSaid).toBe(true);
      expect(remark.asks.map(({ kind }) => kind)).toEqual(['uncertain sign']);
    },
  );
  it.each(['do not eat, this is the seed', 'don’t eat before Friday', 'nicht essen, Reserve'])(
    '%s: no spoilage, and said to be unsure',
    (text) => {
      const remark = readRemark(text);
      expect(remark.spoiledSaid).toBe(false);
      expect(remark.asks.map(({ kind }) => kind)).toEqual(['unsure']);
    },
  );
});

describe('a power cut', () => {
  it.each([
    ['power was out for 6 h', 6],
    ['Stromausfall', null],
    ['Stromausfall (3 Stunden)', 3],
    ['power cut, 90 min', 1.5],
    ['6-hour power outage', 6],
    ['held 36 h, power went out', null],
    ['no power for an hour', 1],
    ['lost power overnight', null],
    ['coupure de courant pendant 2,5 heures', 2.5],
    ['blackout', null],
  ])('%s: %s', (text, hours) => expect(readRemark(text).powerCut).toEqual({ hours }));
  it.each(['no power cut', 'powerful tang', 'turned on the power strip', 'ohne Stromausfall'])(
    '%s: none',
    (text) => expect(readRemark(text).powerCut).toBeNull(),
  );
});

describe('in a spreadsheet', () => {
  const rows = (heading: string, cell: string): string =>
    `date,jar,seed,${heading}\n2026-02-01,a,10 capsules Blue Tin,${cell}\n`;

  it('a power cut becomes a fact of the outcome, and is said', () => {
    const { byLine, preview } = read(rows('notes', 'power was out for 6 h'));
    expect(byLine.get(2)?.outcome).toMatchObject({ powerCut: true, powerCutHours: 6 });
    expect(preview.assumptions.map(({ sentence }) => sentence).join()).toContain(
      '“power was out for 6 h” was taken as a power cut during the hold (6 h)',
    );
  });

  it('“do not eat” counts as spoiled until it is answered, then as it was answered', () => {
    const text = rows('notes', 'do not eat');
    const { byLine, preview } = read(text);
    expect(byLine.get(2)?.outcome?.spoiledSaid).toBe(true);
    expect(preview.questions.map(({ id }) => id)).toContain('sign:2');
    const answered = read(text, { answers: { 'sign:2': 'fine' } });
    expect(answered.byLine.get(2)?.outcome?.spoiledSaid ?? false).toBe(false);
  });

  it('slime is asked about and decides nothing before it is answered', () => {
    const text = rows('texture', '"slimy at first, as usual"');
    const { byLine, preview } = read(text);
    expect(byLine.get(2)?.outcome).toMatchObject({ signs: [], spoiledSaid: false });
    expect(preview.questions.find(({ id }) => id === 'slime:2')?.sentence).toContain('slimy at first');
    expect(read(text, { answers: { 'slime:2': 'spoiled' } }).byLine.get(2)?.outcome?.spoiledSaid).toBe(true);
    expect(
      read(text, { answers: { 'slime:2': 'fine' } }).preview.questions.filter(({ id }) => id === 'slime:2'),
    ).toEqual([]);
  });

  it('odeur putride in a remark makes the jar spoiled, and is said', () => {
    const { byLine, preview } = read(rows('notes', 'odeur putride'));
    expect(byLine.get(2)?.outcome?.signs).toHaveLength(1);
    expect(preview.assumptions.map(({ sentence }) => sentence).join()).toContain('odeur putride');
  });

  it('under “smell”, “off” is enough', () => {
    expect(read(rows('smell', 'off')).byLine.get(2)?.outcome?.signs).toEqual(['foul smell']);
    expect(read(rows('smell', 'clean')).byLine.get(2)?.outcome?.signs).toEqual([]);
  });
});

// Each language in which words are listed, before the word and behind it. Common practice, no source.
const DENIED = [
  'no mould',
  'no sign of mould',
  'mould: no',
  'mould - none',
  'mould? none',
  'pink: no',
  'mould not seen',
  "mould wasn't there",
  'mould nowhere to be seen',
  'zero mould',
  "couldn't find any mould",
  'mould? I saw none',
  'kein Schimmel',
  'Schimmel: keiner',
  'Schimmel keiner zu sehen',
  'Schimmel nicht vorhanden',
  'schimmelfrei',
  'pas de moisissure',
  'moisissure: aucune',
  'aucune moisissure',
  'sin moho',
  'no hay moho',
  'moho: ninguno',
  'senza muffa',
  'muffa: nessuna',
  'geen schimmel',
  'schimmel: geen',
  'sem bolor',
  'bolor: nenhum',
  'ingen mögel',
  'mögel: inget',
  'mögelfri',
  'ingen mug',
  'mug: ingen',
  'nie ma pleśni',
  'pleśni nie ma',
  'pleśni brak',
  'pleśń: brak',
  'brak pleśni',
  'bez pleśni',
  'żadnej pleśni',
];
const NOT_DENIED = [
  "can't say there was no mould",
  "cannot say that there's no mould",
  'not sure there was no mould',
  "I wouldn't say no mould",
  "I don't think there was no mould",
  'hard to say no mould',
  'could not rule out mould',
  'no doubt mould',
  'no idea where the mould came from',
  'never seen so much mould',
  'not just mould',
  'not without mould',
  'none of us noticed the mould',
  'mould none of us expected',
  'mould not gone',
  'no longer white, mould on top',
  'kein Zweifel: Schimmel',
  'ohne Zweifel Schimmel',
  'nicht nur Schimmel',
  'sans doute moisi',
  'pas seulement de la moisissure',
  'sin duda moho',
  'senza dubbio muffa',
  'non solo muffa',
  'niet alleen schimmel',
  'nie tylko pleśń',
  'nie ma wątpliwości, pleśń',
  'mould: no idea',
  'mould: none of it on b',
  'mould? none of us looked',
];
const heard = (text: string): boolean => {
  const { signs, spoiledSaid, asks } = readRemark(text);
  const told = signs.length > 0 || spoiledSaid || asks.some(({ kind }) => kind === 'uncertain sign');
  // Read as a whole, and part by part as a form and a ledger do.
  expect([text, tellsOfSpoiling(text, 'note')]).toEqual([text, told]);
  return told;
};
it('a denial is heard before the word and behind it, in each language', () =>
  expect(DENIED.filter(heard)).toEqual([]));
it('what denies nothing excuses nothing', () =>
  expect(NOT_DENIED.filter((text) => !heard(text))).toEqual([])); // prettier-ignore
