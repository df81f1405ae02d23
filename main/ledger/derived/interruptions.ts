// Warmth that failed is told of a hold. It is a jar's where the jar stood in that hold when it failed.
import { interruptionOf, type HoldInterruption } from '../../../core/ledger/hold-interruptions';
import type { Rows } from '../facts/fact-rows';

interface Told {
  jar: number;
  what: 'power' | 'heater' | 'lid' | 'other';
  began: number | null;
  ended: number | null;
  hours: number | null;
  came: number | null;
  went: number | null;
}

// Few holds are ever interrupted, so all are asked from there: each by its key, its stays by index.
const OF_ALL = `SELECT s.jar, i.what, i.began, i.ended, i.hours, coalesce(s.came, h.began) AS came, coalesce(s.went, h.ended) AS went
  FROM interruption i CROSS JOIN hold h ON h.key = i.hold CROSS JOIN stay s ON s.hold = i.hold ORDER BY i.key, s.key`;

/** What interrupted the warmth of each jar, by its key; none of a jar whose warmth was not. */
export function interruptions(facts: Rows): ReadonlyMap<number, HoldInterruption> {
  const byJar = new Map<number, Told[]>();
  for (const one of facts.prepare(OF_ALL).all() as Told[])
    byJar.set(one.jar, [...(byJar.get(one.jar) ?? []), one]);
  return new Map(
    Array.from(byJar).flatMap(([jar, told]) => {
      const found = interruptionOf(told.map(({ came, went, ...one }) => ({ ...one, from: came, to: went })));
      return found === null ? [] : [[jar, found] as const];
    }),
  );
}
