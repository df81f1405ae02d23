// Which line the strip speaks of: the one turned to, else the best in sight, once that is worked out.
import { useCallback, useMemo, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { JUDGED_UNASKED } from '../../core/vigour/judged-unasked';
import { turnTo, useLineInHand } from '../state/store';
import type { Placed } from './lanes';
import { betterLane, type Spoken, spokenLane } from './spoken-lane';
import { MOST_AT_ONCE, useLines } from './use-lines';

const NO_LINES: readonly string[] = [];

/** What a lane is turned to by: its line, where it has one. */
const handle = ({ line }: { readonly line: string | null }, at: number): string => line ?? `lane ${at}`;

/** The lane that the keeper turned to, here or on another screen; and how to turn to one. */
export function useTurned(laid: Drawing) {
  const inHand = useLineInHand();
  const pressed = useMemo(() => {
    const at = laid.lanes.findIndex((lane, index) => handle(lane, index) === inHand);
    return at === -1 ? null : at;
  }, [laid, inHand]);
  const turn = useCallback(
    (at: number | null) => {
      const lane = at === null ? undefined : laid.lanes[at];
      if (at !== null && lane) turnTo(handle(lane, at));
    },
    [laid],
  );
  return { pressed, turn };
}

/** The lanes that lie level with the window, the one nearest its middle first; and those of which a jar is in it. */
export interface LanesNow {
  readonly level: readonly number[];
  readonly seen: readonly number[];
}
export const NO_LANES: LanesNow = { level: [], seen: [] };

interface Sight {
  readonly drawing: Placed;
  readonly newest: number;
  readonly pressed: number | null;
  readonly lanes: LanesNow;
}

/** `settled` is null while nothing can be said yet; `spoken` then is the newest jar's lane. `better` has seed where it has none. */
export function useSpokenLane({ drawing, newest, pressed, lanes: { level, seen } }: Sight) {
  const inSight = seen.length > 0 ? seen : level;
  const newestLane = drawing.lane[newest] ?? 0;
  const unasked = drawing.keys.length > JUDGED_UNASKED;
  // Those level with the window first; the rest, the one founded last in front.
  const lanes = useMemo(() => {
    const founded = drawing.lanes.map((_, lane) => lane).toReversed();
    return [...new Set([pressed ?? newestLane, ...level, ...founded])];
  }, [pressed, newestLane, level, drawing]);
  const asked = useMemo(() => {
    const ids = lanes.flatMap((lane) => drawing.lanes[lane]?.line ?? []);
    // Nothing is in sight until the jars themselves are here: judging must not hold them up.
    return unasked || level.length === 0 ? NO_LINES : ids;
  }, [lanes, level, drawing, unasked]);
  const lines = useLines(asked);
  const verdict = (lane: number): Spoken | null | undefined => {
    const id = drawing.lanes[lane]?.line ?? '';
    const line = lines.get(id);
    if (line) return line.nothingLeft ? 'nothing left' : line.verdict;
    // Of a lane without a line, and of more lines than are judged at once, nothing will be known.
    return unasked || !asked.slice(0, MOST_AT_ONCE).includes(id) ? null : undefined;
  };
  const known = spokenLane({ pressed, newest: newestLane, inSight, elsewhere: lanes, verdict });
  // A lane that comes into sight is worked out first: until then the strip says what it said.
  const [said, keepSaid] = useState<number | null>(null);
  if (known !== null && known !== said) keepSaid(known);
  const settled = known ?? (said !== null && inSight.includes(said) ? said : null);
  const better = settled === null ? null : betterLane(settled, lanes, verdict);
  return { lines, unasked, settled, spoken: settled ?? newestLane, better };
}
