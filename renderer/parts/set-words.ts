// The set words in the drawing's order. Written out so that the page's first load needs no record schemas; a test keeps
// them equal to the records'.
export const SET_WORDS = ['runny', 'soft', 'spoonable', 'firm', 'very firm'] as const;
