// Contrast of two colours as WCAG 2.2 defines it. Pure.

const channel = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;

/** Relative luminance of #rrggbb (WCAG 2.2, "relative luminance"), 0 to 1. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    channel(Number.parseInt(colour.slice(at, at + 2), 16) / 255),
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours #rrggbb (WCAG 2.2, "contrast ratio"), 1 to 21. */
export function contrast(first: string, second: string): number {
  const [a, b] = [luminance(first), luminance(second)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
