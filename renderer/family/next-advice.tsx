// What to seed from next, as one calm sentence above the drawing; reasons behind it, the whole ranking one step away.
import { go } from '../app/store';
import { useRead } from '../app/use-read';

export function NextAdvice() {
  const answer = useRead('advice.next', { line: null });
  if (answer === null) return null;
  if (!answer.ok) return <p className="family-advice soft">{answer.sentence}</p>;
  const { sentence, ranking, warnings, safety } = answer.value;
  const [first] = ranking;
  return (
    <details className="family-advice">
      <summary>
        <span>{sentence}</span>
        <span className="family-advice-why">Why</span>
      </summary>
      <div className="stack">
        <ul className="family-reasons">
          {(first?.allowed === true ? first.reasons : []).map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
          {first?.allowed === true && <li>{first.wouldChange}</li>}
          {warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
        <p className="soft small">{safety}</p>
        <div className="row">
          <button className="button" type="button" onClick={() => go('vigour', 'next')}>
            See all that could seed
          </button>
        </div>
      </div>
    </details>
  );
}
