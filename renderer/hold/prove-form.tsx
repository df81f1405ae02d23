// A run that proves an appliance: the file of each probe with where it stood, and whether all places were filled.
import { useState } from 'react';
import type { Input } from '../../core/contract';
import { ChoiceField, SelectField } from '../parts/fields';
import { PickFile } from '../parts/pick-file';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { taken, type Taken } from './taken-file';

type Run = Input<'appliance.prove'>['runs'][number];
const STOOD = [
  { value: 'bath centre', label: 'Bath or air, at the centre' },
  { value: 'bath edge', label: 'Bath or air, at the edge' },
  { value: 'jar', label: 'In a jar of water or milk' },
] as const;
type Stood = (typeof STOOD)[number]['value'];

const runOf = ({ file, stood }: Probe): Run => ({
  where: stood === 'jar' ? 'jar' : 'bath',
  spot: stood === 'bath centre' ? 'centre' : stood === 'bath edge' ? 'edge' : null,
  file,
});

interface Probe {
  readonly file: Taken;
  readonly stood: Stood;
}

export function ProveForm({
  appliance,
  name,
  onDone,
}: {
  readonly appliance: string;
  readonly name: string;
  readonly onDone: () => void;
}) {
  const [probes, setProbes] = useState<readonly Probe[]>([]);
  const [filled, setFilled] = useState<'yes' | 'no' | ''>('');
  const [refused, refuse] = useState<string | null>(null);
  const add = (file: File): void =>
    void taken(file).then((next) => {
      if (typeof next === 'string') refuse(next);
      else {
        refuse(null);
        // The first is most likely the centre, the next the edge, then a jar.
        setProbes((before) => [
          ...before,
          { file: next, stood: STOOD[Math.min(before.length, 2)]?.value ?? 'jar' },
        ]);
      }
    });
  const keep = async (): Promise<void> => {
    const answer = await call('appliance.prove', {
      appliance,
      filled: filled === '' ? null : filled === 'yes',
      runs: probes.map(runOf),
    });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say(`${answer.value.proof.says} Undo takes the run back.`);
    onDone();
  };
  return (
    <section className="form stack" aria-label={`Prove ${name} by a run`}>
      <p>
        Fill all places with jars of water or milk. Read for 24 hours with a night in them, every five
        minutes: at the centre, at the edge, and in a jar, if there are probes enough. Nothing of it is eaten.
      </p>
      {probes.map(({ file, stood }, at) => (
        <div key={`${file.name} ${at}`} className="fields">
          <SelectField
            label={file.name}
            value={stood}
            choices={STOOD}
            onChange={(next) => setProbes(probes.with(at, { file, stood: next }))}
          />
          <button type="button" className="button quiet" onClick={() => setProbes(probes.toSpliced(at, 1))}>
            Remove<span className="visually-hidden"> {file.name}</span>
          </button>
        </div>
      ))}
      <div className="row">
        <PickFile
          says={probes.length === 0 ? 'Choose a probe’s file…' : 'Another probe’s file…'}
          primary={probes.length === 0}
          onFile={add}
        />
      </div>
      {probes.length > 0 && (
        <ChoiceField
          label="Were all its places filled?"
          value={filled}
          choices={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
          ]}
          onChange={setFilled}
        />
      )}
      {refused !== null && (
        <p className="notice" role="alert">
          {refused}
        </p>
      )}
      <div className="row">
        {probes.length > 0 && (
          <button type="button" className="button primary" onClick={() => void keep()}>
            Keep the run
          </button>
        )}
        <button type="button" className="button quiet" onClick={onDone}>
          Cancel
        </button>
      </div>
    </section>
  );
}
