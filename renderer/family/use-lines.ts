// What is known of the lines in sight: what each is called, and the verdict on it with its seed. Asked for after the
// jars themselves, one line after the other, and only of lines that are looked at.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import type { VerdictWord } from '../../core/shapes/advice-replies';
import { call } from '../state/ledger-calls';
import { say, useRevision } from '../state/store';
import { namedIn, saidAfter, verdictParts } from '../parts/verdict-parts';
import type { NamedJar } from '../parts/linked-parts';
import type { AdvisedSeed } from '../parts/verdict-act';

export interface LineNow {
  readonly id: string;
  readonly standing: string;
  readonly verdict: VerdictWord;
  /** Nothing of it that is kept may be used. */
  readonly nothingLeft: boolean;
  /** The verdict, word for word: what to do, and then the reason. */
  readonly sentence: string;
  readonly reason: string;
  /** What is advised as seed: a jar, or what is kept of it; without a jar a fresh start. null: nothing is. */
  readonly seed: {
    readonly label: string;
    readonly from: {
      readonly jar: string;
      /** What is kept of it, where that is meant. */
      readonly portion: string | null;
      readonly generation: number;
      readonly key: number;
    } | null;
  } | null;
  /** The same as the ledger names it, for the button that does it. */
  readonly advised: AdvisedSeed | null;
  /** What is said after the reason: what to do with nothing at home, what stands against the newest jar. */
  readonly also: string | null;
  /** The jar whose caution they tell of, where a reason can lift it. */
  readonly lift: NamedJar | null;
  /** Jars that the sentences may name. */
  readonly named: readonly NamedJar[];
}

export const MOST_AT_ONCE = 6;

async function seedOf({ seed }: Reply<'advice.line'>): Promise<LineNow['seed']> {
  if (seed === null) return null;
  if (seed.jar === null) return { label: seed.label, from: null };
  const jar = await call('jar.get', { id: seed.jar });
  if (!jar.ok) return null;
  const { generation, key } = jar.value.view;
  return {
    label: seed.label,
    from: { jar: seed.jar, portion: seed.portion, generation: generation.deepest, key },
  };
}

async function read(line: string): Promise<LineNow | string> {
  const [judged, advice] = [await call('judgement.line', { line }), await call('advice.line', { line })];
  if (!judged.ok) return judged.sentence;
  if (!advice.ok) return advice.sentence;
  return {
    id: line,
    standing: judged.value.standing,
    verdict: advice.value.verdict,
    nothingLeft: advice.value.reason.code === 'nothing may be used',
    ...verdictParts(advice.value),
    seed: await seedOf(advice.value),
    advised: advice.value.seed,
    also: saidAfter(advice.value),
    lift: advice.value.lift,
    named: namedIn(advice.value),
  };
}

/** By line id, as far as they are here yet. @param ids of lines, those to be known first in front */
export function useLines(ids: readonly string[]): ReadonlyMap<string, LineNow> {
  const revision = useRevision();
  const [held, hold] = useState<{ revision: number; lines: ReadonlyMap<string, LineNow> }>({
    revision: -1,
    lines: new Map(),
  });
  const wanted = ids.slice(0, MOST_AT_ONCE).join(' ');
  useEffect(() => {
    let current = true;
    void (async () => {
      for (const id of wanted.split(' ').filter(Boolean)) {
        // An answer for this revision is not asked for again; one of an earlier revision stands until the new one is here.
        if (held.revision === revision && held.lines.has(id)) continue;
        const line = await read(id);
        if (!current) return;
        if (typeof line === 'string') {
          say(line, 'caution');
          return;
        }
        hold((before) => ({ revision, lines: new Map(before.lines).set(id, line) }));
      }
    })();
    return () => {
      current = false;
    };
    // `held` is what this effect fills: reading it again after each answer would ask in circles.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [wanted, revision]);
  return held.lines;
}
