// What was inferred because the file does not say it. Nothing is taken for granted silently.
import { rowsSaid, shareAssumptions, type Assumption } from './lists';
import { Pager, usePage } from './pager';

const PAGE = 30;

/** Each assumption once, with the rows it holds for. */
export function Assumptions({ assumptions }: { readonly assumptions: readonly Assumption[] }) {
  const shared = shareAssumptions(assumptions);
  const page = usePage(shared.length, PAGE);
  if (shared.length === 0) return null;
  return (
    <section className="notes-part" aria-labelledby="assumed-title">
      <h2 id="assumed-title">What is assumed</h2>
      <ul className="assumed">
        {shared.slice(page.from, page.to).map(({ sentence, rows }) => (
          <li key={sentence}>
            {sentence} {rows.length > 0 && <span className="soft">({rowsSaid(rows)})</span>}
          </li>
        ))}
      </ul>
      <Pager page={page} what="assumptions" />
    </section>
  );
}
