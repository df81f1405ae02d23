// What a hold, and the other jars in it, tell of one jar: they stood in the same warmth, so the power failed for all of them.
import type { Outcome } from '../ledger/records';
import type { MatesPowerCut } from '../shapes/seed-codes';

/** A jar of a batch: which hold it stood in (null: not said) and what was seen. Ids or keys, as the caller has them. */
export interface HoldMate<Id extends string | number> {
  readonly label: string;
  readonly jar: { readonly id: Id; readonly hold: Id | null };
  readonly outcome: Pick<Outcome, 'powerCut' | 'powerCutHours'> | null;
}

/**
 * The power cut that jars of the same hold tell of; a jar whose hold is not said may have stood in any.
 * @param jars of the same batch
 * @returns null where none does
 */
export function powerCutOfMates<Id extends string | number>(
  record: Pick<HoldMate<Id>, 'jar'>,
  jars: readonly HoldMate<Id>[],
): MatesPowerCut | null {
  const mate = jars.find(
    ({ jar, outcome }) =>
      jar.id !== record.jar.id &&
      outcome?.powerCut === true &&
      (jar.hold === record.jar.hold || jar.hold === null || record.jar.hold === null),
  );
  return mate ? { label: mate.label, hours: mate.outcome?.powerCutHours ?? null } : null;
}

/** What was seen, with the power cut its hold-mates tell of where nothing is said of one here. */
export function withMatesPowerCut<T extends Pick<Outcome, 'powerCut' | 'powerCutHours'>>(
  outcome: T,
  mates: MatesPowerCut | null,
): T {
  return mates === null || outcome.powerCut !== null
    ? outcome
    : { ...outcome, powerCut: true, powerCutHours: mates.hours };
}
