// A jar that came with a hand-over: the file is shown before anything enters, comes in as one act, and what says otherwise than
// this ledger does stands side by side until the keeper decides.
import { useEffect, useRef, useState } from 'react';
import type { Reply } from '../../core/contract';
import { TextField } from '../parts/fields';
import { FoodCaution } from '../parts/food-caution';
import { PickFile } from '../parts/pick-file';
import type { Read } from '../parts/reading';
import type { HandedJar } from '../state/ledger-calls';
import { say } from '../state/store';
import { AboutGiven } from './about-given';
import { Contradictions } from './contradictions';
import { JobLine, OutPanel } from './out-panel';
import { type Running, useJob } from './use-job';

interface Chosen {
  readonly file: HandedJar;
  readonly preview: Reply<'handOver.preview'>;
}

/** Hours as they are typed, with a point or a comma; null where nothing is. */
function hoursOf(typed: string): Read<number | null> {
  const text = typed.trim().replace(',', '.');
  if (text === '') return { ok: true, value: null, echo: null };
  const hours = /^\d{1,3}(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  return Number.isNaN(hours) ? { ok: false, sentence: 'Type hours as a number, such as 1.5.' } : { ok: true, value: hours, echo: null };
} // prettier-ignore

const nothingNew = ({ added, renewed, waiting }: Reply<'handOver.preview'>): boolean =>
  added + renewed + waiting === 0;

function Preview({
  chosen,
  job,
  onTaken,
}: {
  readonly chosen: Chosen;
  readonly job: Running;
  readonly onTaken: () => void;
}) {
  const { preview, file } = chosen;
  const [typed, setTyped] = useState('');
  const hours = hoursOf(typed);
  const take = async (): Promise<void> => {
    const done = await job.run('handOver.read', { file, hoursOut: hours.ok ? hours.value : null });
    if (!done.ok) say(done.sentence, 'caution');
    else {
      say(`${preview.about.label} and its ancestry are in your ledger. Undo takes them out again.`);
      onTaken();
    }
  };
  return (
    <>
      <h3>{preview.about.label}</h3>
      <p>
        {nothingNew(preview)
          ? 'All of it is in your ledger already.'
          : `${preview.jars === 1 ? 'One jar' : `${preview.jars} jars`}, ${preview.added} ${preview.added === 1 ? 'record' : 'records'} new to your ledger.`}{' '}
        {preview.waiting > 0 &&
          `${preview.waiting} ${preview.waiting === 1 ? 'says' : 'say'} otherwise than yours: you decide on each afterwards, yours stays until then.`}
      </p>
      <AboutGiven about={preview.about} />
      <p className="soft">As its giver wrote it down.</p>
      <TextField
        label="Hours out of the cold on its way here"
        width="short"
        numeric
        value={typed}
        read={hours}
        hint="If nobody knows, leave it empty: the jar is then to be looked at first."
        onChange={setTyped}
      />
      <FoodCaution className="soft small" />
      <div className="row">
        <button
          className="button primary"
          type="button"
          disabled={job.progress !== null || nothingNew(preview) || !hours.ok}
          onClick={() => void take()}
        >
          Take it in
        </button>
      </div>
    </>
  );
}

/** @param handed a file that the system handed to the program: looked at as if it had been chosen here */
export function ReceiveJar({ handed }: { readonly handed: HandedJar | null }) {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const job = useJob();
  const look = async (file: HandedJar): Promise<void> => {
    const answer = await job.run('handOver.preview', { file });
    setTrouble(answer.ok ? null : answer.sentence);
    setChosen(answer.ok ? { file, preview: answer.value } : null);
  };
  const seen = useRef<HandedJar | null>(null);
  useEffect(() => {
    if (handed === null || handed === seen.current) return;
    seen.current = handed;
    void look(handed);
  });
  return (
    <OutPanel title="Receive a jar">
      <p>
        Its giver has a small file that goes with it. You see what is in it before anything comes in, and
        undoing takes it all back.
      </p>
      <div className="row">
        <PickFile
          says="Choose its file…"
          accept=".jarline-jar,.json,application/json"
          disabled={job.progress !== null}
          onFile={(file) =>
            void file.arrayBuffer().then((read) => look({ name: file.name, bytes: new Uint8Array(read) }))
          }
        />
      </div>
      <JobLine job={job} />
      {trouble !== null && (
        <p className="notice" role="alert">
          {trouble}
        </p>
      )}
      {chosen !== null && <Preview chosen={chosen} job={job} onTaken={() => setChosen(null)} />}
      <Contradictions />
    </OutPanel>
  );
}
