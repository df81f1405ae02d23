// The screen of judgement: how each line does over its batches, what to seed from next, when to start afresh.
import { useState } from 'react';
import { SAYS_NOTHING_OF_SAFETY } from '../../core/vigour/says';
import { go, usePlace } from '../app/store';
import { useRead } from '../app/use-read';
import { BatchDetail } from './batch-detail';
import { LinePlot } from './line-plot';
import { LineTable } from './line-table';
import { SideBySide, useLines } from './lines';
import { NextSeed } from './next-seed';
import type { LineReply } from './plot-scale';
import { Restart } from './restart';
import { Standing } from './standing';
import './vigour.css';

/** The line shown first: the one that began last, unless another slips. */
function firstShown(lines: readonly LineReply[]): string | null {
  const slipping = lines.findLast(({ standing }) => standing === 'worn out' || standing === 'slipping');
  return (slipping ?? lines.at(-1))?.line ?? null;
}

/** The screen. Its focus is null, "line:" and a line's id, or "next" for what to seed from. */
export function VigourScreen() {
  const { focus } = usePlace();
  const family = useRead('family.get', {});
  const answers = useLines(family?.ok ? family.value.lines.map(({ id }) => id) : []);
  const [picked, setPicked] = useState<string | null>(null);
  const [batch, setBatch] = useState<string | null>(null);
  const lines = (answers ?? []).flatMap((answer) => (answer.ok ? [answer.value] : []));
  const refused = (answers ?? []).flatMap((answer) => (answer.ok ? [] : [answer.sentence]));
  const focused = focus?.startsWith('line:') === true ? focus.slice('line:'.length) : null;
  const wanted = picked ?? focused;
  const shown =
    lines.find(({ line }) => line === wanted) ?? lines.find(({ line }) => line === firstShown(lines));

  const choose = (line: string): void => {
    setPicked(line);
    setBatch(null);
  };
  const opened = shown?.batches.find((one) => one.batch === batch);
  return (
    <div className="page vigour">
      <header className="vigour-head">
        <h1>Vigour</h1>
        <p className="vigour-safety">{SAYS_NOTHING_OF_SAFETY}</p>
      </header>
      {family?.ok === false && <p>{family.sentence}</p>}
      {refused.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {family?.ok === true && family.value.lines.length === 0 && <Nothing />}
      {shown && (
        <>
          <SideBySide lines={lines} chosen={shown.line} onChoose={choose} />
          <Standing line={shown} />
          <LinePlot key={shown.line} line={shown} chosen={batch} onChoose={setBatch} />
          {opened && <BatchDetail key={opened.batch} batch={opened} onClose={() => setBatch(null)} />}
          <details className="vigour-why">
            <summary>The numbers as a table</summary>
            <LineTable line={shown} />
          </details>
          <NextSeed
            key={`next ${shown.line}`}
            of={shown}
            several={lines.length > 1}
            asked={focus === 'next'}
          />
          <Restart line={shown.line} />
        </>
      )}
    </div>
  );
}

/** Before there is anything to judge: starts the job. */
function Nothing() {
  return (
    <section className="stack">
      <p>
        There is no line to judge yet. A line begins with a batch made from sources; five batches later there
        is something to say of it.
      </p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
          Record a batch
        </button>
        <button type="button" className="button" onClick={() => go('notes')}>
          Bring in notes
        </button>
      </div>
    </section>
  );
}
