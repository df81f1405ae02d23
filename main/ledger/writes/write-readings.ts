// Readings of a probe, added to its series.
import type { Parsed, Reply } from '../../../core/contract';
import type { Hold } from '../../../core/ledger/records';
import { storedMoment } from '../../../core/ledger/stored-moments';
import { nameOf } from '../facts/subject';
import { allReadingsIn, blockOf } from '../entries/series-of-hold';
import { Refused } from '../../refusal';
import { tidy } from '../tidy-typed';
import type { FactHost } from '../facts/fact-host';

type Reading = Hold['readings'][number];

/**
 * Adds readings to a series; those that are there already are left, so that the same export can be brought in again.
 * @throws Refused 'not found', 'reading differs', 'nothing changed'
 */
export function addReadings(host: FactHost, input: Parsed<'readings.add'>): Reply<'readings.add'> {
  const { facts } = host;
  const key = facts.keyOf('series', input.series);
  const { block, hold } = facts.get('series', key);
  const there = allReadingsIn(facts, block);
  const fresh = newReadings(there, input.readings);
  const subject = nameOf(host, 'hold', facts.columnsNow('hold', hold) ?? {});
  const done = host.mustRun(
    'readings.add',
    subject,
    tidy(input.why),
    (act) => {
      if (fresh.length > 0) act.update('series', key, { block: blockOf(facts, [...there, ...fresh], block) });
    },
    input.draft,
  );
  return { act: done.act.uid, added: fresh.length };
}

/**
 * Leaves readings of a series out, or counts them again: they stay where they are, and nothing is worked out from them.
 * @throws Refused 'not found', 'no such reading', 'nothing changed'
 */
export function leaveOutReadings(
  host: FactHost,
  input: Parsed<'readings.leaveOut'>,
): Reply<'readings.leaveOut'> {
  const { facts } = host;
  const key = facts.keyOf('series', input.series);
  const { block, hold } = facts.get('series', key);
  const there = allReadingsIn(facts, block);
  const known = new Set(there.map(({ at }) => storedMoment(at).seconds));
  const missing = input.at.find((at) => !known.has(storedMoment(at).seconds));
  if (missing !== undefined) throw new Refused('no such reading', { at: missing });
  const meant = new Set(input.at.map((at) => storedMoment(at).seconds));
  const changes = ({ at, leftOut }: (typeof there)[number]): boolean =>
    meant.has(storedMoment(at).seconds) && leftOut !== input.leftOut;
  const changed = there.filter(changes).length;
  const done = host.mustRun(
    'readings.leaveOut',
    nameOf(host, 'hold', facts.columnsNow('hold', hold) ?? {}),
    tidy(input.why),
    (act) => {
      const next = there.map((one) => (changes(one) ? { ...one, leftOut: input.leftOut } : one));
      act.update('series', key, { block: blockOf(facts, next, block) });
    },
    input.draft,
  );
  return { act: done.act.uid, changed };
}

/** @throws Refused 'reading differs' where a moment has another temperature already */
function newReadings(there: readonly Reading[], given: Parsed<'readings.add'>['readings']): Reading[] {
  const known = new Map(there.map(({ at, temperature }) => [storedMoment(at).seconds, temperature.value]));
  return given.flatMap(({ at, c }): Reading[] => {
    const { seconds } = storedMoment(at);
    const before = known.get(seconds);
    if (before === c) return [];
    if (before !== undefined) throw new Refused('reading differs', { at, there: before, c });
    known.set(seconds, c);
    return [{ at, temperature: { value: c, unit: '°C', typed: null } }];
  });
}
