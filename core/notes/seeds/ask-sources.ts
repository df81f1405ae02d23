// Names among the seeds that may be something else than they were taken for: each is asked about once, for all its rows.
import { plain } from '../../quantities/quantities';
import type { NotesInput } from '../notes-plan';
import { question } from '../notes-says';
import { isNew, type NoteRow } from '../rows/note-row';
import type { Question } from '../said';

/** A name among the seeds that may be something else than it was taken for, and the rows that have it. */
export interface OpenName {
  readonly name: string;
  readonly taken: 'product' | 'culture' | 'unknown';
  readonly rows: NoteRow[];
}

/** "source:Garden Mix", "culture:2:Anna's starter": the row is the first that has the name, and any may stand there. */
const ID = /^(?:source|product|culture):(?:\d+:)?(.+)$/s;
const idOf = ({ name, taken, rows }: OpenName): string =>
  taken === 'unknown' ? `source:${name}` : `${taken}:${rows[0]?.row.line ?? 0}:${name}`;

/** What the keeper said that names are, by their plain form: "product", "culture" or "jar". */
export const namesAnswered = (answers: NotesInput['answers']): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(answers).flatMap(([id, answer]) => {
      const name = ID.exec(id)?.[1];
      return name === undefined ? [] : [[plain(name), answer.trim().toLowerCase()] as const];
    }),
  );
/** More of them are asked about once some are answered. */
const MOST_ASKED = 50;

const CHOICES = [
  { value: 'product', label: 'A product' },
  { value: 'culture', label: 'A culture somebody gave me' },
  { value: 'jar', label: 'A jar of mine: I mend the rows' },
] as const;

const SAYS: Readonly<Record<OpenName['taken'], (name: string, rows: readonly number[]) => string>> = {
  unknown: (name, rows) => question.unknownSource(name, rows),
  product: (name) => question.product(name),
  culture: (name) => question.culture(name),
};

/** A question for each open name that a row has which is not in the ledger yet. Names that keep rows aside come first. */
export function askSources(open: ReadonlyMap<string, OpenName>, { answers }: NotesInput): Question[] {
  const answered = namesAnswered(answers);
  return [...open.values()]
    .map((one) => ({ ...one, rows: one.rows.filter(isNew) }))
    .filter(({ name, rows }) => rows.length > 0 && !answered.has(plain(name)))
    .toSorted((a, b) => Number(b.taken === 'unknown') - Number(a.taken === 'unknown'))
    .slice(0, MOST_ASKED)
    .map((one) => ({
      id: idOf(one),
      row: one.taken === 'unknown' ? null : (one.rows[0]?.row.line ?? null),
      sentence: SAYS[one.taken](
        one.name,
        one.rows.map(({ row }) => row.line),
      ),
      choices: CHOICES,
      blocks: false,
    }));
}
