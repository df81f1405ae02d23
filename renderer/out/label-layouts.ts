// How the keeper's labels are cut, in mm, as it was typed last; and paper to begin with.
import type { LabelLayout } from '../../core/shapes/label-calls';

export const FIGURES = [
  ['pageWidth', 'Page width'],
  ['pageHeight', 'Page height'],
  ['columns', 'Labels across'],
  ['rows', 'Labels down'],
  ['width', 'Label width'],
  ['height', 'Label height'],
  ['left', 'Left margin'],
  ['top', 'Top margin'],
  ['across', 'Gap across'],
  ['down', 'Gap down'],
  ['skip', 'Labels used already'],
] as const;
type Figure = (typeof FIGURES)[number][0];
export type Typed = Readonly<Record<Figure, string>>;

const typed = (...figures: number[]): Typed =>
  Object.fromEntries(FIGURES.map(([name], at) => [name, String(figures[at] ?? 0)])) as Typed;

/** Sheets of the two common papers, and a roll: one label is one page. */
export const PAPERS = {
  A4: typed(210, 297, 2, 4, 99, 67, 5, 12, 2, 0, 0),
  Letter: typed(215.9, 279.4, 2, 4, 100, 63, 6, 12, 2, 0, 0),
  roll: typed(89, 62, 1, 1, 89, 62, 0, 0, 0, 0, 0),
} as const;
export type Paper = keyof typeof PAPERS;

/** The layout that was typed; null while a figure is none. */
export function layoutOf(said: Typed): LabelLayout | null {
  const figure = (name: Figure): number => Number(said[name].trim().replace(',', '.') || Number.NaN);
  if (FIGURES.some(([name]) => !(figure(name) >= 0) || figure(name) > 1000)) return null;
  const [rows, columns, skip] = [figure('rows'), figure('columns'), figure('skip')];
  const [page, label] = [
    { width: figure('pageWidth'), height: figure('pageHeight') },
    { width: figure('width'), height: figure('height') },
  ];
  const whole = [rows, columns, skip].every((one) => Number.isInteger(one));
  const large = [page.width, page.height, label.width, label.height].every((side) => side >= 10);
  if (!whole || !large || rows < 1 || columns < 1 || rows > 50 || columns > 20 || skip > 999) return null;
  return {
    page, rows, columns, label, skip,
    margin: { top: figure('top'), left: figure('left') },
    gap: { across: figure('across'), down: figure('down') },
  }; // prettier-ignore
}
