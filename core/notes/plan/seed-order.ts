// Across rows: no jar descends from itself, rows wait for seeds that are aside, seeds come first.
import { isAdded, isAside, labelOf, type NoteRow, putTo } from '../rows/note-row';
import { problem } from '../notes-says';

/** Marks jars that would descend from themselves. */
export function refuseLoops(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): void {
  const state = new Map<NoteRow, 'open' | 'done'>();
  const path: NoteRow[] = [];
  const told = new Set<NoteRow>();
  const visit = (start: NoteRow): void => {
    const stack: { row: NoteRow; next: number }[] = [{ row: start, next: 0 }];
    state.set(start, 'open');
    path.push(start);
    while (stack.length > 0) {
      const top = stack.at(-1);
      if (!top) return;
      const seed = top.row.seeds[top.next];
      top.next += 1;
      if (!seed) {
        state.set(top.row, 'done');
        path.pop();
        stack.pop();
        continue;
      }
      const next = 'jar' in seed.part.from ? byId.get(seed.part.from.jar.id) : undefined;
      if (!next) continue;
      if (state.get(next) === 'open') {
        const loop = path.slice(path.indexOf(next));
        for (const row of loop) {
          if (told.has(row) || row.here !== null) continue;
          told.add(row);
          row.log.problem(
            problem.ownAncestor([...loop, next].map(labelOf)),
            row.cells.find(({ column }) => column.meaning === 'seed'),
          );
        }
      } else if (!state.has(next)) {
        state.set(next, 'open');
        path.push(next);
        stack.push({ row: next, next: 0 });
      }
    }
  };
  for (const row of rows) if (!state.has(row)) visit(row);
}

/** Rows whose seed is left aside wait for it, and so on down; each row and each seed is looked at once. */
export function waitForSeeds(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): void {
  const seeded = seededBy(rows, byId);
  const open = rows.filter(isAside);
  const roots = new Map(open.map((row) => [row, row.row.line]));
  for (let at = 0; at < open.length; at += 1) {
    const seed = open[at];
    if (!seed) break;
    for (const row of seeded.get(seed) ?? []) {
      if (!isAdded(row)) continue;
      const root = roots.get(seed) ?? seed.row.line;
      row.log.problem(problem.waits(labelOf(seed), seed.row.line, root), undefined, []);
      roots.set(row, root);
      open.push(row);
    }
  }
}

/** What each row seeded. */
export function seededBy(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
): ReadonlyMap<NoteRow, readonly NoteRow[]> {
  const seeded = new Map<NoteRow, NoteRow[]>();
  for (const row of rows) {
    for (const { part } of row.seeds) {
      const seed = 'jar' in part.from ? byId.get(part.from.jar.id) : undefined;
      if (seed) putTo(seeded, seed, row);
    }
  }
  return seeded;
}

/** More lines below a row than are ever named. */
const MOST_BELOW = 1000;

/** The lines whose jars descend from a row's, in order; of very many the first that were found. */
export function linesBelow(start: NoteRow, seeded: ReadonlyMap<NoteRow, readonly NoteRow[]>): number[] {
  const below = new Set([start]);
  // A set grows while it is gone through.
  for (const row of below) {
    for (const child of seeded.get(row) ?? []) below.add(child);
    if (below.size > MOST_BELOW) break;
  }
  below.delete(start);
  return [...new Set([...below].map((row) => row.row.line))].toSorted((a, b) => a - b);
}

/** A changed row that is taken over waits for a seed that is left aside. */
export function waitToTakeOver(row: NoteRow, byId: ReadonlyMap<string, NoteRow>): void {
  for (const { part } of row.seeds) {
    const seed = 'jar' in part.from ? byId.get(part.from.jar.id) : undefined;
    if (seed && isAside(seed)) row.log.problem(problem.waits(labelOf(seed), seed.row.line, seed.row.line));
  }
}

/** Seeds before what they seeded; days first, since most files run that way. */
export function seedsFirst(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): NoteRow[] {
  const sorted = rows.toSorted(
    (a, b) => (a.identity.day ?? '').localeCompare(b.identity.day ?? '') || a.row.line - b.row.line,
  );
  const wanted = new Set(sorted);
  const done = new Set<NoteRow>();
  const out: NoteRow[] = [];
  for (const start of sorted) {
    const stack = [start];
    while (stack.length > 0) {
      const row = stack.at(-1);
      if (!row) break;
      const waiting = row.seeds
        .flatMap(({ part }) => ('jar' in part.from ? (byId.get(part.from.jar.id) ?? []) : []))
        .filter((seed) => wanted.has(seed) && !done.has(seed));
      const [next] = waiting;
      if (next) stack.push(next);
      else {
        stack.pop();
        if (!done.has(row)) {
          done.add(row);
          out.push(row);
        }
      }
    }
  }
  return out;
}
