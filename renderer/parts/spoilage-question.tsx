// Before an outcome is recorded whose words tell of spoilage, with no sign ticked: asked once, and the answer is kept.
import { Question } from './question';
import { useRequiredWords } from './required-words';

/** "“pink streaks” and “foul”": each of them, however many. */
const quoted = (words: readonly string[]): string => {
  const each = words.map((one) => `“${one}”`);
  return each.length < 2 ? (each[0] ?? '') : `${each.slice(0, -1).join(', ')} and ${each.at(-1)}`;
};

/** Asks. Escape goes back to the fields, with nothing answered and nothing lost. */
export function SpoilageQuestion({
  words,
  onAnswer,
  onLeave,
}: {
  readonly words: readonly string[];
  readonly onAnswer: (answer: { readonly spoiled: true } | { readonly what: string }) => void;
  readonly onLeave: () => void;
}) {
  const { field, take } = useRequiredWords({
    label: 'If not, what is it?',
    problem: 'Say in a few words what it is. They are kept in the note.',
    rows: 2,
    maxLength: 500,
  });
  return (
    <Question
      title="Is it spoiled?"
      yes="Yes, it is spoiled"
      no="No, it is something else"
      caution
      onLeave={onLeave}
      onYes={() => onAnswer({ spoiled: true })}
      onNo={() => take((what) => onAnswer({ what }))}
    >
      <p>You wrote {quoted(words)}.</p>
      {field}
      <p className="soft">
        When in doubt, it is spoiled: discard it, do not taste it, and do not seed from it.
      </p>
    </Question>
  );
}
