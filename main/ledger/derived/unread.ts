// Remarks that the keeper has not read as fine, look or discard: nothing says what they mean, so they are quoted wherever their
// jar is offered, in whatever language they are.
import type { Rows } from '../facts/fact-rows';

export interface Unread {
  /** Whether it is about this jar alone, or about all of its batch or hold. */
  readonly of: 'jar' | 'batch' | 'hold';
  readonly text: string;
}

/** Unread remarks by the key of each jar they are about, in the order they were written. */
export function unreadRemarks(facts: Rows): ReadonlyMap<number, readonly Unread[]> {
  const rows = facts
    .prepare(
      `SELECT DISTINCT r.key, r.text, coalesce(r.jar, o.jar, p.jar, f.jar, d.jar, j.key, s.jar) AS jar,
              CASE WHEN r.batch IS NOT NULL THEN 'batch' WHEN r.hold IS NOT NULL THEN 'hold' ELSE 'jar' END AS of
         FROM remark r
         LEFT JOIN observation o ON o.key = r.observation LEFT JOIN portion p ON p.key = r.portion
         LEFT JOIN photograph f ON f.key = r.photograph LEFT JOIN seeding d ON d.key = r.seeding
         LEFT JOIN jar j ON j.batch = r.batch LEFT JOIN stay s ON s.hold = r.hold
        WHERE r.read_as IS NULL AND r.package IS NULL ORDER BY r.key`,
    )
    .all() as { text: string; jar: number | null; of: Unread['of'] }[];
  const found = new Map<number, Unread[]>();
  for (const { jar, of, text } of rows) {
    if (jar === null) continue;
    const known = found.get(jar);
    if (known) known.push({ of, text });
    else found.set(jar, [{ of, text }]);
  }
  return found;
}
