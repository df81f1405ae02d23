// Readings of a hold against its plan, and below, on the same hours, each jar's stay. Only what was read is drawn: gaps are
// dotted, what failed is a block on the axis, the future is the plan's band alone.
import { useId, useRef } from 'react';
import { momentText, storedMoment } from '../../core/ledger/stored-moments';
import { useSize } from '../parts/use-size';
import { failedSpan, nameAt, spanOf, stretches, timeTicks, warmthRange, type Hold } from './plot-times';

const TOP = 26;
const PLOT = 216;
const AXIS = 30;
const ROW = 22;
const LEAST_LEFT = 46;
const RIGHT = 14;
/** A letter of a series' name, px, widely taken. */
const LETTER = 9;
const seconds = (moment: string): number => storedMoment(moment).seconds;
/** The time of a moment on the keeper's clock while the hold ran, whatever offset it was written with. */
const clockOf = (moment: string, offset: number): string => momentText(seconds(moment), offset).slice(11, 16);
const PLACES = { air: 'air', bath: 'bath', jar: 'in a jar' } as const;

/** Of "planned 37.5 °C", px, widely taken. */
const PLANNED_WIDTH = 124;

/** Room left of the axis: for the marks, and for what the jars are called. */
const leftOf = ({ jars }: Hold): number =>
  jars.reduce((most, { letter }) => Math.max(most, letter.length * LETTER + 18), LEAST_LEFT);

interface Scale {
  /** Where the axis begins. */
  readonly left: number;
  readonly x: (at: number) => number;
  readonly y: (celsius: number) => number;
  readonly right: number;
}

