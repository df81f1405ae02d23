// What a sheet of planned jars has besides: which of them was not made, and a foot that makes the rest with one key.
import { useEffect, useRef } from 'react';
import type { Input } from '../../core/contract';
import { Why } from '../parts/edit-form';
import type { Writer } from '../parts/reading';
import type { Editing } from '../parts/use-editing';
import { call } from '../state/ledger-calls';
import { madeOf, typedOf, withTyped, type Jar, type RecordText } from './record-text';
import { columnsOf } from './use-bands';
import { RefusalNotice } from '../parts/refusal-notice';

type Sent = Input<'jars.correct'>['jars'];
type Sending = ((why: string | null, draft: string) => ReturnType<typeof send>) | null;
const send = (jars: Sent, why: string | null, draft: string) => call('jars.correct', { jars, why, draft });

/** Whether the sheet speaks of planned jars: some are there, and nothing is typed of others. */
export const isPlan = (jars: readonly Jar[], sent: Sent): boolean => {
  const planned = new Set(jars.flatMap(({ jar }) => (jar.state === 'planned' ? [jar.id] : [])));
  return planned.size > 0 && sent.every(({ jar }) => planned.has(jar));
};

export const sendSheet = (sent: Sent): Sending =>
  sent.length === 0 ? null : (why, draft) => send(sent, why, draft);

/** What is planned is made, but for jars that were swapped; where all of them were, that alone is said. */
export function sendMade(batch: string, text: RecordText, jars: readonly Jar[], sent: Sent): Sending {
  const made = madeOf(text, jars, sent);
  if (made) return (why, draft) => call('batch.made', { id: batch, ...made, why, draft });
  const planned = jars.filter(({ jar }) => jar.state === 'planned');
  const nothing = { additions: null, outcome: null, readAs: null };
  return sendSheet(
    planned.map(({ jar }) => ({ jar: jar.id, changes: { state: 'not made' as const }, ...nothing })),
  );
}

/** Of planned jars: which of them was swapped for another, or left out. */
export function Swapped({
  jars,
  text,
  set,
}: {
  readonly jars: readonly Jar[];
  readonly text: RecordText;
  readonly set: (text: RecordText) => void;
}) {
  if (jars.every(({ jar }) => jar.state !== 'planned')) return null;
  return (
    <div className="sheet-row sheet-answers" style={columnsOf(jars)}>
      <span />
      {jars.length > 1 && (
        <span className="cell for-all soft small">What differed is typed over the plan</span>
      )}
      {jars.map(({ jar }) => {
        const { notMade = false } = typedOf(text, jar.id);
        return (
          <div key={jar.id} className="cell">
            {jar.state === 'planned' && (
              <button
                type="button"
                className="button"
                data-enter="pass"
                aria-pressed={notMade}
                aria-label={`Not made: jar ${jar.letter}`}
                onClick={() => set(withTyped(text, jar.id, { notMade: !notMade }))}
              >
                {notMade ? '✓ Not made' : 'Not made'}
              </button>
            )}
          </div>
        );
      })}
    </div>
  );
}

/** Ctrl+Enter makes what is planned from wherever the page is read: a form keeps its own. */
export function useMadeKey(planned: boolean, record: () => void): void {
  const latest = useRef(record);
  useEffect(() => {
    latest.current = record;
  });
  useEffect(() => {
    if (!planned) return undefined;
    const pressed = (event: KeyboardEvent): void => {
      const { target } = event;
      const busy = target instanceof Element && target.closest('form, dialog') !== null;
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey) || event.defaultPrevented || busy)
        return;
      event.preventDefault();
      latest.current();
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, [planned]);
}

/** By which day it is called once it is made, where that is not today. */
export const madeDaySays = (madeOn: string | null, today: string, writer: Writer): string | null =>
  madeOn === null || madeOn === today
    ? null
    : madeOn > today
      ? `Planned for ${writer.day(madeOn)}. Made today, it is called ${writer.day(today)}.`
      : `It was made on ${writer.day(madeOn)}, as planned? Correct the day above if it was another.`;

/** The foot of a plan: made with one key, as planned or with what was typed over it; or the plan itself is changed. */
export function PlanFoot({
  editing,
  day,
  begun,
  onPlan,
}: {
  readonly editing: Editing<RecordText>;
  /** What is said of the day it is called by once it is made; null where that is its planned one, today. */
  readonly day: string | null;
  readonly begun: boolean;
  readonly onPlan: () => void;
}) {
  const { typed, refused, setWhy } = editing;
  return (
    <footer className="form-foot">
      {(refused !== null || (typed?.why ?? '') !== '') && <Why why={typed?.why ?? ''} onChange={setWhy} />}
      <RefusalNotice words={refused} />
      <div className="row">
        <button type="submit" className="button primary">
          {begun ? 'Made, as typed over the plan' : 'Made as planned'}
        </button>
        <span className="soft small">Ctrl Enter</span>
        {begun && (
          <button type="button" className="button quiet" onClick={onPlan}>
            Only change the plan
          </button>
        )}
        {day !== null && <span className="soft small">{day}</span>}
      </div>
    </footer>
  );
}
