// What would change a seed's place in the ranking, in words.
import type { CanDo, PlaceChange } from '../advice/would-change';

/** "A good jar from it costs 0.14 EUR less.": by what it costs, whatever it counts as for its place. */
function gapSays(more: number, unit: string): string {
  const far = Math.abs(more).toFixed(2);
  if (Number(far) === 0) return 'A good jar from either costs the same.';
  if (unit !== 'jars') return `A good jar from it costs ${far} ${unit} ${more < 0 ? 'less' : 'more'}.`;
  const jars = Math.round(100 * Number(far));
  return `For every 100 good jars from it, it is as if ${jars} ${more < 0 ? 'fewer' : 'more'} ${jars === 1 ? 'was' : 'were'} thrown out.`;
}

/** @param name what it is done about: "it", or a jar's name where another than the one spoken of is meant */
const doingSays = ({ look, sayKept }: CanDo, name: string): string =>
  [
    ...(look ? [`${name} has been looked at and nothing speaks against it`] : []),
    ...(sayKept ? [`somebody has said that ${look ? 'it' : name} is still there`] : []),
  ].join(' and ');

/** @param unit of costs: a currency, or 'jars' */
export function wouldChangeSays(change: PlaceChange, unit: string): string {
  switch (change.code) {
    case 'alone':
      return 'No other seed may be used now.';
    case 'in doubt':
      return 'No score would change its place: it stands after every seed without such a doubt. If what was noted of it is wrong, correct it.';
    case 'cost decides nothing':
      return 'Nothing cheaper stands behind it: all else that is kept has to be looked at first, or is in doubt.';
    case 'stands after':
      return `It stands after ${change.other} until somebody writes down how it came out.`;
    case 'as good':
      return `It is as good as ${change.other}: either may come first.`;
    case 'fresh start':
      return `${
        change.first
          ? 'It would come second only if what starts a line were dearer, or lines lasted less long.'
          : 'It would come first only if what starts a line were cheaper, or lines lasted longer.'
      } ${gapSays(change.more, unit)}`;
    case 'nothing':
      return `Nothing that can be seen or done now would change its place; the next batch may. ${gapSays(change.more, unit)}`;
    case 'once done':
      return change.loses
        ? `It would lose its place to ${change.other} once ${doingSays(change.doing, change.other)}. ${gapSays(change.more, unit)}`
        : `It would come before ${change.other} once ${doingSays(change.doing, 'it')}. ${gapSays(change.more, unit)}`;
  }
}
