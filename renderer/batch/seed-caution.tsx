// The caution that stands beside a seed field, whichever way the jar came into it.
import { LOOK_BEFORE_SEEDING, setAsideSentence } from '../../core/says/safety-says';
import { useRead } from '../state/use-read';
import { holdsBecauseOf } from './held-seeds';

const NO_SEED = {
  spoiled: 'is spoiled: not food and not seed. Pick another seed.',
  'not set': 'did not set: not food and not seed. Pick another seed.',
  remark: 'has a note that says it spoiled, and nobody has answered that: not food and not seed until somebody does. Answer the note, or pick another seed.',
} as const; // prettier-ignore

/** What stands against a picked jar as seed, or nothing. */
export function SeedCaution({ jar }: { readonly jar: string }) {
  const answer = useRead('jar.get', { id: jar });
  const judged = useRead('judgement.jar', { jar });
  if (!answer?.ok) return null;
  const { view, cautions } = answer.value;
  if (view.caution === 'condemned')
    return (
      <output className="notice caution">
        {view.label} {NO_SEED[view.discard ?? 'spoiled']}
      </output>
    );
  const because = holdsBecauseOf(cautions);
  if (because.length > 0)
    return (
      <output className="notice caution">
        {setAsideSentence(view.label, because)} Nothing is seeded from it unless you can write down why it is
        all right to use. You are asked for that when you record. When in doubt, take another jar.
      </output>
    );
  const { asSeed = [], descendsFromHeld = null } = judged?.ok ? judged.value : {};
  const against = [...(descendsFromHeld === null ? [] : [descendsFromHeld]), ...asSeed];
  const related = view.caution === 'look' ? [`${view.label} is related to a spoiled jar.`] : [];
  if (related.length + against.length === 0) return null;
  return (
    <output className="notice">
      <strong>{LOOK_BEFORE_SEEDING}</strong>
      {[...related, ...against].map((says) => (
        <span key={says}> {says}</span>
      ))}
    </output>
  );
}
