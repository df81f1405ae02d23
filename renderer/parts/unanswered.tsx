// What is written of a jar and nobody has answered: quoted word for word, with the keeper's three answers. Only an answer is a fact.
import { useState } from 'react';
import type { RemarkReply } from '../../core/shapes/remark-calls';
import { remarkInDoubt } from '../../core/safety/remarks';
import { quoteSentence, REMARK_STOPS } from '../../core/says/safety-says';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';

export type Unanswered = Pick<RemarkReply, 'id' | 'of' | 'text' | 'stops'> & {
  /** The jars it is about, where they are not said by the place it stands in. */
  readonly about?: string;
};

/** How a remark can be read, and what that is called. */
export const READ_AS_LABELS = [
  ['fine', 'Fine'],
  ['look', 'Look first'],
  ['discard', 'Discard'],
] as const;
type ReadAs = (typeof READ_AS_LABELS)[number][0];

const SAID = {
  fine: 'Written down: it is fine.',
  look: 'Written down: it is to be looked at first.',
  discard: 'Written down: discard it, do not taste it.',
} as const;

/** Answers to all of them in one act. */
async function answer(remarks: readonly Unanswered[], readAs: ReadAs): Promise<void> {
  const done = await call('remarks.answer', {
    answers: remarks.map(({ id }) => ({ id, readAs })),
    why: null,
  });
  say(done.ok ? SAID[readAs] : done.sentence, done.ok ? 'calm' : 'caution');
}

function One({ remark }: { readonly remark: Unanswered }) {
  const [sending, setSending] = useState(false);
  const quote = quoteSentence(remark);
  return (
    <li className={remark.stops ? 'notice caution stack' : 'notice stack'}>
      <p>
        {remark.about !== undefined && `${remark.about}. `}
        {quote}
      </p>
      {remark.stops && <p>{REMARK_STOPS}</p>}
      <div className="row">
        {READ_AS_LABELS.map(([readAs, label]) => (
          <button
            key={readAs}
            className="button"
            type="button"
            disabled={sending}
            onClick={() => {
              setSending(true);
              void answer([remark], readAs).finally(() => setSending(false));
            }}
          >
            {label}
            <span className="visually-hidden">: {quote}</span>
          </button>
        ))}
      </div>
    </li>
  );
}

/** Where what was left for later is answered, if more is left than is shown here. */
function MoreUnanswered({ shown }: { readonly shown: number }) {
  const answer = useRead('remarks.list', { limit: 1 });
  const more = answer?.ok === true ? answer.value.unread - shown : 0;
  if (more <= 0) return null;
  return (
    <button className="linked" type="button" onClick={() => go('notes')}>
      {more === 1 ? 'One other note waits for an answer' : `${more} other notes wait for an answer`}
    </button>
  );
}

/**
 * Those that stop a jar first, then what is in doubt for another reason. Several that stop nothing and leave nothing in doubt are
 * answered with one press. @param open all are laid out at once
 */
export function Remarks({
  remarks,
  open = false,
}: {
  readonly remarks: readonly Unanswered[];
  readonly open?: boolean;
}) {
  if (remarks.length === 0) return null;
  const first = remarks.filter(({ stops }) => stops);
  const doubted = remarks.filter(({ stops, text }) => !stops && remarkInDoubt(text));
  const others = remarks.filter((remark) => !remark.stops && !doubted.includes(remark));
  const list = (those: readonly Unanswered[]) => (
    <ul className="plain-list stack">
      {those.map((remark) => (
        <One key={remark.id} remark={remark} />
      ))}
    </ul>
  );
  const rest = (
    <>
      {list(others)}
      {others.length > 1 && (
        <button className="button" type="button" onClick={() => void answer(others, 'fine')}>
          {first.length + doubted.length > 0
            ? `All ${others.length} others are fine`
            : `All ${others.length} are fine`}
        </button>
      )}
    </>
  );
  return (
    <div className="stack">
      {first.length > 0 && list(first)}
      {first.length > 1 && (
        <button className="button" type="button" onClick={() => void answer(first, 'discard')}>
          Discard all {first.length} that tell of spoilage
        </button>
      )}
      {doubted.length > 0 && list(doubted)}
      {others.length > 0 &&
        (open ? (
          rest
        ) : (
          <details className="more">
            <summary>
              {others.length === 1 ? 'One note is not answered' : `${others.length} notes are not answered`}
            </summary>
            {rest}
          </details>
        ))}
      {!open && <MoreUnanswered shown={remarks.length} />}
    </div>
  );
}
