// One hold with all that is known of it, and the list of holds.
import type { Parsed, Reply } from '../../../core/contract';
import { profileOf } from '../../../core/growth/reading-profile';
import { settledOf } from '../../../core/growth/settling';
import { warmthOf } from '../../../core/growth/warm-hours';
import { beganOrPlanned, endsAt, stillRuns } from '../../../core/ledger/running';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { asksNow, looksOf } from '../../../core/plan/hold-looks';
import { thinned } from '../../../core/readings/thinned';
import {
  FAILED,
  holdInList,
  holdTitle,
  interruptionSays,
  lookSays,
  warmthOfHoldSays,
  warmthOfHoldWhy,
} from '../../../core/says/hold-says';
import { holdWarmth } from '../../../core/vigour/evidence';
import { warmHoursOf } from '../../../core/vigour/hold-warmth';
import { allReadingsIn } from '../entries/series-of-hold';
import type { KnownJar } from '../family-index';
import type { Row } from '../facts/tables';
import { followsIn, howJarsFollow } from '../how-jars-follow';
import type { Ledger } from '../ledger';
import { listAppliances } from './read-appliances';
import { labelOfBatches, labelOfHold, seenHours } from './running-holds';

type HoldReply = Reply<'hold.get'>;
const HOUR = 3600;
const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits));
const seconds = (moment: string): number => storedMoment(moment).seconds;

interface Times {
  readonly began: string | null;
  /** Nobody noted when it began: it is taken for the moment at which it was recorded. */
  readonly assumed: boolean;
  readonly ended: string | null;
  readonly ends: string | null;
  readonly minutesLeft: number | null;
  readonly runs: boolean;
}

function timesOf(hold: Row<'hold'>, now: string): Times {
  const { ended, plannedTo, hours } = hold;
  // What is over began when somebody said that it did.
  const began = ended === null ? beganOrPlanned(hold) : hold.began;
  const ends = began === null ? plannedTo : endsAt({ began, plannedTo, hours });
  const runs = ended === null && began !== null && stillRuns({ began, plannedTo, hours }, now);
  const minutesLeft = !runs || ends === null ? null : Math.ceil((seconds(ends) - seconds(now)) / 60) + 0;
  return { began, assumed: hold.began === null && began !== null, ended, ends, minutesLeft, runs };
}

/** The jars that stood in a hold, in the order of their labels, each with its stays there. */
function jarsOf({ rows, index }: Ledger, hold: number): { jar: KnownJar; stays: Row<'stay'>[] }[] {
  const stays = rows.where('stay', 'hold', hold).filter(({ jar }) => index.family.has(jar));
  return [...new Set(stays.map(({ jar }) => jar))]
    .map((key) => ({ jar: index.jar(key), stays: stays.filter(({ jar }) => jar === key) }))
    .toSorted(
      (a, b) =>
        a.jar.batch - b.jar.batch || a.jar.letter.localeCompare(b.jar.letter) || a.jar.key - b.jar.key,
    );
}

/** What was noted of a jar at its last early look. */
function lastLook({ rows }: Ledger, jar: number): HoldReply['jars'][number]['look'] {
  const seen = rows
    .where('observation', 'jar', jar)
    .filter(({ stage }) => stage === 'early')
    .at(-1);
  if (!seen) return null;
  const ph = rows.where('acidity', 'observation', seen.key)[0]?.ph ?? null;
  return { set: seen.setState, sour: seen.sour, ph, hours: seen.hoursIn, at: seen.at };
}

function seriesOf({ rows, index }: Ledger, hold: number): HoldReply['series'] {
  return rows.where('series', 'hold', hold).flatMap(({ uid, place, jar, block }) => {
    const all = allReadingsIn(rows, block);
    if (all.length === 0) return [];
    const kept = all.filter(({ leftOut }) => !leftOut);
    const points = kept
      .map(({ at, temperature }) => ({ hour: seconds(at) / HOUR, celsius: temperature.value }))
      .toSorted((a, b) => a.hour - b.hour);
    const { profile, leftOut, gaps } = profileOf(points);
    const offset = storedMoment(all[0]?.at ?? '').offset;
    const drawn = thinned(profile);
    const moment = (hour: number): string => momentText(Math.round(hour * HOUR), offset);
    return [
      {
        id: uid,
        place,
        jar: jar === null ? null : index.jar(jar).label,
        at: drawn.map(({ hour }) => Math.round(hour * HOUR)),
        c: drawn.map(({ celsius }) => rounded(celsius)),
        readings: profile.length,
        leftOut: all.length - kept.length + leftOut.length,
        gaps: gaps.map(({ from, to }) => ({
          from: moment(from),
          to: moment(to),
          minutes: Math.round((to - from) * 60),
        })),
      },
    ];
  });
}

