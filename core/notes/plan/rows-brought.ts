// How many rows that stay aside one answer would bring in, with those that wait for them.
import { isAside, type NoteRow } from '../rows/note-row';

/** Of each question that alone keeps rows aside: how many, by its id. A row that waits for two answers counts for neither. */
export function rowsBrought(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
): ReadonlyMap<string, number> {
  const needs = new Map<NoteRow, ReadonlySet<string | null>>();
  const brought = new Map<string, number>();
  const aside = new Set(rows.filter(isAside));
  const dayOf = ({ identity }: NoteRow): string => identity.day ?? '';
  // Seeds stand before what they seeded; what stands otherwise is not counted.
  for (const row of [...aside].toSorted(
    (a, b) => dayOf(a).localeCompare(dayOf(b)) || a.row.line - b.row.line,
  )) {
    const own = row.log.problems.flatMap((one) => row.log.settledBy.get(one) ?? []);
    const seeds = row.seeds.flatMap(({ part: { from } }) => ('jar' in from ? [from.jar.id] : []));
    const all = new Set<string | null>();
    for (const id of [...own, ...seeds]) {
      const seed = byId.get(id ?? '');
      if (seed && aside.has(seed)) for (const one of needs.get(seed) ?? [null]) all.add(one);
      else if (!seed && own.includes(id)) all.add(id);
    }
    needs.set(row, all);
    const [only] = all;
    if (all.size === 1 && only != null) brought.set(only, (brought.get(only) ?? 0) + 1);
  }
  return brought;
}
