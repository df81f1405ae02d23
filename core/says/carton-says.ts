// What is said of milk that has been open for some days.
import type { cartonAge } from '../plan/scaling';

/** @param age of a carton that is open @param daysOpen for how long */
export const cartonSays = (
  kind: 'milk' | 'half-and-half',
  daysOpen: number,
  age: NonNullable<ReturnType<typeof cartonAge>>,
): string =>
  age === 'not for a hold'
    ? `The ${kind} has been open for ${daysOpen} days: not for a hold. Open a fresh carton.`
    : `The ${kind} has been open for ${daysOpen} days: a fresh carton is safer, and heating rescues no old milk.`;
