// A batch becomes a trial: what its jars differ in is read from what is noted, and can be named otherwise.
import { useRef } from 'react';
import type { Reply } from '../../core/contract';
import { EditForm } from '../parts/edit-form';
import { TextField } from '../parts/fields';
import { call } from '../state/ledger-calls';
import { go } from '../state/store';
import { useRead } from '../state/use-read';
import { grainsOf } from './grains';
import { TrialHead } from './trial-head';
import { TrialJars } from './trial-jars';

type Proposal = Reply<'trial.propose'>;

interface Named {
  readonly differsIn: string;
  readonly names: readonly string[];
}

function NameIt({ proposal }: { readonly proposal: Proposal }) {
  const { batch, label, differsIn, treatments } = proposal;
  const saved = useRef(false);
  const initial: Named = { differsIn: differsIn ?? '', names: treatments.map(({ name }) => name) };
  return (
    <EditForm
      label={`New trial of ${label}`}
      draftKey={`trial:${batch}`}
      place={{ says: `trial of ${label}`, screen: 'trials', focus: `batch:${batch}` }}
      initial={initial}
      askWhy={false}
      save="Make it a trial"
      saved={`Made ${label} a trial. Undo takes it back.`}
      onDone={() => go('trials', saved.current ? `batch:${batch}` : null)}
      read={(text) => ({
        problems: new Map(
          [text.differsIn, ...text.names].flatMap((one, at) =>
            one.trim() === '' ? [[String(at), 'Say this in a word or two.']] : [],
          ),
        ),
        send: async (_why, draft) => {
          const answer = await call('trial.save', {
            batch,
            differsIn: text.differsIn.trim(),
            treatments: treatments.map(({ jar, dose }, at) => ({ jar, dose, name: text.names[at]?.trim() ?? '' })),
            draft,
          });
          saved.current = answer.ok;
          return answer;
        },
      })}
    >
      {(text, set, problems) => (
        <div className="fields">
          <TextField
            label="They differ in"
            value={text.differsIn}
            problem={problems.get('0')}
            onChange={(next) => set({ ...text, differsIn: next })}
          />
          {treatments.map((jar, at) => (
            <TextField
              key={jar.jar}
              label={jar.label}
              value={text.names[at] ?? ''}
              problem={problems.get(String(at + 1))}
              onChange={(next) => set({ ...text, names: text.names.with(at, next) })}
            />
          ))}
        </div>
      )}
    </EditForm>
  );
} // prettier-ignore

export function NewTrial({ batch }: { readonly batch: string }) {
  const answer = useRead('trial.propose', { batch });
  if (answer === null) return <div aria-busy="true" />;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  const { label, says, cautions, treatments } = answer.value;
  return (
    <>
      <TrialHead called={`A trial of ${label}`} says={says} batch={batch} />
      {treatments.length > 0 && <TrialJars jars={treatments} grains={grainsOf(treatments)} />}
      {cautions.map((caution) => (
        <p key={caution} className="soft small">
          {caution}
        </p>
      ))}
      {treatments.length > 0 && <NameIt proposal={answer.value} />}
    </>
  );
}
