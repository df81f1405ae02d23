// Questions about the file. Those that block come first: until they are answered nothing can come in.
import { useId } from 'react';
import { Pager, usePage } from './pager';
import { count, saidOfRows } from '../../core/says/sheet-says';
import { askedTogether, type AskedTogether, type Question } from './note-lists';
import { answer } from './notes-store';

const PAGE = 20;

/** More choices are one field. */
const MOST_BUTTONS = 6;

function Words({ question, rows }: AskedTogether) {
  return (
    <>
      {/* An urgent one says its row itself. */}
      {rows.length > 0 && !question.urgent && <span className="row-number">{saidOfRows(rows)}</span>}{' '}
      {question.sentence}
    </>
  );
}

/** One choice of a few, as buttons. */
function Buttons({ choices, chosen, choose }: Choosing) {
  const id = useId();
  return (
    <div className="row">
      {choices.map((choice) => (
        <label key={choice.value} className="pick">
          <input
            type="radio"
            name={id}
            checked={chosen === choice.value}
            onChange={() => choose(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </div>
  );
}

/** One choice of many, as a field. */
function Field({ choices, chosen, choose, about }: Choosing & { readonly about: string }) {
  return (
    <select
      className="input"
      aria-label={about}
      value={chosen ?? ''}
      onChange={(event) => {
        if (event.target.value !== '') choose(event.target.value);
      }}
    >
      {chosen === undefined && <option value="">choose</option>}
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}

interface Choosing {
  readonly choices: Question['choices'];
  readonly chosen: string | undefined;
  readonly choose: (value: string) => void;
}

function Asked({ asked, chosen }: { readonly asked: AskedTogether; readonly chosen: string | undefined }) {
  const { question, ids } = asked;
  const choosing = {
    choices: question.choices,
    chosen,
    choose: (value: string) => answer(ids, value),
  };
  const kind = question.urgent
    ? 'ask urgent'
    : question.blocks && chosen === undefined
      ? 'ask blocks'
      : 'ask';
  // Some questions are only for the keeper to think over: the answer is in correcting the jar, not here.
  if (question.choices.length === 0) {
    return (
      <li className={kind}>
        <p>
          <Words {...asked} />
        </p>
      </li>
    );
  }
  return (
    <li className={kind}>
      <fieldset>
        <legend>
          <Words {...asked} />
        </legend>
        {question.choices.length > MOST_BUTTONS ? (
          <Field {...choosing} about={question.sentence} />
        ) : (
          <Buttons {...choosing} />
        )}
      </fieldset>
    </li>
  );
}

/** The question that would bring in more rows than are in hand: its answer is what there is to press. */
export function LeadingQuestion({ leading }: { readonly leading: Question }) {
  const { id, sentence, choices, brings = 0 } = leading;
  return (
    <section className="ask blocks" aria-label="One answer first">
      <p>{sentence}</p>
      <p className="soft">{`Your answer can bring in ${count(brings, 'row')} that ${brings === 1 ? 'waits' : 'wait'} for it.`}</p>
      <div className="row">
        {choices.map(({ value, label }) => (
          <button key={value} className="button primary" type="button" onClick={() => answer(id, value)}>
            {label}
          </button>
        ))}
      </div>
    </section>
  );
}

/** All questions, those that block first, then newly told spoilage. */
export function Questions({
  questions,
  answers,
}: {
  readonly questions: readonly Question[];
  readonly answers: Readonly<Record<string, string>>;
}) {
  const sorted = questions.toSorted(
    (one, other) =>
      Number(other.blocks) - Number(one.blocks) ||
      Number(other.urgent ?? false) - Number(one.urgent ?? false) ||
      // What is only to be looked over comes last.
      Number(one.choices.length === 0) - Number(other.choices.length === 0) ||
      (one.row ?? 0) - (other.row ?? 0),
  );
  const together = askedTogether(sorted, answers);
  const page = usePage(together.length, PAGE);
  if (sorted.length === 0) return null;
  const blocking = sorted.filter((question) => question.blocks && answers[question.id] === undefined).length;
  return (
    <section className="notes-part" aria-labelledby="questions-title">
      <h2 id="questions-title">
        {blocking === 0 ? 'Questions' : blocking === 1 ? 'One thing first' : `${blocking} things first`}
      </h2>
      <p className="soft">
        {blocking === 0
          ? 'You can answer later.'
          : 'This can be read in more than one way. Your answer decides it for the whole file.'}
      </p>
      <ul className="stack">
        {together.slice(page.from, page.to).map((asked) => (
          <Asked key={asked.question.id} asked={asked} chosen={answers[asked.question.id]} />
        ))}
      </ul>
      <Pager page={page} what="questions" />
    </section>
  );
}
