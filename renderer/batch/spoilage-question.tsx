// Before an outcome is recorded whose words tell of spoilage, with no sign ticked: asked once, and the answer is kept.
import { useId, useRef, useState } from 'react';
import { Question } from '../parts/question';

/** As few characters as say anything. */
const LEAST = 3;

/** "“pink streaks” and “foul”" */
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
  const [what, setWhat] = useState('');
  const [wrong, setWrong] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  return (
    <Question
      title="Is it spoiled?"
      yes="Yes, it is spoiled"
      no="No, it is something else"
      caution
      onLeave={onLeave}
      onYes={() => onAnswer({ spoiled: true })}
      onNo={() => {
        if (what.trim().length >= LEAST) {
          onAnswer({ what: what.trim() });
          return;
        }
        setWrong(true);
        field.current?.focus();
      }}
    >
      <p>You wrote {quoted(words)}.</p>
      <div className="field full">
        <label className="label" htmlFor={id}>
          If not, what is it?
        </label>
        <textarea
          id={id}
          ref={field}
          className="input"
          rows={2}
          maxLength={500}
          value={what}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={wrong ? `${id}-problem` : undefined}
          onChange={(event) => setWhat(event.target.value)}
        />
        {wrong && (
          <span className="field-problem" id={`${id}-problem`} role="alert">
            Say in a few words what it is. They are kept in the note.
          </span>
        )}
      </div>
      <p className="soft">
        When in doubt, it is spoiled: discard it, do not taste it, and do not seed from it.
      </p>
    </Question>
  );
}
