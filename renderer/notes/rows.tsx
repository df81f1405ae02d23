// Every row of the file and what becomes of it, a page at a time.
import { useState } from 'react';
import { countStates, ROW_STATES, type Row, type RowState } from './lists';
import { Pager, usePage } from './pager';

const PAGE = 50;

const stateWords: Record<RowState, string> = {
  new: 'comes in',
  changes: 'changes its jar',
  aside: 'stays aside',
  'already here': 'already here',
  empty: 'empty',
};

/** The rows, all or those of one state. */
export function Rows({ rows }: { readonly rows: readonly Row[] }) {
  const [only, setOnly] = useState<RowState | null>(null);
  const counts = countStates(rows);
  const shown = only === null ? rows : rows.filter((row) => row.state === only);
  const page = usePage(shown.length, PAGE);
  return (
    <section className="notes-part" aria-labelledby="rows-title">
      <h2 id="rows-title">Row by row</h2>
      <fieldset className="row" aria-label="Which rows">
        <button className="button" type="button" aria-pressed={only === null} onClick={() => setOnly(null)}>
          All {rows.length.toLocaleString('en-GB')}
        </button>
        {ROW_STATES.filter((state) => counts[state] > 0).map((state) => (
          <button
            key={state}
            className="button"
            type="button"
            aria-pressed={only === state}
            onClick={() => setOnly(state)}
          >
            {stateWords[state]} {counts[state].toLocaleString('en-GB')}
          </button>
        ))}
      </fieldset>
      <div className="rows-frame">
        <table className="notes-rows">
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Jar</th>
              <th scope="col">Seeded from</th>
              <th scope="col">What becomes of it</th>
            </tr>
          </thead>
          <tbody>
            {shown.slice(page.from, page.to).map((row) => (
              <tr key={row.row} className={row.state === 'new' ? '' : 'rest'}>
                <th scope="row">{row.row}</th>
                <td className="row-label">{row.label ?? '–'}</td>
                <td>{row.seeds.length > 0 ? row.seeds.join(', ') : '–'}</td>
                <td>
                  {stateWords[row.state]}
                  {/* Of a row that comes in the words repeat the jar and its seeds. */}
                  {(row.state === 'aside' || row.state === 'already here') &&
                    row.says !== '' &&
                    `: ${row.says}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Pager page={page} what="rows" />
    </section>
  );
}
