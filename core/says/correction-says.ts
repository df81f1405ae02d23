// What was taken out of a jar's score before it is called vigour, in words.
import { daysWords } from '../quantities/typed-days';
import type { CorrectionFor } from '../shapes/vigour-codes';

/** How often an effect was seen between siblings: "seen once", "seen 3 times". */
export const timesSeen = (count: number): string => (count === 1 ? 'seen once' : `seen ${count} times`);

/** @param name what it is called: of a treatment what was stirred in or done otherwise */
export function correctionSays(name: string, why: CorrectionFor): string {
  switch (why.code) {
    case 'short of warmth':
      return `The hold was ${why.hours.toFixed(1)} warm hours short of what this seed needed.`;
    case 'seed waited': {
      const fridge = daysWords(why.fridgeDays);
      const stored =
        why.frozenDays > 0
          ? `${fridge} in the fridge and ${daysWords(why.frozenDays)} in the freezer`
          : fridge;
      return `Its seed stood ${stored}, usually ${daysWords(why.usualDays)}: about ${Math.abs(why.hours).toFixed(1)} h ${why.hours > 0 ? 'slower' : 'faster'}.`;
    }
    case 'treatment':
      return `With ${name}, siblings of one seed in one hold came out about ${Math.abs(why.does).toFixed(0)} points ${why.does < 0 ? 'lower' : 'higher'} (${timesSeen(why.sets)}).`;
  }
}
