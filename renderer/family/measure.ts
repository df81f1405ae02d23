// How wide a text is in the drawing's lettering, measured once each.
const FONT = "500 15.5px 'Atkinson Hyperlegible Next Variable', sans-serif";
const known = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

/** Ready to measure; where more of the lettering comes later (letters of other languages), all is measured again. */
function penInHand(): CanvasRenderingContext2D | null {
  const taken = document.createElement('canvas').getContext('2d');
  if (taken === null) return null;
  taken.font = FONT;
  // Told of rather than asked about: to ask the browser costs more than to measure.
  document.fonts.addEventListener('loadingdone', () => {
    known.clear();
    taken.font = FONT;
  });
  return taken;
}

/** Width in screen pixels at 15.5 px. The page is drawn once its lettering is there (theme/lettering.ts). */
export function textWidth(text: string): number {
  const before = known.get(text);
  if (before !== undefined) return before;
  pen ??= penInHand();
  if (pen === null) return text.length * 9;
  const width = Math.ceil(pen.measureText(text).width) + 2;
  known.set(text, width);
  return width;
}
