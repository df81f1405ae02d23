// Two weak batches in a row on a jar's path suggest a fresh start. No score: only what was seen, and what was not.
import { dayInOrder } from '../lineage/lineage-shapes';
import type { Family } from '../lineage/family-version';
import { primarySeed } from '../lineage/primary-seed';
import type { SetWord } from '../ledger/records';
import { isWeakWord } from './weak';

/** Weak batches in a row that suggest a fresh start (common practice, no source). */
const IN_A_ROW = 2;

/** A jar of the path whose batch was weak. */
export interface WeakStep {
  readonly jar: number;
  readonly label: string;
  /** Null where only a range of days is known, which its label tells. */
  readonly madeOn: string | null;
  readonly setWord: SetWord;
  /** Recorded jars of its batch in this line, and of those the weak. */
  readonly recorded: number;
  readonly alsoWeak: number;
}

export interface WeakRow {
  /** Oldest first. */
  readonly weak: readonly WeakStep[];
  /** Labels of jars passed over because nothing is recorded of how they set, and of those left out as spoiled. */
  readonly unseen: readonly string[];
  readonly spoiled: readonly string[];
}

export interface FreshStart extends WeakRow {
  /** Key of the line's founding batch; null for jars that belong to no line because their past is unknown. */
  readonly line: number | null;
  /** The newest jar of the path. */
  readonly jar: number;
}

/** What was seen of jars, beyond lineage. */
export interface Seen {
  /** How a jar set; null is unknown. By jar key. */
  setWord(key: number): SetWord | null;
}

const sharesLine = (a: readonly number[], b: readonly number[]): boolean =>
  (a.length === 0 && b.length === 0) || a.some((line) => b.includes(line));

/**
 * Suggestions, at most one for each line: on the path back from a jar of the line's newest day (along the seed each jar
 * hangs from), at least two weak batches in a row with nothing firmer since.
 *
 * The unit is the batch: a step counts as weak when the jar was runny or soft and so was at least half of what was
 * recorded of its batch in the same line, spoiled jars left out. A jar with nothing recorded, or a spoiled one, neither
 * counts nor breaks the row; a spoonable or firmer jar, or a batch that was mostly firmer, breaks it.
 */
export function suggestFreshStarts(family: Family, seen: Seen): FreshStart[] {
  const mates = new Map<number, number[]>();
  const newest = new Map<number | null, { day: string; leaves: number[] }>();
  for (const key of family.keys) {
    const jar = family.jar(key);
    const batch = mates.get(jar.batch);
    if (batch) batch.push(key);
    else mates.set(jar.batch, [key]);
    const day = dayInOrder(jar);
    if (day === null) continue;
    const lines = family.linesOf(key);
    for (const line of lines.length > 0 ? lines : [null]) {
      const known = newest.get(line);
      if (!known || day > known.day) newest.set(line, { day, leaves: [key] });
      else if (day === known.day) known.leaves.push(key);
    }
  }
  const order = [...family.lines.map((line) => line.batch), null];
  const found: FreshStart[] = [];
  for (const line of order) {
    const leaves = (newest.get(line)?.leaves ?? [])
      .filter((key) => family.childrenOf(key).length === 0)
      .toSorted((a, b) => (family.jar(a).label < family.jar(b).label ? -1 : 1));
    for (const leaf of leaves) {
      const walked = walkBack(family, seen, mates, leaf);
      if (walked.weak.length < IN_A_ROW) continue;
      found.push({ line, jar: leaf, ...walked });
      break;
    }
  }
  return found;
}

function walkBack(
  family: Family,
  seen: Seen,
  mates: ReadonlyMap<number, readonly number[]>,
  leaf: number,
): WeakRow {
  const { columns } = family;
  const weak: WeakRow['weak'][number][] = [];
  let passedUnseen: string[] = [];
  let passedSpoiled: string[] = [];
  const unseen: string[] = [];
  const spoiled: string[] = [];
  const batches = new Set<number>();
  for (let slot = columns.slot(leaf); slot >= 0; slot = primarySeed(columns, slot)) {
    const key = columns.index.keyOf[slot] as number;
    const jar = family.jar(key);
    const word = seen.setWord(key);
    if (jar.spoiled) {
      passedSpoiled.push(jar.label);
      continue;
    }
    if (word === null || dayInOrder(jar) === null) {
      passedUnseen.push(jar.label);
      continue;
    }
    const lines = family.linesOf(key);
    const recorded = (mates.get(jar.batch) ?? []).filter(
      (mate) =>
        !family.jar(mate).spoiled && seen.setWord(mate) !== null && sharesLine(family.linesOf(mate), lines),
    );
    const alsoWeak = recorded.filter((mate) => isWeakWord(seen.setWord(mate))).length;
    if (!isWeakWord(word) || alsoWeak * 2 < recorded.length) break;
    // What was passed over matters only if the row goes on beyond it.
    unseen.push(...passedUnseen);
    spoiled.push(...passedSpoiled);
    passedUnseen = [];
    passedSpoiled = [];
    if (batches.has(jar.batch)) continue;
    batches.add(jar.batch);
    weak.push({
      jar: key,
      label: jar.label,
      madeOn: jar.madeOn,
      setWord: word,
      recorded: recorded.length,
      alsoWeak,
    });
  }
  return { weak: weak.toReversed(), unseen, spoiled };
}
