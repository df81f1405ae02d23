// The cautions on a jar: how it is touched, and a way to lift one with a written reason.
import { useEffect, useId, useRef, useState } from 'react';
import type { Reply } from '../../core/contract';
import { becauseSentence, cautionWordsNaming, ENDED, HOW_IT_ENDS } from '../../core/says/safety-says';
import { call } from '../state/ledger-calls';
import { say, sentenceCase } from '../state/store';
import { useRead } from '../state/use-read';
import { Linked } from './linked';

export type Caution = Reply<'jar.get'>['cautions'][number];

/** What a keeper does about a caution that stands. */
const whatToDo = (level: Caution['level']): string =>
  level === 'set aside'
    ? 'Nobody eats it, and nothing is seeded from it, unless you can write down why it is all right to use. When in doubt, discard it.'
    : 'Look at it and smell it before anyone tastes it. When in doubt, discard it.';

/** Says that a jar was opened, and nothing seen: what ends a caution, in two generations. */
function SeenClean({ jar }: { readonly jar: string }) {
  const tell = async (): Promise<void> => {
    const answer = await call('shelf.open', { id: jar, looked: true });
    if (answer.ok) say(answer.value.says);
    else say(answer.sentence, 'caution');
  };
  return (
    <button className="button" type="button" onClick={() => void tell()}>
      Opened: looked, smelled, nothing seen
    </button>
  );
}

