// One trial: its jars, its tastings, and what all tastings of the same things tell together.
import { useReader } from '../parts/use-reader';
import { go } from '../state/store';
import { grainsOf } from './grains';
import { TrialHead } from './trial-head';
import { TrialJars } from './trial-jars';
import type { Trial } from './trial-types';

function Tastings({ sessions }: Pick<Trial, 'sessions'>) {
  const { writer } = useReader();
  if (sessions.length === 0) return null;
  return (
    <section aria-label="Tastings" className="stack">
      <h2>Tastings</h2>
      <ul className="trial-offers">
        {sessions.toReversed().map(({ id, day, revealed, tasters, done, says }) => (
          <li key={id}>
            <span>
              <strong>{writer.day(day)}.</strong> {says ?? `${done} of ${tasters} have marked.`}
            </span>
            <button
              type="button"
              className={revealed ? 'button' : 'button primary'}
              onClick={() => go('trials', `session:${id}`)}
            >
              {revealed ? 'Look at it' : 'Go on tasting'}
              <span className="visually-hidden"> of {writer.day(day)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function OpenTrial({ trial }: { readonly trial: Trial }) {
  const { id, batch, batchLabel, differsIn, says, treatments, cautions, sessions, together } = trial;
  // What is being tasted, or is eaten up, leads nowhere new.
  const open =
    sessions.some(({ revealed }) => !revealed) || treatments.filter(({ gone }) => !gone).length < 2;
  return (
    <>
      <TrialHead called={`${batchLabel}, ${differsIn}`} says={says} batch={batch}>
        <button
          type="button"
          className={open ? 'button' : 'button primary'}
          onClick={() => go('trials', `start:${id}`)}
        >
          {sessions.length === 0 ? 'Plan a tasting' : 'Plan another tasting'}
        </button>
      </TrialHead>
      <TrialJars jars={treatments} grains={grainsOf(treatments)} />
      {cautions.map((caution) => (
        <p key={caution} className="soft small">
          {caution}
        </p>
      ))}
      <Tastings sessions={sessions} />
      {together !== null && (
        <section aria-label="All batches together">
          <h2>All batches together</h2>
          <p>{together.says}</p>
        </section>
      )}
    </>
  );
}
