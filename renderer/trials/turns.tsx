// Whose turn it is, and at the end, when all have marked, the reveal.
import { useEffect, useRef, useState } from 'react';
import { Question } from '../parts/question';
import { Bowl } from './bowl';
import type { Session } from './trial-types';

type Served = Session['tasters'][number];

interface Props {
  readonly taster: Served;
  readonly notBlind: string | null;
  readonly onBegin: () => void;
  readonly onSkip: () => void;
  readonly onPour: () => void;
}

export function HandOver({ taster, notBlind, onBegin, onSkip, onPour }: Props) {
  const begin = useRef<HTMLButtonElement>(null);
  const [asking, ask] = useState(false);
  useEffect(() => begin.current?.focus(), []);
  return (
    <section className="tasting-step" aria-label={`Turn of ${taster.name}`}>
      <p className="tasting-lead">Now it is the turn of</p>
      <h1>{taster.name}</h1>
      <ol className="tasting-bowls" aria-label="The bowls in their order">
        {taster.servings.map(({ code }) => (
          <li key={code}>
            <Bowl text={String(code)} />
            <span className="visually-hidden">{code}</span>
          </li>
        ))}
      </ol>
      <p className="tasting-lead">
        Taste from left to right. Water and a minute between, and silence until all have marked.
      </p>
      {notBlind !== null && <p className="notice">{notBlind}</p>}
      <div className="row tasting-row">
        <button ref={begin} type="button" className="button primary tasting-button" onClick={onBegin}>
          Begin
        </button>
        <button type="button" className="button quiet" onClick={onSkip}>
          {taster.name} does not taste today
        </button>
        <button type="button" className="button quiet" onClick={() => ask(true)}>
          Pouring sheet
        </button>
      </div>
      {asking && (
        <Question
          title="Show which jar is which?"
          yes="I pour: show it"
          no="Leave it hidden"
          onYes={() => {
            ask(false);
            onPour();
          }}
          onNo={() => ask(false)}
        >
          <p>The pouring sheet is only for somebody who does not taste.</p>
        </Question>
      )}
    </section>
  );
}

interface RevealProps {
  readonly tasters: readonly Served[];
  readonly onReveal: () => void;
  readonly onTurn: (taster: Served) => void;
}

export function Reveal({ tasters, onReveal, onTurn }: RevealProps) {
  const reveal = useRef<HTMLButtonElement>(null);
  useEffect(() => reveal.current?.focus(), []);
  const done = tasters.filter((one) => one.done).length;
  return (
    <section className="tasting-step" aria-label="Reveal">
      <h1>{done === tasters.length ? 'All have tasted' : `${done} of ${tasters.length} have tasted`}</h1>
      <p className="tasting-lead">Once it is revealed which jar is which, nobody marks any more.</p>
      <ul className="tasting-turns">
        {tasters.map((one) => (
          <li key={one.taster}>
            <span>
              {one.name}
              {!one.done && ', not marked yet'}
            </span>
            <button type="button" className="button" onClick={() => onTurn(one)}>
              {one.done ? 'Correct' : 'Taste now'}
              <span className="visually-hidden">, {one.name}</span>
            </button>
          </li>
        ))}
      </ul>
      <div className="row tasting-row">
        <button ref={reveal} type="button" className="button primary tasting-button" disabled={done === 0} onClick={onReveal}>
          Reveal which jar is which
        </button>
      </div>
    </section>
  );
} // prettier-ignore
