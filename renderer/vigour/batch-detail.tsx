// One batch of the line, opened from the plot: its jars, which spoke for it, and each jar's score taken apart.
import { useState } from 'react';
import { go } from '../state/store';
import { JarScore } from '../parts/jar-score';
import type { LineBatch } from './plot-scale';

interface Row {
  readonly jar: string;
  readonly label: string;
  readonly says: string;
  readonly leftOut: string | null;
  /** That it is set aside, or descends from a jar that is. */
  readonly held: string | null;
}

function rowsOf(batch: LineBatch): Row[] {
  const reasons = new Map(batch.leftOut.map((one) => [one.jar, one.reason]));
  const seen = new Set(batch.jars.map(({ jar }) => jar));
  return [
    ...batch.jars.map(({ jar, label, score, low, high, held }) => ({
      jar,
      label,
      says: `${score} of 100 (${low} to ${high})`,
      leftOut: reasons.get(jar) ?? null,
      // Where it is left out, why says it.
      held: reasons.has(jar) ? null : held,
    })),
    ...batch.leftOut
      .filter(({ jar }) => !seen.has(jar))
      .map(({ jar, label, reason }) => ({ jar, label, says: 'no score', leftOut: reason, held: null })),
  ].toSorted((a, b) => a.label.localeCompare(b.label));
}

export function BatchDetail({ batch, onClose }: { readonly batch: LineBatch; readonly onClose: () => void }) {
  const rows = rowsOf(batch);
  const [open, setOpen] = useState<string | null>(null);
  return (
    <section className="batch-detail" aria-label={`Batch of ${batch.label}`}>
      <header className="row">
        <h3>{batch.label}</h3>
        <span className="soft">
          generation {batch.generation} · {batch.score === null ? 'no score' : `${batch.score} of 100`} · then
          said of the line: {batch.standing}
        </span>
        <span className="push" />
        <button type="button" className="button quiet" onClick={() => go('batch', batch.batch)}>
          Open the batch
        </button>
        <button type="button" className="button quiet" onClick={onClose}>
          Close
        </button>
      </header>
      <p>{batch.says}</p>
      <ul className="jar-rows">
        {rows.map((row) => (
          <li key={row.jar}>
            <button
              type="button"
              className="jar-row"
              aria-expanded={open === row.jar}
              onClick={() => setOpen(open === row.jar ? null : row.jar)}
            >
              <svg className="line-plot" width="20" height="20" aria-hidden="true">
                <circle
                  className={row.leftOut === null ? 'jar-dot' : 'jar-dot left-out'}
                  cx="10"
                  cy="10"
                  r="5"
                />
                {row.held !== null && <path className="hold-mark" d="M4 3H16" />}
              </svg>
              <span className="jar-row-label">{row.label}</span>
              <span>{row.says}</span>
              {row.held !== null && <span className="soft">{row.held}</span>}
              {row.leftOut !== null && <span className="soft">left out: {row.leftOut}</span>}
            </button>
            {open === row.jar && <JarScore id={row.jar} alone={false} />}
          </li>
        ))}
      </ul>
    </section>
  );
}
