// What came in, what stayed aside, and on to the family.
import { useEffect, useRef } from 'react';
import type { Reply } from '../../core/contract';
import { MEASURES } from '../../core/quantities/quantities';
import { call } from '../state/ledger-calls';
import { go, useAppState } from '../state/store';
import { count, openSentence, resultSentence, saidOfRows } from '../../core/says/sheet-says';
import { type AskedTogether, byRow, openAndRemarks } from './note-lists';
import { anotherFile, backToRows, putAway } from './notes-store';
import { UnreadRemarks } from './unread-remarks';

const MOST = 12;

function Listed({ asked, what }: { readonly asked: readonly AskedTogether[]; readonly what: string }) {
  if (asked.length === 0) return null;
  return (
    <ul className="done-open stack">
      {asked.slice(0, MOST).map(({ question: { id, sentence, urgent }, rows }) => (
        <li key={id}>
          {rows.length > 0 && !urgent && `${saidOfRows(rows)}: `}
          {sentence}
        </li>
      ))}
      {asked.length > MOST && <li>{count(asked.length - MOST, what)}.</li>}
    </ul>
  );
}

/** The notes measure in other spoons than the ledger is set to: one press makes them its own. */
function OwnSpoons({ spoons }: { readonly spoons: NonNullable<Reply<'notes.bringIn'>['spoons']> }) {
  const preferences = useAppState()?.preferences;
  if (!preferences) return null;
  const size = (system: typeof spoons): string =>
    `${system} spoons (a tablespoon holds ${MEASURES[system].tablespoon.toFixed(1)} mL)`;
  const taken = preferences.spoons === spoons;
  return (
    <div className="notice row">
      <p>
        {taken
          ? `From now on you measure in ${size(spoons)}.`
          : `These notes were written in ${size(spoons)}; you measure in ${size(preferences.spoons)}.`}
      </p>
      {!taken && (
        <button
          className="button"
          type="button"
          onClick={() => void call('preferences.save', { ...preferences, spoons })}
        >
          {`Measure in ${spoons} spoons`}
        </button>
      )}
    </div>
  );
}

/** The last step. */
export function Done({ result }: { readonly result: Reply<'notes.bringIn'> }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const aside = byRow(result.problems);
  const { open, remarks } = openAndRemarks(result.questions);
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
          <p>{openSentence(open.length, remarks.length)}</p>
          <Listed asked={open} what="more question" />
          {open.length > 0 && remarks.length > 0 && <p>To look over:</p>}
          <Listed asked={remarks} what="more remark" />
        </>
      )}
      {result.spoons !== null && <OwnSpoons spoons={result.spoons} />}
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
        <button className="button" type="button" onClick={anotherFile}>
          Another file
        </button>
      </div>
      {/* Read once this page stands: below the buttons, so that none moves away under the pointer. */}
      <UnreadRemarks />
    </div>
  );
}
