// What comes before what: making, keeping, opening, warmth, being gone.
import type { Amount } from '../ledger/basics';
import { whatIsLeft } from '../ledger/jar-left';
import { YEARS_POSSIBLE } from '../text/days';
import {
  earliest,
  endOf,
  fromJars,
  jarIn,
  latest,
  MOVED_WORDS,
  type Facts,
  type HoldFact,
  type Measured,
  type MovementFact,
  type StayFact,
} from './asked-facts';
import type { Broken, Invariant } from './rule';

function* notLongPast(facts: Facts): Generator<Broken> {
  for (const key of facts.touched) {
    const { first: day } = jarIn(facts, key);
    if (day !== null && day < `${YEARS_POSSIBLE.first}-01-01`)
      yield { code: 'day long past', params: { day }, jar: key };
  }
}

function* keptAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, keptOn, ofPortion } of facts.portions.values()) {
    const jar = jarIn(facts, key);
    const whole = ofPortion === null ? undefined : facts.portions.get(ofPortion);
    if (whole && keptOn < whole.keptOn)
      yield { code: 'times crossed', params: { what: 'Kept and split off' }, jar: key };
    if (jar.first === null || keptOn >= jar.first) continue;
    const params = { jar: facts.label(jar), day: keptOn, madeOn: jar.first, ...earliest(jar) };
    yield { code: 'kept before made', params, jar: key };
  }
}

function* keptBeforeSeeding(facts: Facts): Generator<Broken> {
  yield* cubesAfterFrozen(facts);
  for (const { jar: key, fromJar, portion } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const kept = portion === null ? undefined : facts.portions.get(portion);
    if (!kept || jar.last === null || kept.keptOn <= jar.last) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const params = { jar: facts.label(jar), day: jar.last, ...latest(jar), seed, keptOn: kept.keptOn };
    yield { code: 'portion kept later', params, jar: key };
  }
}

function* movedAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, portion, day, kind } of facts.movements) {
    if (day === null) continue;
    const jar = jarIn(facts, key);
    const kept = portion === null ? undefined : facts.portions.get(portion);
    if (kept && day < kept.keptOn) {
      const what = kind === 'gone' ? 'Kept and gone' : `Kept and ${MOVED_WORDS[kind]}`;
      yield { code: 'times crossed', params: { what }, jar: key };
    } else if (jar.first !== null && day < jar.first) {
      const params = {
        jar: facts.label(jar),
        day,
        madeOn: jar.first,
        ...earliest(jar),
        what: MOVED_WORDS[kind],
      };
      yield { code: 'gone before made', params, jar: key };
    }
  }
}

function* seedNotGone(facts: Facts): Generator<Broken> {
  // The jar itself, or the portion that was taken from: what was kept apart is still there when the jar is gone.
  const ended = endOf(facts);
  for (const { jar: key, fromJar, portion } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const gone = ended(fromJar, portion)?.day ?? null;
    if (gone === null || jar.first === null || gone >= jar.first) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const params = {
      jar: facts.label(jar),
      day: jar.first,
      ...earliest(jar),
      seed,
      goneOn: gone,
      kept: portion !== null,
    };
    yield { code: 'seed gone before', params, jar: key };
  }
}

type When = Pick<MovementFact, 'day' | 'at'>;

/** Whether the one was surely later: by moments where both have one, else by days. */
function isLater(one: When, other: When): boolean {
  if (one.at !== null && other.at !== null) return Date.parse(one.at) > Date.parse(other.at);
  return one.day !== null && other.day !== null && one.day > other.day;
}

