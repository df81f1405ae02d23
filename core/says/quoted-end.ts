/**
 * A keeper's own words in quotes, as the end of a sentence: a full stop stands behind the quotes unless the words end one
 * themselves. @param words of one line, trimmed
 */
export const quotedEnd = (words: string): string => (/[.!?]$/.test(words) ? `“${words}”` : `“${words}”.`);
