// Which jars of a line speak for which batch. Like is compared with like: the line's usual treatment, one generation, not
// the uneven first batch, nothing spoiled or unseen. Every jar left out says why.
import { LEAST_SETTING_HOURS } from '../ledger/hold-hours';
import { meanTemperature } from '../growth/warm-hours';
import { additionsOf, milkOf, treatmentOf, type Effect, type UsualTreatment } from './effects';
import { mean, median } from './medians';
import type { JarEvidence } from './jar-evidence';
import { compareDays } from '../lineage/lineage-shapes';
import type { Held } from '../safety/set-aside';

/** Why a jar does not speak for its batch; core/says/left-out-says.ts makes the sentence. */
export type LeftOutBecause =
  | { readonly because: 'spoiled' | 'unseen' | 'first batch' | 'from sources' | 'mixes lines' }
  | { readonly because: 'set aside'; readonly held: Held }
  /** Mean temperatures of its hold and of those that are usual (°C). */
  | { readonly because: 'ran cool'; readonly celsius: number; readonly usual: number }
  /** Hours of its stay in warmth. */
  | { readonly because: 'held short'; readonly hours: number }
  /** Its generation, and about that of its batch. */
  | { readonly because: 'other generation'; readonly generation: number; readonly batch: number }
  /** What it had, and whether usual jars are plain. */
  | { readonly because: 'other treatment'; readonly treatment: string; readonly plain: boolean };

export type LeftOut = LeftOutBecause & { readonly jar: JarEvidence };

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

/** A hold cooler than the line's first ones by this much (°C, warming up apart) can't be compared at all. */
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
  compareDays(a, b) || a.batch - b.batch || a.label.localeCompare(b.label);

const MOST = 0.8;

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
  // As warm as the batches that its scores are held against: a bath that runs cool for good is never usual.
  const usualTemperature = median(
    later
      .flatMap((group) => median(group.flatMap((jar) => temperatureOf(jar) ?? [])) ?? [])
      .slice(0, BATCHES_FOR_USUAL),
  );
  const batches = [...byBatch].map(([batch, group]): BatchEvidence => {
    const leftOut: LeftOut[] = [];
    const first = batch === line;
    const others = group.some(
      ({ held, mixes, spoiled, outcome }) => held === null && !mixes && !spoiled && outcome !== null,
    );
    const out = (jar: JarEvidence, why: LeftOutBecause): false => {
      leftOut.push({ jar, ...why });
      return false;
    };
    // A set-aside jar speaks for none that isn't: it stands for its batch only where nothing else of it was seen.
    const standsFor = (jar: JarEvidence): boolean => !jar.mixes && (jar.held === null || !others);
    const middle = median(group.filter(standsFor).map(({ generation }) => generation)) ?? group[0]?.generation ?? 1; // prettier-ignore
    const seen = group.filter((jar) => {
      if (jar.spoiled) return out(jar, { because: 'spoiled' });
      if (!jar.outcome) return out(jar, { because: 'unseen' });
      if (first) return out(jar, { because: 'first batch' });
      if (jar.founding) return out(jar, { because: 'from sources' });
      if (jar.mixes) return out(jar, { because: 'mixes lines' });
      if (jar.held !== null && others) return out(jar, { because: 'set aside', held: jar.held });
      const temperature = temperatureOf(jar);
      if (temperature !== null && usualTemperature !== null && temperature < usualTemperature - COOLER_BY)
        return out(jar, { because: 'ran cool', celsius: temperature, usual: usualTemperature });
      const { heldHours } = jar;
      if (heldHours !== null && heldHours < LEAST_SETTING_HOURS)
        return out(jar, { because: 'held short', hours: heldHours });
      if (Math.abs(jar.generation - middle) > GENERATIONS_APART)
        return out(jar, { because: 'other generation', generation: jar.generation, batch: middle });
      return true;
    });
    const alike = seen.filter((jar) => treatmentOf(jar, usual) === '');
    const corrected = seen.filter(
      (jar) => (effects.get(treatmentOf(jar, usual))?.sets ?? 0) >= SETS_TO_CORRECT,
    );
    const known = seen.filter((jar) => alike.includes(jar) || corrected.includes(jar));
    const comparable = known.length > 0 ? known : seen;
    for (const jar of seen.filter((jar) => !comparable.includes(jar)))
      out(jar, {
        because: 'other treatment',
        treatment: treatmentOf(jar, usual),
        plain: usual.additions === '',
      });
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
