// The caution that stands beside a seed field, whichever way the jar came into it.
import {
  ASIDE_AS_SEED,
  LOOK_BEFORE_SEEDING,
  noSeedSentence,
  relatedSentence,
  setAsideSentence,
} from '../../core/says/safety-says';
import { useRead } from '../state/use-read';
import { holdsBecauseOf } from './held-seeds';

/** What stands against a picked jar as seed, or nothing. */
export function SeedCaution({ jar }: { readonly jar: string }) {
  const answer = useRead('jar.get', { id: jar });
  const judged = useRead('judgement.jar', { jar });
  if (!answer?.ok) return null;
  const { view, cautions } = answer.value;
  if (view.caution === 'condemned')
    return (
      <output className="notice caution">{noSeedSentence(view.label, view.discard ?? 'spoiled')}</output>
    );
  const because = holdsBecauseOf(cautions);
  if (because.length > 0)
    return (
      <output className="notice caution">
        {setAsideSentence(view.label, because)} {ASIDE_AS_SEED}
      </output>
    );
  const { asSeed = [], descendsFromHeld = null } = judged?.ok ? judged.value : {};
  const against = [...(descendsFromHeld === null ? [] : [descendsFromHeld]), ...asSeed];
  const related = view.caution === 'look' ? [relatedSentence(view.label)] : [];
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
