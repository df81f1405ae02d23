// Which lane the strip above the drawing speaks of.
import type { VerdictWord } from '../../core/shapes/advice-replies';

/** In the order in which the strip prefers to speak of lines while the keeper has turned to none: good seed first. */
const SPOKEN_FIRST: readonly VerdictWord[] = [
  'go on',
  'go on, but look first',
  'take the reserve',
  'too early to say',
  'start afresh',
];

interface Asked {
  /** The lane that the keeper turned to. */
  readonly pressed: number | null;
  /** The lane of the newest jar. */
  readonly newest: number;
  readonly inSight: readonly number[];
  /** What is known of a lane's line; undefined while it is being worked out, null where nothing will be. */
  readonly verdict: (lane: number) => VerdictWord | null | undefined;
}

/**
 * The lane that was turned to, while it is in sight. Else, of those in sight, the one with the best seed by its verdict,
 * the newest jar's before others that are alike. null: not all that are in sight are known yet.
 */
export function spokenLane({ pressed, newest, inSight, verdict }: Asked): number | null {
  if (pressed !== null && inSight.includes(pressed)) return pressed;
  const lanes = [newest, ...inSight].filter(
    (lane, at, all) => inSight.includes(lane) && all.indexOf(lane) === at,
  );
  if (lanes.length === 0) return newest;
  if (lanes.some((lane) => verdict(lane) === undefined)) return null;
  const place = (lane: number): number => {
    const word = verdict(lane) ?? null;
    return word === null ? SPOKEN_FIRST.length : SPOKEN_FIRST.indexOf(word);
  };
  return lanes.reduce((best, lane) => (place(lane) < place(best) ? lane : best));
}
