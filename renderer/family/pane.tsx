// Everything about one jar: the way back, cautions, what seeded it and what it seeded, each figure with its why.
import { earliestDay } from '../../core/lineage/lineage-shapes';
import { useMemo } from 'react';
import type { Reply } from '../../core/contract';
import { portionName } from '../../core/ledger/portions';
import { discardWord, eatSentence, LONG_PAST } from '../../core/says/safety-says';
import { longUnsaid } from '../../core/safety/still-there';
import { dayLabel } from '../../core/lineage/labels';
import { GoneButton } from '../parts/gone-button';
import { go, useAppState } from '../state/store';
import { usePreferences } from '../parts/use-reader';
import { useRead } from '../state/use-read';
import { MayComeLate, Whole } from '../state/whole';
import { Cautions } from '../parts/caution-list';
import { Remarks } from '../parts/unanswered';
import { heldAbove, heldAboveSays } from './held-above';
import { Figures } from './jar-figures';
import { FLAG } from '../../core/shapes/drawing-flags';
import { generationWords } from '../parts/jar-flags';
import { lineCalled } from '../parts/line-called';
import { JarScore } from '../parts/jar-score';
import { LabResults } from './lab-results';
import { recordRows } from './record-rows';
import { Linked } from '../parts/linked';
import { LinePhotographs } from '../parts/line-photographs';
import { Photograph } from '../parts/photograph';
import { GivenTo } from '../out/given-to';
import { showOut } from '../out/out-shown';
import { spokenOf } from './spoken';
import { useJars } from './use-jars';
import { VerdictAct } from '../parts/verdict-act';
import type { LineNow } from './use-lines';

type JarReply = Reply<'jar.get'>;

/** How much of the seed it was, where there was more than one. */
const partOfSeed = (share: number): string =>
  `${share < 0.01 ? 'less than 1' : Math.round(share * 100)} % of its seed`;

