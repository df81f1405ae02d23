// Nothing else may go by the name of a jar: a product or a lost jar called "3 Apr c" would pass for the jar 3 Apr c and
// carry none of its cautions.
import { namerOf } from '../../core/lineage/labels';
import type { Ledger } from './ledger';
import { Refused } from '../refusal';

/**
 * Refuses a name that is the label of a jar, or of what is kept apart of one.
 * @throws Refused 'name of a jar'
 */
export function refuseJarName(ledger: Ledger, name: string): void {
  const isNamed = namerOf(name, ledger.preferences.dates);
  for (const jar of ledger.index.jars.values()) {
    if (jar.state !== 'mistake' && isNamed(jar)) {
      throw new Refused('name of a jar', { name, label: jar.label });
    }
  }
}
