// The days and letters of the jars: always at least 15 px on the screen, never on one another.
import { dayInOrder } from '../../core/lineage/lineage-shapes';
import { memo, useMemo } from 'react';
import type { JarView } from '../../core/contract';
import { LINE, writtenLabels, type Written } from './dates';
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry, View } from './geometry';
import type { Lit } from './kin';
import type { Placed } from './lanes';
import { textWidth } from './measure';

const OneLabel = memo(function OneLabel(props: {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly kind: string;
  readonly lit: boolean;
}) {
  return (
    <text className={`jar-label ${props.kind}${props.lit ? ' lit' : ''}`} x={props.x} y={props.y}>
      {props.text}
    </text>
  );
});

/** The whole name of the jar pointed at, on a tag: it may hang over the lid of the jar below. */
function Tag({ label, x, y, k }: { readonly label: string } & Readonly<Record<'x' | 'y' | 'k', number>>) {
  const scale = Math.max(1, k) / k;
  // Its lettering is bold, a little wider than what is measured.
  const width = (textWidth(label) * 1.08 + 16) * scale;
  const height = (LINE + 6) * scale;
  return (
    <g className="name-tag">
      <rect x={x - width / 2} y={y - 1 / k} width={width} height={height} rx={5 * scale} />
      <OneLabel text={label} kind="above name" x={x} y={y + 3 * scale} lit />
    </g>
  );
}

/** Most rows between a lane's days and the jars they are said of. */
const DAYS_ABOVE = 4;

interface Props {
  readonly drawing: Placed;
  readonly geometry: Geometry;
  readonly view: View;
  readonly left: number;
  readonly right: number;
  readonly mounted: readonly number[];
  readonly views: ReadonlyMap<number, JarView>;
  /** Jars whose whole label is written below them: pointed at or focused. */
  readonly named: readonly number[];
  /** Jars advised as next seeds by key, themselves or what is kept of them: said beside them. */
  readonly seeds: ReadonlyMap<number, 'itself' | 'kept back'>;
  readonly lit: Lit | null;
  readonly cornerX: number;
  readonly cornerY: number;
}

export const Labels = memo(function Labels(props: Props) {
  const { drawing, geometry, view, mounted, views, seeds, left, right } = props;
  const { k } = view;
  // Where the window begins, for the years: it changes with a settled pan, not while one lasts.
  const from = Math.round(left - view.tx);
  const to = Math.round(right - view.tx);
  const written = useMemo((): readonly Written[] => {
    const scale = Math.max(1, k);
    const [stepX, stepY] = [geometry.columnStep * k, geometry.rowStep * k];
    const places = mounted.flatMap((index) => {
      const seen = views.get(drawing.keys[index] ?? 0);
      if (!seen || seen.label === '') return [];
      const [x, y] = [(drawing.x[index] ?? 0) * stepX, (drawing.y[index] ?? 0) * stepY];
      const lane = drawing.lane[index] ?? 0;
      return [
        {
          index,
          label: seen.label,
          madeOn: seen.lost ? seen.madeOn : dayInOrder(seen),
          jar: { left: x, right: x + JAR.width * k, top: y, bottom: y + JAR.height * k },
          lane,
          line: drawing.lanes[lane]?.name ?? '',
          level: drawing.y[index] === drawing.lanes[lane]?.level,
          seed: seeds.get(drawing.keys[index] ?? 0) ?? null,
        },
      ];
    });
    return writtenLabels(places, {
      row: stepY,
      beside: stepX - JAR.width * k,
      foot: drawing.lanes.map(({ top, level }) => (level - top > DAYS_ABOVE ? null : top * stepY - 3)),
      lines: stepY >= 2 * LINE * scale + 3 || drawing.lanes.length === 1 ? 2 : 1,
      scale,
      from,
      to,
      measure: (text) => textWidth(text) * scale,
    });
  }, [drawing, geometry, k, mounted, views, seeds, from, to]);
  const at = (x: number, y: number) => ({ x: x / k - props.cornerX, y: y / k - props.cornerY });
  // Below its jar, or above it where another one stands below and none above.
  const tagAt = (index: number) => {
    const [x, y] = [drawing.x[index] ?? 0, drawing.y[index] ?? 0];
    const stands = (row: number): boolean =>
      mounted.some((one) => drawing.x[one] === x && Math.abs((drawing.y[one] ?? 0) - row) < 0.5);
    const above = stands(y + 1) && !stands(y - 1);
    const top = y * geometry.rowStep * k;
    return at(
      (x * geometry.columnStep + JAR.width / 2) * k,
      above ? top - (LINE + 8) * Math.max(1, k) : top + JAR.height * k + 3,
    );
  };
  return (
    <g className="labels" aria-hidden="true">
      {written.map(({ key, text, at: where, x, y, jars }) => (
        <OneLabel
          key={key}
          text={text}
          kind={where}
          {...at(x, y)}
          lit={jars.some((index) => props.lit?.[index] === 1)}
        />
      ))}
      {props.named.map((index) => {
        const label = views.get(drawing.keys[index] ?? 0)?.label ?? '';
        return label === '' ? null : <Tag key={`name ${index}`} label={label} k={k} {...tagAt(index)} />;
      })}
    </g>
  );
});
