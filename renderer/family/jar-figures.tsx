// Figures, each with its why: the formula in words, what went in, what was assumed, where the method is from.
import type { Figure } from '../../core/contract';

function Why({ figure }: { readonly figure: Figure }) {
  const { formula, inputs, assumptions, source } = figure.why;
  return (
    <div className="why">
      <p>{formula}</p>
      {inputs.length > 0 && (
        <dl className="noted">
          {inputs.map((input, at) => (
            <div key={`${input.name} ${at}`}>
              <dt>{input.name}</dt>
              <dd>{input.value}</dd>
            </div>
          ))}
        </dl>
      )}
      {assumptions.length > 0 && (
        <ul className="assumed">
          {assumptions.map((assumption) => (
            <li key={assumption}>{assumption}</li>
          ))}
        </ul>
      )}
      {source !== null && <p className="soft small">Source: {source}</p>}
    </div>
  );
}

export function Figures({ figures }: { readonly figures: readonly Figure[] }) {
  if (figures.length === 0) return null;
  return (
    <section>
      <h3>Figures</h3>
      <p className="soft small">Open one to see how it was worked out.</p>
      <div className="figures">
        {figures.map((figure) => (
          <details key={figure.name}>
            <summary>
              <span>{figure.name}</span>
              <span className="figure shown">{figure.shown}</span>
            </summary>
            <Why figure={figure} />
          </details>
        ))}
      </div>
    </section>
  );
}