/** Two or three readings by hand say nothing of where it stays. */
const FEWEST_TO_SETTLE = 4;
const BY_PLACE = ['jar', 'bath', 'air'] as const;
const PROBES = { jar: 'in a jar', bath: 'in the bath', air: 'in the air' } as const;

/** What the readings of a hold amount to, as far as it has gone. */
function warmthReply(ledger: Ledger, hold: Row<'hold'>, now: string): HoldReply['warmth'] {
  const { rows } = ledger;
  const all = rows.where('series', 'hold', hold.key).map((series) => ({
    series,
    readings: allReadingsIn(rows, series.block).filter(({ leftOut }) => !leftOut),
  }));
  const [best] = all
    .filter(({ readings }) => readings.length > 1)
    .toSorted(
      (a, b) => BY_PLACE.indexOf(a.series.place ?? 'bath') - BY_PLACE.indexOf(b.series.place ?? 'bath'),
    );
  if (!best) return null;
  const probe = best.series.place ?? 'bath';
  const end = hold.ended ?? now;
  const began = hold.began ?? best.readings[0]?.at ?? now;
  const points = best.readings
    .map(({ at, temperature }) => ({
      hour: (seconds(at) - seconds(began)) / HOUR,
      celsius: temperature.value,
    }))
    .filter(({ hour }) => hour >= -0.02 && hour <= (seconds(end) - seconds(began)) / HOUR + 0.02);
  const { profile, leftOut } = profileOf(points);
  const settled = profile.length < FEWEST_TO_SETTLE ? null : settledOf(profile);
  const warmth = holdWarmth(
    { startedAt: began, endedAt: end, hours: null, planned: hold.planned, probe, readings: best.readings },
    followsIn(howJarsFollow(ledger), hold.appliance),
  );
  const band = warmth && warmHoursOf(warmth);
  const told = {
    settledAt: settled && rounded(settled.level, 1),
    minutesToSettle: settled && Math.max(0, Math.round(settled.hour * 60)),
    minutesAbove45: Math.round(warmthOf(profile)?.minutesAboveDamage ?? 0),
    warmHours: band && { low: rounded(band.low), mid: rounded(band.middle), high: rounded(band.high) },
  };
  return {
    says: warmthOfHoldSays(told, hold.planned?.value ?? null),
    ...told,
    why: warmthOfHoldWhy(told, PROBES[probe], leftOut.length),
  };
}

function applianceOf(ledger: Ledger, key: number | null): HoldReply['appliance'] {
  if (key === null) return null;
  const id = ledger.rows.uidOf('appliance', key);
  const one = listAppliances(ledger).appliances.find((other) => other.id === id);
  return one ? { id, name: one.name, says: one.proof?.says ?? null } : null;
}

/** Made jars of some batches that stand in no hold that nobody ended. */
function othersOf(
  { rows, index }: Ledger,
  batches: readonly number[],
  known: readonly number[],
): HoldReply['others'] {
  const keys = batches.flatMap((batch) => rows.where('jar', 'batch', batch).map(({ key }) => key));
  return keys.flatMap((key) => {
    if (known.includes(key) || !index.family.has(key)) return [];
    const elsewhere = rows
      .where('stay', 'jar', key)
      .some(({ went, hold }) => went === null && rows.get('hold', hold).ended === null);
    const { uid, label, letter } = index.jar(key);
    return elsewhere ? [] : [{ id: uid, label, letter }];
  });
}

