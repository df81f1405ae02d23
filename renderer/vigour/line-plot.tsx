// A line over its batches: the drawing, a column to press for each batch (arrow keys walk), and what is said of the one
// pointed at. The drawing itself is hidden from screen readers: the columns and the table say the same.
import { useRef, useState } from 'react';
import { useSize } from '../parts/use-size';
import { heldWords, inWords, leftOutWords, scoreWords } from './batch-words';
import { copyNumbers, copyPicture } from './copy';
import { LineMarks } from './line-marks';
import { lineNumbers } from './tabbed-numbers';
import {
  layoutOf,
  LEAST_STEP,
  movedTo,
  newest,
  roomFor,
  type Layout,
  type LineBatch,
  type LineReply,
  type Shown,
} from './plot-scale';
import { Key, type Worked } from './worked-marks';

interface Props {
  readonly line: LineReply;
  readonly chosen: string | null;
  readonly onChoose: (batch: string | null) => void;
  readonly worked: Worked | null;
}

/** Narrower than any window: not laid out yet. */
const LEAST_WIDTH = 240;

interface ColumnsProps {
  readonly line: LineReply;
  readonly shown: Shown;
  readonly layout: Layout;
  readonly chosenAt: number;
  readonly onShow: (shown: Shown) => void;
  readonly onPoint: (index: number | null) => void;
  readonly onChoose: (batch: string | null) => void;
}

const stepOf = (key: string, stop: number, last: number): number | null =>
  key === 'ArrowLeft' ? stop - 1
  : key === 'ArrowRight' ? stop + 1
  : key === 'Home' ? 0
  : key === 'End' ? last
  : null; // prettier-ignore

