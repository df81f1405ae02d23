// What the calls of facts need of a ledger.
import type { ActKind } from '../../../core/ledger/act-words';
import type { Rows } from './fact-rows';
import type { Done, OpenAct } from './open-act';

export interface FactHost {
  readonly facts: Rows;
  /** A jar's label as it is now. */
  readonly labelOf: (jar: number) => string;
  /** Asks whether a caution on a jar because of another can be lifted. @throws Refused */
  readonly askLift: (jar: number, of: number) => void;
  /** One act that a keeper asked for. @throws Refused 'nothing changed' */
  readonly mustRun: <T>(
    kind: ActKind,
    subject: string,
    why: string | null,
    work: (act: OpenAct) => T,
    draft?: string | null,
  ) => Done<T>;
}
