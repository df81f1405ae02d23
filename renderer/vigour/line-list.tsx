// The lines as cards, each with its verdict: to compare them, and to choose which is shown in full.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { useRevision } from '../state/store';
import { Linked } from '../parts/linked';
import { namedIn, saidAfter, verdictParts } from '../parts/verdict-parts';
import { VerdictAct } from '../parts/verdict-act';
import { SmallMarks } from './line-marks';
import { SMALL, type LineReply } from './plot-scale';

/** A line with the verdict on it, or why it can't be told. */
export type LineNow =
  { readonly line: LineReply; readonly verdict: Reply<'advice.line'> } | { readonly refused: string };

async function read(line: string): Promise<LineNow> {
  const [judged, verdict] = await Promise.all([call('judgement.line', { line }), call('advice.line', { line })]);
  if (!judged.ok) return { refused: judged.sentence };
  return verdict.ok ? { line: judged.value, verdict: verdict.value } : { refused: verdict.sentence };
} // prettier-ignore

/** What is known of each of these lines, in their order; null until the first time all have arrived. */
export function useLines(ids: readonly string[]): readonly LineNow[] | null {
  const revision = useRevision();
  const [held, hold] = useState<{ readonly revision: number; readonly answers: readonly LineNow[] } | null>(
    null,
  );
  const asked = ids.join(' ');
  useEffect(() => {
    let current = true;
    void Promise.all(asked.split(' ').filter(Boolean).map(read)).then((answers) => {
      if (current) hold({ revision, answers });
    });
    return () => {
      current = false;
    };
  }, [asked, revision]);
  return held?.answers ?? null;
}

export type Known = Extract<LineNow, { line: LineReply }>;

/** Something of it may still be used. */
export const lives = ({ verdict }: Known): boolean => verdict.reason.code !== 'nothing may be used';

function Card({ known, chosen, onChoose }: { readonly known: Known; readonly chosen: boolean; readonly onChoose: () => void }) {
  const { line, verdict } = known;
  const said = verdictParts(verdict);
  const named = namedIn(verdict);
  const also = saidAfter(verdict);
  const firm = line.standing === 'worn out' || line.standing === 'slipping';
  return (
    <article className={chosen ? 'line-card chosen' : 'line-card'}>
      <div className="line-card-said">
        <button type="button" className="line-card-pick" aria-pressed={chosen} onClick={onChoose}>
          <span className="line-card-name">{line.name}</span>
          <span className={firm ? 'line-card-standing firm' : 'line-card-standing'}>{line.standing}</span>
        </button>
        <p className="line-card-verdict">
          <Linked text={said.sentence} jars={named} />
        </p>
        <p className="soft">
          <Linked text={said.reason} jars={named} />
          {also !== null && (
            <span className="line-card-also">
              {' '}
              <Linked text={also} jars={named} />
            </span>
          )}
        </p>
        {line.since !== null && <p className="soft">{line.since}</p>}
        {verdict.seed !== null && <VerdictAct seed={verdict.seed} line={line.line} primary={chosen} />}
      </div>
      {line.comparable > 0 && (
        <svg className="line-plot line-card-plot" viewBox={`0 0 ${SMALL.width} ${SMALL.height}`} aria-hidden="true">
          <SmallMarks line={line} />
        </svg>
      )}
    </article>
  );
} // prettier-ignore

/** Lines that are named in a line of words. */
const MOST_NAMED = 3;

/** The cards: lines of which something may be used; the others folded below, where there are any of both. */
export function LineCards(props: {
  readonly lines: readonly Known[];
  readonly chosen: string;
  readonly onChoose: (line: string) => void;
}) {
  const living = props.lines.filter(lives);
  const first = living.length === 0 ? props.lines : living;
  const others = props.lines.filter((one) => !first.includes(one));
  const cards = (lines: readonly Known[]) => (
    <div className="lines-side">
      {lines.map((known) => (
        <Card
          key={known.line.line}
          known={known}
          chosen={known.line.line === props.chosen}
          onChoose={() => props.onChoose(known.line.line)}
        />
      ))}
    </div>
  );
  return (
    <section aria-label="Lines" className="stack">
      {cards(first)}
      {others.length > 0 && (
        <details className="vigour-why" open={others.some(({ line }) => line.line === props.chosen)}>
          <summary>
            Nothing usable is kept of{' '}
            {others.length > MOST_NAMED
              ? `${others.length} more lines`
              : others.map(({ line }) => line.name).join(' and ')}
          </summary>
          {cards(others)}
        </details>
      )}
    </section>
  );
}
