// When a fresh start pays: one sentence, and the curve of what a good jar costs if every line is ended after so many
// generations, with today's mark on its axis.
import { useRef } from 'react';
import { costWords, lostInHundred } from '../../core/says/cost-says';
import { FLAT } from '../../core/says/restart-says';
import type { Reply } from '../../core/contract';
import { useRead } from '../state/use-read';
import { useSize } from '../parts/use-size';
import { copyNumbers, copyPicture } from './copy';
import { restartNumbers } from './tabbed-numbers';
import { path } from './plot-scale';
import { Why } from '../parts/why-details';

type RestartReply = Reply<'advice.restart'>;

const HEIGHT = 276;
const ROOM = { left: 58, right: 24, top: 56, foot: 194 } as const;
const LEAST_WIDTH = 420;

/** Costs written beside the curve, three to five: in money, or as what 100 good jars cost beyond as many jars. */
function costScale(low: number, high: number, inJars: boolean): { readonly cost: number; readonly says: string }[] {
  const from = inJars ? Math.max(1, low) : low;
  const rough = (high - from) / 4;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * ten >= rough) ?? 10) * ten;
  const first = Math.ceil(from / step - 1e-9);
  const places = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: Math.floor(high / step + 1e-9) - first + 1 }, (_, at) => {
    const cost = (first + at) * step;
    return { cost, says: inJars ? String(lostInHundred(cost)) : cost.toFixed(places) };
  });
} // prettier-ignore

function Curve({ reply, width }: { readonly reply: RestartReply; readonly width: number }) {
  const { curve, from, to, openEnded, today, best, reserve } = reply;
  const inJars = reply.unit === 'jars';
  // On a flat curve the very least is chance.
  const flat = openEnded || to >= FLAT * from;
  // Today is always on the axis, also where it lies beyond what was reckoned.
  const last = Math.max(curve.at(-1)?.generation ?? 1, today ?? 1);
  const reach = curve.at(-1)?.generation ?? 1;
  // The first generations cost so much that the rest would lie flat: there the line leaves the plot.
  const least = Math.min(...curve.map(({ cost }) => cost), reserve?.cost ?? Number.POSITIVE_INFINITY);
  const most = Math.max(2.2 * least, 0.01);
  const end = width - ROOM.right;
  const x = (generation: number): number =>
    ROOM.left + ((generation - 1) / Math.max(1, last - 1)) * (end - ROOM.left);
  const y = (cost: number): number => ROOM.foot - 12 - ((cost - 0.7 * least) / (most - 0.7 * least)) * (ROOM.foot - ROOM.top);
  const seen = curve.filter((point) => !point.reckonedOn);
  const beyond = curve.filter((point, at) => point.reckonedOn || curve[at + 1]?.reckonedOn === true);
  const [goodFrom, goodTo] = [x(from) - 7, x(Math.min(to, reach)) + 7];
  const costs = costScale(0.7 * least, most, inJars);
  const every = Math.max(1, Math.ceil((last * 34) / (end - ROOM.left)));
  return (
    <>
      <rect
        className="good"
        x={goodFrom}
        width={goodTo - goodFrom}
        y={ROOM.top - 22}
        height={ROOM.foot - ROOM.top + 22}
        rx="10"
      />
      <text className="word" x={Math.min(Math.max(goodFrom + 10, ROOM.left), end - 100)} y={ROOM.top - 2}>
        about the least
      </text>
      <path
        className="cost-range"
        d={`${path([
          ...curve.map((point) => [x(point.generation), y(point.high)] as const),
          ...curve.toReversed().map((point) => [x(point.generation), y(point.low)] as const),
        ])}Z`}
      />
      <path className="cost" d={path(seen.map((point) => [x(point.generation), y(point.cost)] as const))} />
      <path
        className="cost beyond"
        d={path(beyond.map((point) => [x(point.generation), y(point.cost)] as const))}
      />
      {!flat && (
        <circle className="median" cx={x(best)} cy={y(curve.find((point) => point.generation === best)?.cost ?? 0)} r="6" />
      )}
      <text className="day" x={end} y="14" textAnchor="end">
        {inJars ? 'jars thrown out for 100 good ones' : `a good jar costs, in ${reply.unit}`}
      </text>
      {costs.map(({ cost, says }) => (
        <text key={says} className="day" x={ROOM.left - 8} y={y(cost)} textAnchor="end" dominantBaseline="central">
          {says}
        </text>
      ))}
      <text className="day" x={end} y={HEIGHT - 8} textAnchor="end">
        each line ended after this generation
      </text>
      <path className="foot" d={`M${ROOM.left} ${ROOM.foot}H${end}`} />
      {Array.from({ length: last }, (_, at) => at + 1).map((generation) =>
        (generation - 1) % every === 0 && Math.abs(generation - (today ?? -99)) * ((end - ROOM.left) / last) > 34 ? (
          <text key={generation} className="generation" x={x(generation)} y={ROOM.foot + 26} textAnchor="middle">
            {generation}
          </text>
        ) : null,
      )}
      {today !== null && <Today at={x(today)} generation={today} width={width} />}
    </>
  );
} // prettier-ignore

