// What of a jar can be told without its records, for whoever is handed it.
import { earliestDay } from '../../core/lineage/lineage-shapes';
import type { AboutJar } from '../../core/shapes/hand-over-calls';
import { stands } from '../../core/shapes/caution-codes';
import { addDays } from '../../core/quantities/typed-days';
import { gateAmongMates } from '../../core/safety/answer';
import type { KnownJar } from '../ledger/family-index';
import type { Ledger } from '../ledger/ledger';
import { verdictOf } from '../ledger/reads/read-judgement';
import { within } from '../ledger/reads/read-views';

/** Generations before a jar whose additions may be in it still; those of older ones are told as traces. */
const NEAR = 3;
/** A given jar is eaten within so many days, one that was never opened within so many of its making, and seeds within so many
    from the fridge (common practice, no source; none a promise). */
const EAT_DAYS = 7;
const UNOPENED_DAYS = 14;
const SEED_DAYS = 14;
const MOST = 100;

const earlier = (one: string, other: string): string => (one < other ? one : other);

/**
 * The last day on which a jar that nobody opened is eaten, of a range of days counted from the first: it may be as old as
 * that. Null where nothing of its day is known.
 */
export function unopenedUntil(jar: KnownJar): string | null {
  const made = earliestDay(jar);
  return made && addDays(made, UNOPENED_DAYS);
}

/** Jars by how many seedings at least lie between them and this one. */
function stepsBack({ index }: Ledger, jar: number): Map<number, number> {
  const steps = new Map([[jar, 0]]);
  for (const [key, far] of steps)
    for (const { fromJar } of index.family.seedsOf(key))
      if (fromJar !== null && index.family.has(fromJar) && !steps.has(fromJar)) steps.set(fromJar, far + 1);
  return steps;
}

/** Allergens by what was stirred in or poured, as the keeper noted them; milk itself is one. */
function allergensOf(
  { rows }: Ledger,
  steps: ReadonlyMap<number, number>,
): { near: Set<string>; far: Set<string> } {
  const carried = new Map<string, string[]>();
  for (const { name, allergen } of rows.all('carries'))
    carried.set(name.toLowerCase(), [...(carried.get(name.toLowerCase()) ?? []), allergen]);
  const near = new Set(['milk']);
  const far = new Set<string>();
  const names = rows.prepare(
    'SELECT name FROM addition WHERE jar = ? UNION SELECT name FROM milk WHERE jar = ? AND name IS NOT NULL',
  );
  for (const [key, back] of steps)
    for (const name of names.pluck().all(key, key) as string[])
      for (const allergen of carried.get(name.toLowerCase()) ?? []) (back <= NEAR ? near : far).add(allergen);
  for (const allergen of near) far.delete(allergen);
  return { near, far };
}

function cautionsOf(ledger: Ledger, jar: KnownJar): AboutJar['cautions'] {
  const { index, rows } = ledger;
  const liftedOn = rows.prepare(
    `SELECT date(a.at + a.at_off * 60, 'unixepoch') FROM lift l JOIN record r ON r.key = l.key JOIN act a ON a.key = r.made_in
      WHERE l.jar = ? AND l.of_jar = ? ORDER BY l.key DESC`,
  );
  return index.family.cautionsOf(jar.key).map((caution) => {
    const lifted = caution.cleared !== null;
    const day = lifted ? (liftedOn.pluck().get(jar.key, caution.of) as string | undefined) : undefined;
    const { uid, label } = index.jar(caution.of);
    const { level, relation, steps, ended } = caution;
    return {
      of: uid,
      label,
      level,
      relation,
      steps,
      lifted: lifted && !stands(caution),
      liftedOn: day ?? null,
      ended,
    };
  });
}

/** @returns all but what remarks further up are unread */
export function aboutJar(ledger: Ledger, jar: KnownJar): Omit<AboutJar, 'unreadBefore'> {
  const { index, rows } = ledger;
  const { family } = index;
  const steps = stepsBack(ledger, jar.key);
  const { near, far } = allergensOf(ledger, steps);
  const milk = rows.where('milk', 'jar', jar.key).flatMap(({ name }) => name ?? []);
  const additions = rows.where('addition', 'jar', jar.key);
  const seeds = family
    .seedsOf(jar.key)
    .flatMap(({ fromJar }) => (fromJar !== null && family.has(fromJar) ? [fromJar] : []));
  // Of a range of days the first: it may be as old as that.
  const made = earliestDay(jar);
  const moved = rows.where('movement', 'jar', jar.key).filter(({ kind }) => STORED.has(kind));
  const line = family.linesOf(jar.key).at(-1);
  return {
    label: jar.label,
    verdict: line === undefined ? null : verdictOf(ledger, line),
    madeOn: jar.madeOn,
    madeBetween: jar.madeBetween,
    generation: family.generationOf(jar.key),
    doublings: family.doublingsOf(jar.key),
    tracedShares: family.tracedSharesOf(jar.key).map(({ source, share }) => ({
      source: source === null ? 'a past that is not known' : rows.get('source', source).name,
      share: within(share),
    })),
    milk: milk.slice(0, MOST),
    rawMilk: milk.length === 0 ? null : family.jar(jar.key).rawMilk === true,
    additions: additions.slice(0, MOST).map(({ name, actual }) => ({
      name,
      amount: actual && { value: actual.value, unit: actual.unit },
    })),
    allergens: [...near].toSorted(),
    traces: [...far].toSorted(),
    gate: {
      jar: gateAmongMates(family, jar.key),
      seeds: seeds
        .slice(0, MOST)
        .map((key) => ({ label: index.jar(key).label, gate: gateAmongMates(family, key) })),
    },
    cautions: cautionsOf(ledger, jar),
    storage: moved.slice(0, MOST).map(({ kind, day, at }) => ({
      what: kind as AboutJar['storage'][number]['what'],
      on: day ?? at?.slice(0, 10) ?? null,
    })),
    eatBy: made && earlier(addDays(ledger.clock.today(), EAT_DAYS), addDays(made, UNOPENED_DAYS)),
    seedBy: made && addDays(made, SEED_DAYS),
  };
}

const STORED: ReadonlySet<string> = new Set(['fridge', 'freezer', 'thawed', 'opened']);
