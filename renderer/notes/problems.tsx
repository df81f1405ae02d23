// Rows that stay aside, and mending them in place: what the keeper types stands in for the cell, the file stays as it is.
import { useId, useState } from 'react';
import { byRow, type Problem } from './lists';
import { answer, cellId } from './notes-store';
import { Pager, usePage } from './pager';

const PAGE = 20;

function Cell({ problem, mended }: { readonly problem: Problem; readonly mended: string | undefined }) {
  const id = useId();
  const column = problem.column ?? '';
  const [typed, setTyped] = useState(mended ?? problem.cell ?? '');
  const mend = (): void => {
    const text = typed.trim();
    // What stands in the file is no mending.
    answer(cellId(problem.row, column), text === (problem.cell ?? '').trim() ? '' : text);
  };
  return (
    <form
      className="mend"
      onSubmit={(event) => {
        event.preventDefault();
        mend();
      }}
    >
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
    </form>
  );
}

/** Everything that keeps rows aside, by row. Mended cells stay where they were. */
export function Problems({
  problems,
  answers,
}: {
  readonly problems: readonly Problem[];
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
              {list.map((problem) => {
                const id = problem.column === null ? null : cellId(row, problem.column);
                const mended = id === null ? undefined : answers[id];
                const solved =
                  mended !== undefined && !problems.some((one) => one === problem && one.cell === mended);
                return (
                  <div key={id ?? problem.sentence} className="aside-problem">
                    <p>{problem.sentence}</p>
                    {problem.column !== null && <Cell problem={problem} mended={mended} />}
                    {solved && <p className="soft">Read as “{mended}”.</p>}
                  </div>
                );
              })}
            </div>
          </li>
        ))}
      </ol>
      <Pager page={page} what="rows" />
    </section>
  );
}
