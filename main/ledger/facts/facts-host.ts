// What the calls of facts need of a ledger.
import type { ActKind } from '../../../core/ledger/act-words';
import type { Ledger } from '../ledger';
import { Refused } from '../refusal';
import type { Done, OpenAct } from './open-act';
import type { Rows } from './fact-rows';

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

/** @throws Refused 'no such caution', 'condemned stays', 'already lifted' */
export function refuseLift({ index }: Ledger, jar: number, of: number): void {
  const { family } = index;
  const [label, ofLabel] = [index.jar(jar).label, index.jar(of).label];
  const caution = family.has(jar) ? family.cautionsOf(jar).find((one) => one.of === of) : undefined;
  if (!caution) throw new Refused('no such caution', { jar: label, of: ofLabel });
  if (caution.level === 'condemned') throw new Refused('condemned stays', { jar: label });
  if (caution.cleared !== null) throw new Refused('already lifted');
}

export const hostOf = (ledger: Ledger): FactHost => ({
  facts: ledger.rows,
  labelOf: (jar) => ledger.index.jar(jar).label,
  askLift: (jar, of) => refuseLift(ledger, jar, of),
  mustRun: (kind, subject, why, work, draft = null) => ledger.acts.mustRun(kind, subject, why, work, draft),
});
