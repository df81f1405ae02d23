// Panning and zooming: the live view lives outside React and moves one group; React hears only of the settled view.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Size } from '../parts/use-size';
import { useGestures } from './use-gestures';
import {
  boxInView, bringIn, fittingView, type Geometry, keepInSight, makeRoom, mayGoHome, middleOn, type Newest, openingView,
  type Places, type Room, type View, zoomAt,
} from './geometry'; // prettier-ignore

const SETTLE_MS = 130;

export interface Moving {
  readonly settled: View;
  /** Moves what is drawn to where the view is now: after something was drawn anew. */
  readonly repaint: () => void;
  readonly fit: () => void;
  readonly zoomBy: (factor: number) => void;
  readonly panBy: (dx: number, dy: number) => void;
  /** Puts a point of the drawing into the middle of its room. */
  readonly centre: (x: number, y: number) => void;
  /** Brings a jar (drawing pixels) into the room, moving as little as needed; or into its middle, close enough to be read. */
  readonly show: (x: number, y: number, how: 'in sight' | 'in the middle') => void;
}

interface Shown {
  readonly geometry: Geometry;
  readonly places: Places;
  readonly newest: Newest;
  /** Another one opens anew. */
  readonly spacing: string;
  readonly size: Size;
  /** Whether a pane takes some of the room. */
  readonly pane: boolean;
  /** How often a jar was gone to: where one is, what was seen before need not stay in sight. */
  readonly jumps: number;
  /** Where jars can be seen now; and where they are fitted, whether or not a pane is open. */
  readonly room: Room;
  readonly fitRoom: Room;
}

/** The view as it is now, outside React. */
interface Live {
  view: View;
  /** Nobody moved it yet, or it was fitted. */
  fitted: boolean;
  frame: number;
  timer: number;
  settledAt: View;
  room: Room;
  pane: boolean;
  jumps: number;
  spacing: string;
  /** What was seen before a pane took some of the room, to go back to. */
  before: { readonly view: View; readonly made: View } | null;
}

const startingAt = (view: View, shown: Pick<Shown, 'room' | 'pane' | 'jumps' | 'spacing'>): Live => ({
  view,
  fitted: true,
  frame: 0,
  timer: 0,
  settledAt: view,
  ...shown,
  before: null,
});

/** What buttons, keys and the map do to the view. */
function useMoves(
  live: RefObject<Live>,
  { geometry, room, fitRoom }: Pick<Shown, 'geometry' | 'room' | 'fitRoom'>,
  move: (view: View, fitted?: boolean) => void,
  flush: () => void,
): Pick<Moving, 'zoomBy' | 'panBy' | 'centre' | 'show'> {
  return useMemo(() => {
    const [x0, y0] = [(room.left + room.right) / 2, (room.top + room.bottom) / 2];
    return {
      zoomBy: (factor) => {
        const { view } = live.current;
        move(zoomAt(view, geometry, view.k * factor, x0, y0));
      },
      panBy: (dx, dy) => {
        const { view } = live.current;
        move({ k: view.k, tx: view.tx + dx, ty: view.ty + dy });
      },
      centre: (x, y) => {
        const { k } = live.current.view;
        move({ k, tx: x0 - x * k, ty: y0 - y * k });
      },
      show: (x, y, how) => {
        const { view, fitted, before } = live.current;
        const next = how === 'in the middle' ? middleOn(view, room, x, y) : bringIn(view, room, x, y);
        if (next !== view) {
          // Whoever went to a jar stays there, also once its pane is closed: only where that would not be out of sight.
          const near = mayGoHome(before?.view ?? null, fitRoom, x, y);
          move(next, how === 'in sight' && fitted && near && next.k === view.k);
          flush();
        }
      },
    };
  }, [live, geometry, room, fitRoom, move, flush]);
}

/**
 * @param frame the element that takes pointer and wheel
 * @param paint moves what is drawn to a view; called at most once a frame
 */
export function useView(
  frame: RefObject<HTMLElement | null>,
  { geometry, places, newest, spacing, size, pane, jumps, room, fitRoom }: Shown,
  paint: (view: View) => void,
): Moving {
  const [opening] = useState(() => openingView(geometry, fitRoom, newest));
  const [settled, setSettled] = useState<View>(opening);
  const live = useRef<Live>(startingAt(opening, { room, pane, jumps, spacing }));

  const flush = useCallback(() => {
    window.clearTimeout(live.current.timer);
    live.current.settledAt = live.current.view;
    setSettled(live.current.view);
    frame.current?.classList.remove('moving');
  }, [frame]);

  const move = useCallback(
    (view: View, fitted = false) => {
      const now = live.current;
      now.view = keepInSight(view, geometry, places, room);
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
    [geometry, places, room, size, paint, flush, frame],
  );

  const put = useCallback(
    (view: View, fitted: boolean) => {
      live.current.view = view;
      live.current.fitted = fitted;
      paint(view);
      flush();
    },
    [paint, flush],
  );
  const fit = useCallback(
    () => put(fittingView(geometry, fitRoom, newest), true),
    [put, geometry, fitRoom, newest],
  );

  // A family that nobody moved stays as it opens when the window or the ledger changes; one that was moved keeps its
  // place. Where a pane takes some of the room, what was seen is seen still, and once it gives it back the view is what
  // it was.
  useLayoutEffect(() => {
    const now = live.current;
    const had = { room: now.room, pane: now.pane, jumps: now.jumps, spacing: now.spacing };
    Object.assign(now, { room, pane, jumps, spacing });
    if (had.spacing !== spacing) put(openingView(geometry, pane ? room : fitRoom, newest), true);
    else if (pane && !had.pane && jumps === had.jumps) {
      const made = makeRoom(now.view, boxInView(now.view, geometry, places, had.room), room);
      now.before = { view: now.view, made };
      put(made, now.fitted);
    } else if (had.pane && !pane && now.before?.made === now.view) put(now.before.view, now.fitted);
    else if (now.fitted && !pane) put(openingView(geometry, fitRoom, newest), true);
    else move(now.view, now.fitted);
  }, [put, move, geometry, places, newest, spacing, pane, jumps, room, fitRoom]);
  useEffect(() => {
    const now = live.current;
    return () => {
      cancelAnimationFrame(now.frame);
      now.frame = 0;
      window.clearTimeout(now.timer);
    };
  }, []);

  const now = useCallback(() => live.current.view, []);
  useGestures(frame, geometry, { now, move, settle: flush });

  const moves = useMoves(live, { geometry, room, fitRoom }, move, flush);
  return useMemo(
    () => ({
      settled,
      fit,
      repaint: () => paint(live.current.view),
      ...moves,
    }),
    [settled, fit, moves, paint],
  );
}
