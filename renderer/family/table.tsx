// The same family as a table: sortable, only the rows in sight in the page.
import { useMemo, useRef, useState } from 'react';
import type { Drawing, JarView } from '../../core/contract';
import { FLAG } from '../../core/shapes/drawing-flags';
import { generationWords } from '../parts/jar-flags';
import { sortedRows, type SortBy } from './table-order';
import { withYear } from './find';
import { useJars } from './use-jars';
import { useSize } from '../parts/use-size';

const ROW_HEIGHT = 48;
const SPARE = 8;

const columns: readonly { readonly by: SortBy | null; readonly title: string }[] = [
  { by: 'day', title: 'Jar' },
  { by: 'generation', title: 'Generation' },
  { by: 'set', title: 'Set' },
  { by: null, title: 'Seeded by' },
  { by: null, title: 'Stirred in' },
  { by: null, title: 'Line' },
  { by: 'state', title: 'To know' },
];

/** What else there is to know; spoiled and set aside stand beside the label. */
function state(flags: number): string {
  const parts = [];
  if (flags & FLAG.lost) parts.push('nobody can name it');
  if (flags & FLAG.look) parts.push('look first');
  if (flags & FLAG.onShelf) parts.push('on the shelf');
  return parts.join(', ');
}

/** What nobody may miss about a jar stands beside its name, with a mark that colour adds nothing to. */
function RowWarning({ flags }: { readonly flags: number }) {
  const spoiled = (flags & FLAG.spoiled) !== 0;
  if (!spoiled && (flags & FLAG.setAside) === 0) return null;
  return (
    <span className={spoiled ? 'row-warning spoiled' : 'row-warning'}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {spoiled ? <path d="M3 3L13 13M13 3L3 13" /> : <path className="held" d="M3 8H13" />}
      </svg>
      {spoiled ? 'spoiled' : 'set aside'}
    </span>
  );
}

const share = (value: number): string =>
  value >= 0.995 ? '' : ` (${Math.max(1, Math.round(value * 100))} %)`;

function cells(jar: JarView | undefined, flags: number): string[] {
  if (!jar) return ['', '', '', '', '', ''];
  return [
    generationWords(jar.generation.deepest, jar.generation.atLeast).replace('generation ', ''),
    jar.setWord ?? (jar.outcomeKnown ? 'not noted' : 'unknown'),
    jar.seeds.map((seed) => `${seed.label}${share(seed.share)}`).join(', '),
    jar.additions.join(', '),
    jar.lines.join(', '),
    state(flags),
  ];
}

interface Props {
  readonly drawing: Drawing;
  readonly selected: number | null;
  readonly onSelect: (index: number) => void;
}

export function FamilyTable({ drawing, selected, onSelect }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const [sort, setSort] = useState<{ by: SortBy; down: boolean }>({ by: 'day', down: true });
  const [top, setTop] = useState(0);
  const order = useMemo(() => sortedRows(drawing, sort.by, sort.down), [drawing, sort]);
  const from = Math.max(0, Math.floor(top / ROW_HEIGHT) - SPARE);
  const to = Math.min(order.length, Math.ceil((top + (size?.height ?? 600)) / ROW_HEIGHT) + SPARE);
  const rows = useMemo(() => [...order.subarray(from, to)], [order, from, to]);
  const keys = useMemo(() => rows.map((index) => drawing.keys[index] ?? 0), [rows, drawing]);
  const views = useJars(keys);
  return (
    <section
      className="family-table"
      ref={frame}
      /* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- a scrolling region must be reachable by keyboard */
      tabIndex={0}
      aria-label="The family as a table"
      onScroll={(event) => setTop(event.currentTarget.scrollTop)}
    >
      <div className="table-room" style={{ height: (order.length + 1) * ROW_HEIGHT + 8 }}>
        <table aria-rowcount={order.length + 1} style={{ top: from * ROW_HEIGHT }}>
          <thead>
            <tr aria-rowindex={1}>
              {columns.map((column) => {
                const { by } = column;
                const sorted = by !== null && sort.by === by;
                return (
                  <th
                    key={column.title}
                    scope="col"
                    aria-sort={sorted ? (sort.down ? 'descending' : 'ascending') : undefined}
                  >
                    {by === null ? (
                      column.title
                    ) : (
                      <button
                        className="button quiet"
                        type="button"
                        onClick={() =>
                          setSort((before) => ({ by, down: before.by === by ? !before.down : by === 'day' }))
                        }
                      >
                        {column.title}
                        <span aria-hidden="true">{sorted ? (sort.down ? ' ↓' : ' ↑') : ''}</span>
                      </button>
                    )}
                  </th>
                );
              })}
            </tr>
          </thead>
          <tbody>
            {rows.map((index, place) => {
              const key = drawing.keys[index] ?? 0;
              const jar = views.get(key);
              const flags = drawing.flags[index] ?? 0;
              const warned = (flags & (FLAG.spoiled | FLAG.setAside)) !== 0;
              return (
                <tr
                  key={key}
                  aria-rowindex={from + place + 2}
                  className={
                    [warned ? 'warned' : '', index === selected ? 'chosen' : ''].join(' ').trim() || undefined
                  }
                >
                  <th scope="row">
                    <div className="row-name">
                      <button
                        className="button quiet"
                        type="button"
                        id={`row-${key}`}
                        aria-pressed={index === selected}
                        onClick={() => onSelect(index)}
                      >
                        {jar ? withYear(jar) : '…'}
                      </button>
                      <RowWarning flags={flags} />
                    </div>
                  </th>
                  {cells(jar, flags).map((text, at) => (
                    <td key={columns[at + 1]?.title} title={text}>
                      {text}
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
