// Appliances that keep warm, each with what its newest run proves; a new one; and the checks of tools beside them.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { SelectField, TextField } from '../parts/fields';
import { FormEnd } from '../parts/form-end';
import { Form } from '../parts/form';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { ProofFigures } from './proof-figures';
import { ProveForm } from './prove-form';
import { ToolChecks } from './note-checks';

type Appliance = Reply<'appliance.list'>['appliances'][number];
const TYPES = [
  { value: 'bath', label: 'Water bath' },
  { value: 'box', label: 'Box' },
  { value: 'cooker', label: 'Cooker' },
  { value: 'other', label: 'Something else' },
] as const;
type Type = (typeof TYPES)[number]['value'];

function NameForm({ of, onDone }: { readonly of: Appliance | null; readonly onDone: () => void }) {
  const [name, setName] = useState(of?.name ?? '');
  const [type, setType] = useState<Type>(of?.type ?? 'bath');
  const [wrong, setWrong] = useState(0);
  const [refused, refuse] = useState<string | null>(null);
  const record = async (): Promise<void> => {
    if (name.trim() === '') {
      setWrong(wrong + 1);
      return;
    }
    const answer = await call('appliance.save', {
      appliance: { id: of?.id ?? null, name: name.trim(), type },
    });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say(`Saved ${name.trim()}.`);
    onDone();
  };
  return (
    <Form label="An appliance" record={() => void record()} leave={onDone} wrong={wrong} startHere>
      <div className="fields">
        <TextField
          label="Name"
          value={name}
          startHere
          problem={wrong > 0 && name.trim() === '' ? 'Give it a name, such as “Blue bath”.' : undefined}
          onChange={setName}
        />
        <SelectField label="What it is" value={type} choices={TYPES} onChange={setType} />
      </div>
      <FormEnd refused={refused} yes="Save" onLeave={onDone} />
    </Form>
  );
}

function One({ one }: { readonly one: Appliance }) {
  const [open, setOpen] = useState<'name' | 'run' | null>(null);
  const done = (): void => setOpen(null);
  const held =
    one.holds === 0
      ? 'No hold is noted in it yet.'
      : `${one.holds === 1 ? 'One hold' : `${one.holds} holds`} in it.`;
  return (
    <article className="stack appliance" aria-label={one.name}>
      <header className="hold-read-head">
        <h2>{one.name}</h2>
        <p className="soft small">{held}</p>
        <div className="row">
          <button type="button" className="button quiet" onClick={() => setOpen('name')}>
            Rename
          </button>
          <button type="button" className="button" onClick={() => setOpen('run')}>
            {one.proof === null ? 'Prove it by a run' : 'Another run'}
          </button>
        </div>
      </header>
      {open === 'name' && <NameForm of={one} onDone={done} />}
      {open === 'run' && <ProveForm appliance={one.id} name={one.name} onDone={done} />}
      {one.proof === null ? (
        <p className="soft">Not proven yet: no run of it is noted.</p>
      ) : (
        <ProofFigures proof={one.proof} />
      )}
    </article>
  );
}

export function Appliances() {
  const answer = useRead('appliance.list', {});
  const [adding, add] = useState(false);
  if (answer === null) return null;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  return (
    <div className="stack appliances">
      <section className="stack" aria-label="Appliances">
        <header className="hold-read-head">
          <h1>Appliances</h1>
          {!adding && (
            <div className="row">
              <button type="button" className="button primary" onClick={() => add(true)}>
                New appliance
              </button>
            </div>
          )}
        </header>
        <p className="soft">
          What keeps jars warm is proven once with water or milk, then trusted. A proof is of warmth alone,
          and no proof that what was held in it is safe.
        </p>
        {adding && <NameForm of={null} onDone={() => add(false)} />}
        {answer.value.appliances.map((one) => (
          <One key={one.id} one={one} />
        ))}
      </section>
      <ToolChecks />
    </div>
  );
}
