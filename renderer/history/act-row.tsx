// One act of the diary: a box to choose it, its time, small jars, one sentence, and what it changed on a press.
import { useId, useState } from 'react';
import { daysInWords } from '../../core/lineage/labels';
import { sentenceCase } from '../state/store';
import { JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import { Linked } from '../parts/linked';
import type { Entry } from './acts-by-day';
import { Changes } from './what-changed';

/** At most so many jars stand beside an act. */
function Jars({ entry }: { readonly entry: Entry }) {
  return (
    <span className="act-jars" aria-hidden="true">
      {entry.jars.map((jar) => (
        <JarPicture key={jar.key} generation={jar.generation.deepest} {...lookOf(jar)} />
      ))}
    </span>
  );
}

interface Props {
  readonly entry: Entry;
  readonly chosen: boolean;
  readonly onChoose: (chosen: boolean) => void;
}

export function ActRow({ entry, chosen, onChoose }: Props) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const says = sentenceCase(daysInWords(entry.told));
  const named = entry.jars.map(({ id: jar, label }) => ({ jar, label }));
  const kind = ['act', entry.undone ? 'undone' : '', chosen ? 'chosen' : ''].filter(Boolean).join(' ');
  return (
    <li className={kind}>
      {entry.undone ? (
        <span className="act-box" />
      ) : (
        <label className="act-box">
          <input type="checkbox" checked={chosen} onChange={(event) => onChoose(event.target.checked)} />
          <span className="visually-hidden">Choose to undo: {says}</span>
        </label>
      )}
      <span className="soft small act-time">{entry.at.slice(11, 16)}</span>
      <Jars entry={entry} />
      <div className="act-said">
        <p className="act-says">
          <Linked text={says} jars={named} />
        </p>
        {entry.undone && <p className="soft small">undone since</p>}
        {entry.why && <p className="soft">Why: {entry.why}</p>}
      </div>
      {entry.changes.length > 0 && (
        <button type="button" className="button quiet lit" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
          What changed<span className="visually-hidden"> in {says}</span>
        </button>
      )}
      {open && (
        <div id={id} className="act-changes">
          <Changes entry={entry} />
        </div>
      )}
    </li>
  );
} // prettier-ignore
