// How many days things keep for eating and as seed, folded away in the preferences: what the shelf says by when.
import { useState } from 'react';
import type { Input } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { Figure } from './figure-field';
import { USUAL_DAYS } from './preference-figures';

type Days = Input<'shelf.limits'>['limits'];

const FIELDS: readonly (readonly [keyof Days, string])[] = [
  ['eatFridge', 'Eat unopened within (days)'],
  ['eatOpened', 'Eat once open within'],
  ['eatThawed', 'Eat once thawed within'],
  ['eatFrozen', 'Eat frozen within'],
  ['eatGiven', 'Eat a given jar within'],
  ['seedFridge', 'Best as seed within'],
  ['seedFreezer', 'Best as frozen seed within'],
];

async function keep(limits: Days): Promise<void> {
  const answer = await call('shelf.limits', { limits });
  if (!answer.ok && answer.error.code !== 'nothing changed') say(answer.sentence, 'caution');
}

export function KeptDays() {
  const [open, setOpen] = useState(false);
  const answer = useRead('shelf.get', open ? {} : null);
  return (
    <details className="preferences-fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>How long things keep</summary>
      {answer?.ok === false && <p>{answer.sentence}</p>}
      {answer?.ok === true && (
        <>
          <div className="preferences-figures">
            {FIELDS.map(([name, label]) => (
              <Figure
                key={name}
                label={label}
                value={answer.value.limits[name]}
                words={USUAL_DAYS}
                onChange={(days) => void keep({ [name]: days })}
              />
            ))}
          </div>
          <p className="soft small">
            Days as keepers usually count them; none is a promise, and the shelf goes by them.
          </p>
        </>
      )}
    </details>
  );
}
