// The shell: navigation in one step, undo and redo, the demo's banner, the one live region, the screen itself.
import { useEffect, useRef, useState } from 'react';
import { Start } from '../start/start-screen';
import { helpSwitch, preferencesSwitch, printKeys } from './actions';
import './app.css';
import { ErrorBoundary } from './error-boundary';
import { Help } from './help';
import { changeLedger } from './native-menu';
import { PreferencesPanel } from './preferences';
import { OutPanels } from '../out/out-panels';
import { screens } from './screens';
import { go, redo, say, undo, useAppState, usePlace, useSaid } from '../state/store';

function UndoRedo({ undoes, redoes }: { readonly undoes: string | null; readonly redoes: string | null }) {
  return (
    <fieldset className="undo" aria-label="Undo and redo">
      <button
        className="button quiet"
        type="button"
        disabled={undoes === null}
        title={undoes === null ? 'Nothing to undo' : `Undo: ${undoes} (Ctrl Z)`}
        onClick={() => void undo()}
      >
        Undo{undoes !== null && <span className="visually-hidden"> {undoes}</span>}
      </button>
      <button
        className="button quiet"
        type="button"
        disabled={redoes === null}
        title={redoes === null ? 'Nothing to redo' : `Redo: ${redoes} (Ctrl Shift Z)`}
        onClick={() => void redo()}
      >
        Redo{redoes !== null && <span className="visually-hidden"> {redoes}</span>}
      </button>
    </fieldset>
  );
}

/** How long a message is read (ms); a caution or a question stays until it is closed. */
const SHOWN_MS = 8000;

function Message() {
  const said = useSaid();
  const { words, tone, count } = said;
  const slip = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (said.words === '' || said.tone === 'caution' || said.words.trimEnd().endsWith('?')) return undefined;
    const timer = window.setInterval(() => {
      // Not from under the pointer or the keyboard.
      if (slip.current?.matches(':hover, :focus-within') !== true) say('');
    }, SHOWN_MS);
    return () => window.clearInterval(timer);
  }, [said]);
  return (
    <div ref={slip} className={words === '' ? 'message empty' : `message ${tone}`}>
      <div aria-live="polite" aria-atomic="true">
        <p key={count}>{words}</p>
      </div>
      {words !== '' && (
        <button className="button quiet" type="button" onClick={() => say('')}>
          Close
        </button>
      )}
    </div>
  );
}

/** Says that the ledger is the invented one, and leads out of it. */
function DemoTag() {
  return (
    <aside
      className="demo"
      aria-label="About these notes"
      title="Invented, to look around in: nobody made these jars. Your own ledger stays as it is."
    >
      <span>Invented notes</span>
      <button className="button quiet" type="button" onClick={() => void changeLedger('ledger.leaveDemo')}>
        Leave
      </button>
    </aside>
  );
}

/** The whole page. */
export function App() {
  const state = useAppState();
  const place = usePlace();
  const [help, showHelp] = useState(false);
  const [preferring, showPreferences] = useState(false);
  useEffect(() => {
    helpSwitch.toggle = () => showHelp((shown) => !shown);
    preferencesSwitch.toggle = () => showPreferences((shown) => !shown);
  }, []);

  if (state === null) {
    return (
      <div className="shell">
        <main className="screen" aria-busy="true" aria-label="Opening" />
        <Message />
      </div>
    );
  }
  if (state.ledger === null || state.trouble !== null) {
    return (
      <div className="shell">
        <main className="screen">
          <ErrorBoundary>
            <Start />
          </ErrorBoundary>
        </main>
        <Message />
      </div>
    );
  }
  const screen = screens.find((one) => one.id === place.screen) ?? screens[0];
  const Shown = screen?.component;
  return (
    <div className="shell">
      <header className="bar">
        <span className="mark">Jarline</span>
        <nav aria-label="Screens">
          {screens
            .filter(({ within }) => within === undefined)
            .map((one) => (
              <button
                key={one.id}
                className="button quiet"
                type="button"
                data-screen={one.id}
                aria-current={one === screen ? 'page' : one.id === screen?.within ? true : undefined}
                title={one.keys[0] && `${one.title} (${printKeys(one.keys[0])})`}
                onClick={() => go(one.id)}
              >
                {one.title}
              </button>
            ))}
        </nav>
        {state.ledger.demo && <DemoTag />}
        <UndoRedo undoes={state.undo} redoes={state.redo} />
        <button className="button quiet" type="button" onClick={() => preferencesSwitch.toggle()}>
          Preferences
        </button>
        <button className="button quiet" type="button" onClick={() => helpSwitch.toggle()}>
          Help
        </button>
      </header>
      <main className="screen">
        <ErrorBoundary key={screen?.id}>{Shown && <Shown />}</ErrorBoundary>
      </main>
      <Message />
      {preferring && (
        <PreferencesPanel preferences={state.preferences} onClose={() => showPreferences(false)} />
      )}
      <OutPanels />
      {help && <Help onClose={() => showHelp(false)} />}
    </div>
  );
}
