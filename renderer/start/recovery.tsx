// A ledger that can't be opened: what happened, what is safe, and the ways out. Nothing here changes the file itself.
import { useState, type ReactNode } from 'react';
import type { AppState, Input } from '../../core/contract';
import { startJob } from '../state/ledger-calls';
import { say } from '../state/store';

type Trouble = NonNullable<AppState['trouble']>;
type How = Input<'ledger.recover'>['how'];

const titles: Record<Trouble['kind'], string> = {
  damaged: 'This ledger is damaged',
  newer: 'This ledger is from a newer Jarline',
  older: 'This ledger was made before the first release',
  foreign: 'This file is not a ledger',
  unreadable: 'This ledger can’t be opened',
};

/** A backup's moment as people write it, in the clock it was made by: "3 May 2026, 09:30". */
function backupMoment(moment: string): string {
  const months =
    'January February March April May June July August September October November December'.split(' ');
  const [year, month, day] = moment.slice(0, 10).split('-').map(Number);
  return `${day} ${months[(month ?? 1) - 1]} ${year}, ${moment.slice(11, 16)}`;
}

/** One way out: what it is, what it does, and its buttons. */
function Way({
  name,
  says,
  children,
}: {
  readonly name: string;
  readonly says: string;
  readonly children: ReactNode;
}) {
  return (
    <li className="way">
      <div>
        <h2>{name}</h2>
        <p className="soft">{says}</p>
      </div>
      {children}
    </li>
  );
}

/** The recovery screen. */
export function Recovery({ trouble }: { readonly trouble: Trouble }) {
  const [busy, setBusy] = useState<string | null>(null);
  // The newest by what it holds comes first; the moments are only what the clock said.
  const [newest] = trouble.backups;

  const recover = async (how: How, says: string): Promise<void> => {
    if (busy !== null) return;
    setBusy(says);
    const answer = await startJob('ledger.recover', { how }).done;
    setBusy(null);
    if (!answer.ok) say(answer.sentence, 'caution');
  };
  const other = async (name: 'ledger.open' | 'ledger.create'): Promise<void> => {
    if (busy !== null) return;
    setBusy('Opening…');
    const answer = await startJob(name, { file: null }).done;
    setBusy(null);
    if (!answer.ok) say(answer.sentence, 'caution');
  };

  return (
    <div className="start recovery">
      <div className="start-words">
        <h1>{titles[trouble.kind]}</h1>
        <p className="start-for">{trouble.sentence}</p>
        <p>
          <span className="soft">The file, as it was left: </span>
          <span className="file">{trouble.file}</span>
        </p>
      </div>
      <ul className="ways">
        {newest && (
          <Way
            name="Open the newest good backup"
            says={
              `From ${backupMoment(newest.madeAt)}, with ${newest.jars} ${newest.jars === 1 ? 'jar' : 'jars'}. ` +
              'The file above is set aside and kept. What was recorded after that moment is not in the backup.'
            }
          >
            <button
              className="button primary"
              type="button"
              aria-disabled={busy !== null || undefined}
              onClick={() => void recover('newest backup', 'Opening the backup…')}
            >
              Open the backup
            </button>
          </Way>
        )}
        {trouble.kind === 'damaged' && (
          <Way
            name="Save what can be read"
            says="Reads every record that is still whole into a new ledger beside the old one, and opens it."
          >
            <button
              className={newest ? 'button' : 'button primary'}
              type="button"
              aria-disabled={busy !== null || undefined}
              onClick={() => void recover('save what can be read', 'Reading what is still whole…')}
            >
              Save what can be read
            </button>
          </Way>
        )}
        <Way name="Show the folder" says="To copy the file somewhere safe, or to look for an older one.">
          <button
            className="button"
            type="button"
            onClick={() => void recover('show folder', 'Showing the folder…')}
          >
            Show the folder
          </button>
        </Way>
        <Way name="Use another ledger" says="This one stays where it is, untouched.">
          <div className="row">
            <button className="button" type="button" onClick={() => void other('ledger.open')}>
              Open another…
            </button>
            <button className="button" type="button" onClick={() => void other('ledger.create')}>
              Start an empty one…
            </button>
          </div>
        </Way>
      </ul>
      <p className="start-other" aria-live="polite">
        {busy}
      </p>
    </div>
  );
}
