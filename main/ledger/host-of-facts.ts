// An open ledger as the calls of facts need it.
import type { Ledger } from './ledger';
import { Refused } from '../refusal';
import type { FactHost } from './facts/fact-host';

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
