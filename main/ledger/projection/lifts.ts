// Cautions that were lifted with a written reason. A reason is about the spoilage as it was known then, so that is kept
// beside it, by form: undoing what made it worse brings the lift back.
import { type Spoilage, spoilageGrew, spoilageOf } from '../../../core/safety/signs';
import { DISCARD_SIGNS, type DiscardSign } from '../../../core/ledger/records';
import type { FamilyClearing } from '../../../core/lineage/lineage-shapes';
import type { OpenAct } from '../facts/open-act';
import type { Rows as FactRows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import type { Under } from './put';
import { observedOf, outcomeFrom, outcomes } from './outcome';
import type { Stored } from './records';

export interface HeldLift {
  readonly row?: FactRow<'lift'> | undefined;
  readonly reason?: FactRow<'reason'> | undefined;
}

export const heldLift = (facts: FactRows, row: FactRow<'lift'>): HeldLift => ({
  row,
  reason: facts.find('reason', row.reason),
});

export const clearingFrom = ({ row, reason }: HeldLift): Stored['clearing'] => ({
  jar: row?.jar as number,
  of: row?.ofJar as number,
  reason: reason?.text as string,
});

/** Lifts a caution, with what is known of the spoilage now. @returns the key of the lift */
export function putLift(act: OpenAct, under: Under, { jar, of, reason }: Stored['clearing']): number {
  const text = act.insert('reason', { text: reason, private: true }).key;
  const lift = act.insert('lift', { reason: text, jar, ofJar: of }).key;
  putKnown(act, under, lift, of);
  return lift;
}

/** Keeps with a lift what is known of the spoilage now. */
export function putKnown(act: OpenAct, under: Under, lift: number, of: number): void {
  const known = spoilageOf(outcomeFrom(observedOf(under, of)));
  if (known === null) return;
  const opened = known.openedDays !== null;
  const daysOpen = known.openedDays === 'unknown' ? null : known.openedDays;
  for (const kind of [...known.signs, ...(known.said ? (['said spoiled'] as const) : [])])
    act.insert('liftKnew', { lift, kind, answer: 'seen', opened, daysOpen });
}

/** The spoilage that was known; null where none was. */
function knownThen(knew: readonly FactRow<'liftKnew'>[]): Spoilage | null {
  const [first] = knew;
  if (!first) return null;
  const signs = new Set(DISCARD_SIGNS.filter((sign) => knew.some(({ kind }) => kind === sign)));
  return {
    signs: signs satisfies ReadonlySet<DiscardSign>,
    said: knew.some(({ kind }) => kind === 'said spoiled'),
    openedDays: first.opened ? (first.daysOpen ?? 'unknown') : null,
  };
}

/** All lifted cautions, each with whether more is known of the spoilage now than when it was lifted. */
export function readClearings(facts: FactRows): FamilyClearing[] {
  const lifts = [...facts.all('lift')];
  const now = outcomes(facts, [...new Set(lifts.map(({ ofJar }) => ofJar))]);
  return lifts.map(({ key, jar, ofJar, reason }) => ({
    jar,
    of: ofJar,
    reason: facts.get('reason', reason).text,
    outdated: spoilageGrew(
      knownThen(facts.where('liftKnew', 'lift', key)),
      spoilageOf(now.get(ofJar) ?? null),
    ),
  }));
}
