// A tasting is planned: which jars, how it is asked, who tastes and what they avoid, who pours; and before anyone tastes it is said
// what so many tasters can tell at all.
import { useState } from 'react';
import type { Input, Reply } from '../../core/contract';
import { CheckField, ChoiceField, SelectField, TextField } from '../parts/fields';
import { Form } from '../parts/form';
import { FormEnd } from '../parts/form-end';
import { useDraft } from '../parts/use-draft';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { go } from '../state/store';
import { useRead } from '../state/use-read';
import type { Taster, Trial } from './trial-types';

type Task = 'rank' | 'pair' | 'triangle';

interface Person {
  /** null: not in the ledger yet. */
  readonly id: string | null;
  readonly name: string;
  /** What is newly said, with commas between. */
  readonly avoids: string;
  readonly tastes: boolean;
}

interface Plan {
  readonly jars: readonly string[];
  readonly task: Task;
  readonly people: readonly Person[];
  /** Index in people; '' somebody who does not taste. */
  readonly pours: string;
}

const TASKS: readonly { readonly value: Task; readonly label: string }[] = [
  { value: 'pair', label: 'Which of two is preferred' },
  { value: 'triangle', label: 'Which of three bowls is the other one' },
];

const NOBODY: Person = { id: null, name: '', avoids: '', tastes: true };
const words = (text: string): string[] =>
  text.split(/[,;]/).map((one) => one.trim()).filter((one) => one !== ''); // prettier-ignore
const named = (people: readonly Person[]): Person[] =>
  people.filter(({ name, tastes }) => tastes && name.trim() !== '');

/** What is sent. */
function startOf(trial: string, day: string, { jars, task, people, pours }: Plan, draft: string): Input<'session.start'> {
  const tasters = named(people);
  const pouring = people[Number(pours)];
  return {
    trial,
    day,
    task: jars.length === 2 ? task : 'rank',
    jars: [...jars],
    tasters: tasters.map(({ id, name, avoids }) =>
      id === null ? { name: name.trim(), avoids: words(avoids) } : { id, avoids: words(avoids) },
    ),
    pouredBy: pours === '' || !pouring || !tasters.includes(pouring) ? null : tasters.indexOf(pouring),
    draft,
  };
} // prettier-ignore

interface ReachProps {
  readonly reach: Reply<'trial.reach'> | null;
  readonly task: Task;
  readonly nobody: boolean;
}

/** What so many can tell at all. Its room is kept: what stands below it is being typed. */
function Reach({ reach, task, nobody }: ReachProps) {
  const needed = (reach?.needed ?? []).map(({ of100, tastings }) => `${tastings} for ${of100}`).join(', ');
  const first = nobody ? 'What so many tasters can tell is said here, before anyone tastes.' : reach?.says;
  return (
    <output className="trial-reach">
      <strong>{first}</strong>
      {needed !== '' && !nobody && (
        <span className="soft small">
          {task === 'triangle'
            ? `Tastings it takes to find what so many of 100 can truly tell: ${needed}.`
            : `Tastings of two jars it takes to find what so many of 100 prefer: ${needed}.`}
        </span>
      )}
    </output>
  );
}

/** Who tastes: those of the ledger, and whoever is new. */
function People({
  people,
  known,
  onChange,
}: {
  readonly people: readonly Person[];
  readonly known: ReadonlyMap<string, Taster>;
  readonly onChange: (people: readonly Person[]) => void;
}) {
  const put = (at: number, change: Partial<Person>): void => {
    const next = people.map((one, i) => (i === at ? { ...one, ...change } : one));
    const last = next.at(-1);
    // There is always an empty row for one more.
    onChange(last && last.id === null && last.name.trim() === '' ? next : [...next, NOBODY]);
  };
  return (
    <ul className="trial-people" aria-label="Who tastes">
      {people.map((person, at) => {
        const noted = person.id === null ? [] : (known.get(person.id)?.avoids ?? []);
        const who = person.name.trim() === '' ? 'that taster' : person.name.trim();
        return (
          <li key={person.id ?? `new ${at}`}>
            {person.id === null ? (
              <TextField
                label={at === 0 ? 'A taster' : 'One more taster'}
                value={person.name}
                onChange={(name) => put(at, { name })}
              />
            ) : (
              <CheckField
                label={person.name}
                checked={person.tastes}
                onChange={(tastes) => put(at, { tastes })}
              />
            )}
            <TextField
              label={`What ${who} avoids`}
              value={person.avoids}
              placeholder="nuts, gluten …"
              hint={noted.length > 0 ? `Noted: ${noted.join(', ')}` : undefined}
              onChange={(avoids) => put(at, { avoids })}
            />
          </li>
        );
      })}
    </ul>
  );
}

