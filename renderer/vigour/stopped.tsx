// What may not be used as seed, each with why and what would lift it; nothing to press.
import { TOO_OLD_TOGETHER } from '../../core/says/seed-looks-says';
import { sentenceCase } from '../state/store';
import { numberWord } from '../parts/number-words';
import { keyOf, type Ranked } from './seed-list';

/** Of age and the keeper's own limit: said without the colour of danger. */
const CALM: readonly string[] = ['too old', "keeper's limit", 'in its hold'];

/** Stopped by nothing but its age. */
const onlyOld = ({ stops }: Ranked): boolean => stops.every(({ code }) => code === 'too old');
/** From so many on they are named together: the same sentence for each says nothing more. */
const TOGETHER = 3;

const Sign = () => (
  <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" className="stop-sign">
    <rect x="3" y="3" width="16" height="16" rx="4" />
    <path d="M7 7L15 15M15 7L7 15" />
  </svg>
);

export function Stopped({ stopped }: { readonly stopped: readonly Ranked[] }) {
  if (stopped.length === 0) return null;
  const old = stopped.filter(onlyOld);
  const together = old.length >= TOGETHER ? old : [];
  return (
    <details className="vigour-why stopped">
      <summary>Not to be used: {numberWord(stopped.length)}</summary>
      <ul aria-label="Not to be used">
        {stopped
          .filter((ranked) => !together.includes(ranked))
          .map((ranked) => (
            <li key={keyOf(ranked)}>
              <Sign />
              <span className="stopped-label">{ranked.label}</span>
              <span>
                {ranked.stops.map((stop) => (
                  <span key={stop.code} className={CALM.includes(stop.code) ? 'stop' : 'stop grave'}>
                    {sentenceCase(stop.says)} {stop.lifts ?? 'Nothing lifts this.'}{' '}
                  </span>
                ))}
              </span>
            </li>
          ))}
        {together.length > 0 && (
          <li>
            <Sign />
            <span className="stopped-label">{together.map(({ label }) => label).join(', ')}</span>
            <span>{TOO_OLD_TOGETHER}</span>
          </li>
        )}
      </ul>
    </details>
  );
}
