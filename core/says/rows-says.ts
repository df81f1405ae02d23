// The words of a sheet of rows to be filled in by hand: the order in which a batch is typed in.
export const ROWS_TITLE = 'Jars, a row each';

/** What each column asks, and how much of the width it takes (in 100). */
export const ROW_HEADS: readonly { readonly head: string; readonly part: number }[] = [
  { head: 'Day, or about when', part: 11 },
  { head: 'Jar', part: 5 },
  { head: 'Seeded from', part: 12 },
  { head: 'How much of it', part: 8 },
  { head: 'Stirred in, how much', part: 14 },
  { head: 'Milk, how much', part: 10 },
  { head: 'Hours, °C or °F', part: 9 },
  { head: 'Sour and clean? Curd holds?', part: 10 },
  { head: 'How it set', part: 8 },
  { head: 'Anything else', part: 13 },
];

export const ROW_HINTS: readonly string[] = [
  'Leave empty what you do not know: it stays not noted. “Plain” where nothing was stirred in; “a or b” where it was one of them and nobody is sure, “?” where nobody knows.',
  'How it set: runny, soft, spoonable, firm, very firm. Look and smell first; write down pink, red, orange, black, fuzz, foul smell or foam at once, and discard that jar.',
];
