// From what the ledger records to what judgement reads. Pure: a thin handler brings the records of each jar.
import { jarFollows } from '../growth/jar-temperature';
import { profileOf } from '../growth/reading-profile';
import type { Storage } from '../growth/storage';
import { USUAL_TIME_CONSTANT, type TimeConstant } from '../growth/time-constant';
import { constantProfile, type WarmPoint } from '../growth/warm-hours';
import { holdHours } from '../ledger/hold-hours';
import type { Addition, Hold, Jar, Outcome, Portion } from '../ledger/records';
import type { Family } from '../lineage/family';
import { primarySeed } from '../lineage/primary-seed';
import type { FamilySeeding } from '../lineage/lineage-shapes';
import { heldJars, type Held } from '../safety/set-aside';
import type { HoldWarmth, JarEvidence, Made } from './jar-evidence';
import { daysBetween } from '../quantities/typed-days';

export type HoldRecord = Pick<Hold, 'startedAt' | 'endedAt' | 'hours' | 'planned' | 'probe' | 'readings'>;
export type PortionRecord = Pick<Portion, 'place' | 'keptOn'>;

/** What is recorded of one jar beside its place in the family. */
export interface JarRecord {
  readonly key: number;
  readonly outcome: Omit<Outcome, 'jar'> | null;
  readonly additions: readonly Pick<Addition, 'name'>[];
  readonly milk: Jar['milk'];
  readonly made: Omit<Made, 'seedMl'>;
  readonly hold: HoldRecord | null;
  /** How it follows a probe that stood outside it. */
  readonly follows: TimeConstant;
  /** Portions its seedings were taken from, by seeding key; a seeding that is not here came from the jar itself. */
  readonly portions: ReadonlyMap<number, PortionRecord>;
}

const HOUR = 3_600_000;
/** A jar goes in no warmer than this (°C), where nobody measured it (common practice, no source). */
const JAR_STARTS_AT = 30;

/** Readings within a hold, in hours after its start (or after the first reading where the start is not known). */
function readingsOf(hold: HoldRecord): readonly WarmPoint[] {
  const first = hold.readings.map(({ at }) => Date.parse(at)).toSorted((a, b) => a - b)[0];
  if (first === undefined || hold.readings.length < 2) return [];
  const hours = holdHours(hold);
  const start = hold.startedAt === null ? first : Date.parse(hold.startedAt);
  return hold.readings
    .map(({ at, temperature }) => ({ hour: (Date.parse(at) - start) / HOUR, celsius: temperature.value }))
    .filter(({ hour }) => hour >= 0 && (hours === null || hour <= hours + 0.01));
}

const PROBES = {
  jar: 'readings in the jar',
  bath: 'readings in the bath',
  air: 'readings in the air',
} as const;

/**
 * Temperatures of a jar over its hold: from readings (the jar follows a bath or air by the time constant given), else the
 * planned temperature throughout; null where neither is known.
 */
export function holdWarmth(hold: HoldRecord, follows: TimeConstant = USUAL_TIME_CONSTANT): HoldWarmth | null {
  const hours = holdHours(hold);
  const { profile, leftOut, gaps } = profileOf(readingsOf(hold));
  const [head] = profile;
  const last = profile.at(-1);
  if (head && last && profile.length >= 2) {
    // What was not read at either end is taken to be as the nearest reading.
    const read = [
      ...(head.hour > 0 ? [{ hour: 0, celsius: head.celsius }] : []),
      ...profile,
      ...(hours !== null && hours > last.hour ? [{ hour: hours, celsius: last.celsius }] : []),
    ];
    const from = PROBES[hold.probe ?? 'bath'];
    if (hold.probe === 'jar')
      return { profile: read, from, outside: null, probeSaid: true, read: { leftOut, gaps } };
    const startsAt = Math.min(JAR_STARTS_AT, head.celsius);
    return {
      profile: jarFollows(read, follows.middle, startsAt),
      from,
      outside: { read, startsAt, follows },
      probeSaid: hold.probe !== null,
      read: { leftOut, gaps },
    };
  }
  return hours !== null && hold.planned
    ? {
        profile: constantProfile(hours, hold.planned.value),
        from: 'the planned temperature',
        outside: null,
        probeSaid: true,
        read: { leftOut: [], gaps: [] },
      }
    : null;
}

