// What is usual: of a line its first batches after the founding one, else of all the keeper's lines, else an assumption.
// Times are in warm hours where the temperatures are known, since a cool night delays any culture.
import { ASSUMED_SETS } from '../growth/cardinal';
import { profileUntil, warmthOf, type WarmPoint } from '../growth/warm-hours';
import { EARLY_SETS, SET_WORDS, WHEYS } from '../ledger/jar-fields';
import { median } from './medians';
import type { JarEvidence } from './jar-evidence';
import type { PartName } from '../shapes/vigour-codes';

/** What one part shows of a jar, as a number, before it is compared with anything; null where it was not seen. */
export type Measures = Readonly<Record<PartName, number | null>> & {
  /** Warm (or plain) hours at the early check. */
  readonly checkHours: number | null;
  /** The two times between which it set, on the same clock as the set time. */
  readonly setBetween: readonly [number, number] | null;
};

const MIDDLE_SET = ASSUMED_SETS.slice(0, 1);

const clocks = new WeakMap<readonly WarmPoint[], Map<number, number>>();

/** Warm hours up to a time by the middle of the ranges; plain hours where no temperatures are known. */
function clockOf(jar: JarEvidence): (hour: number) => number {
  const { profile } = jar;
  if (!profile || profile.length < 2) return (hour) => hour;
  // Jars of one hold are mostly looked at at the same times.
  const clock = clocks.get(profile) ?? new Map<number, number>();
  clocks.set(profile, clock);
  return (hour) => {
    if (hour <= 0) return 0;
    const known = clock.get(hour);
    if (known !== undefined) return known;
    const warm = warmthOf(profileUntil(profile, hour), MIDDLE_SET)?.warmHours.middle ?? hour;
    clock.set(hour, warm);
    return warm;
  };
}

const indexIn = (words: readonly string[], word: string | null): number | null => {
  const index = word === null ? -1 : words.indexOf(word);
  return index < 0 ? null : index;
};

/** Where only one end of the set time was seen, the other is taken this many times away. */
const OPEN_END = 1.5;

/** No milk sets sooner (h): a slip of the pen is not to make every other jar endlessly slow. */
const SOONEST_SET = 0.5;

/** Measures of jars already looked at: evidence never changes, and a score asks for them several times. */
const known = new WeakMap<JarEvidence, Measures>();

/** What was seen of a jar, as numbers. */
export function measuresOf(jar: JarEvidence): Measures {
  const before = known.get(jar);
  if (before) return before;
  const measures = measure(jar);
  known.set(jar, measures);
  return measures;
}

function measure(jar: JarEvidence): Measures {
  const seen = jar.outcome;
  const at = clockOf(jar);
  const after = seen?.setAfterHours ?? null;
  const by = seen?.setByHours ?? null;
  const low = after ?? (by === null ? null : by / OPEN_END);
  const high = by ?? (after === null ? null : after * OPEN_END);
  const setBetween =
    low === null || high === null || high <= 0
      ? null
      : ([at(Math.min(low, high)), at(Math.max(low, high))] as const);
  return {
    'set time': setBetween && Math.max(SOONEST_SET, (setBetween[0] + setBetween[1]) / 2),
    'early pH': seen?.earlyPh ?? null,
    'early set': indexIn(EARLY_SETS, seen?.earlySet ?? null),
    'end pH': seen?.ph ?? null,
    'set word': indexIn(SET_WORDS, seen?.setWord ?? null),
    whey: indexIn(WHEYS, seen?.whey ?? null),
    checkHours: seen?.earlyCheckHours === null || seen === null ? null : at(seen.earlyCheckHours),
    setBetween,
  };
}

export type UsualFrom = "the line's early batches" | "all the keeper's lines" | 'assumed';
export interface UsualPart {
  readonly value: number;
  readonly from: UsualFrom;
}
export type Usual = Readonly<Record<PartName | 'checkHours', UsualPart>>;

/** Where nothing better is known (common practice, no source). */
const ASSUMED: Readonly<Record<PartName | 'checkHours', number>> = {
  'set time': 12,
  'early pH': 5.3,
  'early set': 1,
  'end pH': 4.35,
  'set word': 3,
  whey: 0,
  checkHours: 8,
};

type SeenBatches = readonly (readonly Measures[])[];
const seenOf = (batches: readonly (readonly JarEvidence[])[]): SeenBatches =>
  batches.map((jars) => jars.map((jar) => measuresOf(jar)));
const middleOf = (batches: SeenBatches, part: PartName | 'checkHours'): number | null =>
  median(batches.flatMap((jars) => median(jars.flatMap((jar) => jar[part] ?? [])) ?? []));

const PARTS = ['set time', 'early pH', 'early set', 'end pH', 'set word', 'whey', 'checkHours'] as const;

const usualBy = (of: (part: PartName | 'checkHours') => UsualPart): Usual =>
  Object.fromEntries(PARTS.map((part) => [part, of(part)])) as Usual;

/** The usual of all the keeper's lines: medians over their early batches (each batch by its own median). */
export function usualOfAll(early: readonly (readonly JarEvidence[])[]): Usual {
  const seen = seenOf(early);
  return usualBy((part) => {
    const value = middleOf(seen, part);
    return value === null
      ? { value: ASSUMED[part], from: 'assumed' }
      : { value, from: "all the keeper's lines" };
  });
}

/** The usual of a line by its early batches; what was not seen there is that of all the keeper's lines. */
export function usualOf(early: readonly (readonly JarEvidence[])[], keeper: Usual): Usual {
  const seen = seenOf(early);
  return usualBy((part) => {
    const value = middleOf(seen, part);
    return value === null ? keeper[part] : { value, from: "the line's early batches" };
  });
}

/** Whether two usuals say the same of every part. */
export const sameUsual = (a: Usual, b: Usual): boolean =>
  PARTS.every((part) => a[part].value === b[part].value && a[part].from === b[part].from);
