// A jar seeded by a jar and topped up from a product beside it: a small slip of that product at its inlet. Pure.
import type { Drawing, JarView } from '../../core/contract';
import { JAR, RIBBON_WIDTH } from '../../core/pictures/jar-outline';
import type { Box, Geometry } from './geometry';

export interface TopUp {
  readonly key: string;
  readonly child: number;
  /** The slip, in drawing pixels. */
  readonly box: Box;
  readonly share: number;
  /** Its ribbon into the jar. */
  readonly path: string;
}

const SLIP = { width: 18, height: 13, reach: 12, gap: 2 } as const;
/** Slips grow against the drawing when it is far, but never over the jar in the next row. */
const MOST_GROWN = 1.6;

const n = (value: number): string => String(Math.round(value * 10) / 10);

/**
 * Slips of the mounted jars that hang from a jar and were also seeded from sources, the larger share on top.
 * @param views labels and seeds by jar key; jars not in it have none
 */
export function topUpsOf(
  drawing: Pick<Drawing, 'keys' | 'parent' | 'x' | 'y'>,
  geometry: Pick<Geometry, 'columnStep' | 'rowStep'>,
  k: number,
  mounted: readonly number[],
  views: ReadonlyMap<number, JarView>,
): TopUp[] {
  const scale = Math.min(MOST_GROWN, Math.max(1, 1 / k));
  return mounted.flatMap((child) => {
    if ((drawing.parent[child] ?? -1) < 0) return [];
    const sources = (views.get(drawing.keys[child] ?? 0)?.seeds ?? []).filter((seed) => seed.key === null);
    const x = (drawing.x[child] ?? 0) * geometry.columnStep;
    const inlet = (drawing.y[child] ?? 0) * geometry.rowStep + JAR.inletY;
    let brought = 0;
    return sources
      .toSorted((a, b) => b.share - a.share)
      .map((seed, place) => {
        const right = x - SLIP.reach - place * (SLIP.width * scale + SLIP.gap);
        const top = inlet + RIBBON_WIDTH / 2 + 2;
        const box = { left: right - SLIP.width * scale, right, top, bottom: top + SLIP.height * scale };
        // What the jars brought arrives above; the sources' shares fill the inlet from its foot.
        const toY = inlet + (0.5 - brought - seed.share / 2) * RIBBON_WIDTH;
        brought += seed.share;
        const fromY = (box.top + box.bottom) / 2;
        const middle = (right + x + 4) / 2;
        return {
          key: `${drawing.keys[child]} ${seed.label} ${place}`,
          child,
          box,
          share: seed.share,
          path: `M${n(right)} ${n(fromY)}C${n(middle)} ${n(fromY)} ${n(middle)} ${n(toY)} ${n(x + 4)} ${n(toY)}`,
        };
      });
  });
}
