// The ribbons between mounted jars and what seeded them. Each is memoised with primitive props.
import { memo, useMemo } from 'react';
import type { Placed } from './lanes';
import type { FoundingRibbon } from './founders';
import type { Geometry } from './geometry';
import { type Kin, listOf, type Lit } from './kin';
import { inletOffsets, type Ribbon, ribbonEnds, ribbonPath, ribbonWidth } from '../../core/pictures/ribbons';

const MOST = 1600;
/** Another seed further off than so many rows: only the ends of its ribbon are drawn, until it is lit. */
const FAR_ROWS = 16;

const OneRibbon = memo(function OneRibbon(props: {
  readonly path: string;
  readonly width: number;
  readonly lit: boolean;
}) {
  return <path className={`ribbon${props.lit ? ' lit' : ''}`} d={props.path} strokeWidth={props.width} />;
});

/** All seedings into a jar with their shares, from the top seed down. Shares unknown are shown equal. */
function seedingsInto(
  drawing: Placed,
  kin: Kin,
  others: ReadonlyMap<number, Ribbon[]>,
  child: number,
): Ribbon[] {
  const seed = kin.parent[child] ?? -1;
  const share = drawing.parentShare[child] ?? Number.NaN;
  const all = others.get(child) ?? [];
  const equal = 1 / (all.length + 1);
  const list =
    seed < 0 ? all : [{ seed, child, share: Number.isFinite(share) ? share : equal, other: false }, ...all];
  return list.toSorted((a, b) => (drawing.y[a.seed] ?? 0) - (drawing.y[b.seed] ?? 0));
}

interface Props {
  readonly drawing: Placed;
  readonly kin: Kin;
  readonly geometry: Geometry;
  readonly mounted: readonly number[];
  readonly founding: readonly FoundingRibbon[];
  readonly lit: Lit | null;
  readonly cornerX: number;
  readonly cornerY: number;
}

export const Ribbons = memo(function Ribbons(props: Props) {
  const { drawing, kin, geometry, mounted, lit, cornerX, cornerY } = props;
  const others = useMemo(() => {
    const found = new Map<number, Ribbon[]>();
    drawing.otherChild.forEach((child, at) => {
      const ribbon = {
        seed: drawing.otherSeed[at] ?? 0,
        child,
        share: drawing.otherShare[at] ?? 0,
        other: true,
      };
      const list = found.get(child);
      if (list) list.push(ribbon);
      else found.set(child, [ribbon]);
    });
    return found;
  }, [drawing]);
  const ribbons = useMemo(() => {
    const children = new Set(mounted);
    for (const index of mounted) {
      if (children.size > MOST) break;
      for (const child of listOf(kin.children, index).subarray(0, 200)) children.add(child);
      for (const child of listOf(kin.otherChildren, index).subarray(0, 50)) children.add(child);
    }
    const at = (index: number): [number, number] => [
      (drawing.x[index] ?? 0) * geometry.columnStep - cornerX,
      (drawing.y[index] ?? 0) * geometry.rowStep - cornerY,
    ];
    return [...children].slice(0, MOST).flatMap((child) => {
      const into = seedingsInto(drawing, kin, others, child);
      const offsets = inletOffsets(into.map((ribbon) => ribbon.share));
      return into.map((ribbon, place) => {
        const [fromX, fromY] = at(ribbon.seed);
        const [toX, toY] = at(child);
        const far = ribbon.other && Math.abs(toY - fromY) > FAR_ROWS * geometry.rowStep;
        const ends = far ? ribbonEnds(fromX, fromY, toX, toY, offsets[place] ?? 0) : null;
        return { ...ribbon, ends, path: ribbonPath(fromX, fromY, toX, toY, offsets[place] ?? 0) };
      });
    });
  }, [drawing, kin, geometry, mounted, others, cornerX, cornerY]);
  return (
    <g className="ribbons" aria-hidden="true">
      {props.founding.map((ribbon) => (
        <g key={`${ribbon.key}`} transform={`translate(${-cornerX} ${-cornerY})`}>
          <OneRibbon path={ribbon.path} width={ribbonWidth(ribbon.share)} lit={lit?.[ribbon.child] === 1} />
        </g>
      ))}
      {/* Other seeds first: they pass behind. */}
      {ribbons
        .toSorted((a, b) => Number(b.other) - Number(a.other))
        .map((ribbon) => {
          const on = lit?.[ribbon.child] === 1 && lit[ribbon.seed] === 1;
          return (
            <OneRibbon
              key={`${drawing.keys[ribbon.seed]} ${drawing.keys[ribbon.child]} ${ribbon.other}`}
              path={on ? ribbon.path : (ribbon.ends ?? ribbon.path)}
              width={ribbonWidth(ribbon.share)}
              lit={on}
            />
          );
        })}
    </g>
  );
});
