// What to seed from next: at most five cards, the verdict's own first and alight; the rest and what may not be used folded.
import { useEffect, useId, useRef } from 'react';
import { COUNTED_IN_JARS, goodJarSays } from '../../core/says/cost-says';
import { STARTING_ASSUMPTION } from '../../core/says/next-says';
import { cardsBeside } from '../../core/says/seed-card-says';
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { go, say, sentenceCase } from '../state/store';
import { useRead } from '../state/use-read';
import { numberWord } from '../parts/number-words';
import { KeptChoices } from './kept-choices';
import type { Known } from './line-list';
import { inOrder, keyOf, type NextReply, type Ranked } from './seed-list';
import { SeedPicture, useSeedJars } from './seed-picture';
import { Stopped } from './stopped';
import { Why } from '../parts/why-details';

const MOST_CARDS = 5;

/** Keeps the choice, then opens a new batch with that jar picked. */
async function choose(line: string, ranked: Ranked): Promise<void> {
  const answer = await call('advice.choose', { line, jar: ranked.jar, portion: ranked.portion });
  if (!answer.ok) {
    say(answer.sentence, 'caution');
    return;
  }
  if (ranked.jar === null) go('batch', `repeat:${line}`);
  else go('batch', ranked.portion === null ? `seed:${ranked.jar}` : `seed:${ranked.jar}/${ranked.portion}`);
}

function Card({
  ranked,
  lines,
  advised,
  line,
  jar,
}: {
  readonly ranked: Ranked;
  readonly lines: readonly string[];
  readonly advised: boolean;
  readonly line: string;
  readonly jar: Reply<'jar.get'> | undefined;
}) {
  const id = useId();
  const grave = ranked.doubts[0];
  const does = ranked.jar === null ? 'Start afresh' : 'Seed from this';
  return (
    <li className={advised ? 'card seed-card advised' : 'card seed-card'} aria-labelledby={id}>
      <SeedPicture ranked={ranked} jar={jar} />
      <div className="seed-body">
        <h3 id={id}>{sentenceCase(ranked.label)}</h3>
        {lines.map((words, at) => (
          <p key={words} className={words === grave ? 'seed-doubt' : at > 0 ? 'soft' : undefined}>
            {words}
          </p>
        ))}
        <button
          type="button"
          className={advised ? 'button primary' : 'button'}
          aria-label={`${does}: ${ranked.label}`}
          onClick={() => void choose(line, ranked)}
        >
          {does}
        </button>
      </div>
    </li>
  );
}

function Cards({ list, advised, line }: { readonly list: readonly Ranked[]; readonly advised: string | null; readonly line: string }) {
  const jars = useSeedJars(list.flatMap(({ jar }) => (jar === null ? [] : [jar])));
  const { shared, lines } = cardsBeside(list);
  return (
    <>
    {shared.length > 0 && <p className="seed-shared">Of all of them: {shared.map(sentenceCase).join(' ')}</p>}
    <ul className="seed-cards">
      {list.map((ranked, at) => (
        <Card
          key={keyOf(ranked)}
          ranked={ranked}
          lines={lines[at] ?? []}
          advised={keyOf(ranked) === advised}
          line={line}
          jar={jars.get(ranked.jar ?? '')}
        />
      ))}
    </ul>
    </>
  );
} // prettier-ignore

/** Behind one press: every seed with all that was weighed, and how. */
function HowRanked({ reply, list }: { readonly reply: NextReply; readonly list: readonly Ranked[] }) {
  return (
    <details className="vigour-why">
      <summary>How the seeds were compared</summary>
      <div className="stack">
        {reply.unit === 'jars' && <p className="soft">{COUNTED_IN_JARS}</p>}
        {list.map((ranked) => (
          <section key={keyOf(ranked)}>
            <h4>{sentenceCase(ranked.label)}</h4>
            <p className="soft">
              {ranked.cost !== null && `${goodJarSays(ranked.cost, reply.unit)}.`}
              {ranked.assumed && ` Much of this is ${STARTING_ASSUMPTION}.`}
            </p>
            <ul className="bullets">
              {ranked.reasons.map((reason) => (
                <li key={reason}>{sentenceCase(reason)}</li>
              ))}
            </ul>
            <p>{ranked.wouldChange}</p>
          </section>
        ))}
        <Why why={reply.why} title="Formula, assumptions and source" model={reply.model} />
      </div>
    </details>
  );
}

interface Props {
  /** The line that is shown, with its verdict. */
  readonly of: Known;
  /** The keeper came for this: it is brought into sight, with the keyboard on it, once. */
  readonly asked: boolean;
  readonly onShown: () => void;
}

export function NextSeed({ of, asked, onShown }: Props) {
  const { line } = of.line;
  const answer = useRead('advice.next', { line });
  const heading = useRef<HTMLHeadingElement>(null);
  const ready = answer !== null;
  useEffect(() => {
    if (!asked || !ready) return undefined;
    // Once more after the plots above have taken their room.
    const show = (): void => heading.current?.scrollIntoView({ block: 'start' });
    show();
    heading.current?.focus({ preventScroll: true });
    const frame = requestAnimationFrame(() => {
      show();
      onShown();
    });
    return () => cancelAnimationFrame(frame);
  }, [asked, ready, onShown]);
  if (answer?.ok === false) return <p>{answer.sentence}</p>;
  const reply = answer?.value;
  const list = reply ? inOrder(reply.ranking, of.verdict) : [];
  const stopped = reply?.ranking.filter(({ allowed }) => !allowed) ?? [];
  const more = list.slice(MOST_CARDS);
  return (
    <section className="vigour-part" aria-labelledby="next">
      <h2 id="next" ref={heading} tabIndex={-1}>
        What to seed from next
      </h2>
      <p>{of.verdict.because}</p>
      {reply && (
        <>
          <Cards
            list={list.slice(0, MOST_CARDS)}
            advised={of.verdict.seed && keyOf(of.verdict.seed)}
            line={line}
          />
          {[...reply.warnings, ...reply.suggestions].map((words) => (
            <p key={words}>{words}</p>
          ))}
          <div className="vigour-folds">
            {more.length > 0 && (
              <details className="vigour-why">
                <summary>Also possible: {numberWord(more.length)} more</summary>
                <Cards list={more} advised={null} line={line} />
              </details>
            )}
            <Stopped stopped={stopped} />
            <HowRanked reply={reply} list={list} />
            <KeptChoices line={line} />
          </div>
        </>
      )}
    </section>
  );
}
