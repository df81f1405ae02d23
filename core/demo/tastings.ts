// The invented club tastes: once its tasters agree well enough to tell, once they don't. Orders and words are invented.
import { PLAIN } from '../trials/differences';
import type { JarName } from './scenario-shapes';

/** Letters of the jars as they were liked, the best first, and a word for some. */
interface DemoTaster {
  readonly order: string;
  readonly words: Readonly<Record<string, readonly [aspect: string, word: string]>>;
}

export interface DemoTasting {
  readonly batch: `${number}-${number}-${number}`;
  /** When the codes are drawn, and when it is revealed. */
  readonly at: string;
  readonly revealed: string;
  readonly differsIn: string;
  readonly treatments: readonly { readonly jar: JarName; readonly name: string }[];
  readonly served: readonly JarName[];
  readonly tasters: Readonly<Record<string, DemoTaster>>;
}

export const tastings: readonly DemoTasting[] = [
  {
    batch: '2025-12-14',
    at: '2025-12-16T19:30:00Z',
    revealed: '2025-12-16T20:10:00Z',
    differsIn: 'how much oat bran',
    treatments: [
      { jar: '2025-12-14 a', name: PLAIN },
      { jar: '2025-12-14 b', name: PLAIN },
      { jar: '2025-12-14 c', name: '30 mL oat bran' },
      { jar: '2025-12-14 d', name: '38 mL oat bran' },
    ],
    served: ['2025-12-14 a', '2025-12-14 c', '2025-12-14 d'],
    tasters: {
      'taster A': {
        order: 'acd',
        words: { a: ['smoothness', 'smooth'], c: ['texture', 'thin'], d: ['smoothness', 'lumpy'] },
      },
      'taster B': { order: 'acd', words: { a: ['texture', 'thick'], d: ['smoothness', 'a little grainy'] } },
      'taster C': { order: 'acd', words: { a: ['smoothness', 'smooth'], d: ['smoothness', 'lumpy'] } },
      'taster D': { order: 'adc', words: { a: ['taste', 'sour'], c: ['texture', 'thin'] } },
    },
  },
  {
    batch: '2026-02-08',
    at: '2026-02-11T19:00:00Z',
    revealed: '2026-02-11T19:40:00Z',
    differsIn: 'what was stirred in',
    treatments: [
      { jar: '2026-02-08 a', name: PLAIN },
      { jar: '2026-02-08 b', name: PLAIN },
      { jar: '2026-02-08 c', name: 'acacia fibre' },
      { jar: '2026-02-08 d', name: 'chicory inulin' },
    ],
    served: ['2026-02-08 a', '2026-02-08 c', '2026-02-08 d'],
    tasters: {
      'taster A': { order: 'cad', words: { c: ['smoothness', 'smooth'], d: ['taste', 'sweet'] } },
      'taster B': { order: 'acd', words: { a: ['taste', 'sour'], d: ['texture', 'thin'] } },
      'taster C': { order: 'cad', words: { c: ['smoothness', 'smooth'], a: ['texture', 'creamy'] } },
      'taster D': { order: 'dca', words: { d: ['taste', 'sweet'], c: ['taste', 'sweet'] } },
    },
  },
];
