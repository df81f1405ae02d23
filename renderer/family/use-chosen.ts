// The jar in the pane: chosen in the drawing, found by name, or named by another screen.
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { go, say, usePlace } from '../state/store';
import type { Placed } from './lanes';

/** A jar to go to, by index; counts up so that the same jar can be asked for twice. */
export type Target = { readonly index: number; readonly count: number } | null;

interface Choosing {
  readonly drawing: Placed;
  /** All jars, those of folded lanes too. */
  readonly laid: Drawing;
  readonly asTable: boolean;
  readonly turn: (lane: number | null) => void;
}

/** Shows a jar that another screen sent the keeper here to see. */
function useSentHere(goTo: (key: number) => void): void {
  const place = usePlace();
  useEffect(() => {
    if (place.screen !== 'family' || place.focus?.startsWith('jar:') !== true) return;
    void call('jar.get', { id: place.focus.slice('jar:'.length) }).then((answer) => {
      go('family');
      if (answer.ok) goTo(answer.value.view.key);
      else say(answer.sentence, 'caution');
    });
  }, [place, goTo]);
}

export function useChosen({ drawing, laid, asTable, turn }: Choosing) {
  const [selectedKey, setSelectedKey] = useState<number | null>(null);
  const [wanted, setWanted] = useState<{ key: number; count: number } | null>(null);
  const indexOf = useMemo(() => new Map(Array.from(drawing.keys, (key, index) => [key, index])), [drawing]);
  const goTo = useCallback(
    (key: number) => {
      turn(laid.lane[laid.keys.indexOf(key)] ?? null);
      setSelectedKey(key);
      setWanted((before) => ({ key, count: (before?.count ?? 0) + 1 }));
    },
    [laid, turn],
  );
  const goToId = useCallback(
    async (id: string) => {
      const answer = await call('jar.get', { id });
      if (answer.ok) goTo(answer.value.view.key);
      else say(answer.sentence, 'caution');
    },
    [goTo],
  );
  useSentHere(goTo);
  const select = useCallback(
    (index: number) => {
      setSelectedKey(drawing.keys[index] ?? null);
      turn(drawing.lane[index] ?? null);
    },
    [drawing, turn],
  );
  const close = useCallback(() => {
    setSelectedKey(null);
    // The keyboard goes back to the jar that the pane was about.
    const back = document.querySelector<SVGElement | HTMLElement>(
      asTable ? `#row-${selectedKey}` : `#jar-${selectedKey}`,
    );
    back?.focus({ preventScroll: true });
  }, [asTable, selectedKey]);
  const target = useMemo((): Target => {
    const index = wanted === null ? undefined : indexOf.get(wanted.key);
    return wanted === null || index === undefined ? null : { index, count: wanted.count };
  }, [wanted, indexOf]);
  const flagsByKey = useCallback(
    (key: number): number => drawing.flags[indexOf.get(key) ?? -1] ?? 0,
    [drawing, indexOf],
  );
  const looksByKey = (key: number): { setWord: number; flags: number } => ({
    setWord: drawing.setWord[indexOf.get(key) ?? -1] ?? 255,
    flags: flagsByKey(key),
  });
  const selected = selectedKey === null ? null : (indexOf.get(selectedKey) ?? null);
  return { selectedKey, selected, target, goTo, goToId, select, close, flagsByKey, looksByKey };
}
