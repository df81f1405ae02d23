// What a form asks before it records: whether words tell of spoilage, and why a seed that is set aside may be used.
import { HeldSeedQuestion } from './held-seed-question';
import { SpoilageQuestion } from './spoilage-question';
import type { Editing } from './use-editing';

/** The question that is open, if any. */
export function EditQuestions<T>({ editing }: { readonly editing: Editing<T> }) {
  const { doubt, held, typed, record, set, leaveQuestion } = editing;
  return (
    <>
      {doubt && (
        <SpoilageQuestion
          words={doubt.words}
          onLeave={leaveQuestion}
          onAnswer={(answer) => {
            const text = doubt.answered(answer);
            leaveQuestion();
            set(text);
            void record(null, text);
          }}
        />
      )}
      {held.length > 0 && (
        <HeldSeedQuestion
          sentences={held}
          initial={typed?.why ?? ''}
          onNo={leaveQuestion}
          onReason={(reason) => {
            leaveQuestion();
            void record(reason);
          }}
        />
      )}
    </>
  );
}
