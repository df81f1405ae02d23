// Rows of notes as they came in: what is known of them when notes are read again.
import type { LedgerView, NotedForm } from '../../core/notes/notes-door';
import type { Ledger } from './ledger';

interface Noted {
  readonly key: number;
  readonly file: string;
  readonly headings: string;
  readonly line: number;
  readonly sha: string;
  readonly read: string | null;
  readonly occurrence: number;
  readonly uid: string | null;
}

/** The rows that came in under some headings, whose cells came with them. */
function formOf({ rows }: Ledger, headings: string, uids: ReadonlyMap<number, string>): NotedForm {
  return {
    headings: JSON.parse(headings) as string[],
    *rows() {
      const found = rows
        .prepare(
          `SELECT n.key, n.cells, n.occurrence FROM note_file f JOIN note_row n ON n.file = f.key
            WHERE f.headings = ? AND n.cells IS NOT NULL ORDER BY n.key`,
        )
        .all(headings) as { key: number; cells: string; occurrence: number }[];
      for (const { key, cells, occurrence } of found) {
        const uid = uids.get(key);
        if (uid !== undefined) yield { uid, occurrence, cells: JSON.parse(cells) as Record<string, string> };
      }
    },
  };
}

/** What was answered about the rows, by jar. */
function answersIn({ rows }: Ledger, uids: ReadonlyMap<number, string>): LedgerView['answered'] {
  const answered = new Map<string, Map<string, string>>();
  const all = rows.prepare('SELECT note_row, question, answer FROM note_answer ORDER BY key').all() as {
    note_row: number;
    question: string;
    answer: string;
  }[];
  for (const { note_row, question, answer } of all) {
    const uid = uids.get(note_row);
    if (uid === undefined) continue;
    const told = answered.get(uid) ?? new Map<string, string>();
    answered.set(uid, told.set(question, answer));
  }
  return answered;
}

/** What was answered about the files that rows came in with, under their headings. */
const choicesIn = ({ rows }: Ledger): LedgerView['choices'] =>
  (
    rows
      .prepare(
        `SELECT f.headings, a.question, a.answer FROM note_answer a JOIN note_row n ON n.key = a.note_row
           JOIN note_file f ON f.key = n.file
          WHERE a.question IN ('day order', 'spoons', 'letter alone', 'which seeds', 'which days')
             OR a.question LIKE 'column:%' OR a.question LIKE 'unit:%' ORDER BY a.key`,
      )
      .all() as { headings: string; question: string; answer: string }[]
  ).map(({ headings, ...choice }) => ({ ...choice, headings: JSON.parse(headings) as string[] }));

/** Rows as they last came in, and what was answered about them. */
export function notedIn(
  ledger: Ledger,
): Pick<LedgerView, 'raw' | 'read' | 'answered' | 'choices' | 'fromNotes' | 'forms'> {
  const noted = ledger.rows
    .prepare(
      `SELECT n.key, f.name AS file, f.headings, n.line, n.cells_sha AS sha, n.read_sha AS read, n.occurrence, r.uid
         FROM note_row n JOIN note_file f ON f.key = n.file LEFT JOIN record r ON r.key = n.jar ORDER BY n.key`,
    )
    .all() as Noted[];
  // A row that was taken over has two: what it said last is what counts.
  const last = new Map(noted.map((row) => [row.uid ?? `row ${row.key}`, row]));
  const raw = new Map<string, string>();
  const read = new Set<string>();
  const fromNotes = new Map<string, { file: string; line: number }>();
  const uids = new Map<number, string>();
  for (const { key, file, line, sha, read: meant, occurrence, uid } of last.values()) {
    raw.set(`${sha}:${occurrence}`, uid ?? '');
    if (meant !== null) read.add(meant);
    if (uid === null) continue;
    fromNotes.set(uid, { file, line });
    uids.set(key, uid);
  }
  const headings = new Set([...last.values()].toReversed().map((row) => row.headings));
  return {
    raw,
    read,
    fromNotes,
    answered: answersIn(ledger, uids),
    choices: choicesIn(ledger),
    forms: [...headings].map((one) => formOf(ledger, one, uids)),
  };
}
