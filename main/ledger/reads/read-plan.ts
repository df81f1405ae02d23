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
import { restSays, servesSays, startSays } from '../../../core/says/plan-says';
import { minuteOf, ownAwake } from '../derived/own-hours';
import { shelfDueSays } from '../../../core/says/today-says';
import { shelfDue } from '../../../core/shelf/due';
import { startWindows } from '../../../core/plan/waking-hours';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { daysBetween } from '../../../core/quantities/typed-days';
import { outcomes } from '../entries/outcome-of-jar';
import type { Ledger } from '../ledger';
import { listPackages } from './read-lists';
import { getShelf } from './read-shelf';
import { costOf, doublingsOfSeed, expectedOf, seedOf, servesAfter } from './plan-details';
import { runningHolds } from './running-holds';

const rounded = (value: number, digits = 1): number => Number(value.toFixed(digits));
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

/** One jar of the plan with what goes into it: as told of it, else by its volume. */
function jarOfPlan(
  ledger: Ledger,
  input: Parsed<'plan.batch'>,
  jar: Parsed<'plan.batch'>['jars'][number],
  packages: Packages,
) {
  const seed = seedOf(ledger, jar, packages);
  const fraction = seed === null ? input.seedFraction : Math.min(0.5, seed.ml / jar.volume);
  const planned = planJar(jar.vessel, jar.volume, fraction, jar.additions === null ? input.additions : []);
  const own = jar.additions?.flatMap(({ name, amount }) =>
    amount !== null && (amount.unit === 'g' || amount.unit === 'mL')
      ? [{ name, value: amount.value, unit: amount.unit }]
      : [],
  );
  const whole = { ...planned, additions: own ?? planned.additions };
  const names = (jar.additions ?? input.additions).map(({ name }) => name);
  const first = seed === null ? input.seedFraction === 0 : !seed.ofJar;
  return {
    jar: whole,
    names,
    first,
    pieces: seed === null ? input.pieces !== null : seed.pieces,
    doublings:
      seed === null ? doublingsOf(jar.volume, fraction, input.pieces) : doublingsOfSeed(jar.volume, seed),
    expected: expectedOf(ledger, names, first),
    cost: costOf(ledger, jar, whole, packages),
  };
}
type Packages = Reply<'package.list'>['packages'];

/** Cartons that are named, and those that jars of the plan are to be made from. */
function warningsOf(input: Parsed<'plan.batch'>, packages: Packages, today: string): string[] {
  const used = new Set(input.jars.map(({ milkPackage }) => milkPackage));
  const opened = packages.flatMap(({ id, name, openedOn }) =>
    used.has(id) && openedOn !== null
      ? [{ kind: /half/i.test(name) ? ('half-and-half' as const) : ('milk' as const), openedOn }]
      : [],
  );
  return [...input.cartons, ...opened].flatMap(({ kind, openedOn }) => {
    const days = daysBetween(openedOn, today);
    const age = cartonAge(kind, days);
    return age === null ? [] : [cartonSays(kind, days, age)];
  });
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

export function planBatch(ledger: Ledger, input: Parsed<'plan.batch'>): Reply<'plan.batch'> {
  const { clock, rows } = ledger;
  const now = clock.milliseconds() / 1000;
  const offsetAt = (seconds: number): number => clock.offsetAt(seconds * 1000);
  const at = (seconds: number): string => momentText(seconds, offsetAt(seconds));
  const { hours, milkAtHand, awayUntil } = input;
  const awake = input.awake ?? ownAwake(rows);
  const { packages } = listPackages(ledger);
  const planned = input.jars.map((jar) => jarOfPlan(ledger, input, jar, packages));
  const jars = planned.map(({ jar }) => jar);
  const milk = sum(jars.map((jar) => jar.milk));
  const first = planned.length === 0 ? input.seedFraction === 0 : planned.every((one) => one.first);
  const { uneven: bad, of } = unevenSoFar(ledger, first);
  const waking = { from: minuteOf(awake.from), to: minuteOf(awake.to) };
  const starts = startWindows(now, hours, waking, offsetAt).map(({ from, to }) => ({
    from: at(from),
    to: at(to),
    takeOut: at(from + hours * 3600),
  }));
  const lacking =
    milkAtHand !== null && milkAtHand < milk
      ? [{ what: 'milk', needed: rounded(milk), has: rounded(milkAtHand), unit: 'mL' as const }]
      : [];
  const short = [...lacking, ...shortAdditions(ledger, jars)];
  const filled = milkAtHand === null ? null : jarsFilled(jars, milkAtHand);
  const uneven = expectedUneven(first, bad, of);
  const warnings = warningsOf(input, packages, clock.today());
  const serves = awayUntil === null ? [] : servesAfter(ledger, awayUntil);
  const currency = planned.find(({ cost }) => cost)?.cost?.currency ?? ledger.preferences.currency;
  const costed = planned.map(({ cost }) =>
    cost?.currency === currency ? { minor: cost.minor, atLeast: cost.atLeast } : null,
  );
  const spoken = planned.map(({ jar, pieces, doublings, expected, names }, one) => ({
    volume: jar.volume,
    seed: jar.seed,
    pieces,
    doublings,
    expected,
    cost: costed[one] ?? null,
    additions: names,
  }));
  return {
    starts,
    jars: planned.map(({ jar, doublings, expected }, one) => ({
      ...jar,
      seed: rounded(jar.seed),
      milk: rounded(jar.milk),
      additions: jar.additions.map((addition) => ({ ...addition, value: rounded(addition.value) })),
      doublings,
      expected,
      cost: costed[one] ?? null,
    })),
    total: { milk: rounded(milk), seed: rounded(sum(jars.map((jar) => jar.seed))) },
    filled,
    short,
    uneven,
    warnings,
    currency,
    awake,
    serves,
    says: {
      ...startSays(starts, hours, clock.now()),
      rest: restSays({
        jars: spoken,
        first,
        uneven,
        currency,
        short,
        filled,
        warnings,
        serves: awayUntil === null ? null : servesSays(serves, awayUntil),
      }),
    },
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
