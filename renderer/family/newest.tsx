// The newest jar: which one it is, and in one sentence its generation and what seeded it.
import { useMemo } from 'react';
import type { Drawing } from '../../core/contract';
import { generationWords, warningWords } from '../parts/jar-flags';
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

/** For the screen reader, which sees no drawing at a glance. */
export function Newest(props: {
  readonly drawing: Pick<Drawing, 'keys' | 'flags'>;
  readonly newest: number;
}) {
  const key = props.drawing.keys[props.newest] ?? 0;
  const keys = useMemo(() => [key], [key]);
  const jar = useJars(keys).get(key);
  const count = props.drawing.keys.length;
  const warning = warningWords(props.drawing.flags[props.newest] ?? 0);
  const seeds = jar?.seeds.map((seed) => seed.label).join(' and ') ?? '';
  return (
    <p className="visually-hidden family-newest">
      {count === 1 ? 'One jar.' : `${count.toLocaleString('en')} jars.`}{' '}
      {jar &&
        `Newest: ${[
          jar.label,
          ...(warning === '' ? [] : [warning]),
          generationWords(jar.generation.deepest, jar.generation.atLeast),
          ...(seeds === '' ? [] : [`seeded by ${seeds}`]),
        ].join(', ')}.`}
    </p>
  );
}
