// The help: the job on one illustrated page, then the words used, and every key, made from the table of actions.
import { useEffect, useRef, type ReactNode } from 'react';
import type { Action } from '../state/action';
import { actions, printKeys } from './actions';
import { screens } from './screens';
import { go } from '../state/store';
import { FoodCaution } from '../parts/food-caution';
import './help.css';
import {
  AfreshPicture,
  KeepPicture,
  LookPicture,
  PictureDefs,
  SeedPicture,
  StartPicture,
} from './help-pictures';
import { WORDS } from './help-words';

interface Step {
  readonly title: string;
  readonly says: string;
  readonly picture: ReactNode;
  readonly screen: string;
  readonly focus?: string;
}

/** The job, from the packets to the next start; each leads to where it is done. */
const STEPS: readonly Step[] = [
  {
    title: 'Start',
    says: 'Stir capsules, or a culture you were given, into warm milk. These first jars begin a line.',
    picture: <StartPicture />,
    screen: 'sources',
  },
  {
    title: 'Seed',
    says: 'A few spoons of one jar seed the next. The number in a jar is its generation.',
    picture: <SeedPicture />,
    screen: 'batch',
    focus: 'new',
  },
  {
    title: 'Look',
    says: 'Out of warmth, look, then smell, before anyone tastes. Discard a spoiled jar whole.',
    picture: <LookPicture />,
    screen: 'batch',
  },
  {
    title: 'Keep',
    says: 'Eat what passed. Keep the best jar as the next seed, and a reserve.',
    picture: <KeepPicture />,
    screen: 'family',
  },
  {
    title: 'Begin afresh',
    says: 'When batches keep coming out softer, the program says so, and when to start anew.',
    picture: <AfreshPicture />,
    screen: 'vigour',
  },
];

function Job({ onClose }: { readonly onClose: () => void }) {
  return (
    <ol className="help-job" aria-label="The job, from packet to packet">
      {STEPS.map(({ title, says, picture, screen, focus }, at) => (
        <li key={title}>
          <button
            type="button"
            onClick={() => {
              onClose();
              go(screen, focus ?? null);
            }}
          >
            {picture}
            <strong>
              {at + 1}. {title}
            </strong>
            <span>{says}</span>
          </button>
        </li>
      ))}
      <li className="help-caution">
        <FoodCaution className="small" />
      </li>
    </ol>
  );
}

function Keys({ title, list }: { readonly title: string; readonly list: readonly Action[] }) {
  if (list.length === 0) return null;
  return (
    <section className="help-group">
      <h3>{title}</h3>
      <dl>
        {list.map((action) => (
          <div key={action.id}>
            <dt>{action.label}</dt>
            <dd>
              {[...new Set(action.keys.map(printKeys))].map((chord, at) => (
                <span key={chord}>
                  {at > 0 && <span className="soft"> or </span>}
                  <kbd>{chord}</kbd>
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function Words() {
  return (
    <section className="help-group help-words">
      <h3>Words</h3>
      <dl>
        {WORDS.map(([word, meaning]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** The job in pictures first, then the words, then the keys by screen. */
export function Help({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const all = actions();
  return (
    <dialog ref={dialog} className="help" aria-labelledby="help-title" onClose={onClose}>
      <div className="help-head">
        <h2 id="help-title">Help</h2>
        <button className="button" type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <PictureDefs />
      <Job onClose={() => dialog.current?.close()} />
      <div className="help-columns">
        <Words />
        <div>
          <Keys title="Keys everywhere" list={all.filter((action) => action.where === 'everywhere')} />
          {screens.map((screen) => (
            <Keys
              key={screen.id}
              title={`Keys on ${screen.title}`}
              list={all.filter((action) => action.where === screen.id)}
            />
          ))}
        </div>
      </div>
    </dialog>
  );
}
