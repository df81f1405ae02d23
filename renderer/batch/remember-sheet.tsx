// Earlier jars from memory, or from a sheet of paper: a row for each, a handful at a time, all of it recorded as one act. The columns
// are those of the printed sheet, in its order, so that paper is typed in by the row.
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { ROW_HEADS, ROW_HINTS } from '../../core/says/rows-says';
import { batchDay, calledDay } from '../../core/lineage/labels';
import { EditQuestions } from '../parts/edit-questions';
import { Form } from '../parts/form';
import type { Problems } from '../parts/taking';
import { useEditing, type Editing } from '../parts/use-editing';
import { useReader } from '../parts/use-reader';
import { useSettled } from '../parts/use-settled';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';
import { askAboutSeeds } from './held-seeds';
import { namesIn, readRemember, type ReadRow } from './remember-entry';
import { askNames, type Asked } from './remember-seeds';
import {
  COLUMNS,
  emptyRemember,
  isEmptyRow,
  withCell,
  type Column,
  type RememberText,
} from './remember-text';
import { Cell } from './sheet-cell';
import { RefusalNotice } from '../parts/refusal-notice';

const none: Problems = new Map();
type Names = ReadonlyMap<string, Asked>;
const nothing: Names = new Map();

/** What the ledger says to the names that are typed, asked again as they change. */
function useAsked(text: RememberText | null): readonly [Names, (more: Names) => void] {
  const names = useSettled(JSON.stringify(text === null ? [] : namesIn(text)));
  const [asked, setAsked] = useState(nothing);
  const add = useCallback((more: Names) => setAsked((before) => new Map([...before, ...more])), []);
  useEffect(() => {
    let current = true;
    const wanted = JSON.parse(names) as readonly string[];
    if (wanted.length === 0) return undefined;
    void askNames(wanted).then((answer) => {
      if (!current) return;
      if (answer.problem !== null) say(answer.problem, 'caution');
      add(answer.asked);
    });
    return () => {
      current = false;
    };
  }, [add, names]);
  return [asked, add];
}

/** What a row was understood as: its jar, and its seeds by their labels. */
function Understood({ row }: { readonly row: ReadRow | undefined }) {
  if (row === undefined) return null;
  const label = `${batchDay(calledDay(row.made), true) ?? ''} ${row.letter}`;
  const seeds = row.seeds.flatMap((one) => (one.kind === 'wrong' ? [] : [one.label]));
  const from =
    row.seeds.length === 0
      ? 'seed not noted: counted as “at least”'
      : seeds.length === 0
        ? null
        : row.either
          ? `from ${seeds.join(' or ')}, not sure which`
          : `from ${seeds.join(' and ')}`;
  return <span className="soft small">{[label, from].filter(Boolean).join(', ')}</span>;
}

interface RowProps {
  readonly text: RememberText;
  readonly at: number;
  readonly set: (text: RememberText) => void;
  readonly read: ReadRow | undefined;
  readonly problems: Problems;
  readonly words: Partial<Record<Column, readonly string[]>>;
  /** What stands in an empty cell. */
  readonly empty: Partial<Record<Column, string>>;
}

function Row({ text, at, set, read, problems, words, empty }: RowProps) {
  const row = text.rows[at]!;
  const product = read?.seeds.flatMap((one) => (one.kind === 'wrong' ? (one.product ?? []) : []))[0];
  const wrong = COLUMNS.flatMap((column) => problems.get(`${at}.${column}`) ?? []);
  return (
    <fieldset className="remember-row" aria-label={`Row ${at + 1}`}>
      {COLUMNS.map((column, place) => (
        <Cell
          key={column}
          label={`${ROW_HEADS[place]?.head ?? column}, row ${at + 1}`}
          name={`${column}.${at}`}
          column={place + 1}
          value={row[column]}
          words={words[column]}
          placeholder={empty[column]}
          wrongBelow={problems.has(`${at}.${column}`)}
          onChange={(value) => set(withCell(text, at, column, value))}
        />
      ))}
      <div className="remember-says">
        <Understood row={read} />
        {wrong.map((sentence) => (
          <span key={sentence} className="field-problem">
            {sentence}
          </span>
        ))}
        {product !== undefined && (
          <button
            type="button"
            className="button"
            data-enter="pass"
            onClick={() => set({ ...text, products: [...text.products, product] })}
          >
            Add “{product}” as a product
          </button>
        )}
      </div>
    </fieldset>
  );
}

