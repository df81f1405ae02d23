// The jars of a trial, drawn side by side with what each got; a jar that nobody tastes yet says why.
import { lookOf } from '../parts/jar-look';
import { JarPicture } from '../parts/jar-shape';
import { go } from '../state/store';
import { GrainSquare } from './bowl';
import type { TrialJar } from './trial-types';

/** One jar's picture; an empty room where it is no longer drawn. */
function Picture({ drawn }: Pick<TrialJar, 'drawn'>) {
  if (drawn === null) return <span className="jar-picture" />;
  return <JarPicture generation={drawn.generation} {...lookOf(drawn, drawn.atLeast)} />;
}

/** Small, for a row: the pictures alone. */
export function JarsInRow({ jars }: { readonly jars: readonly TrialJar[] }) {
  return (
    <span className="trial-row-jars">
      {jars.map(({ jar, drawn }) => (
        <Picture key={jar} drawn={drawn} />
      ))}
    </span>
  );
}

interface Props {
  readonly jars: readonly TrialJar[];
  readonly grains: ReadonlyMap<string, number | null>;
}

export function TrialJars({ jars, grains }: Props) {
  return (
    <ul className="trial-jars" aria-label="Its jars">
      {jars.map(({ jar, label, name, not, drawn }) => (
        <li key={jar}>
          <Picture drawn={drawn} />
          <div>
            <button type="button" className="linked" onClick={() => go('family', `jar:${jar}`)}>
              {label}
            </button>
            <p className="trial-got">
              <GrainSquare grain={grains.get(name) ?? null} /> {name}
            </p>
            {not !== null && <p className="soft small">{not}</p>}
          </div>
        </li>
      ))}
    </ul>
  );
}