/** How a seed was stored before it was used: in the fridge, or frozen and thawed overnight. */
export function storageOf(seedMadeOn: string, usedOn: string, portion: PortionRecord | null): Storage {
  if (portion?.place === 'freezer') {
    return {
      fridgeDays: daysBetween(seedMadeOn, portion.keptOn),
      frozenDays: daysBetween(portion.keptOn, usedOn),
      freezings: 1,
    };
  }
  return { fridgeDays: daysBetween(seedMadeOn, usedOn), frozenDays: 0, freezings: 0 };
}

const total = ({ fridgeDays, frozenDays }: Storage): number => fridgeDays + frozenDays;

/** Batch of the jar that a jar hangs from. */
function seedBatchOf({ columns }: Family, key: number): number | null {
  const slot = primarySeed(columns, columns.slot(key));
  return slot < 0 ? null : (columns.jars[slot]?.batch ?? null);
}

/** What seeded it, in mL; null where any of it is told otherwise, or it came from pieces. */
function seedMlOf(seedings: readonly FamilySeeding[]): number | null {
  const known = seedings.flatMap(({ fromJar, volumeMl }) => (fromJar === null || volumeMl === null ? [] : [volumeMl])); // prettier-ignore
  return known.length === 0 || known.length < seedings.length ? null : known.reduce((a, b) => a + b, 0);
}

/** How a jar was made of which nothing more was noted. */
export const MADE_AS_EVER: JarRecord['made'] = { vessel: null, carton: null, seedPart: null, dose: null };

/** Evidence of one jar. @param held how a hold touches it (heldJars) */
export function evidenceOfJar(family: Family, record: JarRecord, held: Held | null): JarEvidence {
  const jar = family.jar(record.key);
  const seedings = family.seedsOf(record.key);
  const lines = family.linesOf(record.key);
  const storages = seedings.flatMap((seeding) => {
    if (seeding.fromJar === null || !family.has(seeding.fromJar) || jar.madeOn === null) return [];
    const { madeOn } = family.jar(seeding.fromJar);
    return madeOn === null ? [] : [storageOf(madeOn, jar.madeOn, record.portions.get(seeding.key) ?? null)];
  });
  const seed = seedings
    .map((seeding) => {
      const portion = record.portions.get(seeding.key);
      const place = portion ? ` ${portion.place} ${portion.keptOn}` : '';
      return seeding.fromJar === null ? `source ${seeding.source}` : `jar ${seeding.fromJar}${place}`;
    })
    .toSorted()
    .join(' + ');
  const warmth = record.hold && warmthOfHold(record.hold, record.follows);
  return {
    key: jar.key,
    label: jar.label,
    madeOn: jar.madeOn,
    madeBetween: jar.madeBetween ?? null,
    batch: jar.batch,
    hold: jar.hold,
    lines,
    mixes: seedings.some(
      ({ fromJar }) =>
        fromJar !== null && family.has(fromJar) && family.linesOf(fromJar).length < lines.length,
    ),
    generation: family.generationOf(jar.key).deepest,
    founding: seedings.length > 0 && seedings.every(({ fromJar }) => fromJar === null),
    spoiled: jar.spoiled,
    spoiledUnopened: jar.safety
      ? jar.safety.discard === 'spoiled' && jar.safety.opened === null
      : jar.spoiled,
    held,
    outcome: record.outcome,
    additions: [...new Set(record.additions.map(({ name }) => name.trim().toLowerCase()))].toSorted(),
    milk: record.milk?.trim() || null,
    made: { ...record.made, seedMl: seedMlOf(seedings) },
    seed,
    seedBatch: seedBatchOf(family, jar.key),
    profile: warmth && warmth.profile,
    warmth,
    heldHours: record.hold && holdHours(record.hold),
    seedStorage: storages.toSorted((a, b) => total(b) - total(a))[0] ?? null,
  };
}

const known = new WeakMap<
  HoldRecord,
  { readonly follows: TimeConstant; readonly warmth: HoldWarmth | null }
>();

/** The warmth of a hold, reckoned once for each record: jars of one hold share it. */
function warmthOfHold(hold: HoldRecord, follows: TimeConstant): HoldWarmth | null {
  const before = known.get(hold);
  if (before?.follows === follows) return before.warmth;
  const warmth = holdWarmth(hold, follows);
  known.set(hold, { follows, warmth });
  return warmth;
}

/** Evidence of all jars of a family. Lost jars have nothing to tell and are left out. */
export function evidenceOf(family: Family, records: Iterable<JarRecord>): JarEvidence[] {
  const held = heldJars(family);
  return Array.from(records).flatMap((record) =>
    family.has(record.key) && !family.jar(record.key).lost
      ? [evidenceOfJar(family, record, held.get(record.key) ?? null)]
      : [],
  );
}
