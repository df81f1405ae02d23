// The labels of the jars: always at least 15 px on the screen, never on one another.
import { memo, useCallback, useMemo } from 'react';
import type { Drawing, JarView } from '../../core/contract';
import { type PlacedStrip, stripScale } from './founders';
import { type Geometry, JAR, LABEL_HEIGHT, STRIP_HEIGHT, type StripSize } from './geometry';
import type { TopUp } from './top-ups';
import { type Box, labelBox, type LabelPlace, mannerOf, type Side, writtenLabels } from './labels';
import { textWidth } from './measure';
import { ribbonPoints } from './ribbons';
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

/** Closer than lettering is high, so that no ribbon slips through between two of its points. */
const POINTS_APART = 7;

/** Screen box of a label strip of a founding batch, the drawing's corner at 0. */
function stripBox(placed: PlacedStrip, strip: StripSize, k: number): Box {
  const scale = stripScale(k) * k;
  const top = (placed.y + JAR.inletY) * k + placed.lift * scale;
  const right = placed.x * k - strip.reach * scale;
  return { left: right - strip.width * scale, right, top, bottom: top + STRIP_HEIGHT * scale };
}

const scaled = (box: Box, k: number): Box => ({
  left: box.left * k,
  right: box.right * k,
  top: box.top * k,
  bottom: box.bottom * k,
});

/** Points along all ribbons into the mounted jars and out of them, in screen pixels, the drawing's corner at 0. */
function pointsOfRibbons(
  drawing: Drawing,
  kin: Kin,
  geometry: Geometry,
  mounted: readonly number[],
  k: number,
): { readonly x: number; readonly y: number }[] {
  const pairs: (readonly [seed: number, child: number])[] = [];
  const seen = new Set(mounted);
  for (const index of mounted) {
    const seeds = [kin.parent[index] ?? -1, ...listOf(kin.otherSeeds, index)];
    for (const seed of seeds) if (seed >= 0) pairs.push([seed, index]);
    for (const children of [kin.children, kin.otherChildren])
      for (const child of listOf(children, index).subarray(0, 50))
        if (!seen.has(child)) pairs.push([index, child]);
  }
  return pairs.flatMap(([seed, child]) =>
    ribbonPoints(
      (drawing.x[seed] ?? 0) * geometry.columnStep,
      (drawing.y[seed] ?? 0) * geometry.rowStep,
      (drawing.x[child] ?? 0) * geometry.columnStep,
      (drawing.y[child] ?? 0) * geometry.rowStep,
      geometry.tail,
      POINTS_APART / k,
    ).map(({ x, y }) => ({ x: x * k, y: y * k })),
  );
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
  readonly topUps: readonly TopUp[];
  readonly kin: Kin;
  readonly lit: Lit | null;
  readonly cornerX: number;
  readonly cornerY: number;
}

export const Labels = memo(function Labels(props: Props) {
  const { drawing, geometry, view, mounted, views, first, second, strips, strip, topUps, kin } = props;
  const { k } = view;
  const lettering = Math.max(1, k);
  const height = LABEL_HEIGHT * lettering;
  const jarAt = useCallback(
    (index: number): Box => {
      const left = (drawing.x[index] ?? 0) * geometry.columnStep * k;
      const top = (drawing.y[index] ?? 0) * geometry.rowStep * k;
      return { left, right: left + JAR.width * k, top, bottom: top + JAR.height * k };
    },
    [drawing, geometry, k],
  );
  const written = useMemo(() => {
    const measure = (text: string): number => textWidth(text) * lettering;
    const places = mounted.flatMap((index) => {
      const seen = views.get(drawing.keys[index] ?? 0);
      if (!seen || seen.label === '') return [];
      const seed = kin.parent[index] ?? -1;
      const above = seed >= 0 && (drawing.y[seed] ?? 0) < (drawing.y[index] ?? 0) - 0.1;
      const left: LabelPlace['left'] =
        seed < 0 ? 'slips' : above || (kin.place[index] ?? 1) > 1 ? 'ribbon' : 'free';
      return [
        {
          index,
          label: seen.label,
          jar: jarAt(index),
          left,
          rank: index === first ? 2 : index === second ? 1 : 0,
          day: seen.madeOn ?? '',
          column: drawing.generation[index] ?? 0,
        },
      ];
    });
    const manner = mannerOf(
      geometry.columnStep * k,
      geometry.rowStep * k,
      { width: JAR.width * k, height: JAR.height * k },
      places.reduce((widest, { label }) => Math.max(widest, measure(label)), 0),
      height,
    );
    const blocked = [
      ...mounted.map((index) => ({ owner: index, box: jarAt(index) })),
      ...strips.map((placed) => ({ owner: -1, box: stripBox(placed, strip, k) })),
      ...topUps.map(({ box }) => ({ owner: -1, box: scaled(box, k) })),
    ];
    const ribbons = pointsOfRibbons(drawing, kin, geometry, mounted, k);
    return writtenLabels(places, blocked, manner, geometry.rowStep * k, height, measure, ribbons);
  }, [
    drawing,
    geometry,
    k,
    mounted,
    views,
    first,
    second,
    strips,
    strip,
    topUps,
    kin,
    jarAt,
    height,
    lettering,
  ]);
  return (
    <g className="labels" aria-hidden="true">
      {[...written].map(([index, { text, side }]) => {
        const box = labelBox(jarAt(index), side, 0, height); // the lettering's anchor: a box without a width
        return (
          <OneLabel
            key={drawing.keys[index]}
            text={text}
            side={side}
            x={box.left / k - props.cornerX}
            y={box.top / k - props.cornerY}
            lit={props.lit?.[index] === 1}
          />
        );
      })}
    </g>
  );
});
