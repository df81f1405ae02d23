// The seeds of a jar: as many rows as brought something in, each from a jar or from a product.
import { useLayoutEffect, useRef, useState } from 'react';
import { Combobox } from '../parts/combobox';
import { SelectField, TextField } from '../parts/fields';
import { Question } from '../parts/question';
import type { Reader } from '../parts/reading';
import { Rows } from '../parts/entry-rows';
import { say } from '../state/store';
import { countsPieces, unpickedSentence } from './batch-entry';
import type { Problems } from '../parts/taking';
import { isEmptySeed, noSeed, pickSeed, type SeedText } from './batch-text';
import { findSeeds, settle, type SeedSuggestion } from './find-seed';
import { SeedCaution } from './seed-caution';
import type { Packages } from './use-packages';
import { advisedSuggestions, withVerdicts, type LineVerdict } from './use-verdicts';

interface RowProps {
  readonly seed: SeedText;
  readonly onChange: (seed: SeedText) => void;
  readonly path: string;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly notAfter: string | null;
  readonly packages: Packages;
  readonly startHere: boolean;
  readonly name: string;
  readonly verdicts: readonly LineVerdict[];
}

/**
 * Picks a seed, which may have to be recorded first. What is typed meanwhile, here or in another field, stays; another text
 * in this one is not what was picked for.
 */
function usePick(seed: SeedText, onChange: RowProps['onChange']): (suggestion: SeedSuggestion) => void {
  const now = useRef({ seed, onChange });
  useLayoutEffect(() => {
    now.current = { seed, onChange };
  });
  return (suggestion) => {
    void settle(suggestion, seed.find).then((picked) => {
      const { current } = now;
      if (!picked || current.seed.find !== seed.find) return;
      const { portion } = suggestion;
      const kept = portion ? ({ id: portion.id, part: portion.part ?? '' } as const) : null;
      current.onChange(pickSeed(current.seed, picked, kept));
    });
  };
}

function SeedRow({
  seed,
  onChange,
  path,
  problems,
  reader,
  notAfter,
  packages,
  startHere,
  name,
  verdicts,
}: RowProps) {
  const [asking, setAsking] = useState<SeedSuggestion | null>(null);
  const [left, setLeft] = useState<{
    readonly text: string;
    readonly matched: boolean;
    readonly refused?: SeedSuggestion | undefined;
  } | null>(null);
  const unpicked = seed.picked === null && seed.find.trim() !== '' && left?.text === seed.find;
  const pick = usePick(seed, onChange);
  const fromSource = seed.picked !== null && seed.picked.kind !== 'jar';
  const byPieces = countsPieces(seed);
  const own = packages.ofSource(seed.picked?.id ?? '');
  return (
    <div className="fields seed-row">
      <Combobox<SeedSuggestion>
        label={name}
        value={seed.picked?.label ?? seed.find}
        picked={seed.picked !== null}
        startHere={startHere}
        placeholder="Label or product"
        problem={
          unpicked ? unpickedSentence(left.text, left.matched, left.refused) : problems.get(`${path}.find`)
        }
        find={async (text) =>
          withVerdicts(await findSeeds(text, notAfter), advisedSuggestions(verdicts), text)
        }
        onText={(find) => onChange({ ...seed, picked: null, find })}
        onPick={(suggestion) => (suggestion.ask ? setAsking(suggestion) : pick(suggestion))}
        onLeft={(text, matched, refused) => setLeft({ text, matched, refused })}
        onRefused={(suggestion) => say(`${suggestion.label}: ${suggestion.refused ?? ''}`, 'caution')}
      />
      <TextField
        label={fromSource ? 'How many pieces' : byPieces ? 'How many cubes' : 'How much of it'}
        value={seed.amount}
        onChange={(amount) => onChange({ ...seed, amount })}
        read={reader.amount(seed.amount, byPieces ? 'pieces' : undefined)}
        problem={problems.get(`${path}.amount`)}
        placeholder={fromSource ? '10 capsules' : byPieces ? '3 cubes or 45 ml' : '3 tbsp'}
      />
      {seed.picked?.kind === 'jar' && (
        <SelectField
          label="Part of it"
          value={seed.part}
          choices={[
            { value: '', label: 'Not noted' },
            { value: 'mixed', label: 'Mixed' },
            { value: 'curd', label: 'Curd' },
            { value: 'whey', label: 'Whey' },
          ]}
          onChange={(part) => onChange({ ...seed, part })}
        />
      )}
      {own.length > 0 && (
        <SelectField
          label="From which package"
          value={seed.package}
          choices={own}
          onChange={(chosen) => onChange({ ...seed, package: chosen })}
        />
      )}
      {seed.picked?.kind === 'jar' && <SeedCaution jar={seed.picked.id} />}
      {asking && (
        <Question
          title="This jar is set aside"
          yes="Use it as seed"
          no="Pick another"
          caution
          onNo={() => setAsking(null)}
          onYes={() => {
            pick(asking);
            setAsking(null);
          }}
        >
          <p>{asking.ask}</p>
          <p className="soft">When in doubt, take another jar. Nothing here says that it is safe.</p>
        </Question>
      )}
    </div>
  );
}

/** Rows of seeds with one to add and one to take away. */
export function SeedRows({
  seeds,
  onChange,
  path,
  problems,
  reader,
  notAfter,
  packages,
  startHere = false,
  verdicts = [],
  rare = false,
  of,
}: {
  readonly seeds: readonly SeedText[];
  readonly onChange: (seeds: readonly SeedText[]) => void;
  readonly path: string;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly notAfter: string | null;
  readonly packages: Packages;
  readonly startHere?: boolean;
  /** On the lines there are: told in the list beside what they advise. */
  readonly verdicts?: readonly LineVerdict[];
  /** Enter goes on past the button for another seed. */
  readonly rare?: boolean;
  /** Whose seeds, for a screen reader: "all jars", "jar b". */
  readonly of: string;
}) {
  return (
    <Rows
      items={seeds}
      kind="seed"
      of={of}
      fresh={noSeed}
      isEmpty={isEmptySeed}
      rare={rare}
      onChange={onChange}
    >
      {(seed, at, added) => (
        <SeedRow
          name={at === 0 ? 'Seeded from' : 'And from'}
          seed={seed}
          path={`${path}.${at}`}
          problems={problems}
          reader={reader}
          notAfter={notAfter}
          packages={packages}
          verdicts={verdicts}
          startHere={(startHere && at === 0) || added}
          onChange={(next) => onChange(seeds.with(at, next))}
        />
      )}
    </Rows>
  );
}
