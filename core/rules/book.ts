// The rule book: what must hold of a ledger. *Invariants* hold always and are asked after every act about all that it
// touched, whoever made it. *Consents* (core/rules/consents.ts) are asked of new facts only. Pure: facts in, what is
// broken out; the loader and the place where it is asked are main's (main/ledger/rules/). To add a rule, add it to the
// list of its topic: its code to core/sentences.ts, its SQL to tests/rules/ledger-check.ts.
import { AMOUNT_RULES } from './amount-rules';
import { CONSENTS, type Circumstances, type Consent, type Fresh } from './consents';
import { DAY_RULES } from './day-rules';
import type { Facts } from './asked-facts';
import type { Broken, Invariant } from './rule';
import { SEED_RULES } from './seed-rules';
import { STATE_RULES } from './state-rules';

export interface Book {
  /** What holds always, the one to be said first before the others. */
  readonly invariants: readonly Invariant[];
  /** What is asked of new facts, likewise. */
  readonly consents: readonly Consent[];
}

/** Every rule there is. */
export const BOOK: Book = {
  invariants: [...SEED_RULES, ...DAY_RULES, ...AMOUNT_RULES, ...STATE_RULES],
  consents: CONSENTS,
};

/**
 * All invariants that don't hold, in the order of the book. Each goes once through the facts.
 * @param look called before each rule; may throw to stop
 */
export function* brokenInvariants(
  facts: Facts,
  { invariants }: Book = BOOK,
  look?: (() => void) | null,
): Generator<Broken> {
  for (const { ask } of invariants) {
    look?.();
    yield* ask(facts);
  }
}

/** All consents that are missing, in the order of the book. @param look as in brokenInvariants */
export function* missingConsents(
  facts: Facts,
  fresh: Fresh,
  known: Circumstances,
  { consents }: Book = BOOK,
  look?: (() => void) | null,
): Generator<Broken> {
  for (const { ask, ofUndone } of consents) {
    look?.();
    if (ofUndone || !known.undone) yield* ask(facts, fresh, known);
  }
}
