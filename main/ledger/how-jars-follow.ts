// How fast jars follow a probe outside them: as the keeper says, else by a run of the appliance they stand in, else measured
// where one batch had a probe in bath and jar, else the usual range.
import { profileOf } from '../../core/growth/reading-profile';
import { type BathAndJar, timeConstantOf, type TimeConstant } from '../../core/growth/time-constant';
import { bathsAndJars } from '../../core/vigour/baths';
import { batchesReadTwice } from './derived/columns-of-jars';
import { holdEntry } from './entries/hold-entry';
import { readingsIn } from './entries/series-of-hold';
import type { Rows } from './facts/fact-rows';
import type { Ledger } from './ledger';

export interface Follows {
  /** In appliances that no run tells of. */
  readonly usual: TimeConstant;
  /** By the key of the appliance, where a run of it was read in its bath and in a jar. */
  readonly of: ReadonlyMap<number, TimeConstant>;
}

/** A bath and a jar of water or milk in it, where a run that proves an appliance read both. */
function readProofs(facts: Rows): (BathAndJar & { readonly appliance: number | null })[] {
  const runs = facts.prepare("SELECT key FROM hold WHERE purpose = 'proof' ORDER BY key").pluck().all() as number[]; // prettier-ignore
  return runs.flatMap((run) => {
    const series = facts.where('series', 'hold', run);
    const of = (place: 'bath' | 'jar'): BathAndJar['bath'] =>
      profileOf(
        readingsIn(facts, series.find((one) => one.place === place)?.block ?? null).map(
          ({ at, temperature }) => ({ hour: Date.parse(at) / 3_600_000, celsius: temperature.value }),
        ),
      ).profile;
    const [bath, jar] = [of('bath'), of('jar')];
    return bath.length > 1 && jar.length > 1 ? [{ bath, jar, appliance: facts.get('hold', run).appliance }] : []; // prettier-ignore
  });
}

/** How jars follow a probe outside them, in each appliance and elsewhere. */
export function howJarsFollow({ rows, preferences }: Pick<Ledger, 'rows' | 'preferences'>): Follows {
  const told = preferences.jarFollowsHours;
  const found = batchesReadTwice(rows).map((batch) =>
    bathsAndJars(rows.where('hold', 'batch', batch).map(({ key }) => holdEntry(rows, key))),
  );
  const proofs = readProofs(rows);
  const unclear = found.reduce((sum, one) => sum + one.unclear, 0);
  const usual = timeConstantOf(told, [...found.flatMap(({ pairs }) => pairs), ...proofs], unclear);
  const appliances = new Set(proofs.flatMap(({ appliance }) => appliance ?? []));
  const of = new Map(
    [...appliances].flatMap((key) => {
      const own = timeConstantOf(
        told,
        proofs.filter(({ appliance }) => appliance === key),
      );
      return own.from === 'measured' ? [[key, own] as const] : [];
    }),
  );
  return { usual, of };
}

/** The one that holds in an appliance. @param appliance its key; null: nobody said in which it stood */
export const followsIn = ({ usual, of }: Follows, appliance: number | null): TimeConstant =>
  (appliance === null ? undefined : of.get(appliance)) ?? usual;

/** The appliance that each jar stood in last, by the jar's key. @param jar of one jar alone */
export function appliancesOfJars(rows: Rows, jar: number | null): ReadonlyMap<number, number> {
  const one = jar === null ? '' : 'AND s.jar = ?';
  const found = rows
    .prepare(
      `SELECT s.jar, h.appliance FROM stay s JOIN hold h ON h.key = s.hold WHERE h.appliance IS NOT NULL ${one} ORDER BY s.key`,
    )
    .all(...(jar === null ? [] : [jar])) as { jar: number; appliance: number }[];
  return new Map(found.map((row) => [row.jar, row.appliance]));
}
