// The early look as one row of cells, a cell a jar: "starting, sour", "as b". Enter goes to the next, and the last notes them all.
import { useState, type KeyboardEvent } from 'react';
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { focusNext } from '../parts/form-keys';
import { lookText, readLook, UNSEEN, type Seen } from './look-text';

type Hold = Reply<'hold.get'>;
type HoldJar = Hold['jars'][number];

/** Whether what was noted last is of the look that is open, so that it is corrected and not added to. */
const isOpen = ({ look }: HoldJar, hold: Hold): boolean => {
  if (look === null || hold.lookNow === null) return look !== null;
  const { hours } = look;
  return hours !== null && Math.abs(hours - hold.lookNow.hours) <= (hold.lookNow.hours <= 12 ? 6 : 3);
};

const same = (a: Seen, b: Seen): boolean => a.set === b.set && a.sour === b.sour && a.ph === b.ph;
const hoursWords = (hours: number | null): string =>
  hours === null ? 'at an early look' : `at ${Math.round(hours)} h`;

export function LookRow({ hold }: { readonly hold: Hold }) {
  const jars = hold.jars.filter(({ inside }) => inside);
  const [typed, type] = useState<ReadonlyMap<string, string>>(new Map());
  const [tried, setTried] = useState(false);
  const noted = (jar: HoldJar): Seen => (isOpen(jar, hold) && jar.look ? jar.look : UNSEEN);
  const before = new Map<string, Seen>();
  const read = jars.map((jar) => {
    const text = typed.get(jar.id) ?? lookText(noted(jar));
    const answer = readLook(text, before);
    if (answer.ok) before.set(jar.letter, answer.seen);
    return { jar, text, answer };
  });
  const changed = read.flatMap(({ jar, answer }) =>
    answer.ok && !same(answer.seen, noted(jar)) ? [{ jar, seen: answer.seen }] : [],
  );
  const record = async (): Promise<void> => {
    setTried(true);
    if (changed.length === 0 || read.some(({ answer }) => !answer.ok)) return;
    // What is corrected keeps the time at which it was seen.
    const [first] = changed;
    const at =
      first && isOpen(first.jar, hold) && hold.lookNow === null ? (first.jar.look?.at ?? null) : null;
    const told = changed.map(({ jar, seen }) => ({ jar: jar.id, ...seen }));
    const answer = await call('hold.look', { hold: hold.id, at, jars: told });
    if (!answer.ok) {
      say(answer.sentence, 'caution');
      return;
    }
    type(new Map());
    setTried(false);
    say(`Noted the look at ${changed.map(({ jar }, i) => (i === 0 ? jar.label : jar.letter)).join(', ')}.`);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLFormElement>): void => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const last = event.target.dataset['last'] === 'true';
    if (event.ctrlKey || event.metaKey || last) void record();
    else focusNext(event.currentTarget, event.target);
  };
  const open = hold.lookNow !== null;
  return (
    // The fields inside are interactive; the form only hears what they leave over.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <form
      className={open ? 'look-row open' : 'look-row'}
      aria-label="The early look"
      onKeyDown={onKeyDown}
      onSubmit={(event) => {
        event.preventDefault();
        void record();
      }}
    >
      <div className="look-says">
        <p className="look-title">{hold.lookNow?.says ?? 'A look before it is done'}</p>
        <p className="soft small">Loose, starting or set? Sour? Look and smell; taste nothing yet.</p>
      </div>
      <div className="look-cells">
        {read.map(({ jar, text, answer }, at) => {
          const earlier = jar.look !== null && !isOpen(jar, hold) ? jar.look : null;
          return (
            <label key={jar.id} className="look-cell">
              <span className="look-jar">
                <strong>{jar.letter}</strong>{' '}
                <span className="soft small">{jar.additions.join(', ') || 'plain'}</span>
              </span>
              <input
                className="input"
                value={text}
                placeholder="not noted"
                data-last={at === read.length - 1}
                aria-label={`${jar.label} at the look`}
                aria-invalid={(tried && !answer.ok) || undefined}
                spellCheck={false}
                autoComplete="off"
                onChange={(event) => type(new Map(typed).set(jar.id, event.target.value))}
              />
              {earlier && (
                <span className="soft small">
                  {hoursWords(earlier.hours)}: {lookText(earlier)}
                </span>
              )}
              {tried && !answer.ok && (
                <span className="field-problem" role="alert">
                  {answer.sentence}
                </span>
              )}
            </label>
          );
        })}
      </div>
      <button
        type="submit"
        className={changed.length > 0 ? 'button primary' : 'button'}
        disabled={changed.length === 0}
      >
        Note it
      </button>
    </form>
  );
}
