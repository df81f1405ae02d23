// One jar's score taken apart: what made it, what was missing, what was corrected by how much, each with its why.
import { missingSays } from '../../core/says/vigour-says';
import type { Reply } from '../../core/contract';
import { useRead } from '../state/use-read';
import { Why } from './why-details';

type JarReply = Reply<'judgement.jar'>;

const signed = (points: number): string => `${points < 0 ? '−' : '+'}${Math.abs(points).toFixed(1)}`;

/** What was seen, as bars on the same scale of 0 to 100; the wider the bar, the more it weighs. */
function Parts({ jar }: { readonly jar: JarReply }) {
  if (jar.parts.length === 0) return null;
  const all = jar.parts.reduce((sum, { weight }) => sum + weight, 0);
  return (
    <>
      <h4>What was seen</h4>
      <ul className="parts">
        {jar.parts.map((part) => (
          <li key={part.name}>
            <span className="part-name">{part.name}</span>
            <span className="part-bar" aria-hidden="true">
              <span style={{ width: `${Math.min(100, Math.max(0, part.points))}%` }} />
            </span>
            <span className="figure part-points">{Math.round(part.points)}</span>
            <span className="soft part-says">
              {part.says} It weighs {Math.round((100 * part.weight) / all)} in 100.
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** @param props.alone it stands by itself: what its batch's list says is said here too */
export function JarScore({ id, alone }: { readonly id: string; readonly alone: boolean }) {
  const answer = useRead('judgement.jar', { jar: id });
  if (answer === null) return <p className="soft">Reading…</p>;
  if (!answer.ok) return <p>{answer.sentence}</p>;
  const jar = answer.value;
  const elsewhere = new Set([...jar.corrections.map(({ says }) => says), missingSays(jar.missing)]);
  const reasons = jar.reasons.filter((reason) => !elsewhere.has(reason));
  return (
    <div className="jar-score stack">
      <p>{jar.sentence}</p>
      {!alone && jar.onHold !== null && <p>{jar.onHold} No score lifts that.</p>}
      {reasons.length > 0 && (
        <ul className="bullets">
          {reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      {alone && jar.leftOut !== null && jar.leftOut !== jar.sentence && (
        <p>Left out of its batch: {jar.leftOut}</p>
      )}
      {alone ? (
        jar.score !== null && (
          <details className="vigour-why">
            <summary>What made it</summary>
            <div className="stack">
              <Taken jar={jar} />
            </div>
          </details>
        )
      ) : (
        <Taken jar={jar} />
      )}
      {alone && <p className="soft small">{jar.safety}</p>}
    </div>
  );
}

/** Parts, what was missing, what was corrected. */
function Taken({ jar }: { readonly jar: JarReply }) {
  return (
    <>
      <Parts jar={jar} />
      {jar.score !== null && (
        <>
          <h4>What was missing</h4>
          <p>
            {jar.missing.length === 0
              ? 'Nothing.'
              : `Not recorded, or not comparable: ${jar.missing.join(', ')}.`}
          </p>
          <h4>What was corrected</h4>
          {jar.corrections.length === 0 ? (
            <p>Nothing.</p>
          ) : (
            <ul className="bullets">
              {jar.corrections.map((one) => (
                <li key={one.name}>
                  <span className="figure">{signed(one.points)}</span> {one.says}
                </li>
              ))}
            </ul>
          )}
        </>
      )}
      {jar.why !== null && <Why why={jar.why} title="How this was worked out" />}
    </>
  );
}
