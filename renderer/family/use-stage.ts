// The stage as it stands: its rooms, its measures and its view, and how what is drawn is moved to that view.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import type { Size } from '../parts/use-size';
import { familyControl } from './family-actions';
import { type Geometry, geometryOf, newestPlace, type Room, type View } from './geometry';
import type { Placed } from './lanes';
import { roomsIn } from './rooms';
import { type Moving, useView } from './use-view';

/** Positions are written relative to a corner this far apart: far out in a huge family, pixels stay exact. */
const CHUNK = 131_072;

interface Staged {
  readonly drawing: Placed;
  readonly newest: number;
  /** The lane that is whole, where lanes are folded. */
  readonly open: number | null;
  readonly size: Size;
  readonly pane: boolean;
  readonly target: { readonly count: number } | null;
  /** Whether anything kept back is to be shown at the lines' ends. */
  readonly kept: boolean;
}

export interface Stage {
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly group: RefObject<SVGGElement | null>;
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly room: Room;
  readonly geometry: Geometry;
  readonly moving: Moving;
  /** The settled view. */
  readonly view: View;
  readonly cornerX: number;
  readonly cornerY: number;
}

/** Lets buttons, keys and the map move the view. */
function useControl(moving: Moving, geometry: Geometry): void {
  useEffect(() => {
    Object.assign(familyControl, {
      fit: moving.fit,
      closer: () => moving.zoomBy(1.25),
      farther: () => moving.zoomBy(0.8),
      pan: moving.panBy,
      centre: (x: number, y: number) => moving.centre(x * geometry.width, y * geometry.height),
    });
  }, [moving, geometry]);
}

export function useStage({ drawing, newest, open, size, pane, target, kept }: Staged): Stage {
  const frame = useRef<HTMLDivElement>(null);
  const group = useRef<SVGGElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<View>({ k: 1, tx: 0, ty: 0 });
  const corner = useRef({ x: 0, y: 0 });
  const months = drawing.spacing === 'calendar';
  const room = useMemo(() => roomsIn(size, { pane, months, kept }).room, [size, pane, months, kept]);
  const fitRoom = useMemo(() => roomsIn(size, { pane: false, months, kept }).fitRoom, [size, months, kept]);
  const geometry = useMemo(() => geometryOf(drawing, fitRoom), [drawing, fitRoom]);
  const newestAt = useMemo(() => newestPlace(drawing, newest), [drawing, newest]);

  const paint = useCallback(
    (view: View) => {
      const { x, y } = corner.current;
      group.current?.setAttribute(
        'transform',
        `translate(${view.tx + x * view.k} ${view.ty + y * view.k}) scale(${view.k})`,
      );
      frame.current?.style.setProperty('--k', String(view.k));
      frame.current?.style.setProperty('--tx', `${view.tx}px`);
      frame.current?.style.setProperty('--ty', `${view.ty}px`);
      frame.current?.style.setProperty('--room-right', `${room.right - 10}px`);
      const [wide, high] = [geometry.width * view.k, geometry.height * view.k];
      familyControl.tell({
        left: (room.left - view.tx) / wide,
        right: (room.right - view.tx) / wide,
        top: (room.top - view.ty) / high,
        bottom: (room.bottom - view.ty) / high,
      });
      const from = painted.current;
      const ratio = view.k / from.k;
      if (canvas.current)
        canvas.current.style.transform = `translate(${view.tx - from.tx * ratio}px, ${view.ty - from.ty * ratio}px) scale(${ratio})`;
    },
    [geometry, room],
  );
  const spacing = `${drawing.spacing} ${open ?? ''}`;
  const moving = useView(
    frame,
    {
      geometry,
      places: drawing,
      newest: newestAt,
      spacing,
      size,
      pane,
      jumps: target?.count ?? 0,
      room,
      fitRoom,
    },
    paint,
  );
  useControl(moving, geometry);
  const view = moving.settled;
  const chunk = (at: number, extent: number): number =>
    Math.round((extent / 2 - at) / view.k / CHUNK) * CHUNK;
  const cornerX = chunk(view.tx, size.width);
  const cornerY = chunk(view.ty, size.height);
  const { repaint } = moving;
  useLayoutEffect(() => {
    corner.current = { x: cornerX, y: cornerY };
    painted.current = view;
    repaint();
  }, [cornerX, cornerY, view, repaint]);
  return { frame, group, canvas, room, geometry, moving, view, cornerX, cornerY };
}