function Warmth({ hold, left, x, y, right }: Scale & { readonly hold: Hold }) {
  const { planned, began, ended, ends } = hold;
  const { low, high } = warmthRange(hold);
  const marks = [20, 30, 40, 50, 60].filter((mark) => mark > low && mark < high);
  const from = began === null ? left : x(seconds(began));
  const until = ended ?? ends;
  const to = until === null ? right : x(seconds(until));
  return (
    <>
      {planned && (
        <rect
          className="hold-band"
          x={from}
          y={y(planned.value + 1)}
          width={Math.max(0, to - from)}
          height={y(planned.value - 1) - y(planned.value + 1)}
          rx="4"
        />
      )}
      {marks.map((mark) => (
        <g key={mark}>
          <path className="hold-grid" d={`M${left} ${y(mark)}H${right}`} />
          <text className="hold-mark" x={left - 8} y={y(mark) + 5} textAnchor="end">
            {mark}°
          </text>
        </g>
      ))}
      {planned && (
        <text
          className="hold-mark"
          x={Math.max(to - 6, left + PLANNED_WIDTH)}
          y={y(planned.value - 1) + 18}
          textAnchor="end"
        >
          planned {planned.value} °C
        </text>
      )}
      {hold.series.map((series) => {
        const { read, gaps } = stretches(series, x, y);
        const above = series.place !== 'jar';
        const name = series.jar ?? PLACES[series.place ?? 'bath'];
        const points = series.at.map((moment, i) => ({ x: x(moment), y: y(series.c[i] ?? 0) }));
        const at = nameAt(points, name.length * LETTER, above);
        // A single reading stands at *now*: its name goes before it.
        const ending = series.at.length === 1;
        return (
          <g key={series.id} className={`hold-series ${series.place ?? 'bath'}`}>
            {read.map((line) => (
              <path key={line} d={`M${line}`} />
            ))}
            {gaps.map((line) => (
              <path key={line} className="gap" d={`M${line}`} />
            ))}
            {series.at.length === 1 && <circle cx={x(series.at[0] ?? 0)} cy={y(series.c[0] ?? 0)} r="3.5" />}
            <text
              x={(points[at]?.x ?? 0) - (ending ? 8 : 0)}
              y={(points[at]?.y ?? 0) + (above ? -10 : 22)}
              textAnchor={ending ? 'end' : 'start'}
            >
              {name}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** What failed, as blocks on the axis, each with its words. */
function Failed({ hold, x, right }: Pick<Scale, 'x' | 'right'> & { readonly hold: Hold }) {
  return hold.interruptions.map((one) => {
    const span = failedSpan(one, hold);
    if (span === null) return null;
    const [from, to] = [x(span.from), x(span.to)];
    const leftward = from > right / 2;
    return (
      <g key={one.id} className="hold-failed">
        <rect x={from} y={TOP + PLOT - 20} width={Math.max(4, to - from)} height={20} />
        <text x={leftward ? from - 6 : to + 6} y={TOP + PLOT - 5} textAnchor={leftward ? 'end' : 'start'}>
          {one.name}
        </text>
      </g>
    );
  });
}

/** Where each jar stood: a bar from when to when, on the hours above. */
function Stays({
  hold,
  left,
  x,
  top,
}: Pick<Scale, 'left' | 'x'> & { readonly hold: Hold; readonly top: number }) {
  const { began, ended, ends, now } = hold;
  return hold.jars.map((jar, row) => {
    const y = top + row * ROW;
    return (
      <g key={jar.id} className="hold-stay">
        <text x={left - 14} y={y + 5} textAnchor="end">
          {jar.letter}
        </text>
        {jar.stays.map(({ id, came, went }) => {
          const start = came ?? began;
          if (start === null) return null;
          const until = went ?? ended ?? now;
          const open = went === null && ended === null && ends !== null && seconds(ends) > seconds(now);
          return (
            <g key={id}>
              {open && <path className="to-come" d={`M${x(seconds(now))} ${y}H${x(seconds(ends))}`} />}
              <path d={`M${x(seconds(start))} ${y}H${Math.max(x(seconds(start)) + 1, x(seconds(until)))}`} />
              {came !== null && began !== null && seconds(came) - seconds(began) > 600 && (
                <text x={x(seconds(came)) - 8} y={y + 5} textAnchor="end">
                  {clockOf(came, hold.offset)}
                </text>
              )}
              {went !== null && (
                <text x={x(seconds(went)) + 8} y={y + 5}>
                  out {clockOf(went, hold.offset)}
                </text>
              )}
            </g>
          );
        })}
      </g>
    );
  });
}

/** The same in words, for who does not see it. */
function staysInWords(hold: Hold): string {
  return hold.jars
    .map(({ label, stays, inside }) => {
      const parts = stays
        .map(({ came, went }) =>
          [
            came === null ? null : `in at ${clockOf(came, hold.offset)}`,
            went === null ? null : `out at ${clockOf(went, hold.offset)}`,
          ]
            .filter(Boolean)
            .join(', '),
        )
        .filter(Boolean);
      return `${label}: ${parts.length > 0 ? parts.join('; ') : 'as the hold'}${inside ? ', still in' : ''}.`;
    })
    .join(' ');
}

/** The plot. */
export function HoldPlot({ hold }: { readonly hold: Hold }) {
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  const id = useId();
  const width = Math.max(320, size?.width ?? 0);
  const span = spanOf(hold);
  const { low, high } = warmthRange(hold);
  const right = width - RIGHT;
  const left = leftOf(hold);
  const x = (at: number): number => left + ((at - span.from) / (span.to - span.from)) * (right - left);
  const y = (celsius: number): number => TOP + ((high - celsius) / (high - low)) * PLOT;
  const foot = TOP + PLOT;
  const rows = foot + AXIS + 16;
  const height = rows + hold.jars.length * ROW;
  const now = hold.runs ? x(seconds(hold.now)) : null;
  const looks = hold.looks.filter(
    ({ what, state }) => hold.runs && what === 'look' && (state === 'due' || state === 'to come'),
  );
  return (
    <div ref={box} className="hold-plot">
      {size !== null && (
        <svg width={width} height={height} role="img" aria-labelledby={id}>
          <title id={id}>
            {`Readings of ${hold.label} against the plan. ${hold.warmth?.says ?? 'Nothing was read yet.'} ${staysInWords(hold)}`}
          </title>
          {looks.map((look) => {
            const at = x(seconds(look.at));
            const from = x(seconds(look.at) - (look.hours <= 12 ? 6 : 3) * 3600);
            return (
              <g key={look.hours} className="hold-look">
                <rect x={from} y={TOP} width={Math.max(2, at - from)} height={PLOT} />
                <text x={(from + at) / 2} y={foot - 26} textAnchor="middle">
                  look
                </text>
              </g>
            );
          })}
          <Warmth {...{ hold, left, x, y, right }} />
          <Failed {...{ hold, x, right }} />
          <path className="hold-axis" d={`M${left} ${foot}H${right}`} />
          {timeTicks(span, hold.offset, right - left).map(({ at, words }) => (
            <g key={at} className="hold-tick">
              <path d={`M${x(at)} ${foot}v6`} />
              <text x={Math.min(x(at), right - 20)} y={foot + 23} textAnchor="middle">
                {words}
              </text>
            </g>
          ))}
          <Stays {...{ hold, left, x, top: rows }} />
          {now !== null && (
            <g className="hold-now">
              <path d={`M${now} ${TOP - 6}V${foot}`} />
              <text
                x={now > right - 90 ? now - 8 : now + 8}
                y={TOP - 9}
                textAnchor={now > right - 90 ? 'end' : 'start'}
              >
                now {clockOf(hold.now, hold.offset)}
              </text>
            </g>
          )}
        </svg>
      )}
    </div>
  );
}
