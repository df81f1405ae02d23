// Trials: batches whose jars differ in one thing, and how they tasted side by side. Its focus is null (all trials), "batch:" and an
// id (the trial of that batch, or a new one), "trial:" and an id, "start:" and a trial's id, or "session:" and a tasting's.
import { FoodCaution } from '../parts/food-caution';
import { go, usePlace } from '../state/store';
import { useRead } from '../state/use-read';
import { NewTrial } from './new-trial';
import { OpenTrial } from './open-trial';
import { StartTasting } from './start-tasting';
import { Tasting } from './tasting-steps';
import { TrialRows } from './trial-rows';
import type { Trials } from './trial-types';
import './trials.css';

function Empty() {
  return (
    <div className="stack trials-empty">
      <p>
        Divide one heating of milk among some jars, stir something else into each, keep one plain: that is a
        trial. Once they are out and passed the look and the smell, they can be tasted here without anyone
        knowing which is which.
      </p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
          Record a batch
        </button>
      </div>
    </div>
  );
}

function All({ trials }: { readonly trials: Trials }) {
  return (
    <>
      <header>
        <h1>Trials</h1>
      </header>
      {trials.trials.length + trials.offers.length === 0 ? <Empty /> : <TrialRows {...trials} />}
      <FoodCaution className="soft small" />
    </>
  );
}

function At({ trials, focus }: { readonly trials: Trials; readonly focus: string | null }) {
  const [, what = '', id = ''] = /^(\w+):(.+)$/.exec(focus ?? '') ?? [];
  const trial = trials.trials.find((one) => (what === 'batch' ? one.batch : one.id) === id);
  if (what === 'session') return <Tasting key={id} session={id} trials={trials} />;
  if (what === 'start' && trial) return <StartTasting key={id} trial={trial} tasters={trials.tasters} />;
  if (trial) return <OpenTrial key={id} trial={trial} />;
  return what === 'batch' ? <NewTrial key={id} batch={id} /> : <All trials={trials} />;
}

/** The screen. */
export function TrialsScreen() {
  const { focus } = usePlace();
  const answer = useRead('trial.list', {});
  if (answer === null) return <div className="page trials" aria-busy="true" />;
  if (!answer.ok) return <p className="page notice caution">{answer.sentence}</p>;
  return (
    <div className="page trials stack">
      <At trials={answer.value} focus={focus} />
    </div>
  );
}
