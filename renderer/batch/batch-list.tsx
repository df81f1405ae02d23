// The batches, by year, newest first: each with its jars as they set, its seed and what was stirred in; found by words.
import { middleDay } from '../../core/quantities/day-ranges';
import { Fragment } from 'react';
import type { Reply } from '../../core/contract';
import { go } from '../state/store';
import { JarDefs, JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import { PlannedJar } from './planned-jar';
import { rowWords } from './row-words';

export type Row = Reply<'batch.list'>['batches'][number];

export interface Batches {
  /** null until they are read. */
  readonly rows: readonly Row[] | null;
  readonly more: boolean;
  readonly readMore: () => void;
}

const MOST_JARS = 4;

/** The first few of its jars, as they set. Decoration: words beside them say the same. */
function Jars({ row }: { readonly row: Row }) {
  const made = row.jars.filter(({ generation }) => generation !== null);
  return (
    <span className="batch-row-jars" aria-hidden="true">
      {made.slice(0, MOST_JARS).map((jar) => (
        <JarPicture key={jar.id} generation={jar.generation ?? 1} {...lookOf(jar, jar.atLeast)} />
      ))}
      {made.length === 0 && row.jars.slice(0, MOST_JARS).map(({ id }) => <PlannedJar key={id} plain />)}
      {made.length > MOST_JARS && <span className="soft">+{made.length - MOST_JARS}</span>}
    </span>
  );
}

function BatchRow({ row, open }: { readonly row: Row; readonly open: boolean }) {
  const from = row.seeds.slice(0, 2).join(' and ');
  const more = row.seeds.length > 2 ? ' and more' : '';
  return (
    <button
      type="button"
      className={row.jars.some((jar) => jar.spoiled) ? 'batch-row spoiled' : 'batch-row'}
      aria-current={open ? 'true' : undefined}
      onClick={() => go('batch', row.id)}
    >
      <span className="batch-row-label">{row.label}</span>
      <Jars row={row} />
      <span className="soft">
        {rowWords(row).map(({ says, caution }, at) => (
          <Fragment key={says}>
            {at > 0 && ' · '}
            {caution ? <strong className="batch-row-caution">{says}</strong> : says}
          </Fragment>
        ))}
      </span>
      {(from !== '' || row.additions.length > 0) && (
        <span className="soft small">
          {[from === '' ? null : `from ${from}${more}`, ...row.additions, row.plain && 'plain']
            .filter(Boolean)
            .join(' · ')}
        </span>
      )}
    </button>
  );
}

interface Props {
  readonly open: string | null;
  /** Whether the list is the whole screen, its heading the page's. */
  readonly alone: boolean;
  readonly batches: Batches;
  readonly typed: string;
  readonly onType: (typed: string) => void;
}

/** The year it stands in: of a range of days that of their middle. */
const yearOf = ({ madeOn, madeBetween }: Row): string =>
  (madeOn ?? (madeBetween ? middleDay(madeBetween) : '')).slice(0, 4);

export function BatchList({ open, alone, batches, typed, onType }: Props) {
  const { rows, more, readMore } = batches;
  if (rows === null) return <p className="soft">Opening…</p>;
  if (rows.length === 0 && typed === '')
    return <p>No batch is recorded yet. “New batch” writes down the first: its day, its seed, its jars.</p>;
  const Year = alone ? 'h2' : 'h3';
  const years = [...new Set(rows.map(yearOf))];
  return (
    <nav aria-label="Batches" className="batch-list">
      <svg width="0" height="0" className="jar" aria-hidden="true">
        <JarDefs />
      </svg>
      <input
        type="search"
        className="input batch-find"
        aria-label="Find a batch"
        placeholder="Day, seed or fibre"
        value={typed}
        onChange={(event) => onType(event.target.value)}
      />
      {rows.length === 0 && <p>No batch says “{typed.trim()}”.</p>}
      {years.map((year) => (
        <section key={year}>
          <Year className="batch-year">{year}</Year>
          <ul>
            {rows
              .filter((row) => yearOf(row) === year)
              .map((row) => (
                <li key={row.id}>
                  <BatchRow row={row} open={row.id === open} />
                </li>
              ))}
          </ul>
        </section>
      ))}
      {more && (
        <button type="button" className="button quiet" onClick={readMore}>
          Earlier batches
        </button>
      )}
    </nav>
  );
}
