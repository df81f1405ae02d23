// What the keeper prefers to read and write. Each choice is kept and applied at once; nothing recorded changes by it.
import { useEffect, useRef, useState } from 'react';
import type { Preferences } from '../../core/ledger/records';
import { ChoiceField, TextField } from '../parts/fields';
import { call } from '../state/ledger-calls';
import { OneByOne, PlaceField, type Chosen } from './preferred-measures';
import { showOut } from '../out/out-shown';
import { JAR_LAG, limitUpTo, type FigureWords } from './preference-figures';
import { say } from '../state/store';
import './preferences.css';

const DAYS = limitUpTo(3650);
const GENERATIONS = limitUpTo(1000);

/**
 * A figure that may be left empty. Kept once the field is left, or the panel closed: half a number is not a choice,
 * and in the history one choice is one line.
 */
function Figure({
  label,
  hint,
  value,
  words,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly words: FigureWords;
  readonly onChange: (value: number | null) => void;
}) {
  const [typed, setTyped] = useState(value === null ? '' : String(value));
  const kept = useRef(value);
  const keep = (): void => {
    const wanted = words.read(typed);
    if (wanted === undefined) return;
    setTyped(wanted === null ? '' : String(wanted));
    if (wanted === kept.current) return;
    kept.current = wanted;
    onChange(wanted);
  };
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  // Escape closes the panel without leaving the field first.
  useEffect(() => () => latest.current(), []);
  return (
    <div className="preferences-figure">
      <TextField
        label={label}
        width="short"
        numeric
        value={typed}
        placeholder={words.empty}
        hint={hint}
        problem={words.read(typed) === undefined ? words.problem : undefined}
        onChange={setTyped}
        onLeave={keep}
      />
    </div>
  );
}

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
  const leaveFor = (panel: 'everything' | 'receive'): void => {
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
