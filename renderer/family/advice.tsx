// The fresh-start suggestion: one calm sentence above the drawing, its reasons behind it.
import { useRead } from '../app/use-read';

export function Advice({ onShow }: { readonly onShow: (id: string) => void }) {
  const answer = useRead('advice.freshStart', {});
  if (answer === null) return null;
  if (!answer.ok) return <p className="family-advice soft">{answer.sentence}</p>;
  const [first, ...others] = answer.value.suggestions;
  if (!first) return null;
  return (
    <details className="family-advice">
      <summary>
        <span>{first.sentence}</span>
        <span className="family-advice-why">Why</span>
      </summary>
      <div className="stack">
        {[first, ...others].map((suggestion) => (
          <div key={`${suggestion.line} ${suggestion.jar}`}>
            {suggestion !== first && <p>{suggestion.sentence}</p>}
            <ul className="family-reasons">
              {suggestion.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
            <div className="row">
              {suggestion.weak.map((jar) => (
                <button key={jar.jar} className="button" type="button" onClick={() => onShow(jar.jar)}>
                  Show {jar.label}
                </button>
              ))}
            </div>
          </div>
        ))}
      </div>
    </details>
  );
}
