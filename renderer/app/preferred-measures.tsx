// What the region tells of a keeper's measures, days and money: asked once by the place, and behind a fold one by one.
import { useMemo, useState } from 'react';
import { PLACES, placeOf } from '../../core/ledger/default-preferences';
import type { Preferences } from '../../core/ledger/records';
import { MEASURES, printTemperature } from '../../core/quantities/quantities';
import { printDay } from '../../core/quantities/typed-days';
import { ChoiceField, SelectField, TextField } from '../parts/fields';

const SPOONS = [
  { value: 'US', label: 'United States' },
  { value: 'metric', label: 'Metric' },
  { value: 'Australia', label: 'Australia' },
  { value: 'UK imperial', label: 'Old British' },
] as const satisfies readonly { readonly value: Preferences['spoons']; readonly label: string }[];

const round = (ml: number): string => String(Math.round(ml * 10) / 10);

/** "A tbsp is 14.8 mL, a tsp 4.9 mL, a cup 236.6 mL." */
function spoonWords(spoons: Preferences['spoons']): string {
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

export interface Chosen {
  readonly preferences: Preferences;
  readonly save: (change: Partial<Preferences>) => void;
}

/** "United Kingdom"; in euros many regions are alike. */
const placeName = (region: string | null): string =>
  region === null ? 'Euro countries' : (new Intl.DisplayNames('en', { type: 'region' }).of(region) ?? region);

const OWN_MIXTURE = 'own';

/** Where the keeper lives, which tells five things at once. */
export function PlaceField({ preferences, save }: Chosen) {
  const now = placeOf(preferences);
  const places = useMemo(
    () =>
      PLACES.map(({ measures, region }) => ({ measures, name: placeName(region) })).toSorted((a, b) =>
        a.name.localeCompare(b.name, 'en'),
      ),
    [],
  );
  return (
    <SelectField
      label="Measures, days and money as in"
      value={now?.measures.currency ?? OWN_MIXTURE}
      choices={[
        ...(now === undefined ? [{ value: OWN_MIXTURE, label: 'my own mixture' }] : []),
        ...places.map(({ name, measures }) => ({ value: measures.currency, label: name })),
      ]}
      hint={measuresSay(preferences)}
      onChange={(currency) => {
        const place = places.find(({ measures }) => measures.currency === currency);
        if (place) save(place.measures);
      }}
    />
  );
}

/** "Warmth is 38 °C; milk in mL and litres; 3/4 is 3 Apr 2026; prices in GBP." */
function measuresSay(preferences: Preferences): string {
  const warmth = printTemperature({ value: 38, unit: '°C', typed: null }, preferences);
  const volumes = preferences.volumes === 'metric' ? 'mL and litres' : 'spoons, cups and quarts';
  const day = printDay(preferences.dates === 'day first' ? '2026-04-03' : '2026-03-04', preferences.dates);
  return `Warmth is ${warmth}; milk in ${volumes}; 3/4 is ${day}; prices in ${preferences.currency}.`;
}

/** The five by themselves. */
export function OneByOne({ preferences, save }: Chosen) {
  const choose =
    <K extends keyof Preferences>(field: K) =>
    (value: Preferences[K] | ''): void => {
      if (value !== '') save({ [field]: value } as Pick<Preferences, K>);
    };
  return (
    <details className="preferences-fold">
      <summary>Change one of these</summary>
      <div className="stack">
        <div className="preferences-pair">
          <ChoiceField
            label="Temperatures"
            unsaid={null}
            value={preferences.temperatures}
            choices={[
              { value: '°C', label: '°C' },
              { value: '°F', label: '°F' },
            ]}
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
        <Currency value={preferences.currency} onChange={(currency) => save({ currency })} />
      </div>
    </details>
  );
}
