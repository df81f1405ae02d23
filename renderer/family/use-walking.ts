// Walking the drawing by keyboard: which jar has the focus, where a key leads, and that the window follows.
import { type FocusEvent, type KeyboardEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { familyControl } from './family-actions';
import type { Geometry } from './geometry';
import { type Kin, type Step, walk } from './kin';
import type { Moving } from './use-view';

export const STEPS: Readonly<Record<string, Step>> = {
  ArrowLeft: 'seed',
  ArrowRight: 'descendant',
  ArrowUp: 'above',
  ArrowDown: 'below',
  Home: 'first',
  End: 'newest',
};
/** Index of the jar that an element belongs to. */
export const indexAt = (where: EventTarget): number | null => {
  const jar = where instanceof Element ? where.closest<SVGGElement>('[data-index]') : null;
  return jar ? Number(jar.dataset.index) : null;
};

interface Wanted {
  readonly drawing: Drawing;
  readonly kin: Kin;
  readonly newest: number;
  readonly geometry: Geometry;
  readonly moving: Moving;
  readonly onSelect: (index: number) => void;
  readonly target: { readonly index: number; readonly count: number } | null;
}

export interface Walking {
  /** Index of the one jar that Tab reaches. */
  readonly focus: number;
  /** Whether the keyboard is on it now, seen by its ring. */
  readonly held: boolean;
  readonly focusOn: (index: number) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onFocus: (event: FocusEvent) => void;
  readonly onBlur: () => void;
}

/** The focus moves first, then the window follows, then the element that now exists is focused. */
export function useWalking(wanted: Wanted): Walking {
  const { drawing, kin, newest, geometry, moving, onSelect, target } = wanted;
  const [focused, setFocused] = useState(newest);
  const [held, setHeld] = useState(false);
  const focus = focused < drawing.keys.length ? focused : newest;

  const reveal = useCallback(
    (index: number, how: 'in sight' | 'in the middle' = 'in sight') =>
      moving.show(
        (drawing.x[index] ?? 0) * geometry.columnStep,
        (drawing.y[index] ?? 0) * geometry.rowStep,
        how,
      ),
    [moving, drawing, geometry],
  );
  const awaited = useRef<number | null>(null);
  const focusAwaited = useCallback(() => {
    if (awaited.current === null) return;
    const element = document.getElementById(`jar-${drawing.keys[awaited.current] ?? 0}`);
    if (element) {
      awaited.current = null;
      element.focus({ preventScroll: true });
    }
  }, [drawing]);
  const focusOn = useCallback(
    (index: number) => {
      awaited.current = index;
      setFocused(index);
      // The jar that has the focus already is not drawn anew.
      focusAwaited();
    },
    [focusAwaited],
  );
  useEffect(focusAwaited);

  const targeted = useRef(0);
  useEffect(() => {
    if (target === null || targeted.current === target.count) return;
    targeted.current = target.count;
    focusOn(target.index);
    reveal(target.index, 'in the middle');
  }, [target, focusOn, reveal]);

  const step = useCallback(
    (to: Step): void => {
      const next = walk(kin, drawing.generation, drawing.y, focus, to, newest);
      focusOn(next);
      reveal(next);
    },
    [kin, drawing, focus, newest, focusOn, reveal],
  );
  useEffect(() => {
    familyControl.step = step;
    familyControl.open = () => {
      focusOn(focus);
      reveal(focus);
      onSelect(focus);
    };
    return () => {
      familyControl.step = () => undefined;
      familyControl.open = () => undefined;
    };
  }, [step, focus, focusOn, reveal, onSelect]);

  return {
    focus,
    held,
    focusOn,
    onKeyDown: (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const way = STEPS[event.key];
      if (way !== undefined && !event.shiftKey) {
        event.preventDefault();
        step(way);
      } else if (event.key === 'Enter' || event.key === ' ') {
        event.preventDefault();
        onSelect(focus);
      }
    },
    onFocus: (event) => {
      setHeld(event.target.matches(':focus-visible'));
      const index = indexAt(event.target);
      if (index !== null) setFocused(index);
    },
    onBlur: () => setHeld(false),
  };
}
