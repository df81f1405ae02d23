// How the jars of a batch turned out, on one sheet: the gate stands first and is one press for all that is well; then a
// cell for each jar. A jar that differs is answered on a form of its own.
import { useEffect, useRef } from 'react';
import type { BatchReply } from '../../core/contract';
import { gateReasonSentence } from '../../core/says/safety-says';
import type { GateVerdict } from '../../core/safety/take-out';
import { call } from '../state/ledger-calls';
import { EditForm } from '../parts/edit-form';
import { SelectField } from '../parts/fields';
import { SET_WORDS, TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { Taking, type Problems } from '../parts/taking';
import type { Reader } from '../parts/reading';
import { useReader } from '../parts/use-reader';
import { place } from './batch-corrections';
import {
  nothingTyped,
  phTyped,
  readOutcomes,
  readSeen,
  seenOf,
  setTyped,
  type OutcomesText,
  type SeenText,
} from './outcomes-text';
import { Cell } from './sheet-cell';

type Jar = BatchReply['jars'][number];
const ALL_WELL = 'All sour and clean, curd holds, nothing seen, no power cut';

interface Props {
  readonly jars: readonly Jar[];
  readonly text: OutcomesText;
  readonly set: (text: OutcomesText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
}

const withSeen = (text: OutcomesText, jar: string, part: Partial<SeenText>): OutcomesText => ({
  ...text,
  jars: { ...text.jars, [jar]: { ...seenOf(text, jar), ...part } },
});

/** The gate: one press for all. Nothing below opens before it. */
function Gate({ text, set }: Pick<Props, 'text' | 'set'>) {
  const button = useRef<HTMLButtonElement>(null);
  const was = useRef(text.allWell);
  useEffect(() => {
    // Once it is said, the keyboard stands in the first cell that opened.
    if (text.allWell && !was.current)
      button.current?.closest('form')?.querySelector<HTMLInputElement>('input[data-column]:enabled')?.focus();
    was.current = text.allWell;
  }, [text.allWell]);
  return (
    <div className={text.allWell ? 'sheet-gate said' : 'sheet-gate'}>
      <button
        ref={button}
        type="button"
        className={text.allWell ? 'button' : 'button primary'}
        aria-pressed={text.allWell}
        onClick={() => set({ ...text, allWell: !text.allWell })}
      >
        {text.allWell ? `✓ ${ALL_WELL}` : ALL_WELL}
      </button>
      <p className={text.allWell ? 'soft' : undefined}>
        {text.allWell
          ? 'That is a good sign and not a proof. Press it again to take it back.'
          : 'Look first, then smell each jar: pink, red, orange, black, fuzz, foul smell, foam, lifted lid, torn curd, water that got in? Taste nothing yet. If one jar differs, say so at its head.'}
      </p>
    </div>
  );
}

/** One question, a cell for each jar; shut until the gate is answered, and for a jar that differs. */
function Row(
  props: Props & {
    readonly label: string;
    readonly field: Exclude<keyof SeenText, 'different' | 'answer'>;
    readonly words?: readonly string[];
    readonly typed?: (value: string) => string;
    readonly shut?: (jar: Jar) => boolean;
  },
) {
  const { jars, text, set, problems, reader, label, field, words, typed = (value) => value } = props;
  return (
    <div className="sheet-row">
      <span>{label}</span>
      {jars.map((one, at) => {
        const { letter, id } = one.jar;
        const seen = seenOf(text, id);
        return (
          <Cell
            key={id}
            label={`${label}, jar ${letter}`}
            column={at + 1}
            value={seen[field]}
            words={words}
            shut={!text.allWell || seen.different || props.shut?.(one) === true}
            placeholder={text.allWell && !seen.different ? 'not noted' : undefined}
            read={field === 'ph' ? reader.ph(seen.ph) : undefined}
            problem={problems.get(`${id}.${field}`)}
            onChange={(value) => set(withSeen(text, id, { [field]: typed(value), answer: null }))}
          />
        );
      })}
    </div>
  );
}

function Columns(props: Props) {
  const { jars, text, set, reader } = props;
  const { writer } = useReader();
  const gates = new Map<string, GateVerdict>(
    jars.map(({ jar, additions }) => [
      jar.id,
      readSeen(
        text,
        jar.id,
        additions.map(({ name }) => name),
        reader,
        writer,
        new Taking(),
      ).gate,
    ]),
  );
  const mayTaste = ({ jar }: Jar): boolean => gates.get(jar.id)?.verdict === 'open';
  return (
    <section className="sheet outcomes" aria-label="What was seen">
      <div className="sheet-row sheet-heads">
        <span />
        {jars.map(({ jar, additions }) => {
          const { different } = seenOf(text, jar.id);
          const gate = gates.get(jar.id);
          return (
            <div key={jar.id} className="seen-head">
              <strong>{jar.letter}</strong>{' '}
              <span className="soft small">{additions.map(({ name }) => name).join(', ') || 'plain'}</span>
              <button
                type="button"
                className="button quiet"
                data-enter="pass"
                aria-pressed={different}
                aria-label={`Jar ${jar.letter} is different`}
                onClick={() => set(withSeen(text, jar.id, { different: !different }))}
              >
                {different ? 'on its own form' : 'Different'}
              </button>
              {text.allWell &&
                !different &&
                gate?.reasons.map((reason) => (
                  <p key={reason.code} className="notice caution small">
                    {gateReasonSentence(reason)}
                  </p>
                ))}
            </div>
          );
        })}
      </div>
      <Row {...props} label="Set" field="set" words={SET_WORDS} typed={setTyped} />
      <Row {...props} label="pH" field="ph" typed={phTyped} />
      <Row {...props} label="Whey" field="whey" words={WHEYS} />
      <Row {...props} label="Smell" field="smell" />
      <Row {...props} label="Remark" field="note" />
      <Row {...props} label="Tang" field="tang" words={TANGS} shut={(jar) => !mayTaste(jar)} />
    </section>
  );
}

/** The form. @param jars made ones of which nothing is noted yet and that nothing stands against */
export function OutcomesForm({
  jars,
  batch,
  label,
  onDone,
}: {
  readonly jars: readonly Jar[];
  readonly batch: string;
  readonly label: string;
  readonly onDone: () => void;
}) {
  const { reader, writer } = useReader();
  return (
    <EditForm<OutcomesText>
      label={`How ${label} turned out`}
      draftKey={`outcomes:${batch}`}
      place={place(`outcome of ${label}`, batch)}
      initial={nothingTyped}
      askWhy={false}
      save="Record them"
      saved={`Recorded how ${label} turned out.`}
      onDone={onDone}
      read={(text) => {
        const { outcomes, problems, odd } = readOutcomes(text, jars, reader, writer);
        return {
          problems: text.allWell ? problems : new Map([['gate', 'Answer the gate first.']]),
          doubt: odd && {
            words: odd.asks.map(({ words }) => words),
            answered: (answer) => withSeen(text, odd.jar, { answer }),
          },
          send: outcomes.length === 0 ? null : (why, draft) => call('outcome.save', { outcomes, why, draft }),
        };
      }}
    >
      {(text, set, problems) => (
        <>
          <Gate text={text} set={set} />
          {problems.has('gate') && (
            <p className="notice caution">Answer the gate first, or mark what differs.</p>
          )}
          <Columns jars={jars} text={text} set={set} problems={problems} reader={reader} />
          <div className="fields">
            <SelectField
              label="pH measured with"
              value={text.phHow ?? ''}
              choices={[
                { value: '', label: 'Not noted' },
                { value: 'meter', label: 'Meter' },
                { value: 'strip', label: 'Strip' },
              ]}
              onChange={(phHow) => set({ ...text, phHow })}
            />
            {text.phHow === 'meter' && (
              <SelectField
                label="Meter checked in a pH 4.01 buffer that day?"
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
        </>
      )}
    </EditForm>
  );
}
