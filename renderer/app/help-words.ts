// The words a keeper meets on the screens, in plain English: the design's meanings, shorter.
export const WORDS: readonly (readonly [word: string, meaning: string])[] = [
  [
    'generation',
    'How many jars deep a jar stands: 1 for a jar started from a product, and one more than the deepest jar that seeded it.',
  ],
  [
    'doublings',
    'How often the culture had to double to grow from the spoonful put in back to a full jar, added up down the line.',
  ],
  [
    'share',
    'What part of all the seed in a jar one seeding brought. The shares of a jar add up to all of it.',
  ],
  ['line', 'Jars started together from sources, and everything seeded from them since.'],
  ['hold', 'The hours in warmth in which a batch sets.'],
  [
    'set aside',
    'Put aside because a jar it came from, or one kept warm with it, spoiled. Not eaten and not used as seed, until you write down why it is all right to use.',
  ],
  [
    'check at take-out',
    'What is asked before anyone tastes: does it smell sour and clean and does a curd hold together, or does a meter show pH 4.6 or less, and is there no sign of spoiling?',
  ],
  [
    'vigour',
    'How well a jar set, from 0 to 100, beside the early batches of its own line. It says nothing about safety.',
  ],
  [
    'standing',
    'What the vigour of a line’s batches shows so far: too few to say, steady, no slip seen, slipping or worn out.',
  ],
];
