// Ribbons: a seeding as wide as its share. Where a jar has several seeds they arrive stacked, together one full ribbon. Pure.
import { JAR, RIBBON_WIDTH } from './geometry';

export interface Ribbon {
  readonly seed: number;
  readonly child: number;
  readonly share: number;
  readonly other: boolean;
}

const n = (value: number): string => String(Math.round(value * 10) / 10);

/** Where a ribbon leaves its seed, bends, runs level and ends: all that its path and its points are made of. */
function curveOf(fromX: number, fromY: number, toX: number, toY: number, lift: number, tail: number) {
  const x0 = fromX + JAR.width - 4;
  const y0 = fromY + JAR.inletY;
  const x1 = toX + 4;
  const y1 = toY + JAR.inletY + lift;
  const level = x1 - Math.min(tail, Math.max(0, x1 - x0) * 0.6);
  const bend = Math.max(26, Math.min(120, (level - x0) * 0.5));
  return { x0, y0, x1, y1, level, bend };
}

/** Points along the bent part of a ribbon, no further apart than `apart` for the most part: what a label may cross. */
export function ribbonPoints(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  tail: number,
  apart: number,
): { readonly x: number; readonly y: number }[] {
  const { x0, y0, y1, level, bend } = curveOf(fromX, fromY, toX, toY, 0, tail);
  const steps = Math.max(4, Math.min(80, Math.ceil(Math.hypot(level - x0, y1 - y0) / apart)));
  return Array.from({ length: steps + 1 }, (_, at) => {
    const t = at / steps;
    const s = 1 - t;
    const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return { x: a * x0 + b * (x0 + bend) + c * (level - bend) + d * level, y: (a + b) * y0 + (c + d) * y1 };
  });
}

/**
 * Path of a ribbon from a seed's side to a child's inlet, in drawing pixels. Over the last `tail` it runs level, under
 * the child's label; `lift` shifts its end within the inlet.
 */
export function ribbonPath(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  lift: number,
  tail: number,
): string {
  const { x0, y0, x1, y1, level, bend } = curveOf(fromX, fromY, toX, toY, lift, tail);
  return `M${n(x0)} ${n(y0)}C${n(x0 + bend)} ${n(y0)} ${n(level - bend)} ${n(y1)} ${n(level)} ${n(y1)}H${n(x1)}`;
}

/** Width of a ribbon in drawing pixels: its share of a full one, never thinner than can be seen. */
export const ribbonWidth = (share: number): number => Math.max(1.6, share * RIBBON_WIDTH);

/**
 * Where each share's ribbon ends within the inlet: offsets from its middle, for shares in the order from the top.
 */
export function inletOffsets(shares: readonly number[]): number[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  let above = 0;
  return shares.map((share) => {
    const middle = above + share / 2 - total / 2;
    above += share;
    return middle * RIBBON_WIDTH;
  });
}
