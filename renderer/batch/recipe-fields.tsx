// The other fields of a recipe: milk and vessel, additions, a hold. The same ones record and correct.
import { useState } from 'react';
import { JAR_FIELDS, VOLUMES_KNOWN } from '../../core/ledger/jar-fields';
import { ChoiceField, SelectField, TextField, wordChoices } from '../parts/fields';
import { readField } from '../parts/field-text';
import type { Reader } from '../parts/reading';
import { Rows } from '../parts/entry-rows';
import type { Problems } from '../parts/taking';
import {
  isEmptyAddition,
  MILK_FIELDS,
  noAddition,
  saysPlain,
  type AdditionText,
  type HoldText,
  type MilkText,
} from './batch-text';
import type { Packages } from './use-packages';

/** Milk, vessel and final volume. */
export function MilkFields({
  milk,
  onChange,
  path,
  problems,
  reader,
  packages,
}: {
  readonly milk: MilkText;
  readonly onChange: (milk: MilkText) => void;
  readonly path: string;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly packages: Packages;
}) {
  return (
    <div className="fields">
      {MILK_FIELDS.map((field) => (
        <TextField
          key={field}
          label={JAR_FIELDS[field].label}
          value={milk[field]}
          placeholder={JAR_FIELDS[field].example}
          read={readField(JAR_FIELDS[field].kind, milk[field], reader)}
          problem={problems.get(`${path}.${field}`)}
          onChange={(value) => onChange({ ...milk, [field]: value })}
        />
      ))}
      {packages.milk.length > 0 && (
        <SelectField
          label="From which carton"
          value={milk.milkPackage}
          choices={packages.milk}
          onChange={(milkPackage) => onChange({ ...milk, milkPackage })}
        />
      )}
      <ChoiceField
        label={JAR_FIELDS.finalVolumeKnown.label}
        value={milk.finalVolumeKnown}
        choices={wordChoices(VOLUMES_KNOWN)}
        onChange={(finalVolumeKnown) => onChange({ ...milk, finalVolumeKnown })}
      />
    </div>
  );
}

/** Additions, each with what went in; with what was planned only where something was. */
export function AdditionRows({
  additions,
  onChange,
  path,
  problems,
  reader,
  packages,
  of,
  plan = false,
}: {
  readonly additions: readonly AdditionText[];
  readonly onChange: (additions: readonly AdditionText[]) => void;
  readonly path: string;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly packages: Packages;
  readonly of: string;
  /** The jar is only planned, so that its one amount is a plan. */
  readonly plan?: boolean;
}) {
  // A plan that is emptied while it is typed keeps its field.
  const [hadPlan] = useState(additions.some(({ planned }) => planned !== ''));
  const isPlain = additions.every((one) => isEmptyAddition(one) || saysPlain(one));
  return (
    <>
      {/* One press empties the rows, and says what an empty row means. */}
      <button
        type="button"
        className="button plain-jar"
        aria-pressed={isPlain}
        data-enter="pass"
        onClick={() => onChange([noAddition])}
      >
        Plain: nothing stirred in<span className="visually-hidden">, {of}</span>
      </button>
      <Rows
        items={additions}
        kind="addition"
        of={of}
        fresh={noAddition}
        isEmpty={isEmptyAddition}
        onChange={onChange}
      >
        {(addition, at, added) => {
          const change = (part: Partial<AdditionText>): void =>
            onChange(additions.with(at, { ...addition, ...part }));
          const own = packages.ofAddition(addition.name);
          return (
            <div className="fields">
              <TextField
                label="What was stirred in"
                startHere={added}
                value={addition.name}
                placeholder="potato starch"
                hint={saysPlain(addition) ? 'Plain: nothing is stirred in.' : undefined}
                problem={problems.get(`${path}.${at}.name`)}
                onChange={(name) => change({ name })}
              />
              {(hadPlan || addition.planned !== '') && (
                <TextField
                  label="Planned"
                  value={addition.planned}
                  read={reader.amount(addition.planned)}
                  problem={problems.get(`${path}.${at}.planned`)}
                  onChange={(planned) => change({ planned })}
                />
              )}
              {!(plan && hadPlan) && (
                <TextField
                  label={plan ? 'Planned' : 'Went in'}
                  value={addition.actual}
                  placeholder={addition.planned === '' ? '2 tbsp' : 'if it differs'}
                  read={reader.amount(addition.actual)}
                  problem={problems.get(`${path}.${at}.actual`)}
                  onChange={(actual) => change({ actual })}
                />
              )}
              {own.length > 0 && (
                <SelectField
                  label="From which package"
                  value={addition.package}
                  choices={own}
                  onChange={(chosen) => change({ package: chosen })}
                />
              )}
            </div>
          );
        }}
      </Rows>
    </>
  );
}

/** A time in warmth: how long, how warm, where the probe sat. */
export function HoldFields({
  hold,
  onChange,
  path,
  problems,
  reader,
  day,
}: {
  readonly hold: HoldText;
  readonly onChange: (hold: HoldText) => void;
  readonly path: string;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly day: string | null;
}) {
  const [times, setTimes] = useState(hold.started !== '' || hold.ended !== '' || hold.note !== '');
  return (
    <div className="fields">
      <TextField
        label="Held for"
        value={hold.hours}
        placeholder="36 hours"
        read={reader.hours(hold.hours)}
        problem={problems.get(`${path}.hours`)}
        onChange={(hours) => onChange({ ...hold, hours })}
      />
      <TextField
        label="Planned warmth"
        value={hold.planned}
        placeholder="38 °C or 101 F"
        read={reader.temperature(hold.planned)}
        problem={problems.get(`${path}.planned`)}
        onChange={(planned) => onChange({ ...hold, planned })}
      />
      <ChoiceField
        label="Where the probe sat"
        value={hold.probe}
        choices={[
          { value: 'air', label: 'Air' },
          { value: 'bath', label: 'Bath' },
          { value: 'jar', label: 'In a jar' },
        ]}
        onChange={(probe) => onChange({ ...hold, probe })}
      />
      <details className="more" open={times} onToggle={(event) => setTimes(event.currentTarget.open)}>
        <summary>Start and end, note</summary>
        <div className="fields">
          <TextField
            label="Started"
            value={hold.started}
            placeholder="18:30"
            read={reader.moment(hold.started, day)}
            problem={problems.get(`${path}.started`)}
            onChange={(started) => onChange({ ...hold, started })}
          />
          <TextField
            label="Ended"
            value={hold.ended}
            placeholder="16 Mar 6:30"
            read={reader.moment(hold.ended, null)}
            problem={problems.get(`${path}.ended`)}
            onChange={(ended) => onChange({ ...hold, ended })}
          />
          <TextField
            label="Note on this hold"
            value={hold.note}
            onChange={(note) => onChange({ ...hold, note })}
          />
        </div>
      </details>
    </div>
  );
}
