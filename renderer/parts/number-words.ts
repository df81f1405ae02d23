// Small numbers as words: "two more". Pure.
const WORDS = [
  'none',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
] as const;

/** "three", and figures from eleven on. */
export const numberWord = (count: number): string => WORDS[count] ?? String(count);
