// What is typed of several jars that are looked at together: one answer at the gate for all, then a cell for each. Pure.
import type { BatchReply, Input } from '../../core/contract';
import type { Outcome } from '../../core/ledger/records';
import { spoilagePassages, type SpoilagePassage } from '../../core/safety/remarks';
import { takeOutGate, type GateVerdict } from '../../core/safety/take-out';
import { SET_WORDS, TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { Taking, type Problems } from '../parts/taking';
import type { Read, Reader, Writer } from '../parts/reading';
import {
  outcomeText,
  passagesAnswered,
  readOutcome,
  type OutcomeFields,
  type OutcomeText,
} from './outcome-text';

/** The cells of one jar, as typed. */
export interface SeenText {
  readonly set: string;
  readonly ph: string;
  readonly whey: string;
  readonly smell: string;
  readonly tang: string;
  readonly note: string;
  /** Answered by itself, on a form of its own: nothing of it is recorded here. */
  readonly different: boolean;
  /** What was answered when its words seemed to tell of spoilage; asked anew once they change. */
  readonly answer: { readonly spoiled: true } | { readonly what: string } | null;
}
export interface OutcomesText {
  /** Sour and clean, curd holds, nothing seen, no power cut: said of all that don't differ. */
  readonly allWell: boolean;
  readonly phHow: Outcome['phHow'] | '';
  readonly phChecked: '' | 'yes' | 'no';
  /** By the id of the jar. */
  readonly jars: Readonly<Record<string, SeenText>>;
}

const nothingSeen: SeenText = {
  set: '',
  ph: '',
  whey: '',
  smell: '',
  tang: '',
  note: '',
  different: false,
  answer: null,
};
export const seenOf = (text: OutcomesText, jar: string): SeenText => text.jars[jar] ?? nothingSeen;
export const nothingTyped: OutcomesText = { allWell: false, phHow: '', phChecked: '', jars: {} };

/** A pH lies between 2 and 9, so that "43" can only be 4.3: two presses are enough. */
export const phTyped = (typed: string): string => typed.replace(/^([2-9])(\d{1,2})$/, '$1.$2');
/** "p" is spoonable, which begins as soft does. */
export const setTyped = (typed: string): string => (/^p$/i.test(typed.trim()) ? 'spoonable' : typed);

/** One of a few words, whatever its case. */
function word<const T extends string>(typed: string, words: readonly T[]): Read<T> {
  const text = typed.trim().toLowerCase();
  if (text === '') return { ok: true, value: null, echo: null };
  const value = words.find((one) => one === text);
  return value === undefined
    ? { ok: false, sentence: `Type one of: ${words.join(', ')}.` }
    : { ok: true, value, echo: null };
}

interface SeenRead {
  readonly outcome: OutcomeFields;
  readonly gate: GateVerdict;
  /** Words that may tell of spoilage and are not answered. */
  readonly asks: readonly SpoilagePassage[];
  readonly readAs: 'fine' | null;
}

/** What the cells of one jar come to. @param additions names of what was stirred in */
export function readSeen(
  text: OutcomesText,
  jar: string,
  additions: readonly string[],
  reader: Reader,
  writer: Writer,
  taking: Taking,
): SeenRead {
  const seen = seenOf(text, jar);
  const well = text.allWell ? 'yes' : '';
  const take = <T>(field: string, read: Read<T>): T | null => taking.take(`${jar}.${field}`, read);
  const cells = {
    setWord: take('set', word(seen.set, SET_WORDS)) ?? '',
    whey: take('whey', word(seen.whey, WHEYS)) ?? '',
    tang: take('tang', word(seen.tang, TANGS)) ?? '',
  } as const;
  take('ph', reader.ph(seen.ph));
  const typed: OutcomeText = {
    ...outcomeText(null, null, writer),
    setAtTakeOut: well,
    sour: well,
    noneSeen: text.allWell,
    powerCut: text.allWell ? 'no' : '',
    ...cells,
    ph: seen.ph,
    phHow: text.phHow ?? '',
    phChecked: text.phChecked,
    smell: seen.smell,
    note: seen.note,
  };
  const passages = spoilagePassages(readOutcome(typed, reader).outcome);
  const answered = seen.answer === null ? typed : passagesAnswered(typed, passages, seen.answer);
  const { outcome, looked } = readOutcome(answered, reader);
  return {
    outcome,
    gate: takeOutGate(outcome, looked, additions),
    asks: seen.answer === null ? passages : [],
    readAs: answered.wordsFine ? 'fine' : null,
  };
}

type Jar = BatchReply['jars'][number];
type ManyOutcomes = Extract<Input<'outcome.save'>, { outcomes: unknown }>['outcomes'];

/** Everything that is recorded of the jars that don't differ, and what is wrong, by jar and field: 'ID.ph'. */
export function readOutcomes(
  text: OutcomesText,
  jars: readonly Jar[],
  reader: Reader,
  writer: Writer,
): {
  readonly outcomes: ManyOutcomes;
  readonly problems: Problems;
  /** The first jar whose words may tell of spoilage, unanswered. */
  readonly odd: { readonly jar: string; readonly asks: readonly SpoilagePassage[] } | null;
} {
  const taking = new Taking();
  const read = jars
    .filter(({ jar }) => !seenOf(text, jar.id).different)
    .map(({ jar, additions }) => ({
      jar: jar.id,
      ...readSeen(text, jar.id, additions.map(({ name }) => name), reader, writer, taking),
    })); // prettier-ignore
  const odd = read.find(({ asks }) => asks.length > 0);
  const outcomes = read.map(({ jar, outcome, readAs }) => ({ jar, outcome, onShelf: null, readAs }));
  return { outcomes, problems: taking.problems, odd: odd ? { jar: odd.jar, asks: odd.asks } : null };
}
