// Which jars of a line speak for which batch. Like is compared with like: the line's usual treatment, one generation, not
// the uneven first batch, nothing spoiled or unseen. Every jar left out says why.
import { hoursBelow } from '../growth/warmth';
import { treatmentOf } from './effects';
import { median } from './order';
import type { JarEvidence } from './types';

export type LeftOutBecause =
  'spoiled' | 'unseen' | 'first batch' | 'from sources' | 'mixes lines' | 'ran cool' | 'other generation' | 'other treatment'; // prettier-ignore

export interface LeftOut {
  readonly jar: JarEvidence;
  readonly because: LeftOutBecause;
  readonly reason: string;
}

export interface BatchEvidence {
  readonly batch: number;
  readonly madeOn: string | null;
  readonly generation: number;
  /** The line's founding batch: never compared. */
  readonly first: boolean;
  readonly comparable: readonly JarEvidence[];
  readonly leftOut: readonly LeftOut[];
  /** None of its jars had the usual treatment: what they had in its place. */
  readonly unlike: string | null;
}

/** A hold cooler than this (°C) for so many hours more than usual, warming up apart, can't be compared at all. */
const COOL_BELOW = 30;
const COOL_HOURS = 3;
const WARMING_UP_HOURS = 3;

/** Hours that a hold ran cool; 0 where its temperatures are unknown. */
export const coolHours = (jar: JarEvidence): number =>
  jar.profile ? hoursBelow(jar.profile, COOL_BELOW, WARMING_UP_HOURS) : 0;

/** How many batches after the first decide what the usual treatment is. */
const BATCHES_FOR_USUAL = 5;

const mostCommon = <T>(items: readonly T[]): T | undefined => {
  const counts = new Map<T, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0];
};

const inOrder = (a: JarEvidence, b: JarEvidence): number =>
  (a.madeOn ?? '').localeCompare(b.madeOn ?? '') || a.batch - b.batch || a.label.localeCompare(b.label);

/** The treatment found in most of the first batches; of two as common, the plainer. */
export function usualTreatment(batches: readonly (readonly JarEvidence[])[]): string {
  const found = batches
    .slice(0, BATCHES_FOR_USUAL)
    .flatMap((jars) => [...new Set(jars.map((jar) => treatmentOf(jar)))])
    .toSorted((a, b) => a.length - b.length || a.localeCompare(b));
  return mostCommon(found) ?? '';
}

/** How a treatment is named in a sentence: what was stirred in, or the milk where that alone differs. */
export function treatmentName(treatment: string, usual: string): string {
  const parts = treatment.split(' + ').filter((part) => part !== '' && !usual.split(' + ').includes(part));
  return parts.length === 0
    ? 'nothing stirred in'
    : parts.map((part) => part.replace('milk: ', '')).join(' and ');
}

/** The batches of a line in order of making, with the jars that speak for each. */
export function batchesOf(
  line: number,
  jars: readonly JarEvidence[],
): { readonly batches: readonly BatchEvidence[]; readonly usual: string } {
  const byBatch = new Map<number, JarEvidence[]>();
  for (const jar of jars.filter(({ lines }) => lines.includes(line)).toSorted(inOrder)) {
    const group = byBatch.get(jar.batch);
    if (group) group.push(jar);
    else byBatch.set(jar.batch, [jar]);
  }
  const later = [...byBatch].filter(([batch]) => batch !== line).map(([, group]) => group);
  const usual = usualTreatment(later);
  const usuallyCool = median(later.flatMap((group) => median(group.map(coolHours)) ?? [])) ?? 0;
  const batches = [...byBatch].map(([batch, group]): BatchEvidence => {
    const leftOut: LeftOut[] = [];
    const first = batch === line;
    const out = (jar: JarEvidence, because: LeftOutBecause, reason: string): false => {
      leftOut.push({ jar, because, reason });
      return false;
    };
    const generation = mostCommon(group.filter(({ mixes }) => !mixes).map(({ generation }) => generation)) ?? group[0]?.generation ?? 1; // prettier-ignore
    const seen = group.filter((jar) => {
      if (jar.spoiled) return out(jar, 'spoiled', 'It is spoiled.');
      if (!jar.outcome)
        return out(jar, 'unseen', 'Nothing was written down of it: unknown, neither weak nor fine.');
      if (first) return out(jar, 'first batch', 'A first batch is known to be uneven.');
      if (jar.founding) return out(jar, 'from sources', 'It was started from sources.');
      if (jar.mixes) return out(jar, 'mixes lines', 'It mixes two lines.');
      if (coolHours(jar) > usuallyCool + COOL_HOURS) return out(jar, 'ran cool', `Its hold ran cool: ${coolHours(jar).toFixed(0)} h below ${COOL_BELOW} °C. The culture can't be judged by it.`); // prettier-ignore
      if (jar.generation !== generation) return out(jar, 'other generation', `It is of generation ${jar.generation}, the batch of ${generation}.`); // prettier-ignore
      return true;
    });
    const alike = seen.filter((jar) => treatmentOf(jar) === usual);
    if (alike.length > 0) {
      for (const jar of seen) {
        if (treatmentOf(jar) !== usual) out(jar, 'other treatment', `It had ${treatmentName(treatmentOf(jar), usual)}; its plain siblings stand for the batch.`); // prettier-ignore
      }
    }
    const comparable = alike.length > 0 ? alike : seen;
    const other = alike.length > 0 ? undefined : mostCommon(seen.map((jar) => treatmentOf(jar)));
    return {
      batch,
      madeOn: group[0]?.madeOn ?? null,
      generation,
      first,
      comparable,
      leftOut,
      unlike: other ?? null,
    };
  });
  return { batches, usual };
}

/** The early batches that make a line's baseline: its first four comparable ones of the usual treatment. */
export const earlyBatches = (batches: readonly BatchEvidence[]): readonly BatchEvidence[] =>
  batches.filter(({ comparable, unlike }) => comparable.length > 0 && unlike === null).slice(0, 4);
