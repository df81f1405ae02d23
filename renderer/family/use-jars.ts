// What is shown of mounted jars (label, seeds, additions), fetched for those alone and kept while the ledger stays as it is.
import { useEffect, useRef, useState } from 'react';
import type { JarView } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say, useRevision } from '../state/store';

const PAGE = 600;
const MOST_KEPT = 6000;

/** Views by jar key. Those asked for and not here yet are on their way. */
export function useJars(keys: readonly number[]): ReadonlyMap<number, JarView> {
  const revision = useRevision();
  const [views, setViews] = useState<ReadonlyMap<number, JarView>>(new Map());
  const kept = useRef({ revision, fresh: new Set<number>() });
  useEffect(() => {
    if (kept.current.revision !== revision) kept.current = { revision, fresh: new Set() };
    const { fresh } = kept.current;
    const missing = keys.filter((key) => !fresh.has(key));
    for (const key of missing) fresh.add(key);
    for (let at = 0; at < missing.length; at += PAGE) {
      const asked = missing.slice(at, at + PAGE);
      void call('family.jars', { keys: asked }).then((answer) => {
        if (kept.current.revision !== revision) return;
        if (!answer.ok) {
          for (const key of asked) fresh.delete(key);
          say(answer.sentence, 'caution');
          return;
        }
        setViews((before) => {
          const now = new Map(before.size > MOST_KEPT ? [] : before);
          if (before.size > MOST_KEPT) kept.current.fresh = new Set(asked);
          for (const jar of answer.value.jars) now.set(jar.key, jar);
          return now;
        });
      });
    }
  }, [keys, revision]);
  return views;
}
