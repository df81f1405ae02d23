// The rows of a recorded batch that are typed along: the gate first, what was seen, then what went in. A cell that is typed
// in corrects what is recorded, or notes it for the first time; everything typed is one act.
import { isSeenOut } from '../../core/ledger/seen-out';
import { useMemo, useRef, useState } from 'react';
import { OUTCOME_FIELDS, JAR_FIELDS, SET_WORDS, TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { gateReasonSentence } from '../../core/says/safety-says';
import { EditQuestions } from '../parts/edit-questions';
import { Why } from '../parts/edit-form';
import { SelectField, wordChoices } from '../parts/fields';
import { readField } from '../parts/field-text';
import { Form } from '../parts/form';
import { Taking, type Problems } from '../parts/taking';
import { useEditing, type Editing } from '../parts/use-editing';
import { useReader } from '../parts/use-reader';
import { place } from './batch-corrections';
import { HOLDS, SIGN_WORDS } from './gate-cells';
import { isSetAside } from './is-set-aside';
import { MILK_FIELDS } from './batch-text';
import {
  ADDITION_CELLS,
  GATE_CELLS,
  SEEN_CELLS,
  cellText,
  cellsTyped,
  kindOf,
  leftOver,
  nothingTyped,
  phTyped,
  readJar,
  readSheet,
  setTyped,
  typedOf,
  withTyped,
  type Asked,
  type CellName,
  type Jar,
  type RecordText,
} from './record-text';
import { Cell } from './sheet-cell';
import { isPlan, madeDaySays, PlanFoot, sendMade, sendSheet, Swapped, useMadeKey } from './planned-sheet';
import { columnsOf, type Bands } from './use-bands';
import { RefusalNotice } from '../parts/refusal-notice';

/** What one press says. A power cut that is noted is left as it is noted. */
const allWell = ({ failed = false }: Asked): string =>
  `All sour and clean, curd holds, nothing seen${failed ? '' : ', no power cut'}`;

const LABELS: Readonly<Record<CellName, string>> = {
  ...(Object.fromEntries(SEEN_CELLS.map((cell) => [cell, OUTCOME_FIELDS[cell].label])) as Record<
    (typeof SEEN_CELLS)[number],
    string
  >),
  ...(Object.fromEntries(MILK_FIELDS.map((cell) => [cell, JAR_FIELDS[cell].label])) as Record<
    (typeof MILK_FIELDS)[number],
    string
  >),
  setAtTakeOut: 'Set at the end',
  sour: 'Sour and clean',
  signs: 'Signs seen',
  power: 'Power cut',
  stirredIn: 'Stirred in',
  amount: 'Amount',
};
const WORDS: Partial<Record<CellName, readonly string[]>> = {
  setAtTakeOut: ['yes', 'no', ...HOLDS],
  sour: ['yes', 'no'],
  signs: SIGN_WORDS,
  power: ['no', 'yes'],
  setWord: SET_WORDS,
  whey: WHEYS,
  tang: TANGS,
};
const TYPED: Partial<Record<CellName, (typed: string) => string>> = { setWord: setTyped, ph: phTyped };

interface Props {
  readonly jars: readonly Jar[];
  readonly asked: Asked;
  readonly text: RecordText;
  readonly set: (text: RecordText) => void;
  readonly problems: Problems;
}

/** The gate: one press for all that are well together. Nothing below opens before it. */
function Gate({ jars, asked, text, set }: Omit<Props, 'problems'>) {
  const button = useRef<HTMLButtonElement>(null);
  const together = jars.filter(({ jar }) => asked.together.has(jar.id));
  const press = (): void => {
    set({ ...text, allWell: !text.allWell });
    if (text.allWell) return;
    // Once it is said, the keyboard stands in the first cell that opened.
    const first = together[0]?.jar.id;
    requestAnimationFrame(() =>
      button.current
        ?.closest('form')
        ?.querySelector<HTMLInputElement>(`input[data-cell="setWord.${first}"]`)
        ?.focus(),
    );
  };
  return (
    <div className={text.allWell ? 'sheet-gate said' : 'sheet-gate'}>
      <button
        ref={button}
        type="button"
        className={text.allWell ? 'button' : 'button primary'}
        aria-pressed={text.allWell}
        onClick={press}
      >
        {`${text.allWell ? '✓ ' : ''}${allWell(asked)}`}
      </button>
      <p className={text.allWell ? 'soft' : undefined}>
        {text.allWell
          ? 'That is a good sign and not a proof. Press it again to take it back.'
          : 'Look first, then smell each jar: pink, red, orange, black, fuzz, foul smell, foam, lifted lid, torn curd, water that got in? Taste nothing yet. A jar that differs: press Answer only this jar in its column.'}
        {asked.failed === true && ' That the warmth failed is noted already, and stays so.'}
      </p>
    </div>
  );
}

/** What stands in a jar's cell while nothing is noted: into a plain jar nothing was stirred. */
const emptySays = (cell: CellName, { additions }: Jar): string =>
  cell === 'stirredIn' ? 'plain' : cell === 'amount' && additions.length === 0 ? '' : 'not noted';

interface RowProps extends Props {
  readonly cell: CellName;
  /** Why nothing can be typed in a jar's cell; null where it can. */
  readonly shut: (record: Jar) => string | null;
}

/** One question: an entry for all jars it is open for, and a cell for each. */
function Row({ jars, asked, text, set, problems, cell, shut }: RowProps) {
  const { reader, writer } = useReader();
  const label = LABELS[cell];
  const typed = TYPED[cell] ?? ((value: string) => value);
  const valueOf = (record: Jar): string => cellText(text, record, asked, cell, writer);
  const open = jars.filter((record) => shut(record) === null);
  const values = new Set(open.map(valueOf));
  const [one = ''] = values;
  // Of one jar alone nothing is said of all.
  const [first] = jars;
  const lockedForAll =
    open.length > 1 || !first ? null : open.length === 1 ? `in column ${open[0]?.jar.letter}` : shut(first);
  const write = (all: readonly Jar[], value: string): RecordText =>
    all.reduce(
      (before, { jar }) =>
        withTyped(before, jar.id, {
          cells: { ...typedOf(before, jar.id).cells, ...cellsTyped(cell, typed(value)) },
        }),
      text,
    );
  const read = (value: string) => readField(kindOf(cell), value, reader);
  return (
    <div className="sheet-row" style={columnsOf(jars)}>
      <span>{label}</span>
      {jars.length > 1 && (
        <Cell
          label={`${label}, all jars`}
          rare
          column={0}
          value={open.length > 1 && values.size === 1 ? one : ''}
          words={WORDS[cell]}
          placeholder={values.size > 1 ? 'they differ' : undefined}
          locked={lockedForAll}
          onChange={(value) => set(write(open, value))}
        />
      )}
      {jars.map((record, at) => {
        const value = valueOf(record);
        const locked = value.includes('\n') ? 'in its own form: it has several lines' : shut(record);
        return (
          <Cell
            key={record.jar.id}
            name={`${cell}.${record.jar.id}`}
            label={`${label}, jar ${record.jar.letter}`}
            column={at + 1}
            value={value}
            words={WORDS[cell]}
            locked={locked}
            placeholder={locked === null ? emptySays(cell, record) : undefined}
            read={WORDS[cell] ? undefined : read(value)}
            problem={problems.get(`${record.jar.id}.${cell}`)}
            onChange={(next) => set(write([record], next))}
          />
        );
      })}
    </div>
  );
}

/** What the answers of the jars that are being noted come to, each reason once with the jars it is of. */
function Reasons({ jars, asked, text }: Pick<Props, 'jars' | 'asked' | 'text'>) {
  const { reader, writer } = useReader();
  const found = new Map<string, string[]>();
  for (const record of jars) {
    const { jar, outcome } = record;
    const said = (text.allWell && asked.together.has(jar.id)) || typedOf(text, jar.id).different;
    if (isSeenOut(outcome) || !said) continue;
    for (const reason of readJar(text, record, asked, reader, writer, new Taking()).gate.reasons) {
      const says = gateReasonSentence(reason);
      found.set(says, [...(found.get(says) ?? []), jar.letter]);
    }
  }
  return [...found].map(([says, letters]) => (
    <p key={says} className="notice caution small">
      {jars.length > 1 && <strong>{letters.join(', ')}: </strong>}
      {says}
    </p>
  ));
}

/** At the head of what was seen: whether a jar is answered by itself, in its own column. */
function Answers({ jars, text, set }: Props) {
  if (jars.every(({ jar, outcome }) => isSeenOut(outcome) || jar.state !== 'made')) return null;
  return (
    <div className="sheet-row sheet-answers" style={columnsOf(jars)}>
      <span />
      {jars.length > 1 && <span className="cell for-all soft small">Typed for all jars</span>}
      {jars.map(({ jar, outcome }) => {
        const { different } = typedOf(text, jar.id);
        return (
          <div key={jar.id} className="cell">
            {!isSeenOut(outcome) && jar.state === 'made' && (
              <button
                type="button"
                className="button"
                data-enter="pass"
                aria-pressed={different}
                aria-label={`${different ? 'Answer it with the others' : 'Answer only this jar'}: jar ${jar.letter}`}
                onClick={() => set(withTyped(text, jar.id, { different: !different }))}
              >
                {different ? 'Answer it with the others' : 'Answer only this jar'}
              </button>
            )}
          </div>
        );
      })}
    </div>
  );
}

/** Why a cell of what was seen is shut. */
function useShut({ asked, text, jars }: Pick<Props, 'asked' | 'text' | 'jars'>) {
  const { reader, writer } = useReader();
  return useMemo(() => {
    const reads = new Map(
      jars.map((record) => [record.jar.id, readJar(text, record, asked, reader, writer, new Taking())]),
    );
    const notMade = ({ jar }: Jar): string | null => (jar.state === 'made' ? null : 'not made');
    const gate = (record: Jar): string | null =>
      notMade(record) ??
      (isSeenOut(record.outcome) || typedOf(text, record.jar.id).different
        ? null
        : text.allWell
          ? 'said for all'
          : 'not said yet');
    const seen = (record: Jar): string | null =>
      notMade(record) ?? (reads.get(record.jar.id)?.answered ? null : 'look and smell first');
    const taste = (record: Jar): string | null => {
      const shut = seen(record);
      if (shut !== null || record.outcome?.tang) return shut;
      if (isSetAside(record)) return 'nobody tastes it';
      return reads.get(record.jar.id)?.gate.verdict === 'open' ? null : 'not tasted yet';
    };
    return { gate, seen, taste };
  }, [asked, jars, reader, text, writer]);
}

/** How the pH was measured: asked once something is typed that needs it. */
function Meter({ text, set }: Pick<Props, 'text' | 'set'>) {
  const typed = Object.values(text.jars).some(({ cells }) => cells.ph !== undefined && cells.ph !== '');
  if (!typed) return null;
  return (
    <div className="fields">
      <SelectField
        label={OUTCOME_FIELDS.phHow.label}
        value={text.phHow}
        choices={[{ value: '', label: 'Not noted' }, ...wordChoices(OUTCOME_FIELDS.phHow.kind)]}
        onChange={(phHow) => set({ ...text, phHow })}
      />
      {text.phHow === 'meter' && (
        <SelectField
          label={OUTCOME_FIELDS.phChecked.label}
          value={text.phChecked}
          choices={[
            { value: '', label: 'Not noted' },
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No: it proves nothing' },
          ]}
          onChange={(phChecked) => set({ ...text, phChecked })}
        />
      )}
    </div>
  );
}

/** The rows. */
function Rows(props: Props & { readonly looked: boolean }) {
  const { jars, asked, text, looked } = props;
  const shut = useShut({ asked, text, jars });
  const [recipe, setRecipe] = useState(!looked);
  const answers = jars.some(({ jar }) => typedOf(text, jar.id).different);
  const several = ({ additions }: Jar): string | null =>
    additions.length > 1 ? 'several: under More' : null;
  return (
    <section className="sheet recorded" aria-label="What was seen, and what went in" data-jars={jars.length}>
      {looked && (
        <>
          <Reasons {...props} />
          <Answers {...props} />
          {answers && GATE_CELLS.map((cell) => <Row key={cell} {...props} cell={cell} shut={shut.gate} />)}
          {SEEN_CELLS.filter(
            (cell) => cell !== 'tang' || jars.some((record) => shut.taste(record) === null),
          ).map((cell) => (
            <Row key={cell} {...props} cell={cell} shut={cell === 'tang' ? shut.taste : shut.seen} />
          ))}
          <div className="row sheet-more">
            <button
              type="button"
              className="button quiet"
              aria-expanded={recipe}
              data-enter="pass"
              onClick={() => setRecipe(!recipe)}
            >
              {recipe ? 'Less' : 'Correct milk, vessel, what was stirred in'}
            </button>
          </div>
        </>
      )}
      {recipe && (
        <>
          <Swapped {...props} />
          {ADDITION_CELLS.map((cell) => (
            <Row key={cell} {...props} cell={cell} shut={several} />
          ))}
          {MILK_FIELDS.map((cell) => (
            <Row key={cell} {...props} cell={cell} shut={() => null} />
          ))}
        </>
      )}
    </section>
  );
}

const none: Problems = new Map();

interface SheetProps {
  readonly batch: string;
  readonly label: string;
  readonly jars: readonly Jar[];
  readonly bands: Bands;
  readonly asked: Asked;
  /** The day it is planned for. */
  readonly madeOn: string | null;
  /** Something was taken out, so that it can be said what was seen. */
  readonly looked: boolean;
  readonly onLeave: () => void;
  /** Opens the form of its time in warmth; null where it has none. */
  readonly onWarmth: (() => void) | null;
  /** Its times in warmth as they are recorded: a refusal that speaks of them goes once they change. */
  readonly warmth: string;
}

/** Refusals whose way out is the time in warmth, in a form of its own. */
const OF_WARMTH: ReadonlySet<string> = new Set([
  'set too soon',
  'taken out early',
  'taken out before the end',
]);

/** The foot: nothing until something is typed. */
function Foot({
  editing,
  news,
  corrects,
  onWarmth,
}: Pick<SheetProps, 'onWarmth'> & {
  readonly editing: Editing<RecordText>;
  readonly news: number;
  readonly corrects: boolean;
}) {
  const { typed, refused, refusedCode, setWhy } = editing;
  const ofWarmth = onWarmth && refusedCode !== null && OF_WARMTH.has(refusedCode);
  return (
    <footer className="form-foot">
      {(corrects || refused !== null || (typed?.why ?? '') !== '') && (
        <Why why={typed?.why ?? ''} onChange={setWhy} />
      )}
      <RefusalNotice words={refused} />
      {ofWarmth && (
        <button type="button" className="button" onClick={onWarmth}>
          Correct the warmth
        </button>
      )}
      <div className="row">
        {(corrects || news > 0) && (
          <>
            <button type="submit" className="button primary">
              {corrects ? 'Save the changes' : news === 1 ? 'Record one jar' : `Record ${news} jars`}
            </button>
            <span className="soft small">Ctrl Enter</span>
          </>
        )}
        <button type="button" className="button quiet" onClick={() => void editing.drop()}>
          {corrects ? 'Leave it as it was' : 'Clear what I typed'}
        </button>
      </div>
    </footer>
  );
}

/** The form. */
export function RecordSheet(sheet: SheetProps) {
  const { batch, label, jars, bands, asked, madeOn, looked, onLeave, onWarmth, warmth } = sheet;
  const { reader, writer, today } = useReader();
  const madeDay = madeDaySays(madeOn, today, writer);
  /** The plan itself is changed, and nothing is made. */
  const planOnly = useRef(false);
  const read = (text: RecordText) => readSheet(text, jars, asked, reader, writer);
  const editing = useEditing<RecordText>({
    draftKey: `sheet:${batch}`,
    place: place(`sheet of ${label}`, batch),
    initial: nothingTyped,
    saved: `Recorded for ${label}.`,
    onDone: () => undefined,
    about: warmth,
    left: (text) => leftOver(text, read(text).jars) ?? nothingTyped,
    read: (text) => {
      const { jars: sent, problems, odd } = read(text);
      return {
        problems,
        doubt: odd && {
          words: odd.asks.map(({ words }) => words),
          answered: (answer) => withTyped(text, odd.jar, { answer }),
        },
        send: isPlan(jars, sent) && !planOnly.current ? sendMade(batch, text, jars, sent) : sendSheet(sent),
      };
    },
  });
  const { typed, wrong } = editing;
  const record = (only: boolean): void => {
    planOnly.current = only;
    void editing.record();
  };
  useMadeKey(isPlan(jars, []), () => record(false));
  if (typed === null) return <p className="soft">Opening…</p>;
  const { problems, corrects, jars: sent } = read(typed.text);
  const props = { jars, asked, text: typed.text, set: editing.set };
  const begun = sent.length > 0 || problems.size > 0 || typed.text !== nothingTyped;
  return (
    <Form label={`Sheet of ${label}`} record={() => record(false)} leave={onLeave} wrong={wrong}>
      {editing.restored && <p className="notice">Unfinished entry restored. Go on where you stopped.</p>}
      {[...asked.together].some((id) => !typedOf(typed.text, id).different) && <Gate {...props} />}
      {bands.map((band) => (
        <Rows
          key={band[0]?.jar.id}
          {...props}
          jars={band}
          problems={wrong > 0 ? problems : none}
          looked={looked}
        />
      ))}
      <Meter text={typed.text} set={editing.set} />
      {isPlan(jars, sent) ? (
        <PlanFoot editing={editing} day={madeDay} begun={begun} onPlan={() => record(true)} />
      ) : (
        begun && <Foot editing={editing} news={sent.length} corrects={corrects} onWarmth={onWarmth} />
      )}
      <EditQuestions editing={editing} />
    </Form>
  );
}
