// What was inferred because the file does not say it. Nothing is taken for granted silently.
import { rowsSaid } from '../../core/says/sheet-says';
import type { Pages } from './note-lists';
import { answer, ASSUMPTIONS_SHOWN, look, type Notes } from './notes-store';
import { Pager } from './pager';

/**
 * Each assumption once, with the rows it holds for, a page at a time, and a field where it can be said to be otherwise.
 * @param from the first that is shown
 * @param asked every question of this file
 */
export function Assumptions({
  pages,
  from,
  asked,
}: {
  readonly pages: Pages;
  readonly from: number;
  readonly asked: Notes['asked'];
}) {
  if (pages.assumptions === 0) return null;
  // What was asked stays with the questions, where it was answered.
  const shared = pages.shared.filter(({ id }) => id === undefined || !asked.has(id));
  return (
    <section className="notes-part" aria-labelledby="assumed-title">
      <h2 id="assumed-title">What is assumed</h2>
      <ul className="assumed">
        {shared.map(({ sentence, rows, of, id, choices, chosen }) => (
          <li key={id ?? sentence}>
            {sentence} {of > 0 && <span className="soft">({rowsSaid(rows, of)})</span>}
            {id !== undefined && choices?.length === 2 && (
              <button
                className="button"
                type="button"
                onClick={() => answer(id, choices.find(({ value }) => value !== chosen)?.value ?? '')}
              >
                {choices.find(({ value }) => value !== chosen)?.label}
              </button>
            )}
            {id !== undefined && choices !== undefined && choices.length !== 2 && (
              <select
                className="input"
                aria-label={sentence}
                value={chosen ?? ''}
                onChange={(event) => answer(id, event.target.value)}
              >
                {choices.map(({ value, label }) => (
                  <option key={value} value={value}>
                    {label}
                  </option>
                ))}
              </select>
            )}
          </li>
        ))}
      </ul>
      <Pager
        page={{
          from,
          to: from + pages.shared.length,
          of: pages.assumptions,
          turn: (turns) => look({ assumptions: from + turns * ASSUMPTIONS_SHOWN }),
        }}
        what="assumptions"
      />
    </section>
  );
}
