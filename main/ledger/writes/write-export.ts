// A probe's export brought in as readings of a hold, in one act.
import type { Parsed, Reply } from '../../../core/contract';
import { broughtIn, profiled, type BroughtIn } from '../../../core/readings/brought-in';
import { readExport, type ExportReading, type ReadExport } from '../../../core/readings/read-export';
import type { Around } from '../../../core/readings/export-times';
import { beganOrPlanned } from '../../../core/ledger/running';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { holdWarmth } from '../../../core/vigour/evidence';
import { followsSays } from '../../../core/says/warmth-says';
import { warmHoursOf } from '../../../core/vigour/hold-warmth';
import { readNotesFile } from '../../files/notes-file';
import { hostOf } from '../host-of-facts';
import { nameOf } from '../facts/subject';
import type { Row } from '../facts/tables';
import { followsIn, howJarsFollow } from '../how-jars-follow';
import type { Ledger } from '../ledger';
import { allReadingsIn, blockOf, type Read } from '../entries/series-of-hold';
import { Refused } from '../../refusal';
import { tidy } from '../tidy-typed';
import type { FactHost } from '../facts/fact-host';

/** @throws Refused 'export without readings', and what a file of notes is refused for */
export function textOfExport(file: Parsed<'readings.bringIn'>['file']): { name: string; text: string } {
  try {
    return readNotesFile(file);
  } catch (error) {
    if (!(error instanceof Refused) || error.refusal.code !== 'notes empty') throw error;
    throw new Refused('export without readings', { file: 'path' in file ? file.path : file.name });
  }
}

/** What a ledger can keep of a temperature (°C): what lies beyond is said and not kept. */
const KEPT = { low: -90, high: 150 } as const;
/** Two exports of one probe may round differently, in °F and in °C. */
const SAME = 0.06;

const textOf = ({ at }: ExportReading): string => momentText(at.seconds, at.offset);

/** What is known of the time beside a file of readings. */
export function aroundOf(
  { clock, preferences }: Ledger,
  hold: Pick<Row<'hold'>, 'began' | 'plannedFrom' | 'ended' | 'hours'>,
): Around {
  const read = (moment: string | null) => (moment === null ? null : storedMoment(moment));
  const [began, ended] = [read(beganOrPlanned(hold)), read(hold.ended)];
  const hours = began && hold.hours !== null ? began.seconds + hold.hours * 3600 : null;
  return {
    began: began?.seconds ?? null,
    ended: ended?.seconds ?? hours,
    beganOffset: began?.offset ?? null,
    endedOffset: ended?.offset ?? null,
    dates: preferences.dates,
    offsetAt: (seconds) => clock.offsetAt(seconds * 1000),
    now: clock.milliseconds() / 1000,
  };
}

/** What the series would hold, and how many of these readings are new to it; null where it is another probe's. */
function joined(there: readonly Read[], given: readonly Read[]): { all: Read[]; added: number } | null {
  const known = new Map(there.map((read) => [storedMoment(read.at).seconds, read.temperature.value]));
  let differs = 0;
  const fresh = given.filter(({ at, temperature }) => {
    const before = known.get(storedMoment(at).seconds);
    if (before !== undefined && Math.abs(before - temperature.value) > SAME) differs += 1;
    return before === undefined;
  });
  if (differs > 0) return null;
  return { all: [...there, ...fresh], added: fresh.length };
}

/** The series of the same place that these readings go on from, or repeat. */
function seriesFor(
  { facts }: FactHost,
  hold: number,
  where: 'air' | 'bath' | 'jar',
  jar: number | null,
  given: readonly Read[],
): { series: Row<'series'>; all: Read[]; added: number } | null {
  const fits = facts
    .where('series', 'hold', hold)
    .filter((series) => (series.place ?? where) === where && series.jar === jar)
    .flatMap((series) => {
      const found = joined(allReadingsIn(facts, series.block), given);
      return found ? [{ series, ...found }] : [];
    });
  return fits.toSorted((a, b) => a.added - b.added)[0] ?? null;
}

const readOf = (reading: ExportReading, leftOut: boolean): Read => ({
  at: textOf(reading),
  temperature: { value: Number(reading.celsius.toFixed(4)), unit: '°C', typed: null },
  ...(leftOut ? { leftOut } : {}),
});

