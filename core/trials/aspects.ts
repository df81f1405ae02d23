// What a taster is asked about each bowl, in words to choose from. Overall alone is ranked and tested; these are counted.
export const ASPECTS = [
  { aspect: 'texture', words: ['thin', 'creamy', 'thick', 'jelly-like'] },
  { aspect: 'smoothness', words: ['smooth', 'a little grainy', 'lumpy'] },
  { aspect: 'taste', words: ['mild', 'sour', 'sweet', 'bitter'] },
] as const;
