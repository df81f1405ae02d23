// What came in, what stayed aside, and on to the family.
import { useEffect, useRef } from 'react';
import type { Reply } from '../../core/contract';
import { go } from '../state/store';
import { byRow, count, openSentence, resultSentence } from './note-lists';
import { backToRows, putAway } from './notes-store';
import { UnreadRemarks } from './unread-remarks';

const MOST = 12;

/** The last step. */
export function Done({ result }: { readonly result: Reply<'notes.bringIn'> }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const aside = byRow(result.problems);
  return (
    <div className="page stack notes done">
      <h1 ref={heading} tabIndex={-1}>
        {resultSentence(result)}
      </h1>
      {aside.length > 0 && (
        <ul className="done-aside stack">
          {aside.slice(0, MOST).map(({ row, problems }) => (
            <li key={row}>
              Row {row} stays aside: {problems.map((problem) => problem.sentence).join(' ')}
            </li>
          ))}
          {aside.length > MOST && <li>{count(aside.length - MOST, 'more row')} stay aside.</li>}
        </ul>
      )}
      {result.questions.length > 0 && (
        <>
          <p>{openSentence(result.questions)}</p>
          <ul className="done-open stack">
            {result.questions.slice(0, MOST).map(({ id, row, sentence, urgent }) => (
              <li key={id}>
                {row !== null && !urgent && `Row ${row}: `}
                {sentence}
              </li>
            ))}
            {result.questions.length > MOST && (
              <li>{count(result.questions.length - MOST, 'more question')}.</li>
            )}
          </ul>
        </>
      )}
      <UnreadRemarks />
      <p className="soft">All of it came in as one step: Undo takes it back.</p>
      <div className="row">
        <button
          className="button primary"
          type="button"
          onClick={() => {
            putAway();
            go('family');
          }}
        >
          See the family
        </button>
        {(aside.length > 0 || result.questions.length > 0) && (
          <button className="button" type="button" onClick={backToRows}>
            {aside.length > 0 ? 'Mend what stayed aside' : 'Answer what stays open'}
          </button>
        )}
        <button className="button" type="button" onClick={putAway}>
          Another file
        </button>
      </div>
    </div>
  );
}
