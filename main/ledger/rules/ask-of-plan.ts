// The rule book asked about the plan of an import, before anything is written: a row that can't be stays aside as a
// problem, a word that is missing becomes a question.
import type { RowRefused } from '../../../core/notes/notes-plan';
import { saidSo } from '../../../core/notes/plan/impossible';
import { stoppingRemark } from '../../../core/notes/plan/remarks-of-plan';
import type { NotesInput, PlannedChange, PlannedJar } from '../../../core/notes/notes-plan';
import { dayBegan } from '../../../core/ledger/stored-moments';
import { BOOK, brokenInvariants, missingConsents } from '../../../core/rules/book';
import type { Circumstances } from '../../../core/rules/consents';
import type { Facts } from '../../../core/rules/asked-facts';
import { factsOfPlan, type PlanFacts } from '../../../core/rules/plan-facts';
import type { Broken } from '../../../core/rules/rule';
import { refusalSentence } from '../../../core/sentences';
import type { AskedLedger } from './asked-ledger';
import { labelIn } from './ask';
import { SafetyNow, setAsideBy, stoppingWords, toldByFile, toldOn } from './known';
import { loadFacts } from './load';

export interface NotesRules {
  readonly refuse: NonNullable<NotesInput['refuse']>;
  /** What the keeper said was so all the same, in words; null where nothing was. */
  readonly word: () => string | null;
}

/**
 * @param file what makes it the same file
 * @param answers what the keeper answered so far
 */
export function rulesForNotes(ledger: AskedLedger, file: string, answers: NotesInput['answers']): NotesRules {
  const words = new Map<number, string>();
  const base = new Base(ledger, answers);
  const refuse = (jars: readonly PlannedJar[], changes: readonly PlannedChange[]): RowRefused[] => {
    const plan = base.under(jars, changes);
    const found = new Map<string, RowRefused>();
    const take = (broken: Broken, asks: boolean): void => {
      const row = broken.jar === null ? undefined : plan.rowOf.get(broken.jar);
      if (!row || found.has(row.id)) return;
      const sentence = refusalSentence(broken);
      if (asks && saidSo(row.line, answers)) words.set(row.line, sentence);
      else found.set(row.id, { id: row.id, sentence, asks });
    };
    const { look } = ledger.rows;
    for (const broken of brokenInvariants(plan.facts, BOOK, look)) take(broken, false);
    const known = knownOf(ledger, file, plan);
    for (const missing of missingConsents(plan.facts, plan.fresh, known, BOOK, look)) take(missing, true);
    return [...found.values()];
  };
  const word = (): string | null =>
    words.size === 0
      ? null
      : [...words].map(([line, sentence]) => `Row ${line}, said to be so: ${sentence}`).join('\n').slice(0, 10_000); // prettier-ignore
  return { refuse, word };
}

/** The ledger's jars that a plan names, read once for as long as no other one is named. */
class Base {
  readonly #ledger: AskedLedger;
  readonly #answers: NotesInput['answers'];
  readonly #keys = new Map<string, number>();
  #facts: Facts | null = null;

  constructor(ledger: AskedLedger, answers: NotesInput['answers']) {
    this.#ledger = ledger;
    this.#answers = answers;
  }

  #keyOf = (uid: string): number => {
    const known = this.#keys.get(uid);
    if (known !== undefined) return known;
    const key = this.#ledger.rows.keyOf('jar', uid);
    this.#keys.set(uid, key);
    this.#facts = null;
    return key;
  };

  /** A plan laid over them. */
  under(jars: readonly PlannedJar[], changes: readonly PlannedChange[]): PlanFacts {
    const { rows } = this.#ledger;
    for (const { uid } of changes) this.#keyOf(uid);
    for (const { seedings } of [...jars, ...changes.map(({ planned }) => planned)])
      for (const { fromUid } of seedings) if (fromUid !== null) this.#keyOf(fromUid);
    const touched = { jars: new Set(this.#keys.values()), holds: [], packages: [] };
    const label = labelIn(this.#ledger);
    this.#facts ??= loadFacts(
      rows,
      touched,
      label,
      {},
      new Set(changes.flatMap(({ planned }) => planned.madeOn ?? [])),
    );
    const plan = factsOfPlan(this.#facts, { jars, changes }, {
      keyOf: this.#keyOf,
      look: rows.look,
      stoppingWords: (planned) => stoppingRemark(planned, this.#answers),
      isSummed: (jar) => [null, 'milk plus seed'].includes(rows.get('jar', jar).finalVolumeKnown),
    }); // prettier-ignore
    const facts = {
      ...plan.facts,
      label: (jar: Parameters<typeof label>[0]) => plan.rowOf.get(jar.key)?.label ?? label(jar),
    };
    return { ...plan, facts };
  }
}

/** What is known of the seeds of a plan. What is told only now is known since today. */
function knownOf(ledger: AskedLedger, file: string, { discarded }: PlanFacts): Circumstances {
  const { rows, clock } = ledger;
  const today = clock.today();
  const safety = new SafetyNow(ledger, null);
  const isDiscarded = (jar: number): boolean => jar > 0 && safety.discard(jar, null) !== null;
  return {
    today,
    now: clock.milliseconds(),
    dayBegan: (day) => dayBegan(day, clock.now()),
    why: null,
    sameLabelMeant: null,
    undone: false,
    fromNotes: true,
    namesakes: [],
    stood: () => false,
    discard: (jar, partedOn) =>
      (jar > 0 ? safety.discard(jar, partedOn) : null) ?? discarded.get(jar)?.discard ?? null,
    stoppingWords: (jar) => (jar > 0 ? stoppingWords(rows, jar) : (discarded.get(jar)?.words ?? null)),
    discardKnown: (jar) => (isDiscarded(jar) ? (toldOn(rows, jar) ?? today) : today),
    toldHere: (jar) => !isDiscarded(jar) || toldByFile(rows, jar, file),
    setAsideBy: (jar) => (jar > 0 ? setAsideBy(ledger, jar, (of) => !toldByFile(rows, of, file)) : null),
    stopped: (jar, partedOn) => (jar > 0 ? safety.stopped(jar, partedOn) : null),
  };
}
