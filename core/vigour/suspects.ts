// What else than the culture may be behind a fall, as codes with their figures (core/says/suspects-says.ts makes the sentences).
import type { BatchEvidence } from './comparable';
import type { Effect } from './effects';
import type { MadeOtherwise } from './made-otherwise';
import { median } from './medians';
import type { JarEvidence } from './jar-evidence';
import type { Suspect } from '../shapes/vigour-codes';

/** Batches from which a treatment counts as having come to stay. */
const LASTING = 2;
const OLD_SEED_DAYS = 21;

/** @param lacked warm hours that a jar's hold was short of what its seed needed */
export function suspectsOf(
  batches: readonly BatchEvidence[],
  effects: ReadonlyMap<string, Effect>,
  lacked: (jar: JarEvidence) => number,
  otherwise: MadeOtherwise | null,
): { suspects: Suspect[]; blocked: string[] } {
  const suspects: Suspect[] = [];
  const compared = batches.filter(({ comparable }) => comparable.length > 0);
  const unknown = compared.filter(({ unlike }) => unlike !== null && !effects.has(unlike));
  // One odd batch bends no trend; what stays from some generation on may.
  const blocked = [...new Set(unknown.map(({ unlike }) => unlike ?? ''))].filter(
    (treatment) => unknown.filter(({ unlike }) => unlike === treatment).length >= LASTING,
  );
  for (const name of blocked) {
    const having = unknown.filter(({ unlike }) => unlike === name);
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
      (median(comparable.flatMap(({ seedStorage }) => seedStorage?.fridgeDays ?? [])) ?? 0) > OLD_SEED_DAYS,
  );
  if (old.length > 0) suspects.push({ code: 'old seed', batches: old.length, olderThan: OLD_SEED_DAYS });
  return { suspects, blocked };
}
