// Ribbons: a seeding as wide as its share. Where a jar has several seeds they arrive stacked, together one full ribbon. Pure.
import { JAR, RIBBON_WIDTH } from './jar-outline';

export interface Ribbon {
  readonly seed: number;
  readonly child: number;
  readonly share: number;
  readonly other: boolean;
}

/** How much is left of each end of a ribbon that is not drawn whole, in drawing pixels. */
const END = 26;

const n = (value: number): string => String(Math.round(value * 10) / 10);

/**
 * Path of a ribbon from a seed's side to a child's inlet, in drawing pixels; `lift` shifts its end within the inlet.
 */
export function ribbonPath(fromX: number, fromY: number, toX: number, toY: number, lift: number): string {
  const x0 = fromX + JAR.width - 4;
  const y0 = fromY + JAR.inletY;
  const x1 = toX + 4;
  const y1 = toY + JAR.inletY + lift;
  const bend = Math.max(20, Math.min(140, (x1 - x0) * 0.55));
  return `M${n(x0)} ${n(y0)}C${n(x0 + bend)} ${n(y0)} ${n(x1 - bend)} ${n(y1)} ${n(x1)} ${n(y1)}`;
}

/** Ends of a ribbon that is too long to be followed: a little of it where it leaves its seed and where it arrives. */
export function ribbonEnds(fromX: number, fromY: number, toX: number, toY: number, lift: number): string {
  const [x0, x1] = [fromX + JAR.width - 4, toX + 4];
  const [y0, y1] = [fromY + JAR.inletY, toY + JAR.inletY + lift];
  const away = Math.sign(y1 - y0) * END;
  return `M${n(x0)} ${n(y0)}q${END} 0 ${END} ${n(away)}M${n(x1)} ${n(y1)}q${-END} 0 ${-END} ${n(-away)}`;
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
