// How the keeper reads remarks: the one thing that makes them facts.
import type { Parsed, Reply } from '../../../core/contract';
import type { Ledger } from '../ledger';
import { tidy } from '../tidy-typed';

/** @throws Refused 'not found', 'nothing changed' */
export function answerRemarks(ledger: Ledger, input: Parsed<'remarks.answer'>): Reply<'remarks.answer'> {
  const { rows } = ledger;
  const answers = new Map(input.answers.map(({ id, readAs }) => [rows.keyOf('remark', id), readAs]));
  const subject = answers.size === 1 ? 'a remark' : `${answers.size} remarks`;
  const done = ledger.acts.mustRun('remarks.answer', subject, tidy(input.why), (act) => {
    for (const [key, readAs] of answers) act.update('remark', key, { readAs });
  });
  return { act: done.act.uid, answered: answers.size };
}
