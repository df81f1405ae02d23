// Facts of one kind, and what is left of a jar.
import type { Parsed, Reply } from '../../../core/contract';
import { type FactKind, fieldsOf } from '../../../core/ledger/facts';
import { type Event, whatIsLeft } from '../../../core/ledger/left';
import type { FactHost } from '../facts/host';
import { type Columns, fromColumns, snake, tableOf } from '../facts/tables';
import { toldFact } from '../facts/told';
import { readingsIn } from '../projection/readings';
import { Refused } from '../refusal';

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
  const jar = kind === 'jar' ? facts.get('jar', key) : null;
  const portion = kind === 'portion' ? facts.get('portion', key) : null;
  const held = {
    amount: jar?.finalVolume ?? portion?.amount ?? null,
    pieces: portion?.pieces ?? null,
    place: portion?.place ?? null,
  };
  const left = whatIsLeft(held, eventsOf(facts, kind, key));
  const warm = jar !== null && left.place === 'not said' && !left.none && isInWarmth(facts, key);
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

/** All that became of a jar or a portion, in the order of entry. */
function eventsOf(facts: FactHost['facts'], kind: 'jar' | 'portion', key: number): Event[] {
  const keyed: { key: number; event: Event }[] = [];
  for (const row of facts.where('movement', kind, key)) {
    const { kind: what, day, at, amount, pieces } = row;
    keyed.push({ key: row.key, event: { what, when: at ?? day, amount, pieces } });
  }
  for (const row of facts.where('portion', kind === 'jar' ? 'jar' : 'of_portion', key)) {
    // What was split off a portion has left the jar before.
    if (kind === 'jar' && row.ofPortion !== null) continue;
    keyed.push({
      key: row.key,
      event: { what: 'kept apart', when: row.keptOn, amount: row.amount, pieces: row.pieces },
    });
  }
  for (const seed of seedsFrom(facts, kind, key)) keyed.push(seed);
  return keyed.toSorted((a, b) => a.key - b.key).map(({ event }) => event);
}

/** Seedings taken from it. Planned jars took nothing; of one that may have been another, nobody knows how much it took. */
function* seedsFrom(
  facts: FactHost['facts'],
  kind: 'jar' | 'portion',
  key: number,
): Generator<{ key: number; event: Event }> {
  for (const row of facts.where('seeding', kind === 'jar' ? 'from_jar' : 'portion', key)) {
    if (kind === 'jar' && row.portion !== null) continue;
    const jar = facts.get('jar', row.jar);
    if (jar.state !== 'made') continue;
    const { madeOn } = facts.get('batch', jar.batch);
    const amount = row.either === null ? row.actual : null;
    yield { key: row.key, event: { what: 'seed', when: madeOn, amount, pieces: null } };
  }
}

/** All readings of a series, in the order in which they were added. @throws Refused 'not found' */
export function listReadings({ facts }: FactHost, input: Parsed<'readings.list'>): Reply<'readings.list'> {
  const { block } = facts.get('series', facts.keyOf('series', input.series));
  return { readings: readingsIn(facts, block).map(({ at, temperature }) => ({ at, c: temperature.value })) };
}
