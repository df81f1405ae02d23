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
import type { Taster, Trial, TrialJar } from './trial-types';

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

interface JarsProps {
  readonly treatments: readonly TrialJar[];
  readonly jars: readonly string[];
  readonly onChange: (jars: readonly string[]) => void;
}

/** Which jars are tasted; those that nobody tastes yet say why. */
function Jars({ treatments, jars, onChange }: JarsProps) {
  const may = treatments.filter(({ not }) => not === null);
  return (
    <>
      <fieldset className="choices">
        <legend className="label">Jars</legend>
        <div className="choice-row">
          {may.map(({ jar, label, name, gone }) => (
            <CheckField
              key={jar}
              label={`${label}, ${name}${gone ? ' (nothing left)' : ''}`}
              checked={jars.includes(jar)}
              onChange={(checked) =>
                onChange(
                  may.map((one) => one.jar).filter((one) => (one === jar ? checked : jars.includes(one))),
                )
              }
            />
          ))}
        </div>
      </fieldset>
      {treatments.map(
        ({ jar, not }) =>
          not !== null && (
            <p key={jar} className="soft small">
              {not}
            </p>
          ),
      )}
    </>
  );
}

interface PouringProps {
  readonly plan: Plan;
  readonly onChange: (pours: string) => void;
}

/** Who pours: of those who taste, it is said that it is not blind. */
function Pouring({ plan, onChange }: PouringProps) {
  const tasting = plan.people.flatMap(({ name, tastes }, at) =>
    tastes && name.trim() !== ''
      ? [{ value: String(at), label: `${name.trim()}, who tastes too: not blind` }]
      : [],
  );
  return (
    <div className="fields">
      <SelectField
        label="Who pours"
        value={plan.pours}
        choices={[{ value: '', label: 'Somebody who does not taste' }, ...tasting]}
        hint="Whoever pours knows which jar is which, and so does not taste."
        onChange={onChange}
      />
    </div>
  );
}

/** Whether the chosen jars are doses in an order that was expected. */
const inDoses = ({ expected, treatments }: Trial, jars: readonly string[]): boolean =>
  expected !== null &&
  treatments.length > 2 &&
  treatments.every(({ jar, dose }) => dose !== null && jars.includes(jar));

interface Props {
  readonly trial: Trial;
  readonly tasters: readonly Taster[];
}

/** What can be told by what is planned; null until there is something to ask. */
function useReach(trial: Trial, plan: Plan | null): Reply<'trial.reach'> | null {
  const count = plan === null ? 0 : named(plan.people).length;
  const ask = plan !== null && plan.jars.length > 1 && count > 0;
  const answer = useRead(
    'trial.reach',
    ask
      ? {
          task: plan.jars.length === 2 ? plan.task : 'rank',
          tasters: count,
          jars: plan.jars.length,
          ordered: inDoses(trial, plan.jars),
        }
      : null,
  );
  return answer?.ok ? answer.value : null;
}

export function StartTasting({ trial, tasters }: Props) {
  const { today } = useReader();
  const { id, batchLabel, treatments, cautions } = trial;
  const key = `tasting:${id}`;
  const [initial] = useState<Plan>(() => ({
    jars: treatments.filter(({ not, gone }) => not === null && !gone).map(({ jar }) => jar),
    task: 'pair',
    people: [...tasters.map((one) => ({ id: one.id, name: one.name, avoids: '', tastes: true })), NOBODY],
    pours: '',
  }));
  const place = { says: `tasting of ${batchLabel}`, screen: 'trials', focus: `start:${id}` };
  const draft = useDraft<Plan>(key, place, initial);
  const [refused, refuse] = useState<string | null>(null);
  const plan = draft.text;
  const reach = useReach(trial, plan);
  if (plan === null) return <div aria-busy="true" />;
  const back = (): void => go('trials', `trial:${id}`);
  const change = (some: Partial<Plan>): void => draft.set({ ...plan, ...some });
  const count = named(plan.people).length;
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
      <Form label={`Tasting of ${batchLabel}`} record={() => void begin()} leave={back} wrong={0}>
        <Jars treatments={treatments} jars={plan.jars} onChange={(jars) => change({ jars })} />
        {plan.jars.length === 2 && (
          <ChoiceField
            label="What is asked"
            value={plan.task === 'rank' ? 'pair' : plan.task}
            choices={TASKS}
            unsaid={null}
            onChange={(task) => change({ task: task === 'triangle' ? 'triangle' : 'pair' })}
          />
        )}
        {plan.jars.length > 1 && <Reach reach={reach} task={plan.task} nobody={count === 0} />}
        {cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
        <People
          people={plan.people}
          known={new Map(tasters.map((one) => [one.id, one]))}
          onChange={(people) => change({ people })}
        />
        <Pouring plan={plan} onChange={(pours) => change({ pours })} />
        <FormEnd refused={refused} yes="Draw the codes" onLeave={() => void draft.drop().then(back)} />
      </Form>
    </>
  );
}
