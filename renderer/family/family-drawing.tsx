// The stage: jars, ribbons, heads and labels near the window, moved as one group; lighting.
import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { foundingRibbons } from './founders';
import { JAR } from '../../core/pictures/jar-outline';
import { Heads } from './heads';
import { renders } from './jar';
import { JarLayer } from './jar-layer';
import { KeptLayer } from './kept-layer';
import { type Kin, litBy } from './kin';
import { Labels } from './label-layer';
import { headsAt, headsOver, isNarrow, lanesAway, lanesInRoom, newestOfLane, type Placed } from './lanes';
import { Marks } from './marks';
import { Months } from './months';
import { Ribbons } from './ribbon-layer';
import { Mates, Tubs } from './small-layers';
import { TopUps } from './top-up-layer';
import { topUpsOf } from './top-ups';
import { tubsOf } from './tubs';
import { useAdvised } from './use-advised';
import { useJars } from './use-jars';
import type { LineNow } from './use-lines';
import { type Mounted, useMounted, useSame } from './use-mounted';
import type { LanesNow } from './use-spoken-lane';
import { type Stage, useStage } from './use-stage';
import { useWalking } from './use-walking';
import { JarDefs } from '../parts/jar-shape';
import type { Now } from '../parts/use-now';
import { useScores } from '../parts/use-scores';
import type { Size } from '../parts/use-size';

/** Below this zoom a jar has no room for the line of its vigour. */
const SMALL_ZOOM = 0.6;
const NONE: readonly number[] = [];

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
  readonly onLanes: (lanes: LanesNow) => void;
  readonly spoken: number;
  readonly onSpeakOf: (lane: number) => void;
  readonly lines: ReadonlyMap<string, LineNow>;
  /** Keys of jars in warmth, by hold. */
  readonly warm: readonly (readonly number[])[];
  readonly kept: Now['kept'];
  readonly onGo: (key: number) => void;
}

/** For the tests: how much is mounted, how often jars were rendered, and whether their scores are here. */
function useTold(jars: RefObject<SVGSVGElement | null>, mounted: Mounted, judged: boolean): void {
  useEffect(() => {
    jars.current?.setAttribute('data-jar-renders', String(renders.jars));
    jars.current?.setAttribute('data-mounted', String(mounted.indices.length));
    jars.current?.setAttribute('data-drawn', mounted.asJars ? 'jars' : 'marks');
    jars.current?.setAttribute('data-judged', String(judged));
  });
}

/** The heads of the lanes, on which side those lie that are out of sight, and what pressing one does. */
function useHeads(props: StageProps, { geometry, view, room, moving }: Stage, here: boolean) {
  const { drawing, size, open, lines, onLanes, onSpeakOf } = props;
  const narrow = isNarrow(size.width);
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
  useEffect(() => {
    if (here) onLanes({ level: inRoom, seen: inRoom.filter((lane) => away[lane] === null) });
  }, [onLanes, here, inRoom, away]);
  const standings = useMemo(
    () => new Map(Array.from(lines, ([id, { standing }]) => [id, standing])),
    [lines],
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
  return { narrow, heads, away, standings, toLane };
}

/** What stands between the jars: ribbons from the founding packets, tubs, what was poured into a jar later. */
function useBetween(props: StageProps, stage: Stage, mounted: Mounted, views: ReturnType<typeof useJars>) {
  const { drawing, warm } = props;
  const { geometry, view } = stage;
  const { asJars, indices } = mounted;
  const tubs = useMemo(
    () => (asJars ? tubsOf(drawing, geometry, warm) : []),
    [drawing, geometry, warm, asJars],
  );
  const topUps = useMemo(
    () => (asJars ? topUpsOf(drawing, geometry, view.k, indices, views) : []),
    [drawing, geometry, view.k, asJars, indices, views],
  );
  const inWarmth = useMemo(() => new Set(warm.flat()), [warm]);
  return { tubs, topUps, inWarmth };
}

export function FamilyDrawing(props: StageProps) {
  const { drawing, kin, mates, open, selected, onSelect, theme, size, lines, kept, onGo } = props;
  const stage = useStage({ ...props, kept: kept.length > 0 });
  const { frame, group, canvas, geometry, view, room, cornerX, cornerY } = stage;
  const walking = useWalking({ ...props, geometry, moving: stage.moving });
  const { focus, held } = walking;
  const [pointed, setPointed] = useState<number | null>(null);
  const mounted = useMounted({ drawing, kin, geometry, view, size, focus, selected });
  const { indices, keys, asJars } = mounted;
  const views = useJars(keys);
  const { scores, current: judged } = useScores(asJars ? keys : NONE, drawing.keys.length);
  const light = pointed ?? (held ? focus : null) ?? selected;
  const lit = useMemo(() => (light === null ? null : litBy(kin, light)), [kin, light]);
  const jars = useRef<SVGSVGElement>(null);
  useTold(jars, mounted, judged);
  const { narrow, heads, away, standings, toLane } = useHeads(
    props,
    stage,
    views.size > 0 || keys.length === 0,
  );
  const founding = useMemo(
    () => (asJars ? foundingRibbons(drawing, geometry, view.k, narrow ? [] : heads, views) : []),
    [drawing, geometry, view.k, narrow, heads, asJars, views],
  );
  const onCalendar = drawing.spacing === 'calendar';
  const atEnds = !narrow && !onCalendar && asJars;
  const wanted = { drawing, geometry, view, room, lines, kept, atEnds, open };
  const { keptPlaces, nextKept, seeds, worded } = useAdvised(wanted);
  const named = useMemo(
    () => [...new Set([pointed, held ? focus : null])].filter((index) => index !== null),
    [pointed, held, focus],
  );
  const { tubs, topUps, inWarmth } = useBetween(props, stage, mounted, views);
  const corner = { cornerX, cornerY };
  const layer = { drawing, geometry, mounted: indices, ...corner };
  return (
    <div className="family-stage" ref={frame}>
      {!asJars && <Marks canvas={canvas} {...{ drawing, geometry, view, size, lit, theme }} />}
      {onCalendar && <Months drawing={drawing} geometry={geometry} view={view} room={room} />}
      <svg
        ref={jars}
        className={`jars${lit ? ' lighting' : ''}${asJars ? '' : ' as-marks'}${view.k < SMALL_ZOOM ? ' small' : ''}`}
        width={size.width}
        height={size.height}
      >
        <JarDefs />
        <g ref={group}>
          {asJars && (
            <>
              <Tubs all={tubs} k={view.k} {...corner} />
              <Ribbons {...layer} kin={kin} founding={founding} lit={lit} />
              <TopUps all={topUps} lit={lit} {...corner} />
            </>
          )}
          <JarLayer
            {...layer}
            {...{ kin, views, scores, seeds, inWarmth, lit, selected, walking, onSelect }}
            onPoint={setPointed}
          />
          {asJars && mates !== null && <Mates {...layer} mates={mates} />}
          {asJars && (
            <Labels
              {...layer}
              {...{ view, views, named, lit }}
              left={room.left}
              right={room.right}
              seeds={worded}
            />
          )}
        </g>
      </svg>
      <KeptLayer all={keptPlaces} next={nextKept} onGo={onGo} />
      <Heads
        lanes={drawing.lanes}
        {...{ heads, narrow, open, standings, away }}
        spoken={props.spoken}
        onPress={toLane}
      />
    </div>
  );
}
