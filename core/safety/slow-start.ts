// The clocks of the first day: looks at 8, 12 and 24 hours. They run by the clock, also through power cuts, and warm hours
// never excuse them; acid that comes later does not undo a toxin. Reasons, with their sources: S. aureus makes toxin in milk
// at 35 °C within 6 to 12 h (PMC547554), B. cereus rises for the first 12 to 18 h of a fermentation (doi
// 10.38212/2224-6614.2372) and is held back at pH 5.0 or less (doi 10.1111/j.1365-2672.1990.tb02913.x).
import type { Look } from './seen';
import type { SlowStart } from '../shapes/safety-codes';

/** Hours, and the pH that a jar may not be above by then. A first batch gets the same: fresher milk, no leniency. */
const CLOCKS = { twelve: { hours: 12, ph: 5.7 }, day: { hours: 24, ph: 5.3 } } as const;

const GRAVITY = ['too late', 'meter only', 'look'] as const;

function oneLook(look: Look): SlowStart | null {
  const early = look.stage === 'early';
  // Of a look at the end of a hold the gate says what its smell and set are worth.
  if (!early && look.hoursIn === null) return null;
  const hours = look.hoursIn;
  const at = hours ?? CLOCKS.twelve.hours;
  const highest = look.acidity.reduce<number | null>((most, { ph }) => Math.max(most ?? ph, ph), null);
  const sourless = look.sour === false;
  const loose = look.setState === 'loose' || look.setState === 'not set';
  const said = { hours, ph: null, loose, sourless };
  if (at >= CLOCKS.day.hours && highest !== null && highest > CLOCKS.day.ph)
    return { ...said, kind: 'too late', ph: highest };
  if (!early) return null;
  if (at >= CLOCKS.day.hours && sourless) return { ...said, kind: 'meter only' };
  if (at < CLOCKS.twelve.hours) return null;
  if (highest !== null && highest > CLOCKS.twelve.ph) return { ...said, kind: 'look', ph: highest };
  if (sourless) return { ...said, kind: 'look' };
  // Sour and loose at 12 h is on its way; loose with nothing said of its smell is not known to be.
  return loose && (look.sour === null || at >= CLOCKS.day.hours) ? { ...said, kind: 'look' } : null;
}

/** The gravest thing that the first day tells against a jar; null where it tells of none, or nobody looked. */
export function slowStart(looks: readonly Look[]): SlowStart | null {
  const found = looks.flatMap((look) => oneLook(look) ?? []);
  return GRAVITY.map((kind) => found.find((one) => one.kind === kind)).find((one) => one !== undefined) ?? null; // prettier-ignore
}
