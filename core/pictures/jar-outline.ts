// The outline of a jar, for the screen and for paper alike: a stoneware body with a lid, and what is in it, in a 62 × 66 box.

/** A jar with its lid, in drawing pixels (one screen pixel each at zoom 1). */
export const JAR = { width: 62, height: 66, inletY: 44 } as const;
/** A ribbon that brings the whole of a jar's seed. */
export const RIBBON_WIDTH = 8.5;

export const BODY = 'M12 11V12C12 16 2 15 2 25V51Q2 64 15 64H47Q60 64 60 51V25C60 15 50 16 50 12V11Z';
const BELOW = 'V51Q56 60 46 60H16Q6 60 6 51Z';

/**
 * The surface of the contents, loosest first: loose waves, a slack ripple, a spoon's hollow, a level line, and a level
 * block that stands clear of the wall. All lie above the numeral, so that its ink stands on the contents alone: over
 * the glass it would be lost in the dark theme, and hide the surface in both.
 */
export const CONTENTS = [
  `M6 22C10 14 16 14 21 19.5S31 25 37 20S50 13 56 22${BELOW}`,
  `M6 20C14 16 20 16.5 27 19.5S41 23.5 47 20S53 18 56 19.5${BELOW}`,
  `M6 18H17C23 18 23 25.5 31 25.5S39 18 45 18H56${BELOW}`,
  `M6 18H56${BELOW}`,
  'M13 15.5H49Q53 15.5 53 19.5V50Q53 60 45 60H17Q9 60 9 50V19.5Q9 15.5 13 15.5Z',
] as const;
export const SURFACES = CONTENTS.map((path) => path.split(BELOW)[0] ?? path);
export const SURFACE_VERY_FIRM = 'M9 22.5V19.5Q9 15.5 13 15.5H49Q53 15.5 53 19.5V22.5';
