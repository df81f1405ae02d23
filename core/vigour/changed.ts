// A line that suddenly is another: not weaker, but it sets in a part of its usual time, or tastes otherwise. A takeover by
// another culture shows so (common practice, no source).
import { TANGS } from '../ledger/jar-fields';
import type { BatchEvidence } from './comparable';
import { median } from './medians';
import { measuresOf, type Usual } from './usual';

export type Changed =
  /** Hours the latest two batches took to set, and those that are usual. */
  | { readonly code: 'changed'; readonly hours: number; readonly usual: number }
  /** How sour they tasted, and how sour the early batches did. */
  | { readonly code: 'tastes changed'; readonly tang: Tang; readonly usual: Tang };
type Tang = (typeof TANGS)[number];

/** The two latest batches set in less than this part of the usual time. */
const FASTER = 0.6;
/** Steps of tang by which both of them taste otherwise: from mild to sharp, or from clear to none. */
const STEPS = 2;
/** Batches that tell what is usual, and the latest that both have to show the change. */
const EARLY = 4;
const LATEST = 2;

/** One figure of each batch that tells it, the median of its comparable jars. */
const eachOf = (batches: readonly BatchEvidence[], of: (jar: BatchEvidence['comparable'][number]) => number | null): number[] =>
  batches.flatMap(({ comparable }) => median(comparable.flatMap((jar) => of(jar) ?? [])) ?? []); // prettier-ignore

function faster(batches: readonly BatchEvidence[], usual: Usual): Changed | null {
  if (usual['set time'].from !== "the line's early batches") return null;
  const times = eachOf(batches, (jar) => measuresOf(jar)['set time']);
  const most = Math.max(...times.slice(-LATEST));
  return times.length >= EARLY && most < FASTER * usual['set time'].value
    ? { code: 'changed', hours: Math.round(most), usual: Math.round(usual['set time'].value) }
    : null;
}

function tastesOtherwise(batches: readonly BatchEvidence[]): Changed | null {
  const tastes = eachOf(batches, ({ outcome }) => (outcome?.tang ? TANGS.indexOf(outcome.tang) : null));
  if (tastes.length < EARLY + LATEST) return null;
  const usual = median(tastes.slice(0, EARLY)) ?? 0;
  const latest = tastes.slice(-LATEST);
  const off = latest.map((one) => one - usual);
  if (!off.every((one) => one >= STEPS) && !off.every((one) => one <= -STEPS)) return null;
  const word = (at: number): Tang => TANGS[Math.round(at)] ?? 'none';
  return { code: 'tastes changed', tang: word(latest.at(-1) ?? 0), usual: word(usual) };
}

/** What changed in the latest two batches of a line; null where nothing did. */
export const changedIn = ({ batches, usual }: { readonly batches: readonly BatchEvidence[]; readonly usual: Usual }): Changed | null =>
  faster(batches, usual) ?? tastesOtherwise(batches); // prettier-ignore
