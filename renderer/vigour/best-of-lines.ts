// One answer over all lines: whose verdict comes first where several are kept up side by side. Pure.
import type { Reply } from '../../core/contract';
import type { Known } from './line-list';

/**
 * The line whose advised seed stands first in the ranking over all that is kept; null where a fresh start stands before every
 * advised seed, or none is advised.
 */
export function bestOf(
  lines: readonly Known[],
  { ranking }: Pick<Reply<'advice.next'>, 'ranking'>,
): Known | null {
  for (const { jar, portion, allowed, kind } of ranking) {
    if (!allowed) continue;
    if (kind === 'fresh start') return null;
    const found = lines.find(
      ({ verdict: { verdict, seed } }) =>
        verdict !== 'start afresh' && seed?.jar === jar && seed.portion === portion,
    );
    if (found) return found;
  }
  return null;
}
