// The marks of a line's plot. Told apart by shape and by words as well as by shade: batches are large and filled, jars
// small dots, left-out jars hollow, jars that a hold touches under a lid, the early level a band, the control limit dashed.
import {
  path,
  runningLine,
  slopeLine,
  spread,
  stretches,
  type LineBatch,
  type LineReply,
  type Scale,
} from './plot-scale';

interface MarksProps {
  readonly line: LineReply;
  readonly scale: Scale;
  readonly corrected: boolean;
  /** Index of the batch that is pointed at or chosen. */
  readonly lit: number | null;
}

const levelOf = (batch: LineBatch, corrected: boolean): number | null =>
  corrected ? batch.points : batch.uncorrected;
const printed = (points: number): string => (Math.round(points * 10) / 10).toFixed(1).replace('-', '−');
const rounded = (points: number): string => String(Math.round(points));

/** Days below the columns: as many as there is room for, the newest always. */
function dayMarks(batches: readonly LineBatch[], step: number): ReadonlySet<number> {
  const every = Math.max(1, Math.ceil(62 / step));
  return new Set(batches.flatMap((_, at) => ((batches.length - 1 - at) % every === 0 ? [at] : [])));
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;
const shortDay = (day: string | null): string =>
  day === null ? '?' : `${Number(day.slice(8, 10))} ${MONTHS[Number(day.slice(5, 7)) - 1] ?? ''}`;

/** Scale, band, control limit and slope. */
function Levels({ line, scale }: Omit<MarksProps, 'lit' | 'corrected'>) {
  const { size, x, y } = scale;
  const end = size.width - size.right;
  const first = line.batches.findIndex(({ points }) => points !== null);
  const from = first < 0 ? size.left : x(first) - scale.step / 2;
  const slope = slopeLine(line);
  const { baseline, spread: around, lowerLimit } = line;
  return (
    <>
      {[0, 25, 50, 75, 100].map((points) => (
        <g key={points}>
          <path className="grid" d={`M${size.left} ${y(points)}H${end}`} />
          <text className="tick" x={size.left - 8} y={y(points)} textAnchor="end" dominantBaseline="central">
            {points}
          </text>
        </g>
      ))}
      {baseline !== null && (
        <>
          {around !== null && (
            <rect
              className="band"
              x={from}
              width={end - from}
              y={y(baseline + around)}
              height={Math.max(3, y(baseline - around) - y(baseline + around))}
            />
          )}
          <path className="baseline" d={`M${from} ${y(baseline)}H${end}`} />
        </>
      )}
      {lowerLimit !== null && <path className="limit" d={`M${from} ${y(lowerLimit)}H${end}`} />}
      {slope !== null && (
        <>
          <path
            className="slope-range"
            d={`${path([
              ...slope.at.map((one) => [x(one.index), y(one.high)] as const),
              ...slope.at.toReversed().map((one) => [x(one.index), y(one.low)] as const),
            ])}Z`}
          />
          <path className="slope" d={path(slope.at.map((one) => [x(one.index), y(one.middle)] as const))} />
        </>
      )}
      <path
        className="running"
        d={path(runningLine(line).map((one) => [x(one.index), y(one.points)] as const))}
      />
    </>
  );
}

/** The words at the right end, moved apart where levels lie close. */
function Words({ line, scale }: Omit<MarksProps, 'lit' | 'corrected'>) {
  const { size, y } = scale;
  const slope = slopeLine(line);
  const last = slope?.at.at(-1);
  const running = line.running.at(-1);
  const words = [
    ...(line.baseline === null ? [] : [{ at: line.baseline, says: `early batches ${rounded(line.baseline)}`, kind: 'band-word' }]),
    ...(line.lowerLimit === null ? [] : [{ at: line.lowerLimit, says: `control limit ${rounded(line.lowerLimit)}`, kind: 'limit-word' }]),
    ...(last && line.slope !== null ? [{ at: last.middle, says: `slope ${printed(line.slope)}`, kind: 'slope-word' }] : []),
    ...(running === undefined ? [] : [{ at: running, says: `smoothed level ${rounded(running)}`, kind: 'running-word' }]),
  ]; // prettier-ignore
  const places = spread(
    words.map(({ at }) => y(at)),
    20,
    size.top,
    size.height - size.bottom,
  );
  return (
    <>
      {words.map(({ says, kind }, at) => (
        <text
          key={kind}
          className={`word ${kind}`}
          x={size.width - size.right + 10}
          y={places[at]}
          dominantBaseline="central"
        >
          {says}
        </text>
      ))}
    </>
  );
}

/** Jars stand beside their median, left and right in turn, so that it hides none. */
const besides = (at: number): number => (at % 2 === 0 ? -1 : 1) * (13 + 7 * (at >> 1));

/** One batch: its jars as dots, its median on top, and below the scale what has no score. */
function BatchMarks({
  batch,
  index,
  scale,
  corrected,
  lit,
}: Omit<MarksProps, 'line'> & { readonly batch: LineBatch; readonly index: number }) {
  const { x, y, size } = scale;
  const centre = x(index);
  const level = levelOf(batch, corrected);
  const other = levelOf(batch, !corrected);
  const scored = new Set(batch.jars.map(({ jar }) => jar));
  const unscored = batch.leftOut.filter(({ jar }) => !scored.has(jar));
  const lane = size.height - size.bottom + 24;
  return (
    <g className={lit === index ? 'batch lit' : 'batch'}>
      {batch.jars.map((jar, at) => {
        const across = centre + besides(at) * Math.min(1, scale.step / 52);
        const down = y(corrected ? jar.score : jar.asItCame);
        return (
          <g key={jar.jar}>
            <circle
              className={jar.compared ? 'jar-dot' : 'jar-dot left-out'}
              cx={across}
              cy={down}
              r={jar.compared ? 3.2 : 4}
            />
            {jar.held !== null && <path className="hold-mark" d={`M${across - 6} ${down - 7}h12`} />}
          </g>
        );
      })}
      {unscored.map((jar, at) => (
        <rect
          key={jar.jar}
          className="jar-dot left-out"
          x={centre + (at - (unscored.length - 1) / 2) * 11 - 4}
          y={lane - 4}
          width="8"
          height="8"
          rx="1.5"
        />
      ))}
      {other !== null && level !== null && Math.abs(other - level) >= 0.5 && (
        <>
          <path className="moved" d={`M${centre} ${y(other)}V${y(level)}`} />
          <circle className="median other" cx={centre} cy={y(other)} r="7" />
        </>
      )}
      {level !== null && <circle className="median" cx={centre} cy={y(level)} r="7.5" />}
    </g>
  );
}

/** Everything drawn of a line at full size. */
export function LineMarks({ line, scale, corrected, lit }: MarksProps) {
  const { size, x, y } = scale;
  const days = dayMarks(line.batches, scale.step);
  const foot = size.height - size.bottom;
  const called = line.batches.findIndex(({ batch }) => batch === line.calledAt);
  const medians = line.batches.flatMap((batch, index) => {
    const level = levelOf(batch, corrected);
    return level === null ? [] : [{ index, level }];
  });
  const lacking = line.batches.some(
    ({ jars, leftOut }) => leftOut.length > jars.filter((jar) => !jar.compared).length,
  );
  return (
    <>
      {lit !== null && (
        <rect
          className="column"
          x={x(lit) - scale.step / 2}
          width={scale.step}
          y={0}
          height={size.height}
          rx="8"
        />
      )}
      <Levels line={line} scale={scale} />
      {stretches(medians).map((stretch) => (
        <path
          key={stretch[0]?.index}
          className="through"
          d={path(stretch.map((one) => [x(one.index), y(one.level)] as const))}
        />
      ))}
      {called >= 0 && (
        <g>
          <path className="called" d={`M${x(called)} ${size.top}V${foot}`} />
          <text className="word called-word" x={x(called) - 8} y={size.top + 8} textAnchor="end">
            noticed here
          </text>
        </g>
      )}
      {line.batches.map((batch, index) => (
        <BatchMarks
          key={batch.batch}
          batch={batch}
          index={index}
          scale={scale}
          corrected={corrected}
          lit={lit}
        />
      ))}
      <Words line={line} scale={scale} />
      {lacking && (
        <text
          className="word lane-word"
          x={size.width - size.right + 10}
          y={foot + 24}
          dominantBaseline="central"
        >
          no score
        </text>
      )}
      <path className="foot" d={`M${size.left} ${foot + 42}H${size.width - size.right}`} />
      {line.batches.map((batch, index) => (
        <g key={batch.batch}>
          <text className="generation" x={x(index)} y={foot + 62} textAnchor="middle">
            {batch.generation}
          </text>
          {days.has(index) && (
            <text className="day" x={x(index)} y={foot + 86} textAnchor="middle">
              {shortDay(batch.madeOn)}
            </text>
          )}
        </g>
      ))}
      <text className="word" x={size.width - size.right + 10} y={foot + 62}>
        generation
      </text>
    </>
  );
}

/** A line in small, on the same scale: batches, early level, slope. */
export function SmallMarks({ line, scale }: { readonly line: LineReply; readonly scale: Scale }) {
  const { size, x, y } = scale;
  const slope = slopeLine(line);
  const end = size.width - size.right;
  return (
    <>
      {[0, 50, 100].map((points) => (
        <path key={points} className="grid" d={`M${size.left} ${y(points)}H${end}`} />
      ))}
      {line.baseline !== null && (
        <rect
          className="band"
          x={size.left}
          width={end - size.left}
          y={y(line.baseline + (line.spread ?? 0))}
          height={Math.max(3, y(line.baseline - (line.spread ?? 0)) - y(line.baseline + (line.spread ?? 0)))}
        />
      )}
      {slope !== null && (
        <path className="slope" d={path(slope.at.map((one) => [x(one.index), y(one.middle)] as const))} />
      )}
      {line.batches.map((batch, index) =>
        batch.points === null ? (
          <circle key={batch.batch} className="jar-dot left-out" cx={x(index)} cy={size.height - 7} r="4" />
        ) : (
          <circle key={batch.batch} className="median" cx={x(index)} cy={y(batch.points)} r="5" />
        ),
      )}
    </>
  );
}
