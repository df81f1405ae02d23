// The first run: three doors, and what Jarline is for.
import { useState, type ReactNode } from 'react';
import { startJob } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { FoodCaution } from '../parts/food-caution';
import { EmptyPicture, FamilyPicture, NotesPicture } from './pictures';

interface DoorProps {
  readonly picture: ReactNode;
  readonly title: string;
  readonly says: string;
  readonly busy: boolean;
  readonly onOpen: () => void;
}

function Door({ picture, title, says, busy, onOpen }: DoorProps) {
  return (
    <button className="door" type="button" aria-disabled={busy || undefined} onClick={onOpen}>
      {picture}
      <span className="door-title">{title}</span>
      <span className="door-says">{says}</span>
    </button>
  );
}

/** Three doors, one of them chosen once. */
export function Doors() {
  const [opening, setOpening] = useState<string | null>(null);

  const open = async (
    name: 'ledger.openDemo' | 'ledger.create' | 'ledger.open',
    says: string,
    then: string,
    at: string | null = null,
  ): Promise<void> => {
    if (opening !== null) return;
    setOpening(says);
    go(then, at);
    const { done } = name === 'ledger.openDemo' ? startJob(name, {}) : startJob(name, { file: null });
    const answer = await done;
    setOpening(null);
    if (!answer.ok) say(answer.sentence, 'caution');
  };

  return (
    <div className="start">
      <div className="start-words">
        <h1 className="start-name">Jarline</h1>
        <p className="start-for">
          A ledger for a culture that you keep alive in milk, from jar to jar. It remembers what seeded what,
          draws the family, counts the generations since the source, and suggests a fresh start when a line
          comes out weak more than once. Everything stays on this computer.
        </p>
      </div>
      <div className="doors">
        <Door
          picture={<FamilyPicture />}
          title="Look around"
          says="Invented notes of an allotment club: two lines over one winter. Nothing you do there is kept."
          busy={opening !== null}
          onOpen={() => void open('ledger.openDemo', 'Setting out the invented jars…', 'family')}
        />
        <Door
          picture={<NotesPicture />}
          title="Bring in a spreadsheet"
          says="Notes that you have kept by hand. You see what each row is taken to mean before it comes in."
          busy={opening !== null}
          onOpen={() => void open('ledger.create', 'Making an empty ledger…', 'notes', 'choose')}
        />
        <Door
          picture={<EmptyPicture />}
          title="Start an empty ledger"
          says="Write down your first batch as you make it."
          busy={opening !== null}
          onOpen={() => void open('ledger.create', 'Making an empty ledger…', 'family')}
        />
      </div>
      <p className="start-other" aria-live="polite">
        {opening ?? 'You have a ledger already?'}
        {opening === null && (
          <button
            className="button quiet"
            type="button"
            onClick={() => void open('ledger.open', 'Opening…', 'family')}
          >
            Open a ledger file…
          </button>
        )}
      </p>
      <FoodCaution className="start-caution" />
    </div>
  );
}
