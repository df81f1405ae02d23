// By when something that is kept is to be eaten, and by when it is to have seeded. Days follow from where it stands, since when,
// and whether it was opened or thawed; they say nothing of whether it is good.
import { addDays } from '../quantities/typed-days';
import type { Preferences } from '../ledger/records';
import type { Event } from '../ledger/jar-left';
import type { ShelfLimits } from './limits';

/** What opened it first, and when: a day; null where nobody said when. */
export interface Opened {
  readonly on: string | null;
  readonly by: 'opened' | 'eaten' | 'seed' | 'given' | 'kept apart';
}

export interface Standing {
  readonly place: 'warmth' | 'fridge' | 'freezer' | 'dried';
  /** The day since which it is cold; of what was kept apart for seed, since which it is kept so. */
  readonly coldSince: string;
  readonly seedSince: string;
  readonly opened: Opened | null;
  /** The day it went into the freezer, or was thawed; null where nobody said when, or neither was. */
  readonly movedOn: string | null;
  readonly thawed: boolean;
}

export type ByBecause =
  'unopened' | 'opened' | 'opened, day not noted' | 'thawed' | 'thawed, day not noted' | 'frozen';

export interface ByDay {
  /** The last day; null where nobody noted when it was thawed. */
  readonly on: string | null;
  readonly because: ByBecause;
}

const dayOf = (when: string | null): string | null => when?.slice(0, 10) ?? null;
const OPENS: ReadonlySet<Event['what']> = new Set(['opened', 'eaten', 'seed', 'given', 'kept apart']);

/**
 * What opened it first; null where nothing did, as far as was noted. Seed can't be taken through a lid, nor can anyone eat
 * through one. What was kept apart on the day it was made was filled beside it.
 * @param events in the order in which they happened
 */
export function firstOpened(events: readonly Event[], madeOn: string | null): Opened | null {
  for (const { what, when } of events) {
    if (!OPENS.has(what)) continue;
    const on = dayOf(when);
    if (what === 'kept apart' && (on === null || madeOn === null || on <= madeOn)) continue;
    return { on, by: what as Opened['by'] };
  }
  return null;
}

/** By when to eat it. Null: it is in warmth, or dried, of which no days are told. */
export function eatBy(kept: Standing, limits: ShelfLimits): ByDay | null {
  const { place, coldSince, opened, movedOn, thawed } = kept;
  if (place === 'warmth' || place === 'dried') return null;
  if (place === 'freezer')
    return { on: addDays(movedOn ?? kept.seedSince, limits.eatFrozen), because: 'frozen' };
  if (thawed)
    return movedOn === null
      ? { on: null, because: 'thawed, day not noted' }
      : { on: addDays(movedOn, limits.eatThawed), because: 'thawed' };
  const unopened = addDays(coldSince, limits.eatFridge);
  if (opened === null) return { on: unopened, because: 'unopened' };
  // Where nobody noted the day, it may have been opened at once.
  const from = opened.on === null || opened.on < coldSince ? coldSince : opened.on;
  const on = addDays(from, limits.eatOpened);
  if (on >= unopened) return { on: unopened, because: 'unopened' };
  return { on, because: opened.on === null ? 'opened, day not noted' : 'opened' };
}

/** How long seed may be used at all, in days; null: no limit. */
export type SeedLimits = Pick<Preferences, 'seedFridgeDays' | 'seedFreezerDays'>;

/** The day by which it is best used, and the one up to which it may be used at all (null: no limit). */
export interface SeedByDay extends ByDay {
  readonly until: string | null;
}

const earlier = (day: string, other: string | null): string => (other !== null && other < day ? other : day);

/** By when to seed from it. Null: it is in warmth, or dried: then ask whoever dried it. @param most as advice has them */
export function seedBy(kept: Standing, limits: ShelfLimits, most: SeedLimits): SeedByDay | null {
  const { place, seedSince, movedOn, thawed } = kept;
  if (place === 'warmth' || place === 'dried') return null;
  const by = (from: string, days: number, atMost: number | null, because: ByBecause): SeedByDay => {
    const until = atMost === null ? null : addDays(from, atMost);
    return { on: earlier(addDays(from, days), until), because, until };
  };
  if (place === 'freezer')
    return by(movedOn ?? seedSince, limits.seedFreezer, most.seedFreezerDays, 'frozen');
  if (!thawed) return by(seedSince, limits.seedFridge, most.seedFridgeDays, 'unopened');
  if (movedOn === null) return { on: null, because: 'thawed, day not noted', until: null };
  return by(movedOn, limits.eatThawed, most.seedFridgeDays, 'thawed');
}
