// What a rule is, and what it answers.
import type { Refusal } from '../contract';
import type { RefusalCode } from '../sentences';
import type { Facts } from './asked-facts';

/** A rule that does not hold: the code and what its sentence needs. */
export interface Broken {
  readonly code: RefusalCode;
  readonly params: Refusal['params'];
  /** The jar whose facts would have to be otherwise: on an import its row stays aside. Null for a thing of no jar. */
  readonly jar: number | null;
}

/** Something that holds always, whoever wrote the facts: a form, an import, an undo, a redo. */
export interface Invariant {
  /** The code it is refused with. */
  readonly code: RefusalCode;
  /** In plain words, what holds. */
  readonly holds: string;
  /** Goes once through the facts and says where it doesn't hold. */
  readonly ask: (facts: Facts) => Iterable<Broken>;
}
