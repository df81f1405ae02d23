// Rows that stay aside, and mending them in place: what the keeper types stands in for the cell, the file stays as it is.
import { useId, useState } from 'react';
import { byRow, type Problem } from './note-lists';
import { answer, cellId } from './notes-store';
import { Pager, usePage } from './pager';

const PAGE = 20;

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

/** Everything that keeps rows aside, by row. Mended cells stay where they were. */
export function Problems({
  problems,
  answers,
}: {
  readonly problems: readonly Mendable[];
  readonly answers: Readonly<Record<string, string>>;
}) {
  const rows = byRow(problems);
  const page = usePage(rows.length, PAGE);
  if (rows.length === 0) return null;
  return (
    <section className="notes-part" aria-labelledby="aside-title">
      <h2 id="aside-title">What stays aside</h2>
      <p className="soft">
        Write here what the cell should say and press Enter. Your file is not changed. What you leave stays
        out, and you can bring in the file again later.
      </p>
      <ol className="aside-rows">
        {rows.slice(page.from, page.to).map(({ row, problems: list }) => (
          <li key={row}>
            <span className="row-number">Row {row}</span>
            <div className="stack">
              {list
                .toSorted((one, other) => (one.column ?? '').localeCompare(other.column ?? ''))
                .map((problem) =>
                  problem.column === null ? (
                    <p key={problem.sentence}>{problem.sentence}</p>
                  ) : (
                    <Cell
                      key={problem.column}
                      problem={problem}
                      mended={answers[cellId(row, problem.column)]}
                    />
                  ),
                )}
            </div>
          </li>
        ))}
      </ol>
      <Pager page={page} what="rows" />
    </section>
  );
}
