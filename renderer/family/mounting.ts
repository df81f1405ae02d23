// Which jars are mounted: those near the window, never more than 600, always the one with the focus. Pure.
import { JAR } from '../../core/pictures/jar-outline';
import { READABLE_ZOOM, type Geometry, type View } from './geometry';
import type { Size } from '../parts/use-size';

export const MOST_MOUNTED = 600;

export interface Mounted {
  /** Indices in the drawing, in its order. */
  readonly indices: readonly number[];
  /** True when all jars in view are mounted as jars; false when they are drawn as marks. */
  readonly asJars: boolean;
}

function within(
  columns: { x: Float64Array; y: Float64Array },
  geometry: Geometry,
  view: View,
  size: Size,
  margin: number,
  most: number,
): number[] | null {
  const left = (-view.tx - size.width * margin) / view.k / geometry.columnStep;
  const right = (size.width * (1 + margin) - view.tx) / view.k / geometry.columnStep;
  const top = (-view.ty - size.height * margin) / view.k / geometry.rowStep;
  const bottom = (size.height * (1 + margin) - view.ty) / view.k / geometry.rowStep;
  const wide = JAR.width / geometry.columnStep;
  const high = (JAR.height + 30 / view.k) / geometry.rowStep;
  const { x, y } = columns;
  const found: number[] = [];
  for (let i = 0; i < x.length; i += 1) {
    const atX = x[i] ?? 0;
    const atY = y[i] ?? 0;
    if (atX + wide < left || atX > right || atY + high < top || atY > bottom) continue;
    if (found.length === most) return null;
    found.push(i);
  }
  return found;
}

/**
 * The jars to mount at a settled view. Margin around the window: a full screen where 600 allow it, less where not, none
 * at last; beyond that only `kept` (the focused jar and its kin) is mounted and the rest become marks.
 */
export function mountedAt(
  columns: { x: Float64Array; y: Float64Array },
  geometry: Geometry,
  view: View,
  size: Size,
  kept: readonly number[],
): Mounted {
  if (view.k >= READABLE_ZOOM) {
    for (const margin of [1, 0.5, 0.2, 0.02]) {
      const found = within(columns, geometry, view, size, margin, MOST_MOUNTED - kept.length);
      if (found) {
        const seen = new Set(found);
        const rest = kept.filter((index) => !seen.has(index));
        return {
          indices: rest.length > 0 ? [...found, ...rest].toSorted((a, b) => a - b) : found,
          asJars: true,
        };
      }
    }
  }
  return { indices: [...new Set(kept)].toSorted((a, b) => a - b), asJars: false };
}

/** The same array as before where nothing changed, so that nothing renders again. */
export function sameOr<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  return before.length === now.length && before.every((item, at) => item === now[at]) ? before : now;
}
