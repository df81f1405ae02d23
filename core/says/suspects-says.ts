// What else than the culture may be behind a fall: a sentence for each suspect, from its code and figures.
import { dayLabel } from '../lineage/labels';
import { inWords } from './way-to-source';
import type { MadeChange, Suspect } from '../shapes/vigour-codes';

const dayOf = (day: string | null): string => (day === null ? 'a day not known' : dayLabel(day, true));
const whole = (value: number | string): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(2))) : value;

/** "5 mL of seed instead of 45". */
function changeWords({ aspect, now, before, unit }: MadeChange): string {
  const instead = before === null ? '' : ` instead of ${whole(before)}`;
  switch (aspect) {
    case 'seed amount':
      return `${whole(now)} mL of seed${instead}`;
    case 'dose':
      return `${whole(now)} ${unit ?? ''} stirred in${instead}`.replace('  ', ' ');
    case 'seed part':
      return `${whole(now)} as seed${instead}`;
    case 'vessel':
      return `“${now}” as vessel${before === null ? '' : ` instead of “${before}”`}`;
    case 'hold hours':
      return `a hold of ${whole(now)} h${before === null ? '' : ` instead of ${whole(before)}`}`;
    case 'carton':
      return 'milk from another carton';
  }
}

/**
 * What a fall most likely comes from, in one sentence for a card, and what that can't be told from. Where nothing that was noted
 * changed with it, what is left is the culture (design: competition between strains, contamination) or what nobody noted.
 * @param from what came as the line fell (perhapsFrom)
 */
export const blameSays = (from: readonly string[]): string =>
  from.length === 0
    ? 'Most likely from the culture itself, or from what nobody noted: nothing noted changed then.'
    : `Most likely ${inWords(from)}; can't be told from the culture without one jar as before.`;

/** What came as a line fell, for a card: "5 mL of seed instead of 45"; null where it came otherwise or is corrected for. */
export function perhapsFrom(suspect: Suspect, generation: number): string | null {
  if (suspect.code === 'made otherwise') return inWords(suspect.changes.map(changeWords));
  // A fall shows with the batch that had it first, or with the next.
  return suspect.code === 'treatment' && Math.abs(suspect.generation - generation) <= 1
    ? `${suspect.name}, in every jar since then`
    : null;
}

export function suspectSays(suspect: Suspect): string {
  switch (suspect.code) {
    case 'treatment':
      return `${suspect.batches} batches had ${suspect.name} in every jar that was seen, from generation ${suspect.generation} on. With no sibling made as usual, ${suspect.name} and culture can't be told apart here.`;
    case 'made otherwise':
      return `Since ${dayOf(suspect.since)} it was made with ${inWords(suspect.changes.map(changeWords))}, in every jar that was seen. Whether the fall is from that or from the culture can't be told apart: make one jar as before beside the next.`;
    case 'ran cool':
      return `The hold ran cool on ${suspect.days.map(dayOf).join(', ')}. ${suspect.days.length === 1 ? 'That batch is left out: it says' : 'Those batches are left out: they say'} nothing of the culture.`;
    case 'short of warmth':
      return `${suspect.days.length === 1 ? 'One hold was' : `${suspect.days.length} holds were`} short of warmth (${suspect.days.map(dayOf).join(', ')}). That is corrected for.`;
    case 'old seed':
      return `${suspect.batches === 1 ? 'One batch' : `${suspect.batches} batches`} came from seed older than ${suspect.olderThan} days. The delay that it should cost is taken out; a loss of some of its strains can't be.`;
  }
}
