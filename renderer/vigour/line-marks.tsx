// The marks of a line's plot: its batches as jars drawn by how they set, the scale, the early band, since when it has come down,
// and below the line what has no score. Nothing else: what it was worked out by is drawn by worked-marks.tsx, when asked for.
import type { CSSProperties } from 'react';
import { JarDefs, JarShape } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import {
  dayMarks,
  levelOf,
  path,
  SCALE,
  SMALL,
  smallLayout,
  stretches,
  wordsBelow,
  type Layout,
  type LineBatch,
  type LineReply,
  type Shown,
} from './plot-scale';
import { WorkedMarks, type Worked } from './worked-marks';

export interface MarksProps {
  readonly line: LineReply;
  readonly shown: Shown;
  readonly layout: Layout;
  /** Index of the batch that is pointed at or chosen. */
  readonly lit: number | null;
  /** What it was worked out by, where that is asked for. */
  readonly worked: Worked | null;
}

/** The box that a jar's shape is drawn in: 66 by 74, its middle at 31, 30. */
const BOX = 66;
/** Narrower jars are drawn without their generation: it could not be read. */
const NUMBERED_FROM = 30;

/** What a batch's jar shows: how it set, and that a caution touches some of its jars. Which one, the family says of each. */
function batchLook(batch: LineBatch): { readonly setWord: number; readonly flags: number } {
  const touched = batch.jars.some(({ held }) => held !== null);
  const caution = touched ? 'look' : null;
  return lookOf({ setWord: batch.setWord, spoiled: batch.spoiled, caution });
}

function BatchJar({
  batch,
  x,
  y,
  width,
}: {
  readonly batch: LineBatch;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}) {
  const k = width / BOX;
  return (
    <g
      className={width < NUMBERED_FROM ? 'jar bare' : 'jar'}
      transform={`translate(${x - 31 * k} ${y - 34 * k}) scale(${k})`}
      style={{ '--k': k } as CSSProperties}
    >
      <JarShape generation={batch.generation} {...batchLook(batch)} />
    </g>
  );
}

/** The level of the early batches, with its words in the gutter. */
function EarlyBand({ line, layout }: Pick<MarksProps, 'line' | 'layout'>) {
  const { baseline, spread } = line;
  if (baseline === null) return null;
  const { y, width, right } = layout;
  const middle = y(baseline);
  const height = Math.max(12, y(baseline - (spread ?? 0)) - y(baseline + (spread ?? 0)));
  return (
    <>
      <rect
        className="band"
        x={SCALE + 6}
        width={width - right + 6 - SCALE}
        y={middle - height / 2}
        height={height}
        rx="6"
      />
      <text className="word" x={SCALE + 12} y={middle - 4}>
        early
      </text>
      <text className="word" x={SCALE + 12} y={middle + 13}>
        batches
      </text>
    </>
  );
}

/** Points of 100 at the left, with their word. */
function Scale({ layout }: Pick<MarksProps, 'layout'>) {
  return (
    <>
      <text className="day" x="0" y="13">
        points of 100
      </text>
      {layout.scale.map((at) => (
        <text key={at} className="day" x={SCALE} y={layout.y(at)} textAnchor="end" dominantBaseline="central">
          {at}
        </text>
      ))}
    </>
  );
}

const FELL = { 'at once': 'fell here', 'with each generation': 'falls from here', unclear: 'lower from here' } as const; // prettier-ignore

/** The first batch below, of a line that came down: the one day that is said of it. */
function CameDown({ line, layout, corrected }: Pick<MarksProps, 'line' | 'layout'> & { readonly corrected: boolean }) {
  const index = line.batches.findIndex(({ batch }) => batch === line.cameDownAt);
  const batch = line.batches[index];
  const level = batch && levelOf(batch, corrected);
  if (!batch || layout.fell === null) return null;
  const at = layout.x(index);
  const [near, far] = [at < 60, at > layout.width - 60];
  const top = level === null || level === undefined ? layout.top : layout.y(level) + layout.jar / 2 + 8;
  const foot = layout.fell - 18;
  return (
    <>
      {foot - top > 4 && <path className="called" d={`M${at} ${top}V${foot}`} />}
      <text
        className="word called-word"
        x={near ? 8 : far ? layout.width - 4 : at}
        y={layout.fell}
        textAnchor={near ? 'start' : far ? 'end' : 'middle'}
      >
        {FELL[line.cameDown ?? 'unclear']}
      </text>
    </>
  );
} // prettier-ignore

