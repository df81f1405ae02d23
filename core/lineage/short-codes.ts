// A code short enough to be typed from a label: forty of the random bits of a jar's id, so it tells nothing of the jar, its day or
// its keeper. In the letters of Crockford's Base32, which leave out those that are mistaken for figures.

const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const BITS = 40n;

/** "7K3M-9QXV" for an id (UUIDv7, whose last 62 bits are random: RFC 9562, section 5.7). */
export function shortCode(uid: string): string {
  const bits = BigInt(`0x${uid.replaceAll('-', '').slice(-10)}`);
  let code = '';
  for (let shift = BITS - 5n; shift >= 0n; shift -= 5n) code += LETTERS[Number((bits >> shift) & 31n)];
  return `${code.slice(0, 4)}-${code.slice(4)}`;
}

/** A code as it is printed, from one as it is typed: in any case, with or without its dash, O for 0, I and L for 1; else null. */
export function readShortCode(text: string): string | null {
  const plain = text.toUpperCase().replaceAll(/[\s-]/g, '').replaceAll('O', '0').replaceAll(/[IL]/g, '1');
  return /^[0-9A-HJKMNP-TV-Z]{8}$/.test(plain) ? `${plain.slice(0, 4)}-${plain.slice(4)}` : null;
}

/** What a square code may hold that a jar is looked for by: a code, or words that end in one, as on the sheet of a given jar. */
const MOST_WORDS = 2000;

/** The short code in what was read from a square code; null where it holds none. */
export function codeInWords(words: string): string | null {
  const text = words.slice(0, MOST_WORDS).trim();
  const [, last] = /(?:^|\n)Code ([^\n]{8,20})$/.exec(text) ?? [];
  return readShortCode(last ?? text);
}
