// The first words on costs, and the way to all of them.
import type { Reply } from '../../core/contract';
import type { Answer } from '../state/ledger-calls';
import { go } from '../state/store';

interface Props {
  readonly costs: Answer<Reply<'cost.list'>> | null;
}

/** A jar, a start, in one sentence. */
export function CostsInShort({ costs }: Props) {
  if (costs === null || !costs.ok) return null;
  const { sentence, notCounted } = costs.value;
  return (
    <p>
      <strong>{sentence}</strong> <span className="soft">{notCounted}</span>{' '}
      <button type="button" className="linked" onClick={() => go('costs')}>
        All costs
      </button>
    </p>
  );
}
