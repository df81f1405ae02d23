// The history as a diary: days, newest first, each act one sentence with small jars. Acts can be found by words, and
// several undone together. Nothing is ever lost from it, undoing included.
import { useEffect, useState } from 'react';
import { RECORD_KINDS, type RecordKind } from '../../core/ledger/records';
import { call } from '../state/ledger-calls';
import { go, say, usePlace, useRevision } from '../state/store';
import { JarDefs } from '../parts/jar-shape';
import { useSettled } from '../parts/use-settled';
import { ActRow } from './act-row';
import { byDay, dayHeading, type Entry } from './acts-by-day';
import { UndoPanel } from './undo-panel';
import './history.css';

const PAGE = 30;
const isKind = (word: string | undefined): word is RecordKind =>
  (RECORD_KINDS as readonly string[]).includes(word ?? '');

/** The record a focus such as "jar:UID" means, or null for everything. */
function recordOf(focus: string | null): { readonly kind: RecordKind; readonly id: string } | null {
  const [kind, id] = focus?.split(':') ?? [];
  return isKind(kind) && id !== undefined ? { kind, id } : null;
}

function useActs(
  focus: string | null,
  text: string,
): {
  readonly acts: readonly Entry[] | null;
  readonly more: boolean;
  readonly readMore: () => void;
} {
  const revision = useRevision();
  const [wanted, setWanted] = useState(PAGE);
  const [held, setHeld] = useState<{
    acts: readonly Entry[];
    more: boolean;
    focus: string | null;
    text: string;
    revision: number;
  } | null>(null);
  useEffect(() => {
    let current = true;
    const read = async (): Promise<void> => {
      const acts: Entry[] = [];
      let more = true;
      while (more && acts.length < wanted) {
        const answer = await call('history.list', {
          record: recordOf(focus),
          before: acts.at(-1)?.act ?? null,
          limit: Math.min(200, wanted - acts.length),
          text,
        });
        if (!current) return;
        if (!answer.ok) {
          say(answer.sentence, 'caution');
          return;
        }
        acts.push(...answer.value.acts);
        more = answer.value.more && answer.value.acts.length > 0;
      }
      if (current) setHeld({ acts, more, focus, text, revision });
    };
    void read();
    return () => {
      current = false;
    };
  }, [focus, text, wanted, revision]);
  const shown = held?.focus === focus ? held : null;
  return {
    acts: shown?.acts ?? null,
    more: shown?.more ?? false,
    readMore: () => setWanted((now) => now + PAGE),
  };
}

/** The days with their acts. */
function Days({
  acts,
  chosen,
  onChoose,
}: {
  readonly acts: readonly Entry[];
  readonly chosen: readonly string[];
  readonly onChoose: (chosen: readonly string[]) => void;
}) {
  return (
    <div className="days">
      <svg width="0" height="0" className="jar" aria-hidden="true">
        <JarDefs />
      </svg>
      {byDay(acts).map(({ day, entries }) => (
        <section key={`${day} ${entries[0]?.act ?? ''}`}>
          <h2>{dayHeading(day)}</h2>
          <ol className="acts" aria-label={`Acts of ${dayHeading(day)}, newest first`}>
            {entries.map((entry) => (
              <ActRow
                key={entry.act}
                entry={entry}
                chosen={chosen.includes(entry.act)}
                onChoose={(now) =>
                  onChoose(now ? [...chosen, entry.act] : chosen.filter((one) => one !== entry.act))
                }
              />
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

function Empty() {
  return (
    <div className="stack">
      <p>Nothing is recorded yet. Start with a batch.</p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => go('batch')}>
          Record a batch
        </button>
      </div>
    </div>
  );
}

/** The screen. Its focus is null (everything) or "jar:" and the record's id, likewise for every kind of record. */
export function HistoryScreen() {
  const { focus } = usePlace();
  const record = recordOf(focus);
  const [typed, type] = useState('');
  const text = useSettled(typed.trim());
  const { acts, more, readMore } = useActs(focus, text);
  const [chosen, choose] = useState<readonly string[]>([]);
  // What was undone meanwhile, or is no longer shown, is not chosen any more.
  const standing = chosen.filter((act) => acts?.some((one) => one.act === act && !one.undone));
  const name =
    record === null
      ? null
      : (acts?.flatMap((one) => one.changes).find((change) => change.id === record.id)?.label ?? record.kind);
  return (
    <div className="page history">
      <header className="history-head">
        <h1>{record === null ? 'History' : `History of ${name ?? record.kind}`}</h1>
        <input
          type="search"
          className="input"
          aria-label="Find in the history"
          placeholder="Find a jar, a word, a day"
          value={typed}
          onChange={(event) => type(event.target.value)}
        />
        {record !== null && (
          <button type="button" className="button quiet lit" onClick={() => go('history')}>
            Show the whole history
          </button>
        )}
      </header>
      <div className={standing.length > 0 ? 'diary with-panel' : 'diary'}>
        <div className="stack">
          {acts === null ? (
            <p className="soft">Opening…</p>
          ) : acts.length > 0 ? (
            <Days acts={acts} chosen={standing} onChoose={choose} />
          ) : text === '' ? (
            <Empty />
          ) : (
            <p>Nothing in the history says “{text}”.</p>
          )}
          {more && (
            <div className="row">
              <button type="button" className="button" onClick={readMore}>
                Earlier acts
              </button>
            </div>
          )}
        </div>
        {standing.length > 0 && <UndoPanel chosen={standing} onDone={() => choose([])} />}
      </div>
    </div>
  );
}