function* nothingAfterEnd(facts: Facts): Generator<Broken> {
  const ended = endOf(facts);
  const broken = (key: number, end: MovementFact, what: string, day: string | null): Broken => ({
    code: 'gone already',
    params: {
      jar: facts.label(jarIn(facts, key)),
      kept: end.portion !== null,
      how: MOVED_WORDS[end.kind],
      goneOn: end.day,
      what,
      day,
    },
    jar: key,
  });
  for (const movement of facts.movements) {
    const { jar, portion, kind, day } = movement;
    const end = ended(jar, portion);
    // That it was there on a later day was taken back by the word that it is gone.
    if (end && kind !== 'still there' && isLater(movement, end))
      yield broken(jar, end, MOVED_WORDS[kind], day);
  }
  for (const { jar, ofPortion, keptOn } of facts.portions.values()) {
    const end = ended(jar, ofPortion);
    if (end && isLater({ day: keptOn, at: null }, end)) yield broken(jar, end, 'kept', keptOn);
  }
  const eaten = new Set(facts.movements.flatMap(({ jar, kind }) => (kind === 'eaten' ? [jar] : [])));
  for (const seen of facts.observations) {
    if (seen.day === null) continue;
    const { jar, portion, day } = seen;
    const end = ended(jar, portion);
    // Of what was given away whoever has it may tell.
    if (end && end.kind !== 'given' && isLater(seen, end)) yield broken(jar, end, 'seen', day);
    const up = end || !eaten.has(jar) ? null : eatenUp(facts, jar, portion);
    if (up !== null && isLater(seen, up)) {
      const params = {
        jar: facts.label(jarIn(facts, jar)),
        kept: portion !== null,
        how: 'eaten up',
        goneOn: up.day,
        what: 'seen',
        day,
      };
      yield { code: 'gone already', params, jar };
    }
  }
}

/**
 * Since when a jar or a portion of it is eaten up, by the amounts told. Null where some is left, where that is not known, and
 * where some of it may be elsewhere: given away or kept apart.
 */
function eatenUp(facts: Facts, jar: number, portion: number | null): When | null {
  const moved = facts.movements.filter((one) => one.jar === jar && one.portion === portion);
  const apart = [...facts.portions.values()].some((one) => one.jar === jar && one.ofPortion === portion);
  if (apart || moved.every(({ kind }) => kind !== 'eaten') || moved.some(({ kind }) => kind === 'given'))
    return null;
  const kept = portion === null ? undefined : facts.portions.get(portion);
  const whole = portion === null ? jarIn(facts, jar).volume : (kept?.amount ?? null);
  const typed = (amount: Measured | null): Amount | null => amount && { ...amount, typed: null };
  const seeds = [...fromJars(facts)].filter((one) => one.fromJar === jar && one.portion === portion);
  const { none, endedOn } = whatIsLeft(
    { amount: typed(whole), pieces: kept?.pieces ?? null, place: kept?.place ?? null },
    [
      ...moved.map(({ kind, day, at, amount, pieces }) => ({
        what: kind,
        when: at ?? day,
        amount: typed(amount),
        pieces,
      })),
      ...seeds.map((one) => ({
        what: 'seed' as const,
        when: jarIn(facts, one.jar).day,
        amount: typed(one.amount),
        pieces: null,
      })),
    ],
  );
  if (!none || endedOn === null) return null;
  return { day: endedOn.slice(0, 10), at: endedOn.length > 10 ? endedOn : null };
}

/** The day on which portions were first frozen that were not at once. */
function frozenOn(facts: Facts): ReadonlyMap<number, string> {
  const first = new Map<number, string>();
  for (const { portion, kind, day } of facts.movements) {
    if (portion === null || kind !== 'freezer' || day === null) continue;
    if (facts.portions.get(portion)?.place !== 'fridge') continue;
    const before = first.get(portion);
    if (before === undefined || day < before) first.set(portion, day);
  }
  return first;
}

function* cubesAfterFrozen(facts: Facts): Generator<Broken> {
  const frozen = frozenOn(facts);
  for (const { jar: key, fromJar, portion, amount } of fromJars(facts)) {
    const day = portion === null ? undefined : frozen.get(portion);
    const jar = jarIn(facts, key);
    if (day === undefined || amount?.unit !== 'pieces' || jar.last === null || day <= jar.last) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const params = { jar: facts.label(jar), day: jar.last, ...latest(jar), seed, keptOn: day, frozen: true };
    yield { code: 'portion kept later', params, jar: key };
  }
}

function* openedAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, daysOpen, day, toldOn } of facts.observations) {
    const jar = jarIn(facts, key);
    if (jar.first === null) continue;
    if (day !== null && day < jar.first) {
      const params = { jar: facts.label(jar), day, madeOn: jar.first, ...earliest(jar), what: 'seen' };
      yield { code: 'gone before made', params, jar: key };
    }
    const seenOn = day ?? toldOn;
    if (daysOpen === null || seenOn === null || daysOpen <= Math.max(0, daysBetween(jar.first, seenOn)))
      continue;
    const params = {
      jar: facts.label(jar),
      days: daysOpen,
      madeOn: jar.first,
      ...earliest(jar),
      toldOn: seenOn,
    };
    yield { code: 'opened before made', params, jar: key };
  }
}

const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

