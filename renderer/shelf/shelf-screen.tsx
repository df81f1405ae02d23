// The shelf: what is in the fridge and the freezer, drawn, in the order in which it should be eaten; beside it the chosen thing.
import { useRef, useState } from 'react';
import { FoodCaution } from '../parts/food-caution';
import { go, usePlace } from '../state/store';
import { useRead } from '../state/use-read';
import { Boards } from './boards';
import { ChosenThing } from './chosen-thing';
import { LongUnsaid, Sweep } from './sweep';
import { boardsOf, inWalkingOrder, type Shelf } from './things';
import { useVerbs } from './use-verbs';
import './shelf.css';

/** What was given away: to whom, by when; what is no food by now says whom to tell. */
function Given({ given }: { readonly given: Shelf['given'] }) {
  if (given.length === 0) return null;
  return (
    <section className="shelf-given" aria-label="Given away">
      <h2>Given away</h2>
      <ul>
        {given.map(({ id, name, to, says, discard, caution }, at) => (
          <li key={`${id} ${at}`} className={discard !== null || caution !== null ? 'notice caution' : ''}>
            <strong>{name}</strong>
            {to !== null && ` to ${to}`} <span className="soft">{says}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Empty() {
  return (
    <div className="row">
      <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
        Record a batch
      </button>
    </div>
  );
}

function Boarded({ shelf, focus }: { readonly shelf: Shelf; readonly focus: string | null }) {
  const boards = boardsOf(shelf.items);
  const all = inWalkingOrder(boards);
  const [wanted, choose] = useState<string | null>(null);
  const [at, setAt] = useState(0);
  const verbsAt = useRef<HTMLDivElement>(null);
  // What was chosen may be gone by now: then the next stands in its place, so that nothing beside the boards moves.
  const asked = all.find(({ id, jar }) => wanted === null && (id === focus || jar === focus));
  const thing = all.find(({ id }) => id === wanted) ?? asked ?? all[Math.min(at, all.length - 1)];
  const verbs = useVerbs(() => setAt(all.findIndex(({ id }) => id === thing?.id)));
  if (!thing) return <Empty />;
  return (
    <div className="shelf-both">
      <div className="shelf-main">
        <Boards
          boards={boards}
          chosen={thing.id}
          onChoose={choose}
          onEnter={() => verbsAt.current?.querySelector('button')?.focus()}
        />
        <Given given={shelf.given} />
        {shelf.longUnsaid && <LongUnsaid told={shelf.longUnsaid} />}
        <FoodCaution className="soft small" />
      </div>
      <ChosenThing thing={thing} verbs={verbs} verbsAt={verbsAt} />
    </div>
  );
}

/** The screen. Its focus is null, or the id of what is to be chosen. */
export function ShelfScreen() {
  const { focus } = usePlace();
  const answer = useRead('shelf.get', {});
  if (answer === null) return <div className="page shelf" aria-busy="true" />;
  if (!answer.ok) return <p className="page notice caution">{answer.sentence}</p>;
  const shelf = answer.value;
  return (
    <div className="page shelf">
      <header className="shelf-head">
        <h1>Shelf</h1>
        <p>
          <strong>{shelf.sentence}</strong> <span className="soft">{shelf.reason}</span>
        </p>
      </header>
      {shelf.eaten.map(({ jar, says }) => (
        <p key={jar} className="notice caution">
          {says}
        </p>
      ))}
      <Sweep shelf={shelf} />
      <Boarded shelf={shelf} focus={focus} />
    </div>
  );
}
