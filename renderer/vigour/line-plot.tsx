// A line over its batches: the drawing, a column to press for each batch (arrow keys walk), and what is said of the one
// pointed at. The drawing itself is hidden from screen readers: the columns and the table say the same.
import { useRef, useState } from 'react';
import { useSize } from '../family/use-size';
import { copyNumbers, copyPicture } from './copy';
import { LineMarks } from './line-marks';
import { lineNumbers } from './numbers';
import { BIG, leastWidth, scaleOf, type LineBatch, type LineReply } from './plot-scale';

const scoreWords = (batch: LineBatch): string =>
  batch.score === null ? 'no score' : `${batch.score} of 100`;

/** Jars that were left out, together where the reason is the same: "c, d: It had oat bran; …". */
export function leftOutWords(batch: LineBatch): string[] {
  const byReason = new Map<string, string[]>();
  for (const { label, reason } of batch.leftOut)
    byReason.set(reason, [...(byReason.get(reason) ?? []), label.split(' ').at(-1) ?? label]);
  return [...byReason].map(([reason, letters]) => `${letters.join(', ')}: ${reason}`);
}

/** Jars that a hold touches: "b, c: on hold because of a spoiled jar". */
function heldWords(batch: LineBatch): string[] {
  const byWords = new Map<string, string[]>();
  for (const { label, held } of batch.jars)
    if (held !== null) byWords.set(held, [...(byWords.get(held) ?? []), label.split(' ').at(-1) ?? label]);
  return [...byWords].map(([words, letters]) => `${letters.join(', ')}: ${words}`);
}

const inWords = (batch: LineBatch): string =>
  [
    batch.label,
    `generation ${batch.generation}`,
    scoreWords(batch),
    ...heldWords(batch),
    ...(batch.leftOut.length > 0 ? [`left out: ${leftOutWords(batch).join(' ')}`] : []),
  ].join(', ');

interface Props {
  readonly line: LineReply;
  readonly chosen: string | null;
  readonly onChoose: (batch: string | null) => void;
}

