// A jar is handed over: unread remarks are answered first, then it is shown what goes with it and what stays, then the file is saved.
import { useState } from 'react';
import type { Refusal } from '../../core/contract';
import { TextField, CheckField } from '../parts/fields';
import { FoodCaution } from '../parts/food-caution';
import { Remarks } from '../parts/unanswered';
import { useReader } from '../parts/use-reader';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { AboutGiven } from './about-given';
import { JobLine, OutPanel } from './out-panel';
import { showOut } from './out-shown';
import { useJob } from './use-job';

const squeezed = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

/** What stops it, with the remarks that are to be answered right here: its own, and the one further up that it is stopped by. */
function Stopped({
  jar,
  refused,
}: {
  readonly jar: string;
  readonly refused: { readonly error: Refusal; readonly sentence: string };
}) {
  const answer = useRead('remarks.list', { limit: 1000 });
  const { text } = refused.error.params;
  const open = (answer?.ok === true ? answer.value.remarks : []).filter(
    (one) => one.jars.some(({ id }) => id === jar) || squeezed(one.text).slice(0, 200) === text,
  );
  return (
    <>
      <p role="alert">{refused.sentence}</p>
      <Remarks open remarks={open.map(({ about: _about, ...one }) => one)} />
    </>
  );
}

export function GiveJar({ jar, label }: { readonly jar: string; readonly label: string }) {
  const [to, setTo] = useState('');
  const [typed, setTyped] = useState('');
  const [privately, setPrivately] = useState(false);
  const job = useJob();
  const { reader } = useReader();
  const include = privately ? (['private remarks'] as const) : ([] as const);
  const answer = useRead('handOver.about', { jar, include: [...include] });
  const amount = reader.amount(typed, 'volume');
  const save = async (): Promise<void> => {
    const done = await job.run('handOver.write', {
      jar,
      file: { name: `${label}.jarline-jar` },
      include: [...include],
      to: to.trim() === '' ? null : to.trim(),
      amount: amount.ok ? amount.value : null,
    });
    if (done.ok) {
      showOut(null);
      say(`Saved as ${done.value.file}. Give it along with the jar.`);
    } else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  const sheet = async (): Promise<void> => {
    const report = { of: 'jar', jar, paper: 'A4' } as const;
    const done = await job.run('report.print', { report, file: { name: `${label} sheet.pdf` } });
    if (done.ok) say(`Saved as ${done.value.file}.`);
    else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  return (
    <OutPanel title={`Hand over ${label}`}>
      {answer?.ok === false && <Stopped jar={jar} refused={answer} />}
      {answer?.ok === true && (
        <>
          <p>
            A small file goes with the jar, so that its next keeper’s ledger goes on where yours is:{' '}
            {answer.value.jars === 1 ? 'this jar' : `this jar and ${answer.value.jars - 1} before it`}.
          </p>
          <AboutGiven about={answer.value.about} />
          <p className="soft">
            Stays here: tasters and their marks, anyone’s health, private remarks, prices, shops, places,
            photographs and all other jars.
          </p>
          <TextField
            label="Whom it goes to"
            width="full"
            value={to}
            hint="Kept here and never in the file, so that a later caution can say whom to tell. Empty: nothing is recorded as given."
            onChange={setTo}
          />
          <TextField
            label="How much of it"
            value={typed}
            placeholder="all of it"
            read={amount}
            onChange={setTyped}
          />
          <CheckField label="Private remarks go along too" checked={privately} onChange={setPrivately} />
          <FoodCaution className="soft small" />
          <div className="row">
            <button
              className="button primary"
              type="button"
              disabled={job.progress !== null || !amount.ok}
              onClick={() => void save()}
            >
              Save the file…
            </button>
            <button
              className="button"
              type="button"
              disabled={job.progress !== null}
              onClick={() => void sheet()}
            >
              Save a sheet to print…
            </button>
          </div>
          <JobLine job={job} />
        </>
      )}
    </OutPanel>
  );
}
