// What is asked of new facts only. What was recorded once with the keeper's word stays true when a later day finds it so,
// and comes back by undo and redo without being asked again.
import { LEAST_SETTING_HOURS } from '../ledger/hold-hours';
import type { RefusalCode } from '../sentences';
import { stayOverlap, stayPairs } from './day-rules';
import {
  aboutDay,
  fromJars,
  jarIn,
  MOVED_WORDS,
  type Facts,
  type JarFact,
  type SeedingFact,
  type StayFact,
} from './asked-facts';
import type { Broken } from './rule';
import type { SafetyStop, Discard } from '../shapes/safety-codes';

/** What an act made new, by key. */
export interface Fresh {
  /** Jars that are newly called so, or count newly: their letter, word, day or state is another one, or they are new. */
  readonly labels: ReadonlySet<number>;
  /** Seedings of a jar by a jar that did not seed it before. */
  readonly seedings: ReadonlySet<number>;
  /** Portions with another day of being kept. */
  readonly kept: ReadonlySet<number>;
  /** Movements of another kind or day. */
  readonly moved: ReadonlySet<number>;
  /** Observations of another day. */
  readonly seen: ReadonlySet<number>;
  /** Observations that newly say how a jar came out, or when. */
  readonly looked: ReadonlySet<number>;
  /** Portions newly kept back as a reserve. */
  readonly reserves: ReadonlySet<number>;
  /** Holds whose end is another one, and jars that stand newly in a hold. */
  readonly ends: ReadonlySet<number>;
  readonly stays: ReadonlySet<number>;
  /** Jars newly entered by mistake. */
  readonly mistakes: ReadonlySet<number>;
}

/** What stops a seed beside that it is discarded or set aside. */
export const STOPPED_BY = ['needs the meter', 'slow start', 'no acid'] as const satisfies SafetyStop[];
export type StoppedBy = (typeof STOPPED_BY)[number];

/** What is known beside the facts, and the keeper's word. */
export interface Circumstances {
  readonly today: string;
  /** Milliseconds since 1970. */
  readonly now: number;
  /** When a day began on the keeper's clock, likewise. */
  readonly dayBegan: (day: string) => number;
  /** The reason given for the act. */
  readonly why: string | null;
  /** Whether the keeper was asked about two equal labels and meant them; null where the form can't say so. */
  readonly sameLabelMeant: boolean | null;
  /** The act is an undo or a redo: asked is only about what can be new by that. */
  readonly undone: boolean;
  /** All jars that go by a label of these days, the ones asked about among them. */
  readonly namesakes: readonly JarFact[];
  /** Whether the two stood beside each other with the same label before, or the jar was made on its day before. */
  readonly stood: (jar: JarFact, other: JarFact | null) => boolean;
  /** Why a jar, or what was parted of it on a day, is neither food nor seed: by the one answer on safety. */
  readonly discard: (jar: number, partedOn: string | null) => Discard | null;
  /** The words of the remark that stops it until it is answered; null where none does. */
  readonly stoppingWords: (jar: number) => string | null;
  /** The day on which the ledger was told what makes it so. */
  readonly discardKnown: (jar: number) => string;
  /** Whether that it is spoiled is told together with what is asked about: in one go nobody could have been asked. */
  readonly toldHere: (jar: number) => boolean;
  /** Labels of the spoiled jars because of which a jar is set aside; null where it is not, or was lifted. */
  readonly setAsideBy: (jar: number) => { readonly because: readonly string[] } | null;
  /** In words, what else stops it as seed; null where nothing does. */
  readonly stopped: (
    jar: number,
    partedOn: string | null,
  ) => { readonly stop: StoppedBy; readonly says: string } | null;
  /** The facts were told in notes. */
  readonly fromNotes: boolean;
}

/** Something that is asked of new facts, unless the keeper has given the word for it. */
export interface Consent {
  readonly code: RefusalCode;
  /** In plain words, what is asked about. */
  readonly asks: string;
  /** How the keeper's word is given; null where it can't be. */
  readonly word: string | null;
  /** Asked of what an undo or a redo brings back, too, where it never stood so before. */
  readonly ofUndone: boolean;
  readonly ask: (facts: Facts, fresh: Fresh, known: Circumstances) => Iterable<Broken>;
}

