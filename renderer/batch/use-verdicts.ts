// The verdicts that a new batch may follow: of the lines of the seed that is picked, or, while none is, of the lines there
// are; the living ones first, the newest first. Each with its seed, ready to be taken.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { useAppState, useRevision } from '../state/store';
import { JUDGED_UNASKED } from '../../core/vigour/judged-unasked';
import { seedOf } from './begin';
import type { SeedText } from './batch-text';
import type { SeedSuggestion } from './find-seed';

export interface LineVerdict {
  readonly line: { readonly id: string; readonly name: string };
  readonly verdict: Reply<'advice.line'>;
  /** Null where none is advised, or a fresh start. */
  readonly seed: SeedText | null;
  /** Something of it may be used. */
  readonly lives: boolean;
}

/** Of more lines than these only the newest are asked about. */
const MOST_ASKED = 12;

async function verdictOn(line: LineVerdict['line']): Promise<LineVerdict | null> {
  const answer = await call('advice.line', { line: line.id });
  if (!answer.ok) return null;
  const { seed, reason } = answer.value;
  const jar = seed?.jar ? await call('jar.get', { id: seed.jar }) : null;
  return {
    line,
    verdict: answer.value,
    seed: jar?.ok ? seedOf(jar.value, seed?.portion ?? null) : null,
    lives: reason.code !== 'nothing may be used',
  };
}

/** @param picked the jar that is picked as seed, null for none, undefined where a product is: then nothing is asked */
export function useVerdicts(picked: string | null | undefined): readonly LineVerdict[] {
  const revision = useRevision();
  const jars = useAppState()?.ledger?.jars ?? 0;
  const [held, hold] = useState<{ readonly of: string; readonly verdicts: readonly LineVerdict[] } | null>(null);
  const asked = picked !== undefined && jars > 0 && jars <= JUDGED_UNASKED;
  const of = `${revision} ${picked ?? ''}`;
  useEffect(() => {
    if (!asked) return undefined;
    let current = true;
    void (async () => {
      const answer = await call('line.list', { jar: picked });
      if (!answer.ok) return;
      const lines = answer.value.lines.filter(({ newestBatch }) => newestBatch !== null).toReversed();
      const verdicts = (await Promise.all(lines.slice(0, MOST_ASKED).map(verdictOn))).filter((one) => one !== null);
      if (current) hold({ of, verdicts: verdicts.toSorted((a, b) => Number(b.lives) - Number(a.lives)) });
    })();
    return () => {
      current = false;
    };
  }, [asked, of, picked]);
  return asked && held !== null ? held.verdicts : [];
} // prettier-ignore

/** The advised seeds as the picker's list offers them: the verdict word for word beside each. */
export const advisedSuggestions = (verdicts: readonly LineVerdict[]): SeedSuggestion[] =>
  verdicts.flatMap(({ line, verdict, seed }) => {
    const picked = seed?.picked;
    if (picked?.kind !== 'jar') return [];
    return [
      {
        kind: 'jar',
        id: picked.id,
        label: picked.label,
        detail: `${line.name}: ${verdict.sentence}`,
        ...(seed && seed.portion !== ''
          ? { portion: { id: seed.portion, part: seed.part === '' ? null : seed.part, pieces: picked.pieces === true } }
          : {}),
      },
    ];
  }); // prettier-ignore

/**
 * Puts the verdict beside what it advises in a list of suggestions. While nothing is typed the advised ones stand first,
 * also those that the list would not have shown.
 */
export function withVerdicts(
  found: readonly SeedSuggestion[],
  advised: readonly SeedSuggestion[],
  typed: string,
): readonly SeedSuggestion[] {
  const same = (a: SeedSuggestion, b: SeedSuggestion): boolean =>
    a.id === b.id && a.portion?.id === b.portion?.id;
  const told = (one: SeedSuggestion): SeedSuggestion => {
    const detail = advised.find((other) => same(one, other))?.detail;
    return detail === undefined || one.refused !== undefined ? one : { ...one, detail };
  };
  if (typed.trim() !== '') return found.map(told);
  const first = advised.map((one) => found.find((other) => same(one, other)) ?? one).map(told);
  return [...first, ...found.filter((one) => !advised.some((other) => same(one, other)))];
}
