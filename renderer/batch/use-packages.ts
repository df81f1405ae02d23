// Packages as choices of a field, by what they are of.
import { useMemo } from 'react';
import type { Package } from '../../core/ledger/records';
import { useRead } from '../state/use-read';
import type { Choice } from '../parts/fields';
import { useReader } from '../parts/use-reader';

export interface Packages {
  readonly ofSource: (source: string) => readonly Choice<string>[];
  readonly milk: readonly Choice<string>[];
  readonly ofAddition: (name: string) => readonly Choice<string>[];
}

/**
 * All packages of the ledger, the last recorded first: that is the one being used. A list is empty where there is
 * nothing to choose, so that no field is shown.
 */
export function usePackages(): Packages {
  const answer = useRead('package.list', {});
  const { writer } = useReader();
  const packages = answer?.ok ? answer.value.packages : undefined;
  return useMemo(() => {
    const choices = (fits: (one: Package) => boolean): readonly Choice<string>[] => {
      const found = (packages ?? []).filter(fits).toReversed();
      return found.length === 0
        ? []
        : [
            { value: '', label: 'Not noted' },
            ...found.map((one) => ({
              value: one.id,
              label: one.openedOn ? `${one.name}, opened ${writer.day(one.openedOn)}` : one.name,
            })),
          ];
    };
    return {
      ofSource: (source) => choices((one) => one.of === 'source' && one.source === source),
      milk: choices((one) => one.of === 'milk'),
      ofAddition: (name) =>
        choices((one) => one.of === 'addition' && one.name.toLowerCase() === name.trim().toLowerCase()),
    };
  }, [packages, writer]);
}
