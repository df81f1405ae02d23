// What reading a short text came to. Notes say the same things in thousands of cells, and reading one takes far longer than
// looking it up.

/** Texts that are remembered of one reading; once there are more, all are forgotten. */
const MOST = 20_000;
/** A longer text is seldom met twice. */
const LONGEST = 200;

/**
 * The same function with what it came to remembered by text.
 * @param read gives the same for the same text and options, and nobody changes what it gives
 * @param named tells options apart; a text follows
 */
export function remembered<T, O extends readonly unknown[]>(
  read: (text: string, ...options: O) => T,
  named: (...options: O) => string = () => '',
): (text: string, ...options: O) => T {
  const known = new Map<string, { readonly value: T }>();
  return (text, ...options) => {
    if (text.length > LONGEST) return read(text, ...options);
    const key = named(...options) + text;
    const before = known.get(key);
    if (before) return before.value;
    const value = read(text, ...options);
    if (known.size >= MOST) known.clear();
    known.set(key, { value });
    return value;
  };
}