/** As few characters as say anything. */
const LEAST_REASON = 3;
const hasReason = ({ why }: Circumstances): boolean => (why?.length ?? 0) >= LEAST_REASON;

const counts = ({ state }: JarFact): boolean => state === 'made' || state === 'planned';
const lower = (text: string | null): string => text?.trim().toLowerCase() ?? '';
const labelKey = (jar: JarFact): string =>
  `${jar.day ?? `about ${aboutDay(jar)}`}|${lower(jar.word)}|${lower(jar.letter)}`;

function* equalLabels(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (known.sameLabelMeant === true || fresh.labels.size === 0) return;
  const called = new Map<string, JarFact[]>();
  for (const jar of known.namesakes) {
    if (jar.first === null || !counts(jar)) continue;
    const there = called.get(labelKey(jar));
    if (there) there.push(jar);
    else called.set(labelKey(jar), [jar]);
  }
  for (const [, jars] of called) {
    if (jars.length < 2) continue;
    const jar = jars.findLast(({ key }) => fresh.labels.has(key));
    const other = jar && jars.find((one) => one !== jar && !known.stood(jar, one));
    if (!jar || !other) continue;
    const code = known.undone ? 'label back' : 'same label';
    const mayMean = known.sameLabelMeant === null ? {} : { mayMean: true };
    yield { code, params: { label: facts.label(jar), ...mayMean }, jar: jar.key };
  }
}

function* madeByNow(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  for (const key of fresh.labels) {
    const jar = jarIn(facts, key);
    if (jar.first === null || jar.first <= known.today || (jar.state !== 'made' && jar.state !== 'lost'))
      continue;
    if (!known.stood(jar, null)) yield { code: 'day to come', params: { day: jar.first }, jar: key };
  }
}

function* keptByNow(facts: Facts, fresh: Fresh, { today }: Circumstances): Generator<Broken> {
  for (const { key, jar, keptOn } of facts.portions.values()) {
    if (fresh.kept.has(key) && keptOn > today)
      yield { code: 'kept day to come', params: { day: keptOn }, jar };
  }
}

function* goneByNow(facts: Facts, fresh: Fresh, { today }: Circumstances): Generator<Broken> {
  const toCome = (day: string | null): day is string => day !== null && day > today;
  for (const { key, jar, day, kind } of facts.movements) {
    if (fresh.moved.has(key) && toCome(day))
      yield { code: 'gone day to come', params: { day, what: MOVED_WORDS[kind] }, jar };
  }
  for (const { key, jar, day } of facts.observations) {
    if (fresh.seen.has(key) && toCome(day))
      yield { code: 'gone day to come', params: { day, what: 'seen' }, jar };
  }
}

const HOUR = 3_600_000;
/** Hours by which an end may lie ahead of the clock: people round to the full hour. */
const AHEAD_HOURS = 1;

function* takenOutByNow(facts: Facts, fresh: Fresh, { now }: Circumstances): Generator<Broken> {
  const set = new Set(
    facts.observations.flatMap(({ jar, setAtTakeOut }) => (setAtTakeOut === true ? [jar] : [])),
  );
  for (const { jar, hold } of facts.stays) {
    if (!set.has(jar) || (!fresh.ends.has(hold) && !fresh.stays.has(jar))) continue;
    const ended = facts.holds.get(hold)?.ended ?? null;
    if (ended === null || Date.parse(ended) <= now + AHEAD_HOURS * HOUR) continue;
    const params = {
      jar: facts.label(jarIn(facts, jar)),
      day: ended.slice(0, 10),
      time: ended.slice(11, 16),
    };
    yield { code: 'taken out before the end', params, jar };
  }
}

/**
 * When a stay in warmth ends as far as was planned (ms since 1970): nobody recorded an end. Where its start was not noted
 * either, the earliest that it can end: it began on the day the jar was made, or later. Null where nothing tells.
 */
function plannedEnd(
  facts: Facts,
  { jar, hold, came, went }: StayFact,
  known: Circumstances,
): { readonly end: number; readonly atLeast: boolean } | null {
  const { began = null, ended = null, hours = null } = facts.holds.get(hold) ?? {};
  if (went !== null || ended !== null || hours === null) return null;
  const from = came ?? began;
  const { first } = jarIn(facts, jar);
  const start = from !== null ? Date.parse(from) : first !== null ? known.dayBegan(first) : null;
  return start === null ? null : { end: start + hours * HOUR, atLeast: from === null };
}

