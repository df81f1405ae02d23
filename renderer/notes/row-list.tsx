// Every row of the file and what becomes of it, a page at a time.
import { ROW_STATES, type Pages, type Row, type RowState } from './note-lists';
import { look, ROWS_SHOWN, type Look } from './notes-store';
import { Pager } from './pager';

const stateWords: Record<RowState, string> = {
  new: 'comes in',
  changes: 'changes its jar',
  aside: 'stays aside',
  'already here': 'already here',
  empty: 'empty',
};

/** A page of the rows, all or those of one state. */
export function Rows({
  rows,
  pages,
  looking,
}: {
  readonly rows: readonly Row[];
  readonly pages: Pages;
  readonly looking: Look;
}) {
  const counts = pages.rows;
  const only = looking.state;
  const all = ROW_STATES.reduce((sum, state) => sum + counts[state], 0);
  const setOnly = (state: RowState | null): void => look({ state, rows: 0 });
  const from = looking.rows;
  const page = {
    from,
    to: from + rows.length,
    of: only === null ? all : counts[only],
    turn: (turns: number) => look({ rows: Math.max(0, from + turns * ROWS_SHOWN) }),
  };
  return (
    <section className="notes-part" aria-labelledby="rows-title">
      <h2 id="rows-title">Row by row</h2>
      <fieldset className="row" aria-label="Which rows">
        <button className="button" type="button" aria-pressed={only === null} onClick={() => setOnly(null)}>
          All {all.toLocaleString('en-GB')}
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
            {rows.map((row) => (
              <tr key={`${row.row} ${row.label}`} className={row.state === 'new' ? '' : 'rest'}>
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
