// On the calendar: a fine line down through the jars where a month begins, its name above, the year where it is first
// seen and where it turns. Moves with the drawing by CSS variables.
import { type CSSProperties, memo } from 'react';
import type { Drawing } from '../../core/contract';
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry, Room, View } from './geometry';
import { textWidth } from './measure';

export interface Month {
  readonly x: number;
  readonly text: string;
}

const GAP = 14;

/**
 * The names to write at a zoom: as many as have room, by threes, by half years, then by years.
 * @param ticks beginnings of months, in drawing pixels
 * @param from the window's left edge in drawing pixels: the first name right of it says its year
 */
export function writtenMonths(
  ticks: readonly { readonly x: number; readonly month: string; readonly year: string }[],
  k: number,
  from: number,
  measure: (text: string) => number,
): Month[] {
  for (const every of [1, 2, 3, 6, 12, 24, 60, 120]) {
    let [right, said] = [-Infinity, ''];
    let fits = true;
    const months = ticks.flatMap(({ x, month, year: own }, at) => {
      if (at % every !== 0) return [];
      const seen = x >= from;
      const text = seen && own !== said ? `${month} ${own}` : month;
      if (seen) said = own;
      const half = measure(text) / 2;
      if (x * k - half < right + GAP) fits = false;
      right = x * k + half;
      return [{ x, text }];
    });
    if (fits || months.length < 2) return months;
  }
  return [];
}

export const Months = memo(function Months(props: {
  readonly drawing: Pick<Drawing, 'ticks'>;
  readonly geometry: Geometry;
  readonly view: View;
  readonly room: Room;
}) {
  const { drawing, geometry, view, room } = props;
  const screen = room.right - room.left;
  let year = '';
  const near = drawing.ticks
    .map(({ x, label }) => {
      // "Nov", and where the year turns "Jan 2026".
      const [month = '', own] = label.split(' ');
      year = own ?? year;
      return { x: x * geometry.columnStep + JAR.width / 2, month, year };
    })
    .filter(({ x }) => {
      const at = x * view.k + view.tx;
      return at > room.left - screen && at < room.right + screen;
    });
  const along = (x: number) => ({ '--x': x }) as CSSProperties;
  return (
    <div className="family-months" aria-hidden="true">
      {near.map(({ x }) => (
        <span key={x} className="month-line" style={along(x)} />
      ))}
      {writtenMonths(near, view.k, (room.left - view.tx) / view.k, textWidth).map(({ x, text }) => (
        <span key={`${x} ${text}`} className="month-name" style={along(x)}>
          {text}
        </span>
      ))}
    </div>
  );
});
