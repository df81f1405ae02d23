// The one strip above the drawing: what is advised for the line in sight, the reason that decides, and the button that
// does it.
import { useState, type ReactNode } from 'react';
import { go } from '../state/store';
import { FLAG } from '../../core/shapes/drawing-flags';
import { JarPicture } from '../parts/jar-shape';
import { type Lane, namedByDay } from './lanes';
import { Linked } from '../parts/linked';
import type { NamedJar } from '../parts/linked-parts';
import { NameForm } from '../parts/name-line';
import { VerdictAct } from '../parts/verdict-act';
import type { LineNow } from './use-lines';

interface Props {
  readonly lane: Lane | undefined;
  /** What is known of its line; null while it is being worked out. */
  readonly line: LineNow | null;
  /** Too large a family to be judged unasked. */
  readonly unasked: boolean;
  /** Another line that has seed, where this one has none; and turns to it. */
  readonly better: { readonly name: string; readonly line: LineNow | null } | null;
  readonly onBetter: () => void;
  readonly onShow: (id: string) => void;
  /** Shows a jar with the form open that lifts its caution. */
  readonly onLift: (id: string) => void;
  /** How the drawing shows a jar, by key. */
  readonly looks: (key: number) => { readonly setWord: number; readonly flags: number };
}

function Words(props: {
  readonly sentence: string;
  readonly reason: string | null;
  /** What stands against the newest jar. */
  readonly also?: string | null;
  readonly named?: readonly NamedJar[];
  /** The jar whose caution is told, to be lifted where it is shown. */
  readonly lift?: NamedJar | null;
  readonly onShow?: (jar: string) => void;
  readonly onLift?: (jar: string) => void;
  /** What leads on, as words after the reason. */
  readonly children?: ReactNode;
}) {
  const { sentence, reason, also = null, named = [], lift = null, onShow, onLift, children } = props;
  const linked = (text: string) => <Linked text={text} jars={named} {...(onShow ? { onGo: onShow } : {})} />;
  const lifting = lift !== null && onLift && (
    <>
      {' '}
      <button className="linked" type="button" onClick={() => onLift(lift.jar)}>
        Lift with a reason<span className="visually-hidden">: {lift.label}</span>
      </button>
    </>
  );
  return (
    <div className="spoken-text">
      <div className="spoken-words">
        <p className="spoken-sentence">{linked(sentence)}</p>
        {(reason !== null || children !== undefined) && (
          <div className="spoken-reason">
            {reason !== null && (
              <p className="soft">
                {linked(reason)}
                {also === null && lifting}
              </p>
            )}
            {children !== undefined && <span className="spoken-links">{children}</span>}
          </div>
        )}
      </div>
      {also !== null && (
        <p className="spoken-also soft">
          {linked(also)}
          {lifting}
        </p>
      )}
    </div>
  );
}

/** "Lantern"; a line that nobody named is not to be taken for a day: "The line of 7 Sep 2025". */
export const spokenName = (lane: Lane | undefined): string =>
  lane === undefined ? 'Your lines' : namedByDay(lane) ? `The line of ${lane.name}` : lane.name;

/** "Lantern: go on from 22 Apr b." */
export const spokenOf = (name: string, sentence: string): string =>
  `${name}: ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;

export function Spoken({ lane, line, unasked, better, onBetter, onShow, onLift, looks }: Props) {
  const name = spokenName(lane);
  const [naming, setNaming] = useState<string | null>(null);
  const why = (
    <button
      className="linked"
      type="button"
      onClick={() => go('vigour', lane?.line ? `line:${lane.line}` : null)}
    >
      Why
    </button>
  );
  if (unasked || lane?.line === null)
    return (
      <section className="spoken" aria-label="What is advised">
        <Words
          sentence={`${name}.`}
          reason={
            unasked
              ? 'With so many jars, advice is worked out when you ask for it.'
              : 'Where these jars come from is not known.'
          }
        >
          {unasked ? why : undefined}
        </Words>
      </section>
    );
  if (line === null)
    return (
      <section className="spoken" aria-label="What is advised" aria-busy="true">
        <Words sentence={name} reason="Reading what is known…" />
      </section>
    );
  if (lane && naming === line.id)
    return (
      <section className="spoken" aria-label={`A name for ${name}`}>
        <NameForm line={line.id} name={lane.name} onClose={() => setNaming(null)} />
      </section>
    );
  const { seed } = line;
  const from = seed?.from ?? null;
  return (
    <section className="spoken" aria-label={`What is advised for ${name}`}>
      {from !== null && (
        <button
          className="spoken-jar"
          type="button"
          aria-label={`Show ${seed?.label ?? ''}, generation ${from.generation}${looks(from.key).flags & FLAG.atLeast ? '+' : ''}, in the family`}
          onClick={() => onShow(from.jar)}
        >
          <JarPicture generation={from.generation} {...looks(from.key)} />
        </button>
      )}
      <Words
        sentence={spokenOf(name, line.sentence)}
        reason={line.reason}
        also={line.also}
        named={line.named}
        lift={line.lift}
        onShow={onShow}
        onLift={onLift}
      >
        {better?.line && (
          <button className="linked" type="button" onClick={onBetter}>
            {spokenOf(better.name, better.line.sentence)}
          </button>
        )}
        {why}
        {lane && namedByDay(lane) && (
          <button className="linked" type="button" onClick={() => setNaming(line.id)}>
            Name it<span className="visually-hidden">: {name}</span>
          </button>
        )}
      </Words>
      {line.advised !== null && (
        <div className="spoken-acts">
          <VerdictAct seed={line.advised} line={lane?.line ?? ''} primary />
        </div>
      )}
    </section>
  );
}
