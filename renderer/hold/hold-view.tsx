// One hold: how long yet, the early look, what was read against the plan, where each jar stood, and what is done with one press.
import { useEffect, useRef, useState } from 'react';
import type { Reply } from '../../core/contract';
import type { WriteName } from '../../core/call-names';
import type { Input } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { go, say } from '../state/store';
import { useRead } from '../state/use-read';
import { BringInForm } from './bring-in-form';
import { FailedList, lasts } from './failed-list';
import { HoldPlot } from './hold-plot';
import { LookRow } from './look-row';
import { ReadingForm } from './reading-form';
import { Tub } from './tub';
import { WarmPlace } from './warm-place';

type Hold = Reply<'hold.get'>;

/** Does it, and says what was done or why not. */
async function doAndSay<N extends WriteName>(name: N, input: Input<N>, done: string): Promise<boolean> {
  const answer = await call(name, input);
  say(answer.ok ? `${done} Undo takes it back.` : answer.sentence, answer.ok ? 'calm' : 'caution');
  return answer.ok;
}

const named = (jars: readonly { readonly label: string; readonly letter: string }[]): string =>
  jars.map(({ label, letter }, at) => (at === 0 ? label : letter)).join(', ');

/** Where jars can be moved: other holds that run, or somewhere else. */
function MoveTo({
  hold,
  jars,
  onDone,
}: {
  readonly hold: Hold;
  readonly jars: readonly string[];
  readonly onDone: () => void;
}) {
  const list = useRead('hold.list', {});
  const others = list?.ok ? list.value.holds.filter(({ id, runs }) => runs && id !== hold.id) : [];
  const what = named(hold.jars.filter(({ id }) => jars.includes(id)));
  const move = async (to: string | null): Promise<void> => {
    if (await doAndSay('hold.move', { hold: hold.id, jars: [...jars], to }, `Moved ${what}.`)) onDone();
  };
  return (
    <fieldset className="row notice" aria-label={`Where ${what} is moved`}>
      <p>Where to, with {what}?</p>
      {others.map(({ id, label }) => (
        <button key={id} type="button" className="button" onClick={() => void move(id)}>
          To the hold of {label}
        </button>
      ))}
      <button type="button" className="button" onClick={() => void move(null)}>
        To another warm place
      </button>
      <button type="button" className="button quiet" onClick={onDone}>
        Cancel
      </button>
    </fieldset>
  );
}

/** What is done with one press: all jars, or those that are chosen. */
function Acts({
  hold,
  chosen,
  onMoving,
  onDone,
}: {
  readonly hold: Hold;
  readonly chosen: ReadonlySet<string>;
  readonly onMoving: () => void;
  readonly onDone: () => void;
}) {
  const inside = hold.jars.filter(({ inside: still }) => still);
  const meant = chosen.size === 0 ? inside : inside.filter(({ id }) => chosen.has(id));
  const letters = chosen.size === 0 ? '' : ` ${meant.map(({ letter }) => letter).join(', ')}`;
  const failing = hold.interruptions.find((one) => one.what === 'power' && lasts(one));
  const power = (): void => {
    if (failing)
      void doAndSay(
        'hold.interrupt',
        { hold: hold.id, id: failing.id, what: 'power', began: failing.from, ended: hold.now },
        'The power is back.',
      );
    else
      void doAndSay(
        'hold.interrupt',
        { hold: hold.id, what: 'power', began: hold.now },
        'Power cut noted from now on. The looks go by the clock all the same.',
      );
  };
  return (
    <div className="row hold-acts">
      <button type="button" className="button" onClick={power}>
        {failing ? 'Power is back' : 'Power cut'}
      </button>
      {hold.others.length > 0 && (
        <button
          type="button"
          className="button"
          onClick={() =>
            void doAndSay(
              'hold.putIn',
              { hold: hold.id, jars: hold.others.map(({ id }) => id) },
              `Put in ${named(hold.others)}.`,
            )
          }
        >
          Put in {hold.others.map(({ letter }) => letter).join(', ')}
        </button>
      )}
      <button type="button" className="button" onClick={onMoving}>
        Move{letters || ' jars'}
      </button>
      <button
        type="button"
        className={(hold.minutesLeft ?? 1) <= 0 ? 'button primary' : 'button'}
        onClick={() =>
          void doAndSay(
            'hold.takeOut',
            { hold: hold.id, jars: chosen.size === 0 ? null : meant.map(({ id }) => id) },
            `Taken out: ${named(meant)}. Look and smell first, taste nothing yet.`,
          ).then(onDone)
        }
      >
        Take out{letters || ' now'}
      </button>
    </div>
  );
}

