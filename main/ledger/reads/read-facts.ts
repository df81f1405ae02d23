// Facts of one kind, and what is left of a jar.
import type { Parsed, Reply } from '../../../core/contract';
import { type FactKind, fieldsOf } from '../../../core/ledger/facts/all-facts';
import { type Columns, fromColumns, snake, tableOf } from '../facts/tables';
import { toldFact } from '../facts/told';
import { leftIn } from '../entries/left-of-rows';
import { allReadingsIn } from '../entries/series-of-hold';
import { Refused } from '../../refusal';
import type { FactHost } from '../facts/fact-host';

/** Facts of a kind in the order of entry, all or those that point at one record. @throws Refused 'not found' */
export function listFacts({ facts }: FactHost, input: Parsed<'facts.list'>): Reply<'facts.list'> {
  const { kind, of, after, limit } = input;
  const from = after === null ? 0 : facts.keyOf(kind, after);
  const about = of === null ? null : facts.recordOf(of);
  if (of !== null && (!about || about.gone)) throw new Refused('not found', { kind: 'record' });
  const columns = about ? columnsTo(kind, about.kind) : [];
  if (about && columns.length === 0) return { facts: [], more: false };
  const where = about ? `AND (${columns.map((column) => `t.${column} = ?`).join(' OR ')})` : '';
  const rows = facts
    .prepare(
      `SELECT t.*, r.uid FROM ${tableOf(kind)} t CROSS JOIN record r ON r.key = t.key
        WHERE t.key > ? ${where} ORDER BY t.key LIMIT ?`,
    )
    .all(from, ...columns.map(() => about?.key), limit + 1) as Columns[];
  const told = rows.slice(0, limit).map((row) => toldFact(facts, kind, fromColumns(kind, row)));
  return { facts: told as unknown as Reply<'facts.list'>['facts'], more: rows.length > limit };
}

const columnsTo = (kind: FactKind, to: FactKind): string[] =>
  Object.entries(fieldsOf(kind)).flatMap(([name, { as }]) =>
    as === to || as === 'record' ? [snake(name)] : [],
  );

/**
 * What is left of a jar or a portion, and where it stands.
 * @throws Refused 'not found'
 */
export function leftOf({ facts }: FactHost, { id }: Parsed<'jar.left'>): Reply<'jar.left'> {
  const found = facts.recordOf(id);
  if (!found || found.gone || (found.kind !== 'jar' && found.kind !== 'portion'))
    throw new Refused('not found', { kind: 'jar' });
  const { kind, key } = found;
  const { endedOn: _endedOn, placedOn: _placedOn, ...left } = leftIn(facts, kind, key);
  const warm = kind === 'jar' && left.place === 'not said' && !left.none && isInWarmth(facts, key);
  return { ...left, place: warm ? 'warmth' : left.place };
}

/** Whether a jar came into a hold and was not said to have been taken out. */
function isInWarmth(facts: FactHost['facts'], jar: number): boolean {
  return facts.where('stay', 'jar', jar).some(({ came, went, hold }) => {
    if (went !== null) return false;
    const { began, ended, hours } = facts.get('hold', hold);
    return (came ?? began) !== null && ended === null && hours === null;
  });
}

/** All readings of a series, in the order in which they were added. @throws Refused 'not found' */
export function listReadings({ facts }: FactHost, input: Parsed<'readings.list'>): Reply<'readings.list'> {
  const { block } = facts.get('series', facts.keyOf('series', input.series));
  return {
    readings: allReadingsIn(facts, block).map(({ at, temperature, leftOut }) => ({
      at,
      c: temperature.value,
      leftOut,
    })),
  };
}
