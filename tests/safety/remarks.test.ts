// Spoilage told only in the free text of an outcome. The words and their negations: common practice, no source.
import { describe, expect, it } from 'vitest';
import { spoilagePassages } from '../../core/safety/remarks';
import { unseen } from '../ledger/ledger-files';

const said = (more: Partial<typeof unseen>): string =>
  spoilagePassages({ ...unseen, ...more }).map(({ words }) => words).join('; '); // prettier-ignore

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
  ])('none in %j', (outcome) => expect(said(outcome)).toBe(''));
});