/** What was read: the sentence, how it was worked out, and the two ways to tell more. */
function Read({
  hold,
  open,
  onOpen,
}: {
  readonly hold: Hold;
  readonly open: 'reading' | 'file' | null;
  readonly onOpen: (form: 'reading' | 'file' | null) => void;
}) {
  const { warmth, planned, appliance } = hold;
  const head = [
    planned === null ? 'Warmth' : `Set to ${planned.typed ?? `${planned.value} °C`}`,
    appliance && `in ${appliance.name}`,
  ]
    .filter(Boolean)
    .join(', ');
  return (
    <section aria-label="What was read" className="stack">
      <div className="hold-read-head">
        <div>
          <h2>{head}</h2>
          <p className="soft">{warmth?.says ?? 'Nothing was read yet.'}</p>
        </div>
        <div className="row">
          <button
            type="button"
            className="button"
            aria-expanded={open === 'reading'}
            onClick={() => onOpen('reading')}
          >
            Type a reading
          </button>
          <button
            type="button"
            className="button"
            aria-expanded={open === 'file'}
            onClick={() => onOpen('file')}
          >
            Bring in a file
          </button>
        </div>
      </div>
      {open === 'reading' && <ReadingForm hold={hold} onDone={() => onOpen(null)} />}
      {open === 'file' && <BringInForm hold={hold} onDone={() => onOpen(null)} />}
      <HoldPlot hold={hold} />
      <FailedList hold={hold} />
      <WarmPlace hold={hold} />
      {warmth !== null && (
        <details>
          <summary>How this was worked out</summary>
          <ul className="bullets">
            {warmth.why.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** The hold. @param unasked it stands open beside the list, and whoever is at the list stays there */
export function HoldView({ hold, unasked = false }: { readonly hold: Hold; readonly unasked?: boolean }) {
  const [chosen, choose] = useState<ReadonlySet<string>>(new Set());
  const [moving, setMoving] = useState(false);
  const [open, setOpen] = useState<'reading' | 'file' | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!unasked) heading.current?.focus();
  }, [unasked]);
  const still = new Set(hold.jars.flatMap(({ id, inside }) => (inside ? [id] : [])));
  const meant = new Set([...chosen].filter((id) => still.has(id)));
  const toggle = (id: string): void => {
    const next = new Set(meant);
    if (!next.delete(id)) next.add(id);
    choose(next);
  };
  const running = hold.ended === null && still.size > 0;
  return (
    <article className="hold-view stack" aria-label={`The hold of ${hold.label}`}>
      <header className="hold-head">
        <h1 ref={heading} tabIndex={-1}>
          {hold.label}
        </h1>
        <div className="row">
          {hold.batches.map(({ id, label }) => (
            <button key={id} type="button" className="button quiet" onClick={() => go('batch', id)}>
              {hold.batches.length === 1 ? 'Its batch' : `Batch ${label}`}
            </button>
          ))}
        </div>
        {running && (
          <Acts
            hold={hold}
            chosen={meant}
            onMoving={() => setMoving(true)}
            onDone={() => choose(new Set())}
          />
        )}
      </header>
      {moving && (
        <MoveTo
          hold={hold}
          jars={meant.size === 0 ? [...still] : [...meant]}
          onDone={() => {
            setMoving(false);
            choose(new Set());
          }}
        />
      )}
      <div className="hold-time">
        <Tub jars={hold.jars} warm={running} chosen={meant} onChoose={toggle} />
        <div>
          <p className="hold-left">{hold.title}</p>
          <p className="hold-rest">{hold.rest}</p>
        </div>
      </div>
      {running && <LookRow hold={hold} />}
      <Read hold={hold} open={open} onOpen={setOpen} />
    </article>
  );
}
