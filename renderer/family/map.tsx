// The whole family as a thin map, however large: what is in the window is framed, and pressing or dragging moves there.
import { useLayoutEffect, useRef } from 'react';
import { familyControl } from './family-actions';
import { FLAG } from '../../core/shapes/drawing-flags';
import type { Placed } from './lanes';
import { useSize } from '../parts/use-size';

const PAD = 5;

function paint(canvas: HTMLCanvasElement, drawing: Placed, width: number, height: number): void {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  pen.scale(scale, scale);
  const style = getComputedStyle(canvas);
  const [stepX, stepY] = [(width - 2 * PAD) / drawing.width, (height - 2 * PAD) / drawing.height];
  const wide = Math.max(1.2, Math.min(26, stepX * 0.78));
  const high = Math.max(0.8, Math.min(5, stepY * 0.7));
  const bad = (flags: number): boolean => (flags & FLAG.spoiled) !== 0;
  const seen = (flags: number): boolean => (flags & FLAG.outcomeKnown) !== 0;
  for (const [colour, wanted] of [
    ['--line', (flags: number) => !seen(flags) && !bad(flags)],
    ['--jar-lid', (flags: number) => seen(flags) && !bad(flags)],
    ['--caution', bad],
  ] as const) {
    pen.fillStyle = style.getPropertyValue(colour).trim();
    for (let i = 0; i < drawing.x.length; i += 1)
      if (wanted(drawing.flags[i] ?? 0))
        pen.fillRect(PAD + (drawing.x[i] ?? 0) * stepX, PAD + (drawing.y[i] ?? 0) * stepY, wide, high);
  }
}

/** Decoration to the screen reader: the keys for moving do the same. */
export function FamilyMap({ drawing, theme }: { readonly drawing: Placed; readonly theme: string }) {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  useLayoutEffect(() => {
    if (canvas.current === null || size === null) return;
    canvas.current.setAttribute('data-theme-painted', theme);
    paint(canvas.current, drawing, size.width, size.height);
  }, [drawing, size, theme]);
  useLayoutEffect(() => {
    if (size === null) return undefined;
    const across = (part: number): number => PAD + part * (size.width - 2 * PAD);
    const down = (part: number): number => PAD + part * (size.height - 2 * PAD);
    return familyControl.watch(({ left, right, top, bottom }) => {
      const style = frame.current?.style;
      if (!style) return;
      const [x0, x1] = [Math.max(0, across(left) - 3), Math.min(size.width, across(right) + 3)];
      const [y0, y1] = [Math.max(0, down(top) - 3), Math.min(size.height, down(bottom) + 3)];
      style.transform = `translate(${x0}px, ${y0}px)`;
      style.width = `${Math.max(10, x1 - x0)}px`;
      style.height = `${Math.max(10, y1 - y0)}px`;
    });
  }, [size]);
  const go = (event: React.PointerEvent): void => {
    if (box.current === null) return;
    const { left, top, width, height } = box.current.getBoundingClientRect();
    familyControl.centre(
      (event.clientX - left - PAD) / (width - 2 * PAD),
      (event.clientY - top - PAD) / (height - 2 * PAD),
    );
  };
  return (
    <div
      ref={box}
      className="family-map"
      aria-hidden="true"
      title="The whole family: drag to move"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && go(event)}
    >
      <canvas ref={canvas} />
      <div ref={frame} className="family-map-frame" />
    </div>
  );
}
