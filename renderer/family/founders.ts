// Where the label strips of founding batches lie, and their ribbons into the founding jars. Pure.
import type { Drawing, JarView } from '../../core/contract';
import type { Box } from './labels';
import { type Geometry, JAR, RIBBON_WIDTH, STRIP_GAP, STRIP_HEIGHT, type StripSize } from './geometry';

export interface PlacedStrip {
  readonly key: string;
  /** Left edge of its founding jars; and the top of their middle row, moved in where the slips would be cut off. */
  readonly x: number;
  readonly y: number;
  readonly name: string;
  readonly strains: number;
  readonly culture: boolean;
  /** Top of the slip against the inlet of that row, in screen pixels at far zoom. */
  readonly lift: number;
  readonly jars: readonly number[];
}
export interface FoundingRibbon {
  readonly key: string;
  readonly child: number;
  readonly share: number;
  readonly path: string;
}

/** Strips keep their size on the screen below zoom 1 and grow with the drawing above it. */
export const stripScale = (k: number): number => Math.max(1, 1 / k);

/** How far a box has to move to lie within what is in sight; none at all where it is taller than that. */
function movedIn(box: Box, sight: Geometry['sight']): number {
  if (box.bottom - box.top > sight.bottom - sight.top) return 0;
  return Math.max(0, sight.top - box.top) + Math.min(0, sight.bottom - box.bottom);
}

/** Strips that don't lie on one another at a zoom, first founded first; and ribbons from those to their jars. */
export function founderStrips(
  drawing: Drawing,
  geometry: Geometry,
  k: number,
  views: ReadonlyMap<number, JarView>,
  strip: StripSize,
): { strips: PlacedStrip[]; ribbons: FoundingRibbon[] } {
  const scale = stripScale(k);
  const strips: PlacedStrip[] = [];
  const ribbons: FoundingRibbon[] = [];
  const taken: Box[] = [];
  const isFree = (box: Box): boolean =>
    taken.every(
      (other) =>
        box.left >= other.right ||
        other.left >= box.right ||
        box.top >= other.bottom ||
        other.top >= box.bottom,
    );
  drawing.founders.slice(0, 200).forEach((founder, at) => {
    const { jars } = founder;
    if (jars.length === 0 || founder.sources.length === 0) return;
    const x = Math.min(...jars.map((index) => (drawing.x[index] ?? 0) * geometry.columnStep));
    const rows = jars.map((index) => (drawing.y[index] ?? 0) * geometry.rowStep);
    const level = (Math.min(...rows) + Math.max(...rows)) / 2;
    const high = founder.sources.length * STRIP_HEIGHT + (founder.sources.length - 1) * STRIP_GAP;
    const boxAt = (middle: number): Box => ({
      left: x - (strip.reach + strip.width) * scale,
      right: x - strip.reach * scale,
      top: middle + JAR.inletY - (high / 2) * scale,
      bottom: middle + JAR.inletY + (high / 2) * scale,
    });
    // Beside the first or the last row the slips move in until none is cut off, if they have room there.
    const y = [movedIn(boxAt(level), geometry.sight) + level, level].find((middle) => isFree(boxAt(middle)));
    if (y === undefined) return;
    taken.push(boxAt(y));
    const arriving = new Map<number, number>();
    founder.sources.forEach((source, place) => {
      const lift = -high / 2 + place * (STRIP_HEIGHT + STRIP_GAP);
      strips.push({
        key: `${at} ${source.name}`,
        x,
        y,
        name: source.name,
        strains: source.strains.length,
        culture: source.culture,
        lift,
        jars,
      });
      const fromY = y + JAR.inletY + (lift + STRIP_HEIGHT / 2) * scale;
      for (const index of jars) {
        const seeds = views.get(drawing.keys[index] ?? 0)?.seeds ?? [];
        const seed = seeds.find((one) => one.key === null && one.label === source.name);
        if (!seed) continue;
        const above = arriving.get(index) ?? 0;
        arriving.set(index, above + seed.share);
        const toX = (drawing.x[index] ?? 0) * geometry.columnStep + 4;
        const toY =
          (drawing.y[index] ?? 0) * geometry.rowStep +
          JAR.inletY +
          (above + seed.share / 2 - 0.5) * RIBBON_WIDTH;
        const fromX = x - strip.reach * scale - 2;
        const middle = (fromX + toX) / 2;
        ribbons.push({
          key: `${at} ${source.name} ${index}`,
          child: index,
          share: seed.share,
          path: `M${fromX} ${fromY}C${middle} ${fromY} ${middle} ${toY} ${toX} ${toY}`,
        });
      }
    });
  });
  return { strips, ribbons };
}
