// Ribbons of founding batches: from the packets at a lane's head into its founding jars. Pure.
import type { JarView } from '../../core/contract';
import { JAR, RIBBON_WIDTH } from '../../core/pictures/jar-outline';
import { type Geometry, LEAD } from './geometry';
import { HEAD, type Placed, type PlacedHead } from './lanes';

export interface FoundingRibbon {
  readonly key: string;
  readonly child: number;
  readonly share: number;
  readonly path: string;
}

/**
 * Ribbons into all founding jars whose seeds are known.
 * @param heads where the packets lie, in a window that has room for them; else all come out of the lane's level row
 */
export function foundingRibbons(
  drawing: Placed,
  geometry: Pick<Geometry, 'columnStep' | 'rowStep'>,
  k: number,
  heads: readonly PlacedHead[],
  views: ReadonlyMap<number, JarView>,
): FoundingRibbon[] {
  const placed = new Map(heads.map((head) => [head.lane, head]));
  return drawing.lanes.flatMap((lane, at) => {
    const head = placed.get(at);
    const level = lane.level * geometry.rowStep + JAR.inletY;
    const fromX = -LEAD / k - 4;
    const arriving = new Map<number, number>();
    return lane.packets.flatMap((packet, place) => {
      const fromY =
        head?.detail === 'packets'
          ? head.y + (head.height - (lane.packets.length - place - 0.5) * HEAD.packet) / k
          : level;
      return lane.founders.flatMap((child): FoundingRibbon[] => {
        const seeds = views.get(drawing.keys[child] ?? 0)?.seeds ?? [];
        const seed = seeds.find((one) => one.key === null && one.label === packet.name);
        if (!seed) return [];
        const above = arriving.get(child) ?? 0;
        arriving.set(child, above + seed.share);
        const toX = (drawing.x[child] ?? 0) * geometry.columnStep + 4;
        const toY =
          (drawing.y[child] ?? 0) * geometry.rowStep +
          JAR.inletY +
          (above + seed.share / 2 - 0.5) * RIBBON_WIDTH;
        const bend = (toX - fromX) / 2;
        return [
          {
            key: `${at} ${place} ${child}`,
            child,
            share: seed.share,
            path: `M${fromX} ${fromY}C${fromX + bend} ${fromY} ${toX - bend} ${toY} ${toX} ${toY}`,
          },
        ];
      });
    });
  });
}
