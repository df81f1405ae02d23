// What a jar, what is stirred in and a fresh start usually cost; what has no price is said, with its reason.
import type { Reply } from '../../core/contract';
import type { Answer } from '../state/ledger-calls';
import { sentenceCase } from '../state/store';

type Cost = Reply<'cost.list'>['costs'][number];

/** "priced in 9 of 12 jars"; of a start its batches. */
function known({ priced, of, what }: Cost): string {
  const unit = what === 'start' ? 'start' : 'jar';
  if (of === 1) return `priced in the one ${unit}`;
  return priced === of ? `priced in all ${of} ${unit}s` : `priced in ${priced} of ${of} ${unit}s`;
}

const someKnown = (costs: readonly Cost[]): boolean => costs.some(({ usual }) => usual !== null);

interface Props {
  readonly costs: Answer<Reply<'cost.list'>> | null;
}

/** The first words of the screen: a jar, a start; and a way to all of it. */
export function CostsInShort({ costs }: Props) {
  if (costs === null || !costs.ok) return null;
  const { sentence, notCounted } = costs.value;
  return (
    <p>
      <strong>{sentence}</strong> <span className="soft">{notCounted}</span>{' '}
      {someKnown(costs.value.costs) && (
        <button
          type="button"
          className="linked"
          onClick={() => {
            const list = document.getElementById('costs');
            list?.scrollIntoView({ block: 'start' });
            list?.focus();
          }}
        >
          All costs
        </button>
      )}
    </p>
  );
}

/** Each of them, with what of it has no price and why. */
export function Costs({ costs }: Props) {
  if (costs === null) return null;
  if (!costs.ok) return <p className="notice caution">{costs.sentence}</p>;
  const all = costs.value.costs;
  // Where nothing has a price, the sentence above has said so.
  if (!someKnown(all)) return null;
  return (
    <section className="stack" aria-label="Costs" id="costs" tabIndex={-1}>
      <h2>Costs</h2>
      <ul className="cost-rows">
        {all.map((cost) => (
          <li key={`${cost.what} ${cost.name}`}>
            <span>{sentenceCase(cost.name)}</span>
            <span className={cost.usual === null ? 'soft' : 'figure'}>{cost.says}</span>
            <span className="soft">
              {cost.unpricedSays === null
                ? known(cost)
                : `${cost.priced > 0 ? `${known(cost)}; no price ` : 'No price '}${cost.unpricedSays}.`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
