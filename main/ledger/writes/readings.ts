// Readings of a probe, added to its series.
import type { Parsed, Reply } from '../../../core/contract';
import type { Hold } from '../../../core/ledger/records';
import { storedMoment } from '../../../core/ledger/moments';
import type { FactHost } from '../facts/host';
import { nameOf } from '../facts/subject';
import { blockOf, readingsIn } from '../projection/readings';
import { Refused } from '../refusal';
import { tidy } from './tidy';

type Reading = Hold['readings'][number];

/**
 * Adds readings to a series; those that are there already are left, so that the same export can be brought in again.
 * @throws Refused 'not found', 'reading differs', 'nothing changed'
 */
export function addReadings(host: FactHost, input: Parsed<'readings.add'>): Reply<'readings.add'> {
  const { facts } = host;
  const key = facts.keyOf('series', input.series);
  const { block, hold } = facts.get('series', key);
  const there = readingsIn(facts, block);
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
