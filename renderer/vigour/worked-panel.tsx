// How a line's standing was worked out: the sentence with its figures, the reasons, what was stirred in, every number.
import { timesSeen } from '../../core/says/correction-says';
import { LineTable } from './line-table';
import type { LineReply } from './plot-scale';
import { Why } from '../parts/why-details';
import type { Worked } from './worked-marks';

const SUPPOSED =
  'Where a line declines it comes from competition between strains, contamination or phage, or the conditions it is kept in. A few spoonfuls of seed bring more than enough living cells.';

function Effects({ effects }: Pick<LineReply, 'effects'>) {
  if (effects.length === 0) return null;
  return (
    <>
      <h3>What was stirred in, by siblings of the same seed in the same hold</h3>
      <dl className="inputs">
        {effects.map((effect) => (
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
  );
}

/** Which scores are drawn. */
function Corrected({ worked, onWorked }: Pick<Props, 'worked' | 'onWorked'>) {
  return (
    <fieldset className="pair" aria-label="Which scores are drawn">
      {[true, false].map((corrected) => (
        <button
          key={String(corrected)}
          type="button"
          className="button"
          aria-pressed={worked.corrected === corrected}
          onClick={() => onWorked({ corrected })}
        >
          {corrected ? 'Corrected' : 'As it came'}
        </button>
      ))}
    </fieldset>
  );
}

interface Props {
  readonly line: LineReply;
  readonly worked: Worked;
  readonly onWorked: (worked: Worked) => void;
}

/** What stands below the plot while it shows how it was worked out. */
export function WorkedPanel({ line, worked, onWorked }: Props) {
  const falling = line.standing === 'slipping' || line.standing === 'worn out';
  return (
    <section className="worked stack" aria-label="How this was worked out">
      <Corrected worked={worked} onWorked={onWorked} />
      <p>{line.sentence}</p>
      <ul className="bullets">
        {line.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
        {line.blocked.map((name) => (
          <li key={name}>
            Some jars had {name} and no plain sibling of the same seed in the same hold: there, {name} and
            culture can’t be told apart.
          </li>
        ))}
        {falling && <li>{SUPPOSED}</li>}
      </ul>
      <Effects effects={line.effects} />
      <details className="vigour-why">
        <summary>The numbers as a table</summary>
        <LineTable line={line} />
      </details>
      <Why why={line.why} title="Formula, assumptions and source" model={line.model} />
    </section>
  );
}
