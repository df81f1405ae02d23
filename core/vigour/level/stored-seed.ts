// What storage of the seed does to the batch made from it, and to that one alone: it starts later and comes out poorer, with the
// culture in perfect health.
import { storageLoss, type Storage } from '../../growth/storage';

/**
 * A tenfold loss of the seed in storage is taken to make the batch that it seeds, and that one alone, poorer by so much (points;
 * an assumption, no source): the milk ripens later in the same hold.
 */
export const POINTS_A_TENFOLD = 8;
/** How sure that is: give or take so much of itself (an assumption, no source). */
const GIVE_OR_TAKE = 0.5;

/**
 * By how much the first batch of a frozen seed comes out otherwise (points).
 * @param corrected its score has the delay taken out already: then only the doubt is left
 */
export function storedShift(
  storage: Storage,
  corrected: boolean,
): { readonly mean: number; readonly sd: number } {
  const { low, middle, high } = storageLoss(storage);
  const poorer = POINTS_A_TENFOLD * middle;
  // The band is taken as two standard deviations each way.
  const sd = Math.hypot((POINTS_A_TENFOLD * (high - low)) / 4, GIVE_OR_TAKE * poorer);
  return { mean: corrected ? 0 : -poorer, sd };
}
