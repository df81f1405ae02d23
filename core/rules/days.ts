// What comes before what: making, keeping, opening, warmth, being gone.
import { YEARS_POSSIBLE } from '../notes/days';
import { fromJars, jarIn, type Facts } from './facts';
import type { Broken, Invariant } from './rule';

function* notLongPast(facts: Facts): Generator<Broken> {
  for (const key of facts.touched) {
    const { day } = jarIn(facts, key);
    if (day !== null && day < `${YEARS_POSSIBLE.first}-01-01`)
      yield { code: 'day long past', params: { day }, jar: key };
  }
}

function* keptAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, keptOn } of facts.portions.values()) {
    const jar = jarIn(facts, key);
    if (jar.day === null || keptOn >= jar.day) continue;
    const params = { jar: facts.label(jar), day: keptOn, madeOn: jar.day };
    yield { code: 'kept before made', params, jar: key };
  }
}

function* keptBeforeSeeding(facts: Facts): Generator<Broken> {
  for (const { jar: key, fromJar, portion } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const kept = portion === null ? undefined : facts.portions.get(portion);
    if (!kept || jar.day === null || kept.keptOn <= jar.day) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const params = { jar: facts.label(jar), day: jar.day, seed, keptOn: kept.keptOn };
    yield { code: 'portion kept later', params, jar: key };
  }
}

function* goneAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, portion, day } of facts.movements) {
    const jar = jarIn(facts, key);
    const kept = portion === null ? undefined : facts.portions.get(portion);
    if (kept && day < kept.keptOn)
      yield { code: 'times crossed', params: { what: 'Kept and gone' }, jar: key };
    else if (jar.day !== null && day < jar.day)
      yield { code: 'gone before made', params: { jar: facts.label(jar), day, madeOn: jar.day }, jar: key };
  }
}

function* seedNotGone(facts: Facts): Generator<Broken> {
  // The jar itself, or the portion that was taken from: what was kept apart is still there when the jar is gone.
  const goneOn = new Map<string, string>();
  for (const { jar, portion, day } of facts.movements) goneOn.set(placeOf(jar, portion), day);
  if (goneOn.size === 0) return;
  for (const { jar: key, fromJar, portion } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const gone = goneOn.get(placeOf(fromJar, portion));
    if (gone === undefined || jar.day === null || gone >= jar.day) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const params = { jar: facts.label(jar), day: jar.day, seed, goneOn: gone, kept: portion !== null };
    yield { code: 'seed gone before', params, jar: key };
  }
}

const placeOf = (jar: number, portion: number | null): string =>
  portion === null ? `j${jar}` : `p${portion}`;

function* openedAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, daysOpen, toldOn } of facts.observations) {
    const jar = jarIn(facts, key);
    if (daysOpen === null || toldOn === null || jar.day === null) continue;
    const old = daysBetween(jar.day, toldOn);
    if (daysOpen <= Math.max(0, old)) continue;
    const params = { jar: facts.label(jar), days: daysOpen, madeOn: jar.day, toldOn };
    yield { code: 'opened before made', params, jar: key };
  }
}

const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

function* warmAfterMade(facts: Facts): Generator<Broken> {
  for (const { jar: key, hold } of facts.stays) {
    const jar = jarIn(facts, key);
    const ended = facts.holds.get(hold)?.ended?.slice(0, 10);
    if (jar.day === null || ended === undefined || ended >= jar.day) continue;
    yield {
      code: 'warm before made',
      params: { jar: facts.label(jar), day: ended, madeOn: jar.day },
      jar: key,
    };
  }
}

/** Hours of a hold: between its start and its end, else as noted; null where neither is known. */
function hoursOf({
  began,
  ended,
  hours,
}: {
  began: string | null;
  ended: string | null;
  hours: number | null;
}): number | null {
  return began !== null && ended !== null ? (Date.parse(ended) - Date.parse(began)) / 3_600_000 : hours;
}

function* interruptedWithinHold(facts: Facts): Generator<Broken> {
  if (facts.interruptions.length === 0) return;
  const holdOf = new Map(facts.stays.map(({ jar, hold }) => [jar, facts.holds.get(hold)]));
  for (const { jar: key, hours } of facts.interruptions) {
    const hold = holdOf.get(key);
    const warm = hold ? hoursOf(hold) : null;
    if (warm === null || hours <= warm) continue;
    const params = { jar: facts.label(jarIn(facts, key)), hours, warm: Math.round(warm * 10) / 10 };
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
    holds: 'A portion is kept no later than the jar it seeded was made.',
    ask: keptBeforeSeeding,
  },
  {
    code: 'gone before made',
    holds: 'A jar is gone no earlier than it was made, and a portion no earlier than it was kept.',
    ask: goneAfterMade,
  },
  {
    code: 'seed gone before',
    holds: 'What is gone seeds nothing that was made later. What was kept apart of it may.',
    ask: seedNotGone,
  },
  {
    code: 'opened before made',
    holds: 'When it was told how long a jar had been open, the jar was at least as old.',
    ask: openedAfterMade,
  },
  {
    code: 'warm before made',
    holds: 'A jar stands in no hold that ended before it was made.',
    ask: warmAfterMade,
  },
  {
    code: 'interruption longer',
    holds: 'Warmth was missing no longer than the hold lasted.',
    ask: interruptedWithinHold,
  },
];
