// Rows that are in the ledger already under other headings: a sheet that gained a column, or lost one, has changed no row.
import { plain } from '../../quantities/quantities';
import type { Layout } from '../layout/column-meanings';
import type { LedgerJar, NotesInput } from '../notes-plan';
import { hasTrait } from '../meanings';
import { type NoteRow, putTo } from './note-row';
import { headingKey, rowText } from './same-row';

interface Kept {
  readonly uid: string;
  readonly occurrence: number;
  readonly gone: readonly string[];
}

/** Whether a row names another jar than that one. Letters and words that it does not tell contradict nothing. */
function contradicts({ identity: { day, letter, word } }: NoteRow, jar: LedgerJar | undefined): boolean {
  const other = (one: string | null, there: string | null | undefined): boolean =>
    one !== null && there !== null && there !== undefined && plain(one) !== plain(there);
  return other(day, jar?.day) || other(letter, jar?.letter) || other(word, jar?.word);
}

/** The jar that a row is: one whose letter it names before one that it does not contradict. */
function pick(row: NoteRow, rows: Kept[], jars: ReadonlyMap<string, LedgerJar>): Kept | null {
  const letter = plain(row.identity.letter ?? '');
  const named = ({ uid }: Kept): boolean => plain(jars.get(uid)?.letter ?? '') === letter;
  const fits = ({ uid }: Kept): boolean => !contradicts(row, jars.get(uid));
  const first = letter === '' ? -1 : rows.findIndex((one) => named(one) && fits(one));
  const at = first >= 0 ? first : rows.findIndex(fits);
  return at < 0 ? null : (rows.splice(at, 1)[0] ?? null);
}

/** Finds rows that came in under other headings, by the columns that both have. Sets `here` and `other`. */
export function throughOtherColumns(rows: readonly NoteRow[], layout: Layout, input: NotesInput): void {
  if (rows.every(({ here }) => here !== null)) return;
  const columns = new Map(layout.columns.map((column) => [headingKey(column.heading), column.meaning]));
  const jars = new Map(input.ledger.jars.map((jar) => [jar.uid, jar]));
  const claimed = new Set(rows.map(({ here }) => here));
  for (const form of input.ledger.forms) {
    const theirs = new Set(form.headings.map(headingKey));
    const common = new Set([...columns.keys()].filter((heading) => theirs.has(heading)));
    const told = [...common].map((heading) => columns.get(heading));
    const days = told.some((meaning) => hasTrait(meaning, 'day'));
    const same = common.size === columns.size && common.size === theirs.size;
    if (same || !told.includes('seed') || !days) continue;
    const kept = new Map<string, Kept[]>();
    for (const { uid, cells, occurrence } of form.rows()) {
      if (claimed.has(uid)) continue;
      const text = rowText(cells, common);
      const gone = Object.keys(cells).filter(
        (heading) => heading !== '' && !columns.has(headingKey(heading)),
      );
      putTo(kept, text, { uid, occurrence, gone });
    }
    /** The first row of each text: a jar that is named again is that jar. */
    const first = new Map<string, NoteRow>();
    for (const row of rows) {
      if (row.here !== null) continue;
      const found = pick(row, kept.get(rowText(row.own, common)) ?? [], jars);
      const before = found || row.identity.letter === null ? undefined : first.get(row.rawText);
      if (before) Object.assign(row, { here: before.here, other: before.other });
      if (!found) continue;
      const added = Object.keys(row.own).filter(
        (heading) => !theirs.has(headingKey(heading)) && heading !== '',
      );
      row.here = found.uid;
      row.other = { added, gone: found.gone, occurrence: found.occurrence };
      claimed.add(found.uid);
      first.set(row.rawText, row);
    }
  }
}
