// Rows that stay aside, and mending them in place: what the keeper types stands in for the cell, the file stays as it is.
import { useId, useState } from 'react';
import { count } from '../../core/says/sheet-says';
import { byReason, type byRow, type AsideFor, type Pages, type Problem } from './note-lists';
import { answer, cellId } from './notes-store';
import { Pager, usePage } from './pager';

const PAGE = 20;
/** So many rows of one reason are shown at first. */
const FIRST = 3;

/** A problem with what stands in the file; solved once what was typed for it is understood. */
export type Mendable = Problem & { readonly solved: boolean };

function Cell({ problem, mended }: { readonly problem: Mendable; readonly mended: string | undefined }) {
  const id = useId();
  const column = problem.column ?? '';
  const original = problem.cell ?? '';
  const [typed, setTyped] = useState(mended ?? original);
  const mend = (): void => {
    const text = typed.trim();
    // What stands in the file is no mending.
    answer(cellId(problem.row, column), text === original.trim() ? null : text);
  };
  return (
    <form
      className="aside-problem"
      onSubmit={(event) => {
        event.preventDefault();
        mend();
      }}
    >
      <p id={`${id}-says`} className={problem.solved ? 'soft' : ''}>
        {problem.solved
          ? `Mended: ${mended === '' ? 'left blank' : `read as “${mended}”`}.`
          : problem.sentence}
      </p>
      <span className="mend">
        <label className="label" htmlFor={id}>
          {column}
        </label>
        <input
          id={id}
          className="input"
          value={typed}
          maxLength={500}
          spellCheck={false}
          autoComplete="off"
          aria-describedby={`${id}-says`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={mend}
        />
      </span>
    </form>
  );
}

/** One row, with everything that keeps it aside. */
function AsideRow({ row, problems, answers }: ReturnType<typeof byRow<Mendable>>[number] & Answers) {
  return (
    <li>
      <span className="row-number">Row {row}</span>
      <div className="stack">
        {problems
          .toSorted((one, other) => (one.column ?? '').localeCompare(other.column ?? ''))
          .map((problem) =>
            problem.column === null ? (
              <p key={problem.sentence}>{problem.sentence}</p>
            ) : (
              <Cell key={problem.column} problem={problem} mended={answers[cellId(row, problem.column)]} />
            ),
          )}
      </div>
    </li>
  );
}

interface Answers {
  readonly answers: Readonly<Record<string, string>>;
}

/** Rows that stay aside for one reason: the first of them, and all when asked for. @param of how many there are still */
function Reason({ reason, rows, of, answers }: AsideFor<Mendable> & Answers & { readonly of: number }) {
  const title = useId();
  const [all, setAll] = useState(false);
  const page = usePage(rows.length, all ? PAGE : FIRST);
  // More than are listed may wait; and a row whose first cell is mended may wait for another.
  const open = Math.max(of, rows.filter((row) => row.problems.some(({ solved }) => !solved)).length);
  return (
    <section className="stack" aria-labelledby={title}>
      <div className="row">
        <h3 id={title}>
          {reason}
          {open > 0 && `: ${count(open, 'row')}`}
        </h3>
        {rows.length > FIRST && (
          <button className="button" type="button" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? `Show the first ${FIRST}` : `Show all ${rows.length}`}
          </button>
        )}
      </div>
      <ol className="aside-rows">
        {rows.slice(page.from, page.to).map((one) => (
          <AsideRow key={one.row} {...one} answers={answers} />
        ))}
      </ol>
      {all && <Pager page={page} what="rows" />}
    </section>
  );
}

/** Everything that keeps rows aside, by reason. Mended cells stay where they were. */
export function Problems({
  problems,
  reasons,
  answers,
}: Answers & { readonly problems: readonly Mendable[]; readonly reasons: Pages['reasons'] }) {
  const groups = byReason(problems);
  if (groups.length === 0) return null;
  return (
    <section className="notes-part" aria-labelledby="aside-title">
      <h2 id="aside-title">What stays aside</h2>
      <p className="soft">
        Write here what the cell should say and press Enter. Your file is not changed. What you leave stays
        out, and you can bring in the file again later.
      </p>
      {groups.map((group) => (
        <Reason
          key={group.reason}
          {...group}
          of={reasons.find(({ reason }) => reason === group.reason)?.rows ?? 0}
          answers={answers}
        />
      ))}
    </section>
  );
}
