// Spoilage told only in the free text of an outcome. The words and their negations: common practice, no source.
import { describe, expect, it } from 'vitest';
import { spoilageDenied, spoilagePassages, spoilageSaid } from '../../core/safety/remarks';
import { unseen } from '../ledger/ledger-files';

const said = (more: Partial<typeof unseen>): string | null => spoilageSaid({ ...unseen, ...more });

describe('words that tell of spoilage', () => {
  it.each([
    [{ colour: 'pink streaks' }, 'pink streaks'],
    [{ smell: 'foul' }, 'foul'],
    [{ smell: 'a bit off' }, 'a bit off'],
    [{ note: 'Looked fine. Black mould on top' }, 'Black mould on top'],
    [{ note: 'no mould but pink' }, 'pink'],
    [{ note: 'no foam, but black mould on top' }, 'black mould on top'],
    [{ texture: 'slimy' }, 'slimy'],
    [{ note: 'went bad on the fifth day' }, 'went bad on the fifth day'],
    [{ note: 'maybe a little fuzz?' }, 'maybe a little fuzz?'],
    [{ note: 'first line\nlid had blown off' }, 'lid had blown off'],
    [{ colour: 'pink', note: 'pink' }, 'pink'],
    [{ smell: 'odeur fétide' }, 'odeur fétide'],
    [{ note: 'Хороший вкус. Сверху плесень' }, 'Сверху плесень'],
    [{ note: 'おいしい。縁にカビ。' }, '縁にカビ'],
    [{ note: 'испортилось' }, 'испортилось'],
    [{ colour: 'pink streaks', smell: 'foul' }, 'pink streaks; foul'],
  ])('%j', (outcome, words) => expect(said(outcome)).toBe(words));

  it.each([
    [{}],
    [{ colour: 'white', smell: 'clean, milky', texture: 'smooth', note: 'best so far' }],
    [{ note: 'no mould, no pink, not foul' }],
    [{ smell: 'not off' }],
    [{ note: 'stirred in orange zest' }],
    [{ colour: 'purple tint' }],
    [{ texture: 'fine bubbles' }],
    [{ note: 'schimmelfrei, kein Schaum' }],
    [{ note: 'плесени нет', smell: 'カビ臭なし', colour: '没有霉' }],
  ])('none in %j', (outcome) => expect(said(outcome)).toBeNull());
});

describe('what was asked about and is no spoilage', () => {
  const outcome = { ...unseen, colour: 'pink streaks', smell: 'foul', note: 'second try' };
  it('stands in the note, is not asked again, and leaves the rest to be asked', () => {
    const [pink] = spoilagePassages(outcome);
    expect(pink).toEqual({ words: 'pink streaks', signs: ['pink'] });
    const note = spoilageDenied(outcome.note, pink ? [pink] : [], ' pink syrup,\nstirred in ');
    expect(note).toBe('second try\nAsked about “pink streaks”: not spoilage, pink syrup, stirred in');
    expect(said({ ...outcome, note })).toBe('foul');
  });
  it('other words than those that were asked about are asked', () => {
    const note = spoilageDenied(null, spoilagePassages(outcome), 'the syrup');
    expect(said({ ...outcome, note })).toBeNull();
    expect(said({ ...outcome, colour: 'pink patches', note })).toBe('pink patches');
  });
  it('quotation marks in the words do no harm', () => {
    const quoted = { ...unseen, note: 'he called it “a bit pink” and "mouldy"' };
    const note = spoilageDenied(quoted.note, spoilagePassages(quoted), 'a joke');
    expect(said({ ...quoted, note })).toBeNull();
  });
});
