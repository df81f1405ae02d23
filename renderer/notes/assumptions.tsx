// What was inferred because the file does not say it. Nothing is taken for granted silently.
import { rowsSaid, type Pages } from './note-lists';
import { ASSUMPTIONS_SHOWN, look } from './notes-store';
import { Pager } from './pager';

/** Each assumption once, with the rows it holds for, a page at a time. @param from the first that is shown */
export function Assumptions({ pages, from }: { readonly pages: Pages; readonly from: number }) {
  if (pages.assumptions === 0) return null;
  return (
    <section className="notes-part" aria-labelledby="assumed-title">
      <h2 id="assumed-title">What is assumed</h2>
      <ul className="assumed">
        {pages.shared.map(({ sentence, rows, of }) => (
          <li key={sentence}>
            {sentence} {of > 0 && <span className="soft">({rowsSaid(rows, of)})</span>}
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
