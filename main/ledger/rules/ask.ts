// Where the rule book is asked: in the transaction of every act, before it is kept.
import { BOOK, brokenInvariants, missingConsents } from '../../../core/rules/book';
import { type JarFact, labelParts } from '../../../core/rules/asked-facts';
import type { Broken } from '../../../core/rules/rule';
import type { ActKind } from '../../../core/ledger/act-words';
import type { AskedLedger } from './asked-ledger';
import { Refused } from '../../refusal';
import { freshIn } from './fresh';
import { circumstances, type Word } from './known';
import { loadFacts, type Pending, touchedBy } from './load';

/** An act that is still open, as the rules need to know it. */
export interface Asked extends Word {
  readonly act: number;
  readonly kind: ActKind;
}

const refuse = ({ code, params }: Broken): never => {
  throw new Refused(code, params);
};

/** What a jar is called once the act is kept. */
export const labelIn =
  (ledger: AskedLedger) =>
  (jar: JarFact): string =>
    ledger.labelFor(labelParts(jar));

/**
 * Asks about all that an act touched. Of an import only invariants are asked: for consents its plan was
 * asked first. So of a merge: the word was given where the facts were made.
 * @throws Refused with the first rule of the book that is broken, or the first word that is missing
 */
export function askRules(ledger: AskedLedger, { act, kind, ...word }: Asked, book = BOOK): void {
  const { rows } = ledger;
  const facts = loadFacts(rows, touchedBy(rows, act), labelIn(ledger));
  for (const broken of brokenInvariants(facts, book, rows.look)) refuse(broken);
  if (kind === 'notes.bringIn' || kind === 'ledger.merge') return;
  const undone = kind === 'act.undo' || kind === 'act.redo';
  const fresh = freshIn(rows, act, undone);
  const known = circumstances(ledger, act, facts, fresh, word, undone);
  for (const missing of missingConsents(facts, fresh, known, book)) refuse(missing);
}

/**
 * Says which rule a row would break that the tables have not taken: their own rules hold whoever writes, and know no
 * sentence.
 * @throws Refused; returns where no rule of the book says so
 */
export function explain(ledger: AskedLedger, act: number, pending: Pending): void {
  const { rows } = ledger;
  const facts = loadFacts(rows, touchedBy(rows, act), labelIn(ledger), pending);
  for (const broken of brokenInvariants(facts)) refuse(broken);
}
