// The parts of a jar's score in words: what was seen, beside what is usual of its line.
import { EARLY_SETS, SET_WORDS, WHEYS } from '../ledger/jar-fields';
import type { CheckAside, PartSeen } from '../vigour/jar-evidence';

/** "12.5", "12". */
const hours = (value: number): number => Number(value.toFixed(1));

/** "Set after 11 to 13.5 hours; usual is 12." */
export function partSays(seen: PartSeen): string {
  switch (seen.name) {
    case 'set time':
      return `Set after ${hours(seen.low)} to ${hours(seen.high)} ${seen.warm ? 'warm hours' : 'hours'}; usual is ${hours(seen.usual)}.`;
    case 'early pH':
      return `Early pH ${seen.ph.toFixed(2)}; usual is ${seen.usual.toFixed(2)}.`;
    case 'early set':
      return `At the early check: ${EARLY_SETS[seen.at] ?? ''}.`;
    case 'end pH':
      return `End pH ${seen.ph.toFixed(2)}${seen.strip ? ' by strip, which counts little' : ''}; usual is ${seen.usual.toFixed(2)}.`;
    case 'set word':
      return `Set ${SET_WORDS[seen.at] ?? ''}.`;
    case 'whey':
      return `Whey: ${WHEYS[seen.at] ?? ''}.`;
  }
}

/** That an early check can't be compared. */
export const asideSays = (check: CheckAside): string =>
  `The early check came after ${hours(check.hours)} h of warmth, usually ${hours(check.usual)} h: it can't be compared.`;
