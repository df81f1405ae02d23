// Far out, jars are marks on a canvas: one small jar-shaped mark each, or one for each small square of the window where
// there are more jars than pixels. Spoiled ones keep a cross, so that colour alone tells nothing.
import { type RefObject, useLayoutEffect } from 'react';
import type { Drawing } from '../../core/contract';
import { FLAG } from './flags';
import type { Lit } from './kin';
import { type Geometry, JAR, type Size, type View } from './geometry';

/** Far out, one mark stands for all jars of a square this wide, stronger where there are more. */
const SQUARE = 4;
/** Of lines with both ends in the same squares one is drawn. */
const LINE_SQUARE = 10;
const MOST_LINES = 6000;
const FAINTEST = 0.45;
const MANY = 12;

function colour(canvas: HTMLElement, name: string): string {
  return getComputedStyle(canvas).getPropertyValue(name).trim();
}

function paint(
  canvas: HTMLCanvasElement,
  drawing: Drawing,
  geometry: Geometry,
  view: View,
  size: Size,
  lit: Lit | null,
): void {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(size.width * scale);
  canvas.height = Math.round(size.height * scale);
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  pen.scale(scale, scale);
  const wide = Math.max(2.4, JAR.width * view.k);
  const high = Math.max(3, JAR.height * view.k);
  const atX = (index: number): number => (drawing.x[index] ?? 0) * geometry.columnStep * view.k + view.tx;
  const atY = (index: number): number => (drawing.y[index] ?? 0) * geometry.rowStep * view.k + view.ty;
  const seen: number[] = [];
  for (let i = 0; i < drawing.x.length; i += 1) {
    const [x, y] = [atX(i), atY(i)];
    if (x > -wide && x < size.width && y > -high && y < size.height) seen.push(i);
  }
  const ink = {
    line: colour(canvas, '--ribbon'),
    mark: colour(canvas, '--jar-edge'),
    lit: colour(canvas, '--accent'),
    caution: colour(canvas, '--caution'),
    paper: colour(canvas, '--paper'),
  };
  const across = Math.ceil(size.width / LINE_SQUARE) + 2;
  const lineSquare = (index: number): number =>
    Math.floor(atY(index) / LINE_SQUARE) * across + Math.floor(atX(index) / LINE_SQUARE);
  const drawn = new Set<string>();
  pen.lineWidth = Math.max(0.8, 8 * view.k);
  for (const index of seen) {
    const seed = drawing.parent[index] ?? -1;
    if (seed < 0) continue;
    const on = lit?.[index] === 1 && lit[seed] === 1;
    if (seen.length > MOST_LINES) {
      const [from, to] = [lineSquare(seed), lineSquare(index)];
      const ends = `${from} ${to} ${on}`;
      if (from === to || drawn.has(ends) || drawn.size > MOST_LINES) continue;
      drawn.add(ends);
    }
    pen.strokeStyle = on ? ink.lit : ink.line;
    pen.globalAlpha = on ? 1 : lit === null ? 0.7 : 0.3;
    const [x0, y0] = [atX(seed) + wide * 0.9, atY(seed) + high * 0.65];
    const [x1, y1] = [atX(index) + wide * 0.1, atY(index) + high * 0.65];
    pen.beginPath();
    pen.moveTo(x0, y0);
    pen.bezierCurveTo((x0 + x1) / 2, y0, (x0 + x1) / 2, y1, x1, y1);
    pen.stroke();
  }
  const squareAt = (index: number, square: number): number =>
    Math.floor(atY(index) / square) * 65_536 + Math.floor(atX(index) / square);
  const crowd = new Map<number, number>();
  if (wide < SQUARE)
    for (const index of seen) {
      const square = squareAt(index, SQUARE);
      crowd.set(square, (crowd.get(square) ?? 0) + 1);
    }
  const filled = new Set<number>();
  for (const index of seen) {
    const [x, y] = [atX(index), atY(index)];
    const bad = ((drawing.flags[index] ?? 0) & FLAG.spoiled) !== 0;
    const on = lit?.[index] === 1;
    if (wide < SQUARE) {
      // A cross or a lit mark needs more room, so that it stays one sign and never a stain.
      const square = bad ? SQUARE * 4 : SQUARE;
      const cell = squareAt(index, square) * 4 + (bad ? 2 : on ? 1 : 0);
      if (filled.has(cell)) continue;
      filled.add(cell);
    }
    const many = crowd.get(squareAt(index, SQUARE)) ?? MANY;
    const strength = FAINTEST + (1 - FAINTEST) * Math.min(1, Math.log(many) / Math.log(MANY));
    pen.globalAlpha = on || bad ? 1 : lit === null ? strength : strength * 0.5;
    pen.fillStyle = bad ? ink.caution : on ? ink.lit : ink.mark;
    pen.beginPath();
    pen.roundRect(x, y, wide, high, Math.min(wide, high) * 0.25);
    pen.fill();
    if (bad) {
      const arm = Math.max(5, high * 0.8);
      pen.strokeStyle = wide > 8 ? ink.paper : ink.caution;
      pen.lineWidth = 1.6;
      pen.beginPath();
      const [midX, midY] = [x + wide / 2, y + high / 2];
      pen.moveTo(midX - arm / 2, midY - arm / 2);
      pen.lineTo(midX + arm / 2, midY + arm / 2);
      pen.moveTo(midX + arm / 2, midY - arm / 2);
      pen.lineTo(midX - arm / 2, midY + arm / 2);
      pen.stroke();
    }
  }
  pen.globalAlpha = 1;
}

interface Props {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly drawing: Drawing;
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
    if (canvas.current) paint(canvas.current, drawing, geometry, view, size, lit);
  }, [canvas, drawing, geometry, view, size, lit, theme]);
  return <canvas ref={canvas} className="marks" aria-hidden="true" />;
}
