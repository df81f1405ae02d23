// Whom a jar was handed to, and, where something stands on it since, that they are to be told: with what is known now as a file.
import type { Reply } from '../../core/contract';
import { dayLabel } from '../../core/lineage/labels';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { JobLine } from './out-panel';
import { showOut } from './out-shown';
import { useJob } from './use-job';

type Given = Reply<'handOver.list'>['handOvers'][number];

const whom = ({ to, on }: Given): string =>
  `${to ?? 'somebody'}${on === null ? '' : ` on ${dayLabel(on, true)}`}`;

/** Nothing where it was handed to nobody. */
export function GivenTo({ jar, label }: { readonly jar: string; readonly label: string }) {
  const answer = useRead('handOver.list', {});
  const job = useJob();
  const given = answer?.ok === true ? answer.value.handOvers.filter((one) => one.jar === jar) : [];
  if (given.length === 0) return null;
  const tell = given.some(({ discard, caution }) => discard !== null || caution !== null);
  const save = async (): Promise<void> => {
    const file = { name: `${label} what is known now.jarline-jar` };
    const done = await job.run('handOver.write', { jar, file, followUp: true });
    if (done.ok) say(`Saved as ${done.value.file}. Received, it sets aside what it should there, too.`);
    else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  const names = given.map(whom).join('; ');
  if (!tell) return <p>Given to {names}.</p>;
  return (
    <div className="notice caution stack">
      <p>
        <strong>Tell whom it was given to: {names}.</strong>
      </p>
      <p>They may be about to eat it or to seed from it. What they made of it is touched, too.</p>
      <div className="row">
        <button className="button" type="button" disabled={job.progress !== null} onClick={() => void save()}>
          Save what is known now…
        </button>
        <button className="button" type="button" onClick={() => showOut({ panel: 'reports', kind: 'told' })}>
          A list to print…
        </button>
      </div>
      <JobLine job={job} />
    </div>
  );
}