const dayOf = (moment: string | null | undefined): string | null => moment?.slice(0, 10) ?? null;
const at = (moment: string | null): number | null => (moment === null ? null : Date.parse(moment));

function* warmAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, hold, went } of facts.stays) {
    const jar = jarIn(facts, key);
    const ended = dayOf(went ?? facts.holds.get(hold)?.ended);
    if (jar.first === null || ended === null || ended >= jar.first) continue;
    const params = { jar: facts.label(jar), day: ended, madeOn: jar.first, ...earliest(jar) };
    yield { code: 'warm before made', params, jar: key };
  }
}

function* stayWithinHold(facts: Facts): Generator<Broken> {
  for (const { jar: key, hold: of, came, went } of facts.stays) {
    const hold = facts.holds.get(of);
    if (!hold) continue;
    const [from, to, began, ended] = [at(came), at(went), at(hold.began), at(hold.ended)];
    const params = { jar: facts.label(jarIn(facts, key)) };
    if (from !== null && to !== null && to < from)
      yield { code: 'times crossed', params: { what: `${params.jar} in warmth` }, jar: key };
    const early = [from, to].some((one) => one !== null && began !== null && one < began);
    const late = [from, to].some((one) => one !== null && ended !== null && one > ended);
    if (early || late) yield { code: 'stay outside hold', params: { ...params, early }, jar: key };
  }
}

/** When a jar came and went, as far as it is known: where nobody timed it, with its hold. */
const spanOf = (holds: ReadonlyMap<number, HoldFact>, { hold: key, came, went }: StayFact) => {
  const hold = holds.get(key);
  return { from: at(came ?? hold?.began ?? null), to: at(went ?? hold?.ended ?? null) };
};

/**
 * Whether two stays of a jar overlap; null where that can't be told. One that has not ended is there at its start. Of one
 * hold a jar fills all with a stay that nobody timed.
 */
export function stayOverlap(
  holds: ReadonlyMap<number, HoldFact>,
  one: StayFact,
  other: StayFact,
): boolean | null {
  if (one.hold === other.hold && (one.came === null || other.came === null)) return true;
  const [a, b] = [spanOf(holds, one), spanOf(holds, other)];
  if (a.from === null || b.from === null) {
    // What ended before the other began is before it, whenever it began.
    const apart = (ends: number | null, begins: number | null): boolean =>
      ends !== null && begins !== null && ends <= begins;
    return apart(a.to, b.from) || apart(b.to, a.from) ? false : null;
  }
  return a.from === b.from || (a.from < (b.to ?? b.from) && b.from < (a.to ?? a.from));
}

/** Pairs of stays of one jar. */
export function* stayPairs(facts: Facts): Generator<readonly [StayFact, StayFact]> {
  const before = new Map<number, StayFact[]>();
  for (const stay of facts.stays) {
    const others = before.get(stay.jar) ?? [];
    for (const other of others) yield [other, stay];
    before.set(stay.jar, [...others, stay]);
  }
}

function* oneHoldAtATime(facts: Facts): Generator<Broken> {
  for (const [other, stay] of stayPairs(facts)) {
    if (stayOverlap(facts.holds, other, stay) !== true) continue;
    const hold = facts.holds.get(other.hold);
    const [came, went] = [other.came ?? hold?.began ?? null, other.went ?? hold?.ended ?? null];
    yield {
      code: 'stays overlap',
      params: { jar: facts.label(jarIn(facts, stay.jar)), came, went },
      jar: stay.jar,
    };
  }
}

type Span = { readonly began: string | null; readonly ended: string | null; readonly hours: number | null };

/** Hours between a start and an end, else as noted; null where neither is known. */
function hoursOf({ began, ended, hours }: Span): number | null {
  const [from, to] = [at(began), at(ended)];
  return from !== null && to !== null ? (to - from) / 3_600_000 : hours;
}

/** Hours that a jar stood in warmth, in all its holds; null where some are not known. */
function warmHoursOf(facts: Facts): (jar: number) => number | null {
  const warm = new Map<number, number | null>();
  for (const { jar, hold, came, went } of facts.stays) {
    const own = facts.holds.get(hold);
    const hours = own
      ? hoursOf({ began: came ?? own.began, ended: went ?? own.ended, hours: own.hours })
      : null;
    const before = warm.get(jar);
    warm.set(jar, hours === null || before === null ? null : (before ?? 0) + hours);
  }
  return (jar) => warm.get(jar) ?? null;
}