/** Where the line's newest jar stands: a mark on the axis. */
function Today({ at, generation, width }: { readonly at: number; readonly generation: number; readonly width: number }) {
  const [near, far] = [at < 40, at > width - 40];
  return (
    <>
      <path className="today-mark" d={`M${at} ${ROOM.foot - 14}L${at + 9} ${ROOM.foot + 3}H${at - 9}Z`} />
      <text className="generation today-word" x={at} y={ROOM.foot + 26} textAnchor="middle">
        {generation}
      </text>
      <text
        className="word today-word"
        x={near ? 2 : far ? width - 2 : at}
        y={ROOM.foot + 48}
        textAnchor={near ? 'start' : far ? 'end' : 'middle'}
      >
        today
      </text>
    </>
  );
} // prettier-ignore

function CostTable({ reply }: { readonly reply: RestartReply }) {
  const inJars = reply.unit === 'jars';
  const range = (cost: number): string => (inJars ? String(lostInHundred(cost)) : cost.toFixed(2));
  return (
    <div className="table-frame">
      <table>
        <caption className="visually-hidden">
          What a good jar costs, by the generation to start afresh after
        </caption>
        <thead>
          <tr>
            <th scope="col">Start afresh after</th>
            <th scope="col">
              {inJars ? 'As if so many jars were thrown out for 100 good ones' : 'A good jar costs'}
            </th>
            <th scope="col">Between</th>
            <th scope="col">How known</th>
          </tr>
        </thead>
        <tbody>
          {reply.curve.map((point) => (
            <tr key={point.generation}>
              <th scope="row" className="figure">
                {point.generation}
              </th>
              <td className="figure">
                {inJars ? lostInHundred(point.cost) : costWords(point.cost, reply.unit)}
              </td>
              <td className="figure">
                {range(point.low)} and {range(point.high)}
              </td>
              <td>{point.reckonedOn ? 'reckoned on: no line of yours went that far' : 'from your lines'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Everything behind the sentence. */
function HowReckoned({ reply }: { readonly reply: RestartReply }) {
  return (
    <details className="vigour-why">
      <summary>How a fresh start was weighed</summary>
      <div className="stack">
        <p>{reply.sentence}</p>
        <CostTable reply={reply} />
        <Why why={reply.why} title="Costs, starting assumptions, formula and source" model={reply.model} />
      </div>
    </details>
  );
}

function RestartPlot({ reply }: { readonly reply: RestartReply }) {
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const size = useSize(frame);
  const width = Math.max(size?.width ?? 0, LEAST_WIDTH);
  return (
    <figure className="plot" aria-label="Cost of a good jar by the generation to start afresh after">
      <div className="plot-frame" ref={frame}>
        {size !== null && (
          <svg
            ref={svg}
            className="line-plot"
            width={width}
            height={HEIGHT}
            viewBox={`0 0 ${width} ${HEIGHT}`}
            role="img"
            aria-label={reply.short}
          >
            <Curve reply={reply} width={width} />
          </svg>
        )}
      </div>
      <div className="plot-foot">
        <figcaption className="plot-told soft">
          What a good jar costs if each line is ended after so many generations; dashed where none of yours
          has gone.
        </figcaption>
        <button
          type="button"
          className="button quiet"
          onClick={() => svg.current && void copyPicture(svg.current)}
        >
          Copy as picture
        </button>
        <button
          type="button"
          className="button quiet"
          onClick={() => void copyNumbers(restartNumbers(reply))}
        >
          Copy as numbers
        </button>
      </div>
    </figure>
  );
}

export function Restart({ line }: { readonly line: string }) {
  const answer = useRead('advice.restart', { line });
  const reply = answer?.ok ? answer.value : null;
  return (
    <section className="vigour-part" aria-labelledby="restart">
      <h2 id="restart">When a fresh start pays</h2>
      {answer?.ok === false && <p>{answer.sentence}</p>}
      {reply && <p>{reply.short}</p>}
      {reply?.sure === true && <RestartPlot reply={reply} />}
      {reply && <HowReckoned reply={reply} />}
    </section>
  );
}
