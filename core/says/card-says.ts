// The words of a making card: letters first, seed taken first, ice water before the fridge (habits that planning serves: common
// practice, no source; milk, warmth and the gate: the cautions that the program shows).
import type { MakingCard } from '../shapes/card-calls';
import { FOOD_CAUTION } from './food-caution-says';

export interface CardFacts {
  readonly title: string;
  readonly jars: MakingCard['jars'];
  /** "3 tbsp of 22 Apr b": what each jar is seeded with, where all have the same. */
  readonly seed: string | null;
  /** Something of it comes from a jar, something from a product. */
  readonly fromJar: boolean;
  readonly fromPieces: boolean;
  /** "bath set to 38 °C", "36 h", "20:00": as far as they are planned. */
  readonly warmth: string | null;
  readonly hours: number | null;
  readonly begins: string | null;
  readonly looks: readonly { readonly hours: number; readonly at: string | null }[];
  readonly out: string | null;
}

const letters = (facts: CardFacts): string => facts.jars.map(({ letter }) => letter).join(', ');

function seedSteps({ seed, fromJar, fromPieces, jars }: CardFacts): string[] {
  const each =
    seed === null ? 'as the table says for each jar' : jars.length === 1 ? seed : `${seed} for each jar`;
  return [
    ...(fromJar
      ? [
          'Look at the seed and smell it: sour and clean, nothing pink, red, orange, black or fuzzy. Otherwise stop here.',
          `Take the seed first, before anything else is opened: ${each}. From an unopened pot if there is one.`,
        ]
      : []),
    ...(fromPieces && !fromJar
      ? [`Count the pieces into each jar: ${each}. Empty capsules, crush tablets.`]
      : []),
  ];
}

function warmthSteps({ warmth, hours, begins, looks, out, jars }: CardFacts): string[] {
  const into = ['Into the warmth', warmth, begins === null ? null : /^\d\d:/.test(begins) ? `at ${begins}` : begins].filter(Boolean).join(', ');
  const it = jars.length === 1 ? 'it' : 'each';
  return [
    `${into}. Lids loose. Write down when.`,
    ...looks.map(({ hours: hour, at }) => `At ${hour} h${at === null ? '' : ` (${at})`}: look at ${it} and smell. Nobody tastes yet.`),
    `${hours === null ? 'When it has set' : `After ${hours} h${out === null ? '' : ` (${out})`}`}: take out, look, then smell, before anyone tastes.`,
  ];
} // prettier-ignore

/** The card. */
export function makingCard(facts: CardFacts): MakingCard {
  const many = facts.jars.length;
  return {
    title: `Making card: ${facts.title}`,
    intro: [
      many === 1 ? 'one jar' : `${many} jars`,
      facts.seed,
      facts.begins === null ? null : `begins ${facts.begins}`,
    ]
      .filter(Boolean)
      .join(' · '),
    parts: [
      {
        head: 'Before',
        steps: [
          'Clean and scald jars, lids, spoons and whatever else touches the milk.',
          `Put the letters on the jars first: ${letters(facts)}.`,
          'Weigh each jar empty and write it down: then it can be filled by weight.',
        ],
      },
      { head: 'Seed', steps: seedSteps(facts) },
      {
        head: 'Milk and what is stirred in',
        steps: [
          'Milk from a carton opened today, or heated to 82–93 °C (180–200 °F) for 10 minutes and cooled. Warm it to about 32–35 °C (90–95 °F).',
          'Stir what goes in to a slurry with a little of the milk first. Write down what really went in.',
          'Stir in the seed, fill up, leave about 1 cm (half an inch) of room.',
        ],
      },
      { head: 'Warmth', steps: warmthSteps(facts) },
      {
        head: 'After',
        steps: [
          'Out of the bath into ice water for an hour or two, then into the fridge at or below 4 °C (40 °F).',
        ],
      },
    ].filter(({ steps }) => steps.length > 0),
    jars: facts.jars,
    cautions: [
      'Pink, red, orange, black or fuzzy growth, a foul smell, foam, a lifted lid or bath water that got in: discard the whole jar, do not taste it, do not seed from it.',
      'Milk held warm is what spoilage organisms like, too. Thick but not sour is neither food nor seed.',
      FOOD_CAUTION,
    ],
  };
}
