// The stage: jars, ribbons, strips and labels near the window, moved as one group; lighting.
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { familyControl } from './actions';
import { founderStrips } from './founders';
import { type Geometry, geometryOf, type Size, stripSize, type View } from './geometry';
import { Heads, Ticks } from './heads';
import { Jar, renders } from './jar';
import { JarDefs } from './jar-shape';
import { type Kin, listOf, litBy, nearKin } from './kin';
import { Labels } from './label-layer';
import { Marks } from './marks';
import { mountedAt, sameOr } from './mounting';
import { Ribbons } from './ribbon-layer';
import { Strip, TopUps } from './strips';
import { topUpsOf } from './top-ups';
import { useJars } from './use-jars';
import { useScores } from './use-scores';
import { useSize } from './use-size';
import { useView } from './use-view';
import { indexAt, useWalking } from './use-walking';

/** Below this zoom a jar has no room for the line of its vigour. */
const SMALL_ZOOM = 0.6;
/** Positions are written relative to a corner this far apart: far out in a huge family, pixels stay exact. */
const CHUNK = 131_072;
const NONE: readonly number[] = [];

interface StageProps {
  readonly drawing: Drawing;
  readonly kin: Kin;
  readonly newest: number;
  /** Index of the jar in the pane. */
  readonly selected: number | null;
  readonly onSelect: (index: number) => void;
  /** A jar to go to; counts up so that the same jar can be asked for twice. */
  readonly target: { readonly index: number; readonly count: number } | null;
  readonly theme: string;
}

/** Measures its room, then draws. */
export function FamilyDrawing(props: StageProps) {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  return (
    <div className="family-stage" ref={frame}>
      {size !== null && size.width > 0 && size.height > 0 && <Stage {...props} frame={frame} size={size} />}
    </div>
  );
}

/** The array as it was where nothing in it changed, so that nothing renders again. */
function useSame<T>(now: readonly T[]): readonly T[] {
  const [held, hold] = useState(now);
  const same = sameOr(held, now);
  if (same !== held) hold(same);
  return same;
}

