// What safety reads of one jar: every look at it, each with its moment, its pH values and its signs. Plain data; a form's
// outcome and the rows of the ledger come to the same.
import { DISCARD_SIGNS, type DiscardSign, type Outcome, type SetWord } from '../ledger/records';
import type { SIGN_ANSWERS, SignKind, STAGES } from '../ledger/facts/seen-facts';
import type { Measured } from '../shapes/safety-codes';

/** One look at a jar. */
export interface Look {
  readonly stage: (typeof STAGES)[number];
  /** YYYY-MM-DD, where it is known. */
  readonly day: string | null;
  /** Hours by the clock since the jar came into warmth: power cuts stop no clock. */
  readonly hoursIn: number | null;
  readonly daysOpen: number | null;
  readonly looked: boolean | null;
  readonly setState: 'loose' | 'starting' | 'set' | 'not set' | null;
  readonly setWord: SetWord | null;
  readonly sour: boolean | null;
  readonly acidity: readonly Measured[];
  readonly signs: readonly {
    readonly kind: SignKind;
    readonly answer: (typeof SIGN_ANSWERS)[number] | null;
  }[];
}

export interface SeenOfJar {
  readonly looks: readonly Look[];
  /** Names of what was stirred in. */
  readonly additions: readonly string[];
  /** The day it was opened, where that is known. */
  readonly openedOn: string | null;
}

const NOTHING: Omit<Look, 'stage'> = {
  day: null, hoursIn: null, daysOpen: null, looked: null, setState: null, setWord: null, sour: null, acidity: [], signs: [],
}; // prettier-ignore

/** What of an outcome says something of safety. */
export type Shown = Pick<
  Outcome,
  | 'earlyCheckHours' | 'earlySet' | 'earlyPh' | 'earlySour' | 'setAtTakeOut' | 'setWord' | 'sour' | 'ph' | 'phHow' | 'phChecked'
  | 'spoiledSaid' | 'seenAt' | 'openedDays'
> & { readonly signs: readonly DiscardSign[] }; // prettier-ignore

/** The looks that a form's outcome tells of. */
export function looksOf(outcome: Shown): Look[] {
  const signs = [
    ...outcome.signs.map((kind) => ({ kind, answer: 'seen' as const })),
    ...(outcome.spoiledSaid ? [{ kind: 'said spoiled' as const, answer: 'seen' as const }] : []),
  ];
  const opened = outcome.seenAt === 'after opening';
  const { ph, phHow, phChecked = null, setAtTakeOut, earlyPh } = outcome;
  return [
    {
      ...NOTHING,
      stage: 'early',
      hoursIn: outcome.earlyCheckHours,
      setState: outcome.earlySet,
      sour: outcome.earlySour,
      acidity: earlyPh === null ? [] : [{ ph: earlyPh, how: 'not said', checked: null }],
    },
    {
      ...NOTHING,
      stage: setAtTakeOut !== null || outcome.seenAt === 'take-out' ? 'take-out' : 'not said',
      looked: outcome.seenAt === 'take-out' ? true : null,
      setState: setAtTakeOut === null ? null : setAtTakeOut ? 'set' : 'not set',
      setWord: outcome.setWord,
      sour: outcome.sour ?? null,
      acidity: ph === null ? [] : [{ ph, how: phHow ?? 'not said', checked: phChecked }],
      signs: opened ? [] : signs,
    },
    ...(opened && signs.length > 0
      ? [{ ...NOTHING, stage: 'opened' as const, daysOpen: outcome.openedDays, looked: true, signs }]
      : []),
  ];
}

/** Whether a look was at the end of the hold or after the chill, so that it answers the gate; most old notes don't say when. */
export const atTheGate = ({ stage }: Look): boolean =>
  stage === 'take-out' || stage === 'chilled' || stage === 'not said';

export const afterOpening = ({ stage, daysOpen }: Look): boolean =>
  stage === 'opened' || (stage === 'later' && daysOpen !== null);

const DISCARD: ReadonlySet<string> = new Set([...DISCARD_SIGNS, 'said spoiled']);
export const NOT_SET_SIGN = 'not set and no pH at or below 4.6' satisfies DiscardSign;

/** Signs that mean spoiled and that the keeper has not denied; "the fibre did this" is no answer to any of them. */
export const spoiling = ({ signs }: Pick<Look, 'signs'>): readonly SignKind[] =>
  signs.flatMap(({ kind, answer }) =>
    answer !== 'not so' && DISCARD.has(kind) && kind !== NOT_SET_SIGN ? [kind] : [],
  );
