// What the name of a milk says of its heating. A name that says nothing leaves it unknown: never heated, never raw. Pure.

/** Milk that nobody heated, in the words of keepers and cartons (common practice, no source). */
const RAW =
  /\b(?:raw|un-?pasteuri[sz]ed|(?:non|not)[- ]pasteuri[sz]ed|unheated|not heated|rohmilch|lait cru|leche cruda|latte crudo)\b/iu;
const HEATED =
  /\b(?:(?:ultra[- ]?)?pasteuri[sz]ed|heat[- ]treated|uht|esl|htst|shelf[- ]stable|sterili[sz]ed|boiled|scalded|pasteurisiert\p{L}*|h-milch|pasteurisé)(?!\p{L})/iu;

/** 'raw' or 'heated' as the name says; null where it says neither. Of a name that says both, raw: the careful reading. */
export const heatingOf = (name: string): 'raw' | 'heated' | null =>
  RAW.test(name) ? 'raw' : HEATED.test(name) ? 'heated' : null;
