// One bowl before one taster: texture, smoothness and taste in words. Each may be left out.
import { useEffect, useRef } from 'react';
import { ASPECTS } from '../../core/trials/aspects';
import { wordChoices, ChoiceField } from '../parts/fields';
import { sentenceCase } from '../state/store';
import { Bowl } from './bowl';
import { codesOf, type Marking } from './marking';
import type { Session } from './trial-types';

interface Props {
  readonly taster: Session['tasters'][number];
  readonly marking: Marking;
  readonly onChange: (change: Partial<Marking>) => void;
}

export function TasteBowl({ taster, marking, onChange }: Props) {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector<HTMLElement>('input:checked, input')?.focus(), []);
  const codes = codesOf(taster);
  const { at, words } = marking;
  const code = codes[at] ?? 0;
  const own = words[code] ?? {};
  const last = at === codes.length - 1;
  const put = (aspect: string, word: string): void => {
    const { [aspect]: _before, ...rest } = own;
    onChange({ words: { ...words, [code]: word === '' ? rest : { ...rest, [aspect]: word } } });
  };
  return (
    <form
      ref={form}
      className="tasting-step taste"
      aria-label={`Bowl ${code}`}
      onSubmit={(event) => {
        event.preventDefault();
        onChange(last ? { stage: 'order' } : { at: at + 1 });
      }}
    >
      <div className="taste-bowl">
        <Bowl text={String(code)} />
        <h1>
          Bowl {at + 1} of {codes.length}
          <span className="visually-hidden">: {code}</span>
        </h1>
        <p className="soft">{taster.name}</p>
      </div>
      <div className="stack taste-words">
        {ASPECTS.map(({ aspect, words: choices }) => (
          <ChoiceField
            key={aspect}
            label={sentenceCase(aspect)}
            value={own[aspect] ?? ''}
            choices={wordChoices<string>(choices)}
            unsaid="No word"
            onChange={(word) => put(aspect, word)}
          />
        ))}
        <div className="row tasting-row">
          <button type="submit" className="button primary tasting-button">
            {last ? 'Now compare them' : 'Next bowl'}
          </button>
          <button
            type="button"
            className="button quiet"
            onClick={() => onChange(at === 0 ? { stage: 'hand' } : { at: at - 1 })}
          >
            Back
          </button>
        </div>
      </div>
    </form>
  );
}
