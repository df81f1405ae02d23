// Every sentence about safety, made from codes and figures: the gate, cautions, stops, what is to be looked at. Safety words
// are never softened, and what is normal is never dressed as spoilage.
import { failedClause, failedNoun, type FailedWhat } from '../ledger/hold-interruptions';
import type { Caution, CautionRelation } from '../shapes/caution-codes';
import type { SafetyStop, Discard, GateReason, Answer, SafetyLook } from '../shapes/safety-codes';
import type { MatesPowerCut, Quoted } from '../shapes/seed-codes';
import { quotedEnd, shortened } from './quoted-end';

export const LOOK_AND_SMELL = 'Look and smell first, and when in doubt, discard.';
/** The first thing said beside a seed that may be used once it was looked at. */
export const LOOK_BEFORE_SEEDING =
  'Look at it and smell it before you seed from it; when in doubt, discard it.';
const NO_TOXIN_UNDONE = 'Spoilage organisms had time, and acid that comes later does not undo a toxin.';

const hoursInWords = (hours: number): string =>
  hours === 1 ? 'an hour' : hours < 1 ? `${Math.round(hours * 60)} minutes` : `${hours} hours`;

/** What is said of something: the sentence that decides, then what it means and what to do. */
type Parts = readonly [first: string, ...rest: string[]];
const joined = (parts: Parts): string => parts.join(' ');

/** That warmth failed during a hold, and what that means. @param hours null: nobody said how long */
const failedParts = (what: string, hours: number | null): Parts => [
  `${what} during the hold${hours === null ? '' : `, for ${hoursInWords(hours)}`}.`,
  'If it had not set by then, spoilage organisms had time, and acid that comes later does not undo a toxin.',
  'When in doubt, discard.',
];

/** That warmth failed, as told by the hold itself (label null) or by another jar of it. */
export function failedInHoldParts({ label, hours, what = ['power'] }: MatesPowerCut): Parts {
  const clause = failedClause(what);
  return [
    ...failedParts(clause.charAt(0).toUpperCase() + clause.slice(1), hours),
    label === null ? 'It was recorded of its hold.' : `${label}, from the same hold, tells of it.`,
  ];
}

/** What failed, as a thing: "a power cut". */
export const failedIn = (what: readonly FailedWhat[] = ['power']): string => failedNoun(what);

const howMeasured = (how: string): string => (how === 'not said' ? '' : ` by ${how}`);

function slowParts(start: Extract<GateReason, { code: 'slow start' }>): Parts {
  const at = start.hours === null ? 'at the early check' : `at ${start.hours} h`;
  const seen =
    start.ph !== null
      ? `a pH of ${start.ph}`
      : start.loose && start.sourless
        ? 'still loose and not sour'
        : start.sourless
          ? 'not sour'
          : 'still loose';
  const only =
    start.kind === 'meter only'
      ? 'Only a checked meter that shows 4.6 or less lets it be eaten, and nothing lets it seed.'
      : 'Not for anyone vulnerable, and not to be given away.';
  return [`A slow start: ${seen} ${at}.`, NO_TOXIN_UNDONE, only, 'When in doubt, discard.'];
}

const DISCARD_WHOLE = 'Discard the whole jar.';
const NO_TASTE = 'Do not taste it, and do not use it as seed.';
const WITH_FOAM = 'With foam, a lifted lid or a torn curd, discard.';
const MEASURE_OR_SMELL =
  'Measure with a checked meter, or smell beside a plain jar of the same seed and hold that passed.';
const NO_PROOF = 'no pH at or below 4.6 shown by a meter that was checked that day';

/** A reading that would have spoken for a jar. @param failed the meter was checked that day, and was wrong */
const uncheckedSentence = (ph: number, failed: boolean): string =>
  failed
    ? `A pH of ${ph} proves nothing: the meter was wrong when it was checked.`
    : `A pH of ${ph} proves nothing: nobody noted that the meter was checked in a pH 4.01 buffer that day.`;

