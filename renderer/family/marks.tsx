// Far out, jars are drawn on a canvas: each still as a jar, shaded by how it set, only without its numeral. Spoiled ones
// keep a cross, so that colour alone tells nothing.
import { type RefObject, useLayoutEffect } from 'react';
import { FLAG } from '../../core/shapes/drawing-flags';
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry, View } from './geometry';
import type { Size } from '../parts/use-size';
import { BODY, CONTENTS } from '../../core/pictures/jar-outline';
import type { Lit } from './kin';
import type { Placed } from './lanes';

/** Of ribbons with both ends in the same squares of the window one is drawn. */
const LINE_SQUARE = 10;
const MOST_LINES = 6000;
const UNKNOWN = 255;

type Ink = Readonly<
  Record<'ribbon' | 'edge' | 'lid' | 'glass' | 'accent' | 'caution' | 'dim' | 'line', string>
> & {
  readonly fills: readonly string[];
};

function inkOf(canvas: HTMLElement): Ink {
  const style = getComputedStyle(canvas);
  const colour = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    ribbon: colour('ribbon'),
    edge: colour('jar-edge'),
    lid: colour('jar-lid'),
    glass: colour('jar-glass'),
    accent: colour('accent'),
    caution: colour('caution'),
    dim: colour('fill-dim'),
    line: colour('line'),
    fills: CONTENTS.map((_, at) => colour(`fill-${at + 1}`)),
  };
}

/** How a jar lies to what is lit: nothing is, it is, it is not. */
type Light = 'none' | 'lit' | 'dim';

const body = new Path2D(BODY);
const contents = CONTENTS.map((path) => new Path2D(path));

/** One small jar, drawn once for all that look like it. */
function stamp(ink: Ink, setWord: number, flags: number, light: Light, zoom: number): HTMLCanvasElement {
  const sheet = document.createElement('canvas');
  sheet.width = Math.ceil((JAR.width + 8) * zoom);
  sheet.height = Math.ceil((JAR.height + 8) * zoom);
  const pen = sheet.getContext('2d');
  if (pen === null) return sheet;
  const spoiled = (flags & FLAG.spoiled) !== 0;
  const level = setWord === UNKNOWN && (flags & FLAG.outcomeKnown || spoiled) ? 0 : setWord;
  const inside = contents[level];
  const edge = spoiled ? ink.caution : light === 'lit' ? ink.accent : light === 'dim' ? ink.line : ink.edge;
  pen.scale(zoom, zoom);
  pen.translate(4, 4);
  pen.fillStyle = ink.glass;
  // oxlint-disable-next-line unicorn/no-array-fill-with-reference-type -- a pen that fills a path, not an array
  pen.fill(body);
  if (inside) {
    pen.fillStyle = light === 'dim' ? ink.dim : (ink.fills[level] ?? ink.glass);
    pen.fill(inside);
  }
  pen.strokeStyle = edge;
  pen.lineWidth = Math.min(9, Math.max(3, 1.1 / zoom));
  pen.lineJoin = 'round';
  pen.stroke(body);
  pen.fillStyle = (flags & FLAG.setAside) !== 0 ? ink.caution : light === 'lit' ? ink.accent : ink.lid;
  if ((flags & FLAG.lost) === 0) pen.fillRect(8, -1, 46, 13);
  if (spoiled) {
    pen.strokeStyle = ink.caution;
    pen.lineWidth = Math.max(8, 1.6 / zoom);
    pen.stroke(new Path2D('M12 20L50 60M50 20L12 60'));
  }
  return sheet;
}

/** Ribbons between jars in the room, and from them to what seeded them. */
function paintRibbons(
  pen: CanvasRenderingContext2D,
  drawing: Placed,
  seen: readonly number[],
  ink: Ink,
  at: (index: number) => readonly [number, number],
  k: number,
  lit: Lit | null,
): void {
  const drawn = new Set<string>();
  const square = (index: number): string =>
    at(index)
      .map((one) => Math.floor(one / LINE_SQUARE))
      .join(' ');
  pen.lineWidth = Math.max(0.9, 9 * k);
  for (const index of seen) {
    const seed = drawing.parent[index] ?? -1;
    if (seed < 0) continue;
    const on = lit?.[index] === 1 && lit[seed] === 1;
    if (seen.length > MOST_LINES) {
      const ends = `${square(seed)} ${square(index)} ${on}`;
      if (drawn.has(ends)) continue;
      drawn.add(ends);
    }
    pen.strokeStyle = on ? ink.accent : lit === null ? ink.ribbon : ink.line;
    const [x0, y0] = at(seed);
    const [x1, y1] = at(index);
    const [from, to] = [x0 + JAR.width * 0.93 * k, x1 + JAR.width * 0.07 * k];
    const inlet = JAR.inletY * k;
    pen.beginPath();
    pen.moveTo(from, y0 + inlet);
    pen.bezierCurveTo((from + to) / 2, y0 + inlet, (from + to) / 2, y1 + inlet, to, y1 + inlet);
    pen.stroke();
  }
}

function paint(
  canvas: HTMLCanvasElement,
  { drawing, geometry, view, size, lit }: Omit<Props, 'canvas' | 'theme'>,
): void {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(size.width * scale);
  canvas.height = Math.round(size.height * scale);
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  pen.scale(scale, scale);
  const { k } = view;
  const [stepX, stepY] = [geometry.columnStep * k, geometry.rowStep * k];
  const at = (index: number): readonly [number, number] => [
    (drawing.x[index] ?? 0) * stepX + view.tx,
    (drawing.y[index] ?? 0) * stepY + view.ty,
  ];
  const seen: number[] = [];
  for (let i = 0; i < drawing.x.length; i += 1) {
    const [x, y] = at(i);
    if (x > -JAR.width && x < size.width && y > -JAR.height && y < size.height) seen.push(i);
  }
  const ink = inkOf(canvas);
  paintRibbons(pen, drawing, seen, ink, at, k, lit);
  const stamps = new Map<string, HTMLCanvasElement>();
  for (const index of seen) {
    const [x, y] = at(index);
    const [setWord, flags] = [drawing.setWord[index] ?? UNKNOWN, drawing.flags[index] ?? 0];
    const light = lit === null ? 'none' : lit[index] === 1 ? 'lit' : 'dim';
    const name = `${setWord} ${flags} ${light}`;
    let one = stamps.get(name);
    if (!one) stamps.set(name, (one = stamp(ink, setWord, flags, light, k * scale)));
    pen.drawImage(one, x - 4 * k, y - 4 * k, one.width / scale, one.height / scale);
  }
}

interface Props {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly drawing: Placed;
  readonly geometry: Geometry;
  readonly view: View;
  readonly size: Size;
  readonly lit: Lit | null;
  readonly theme: string;
}

/** The canvas behind the mounted jars, painted at each settled view. */
export function Marks({ canvas, drawing, geometry, view, size, lit, theme }: Props) {
  useLayoutEffect(() => {
    canvas.current?.setAttribute('data-theme-painted', theme);
    if (canvas.current) paint(canvas.current, { drawing, geometry, view, size, lit });
  }, [canvas, drawing, geometry, view, size, lit, theme]);
  return <canvas ref={canvas} className="marks" aria-hidden="true" />;
}
