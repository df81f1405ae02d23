// Asked before something is seeded from a jar that is set aside: a written reason, or another seed.
import { ReasonQuestion } from './reason-question';

/** Asks, before recording, why set-aside jars, or without their acid, are used as seed all the same. */
export function HeldSeedQuestion({
  sentences,
  initial,
  onReason,
  onNo,
}: {
  readonly sentences: readonly string[];
  readonly initial?: string;
  readonly onReason: (reason: string) => void;
  readonly onNo: () => void;
}) {
  return (
    <ReasonQuestion
      title="Seed from it all the same?"
      label="Why may it be used?"
      yes="Record with this reason"
      no="Pick another seed"
      {...(initial === undefined ? {} : { initial })}
      onReason={onReason}
      onNo={onNo}
    >
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p className="soft">
        When in doubt, take another jar. Nothing here says that it is safe. Your reason is kept in the
        history, and a caution stays.
      </p>
    </ReasonQuestion>
  );
}
