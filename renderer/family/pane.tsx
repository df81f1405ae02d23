// Everything about one jar: the way back, cautions, what seeded it and what it seeded, each figure with its why.
import { useMemo } from 'react';
import type { Reply } from '../../core/contract';
import { go } from '../app/store';
import { usePreferences } from '../parts/use-reader';
import { useRead } from '../app/use-read';
import { Cautions } from './cautions';
import { heldAbove, heldAboveSays } from './held-above';
import { Figures } from './figures';
import { FLAG, generationWords } from './flags';
import { JarPicture } from './jar-shape';
import { JarScore } from '../vigour/jar-score';
import { recordRows } from './record-rows';
import { SET_WORDS } from './set-words';
import { useJars } from './use-jars';

type JarReply = Reply<'jar.get'>;

const percent = (share: number): string =>
  share >= 0.995 ? 'all of it' : share < 0.01 ? 'less than 1 %' : `${Math.round(share * 100)} %`;

/** "Heron and Lantern"; "Heron, Lantern and 3 more". */
function inShort(names: readonly string[]): string {
  if (names.length <= 2) return names.join(' and ');
  return `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}

function flagsOf({ view }: JarReply): number {
  return (
    (view.spoiled ? FLAG.spoiled : 0) |
    (view.caution === 'on hold' ? FLAG.onHold : 0) |
    (view.caution === 'look' ? FLAG.look : 0) |
    (view.onShelf === true ? FLAG.onShelf : 0) |
    (view.outcomeKnown ? FLAG.outcomeKnown : 0) |
    (view.lost ? FLAG.lost : 0) |
    (view.generation.atLeast ? FLAG.atLeast : 0)
  );
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
            {[seed.amount, percent(seed.share)].filter((part) => part !== null).join(' · ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

interface Props {
  readonly id: string;
  /** The drawing's flags of a jar, by key. */
  readonly flagsByKey: (key: number) => number;
  readonly onGo: (key: number) => void;
  readonly onClose: () => void;
}

/** The side pane; a sheet at the foot of a narrow window. */
export function Pane({ id, flagsByKey, onGo, onClose }: Props) {
  const answer = useRead('jar.get', { id });
  return (
    <aside className="pane" aria-label="About this jar">
      <p className="visually-hidden" aria-live="polite">
        {answer?.ok === true && `About ${answer.value.view.label}: ${answer.value.wayBack}`}
      </p>
      <div className="pane-body" key={id}>
        {answer === null && <p className="soft">Reading…</p>}
        {answer?.ok === false && <p role="alert">{answer.sentence}</p>}
        {answer?.ok === true && <About jar={answer.value} flagsByKey={flagsByKey} onGo={onGo} />}
      </div>
      <button className="button quiet pane-close" type="button" onClick={onClose} title="Close (Escape)">
        Close
      </button>
    </aside>
  );
}

function About({ jar, flagsByKey, onGo }: Pick<Props, 'flagsByKey' | 'onGo'> & { readonly jar: JarReply }) {
  const { view } = jar;
  const setWord = view.setWord === null ? 255 : SET_WORDS.indexOf(view.setWord);
  const sayings = [
    generationWords(view.generation.deepest, view.generation.atLeast),
    view.spoiled ? 'spoiled' : (view.setWord ?? (view.outcomeKnown ? 'set not noted' : 'outcome unknown')),
    ...(view.onShelf === true ? ['on the shelf'] : []),
  ];
  const rows = recordRows(jar, usePreferences());
  const heldKeys = useMemo(
    () => jar.ancestors.filter((key) => (flagsByKey(key) & (FLAG.spoiled | FLAG.onHold)) !== 0),
    [jar, flagsByKey],
  );
  const held = heldAbove(heldKeys, useJars(heldKeys), jar.cautions);
  const condemned = view.caution === 'condemned' || view.spoiled;
  return (
    <>
      <header className="pane-head">
        <JarPicture generation={view.generation.deepest} setWord={setWord} flags={flagsOf(jar)} />
        <div>
          <h2 id="pane-title" tabIndex={-1}>
            {view.label}
          </h2>
          <p className="soft">{sayings.join(' · ')}</p>
          {view.lines.length > 0 && (
            <p className="soft small">
              {view.lines.length === 1 ? 'Line' : 'Lines'} {inShort(view.lines)}
            </p>
          )}
        </div>
      </header>
      <p className="way-back">{jar.wayBack}</p>
      <Cautions jar={view.id} cautions={jar.cautions} />
      {held.length > 0 && (
        <div className="notice caution">
          <p>
            <strong>{heldAboveSays(held)}</strong>
          </p>
          <p>Find out what happened there before anyone eats from this jar or seeds from it.</p>
        </div>
      )}
      {condemned && <p>No batch can be seeded from it: it spoiled, and is discarded whole.</p>}
      <div className="pane-actions">
        {!condemned && !view.lost && (
          <button
            className={`button${view.caution === null && held.length === 0 ? ' primary' : ''}`}
            type="button"
            onClick={() => go('batch', `seed:${view.id}`)}
          >
            Seed a batch from this
          </button>
        )}
        <button className="button" type="button" onClick={() => go('batch', jar.batch)}>
          Correct
        </button>
        <button className="button" type="button" onClick={() => go('history', `jar:${view.id}`)}>
          History
        </button>
      </div>
      <section>
        <h3>What seeded it</h3>
        <Seeds jar={jar} onGo={onGo} />
      </section>
      <JarLinks title="What it seeded" jars={jar.children} onGo={onGo} />
      <JarLinks title="Made beside it" jars={jar.siblings} onGo={onGo} />
      {!view.lost && (
        <section>
          <h3>Vigour</h3>
          <JarScore id={view.id} alone />
        </section>
      )}
      <Figures figures={jar.figures} />
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
    </>
  );
}
