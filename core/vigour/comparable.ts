// Which jars of a line speak for which batch. Like is compared with like: the line's usual treatment, one generation, not
// the uneven first batch, nothing spoiled or unseen. Every jar left out says why.
import { meanTemperature } from '../growth/warm-hours';
import { additionsOf, milkOf, treatmentOf, type Effect, type UsualTreatment } from './effects';
import { mean, median } from './medians';
import type { JarEvidence } from './jar-evidence';

export type LeftOutBecause =
  'spoiled' | 'unseen' | 'set aside' | 'first batch' | 'from sources' | 'mixes lines' | 'ran cool' | 'other generation' | 'other treatment'; // prettier-ignore

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

/** A hold cooler than the line's usual by this much (°C, warming up apart) can't be compared at all. */
const COOLER_BY = 3;
const WARMING_UP_HOURS = 3;

const temperatureOf = (jar: JarEvidence): number | null =>
  jar.profile && meanTemperature(jar.profile, WARMING_UP_HOURS);

/** How many batches after the first decide what the usual treatment is. */
const BATCHES_FOR_USUAL = 5;

const mostCommon = <T>(items: readonly T[]): T | undefined => {
  const counts = new Map<T, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0];
};

const inOrder = (a: JarEvidence, b: JarEvidence): number =>
  (a.madeOn ?? '').localeCompare(b.madeOn ?? '') || a.batch - b.batch || a.label.localeCompare(b.label);

const MOST = 0.8;

const HELD_SAYS = {
  'set aside': 'It is set aside because of a spoiled jar: it speaks for none that is not.',
  'from a mate': 'It descends from a set-aside jar: it speaks for none that does not.',
} as const;

/** What four in five of the first batches have in common; null where it varies. */
function inMost<T>(batches: readonly (readonly T[])[]): T | null {
  const first = batches.filter((values) => values.length > 0).slice(0, BATCHES_FOR_USUAL);
  const found = mostCommon(first.flatMap((values) => [...new Set(values)]));
  if (found === undefined) return null;
  return first.filter((values) => values.includes(found)).length >= MOST * first.length ? found : null;
}

/** How a line's jars are usually made, by its first batches after the founding one. */
function usualTreatment(batches: readonly (readonly JarEvidence[])[]): UsualTreatment {
  return {
    // Of two as common the plainer one is found first.
    additions: inMost(batches.map((jars) => jars.map(additionsOf).toSorted((a, b) => a.length - b.length))),
    milk: inMost(batches.map((jars) => jars.flatMap((jar) => milkOf(jar) ?? []))),
  };
}

/** A treatment's effect is corrected for in the trend once so many sets of siblings show it. */
const SETS_TO_CORRECT = 2;
/** Jars of a batch are compared with each other only so many generations apart. */
const GENERATIONS_APART = 1;

/**
 * The batches of a line in order of making, with the jars that speak for each.
 * @param effects known from siblings: jars with such a treatment are compared too, corrected
 */
export function batchesOf(
  line: number,
  jars: readonly JarEvidence[],
  effects: ReadonlyMap<string, Effect> = new Map(),
): { readonly batches: readonly BatchEvidence[]; readonly usual: UsualTreatment } {
  const byBatch = new Map<number, JarEvidence[]>();
  for (const jar of jars.filter(({ lines }) => lines.includes(line)).toSorted(inOrder)) {
    const group = byBatch.get(jar.batch);
    if (group) group.push(jar);
    else byBatch.set(jar.batch, [jar]);
  }
  const later = [...byBatch].filter(([batch]) => batch !== line).map(([, group]) => group);
  const usual = usualTreatment(later);
  const usualTemperature = median(
    later.flatMap((group) => median(group.flatMap((jar) => temperatureOf(jar) ?? [])) ?? []),
  );
  const batches = [...byBatch].map(([batch, group]): BatchEvidence => {
    const leftOut: LeftOut[] = [];
    const first = batch === line;
    const others = group.some(
      ({ held, mixes, spoiled, outcome }) => held === null && !mixes && !spoiled && outcome !== null,
    );
    const out = (jar: JarEvidence, because: LeftOutBecause, reason: string): false => {
      leftOut.push({ jar, because, reason });
      return false;
    };
    // A set-aside jar speaks for none that isn't: it stands for its batch only where nothing else of it was seen.
    const standsFor = (jar: JarEvidence): boolean => !jar.mixes && (jar.held === null || !others);
    const middle = median(group.filter(standsFor).map(({ generation }) => generation)) ?? group[0]?.generation ?? 1; // prettier-ignore
    const seen = group.filter((jar) => {
      if (jar.spoiled) return out(jar, 'spoiled', 'It is spoiled.');
      if (!jar.outcome)
        return out(jar, 'unseen', 'Nothing was written down of it: unknown, neither weak nor fine.');
      if (first) return out(jar, 'first batch', 'A first batch is known to be uneven.');
      if (jar.founding) return out(jar, 'from sources', 'It was started from sources.');
      if (jar.mixes) return out(jar, 'mixes lines', 'It mixes two lines.');
      if (jar.held !== null && others) return out(jar, 'set aside', HELD_SAYS[jar.held]);
      const temperature = temperatureOf(jar);
      if (temperature !== null && usualTemperature !== null && temperature < usualTemperature - COOLER_BY)
        return out(
          jar,
          'ran cool',
          `Its hold ran cool: ${temperature.toFixed(1)} °C, usually ${usualTemperature.toFixed(1)}. The culture can't be judged by it.`,
        );
      if (Math.abs(jar.generation - middle) > GENERATIONS_APART)
        return out(
          jar,
          'other generation',
          `It is of generation ${jar.generation}, the batch about ${Math.round(middle)}.`,
        );
      return true;
    });
    const alike = seen.filter((jar) => treatmentOf(jar, usual) === '');
    const corrected = seen.filter(
      (jar) => (effects.get(treatmentOf(jar, usual))?.sets ?? 0) >= SETS_TO_CORRECT,
    );
    const known = seen.filter((jar) => alike.includes(jar) || corrected.includes(jar));
    const comparable = known.length > 0 ? known : seen;
    for (const jar of seen.filter((jar) => !comparable.includes(jar))) {
      const made = usual.additions === '' ? 'plain siblings stand' : 'siblings made as usual stand';
      out(jar, 'other treatment', `It had ${treatmentOf(jar, usual)}; its ${made} for the batch.`);
    }
    const other = known.length > 0 ? undefined : mostCommon(seen.map((jar) => treatmentOf(jar, usual)));
    return {
      batch,
      madeOn: group[0]?.madeOn ?? null,
      generation: Math.round(mean(comparable.map(({ generation }) => generation)) ?? middle),
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