/** What the ledger keeps of an export: what leaps impossibly is left out beside the rest, in the order of time. */
export function keptReadings(read: ReadExport, told = profiled(read)): Read[] {
  const keepable = told.impossible.filter(({ celsius }) => celsius >= KEPT.low && celsius <= KEPT.high);
  return [
    ...told.readings.map((one) => readOf(one, false)),
    ...keepable.map((one) => readOf(one, true)),
  ].toSorted((a, b) => storedMoment(a.at).seconds - storedMoment(b.at).seconds);
}

/** An export read for a hold: what it tells, and the series that it goes on from or repeats. */
function exportFor(ledger: Ledger, input: Parsed<'readings.preview'>) {
  const host = hostOf(ledger);
  const { facts } = host;
  const hold = facts.get('hold', facts.keyOf('hold', input.hold));
  const jar = input.jar === null ? null : facts.keyOf('jar', input.jar);
  if (jar !== null && input.where !== 'jar')
    throw new Refused('invalid', { path: 'jar', problem: 'only goes with where jar' });
  const { name, text } = textOfExport(input.file);
  const around = aroundOf(ledger, hold);
  const read = readExport(text, input.where, around);
  if (read.trouble === 'no day') throw new Refused('export without days', { file: name });
  const told = broughtIn(read, around);
  if (told.readings.length === 0) throw new Refused('export without readings', { file: name });
  const given = keptReadings(read, told);
  return { host, hold, jar, read, told, given, found: seriesFor(host, hold.key, input.where, jar, given) };
}

/** What bringing an export in would add, leave out and bridge. @throws as bringInReadings */
export function previewReadings(
  ledger: Ledger,
  input: Parsed<'readings.preview'>,
): Reply<'readings.preview'> {
  const { hold, told, given, found } = exportFor(ledger, input);
  const added = found?.added ?? given.length;
  return { ...toldOf(ledger, hold, input.where, told), added, there: added === 0 };
}

/**
 * Brings in a probe's export. The same file again, or one that goes on from it, adds only what is new.
 * @throws Refused 'not found', 'export without readings', 'export without days', and what a file is refused for
 */
export function bringInReadings(
  ledger: Ledger,
  input: Parsed<'readings.bringIn'>,
): Reply<'readings.bringIn'> {
  const { host, hold, jar, read, told, given, found } = exportFor(ledger, input);
  const { facts } = host;
  const reply = toldOf(ledger, hold, input.where, told);
  if (found?.added === 0) return { ...reply, act: null, series: found.series.uid, added: 0 };
  const scale = read.unit === 'K' ? null : (`°${read.unit}` as const);
  const done = host.mustRun(
    'readings.bringIn',
    nameOf(host, 'hold', facts.columnsNow('hold', hold.key) ?? {}),
    tidy(input.why),
    (act) => {
      const block = blockOf(facts, found?.all ?? given, found?.series.block ?? null);
      const described = { place: input.where, jar, heading: read.heading, scale, block };
      if (!found) return act.insert('series', { hold: hold.key, clock: null, spot: null, ...described }).uid;
      act.update('series', found.series.key, { place: input.where, block });
      return found.series.uid;
    },
    input.draft,
  );
  return { ...reply, act: done.act.uid, series: done.value, added: found?.added ?? given.length };
}

const hundredth = (value: number): number => Number(value.toFixed(2));

function toldOf(
  ledger: Ledger,
  hold: Row<'hold'>,
  probe: 'air' | 'bath' | 'jar',
  told: BroughtIn,
): Omit<Reply<'readings.bringIn'>, 'act' | 'series' | 'added'> {
  const { began: startedAt, ended: endedAt, hours, planned } = hold;
  const readings = told.readings.map((one) => readOf(one, false));
  const warmth = holdWarmth({ startedAt, endedAt, hours, planned, probe, readings }, followsIn(howJarsFollow(ledger), hold.appliance));
  const band = warmth && warmHoursOf(warmth);
  const [first] = told.readings;
  const last = told.readings.at(-1);
  return {
    readings: told.readings.length,
    leftOut: [...told.leftOut],
    gaps: told.gaps.map(({ from, to }) => ({
      from: textOf(from), to: textOf(to), minutes: Math.round((to.at.seconds - from.at.seconds) / 6) / 10,
    })),
    settledAt: told.settledAt,
    minutesToSettle: told.minutesToSettle,
    minutesAbove45: told.minutesAbove45,
    warmHours: band && { low: hundredth(band.low), mid: hundredth(band.middle), high: hundredth(band.high) },
    from: first ? textOf(first) : '',
    to: last ? textOf(last) : '',
    says: [...told.says, ...(warmth?.outside ? [followsSays(warmth.outside.follows)] : [])],
  };
} // prettier-ignore
