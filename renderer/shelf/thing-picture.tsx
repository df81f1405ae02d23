// One thing on the shelf, drawn: a jar or pot filled as far as it is full, cubes one by one. Decoration: its words stand below.
import { useId } from 'react';
import { lookOf } from '../parts/jar-look';
import { BODY } from '../../core/pictures/jar-outline';
import { Lid } from '../parts/jar-shape';
import { FLAG } from '../../core/shapes/drawing-flags';
import type { Thing } from './things';

const FOOT = 60;
const FULL = 16.5;
/** Where what is left stands, in the jar's box; a full jar where what is left is not known. */
const levelOf = (share: number | null): number => FOOT - (FOOT - FULL) * Math.max(0.06, share ?? 1);

/** The surface at a height: wavy while it is runny or soft, a hollow where it is spooned, else level. */
function surface(y: number, set: number): string {
  if (set === 0 || set === 1) return `M5 ${y + 1.5}C14 ${y - 3} 22 ${y + 4} 31 ${y + 1}S48 ${y - 2.5} 57 ${y + 1.5}`;
  return set === 2 ? `M5 ${y}H18C23 ${y} 25 ${y + 4} 31 ${y + 4}S39 ${y} 44 ${y}H57` : `M5 ${y}H57`;
} // prettier-ignore

const POT = 'M6 22H56V50Q56 62 45 62H17Q6 62 6 50Z';

/** A numeral that is dark on what is in the jar and light above it where the theme is dark. */
function Numeral({ of, id, below }: { readonly of: number; readonly id: string; readonly below: number }) {
  const size = of > 99 ? ' many' : of > 9 ? ' two' : '';
  return (
    <>
      <clipPath id={`${id}-above`}>
        <rect x="-6" y="-10" width="74" height={below + 10} />
      </clipPath>
      <clipPath id={`${id}-below`}>
        <rect x="-6" y={below} width="74" height={80 - below} />
      </clipPath>
      <text className={`numeral open${size}`} x="31" y="56.5" clipPath={`url(#${id}-above)`}>
        {of}
      </text>
      <text className={`numeral${size}`} x="31" y="56.5" clipPath={`url(#${id}-below)`}>
        {of}
      </text>
    </>
  );
}

function Vessel({ thing, flags, set }: { readonly thing: Thing; readonly flags: number; readonly set: number }) {
  const id = useId();
  const pot = thing.form !== 'jar';
  const spoiled = (flags & FLAG.spoiled) !== 0;
  const known = thing.left.share !== null;
  const y = levelOf(thing.left.share);
  const top = pot ? Math.max(26, y) : y;
  const path = surface(top, set);
  return (
    <svg className="shelf-picture" viewBox="-6 -8 74 72.5" aria-hidden="true">
      <g className="jar">
        <clipPath id={`${id}-inside`}>
          <path d={pot ? POT : 'M6 12V51Q6 60 16 60H46Q56 60 56 51V12Z'} />
        </clipPath>
        <path className="body" d={pot ? POT : BODY} />
        <g clipPath={`url(#${id}-inside)`}>
          <path className={`contents set-${set > 4 ? 1 : set + 1}`} d={`${path}V64H5Z`} />
          {known && <path className="surface" d={path} />}
        </g>
        {spoiled && <path className="hatch" d={pot ? POT : BODY} />}
        {pot ? (
          <>
            <rect className="lid" x="3" y="14" width="56" height="10" rx="4" />
            <circle className="lid" cx="31" cy="11" r="5" />
          </>
        ) : (
          <Lid flags={flags} />
        )}
        <Numeral of={thing.generation} id={id} below={top + 1} />
        {thing.atLeast && (
          <text className="at-least" x="60" y="66">
            +
          </text>
        )}
      </g>
    </svg>
  );
} // prettier-ignore

const MOST_CUBES = 24;
const ROW = 6;

/** As many as there are, six in a row. */
function Cubes({ pieces }: { readonly pieces: number }) {
  const count = Math.min(MOST_CUBES, Math.max(1, Math.round(pieces)));
  const columns = Math.min(ROW, count);
  const rows = Math.ceil(count / ROW);
  const step = 19;
  return (
    <svg
      className="shelf-picture cubes"
      viewBox={`0 0 ${columns * step} ${rows * step}`}
      style={{ width: columns * 26, height: rows * 26 }}
      aria-hidden="true"
    >
      {Array.from({ length: count }, (_, at) => (
        <g
          key={at}
          transform={`translate(${(at % ROW) * step + 1} ${(rows - 1 - Math.floor(at / ROW)) * step + 1})`}
        >
          <rect className="shelf-cube" width="17" height="17" rx="4" />
          <path className="shelf-cube-light" d="M4 5H9" />
        </g>
      ))}
    </svg>
  );
}

export function ThingPicture({ thing }: { readonly thing: Thing }) {
  if (thing.form === 'cubes') return <Cubes pieces={thing.left.pieces ?? 1} />;
  const spoiled = thing.discard !== null;
  const { setWord, flags } = lookOf({ setWord: thing.setWord, spoiled, caution: thing.caution });
  return <Vessel thing={thing} flags={flags} set={setWord} />;
}
