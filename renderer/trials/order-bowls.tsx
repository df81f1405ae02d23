// Overall: bowls are placed from liked most to liked least, those as good as each other side by side; of two or three one is chosen.
import { useEffect, useRef } from 'react';
import { Bowl } from './bowl';
import { codesOf, isWhole, type Marking, placed, tied } from './marking';
import type { Session } from './trial-types';

interface Props {
  readonly taster: Session['tasters'][number];
  readonly marking: Marking;
  readonly onChange: (change: Partial<Marking>) => void;
  readonly onDone: () => void;
}

interface BowlProps {
  readonly code: number;
  readonly says: string;
  readonly pressed?: boolean;
  readonly onPress: () => void;
}

/** A bowl to be pressed. */
function BowlButton({ code, says, pressed, onPress }: BowlProps) {
  return (
    <button type="button" className="bowl-button" data-code={code} aria-pressed={pressed} onClick={onPress}>
      <Bowl text={String(code)} />
      <span className="visually-hidden">
        {code}, {says}
      </span>
    </button>
  );
}

/** The end of a taster's turn. */
function Done({
  whole,
  onDone,
  onBack,
}: {
  readonly whole: boolean;
  readonly onDone: () => void;
  readonly onBack: () => void;
}) {
  return (
    <div className="row tasting-row">
      <button
        type="button"
        className="button primary tasting-button"
        data-done
        disabled={!whole}
        onClick={onDone}
      >
        Done
      </button>
      <button type="button" className="button quiet" onClick={onBack}>
        Back to the bowls
      </button>
    </div>
  );
}

/** What stands over the first place and the last. */
const endOf = (at: number, count: number): string =>
  at === 0 ? 'liked most' : at === count - 1 ? 'liked least' : '';

export function OrderBowls({ taster, marking, onChange, onDone }: Props) {
  const page = useRef<HTMLElement>(null);
  const { order } = marking;
  const codes = codesOf(taster);
  const standing = order.flat();
  const left = codes.filter((code) => !standing.includes(code));
  // The keyboard goes on to the next bowl that has no place yet, and once all have one, to the end.
  const next = left[0] ?? null;
  useEffect(() => {
    const wanted = next === null ? '[data-done]' : `.bowls-left [data-code="${next}"]`;
    page.current?.querySelector<HTMLElement>(wanted)?.focus();
  }, [next]);
  const put = (code: number): void => onChange({ order: placed(order, code) });
  return (
    <section ref={page} className="tasting-step" aria-label={`Order of ${taster.name}`}>
      <p className="soft">{taster.name}</p>
      <h1>Which did you like best, all in all?</h1>
      <p className="tasting-lead">Press the best first, then the next. Press one again to take it back.</p>
      <ol className="bowls-placed" aria-label="From liked most to liked least">
        {codes.map((_, at) => {
          const code = standing[at];
          const end = (
            <span className="bowl-end soft small" aria-hidden="true">
              {endOf(at, codes.length)}
            </span>
          );
          if (code === undefined)
            return (
              <li key={`empty ${at}`} className="bowl-room" aria-label="empty">
                {end}
              </li>
            );
          const place = order.find((one) => one.includes(code)) ?? [];
          const asGood = place.indexOf(code) > 0;
          return (
            <li key={code} className={asGood ? 'bowl-placed as-good' : 'bowl-placed'}>
              {end}
              <BowlButton code={code} says="placed: take it back" onPress={() => put(code)} />
              {at > 0 && (
                <button
                  type="button"
                  className="button quiet small"
                  aria-pressed={asGood}
                  onClick={() => onChange({ order: tied(order, code) })}
                >
                  as good as {standing[at - 1]}
                </button>
              )}
            </li>
          );
        })}
      </ol>
      <fieldset className="bowls-left" aria-label="Bowls without a place">
        {left.map((code) => (
          <BowlButton key={code} code={code} says="put it into the next place" onPress={() => put(code)} />
        ))}
      </fieldset>
      <Done
        whole={isWhole('rank', taster, marking)}
        onDone={onDone}
        onBack={() => onChange({ stage: 'taste', at: 0 })}
      />
    </section>
  );
}

/** Two bowls: which is preferred. Three: which is the other one. */
export function PickBowl({ taster, marking, onChange, onDone, odd }: Props & { readonly odd: boolean }) {
  const page = useRef<HTMLElement>(null);
  useEffect(() => page.current?.querySelector<HTMLElement>('[data-code]')?.focus(), []);
  return (
    <section ref={page} className="tasting-step" aria-label={`Choice of ${taster.name}`}>
      <p className="soft">{taster.name}</p>
      <h1>{odd ? 'Two are the same. Which is the other one?' : 'Which do you prefer, all in all?'}</h1>
      <p className="tasting-lead">Where you can’t tell, choose all the same.</p>
      <fieldset className="bowls-left" aria-label="Bowls">
        {codesOf(taster).map((code) => (
          <BowlButton
            key={code}
            code={code}
            says={marking.picked === code ? 'chosen' : 'choose it'}
            pressed={marking.picked === code}
            onPress={() => onChange({ picked: code })}
          />
        ))}
      </fieldset>
      <Done
        whole={marking.picked !== null}
        onDone={onDone}
        onBack={() => onChange({ stage: 'taste', at: 0 })}
      />
    </section>
  );
}