/** "Heron and Lantern"; "Heron, Lantern and 3 more". */
function inShort(names: readonly string[]): string {
  if (names.length <= 2) return names.join(' and ');
  return `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}

function JarLinks(props: {
  readonly title: string;
  readonly jars: readonly { readonly key: number; readonly label: string }[];
  readonly onGo: (key: number) => void;
}) {
  if (props.jars.length === 0) return null;
  return (
    <section>
      <h3>{props.title}</h3>
      <ul className="jar-links">
        {props.jars.slice(0, 24).map((jar) => (
          <li key={jar.key}>
            <button className="button quiet" type="button" onClick={() => props.onGo(jar.key)}>
              {jar.label}
            </button>
          </li>
        ))}
        {props.jars.length > 24 && <li className="soft more">and {props.jars.length - 24} more</li>}
      </ul>
    </section>
  );
}

function Seeds({ jar, onGo }: { readonly jar: JarReply; readonly onGo: (key: number) => void }) {
  if (jar.view.seeds.length === 0) return <p className="soft">What seeded it was not noted.</p>;
  return (
    <ul className="seeds">
      {jar.view.seeds.map((seed, at) => (
        <li key={`${seed.key ?? seed.label} ${at}`}>
          <span className="share-bar" aria-hidden="true">
            <span style={{ width: `${Math.max(3, seed.share * 100)}%` }} />
          </span>
          {seed.key === null ? (
            <span className="seed-name">{seed.label}</span>
          ) : (
            <button
              className="button quiet seed-name"
              type="button"
              onClick={() => seed.key !== null && onGo(seed.key)}
            >
              {seed.label}
            </button>
          )}
          <span className="soft small">
            {[seed.amount, jar.view.seeds.length > 1 ? partOfSeed(seed.share) : null]
              .filter((part) => part !== null)
              .join(' · ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

const NO_SEED = {
  spoiled: 'spoiled, and is discarded whole.',
  'not set': 'did not set, and is discarded whole.',
  remark: 'has a note that says it spoiled. Until you answer that, it is neither food nor seed.',
} as const;

interface Props {
  readonly id: string;
  /** It stands in a hold that runs. */
  readonly warm: boolean;
  /** What is known of the line whose lane it lies in, and what that is called. */
  readonly line: LineNow | null;
  readonly lineName: string;
  /** The drawing's flags of a jar, by key. */
  readonly flagsByKey: (key: number) => number;
  readonly onGo: (key: number) => void;
  /** The jar whose caution the strip was asked to lift; its form is open. */
  readonly lift: string | null;
  readonly onLifting: () => void;
  readonly onClose: () => void;
}

/** The side pane: the name and the way to close it stay, the rest scrolls. */
export function Pane({ id, onClose, ...of }: Props) {
  const answer = useRead('jar.get', { id });
  const jar = answer?.ok === true ? answer.value : null;
  return (
    <aside className="pane" aria-label="About this jar">
      <p className="visually-hidden" aria-live="polite">
        {jar !== null && `About ${jar.view.label}: ${jar.wayBack}`}
      </p>
      <header className="pane-head">
        <div>
          <h2 id="pane-title" tabIndex={-1}>
            {jar?.view.label ?? 'Reading…'}
          </h2>
          {jar !== null && <Sayings jar={jar} warm={of.warm} />}
        </div>
        <button
          className="button quiet pane-close"
          type="button"
          aria-label="Close"
          title="Close (Escape)"
          onClick={onClose}
        >
          ×
        </button>
      </header>
      <Whole key={id}>
        <div className="pane-body">
          {answer?.ok === false && <p role="alert">{answer.sentence}</p>}
          {jar !== null && <About jar={jar} {...of} />}
        </div>
      </Whole>
    </aside>
  );
}

const madeWords = ({ madeOn, madeBetween }: JarReply['view']): string[] =>
  madeOn !== null
    ? [`made ${dayLabel(madeOn, true)}`]
    : madeBetween !== null
      ? [`made between ${dayLabel(madeBetween.from, true)} and ${dayLabel(madeBetween.to, true)}`]
      : [];

function Sayings({ jar: { view }, warm }: { readonly jar: JarReply; readonly warm: boolean }) {
  const sayings = [
    ...madeWords(view),
    generationWords(view.generation.deepest, view.generation.atLeast),
    view.discard !== null
      ? discardWord(view.discard).toLowerCase()
      : (view.setWord ?? (view.outcomeKnown ? 'set not noted' : 'outcome unknown')),
    ...(warm ? ['in warmth'] : view.onShelf === true ? ['on the shelf'] : []),
    ...(view.lines.length > 0 ? [lineCalled(inShort(view.lines))] : []),
  ];
  return <p className="soft">{sayings.join(' · ')}</p>;
}

/** Its first photograph, and what is kept of it. */
function Kept({ jar }: { readonly jar: JarReply }) {
  const answer = useRead('batch.get', { id: jar.batch });
  const own = answer?.ok === true ? answer.value.jars.find((one) => one.jar.id === jar.view.id) : undefined;
  if (own === undefined) return null;
  const [photograph] = own.photographs;
  const kept = own.portions.filter(({ goneOn }) => goneOn === null);
  return (
    <>
      {photograph !== undefined && (
        <figure className="pane-photograph">
          <Photograph photograph={photograph} name={`Photograph of ${jar.view.label}`} />
          {photograph.caption !== null && <figcaption className="soft">{photograph.caption}</figcaption>}
        </figure>
      )}
      <LinePhotographs jar={jar.view.id} />
      {kept.length > 0 && (
        <p>
          Kept of it:{' '}
          {kept
            .map((portion) =>
              [portion.pieces, portionName(portion), `since ${dayLabel(portion.keptOn, true)}`]
                .filter((part) => part !== null)
                .join(' '),
            )
            .join('; ')}
          .
        </p>
      )}
    </>
  );
}

function Vigour({ id }: { readonly id: string }) {
  return (
    <section>
      <h3>Vigour</h3>
      <MayComeLate>
        <JarScore id={id} alone />
      </MayComeLate>
    </section>
  );
}

/** What can be done with it from here. */
function Actions({
  jar,
  advised,
  seeds,
  gives,
  warm,
}: {
  readonly jar: JarReply;
  readonly advised: boolean;
  readonly seeds: boolean;
  readonly gives: boolean;
  readonly warm: boolean;
}) {
  const { view } = jar;
  return (
    <div className="pane-actions">
      {seeds && !view.lost && (
        <button
          className={`button${advised ? ' primary' : ''}`}
          type="button"
          onClick={() => go('batch', `seed:${view.id}`)}
        >
          Seed from this
        </button>
      )}
      <button className="button" type="button" onClick={() => go('batch', jar.batch)}>
        Correct
      </button>
      {!warm && !view.lost && <GoneButton jar={view.id} label={view.label} onShelf={view.onShelf} asks />}
      {jar.hold && (warm || jar.hold.startedAt !== null) && (
        <button className="button" type="button" onClick={() => go('hold', jar.hold?.id ?? null)}>
          Warmth
        </button>
      )}
      <button className="button" type="button" onClick={() => go('history', `jar:${view.id}`)}>
        History
      </button>
      {gives && !view.lost && (
        <button
          className="button"
          type="button"
          onClick={() => showOut({ panel: 'give', jar: view.id, label: view.label })}
        >
          Hand it over
        </button>
      )}
      {!view.lost && (
        <button
          className="button"
          type="button"
          onClick={() => showOut({ panel: 'labels', jar: view.id, label: view.label })}
        >
          Label
        </button>
      )}
      {!view.lost && (
        <button
          className="button"
          type="button"
          onClick={() => showOut({ panel: 'reports', jar: { id: view.id, label: view.label } })}
        >
          Print…
        </button>
      )}
    </div>
  );
}

function About({
  jar,
  warm,
  line,
  lineName,
  flagsByKey,
  lift,
  onLifting,
  onGo,
}: Omit<Props, 'id' | 'onClose'> & { readonly jar: JarReply }) {
  const { view } = jar;
  const { safety } = jar.record;
  const preferences = usePreferences();
  const today = useAppState()?.today ?? null;
  const hardlyThere = today !== null && longUnsaid(view.onShelf, earliestDay(view), today);
  const eats =
    safety === null || view.lost || view.onShelf === false || warm
      ? null
      : hardlyThere && safety.eat
        ? LONG_PAST
        : eatSentence(safety);
  const rows = recordRows(jar, preferences);
  const heldKeys = useMemo(
    () => jar.ancestors.filter((key) => (flagsByKey(key) & (FLAG.spoiled | FLAG.setAside)) !== 0),
    [jar, flagsByKey],
  );
  const held = heldAbove(heldKeys, useJars(heldKeys), jar.cautions);
  const advised = line?.seed?.from?.jar === view.id && line.seed.from.portion === null;
  const condemned = view.caution === 'condemned' || view.spoiled;
  return (
    <>
      <Kept jar={jar} />
      <p className="way-back">{jar.wayBack}</p>
      <Cautions jar={view.id} cautions={jar.cautions} asked={lift === view.id ? onLifting : null} />
      <GivenTo jar={view.id} label={view.label} />
      {eats !== null && <p>{eats}</p>}
      <Remarks remarks={jar.record.remarks.filter(({ readAs }) => readAs === null)} />
      {held.length > 0 && (
        <div className="notice caution">
          <p>
            <strong>{heldAboveSays(held)}</strong>
          </p>
          <p>Find out what happened there before anyone eats from this jar or seeds from it.</p>
        </div>
      )}
      {condemned && <p>No batch can be seeded from it: it {NO_SEED[view.discard ?? 'spoiled']}</p>}
      {line !== null && !condemned && (
        <div className="pane-advice">
          <p>
            <Linked
              text={[spokenOf(lineName, line.sentence), line.reason, line.also].filter(Boolean).join(' ')}
              jars={line.named.filter((one) => one.jar !== view.id)}
            />
          </p>
          {line.advised !== null && !advised && <VerdictAct seed={line.advised} line={line.id} />}
        </div>
      )}
      <Actions
        jar={jar}
        advised={advised}
        seeds={!condemned && !hardlyThere}
        gives={!condemned}
        warm={warm}
      />
      <section>
        <h3>What seeded it</h3>
        <Seeds jar={jar} onGo={onGo} />
      </section>
      {rows.length > 0 && (
        <section>
          <h3>As noted</h3>
          <dl className="noted">
            {rows.map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
      <JarLinks title="What it seeded" jars={jar.children} onGo={onGo} />
      <JarLinks title="Made beside it" jars={jar.siblings} onGo={onGo} />
      {!view.lost && <Vigour id={view.id} />}
      <Figures figures={jar.figures} />
      {!view.lost && (
        <MayComeLate>
          <LabResults jar={view.id} />
        </MayComeLate>
      )}
    </>
  );
}
