// Beside the boards: all about the chosen thing, what stands against it, and what can be done with it.
import type { Ref } from 'react';
import { showOut } from '../out/out-shown';
import { generationWords } from '../parts/jar-flags';
import { lineCalled } from '../parts/line-called';
import { Question } from '../parts/question';
import { go } from '../state/store';
import type { Thing } from './things';
import { ThingPicture } from './thing-picture';
import { VerbRows } from './verb-rows';
import type { Verbs } from './use-verbs';

const ageWords = (age: number | null): string =>
  age === null ? 'day not noted' : age === 0 ? 'made today' : age === 1 ? 'a day old' : `${age} days old`;

function Facts({ thing }: { readonly thing: Thing }) {
  const { left, says, eatBy, seedBy, lines, group } = thing;
  const rows: readonly (readonly [string, string | null])[] = [
    ['Left', left.says],
    ['Opened', says.opened ?? (group === 'warm' ? null : 'not noted')],
    ['To eat', eatBy?.says ?? null],
    ['As seed', seedBy?.says ?? null],
    ['Carries', lines.length > 0 ? lineCalled(lines.join(' and ')) : null],
  ];
  return (
    <dl className="shelf-facts">
      {rows.map(([name, value]) =>
        value === null ? null : (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ),
      )}
    </dl>
  );
}

/** Strains as they were declared; folded, since nobody reads them each time. */
function Strains({ thing: { strains } }: { readonly thing: Thing }) {
  if (strains.length === 0) return null;
  return (
    <details className="more shelf-strains">
      <summary>{strains.length === 1 ? 'One strain declared' : `${strains.length} strains declared`}</summary>
      <p>{strains.join('; ')}. As declared at the start, not tested since.</p>
    </details>
  );
}

/** What stands against it, or has to be minded first: words of safety, in their own place. */
function Minded({ thing: { says, safety, caution, group } }: { readonly thing: Thing }) {
  const careful = !safety.eat || caution !== null;
  const words = [says.caution, says.eaten, group === 'warm' || says.caution === null ? says.eat : null];
  return (
    <div className={careful ? 'notice caution' : 'shelf-minded'}>
      {words.map((one) => one !== null && <p key={one}>{one}</p>)}
    </div>
  );
}

const TITLES: Readonly<Record<string, string>> = {
  'not food': 'This is not food',
  'kept for seed': 'It is kept for seed',
  'last of a line': 'It is the last of its line',
  'thawed before': 'It was thawed before',
  'opened before': 'It is open',
};

export function ChosenThing({
  thing,
  verbs,
  verbsAt,
}: {
  readonly thing: Thing;
  readonly verbs: Verbs;
  readonly verbsAt: Ref<HTMLDivElement>;
}) {
  const { question } = verbs;
  return (
    <aside className="shelf-chosen" aria-label={`About ${thing.name}`}>
      <header>
        <ThingPicture thing={thing} />
        <div>
          <h2>{thing.name}</h2>
          <p className="soft">
            {generationWords(thing.generation, thing.atLeast)} · {ageWords(thing.age)}
          </p>
        </div>
      </header>
      <Facts thing={thing} />
      {thing.lastOf.map((says) => (
        <p className="shelf-last" key={says}>
          {says}
        </p>
      ))}
      {thing.reserveOf.map((line) => (
        <p className="shelf-last" key={line}>
          Time for a reserve of {line}: some of this, frozen.
        </p>
      ))}
      <Minded thing={thing} />
      <div className="shelf-verbs" ref={verbsAt}>
        <VerbRows key={thing.id} thing={thing} verbs={verbs} />
      </div>
      <Strains thing={thing} />
      <p className="row">
        <button type="button" className="linked" onClick={() => go('family', `jar:${thing.jar}`)}>
          Show it in the family
        </button>
        <button
          type="button"
          className="linked"
          onClick={() => showOut({ panel: 'labels', jar: thing.jar, label: thing.name })}
        >
          Label
        </button>
        {!thing.safety.eat && thing.group !== 'warm' && thing.says.eaten === null && (
          <button
            type="button"
            className="linked"
            onClick={() => verbs.run('shelf.eat', { id: thing.id, meant: true })}
          >
            Some of it was eaten already
          </button>
        )}
      </p>
      {thing.verbs.length > 0 && <p className="soft small">Each can be undone.</p>}
      {question && (
        <Question
          title={TITLES[question.code] ?? 'Do it all the same?'}
          yes="Do it all the same"
          no="Leave it"
          caution
          onYes={question.yes}
          onNo={question.no}
        >
          <p>{question.says}</p>
        </Question>
      )}
    </aside>
  );
}
