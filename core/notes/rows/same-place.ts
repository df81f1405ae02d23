// Rows that name no letter and are not as they came in before: by their day and their place in the file, which jar of the
// ledger each may be. Only a guess, so that it is asked; nothing is taken over by it.
import { dayName } from '../../text/rough-days';
import { plain } from '../../quantities/quantities';
import { labelKey } from './identity';
import type { LedgerFacts, LedgerJar, NotesInput } from '../notes-plan';
import type { RowFacts } from './row-cells';
import { type NoteRow, putTo } from './note-row';

/** Answer to the question about such a row: it is a jar of its own, and is added. */
export const ANOTHER = 'another';

/** Jars of one day that a row is compared with. */
const MOST_COMPARED = 60;

const alike = (one: string | number | null, other: string | number | null): number =>
  one === null || other === null || one === '' || other === ''
    ? 0
    : String(one).toLowerCase() === String(other).toLowerCase()
      ? 1
      : -1;

/** How much of what a row tells is what the ledger has: what is told alike less what is told otherwise. */
function likeness(told: RowFacts, now: LedgerFacts): number {
  const additions = (names: readonly string[]): string => names.map(plain).toSorted().join('+');
  const warm = (celsius: number | null | undefined): string | null => celsius?.toFixed(1) ?? null;
  return (
    alike(told.hours, now.hours) +
    alike(warm(told.temperature?.value), warm(now.temperature)) +
    alike(told.milk, now.milk) +
    alike(told.outcome?.setWord ?? null, now.setWord) +
    alike(told.outcome?.ph ?? null, now.ph) +
    // Nothing stirred in is told too.
    (additions(told.additions.map(({ name }) => name)) === additions(now.additions) ? 1 : -1)
  );
}

/** Jars of the same file's notes that no row of it is or names any more, by day and word. */
function missing(rows: readonly NoteRow[], { ledger, file }: NotesInput): Map<string, LedgerJar[]> {
  const here = new Set(rows.map((row) => row.here));
  const named = new Set(
    rows.map(({ identity }) =>
      identity.letter === null ? '' : labelKey(dayName(identity), identity.word, identity.letter),
    ),
  );
  // The file may go by another name by now: then rows of it that did not change tell which it is.
  const files = new Set([file, ...[...here].map((uid) => ledger.fromNotes.get(uid ?? '')?.file)]);
  const found = new Map<string, LedgerJar[]>();
  for (const jar of ledger.jars) {
    const from = ledger.fromNotes.get(jar.uid);
    if (!from || !files.has(from.file) || jar.planned || here.has(jar.uid)) continue;
    if (named.has(labelKey(dayName(jar), jar.word, jar.letter))) continue;
    putTo(found, labelKey(dayName(jar), jar.word, ''), jar);
  }
  return found;
}

/**
 * Which jar each of these rows may be: of the same day, from the same file, and not found in it any more. Where several may
 * be, the likest go together, then those that stand where they stood, then the upper ones.
 * @param factsOf what the cells of a row tell
 */
export function pairByPlace(
  rows: readonly NoteRow[],
  input: NotesInput,
  factsOf: (row: NoteRow) => RowFacts,
): Map<NoteRow, LedgerJar> {
  const pairs = new Map<NoteRow, LedgerJar>();
  const fresh = rows.filter(
    (row) =>
      row.here === null &&
      row.identity.letter === null &&
      row.identity.day !== null &&
      input.answers[`changed:${row.row.line}`]?.trim().toLowerCase() !== ANOTHER,
  );
  if (fresh.length === 0) return pairs;
  const gone = missing(rows, input);
  if (gone.size === 0) return pairs;
  /** By how many lines rows have moved, as the unchanged one above tells. */
  const moved = new Map<NoteRow, number>();
  let by = 0;
  for (const row of rows) {
    const before = input.ledger.fromNotes.get(row.here ?? '');
    if (before) by = row.row.line - before.line;
    moved.set(row, by);
  }
  const perDay = new Map<string, number>();
  const candidates = fresh.flatMap((row) => {
    const key = labelKey(dayName(row.identity), row.identity.word, '');
    const all = gone.get(key) ?? [];
    if (all.length === 0) return [];
    // Of a day with very many only those that stand near each other are compared.
    const place = perDay.get(key) ?? 0;
    perDay.set(key, place + 1);
    const jars = all.length <= MOST_COMPARED ? all : all.slice(place, place + MOST_COMPARED);
    const told = factsOf(row);
    return jars.map((jar) => {
      const now = input.ledger.factsOf(jar.uid);
      const line = (input.ledger.fromNotes.get(jar.uid)?.line ?? 0) + (moved.get(row) ?? 0);
      const away = Math.abs(line - row.row.line);
      return { row, jar, away, like: (now ? likeness(told, now) : 0) + (away === 0 ? 1 : 0) };
    });
  });
  const used = new Set<string>();
  for (const { row, jar } of candidates.toSorted((a, b) => b.like - a.like || a.away - b.away)) {
    if (pairs.has(row) || used.has(jar.uid)) continue;
    pairs.set(row, jar);
    used.add(jar.uid);
  }
  return pairs;
}
