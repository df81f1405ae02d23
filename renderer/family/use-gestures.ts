// What wheel and pointer do to the view: a wheel pans, with Ctrl it zooms about the pointer; a drag pans.
import { type RefObject, useEffect } from 'react';
import { type Geometry, type View, zoomAt } from './geometry';

interface Hands {
  readonly now: () => View;
  readonly move: (view: View) => void;
  /** Once a drag has ended. */
  readonly settle: () => void;
}

/** @param frame the element that takes pointer and wheel */
export function useGestures(
  frame: RefObject<HTMLElement | null>,
  geometry: Geometry,
  { now, move, settle }: Hands,
): void {
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const view = now();
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
        view: now(),
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
        settle();
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
  }, [frame, geometry, now, move, settle]);
}
