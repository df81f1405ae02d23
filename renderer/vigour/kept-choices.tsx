// What was chosen before, each with the advice as it stood then.
import { dayLabel } from '../../core/lineage/labels';
import { useRead } from '../state/use-read';
import { Model } from '../parts/why-details';

/** A moment in words: "10 May 2026, 18:30". */
const momentWords = (at: string): string => `${dayLabel(at.slice(0, 10), true)}, ${at.slice(11, 16)}`;

export function KeptChoices({ line }: { readonly line: string | null }) {
  const answer = useRead('advice.choices', { line, limit: 10 });
  if (!answer?.ok || answer.value.choices.length === 0) return null;
  const { choices } = answer.value;
  return (
    <details className="vigour-why">
      <summary>What you chose before ({choices.length})</summary>
      <ul className="stack">
        {choices.map((choice) => (
          <li key={choice.id}>
            <p>
              {momentWords(choice.at)}: you chose {choice.label}, then number {choice.place} of{' '}
              {choice.advice.ranking.filter(({ allowed }) => allowed).length}. The advice was:{' '}
              {choice.advice.sentence}
            </p>
            {choice.why !== null && <p className="soft">{choice.why}</p>}
            <details className="vigour-why">
              <summary>The ranking as it stood</summary>
              <ol className="bullets">
                {choice.advice.ranking.map((ranked) => (
                  <li key={`${ranked.jar} ${ranked.portion}`}>
                    {ranked.label}:{' '}
                    {ranked.allowed
                      ? ranked.reasons.join(' ')
                      : ranked.stops.map(({ says }) => says).join(' ')}
                  </li>
                ))}
              </ol>
              <Model model={choice.advice.model} />
            </details>
          </li>
        ))}
      </ul>
    </details>
  );
}
