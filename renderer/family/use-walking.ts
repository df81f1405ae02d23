// Walking the drawing by keyboard: which jar has the focus, where a key leads, and that the window follows.
import { type FocusEvent, type KeyboardEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { type Geometry, READABLE_ZOOM, type Size } from './geometry';
import { type Kin, type Step, walk } from './kin';
import { MOST_MOUNTED } from './mounting';
import type { Moving } from './use-view';

export const STEPS: Readonly<Record<string, Step>> = {
  ArrowLeft: 'seed',
  ArrowRight: 'descendant',
  ArrowUp: 'above',
  ArrowDown: 'below',
  Home: 'first',
  End: 'newest',
};
/** Coming from marks to one jar: close enough to read it and its neighbours. */
const READ_AT_ZOOM = 0.75;

/** Opening a family that doesn't fit: as much of it as can be read. */
const OPEN_AT_ZOOM = 0.42;

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
  readonly size: Size;
  readonly selected: number | null;
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
  const { drawing, kin, newest, geometry, moving, size, selected, onSelect, target } = wanted;
  const [focused, setFocused] = useState(newest);
  const [held, setHeld] = useState(false);
  const focus = focused < drawing.keys.length ? focused : newest;

  const reveal = useCallback(
    (index: number, closer = false) =>
      moving.show(
        (drawing.x[index] ?? 0) * geometry.columnStep,
        (drawing.y[index] ?? 0) * geometry.rowStep,
        closer && moving.settled.k < READABLE_ZOOM ? READ_AT_ZOOM : 0,
      ),
    [moving, drawing, geometry],
  );
  const awaited = useRef<number | null>(null);
  const focusOn = useCallback((index: number) => {
    awaited.current = index;
    setFocused(index);
  }, []);
  useEffect(() => {
    if (awaited.current === null) return;
    const element = document.getElementById(`jar-${drawing.keys[awaited.current] ?? 0}`);
    if (element) {
      awaited.current = null;
      element.focus({ preventScroll: true });
    }
  });

  // A small family in a window too small for all of it opens at its newest jar, close enough to be read.
  const opened = useRef(false);
  useEffect(() => {
    if (opened.current) return;
    opened.current = true;
    if (target === null && geometry.fit.k < READABLE_ZOOM && drawing.keys.length <= MOST_MOUNTED)
      moving.show(
        (drawing.x[newest] ?? 0) * geometry.columnStep,
        (drawing.y[newest] ?? 0) * geometry.rowStep,
        OPEN_AT_ZOOM,
      );
  }, [target, geometry, drawing, newest, moving]);

  const targeted = useRef(0);
  useEffect(() => {
    if (target === null || targeted.current === target.count) return;
    targeted.current = target.count;
    focusOn(target.index);
    reveal(target.index, true);
  }, [target, focusOn, reveal]);

  // The pane takes room when it opens: what was chosen stays in sight.
  const inSight = useRef({ selected, size });
  useEffect(() => {
    if (inSight.current.selected === selected && inSight.current.size === size) return;
    inSight.current = { selected, size };
    if (selected !== null) reveal(selected);
  }, [selected, size, reveal]);

  return {
    focus,
    held,
    focusOn,
    onKeyDown: (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const step = STEPS[event.key];
      if (step !== undefined && !event.shiftKey) {
        event.preventDefault();
        const next = walk(kin, drawing.generation, drawing.y, focus, step, newest);
        focusOn(next);
        reveal(next);
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
