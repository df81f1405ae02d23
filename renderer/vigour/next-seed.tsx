// What to seed from next: a ranking with its reasons. What may not be used stands last, with why, and can't be chosen.
import { useEffect, useId, useRef, useState } from 'react';
import { COUNTED_IN_JARS, costWords } from '../../core/advice/costs';
import { STARTING_ASSUMPTION } from '../../core/advice/next';
import type { Reply } from '../../core/contract';
import { call } from '../app/calls';
import { go, say } from '../app/store';
import { useRead } from '../app/use-read';
import { KeptChoices } from './kept-choices';
import { Why } from './why';

type NextReply = Reply<'advice.next'>;
type Ranked = NextReply['ranking'][number];

/** In a keeper's words: what is offered beside a line's newest jar is an older one of it, its parent as well as its sibling. */
const KIND_WORDS = {
  jar: 'jar',
  portion: 'portion',
  reserve: 'reserve',
  'older sibling': 'older jar',
  'fresh start': 'fresh start',
} as const satisfies Record<Ranked['kind'], string>;

const keyOf = (one: Ranked): string => one.portion ?? one.jar ?? 'fresh start';
const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Keeps the choice, then opens a new batch with that jar picked. */
async function choose(line: string | null, ranked: Ranked): Promise<void> {
  const answer = await call('advice.choose', { line, jar: ranked.jar, portion: ranked.portion });
  if (!answer.ok) {
    say(answer.sentence, 'caution');
    return;
  }
  if (ranked.jar === null) go('batch', 'new');
  else go('batch', ranked.portion === null ? `seed:${ranked.jar}` : `seed:${ranked.jar}/${ranked.portion}`);
}

function Reasons({ ranked }: { readonly ranked: Ranked }) {
  // What leaves it in doubt, and what has to be looked at first, stands on the card itself.
  const { doubts, looks } = ranked;
  const reasons = ranked.reasons.filter((reason) => !doubts.includes(reason) && !looks.includes(reason));
  return (
    <>
      <ul className="bullets">
        {reasons.map((reason) => (
          <li key={reason}>{sentence(reason)}</li>
        ))}
      </ul>
      <p>{ranked.wouldChange}</p>
    </>
  );
}

function Offered({
  ranked,
  place,
  unit,
  line,
}: {
  readonly ranked: Ranked;
  readonly place: number;
  readonly unit: string;
  readonly line: string | null;
}) {
  const id = useId();
  return (
    <li className={place === 1 ? 'seed-card first' : 'seed-card'} aria-labelledby={id}>
      <span className="seed-place" aria-hidden="true">
        {place}
      </span>
      <div className="seed-body">
        <h3 id={id}>
          {sentence(ranked.label)}
          {ranked.kind !== 'fresh start' && <span className="seed-kind"> · {KIND_WORDS[ranked.kind]}</span>}
        </h3>
        <p>
          {ranked.cost !== null && (
            <>
              A good jar costs <span className="figure">{costWords(ranked.cost, unit)}</span>
            </>
          )}
          {ranked.weakChance !== null && (
            <>
              {' '}
              · <span className="figure">{Math.round(100 * ranked.weakChance)}</span> in 100 come out weak
              {ranked.reasons.some((reason) => reason.includes(STARTING_ASSUMPTION)) &&
                ` (${STARTING_ASSUMPTION})`}
            </>
          )}
        </p>
        {ranked.doubts.map((doubt) => (
          <p key={doubt} className="notice caution">
            {doubt}
          </p>
        ))}
        {ranked.looks.map((look) => (
          <p key={look} className="notice">
            {look}
          </p>
        ))}
        {place === 1 ? (
          <Reasons ranked={ranked} />
        ) : (
          <details className="vigour-why">
            <summary>Why this place, and what would change it</summary>
            <Reasons ranked={ranked} />
          </details>
        )}
      </div>
      <button
        type="button"
        className={place === 1 ? 'button primary' : 'button'}
        aria-label={`${ranked.jar === null ? 'Start afresh' : 'Seed from this'}: ${ranked.label}`}
        onClick={() => void choose(line, ranked)}
      >
        {ranked.jar === null ? 'Start afresh' : 'Seed from this'}
      </button>
    </li>
  );
}

