// Questions about the file. Those that block come first: until they are answered nothing can come in.
import { useId } from 'react';
import { Pager, usePage } from './pager';
import type { Question } from './note-lists';
import { answer } from './notes-store';

const PAGE = 20;

function Words({ question }: { readonly question: Question }) {
  return (
    <>
      {/* An urgent one says its row itself. */}
      {question.row !== null && !question.urgent && (
        <span className="row-number">Row {question.row}</span>
      )}{' '}
      {question.sentence}
    </>
  );
}

function Asked({ question, chosen }: { readonly question: Question; readonly chosen: string | undefined }) {
  const id = useId();
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
          <Words question={question} />
        </p>
      </li>
    );
  }
  return (
    <li className={kind}>
      <fieldset>
        <legend>
          <Words question={question} />
        </legend>
        <div className="row">
          {question.choices.map((choice) => (
            <label key={choice.value} className="pick">
              <input
                type="radio"
                name={id}
                checked={chosen === choice.value}
                onChange={() => answer(question.id, choice.value)}
              />
              <span>{choice.label}</span>
            </label>
          ))}
        </div>
      </fieldset>
    </li>
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
      (one.row ?? 0) - (other.row ?? 0),
  );
  const page = usePage(sorted.length, PAGE);
  if (sorted.length === 0) return null;
  const blocking = sorted.some((question) => question.blocks && answers[question.id] === undefined);
  return (
    <section className="notes-part" aria-labelledby="questions-title">
      <h2 id="questions-title">{blocking ? 'One thing first' : 'Questions'}</h2>
      <p className="soft">
        {blocking
          ? 'This can be read in two ways. Your answer decides it for the whole file.'
          : 'The file comes in without an answer too; then this stays open.'}
      </p>
      <ul className="stack">
        {sorted.slice(page.from, page.to).map((question) => (
          <Asked key={question.id} question={question} chosen={answers[question.id]} />
        ))}
      </ul>
      <Pager page={page} what="questions" />
    </section>
  );
}
