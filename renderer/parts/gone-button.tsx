// Says that a jar is gone, or that it is there again. The last that carries something is asked about first.
import { useState } from 'react';
import { lastCarrier } from './last-carrier';
import { Question } from './question';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

interface Props {
  readonly jar: string;
  readonly label: string;
  readonly onShelf: boolean | null;
  /** Where nobody said whether it is kept, it can be said here that it is. */
  readonly asks?: boolean;
}

export function GoneButton({ jar, label, onShelf, asks = false }: Props) {
  const [last, setLast] = useState<readonly string[]>([]);
  const shelf = async (there: boolean, sure = false): Promise<void> => {
    if (!there && !sure) {
      const carries = await lastCarrier(jar);
      setLast(carries);
      if (carries.length > 0) return;
    }
    const answer = await call('jar.correct', { id: jar, changes: { onShelf: there }, why: null });
    say(
      answer.ok ? `${label} is ${there ? 'on the shelf' : 'gone'}.` : answer.sentence,
      answer.ok ? 'calm' : 'caution',
    );
  };
  return (
    <>
      {asks && onShelf === null && (
        <button type="button" className="button" onClick={() => void shelf(true)}>
          Still there<span className="visually-hidden">: {label}</span>
        </button>
      )}
      <button type="button" className="button quiet" onClick={() => void shelf(onShelf === false)}>
        {onShelf === false ? 'Back on the shelf' : 'Gone'}
        <span className="visually-hidden">: {label}</span>
      </button>
      {last.length > 0 && (
        <Question
          title={`Is ${label} gone?`}
          yes="It is gone"
          no="It is still there"
          onNo={() => setLast([])}
          onYes={() => {
            setLast([]);
            void shelf(false, true);
          }}
        >
          {last.map((says) => (
            <p key={says}>{says}</p>
          ))}
          <p className="soft">
            Where it shows any sign of spoiling, discard it all the same: a line can be started afresh.
          </p>
        </Question>
      )}
    </>
  );
}
