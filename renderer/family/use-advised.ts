// What glows: the advised seeds of the lines in sight, as jars or as what is kept back of them at a line's end.
import { useMemo } from 'react';
import type { Geometry, Room, View } from './geometry';
import { type KeptAt, keptAt, keptInRoom } from './kept-marks';
import type { Placed } from './lanes';
import type { Now } from '../parts/use-now';
import type { LineNow } from './use-lines';

/** Why a jar glows. */
export type SeedMark = 'itself' | 'kept back';

interface Asked {
  readonly drawing: Placed;
  readonly geometry: Geometry;
  readonly view: View;
  readonly room: Room;
  readonly lines: ReadonlyMap<string, LineNow>;
  readonly kept: Now['kept'];
  /** Whether what is kept back has room at the lines' ends. */
  readonly atEnds: boolean;
  /** The lane that is whole, where lanes are folded. */
  readonly open: number | null;
}

export interface Advised {
  readonly keptPlaces: readonly KeptAt[];
  /** Ids of what is kept back and advised. */
  readonly nextKept: ReadonlySet<string>;
  /** Keys of the jars that glow; and of those among them that have room for words. */
  readonly seeds: ReadonlyMap<number, SeedMark>;
  readonly worded: ReadonlyMap<number, SeedMark>;
}

export function useAdvised({ drawing, geometry, view, room, lines, kept, atEnds, open }: Asked): Advised {
  const advised = useMemo(
    () => Array.from(lines.values(), ({ seed }) => seed?.from ?? null).filter((from) => from !== null),
    [lines],
  );
  const nextKept = useMemo(() => new Set(advised.flatMap(({ portion }) => portion ?? [])), [advised]);
  const keptPlaces = useMemo(
    () => (atEnds ? keptInRoom(keptAt(drawing, geometry, view.k, kept, nextKept), view, room) : []),
    [atEnds, drawing, geometry, view, room, kept, nextKept],
  );
  // What is kept back glows at its line's end; where it isn't drawn there, the jar it is kept of does.
  const seeds = useMemo(() => {
    const shown = new Set(keptPlaces.flatMap((place) => place.kept.map(({ id }) => id)));
    return new Map(
      advised
        .filter(({ portion }) => portion === null || !shown.has(portion))
        .map(({ key, portion }) => [key, portion === null ? 'itself' : 'kept back'] as const),
    );
  }, [advised, keptPlaces]);
  // In a folded lane there is no room for the words: there it only glows.
  const worded = useMemo(
    () =>
      open === null
        ? seeds
        : new Map([...seeds].filter(([key]) => drawing.lane[drawing.keys.indexOf(key)] === open)),
    [open, seeds, drawing],
  );
  return { keptPlaces, nextKept, seeds, worded };
}