/** What a gate's reason means, in calm words: what decides first. */
export function gateReasonParts(reason: GateReason): Parts {
  switch (reason.code) {
    case 'sign':
      return [`Seen: ${reason.signs.join(', ')}.`, DISCARD_WHOLE, NO_TASTE];
    case 'said':
      return ['You said it is spoiled.', DISCARD_WHOLE, NO_TASTE];
    case 'not set':
      return [
        reason.thick
          ? `Thick but not sour, and ${NO_PROOF}: that counts as not set.`
          : `Not set, and ${NO_PROOF}.`,
        ...(reason.unchecked === null ? [] : [uncheckedSentence(reason.unchecked, false)]),
        'Discard: not food, not seed.',
      ];
    case 'unchecked':
      return [
        uncheckedSentence(reason.ph, reason.failed),
        'Check the meter, then measure again in a spoonful that is thrown away.',
      ];
    case 'too late':
      return [
        `A pH of ${reason.ph} at ${reason.hours} h is above 5.3: not set in time.`,
        NO_TOXIN_UNDONE,
        'Discard: not food, not seed.',
      ];
    case 'acid':
      return [
        `A pH of ${reason.ph}${howMeasured(reason.how)} is above 4.6, and that is no good sign: the acid is not there yet.`,
        'Do not taste on this.',
        'Hold it longer and measure again; when in doubt, discard.',
      ];
    case 'slow start':
      return slowParts(reason);
    case 'power cut':
      return failedParts('The power failed', reason.hours);
    case 'thickened':
      return ['What was stirred in may have thickened it, so its set says nothing.', MEASURE_OR_SMELL];
    case 'bubbles':
      return [
        'Fine bubbles alone are normal for this kind of culture.',
        'Ask someone who knows it.',
        WITH_FOAM,
      ];
  }
}

/** The same, whole. */
export const gateReasonSentence = (reason: GateReason): string => joined(gateReasonParts(reason));

export const FINE_BUBBLES: Parts = [
  'Fine bubbles were seen; alone they are normal for this kind of culture.',
  'Look and smell first.',
  WITH_FOAM,
];

/** A pH above 4.6 of a jar of which nothing says that it set. */
export const noAcidSentence = ({ how, ph }: { readonly how: string; readonly ph: number }): string =>
  `A ${how} showed a pH of ${ph}, above 4.6, and nobody has written down that it had set.`;

/** In a word or two: "Spoiled", "Not set". */
export const discardWord = (discard: Discard): string =>
  ({ spoiled: 'Spoiled', 'not set': 'Not set', remark: 'Its note says spoiled' })[discard];

/** As a head: "Not set: not food, not seed." */
export const discardHead = (discard: Discard): string => `${discardWord(discard)}: not food, not seed.`;

/** Why something stops it, as it is said where it is offered. */
export function stopSentence(stop: Exclude<SafetyStop, 'set aside' | 'no acid'>): string {
  switch (stop) {
    case 'spoiled':
      return 'It is spoiled. Discard it: it is neither food nor seed.';
    case 'not set':
      return 'It had not set at take-out, or was not sour in time, and no pH at or below 4.6 was shown by a checked meter: neither food nor seed.';
    case 'remark':
      return 'Its note says that it spoiled, and nobody has answered that: until then it is neither food nor seed.';
    case 'needs the meter':
      return 'Half its batch or more did not set: only a checked meter that shows 4.6 or less lets it be eaten or seed.';
    case 'slow start':
      return 'It was not sour at 24 hours: nothing lets it seed, and only a checked meter lets it be eaten.';
  }
}

/** What stops a jar beside that it is discarded or set aside, which have their own places. */
export const stopsSaid = ({ stops, noAcid }: Pick<Answer, 'stops' | 'noAcid'>): string[] =>
  stops.flatMap((stop) => {
    if (stop === 'no acid') return noAcid === null ? [] : [noAcidSentence(noAcid)];
    return stop === 'needs the meter' || stop === 'slow start' ? [stopSentence(stop)] : [];
  });

/** What has to be minded before anyone eats of it, the gravest first. */
const LOOKS_BEFORE_EATING: Readonly<Record<SafetyLook, string>> = {
  caution: 'Look at it and smell it before anyone tastes it, because of a jar that it is related to. When in doubt, discard.',
  'slow start': 'It started slowly: not for anyone vulnerable, and not to be given away. When in doubt, discard.',
  thickened: gateReasonSentence({ code: 'thickened' }),
  'not noted': 'Not noted whether it smelled sour: look and smell before anyone tastes it. When in doubt, discard.',
  remark: 'A note of it asks to look first. When in doubt, discard.',
}; // prettier-ignore

