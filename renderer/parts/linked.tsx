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

/** What closes right behind a name: it stays on the name's line. */
const CLOSING = /^[\p{Pe}\p{Pf}.,;:!?]+/u;
const closing = (words: string | undefined): string => CLOSING.exec(words ?? '')?.[0] ?? '';

export function Linked({ text, jars, onGo = (jar) => go('family', `jar:${jar}`) }: Props) {
  const parts = linkedParts(text, jars);
  return parts.map(({ words, jar }, at) => (
    <Fragment key={`${at} ${words}`}>
      {jar === null ? (
        words.slice(at === 0 ? 0 : closing(words).length)
      ) : (
        <span className="linked-name">
          <button className="linked" type="button" onClick={() => onGo(jar)}>
            {words}
          </button>
          {closing(parts[at + 1]?.words)}
        </span>
      )}
    </Fragment>
  ));
}
