// Which colour lies on which. Each pair is held to the contrast that it needs.
import type { colours } from '../../renderer/theme/tokens';

type ColourName = keyof typeof colours;

interface Pair {
  readonly front: ColourName;
  readonly back: ColourName;
  /** WCAG 2.2: 4.5 for text (1.4.3), 3 for graphics that carry meaning (1.4.11). */
  readonly least: 4.5 | 3;
}
const text = (front: ColourName, ...backs: ColourName[]): Pair[] =>
  backs.map((back) => ({ front, back, least: 4.5 }));
const graphic = (front: ColourName, ...backs: ColourName[]): Pair[] =>
  backs.map((back) => ({ front, back, least: 3 }));

/** Every pair a screen may use. A pair that is not here is not used. */
export const pairs: readonly Pair[] = [
  ...text('ink', 'paper', 'linen', 'cloth', 'accent-wash', 'caution-wash', 'label'),
  ...text('ink-soft', 'paper', 'linen', 'cloth', 'label', 'fill-dim', 'jar-glass'),
  ...text('ink', 'tub'),
  ...text('ink-soft', 'tub'),
  ...graphic('ribbon', 'tub'),
  ...text('accent', 'paper', 'linen', 'accent-wash'),
  ...text('accent-ink', 'accent'),
  ...text('caution', 'paper', 'linen', 'caution-wash'),
  ...text('jar-numeral', 'fill-1', 'fill-2', 'fill-3', 'fill-4', 'fill-5'),
  ...text('jar-numeral-open', 'jar-glass', 'paper'),
  ...graphic('edge', 'paper', 'linen'),
  ...graphic('focus', 'paper', 'linen', 'cloth', 'jar-glass'),
  ...graphic('jar-edge', 'paper', 'jar-glass', 'fill-dim'),
  // Above its surface a jar is glass: paper's neighbour by day (told by the surface line), far from the contents by night.
  ...graphic('jar-surface', 'fill-1', 'fill-2', 'fill-3', 'fill-4'),
  ...graphic('caution', 'jar-glass', 'label'),
  ...graphic('label-cell', 'label'),
  ...graphic('ribbon', 'paper'),
  ...graphic('caution', 'linen'),
  ...graphic('hatch', 'fill-1', 'fill-3', 'fill-5'),
];