/** Other jars with a caution because of the same one: the reason may hold for as many of them as the keeper marks. */
function AlsoLifted({
  of,
  name,
  but,
  chosen,
  onChoose,
}: {
  readonly of: string;
  /** What that jar is called. */
  readonly name: string;
  readonly but: string;
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (chosen: ReadonlySet<string>) => void;
}) {
  const answer = useRead('caution.list', { of });
  const others = answer?.ok === true ? answer.value.jars.filter(({ id }) => id !== but) : [];
  if (others.length === 0) return null;
  const all = others.every(({ id }) => chosen.has(id));
  return (
    <fieldset className="stack lift-others">
      <legend className="label">
        Other jars with a caution because of {name}: does the same reason hold for them?
      </legend>
      {others.length > 1 && (
        <div>
          <button
            className="button quiet"
            type="button"
            onClick={() => onChoose(all ? new Set() : new Set(others.map(({ id }) => id)))}
          >
            {all ? 'Mark none' : 'Mark all'}
          </button>
        </div>
      )}
      {others.map(({ id, label, how }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={chosen.has(id)}
            onChange={({ target }) =>
              onChoose(new Set(target.checked ? [...chosen, id] : [...chosen].filter((one) => one !== id)))
            }
          />
          <span>
            {label}: {how}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

interface LiftProps {
  readonly jar: string;
  readonly of: string;
  readonly label: string;
  /** The mate at which it is lifted for all that descends from it; null: on this jar, and on others that are marked. */
  readonly line: string | null;
  /** Jars of which it is said beside this one: marked from the beginning. */
  readonly others: readonly string[];
  /** Another place of the screen asks for the form: to be called once it is open. */
  readonly asked: (() => void) | null;
}

function Lift({ jar, of, label, line, others, asked }: LiftProps) {
  const [open, setOpen] = useState(asked !== null);
  const [heard, hear] = useState(() => asked);
  if (asked !== heard) {
    hear(() => asked);
    if (asked !== null) setOpen(true);
  }
  useEffect(() => asked?.(), [asked]);
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [sending, setSending] = useState(false);
  const [also, setAlso] = useState<ReadonlySet<string>>(new Set(others));
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const opened = useRef(false);
  useEffect(() => {
    if (open) field.current?.focus();
    else if (opened.current) opener.current?.focus();
    opened.current = open;
  }, [open]);
  const lift = async (): Promise<void> => {
    if (reason.trim().length < 3) {
      setProblem('Write a few words on why this jar is all right to use.');
      return;
    }
    setSending(true);
    const answer = await call('caution.clear', { jars: [jar, ...also], of, reason: reason.trim() });
    setSending(false);
    if (answer.ok) {
      // The form goes away with the caution: the keyboard goes to the jar's name above.
      document.getElementById('pane-title')?.focus();
      say(
        also.size === 0
          ? `The caution because of ${label} is lifted${line === null ? '' : ` on ${line} and what descends from it`}, with your reason kept.`
          : `The caution because of ${label} is lifted on ${also.size + 1} jars, with your reason kept.`,
      );
    } else setProblem(answer.sentence);
  };
  if (!open)
    return (
      <button ref={opener} className="button" type="button" onClick={() => setOpen(true)}>
        {line === null ? 'Lift with a reason' : 'Lift for the whole line'}
      </button>
    );
  return (
    <form
      className="stack lift"
      onSubmit={(event) => {
        event.preventDefault();
        void lift();
      }}
    >
      <div>
        <label className="label" htmlFor={id}>
          {line === null
            ? 'Why is it all right to use?'
            : `Why is ${line}, and what descends from it, all right to use?`}
        </label>
        <textarea
          ref={field}
          className="input"
          id={id}
          rows={3}
          value={reason}
          aria-invalid={problem !== null}
          aria-describedby={problem === null ? undefined : `${id}-problem`}
          onChange={(event) => setReason(event.target.value)}
        />
        {problem !== null && (
          <p className="small" id={`${id}-problem`} role="alert">
            {problem}
          </p>
        )}
      </div>
      {line === null && <AlsoLifted of={of} name={label} but={jar} chosen={also} onChoose={setAlso} />}
      <p className="small">
        Lifting says nothing about whether the jar is safe. If in doubt, discard it; your local food-safety
        authority’s advice comes first.
      </p>
      <div className="row">
        <button className="button" type="button" onClick={() => setOpen(false)}>
          Keep the caution
        </button>
        <button className="button" type="submit" disabled={sending}>
          Lift it
        </button>
      </div>
    </form>
  );
}

interface CautionsProps {
  readonly jar: string;
  readonly cautions: readonly Caution[];
  /** Where it is said of several jars at once: "a, b", and the others. A reason holds for all that stay marked. */
  readonly together?: { readonly letters: string; readonly others: readonly string[] };
  /** The form to lift the first of them was asked for elsewhere on the screen: to be called once it is open. */
  readonly asked?: (() => void) | null;
}

const ALONE: readonly string[] = [];

export function Cautions({ jar, cautions, together, asked = null }: CautionsProps) {
  const first = cautions.find(({ cleared, of }) => !cleared && of !== jar);
  return (
    <>
      {cautions.map((caution) =>
        caution.cleared ? (
          <div className="notice" key={caution.of}>
            <p>
              {caution.ended && caution.reason === null ? 'Ended' : 'Lifted'}:{' '}
              {cautionWordsNaming(caution, caution.label)}
              {caution.relation !== 'seeded by it' && `, because of ${caution.label}`}.
            </p>
            {caution.ended && caution.reason === null && <p className="soft">{ENDED}</p>}
            {caution.reason !== null && <p className="soft">“{caution.reason}”</p>}
          </div>
        ) : (
          // What is only to be looked at is not dressed in the colour of spoilage.
          <div className={`notice${caution.level === 'look' ? '' : ' caution'} stack`} key={caution.of}>
            <div>
              <p>
                <strong>
                  {together === undefined ? '' : `${together.letters}: `}
                  {sentenceCase(cautionWordsNaming(caution, caution.label))}
                </strong>
              </p>
              {caution.of === jar ? (
                <p>Discard the whole jar. Do not taste it, and do not seed from it.</p>
              ) : (
                <p>
                  <Linked
                    text={`${becauseSentence(caution)} `}
                    jars={[
                      { jar: caution.of, label: caution.label },
                      ...(caution.via ? [{ jar: caution.via.id, label: caution.via.label }] : []),
                    ]}
                  />
                  {whatToDo(caution.level)}
                </p>
              )}
              {caution.mayEnd && <p className="soft">{HOW_IT_ENDS}</p>}
              {caution.liftedBefore !== null && (
                <p>
                  It was lifted before. More is known of {caution.label} since then, so that no longer counts.
                  The words were: “{caution.liftedBefore}”
                </p>
              )}
            </div>
            {caution.of !== jar && (
              <div className="row">
                {caution.mayEnd && caution.level === 'look' && together === undefined && (
                  <SeenClean jar={jar} />
                )}
                {caution.via && (
                  <Lift
                    jar={caution.via.id}
                    of={caution.of}
                    label={caution.label}
                    line={caution.via.label}
                    others={ALONE}
                    asked={null}
                  />
                )}
                <Lift
                  jar={jar}
                  of={caution.of}
                  label={caution.label}
                  line={null}
                  others={together?.others ?? ALONE}
                  asked={caution === first ? asked : null}
                />
              </div>
            )}
          </div>
        ),
      )}
    </>
  );
}
