/** The bits of a drawing's `flags` column: what is shown of a jar besides how it set. */
export const FLAG = {
  spoiled: 1,
  setAside: 2,
  look: 4,
  onShelf: 8,
  outcomeKnown: 16,
  lost: 32,
  weak: 64,
  atLeast: 128,
} as const;
