// How keepers write of spoilage and power cuts in their notes. The words: common practice, no source.
import { describe, expect, it } from 'vitest';
import { tellsOfSpoiling } from '../../core/safety/remarks';
import { readRemark } from '../../core/safety/remark-words';
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
  ])('%s: a power cut', (text) => expect(readRemark(text).powerCut).not.toBeNull());
  it.each(['spoiled? no', 'slimy? no, silky', 'Mould? Nein.'])('%s: answered in itself', (text) =>
    expect(tellsOfSpoiling(text, 'note')).toBe(false),
  );
  it.each(['spoiled? not sure', 'mould? no idea', 'pink? no, orange mould'])(
    '%s: still asked about',
    (text) => expect(tellsOfSpoiling(text, 'note')).toBe(true),
  );
  it('unplugged at the end: no power cut', () =>
    expect(readRemark('unplugged the bath at the end').powerCut).toBeNull());

  it('no mould but pink is pink', () => expect(readRemark('no mould but pink').signs).toEqual(['pink']));
});

describe('signs in more languages', () => {
  // The words: from memory, no source.
  it.each([
    ['odeur putride', 'foul smell'],
    ['odeur fétide', 'foul smell'],
    ['mauvaise odeur', 'foul smell'],
    ['ça sent mauvais', 'foul smell'],
    ['küflenmiş', 'fuzz'],
    ['üstünde küf var', 'fuzz'],
    ['kötü kokuyor', 'foul smell'],
    ['pembe lekeler', 'pink'],
    ['плесень', 'fuzz'],
    ['немного плесени на краю', 'fuzz'],
    ['заплесневело', 'fuzz'],
    ['не было плесени, потом плесень', 'fuzz'],
    ['тухлый запах', 'foul smell'],
    ['воняет', 'foul smell'],
    ['розовые пятна', 'pink'],
    ['чёрные точки', 'black'],
    ['без запаха но розовое', 'pink'],
    ['цвіль', 'fuzz'],
    ['зверху пліснява', 'fuzz'],
    ['тхне, гнилий запах', 'foul smell'],
    ['рожевий наліт', 'pink'],
    ['カビ', 'fuzz'],
    ['ｶﾋﾞが生えた', 'fuzz'],
    ['かびが生えたので食べない', 'fuzz'],
    ['カビないか心配', 'fuzz'],
    ['腐った臭い', 'foul smell'],
    ['異臭がする', 'foul smell'],
    ['ピンク色の斑点', 'pink'],
    ['发霉了', 'fuzz'],
    ['發霉', 'fuzz'],
    ['没盖好所以发霉了', 'fuzz'],
    ['有异味', 'foul smell'],
    ['粉红色斑点', 'pink'],
    ['곰팡이가 피었다', 'fuzz'],
    ['썩은 냄새', 'foul smell'],
    ['분홍색 얼룩', 'pink'],
    ['주황색', 'orange'],
    ['फफूंद लग गई', 'fuzz'],
    ['बदबू आ रही है', 'foul smell'],
    ['गुलाबी धब्बे', 'pink'],
  ])('%s: %s', (text, sign) => expect(readRemark(text).signs).toEqual([sign]));

  it.each([
    'sans odeur putride',
    'pas d’odeur fétide',
    'küf yok',
    'küf ve kötü koku yok',
    'küfsüz',
    'плесени нет',
    'без плесени и запаха',
    'нет никакой плесени',
    'плесени не видно',
    'не тухлый',
    'неплохо пахнет',
    'прекрасный вкус',
    'черника и чернослив',
    'плеснула молока',
    'цвілі немає',
    'без цвілі',
    'вони добре загусли',
    'чорна смородина',
    'カビなし',
    'カビ、異臭なし',
    'カビは生えていない',
    'カビは見当たらない',
    '腐っていない',
    'ホエーが浮かび上がる',
    '没有发霉',
    '沒有霉味、異味',
    '无异味',
    '草莓',
    '곰팡이 없음',
    '곰팡이는 안 핌',
    '악취나 곰팡이 없음',
    '썩은 냄새 없음',
    '이상한 점 없음',
    'फफूंद नहीं है',
    'कोई बदबू नहीं',
    'बिना फफूंद',
    'नारंगी का रस',
  ])('%s: nothing', (text) => {
    const { signs, spoiledSaid } = readRemark(text);
    expect([signs, spoiledSaid]).toEqual([[], false]);
  });

  it.each(['испортилось', 'зіпсувалося', '傷んだ', '变质了', '우유가 상했다', 'ख़राब हो गया', 'bozulmuş'])(
    '%s: spoiled',
    (text) => expect(readRemark(text).spoiledSaid).toBe(true),
  );

  it.each(['turuncu kapak', 'красная крышка', 'чёрный перец', '粉红色的盖子', '분홍 뚜껑', 'गुलाबी नमक'])(
    '%s: a coloured thing, asked about',
    (text) => {
      const remark = readRemark(text);
      expect(remark.signs).toEqual([]);
      expect(remark.asks.map(({ kind }) => kind)).toEqual(['colour of a thing']);
    },
  );

  it.each(['может быть плесень', 'カビかも', '可能发霉了', 'плесень?'])('%s: uncertain', (text) => {
    const remark = readRemark(text);
    expect(remark.signs).toEqual(['fuzz']);
    expect(remark.asks.map(({ kind }) => kind)).toEqual(['uncertain sign']);
  });
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

  it.each(['плесень', 'カビ', 'odeur putride'])(
    '%s in a remark makes the jar spoiled, and is said',
    (words) => {
      const { byLine, preview } = read(rows('notes', words));
      expect(byLine.get(2)?.outcome?.signs).toHaveLength(1);
      expect(preview.assumptions.map(({ sentence }) => sentence).join()).toContain(words);
    },
  );

  it('under “smell”, “off” is enough', () => {
    expect(read(rows('smell', 'off')).byLine.get(2)?.outcome?.signs).toEqual(['foul smell']);
    expect(read(rows('smell', 'clean')).byLine.get(2)?.outcome?.signs).toEqual([]);
  });
});
