// The jars of a ledger as core/tables/jar-table.ts writes them, the oldest first.
import type { TableJar, TableSeed } from '../../core/tables/jar-table';
import { remarksAbout } from '../ledger/derived/unread';
import { holdEntry } from '../ledger/entries/hold-entry';
import { jarEntry } from '../ledger/entries/jar-entry';
import { additionEntries, seedingEntries } from '../ledger/entries/kept-entries';
import { outcomeOf } from '../ledger/entries/outcome-of-jar';
import type { Ledger } from '../ledger/ledger';

/** Jars that a row can tell of: made, on a day that is known. */
export function tellable({ index }: Ledger): number[] {
  const jars = index.family.keys.map((key) => index.jar(key)).filter(({ madeOn }) => madeOn !== null);
  return jars
    .toSorted((a, b) =>
      (a.madeOn ?? '') < (b.madeOn ?? '') ? -1 : a.madeOn === b.madeOn ? a.key - b.key : 1,
    )
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
      seed.madeOn === null
        ? { part, amount, culture: `unknown jar ${seed.letter}`, generations: null }
        : { part, amount, jar: seed },
    ];
  });
}

/** One jar, with all that its row tells. */
export function tableJar(ledger: Ledger, key: number): TableJar {
  const { rows, index } = ledger;
  const { madeOn, word, letter } = index.jar(key);
  const jar = jarEntry(rows, key);
  const remarks = remarksAbout(rows, [key], false).get(key) ?? [];
  return {
    madeOn: madeOn ?? '', word, letter, jar,
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
