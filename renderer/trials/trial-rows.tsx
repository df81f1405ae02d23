// All trials as rows: the jars, what they differ in, and what came of tasting them in one sentence. Below, what could be tasted.
import { go } from '../state/store';
import { JarsInRow } from './trial-jars';
import type { Trials } from './trial-types';

export function TrialRows({ trials, offers }: Trials) {
  return (
    <>
      {trials.length > 0 && (
        <ul className="trial-rows" aria-label="All trials">
          {trials.map(({ id, batchLabel, differsIn, says, treatments }) => (
            <li key={id}>
              <button type="button" className="trial-row" onClick={() => go('trials', `trial:${id}`)}>
                <JarsInRow jars={treatments} />
                <span className="trial-row-words">
                  <strong>{batchLabel}</strong>
                  <span className="soft">
                    {differsIn}: {[...new Set(treatments.map(({ name }) => name))].join(', ')}
                  </span>
                </span>
                <span className="trial-row-says">{says}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {offers.length > 0 && (
        <section aria-label="Could be tasted side by side" className="stack">
          <h2>Could be tasted side by side</h2>
          <ul className="trial-offers">
            {offers.map(({ batch, label, says }) => (
              <li key={batch}>
                <span>
                  <strong>{label}.</strong> {says}
                </span>
                <button type="button" className="button" onClick={() => go('trials', `batch:${batch}`)}>
                  Make it a trial<span className="visually-hidden"> of {label}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
