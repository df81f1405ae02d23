// What the run of an appliance proves: the sentence, each thing that is missing, and the figures.
import type { Reply } from '../../core/contract';
import { lengthWords } from '../../core/says/today-says';

type Proof = Reply<'appliance.proof'>;

const degrees = (value: number | null): string => (value === null ? 'not read' : `${value.toFixed(1)} °C`);

function rowsOf(proof: Proof): readonly (readonly [string, string])[] {
  const { minutesToSettle, swing, within, timeConstant } = proof;
  return [
    ['read for', `${proof.hours.toFixed(0)} h`],
    [
      'settles at',
      proof.settledAt === null
        ? 'never'
        : `${degrees(proof.settledAt)}${minutesToSettle === null ? '' : ` after ${lengthWords(minutesToSettle)}`}`,
    ],
    ['swings by', swing === null ? 'not read' : `${swing.toFixed(1)} °C either way`],
    [
      'centre within 36.5 to 39.5 °C',
      within === null ? 'not read' : `${Math.round(within * 100)} % of the time`,
    ],
    ['warmest', degrees(proof.warmest)],
    ['edge cooler than centre by', degrees(proof.edgeCooler)],
    ['jar cooler than bath by', degrees(proof.jarCooler)],
    [
      'a jar follows its bath with',
      timeConstant === null
        ? 'not measured'
        : `${timeConstant.mid.toFixed(1)} h (${timeConstant.low.toFixed(1)} to ${timeConstant.high === null ? 'no limit' : timeConstant.high.toFixed(1)})`,
    ],
  ];
}

export function ProofFigures({ proof }: { readonly proof: Proof }) {
  return (
    <div className="stack proof">
      <p>
        <strong>{proof.says}</strong>
      </p>
      {proof.lacks.length > 1 && (
        <ul className="bullets" aria-label="What is missing">
          {proof.lacks.map((lack) => (
            <li key={lack}>{lack}</li>
          ))}
        </ul>
      )}
      <details>
        <summary>What was read</summary>
        <dl className="inputs">
          {rowsOf(proof).map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </details>
    </div>
  );
}
