// Warmth: the hold that runs, and all holds there were.
import { CalendarButton } from '../parts/calendar-button';
import { go, usePlace } from '../state/store';
import { useMinute, useRead } from '../state/use-read';
import './hold.css';
import { Appliances } from './appliances';
import { HoldView } from './hold-view';

/** One hold, read again each minute: it goes on by itself. */
function OpenHold({ id }: { readonly id: string }) {
  const answer = useRead('hold.get', { id }, useMinute());
  if (answer === null) return <p className="soft">Opening…</p>;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  return <HoldView hold={answer.value} />;
}

/** The screen. Its focus is null (the one that runs, else the list), a hold's id, or "appliances". */
export function HoldScreen() {
  const { focus } = usePlace();
  const list = useRead('hold.list', {});
  if (list === null) return <div className="page" aria-busy="true" />;
  if (!list.ok) return <p className="page notice caution">{list.sentence}</p>;
  const { holds } = list.value;
  const running = holds.filter(({ runs }) => runs);
  if (focus === 'appliances')
    return (
      <div className="page hold-screen stack">
        <div className="row">
          <button type="button" className="button" onClick={() => go('hold')}>
            Back to the holds
          </button>
        </div>
        <Appliances />
      </div>
    );
  const open = focus ?? (running.length === 1 ? running[0]?.id : undefined) ?? null;
  return (
    <div className="page hold-screen">
      {open !== null && <OpenHold key={open} id={open} />}
      {open === null && (
        <header className="stack">
          <h1>Warmth</h1>
          {holds.length === 0 && (
            <>
              <p>
                A hold is a time in warmth. It is noted with a batch: when the jars went in, for how long, and
                how warm.
              </p>
              <div className="row">
                <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
                  New batch
                </button>
              </div>
            </>
          )}
        </header>
      )}
      {open === null && (
        <p className="hold-tools">
          <button type="button" className="button" onClick={() => go('hold', 'appliances')}>
            Appliances and checks
          </button>
        </p>
      )}
      {holds.length > 0 && (
        <section aria-label="All holds" className="hold-list stack">
          <div className="hold-read-head">
            {open !== null && <h2>All holds</h2>}
            {running.length > 0 && <CalendarButton />}
          </div>
          <ul>
            {holds.map(({ id, label, began, says }) => (
              <li key={id}>
                <button
                  type="button"
                  className="button quiet"
                  aria-current={id === open ? 'true' : undefined}
                  onClick={() => go('hold', id)}
                >
                  <strong>{label}</strong>
                  <span className="soft small">{says || began}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