/** Words that a beginning is filled in to: what the ledger has, and how a jar sets. */
function useWords(): Partial<Record<Column, readonly string[]>> {
  const sources = useRead('source.list', {});
  const batches = useRead('batch.list', { before: null, limit: 20 });
  return useMemo(() => {
    const fibres = batches?.ok ? batches.value.batches.flatMap(({ additions }) => additions) : [];
    return {
      seed: sources?.ok ? sources.value.sources.map(({ name }) => name) : [],
      stirredIn: [...new Set(['plain', ...fibres])],
      gate: ['yes', 'no'],
      setWord: SET_WORDS,
    };
  }, [sources, batches]);
}

/** What stands in the empty cells of a row. */
const emptyOf = ({ rows }: RememberText, at: number, read: ReadRow | undefined): RowProps['empty'] => ({
  day: rows.slice(0, at).some((row) => !isEmptyRow(row)) ? 'as above' : 'mid January',
  jar: read?.letter ?? '',
  seed: at === 0 ? 'a or b, or ?' : '',
});

/** What is pressed at its end. */
function Foot({ editing, jars }: { readonly editing: Editing<RememberText>; readonly jars: number }) {
  const { typed, refused, refusedCode, set, record, drop } = editing;
  const meant = (): void => {
    if (typed === null) return;
    const text = { ...typed.text, sameLabelMeant: true };
    set(text);
    void record(null, text);
  };
  return (
    <footer className="form-foot">
      <RefusalNotice words={refused} />
      <div className="row">
        <button type="submit" className="button primary">
          {jars === 0 ? 'Record them' : jars === 1 ? 'Record the jar' : `Record ${jars} jars`}
        </button>
        <span className="soft small">Ctrl Enter</span>
        {refusedCode === 'same label' && (
          <button type="button" className="button" onClick={meant}>
            They are two jars
          </button>
        )}
        <button type="button" className="button quiet" onClick={() => void drop().then(() => go('batch'))}>
          Discard this entry
        </button>
      </div>
    </footer>
  );
}

/** The form. */
export function RememberSheet() {
  const { reader, writer } = useReader();
  const [held, setHeld] = useState<RememberText | null>(null);
  const [asked, know] = useAsked(held);
  /** Asked anew as it is recorded: a name that was just typed is known by then. */
  const fresh = useRef(nothing);
  const words = useWords();
  const read = (text: RememberText) => readRemember(text, asked, reader, writer);
  const editing = useEditing<RememberText>({
    draftKey: 'remember',
    place: { says: 'earlier jars', screen: 'batch', focus: 'remember' },
    initial: emptyRemember,
    saved: 'Recorded from memory. What was left empty is not noted.',
    onDone: () => go('batch'),
    read: (text) => {
      const { entry, problems, rows } = readRemember(text, fresh.current, reader, writer);
      const seeds = rows.flatMap((row) => row.seeds.flatMap((one) => (one.kind === 'jar' ? [one.id] : [])));
      return {
        problems,
        held: () => askAboutSeeds(seeds),
        send: entry && ((why, draft) => call('jars.remember', { ...entry, why, draft })),
      };
    },
  });
  const { typed, wrong } = editing;
  const text = typed?.text ?? null;
  // What was typed, or stood in a draft, is what the ledger is asked about.
  if (text !== held) setHeld(text);
  if (text === null) return <p className="soft">Opening…</p>;
  const { problems, rows } = read(text);
  const record = async (): Promise<void> => {
    const answer = await askNames(namesIn(text));
    if (answer.problem !== null) say(answer.problem, 'caution');
    fresh.current = answer.asked;
    know(answer.asked);
    await editing.record();
  };
  return (
    <article className="stack">
      <h1>Earlier jars, from memory</h1>
      <p className="soft">
        A row for each jar. A row without a day is of the day above; " stands for what is above.{' '}
        {ROW_HINTS[0]}
      </p>
      <Form
        label="Earlier jars"
        record={() => void record()}
        leave={() => go('batch')}
        wrong={wrong}
        startHere
      >
        {editing.restored && <p className="notice">Unfinished entry restored. Go on where you stopped.</p>}
        <section className="sheet remember" aria-label="Jars, a row each">
          <div className="remember-row remember-heads" aria-hidden="true">
            {ROW_HEADS.map(({ head }) => (
              <span key={head} className="soft small">
                {head}
              </span>
            ))}
          </div>
          {text.rows.map((_, at) => {
            const own = rows.find((one) => one.at === at);
            return (
              <Row
                key={at}
                text={text}
                at={at}
                set={editing.set}
                read={own}
                problems={wrong > 0 ? problems : none}
                words={words}
                empty={emptyOf(text, at, own)}
              />
            );
          })}
        </section>
        <p className="soft small">{ROW_HINTS[1]}</p>
        <Foot editing={editing} jars={rows.length} />
        <EditQuestions editing={editing} />
      </Form>
    </article>
  );
}
