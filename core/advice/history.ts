// What the keeper's own lines tell of the chances by generation: jars that can be compared, and the spoiled ones.
import { batchesOf } from '../vigour/comparable';
import type { JarEvidence } from '../vigour/types';
import type { GenerationRecord } from './chances';

type Counts = Omit<GenerationRecord, 'generation'>;
const NONE: Counts = { jars: 0, weak: 0, discarded: 0, lines: 0, ended: 0 };

const isWeak = ({ outcome }: JarEvidence): boolean =>
  outcome?.setWord === 'runny' || outcome?.setWord === 'soft';

const known = new WeakMap<readonly JarEvidence[], readonly GenerationRecord[]>();

/**
 * What one line tells. Weak is runny or soft, of jars that can be compared (a fibre that wrecks a jar says nothing of a
 * generation, nor does a cool hold); discarded is spoiled. It counts as ended where all jars of its last batch spoiled.
 * @param jars of the line; reckoned once for each list
 */
export function lineRecords(line: number, jars: readonly JarEvidence[]): readonly GenerationRecord[] {
  const before = known.get(jars);
  if (before) return before;
  const found = new Map<number, Counts>();
  const add = (generation: number, counts: Partial<Counts>): void => {
    found.set(generation, sum(found.get(generation) ?? NONE, counts));
  };
  const { batches } = batchesOf(line, jars);
  const reached = new Set<number>();
  for (const batch of batches) {
    // The first batch is left out of every comparison, yet it is what a first generation costs.
    const seen = batch.first
      ? batch.leftOut.filter(({ because }) => because === 'first batch').map(({ jar }) => jar)
      : batch.comparable;
    const discarded = batch.leftOut.filter(({ because }) => because === 'spoiled').length;
    const jarsSeen = seen.length + discarded;
    add(batch.generation, { jars: jarsSeen, discarded, weak: seen.filter(isWeak).length });
    if (jarsSeen > 0) reached.add(batch.generation);
  }
  for (const generation of reached) add(generation, { lines: 1 });
  const last = batches.at(-1);
  if (last && last.leftOut.length > 0 && last.comparable.length === 0 && last.leftOut.every(({ because }) => because === 'spoiled')) add(last.generation, { ended: 1 }); // prettier-ignore
  const records = [...found].map(([generation, counts]) => ({ generation, ...counts }));
  known.set(jars, records);
  return records;
}

const sum = (a: Counts, b: Partial<Counts>): Counts => ({
  jars: a.jars + (b.jars ?? 0),
  weak: a.weak + (b.weak ?? 0),
  discarded: a.discarded + (b.discarded ?? 0),
  lines: a.lines + (b.lines ?? 0),
  ended: a.ended + (b.ended ?? 0),
});

/** Pooled over all lines, by generation. @param jarsOf evidence of a line's jars */
export function generationRecords(
  lines: readonly number[],
  jarsOf: (line: number) => readonly JarEvidence[],
): GenerationRecord[] {
  const pooled = new Map<number, Counts>();
  for (const line of lines) {
    for (const { generation, ...counts } of lineRecords(line, jarsOf(line)))
      pooled.set(generation, sum(pooled.get(generation) ?? NONE, counts));
  }
  return [...pooled].map(([generation, counts]) => ({ generation, ...counts })).toSorted((a, b) => a.generation - b.generation); // prettier-ignore
}
