// What each column is taken to mean, with one of its cells and how that was read; another meaning can be chosen.
import type { NoteColumn, NotesPreview } from '../../core/contract';
import { rematch } from './notes-store';

const meanings: Record<NoteColumn, string> = {
  date: 'day it was made',
  jar: 'letter of the jar',
  label: 'day and letter together',
  seed: 'what seeded it',
  amount: 'how much seed',
  milk: 'milk',
  'milk amount': 'how much milk',
  addition: 'addition',
  'addition amount': 'how much of the addition',
  hours: 'hours held warm',
  start: 'when the hold began',
  end: 'when the hold ended',
  temperature: 'temperature',
  set: 'how it set',
  ph: 'pH',
  whey: 'whey',
  smell: 'smell',
  colour: 'colour',
  texture: 'texture',
  tang: 'tang',
  volume: 'final volume',
  vessel: 'vessel',
  spoiled: 'spoiled or not',
  price: 'price',
  note: 'note',
  ignore: 'leave this column out',
};

// From the words themselves: the list in the contract would bring every record's schema into the page.
const names = Object.keys(meanings) as NoteColumn[];

/** One field for each column of the file. */
export function Columns({
  columns,
  mapping,
}: {
  readonly columns: NotesPreview['columns'];
  readonly mapping: Readonly<Record<string, NoteColumn>>;
}) {
  return (
    <section className="notes-part" aria-labelledby="columns-title">
      <h2 id="columns-title">What the columns mean</h2>
      <ul className="columns">
        {columns.map(({ heading, meaning, says }, at) => {
          const chosen = mapping[heading] ?? meaning;
          return (
            // Two columns may have the same heading.
            <li key={`${at} ${heading}`} className="column">
              <label className="column-heading" htmlFor={`column-${at}`}>
                {heading || `Column ${at + 1}`}
              </label>
              <select
                id={`column-${at}`}
                className="input"
                aria-describedby={`column-${at}-said`}
                value={chosen ?? ''}
                onChange={(event) => {
                  const one = names.find((name) => name === event.target.value);
                  rematch(heading, one ?? null);
                }}
              >
                {chosen === null && <option value="">not recognised</option>}
                {names.map((name) => (
                  <option key={name} value={name}>
                    {meanings[name]}
                  </option>
                ))}
              </select>
              <span className="column-said soft small" id={`column-${at}-said`}>
                {says}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
