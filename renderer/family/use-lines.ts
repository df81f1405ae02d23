// What is known of the lines in sight: what each is called, and what is advised as its next seed. Asked for after the
// jars themselves, one line after the other, and only of lines that are looked at.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { call } from '../app/calls';
import { say, useRevision } from '../app/store';

export interface LineNow {
  readonly standing: string;
  /** What to do, and the one reason. */
  readonly sentence: string;
  readonly reason: string | null;
  /** The jar advised as seed, or what is kept of it; null: start afresh, or nothing may be used. */
  readonly seed: {
    readonly jar: string;
    readonly portion: string | null;
    readonly label: string;
    readonly generation: number;
    readonly key: number;
  } | null;
  /** Whether there is something to do at all. */
  readonly acts: boolean;
}

const MOST_AT_ONCE = 6;

type Next = Reply<'advice.next'>;

async function seedOf(next: Next): Promise<LineNow['seed']> {
  const [first] = next.ranking;
  if (first === undefined || !first.allowed || first.jar === null) return null;
  const jar = await call('jar.get', { id: first.jar });
  if (!jar.ok) return null;
  const { generation, key } = jar.value.view;
  return { jar: first.jar, portion: first.portion, label: first.label, generation: generation.deepest, key };
}

async function read(line: string): Promise<LineNow | string> {
  const [judged, next] = [await call('judgement.line', { line }), await call('advice.next', { line })];
  if (!judged.ok) return judged.sentence;
  if (!next.ok) return next.sentence;
  const { sentence, ranking, warnings, nothingMayBeUsed } = next.value;
  const first = ranking.find(({ allowed }) => allowed);
  return {
    standing: judged.value.standing,
    sentence,
    reason:
      first === undefined || first.jar === null
        ? (warnings[0] ?? null)
        : (first.looks[0] ?? first.doubts[0] ?? warnings[0] ?? first.reasons[0] ?? null),
    seed: await seedOf(next.value),
    acts: !nothingMayBeUsed || first !== undefined,
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