/** Whether it may be eaten, and what stands behind that. That nothing forbids it is no proof. */
export function eatSentence({
  eat,
  stops,
  looks,
  noAcid,
}: Pick<Answer, 'eat' | 'stops' | 'looks' | 'noAcid'>): string {
  const [stop] = stops;
  if (!eat && stop !== undefined) {
    if (stop === 'no acid') return `Not to be eaten. ${noAcid === null ? '' : noAcidSentence(noAcid)}`.trim();
    if (stop === 'set aside')
      return 'Not to be eaten while it is set aside, unless a written reason lifts that. When in doubt, discard it.';
    return `Not to be eaten. ${stopSentence(stop)}`;
  }
  const [look] = looks;
  if (look !== undefined) return LOOKS_BEFORE_EATING[look];
  return 'Nothing that was noted forbids eating it, which is no proof: look and smell first, and when in doubt, discard.';
}

/** Of a jar older than anything is kept of which nobody said that it is there: nothing is asked of it, and it is no food. */
export const LONG_PAST =
  'Nobody noted what became of it. It is past eating: if it is still there, discard it.';

/** The same once it was looked at and smelled today and nothing was seen: not asked for again on the same day. */
export function lookedSentence({
  eat,
  stops,
  looks,
  noAcid,
}: Pick<Answer, 'eat' | 'stops' | 'looks' | 'noAcid'>): string {
  const [look] = looks;
  if (!eat || (look !== undefined && look !== 'caution')) return eatSentence({ eat, stops, looks, noAcid });
  const related = look === 'caution' ? ' A jar that it is related to has a caution.' : '';
  return `Looked at and smelled today, and nothing was seen, which is no proof.${related} Look and smell again each time it is opened, and when in doubt, discard.`;
}

/** Of a note that stops its jar. */
export const REMARK_STOPS =
  'That may tell of spoilage. Until you answer, the jar is neither food nor seed. When in doubt, discard it, and do not taste it.';

/** A remark that nobody has answered, word for word. @param most characters of it that are quoted */
export function quoteSentence({ of, text }: Quoted, most = MOST_QUOTED): string {
  return `${NOTE_OF[of]} says: ${quotedEnd(shortened(text, most))}`;
}
/** Characters of a remark that are quoted; all of it stands with its jar. */
const MOST_QUOTED = 200;

const NOTE_OF: Readonly<Record<Quoted['of'], string>> = {
  jar: 'Its note', batch: 'The note of its batch', hold: 'The note of its hold', portion: 'The note of what was kept apart of it',
  photograph: 'The words under its photograph', seeding: 'The note of its seed', package: 'The note of a package that went into it',
}; // prettier-ignore

/** Said of a jar that may be offered although nobody noted how it smelled. */
export const NOT_NOTED = 'Not noted whether it smelled sour: smell it first.';

const stepsDown = (steps: number): string => (steps === 1 ? '' : `, ${steps} steps down`);

/** In words, as beside a jar: "set aside: seeded by it, 2 steps down". */
export function cautionWords({ relation, steps }: Pick<Caution, 'relation' | 'steps'>): string {
  switch (relation) {
    case 'itself':
      return 'condemned: spoiled itself';
    case 'seeded by it':
      return `set aside: seeded by it${stepsDown(steps)}`;
    case 'same hold':
      return 'set aside: from the same batch, kept warm together';
    case 'same batch':
      return 'set aside: from the same batch, perhaps kept warm together';
    case 'same hold, not set':
      return 'look: from the same batch as a jar that did not set';
    case 'seeded before':
      return `look: seeded by it more than seven days before the sign${stepsDown(steps)}`;
    case 'from a mate':
      return `look: descends from a jar of its batch${stepsDown(steps)}`;
    case 'seeded it':
      return 'look: it seeded the spoiled jar';
    case 'same seed':
      return 'look: from the same seed';
    case 'same package':
      return 'look: used the same package';
  }
}

/** The same words on a screen, where the spoiled jar has a name: "set aside: seeded from 1 Apr c, 2 steps down". */
export const cautionWordsNaming = (caution: Pick<Caution, 'relation' | 'steps'>, spoiled: string): string =>
  caution.relation === 'seeded by it'
    ? `set aside: seeded from ${spoiled}${stepsDown(caution.steps)}`
    : cautionWords(caution);

