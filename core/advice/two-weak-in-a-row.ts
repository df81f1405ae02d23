// Two weak batches in a row on a jar's path suggest a fresh start. No score: only what was seen, and what was not.
import { dayLabel, lineWords } from '../lineage/labels';
import type { Family } from '../lineage/family-version';
import { primarySeed } from '../lineage/primary-seed';
import { inWords } from '../lineage/way-to-source';
import type { SetWord } from '../ledger/records';
import { isWeakWord } from './weak';

/** Weak batches in a row that suggest a fresh start (common practice, no source). */
const IN_A_ROW = 2;

/** A jar of the path whose batch was weak. */
export interface WeakStep {
  readonly jar: number;
  readonly label: string;
  readonly madeOn: string;
  readonly setWord: SetWord;
}

export interface FreshStart {
  /** Key of the line's founding batch; null for jars that belong to no line because their past is unknown. */
  readonly line: number | null;
  /** The newest jar of the path. */
  readonly jar: number;
  /** Oldest first. */
  readonly weak: readonly WeakStep[];
  readonly sentence: string;
  readonly reasons: readonly string[];
}

/** What was seen of jars, beyond lineage. */
export interface Seen {
  /** How a jar set; null is unknown. By jar key. */
  setWord(key: number): SetWord | null;
  /** Printed name of the line founded by a batch. */
  lineName(batch: number): string;
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
    if (jar.madeOn === null) continue;
    const lines = family.linesOf(key);
    for (const line of lines.length > 0 ? lines : [null]) {
      const known = newest.get(line);
      if (!known || jar.madeOn > known.day) newest.set(line, { day: jar.madeOn, leaves: [key] });
      else if (jar.madeOn === known.day) known.leaves.push(key);
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
      found.push(told(line, leaf, walked, seen));
      break;
    }
  }
  return found;
}

interface Walked {
  /** Oldest first. */
  readonly weak: readonly (WeakStep & { readonly recorded: number; readonly alsoWeak: number })[];
  readonly unseen: readonly string[];
  readonly spoiled: readonly string[];
}

function walkBack(
  family: Family,
  seen: Seen,
  mates: ReadonlyMap<number, readonly number[]>,
  leaf: number,
): Walked {
  const { columns } = family;
  const weak: Walked['weak'][number][] = [];
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
    if (word === null || jar.madeOn === null) {
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

function told(line: number | null, leaf: number, walked: Walked, seen: Seen): FreshStart {
  const { weak, unseen, spoiled } = walked;
  const named = weak.length > 4 ? [...weak.slice(0, 1), ...weak.slice(-2)] : weak;
  const jars = named.map((step) => `${step.label} (${step.setWord})`);
  const list = named.length < weak.length ? `${jars[0]}, ${weak.length - 3} more, ${jars[1]} and ${jars[2]}` : inWords(jars); // prettier-ignore
  const where = line === null ? '' : `In ${lineWords(seen.lineName(line))}, `;
  const reasons = weak.map(
    (step) =>
      `${step.label}, made ${dayLabel(step.madeOn, true)}, set ${step.setWord}; ${step.alsoWeak} of ${step.recorded} recorded ${step.recorded === 1 ? 'jar' : 'jars'} of its batch in this line ${step.alsoWeak === 1 ? 'was' : 'were'} weak (runny or soft).`,
  );
  if (unseen.length > 0)
    reasons.push(`Passed over, because nothing is recorded of how it set: ${inWords(unseen)}.`);
  if (spoiled.length > 0) reasons.push(`Left out, because it was spoiled: ${inWords(spoiled)}.`);
  reasons.push('Not corrected for warmth or fibre: a cool hold or something stirred in can thin a jar too.');
  return {
    line,
    jar: leaf,
    weak: weak.map(({ jar, label, madeOn, setWord }) => ({ jar, label, madeOn, setWord })),
    sentence: `${where}${list} were weak one after the other: a fresh start from your sources may be worth planning.`,
    reasons,
  };
}
