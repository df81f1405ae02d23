// Before a jar is taken back as entered by mistake: what that means, and, of a spoiled one, which cautions fall away.
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import { Question } from '../parts/question';
import { ReasonQuestion } from '../parts/reason-question';

type FamilyJar = Reply<'family.get'>['jars'][number];

const MOST_NAMED = 8;
const named = (labels: readonly string[]): string =>
  labels.length > MOST_NAMED
    ? `${labels.slice(0, MOST_NAMED).join(', ')} and ${labels.length - MOST_NAMED} more`
    : labels.join(', ');
const jarsInWords = (count: number): string => (count === 1 ? 'one jar' : `${count} jars`);

/** What falls away with a spoiled jar, in sentences: the jars set aside, then those that are to be looked at. Pure. */
export function fallingAway(
  jar: string,
  jars: readonly Pick<FamilyJar, 'id' | 'label' | 'cautions'>[],
): readonly string[] {
  const touched = (level: FamilyJar['cautions'][number]['level']): readonly string[] =>
    jars.flatMap(({ id, label, cautions }) =>
      id !== jar &&
      cautions.some((caution) => caution.of === jar && !caution.cleared && caution.level === level)
        ? [label]
        : [],
    );
  const held = touched('set aside');
  const look = touched('look');
  return [
    ...(held.length > 0
      ? [
          `${held.length === 1 ? 'One jar is' : `${held.length} jars are`} no longer set aside: ${named(held)}.`,
        ]
      : []),
    ...(look.length > 0
      ? [`The caution to look first falls away on ${jarsInWords(look.length)}: ${named(look)}.`]
      : []),
  ];
}

/** Asks, and takes the jar back. Of a spoiled jar a reason is asked for, and kept. */
export function MistakeQuestion({
  jar,
  label,
  spoiled,
  onDone,
}: {
  readonly jar: string;
  readonly label: string;
  readonly spoiled: boolean;
  readonly onDone: () => void;
}) {
  const family = useRead('family.get', spoiled ? {} : null);
  const takeBack = (why: string | null): void => {
    onDone();
    void call('jar.mistake', { id: jar, why }).then((answer) =>
      say(
        answer.ok ? `Took ${label} back. Undo brings it again.` : answer.sentence,
        answer.ok ? 'calm' : 'caution',
      ),
    );
  };
  const title = `${label}: entered by mistake?`;
  const means = (
    <p>
      The jar is then no longer counted. What it is recorded to have seeded is counted as “at least”, until
      you say what really seeded it. Undo brings everything back.
    </p>
  );
  if (!spoiled)
    return (
      <Question title={title} yes="Take it back" no="Leave it" onNo={onDone} onYes={() => takeBack(null)}>
        {means}
      </Question>
    );
  // Nothing is asked before it is known what would fall away.
  if (family === null) return null;
  const falls = family.ok ? fallingAway(jar, family.value.jars) : [family.sentence];
  return (
    <ReasonQuestion
      title={title}
      label="Why was it a mistake?"
      yes="Take it back"
      no="Leave it"
      onNo={onDone}
      onReason={takeBack}
    >
      <p>It is noted as spoiled. If that jar was real, leave it: its cautions protect the others.</p>
      {(falls.length > 0 ? falls : ['No other jar has a caution because of it.']).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {means}
    </ReasonQuestion>
  );
}