function Stage({
  drawing,
  kin,
  newest,
  selected,
  onSelect,
  target,
  theme,
  frame,
  size,
}: StageProps & { readonly frame: React.RefObject<HTMLDivElement | null>; readonly size: Size }) {
  const group = useRef<SVGGElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<View>({ k: 1, tx: 0, ty: 0 });
  const corner = useRef({ x: 0, y: 0 });
  const geometry: Geometry = useMemo(() => geometryOf(drawing, size), [drawing, size]);

  const paint = useCallback(
    (view: View) => {
      const { x, y } = corner.current;
      group.current?.setAttribute(
        'transform',
        `translate(${view.tx + x * view.k} ${view.ty + y * view.k}) scale(${view.k})`,
      );
      frame.current?.style.setProperty('--k', String(view.k));
      frame.current?.style.setProperty('--tx', `${view.tx}px`);
      const from = painted.current;
      const ratio = view.k / from.k;
      if (canvas.current)
        canvas.current.style.transform = `translate(${view.tx - from.tx * ratio}px, ${view.ty - from.ty * ratio}px) scale(${ratio})`;
    },
    [frame],
  );
  const moving = useView(frame, geometry, size, paint);
  const view = moving.settled;
  const chunk = (at: number, extent: number): number =>
    Math.round((extent / 2 - at) / view.k / CHUNK) * CHUNK;
  const cornerX = chunk(view.tx, size.width);
  const cornerY = chunk(view.ty, size.height);
  const { repaint } = moving;
  useLayoutEffect(() => {
    corner.current = { x: cornerX, y: cornerY };
    painted.current = view;
    repaint();
  }, [cornerX, cornerY, view, repaint]);

  const walking = useWalking({ drawing, kin, newest, geometry, moving, size, selected, onSelect, target });
  const { focus, held, focusOn } = walking;
  const [pointed, setPointed] = useState<number | null>(null);

  // What is mounted.
  const kept = useMemo(() => {
    const near = nearKin(kin, focus, 40);
    return selected !== null && !near.includes(selected) ? [...near, selected] : near;
  }, [kin, focus, selected]);
  const found = useMemo(
    () => mountedAt(drawing, geometry, view, size, kept),
    [drawing, geometry, view, size, kept],
  );
  const indices = useSame(found.indices);
  const mounted = useMemo(() => ({ indices, asJars: found.asJars }), [indices, found.asJars]);
  const keys = useMemo(
    () => mounted.indices.map((index) => drawing.keys[index] ?? 0),
    [mounted.indices, drawing],
  );
  const views = useJars(keys);
  const { scores, current: judged } = useScores(mounted.asJars ? keys : NONE, drawing.keys.length);

  // What is lit.
  const light = pointed ?? (held ? focus : null) ?? selected;
  const lit = useMemo(() => (light === null ? null : litBy(kin, light)), [kin, light]);

  useEffect(() => {
    Object.assign(familyControl, {
      fit: moving.fit,
      closer: () => moving.zoomBy(1.25),
      farther: () => moving.zoomBy(0.8),
      pan: moving.panBy,
    });
  }, [moving]);

  // For the tests: how much is mounted, how often jars were rendered, and whether their scores are here.
  const jars = useRef<SVGSVGElement>(null);
  useEffect(() => {
    jars.current?.setAttribute('data-jar-renders', String(renders.jars));
    jars.current?.setAttribute('data-mounted', String(mounted.indices.length));
    jars.current?.setAttribute('data-drawn', mounted.asJars ? 'jars' : 'marks');
    jars.current?.setAttribute('data-judged', String(judged));
  });

  const columnXs = useMemo(() => {
    const found = new Map<number, number>();
    if (drawing.spacing === 'generation')
      drawing.generation.forEach((generation, index) => found.set(generation, drawing.x[index] ?? 0));
    return found;
  }, [drawing]);
  const strip = useMemo(() => stripSize(size), [size]);
  const { strips, ribbons: founding } = useMemo(
    () => founderStrips(drawing, geometry, view.k, mounted.asJars ? views : new Map(), strip),
    [drawing, geometry, view.k, mounted.asJars, views, strip],
  );

  const topUps = useMemo(
    () => (mounted.asJars ? topUpsOf(drawing, geometry, view.k, mounted.indices, views) : []),
    [drawing, geometry, view.k, mounted, views],
  );

  return (
    <>
      {!mounted.asJars && (
        <Marks
          canvas={canvas}
          drawing={drawing}
          geometry={geometry}
          view={view}
          size={size}
          lit={lit}
          theme={theme}
        />
      )}
      <Ticks drawing={drawing} geometry={geometry} view={view} size={size} />
      <svg
        ref={jars}
        className={`jars${lit ? ' lighting' : ''}${mounted.asJars ? '' : ' as-marks'}${view.k < SMALL_ZOOM ? ' small' : ''}`}
        width={size.width}
        height={size.height}
      >
        <JarDefs />
        <g ref={group}>
          {mounted.asJars && (
            <>
              <Ribbons
                drawing={drawing}
                kin={kin}
                geometry={geometry}
                mounted={mounted.indices}
                founding={founding}
                lit={lit}
                cornerX={cornerX}
                cornerY={cornerY}
              />
              <TopUps all={topUps} lit={lit} cornerX={cornerX} cornerY={cornerY} />
              <g aria-hidden="true">
                {strips.map((one) => (
                  <Strip
                    key={one.key}
                    x={one.x - cornerX}
                    y={one.y - cornerY}
                    name={one.name}
                    strains={one.strains}
                    culture={one.culture}
                    lift={one.lift}
                    width={strip.width}
                    reach={strip.reach}
                    dimmed={lit !== null && !one.jars.some((index) => lit[index] === 1)}
                  />
                ))}
              </g>
            </>
          )}
          <g
            role="tree"
            aria-label="The family, from each jar to what it seeded"
            tabIndex={-1}
            onKeyDown={walking.onKeyDown}
            onPointerOver={(event) => setPointed(indexAt(event.target))}
            onPointerLeave={() => setPointed(null)}
            onClick={(event) => {
              const index = indexAt(event.target);
              if (index === null) return;
              focusOn(index);
              onSelect(index);
            }}
            onFocus={walking.onFocus}
            onBlur={walking.onBlur}
          >
            {mounted.indices.map((index) => {
              const key = drawing.keys[index] ?? 0;
              const seen = views.get(key);
              const seed = kin.parent[index] ?? -1;
              return (
                <Jar
                  key={key}
                  jarKey={key}
                  index={index}
                  x={(drawing.x[index] ?? 0) * geometry.columnStep - cornerX}
                  y={(drawing.y[index] ?? 0) * geometry.rowStep - cornerY}
                  generation={drawing.generation[index] ?? 0}
                  setWord={drawing.setWord[index] ?? 255}
                  flags={drawing.flags[index] ?? 0}
                  label={seen?.label ?? ''}
                  also={alsoSeeds(seen?.seeds ?? [], seed >= 0 ? (drawing.keys[seed] ?? null) : null)}
                  level={kin.level[index] ?? 1}
                  place={kin.place[index] ?? 1}
                  siblings={seed >= 0 ? listOf(kin.children, seed).length : kin.roots.length}
                  lit={lit?.[index] === 1}
                  tabbable={index === focus}
                  selected={index === selected}
                  score={scores.get(key) ?? null}
                />
              );
            })}
          </g>
          {mounted.asJars && (
            <Labels
              drawing={drawing}
              geometry={geometry}
              view={view}
              mounted={mounted.indices}
              views={views}
              first={selected}
              second={held ? focus : null}
              strips={strips}
              strip={strip}
              topUps={topUps}
              kin={kin}
              lit={lit}
              cornerX={cornerX}
              cornerY={cornerY}
            />
          )}
        </g>
      </svg>
      <Heads drawing={drawing} columnXs={columnXs} geometry={geometry} view={view} size={size} />
      {!mounted.asJars && (
        <p className="family-far">
          Too far to see single jars: a mark stands for one or many. Come closer with + or go to a jar.
        </p>
      )}
    </>
  );
}

/** "also seeded by 10 Mar a, Blue Tin": the seeds a tree can't show. */
function alsoSeeds(
  seeds: readonly { readonly key: number | null; readonly label: string }[],
  hangsFrom: number | null,
): string {
  const others = seeds
    .filter((seed) => seed.key === null || seed.key !== hangsFrom)
    .map((seed) => seed.label);
  if (others.length === 0) return '';
  return `${hangsFrom === null ? 'started from' : 'also seeded by'} ${others.join(' and ')}`;
}
