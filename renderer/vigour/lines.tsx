// The lines side by side on one scale: to compare them, and to choose which is shown in full.
import { useEffect, useRef, useState } from 'react';
import { call, type Answer } from '../app/calls';
import { useRevision } from '../app/store';
import { useSize } from '../family/use-size';
import { SmallMarks } from './line-marks';
import { scaleOf, SMALL, type LineReply } from './plot-scale';

/** The judgement of each of these lines, in their order; null until the first time all have arrived. */
export function useLines(ids: readonly string[]): readonly Answer<LineReply>[] | null {
  const revision = useRevision();
  const [held, hold] = useState<{ revision: number; answers: readonly Answer<LineReply>[] } | null>(null);
  const asked = ids.join(' ');
  useEffect(() => {
    let current = true;
    const lines = asked === '' ? [] : asked.split(' ');
    void Promise.all(lines.map((line) => call('judgement.line', { line }))).then((answers) => {
      if (current) hold({ revision, answers });
    });
    return () => {
      current = false;
    };
  }, [asked, revision]);
  return held?.answers ?? null;
}

function Small({
  line,
  chosen,
  onChoose,
}: {
  readonly line: LineReply;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}) {
  const frame = useRef<HTMLSpanElement>(null);
  const size = useSize(frame);
  const width = size?.width ?? 0;
  return (
    <button type="button" className="line-card" aria-pressed={chosen} onClick={onChoose}>
      <span className="line-card-head">
        <span className="line-card-name">{line.name}</span>
        <span
          className={
            line.standing === 'worn out' || line.standing === 'slipping'
              ? 'line-card-standing firm'
              : 'line-card-standing'
          }
        >
          {line.standing}
        </span>
      </span>
      <span className="line-card-plot" ref={frame}>
        {width > 0 && (
          <svg className="line-plot" width={width} height={SMALL.height} aria-hidden="true">
            <SmallMarks line={line} scale={scaleOf({ ...SMALL, width }, line.batches.length)} />
          </svg>
        )}
      </span>
      <span className="soft small">
        {line.comparable} of {line.batches.length} {line.batches.length === 1 ? 'batch' : 'batches'} compared
      </span>
    </button>
  );
}

export function SideBySide(props: {
  readonly lines: readonly LineReply[];
  readonly chosen: string;
  readonly onChoose: (line: string) => void;
}) {
  if (props.lines.length < 2) return null;
  return (
    <section aria-label="Lines side by side" className="lines-side">
      {props.lines.map((line) => (
        <Small
          key={line.line}
          line={line}
          chosen={line.line === props.chosen}
          onChoose={() => props.onChoose(line.line)}
        />
      ))}
    </section>
  );
}
