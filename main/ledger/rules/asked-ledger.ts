// What the rules need of an open ledger: its rows, the family in memory and how jars are called.
import type { LabelParts } from '../../../core/lineage/labels';
import type { Rows } from '../facts/fact-rows';
import type { Clock } from '../clock';
import type { FamilyIndex } from '../family-index';

export interface AskedLedger {
  readonly rows: Rows;
  readonly clock: Clock;
  readonly index: FamilyIndex;
  /** The rows hold more than the family in memory shows. */
  readonly behind: boolean;
  readonly labelFor: (parts: LabelParts) => string;
}
