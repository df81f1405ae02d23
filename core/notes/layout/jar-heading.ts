// A heading that names a jar: above columns of its own in a wide sheet.

/** A heading that names a jar and nothing else: "Jar A", merged above the columns of that jar. */
export const JAR_HEADING = new RegExp(
  `^(?:jar|glass?|pot|bocal|frasco|tarro|vasetto|burk|krukke|słoik)\\s*[#(]?\\s*(?:\\p{L}|\\d{1,2})\\)?$`,
  'iu',
);
