// Panning and zooming: the live view lives outside React and moves one group; React hears only of the settled view.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { bringIn, type Geometry, keepInSight, READABLE_ZOOM, type Size, type View, zoomAt } from './geometry';

const SETTLE_MS = 130;

export interface Moving {
  readonly settled: View;
  /** Moves what is drawn to where the view is now: after something was drawn anew. */
  readonly repaint: () => void;
  readonly fit: () => void;
  readonly zoomBy: (factor: number) => void;
  readonly panBy: (dx: number, dy: number) => void;
  /** Brings a jar (drawing pixels) into the window, closer if it is too small to be read. */
  readonly show: (x: number, y: number, leastZoom?: number) => void;
}

/**
 * @param frame the element that takes pointer and wheel
 * @param paint moves what is drawn to a view; called at most once a frame
 */
export function useView(
  frame: RefObject<HTMLElement | null>,
  geometry: Geometry,
  size: Size,
  paint: (view: View) => void,
): Moving {
  const [settled, setSettled] = useState<View>(geometry.fit);
  const live = useRef({ view: geometry.fit, fitted: true, frame: 0, timer: 0, settledAt: geometry.fit });

  const flush = useCallback(() => {
    window.clearTimeout(live.current.timer);
    live.current.settledAt = live.current.view;
    setSettled(live.current.view);
    frame.current?.classList.remove('moving');
  }, [frame]);

  const move = useCallback(
    (view: View, fitted = false) => {
      const now = live.current;
      now.view = keepInSight(view, geometry, size);
      now.fitted = fitted;
      frame.current?.classList.add('moving');
      if (now.frame === 0)
        now.frame = requestAnimationFrame(() => {
          now.frame = 0;
          paint(now.view);
        });
      window.clearTimeout(now.timer);
      now.timer = window.setTimeout(flush, SETTLE_MS);
      // A long drag reaches the edge of what is mounted: bring the next jars before it does.
      const far =
        Math.abs(now.view.tx - now.settledAt.tx) > size.width * 0.6 ||
        Math.abs(now.view.ty - now.settledAt.ty) > size.height * 0.6;
      if (far && now.view.k === now.settledAt.k) flush();
    },
    [geometry, size, paint, flush, frame],
  );

  const fit = useCallback(() => {
    live.current.view = geometry.fit;
    live.current.fitted = true;
    paint(geometry.fit);
    flush();
  }, [geometry, paint, flush]);

  // A fitted family stays fitted when the window changes, unless it would turn from jars to marks: a pane took the room,
  // and once it is closed the family is fitted again. One that was moved keeps its place.
  useLayoutEffect(() => {
    const { view, fitted } = live.current;
    if (fitted && !(geometry.fit.k < READABLE_ZOOM && view.k >= READABLE_ZOOM)) fit();
    else move(view, fitted);
  }, [fit, move, geometry]);
  useEffect(() => {
    const now = live.current;
    return () => {
      cancelAnimationFrame(now.frame);
      now.frame = 0;
      window.clearTimeout(now.timer);
    };
  }, []);

  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const { view } = live.current;
      const box = element.getBoundingClientRect();
      if (event.ctrlKey || event.metaKey) {
        const factor = Math.exp(-event.deltaY * 0.0022);
        move(zoomAt(view, geometry, view.k * factor, event.clientX - box.left, event.clientY - box.top));
      } else {
        const [dx, dy] =
          event.shiftKey && event.deltaX === 0 ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
        move({ k: view.k, tx: view.tx - dx, ty: view.ty - dy });
      }
    };
    let drag: { id: number; x: number; y: number; view: View; moved: boolean } | null = null;
    const down = (event: PointerEvent): void => {
      if (event.button !== 0 || (event.target instanceof Element && event.target.closest('button,a'))) return;
      drag = {
        id: event.pointerId,
        x: event.clientX,
        y: event.clientY,
        view: live.current.view,
        moved: false,
      };
    };
    const drawn = (event: PointerEvent): void => {
      if (drag === null || event.pointerId !== drag.id) return;
      const [dx, dy] = [event.clientX - drag.x, event.clientY - drag.y];
      if (!drag.moved && Math.hypot(dx, dy) < 4) return;
      if (!drag.moved) element.setPointerCapture(drag.id);
      drag.moved = true;
      move({ k: drag.view.k, tx: drag.view.tx + dx, ty: drag.view.ty + dy });
    };
    const up = (): void => {
      if (drag?.moved) {
        flush();
        // The click that ends a drag chooses nothing.
        element.addEventListener('click', (event) => event.stopPropagation(), { capture: true, once: true });
      }
      drag = null;
    };
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', drawn);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    return () => {
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', drawn);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
    };
  }, [frame, geometry, move, flush]);

  return useMemo(
    () => ({
      settled,
      fit,
      repaint: () => paint(live.current.view),
      zoomBy: (factor) => {
        const { view } = live.current;
        move(zoomAt(view, geometry, view.k * factor, size.width / 2, size.height / 2));
      },
      panBy: (dx, dy) => {
        const { view } = live.current;
        move({ k: view.k, tx: view.tx + dx, ty: view.ty + dy });
      },
      show: (x, y, leastZoom = 0) => {
        const { view } = live.current;
        const closer =
          view.k < leastZoom
            ? { k: leastZoom, tx: size.width / 2 - x * leastZoom, ty: size.height / 2 - y * leastZoom }
            : bringIn(view, size, x, y);
        if (closer !== view) {
          move(closer, live.current.fitted && closer.k === view.k);
          flush();
        }
      },
    }),
    [settled, fit, move, flush, geometry, size, paint],
  );
}
