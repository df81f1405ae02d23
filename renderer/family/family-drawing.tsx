// The stage: jars, ribbons, heads and labels near the window, moved as one group; lighting.
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { familyControl } from './family-actions';
import { foundingRibbons } from './founders';
import { type Geometry, geometryOf, JAR, type Newest, type Room, type View } from './geometry';
import type { Size } from '../parts/use-size';
import { Heads } from './heads';
import { Jar, renders } from './jar';
import { JarDefs } from '../parts/jar-shape';
import { type Kin, listOf, litBy, nearKin } from './kin';
import { Labels } from './label-layer';
import { headsAt, headsOver, isNarrow, lanesAway, type Placed } from './lanes';
import { Marks } from './marks';
import { Months } from './months';
import { mountedAt, sameOr } from './mounting';
import { Ribbons } from './ribbon-layer';
import { TopUps } from './top-up-layer';
import { topUpsOf } from './top-ups';
import { KEPT_WIDTH, keptAt } from './kept-marks';
import { KeptLayer } from './kept-layer';
import { tubsOf } from './tubs';
import type { Now } from '../parts/use-now';
import { useJars } from './use-jars';
import type { LineNow } from './use-lines';
import { useScores } from '../parts/use-scores';
import { useView } from './use-view';
import { indexAt, useWalking } from './use-walking';

/** Below this zoom a jar has no room for the line of its vigour. */
const SMALL_ZOOM = 0.6;
/** Positions are written relative to a corner this far apart: far out in a huge family, pixels stay exact. */
const CHUNK = 131_072;
const NONE: readonly number[] = [];

/** Room at the edges of the stage, in screen pixels. */
const GUTTER = 178;
const ABOVE = { narrow: 84, wide: 45 } as const;
const MONTHS = 30;
/** The pane's width; a wide window keeps it free when the family is fitted, so that opening it moves nothing. */
export const paneWidth = (size: Size): number => (size.width >= 1200 ? 368 : Math.min(320, size.width * 0.4));
const KEPT_FREE_FROM = 1400;

interface StageProps {
  readonly drawing: Placed;
  readonly kin: Kin;
  readonly newest: number;
  /** Of folded lanes: how many jars lie folded below each, and which lane is whole. */
  readonly mates: Uint16Array | null;
  readonly open: number | null;
  /** Index of the jar in the pane. */
  readonly selected: number | null;
  readonly onSelect: (index: number) => void;
  /** A jar to go to; counts up so that the same jar can be asked for twice. */
  readonly target: { readonly index: number; readonly count: number } | null;
  readonly theme: string;
  readonly size: Size;
  readonly pane: boolean;
  /** The lanes in the window, the one nearest its middle first. */
  readonly onLanes: (lanes: readonly number[]) => void;
  readonly spoken: number;
  readonly onSpeakOf: (lane: number) => void;
  readonly lines: ReadonlyMap<string, LineNow>;
  /** Keys of jars in warmth, by hold. */
  readonly warm: readonly (readonly number[])[];
  readonly kept: Now['kept'];
  readonly onGo: (key: number) => void;
}

/** The array as it was where nothing in it changed, so that nothing renders again. */
function useSame<T>(now: readonly T[]): readonly T[] {
  const [held, hold] = useState(now);
  const same = sameOr(held, now);
  if (same !== held) hold(same);
  return same;
}

/** Where jars are to be seen in a stage, with its pane open or not; and where they are fitted. */
function roomsIn(size: Size, pane: boolean, months: boolean, kept: boolean): { room: Room; fitRoom: Room } {
  const narrow = isNarrow(size.width);
  const edges = {
    left: narrow ? 0 : GUTTER,
    top: (narrow ? ABOVE.narrow : ABOVE.wide) + (months ? MONTHS : 0),
    bottom: size.height,
  };
  const free = size.width - paneWidth(size);
  return {
    room: { ...edges, right: pane ? free : size.width },
    fitRoom: {
      ...edges,
      right: size.width >= KEPT_FREE_FROM ? free : size.width - (kept && !narrow ? KEPT_WIDTH : 0),
    },
  };
}

function newestPlace(drawing: Placed, newest: number): Newest {
  const y = drawing.y[newest] ?? 0;
  const lane = drawing.lanes[drawing.lane[newest] ?? 0];
  return { x: drawing.x[newest] ?? 0, y, top: lane?.top ?? y, bottom: lane?.bottom ?? y };
}

/** Lanes of which something is in the room, the one nearest its middle first. */
function lanesInRoom(drawing: Placed, { rowStep }: Geometry, view: View, room: Room): number[] {
  const middle = (room.top + room.bottom) / 2;
  const off = (at: number): number => {
    const lane = drawing.lanes[at];
    if (!lane) return Infinity;
    const [top, bottom] = [
      lane.top * rowStep * view.k + view.ty,
      (lane.bottom * rowStep + JAR.height) * view.k + view.ty,
    ];
    if (bottom < room.top || top > room.bottom) return Infinity;
    return Math.max(0, top - middle, middle - bottom);
  };
  return drawing.lanes
    .map((_, at) => ({ at, off: off(at) }))
    .filter((one) => one.off < Infinity)
    .toSorted((a, b) => a.off - b.off)
    .map(({ at }) => at);
}

