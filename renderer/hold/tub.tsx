// The jars of a hold in their tub, drawn. A jar is pressed to speak of it alone; with none pressed all are meant.
import type { Reply } from '../../core/contract';
import { generationWords } from '../parts/jar-flags';
import { lookOf } from '../parts/jar-look';
import { JarDefs, JarPicture } from '../parts/jar-shape';

type HoldJar = Reply<'hold.get'>['jars'][number];

export function Tub({
  jars,
  warm,
  chosen,
  onChoose,
}: {
  readonly jars: readonly HoldJar[];
  /** Somebody can still take them out. */
  readonly warm: boolean;
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (id: string) => void;
}) {
  return (
    <fieldset
      className={warm ? 'tub-box' : 'tub-box over'}
      aria-label={warm ? 'Jars in this hold' : 'Jars that stood in it'}
    >
      <svg width="0" height="0" className="jar" aria-hidden="true">
        <JarDefs />
      </svg>
      {jars.map((jar) => (
        <button
          key={jar.id}
          type="button"
          className={jar.inside ? 'tub-jar' : 'tub-jar out'}
          aria-pressed={chosen.has(jar.id)}
          disabled={!warm || !jar.inside}
          title={jar.inside ? `Speak of ${jar.label} alone` : `${jar.label} is out`}
          onClick={() => onChoose(jar.id)}
        >
          <JarPicture generation={jar.generation} {...lookOf(jar, jar.atLeast)} />
          <span aria-hidden="true">{jar.letter}</span>
          <span className="visually-hidden">
            {jar.label}, {generationWords(jar.generation, jar.atLeast)}
            {jar.inside ? '' : ', out'}
          </span>
        </button>
      ))}
    </fieldset>
  );
}
