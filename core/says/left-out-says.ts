// Why jars do not speak for their batch, in words.
import type { LeftOutBecause } from '../vigour/comparable';
import { lengthWords } from './today-says';
import { inWords } from './way-to-source';

const HELD_SAYS = {
  'set aside': [
    'It is set aside because of a spoiled jar: it speaks for none that is not.',
    'They are set aside because of a spoiled jar: they speak for none that is not.',
  ],
  'from a mate': [
    'It descends from a set-aside jar: it speaks for none that does not.',
    'They descend from a set-aside jar: they speak for none that does not.',
  ],
} as const;

/** Of one jar, and of several. */
function bothSay(why: LeftOutBecause): readonly [one: string, many: string] {
  switch (why.because) {
    case 'spoiled':
      return ['It is spoiled.', 'They are spoiled.'];
    case 'unseen':
      return [
        'Nothing was noted of it, so it counts neither way.',
        'Nothing was noted of them, so they count neither way.',
      ];
    case 'first batch':
      return [
        'It is of a first batch, which is often uneven.',
        'They are of a first batch, which is often uneven.',
      ];
    case 'from sources':
      return ['It was started from sources.', 'They were started from sources.'];
    case 'mixes lines':
      return ['It mixes two lines.', 'They mix two lines.'];
    case 'set aside':
      return HELD_SAYS[why.held];
    case 'ran cool': {
      const cool = `hold ran cool: ${why.celsius.toFixed(1)} °C, usually ${why.usual.toFixed(1)}. The culture can't be judged by`;
      return [`Its ${cool} it.`, `Their ${cool} them.`];
    }
    case 'held short': {
      const short = `in warmth for ${lengthWords(Math.round(60 * why.hours))}, too short to show anything of the culture.`;
      return [`It was ${short}`, `They were ${short}`];
    }
    case 'other generation': {
      const rest = `of generation ${why.generation}, the rest of the batch about ${Math.round(why.batch)}.`;
      return [`It is ${rest}`, `They are ${rest}`];
    }
    case 'other treatment': {
      const siblings = why.plain ? 'plain siblings stand' : 'siblings made as usual stand';
      return [
        `It had ${why.treatment}; its ${siblings} for the batch.`,
        `They had ${why.treatment}; their ${siblings} for the batch.`,
      ];
    }
  }
}

/** A sentence inside another: without its capital and its full stop. */
export const asClause = (sentence: string): string =>
  `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`.replace(/\.$/, '');

/** A sentence. */
export const leftOutSays = (why: LeftOutBecause): string => bothSay(why)[0];

/** "Left out: a and b (they are spoiled); c (it mixes two lines).": jars of one reason together. @param jars by their letters, in order */
export function leftOutTogether(
  jars: readonly { readonly letter: string; readonly why: LeftOutBecause }[],
): string {
  const alike = new Map<string, { letters: string[]; many: string }>();
  for (const { letter, why } of jars) {
    const [one, many] = bothSay(why);
    const known = alike.get(one);
    if (known) known.letters.push(letter);
    else alike.set(one, { letters: [letter], many });
  }
  const each = [...alike].map(
    ([one, { letters, many }]) => `${inWords(letters)} (${asClause(letters.length === 1 ? one : many)})`,
  );
  return each.length === 0 ? '' : `Left out: ${each.join('; ')}.`;
}