export function LinePlot({ line, chosen, onChoose }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const room = useSize(frame);
  const [corrected, setCorrected] = useState(true);
  const [pointed, setPointed] = useState<number | null>(null);
  const chosenAt = line.batches.findIndex(({ batch }) => batch === chosen);
  const [walked, setWalked] = useState<number | null>(null);
  const stop = walked ?? (chosenAt >= 0 ? chosenAt : line.batches.length - 1);
  const columns = useRef<(HTMLButtonElement | null)[]>([]);
  const width = Math.max(room?.width ?? 0, leastWidth(BIG, line.batches.length));
  const scale = scaleOf({ ...BIG, width }, line.batches.length);
  const lit = pointed ?? (chosenAt >= 0 ? chosenAt : null);
  const told = line.batches[lit ?? line.batches.length - 1];
  const moved = line.batches.some(
    ({ points, uncorrected }) =>
      points !== null && uncorrected !== null && Math.abs(points - uncorrected) >= 0.5,
  );

  const onKeyDown = (event: React.KeyboardEvent): void => {
    const to =
      event.key === 'ArrowLeft' ? stop - 1
      : event.key === 'ArrowRight' ? stop + 1
      : event.key === 'Home' ? 0
      : event.key === 'End' ? line.batches.length - 1
      : null; // prettier-ignore
    if (to === null || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    const next = Math.min(line.batches.length - 1, Math.max(0, to));
    setWalked(next);
    columns.current[next]?.focus();
  };

  return (
    <figure className="plot" aria-label={`${line.name} over its batches`}>
      <div className="plot-tools row">
        <fieldset className="pair" aria-label="Which scores are drawn">
          <button
            type="button"
            className="button"
            aria-pressed={corrected}
            onClick={() => setCorrected(true)}
          >
            Corrected
          </button>
          <button
            type="button"
            className="button"
            aria-pressed={!corrected}
            onClick={() => setCorrected(false)}
          >
            As it came
          </button>
        </fieldset>
        {!moved && <span className="soft small">No batch needed a correction: both are the same here.</span>}
        <span className="push" />
        <button
          type="button"
          className="button quiet"
          onClick={() => svg.current && void copyPicture(svg.current)}
        >
          Copy as picture
        </button>
        <button type="button" className="button quiet" onClick={() => void copyNumbers(lineNumbers(line))}>
          Copy as numbers
        </button>
      </div>
      <div className="plot-frame" ref={frame}>
        {room !== null && (
          <div className="plot-sheet" style={{ width, height: BIG.height }}>
            <svg
              ref={svg}
              className="line-plot"
              width={width}
              height={BIG.height}
              viewBox={`0 0 ${width} ${BIG.height}`}
              aria-hidden="true"
            >
              <LineMarks line={line} scale={scale} corrected={corrected} lit={lit} />
            </svg>
            <div
              role="toolbar"
              aria-label="Batches, oldest first. Arrow keys walk."
              aria-orientation="horizontal"
              tabIndex={-1}
              onKeyDown={onKeyDown}
              onPointerLeave={() => setPointed(null)}
            >
              {line.batches.map((batch, index) => (
                <button
                  key={batch.batch}
                  ref={(element) => {
                    columns.current[index] = element;
                  }}
                  type="button"
                  className="plot-column"
                  style={{ left: scale.x(index) - scale.step / 2, width: scale.step }}
                  tabIndex={index === stop ? 0 : -1}
                  aria-pressed={index === chosenAt}
                  aria-label={inWords(batch)}
                  onPointerEnter={() => setPointed(index)}
                  onFocus={(event) => {
                    setWalked(index);
                    if (event.target.matches(':focus-visible')) setPointed(index);
                  }}
                  onBlur={() => setPointed(null)}
                  onClick={() => onChoose(index === chosenAt ? null : batch.batch)}
                />
              ))}
            </div>
          </div>
        )}
      </div>
      <figcaption className="plot-told" aria-hidden="true">
        {told && (
          <>
            <span>
              <strong>{told.label}</strong> · generation {told.generation} · {scoreWords(told)}
            </span>
            {heldWords(told).length > 0 && <span className="soft"> {heldWords(told).join('; ')}.</span>}
            {told.leftOut.length > 0 && (
              <span className="soft"> Left out: {leftOutWords(told).join(' ')}</span>
            )}
          </>
        )}
      </figcaption>
      <Key moved={moved} held={line.batches.some((batch) => heldWords(batch).length > 0)} />
    </figure>
  );
}

/** What the marks are, once, below. */
function Key({ moved, held }: { readonly moved: boolean; readonly held: boolean }) {
  const marks = [
    { says: 'a batch: median of its jars', draw: <circle className="median" cx="14" cy="10" r="8" /> },
    { says: 'a jar', draw: <circle className="jar-dot" cx="14" cy="10" r="3.2" /> },
    { says: 'a jar left out', draw: <circle className="jar-dot left-out" cx="14" cy="10" r="4" /> },
    ...(held ? [{ says: 'a jar on hold, or that descends from one', draw: <><circle className="jar-dot" cx="14" cy="12" r="3.2" /><path className="hold-mark" d="M8 5h12" /></> }] : []),
    { says: 'slope and its 90 % range', draw: <><rect className="slope-range" x="0" y="4" width="28" height="12" /><path className="slope" d="M0 12L28 8" /></> },
    { says: 'level of the early batches', draw: <><rect className="band" x="0" y="4" width="28" height="12" /><path className="baseline" d="M0 10H28" /></> },
    { says: 'smoothed level', draw: <path className="running" d="M0 6L10 7L20 11L28 13" /> },
    { says: 'control limit of the smoothed level', draw: <path className="limit" d="M0 10H28" /> },
    ...(moved ? [{ says: 'before or after correction', draw: <circle className="median other" cx="14" cy="10" r="7" /> }] : []),
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