export function FamilyDrawing({
  drawing,
  kin,
  newest,
  mates,
  open,
  selected,
  onSelect,
  target,
  theme,
  size,
  pane,
  onLanes,
  spoken,
  onSpeakOf,
  lines,
  warm,
  kept: keptBack,
  onGo,
}: StageProps) {
  const frame = useRef<HTMLDivElement>(null);
  const group = useRef<SVGGElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<View>({ k: 1, tx: 0, ty: 0 });
  const corner = useRef({ x: 0, y: 0 });
  const onCalendar = drawing.spacing === 'calendar';
  const narrow = isNarrow(size.width);
  const anyKept = keptBack.length > 0;
  const room = useMemo(
    () => roomsIn(size, pane, onCalendar, anyKept).room,
    [size, pane, onCalendar, anyKept],
  );
  const fitRoom = useMemo(
    () => roomsIn(size, false, onCalendar, anyKept).fitRoom,
    [size, onCalendar, anyKept],
  );
  const geometry: Geometry = useMemo(() => geometryOf(drawing, fitRoom), [drawing, fitRoom]);
  const newestAt = useMemo(() => newestPlace(drawing, newest), [drawing, newest]);

  const paint = useCallback(
    (view: View) => {
      const { x, y } = corner.current;
      group.current?.setAttribute(
        'transform',
        `translate(${view.tx + x * view.k} ${view.ty + y * view.k}) scale(${view.k})`,
      );
      frame.current?.style.setProperty('--k', String(view.k));
      frame.current?.style.setProperty('--tx', `${view.tx}px`);
      frame.current?.style.setProperty('--ty', `${view.ty}px`);
      frame.current?.style.setProperty('--room-right', `${room.right - 10}px`);
      const [wide, high] = [geometry.width * view.k, geometry.height * view.k];
      familyControl.tell({
        left: (room.left - view.tx) / wide,
        right: (room.right - view.tx) / wide,
        top: (room.top - view.ty) / high,
        bottom: (room.bottom - view.ty) / high,
      });
      const from = painted.current;
      const ratio = view.k / from.k;
      if (canvas.current)
        canvas.current.style.transform = `translate(${view.tx - from.tx * ratio}px, ${view.ty - from.ty * ratio}px) scale(${ratio})`;
    },
    [geometry, room],
  );
  const moving = useView(
    frame,
    {
      geometry,
      places: drawing,
      newest: newestAt,
      spacing: `${drawing.spacing} ${open ?? ''}`,
      size,
      pane,
      room,
      fitRoom,
    },
    paint,
  );
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

  const walking = useWalking({ drawing, kin, newest, geometry, moving, onSelect, target });
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
      centre: (x: number, y: number) => moving.centre(x * geometry.width, y * geometry.height),
    });
  }, [moving, geometry]);

  // For the tests: how much is mounted, how often jars were rendered, and whether their scores are here.
  const jars = useRef<SVGSVGElement>(null);
  useEffect(() => {
    jars.current?.setAttribute('data-jar-renders', String(renders.jars));
    jars.current?.setAttribute('data-mounted', String(mounted.indices.length));
    jars.current?.setAttribute('data-drawn', mounted.asJars ? 'jars' : 'marks');
    jars.current?.setAttribute('data-judged', String(judged));
  });

  const heads = useMemo(
    () =>
      narrow
        ? headsOver(drawing.lanes, geometry, view.k)
        : headsAt(drawing.lanes, geometry, view.k, JAR.inletY),
    [narrow, drawing, geometry, view.k],
  );
  const inRoom = useSame(
    useMemo(() => lanesInRoom(drawing, geometry, view, room), [drawing, geometry, view, room]),
  );
  const away = useSame(
    useMemo(() => lanesAway(drawing.lanes, geometry, view, room), [drawing, geometry, view, room]),
  );
  const here = views.size > 0 || keys.length === 0;
  useEffect(() => {
    if (here) onLanes(inRoom);
  }, [onLanes, here, inRoom]);
  const founding = useMemo(
    () => (mounted.asJars ? foundingRibbons(drawing, geometry, view.k, narrow ? [] : heads, views) : []),
    [drawing, geometry, view.k, narrow, heads, mounted.asJars, views],
  );
  const standings = useMemo(
    () => new Map(Array.from(lines, ([id, { standing }]) => [id, standing])),
    [lines],
  );
  const advised = useMemo(
    () => Array.from(lines.values(), ({ seed }) => seed?.from ?? null).filter((from) => from !== null),
    [lines],
  );
  const nextKept = useMemo(() => new Set(advised.flatMap(({ portion }) => portion ?? [])), [advised]);
  const keptPlaces = useMemo(
    () =>
      narrow || onCalendar || !mounted.asJars ? [] : keptAt(drawing, geometry, view.k, keptBack, nextKept),
    [narrow, onCalendar, mounted.asJars, drawing, geometry, view.k, keptBack, nextKept],
  );
  // What is kept back glows at its line's end; where it isn't drawn there, the jar it is kept of does.
  const seeds = useMemo(() => {
    const shown = new Set(keptPlaces.flatMap(({ kept }) => kept.map(({ id }) => id)));
    return new Map(
      advised
        .filter(({ portion }) => portion === null || !shown.has(portion))
        .map(({ key, portion }) => [key, portion === null ? 'itself' : 'kept back'] as const),
    );
  }, [advised, keptPlaces]);
  // In a folded lane there is no room for the words: there it only glows.
  const wordedSeeds = useMemo(
    () =>
      open === null
        ? seeds
        : new Map([...seeds].filter(([key]) => drawing.lane[drawing.keys.indexOf(key)] === open)),
    [open, seeds, drawing],
  );
  const toLane = useCallback(
    (at: number) => {
      onSpeakOf(at);
      // A folded lane opens anew at its newest end.
      if (open !== null && open !== at) return;
      const index = newestOfLane(drawing, at);
      moving.show(
        (drawing.x[index] ?? 0) * geometry.columnStep,
        (drawing.y[index] ?? 0) * geometry.rowStep,
        'in the middle',
      );
    },
    [drawing, geometry, moving, onSpeakOf, open],
  );
  const named = useMemo(
    () => [...new Set([pointed, held ? focus : null])].filter((index) => index !== null),
    [pointed, held, focus],
  );

  const tubs = useMemo(
    () => (mounted.asJars ? tubsOf(drawing, geometry, warm) : []),
    [drawing, geometry, warm, mounted.asJars],
  );
  const inWarmth = useMemo(() => new Set(warm.flat()), [warm]);
  const topUps = useMemo(
    () => (mounted.asJars ? topUpsOf(drawing, geometry, view.k, mounted.indices, views) : []),
    [drawing, geometry, view.k, mounted, views],
  );

  return (
    <div className="family-stage" ref={frame}>
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
      {onCalendar && <Months drawing={drawing} geometry={geometry} view={view} room={room} />}
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
              <g className="tubs" aria-hidden="true" transform={`translate(${-cornerX} ${-cornerY})`}>
                {tubs.map(({ key, path, x, y }) => (
                  <g key={key}>
                    <path className="tub" d={path} />
                    <text className="jar-label above tub-word" x={x} y={y + 4 / view.k}>
                      in warmth
                    </text>
                  </g>
                ))}
              </g>
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
                  next={seeds.has(key)}
                  warm={inWarmth.has(key)}
                />
              );
            })}
          </g>
          {mounted.asJars && mates !== null && (
            <g className="mates" aria-hidden="true">
              {mounted.indices.flatMap((index) =>
                Array.from(
                  { length: Math.min(5, mates[index] ?? 0) },
                  (_, at, all = Math.min(5, mates[index] ?? 0)) => (
                    <circle
                      key={`${index} ${at}`}
                      cx={
                        (drawing.x[index] ?? 0) * geometry.columnStep -
                        cornerX +
                        JAR.width / 2 +
                        (at - (all - 1) / 2) * 13
                      }
                      cy={(drawing.y[index] ?? 0) * geometry.rowStep - cornerY + JAR.height + 12}
                      r="4.5"
                    />
                  ),
                ),
              )}
            </g>
          )}
          {mounted.asJars && (
            <Labels
              drawing={drawing}
              geometry={geometry}
              view={view}
              left={room.left}
              mounted={mounted.indices}
              views={views}
              named={named}
              seeds={wordedSeeds}
              lit={lit}
              cornerX={cornerX}
              cornerY={cornerY}
            />
          )}
        </g>
      </svg>
      <KeptLayer all={keptPlaces} next={nextKept} onGo={onGo} />
      <Heads
        lanes={drawing.lanes}
        heads={heads}
        narrow={narrow}
        open={open}
        standings={standings}
        spoken={spoken}
        away={away}
        onPress={toLane}
      />
    </div>
  );
}

/** The room that lanes have in a window of that size, while no pane is open. */
export const foldRoom = (size: Size): Room => roomsIn(size, false, false, false).room;

/** Index of the jar made last in a lane: the latest day, then the deepest. */
export function newestOfLane({ lane, days, generation }: Placed, at: number): number {
  let best = -1;
  for (let i = 0; i < lane.length; i += 1) {
    if (lane[i] !== at) continue;
    const by = (days[i] || -1e9) - (days[best] || -1e9) || (generation[i] ?? 0) - (generation[best] ?? 0);
    if (best < 0 || by > 0) best = i;
  }
  return Math.max(0, best);
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
