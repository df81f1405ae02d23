// Planning a batch, what running holds ask for, and a calendar of it.
import type { Parsed, Reply } from '../../../core/contract';
import { calendarFile, type CalendarEvent } from '../../../core/plan/calendar-file';
import { looksOf } from '../../../core/plan/hold-looks';
import {
  cartonAge,
  doublingsFromPieces,
  doublingsFromSeed,
  expectedUneven,
  jarsFilled,
  planJar,
} from '../../../core/plan/scaling';
import { cartonSays } from '../../../core/says/carton-says';
import { shelfDueSays } from '../../../core/says/today-says';
import { shelfDue } from '../../../core/shelf/due';
import { startWindows } from '../../../core/plan/waking-hours';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { daysBetween } from '../../../core/quantities/typed-days';
import { outcomes } from '../entries/outcome-of-jar';
import type { Ledger } from '../ledger';
import { listPackages } from './read-lists';
import { getShelf } from './read-shelf';
import { runningHolds } from './running-holds';

const rounded = (value: number, digits = 1): number => Number(value.toFixed(digits));
const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

/** Jars made so far whose outcome is known, first batches or later ones, and how many of them were uneven or did not set. */
function unevenSoFar({ rows, index: { family } }: Ledger, first: boolean): { uneven: number; of: number } {
  let [uneven, of] = [0, 0];
  for (const [key, outcome] of outcomes(rows, null)) {
    if (!family.has(key)) continue;
    const seeds = family.seedsOf(key);
    const founding = seeds.length > 0 && seeds.every(({ fromJar }) => fromJar === null);
    if (founding !== first || outcome.setWord === null) continue;
    of += 1;
    if (outcome.setWord === 'runny' || outcome.setWord === 'soft') uneven += 1;
  }
  return { uneven, of };
}

/** A part smaller than this is no seed. */
const LEAST_FRACTION = 1e-6;
function doublingsOf(
  volume: number,
  fraction: number,
  pieces: Parsed<'plan.batch'>['pieces'],
): ReturnType<typeof doublingsFromSeed> | null {
  if (pieces) return doublingsFromPieces(volume, pieces.count, pieces.pastBestBefore);
  return fraction >= LEAST_FRACTION ? doublingsFromSeed(fraction) : null;
}

export function planBatch(ledger: Ledger, input: Parsed<'plan.batch'>): Reply<'plan.batch'> {
  const { clock } = ledger;
  const now = clock.milliseconds() / 1000;
  const offsetAt = (seconds: number): number => clock.offsetAt(seconds * 1000);
  const at = (seconds: number): string => momentText(seconds, offsetAt(seconds));
  const { hours, pieces, seedFraction, milkAtHand } = input;
  const waking = { from: minuteOf(input.awake.from), to: minuteOf(input.awake.to) };
  const jars = input.jars.map(({ vessel, volume }) => planJar(vessel, volume, seedFraction, input.additions));
  const milk = jars.reduce((sum, jar) => sum + jar.milk, 0);
  const { uneven, of } = unevenSoFar(ledger, seedFraction === 0);
  return {
    starts: startWindows(now, hours, waking, offsetAt).map(({ from, to }) => ({
      from: at(from),
      to: at(to),
      takeOut: at(from + hours * 3600),
    })),
    jars: jars.map((jar) => ({
      ...jar,
      seed: rounded(jar.seed),
      milk: rounded(jar.milk),
      additions: jar.additions.map((one) => ({ ...one, value: rounded(one.value) })),
      doublings: doublingsOf(jar.volume, seedFraction, pieces),
    })),
    total: { milk: rounded(milk), seed: rounded(jars.reduce((sum, jar) => sum + jar.seed, 0)) },
    filled: milkAtHand === null ? null : jarsFilled(jars, milkAtHand),
    short: [
      ...(milkAtHand !== null && milkAtHand < milk
        ? [{ what: 'milk', needed: rounded(milk), has: rounded(milkAtHand), unit: 'mL' as const }]
        : []),
      ...shortAdditions(ledger, jars),
    ],
    uneven: expectedUneven(seedFraction === 0, uneven, of),
    warnings: input.cartons.flatMap(({ kind, openedOn }) => {
      const days = daysBetween(openedOn, clock.today());
      const age = cartonAge(kind, days);
      return age === null ? [] : [cartonSays(kind, days, age)];
    }),
  };
}

