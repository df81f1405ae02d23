// How a file writes what can be written in several ways, once that is settled.
import type { DecimalMark, SpoonSystem, TemperatureScale } from '../../quantities/quantities';
import type { DayOrder } from '../../text/days';

export const SYSTEMS: readonly SpoonSystem[] = ['US', 'metric', 'Australia', 'UK imperial'];

export interface Conventions {
  readonly order: DayOrder;
  readonly decimal: DecimalMark | undefined;
  readonly spoons: SpoonSystem;
  readonly spoonsReason: string;
  readonly scale: TemperatureScale | undefined;
  /** Unit taken for bare numbers of a column, by heading. */
  readonly bareUnits: ReadonlyMap<string, string>;
}
