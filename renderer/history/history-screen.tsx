// The history: every act in words, newest first, with what it changed. Nothing is ever lost from it, undoing included.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { RECORD_KINDS, type RecordKind } from '../../core/ledger/records';
import { daysInWords } from '../../core/lineage/labels';
import { call } from '../app/calls';
import { go, say, sentenceCase, usePlace, useRevision } from '../app/store';
import { useReader } from '../parts/use-reader';
import './history.css';

type Entry = Reply<'history.list'>['acts'][number];
const PAGE = 30;
const isKind = (word: string | undefined): word is RecordKind =>
  (RECORD_KINDS as readonly string[]).includes(word ?? '');

/** The record a focus such as "jar:UID" means, or null for everything. */
export function recordOf(focus: string | null): { readonly kind: RecordKind; readonly id: string } | null {
  const [kind, id] = focus?.split(':') ?? [];
  return isKind(kind) && id !== undefined ? { kind, id } : null;
}

function useActs(focus: string | null): {
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
        });
        if (!current) return;
        if (!answer.ok) {
          say(answer.sentence, 'caution');
          return;
        }
        acts.push(...answer.value.acts);
        more = answer.value.more && answer.value.acts.length > 0;
      }
      if (current) setHeld({ acts, more, focus, revision });
    };
    void read();
    return () => {
      current = false;
    };
  }, [focus, wanted, revision]);
  const shown = held?.focus === focus ? held : null;
  return {
    acts: shown?.acts ?? null,
    more: shown?.more ?? false,
    readMore: () => setWanted((now) => now + PAGE),
  };
}

function Changes({ entry }: { readonly entry: Entry }) {
  return (
    <ul className="changes">
      {entry.changes.map((change, at) => (
        <li key={at}>
          <span className="change-of">{change.label}</span>
          {change.field === null ? (
            <span>
              <span className="soft">{change.before === null ? 'added' : 'taken away'}</span>
              {(change.after ?? change.before) !== '' &&
                ` ${daysInWords(change.after ?? change.before ?? '')}`}
            </span>
          ) : (
            <span>
              {change.field}: <del>{daysInWords(change.before ?? 'unknown')}</del>{' '}
              <span aria-hidden="true">→</span>
              <span className="visually-hidden"> became </span>{' '}
              <ins>{daysInWords(change.after ?? 'unknown')}</ins>
            </span>
          )}
        </li>
      ))}
      {entry.moreChanges > 0 && <li className="soft">and {entry.moreChanges} more changes</li>}
    </ul>
  );
}

function Act({ entry }: { readonly entry: Entry }) {
  const { writer } = useReader();
  const says = daysInWords(entry.says);
  const undo = async (): Promise<void> => {
    const answer = await call('act.undo', { act: entry.act });
    say(answer.ok ? `${sentenceCase(answer.value.says)}.` : answer.sentence, answer.ok ? 'calm' : 'caution');
  };
  return (
    <li className={entry.undone ? 'act undone' : 'act'}>
      <div className="act-head">
        <div>
          <p className="act-says">{sentenceCase(says)}</p>
          <p className="soft small">
            {writer.moment(entry.at)}
            {entry.undone && ' · undone since'}
          </p>
          {entry.why && <p>Why: {entry.why}</p>}
        </div>
        {!entry.undone && (
          <button type="button" className="button quiet" onClick={() => void undo()}>
            Undo<span className="visually-hidden"> {says}</span>
          </button>
        )}
      </div>
      {entry.changes.length > 0 && (
        <details className="more">
          <summary>
            What changed<span className="visually-hidden"> in {says}</span>
          </summary>
          <Changes entry={entry} />
        </details>
      )}
    </li>
  );
}

/** The screen. Its focus is null (everything) or "jar:" and the record's id, likewise for every kind of record. */
export function HistoryScreen() {
  const { focus } = usePlace();
  const record = recordOf(focus);
  const { acts, more, readMore } = useActs(focus);
  const name =
    record === null
      ? null
      : (acts?.flatMap((one) => one.changes).find((change) => change.id === record.id)?.label ?? record.kind);
  return (
    <div className="page stack">
      <header className="stack">
        <h1>{record === null ? 'History' : `History of ${name ?? record.kind}`}</h1>
        <p className="soft">
          Everything recorded and corrected, newest first. Undoing adds to it; nothing is lost from it.
        </p>
        {record !== null && (
          <div className="row">
            <button type="button" className="button quiet" onClick={() => go('history')}>
              Show the whole history
            </button>
          </div>
        )}
      </header>
      {acts === null ? (
        <p className="soft">Opening…</p>
      ) : acts.length === 0 ? (
        <div className="stack">
          <p>Nothing is recorded yet. Start with a batch.</p>
          <div className="row">
            <button type="button" className="button primary" onClick={() => go('batch')}>
              Record a batch
            </button>
          </div>
        </div>
      ) : (
        <ol className="acts" aria-label="Acts, newest first">
          {acts.map((entry) => (
            <Act key={entry.act} entry={entry} />
          ))}
        </ol>
      )}
      {more && (
        <div className="row">
          <button type="button" className="button" onClick={readMore}>
            Earlier acts
          </button>
        </div>
      )}
    </div>
  );
}
