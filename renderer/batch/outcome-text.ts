// An outcome as it stands in the fields, and what it comes to. Pure. The gate's rules are core/safety/gate.ts.
import { tellsOfBubbles } from '../../core/safety/take-out';
import type { SpoilagePassage } from '../../core/safety/remarks';
import type { DiscardSign, Outcome, SetWord } from '../../core/ledger/records';
import type { Read, Reader, Writer } from '../parts/reading';
import { lineOrNull, orNull, Taking, type Problems } from '../parts/taking';

type YesNo = '' | 'yes' | 'no';
export type OutcomeFields = Omit<Outcome, 'jar'>;

export interface OutcomeText {
  readonly earlyCheckHours: string;
  readonly earlySet: '' | 'loose' | 'starting' | 'set';
  readonly earlyPh: string;
  readonly earlySour: YesNo;
  readonly setAfterHours: string;
  readonly setByHours: string;
  readonly setAtTakeOut: YesNo;
  readonly sour: YesNo;
  readonly ph: string;
  readonly phHow: '' | 'meter' | 'strip';
  readonly phChecked: YesNo;
  readonly signs: readonly DiscardSign[];
  /** Looked and smelled, and none of the signs was there: not the same as nothing said. */
  readonly noneSeen: boolean;
  /** Foam is one of the signs; it stands here because it is asked about beside fine bubbles. */
  readonly bubbles: '' | 'none' | 'fine' | 'foam';
  readonly powerCut: YesNo;
  readonly powerCutHours: string;
  readonly spoiledSaid: boolean;
  /** The keeper was asked about words that may tell of spoilage, and said that they don't. */
  readonly wordsFine: boolean;
  readonly seenAt: '' | 'take-out' | 'after opening';
  readonly openedDays: string;
  readonly fibreDidThis: boolean;
  readonly setWord: '' | SetWord;
  readonly texture: string;
  readonly whey: '' | 'none' | 'a little' | 'some' | 'a lot';
  readonly tang: '' | 'none' | 'mild' | 'clear' | 'sharp';
  readonly smell: string;
  readonly colour: string;
  readonly note: string;
  readonly shelf: '' | 'kept' | 'gone';
}

const yesNo = (value: boolean | null): YesNo => (value === null ? '' : value ? 'yes' : 'no');
const fromYesNo = (value: YesNo): boolean | null => (value === '' ? null : value === 'yes');

/** The fields for a recorded outcome, or empty ones. */
export function outcomeText(
  outcome: OutcomeFields | null,
  onShelf: boolean | null,
  writer: Writer,
): OutcomeText {
  const number = (value: number | null | undefined): string =>
    value === null || value === undefined ? '' : writer.number(value);
  const texture = outcome?.texture ?? '';
  return {
    earlyCheckHours: number(outcome?.earlyCheckHours),
    earlySet: outcome?.earlySet ?? '',
    earlyPh: number(outcome?.earlyPh),
    earlySour: yesNo(outcome?.earlySour ?? null),
    setAfterHours: number(outcome?.setAfterHours),
    setByHours: number(outcome?.setByHours),
    setAtTakeOut: yesNo(outcome?.setAtTakeOut ?? null),
    sour: yesNo(outcome?.sour ?? null),
    ph: number(outcome?.ph),
    phHow: outcome?.phHow ?? '',
    phChecked: yesNo(outcome?.phChecked ?? null),
    signs: (outcome?.signs ?? []).filter((sign) => sign !== 'foam'),
    noneSeen:
      outcome !== null && outcome.signs.length === 0 && outcome.seenAt !== null && !outcome.spoiledSaid,
    bubbles: outcome?.signs.includes('foam')
      ? 'foam'
      : (outcome?.bubbles ?? (tellsOfBubbles(texture) ? 'fine' : '')),
    powerCut: yesNo(outcome?.powerCut ?? null),
    powerCutHours: number(outcome?.powerCutHours),
    spoiledSaid: outcome?.spoiledSaid ?? false,
    wordsFine: false,
    seenAt: outcome?.seenAt ?? '',
    openedDays: number(outcome?.openedDays),
    fibreDidThis: outcome?.fibreDidThis ?? false,
    setWord: outcome?.setWord ?? '',
    texture,
    whey: outcome?.whey ?? '',
    tang: outcome?.tang ?? '',
    smell: outcome?.smell ?? '',
    colour: outcome?.colour ?? '',
    note: outcome?.note ?? '',
    shelf: onShelf === null ? '' : onShelf ? 'kept' : 'gone',
  };
}

/** Zero hours and zero days are real here: an opened jar seen on its first day. */
function zeroOr(text: string, read: Read<number>): Read<number> {
  return /^\s*0+\s*(?:h|d|days?|hours?)?\s*$/i.test(text) ? { ok: true, value: 0, echo: null } : read;
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
  const setAfterHours = taking.take(
    'setAfterHours',
    zeroOr(text.setAfterHours, reader.hours(text.setAfterHours)),
  );
  const setByHours = taking.take('setByHours', reader.hours(text.setByHours));
  if (setAfterHours !== null && setByHours !== null && setAfterHours > setByHours)
    taking.say('setByHours', 'The second time must come after the first. Please correct one of them.');
  const ph = taking.take('ph', reader.ph(text.ph));
  const openedDays =
    text.seenAt === 'after opening'
      ? taking.take('openedDays', zeroOr(text.openedDays, reader.whole(text.openedDays, 365)))
      : null;
  const signs = signsOf(text);
  const seen = signs.length > 0 || text.noneSeen || text.spoiledSaid;
  const outcome: OutcomeFields = {
    earlyCheckHours: taking.take('earlyCheckHours', reader.hours(text.earlyCheckHours)),
    earlySet: orNull(text.earlySet),
    earlyPh: taking.take('earlyPh', reader.ph(text.earlyPh)),
    earlySour: fromYesNo(text.earlySour),
    setAfterHours,
    setByHours,
    setAtTakeOut: fromYesNo(text.setAtTakeOut),
    sour: fromYesNo(text.sour),
    setWord: orNull(text.setWord),
    texture: lineOrNull(text.texture),
    whey: orNull(text.whey),
    tang: orNull(text.tang),
    smell: lineOrNull(text.smell),
    colour: lineOrNull(text.colour),
    ph,
    phHow: ph === null ? null : orNull(text.phHow),
    ...(ph !== null && text.phHow === 'meter' ? { phChecked: fromYesNo(text.phChecked) } : {}),
    signs,
    bubbles: text.bubbles === 'none' || text.bubbles === 'fine' ? text.bubbles : null,
    powerCut: fromYesNo(text.powerCut),
    powerCutHours:
      text.powerCut === 'yes' ? taking.take('powerCutHours', reader.hours(text.powerCutHours)) : null,
    spoiledSaid: text.spoiledSaid,
    seenAt: orNull(text.seenAt) ?? (seen ? 'take-out' : null),
    openedDays,
    fibreDidThis: text.fibreDidThis,
    note: lineOrNull(text.note),
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