/** How a jar came out is known once it is out; a look at 8, 12 or 24 hours says how it goes. */
function* lookedInHold(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known) || known.fromNotes) return;
  const looked = new Set(
    facts.observations.flatMap(({ key, jar, portion, out }) =>
      out && portion === null && fresh.looked.has(key) ? [jar] : [],
    ),
  );
  for (const stay of facts.stays) {
    const planned = looked.has(stay.jar) ? plannedEnd(facts, stay, known) : null;
    if (planned === null) continue;
    const { end, atLeast } = planned;
    if (end <= known.now + AHEAD_HOURS * HOUR) continue;
    const hours = Math.round((end - known.now) / HOUR);
    yield {
      code: 'taken out early',
      params: { jar: facts.label(jarIn(facts, stay.jar)), hours, atLeast },
      jar: stay.jar,
    };
  }
}

/** Hours that a jar was in warmth, as far as its stays tell; null where one of them tells nothing. */
function hoursInWarmth(facts: Facts, stays: readonly StayFact[]): number | null {
  let sum = 0;
  for (const { hold, came, went } of stays) {
    const { began = null, ended = null, hours = null } = facts.holds.get(hold) ?? {};
    const [from, to] = [came ?? began, went ?? ended];
    const own = from !== null && to !== null ? (Date.parse(to) - Date.parse(from)) / HOUR : hours;
    if (own === null) return null;
    sum += own;
  }
  return sum;
}

/** What came out set after a few minutes of warmth: one of the two is a slip. */
function* setTooSoon(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known) || known.fromNotes) return;
  for (const { key, jar, portion, out, setAtTakeOut } of facts.observations) {
    if (!out || portion !== null || setAtTakeOut === false || !fresh.looked.has(key)) continue;
    const stays = facts.stays.filter((stay) => stay.jar === jar);
    const hours = stays.length === 0 ? null : hoursInWarmth(facts, stays);
    if (hours === null || hours >= LEAST_SETTING_HOURS) continue;
    const minutes = Math.round(hours * 60);
    yield { code: 'set too soon', params: { jar: facts.label(jarIn(facts, jar)), minutes }, jar };
  }
}

function* staysTimed(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known) || known.fromNotes) return;
  for (const [other, stay] of stayPairs(facts)) {
    if (!fresh.stays.has(stay.jar) || stayOverlap(facts.holds, other, stay) !== null) continue;
    yield { code: 'stay not timed', params: { jar: facts.label(jarIn(facts, stay.jar)) }, jar: stay.jar };
  }
}

function* newSeeds(facts: Facts, fresh: Fresh): Generator<SeedingFact & { readonly fromJar: number }> {
  for (const seeding of fromJars(facts)) if (fresh.seedings.has(seeding.key)) yield seeding;
}

/** The day on which what a seeding took was parted of its jar; null: it was taken of the jar itself. */
const partedOn = (facts: Facts, { portion }: SeedingFact): string | null =>
  portion === null ? null : (facts.portions.get(portion)?.keptOn ?? null);

function* spoiledSeeds(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  for (const seeding of newSeeds(facts, fresh)) {
    const { jar: key, fromJar } = seeding;
    const discard = known.discard(fromJar, partedOn(facts, seeding));
    if (discard === null) continue;
    const [since, jar] = [known.discardKnown(fromJar), jarIn(facts, key)];
    if (jar.first === null || jar.first < since) continue;
    const seed = facts.label(jarIn(facts, fromJar));
    const words = known.stoppingWords(fromJar);
    yield { code: 'seed spoiled', params: { seed, known: since, discard, words }, jar: key };
  }
}

function* seedsFoundSpoiled(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known)) return;
  for (const seeding of newSeeds(facts, fresh)) {
    const { jar: key, fromJar } = seeding;
    const discard = known.discard(fromJar, partedOn(facts, seeding));
    if (discard === null || known.toldHere(fromJar)) continue;
    const [since, jar] = [known.discardKnown(fromJar), jarIn(facts, key)];
    // On the day it was known and later it is no seed, whatever the reason.
    if (jar.first !== null && jar.first >= since) continue;
    const [seed, words] = [facts.label(jarIn(facts, fromJar)), known.stoppingWords(fromJar)];
    const params = { seed, known: since, jar: facts.label(jar), discard, words };
    yield { code: 'seed found spoiled', params, jar: key };
  }
}

