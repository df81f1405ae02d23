// What failed in a hold, each with the press that ends it and a form that corrects its times.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import { TextField } from '../parts/fields';
import { FormEnd } from '../parts/form-end';
import { Form } from '../parts/form';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

type Hold = Reply<'hold.get'>;
type Failed = Hold['interruptions'][number];

/** It still lasts, as far as was said. */
export const lasts = ({ from, to, hours }: Failed): boolean => from !== null && to === null && hours === null;

function Correct({
  hold,
  one,
  onDone,
}: {
  readonly hold: Hold;
  readonly one: Failed;
  readonly onDone: () => void;
}) {
  const { reader, writer } = useReader();
  const [text, setText] = useState({
    from: one.from === null ? '' : writer.moment(one.from),
    to: one.to === null ? '' : writer.moment(one.to),
    hours: one.hours === null ? '' : String(one.hours),
  });
  const [wrong, setWrong] = useState(0);
  const [refused, refuse] = useState<string | null>(null);
  const today = hold.now.slice(0, 10);
  const from = reader.moment(text.from, today);
  const to = reader.moment(text.to, today);
  const hours = reader.hours(text.hours);
  const record = async (): Promise<void> => {
    if (!from.ok || !to.ok || !hours.ok) {
      setWrong(wrong + 1);
      return;
    }
    const answer = await call('hold.interrupt', {
      hold: hold.id,
      id: one.id,
      what: one.what,
      began: from.value,
      ended: to.value,
      hours: hours.value,
    });
    if (answer.ok) onDone();
    else refuse(answer.sentence);
  };
  return (
    <Form label="Correct what failed" record={() => void record()} leave={onDone} wrong={wrong} startHere>
      <div className="fields">
        <TextField
          label="From"
          width="short"
          value={text.from}
          read={wrong > 0 || text.from !== '' ? from : undefined}
          startHere
          onChange={(next) => setText({ ...text, from: next })}
        />
        <TextField
          label="To"
          width="short"
          value={text.to}
          read={wrong > 0 || text.to !== '' ? to : undefined}
          onChange={(next) => setText({ ...text, to: next })}
        />
        <TextField
          label="Or hours, where only that is known"
          width="middle"
          value={text.hours}
          read={wrong > 0 || text.hours !== '' ? hours : undefined}
          onChange={(next) => setText({ ...text, hours: next })}
        />
      </div>
      <FormEnd refused={refused} caution yes="Save" no="Leave it as it was" onLeave={onDone} />
    </Form>
  );
}

export function FailedList({ hold }: { readonly hold: Hold }) {
  const [editing, edit] = useState<string | null>(null);
  if (hold.interruptions.length === 0) return null;
  const remove = async (id: string): Promise<void> => {
    const answer = await call('facts.remove', { kind: 'interruption', id });
    say(answer.ok ? 'Taken away. Undo brings it back.' : answer.sentence, answer.ok ? 'calm' : 'caution');
  };
  return (
    <ul className="failed-list" aria-label="What failed">
      {hold.interruptions.map((one) =>
        editing === one.id ? (
          <li key={one.id}>
            <Correct hold={hold} one={one} onDone={() => edit(null)} />
          </li>
        ) : (
          <li key={one.id}>
            <span>{one.says}</span>
            <button type="button" className="button quiet" onClick={() => edit(one.id)}>
              Correct<span className="visually-hidden"> {one.says}</span>
            </button>
            <button type="button" className="button quiet" onClick={() => void remove(one.id)}>
              Remove<span className="visually-hidden"> {one.says}</span>
            </button>
          </li>
        ),
      )}
    </ul>
  );
}
