// How wide a text is in the drawing's lettering, measured once each.
const known = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;
let face = '';

/** Width in screen pixels at 15.5 px. Measures again once the bundled font has arrived. */
export function textWidth(text: string): number {
  const font = "500 15.5px 'Atkinson Hyperlegible Next Variable', sans-serif";
  const loaded = document.fonts.check(font);
  const now = `${font} ${loaded}`;
  if (face !== now) {
    face = now;
    known.clear();
  }
  const before = known.get(text);
  if (before !== undefined) return before;
  pen ??= document.createElement('canvas').getContext('2d');
  if (pen === null) return text.length * 9;
  pen.font = font;
  const width = Math.ceil(pen.measureText(text).width) + 2;
  known.set(text, width);
  return width;
}
