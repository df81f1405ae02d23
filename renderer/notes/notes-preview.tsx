// The file as it is understood so far, and everything that can be done about it before it comes in.
import { useEffect, useRef } from 'react';
import { Assumptions } from './assumptions';
import { Columns, Doubtful } from './columns';
import { bringInLabel, summarySentence } from '../../core/says/sheet-says';
import { leadingQuestion, type Problem } from './note-lists';
import {
  anotherFile,
  bringIn,
  cancel,
  cellId,
  preview as readAgain,
  type Notes,
  type Running,
} from './notes-store';
import { type Mendable, Problems } from './problems';
import { LeadingQuestion, Questions } from './questions';
import { RowRemarks } from './row-remarks';
import { Rows } from './row-list';

function Progress({ running }: { readonly running: Running }) {
  const { what, done, total, says } = running;
  return (
    <div className="notes-progress">
      <progress
        aria-label={what === 'reading' ? 'Reading the file' : 'Bringing in'}
        {...(total !== null && total > 0 ? { value: done, max: total } : {})}
      />
      <span>{says ?? (what === 'reading' ? 'Reading the file' : 'Bringing in')}</span>
      <button className="button" type="button" onClick={cancel}>
        Stop
      </button>
    </div>
  );
}

/** What keeps rows aside now, and what did until it was mended: that stays where it was. */
function mendable(
  problems: readonly Problem[],
  cells: Notes['cells'],
  answers: Notes['answers'],
): Mendable[] {
  // One cell may have several things wrong with it: one field, all its sentences.
  const open = new Map<string, string[]>();
  for (const { row, column, sentence } of problems) {
    if (column === null) continue;
    const id = cellId(row, column);
    open.set(id, [...(open.get(id) ?? []), sentence]);
  }
  const ofCells = [...cells].flatMap(([id, problem]): Mendable[] => {
    const sentences = open.get(id);
    if (sentences) return [{ ...problem, sentence: sentences.join(' '), solved: false }];
    return answers[id] === undefined ? [] : [{ ...problem, solved: true }];
  });
  const ofRows = problems.filter(({ column }) => column === null);
  return [...ofCells, ...ofRows.map((problem): Mendable => ({ ...problem, solved: false }))];
}

/** Questions of rows that are answered with what those rows say: fine, look or discard. */
const AMONG_REMARKS = /^(?:sign|thrown|slime):\d/;

/** The second step. */
export function Preview({ notes }: { readonly notes: Notes }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { preview, running, answers, file } = notes;
  const now = new Set(preview?.questions.map((question) => question.id));
  const questions = [...notes.asked.values()].filter(
    ({ id, blocks }) =>
      !AMONG_REMARKS.test(id) && ((preview === null ? blocks : now.has(id)) || answers[id] !== undefined),
  );
  const blocked = questions.some((question) => question.blocks && answers[question.id] === undefined);
  const mending = mendable(preview?.problems ?? [], notes.cells, answers);
  const pages = preview?.pages;
  const states = pages?.rows;
  const ready = states ? states.new + states.changes : 0;
  const leading = blocked ? null : leadingQuestion(questions, answers, ready);
  const doubtful = preview?.columns.some((one) => one.doubtful === true) ?? false;
  const bringing = running?.what === 'bringing in';
  const waiting = preview === null && running !== null ? 'Reading…' : 'Nothing to bring in';
  const label = blocked
    ? 'Answer first'
    : ready === 0
      ? waiting
      : bringInLabel(states?.new ?? 0, states?.changes ?? 0);

  return (
    <div className="page stack notes">
      <div className="notes-head">
        <div>
          <h1 ref={heading} tabIndex={-1}>
            {file?.name}
          </h1>
          <p className="notes-lead" aria-live="polite">
            {states ? summarySentence(states, blocked) : ''}
          </p>
        </div>
        <div className="row">
          <button
            className={leading || doubtful ? 'button' : 'button primary'}
            type="button"
            disabled={ready === 0 || blocked || running !== null}
            onClick={() => void bringIn()}
          >
            {label}
          </button>
          <button className="button" type="button" disabled={bringing} onClick={anotherFile}>
            Another file
          </button>
        </div>
      </div>
      {preview !== null && (
        <Doubtful columns={preview.columns} doubtful={notes.doubtful} mapping={notes.mapping} />
      )}
      {running !== null && <Progress running={running} />}
      {notes.trouble !== null && (
        <div className="notice row" role="alert">
          <p>{notes.trouble}</p>
          <button className="button" type="button" onClick={() => void readAgain()}>
            Read it again
          </button>
        </div>
      )}
      {!bringing && (
        <>
          {leading !== null && <LeadingQuestion leading={leading} />}
          <Questions questions={questions.filter((one) => one !== leading)} answers={answers} />
          {preview !== null && pages !== undefined && (
            <>
              <Problems problems={mending} reasons={pages.reasons} answers={answers} />
              <RowRemarks remarks={preview.remarks ?? []} pages={pages} from={notes.looking.remarks} />
              <Columns columns={preview.columns} mapping={notes.mapping} />
              <Assumptions pages={pages} from={notes.looking.assumptions} asked={notes.asked} />
              <Rows rows={preview.rows} pages={pages} looking={notes.looking} />
            </>
          )}
        </>
      )}
    </div>
  );
}
