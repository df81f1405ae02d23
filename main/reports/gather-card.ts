// What a making card says of a batch: what its jars are planned to hold, and when its warmth begins and ends.
import type { Parsed, Reply } from '../../core/contract';
import { momentText, storedMoment } from '../../core/ledger/stored-moments';
import { batchDay, calledDay } from '../../core/lineage/labels';
import { LOOK_HOURS } from '../../core/plan/waking-hours';
import { printNoted, printNotedTemperature } from '../../core/quantities/printing';
import { makingCard } from '../../core/says/card-says';
import { clockWords } from '../../core/says/today-says';
import type { Ledger } from '../ledger/ledger';
import { getBatch } from '../ledger/reads/read-lists';

type Batch = Reply<'batch.get'>;

const joined = (parts: readonly (string | null | undefined | false)[], between: string): string =>
  parts.filter(Boolean).join(between);

/** Each jar with its amounts as the keeper prefers to read them. */
function jarsOf({ preferences }: Ledger, jars: Batch['jars']) {
  return jars.map(({ jar, additions, seedings }) => ({
    letter: jar.letter,
    seed: joined(
      seedings.map(({ seeding: { amount }, label, kept }) =>
        joined([amount && `${printNoted(amount, preferences)} of`, label, kept && `(${kept})`], ' '),
      ),
      ', ',
    ),
    stirredIn:
      joined(
        additions.map(({ name, planned, actual }) => {
          const amount = planned ?? actual;
          return joined([amount && printNoted(amount, preferences), name], ' ');
        }),
        ', ',
      ) || 'plain',
    milk: joined(
      [
        joined([jar.milkAmount && printNoted(jar.milkAmount, preferences), jar.milk], ' '),
        jar.vessel,
        jar.finalVolume && `${printNoted(jar.finalVolume, preferences)} in all`,
      ],
      ', ',
    ),
  }));
}

/** When the first hold begins, and what follows so many hours later; null where it is not planned. */
function timesOf(ledger: Ledger, { holds, plannedStarts }: Batch) {
  const [hold] = holds;
  const began = hold?.startedAt ?? plannedStarts.find((one) => one.hold === hold?.id)?.at ?? null;
  const now = ledger.clock.now();
  const after = (hours: number): string | null => {
    if (began === null) return null;
    const { seconds, offset } = storedMoment(began);
    return clockWords(momentText(Math.round(seconds + hours * 3600), offset), now);
  };
  const hours = hold?.hours ?? null;
  return {
    begins: after(0),
    hours,
    looks: LOOK_HOURS.filter((hour) => hours === null || hour < hours).map((hour) => ({
      hours: hour,
      at: after(hour),
    })),
    out: hours === null ? null : after(hours),
    warmth: hold?.planned ? `set to ${printNotedTemperature(hold.planned, ledger.preferences)}` : null,
  };
}

/** @throws Refused 'not found', 'batch without a day' */
export function cardOfBatch(ledger: Ledger, { id }: Parsed<'batch.card'>): Reply<'batch.card'> {
  const reply = getBatch(ledger, { id });
  const standing = reply.jars.filter(({ jar }) => jar.state !== 'not made');
  const jars = jarsOf(ledger, standing);
  const row = ledger.rows.get('batch', ledger.rows.keyOf('batch', id));
  const seeds = new Set(jars.map(({ seed }) => seed));
  const [one = ''] = seeds;
  const seedings = standing.flatMap((jar) => jar.seedings.map(({ seeding }) => seeding));
  return makingCard({
    title: joined([batchDay(calledDay(row), true), reply.batch.word], ' '),
    jars,
    seed: seeds.size === 1 && one !== '' ? one : null,
    fromJar: seedings.some(({ fromJar }) => fromJar !== null),
    fromPieces: seedings.some(({ source }) => source !== null),
    ...timesOf(ledger, reply),
  });
}
