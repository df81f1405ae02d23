// Cautions that were lifted with a written reason. A reason is about the spoilage as it was known then, so that is kept
// beside it, by form: undoing what made it worse brings the lift back.
import { type Spoilage, spoilageGrew, spoilageOf } from '../../../core/safety/signs';
import { DISCARD_SIGNS, type DiscardSign } from '../../../core/ledger/records';
import type { FamilyClearing } from '../../../core/lineage/lineage-shapes';
import type { OpenAct } from '../facts/open-act';
import type { Rows as FactRows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { observedOf, outcomeFrom, outcomes } from '../entries/outcome-of-jar';

/** Lifts a caution on a jar because of another, with what is known of the spoilage now. */
export function addLift(act: OpenAct, jar: number, of: number, why: string): void {
  const reason = act.insert('reason', { text: why, private: true }).key;
  addKnown(act, act.insert('lift', { reason, jar, ofJar: of }).key, of);
}

/** Keeps with a lift what is known of the spoilage now. */
export function addKnown(act: OpenAct, lift: number, of: number): void {
  const known = spoilageOf(outcomeFrom(observedOf(act.rows, of)));
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
