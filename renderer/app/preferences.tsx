// What the keeper prefers to read and write. Each choice is kept and applied at once; nothing recorded changes by it.
import { useEffect, useRef, useState } from 'react';
import { MEASURES, printAmount, printTemperature } from '../../core/quantities';
import { printDay } from '../../core/quantities/typed-days';
import type { Preferences } from '../../core/ledger/records';
import { ChoiceField, TextField } from '../parts/fields';
import { call } from './calls';
import { say } from './store';
import './preferences.css';

const SPOONS = [
  { value: 'US', label: 'United States' },
  { value: 'metric', label: 'Metric' },
  { value: 'Australia', label: 'Australia' },
  { value: 'UK imperial', label: 'Old British' },
] as const satisfies readonly { readonly value: Preferences['spoons']; readonly label: string }[];

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

/** A limit in whole numbers; empty is no limit. Kept as soon as it can be read. */
function Limit({
  label,
  value,
  most,
  onChange,
}: {
  readonly label: string;
  readonly value: number | null;
  readonly most: number;
  readonly onChange: (value: number | null) => void;
}) {
  const [typed, setTyped] = useState(value === null ? '' : String(value));
  const read = (text: string): number | null | undefined => {
    if (text.trim() === '') return null;
    const number = Number(text);
    return /^\s*\d+\s*$/.test(text) && number >= 1 && number <= most ? number : undefined;
  };
  return (
    <TextField
      label={label}
      width="short"
      numeric
      value={typed}
      placeholder="no limit"
      problem={
        read(typed) === undefined
          ? `Type a whole number from 1 to ${most}, or leave it empty for no limit.`
          : undefined
      }
      onChange={(next) => {
        setTyped(next);
        const wanted = read(next);
        if (wanted !== undefined && wanted !== value) onChange(wanted);
      }}
    />
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
        <Limit
          label="Seed stays in the fridge at most (days)"
          value={preferences.seedFridgeDays}
          most={3650}
          onChange={(seedFridgeDays) => void save({ seedFridgeDays })}
        />
        <Limit
          label="Seed stays in the freezer at most (days)"
          value={preferences.seedFreezerDays}
          most={3650}
          onChange={(seedFreezerDays) => void save({ seedFreezerDays })}
        />
        <Limit
          label="A line goes up to generation"
          value={preferences.mostGenerations}
          most={1000}
          onChange={(mostGenerations) => void save({ mostGenerations })}
        />
      </div>
      <Currency value={preferences.currency} onChange={(currency) => void save({ currency })} />
    </dialog>
  );
}
