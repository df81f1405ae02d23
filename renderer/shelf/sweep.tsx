// "Still there?", asked of one thing after the other in one place, or answered for all at once.
import { useState } from 'react';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import type { Shelf } from './things';

type What = 'still there' | 'eaten up' | 'discarded' | 'gone';

async function answer(ids: readonly string[], what: What, names: string): Promise<void> {
  const answered = await call('shelf.answer', { answers: ids.map((id) => ({ id, what })), why: null });
  say(answered.ok ? `${names}: ${what}.` : answered.sentence, answered.ok ? 'calm' : 'caution');
}

export function Sweep({ shelf: { asked, items } }: { readonly shelf: Shelf }) {
  const [later, put] = useState<readonly string[]>([]);
  const waiting = (asked?.ids ?? []).filter((id) => !later.includes(id));
  const thing = items.find(({ id }) => id === waiting[0]);
  if (asked === null || !thing) return null;
  const more = waiting.length - 1;
  // What its own note says is alight, and is pressed by the keeper all the same.
  const kind = (what: What): string => (thing.suggests?.what === what ? 'button primary' : 'button');
  const tell = (what: What): void => void answer([thing.id], what, thing.name);
  return (
    <section className="shelf-sweep" aria-label="Still there?">
      <div>
        <h2>Is {thing.name} still there?</h2>
        <p className="soft">{thing.suggests === null ? asked.rest : thing.suggests.says}</p>
      </div>
      <div className="row">
        <button type="button" className="button" onClick={() => tell('still there')}>
          Still there
        </button>
        <button type="button" className={kind('eaten up')} onClick={() => tell('eaten up')}>
          Eaten up
        </button>
        <button type="button" className={kind('discarded')} onClick={() => tell('discarded')}>
          Discarded
        </button>
        {thing.suggests?.what === 'gone' && (
          <button type="button" className={kind('gone')} onClick={() => tell('gone')}>
            Gone
          </button>
        )}
        <button type="button" className="button quiet" onClick={() => put([...later, thing.id])}>
          Later
        </button>
      </div>
      {more > 0 && (
        <p className="shelf-sweep-all">
          {more === 1 ? 'One more is' : `${more} more are`} asked about after it.{' '}
          <button
            type="button"
            className="linked"
            onClick={() => void answer(waiting, 'still there', `All ${waiting.length}`)}
          >
            All {waiting.length} are still there
          </button>
          {' · '}
          <button
            type="button"
            className="linked"
            onClick={() => void answer(waiting, 'gone', `All ${waiting.length}`)}
          >
            All {waiting.length} are gone
          </button>
        </p>
      )}
    </section>
  );
}

/** Of what nobody said anything for so long that it is taken to be gone. */
export function LongUnsaid({ told }: { readonly told: NonNullable<Shelf['longUnsaid']> }) {
  return (
    <p className="shelf-unsaid soft">
      {told.sentence}{' '}
      <button
        type="button"
        className="linked"
        onClick={() => void answer(told.ids, 'gone', told.count === 1 ? 'That jar' : `Those ${told.count}`)}
      >
        {told.count === 1 ? 'It is gone' : 'They are gone'}
      </button>
    </p>
  );
}
