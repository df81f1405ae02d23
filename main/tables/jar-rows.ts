// The jars of a ledger as core/tables/jar-table.ts writes them, the oldest first.
import type { TableJar, TableSeed } from '../../core/tables/jar-table';
import { dayNamed } from '../../core/lineage/labels';
import { remarksAbout } from '../ledger/derived/unread';
import { holdEntry } from '../ledger/entries/hold-entry';
import { jarEntry } from '../ledger/entries/jar-entry';
import { additionEntries, seedingEntries } from '../ledger/entries/kept-entries';
import { outcomeOf } from '../ledger/entries/outcome-of-jar';
import type { Ledger } from '../ledger/ledger';

/** Jars that a row can tell of: made, on a day that is known, or between two that are. */
export function tellable({ index }: Ledger): number[] {
  const named = index.family.keys.flatMap((key) => {
    const day = dayNamed(index.jar(key));
    return day === null ? [] : [{ key, day }];
  });
  return named
    .toSorted((a, b) => (a.day < b.day ? -1 : a.day === b.day ? a.key - b.key : 1))
    .map(({ key }) => key);
}

function seedsOf({ rows, index }: Ledger, jar: number): TableSeed[] {
  return seedingEntries(rows, jar).flatMap(({ fromJar, source, part, amount }): TableSeed[] => {
    if (source !== null) {
      const { name, form, knownGenerations } = rows.get('source', source);
      return [
        {
          part,
          amount,
          ...(form === 'culture' ? { culture: name, generations: knownGenerations } : { product: name }),
        },
      ];
    }
    if (fromJar === null) return [];
    const seed = index.jar(fromJar);
    return [
      dayNamed(seed) === null
        ? { part, amount, culture: `unknown jar ${seed.letter}`, generations: null }
        : { part, amount, jar: seed },
    ];
  });
}

/** One jar, with all that its row tells. */
export function tableJar(ledger: Ledger, key: number): TableJar {
  const { rows, index } = ledger;
  const { madeOn, about = null, madeBetween = null, word, letter } = index.jar(key);
  const jar = jarEntry(rows, key);
  const remarks = remarksAbout(rows, [key], false).get(key) ?? [];
  return {
    madeOn, about, madeBetween, word, letter, jar,
    additions: additionEntries(rows, key),
    seeds: seedsOf(ledger, key),
    hold: jar.hold === null ? null : holdEntry(rows, jar.hold),
    outcome: outcomeOf(rows, key),
    remarks: remarks.map(({ text }) => text),
    readAsDiscard: remarks.some(({ readAs }) => readAs === 'discard'),
  }; // prettier-ignore
}

/** Seedings of the jar that has most. */
export const mostSeeds = ({ rows }: Ledger): number =>
  rows.count('SELECT max(n) FROM (SELECT count(*) AS n FROM seeding GROUP BY jar)');