function* seedsSetAside(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known)) return;
  for (const { jar: key, fromJar } of newSeeds(facts, fresh)) {
    const aside = known.setAsideBy(fromJar);
    if (aside === null) continue;
    const params = { seed: facts.label(jarIn(facts, fromJar)), because: [...aside.because] };
    yield { code: 'seed set aside', params, jar: key };
  }
}

const seedsStopped = (code: 'seed without acid' | 'seed stopped', by: readonly StoppedBy[]): Consent['ask'] =>
  function* (facts, fresh, known) {
    if (hasReason(known)) return;
    for (const seeding of newSeeds(facts, fresh)) {
      const { jar: key, fromJar } = seeding;
      const stopped = known.stopped(fromJar, partedOn(facts, seeding));
      if (stopped === null || !by.includes(stopped.stop)) continue;
      yield { code, params: { seed: facts.label(jarIn(facts, fromJar)), says: stopped.says }, jar: key };
    }
  };

function* spoiledReserves(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  for (const { key, jar, keptOn } of facts.portions.values()) {
    const discard = fresh.reserves.has(key) ? known.discard(jar, keptOn) : null;
    if (discard === null) continue;
    const words = known.stoppingWords(jar);
    yield { code: 'reserve spoiled', params: { jar: facts.label(jarIn(facts, jar)), discard, words }, jar };
  }
}

function* spoiledMistakes(facts: Facts, fresh: Fresh, known: Circumstances): Generator<Broken> {
  if (hasReason(known)) return;
  for (const key of fresh.mistakes) {
    if (known.discard(key, null) !== null)
      yield { code: 'reason needed', params: { jar: facts.label(jarIn(facts, key)) }, jar: key };
  }
}

const REASON = 'a written reason, kept with the act';
const consent = (
  code: RefusalCode,
  asks: string,
  word: string | null,
  ask: Consent['ask'],
  ofUndone = false,
): Consent => ({ code, asks, word, ofUndone, ask });

/** Every consent there is, the one to be said first before the others. */
export const CONSENTS: readonly Consent[] = [
  consent('day to come', 'A jar made on a day to come.', null, madeByNow, true),
  consent('same label', 'Two jars with one label.', 'that it is meant', equalLabels, true),
  consent('kept day to come', 'A portion kept on a day to come.', null, keptByNow),
  consent('gone day to come', 'A jar or a portion moved, seen or gone on a day to come.', null, goneByNow),
  consent('taken out before the end', 'A jar seen at take-out while its hold goes on.', null, takenOutByNow),
  consent(
    'taken out early',
    'How a jar came out while its planned hours in warmth go on.',
    REASON,
    lookedInHold,
  ),
  consent(
    'set too soon',
    'How a jar came out that was in warmth for less than four hours.',
    REASON,
    setTooSoon,
  ),
  consent(
    'stay not timed',
    'A jar in two holds of which nobody knows whether they were at once.',
    REASON,
    staysTimed,
  ),
  consent('seed spoiled', 'A seed known to be spoiled by the day the jar was made.', null, spoiledSeeds),
  consent(
    'seed found spoiled',
    'A seed that was found to be spoiled after the jar was made.',
    REASON,
    seedsFoundSpoiled,
  ),
  consent('seed without acid', 'A seed whose acid a meter did not find.', REASON, seedsStopped('seed without acid', ['no acid'])), // prettier-ignore
  consent('seed stopped', 'A seed that started slowly, or whose batch needs the meter.', REASON, seedsStopped('seed stopped', ['needs the meter', 'slow start'])), // prettier-ignore
  consent('seed set aside', 'A seed set aside because of a spoiled jar.', REASON, seedsSetAside),
  consent('reserve spoiled', 'A reserve kept back of a spoiled jar.', null, spoiledReserves),
  consent(
    'reason needed',
    'A spoiled jar entered by mistake: the cautions because of it fall away.',
    REASON,
    spoiledMistakes,
  ),
];
