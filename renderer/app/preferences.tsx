// What the keeper prefers to read and write. Each choice is kept and applied at once; nothing recorded changes by it.
import { useEffect, useRef, useState } from 'react';
import { MEASURES, printAmount, printTemperature } from '../../core/quantities/quantities';
import { printDay } from '../../core/quantities/typed-days';
import type { Preferences } from '../../core/ledger/records';
import { ChoiceField, TextField } from '../parts/fields';
import { call } from '../state/ledger-calls';
import { JAR_LAG, limitUpTo, type FigureWords } from './preference-figures';
import { say } from '../state/store';
import './preferences.css';

const SPOONS = [
  { value: 'US', label: 'United States' },
  { value: 'metric', label: 'Metric' },
  { value: 'Australia', label: 'Australia' },
  { value: 'UK imperial', label: 'Old British' },
] as const satisfies readonly { readonly value: Preferences['spoons']; readonly label: string }[];

const DAYS = limitUpTo(3650);
const GENERATIONS = limitUpTo(1000);

const round = (ml: number): string => String(Math.round(ml * 10) / 10);

/** "A tbsp is 14.8 mL, a tsp 4.9 mL, a cup 236.6 mL." */
export function spoonWords(spoons: Preferences['spoons']): string {
  const { tablespoon, teaspoon, cup } = MEASURES[spoons];
  return `A tbsp is ${round(tablespoon)} mL, a tsp ${round(teaspoon)} mL, a cup ${round(cup)} mL.`;
}

function Currency({
  value,
  onChange,
}: {
  readonly value: string;
  readonly onChange: (currency: string) => void;
}) {
  const [typed, setTyped] = useState(value);
  const code = typed.trim().toUpperCase();
  const wrong = !/^[A-Z]{3}$/.test(code);
  return (
    <TextField
      label="Currency"
      width="short"
      value={typed}
      hint={`Prices typed without one are in ${value}.`}
      problem={wrong ? 'Type the three letters of a currency, such as EUR or USD.' : undefined}
      onChange={(next) => {
        setTyped(next);
        const wanted = next.trim().toUpperCase();
        if (/^[A-Z]{3}$/.test(wanted) && wanted !== value) onChange(wanted);
      }}
    />
  );
}

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

/** The panel. */
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
  const save = async (change: Partial<Preferences>): Promise<void> => {
    latest.current = { ...latest.current, ...change };
    const answer = await call('preferences.save', latest.current);
    if (!answer.ok && answer.error.code !== 'nothing changed') say(answer.sentence, 'caution');
  };
  const choose =
    <K extends keyof Preferences>(field: K) =>
    (value: Preferences[K] | ''): void => {
      if (value !== '') void save({ [field]: value } as Pick<Preferences, K>);
    };
  return (
    <dialog ref={dialog} className="preferences" aria-labelledby="preferences-title" onClose={onClose}>
      <div className="help-head">
        <h2 id="preferences-title">Preferences</h2>
        <button className="button" type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <p className="soft">
        Kept at once, with this ledger. What is recorded stays as it was typed; only how it is read changes.
      </p>
      <ChoiceField
        label="Theme"
        unsaid={null}
        value={preferences.theme}
        choices={[
          { value: 'system', label: 'As the system' },
          { value: 'light', label: 'Light' },
          { value: 'dark', label: 'Dark' },
        ]}
        onChange={choose('theme')}
      />
      <div className="preferences-pair">
        <ChoiceField
          label="Temperatures"
          unsaid={null}
          value={preferences.temperatures}
          choices={[
            { value: '°C', label: '°C' },
            { value: '°F', label: '°F' },
          ]}
          hint={`A jar is held near ${printTemperature({ value: 38, unit: '°C', typed: null }, preferences)}.`}
          onChange={choose('temperatures')}
        />
        <ChoiceField
          label="Days typed as numbers"
          unsaid={null}
          value={preferences.dates}
          choices={[
            { value: 'day first', label: 'Day first' },
            { value: 'month first', label: 'Month first' },
          ]}
          hint={`3/4 is ${printDay(preferences.dates === 'day first' ? '2026-04-03' : '2026-03-04', preferences.dates)}.`}
          onChange={choose('dates')}
        />
      </div>
      <ChoiceField
        label="Volumes"
        unsaid={null}
        value={preferences.volumes}
        choices={[
          { value: 'metric', label: 'mL and litres' },
          { value: 'spoons', label: 'Spoons, cups and quarts' },
        ]}
        hint={`Three spoonfuls of seed read “${printAmount(
          { value: 3 * MEASURES[preferences.spoons].tablespoon, unit: 'mL', typed: null },
          preferences,
        )}”.`}
        onChange={choose('volumes')}
      />
      <ChoiceField
        label="Spoons and cups are those of"
        unsaid={null}
        value={preferences.spoons}
        choices={SPOONS}
        hint={spoonWords(preferences.spoons)}
        onChange={choose('spoons')}
      />
      <div className="preferences-pair">
        <Figure
          label="Seed stays in the fridge at most (days)"
          value={preferences.seedFridgeDays}
          words={DAYS}
          onChange={(seedFridgeDays) => void save({ seedFridgeDays })}
        />
        <Figure
          label="Seed stays in the freezer at most (days)"
          value={preferences.seedFreezerDays}
          words={DAYS}
          onChange={(seedFreezerDays) => void save({ seedFreezerDays })}
        />
        <Figure
          label="A line goes up to generation"
          value={preferences.mostGenerations}
          words={GENERATIONS}
          onChange={(mostGenerations) => void save({ mostGenerations })}
        />
      </div>
      <Figure
        label="A jar lags behind its bath by (hours)"
        hint={JAR_LAG.hint}
        value={preferences.jarFollowsHours}
        words={JAR_LAG}
        onChange={(jarFollowsHours) => void save({ jarFollowsHours })}
      />
      <Currency value={preferences.currency} onChange={(currency) => void save({ currency })} />
    </dialog>
  );
}
