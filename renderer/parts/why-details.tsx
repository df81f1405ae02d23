// Where a figure came from, behind a word: the formula, what went in, what was assumed, the source of the method.
import type { Reply } from '../../core/contract';
import { parameterWords } from './parameter-words';

type WhyReply = Reply<'judgement.line'>['why'];
interface ModelReply {
  readonly version: number;
  readonly parameters: Readonly<Record<string, number | null | number[]>>;
}

export function Why({
  why,
  title,
  model,
}: {
  readonly why: WhyReply;
  readonly title: string;
  readonly model?: ModelReply;
}) {
  return (
    <details className="vigour-why">
      <summary>{title}</summary>
      <div className="stack">
        <p>{why.formula}</p>
        {why.inputs.length > 0 && (
          <dl className="inputs">
            {why.inputs.map((input, at) => (
              <div key={`${input.name} ${at}`}>
                <dt>{input.name}</dt>
                <dd>{input.value}</dd>
              </div>
            ))}
          </dl>
        )}
        {why.assumptions.length > 0 && (
          <ul className="bullets">
            {why.assumptions.map((assumption) => (
              <li key={assumption}>{assumption}</li>
            ))}
          </ul>
        )}
        {why.source !== null && <p className="soft small">Source: {why.source}</p>}
        {model && <Model model={model} />}
      </div>
    </details>
  );
}

/** The version of the method and what it was set to: what a decision was taken on. */
export function Model({ model }: { readonly model: ModelReply }) {
  return (
    <details className="vigour-why">
      <summary>Method, version {model.version}</summary>
      <dl className="inputs">
        {Object.entries(model.parameters).map(([name, value]) => (
          <div key={name}>
            <dt>{parameterWords(name)}</dt>
            <dd>{value === null ? 'none' : Array.isArray(value) ? value.join(', ') : value}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
