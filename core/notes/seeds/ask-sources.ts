// Names among the seeds that are no jars: a name that starts a line is a product, or somebody's culture, which is said once
// and can be said to be something else; what may be a jar's nickname is asked about, once for all its rows.
import { plain } from '../../quantities/quantities';
import type { NotesInput } from '../notes-plan';
import { assumed, question } from '../notes-says';
import { isNew, type NoteRow } from '../rows/note-row';
import type { FileSays, Said } from '../said';

/** A name among the seeds that may be something else than it was taken for, and the rows that have it. */
export interface OpenName {
  readonly name: string;
  readonly taken: 'product' | 'culture' | 'unknown';
  readonly rows: NoteRow[];
}

/** "source:Garden Mix", as "culture:2:Anna's starter", whatever the row, was called before. */
const ID = /^(?:source|product|culture):(?:\d+:)?(.+)$/s;

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

/** What is said of each name that is no jar, and asked of those that may be one, where a row has it that is not in the ledger yet. */
export function saySources(open: ReadonlyMap<string, OpenName>, { answers }: NotesInput): FileSays {
  const answered = namesAnswered(answers);
  const names = [...open.values()]
    .map(({ name, taken, rows }) => ({
      id: `source:${name}`,
      name,
      taken,
      answer: answered.get(plain(name)) ?? null,
      lines: rows.filter(isNew).map(({ row }) => row.line),
    }))
    .filter(({ lines }) => lines.length > 0);
  const unknown = names.filter(({ taken, answer }) => taken === 'unknown' && answer === null);
  return {
    questions: unknown.slice(0, MOST_ASKED).map(({ id, name, lines }) => ({
      id,
      row: null,
      sentence: question.unknownSource(name, lines),
      choices: CHOICES,
      blocks: false,
    })),
    said: names.flatMap(({ id, name, taken, answer, lines }): Said[] => {
      const as = CHOICES.find(({ value }) => value === answer)?.value ?? taken;
      return as === 'unknown'
        ? []
        : [{ row: null, sentence: assumed[as](name, lines), id, choices: CHOICES, chosen: as }];
    }),
  };
}
