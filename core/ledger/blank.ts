// Text that takes up room in the ledger and none on the screen. Pure, without zod, so that forms can ask too.

/** Whether nothing of a text is seen: spaces, controls, zero-width characters, fillers, the blank Braille cell. */
export const showsNothing = (text: string): boolean =>
  /^[\p{Z}\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}\u2800]*$/u.test(text);
