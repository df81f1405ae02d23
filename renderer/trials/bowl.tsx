// A bowl with its code, as it stands before a taster; once it is known what was in it, with the grain of that. Decoration: the
// words stand beside it.
import { useId } from 'react';
import { Grain } from '../parts/grain';

interface Props {
  readonly text: string;
  /** Which grain, once it is revealed; null: none, or nobody knows yet. */
  readonly grain?: number | null;
}

export function Bowl({ text, grain = null }: Props) {
  const id = useId();
  return (
    <svg className="bowl" viewBox="0 0 88 66" aria-hidden="true">
      {grain !== null && (
        <defs>
          <Grain id={id} grain={grain} />
        </defs>
      )}
      <path className="bowl-body" d="M3 9C4 40 20 63 32 63H56C68 63 84 40 85 9Z" />
      {grain !== null && <path fill={`url(#${id})`} d="M13 42C19 54 26 61 32 61H56C62 61 69 54 75 42Z" />}
      <ellipse className="bowl-rim" cx="44" cy="9" rx="41" ry="7" />
      <text className="bowl-code" x="44" y="39">
        {text}
      </text>
    </svg>
  );
}

/** A small square with the grain; plain is an empty one. */
export function GrainSquare({ grain }: { readonly grain: number | null }) {
  const id = useId();
  return (
    <svg className="grain-square" viewBox="0 0 30 30" aria-hidden="true">
      {grain !== null && (
        <defs>
          <Grain id={id} grain={grain} />
        </defs>
      )}
      <rect className="bowl-body" x="1" y="1" width="28" height="28" rx="7" />
      {grain !== null && <rect x="2" y="2" width="26" height="26" rx="6" fill={`url(#${id})`} />}
    </svg>
  );
}
