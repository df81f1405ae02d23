// One recorded batch, open: its day, its holds, its jars side by side.
import { useEffect, useRef, useState, type RefObject } from 'react';
import type { BatchReply } from '../../core/contract';
import { powerCutOfMates } from '../../core/safety/hold-mates';
import type { Temperature } from '../../core/ledger/basics';
import type { Hold } from '../../core/ledger/records';
import { printTemperature } from '../../core/quantities/printing';
import { go } from '../state/store';
import { useRead } from '../state/use-read';
import { useNow } from '../parts/use-now';
import { usePreferences, useReader } from '../parts/use-reader';
import { AddHold, AddJar } from './add-to-batch';
import { holdText } from './batch-repeat';
import type { Writer } from '../parts/reading';
import { CorrectBatch, CorrectHold } from './batch-corrections';
import { isSetAside } from './is-set-aside';
import { JarView } from './jar-view';
import { OutcomesForm } from './outcomes-sheet';

/** "bath set to 38 °C": the warmth that was planned, and where it is measured. */
function warmthWords({ planned, probe }: Hold, printed: (one: Temperature) => string): string | null {
  const where = probe === null ? null : probe === 'jar' ? 'measured in a jar' : `measured in the ${probe}`;
  if (planned === null) return where;
  if (probe === null || probe === 'jar')
    return [`set to ${printed(planned)}`, where].filter(Boolean).join(', ');
  return `${probe} set to ${printed(planned)}`;
}

function holdWords(hold: Hold, writer: Writer, printed: (one: Temperature) => string): string {
  const text = holdText(hold, writer);
  const times =
    text.started && text.ended
      ? `${text.started} to ${text.ended}`
      : text.started
        ? `from ${text.started}`
        : '';
  const parts = [text.hours && `${text.hours} hours`, times, warmthWords(hold, printed)].filter(Boolean);
  const warmth = parts.length === 0 ? 'Nothing said of the warmth.' : `${parts.join(', ')}.`;
  return text.note === '' ? warmth : `${warmth} ${text.note}`;
}

/** Jars that can be answered together: made, nothing noted yet, nothing that stands against them, no failure that is known. */
const unseenTogether = (
  { jars, interruptions }: BatchReply,
  warm: ReadonlySet<string>,
): BatchReply['jars'] =>
  interruptions.length > 0
    ? []
    : jars.filter(
        (one) =>
          one.jar.state === 'made' &&
          one.outcome === null &&
          one.discard === null &&
          !isSetAside(one) &&
          !warm.has(one.jar.id) &&
          powerCutOfMates(one, jars) === null,
      );

interface HeadProps {
  readonly batch: string;
  readonly label: string;
  readonly heading: RefObject<HTMLHeadingElement | null>;
  /** Several of its jars can be answered together. */
  readonly many: boolean;
  readonly editing: string | null;
  readonly onChoose: (form: string) => void;
}

/** Its name, and what is done with the whole of it. */
function Head({ batch, label, heading, many, editing, onChoose }: HeadProps) {
  return (
    <header className="batch-view-head">
      <h1 ref={heading} tabIndex={-1}>
        {label}
      </h1>
      <div className="row">
        {many && editing !== `outcomes:${batch}` && (
          <button type="button" className="button primary" onClick={() => onChoose(`outcomes:${batch}`)}>
            How they turned out
          </button>
        )}
        <button
          type="button"
          className={many ? 'button' : 'button primary'}
          onClick={() => go('batch', `repeat:${batch}`)}
        >
          Make it again
        </button>
        <button type="button" className="button quiet" onClick={() => onChoose(`batch:${batch}`)}>
          Correct day, word, note
        </button>
        <button type="button" className="button quiet" onClick={() => go('history', `batch:${batch}`)}>
          Its history
        </button>
      </div>
    </header>
  );
}

/** Everything recorded of a batch. */
export function BatchView({ reply, label }: { readonly reply: BatchReply; readonly label: string }) {
  const { batch, holds, jars } = reply;
  const { writer } = useReader();
  const preferences = usePreferences();
  const printed = (one: Temperature): string => printTemperature(one, preferences);
  const drafts = useRead('draft.list', {});
  const { holds: running } = useNow();
  const warm = new Set(running.flatMap((one) => one.jars.map(({ id }) => id)));
  const [chosen, setChosen] = useState<string | null | undefined>(undefined);
  const heading = useRef<HTMLHeadingElement>(null);
  const ready = drafts !== null;
  useEffect(() => {
    // A batch that opens is read from its top, unless an unfinished form in it has the keyboard.
    if (ready && !document.activeElement?.closest('form')) heading.current?.focus();
  }, [ready]);
  // Wait for the drafts, so that an unfinished form opens by itself and no later save closes it.
  if (drafts === null) return <p className="soft">Opening…</p>;
  const unfinished = new Set(drafts.ok ? drafts.value.drafts.map((draft) => draft.key) : []);
  const editing =
    chosen === undefined
      ? ([
          `batch:${batch.id}`,
          `outcomes:${batch.id}`,
          ...holds.map((hold) => `hold:${hold.id}`),
          `add-jar:${batch.id}`,
          `add-hold:${batch.id}`,
        ].find((key) => unfinished.has(key)) ?? null)
      : chosen;
  const unseen = unseenTogether(reply, warm);
  const done = (): void => {
    setChosen(null);
    heading.current?.focus();
  };
  return (
    <article className="batch-view stack" aria-label={label}>
      <Head
        batch={batch.id}
        label={label}
        heading={heading}
        many={unseen.length > 1}
        editing={editing}
        onChoose={setChosen}
      />
      {editing === `batch:${batch.id}` && <CorrectBatch batch={batch} label={label} onDone={done} />}
      {editing === `outcomes:${batch.id}` && (
        <OutcomesForm jars={unseen} batch={batch.id} label={label} onDone={done} />
      )}
      {batch.note && <p>{batch.note}</p>}
      {holds.map((hold, at) => (
        <div key={hold.id} className="hold-line">
          <p>
            <strong>{holds.length === 1 ? 'Warmth' : `Hold ${at + 1}`}.</strong>{' '}
            {holdWords(hold, writer, printed)}
          </p>
          {editing === `hold:${hold.id}` ? (
            <CorrectHold hold={hold} batch={batch} onDone={done} />
          ) : (
            <button type="button" className="button quiet" onClick={() => setChosen(`hold:${hold.id}`)}>
              Correct{holds.length === 1 ? ' the warmth' : ` hold ${at + 1}`}
            </button>
          )}
        </div>
      ))}
      {editing === `add-hold:${batch.id}` && <AddHold reply={reply} label={label} onDone={done} />}
      {editing === `add-jar:${batch.id}` && <AddJar reply={reply} label={label} onDone={done} />}
      {editing === null && (
        <div className="jar-actions">
          <button type="button" className="button quiet" onClick={() => setChosen(`add-jar:${batch.id}`)}>
            Add a jar
          </button>
          <button type="button" className="button quiet" onClick={() => setChosen(`add-hold:${batch.id}`)}>
            {holds.length === 0 ? 'Add the warmth' : 'Add another hold'}
          </button>
        </div>
      )}
      <div className="jar-views">
        {jars.map((record) => (
          <JarView
            key={record.jar.id}
            record={record}
            holds={holds}
            madeOn={batch.madeOn}
            mates={powerCutOfMates(record, jars)}
            warm={warm.has(record.jar.id)}
            unfinished={unfinished}
          />
        ))}
      </div>
    </article>
  );
}