export function StartTasting({ trial, tasters }: { readonly trial: Trial; readonly tasters: readonly Taster[] }) {
  const { today } = useReader();
  const { id, batchLabel, treatments, cautions, expected } = trial;
  const key = `tasting:${id}`;
  const may = treatments.filter(({ not }) => not === null).map(({ jar }) => jar);
  const [initial] = useState<Plan>(() => ({
    jars: may,
    task: 'pair',
    people: [...tasters.map(({ id: taster, name }) => ({ id: taster, name, avoids: '', tastes: true })), NOBODY],
    pours: '',
  }));
  const draft = useDraft<Plan>(key, { says: `tasting of ${batchLabel}`, screen: 'trials', focus: `start:${id}` }, initial);
  const [refused, refuse] = useState<string | null>(null);
  const plan = draft.text;
  const count = plan ? named(plan.people).length : 0;
  const task = plan === null || plan.jars.length !== 2 ? 'rank' : plan.task;
  const ordered = expected !== null && treatments.every(({ dose }) => dose !== null) && treatments.length > 2 && plan?.jars.length === treatments.length;
  const reach = useRead('trial.reach', plan === null || plan.jars.length < 2 || count === 0 ? null : { task, tasters: count, jars: plan.jars.length, ordered });
  if (plan === null) return <div aria-busy="true" />;
  const begin = async (): Promise<void> => {
    if (count === 0) return refuse('Say who tastes.');
    if (plan.jars.length < 2) return refuse('Choose two jars at least.');
    draft.close();
    const answer = await call('session.start', startOf(id, today, plan, key));
    if (answer.ok) return go('trials', `session:${answer.value.session}`);
    draft.reopen();
    return refuse(answer.sentence);
  };
  return (
    <>
      <header>
        <p className="soft">{batchLabel}</p>
        <h1>A tasting</h1>
      </header>
      <Form label={`Tasting of ${batchLabel}`} record={() => void begin()} leave={() => go('trials', `trial:${id}`)} wrong={0}>
        <fieldset className="choices">
          <legend className="label">Jars</legend>
          <div className="choice-row">
            {treatments.filter(({ not }) => not === null).map(({ jar, label, name }) => (
              <CheckField
                key={jar}
                label={`${label}, ${name}`}
                checked={plan.jars.includes(jar)}
                onChange={(checked) => draft.set({ ...plan, jars: may.filter((one) => (one === jar ? checked : plan.jars.includes(one))) })}
              />
            ))}
          </div>
        </fieldset>
        {treatments.filter(({ not }) => not !== null).map(({ jar, not }) => <p key={jar} className="soft small">{not}</p>)}
        {plan.jars.length === 2 && (
          <ChoiceField
            label="What is asked"
            value={plan.task === 'rank' ? 'pair' : plan.task}
            choices={TASKS}
            unsaid={null}
            onChange={(next) => draft.set({ ...plan, task: next === 'triangle' ? 'triangle' : 'pair' })}
          />
        )}
        {plan.jars.length > 1 && <Reach reach={reach?.ok ? reach.value : null} task={plan.task} nobody={count === 0} />}
        {cautions.map((caution) => <p key={caution}>{caution}</p>)}
        <People people={plan.people} known={new Map(tasters.map((one) => [one.id, one]))} onChange={(people) => draft.set({ ...plan, people })} />
        <div className="fields">
        <SelectField
          label="Who pours"
          value={plan.pours}
          choices={[
            { value: '', label: 'Somebody who does not taste' },
            ...plan.people.flatMap(({ name, tastes }, at) => (tastes && name.trim() !== '' ? [{ value: String(at), label: `${name.trim()}, who tastes too: not blind` }] : [])),
          ]}
          hint="Whoever pours knows which jar is which, and so does not taste."
          onChange={(pours) => draft.set({ ...plan, pours })}
        />
        </div>
        <FormEnd refused={refused} yes="Draw the codes" onLeave={() => void draft.drop().then(() => go('trials', `trial:${id}`))} />
      </Form>
    </>
  );
} // prettier-ignore
