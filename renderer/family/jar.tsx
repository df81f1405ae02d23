// One jar in the drawing: a tree item. Primitive props and no callbacks, so that a pan renders no unchanged jar.
import { memo } from 'react';
import { jarWords } from '../parts/jar-flags';
import { JAR } from '../../core/pictures/jar-outline';
import { JarShape } from '../parts/jar-shape';

interface Props {
  readonly index: number;
  readonly jarKey: number;
  readonly x: number;
  readonly y: number;
  readonly generation: number;
  readonly setWord: number;
  readonly flags: number;
  readonly label: string;
  /** "also seeded by 10 Mar a": seeds a tree can't show. */
  readonly also: string;
  readonly level: number;
  readonly place: number;
  readonly siblings: number;
  readonly lit: boolean;
  readonly tabbable: boolean;
  readonly selected: boolean;
  /** Vigour, 0 to 100; null: none. */
  readonly score: number | null;
  /** Advised as the next seed: it glows. */
  readonly next: boolean;
  /** It stands in a hold that runs. */
  readonly warm: boolean;
}

/** How often any jar was rendered since the page was loaded: read by the tests through the drawing's data attribute. */
export const renders = { jars: 0 };

export const Jar = memo(function Jar(props: Props) {
  renders.jars += 1;
  const words = [
    jarWords(props.label, props.generation, props.setWord, props.flags, props.warm),
    ...(props.score === null ? [] : [`vigour ${props.score} of 100`]),
    ...(props.also === '' ? [] : [props.also]),
    ...(props.next ? ['advised as the next seed'] : []),
  ].join(', ');
  return (
    <g
      role="treeitem"
      id={`jar-${props.jarKey}`}
      className={`jar${props.lit ? ' lit' : ''}${props.selected ? ' selected' : ''}${props.next ? ' next' : ''}`}
      data-index={props.index}
      data-key={props.jarKey}
      transform={`translate(${props.x} ${props.y})`}
      tabIndex={props.tabbable ? 0 : -1}
      aria-label={words}
      aria-level={props.level}
      aria-posinset={props.place}
      aria-setsize={props.siblings}
      aria-selected={props.selected}
    >
      {props.next && (
        <rect className="glow" x="-8" y="-8" width={JAR.width + 16} height={JAR.height + 15} rx="19" />
      )}
      <rect className="ring" x="-7" y="-6" width={JAR.width + 14} height={JAR.height + 12} rx="16" />
      <circle className="halo" cx={JAR.width / 2} cy={JAR.height / 2} />
      <JarShape
        generation={props.generation}
        setWord={props.setWord}
        flags={props.flags}
        score={props.score}
      />
    </g>
  );
});
