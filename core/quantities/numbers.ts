// Numbers as people write them: "2½", "1 1/2", "1,5", "1.000", "2-3", "2×10^8", "half a", "10 billion".
import { tidy } from './tidy-text';

/** Which mark parts whole from fraction, where that is known (from a whole column, or the keeper's choice). */
export type DecimalMark = 'point' | 'comma';

export interface ReadNumber {
  /** The number; the middle of a range. */
  readonly value: number;
  /** Both ends, where a range was written. */
  readonly range: readonly [number, number] | null;
  /** "about", "~", "ca." stood before it. */
  readonly about: boolean;
  /** How many characters of the tidied text were read, from its start. */
  readonly length: number;
}

const DIGITS = String.raw`\d+(?:[ ']\d{3})+(?![\d])|\d+(?:[.,]\d+)*|[.,]\d+`;
const PLAIN = new RegExp(`^(?:${DIGITS})`);
const FRACTION = /^(\d{1,3})\s*\/\s*(\d{1,3})(?![\d/])/;
const MIXED =
  /^(\d{1,4})(?:\s+|\s*-\s*|\s*(?:and|und|et|y|e|en|och|og|i)\s+)(\d{1,2})\s*\/\s*(\d{1,3})(?![\d/])/i;
const ABOUT =
  /^(?:~|≈|about|approx(?:imately)?\.?|around|roughly|almost|ca\.?|circa|environ|env\.?|etwa|ungef(?:ä|ae)hr|rund|unos|unas|cerca de|aprox\.?|ongeveer|ungef(?:ä|å)r|cirka|około|ok\.)\s*/i;
const WORDS: readonly (readonly [RegExp, number])[] = [
  [/^(?:a |one )?(?:half|halves)(?: an?| of an?)?(?=\s|$)/i, 0.5],
  [/^(?:eine?n? )?halbe[rsn]?(?=\s|$)/i, 0.5],
  [/^(?:une? )?demi(?:e|-)?(?=\s|-|$)/i, 0.5],
  [/^(?:medi[oa]|mezz[oa]|meia|meio|halve?|halv[t]?|pół)(?=\s|$)/i, 0.5],
  [
    /^(?:a )?quarter(?: of an?| an?)?(?=\s+(?:cup|pint|gallon|teaspoon|tablespoon|tsp|tbsp|liter|litre)s?\b)/i,
    0.25,
  ],
  [/^(?:an?|one|eine?[nrs]?|une?|un[oa]?|een|één|en|ett|et|um|uma|jeden|jedna|jedną)(?=\s)/i, 1],
  [/^(?:a couple(?: of)?|two|zwei|deux|dos|due|twee|dois|duas|två|to|dwa|dwie)(?=\s)/i, 2],
  [/^(?:three|drei|trois|tres|tre|drie|três|trzy)(?=\s)/i, 3],
  [/^(?:four|vier|quatre|cuatro|quattro|quatro|fyra|fire|cztery)(?=\s)/i, 4],
  [/^(?:five|fünf|cinq|cinco|cinque|vijf|fem|pięć)(?=\s)/i, 5],
  [/^(?:six|sechs|seis|sei|zes|sex|seks|sześć)(?=\s)/i, 6],
  [/^(?:seven|sieben|sept|siete|sette|zeven|sju|syv|siedem)(?=\s)/i, 7],
  [/^(?:eight|acht|huit|ocho|otto|oito|åtta|åtte|otte|osiem)(?=\s)/i, 8],
  [/^(?:nine|neun|neuf|nueve|nove|negen|nio|ni|dziewięć)(?=\s)/i, 9],
  [/^(?:ten|zehn|dix|diez|dieci|tien|dez|tio|ti|dziesięć)(?=\s)/i, 10],
  [/^(?:twelve|a dozen|zwölf|douze|doce|dodici|twaalf|doze|tolv|dwanaście)(?=\s)/i, 12],
];
const SCALES: readonly (readonly [RegExp, number])[] = [
  [/^\s*(?:trillion|billionen)(?![a-z])/i, 1e12],
  [
    /^\s*(?:billion|bn|milliarden?|milliards?|mrd\.?|mld\.?|miljard|miliard[yów]*|mil millones|bilh(?:ão|ões)|miliard[oi])(?![a-z])/i,
    1e9,
  ],
  [
    /^\s*(?:million(?:en|s)?|mio\.?|millones|milion[iy]|milh(?:ão|ões)|miljoen|miljoner|milioner|mln)(?![a-z])/i,
    1e6,
  ],
];

