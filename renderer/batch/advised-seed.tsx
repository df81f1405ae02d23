// The verdict beside the seed field of a new batch, word for word as everywhere, with the button that takes its seed.
import { Linked } from '../parts/linked';
import { numberWord } from '../parts/number-words';
import { namedIn, saidAfter, verdictParts } from '../parts/verdict-parts';
import { seedInShort, VerdictAct } from '../parts/verdict-act';
import { noSeed, pickSeed, type SeedText } from './batch-text';
import type { LineVerdict } from './use-verdicts';

/** Lines spoken of at once; the others are folded. */
const MOST = 3;

interface Props {
  readonly verdicts: readonly LineVerdict[];
  /** The first row of seeds. */
  readonly seed: SeedText | undefined;
  readonly onTake: (seed: SeedText) => void;
}

type OfLineProps = LineVerdict & Pick<Props, 'onTake'> & { readonly now: SeedText | undefined };

function OfLine({ line, verdict, seed: advised, now, onTake }: OfLineProps) {
  const taken = advised !== null && advised.picked?.id === now?.picked?.id && advised.portion === now?.portion;
  const { sentence, reason } = verdictParts(verdict);
  const take = (seed: SeedText): void =>
    onTake(pickSeed(now ?? noSeed, seed.picked, seed.portion === '' ? null : { id: seed.portion, part: seed.part }));
  return (
    <li className="row">
      <p>
        <strong>{line.name}:</strong>{' '}
        <Linked
          text={[sentence, reason, saidAfter(verdict)].filter(Boolean).join(' ')}
          jars={namedIn(verdict)}
        />
      </p>
      {verdict.seed?.jar === null && <VerdictAct seed={verdict.seed} line={line.id} />}
      {advised !== null && !taken && (
        <button type="button" className="button" data-enter="pass" onClick={() => take(advised)}>
          Seed from {seedInShort(advised.picked?.label ?? '', advised.portion || null)}
        </button>
      )}
    </li>
  );
} // prettier-ignore

/** The verdicts. */
export function AdvisedSeed({ verdicts, seed, onTake }: Props) {
  if (verdicts.length === 0) return null;
  const list = (some: readonly LineVerdict[]) =>
    some.map((one) => <OfLine key={one.line.id} {...one} now={seed} onTake={onTake} />);
  const more = verdicts.slice(MOST);
  return (
    <>
      <ul className="advised-lines" aria-label="What is advised">
        {list(verdicts.slice(0, MOST))}
      </ul>
      {more.length > 0 && (
        <details>
          <summary>
            {more.length === 1 ? 'One more line' : `Of ${numberWord(more.length)} more lines`}
          </summary>
          <ul className="advised-lines">{list(more)}</ul>
        </details>
      )}
    </>
  );
}
