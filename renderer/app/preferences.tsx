// What the keeper prefers to read and write. Each choice is kept and applied at once; nothing recorded changes by it.
import { useEffect, useRef } from 'react';
import type { Preferences } from '../../core/ledger/records';
import { ChoiceField } from '../parts/fields';
import { call } from '../state/ledger-calls';
import { OneByOne, PlaceField, type Chosen } from './preferred-measures';
import { showOut } from '../out/out-shown';
import { Figure } from './figure-field';
import { KeptDays } from './kept-days';
import { JAR_LAG, limitUpTo } from './preference-figures';
import { say } from '../state/store';
import './preferences.css';

const DAYS = limitUpTo(3650);
const GENERATIONS = limitUpTo(1000);

/** How long seed is kept, how far a line goes, and how slowly a jar warms. */
function Limits({ preferences, save }: Chosen) {
  return (
    <>
      <div className="preferences-figures">
        <Figure
          label="Days seed keeps in the fridge"
          value={preferences.seedFridgeDays}
          words={DAYS}
          onChange={(seedFridgeDays) => save({ seedFridgeDays })}
        />
        <Figure
          label="Days it keeps in the freezer"
          value={preferences.seedFreezerDays}
          words={DAYS}
          onChange={(seedFreezerDays) => save({ seedFreezerDays })}
        />
        <Figure
          label="A line goes up to generation"
          value={preferences.mostGenerations}
          words={GENERATIONS}
          onChange={(mostGenerations) => save({ mostGenerations })}
        />
      </div>
      <KeptDays />
      <details className="preferences-fold">
        <summary>How slowly a jar warms</summary>
        <Figure
          label="A jar lags behind its bath by (hours)"
          hint={JAR_LAG.hint}
          value={preferences.jarFollowsHours}
          words={JAR_LAG}
          onChange={(jarFollowsHours) => save({ jarFollowsHours })}
        />
      </details>
    </>
  );
}

/** The panel: one short page; what the region tells is asked once, and behind a fold one by one. */
export function PreferencesPanel({
  preferences,
  onClose,
}: {
  readonly preferences: Preferences;
  readonly onClose: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  /** What was chosen last: two choices in quick succession must not undo one another. */
  const latest = useRef(preferences);
  useEffect(() => dialog.current?.showModal(), []);
  useEffect(() => {
    latest.current = preferences;
  }, [preferences]);
  const keep = async (change: Partial<Preferences>): Promise<void> => {
    latest.current = { ...latest.current, ...change };
    const answer = await call('preferences.save', latest.current);
    if (!answer.ok && answer.error.code !== 'nothing changed') say(answer.sentence, 'caution');
  };
  const leaveFor = (panel: 'everything' | 'receive' | 'backups'): void => {
    dialog.current?.close();
    showOut({ panel });
  };
  const chosen = { preferences, save: (change: Partial<Preferences>) => void keep(change) };
  return (
    <dialog ref={dialog} className="preferences" aria-labelledby="preferences-title" onClose={onClose}>
      <div className="help-head">
        <h2 id="preferences-title">Preferences</h2>
        <button className="button" type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <ChoiceField
        label="Theme"
        unsaid={null}
        value={preferences.theme}
        choices={[
          { value: 'system', label: 'As the system' },
          { value: 'light', label: 'Light' },
          { value: 'dark', label: 'Dark' },
        ]}
        onChange={(theme) => theme !== '' && chosen.save({ theme })}
      />
      <PlaceField {...chosen} />
      <OneByOne {...chosen} />
      <Limits {...chosen} />
      <div className="row">
        <button className="button" type="button" onClick={() => leaveFor('everything')}>
          Take everything out…
        </button>
        <button className="button" type="button" onClick={() => leaveFor('backups')}>
          Go back to a backup…
        </button>
        <button className="button" type="button" onClick={() => leaveFor('receive')}>
          Receive a jar…
        </button>
      </div>
      <p className="soft small">
        Kept at once, with this ledger. What is recorded stays as it was typed; only how it is read changes.
      </p>
    </dialog>
  );
}
