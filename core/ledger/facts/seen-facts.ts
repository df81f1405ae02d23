// What was seen: observations with pH values and signs, remarks with how the keeper has read them, photographs.
import { SET_WORDS } from '../jar-fields';
import { DISCARD_SIGNS } from '../records';
import { day, flag, maybe, moment, number, oneOf, ref, text, usually, whole, words } from './fact-fields';

/** 'not said' is what most cells of old notes are. */
export const STAGES = ['early', 'take-out', 'chilled', 'opened', 'later', 'not said'] as const;
/** 'said spoiled': called spoiled, with no sign named. */
export const SIGN_KINDS = [...DISCARD_SIGNS, 'said spoiled', 'tint', 'jelly', 'tint or jelly'] as const;
export type SignKind = (typeof SIGN_KINDS)[number];
/** 'the fibre' is possible only of a tint and a jelly. */
export const SIGN_ANSWERS = ['seen', 'not so', 'the fibre'] as const;
export const REMARK_FIELDS = ['note', 'texture', 'smell', 'colour'] as const;
export const READ_AS = ['fine', 'look', 'discard'] as const;
/** What a remark can be about: exactly one of these. */
export const REMARKED = [
  'jar',
  'batch',
  'hold',
  'portion',
  'observation',
  'photograph',
  'package',
  'seeding',
] as const;

export const seen = {
  /** What was seen once. Missing is neither weak nor fine: it is unknown. */
  observation: {
    jar: ref('jar'),
    /** Where a portion of the jar was looked at. */
    portion: maybe(ref('portion')),
    stage: oneOf(STAGES),
    /** When: a moment, or a day, or neither. */
    at: maybe(moment()),
    day: maybe(day()),
    /** Hours since the jar came into warmth. */
    hoursIn: maybe(number(0, 1000)),
    daysOpen: maybe(whole(0, 365)),
    /** Whether somebody looked and smelled: no sign listed is not the same as none seen. */
    looked: maybe(flag()),
    setState: maybe(oneOf(['loose', 'starting', 'set', 'not set'])),
    setWord: maybe(oneOf(SET_WORDS)),
    whey: maybe(oneOf(['none', 'a little', 'some', 'a lot'])),
    tang: maybe(oneOf(['none', 'mild', 'clear', 'sharp'])),
    sour: maybe(flag()),
    /** Fine bubbles, which are normal for this kind of culture and still uncertain; foam is a sign. */
    bubbles: maybe(oneOf(['none', 'fine'])),
    /** Set between these two times after it came into warmth (h). */
    setAfterHours: maybe(number(0, 1000)),
    setByHours: maybe(number(0, 1000)),
    /** Whether the power failed, as it was answered for this one jar; what is known of the hold is an interruption. */
    powerCut: maybe(flag()),
    powerCutHours: maybe(number(0, 1000)),
  },
  /** A pH value and how it was measured; any number of an observation. */
  acidity: {
    observation: ref('observation'),
    ph: number(0, 14),
    how: usually('not said', oneOf(['meter', 'strip', 'not said'])),
    /** Whether the meter was checked in a buffer that day; one that was not proves nothing. */
    checked: maybe(flag()),
  },
  /** Stored by hash beside the ledger, re-encoded so that the place it was taken is gone. */
  photograph: {
    jar: ref('jar'),
    observation: maybe(ref('observation')),
    sha: text(/^[0-9a-f]{64}$/),
    width: whole(1, 100_000),
    height: whole(1, 100_000),
  },
  /** Free text on exactly one record. Changed text is unread again. */
  remark: {
    jar: maybe(ref('jar')),
    batch: maybe(ref('batch')),
    hold: maybe(ref('hold')),
    portion: maybe(ref('portion')),
    observation: maybe(ref('observation')),
    photograph: maybe(ref('photograph')),
    package: maybe(ref('package')),
    seeding: maybe(ref('seeding')),
    field: usually('note', oneOf(REMARK_FIELDS)),
    text: words(1, 10_000),
    private: usually(true, flag()),
    /** How the keeper has read it; null: not yet. */
    readAs: maybe(oneOf(READ_AS)),
  },
  /** Something that may mean spoilage, seen or read in a remark, with the keeper's answer. */
  sign: {
    observation: maybe(ref('observation')),
    remark: maybe(ref('remark')),
    kind: oneOf(SIGN_KINDS),
    answer: maybe(oneOf(SIGN_ANSWERS)),
  },
} as const;
