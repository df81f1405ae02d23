// What each column is taken to mean, with one of its cells and how that was read; another meaning can be chosen.
import type { NoteColumn, NotesPreview } from '../../core/contract';
import { columnsRight, LOOK_AT_COLUMNS } from '../../core/says/sheet-says';
import { confirmColumns, rematch } from './notes-store';

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

/** What one column means, with one of its cells and how that was read. */
function ColumnField({
  id,
  heading,
  shown = heading,
  chosen,
  says,
}: {
  readonly id: string;
  readonly heading: string;
  readonly shown?: string;
  readonly chosen: NoteColumn | null;
  readonly says: string;
}) {
  return (
    <li className="column">
      <label className="column-heading" htmlFor={id}>
        {shown}
      </label>
      <select
        id={id}
        className="input"
        aria-describedby={`${id}-said`}
        value={chosen ?? ''}
        onChange={(event) => rematch(heading, names.find((name) => name === event.target.value) ?? null)}
      >
        {chosen === null && <option value="">not recognised</option>}
        {names.map((name) => (
          <option key={name} value={name}>
            {meanings[name]}
          </option>
        ))}
      </select>
      <span className="column-said soft small" id={`${id}-said`}>
        {says}
      </span>
    </li>
  );
}

/** Columns that only their cells told the meaning of, first: what was read wrong there comes in wrong in every row. */
export function Doubtful({
  columns,
  doubtful,
  mapping,
}: {
  readonly columns: NotesPreview['columns'];
  /** Headings of those that ever were: they stay, so that an answer moves nothing. */
  readonly doubtful: ReadonlySet<string>;
  readonly mapping: Readonly<Record<string, NoteColumn>>;
}) {
  const open = columns.filter(({ heading }) => doubtful.has(heading));
  if (open.length === 0) return null;
  const left = open.filter(({ heading }) => mapping[heading] === undefined);
  return (
    <div className="notice stack">
      <p>{LOOK_AT_COLUMNS}</p>
      <ul className="columns">
        {open.map(({ heading, meaning, says }) => (
          <ColumnField
            key={heading}
            id={`doubtful-${columns.findIndex((one) => one.heading === heading)}`}
            heading={heading}
            chosen={mapping[heading] ?? meaning}
            says={says}
          />
        ))}
      </ul>
      <div className="row">
        <button
          className="button"
          type="button"
          disabled={left.length === 0}
          onClick={() => confirmColumns(left)}
        >
          {columnsRight(open.length)}
        </button>
      </div>
    </div>
  );
}

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
        {columns.map(({ heading, meaning, says }, at) => (
          // Two columns may have the same heading.
          <ColumnField
            key={`${at} ${heading}`}
            id={`column-${at}`}
            heading={heading}
            shown={heading || `Column ${at + 1}`}
            chosen={mapping[heading] ?? meaning}
            says={says}
          />
        ))}
      </ul>
    </section>
  );
}
