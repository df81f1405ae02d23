// The batch screen: all batches, newest first, and one of them open, or a new one being recorded.
import { batchWords, daysOf } from './batch-days';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { BatchReply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { currentPlace, go, say, usePlace, useRevision } from '../state/store';
import { useRead } from '../state/use-read';
import { useMedia } from '../parts/use-media';
import { readDraft } from '../parts/use-draft';
import { useReader } from '../parts/use-reader';
import { useSettled } from '../parts/use-settled';
import { BatchView } from './batch-view';
import { beginBatch, beginOf, type Begin, type Begun } from './begin';
import { LostJar } from './lost-jar';
import { RememberSheet } from './remember-sheet';
import { NEW_BATCH_DRAFT, NewBatch } from './new-batch';
import { BatchList, type Batches, type Row } from './batch-list';
import './batch.css';

const PAGE = 40;
/** As in batch.css: the list and a batch side by side. */
const TWO_COLUMNS = '(width > 1080px)';

/** Batches read so far, newest first, read again whenever the ledger changes. */
function useBatches(text: string): Batches {
  const revision = useRevision();
  const [wanted, setWanted] = useState(PAGE);
  const [held, setHeld] = useState<{
    rows: readonly Row[];
    more: boolean;
    text: string;
    revision: number;
  } | null>(null);
  useEffect(() => {
    let current = true;
    const read = async (): Promise<void> => {
      const rows: Row[] = [];
      let more = true;
      while (more && rows.length < wanted) {
        const last = rows.at(-1);
        const answer = await call('batch.list', {
          before: last ? { madeOn: last.madeOn, id: last.id } : null,
          limit: Math.min(200, wanted - rows.length),
          text,
        });
        if (!current) return;
        if (!answer.ok) {
          say(answer.sentence, 'caution');
          return;
        }
        rows.push(...answer.value.batches);
        more = answer.value.more && answer.value.batches.length > 0;
      }
      if (current) setHeld({ rows, more, text, revision });
    };
    void read();
    return () => {
      current = false;
    };
  }, [revision, text, wanted]);
  return {
    rows: held?.rows ?? null,
    more: held?.more ?? false,
    readMore: () => setWanted((now) => now + PAGE),
  };
}

/** What was begun and not recorded. */
function Unfinished() {
  const answer = useRead('draft.list', {});
  if (!answer?.ok) return null;
  const drafts = answer.value.drafts.flatMap(({ key, json }) => {
    const kept = readDraft<unknown>(json);
    return kept === null ? [] : [{ key, ...kept }];
  });
  if (drafts.length === 0) return null;
  return (
    <section className="notice stack" aria-label="Unfinished entries">
      <p>Begun and not recorded yet:</p>
      <ul className="row">
        {drafts.map((draft) => (
          <li key={draft.key}>
            <button type="button" className="button" onClick={() => go(draft.screen, draft.focus)}>
              Go on with the {draft.says}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The day after, so that the list begins with the batches of a day. */
const dayAfter = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** How the list draws a batch, also one that the list beside it has not read yet. */
function useListed(batch: BatchReply['batch'] | null): Row | null {
  const listed = useRead(
    'batch.list',
    batch && { before: { madeOn: dayAfter(daysOf(batch).at), id: batch.id }, limit: 200 },
  );
  return (batch !== null && listed?.ok && listed.value.batches.find(({ id }) => id === batch.id)) || null;
}

/** @param unasked it opened by itself: the keyboard stays where it is */
function OpenBatch({ id, unasked = false }: { readonly id: string; readonly unasked?: boolean }) {
  const answer = useRead('batch.get', { id });
  const { writer } = useReader();
  const row = useListed(answer?.ok ? answer.value.batch : null);
  if (answer === null) return <p className="soft">Opening…</p>;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  const { batch } = answer.value;
  return (
    <BatchView key={id} reply={answer.value} label={batchWords(batch, writer)} row={row} unasked={unasked} />
  );
}

/** A new batch, empty or as one before; waits until that is read. */
function Making({ begin }: { readonly begin: Begin }) {
  const { writer, today } = useReader();
  // What was said last is about something else, and would lie over the form's foot.
  useEffect(() => say(''), []);
  const [start, setStart] = useState<Begun | null>(null);
  useEffect(() => {
    if (start !== null) return undefined;
    let current = true;
    void beginBatch(begin, call, writer, writer.day(today)).then((begun) => {
      if (!current) return;
      if (begun.problem !== null) say(begun.problem, 'caution');
      setStart(begun);
    });
    return () => {
      current = false;
    };
  }, [begin, start, today, writer]);
  if (start === null) return <p className="soft">Opening…</p>;
  return (
    <NewBatch
      start={start.text}
      repeated={start.repeated}
      onRecorded={(batch) => go('batch', batch)}
      onLeave={() => go('batch')}
    />
  );
}

/**
 * The screen. Its focus is null (all batches), a batch's id, "new", "repeat" or "repeat:" and a batch's id, "seed:" and
 * the id of the jar that is to seed a new batch (and "/" and the id of what was kept back of it), "lost", or "remember".
 */
export function BatchScreen() {
  const { focus } = usePlace();
  const [typed, type] = useState('');
  const text = useSettled(typed.trim());
  const batches = useBatches(text);
  const begin = useMemo(() => beginOf(focus), [focus]);
  const making = begin !== null;
  const arrivedAt = useRef(focus);
  useEffect(() => {
    // What was unfinished when the program stopped opens by itself on coming back to this screen.
    if (arrivedAt.current !== null) return;
    void call('draft.list', {}).then((answer) => {
      const unfinished = answer.ok && answer.value.drafts.some((draft) => draft.key === NEW_BATCH_DRAFT);
      if (unfinished && currentPlace().screen === 'batch' && currentPlace().focus === null)
        go('batch', 'new');
    });
  }, []);
  // A page of its own, beside the list.
  const other = making || focus === 'lost' || focus === 'remember';
  const open = other ? null : focus;
  // Beside the list there is room for one: the newest, or the first that was found.
  const beside = useMedia(TWO_COLUMNS);
  const first = focus === null && beside ? (batches.rows?.[0]?.id ?? null) : null;
  return (
    <div className={open === null && !other ? 'page batch-screen alone' : 'page batch-screen'}>
      <aside className="batch-side stack">
        <header className="stack">
          {open === null && first === null && !other ? <h1>Batches</h1> : <h2>Batches</h2>}
          <div className="row">
            <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
              New batch
            </button>
            <button type="button" className="button quiet" onClick={() => go('batch', 'lost')}>
              Lost jar
            </button>
            <button type="button" className="button quiet" onClick={() => go('batch', 'remember')}>
              Remember earlier jars
            </button>
            {focus !== null && (
              <button type="button" className="button quiet all-batches" onClick={() => go('batch')}>
                All batches
              </button>
            )}
            {/* Known once the list is read: last, so that it moves none of the others. */}
            {(typed !== '' || (batches.rows !== null && batches.rows.length > 0)) && (
              <button type="button" className="button" onClick={() => go('batch', 'repeat')}>
                Repeat the last
              </button>
            )}
          </div>
        </header>
        {open === null && !other && <Unfinished />}
        <BatchList
          open={open ?? first}
          alone={open === null && first === null && !other}
          batches={batches}
          typed={typed}
          onType={type}
        />
      </aside>
      <div className="batch-main">
        {begin !== null && <Making key={focus} begin={begin} />}
        {focus === 'lost' && <LostJar />}
        {focus === 'remember' && <RememberSheet />}
        {open !== null && <OpenBatch id={open} />}
        {first !== null && <OpenBatch id={first} unasked />}
      </div>
    </div>
  );
}
