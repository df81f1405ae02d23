// The verdict beside the seed field of a new batch, word for word as everywhere: on the line of the seed that is picked,
// or, while none is, on the lines there are.
import { useState } from 'react';
import { call } from '../state/ledger-calls';
import { say, useAppState } from '../state/store';
import { useRead } from '../state/use-read';
import { JUDGED_UNASKED } from '../parts/use-scores';
import { Linked } from '../parts/linked';
import { alsoAgainst, namedIn } from '../parts/verdict-parts';
import { seedOf } from './begin';
import { pickSeed, type SeedText } from './batch-text';

/** Lines spoken of at once. */
const MOST = 3;

function OfLine(props: {
  readonly line: { readonly id: string; readonly name: string };
  readonly seed: SeedText | undefined;
  readonly onTake: (seed: SeedText) => void;
}) {
  const { line, seed, onTake } = props;
  const answer = useRead('advice.line', { line: line.id });
  const [busy, setBusy] = useState(false);
  if (!answer?.ok) return null;
  const { sentence, seed: advised } = answer.value;
  const jar = advised?.jar ?? null;
  const taken = jar === seed?.picked?.id && (advised?.portion ?? '') === seed?.portion;
  const take = async (): Promise<void> => {
    if (jar === null) return;
    setBusy(true);
    const found = await call('jar.get', { id: jar });
    setBusy(false);
    if (!found.ok) return say(found.sentence, 'caution');
    const { picked, portion, part } = seedOf(found.value, advised?.portion ?? null);
    const now = seed ?? seedOf(found.value, null);
    onTake(pickSeed(now, picked, portion === '' ? null : { id: portion, part }));
  };
  return (
    <li className="row">
      <p>
        <strong>{line.name}:</strong>{' '}
        <Linked
          text={[sentence, alsoAgainst(answer.value)].filter(Boolean).join(' ')}
          jars={namedIn(answer.value)}
        />
      </p>
      {jar !== null && !taken && (
        <button
          type="button"
          className="button"
          data-enter="pass"
          disabled={busy}
          onClick={() => void take()}
        >
          Take it<span className="visually-hidden">: {advised?.label}</span>
        </button>
      )}
    </li>
  );
}

/** The verdicts. @param seed the first row of seeds */
export function AdvisedSeed(props: {
  readonly seed: SeedText | undefined;
  readonly onTake: (seed: SeedText) => void;
}) {
  const { seed } = props;
  const jars = useAppState()?.ledger?.jars ?? 0;
  const picked = seed?.picked?.kind === 'jar' ? seed.picked.id : null;
  const asked = jars > 0 && jars <= JUDGED_UNASKED && (picked !== null || seed?.picked == null);
  const answer = useRead('line.list', asked ? { jar: picked } : null);
  const lines = answer?.ok ? answer.value.lines.filter(({ newestBatch }) => newestBatch !== null) : [];
  if (lines.length === 0) return null;
  return (
    <ul className="advised" aria-label="What is advised">
      {lines.slice(-MOST).map((line) => (
        <OfLine key={line.id} line={line} {...props} />
      ))}
    </ul>
  );
}
