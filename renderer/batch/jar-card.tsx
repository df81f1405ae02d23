// One jar of a new batch: as all jars are, until the keeper says that something differs.
import { useState, type ReactNode } from 'react';
import { SelectField, TextField } from '../parts/fields';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import {
  noAddition,
  noSeed,
  recipeOf,
  saysPlain,
  type BatchText,
  type JarText,
  type Recipe,
} from './batch-text';
import { AdditionRows, MilkFields } from './recipe-fields';
import { SeedRows } from './seed-rows';
import type { Packages } from './use-packages';

const joined = (parts: readonly string[]): string => parts.filter((part) => part.trim() !== '').join(', ');

/** What a jar comes to, in a few words. */
function recipeWords(recipe: Recipe): {
  readonly seed: string;
  readonly milk: string;
  readonly additions: string;
} {
  return {
    seed: joined(
      recipe.seeds.map((seed) =>
        joined([seed.amount, seed.picked?.label ?? seed.find]).replace(', ', ' of '),
      ),
    ),
    milk: joined([recipe.milk.milkAmount, recipe.milk.milk, recipe.milk.vessel, recipe.milk.finalVolume]),
    additions: joined(
      recipe.additions
        .filter((one) => !saysPlain(one))
        .map((one) => `${one.actual || one.planned} ${one.name}`.trim()),
    ),
  };
}

function Part({
  title,
  says,
  unsaid,
  jar,
  differs,
  onToggle,
  children,
}: {
  readonly title: string;
  readonly says: string;
  /** What it is called where nothing is said, unless that is unknown. */
  readonly unsaid?: string;
  readonly jar: string;
  readonly differs: boolean;
  readonly onToggle: () => void;
  readonly children: ReactNode;
}) {
  return (
    <div className={differs ? 'jar-part differs' : 'jar-part'}>
      <div className="jar-part-head">
        <div>
          <span className="label">{title}</span>
          {!differs && (
            <span className={says === '' && unsaid === undefined ? 'soft' : undefined}>
              {says === '' ? (unsaid ?? 'not noted') : says}
            </span>
          )}
        </div>
        <button
          type="button"
          className="button quiet"
          aria-label={`${differs ? 'As all' : 'Differs'}: ${title.toLowerCase()} of jar ${jar}`}
          onClick={onToggle}
        >
          {differs ? 'As all' : 'Differs'}
        </button>
      </div>
      {differs && children}
    </div>
  );
}

/** The card. */
export function JarCard({
  jar,
  at,
  all,
  problems,
  reader,
  packages,
  notAfter,
  onChange,
  onRemove,
}: {
  readonly jar: JarText;
  readonly at: number;
  readonly all: BatchText;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly packages: Packages;
  readonly notAfter: string | null;
  readonly onChange: (jar: JarText) => void;
  readonly onRemove?: () => void;
}) {
  const [more, setMore] = useState(jar.note !== '' || jar.state !== null);
  const recipe = recipeOf(all, jar);
  const words = recipeWords(recipe);
  const path = `jars.${at}`;
  const shared = { problems, reader, packages };
  return (
    <fieldset className="jar-card" aria-label={`Jar ${jar.letter}`}>
      <div className="jar-card-head">
        <TextField
          label="Letter"
          width="short"
          value={jar.letter}
          problem={problems.get(`${path}.letter`)}
          onChange={(letter) => onChange({ ...jar, letter })}
        />
        {onRemove && (
          <button
            type="button"
            className="button quiet"
            data-enter="pass"
            aria-label={`Remove jar ${jar.letter}`}
            onClick={onRemove}
          >
            Remove
          </button>
        )}
      </div>
      <Part
        title="Seed"
        says={words.seed}
        jar={jar.letter}
        differs={jar.seeds !== null}
        onToggle={() =>
          onChange({ ...jar, seeds: jar.seeds ? null : all.all.seeds.length > 0 ? all.all.seeds : [noSeed] })
        }
      >
        <SeedRows
          {...shared}
          of={`jar ${jar.letter}`}
          seeds={jar.seeds ?? []}
          path={`${path}.seeds`}
          notAfter={notAfter}
          startHere
          onChange={(seeds) => onChange({ ...jar, seeds })}
        />
      </Part>
      <Part
        title="Milk and vessel"
        says={words.milk}
        jar={jar.letter}
        differs={jar.milk !== null}
        onToggle={() => onChange({ ...jar, milk: jar.milk ? null : all.all.milk })}
      >
        {jar.milk && (
          <MilkFields
            {...shared}
            milk={jar.milk}
            path={`${path}.milk`}
            onChange={(milk) => onChange({ ...jar, milk })}
          />
        )}
      </Part>
      <Part
        title="Stirred in"
        says={words.additions}
        unsaid="plain: nothing"
        jar={jar.letter}
        differs={jar.additions !== null}
        onToggle={() =>
          onChange({
            ...jar,
            additions: jar.additions ? null : all.all.additions.length > 0 ? all.all.additions : [noAddition],
          })
        }
      >
        <AdditionRows
          {...shared}
          of={`jar ${jar.letter}`}
          additions={jar.additions ?? []}
          path={`${path}.additions`}
          onChange={(additions) => onChange({ ...jar, additions })}
        />
      </Part>
      {all.holds.length > 1 && (
        <SelectField
          label="Hold"
          value={jar.hold === null ? '' : String(jar.hold)}
          choices={[
            { value: '', label: `As all: hold ${all.all.hold + 1}` },
            ...all.holds.map((_, hold) => ({ value: String(hold), label: `Hold ${hold + 1}` })),
          ]}
          onChange={(hold) => onChange({ ...jar, hold: hold === '' ? null : Number(hold) })}
        />
      )}
      <details className="more" open={more} onToggle={(event) => setMore(event.currentTarget.open)}>
        <summary>
          Planned, note<span className="visually-hidden"> of jar {jar.letter}</span>
        </summary>
        <div className="stack">
          <SelectField
            label="Made or planned"
            value={jar.state ?? ''}
            choices={[
              { value: '', label: `As all: ${all.all.state}` },
              { value: 'made', label: 'Made' },
              { value: 'planned', label: 'Planned' },
            ]}
            onChange={(state) =>
              onChange({ ...jar, state: state === '' ? null : (state as JarText['state']) })
            }
          />
          <TextField
            label="Note on this jar"
            width="full"
            value={jar.note}
            onChange={(note) => onChange({ ...jar, note })}
          />
        </div>
      </details>
    </fieldset>
  );
}
