// Why a jar does not speak for its batch, in words.
import type { LeftOutBecause } from '../vigour/comparable';

const HELD_SAYS = {
  'set aside': 'It is set aside because of a spoiled jar: it speaks for none that is not.',
  'from a mate': 'It descends from a set-aside jar: it speaks for none that does not.',
} as const;

/** A sentence. */
export function leftOutSays(why: LeftOutBecause): string {
  switch (why.because) {
    case 'spoiled':
      return 'It is spoiled.';
    case 'unseen':
      return 'Nothing was written down of it: unknown, neither weak nor fine.';
    case 'first batch':
      return 'A first batch is known to be uneven.';
    case 'from sources':
      return 'It was started from sources.';
    case 'mixes lines':
      return 'It mixes two lines.';
    case 'set aside':
      return HELD_SAYS[why.held];
    case 'ran cool':
      return `Its hold ran cool: ${why.celsius.toFixed(1)} °C, usually ${why.usual.toFixed(1)}. The culture can't be judged by it.`;
    case 'other generation':
      return `It is of generation ${why.generation}, the batch about ${Math.round(why.batch)}.`;
    case 'other treatment':
      return `It had ${why.treatment}; its ${why.plain ? 'plain siblings stand' : 'siblings made as usual stand'} for the batch.`;
  }
}