/** @throws Refused 'not found' */
export function getHold(ledger: Ledger, { id }: Parsed<'hold.get'>): HoldReply {
  const { rows, index, clock } = ledger;
  const now = clock.now();
  const hold = rows.get('hold', rows.keyOf('hold', id));
  const times = timesOf(hold, now);
  const { began, ended, ends, runs } = times;
  const inside = jarsOf(ledger, hold.key);
  const start = began === null ? null : seconds(began);
  const still = inside.filter(({ stays }) => stays.some(({ went }) => went === null));
  const seen = still.map(({ jar }) => seenHours(rows, jar.key, start ?? 0));
  const { offset } = storedMoment(now);
  const moment = (at: number): string => momentText(Math.round(at), offset);
  const until = ends === null ? null : seconds(ends);
  const asks = start === null || !runs ? null : asksNow(start, until, seen, seconds(now));
  const open = asks?.what === 'look' ? asks.look : null;
  const batches = [
    ...new Set([...inside.map(({ jar }) => jar.batch), ...(hold.batch === null ? [] : [hold.batch])]),
  ];
  return {
    now,
    id,
    label: called(ledger, hold),
    batches: batches.map((key) => ({ id: rows.uidOf('batch', key), label: labelOfBatches(ledger, [key]) })),
    offset: clock.offsetAt((start ?? seconds(now)) * 1000),
    began,
    ended,
    ends,
    runs,
    planned: hold.planned,
    appliance: applianceOf(ledger, hold.appliance),
    minutesLeft: times.minutesLeft,
    ...holdTitle(times, now),
    looks:
      start === null
        ? []
        : looksOf(start, until, seen, seconds(ended ?? now)).map((look) => ({
            ...look,
            hours: rounded(look.hours),
            at: moment(look.at),
          })),
    lookNow: open && {
      hours: open.hours,
      says: lookSays(open.hours, moment(open.at), asks?.lateMinutes ?? 0, now),
    },
    jars: inside.map(({ jar, stays }) => {
      const generation = index.family.generationOf(jar.key);
      return {
        id: jar.uid,
        label: jar.label,
        letter: jar.letter,
        batch: rows.uidOf('batch', jar.batch),
        additions: [...jar.additions],
        generation: generation.deepest,
        atLeast: generation.atLeast,
        setWord: jar.setWord,
        outcomeKnown: jar.outcomeKnown,
        spoiled: jar.spoiled,
        caution: index.family.cautionLevelOf(jar.key),
        inside: ended === null && stays.some(({ went }) => went === null),
        stays: stays.map(({ uid, came, went }) => ({ id: uid, came, went })),
        look: lastLook(ledger, jar.key),
      };
    }),
    others: othersOf(
      ledger,
      batches,
      inside.map(({ jar }) => jar.key),
    ),
    interruptions: rows
      .where('interruption', 'hold', hold.key)
      .map(({ uid, what, began: from, ended: to, hours }) => ({
        id: uid,
        what,
        from,
        to,
        hours,
        name: FAILED[what],
        says: interruptionSays({ what, from, to, hours }, now),
      })),
    series: seriesOf(ledger, hold.key),
    warmth: warmthReply(ledger, hold, now),
  };
}

/** What it is called where its name stands first. */
const called = (ledger: Ledger, hold: Row<'hold'>): string =>
  labelOfHold(ledger, hold).replace(/^a hold$/, 'A hold');

/** Holds of jars, the newest first. */
export function listHolds(ledger: Ledger): Reply<'hold.list'> {
  const { rows, clock } = ledger;
  const now = clock.now();
  const keys = rows
    .prepare(
      // A hold of which all jars are only planned is a plan.
      `SELECT key FROM hold WHERE purpose = 'jars' AND (began IS NOT NULL OR (ended IS NULL AND planned_from IS NOT NULL))
         AND (NOT EXISTS (SELECT 1 FROM stay s WHERE s.hold = hold.key)
           OR EXISTS (SELECT 1 FROM stay s JOIN jar j ON j.key = s.jar WHERE s.hold = hold.key AND j.state <> 'planned'))
       ORDER BY coalesce(began, planned_from) DESC, key DESC LIMIT 100`,
    )
    .pluck()
    .all() as number[];
  return {
    holds: keys.map((key) => {
      const hold = rows.get('hold', key);
      const times = timesOf(hold, now);
      return {
        id: hold.uid,
        label: called(ledger, hold),
        began: times.began,
        runs: times.runs,
        says: holdInList(times, now),
      };
    }),
  };
}
