// The help: the words used, and every key, made from the table of actions.
import { useEffect, useRef } from 'react';
import type { Action } from '../state/action';
import { actions, printKeys } from './actions';
import { screens } from './screens';
import { WORDS } from './help-words';

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

/** The words, then the keys by screen. */
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
      <Words />
      <Keys title="Keys everywhere" list={all.filter((action) => action.where === 'everywhere')} />
      {screens.map((screen) => (
        <Keys
          key={screen.id}
          title={`Keys on ${screen.title}`}
          list={all.filter((action) => action.where === screen.id)}
        />
      ))}
    </dialog>
  );
}
