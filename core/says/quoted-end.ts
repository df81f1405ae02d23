/**
 * A keeper's own words in quotes, as the end of a sentence: a full stop stands behind the quotes unless the words end one
 * themselves. @param words of one line, trimmed
 */
export const quotedEnd = (words: string): string => (/[.!?]$/.test(words) ? `“${words}”` : `“${words}”.`);

/** A keeper's own words on one line, cut where they run on. @param most characters */
export function shortened(words: string, most: number): string {
  const said = words.trim().replaceAll(/\s+/g, ' ');
  return said.length > most ? `${said.slice(0, most - 1).trimEnd()}…` : said;
}
