// What is kept back of a line, at its end: cubes, a pot, flakes, drawn as they are. A reserve that is advised as the next seed
// glows here. Moves with the drawing by CSS variables, as the heads do.
import { type CSSProperties, memo } from 'react';
import { dayLabel } from '../../core/lineage/labels';
import type { KeptAt } from './kept-marks';
import type { Now } from '../parts/use-now';

type Kept = Now['kept'][number];

/** As many cubes as are drawn one by one. */
const MOST_DRAWN = 12;
const A_ROW = 6;

function Cubes({ pieces }: { readonly pieces: number }) {
  const drawn = Math.min(pieces, MOST_DRAWN);
  const rows = Math.ceil(drawn / A_ROW);
  return (
    <svg width={Math.min(drawn, A_ROW) * 20} height={rows * 20} aria-hidden="true" className="kept-picture">
      {Array.from({ length: drawn }, (_, at) => (
        <rect
          key={at}
          x={(at % A_ROW) * 20 + 1.5}
          y={Math.floor(at / A_ROW) * 20 + 1.5}
          width="16"
          height="16"
          rx="4"
        />
      ))}
    </svg>
  );
}

/** A lidded pot; flakes in a bag; something frozen in one piece. */
function Vessel({ place }: Pick<Kept, 'place'>) {
  return (
    <svg width="38" height="32" viewBox="0 0 38 32" aria-hidden="true" className="kept-picture">
      {place === 'dried' ? (
        <path d="M7 6H31L34 28Q19 32 4 28ZM7 6Q19 11 31 6" />
      ) : (
        <>
          <path d="M5 12H33V24Q33 30 27 30H11Q5 30 5 24Z" />
          <rect className="kept-lid" x="2" y="6" width="34" height="6" rx="2" />
        </>
      )}
    </svg>
  );
}

const placed = { fridge: 'since', freezer: 'frozen', dried: 'dried' } as const;

/** "12 cubes of 30 Nov a". */
const keptWords = ({ pieces, name, label }: Kept): string =>
  pieces === null ? `${name} of ${label}` : `${pieces} ${name.replace(/^freezer /, '')} of ${label}`;

interface Props {
  readonly all: readonly KeptAt[];
  /** What is advised as the next seed. */
  readonly next: ReadonlySet<string>;
  readonly onGo: (key: number) => void;
}

export const KeptLayer = memo(function KeptLayer({ all, next, onGo }: Props) {
  return (
    <div className="kept-layer">
      {all.map(({ lane, x, y, kept, more }) => (
        <ul key={lane} aria-label="Kept back" style={{ '--x': x, '--y': y } as CSSProperties}>
          {kept.map((one, at) => (
            <li key={one.id}>
              <button
                type="button"
                className={next.has(one.id) ? 'kept next' : 'kept'}
                onClick={() => onGo(one.key)}
                title={`To ${one.label}, which it is kept of`}
              >
                {one.pieces === null ? <Vessel place={one.place} /> : <Cubes pieces={one.pieces} />}
                <span className="kept-words">
                  {keptWords(one)}
                  <span className="soft">
                    {placed[one.place]} {dayLabel(one.keptOn, true)}
                  </span>
                  {next.has(one.id) && <strong>next seed</strong>}
                  {at === kept.length - 1 && more > 0 && <span className="soft">and {more} more</span>}
                </span>
              </button>
            </li>
          ))}
        </ul>
      ))}
    </div>
  );
});
