// What the keeper's own lines tell of the chances by generation: jars that can be compared, and the spoiled ones.
import { batchesOf } from '../vigour/comparable';
import type { JarEvidence } from '../vigour/types';
import type { GenerationRecord } from './chances';

type Counts = Omit<GenerationRecord, 'generation'>;
const NONE: Counts = { jars: 0, weak: 0, discarded: 0, lines: 0, seen: 0, ended: 0 };

const isWeak = ({ outcome }: JarEvidence): boolean =>
  outcome?.setWord === 'runny' || outcome?.setWord === 'soft';

const known = new WeakMap<readonly JarEvidence[], readonly GenerationRecord[]>();

/**
 * What one line tells. Weak is runny or soft, of jars that can be compared (a fibre that wrecks a jar says nothing of a
 * generation, nor does a cool hold); discarded is spoiled. It counts as ended where all jars of its last batch spoiled.
 * A generation of which nothing was written down counts as reached where a later one was seen.
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
  const first = batches[0]?.generation ?? 1;
  for (let generation = first; generation <= Math.max(0, ...reached); generation++)
    add(generation, { lines: 1 });
  for (const generation of reached) add(generation, { seen: 1 });
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
  seen: a.seen + (b.seen ?? 0),
  ended: a.ended + (b.ended ?? 0),
});

/** What all lines tell by generation. */
export interface History {
  readonly all: readonly GenerationRecord[];
  /** Of the lines seen in at least two generations: one seen in a single generation says nothing of going on. */
  readonly telling: readonly GenerationRecord[];
}

function pool(lines: readonly (readonly GenerationRecord[])[]): GenerationRecord[] {
  const pooled = new Map<number, Counts>();
  for (const { generation, ...counts } of lines.flat())
    pooled.set(generation, sum(pooled.get(generation) ?? NONE, counts));
  return [...pooled].map(([generation, counts]) => ({ generation, ...counts })).toSorted((a, b) => a.generation - b.generation); // prettier-ignore
}

/** Pooled by generation. @param lines what each line tells */
export function historyOf(lines: readonly (readonly GenerationRecord[])[]): History {
  const telling = lines.filter((records) => records.filter(({ seen }) => seen > 0).length > 1);
  const all = pool(lines);
  return { all, telling: telling.length === lines.length ? all : pool(telling) };
}
