// The batch screen: all batches, newest first, and one of them open, or a new one being recorded.
import { Fragment, useEffect, useRef, useState } from 'react';
import { portionName } from '../../core/ledger/portions';
import type { Reply } from '../../core/contract';
import { call } from '../app/calls';
import { currentPlace, go, say, usePlace, useRevision } from '../app/store';
import { useRead } from '../app/use-read';
import { readDraft } from '../parts/use-draft';
import { useReader } from '../parts/use-reader';
import { emptyBatch, noSeed, pickSeed, type BatchText, type SeedText } from './batch-text';
import { repeatBatch, withKept } from './batch-repeat';
import { BatchView } from './batch-view';
import { LostJar } from './lost-jar';
import { NEW_BATCH_DRAFT, NewBatch } from './new-batch';
import { rowWords } from './row-words';
import './batch.css';

type Row = Reply<'batch.list'>['batches'][number];
const PAGE = 40;

interface Batches {
  /** null until they are read. */
  readonly rows: readonly Row[] | null;
  readonly more: boolean;
  readonly readMore: () => void;
}

/** Batches read so far, newest first, read again whenever the ledger changes. */
function useBatches(): Batches {
  const revision = useRevision();
  const [wanted, setWanted] = useState(PAGE);
  const [held, setHeld] = useState<{ rows: readonly Row[]; more: boolean; revision: number } | null>(null);
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
        });
        if (!current) return;
        if (!answer.ok) {
          say(answer.sentence, 'caution');
          return;
        }
        rows.push(...answer.value.batches);
        more = answer.value.more && answer.value.batches.length > 0;
      }
      if (current) setHeld({ rows, more, revision });
    };
    void read();
    return () => {
      current = false;
    };
  }, [revision, wanted]);
  return {
    rows: held?.rows ?? null,
    more: held?.more ?? false,
    readMore: () => setWanted((now) => now + PAGE),
  };
}

function BatchList({ open, batches }: { readonly open: string | null; readonly batches: Batches }) {
  const { rows, more, readMore } = batches;
  if (rows === null) return <p className="soft">Opening…</p>;
  if (rows.length === 0)
    return <p>No batch is recorded yet. “New batch” writes down the first: its day, its seed, its jars.</p>;
  return (
    <nav aria-label="Batches" className="batch-list">
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            <button
              type="button"
              className={row.jars.some((jar) => jar.spoiled) ? 'batch-row spoiled' : 'batch-row'}
              aria-current={row.id === open ? 'true' : undefined}
              onClick={() => go('batch', row.id)}
            >
              <span className="batch-row-label">{row.label}</span>
              <span className="soft">
                {rowWords(row).map(({ says, caution }, at) => (
                  <Fragment key={says}>
                    {at > 0 && ' · '}
                    {caution ? <strong className="batch-row-caution">{says}</strong> : says}
                  </Fragment>
                ))}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {more && (
        <button type="button" className="button quiet" onClick={readMore}>
          Earlier batches
        </button>
      )}
    </nav>
  );
}

