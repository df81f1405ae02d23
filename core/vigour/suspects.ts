// What else than the culture may be behind a fall, as codes with their figures (core/says/suspects-says.ts makes the sentences).
import { NEUTRAL_LIMITS } from '../ledger/default-preferences';
import type { BatchEvidence } from './comparable';
import { madeUnlike, type Effect, type UsualTreatment } from './effects';
import type { MadeOtherwise } from './made-otherwise';
import { median } from './medians';
import type { JarEvidence } from './jar-evidence';
import type { Suspect } from '../shapes/vigour-codes';

/** Batches from which a treatment counts as having come to stay. */
const LASTING = 2;

/** What every compared jar of the latest batches had and is not usual, with the batches since it came to stay. */
function cameToStay(
  compared: readonly BatchEvidence[],
  usual: UsualTreatment,
): ReadonlyMap<string, readonly BatchEvidence[]> {
  const inAll = ({ comparable }: BatchEvidence, name: string): boolean =>
    comparable.every((jar) => madeUnlike(jar, usual).includes(name));
  const [jar] = compared.at(-1)?.comparable ?? [];
  return new Map(
    (jar ? madeUnlike(jar, usual) : []).map((name) => [
      name,
      compared.slice(compared.findLastIndex((batch) => !inAll(batch, name)) + 1),
    ]),
  );
}

/**
 * @param lacked warm hours that a jar's hold was short of what its seed needed
 * @returns `blocked`: what can't be told apart from the culture. Jars made without it since it came do tell them apart
 */
export function suspectsOf(
  batches: readonly BatchEvidence[],
  effects: ReadonlyMap<string, Effect>,
  usual: UsualTreatment,
  lacked: (jar: JarEvidence) => number,
  otherwise: MadeOtherwise | null,
): { suspects: Suspect[]; blocked: string[] } {
  const suspects: Suspect[] = [];
  const compared = batches.filter(({ comparable }) => comparable.length > 0);
  const blocked: string[] = [];
  for (const [name, having] of cameToStay(compared, usual)) {
    // One odd batch bends no trend; what came and stays may.
    if (having.length < LASTING || having.length === compared.length || effects.has(name)) continue;
    blocked.push(name);
    suspects.push({
      code: 'treatment',
      name,
      batches: having.length,
      generation: having[0]?.generation ?? 0,
    });
  }
  if (otherwise)
    suspects.push({ code: 'made otherwise', since: otherwise.since, changes: otherwise.changes });
  const days = (of: readonly BatchEvidence[]): (string | null)[] => of.map(({ madeOn }) => madeOn);
  const ranCool = batches.filter(
    ({ comparable, leftOut }) =>
      comparable.length === 0 && leftOut.some(({ because }) => because === 'ran cool'),
  );
  if (ranCool.length > 0) suspects.push({ code: 'ran cool', days: days(ranCool) });
  const short = compared.filter(({ comparable }) => Math.min(...comparable.map(lacked)) > 0);
  if (short.length > 0) suspects.push({ code: 'short of warmth', days: days(short) });
  const old = batches.filter(
    ({ comparable }) =>
      (median(comparable.flatMap(({ seedStorage }) => seedStorage?.fridgeDays ?? [])) ?? 0) >
      NEUTRAL_LIMITS.seedFridgeDays,
  );
  if (old.length > 0)
    suspects.push({ code: 'old seed', batches: old.length, olderThan: NEUTRAL_LIMITS.seedFridgeDays });
  return { suspects, blocked };
}
