// The labels under the jars: always at least 15 px on the screen, never on one another.
import { memo, useMemo } from 'react';
import type { Drawing, JarView } from '../../core/contract';
import type { PlacedStrip } from './founders';
import { stripScale } from './founders';
import { type Geometry, JAR, LABEL_HEIGHT, STRIP_HEIGHT, type StripSize } from './geometry';
import { type Side, writtenLabels } from './labels';
import { textWidth } from './measure';
import { type Kin, listOf, type Lit } from './kin';

const OneLabel = memo(function OneLabel(props: {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly side: Side;
  readonly lit: boolean;
}) {
  return (
    <text className={`jar-label ${props.side}${props.lit ? ' lit' : ''}`} x={props.x} y={props.y}>
      {props.text}
    </text>
  );
});

/** Sides where a label crosses no ribbon of its own jar first: right unless a descendant lies above, left unless the seed does. */
function sidesOf(drawing: Drawing, kin: Kin, index: number): readonly Side[] {
  const row = drawing.y[index] ?? 0;
  const seed = kin.parent[index] ?? -1;
  const topChild = listOf(kin.children, index)[0];
  const right = topChild === undefined || (drawing.y[topChild] ?? 0) > row - 0.1;
  const left = seed >= 0 && (drawing.y[seed] ?? 0) > row - 0.1;
  return right
    ? ['under', 'right', ...(left ? ['left' as const] : [])]
    : left
      ? ['under', 'left', 'right']
      : ['under', 'right'];
}

interface Props {
  readonly drawing: Drawing;
  readonly geometry: Geometry;
  readonly view: { readonly k: number };
  readonly mounted: readonly number[];
  readonly views: ReadonlyMap<number, JarView>;
  /** Written before all others and in any case: the chosen jar, then the focused one; null: none. */
  readonly first: number | null;
  readonly second: number | null;
  readonly strips: readonly PlacedStrip[];
  readonly strip: StripSize;
  readonly kin: Kin;
  readonly lit: Lit | null;
  readonly cornerX: number;
  readonly cornerY: number;
}

export const Labels = memo(function Labels(props: Props) {
  const { drawing, geometry, view, mounted, views, first, second, strips, strip, kin } = props;
  const { k } = view;
  const written = useMemo(() => {
    const x = (index: number): number => (drawing.x[index] ?? 0) * geometry.columnStep * k;
    const y = (index: number): number => (drawing.y[index] ?? 0) * geometry.rowStep * k;
    const lettering = Math.max(1, k);
    const places = mounted.flatMap((index) => {
      const seen = views.get(drawing.keys[index] ?? 0);
      if (!seen || seen.label === '') return [];
      return [
        {
          index,
          label: seen.label,
          middle: x(index) + (JAR.width / 2) * k,
          top: y(index) + (JAR.height + 1) * k,
          besideLeft: x(index) + JAR.width * k + 4,
          besideRight: x(index) - 4,
          besideTop: y(index) - 3,
          sides: sidesOf(drawing, kin, index),
          rank: index === first ? 2 : index === second ? 1 : 0,
          day: seen.madeOn ?? '',
          column: drawing.generation[index] ?? 0,
        },
      ];
    });
    const jars = mounted.flatMap((index) => {
      const [left, right, top, bottom] = [
        x(index),
        x(index) + JAR.width * k,
        y(index),
        y(index) + JAR.height * k,
      ];
      // The place under a jar is its own label's: another's written there would be read as this one's.
      const under = { left: left + 6, right: right - 6, top: bottom, bottom: bottom + LABEL_HEIGHT * 0.7 };
      return [
        { owner: index, box: { left, right, top, bottom } },
        { owner: index, box: under },
      ];
    });
    const slips = strips.map((placed) => {
      const top = (placed.y + JAR.inletY) * k + placed.lift * stripScale(k) * k;
      const right = (placed.x - strip.reach * stripScale(k)) * k;
      return {
        owner: -1,
        box: {
          left: right - strip.width * stripScale(k) * k,
          right,
          top,
          bottom: top + STRIP_HEIGHT * stripScale(k) * k,
        },
      };
    });
    return writtenLabels(
      places,
      [...jars, ...slips],
      LABEL_HEIGHT * lettering,
      (text) => textWidth(text) * lettering,
    );
  }, [drawing, geometry, k, mounted, views, first, second, strips, strip, kin]);
  const across = (side: Side): number =>
    side === 'under' ? JAR.width / 2 : side === 'right' ? JAR.width + 4 / k : -4 / k;
  return (
    <g className="labels" aria-hidden="true">
      {[...written].map(([index, { text, side }]) => (
        <OneLabel
          key={drawing.keys[index]}
          text={text}
          side={side}
          x={(drawing.x[index] ?? 0) * geometry.columnStep + across(side) - props.cornerX}
          y={
            (drawing.y[index] ?? 0) * geometry.rowStep +
            (side === 'under' ? JAR.height + 1 : -3 / k) -
            props.cornerY
          }
          lit={props.lit?.[index] === 1}
        />
      ))}
    </g>
  );
});
