// The newest jar in one sentence: its generation and what seeded it, readable without finding it in the drawing.
import { useMemo } from 'react';
import type { Drawing } from '../../core/contract';
import { generationWords, warningWords } from './flags';
import { useJars } from './use-jars';

/** Index of the newest jar: the latest day, then the deepest, then the last entered. */
export function newestOf(drawing: Pick<Drawing, 'keys' | 'generation' | 'days'>): number {
  let best = 0;
  const rank = (index: number): number => {
    const day = drawing.days[index] ?? NaN;
    return Number.isNaN(day) ? -1e9 : day;
  };
  for (let i = 1; i < drawing.keys.length; i += 1) {
    const by = rank(i) - rank(best) || (drawing.generation[i] ?? 0) - (drawing.generation[best] ?? 0);
    if (by >= 0) best = i;
  }
  return best;
}

export function Newest(props: {
  readonly drawing: Drawing;
  readonly newest: number;
  readonly onGo: (key: number) => void;
}) {
  const key = props.drawing.keys[props.newest] ?? 0;
  const keys = useMemo(() => [key], [key]);
  const jar = useJars(keys).get(key);
  const count = props.drawing.keys.length;
  const warning = warningWords(props.drawing.flags[props.newest] ?? 0);
  // A label is not broken across two lines.
  const seeds = jar?.seeds.map((seed) => seed.label.replaceAll(' ', '\u00a0')).join(' and ') ?? '';
  return (
    <p className="family-newest">
      <span className="soft">{count === 1 ? 'One jar.' : `${count.toLocaleString('en')} jars.`} </span>
      {jar && (
        <>
          <span className="soft">Newest: </span>
          <button className="jar-link" type="button" onClick={() => props.onGo(key)}>
            {jar.label}
          </button>
          {warning !== '' && (
            <>
              , <strong>{warning}</strong>
            </>
          )}
          , {generationWords(jar.generation.deepest, jar.generation.atLeast)}
          {seeds !== '' && `, seeded by ${seeds}`}.
        </>
      )}
    </p>
  );
}
