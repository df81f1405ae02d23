// What is said of what was stirred in, learned beside plain siblings, and where another line of the keeper's tells otherwise.
import { inWords } from './way-to-source';
import { timesSeen } from './correction-says';
import { NOTHING_IN, type Effect } from '../vigour/effects';
import type { LineJudgement } from '../vigour/line';

/** Points from which an effect is told, and errors by which two lines stand apart. */
const TOLD_FROM = 5;
const APART = 2;

const does = (points: number): string =>
  `${points < 0 ? 'takes' : 'adds'} about ${Math.abs(Math.round(points))}`;

const may = (points: number): string =>
  `may ${points < 0 ? 'take' : 'add'} about ${Math.abs(Math.round(points))}`;

/** What one line shows can't well be what another shows: they stand far apart, or point different ways. */
const gainsay = (one: Effect, other: Effect): boolean =>
  Math.abs(one.points - other.points) > APART * Math.hypot(one.error, other.error) ||
  (one.points * other.points < 0 && Math.min(Math.abs(one.points), Math.abs(other.points)) >= TOLD_FROM);

/**
 * A sentence for each thing that was stirred in and told.
 * @param others the keeper's other lines, asked only where something is told @param nameOf name of a line by its founding batch
 */
export function effectsSay(
  { line, effects }: LineJudgement,
  others: () => readonly LineJudgement[],
  nameOf: (line: number) => string,
): string[] {
  const told = effects.filter(({ points }) => Math.abs(points) >= TOLD_FROM);
  if (told.length === 0) return [];
  const elsewhere = others().filter((other) => other.line !== line);
  return told.map((effect) => {
    const { name, points, sets, error } = effect;
    const what = name === NOTHING_IN ? 'leaving out what is usually stirred in' : name;
    const unsure = APART * error > Math.abs(points);
    const said = `${what.charAt(0).toUpperCase()}${what.slice(1)} ${unsure ? may(points) : does(points)} points, ${timesSeen(sets)} beside jars of the same seed and hold made as usual${unsure ? '; that can be chance' : ''}.`;
    const against = elsewhere.flatMap((other) =>
      other.effects.flatMap((one) =>
        one.name === name && gainsay(effect, one) ? [`in ${nameOf(other.line)} it ${does(one.points)}`] : [],
      ),
    );
    return against.length === 0
      ? said
      : `${said} But ${inWords(against)}: the lines stand apart, so what ${what} does by itself can't be told. Each line is reckoned by its own.`;
  });
}