/** The words of those below the line, two lines each: a column is as wide as one word. */
function Below({ line, shown, layout }: Pick<MarksProps, 'line' | 'shown' | 'layout'>) {
  const { lane } = layout;
  if (lane === null) return null;
  return wordsBelow(line.batches, shown).map(({ at, words }) => {
    const [above, below] = words.split(' ');
    return (
      <text key={at} className="word" x={layout.x(at)} textAnchor="middle">
        <tspan x={layout.x(at)} y={lane - layout.jar / 2 - 24}>
          {above}
        </tspan>
        <tspan x={layout.x(at)} y={lane - layout.jar / 2 - 8}>
          {below}
        </tspan>
      </text>
    );
  });
}

function Days({ line, shown, layout }: Pick<MarksProps, 'line' | 'shown' | 'layout'>) {
  return dayMarks(line.batches, shown, layout.step).map(({ index, day, year }) => (
    <text key={index} className="day" textAnchor="middle">
      <tspan x={layout.x(index)} y={layout.days}>
        {day}
      </tspan>
      {year !== null && (
        <tspan x={layout.x(index)} y={layout.days + 19}>
          {year}
        </tspan>
      )}
    </text>
  ));
}

/** Everything drawn of a line at full size. */
export function LineMarks({ line, shown, layout, lit, worked }: MarksProps) {
  const { x, y } = layout;
  const corrected = worked?.corrected ?? true;
  const batches = line.batches.slice(shown.from, shown.to).map((batch, at) => ({ batch, index: shown.from + at }));
  const medians = batches.flatMap(({ batch, index }) => {
    const level = levelOf(batch, corrected);
    return level === null ? [] : [{ index, level }];
  });
  return (
    <>
      <JarDefs />
      {lit !== null && lit >= shown.from && lit < shown.to && (
        <rect className="column" x={x(lit) - layout.step / 2} width={layout.step} y={2} height={layout.height - 4} rx="8" />
      )}
      <Scale layout={layout} />
      <EarlyBand line={line} layout={layout} />
      {stretches(medians).map((stretch) => (
        <path
          key={stretch[0]?.index}
          className="through"
          d={path(stretch.map((one) => [x(one.index), y(one.level)] as const))}
        />
      ))}
      {worked && <WorkedMarks line={line} shown={shown} layout={layout} />}
      <CameDown line={line} layout={layout} corrected={corrected} />
      <Below line={line} shown={shown} layout={layout} />
      {batches.map(({ batch, index }) => {
        const level = levelOf(batch, corrected);
        return (
          <g key={batch.batch} className="batch">
            <BatchJar batch={batch} x={x(index)} y={level === null ? (layout.lane ?? layout.foot) : y(level)} width={layout.jar} />
          </g>
        );
      })}
      {worked && <WorkedMarks line={line} shown={shown} layout={layout} jars={worked} />}
      <Days line={line} shown={shown} layout={layout} />
    </>
  );
} // prettier-ignore

/** More would be dust on a card. */
const MOST_IN_SMALL = 25;

/** A line in small: its newest batches and the early level. */
export function SmallMarks({ line }: { readonly line: LineReply }) {
  const batches = line.batches.slice(-MOST_IN_SMALL);
  const { x, y } = smallLayout(batches.length);
  const { baseline, spread } = line;
  const width = Math.max(1.6, Math.min(5, (SMALL.width - 12) / batches.length / 2.2));
  const [top, foot] = [y((baseline ?? 0) + (spread ?? 0)), y((baseline ?? 0) - (spread ?? 0))];
  return (
    <>
      {baseline !== null && (
        <rect className="band" x="0" width={SMALL.width} y={top} height={Math.max(8, foot - top)} rx="4" />
      )}
      {batches.map((batch, index) =>
        batch.points === null ? (
          <circle key={batch.batch} className="jar-dot left-out" cx={x(index)} cy={SMALL.height - 8} r={Math.min(4, width)} />
        ) : (
          <circle key={batch.batch} className="median" cx={x(index)} cy={y(batch.points)} r={width} />
        ),
      )}
    </>
  );
} // prettier-ignore
