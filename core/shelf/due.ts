// What the shelf asks for on a day: what is to be eaten, or to have seeded, by then. Pure; for reminders and the strip of today.
import { addDays } from '../quantities/typed-days';

/** Of one thing that is kept, as shelf.get replies it. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  readonly group: string;
  readonly eatBy: { readonly on: string | null } | null;
  readonly seedBy: { readonly on: string | null } | null;
  /** It is what a line is to be seeded from next, or kept back for seed. */
  readonly forSeed: boolean;
}

export interface Due {
  readonly id: string;
  readonly name: string;
  readonly what: 'eat by' | 'seed by';
  readonly on: string;
}

/**
 * What falls due from today up to so many days ahead, the earliest first. What is past its day is no reminder: the shelf itself
 * says so. Seed is reminded of only where it is meant for seed.
 */
export function shelfDue(kept: readonly Kept[], today: string, ahead = 1): Due[] {
  const last = addDays(today, ahead);
  const falls = (on: string | null | undefined): on is string => on != null && today <= on && on <= last;
  return kept
    .flatMap(({ id, name, group, eatBy, seedBy, forSeed }): Due[] => [
      ...(group === 'eat' && falls(eatBy?.on)
        ? [{ id, name, what: 'eat by' as const, on: eatBy?.on as string }]
        : []),
      ...((group === 'eat' || group === 'seed') && forSeed && falls(seedBy?.on)
        ? [{ id, name, what: 'seed by' as const, on: seedBy?.on as string }]
        : []),
    ])
    .toSorted((a, b) => a.on.localeCompare(b.on) || a.name.localeCompare(b.name));
}
