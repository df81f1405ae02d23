// What people type, brought to one alphabet before it is read: fractions, dashes, odd spaces, full-width characters.

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8',
}; // prettier-ignore

/** Characters that show nothing: soft hyphen, zero-width space and joiners, direction marks, word joiner, byte order mark. */
const INVISIBLE = new Set([0xad, 0x200b, 0x200c, 0x200d, 0x200e, 0x200f, 0x2060, 0xfeff]);

/** Printable ASCII. */
const PLAIN = /^[ -~]*$/;

/**
 * Text with fractions as "1/2", powers as "^8", any dash as "-", any space as one space, full-width characters as
 * plain ones. The letters and their case stay.
 */
export function tidy(text: string): string {
  // Most cells are plain: nothing to bring to one alphabet but their spaces.
  if (PLAIN.test(text)) return (text.includes('  ') ? text.replace(/ {2,}/g, ' ') : text).trim();
  let out = '';
  let inPower = false;
  for (const character of text) {
    if (INVISIBLE.has(character.codePointAt(0) ?? 0)) continue;
    const power = SUPERSCRIPTS.indexOf(character);
    if (power >= 0) {
      out += inPower ? String(power) : `^${power}`;
      inPower = true;
      continue;
    }
    inPower = false;
    const fraction = VULGAR[character];
    // The space keeps "1½" from becoming eleven halves.
    out += fraction ? ` ${fraction} ` : character === 'º' || character === '˚' ? '°' : character;
  }
  return out
    .normalize('NFKC')
    .replace(/[‐‑‒–—―−]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/[‘’‛′]/g, "'")
    .replace(/[“”„‟″«»]/g, '"')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Letters without their marks, lower case: for comparing words across spellings ("Löffel", "loffel"). */
export function plain(text: string): string {
  // Plain characters carry no marks.
  if (PLAIN.test(text)) return tidy(text).toLowerCase();
  return tidy(text)
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/ł/g, 'l')
    .replace(/ø/g, 'o')
    .replace(/æ/g, 'ae')
    .replace(/ß/g, 'ss');
}
