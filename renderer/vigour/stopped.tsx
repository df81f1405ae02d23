// What may not be used as seed, each with why and what would lift it; nothing to press.
import { sentenceCase } from '../state/store';
import { numberWord } from '../parts/number-words';
import { keyOf, type Ranked } from './seed-list';

/** Of age and the keeper's own limit: said without the colour of danger. */
const CALM: readonly string[] = ['too old', "keeper's limit", 'in its hold'];

export function Stopped({ stopped }: { readonly stopped: readonly Ranked[] }) {
  if (stopped.length === 0) return null;
  return (
    <details className="vigour-why stopped">
      <summary>Not to be used: {numberWord(stopped.length)}</summary>
      <ul aria-label="Not to be used">
        {stopped.map((ranked) => (
          <li key={keyOf(ranked)}>
            <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" className="stop-sign">
              <rect x="3" y="3" width="16" height="16" rx="4" />
              <path d="M7 7L15 15M15 7L7 15" />
            </svg>
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
      </ul>
    </details>
  );
}