/** What was begun and not recorded, other than a new batch, which opens by itself. */
function Unfinished() {
  const answer = useRead('draft.list', {});
  if (!answer?.ok) return null;
  const drafts = answer.value.drafts.flatMap(({ key, json }) => {
    const kept = key === NEW_BATCH_DRAFT ? null : readDraft<unknown>(json);
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

function OpenBatch({ id }: { readonly id: string }) {
  const answer = useRead('batch.get', { id });
  const { writer } = useReader();
  if (answer === null) return <p className="soft">Opening…</p>;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  const { batch } = answer.value;
  const label = batch.word === null ? writer.day(batch.madeOn) : `${writer.day(batch.madeOn)} ${batch.word}`;
  return <BatchView key={id} reply={answer.value} label={label} />;
}

/** A seed picked before the form opens: the jar, or what was kept back of it. */
function seedOf({ view, record }: Reply<'jar.get'>, portion: string): SeedText {
  const kept = record.portions.find(({ id }) => id === portion);
  if (!kept) return pickSeed(noSeed, { kind: 'jar', id: view.id, label: view.label });
  const label = withKept(view.label, portionName(kept));
  const pieces = kept.pieces === null ? {} : { pieces: true };
  return pickSeed(
    noSeed,
    { kind: 'jar', id: view.id, label, ...pieces },
    { id: kept.id, part: kept.part ?? '' },
  );
}

/** A new batch, empty or with the recipe of another; waits until that recipe is read. */
function Making({
  repeats,
  seedFrom,
}: {
  readonly repeats: string | 'last' | null;
  /** A jar that is to seed it, or jar and portion with a slash between. */
  readonly seedFrom: string | null;
}) {
  const { writer, today } = useReader();
  // What was said last is about something else, and would lie over the form's foot.
  useEffect(() => say(''), []);
  const [start, setStart] = useState<{ text: BatchText; repeated: string | null } | null>(
    repeats === null && seedFrom === null ? { text: emptyBatch(writer.day(today)), repeated: null } : null,
  );
  useEffect(() => {
    if (seedFrom === null || start !== null) return undefined;
    let current = true;
    const [jar = '', portion = ''] = seedFrom.split('/');
    void call('jar.get', { id: jar }).then((answer) => {
      if (!current) return;
      const empty = emptyBatch(writer.day(today));
      if (!answer.ok) say(answer.sentence, 'caution');
      const seeds = answer.ok ? [seedOf(answer.value, portion)] : empty.all.seeds;
      setStart({ text: { ...empty, all: { ...empty.all, seeds } }, repeated: null });
    });
    return () => {
      current = false;
    };
  }, [seedFrom, start, today, writer]);
  useEffect(() => {
    if (repeats === null || start !== null) return undefined;
    let current = true;
    const read = async (): Promise<void> => {
      const last = repeats === 'last' ? await call('batch.list', { before: null, limit: 1 }) : null;
      const id = last === null ? repeats : last.ok ? last.value.batches[0]?.id : undefined;
      const answer = id === undefined ? null : await call('batch.get', { id });
      if (!current) return;
      if (answer?.ok) {
        const { batch } = answer.value;
        const label =
          batch.word === null ? writer.day(batch.madeOn) : `${writer.day(batch.madeOn)} ${batch.word}`;
        setStart({ text: repeatBatch(answer.value, writer.day(today), writer), repeated: label });
        return;
      }
      if (answer !== null) say(answer.sentence, 'caution');
      else say('There is no batch to repeat yet.');
      setStart({ text: emptyBatch(writer.day(today)), repeated: null });
    };
    void read();
    return () => {
      current = false;
    };
  }, [repeats, start, today, writer]);
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
 * the id of the jar that is to seed a new batch (and "/" and the id of what was kept back of it), or "lost".
 */
export function BatchScreen() {
  const { focus } = usePlace();
  const batches = useBatches();
  const seedFrom = focus?.startsWith('seed:') === true ? focus.slice('seed:'.length) : null;
  const making = focus === 'new' || seedFrom !== null || focus?.startsWith('repeat') === true;
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
  const open = focus !== null && !making && focus !== 'lost' ? focus : null;
  return (
    <div className={open === null && !making ? 'page batch-screen alone' : 'page batch-screen'}>
      <aside className="batch-side stack">
        <header className="stack">
          {open === null && !making ? <h1>Batches</h1> : <h2>Batches</h2>}
          <div className="row">
            <button type="button" className="button primary" onClick={() => go('batch', 'new')}>
              New batch
            </button>
            {batches.rows !== null && batches.rows.length > 0 && (
              <button type="button" className="button" onClick={() => go('batch', 'repeat')}>
                Repeat the last
              </button>
            )}
            <button type="button" className="button quiet" onClick={() => go('batch', 'lost')}>
              Lost jar
            </button>
            {focus !== null && (
              <button type="button" className="button quiet all-batches" onClick={() => go('batch')}>
                All batches
              </button>
            )}
          </div>
        </header>
        {open === null && !making && <Unfinished />}
        <BatchList open={open} batches={batches} />
      </aside>
      <div className="batch-main">
        {making && (
          <Making
            key={focus}
            seedFrom={seedFrom}
            repeats={
              focus === 'new' || seedFrom !== null
                ? null
                : focus === 'repeat'
                  ? 'last'
                  : (focus ?? '').slice('repeat:'.length)
            }
          />
        )}
        {focus === 'lost' && <LostJar />}
        {open !== null && <OpenBatch id={open} />}
      </div>
    </div>
  );
}