/**
 * The value of a run of digits with marks, e.g. "1,5", "1.000", "1 000,5".
 * Two different marks: the last is the decimal one. One mark once, followed by exactly three digits: thousands for a
 * comma unless the comma is known to be the decimal mark; thousands for a point only where it is known to be. Pure.
 */
export function digitsValue(digits: string, decimal?: DecimalMark): number {
  const text = digits.replace(/[ ']/g, '');
  const point = text.lastIndexOf('.');
  const comma = text.lastIndexOf(',');
  if (point >= 0 && comma >= 0) {
    const mark = point > comma ? '.' : ',';
    return Number(text.replaceAll(mark === '.' ? ',' : '.', '').replace(mark, '.'));
  }
  const mark = point >= 0 ? '.' : comma >= 0 ? ',' : null;
  if (mark === null) return Number(text);
  const parts = text.split(mark);
  const grouped = parts.slice(1).every((part) => part.length === 3) && /^[1-9]\d{0,2}$/.test(parts[0] ?? '');
  if (parts.length > 2) return grouped ? Number(parts.join('')) : Number.NaN;
  const isDecimal =
    decimal === undefined ? mark === '.' || !grouped : (mark === '.') === (decimal === 'point') || !grouped;
  return Number(isDecimal ? parts.join('.') : parts.join(''));
}

function one(
  text: string,
  decimal: DecimalMark | undefined,
  words: boolean,
): { value: number; length: number } | null {
  const mixed = MIXED.exec(text);
  if (mixed && Number(mixed[2]) < Number(mixed[3])) {
    return { value: Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]), length: mixed[0].length };
  }
  const fraction = FRACTION.exec(text);
  if (fraction && Number(fraction[2]) > 0) {
    return { value: Number(fraction[1]) / Number(fraction[2]), length: fraction[0].length };
  }
  const digits = PLAIN.exec(text);
  if (digits) {
    let value = digitsValue(digits[0], decimal);
    let length = digits[0].length;
    if (Number.isNaN(value)) return null;
    const power =
      /^\s*[x×*·]\s*10\s*(?:\^|e|\*\*)\s*(\d{1,2})/i.exec(text.slice(length)) ??
      /^e\+?(\d{1,2})(?!\w)/i.exec(text.slice(length));
    if (power) {
      value *= 10 ** Number(power[1]);
      length += power[0].length;
    } else if (digits[0] === '10') {
      const bare = /^\s*\^\s*(\d{1,2})/.exec(text.slice(length));
      if (bare) return { value: 10 ** Number(bare[1]), length: length + bare[0].length };
    }
    for (const [scale, times] of SCALES) {
      const said = scale.exec(text.slice(length));
      if (said) return { value: value * times, length: length + said[0].length };
    }
    return { value, length };
  }
  if (words) {
    for (const [word, value] of WORDS) {
      const said = word.exec(text);
      if (said) return { value, length: said[0].length };
    }
  }
  return null;
}

/**
 * The number at the start of text, or null. Negative numbers are not read here: an amount is never negative.
 * @param text any text; it is tidied first. @param words whether "half", "two" and their like count.
 */
export function readNumber(text: string, decimal?: DecimalMark, words = true): ReadNumber | null {
  const clean = tidy(text);
  const about = ABOUT.exec(clean)?.[0].length ?? 0;
  const first = one(clean.slice(about), decimal, words);
  if (!first) return null;
  let end = about + first.length;
  const half = /^\s*(?:and a half|und eine? halbe?r?|et demie?|y medi[oa])(?![a-z])/i.exec(clean.slice(end));
  const value = first.value + (half ? 0.5 : 0);
  end += half?.[0].length ?? 0;
  const between = /^\s*(?:-|to|or|bis|oder|à|ou|a|o|tot|of|till|til|do)\s*(?=[\d.,])/i.exec(clean.slice(end));
  // "5/9 a 3 tbsp" is a jar of a day, "1 A 3 tbsp" a jar.
  const letter = /^ *(?:[AO] *$|[ao] *$)/.exec(between?.[0] ?? '');
  const jar = letter !== null && (/[AO]/.test(letter[0]) || clean.slice(about, end).includes('/'));
  if (between && !jar) {
    const second = one(clean.slice(end + between[0].length), decimal, false);
    if (second && second.value > value) {
      return {
        value: (value + second.value) / 2,
        range: [value, second.value],
        about: about > 0,
        length: end + between[0].length + second.length,
      };
    }
  }
  return { value, range: null, about: about > 0, length: end };
}
