// The making card of a planned batch: large enough to be read at arm's length and ticked with one wet thumb, or printed.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { useModal } from '../parts/use-modal';
import { startJob } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';

type Card = Reply<'batch.card'>;

/** A step with its box. Ticks are for the hand alone: nothing is recorded by them. */
function Step({ says }: { readonly says: string }) {
  return (
    <li>
      <label className="card-step">
        <input type="checkbox" />
        <span>{says}</span>
      </label>
    </li>
  );
}

/** What goes into each jar, a row each. */
function Jars({ jars }: Pick<Card, 'jars'>) {
  return (
    <ul className="card-jars">
      {jars.map(({ letter, seed, stirredIn, milk }) => (
        <li key={letter}>
          <label className="card-step">
            <input type="checkbox" />
            <span>
              <strong>{letter}</strong> {[stirredIn, milk, seed].filter(Boolean).join(' · ')}
            </span>
          </label>
        </li>
      ))}
    </ul>
  );
}

/** Sends it to the printer, or saves it as a PDF. */
async function print(batch: string, title: string, onPaper: boolean): Promise<void> {
  const file = onPaper ? null : { name: `${title.replaceAll(':', '')}.pdf` };
  const report = { of: 'making card' as const, batch, paper: paperHere() };
  const done = await startJob('report.print', { report, file }, () => undefined).done;
  if (done.ok) say(done.value.file === null ? 'Sent to the printer.' : `Saved as ${done.value.file}.`);
  else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
}

/** Letter where that is what printers hold (CLDR, paper size; from memory), else A4 (ISO 216). */
const paperHere = (): 'A4' | 'Letter' =>
  /-(US|CA|MX|PH|CL|CO|CR|GT|PA|PR|SV|VE)\b/.test(navigator.language) ? 'Letter' : 'A4';

function Shown({
  batch,
  card,
  onClose,
}: {
  readonly batch: string;
  readonly card: Card;
  readonly onClose: () => void;
}) {
  const dialog = useModal();
  const { title, intro, parts, jars, cautions } = card;
  return (
    <dialog ref={dialog} className="making-card" aria-labelledby="making-card" onClose={onClose}>
      <div className="help-head">
        <h2 id="making-card">{title}</h2>
        <button type="button" className="button" onClick={() => void print(batch, title, false)}>
          Save as PDF…
        </button>
        <button type="button" className="button" onClick={() => void print(batch, title, true)}>
          Print…
        </button>
        <button type="button" className="button primary" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <p className="soft">{intro}</p>
      {parts.map(({ head, steps }) => (
        <section key={head}>
          <h3>{head}</h3>
          <ol>
            {steps.map((says) => (
              <Step key={says} says={says} />
            ))}
          </ol>
          {head === 'Milk and what is stirred in' && <Jars jars={jars} />}
        </section>
      ))}
      <section className="notice caution stack" aria-label="Cautions">
        {cautions.map((says) => (
          <p key={says}>{says}</p>
        ))}
      </section>
    </dialog>
  );
}

/** The button that opens it. */
export function MakingCard({ batch }: { readonly batch: string }) {
  const [open, setOpen] = useState(false);
  const answer = useRead('batch.card', open ? { id: batch } : null);
  return (
    <>
      <button type="button" className="button" onClick={() => setOpen(true)}>
        Making card
      </button>
      {open && answer?.ok === true && (
        <Shown batch={batch} card={answer.value} onClose={() => setOpen(false)} />
      )}
      {open && answer?.ok === false && <p className="notice caution">{answer.sentence}</p>}
    </>
  );
}
