// What became of jars and parts kept apart, as what is left of each follows from it (core/ledger/jar-left.ts).
import { type Event, type Held, type Left, whatIsLeft } from '../../../core/ledger/jar-left';
import type { Rows } from '../facts/fact-rows';

export type KeptKind = 'jar' | 'portion';

/** All that became of a jar or a portion, in the order of entry. */
function eventsOf(facts: Rows, kind: KeptKind, key: number): Event[] {
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
function* seedsFrom(facts: Rows, kind: KeptKind, key: number): Generator<{ key: number; event: Event }> {
  for (const row of facts.where('seeding', kind === 'jar' ? 'from_jar' : 'portion', key)) {
    if (kind === 'jar' && row.portion !== null) continue;
    const jar = facts.get('jar', row.jar);
    if (jar.state !== 'made') continue;
    const { madeOn } = facts.get('batch', jar.batch);
    const amount = row.either === null ? row.actual : null;
    yield { key: row.key, event: { what: 'seed', when: madeOn, amount, pieces: null } };
  }
}

/** What a jar or a portion held, and all that became of it, in the order of entry. */
export function storyOf(
  facts: Rows,
  kind: KeptKind,
  key: number,
): { readonly held: Held; readonly events: Event[] } {
  const jar = kind === 'jar' ? facts.get('jar', key) : null;
  const portion = kind === 'portion' ? facts.get('portion', key) : null;
  const held = {
    amount: jar?.finalVolume ?? portion?.amount ?? null,
    pieces: portion?.pieces ?? null,
    place: portion?.place ?? null,
  };
  return { held, events: eventsOf(facts, kind, key) };
}

/** What is left of a jar or a portion, and where it stands. */
export function leftIn(facts: Rows, kind: KeptKind, key: number): Left {
  const { held, events } = storyOf(facts, kind, key);
  return whatIsLeft(held, events);
}

// Only of these can nothing be left: something was said to have ended it, or all that left it is as much as it held, in
// whatever units. A restriction goes where AMONG stands.
const JARS = `SELECT jar FROM movement WHERE AMONG(jar) kind IN ('gone', 'given', 'discarded') AND jar IS NOT NULL
  UNION SELECT j.key FROM (
    SELECT jar, amount_v AS taken FROM movement WHERE AMONG(jar) jar IS NOT NULL AND amount_v IS NOT NULL
    UNION ALL SELECT jar, amount_v FROM portion WHERE AMONG(jar) amount_v IS NOT NULL AND of_portion IS NULL
    UNION ALL SELECT from_jar, actual_v FROM seeding WHERE AMONG(from_jar) from_jar IS NOT NULL AND actual_v IS NOT NULL AND portion IS NULL
  ) t CROSS JOIN jar j ON j.key = t.jar GROUP BY j.key HAVING sum(t.taken) >= j.final_volume_v`;

/** Keys of jars of which nothing is left, of all or among those given. */
export function emptyJars(facts: Rows, among: readonly number[] | null): ReadonlySet<number> {
  const sql = JARS.replaceAll(/AMONG\((\w+)\)/g, (_, column: string) =>
    among ? `${column} IN (SELECT value FROM json_each(@keys)) AND` : '',
  );
  const found = facts.prepare(sql).pluck();
  const keys = (among ? found.all({ keys: JSON.stringify(among) }) : found.all()) as number[];
  return new Set(keys.filter((key) => leftIn(facts, 'jar', key).none));
}

/** Keys of parts kept apart of which nothing is left, whatever took it: seedings alone, too. */
export function emptyPortions(facts: Rows): ReadonlySet<number> {
  const sql = `SELECT portion FROM movement
     WHERE portion IS NOT NULL AND kind IN ('eaten', 'given', 'discarded', 'gone')
    UNION SELECT portion FROM seeding WHERE portion IS NOT NULL
    UNION SELECT of_portion FROM portion WHERE of_portion IS NOT NULL`;
  const keys = facts.prepare(sql).pluck().all() as number[];
  return new Set(keys.filter((key) => leftIn(facts, 'portion', key).none));
}
