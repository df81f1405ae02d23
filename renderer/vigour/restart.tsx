// When to start afresh: the curve of what a good jar costs if every line is ended after so many generations, today on it.
import { useRef } from 'react';
import { costWords } from '../../core/advice/costs';
import type { Reply } from '../../core/contract';
import { useRead } from '../app/use-read';
import { useSize } from '../family/use-size';
import { copyNumbers, copyPicture } from './copy';
import { restartNumbers } from './numbers';
import { path, spread } from './plot-scale';
import { Why } from './why';

type RestartReply = Reply<'advice.restart'>;

const HEIGHT = 320;
const ROOM = { left: 56, right: 190, top: 20, bottom: 62 };

/** Round steps for the cost scale: 1, 2 or 5 times a power of ten. */
function costTicks(most: number): number[] {
  const rough = most / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10) * power;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, at) => at * step);
}

function Curve({ reply, width }: { readonly reply: RestartReply; readonly width: number }) {
  const { curve, best, from, to, today, reserve, sure } = reply;
  const last = curve.at(-1)?.generation ?? 1;
  // The first generations cost so much that the rest would lie flat: the scale is cut there, and the line leaves it.
  const most = Math.max(2.6 * Math.min(...curve.map(({ cost }) => cost)), 0.01);
  const foot = HEIGHT - ROOM.bottom;
  const end = width - ROOM.right;
  const x = (generation: number): number =>
    ROOM.left + ((generation - 1) / Math.max(1, last - 1)) * (end - ROOM.left);
  const y = (cost: number): number => Math.max(ROOM.top - 14, foot - (cost / most) * (foot - ROOM.top));
  const seen = curve.filter((point) => !point.reckonedOn);
  const beyond = curve.filter((point, at) => point.reckonedOn || curve[at + 1]?.reckonedOn === true);
  const costAt = (generation: number): number =>
    curve.find((point) => point.generation === generation)?.cost ?? curve.at(-1)?.cost ?? 0;
  const every = Math.max(1, Math.ceil((last * 34) / (end - ROOM.left)));
  const words = [
    { at: y(curve.at(-1)?.cost ?? 0), says: 'from sources', kind: 'curve' },
    ...(reserve ? [{ at: y(reserve.cost), says: `from the reserve ${reserve.cost.toFixed(2)}`, kind: 'reserve' }] : []),
  ]; // prettier-ignore
  const places = spread(words.map(({ at }) => at), 20, ROOM.top, foot); // prettier-ignore
  const beside = today !== null && Math.abs(x(today) - x(best)) < 90;
  return (
    <>
      {costTicks(most).map((tick) => (
        <g key={tick}>
          <path className="grid" d={`M${ROOM.left} ${y(tick)}H${end}`} />
          <text className="tick" x={ROOM.left - 8} y={y(tick)} textAnchor="end" dominantBaseline="central">
            {Number(tick.toFixed(2))}
          </text>
        </g>
      ))}
      <rect
        className="good"
        x={x(from) - 7}
        width={x(Math.min(to, last)) - x(from) + 14}
        y={ROOM.top}
        height={foot - ROOM.top}
        rx="10"
      />
      <path
        className="cost-range"
        d={`${path([
          ...curve.map((point) => [x(point.generation), y(point.high)] as const),
          ...curve.toReversed().map((point) => [x(point.generation), y(point.low)] as const),
        ])}Z`}
      />
      {reserve && <path className="limit" d={`M${ROOM.left} ${y(reserve.cost)}H${end}`} />}
      <path className="cost" d={path(seen.map((point) => [x(point.generation), y(point.cost)] as const))} />
      <path
        className="cost beyond"
        d={path(beyond.map((point) => [x(point.generation), y(point.cost)] as const))}
      />
      <path className="stem" d={`M${x(best)} ${y(costAt(best))}V${foot}`} />
      <circle className="median" cx={x(best)} cy={y(costAt(best))} r="8" />
      <text className="word" x={x(best)} y={y(costAt(best)) + 30} textAnchor="middle">
        {sure ? 'lowest' : 'lowest by what is assumed'}
      </text>
      {today !== null && today <= last && (
        <>
          <path className="today" d={`M${x(today)} ${ROOM.top + 12}V${foot}`} />
          <rect
            className="today-mark"
            x={x(today) - 6}
            y={y(costAt(today)) - 6}
            width="12"
            height="12"
            transform={`rotate(45 ${x(today)} ${y(costAt(today))})`}
          />
          <text
            className="word today-word"
            x={x(today) + (beside && today < best ? -8 : 8)}
            y={ROOM.top + 22}
            textAnchor={beside && today < best ? 'end' : 'start'}
          >
            today, {today}
          </text>
        </>
      )}
      {words.map((word, at) => (
        <text key={word.kind} className="word" x={end + 14} y={places[at]} dominantBaseline="central">
          {word.says}
        </text>
      ))}
      <path className="foot" d={`M${ROOM.left} ${foot}H${end}`} />
      {curve.map(({ generation }) =>
        (generation - 1) % every === 0 ? (
          <text key={generation} className="generation" x={x(generation)} y={foot + 24} textAnchor="middle">
            {generation}
          </text>
        ) : null,
      )}
      <text className="word" x={ROOM.left} y={foot + 50}>
        start afresh after this generation
      </text>
    </>
  );
}