/** Additions of which the packages of that name hold less than is needed; of what is not known nothing is said. */
function shortAdditions(
  ledger: Ledger,
  jars: readonly ReturnType<typeof planJar>[],
): Reply<'plan.batch'>['short'] {
  const needed = new Map<string, { value: number; unit: 'g' | 'mL' }>();
  for (const { name, value, unit } of jars.flatMap(({ additions }) => additions))
    needed.set(name, { value: (needed.get(name)?.value ?? 0) + value, unit });
  const { packages } = listPackages(ledger);
  return [...needed].flatMap(([what, { value, unit }]) => {
    const own = packages.filter(
      (one) =>
        one.of === 'addition' &&
        one.name.trim().toLowerCase() === what.trim().toLowerCase() &&
        one.size?.unit === unit,
    );
    if (own.length === 0 || own.some(({ left }) => left === null)) return [];
    const has = own.reduce((sum, { left }) => sum + Math.max(0, left ?? 0), 0);
    return has < value ? [{ what, needed: rounded(value), has: rounded(has), unit }] : [];
  });
}

export function holdsNow(ledger: Ledger): Reply<'hold.now'> {
  const now = ledger.clock.now();
  const { seconds, offset } = storedMoment(now);
  return {
    now,
    holds: runningHolds(ledger, now).map(({ hold, label, began, ends, seenHours, asks }) => ({
      hold: hold.uid,
      label,
      began,
      ends,
      minutesLeft: asks.minutesLeft,
      looks: looksOf(storedMoment(began).seconds, asks.ends, seenHours, seconds).map((look) => ({
        ...look,
        hours: rounded(look.hours, 2),
        at: momentText(Math.round(look.at), offset),
      })),
    })),
  };
}

const SAYS = {
  look: 'Look and smell. Not sour by now is no good sign: note what you see, and taste nothing before the gate.',
  'take-out': 'Take out, look and smell before anything is tasted. Then ice water, then the fridge.',
} as const;

/** So many days ahead the calendar tells what falls due on the shelf, at this hour of the keeper's clock. */
const SHELF_AHEAD = 31;
const SHELF_HOUR = 9;

/** What is to be eaten, or to have seeded, in the coming weeks. */
function shelfEvents(
  ledger: Ledger,
  seconds: number,
  offsetAt: (at: number) => number,
): (CalendarEvent & { moment: string })[] {
  const { items, today } = getShelf(ledger);
  const kept = items.map((item) => ({ ...item, forSeed: item.reserve || item.nextSeedOf.length > 0 }));
  return shelfDue(kept, today, SHELF_AHEAD).flatMap(({ id, name, what, on }) => {
    const noon = Date.parse(`${on}T${String(SHELF_HOUR).padStart(2, '0')}:00:00Z`) / 1000;
    const offset = offsetAt(noon);
    const at = noon - offset * 60;
    if (at <= seconds) return [];
    const { title, rest } = shelfDueSays(name, what, true);
    return [
      {
        uid: `${id}-${what.replace(' ', '-')}@jarline.invalid`,
        at,
        minutes: 15,
        summary: title,
        description: rest,
        moment: momentText(at, offset),
      },
    ];
  });
}

/** What running holds still ask for, and what falls due on the shelf, as a calendar file. */
export function calendarOf(ledger: Ledger): Reply<'calendar.get'> {
  const { now, holds } = holdsNow(ledger);
  const { seconds } = storedMoment(now);
  const ofHolds = holds.flatMap(({ hold, label, looks }) =>
    looks
      .filter(({ state }) => state === 'to come')
      .map(({ what, hours, at }) => ({
        uid: `${hold}-${what}-${Math.round(hours)}@jarline.invalid`,
        at: storedMoment(at).seconds,
        minutes: 15,
        summary: what === 'look' ? `Look at ${label}, ${Math.round(hours)} h` : `Take out ${label}`,
        description: SAYS[what],
        moment: at,
      })),
  );
  const events = [...ofHolds, ...shelfEvents(ledger, seconds, (at) => ledger.clock.offsetAt(at * 1000))];
  return {
    ics: calendarFile(events, seconds),
    events: events.map(({ uid, moment, summary }) => ({ uid, at: moment, summary })),
  };
}
