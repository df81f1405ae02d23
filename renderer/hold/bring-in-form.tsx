// A probe's file brought in: chosen or dropped, then what it tells before anything is kept: what is left out and why, gaps,
// where it settles.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { ChoiceField, SelectField } from '../parts/fields';
import { PickFile } from '../parts/pick-file';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { lengthWords } from '../../core/says/today-says';
import { taken, type Taken } from './taken-file';
import { jarChoices, PLACES, type Place } from './reading-form';

type Hold = Reply<'hold.get'>;
type Preview = Reply<'readings.preview'>;
const SHOWN = 5;

/** Where a file comes from: chosen, or dropped anywhere on the page. */
function Choose({ onFile }: { readonly onFile: (file: File) => void }) {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const stop = new AbortController();
    const { signal } = stop;
    const on = <K extends 'dragover' | 'drop' | 'dragleave'>(
      kind: K,
      act: (event: WindowEventMap[K]) => void,
    ): void => window.addEventListener(kind, act, { signal });
    on('dragover', (event) => {
      event.preventDefault();
      setOver(true);
    });
    on('dragleave', (event) => {
      if (event.relatedTarget === null) setOver(false);
    });
    on('drop', (event) => {
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file) onFile(file);
    });
    return () => stop.abort();
  }, [onFile]);
  return (
    <div className={over ? 'drop over' : 'drop'}>
      <PickFile says="Choose a file…" onFile={onFile} />
      <p>or drop it anywhere on this page</p>
    </div>
  );
}

/** What a file tells, before it is kept. */
function Told({ told }: { readonly told: Preview }) {
  const rest = told.leftOut.length - SHOWN;
  const settled = told.settledAt;
  return (
    <section className="stack told" aria-label="What the file tells">
      <p>
        <strong>
          {told.there
            ? 'All of it is here already.'
            : `${told.added} ${told.added === 1 ? 'reading is' : 'readings are'} new, from ${told.from.slice(0, 16).replace('T', ', ')} to ${told.to.slice(0, 16).replace('T', ', ')}.`}
        </strong>
      </p>
      <dl className="inputs">
        <div>
          <dt>settles at</dt>
          <dd>
            {settled === null
              ? 'never for an hour'
              : `${settled.value} ${settled.unit}${told.minutesToSettle === null ? '' : ` after ${lengthWords(told.minutesToSettle)}`}`}
          </dd>
        </div>
        <div>
          <dt>above 45 °C</dt>
          <dd>{told.minutesAbove45 === 0 ? 'never' : `${lengthWords(told.minutesAbove45)}, by the probe`}</dd>
        </div>
        <div>
          <dt>warm hours of the jars</dt>
          <dd>
            {told.warmHours === null
              ? 'not known'
              : `${told.warmHours.mid.toFixed(1)} (${told.warmHours.low.toFixed(1)} to ${told.warmHours.high.toFixed(1)})`}
          </dd>
        </div>
        <div>
          <dt>gaps</dt>
          <dd>
            {told.gaps.length === 0
              ? 'none'
              : told.gaps
                  .map(
                    ({ from, minutes }) => `${lengthWords(Math.round(minutes))} from ${from.slice(11, 16)}`,
                  )
                  .join(', ')}
          </dd>
        </div>
      </dl>
      {told.leftOut.length > 0 && (
        <div>
          <p>
            {told.leftOut.length === 1 ? 'One row is left out:' : `${told.leftOut.length} rows are left out:`}
          </p>
          <ul className="bullets">
            {told.leftOut.slice(0, SHOWN).map(({ row, sentence }) => (
              <li key={row}>
                Row {row}: {sentence}
              </li>
            ))}
            {rest > 0 && <li>{rest === 1 ? 'and one more row' : `and ${rest} more rows`}</li>}
          </ul>
        </div>
      )}
      {told.says.map((sentence) => (
        <p key={sentence} className="soft">
          {sentence}
        </p>
      ))}
    </section>
  );
}

export function BringInForm({ hold, onDone }: { readonly hold: Hold; readonly onDone: () => void }) {
  const [file, setFile] = useState<Taken | null>(null);
  const [place, setPlace] = useState<Place>('bath');
  const [jar, setJar] = useState('');
  const [told, tell] = useState<Preview | null>(null);
  const [refused, refuse] = useState<string | null>(null);
  const inJar = place === 'jar' && jar !== '' ? jar : null;
  const { id } = hold;
  useEffect(() => {
    if (file === null) return undefined;
    let current = true;
    void call('readings.preview', { hold: id, where: place, jar: inJar, file }).then((answer) => {
      if (!current) return;
      tell(answer.ok ? answer.value : null);
      refuse(answer.ok ? null : answer.sentence);
    });
    return () => {
      current = false;
    };
  }, [file, id, place, inJar]);
  const take = (one: File): void =>
    void taken(one).then((next) => {
      tell(null);
      if (typeof next === 'string') refuse(next);
      else setFile(next);
    });
  const bringIn = async (): Promise<void> => {
    if (file === null) return;
    const answer = await call('readings.bringIn', { hold: id, where: place, jar: inJar, file });
    if (!answer.ok) {
      refuse(answer.sentence);
      return;
    }
    say(`Brought in ${answer.value.added} readings of ${file.name}.`);
    onDone();
  };
  return (
    <section className="form stack" aria-label="Bring in a probe’s file">
      <h2>{file === null ? 'A probe’s file' : file.name}</h2>
      <div className="fields">
        <ChoiceField
          label="Where the probe stood"
          value={place}
          choices={PLACES}
          unsaid={null}
          onChange={(next) => setPlace(next === '' ? 'bath' : next)}
        />
        {place === 'jar' && (
          <SelectField label="Which jar" value={jar} choices={jarChoices(hold)} onChange={setJar} />
        )}
      </div>
      {file === null && <Choose onFile={take} />}
      {refused !== null && (
        <p className="notice" role="alert">
          {refused}
        </p>
      )}
      {told !== null && <Told told={told} />}
      <div className="row">
        {told !== null && !told.there && (
          <button type="button" className="button primary" onClick={() => void bringIn()}>
            Bring them in
          </button>
        )}
        {file !== null && (
          <button
            type="button"
            className="button"
            onClick={() => {
              setFile(null);
              tell(null);
              refuse(null);
            }}
          >
            Another file
          </button>
        )}
        <button type="button" className="button quiet" onClick={onDone}>
          {told?.there ? 'Close' : 'Cancel'}
        </button>
      </div>
    </section>
  );
}
