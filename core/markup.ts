// Text put into HTML and SVG.

/** A text as it stands in a document or an attribute: whatever a keeper typed stays text. */
export const escaped = (text: string): string =>
  text
    // What XML can't hold at all: control characters and halves of letters.
    .replaceAll(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
