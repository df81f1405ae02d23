// What is left of a package, drawn: pieces one by one, a bag filled as far as it is. Decoration: words beside it say it.
import { Grain } from '../parts/grain';

const MOST_DRAWN = 120;
const ACROSS = 15;

/** Capsules or tablets, those that are left filled. */
export function Pieces({ left, of }: { readonly left: number; readonly of: number }) {
  if (of > MOST_DRAWN || of < 1) return null;
  const rows = Math.ceil(of / ACROSS);
  return (
    <svg className="pieces" viewBox={`0 0 ${ACROSS * 22} ${rows * 15}`} aria-hidden="true">
      {Array.from({ length: of }, (_, at) => (
        <rect
          key={at}
          className={at < left ? 'piece' : 'piece used'}
          x={(at % ACROSS) * 22 + 1}
          y={Math.floor(at / ACROSS) * 15 + 2}
          width="19"
          height="10"
          rx="5"
        />
      ))}
    </svg>
  );
}

/** A bag, filled to a part of it (0 to 1); null: nobody can tell. */
export function Bag({ full, grain }: { readonly full: number | null; readonly grain: number }) {
  const id = `grain-${grain}`;
  const level = 12 + (1 - (full ?? 0)) * 66;
  return (
    <svg className="bag" viewBox="0 0 70 86" aria-hidden="true">
      <defs>
        <Grain id={id} grain={grain} />
        <clipPath id={`bag-${grain}`}>
          <path d="M6 4Q35 -3 64 4L68 80Q35 88 2 80Z" />
        </clipPath>
      </defs>
      <path className={full === null ? 'bag-body open' : 'bag-body'} d="M6 4Q35 -3 64 4L68 80Q35 88 2 80Z" />
      {full !== null && full > 0 && (
        <g clipPath={`url(#bag-${grain})`}>
          <rect className="bag-fill" x="0" y={level} width="70" height="86" />
          <rect x="0" y={level} width="70" height="86" fill={`url(#${id})`} />
        </g>
      )}
      <path className="bag-rim" d="M6 4Q35 -3 64 4L68 80Q35 88 2 80Z" />
    </svg>
  );
} // prettier-ignore
