// Going back to a backup: each with what would be gone and what would be there again. What is there now becomes a backup itself,
// so going back can be taken back the same way.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { useReader } from '../parts/use-reader';
import { startJob } from '../state/ledger-calls';
import { say } from '../state/store';
import { JobLine, OutPanel } from './out-panel';
import { useJob } from './use-job';

type Backup = Reply<'ledger.backups'>['backups'][number];

const pad = (n: number): string => String(n).padStart(2, '0');

/** A moment by the clock of this machine: "2026-05-03T09:30". */
function here(moment: string): string {
  const at = new Date(moment);
  const day = `${at.getFullYear()}-${pad(at.getMonth() + 1)}-${pad(at.getDate())}`;
  return `${day}T${pad(at.getHours())}:${pad(at.getMinutes())}`;
}

const counted = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** What going back to a backup would do to what is there now. */
function Difference({ backup: { gone, says, again } }: { readonly backup: Backup }) {
  if (gone === 0 && again === 0) return <p className="soft">Holds all that the ledger holds now.</p>;
  const more = gone - says.length;
  return (
    <>
      {gone > 0 && (
        <>
          <p>
            {counted(
              gone,
              'thing that was done since would be gone:',
              'things that were done since would be gone:',
            )}
          </p>
          <ul>
            {says.map((words, at) => (
              <li key={at}>{words}</li>
            ))}
            {more > 0 && (
              <li>
                and {more} before {more === 1 ? 'it' : 'them'}
              </li>
            )}
          </ul>
        </>
      )}
      {again > 0 && (
        <p>
          {counted(
            again,
            'thing that only it holds would be there again.',
            'things that only it holds would be there again.',
          )}
        </p>
      )}
    </>
  );
}

async function listed(): Promise<readonly Backup[]> {
  const answer = await startJob('ledger.backups', {}).done;
  if (!answer.ok) say(answer.sentence, 'caution');
  return answer.ok ? answer.value.backups : [];
}

export function GoBack() {
  const job = useJob();
  const { writer } = useReader();
  const [backups, setBackups] = useState<readonly Backup[] | null>(null);
  useEffect(() => {
    let wanted = true;
    void listed().then((all) => wanted && setBackups(all));
    return () => {
      wanted = false;
    };
  }, []);
  const busy = job.progress !== null;
  const goBack = async (backup: Backup, when: string): Promise<void> => {
    const done = await job.run('ledger.restore', { backup: backup.file });
    if (done.ok)
      say(
        `The ledger is as it was on ${when}. What it held until now is a backup too, so you can go back again.`,
      );
    else say(done.sentence, 'caution');
    // What was there before is among them now.
    setBackups(await listed());
  };
  return (
    <OutPanel title="Go back to a backup">
      <p>
        One is made on each day with something new, and by File, Back up now. What is in the ledger now
        becomes a backup before you go back, so nothing is lost by it.
      </p>
      {backups?.length === 0 && <p className="soft">There is no backup of this ledger yet.</p>}
      <ul className="out-list stack">
        {backups?.map((backup) => {
          const when = writer.moment(here(backup.madeAt));
          return (
            <li key={backup.file} className="stack">
              <h3>
                {when} · {counted(backup.jars, 'jar', 'jars')}
              </h3>
              <Difference backup={backup} />
              {(backup.gone > 0 || backup.again > 0) && (
                <div className="row">
                  <button
                    className="button"
                    type="button"
                    aria-label={`Go back to this one: ${when}`}
                    disabled={busy}
                    onClick={() => void goBack(backup, when)}
                  >
                    Go back to this one
                  </button>
                </div>
              )}
            </li>
          );
        })}
      </ul>
      <JobLine job={job} />
    </OutPanel>
  );
}
