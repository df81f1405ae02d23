// Warmth: the hold that runs, else the newest where there is room beside the list, and all holds there were.
import { CalendarButton } from '../parts/calendar-button';
import { useMedia } from '../parts/use-media';
import { go, usePlace } from '../state/store';
import { useMinute, useRead } from '../state/use-read';
import type { Reply } from '../../core/contract';
import './hold.css';
import { Appliances } from './appliances';
import { HoldView } from './hold-view';

type Holds = Reply<'hold.list'>['holds'];

/** As in hold.css: the list and a hold side by side. */
const TWO_COLUMNS = '(width > 1080px)';

/** One hold, read again each minute: it goes on by itself. */
function OpenHold({ id, unasked = false }: { readonly id: string; readonly unasked?: boolean }) {
  const answer = useRead('hold.get', { id }, useMinute());
  if (answer === null) return <p className="soft">Opening…</p>;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  return <HoldView hold={answer.value} unasked={unasked} />;
}

function HoldList({ holds, open }: { readonly holds: Holds; readonly open: string | null }) {
  return (
    <section aria-label="All holds" className="hold-list stack">
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
  );
}

/** What Warmth is for, where nothing was in warmth yet. */
function NoHolds() {
  return (
    <>
      <p>
        A hold is a time in warmth. It is noted with a batch: when the jars went in, for how long, and how
        warm.
      </p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
          New batch
        </button>
      </div>
    </>
  );
}

/** The screen. Its focus is null (the one that runs, else the newest or the list), a hold's id, or "appliances". */
export function HoldScreen() {
  const { focus } = usePlace();
  const beside = useMedia(TWO_COLUMNS);
  const list = useRead('hold.list', {});
  if (list === null) return <div className="page" aria-busy="true" />;
  if (!list.ok) return <p className="page notice caution">{list.sentence}</p>;
  const { holds } = list.value;
  const running = holds.filter(({ runs }) => runs);
  if (focus === 'appliances')
    return (
      <div className="page hold-screen alone stack">
        <div className="row">
          <button type="button" className="button" onClick={() => go('hold')}>
            Back to the holds
          </button>
        </div>
        <Appliances />
      </div>
    );
  const asked = focus ?? (running.length === 1 ? running[0]?.id : undefined) ?? null;
  const open = asked ?? (beside ? (running[0] ?? holds[0])?.id : undefined) ?? null;
  const side = (
    <aside className="hold-side stack">
      <header className="stack">
        {open === null ? <h1>Warmth</h1> : <h2>All holds</h2>}
        {holds.length === 0 && <NoHolds />}
        <div className="row">
          <button type="button" className="button" onClick={() => go('hold', 'appliances')}>
            Appliances and checks
          </button>
          {running.length > 0 && <CalendarButton />}
        </div>
      </header>
      {holds.length > 0 && <HoldList holds={holds} open={open} />}
    </aside>
  );
  return (
    <div className={holds.length > 0 ? 'page hold-screen' : 'page hold-screen alone'}>
      {(beside || open === null) && side}
      {open !== null && (
        <div>
          <OpenHold key={open} id={open} unasked={asked === null} />
        </div>
      )}
      {!beside && open !== null && side}
    </div>
  );
}