function Said({ reply }: { readonly reply: RestartReply }) {
  return (
    <div className="restart-said">
      {reply.sure && !reply.openEnded ? (
        <span className="restart-number" aria-hidden="true">
          {reply.best}
        </span>
      ) : (
        <span className="restart-early">{reply.sure ? `from ${reply.from} on` : 'too early to say'}</span>
      )}
      <div className="stack">
        <p className="standing-sentence">{reply.sentence}</p>
        {reply.today !== null && <p className="soft">The newest jar is of generation {reply.today}.</p>}
      </div>
    </div>
  );
}

function CostTable({ reply }: { readonly reply: RestartReply }) {
  return (
    <div className="table-frame">
      <table>
        <caption className="visually-hidden">
          What a good jar costs, by the generation to start afresh after
        </caption>
        <thead>
          <tr>
            <th scope="col">Start afresh after</th>
            <th scope="col">A good jar costs</th>
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
              <td className="figure">{costWords(point.cost, reply.unit)}</td>
              <td className="figure">
                {point.low.toFixed(2)} and {point.high.toFixed(2)}
              </td>
              <td>{point.reckonedOn ? 'reckoned on: no line of yours went that far' : 'from your lines'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function Restart({ line }: { readonly line: string }) {
  const answer = useRead('advice.restart', { line });
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const size = useSize(frame);
  const width = Math.max(size?.width ?? 0, 480);
  const reply = answer?.ok ? answer.value : null;
  return (
    <section className="vigour-part" aria-labelledby="restart">
      <h2 id="restart">When to start afresh</h2>
      {answer?.ok === false && <p>{answer.sentence}</p>}
      {reply && <Said reply={reply} />}
      <figure className="plot" aria-label="Cost of a good jar by the generation to start afresh after">
        <div className="plot-tools row">
          <span className="soft small">
            Cost of a good jar,{' '}
            {reply === null || reply.unit === 'jars' ? 'counted in jars' : `in ${reply.unit}`}
          </span>
          <span className="push" />
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
            onClick={() => reply && void copyNumbers(restartNumbers(reply))}
          >
            Copy as numbers
          </button>
        </div>
        <div className="plot-frame" ref={frame}>
          {reply && size !== null && (
            <svg
              ref={svg}
              className="line-plot"
              width={width}
              height={HEIGHT}
              viewBox={`0 0 ${width} ${HEIGHT}`}
              role="img"
              aria-label={`${reply.sentence} The table below has every figure.`}
            >
              <Curve reply={reply} width={width} />
            </svg>
          )}
        </div>
        <figcaption className="soft small">
          The shaded field is what is about as good. Around the line lies its 80 % range; it is dashed where
          no line of yours has gone yet.
        </figcaption>
      </figure>
      {reply && (
        <>
          <details className="vigour-why">
            <summary>The numbers as a table</summary>
            <CostTable reply={reply} />
          </details>
          <Why
            why={reply.why}
            title="Costs, starting assumptions and how this was worked out"
            model={reply.model}
          />
        </>
      )}
    </section>
  );
}