/** A column to press for each batch; walking past the end brings in the batches beyond it. */
function Columns({ line, shown, layout, chosenAt, onShow, onPoint, onChoose }: ColumnsProps) {
  const [walked, setWalked] = useState<number | null>(null);
  const columns = useRef(new Map<number, HTMLButtonElement>());
  const last = line.batches.length - 1;
  const wanted = walked ?? (chosenAt >= 0 ? chosenAt : last);
  const stop = Math.min(shown.to - 1, Math.max(shown.from, wanted));
  const onKeyDown = (event: React.KeyboardEvent): void => {
    const to = stepOf(event.key, stop, last);
    if (to === null || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    const next = Math.min(last, Math.max(0, to));
    setWalked(next);
    onShow(movedTo(shown, next, line.batches.length));
    requestAnimationFrame(() => columns.current.get(next)?.focus());
  };
  return (
    <div
      role="toolbar"
      aria-label="Batches, oldest first. Arrow keys walk."
      aria-orientation="horizontal"
      tabIndex={-1}
      onKeyDown={onKeyDown}
      onPointerLeave={() => onPoint(null)}
    >
      {line.batches.slice(shown.from, shown.to).map((batch, column) => {
        const index = shown.from + column;
        return (
          <button
            key={batch.batch}
            ref={(element) => {
              if (element) columns.current.set(index, element);
              else columns.current.delete(index);
            }}
            type="button"
            className="plot-column"
            style={{ left: layout.x(index) - layout.step / 2, width: layout.step }}
            tabIndex={index === stop ? 0 : -1}
            aria-pressed={index === chosenAt}
            aria-label={inWords(batch)}
            onPointerEnter={() => onPoint(index)}
            onFocus={(event) => {
              setWalked(index);
              if (event.target.matches(':focus-visible')) onPoint(index);
            }}
            onBlur={() => onPoint(null)}
            onClick={() => onChoose(index === chosenAt ? null : batch.batch)}
          />
        );
      })}
    </div>
  );
}

/** Of a line seen as a whole, stretches to press: each brings its batches near. */
function Stretches({ line, layout, room, onShow }: Pick<ColumnsProps, 'line' | 'layout' | 'onShow'> & { readonly room: number }) {
  const many = Math.ceil(line.batches.length / room);
  return (
    <fieldset aria-label="Stretches of batches, oldest first">
      {Array.from({ length: many }, (_, at) => {
        const shown = newest(line.batches.length - (many - 1 - at) * room, room);
        const [first, last] = [line.batches[shown.from], line.batches[shown.to - 1]];
        return (
          <button
            key={shown.to}
            type="button"
            className="plot-column"
            style={{ left: layout.x(shown.from) - layout.step / 2, width: layout.step * (shown.to - shown.from) }}
            aria-label={`Look closer at ${first?.label ?? ''} to ${last?.label ?? ''}`}
            onClick={() => onShow(shown)}
          />
        );
      })}
    </fieldset>
  );
} // prettier-ignore

/** What is said of the batch pointed at. */
function Told({ told }: { readonly told: LineBatch | undefined }) {
  return (
    <figcaption className="plot-told" aria-hidden="true">
      {told && (
        <>
          <strong>{told.label}</strong> · generation {told.generation} · {scoreWords(told)}
          {heldWords(told).length > 0 && <span className="soft"> · {heldWords(told).join('; ')}.</span>}
          {told.leftOut.length > 0 && (
            <span className="soft"> · left out: {leftOutWords(told).join(' ')}</span>
          )}
        </>
      )}
    </figcaption>
  );
}

export function LinePlot({ line, chosen, onChoose, worked }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const measured = useSize(frame)?.width ?? 0;
  const width = measured < LEAST_WIDTH ? null : measured;
  const [wanted, show] = useState<Shown | 'all' | null>(null);
  const [pointed, setPointed] = useState<number | null>(null);
  const chosenAt = line.batches.findIndex(({ batch }) => batch === chosen);
  const many = line.batches.length;
  const room = roomFor(width ?? 0);
  const all = { from: 0, to: many };
  const asked = wanted === 'all' ? all : (wanted ?? newest(many, room));
  // A window made narrower has room for fewer: those at the newer end stay.
  const shown = wanted === 'all' || asked.to - asked.from <= room ? asked : { from: asked.to - room, to: asked.to };
  const layout = width === null ? null : layoutOf(line, shown, width, worked !== null);
  const lit = pointed ?? (chosenAt >= 0 ? chosenAt : null);
  return (
    <figure className="plot" aria-label={`${line.name} over its batches`}>
      {many > room && (
        <fieldset className="pair" aria-label="Which batches are shown">
          <button type="button" className="button" aria-pressed={wanted !== 'all' && shown.to === many} onClick={() => show(null)}>
            Newest {room}
          </button>
          <button type="button" className="button" aria-pressed={wanted === 'all'} onClick={() => show('all')}>
            All {many}
          </button>
        </fieldset>
      )}
      <div className="plot-frame" ref={frame}>
        {layout !== null && (
          <div className="plot-sheet" style={{ height: layout.height }}>
            <svg ref={svg} className="line-plot" width={layout.width} height={layout.height} viewBox={`0 0 ${layout.width} ${layout.height}`} aria-hidden="true">
              <LineMarks line={line} shown={shown} layout={layout} lit={lit} worked={worked} />
            </svg>
            {layout.step < LEAST_STEP - 1 ? (
              <Stretches line={line} layout={layout} room={room} onShow={show} />
            ) : (
              <Columns
                {...{ line, shown, layout, chosenAt, onChoose }}
                onShow={show}
                onPoint={setPointed}
              />
            )}
          </div>
        )}
      </div>
      <div className="plot-foot">
        <Told told={lit === null ? undefined : line.batches[lit]} />
        <button type="button" className="button quiet" onClick={() => svg.current && void copyPicture(svg.current)}>
          Copy as picture
        </button>
        <button type="button" className="button quiet" onClick={() => void copyNumbers(lineNumbers(line))}>
          Copy as numbers
        </button>
      </div>
      {worked && <Key line={line} />}
    </figure>
  );
} // prettier-ignore
