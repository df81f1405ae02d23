// What speaks against a jar as a seed, in words: doubts of its own hold, what is to be looked at first, what stops it and what
// would lift that.
import { daysSpan, daysWords } from '../quantities/typed-days';
import type { Doubt, InShort, SeedLook, SeedStop } from '../shapes/seed-codes';
import { quotedEnd, shortened } from './quoted-end';
import {
  cautionInShort,
  cautionSentence,
  failedIn,
  failedInHoldParts,
  FINE_BUBBLES,
  gateReasonParts,
  LOOK_AND_SMELL,
  noAcidSentence,
  quoteSentence,
  stopSentence,
} from './safety-says';

const NOTE_OF = { jar: 'Its note', hold: 'The note of its hold', batch: 'The note of its batch' } as const;

/** What is said of something: the sentence that decides, then what it means and what to do. */
type Parts = readonly [first: string, ...rest: string[]];
const whole = (parts: Parts): string => parts.join(' ');

/** "20 minutes", "2.5 hours". */
const warmFor = (hours: number): string => {
  const minutes = Math.round(60 * hours);
  if (minutes >= 60) return `${Number(hours.toFixed(1))} hours`;
  return `${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
};

function doubtParts(doubt: Doubt): Parts {
  if (doubt.code === 'failed in its hold') return failedInHoldParts(doubt);
  if (doubt.code === 'failed by a note')
    return [
      ...gateReasonParts({ code: 'power cut', hours: doubt.hours }),
      `${NOTE_OF[doubt.where]} tells of it.`,
    ];
  if (doubt.code === 'held short')
    return [
      `It was in warmth for ${warmFor(doubt.hours)} only, too short for anything to set.`,
      'One of the two is a slip: correct when it went in and came out, or when in doubt, discard.',
    ];
  return gateReasonParts(doubt);
}

/** What its own hold leaves in doubt. */
export const doubtSays = (doubt: Doubt): string => whole(doubtParts(doubt));
/** The sentence of it that decides. */
export const doubtInShort = (doubt: Doubt): string => doubtParts(doubt)[0];

const hoursIn = (hours: number | null): string =>
  hours === null ? '' : `, for ${hours === 1 ? 'an hour' : `${hours} hours`}`;

function inShort(why: InShort): string {
  switch (why.code) {
    case 'acid':
      return `a pH of ${why.ph}${why.how === 'not said' ? '' : ` by ${why.how}`}, above 4.6`;
    case 'slow start':
      return 'a slow start';
    case 'power cut':
      return `${failedIn()} during its hold${hoursIn(why.hours)}`;
    case 'failed':
      return `${failedIn(why.what)} during its hold${hoursIn(why.hours)}`;
  }
}

/** @param most characters of a keeper's own words that are quoted */
function lookParts(look: SeedLook, most?: number): Parts {
  switch (look.code) {
    case 'caution': {
      const { caution } = look;
      // In short it follows "look first", and says no more than why.
      return [(most === undefined ? cautionSentence : cautionInShort)(caution, caution.spoiled)];
    }
    case 'slow start':
      return gateReasonParts(look);
    case 'fine bubbles':
      return FINE_BUBBLES;
    case 'remark':
      return [quoteSentence(look.remark, most), LOOK_AND_SMELL];
    case 'lifted': {
      const reason = most === undefined ? look.reason.trim() : shortened(look.reason, most);
      const whose = look.label === null ? 'It' : `Its way back runs through ${look.label}, which`;
      return [
        `${whose} was set aside because of ${look.because}; lifted: ${quotedEnd(reason)}`,
        LOOK_AND_SMELL,
      ];
    }
    case 'descends from doubt':
      return [
        `It descends from ${look.label}, which is in doubt (${look.because.map(inShort).join('; ')}).`,
        LOOK_AND_SMELL,
      ];
    case 'long in the fridge':
      // Three weeks: common practice, no source.
      return [
        `It has stood in the fridge for ${daysSpan(look.days, look.least)}; jars are commonly used up within three weeks.`,
        LOOK_AND_SMELL,
      ];
  }
}

/** Characters of a keeper's own words that stand in a sentence of at most twenty words. */
const FEW = 60;

/** What has to be looked at first. */
export const lookSays = (look: SeedLook): string => whole(lookParts(look));
/** The sentence of it that decides. */
export const lookInShort = (look: SeedLook): string => lookParts(look, FEW)[0];

const IN_PLACE = { fridge: 'in the fridge', freezer: 'in the freezer', dried: 'dried' } as const;

/** @param most characters of a keeper's own words that are quoted */
function stopParts(stop: SeedStop, most?: number): Parts {
  switch (stop.code) {
    case 'spoiled':
      return ['It is spoiled.', 'Discard it: it is neither food nor seed.'];
    case 'condemned':
    case 'set aside':
      return [cautionSentence(stop.caution, stop.caution.spoiled)];
    case 'failed the gate':
      return [stop.above === null ? stopSentence('not set') : noAcidSentence(stop.above)];
    case 'remark':
      return stop.quote === null
        ? [stopSentence('remark')]
        : [
            quoteSentence(stop.quote, most),
            'Nobody has answered that: until then it is neither food nor seed.',
          ];
    case 'in its hold':
      return ['It may still be in its hold: nobody has written down that it is out.'];
    case 'too old':
      return [
        `It has stood ${IN_PLACE[stop.place]} for ${daysSpan(stop.days, stop.least)}; the limit is ${stop.limit} (Preferences).`,
      ];
    case "keeper's limit":
      return [
        `The next jar would be of generation ${stop.generation}${stop.atLeast ? ' at least' : ''}; the limit is ${stop.limit} (Preferences).`,
      ];
    default:
      return [stopSentence(stop.code)];
  }
}

/** Why it may not be used. */
export const stopSays = (stop: SeedStop): string => whole(stopParts(stop));
/** The sentence of it that decides. */
export const stopInShort = (stop: SeedStop): string => stopParts(stop, FEW)[0];

/** Of several that only stand longer than the keeper's limit, said once. */
export const TOO_OLD_TOGETHER = 'Each has stood longer than your limit for seed (Preferences).';

/** Days over the keeper's limit beyond which no other limit is suggested (the program's own, no source). */
const FAR_OVER = 7;

/** What would lift a stop; null where nothing does. */
export function stopLifts(stop: SeedStop): string | null {
  switch (stop.code) {
    case 'spoiled':
    case 'condemned':
    case 'slow start':
      return null;
    case 'set aside':
      return 'Only a written reason lifts it.';
    case 'remark':
      return 'Once you answer that it is no spoilage, it is judged by what was seen.';
    case 'needs the meter':
      return 'Once a meter that was checked that day shows 4.6 or less, and that is written down, it is offered again.';
    case 'failed the gate':
      return stop.above === null
        ? null
        : 'Once it is written down that it had set at take-out, it is offered again, in doubt because of its pH.';
    case 'in its hold':
      return 'Once it is out and written down how it was then, it is judged by that.';
    case 'too old':
      // Nobody is talked into raising a limit far: what stands much longer is left to the limit.
      return stop.days - stop.limit > FAR_OVER
        ? 'Your limit decides (Preferences).'
        : `With a limit of ${daysWords(stop.days)} or more (Preferences) it would be offered again.`;
    case "keeper's limit":
      return `With a limit of ${stop.generation} generations or more (Preferences) it would be offered again.`;
  }
}