/** What a jar to be looked at has to do with the spoiled one. */
const LOOK_AT: Partial<Record<CautionRelation, (spoiled: string) => string>> = {
  'seeded it': (spoiled) => `it seeded the spoiled jar${spoiled}`,
  'same seed': (spoiled) => `it came from the same seed as the spoiled jar${spoiled}`,
  'same package': (spoiled) => `it was made with the same package as the spoiled jar${spoiled}`,
  'same hold, not set': (spoiled) => `it is from the same batch as ${spoiled === '' ? 'a jar that' : `${spoiled.trim()}, which`} did not set`,
  'seeded before': (spoiled) => `it descends from${spoiled === '' ? ' a jar' : spoiled} that showed a sign after opening`,
  'from a mate': (spoiled) => `it descends from a jar of the same batch as the spoiled jar${spoiled}`,
}; // prettier-ignore

/**
 * As a sentence: "It is set aside: seeded from 1 Apr c.", or "Look at it first: it seeded the spoiled jar 1 Apr c." The
 * spoiled jar, where it is another with a name, is named once.
 */
export function cautionSentence(
  caution: Pick<Caution, 'relation' | 'steps'>,
  spoiled: string | null,
): string {
  const look = LOOK_AT[caution.relation]?.(spoiled === null ? '' : ` ${spoiled}`);
  if (look !== undefined) return `Look at it first: ${look}.`;
  const how = cautionWords(caution);
  if (spoiled === null) return `It is ${how}.`;
  const naming = cautionWordsNaming(caution, spoiled);
  return naming === how ? `It is ${how} (${spoiled}).` : `It is ${naming}.`;
}

/** The same without asking to look, where that is said already: "It seeded the spoiled jar 1 Apr c." */
export function cautionInShort(caution: Pick<Caution, 'relation' | 'steps'>, spoiled: string | null): string {
  const look = LOOK_AT[caution.relation]?.(spoiled === null ? '' : ` ${spoiled}`);
  return look === undefined ? cautionSentence(caution, spoiled) : `${sentenceCase(look)}.`;
}

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Why a caution no longer stands that nobody lifted. */
export const ENDED =
  'On each path two generations in a row passed the gate and were seen clean again. Seen clean is no test for germs.';

/** How a caution that nobody lifts comes to its end. */
export const HOW_IT_ENDS =
  'It ends by itself once two generations in a row passed the check at take-out and were looked at and smelled again, five days later or as they were opened, and nothing was seen.';

/** "5 Mar a is set aside because of 1 Mar c, which spoiled." @param because labels of the spoiled jars */
export const setAsideSentence = (label: string, because: readonly string[]): string =>
  `${label} is set aside because of ${because.join(' and ')}, which spoiled.`;

/** That a jar descends from a set-aside mate of a spoiled jar, by their labels. */
export const fromMateSentence = ({
  mate,
  spoiled,
}: {
  readonly mate: string;
  readonly spoiled: string;
}): string => `It descends from ${mate}, which is set aside because of ${spoiled}. Look into that first.`;

/** What follows of a set-aside jar that is picked as seed. */
export const ASIDE_AS_SEED =
  'Nothing is seeded from it unless you can write down why it is all right to use. You are asked for that when you record. When in doubt, take another jar.';

const NO_SEED: Readonly<Record<Discard, string>> = {
  spoiled: 'is spoiled: not food and not seed. Pick another seed.',
  'not set': 'did not set: not food and not seed. Pick another seed.',
  remark:
    'has a note that says it spoiled, and nobody has answered that: not food and not seed until somebody does. Answer the note, or pick another seed.',
};

/** Of a picked jar that is neither food nor seed. */
export const noSeedSentence = (label: string, discard: Discard): string => `${label} ${NO_SEED[discard]}`;

/** Of a picked jar that is only to be looked at. */
export const relatedSentence = (label: string): string => `${label} is related to a spoiled jar.`;

/** Because of which jar a caution stands, and by which mate. */
export const becauseSentence = ({
  label,
  relation,
  via,
}: {
  readonly label: string;
  readonly relation: CautionRelation;
  readonly via: { readonly label: string } | null;
}): string =>
  `Because of ${label}, which ${relation === 'same hold, not set' ? 'did not set' : 'spoiled'}` +
  `${via === null ? '' : `, by ${via.label} of the same batch`}.`;
