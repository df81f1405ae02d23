// What the keeper chose to seed from next. The advice is reckoned again here, so that what is kept is what the ledger
// says and a stop can't be passed by asking.
import type { Parsed, Reply } from '../../../core/contract';
import type { Ledger } from '../ledger';
import { nextAdvice } from '../reads/read-judgement';
import { Refused } from '../../refusal';
import { standingJar } from './write-parts';
import { tidy } from '../tidy-typed';

/** Places of a ranking that are kept with a choice: more than a shelf holds. */
const KEPT = 300;

/** @throws Refused 'not found', 'not offered', 'stopped seed' (with why) */
export function chooseSeed(ledger: Ledger, input: Parsed<'advice.choose'>): Reply<'advice.choose'> {
  const { rows } = ledger;
  const advice = nextAdvice(ledger, { line: input.line });
  const at = advice.ranking.findIndex(({ jar, portion }) => jar === input.jar && portion === input.portion);
  const chosen = advice.ranking[at];
  if (!chosen) {
    throw new Refused('not offered', {
      label: input.jar === null ? 'A fresh start' : standingJar(ledger, input.jar).label,
    });
  }
  if (!chosen.allowed || chosen.stops.length > 0) {
    throw new Refused('stopped seed', {
      label: chosen.label,
      says: chosen.stops.map(({ says }) => says).join(' '),
    });
  }
  const kept = {
    ...advice,
    ranking: advice.ranking.filter((_, index) => index < KEPT || index === at),
  };
  const done = ledger.acts.mustRun('advice.choose', chosen.label, tidy(input.why), (act) =>
    act.insert('choice', {
      line: rows.keyOrNull('batch', input.line),
      jar: rows.keyOrNull('jar', input.jar),
      portion: rows.keyOrNull('portion', input.portion),
      label: chosen.label,
      place: at + 1,
      modelVersion: advice.model.version,
      advice: JSON.stringify(kept),
    }),
  );
  return { act: done.act.uid, id: done.value.uid };
}