/** What is stopped: jars held for safety first in sight, none with anything to press. */
function Stopped({ stopped }: { readonly stopped: readonly Ranked[] }) {
  const [all, showAll] = useState(false);
  if (stopped.length === 0) return null;
  const shown = all ? stopped : stopped.slice(0, 6);
  return (
    <section className="stopped" aria-label="May not be used">
      <h3>May not be used</h3>
      <ul>
        {shown.map((ranked) => (
          <li key={keyOf(ranked)}>
            <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" className="stop-sign">
              <rect x="3" y="3" width="16" height="16" rx="4" />
              <path d="M7 7L15 15M15 7L7 15" />
            </svg>
            <span className="stopped-label">{ranked.label}</span>
            <span>
              {ranked.stops.map((stop) => (
                <span
                  key={stop.code}
                  className={
                    stop.code === 'too old' || stop.code === "keeper's limit" ? 'stop' : 'stop grave'
                  }
                >
                  {sentence(stop.says)} {stop.lifts ?? 'Nothing lifts this.'}{' '}
                </span>
              ))}
            </span>
          </li>
        ))}
      </ul>
      {stopped.length > shown.length && (
        <button type="button" className="button quiet" onClick={() => showAll(true)}>
          Show all {stopped.length}
        </button>
      )}
    </section>
  );
}

export function NextSeed({
  of,
  several,
  asked,
}: {
  /** The line that is shown. */
  readonly of: { readonly line: string; readonly name: string };
  /** Whether there are others: then it can be asked of all. */
  readonly several: boolean;
  /** The keeper came for this: it is brought into sight, with the keyboard on it. */
  readonly asked: boolean;
}) {
  const [ofAll, setOfAll] = useState(asked);
  const line = ofAll && several ? null : of.line;
  const answer = useRead('advice.next', { line });
  const heading = useRef<HTMLHeadingElement>(null);
  const ready = answer !== null;
  useEffect(() => {
    if (!asked || !ready) return undefined;
    // Once more after the plots above have taken their room.
    const show = (): void => heading.current?.scrollIntoView({ block: 'start' });
    show();
    heading.current?.focus({ preventScroll: true });
    const frame = requestAnimationFrame(show);
    return () => cancelAnimationFrame(frame);
  }, [asked, ready]);
  if (answer?.ok === false) return <p>{answer.sentence}</p>;
  const reply = answer?.value;
  return (
    <section className="vigour-part" aria-labelledby="next">
      <h2 id="next" ref={heading} tabIndex={-1}>
        What to seed from next
      </h2>
      {several && (
        <fieldset className="pair" aria-label="For which line">
          <button
            type="button"
            className="button"
            aria-pressed={line !== null}
            onClick={() => setOfAll(false)}
          >
            To go on with {of.name}
          </button>
          <button
            type="button"
            className="button"
            aria-pressed={line === null}
            onClick={() => setOfAll(true)}
          >
            From all that is kept
          </button>
        </fieldset>
      )}
      {reply && (
        <>
          <p className="standing-sentence">{reply.sentence}</p>
          {reply.warnings.map((warning) => (
            <p key={warning} className="notice">
              {warning}
            </p>
          ))}
          {reply.suggestions.map((suggestion) => (
            <p key={suggestion} className="notice">
              {suggestion}
            </p>
          ))}
          {reply.unit === 'jars' && <p className="soft">{COUNTED_IN_JARS}</p>}
          <ol className="seed-cards">
            {reply.ranking
              .filter(({ allowed }) => allowed)
              .map((ranked, at) => (
                <Offered key={keyOf(ranked)} ranked={ranked} place={at + 1} unit={reply.unit} line={line} />
              ))}
          </ol>
          <Stopped stopped={reply.ranking.filter(({ allowed }) => !allowed)} />
          <KeptChoices line={line} />
          <Why why={reply.why} title="How this was worked out" model={reply.model} />
        </>
      )}
    </section>
  );
}
