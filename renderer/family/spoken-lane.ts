// Which lane the strip above the drawing speaks of.
import type { VerdictWord } from '../../core/shapes/advice-replies';

/** What is known of a line: the verdict, or that nothing of it that is kept may be used. */
export type Spoken = VerdictWord | 'nothing left';

/** In the order in which the strip prefers to speak of lines while the keeper has turned to none: good seed first. */
const SPOKEN_FIRST: readonly Spoken[] = [
  'go on',
  'go on, but look first',
  'take the reserve',
  'too early to say',
  'start afresh',
  'nothing left',
];

interface Asked {
  /** The lane that the keeper turned to. */
  readonly pressed: number | null;
  /** The lane of the newest jar. */
  readonly newest: number;
  readonly inSight: readonly number[];
  /** Lanes that are out of sight, those to be asked first in front: spoken of where nothing in sight may be used. */
  readonly elsewhere?: readonly number[];
  /** What is known of a lane's line; undefined while it is being worked out, null where nothing will be. */
  readonly verdict: (lane: number) => Spoken | null | undefined;
}

/** That the verdict names no seed to go on from, nor bids wait; of a line without verdict it is not known. */
const ended = (word: Spoken | null | undefined): boolean =>
  word === 'start afresh' || word === 'nothing left' || word == null;

const place = (word: Spoken | null | undefined): number =>
  word == null ? SPOKEN_FIRST.length : SPOKEN_FIRST.indexOf(word);

/**
 * The lane that was turned to, while it is in sight. Else, of those in sight, the one with the best seed by its verdict,
 * the newest jar's before others that are alike; and where none in sight has a seed, the best of the others: "make no jar" is
 * not to be read as said of all. null: not all that this rests on are known yet.
 */
export function spokenLane({ pressed, newest, inSight, elsewhere = [], verdict }: Asked): number | null {
  if (pressed !== null && inSight.includes(pressed)) return pressed;
  const lanes = [newest, ...inSight].filter(
    (lane, at, all) => inSight.includes(lane) && all.indexOf(lane) === at,
  );
  if (lanes.length === 0) return newest;
  const best = (among: readonly number[]): number =>
    among.reduce((first, lane) => (place(verdict(lane)) < place(verdict(first)) ? lane : first));
  if (lanes.some((lane) => verdict(lane) === undefined)) return null;
  const here = best(lanes);
  if (!ended(verdict(here))) return here;
  const all = [here, ...elsewhere.filter((lane) => !lanes.includes(lane))];
  return all.some((lane) => verdict(lane) === undefined) ? null : best(all);
}

/** The line that has more to go on from, where the one spoken of is ended: said beside it. null: there is none. */
export function betterLane(
  spoken: number,
  lanes: readonly number[],
  verdict: (lane: number) => Spoken | null | undefined,
): number | null {
  const word = verdict(spoken);
  if (word == null || !ended(word)) return null;
  const best = lanes.reduce(
    (first, lane) => (place(verdict(lane)) < place(verdict(first)) ? lane : first),
    spoken,
  );
  return best === spoken ? null : best;
}
