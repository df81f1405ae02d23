/** What no figure can say, wherever the job is explained, on the screen and on paper. */
export const FOOD_CAUTION =
  'No figure here is a food-safety test. Follow your local food-safety authority, and when in doubt throw the jar out. ' +
  'People who are pregnant, frail, seriously ill, with weakened immunity or under treatment, and whoever feeds a baby under one ' +
  'year, ask a doctor before live cultures are eaten.';
