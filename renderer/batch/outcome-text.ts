// An outcome as it stands in the fields, and what it comes to. Pure. The gate's rules are core/safety/gate.ts.
import { tellsOfBubbles } from '../../core/safety/take-out';
import type { SpoilagePassage } from '../../core/safety/remarks';
import { OUTCOME_FIELDS, type OutcomeFieldName, type TextOf } from '../../core/ledger/jar-fields';
import type { DiscardSign, Outcome } from '../../core/ledger/records';
import { readField, writeField } from '../parts/field-text';
import type { Reader, Writer } from '../parts/reading';
import { Taking, type Problems } from '../parts/taking';

export type OutcomeFields = Omit<Outcome, 'jar'>;

type Texts = { readonly [F in OutcomeFieldName]: TextOf<(typeof OUTCOME_FIELDS)[F]['kind']> };
type Values = { readonly [F in OutcomeFieldName]: Exclude<OutcomeFields[F], undefined> };
const NAMES = Object.keys(OUTCOME_FIELDS) as readonly OutcomeFieldName[];

/** The fields of the table as text, and what is ticked or answered beside them. */
export interface OutcomeText extends Texts {
  readonly signs: readonly DiscardSign[];
  /** Looked and smelled, and none of the signs was there: not the same as nothing said. */
  readonly noneSeen: boolean;
  /** Foam is one of the signs; it stands here because it is asked about beside fine bubbles. */
  readonly bubbles: '' | 'none' | 'fine' | 'foam';
  readonly spoiledSaid: boolean;
  /** The keeper was asked about words that may tell of spoilage, and said that they don't. */
  readonly wordsFine: boolean;
  readonly fibreDidThis: boolean;
  readonly shelf: '' | 'kept' | 'gone';
}

/** The fields for a recorded outcome, or empty ones. */
export function outcomeText(
  outcome: OutcomeFields | null,
  onShelf: boolean | null,
  writer: Writer,
): OutcomeText {
  const texts = Object.fromEntries(
    NAMES.map((field) => [field, writeField(OUTCOME_FIELDS[field].kind, outcome?.[field], writer)]),
  ) as unknown as Texts;
  return {
    ...texts,
    signs: (outcome?.signs ?? []).filter((sign) => sign !== 'foam'),
    noneSeen:
      outcome !== null && outcome.signs.length === 0 && outcome.seenAt !== null && !outcome.spoiledSaid,
    bubbles: outcome?.signs.includes('foam')
      ? 'foam'
      : (outcome?.bubbles ?? (tellsOfBubbles(texts.texture) ? 'fine' : '')),
    spoiledSaid: outcome?.spoiledSaid ?? false,
    wordsFine: false,
    fibreDidThis: outcome?.fibreDidThis ?? false,
    shelf: onShelf === null ? '' : onShelf ? 'kept' : 'gone',
  };
}

/** The signs that are ticked, and foam where that is said of the bubbles. */
export const signsOf = (text: OutcomeText): DiscardSign[] => [
  ...text.signs.filter((sign) => sign !== 'foam'),
  ...(text.bubbles === 'foam' ? (['foam'] as const) : []),
];

/** Reads an outcome. `outcome` holds what could be read even where a field is wrong: the gate looks at it while typing. */
export function readOutcome(
  text: OutcomeText,
  reader: Reader,
): { readonly outcome: OutcomeFields; readonly looked: boolean; readonly problems: Problems } {
  const taking = new Taking();
  /** A question that is not asked is not answered either. */
  const asked = (field: OutcomeFieldName): boolean =>
    field === 'powerCutHours'
      ? text.powerCut === 'yes'
      : field !== 'openedDays' || text.seenAt === 'after opening';
  const values = Object.fromEntries(
    NAMES.map((field) => [
      field,
      asked(field) ? taking.take(field, readField(OUTCOME_FIELDS[field].kind, text[field], reader)) : null,
    ]),
  ) as unknown as Values;
  const { setAfterHours, setByHours, phChecked, ...rest } = values;
  if (setAfterHours !== null && setByHours !== null && setAfterHours > setByHours)
    taking.say('setByHours', 'The second time must come after the first. Please correct one of them.');
  const signs = signsOf(text);
  const seen = signs.length > 0 || text.noneSeen || text.spoiledSaid;
  const outcome: OutcomeFields = {
    ...rest,
    setAfterHours,
    setByHours,
    phHow: rest.ph === null ? null : rest.phHow,
    ...(rest.ph !== null && rest.phHow === 'meter' ? { phChecked } : {}),
    signs,
    bubbles: text.bubbles === 'none' || text.bubbles === 'fine' ? text.bubbles : null,
    spoiledSaid: text.spoiledSaid,
    seenAt: rest.seenAt ?? (seen ? 'take-out' : null),
    fibreDidThis: text.fibreDidThis,
  };
  return { outcome, looked: seen, problems: taking.problems };
}

/**
 * The fields once it is answered whether words in them tell of spoilage: the signs they name are ticked, or, where they
 * name none, the jar is called spoiled; or they are read as fine, and the note keeps what it is instead.
 */
export function passagesAnswered(
  text: OutcomeText,
  passages: readonly SpoilagePassage[],
  answer: { readonly spoiled: true } | { readonly what: string },
): OutcomeText {
  if ('what' in answer) {
    const what = answer.what.trim().replace(/\s+/g, ' ');
    return { ...text, note: [text.note.trim(), what].filter(Boolean).join('\n'), wordsFine: true };
  }
  const named = new Set([...signsOf(text), ...passages.flatMap(({ signs }) => signs)]);
  return {
    ...text,
    signs: [...named].filter((sign) => sign !== 'foam'),
    bubbles: named.has('foam') ? 'foam' : text.bubbles,
    spoiledSaid: text.spoiledSaid || named.size === 0,
    noneSeen: false,
  };
}

/** What is said where the take-out and the chill contradict each other: the jar then counts as not set. */
export function contradiction(text: OutcomeText): string | null {
  if (text.setAtTakeOut !== 'no' || !['spoonable', 'firm', 'very firm'].includes(text.setWord)) return null;
  return `You say that it was not set at the end of the hold, and that it is ${text.setWord}. Whatever set later, the jar counts as not set at the end of the hold. If that is not so, correct one of the two.`;
}

/** Whether anything was said at all: an outcome with nothing in it is not recorded. */
export function saysAnything(outcome: OutcomeFields): boolean {
  return Object.values(outcome).some((value) =>
    Array.isArray(value) ? value.length > 0 : value !== null && value !== false,
  );
}

/** Whether something beyond the gate is filled in, so that it must be shown even while the gate is open. */
export function hasTasting(text: OutcomeText): boolean {
  return [text.setWord, text.texture, text.whey, text.tang, text.setAfterHours, text.setByHours].some(
    (value) => value.trim() !== '',
  );
}
