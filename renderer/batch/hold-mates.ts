// What the other jars of a hold tell of one jar: they stood in the same warmth, so the power failed for all of them. Pure.
import type { BatchReply } from '../../core/contract';

type ReplyJar = BatchReply['jars'][number];

/** Whether the jar is on hold because of a spoiled one, and no reason was written that lifts it. */
export const isOnHold = ({ cautions }: Pick<ReplyJar, 'cautions'>): boolean =>
  cautions.some(({ how, cleared }) => !cleared && how.startsWith('on hold'));

/** A power cut that another jar of the same hold tells of. */
export interface MatesPowerCut {
  readonly label: string;
  readonly hours: number | null;
}

/**
 * The power cut that jars of the same hold tell of; a jar whose hold is not said may have stood in any.
 * @returns null where none does
 */
export function powerCutOfMates(record: ReplyJar, jars: readonly ReplyJar[]): MatesPowerCut | null {
  const mate = jars.find(
    ({ jar, outcome }) =>
      jar.id !== record.jar.id &&
      outcome?.powerCut === true &&
      (jar.hold === record.jar.hold || jar.hold === null || record.jar.hold === null),
  );
  return mate ? { label: mate.label, hours: mate.outcome?.powerCutHours ?? null } : null;
}

interface PowerCut {
  readonly powerCut: boolean | null;
  readonly powerCutHours: number | null;
}

/** What was seen, with the power cut its hold-mates tell of where nothing is said of one here. */
export function withMatesPowerCut<T extends PowerCut>(outcome: T, mates: MatesPowerCut | null): T {
  return mates === null || outcome.powerCut !== null
    ? outcome
    : { ...outcome, powerCut: true, powerCutHours: mates.hours };
}
