// What a line was judged by, drawn over its batches when asked for: its jars and those left out, slope, smoothed level,
// control limit, each with its word at the right.
import { path, runningLine, slopeLine, spread, type Layout, type LineReply, type Shown } from './plot-scale';

/** How it is shown. */
export interface Worked {
  readonly corrected: boolean;
}

interface Props {
  readonly line: LineReply;
  readonly shown: Shown;
  readonly layout: Layout;
}

const printed = (points: number): string => `${points <= -0.05 ? '−' : ''}${Math.abs(points).toFixed(1)}`;
const rounded = (points: number): string => String(Math.round(Math.min(100, Math.max(0, points))));
const within =
  (shown: Shown) =>
  ({ index }: { readonly index: number }): boolean =>
    index >= shown.from && index < shown.to;

function Levels({ line, shown, layout }: Props) {
  const { x, y, left, right, width } = layout;
  const end = width - right + 12;
  const slope = (slopeLine(line)?.at ?? []).filter(within(shown));
  const running = runningLine(line).filter(within(shown));
  return (
    <>
      {line.baseline !== null && <path className="baseline" d={`M${left} ${y(line.baseline)}H${end}`} />}
      {line.lowerLimit !== null && <path className="limit" d={`M${left} ${y(line.lowerLimit)}H${end}`} />}
      {slope.length > 1 && (
        <>
          <path
            className="slope-range"
            d={`${path([
              ...slope.map((one) => [x(one.index), y(one.high)] as const),
              ...slope.toReversed().map((one) => [x(one.index), y(one.low)] as const),
            ])}Z`}
          />
          <path className="slope" d={path(slope.map((one) => [x(one.index), y(one.middle)] as const))} />
        </>
      )}
      <path className="running" d={path(running.map((one) => [x(one.index), y(one.points)] as const))} />
    </>
  );
}

/** The words at the right end, moved apart where levels lie close. */
function Words({ line, layout }: Omit<Props, 'shown'>) {
  const { y } = layout;
  const last = slopeLine(line)?.at.at(-1);
  const running = line.running.at(-1);
  const words = [
    ...(line.baseline === null ? [] : [{ at: line.baseline, says: `early level ${rounded(line.baseline)}`, kind: 'band-word' }]),
    ...(line.lowerLimit === null ? [] : [{ at: line.lowerLimit, says: `even: above ${rounded(line.lowerLimit)}`, kind: 'limit-word' }]),
    ...(last && line.slope !== null ? [{ at: last.middle, says: `${printed(line.slope)} a generation`, kind: 'slope-word' }] : []),
    ...(running === undefined ? [] : [{ at: running, says: `smoothed level ${rounded(running)}`, kind: 'running-word' }]),
  ]; // prettier-ignore
  const places = spread(words.map(({ at }) => y(at)), 20, 10, layout.foot + 40); // prettier-ignore
  return words.map(({ says, kind }, at) => (
    <text
      key={kind}
      className={`word ${kind}`}
      x={layout.width - layout.right + 18}
      y={places[at]}
      dominantBaseline="central"
    >
      {says}
    </text>
  ));
}

/** Jars stand beside their batch, left and right in turn, so that it hides none. */
const besides = (at: number, layout: Layout): number =>
  (at % 2 === 0 ? -1 : 1) * (layout.jar / 2 + 2 + 6 * (at >> 1)) * Math.min(1, layout.step / 52);

function Jars({ line, shown, layout, worked }: Props & { readonly worked: Worked }) {
  const { x, y } = layout;
  return line.batches.slice(shown.from, shown.to).map((batch, column) => {
    const index = shown.from + column;
    return (
      <g key={batch.batch} className="batch-jars">
        {batch.jars.map((jar, at) => {
          const across = x(index) + besides(at, layout);
          const down = y(worked.corrected ? jar.score : jar.asItCame);
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
      </g>
    );
  });
}

/** The levels, or over the batches their jars. @param props.jars how the jars are shown; absent: the levels are drawn */
export function WorkedMarks({ jars, ...props }: Props & { readonly jars?: Worked }) {
  return jars ? (
    <Jars {...props} worked={jars} />
  ) : (
    <>
      <Levels {...props} />
      <Words {...props} />
    </>
  );
}

/** What the marks are, once, below. */
export function Key({ line }: { readonly line: LineReply }) {
  const held = line.batches.some(({ jars }) => jars.some((jar) => jar.held !== null));
  const marks = [
    { says: 'a jar', draw: <circle className="jar-dot" cx="14" cy="10" r="3.2" /> },
    { says: 'a jar left out', draw: <circle className="jar-dot left-out" cx="14" cy="10" r="4" /> },
    ...(held ? [{ says: 'a jar set aside, or that descends from one', draw: <><circle className="jar-dot" cx="14" cy="12" r="3.2" /><path className="hold-mark" d="M8 5h12" /></> }] : []),
    { says: 'gain or loss with each generation, and its 90 % range', draw: <><rect className="slope-range" x="0" y="4" width="28" height="12" /><path className="slope" d="M0 12L28 8" /></> },
    { says: 'level of the early batches', draw: <><rect className="band" x="0" y="4" width="28" height="12" /><path className="baseline" d="M0 10H28" /></> },
    { says: 'smoothed level', draw: <path className="running" d="M0 6L10 7L20 11L28 13" /> },
    { says: 'an even line’s smoothed level stays above this', draw: <path className="limit" d="M0 10H28" /> },
  ]; // prettier-ignore
  return (
    <ul className="plot-key">
      {marks.map(({ says, draw }) => (
        <li key={says}>
          <svg className="line-plot" width="28" height="20" aria-hidden="true">
            {draw}
          </svg>
          {says}
        </li>
      ))}
    </ul>
  );
}
