// What of the family is drawn now: jars near the window and those the keyboard is about to reach, or marks far out.
import { useMemo, useState } from 'react';
import type { Size } from '../parts/use-size';
import type { Geometry, View } from './geometry';
import { type Kin, nearKin } from './kin';
import type { Placed } from './lanes';
import { mountedAt, sameOr } from './mounting';

/** The array as it was where nothing in it changed, so that nothing renders again. */
export function useSame<T>(now: readonly T[]): readonly T[] {
  const [held, hold] = useState(now);
  const same = sameOr(held, now);
  if (same !== held) hold(same);
  return same;
}

export interface Mounted {
  readonly indices: readonly number[];
  readonly keys: readonly number[];
  readonly asJars: boolean;
}

interface Near {
  readonly drawing: Placed;
  readonly kin: Kin;
  readonly geometry: Geometry;
  readonly view: View;
  readonly size: Size;
  /** Indices of the jar that the keyboard is on, and of the one in the pane. */
  readonly focus: number;
  readonly selected: number | null;
}

export function useMounted({ drawing, kin, geometry, view, size, focus, selected }: Near): Mounted {
  const kept = useMemo(() => {
    const near = nearKin(kin, focus, 40);
    return selected !== null && !near.includes(selected) ? [...near, selected] : near;
  }, [kin, focus, selected]);
  const found = useMemo(
    () => mountedAt(drawing, geometry, view, size, kept),
    [drawing, geometry, view, size, kept],
  );
  const indices = useSame(found.indices);
  return useMemo(
    () => ({ indices, keys: indices.map((index) => drawing.keys[index] ?? 0), asJars: found.asJars }),
    [indices, found.asJars, drawing],
  );
}
