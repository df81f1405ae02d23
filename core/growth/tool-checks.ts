// Checks of the tools that a keeper trusts: a meter in buffer of pH 4.01, a thermometer in ice water, a glass of water that
// stood overnight in the fridge. What a check is worth, and for how long.

export type Tool = 'meter' | 'thermometer' | 'fridge';

export interface ToolCheck {
  readonly tool: Tool;
  readonly day: string;
  /** pH of a meter, else °C. */
  readonly shown: number;
}

/** Buffer for the range of a jar. */
export const BUFFER_PH = 4.01;
/** How far a tool may be off (common practice, no source): a tenth in pH, half a degree. */
const METER_WITHIN = 0.1;
const THERMOMETER_WITHIN = 0.5;
/** At or below 40 °F, 4 °C (trade cautions; FDA and USDA give 40 °F). */
const FRIDGE_MOST = 4.45;
/** Days after which a check is due again (common practice, no source). A meter is checked on the day it is to prove something. */
export const CHECK_EVERY: Readonly<Record<Tool, number>> = { meter: 1, thermometer: 90, fridge: 90 };

/** Whether what a tool showed speaks for it. */
export function checkPasses({ tool, shown }: Pick<ToolCheck, 'tool' | 'shown'>): boolean {
  if (tool === 'meter') return Math.abs(shown - BUFFER_PH) <= METER_WITHIN + 1e-9;
  if (tool === 'thermometer') return Math.abs(shown) <= THERMOMETER_WITHIN + 1e-9;
  return shown <= FRIDGE_MOST;
}

/**
 * Whether the meter was checked on a day: true where it passed, false where it failed, null where nobody checked it. An
 * unchecked meter proves nothing. Of several checks of one day the last counts.
 */
export function meterCheckedOn(checks: readonly ToolCheck[], day: string): boolean | null {
  const last = checks.findLast((check) => check.tool === 'meter' && check.day === day);
  return last ? checkPasses(last) : null;
}
