// A word filled in while its beginning is typed. Pure.

/** The word that begins with what is typed; null where none does, or nothing is. Case is the word's. */
export function completed(typed: string, words: readonly string[]): string | null {
  const start = typed.trimStart().toLowerCase();
  if (start === '') return null;
  return words.find((word) => word.toLowerCase().startsWith(start)) ?? null;
}
