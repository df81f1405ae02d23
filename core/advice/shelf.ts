// What is still kept and could seed the next batch, as candidates: jars on the shelf, portions and reserves, each with its
// cautions and the vigour of its batch.
import { delayHours, storageLoss } from '../growth/storage';
import { dayLabel } from '../lineage/labels';
import { dayInOrder, earliestDay } from '../lineage/lineage-shapes';
import type { DayRange } from '../quantities/day-ranges';
import type { Family } from '../lineage/family';
import { answerOf, gateAmongMates } from '../safety/answer';
import { longUnsaid, seededOn } from '../safety/still-there';
import { storageOf, type PortionRecord } from '../vigour/evidence';
import type { LineJudgement } from '../vigour/line';
import { POINTS_A_TENFOLD } from '../vigour/level/stored-seed';
import type { SeedLevel } from './seed-level';
import { scoredOf } from './scored';
import type { KeptSeed, SeedCandidate } from './seed-candidate';

export interface ShelfJar {
  readonly key: number;
  readonly uid: string;
  readonly onShelf: boolean | null;
  /** A day was recorded on which it was eaten up or thrown out, or nothing is left of it. */
  readonly gone: boolean;
  readonly outcomeKnown: boolean;
  /** Nobody has seen how it came out, and its hold may not have ended (in-hold.ts). */
  readonly inHold: boolean;
  /** The days between which it came out of warmth (in-hold.ts): from then on it stands in the fridge. Null: nothing is known. */
  readonly outOn: DayRange | null;
}

export interface ShelfPortion extends PortionRecord {
  readonly uid: string;
  readonly jar: number;
  readonly goneOn: string | null;
  readonly reserve: boolean;
  readonly note: string | null;
}

const PLACES = { fridge: 'pot kept in the fridge', freezer: 'frozen', dried: 'dried' } as const;

/**
 * Candidates, in order of making, the newest first.
 * @param judgements of the lines that a jar belongs to; @param levelOf what a jar's batch promises (seed-level.ts);
 * @param against what a jar's own hold says against it (doubts.ts)
 * @param lineId the caller's id of a line
 * @param line only what carries this line; null for all
 */
export function shelfCandidates(
  family: Family,
  jars: readonly ShelfJar[],
  portions: readonly ShelfPortion[],
  judgements: (jar: number) => readonly LineJudgement[],
  levelOf: (jar: number, poorer: number) => SeedLevel | null,
  against: (jar: number) => Pick<SeedCandidate, 'doubts' | 'asks' | 'quotes'>,
  lineId: (batch: number) => string,
  today: string,
  line: number | null,
): KeptSeed[] {
  const byKey = new Map(jars.map((jar) => [jar.key, jar]));
  const newest = new Map<number, string>();
  for (const { key } of jars) {
    const day = dayInOrder(family.jar(key));
    for (const one of family.linesOf(key)) {
      if (day !== null && day > (newest.get(one) ?? '')) newest.set(one, day);
    }
  }
  const candidate = (jar: ShelfJar, portion: ShelfPortion | null): KeptSeed[] => {
    const member = family.jar(jar.key);
    // Of a range of days the first: it may have stood for so long.
    const madeOn = earliestDay(member);
    const day = dayInOrder(member);
    const lines = family.linesOf(jar.key);
    if (
      madeOn === null ||
      day === null ||
      jar.outOn === null ||
      member.lost ||
      madeOn > today ||
      (line !== null && !lines.includes(line))
    )
      return [];
    const storage = storageOf(madeOn, today, portion);
    const seededToday = seededOn(family, jar.key, today);
    if (!portion && !seededToday && longUnsaid(jar.onShelf, madeOn, today)) return [];
    const own = against(jar.key);
    const answer = answerOf(family, jar.key, portion && { on: portion.keptOn });
    const { because } = answer;
    const generation = family.generationOf(jar.key);
    const older = lines.some((one) => (newest.get(one) ?? '') > day);
    const keptDays = (since: string): number => storageOf(since, today, null).fridgeDays;
    return [
      {
        id: portion?.uid ?? jar.uid,
        jar: jar.uid,
        portion: portion?.uid ?? null,
        label: portion
          ? `${member.label}, ${PLACES[portion.place]} ${dayLabel(portion.keptOn, true)}`
          : member.label,
        kind: portion ? (portion.reserve ? 'reserve' : 'portion') : older ? 'older sibling' : 'jar',
        batch: String(member.batch),
        lines: lines.map(lineId),
        generation: generation.deepest,
        atLeast: generation.atLeast,
        // A received culture is a source, so only a jar without its seed leaves a share that traces back to nothing.
        pastUnknown:
          generation.atLeast && family.tracedSharesOf(jar.key).some(({ source }) => source === null),
        discard: answer.discard,
        spoiled: answer.discard === 'spoiled',
        stops: answer.stops,
        passed: gateAmongMates(family, jar.key) === 'passed',
        caution: because && {
          ...because,
          spoiled: because.relation === 'itself' ? null : family.jar(because.of).label,
        },
        acidNotThere: answer.noAcid,
        ...own,
        // What was kept apart has come out of its hold.
        inHold: jar.inHold,
        keptSaid: portion !== null || jar.onShelf === true || seededToday,
        place: portion?.place ?? 'fridge',
        // A portion's days are those it has been kept apart; what it waited before counts in the delay.
        days: keptDays(portion ? portion.keptOn : jar.outOn.from),
        ...(!portion && jar.outOn.from !== jar.outOn.to && { daysLeast: keptDays(jar.outOn.to) }),
        delayHours: delayHours(storageLoss(storage)).middle,
        outcomeKnown: jar.outcomeKnown,
        level: levelOf(jar.key, POINTS_A_TENFOLD * storageLoss(storage).middle),
        ...scoredOf(jar.key, member.batch, judgements(jar.key)),
      },
    ];
  };
  const kept = jars
    .filter(({ onShelf, gone }) => onShelf !== false && !gone)
    .flatMap((jar) => candidate(jar, null));
  const apart = portions
    .filter(({ goneOn, keptOn }) => goneOn === null && keptOn <= today)
    .flatMap((portion) => {
      const jar = byKey.get(portion.jar);
      return jar ? candidate(jar, portion) : [];
    });
  return [...kept, ...apart].toSorted((a, b) => a.days - b.days || a.label.localeCompare(b.label));
}
