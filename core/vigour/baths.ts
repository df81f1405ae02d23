// Which probe in a jar stood in which bath. A hold has one probe, so a bath and a jar in it that were both read are two
// holds of one batch; nothing recorded ties them but when they ran and how warm they were meant to be.
import { profileOf } from '../growth/reading-profile';
import type { BathAndJar } from '../growth/time-constant';
import type { WarmPoint } from '../growth/warm-hours';
import { holdHours } from '../ledger/hold-hours';
import type { HoldRecord } from './evidence';

const HOUR = 3_600_000;
/** Two holds may be one bath only where the shorter lies in the other by this part of itself (an assumption). */
const OVERLAP = 0.8;
/** … and where they were planned no further apart than a dial is read (°C; an assumption). */
const PLANNED_APART = 1;

interface Read {
  readonly hold: HoldRecord;
  readonly profile: readonly WarmPoint[];
  /** From and to, in hours of one clock. */
  readonly from: number;
  readonly to: number;
}

export interface BathsAndJars {
  readonly pairs: readonly BathAndJar[];
  /** Jars that were read while more than one bath was, with nothing recorded to say in which they stood. */
  readonly unclear: number;
}

/** When a hold ran: as recorded, else from its first reading to its last. */
function readOf(hold: HoldRecord): Read | null {
  const { profile } = profileOf(
    hold.readings.map(({ at, temperature }) => ({ hour: Date.parse(at) / HOUR, celsius: temperature.value })),
  );
  const [first] = profile;
  const last = profile.at(-1);
  if (!first || !last || profile.length < 2) return null;
  const from = hold.startedAt === null ? first.hour : Date.parse(hold.startedAt) / HOUR;
  const hours = holdHours(hold);
  return { hold, profile, from, to: hours === null ? Math.max(from, last.hour) : from + hours };
}

/** Whether two holds can have been one bath, as far as is recorded. */
function mayBeOne(one: Read, other: Read): boolean {
  const together = Math.min(one.to, other.to) - Math.max(one.from, other.from);
  const shorter = Math.min(one.to - one.from, other.to - other.from);
  const [warmth, others] = [one.hold.planned, other.hold.planned];
  const planned = !warmth || !others || Math.abs(warmth.value - others.value) <= PLANNED_APART;
  return shorter > 0 && together >= OVERLAP * shorter && planned;
}

/** Whether they are recorded alike: begun and ended at the same minute, and planned as warm. */
const recordedAlike = ({ hold: one, ...a }: Read, { hold: other, ...b }: Read): boolean =>
  Math.abs(a.from - b.from) < 1 / 60 &&
  Math.abs(a.to - b.to) < 1 / 60 &&
  (one.planned?.value ?? null) === (other.planned?.value ?? null);

/**
 * Readings of a bath and of a jar that stood in it, on one clock. A jar that may have stood in more than one bath is paired
 * only with one that is recorded just as it is; else with none, since the wrong bath would spoil the time constant.
 * @param holds holds of one batch
 */
export function bathsAndJars(holds: readonly HoldRecord[]): BathsAndJars {
  const of = (probe: HoldRecord['probe']): Read[] =>
    holds.filter((hold) => hold.probe === probe).flatMap((hold) => readOf(hold) ?? []);
  const baths = of('bath');
  const pairs: BathAndJar[] = [];
  let unclear = 0;
  for (const jar of of('jar')) {
    const possible = baths.filter((bath) => mayBeOne(bath, jar));
    const alike = possible.length > 1 ? possible.filter((bath) => recordedAlike(bath, jar)) : possible;
    const [bath] = alike;
    if (bath && alike.length === 1) pairs.push({ bath: bath.profile, jar: jar.profile });
    else if (possible.length > 1) unclear += 1;
  }
  return { pairs, unclear };
}
