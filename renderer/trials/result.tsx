// What a tasting tells: the sentence first, then the bowls of each taster in their order, which jar was which, and how it was
// worked out.
import { useReader } from '../parts/use-reader';
import { Why } from '../parts/why-details';
import { go } from '../state/store';
import { GrainSquare } from './bowl';
import { grainsOf } from './grains';
import { Threads } from './threads';
import type { Session, Trial } from './trial-types';

/** Which jar was which. */
function Revealed({ session, grains }: { readonly session: Session; readonly grains: ReadonlyMap<string, number | null> }) {
  return (
    <section className="revealed" aria-label="Which jar was which">
      <h2>Which jar was which</h2>
      <ul>
        {(session.jars ?? []).map(({ jar, label, treatment, words }) => (
          <li key={jar}>
            <GrainSquare grain={grains.get(treatment) ?? null} />
            <div>
              <button type="button" className="linked" onClick={() => go('family', `jar:${jar}`)}>
                {label}
              </button>
              , {treatment}
              {words !== '' && <p className="soft small">{words}</p>}
            </div>
          </li>
        ))}
      </ul>
      {session.notBlind !== null && <p className="notice">{session.notBlind}</p>}
    </section>
  );
} // prettier-ignore

export function Result({ session, trial }: { readonly session: Session; readonly trial: Trial | undefined }) {
  const { writer } = useReader();
  const { told, label, day, tasters, task } = session;
  const grains = grainsOf(trial?.treatments ?? []);
  return (
    <>
      <header className="trial-head">
        <div>
          <p className="soft">
            {label}, tasted on {writer.day(day)}
          </p>
          <h1>{told?.says}</h1>
          {told?.reason && <p className="tasting-lead">{told.reason}</p>}
        </div>
        <div className="row">
          <button type="button" className="button quiet" onClick={() => go('trials', trial ? `trial:${trial.id}` : null)}>
            Its trial
          </button>
          {trial && (
            <button type="button" className="button" onClick={() => go('trials', `start:${trial.id}`)}>
              Plan another tasting
            </button>
          )}
        </div>
      </header>
      <div className="trial-result">
        <Threads tasters={tasters.filter(({ done }) => done)} task={task} grains={grains} jars={session.jars ?? []} />
        <Revealed session={session} grains={grains} />
      </div>
      {trial?.together && <p className="trial-together">{trial.together.says}</p>}
      {told && <Why why={told.why} title="How this was worked out" />}
    </>
  );
} // prettier-ignore
