// A sentence in which jars are named: each name is a link to its jar, so that whatever is wrong can be looked at at once.
import { Fragment } from 'react';
import { go } from '../state/store';
import { linkedParts, type NamedJar } from './linked-parts';

interface Props {
  readonly text: string;
  readonly jars: readonly NamedJar[];
  /** Where a press goes; without it to the jar in the family. */
  readonly onGo?: (jar: string) => void;
}

export function Linked({ text, jars, onGo = (jar) => go('family', `jar:${jar}`) }: Props) {
  return linkedParts(text, jars).map(({ words, jar }, at) => (
    <Fragment key={`${at} ${words}`}>
      {jar === null ? (
        words
      ) : (
        <button className="linked" type="button" onClick={() => onGo(jar)}>
          {words}
        </button>
      )}
    </Fragment>
  ));
}