function* interruptedWithinHold(facts: Facts): Generator<Broken> {
  const tenth = (hours: number): number => Math.round(hours * 10) / 10;
  const jarOf = new Map(facts.stays.map(({ jar, hold }) => [hold, jar]));
  for (const { hold: of, ...cut } of facts.interruptions) {
    const hold = facts.holds.get(of);
    const [lasted, missing] = [hold ? hoursOf(hold) : null, hoursOf(cut)];
    const key = jarOf.get(of) ?? null;
    const jar = key === null ? 'A hold' : facts.label(jarIn(facts, key));
    const outside =
      (hold?.began && cut.began && Date.parse(cut.began) < Date.parse(hold.began)) ||
      (hold?.ended && cut.ended && Date.parse(cut.ended) > Date.parse(hold.ended));
    if (outside) yield { code: 'interruption outside hold', params: { jar }, jar: key };
    if (lasted !== null && missing !== null && missing > lasted)
      yield {
        code: 'interruption longer',
        params: { jar, hours: tenth(missing), warm: tenth(lasted) },
        jar: key,
      };
  }
  const warmHours = warmHoursOf(facts);
  for (const { jar: key, powerCutHours: hours } of facts.observations) {
    const warm = hours === null ? null : warmHours(key);
    if (hours === null || warm === null || hours <= warm) continue;
    const params = { jar: facts.label(jarIn(facts, key)), hours, warm: tenth(warm) };
    yield { code: 'interruption longer', params, jar: key };
  }
}

function* timesInOrder(facts: Facts): Generator<Broken> {
  const crossed = (what: string, jar: number | null): Broken => ({
    code: 'times crossed',
    params: { what },
    jar,
  });
  for (const { began, ended } of facts.holds.values()) {
    if (began !== null && ended !== null && Date.parse(ended) < Date.parse(began))
      yield crossed('The time in warmth', null);
  }
  for (const { began, ended } of facts.interruptions) {
    if (began !== null && ended !== null && Date.parse(ended) < Date.parse(began))
      yield crossed('The interruption', null);
  }
  for (const { jar, setAfterHours, setByHours } of facts.observations) {
    if (setAfterHours !== null && setByHours !== null && setByHours < setAfterHours)
      yield crossed('The time it set', jar);
  }
  for (const { boughtOn, openedOn } of facts.packages.values()) {
    if (boughtOn !== null && openedOn !== null && openedOn < boughtOn)
      yield crossed('Bought and opened', null);
  }
}

export const DAY_RULES: readonly Invariant[] = [
  {
    code: 'day long past',
    holds: 'No jar is older than anyone keeps one.',
    ask: notLongPast,
  },
  {
    code: 'times crossed',
    holds:
      'A hold ends after it began, a jar sets between two times in their order, a package is opened after it was bought.',
    ask: timesInOrder,
  },
  {
    code: 'kept before made',
    holds: 'A portion is kept no earlier than its jar was made.',
    ask: keptAfterMade,
  },
  {
    code: 'portion kept later',
    holds: 'A portion is kept, and its cubes are frozen, no later than the jar they seeded was made.',
    ask: keptBeforeSeeding,
  },
  {
    code: 'gone already',
    holds:
      'Nothing more is done with what is gone, or was all given away or discarded, nor is anything kept of it; what is gone, discarded or eaten up is seen no more.',
    ask: nothingAfterEnd,
  },
  {
    code: 'gone before made',
    holds:
      'A jar is moved, and gone, no earlier than it was made, and a portion no earlier than it was kept.',
    ask: movedAfterMade,
  },
  {
    code: 'seed gone before',
    holds: 'What is gone seeds nothing that was made later. What was kept apart of it may.',
    ask: seedNotGone,
  },
  {
    code: 'opened before made',
    holds: 'A jar is seen no earlier than it was made, and it is at least as old as it has been open.',
    ask: openedAfterMade,
  },
  {
    code: 'warm before made',
    holds: 'A jar stands in no hold that ended before it was made.',
    ask: warmAfterMade,
  },
  {
    code: 'stay outside hold',
    holds: 'A jar comes into a hold and leaves it while the hold goes on.',
    ask: stayWithinHold,
  },
  {
    code: 'stays overlap',
    holds: 'A jar stands in one hold at a time.',
    ask: oneHoldAtATime,
  },
  {
    code: 'interruption longer',
    holds: 'Warmth was missing within the hold, and no longer than it lasted.',
    ask: interruptedWithinHold,
  },
];
