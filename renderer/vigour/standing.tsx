// What a line is called: its exact word, the sentence with the numbers, the reasons behind it.
import { timesSeen } from '../../core/vigour/words';
import type { LineReply } from './plot-scale';
import { Why } from './why';

const SUPPOSED =
  'Where a line declines it comes from competition between strains, contamination or phage, or the conditions it is kept in. A few spoonfuls carry a thousand million cells.';

/** The sentence without the word that stands as the heading already. */
function withoutWord({ sentence, standing }: LineReply): string {
  const begins = `${standing}: `;
  if (!sentence.toLowerCase().startsWith(begins)) return sentence;
  const rest = sentence.slice(begins.length);
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}

export function Standing({ line }: { readonly line: LineReply }) {
  const falling = line.standing === 'slipping' || line.standing === 'worn out';
  return (
    <section className="standing" aria-labelledby="standing">
      <h2 id="standing">
        <span className="standing-line">{line.name}</span>
        <span className="standing-word">{line.standing}</span>
      </h2>
      <div className="stack">
        <p className="standing-sentence">{withoutWord(line)}</p>
        {line.blocked.map((name) => (
          <p key={name}>
            Some jars had {name} and no plain sibling of the same seed in the same hold: there, {name} and
            culture can’t be told apart.
          </p>
        ))}
        <details className="vigour-why">
          <summary>Reasons</summary>
          <div className="stack">
            <ul className="bullets">
              {line.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
              {falling && <li>{SUPPOSED}</li>}
            </ul>
            {line.effects.length > 0 && (
              <>
                <h3>What was stirred in, by siblings of the same seed in the same hold</h3>
                <dl className="inputs">
                  {line.effects.map((effect) => (
                    <div key={effect.name}>
                      <dt>{effect.name}</dt>
                      <dd>
                        {effect.points < 0 ? '−' : '+'}
                        {Math.abs(effect.points).toFixed(1)} ± {effect.error.toFixed(1)} points,{' '}
                        {timesSeen(effect.sets)}
                      </dd>
                    </div>
                  ))}
                </dl>
              </>
            )}
            <Why why={line.why} title="How this was worked out" model={line.model} />
          </div>
        </details>
      </div>
    </section>
  );
}
