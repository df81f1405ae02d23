// A line batch by batch, as a plot that a printer keeps: dots, and the level of its early batches as a broken line. Pure.
import { escaped } from '../markup';

export interface TrendDot {
  readonly label: string;
  /** 0 to 100; null where it can't be told. */
  readonly score: number | null;
  /** A first batch, or one that can't be compared. */
  readonly hollow: boolean;
}

const WIDTH = 680;
const HEIGHT = 210;
const LEFT = 34;
const BOTTOM = 26;
const TOP = 8;

/** @param early level of the early batches, 0 to 100; null where it is not known */
export function trendPlot(dots: readonly TrendDot[], early: number | null, name: string): string {
  const step = (WIDTH - LEFT - 20) / Math.max(1, dots.length - 1);
  const x = (at: number): number => LEFT + 10 + (dots.length === 1 ? (WIDTH - LEFT) / 2 : at * step);
  const y = (score: number): number => TOP + (HEIGHT - TOP - BOTTOM) * (1 - Math.min(100, Math.max(0, score)) / 100);
  const grid = [0, 25, 50, 75, 100].map((score) => `<path d="M${LEFT} ${y(score).toFixed(1)}H${WIDTH}" stroke="#ccc"/><text x="${LEFT - 6}" y="${(y(score) + 4).toFixed(1)}" text-anchor="end">${score}</text>`);
  const level = early === null ? '' : `<path d="M${LEFT} ${y(early).toFixed(1)}H${WIDTH}" stroke="#000" stroke-dasharray="7 5"/>`;
  const drawn = dots.flatMap(({ score, hollow }, at) =>
    score === null ? [] : [`<circle cx="${x(at).toFixed(1)}" cy="${y(score).toFixed(1)}" r="${dots.length > 60 ? 2.5 : 4.2}" fill="${hollow ? '#fff' : '#000'}" stroke="#000" stroke-width="1.4"/>`]);
  // As many days as stand beside each other.
  const every = Math.max(1, Math.ceil(135 / step));
  const days = dots.map(({ label }, at) => {
    if (at % every !== 0) return '';
    const anchor = at === 0 ? 'start' : at === dots.length - 1 ? 'end' : 'middle';
    return `<text x="${(at === 0 ? LEFT : x(at)).toFixed(1)}" y="${HEIGHT - 6}" text-anchor="${anchor}">${escaped(label)}</text>`;
  });
  return `<svg class="plot" width="100%" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escaped(name)}" font-size="12" font-family="Arial, Liberation Sans, sans-serif"><g>${grid.join('')}</g>${level}${drawn.join('')}${days.join('')}</svg>`;
} // prettier-ignore
