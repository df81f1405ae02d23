// What the keeper's own lines tell of the chances by generation: jars that can be compared, and the spoiled ones.
import { batchesOf } from '../vigour/comparable';
import type { JarEvidence } from '../vigour/types';
import type { GenerationRecord } from './chances';

/**
 * Pooled over all lines. Weak is runny or soft, of jars that can be compared (a fibre that wrecks a jar says nothing of a
 * generation, nor does a cool hold); discarded is spoiled. A line counts as ended where all jars of its last batch spoiled.
 */
export function generationRecords(
  lines: readonly number[],
  jars: readonly JarEvidence[],
): GenerationRecord[] {
  const found = new Map<
    number,
    { jars: number; weak: number; discarded: number; lines: number; ended: number }
  >();
  const at = (generation: number) => {
    let record = found.get(generation);
    if (!record) found.set(generation, (record = { jars: 0, weak: 0, discarded: 0, lines: 0, ended: 0 }));
    return record;
  };
  for (const line of lines) {
    const { batches } = batchesOf(line, jars);
    const reached = new Set<number>();
    for (const batch of batches) {
      // The first batch is left out of every comparison, yet it is what a first generation costs.
      const seen = batch.first
        ? batch.leftOut.filter(({ because }) => because === 'first batch').map(({ jar }) => jar)
        : batch.comparable;
      const spoiled = batch.leftOut.filter(({ because }) => because === 'spoiled').length;
      const record = at(batch.generation);
      record.jars += seen.length + spoiled;
      record.discarded += spoiled;
      record.weak += seen.filter(
        ({ outcome }) => outcome?.setWord === 'runny' || outcome?.setWord === 'soft',
      ).length;
      if (seen.length + spoiled > 0) reached.add(batch.generation);
    }
    for (const generation of reached) at(generation).lines += 1;
    const last = batches.at(-1);
    if (last && last.leftOut.length > 0 && last.comparable.length === 0 && last.leftOut.every(({ because }) => because === 'spoiled')) at(last.generation).ended += 1; // prettier-ignore
  }
  return [...found].map(([generation, record]) => ({ generation, ...record })).toSorted((a, b) => a.generation - b.generation); // prettier-ignore
}
