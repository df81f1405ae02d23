// What free text says of spoilage and of what should be asked, read by the tables of spoilage-words.ts and thing-words.ts. Words may
// stop a jar; none of them excuses one.
import type { DiscardSign } from '../ledger/records';
import { plain, remembered } from '../quantities/quantities';
import { withoutHarmless } from './harmless-words';
import { MISHAP } from './mishap-words';
import { phrases } from './phrases';
import { FINDS, type Told } from './spoilage-words';
import {
  BEFORE_A_THING,
  DENIALS,
  DENIALS_BEHIND,
  HARMLESS_REASONS,
  NO_DENIALS,
  THINGS,
  THINGS_OF_A_JAR,
} from './thing-words';

/** Signs in the order in which they are told. */
const SIGNS = [
  'pink', 'red', 'orange', 'black', 'fuzz', 'foul smell', 'foam', 'lifted lid', 'torn curd', 'bath water got in',
] as const satisfies DiscardSign[]; // prettier-ignore

const COLOURS: readonly DiscardSign[] = ['pink', 'red', 'orange', 'black'];
/** Right behind a colour, things that have one and are no growth: a kitchen's fruit, lids, labels, spices. */
const THING = new RegExp(
  String.raw`^(?: (?:and|or) \w+)?\s*-?${phrases(THINGS)}(?!\w*[- ]?(?:sized|shaped|ful|colou?red)\b)`,
);
/** Right before a colour, what makes it a thing's: "from an orange", "marked in red". */
const THING_BEFORE = new RegExp(String.raw`${phrases(BEFORE_A_THING)}\s+$`);
/** A thing of which a colour is all that is said: "lid is red". */
const THING_IS = new RegExp(
  String.raw`(?:^|\b(?:the|its|a|my) )${phrases(THINGS_OF_A_JAR)}(?: is| was| are|:)? $`,
);
const HARMLESS = new RegExp(phrases(HARMLESS_REASONS));
const NEGATION_WORD = new RegExp(phrases(DENIALS));
const ENDS = [',', ';', '.', '!', '?'];
const NO_NEGATION = new RegExp(phrases(NO_DENIALS));
/** Whether what stands before a word denies it: a negation with no mark of punctuation after it, and none that denies nothing. */
function denies(before: string): boolean {
  const near = before.slice(Math.max(...ENDS.map((mark) => before.lastIndexOf(mark))) + 1);
  return NEGATION_WORD.test(near) && !NO_NEGATION.test(near);
}
/** "mould: none", "Schimmel keiner zu sehen", "plesni nie ma": a denial behind the word, and nothing behind that. */
const DENIED_BEHIND = new RegExp(
  String.raw`^(?: (?:was|were|is|are))?\s*[:=–-]?\s*${phrases(DENIALS_BEHIND)}(?: (?:found|seen|here|gefunden|gesehen))?[\s.,;!)]*$`,
);
/** "mogelfri": made free of it in one word. */
const FREE = /(?:fri|fritt|fria|frei|freie[rsn]?|vrij)$/;
/** German, Dutch and French deny a verb behind it: "stinkt nicht". */
const DENIED_AFTER =
  /^ (?:gar |uberhaupt |absoluut |du tout )?(?:nicht|niet|pas)\b(?! (?:nur|bloss|alleen|seulement|mehr|que))/;
/** English may say so behind the word too: "looked for mould and found none", "pink streaks: none". */
const NONE_AFTER =
  /^(?: (?!some|but)\w+)?(?:[:,]| -)?(?: and)?(?: (?:was|were|have|had|i))?(?: found| seen| saw)? none\b(?! of\b)/;
/** A question that its writer answered with no: "spoiled? no"; "no idea" is no answer. */
const ANSWERED_NO =
  /(?<![^,;.!?])[^,;.!?]*\?:?\s*(?:(?:i )?(?:saw |found )?none|no|n(?!\/)|false|falsch|nope|nein|keine[rs]?|non|aucune?|ningun[oa]?|nessun[oa]|nee|geen|nenhuma?|nej|ingen|inget|nie|brak)\b(?! (?:idea|clue|doubt|way|of))/gi;
/** "Checked for mould, found none": over the comma that would part the two. */
const NOT_FOUND =
  /\b(?:checked|looked|searched|inspected|examined|watched)(?: \w+){0,3} for [^.!?]{1,60}?(?:[,;:]| and| but)*(?: and| but| i)*(?: (?:found|saw|seen) (?:none|nothing|no sign)\b| (?:none|nothing)\b(?=\s*(?:[.!,;]|$)))(?! (?:else|more|but|other|of|wrong))/gi;
const NOT_FOUND_DE =
  /\bnach [^.!?]{1,40} gesucht,?(?: aber| und)* (?:nichts|keinen|keine|keins) gefunden\b/gi;
/** A text without the questions that it answers itself, and what it says was looked for and not found. */
export const withoutAnswered = (text: string): string =>
  text.replaceAll(ANSWERED_NO, '').replaceAll(NOT_FOUND, '').replaceAll(NOT_FOUND_DE, '');

/** Why a jar that is fine may be left alone. */
const KEPT_FOR =
  /\b(?:seeds?|reserve|starter|culture|mother|keep(?:ing)?|kept|saved?|until|till|before|yet|saat|impf\w*|ansatz|aufheben|bis|noch|vor)\b/;
/** What keeps warm was found off. That it was turned off is how a hold ends, and no accident. */
const WARM_THING =
  '(?:(?:water )?bath|heater|heating|incubator|cooker|cooler|warmer|warm box|heat(?:ing)? (?:mat|pad))';
const FOUND_OFF = [
  String.raw`${WARM_THING} (?:has |had )?(?:died|broke(?:n)?(?: down)?|failed|quit|gave (?:up|out)|given (?:up|out)|stopped(?: working)?|conked out|packed up|cut out)`,
  String.raw`${WARM_THING} (?:was|went|had (?:been|gone)|got) (?:off|out|unplugged)(?! by \d)`,
  '(?:wasser)?bad (?:war|ging) aus(?! (?:edel)?stahl| glas| metall| plastik| kunststoff| holz| keramik)',
  '(?:heizung|heizmatte|gerat) (?:war|ging|fiel) aus(?! (?:edel)?stahl| metall)',
].join('|');
const CUT_WORDS = String.raw`(?:breaker|fuse) (?:had |has )?(?:tripped|blew|blown)|unplugged by (?:mistake|accident)|accidentally unplugged|(?:switched|turned) itself off|power (?:(?:was|were|went|is|had (?:been|gone)|has (?:been|gone)|got) )?(?:out|down)|power (?:was|went|had (?:been|gone)|has (?:been|gone)|is|got) off|power[- ]?(?:cuts?|outages?|failures?|loss)|power failed|(?:lost|no|without) (?:the )?(?:power|electricity)(?![- ]?(?:cut|out|fail|loss))|outage|black ?out|electricity (?:(?:was|went|is|had (?:been|gone)) )?(?:out|off|failed)|stromausfall\w*|stromunterbrechung|(?:kein(?:en)?|ohne) strom|strom (?:(?:war|ist|fiel) )?(?:weg|aus|ausgefallen)|(?:coupure|panne) (?:de |d'|du )?(?:courant|electricite)|pas (?:de courant|d'electricite)|cortes? de (?:luz|energia|corriente)|apagon|sin luz|(?:interruzione|mancanza) (?:di|della) corrente|senza corrente|stroomuitval|stroomstoring|falta de (?:luz|energia)|stromavbrott\w*|strombrudd?\w*|stromafbrydelse|brak pradu|awaria pradu`;
const POWER_CUT = new RegExp(`\\b(?:${FOUND_OFF}|${CUT_WORDS})\\b`);
const LENGTH = String.raw`(\d+(?:[.,]\d+)?|an?|one|eine[rn]?)[ -]?(h|hrs?|hours?|std|stunden?|stundig\w*|heures?|horas?|or[ae]|uur|timmar|timmes?|timer|timers|godz\w*|min|mins|minutes?|minuten|minut\w*)\b`;
const LENGTH_AFTER = new RegExp(`^[^;!?]{0,40}?\\b${LENGTH}`);
const LENGTH_BEFORE = new RegExp(`\\b${LENGTH}[ -]?(?:long |of |de |d')?$`);

export interface RemarkReading {
  readonly signs: readonly DiscardSign[];
  /** Plainly called spoiled, with no sign named. */
  readonly spoiledSaid: boolean;
  /** Thrown out whole, with no reason told. */
  readonly thrownOut: boolean;
  /** The power failed during the hold; for how long (h), where that is told. */
  readonly powerCut: { readonly hours: number | null } | null;
  /** What should be asked, without blocking: each with the words it stands on. */
  readonly asks: readonly {
    readonly kind:
      'bubbles' | 'fibre' | 'slime' | 'colour of a thing' | 'uncertain sign' | 'unsure' | 'mishap';
    readonly words: string;
  }[];
}

/** Where one thing that is said ends and the next begins: a negation reaches no further. */
export const clausesOf = (text: string): string[] => sentenceParts(text).flatMap(windows);

/** A longer clause is read in parts, each beginning a little before the one before it ends. */
const LONGEST_CLAUSE = 400;
const OVERLAP = 100;

/** A clause in parts that can be read one by one: a word or a phrase that one part cuts stands whole in the next. */
function windows(clause: string): string[] {
  if (clause.length <= LONGEST_CLAUSE) return [clause];
  const parts: string[] = [];
  for (let end = 0; end < clause.length;) {
    const from = Math.max(0, end - OVERLAP);
    // At a word's beginning: the end of "infrared" is no colour.
    const space = clause.indexOf(' ', from);
    const start = from > 0 && space >= 0 && space < end ? space : from;
    end = start + LONGEST_CLAUSE;
    parts.push(clause.slice(start, end));
  }
  return parts;
}

/** A mark that ends a part: not within a figure, and not behind "no." before one. */
const PART_ENDS = String.raw`(?<=[;!?。，；！？।]|,(?!\d)|(?<!\b(?:no|nr))\.(?!\d)|\b(?:no|nr)\.(?! ?\d))`;
const BUT = '(?:but|aber|mais|pero|ma|maar)';
/** "No - pink" answers a question, and says why. */
const NO_DASH = String.raw`(?<=(?:^|[^\p{L}])(?:no|nein|non|nope|nee|nej|nie))\s+[-–—]\s+`;
/** Polish says "nie ma" for "there is no": no other language's "but". */
const PARTS = new RegExp(
  String.raw`${NO_DASH}|${PART_ENDS}\s*(?:${BUT}\s+)?|(?<!(?:^|[^\p{L}])nie)\s+${BUT}\s+`,
  'iu',
);
const sentenceParts = (text: string): string[] => text.split(PARTS);

/** How long (h) what was found is said to have lasted, right after it or right before; null where it isn't told. */
function lengthOf(said: string, found: RegExpExecArray): number | null {
  const told =
    LENGTH_AFTER.exec(said.slice(found.index + found[0].length)) ??
    LENGTH_BEFORE.exec(said.slice(0, found.index).trim());
  if (!told) return null;
  const [, number = '', unit = ''] = told;
  const value = /^\d/.test(number) ? Number(number.replace(',', '.')) : 1;
  const hours = unit.startsWith('min') ? value / 60 : value;
  return hours <= 1000 ? Math.round(hours * 100) / 100 : null;
}

/** Said with a doubt of the keeper's own, behind a word or in its clause. */
const ASKED_AFTER = /^\s*\w*\s*\?/;
const UNSURE = new RegExp(
  phrases('maybe, perhaps, possibly, vielleicht, peut-etre, quiza, quizas, forse, misschien'),
);

/** What a clause tells of one sign: nothing, or the colour of a thing, or the sign, which its writer may doubt. */
function signIn(clause: string, sign: DiscardSign): 'no' | 'thing' | 'unsure' | 'plain' {
  const found = FINDS[sign as Told].exec(clause);
  if (!found) return 'no';
  const before = clause.slice(0, found.index);
  const after = clause.slice(found.index + found[0].length);
  const deniedBehind = [DENIED_AFTER, NONE_AFTER, DENIED_BEHIND].some((denied) => denied.test(after));
  if (denies(before) || /^[- ]free\b/.test(after) || FREE.test(found[0]) || deniedBehind) return 'no';
  const plainThing = THING_IS.test(before) && /^[\s.!]*$/.test(after);
  if (COLOURS.includes(sign) && (THING.test(after) || THING_BEFORE.test(before) || plainThing))
    return 'thing';
  return ASKED_AFTER.test(after) || UNSURE.test(clause) ? 'unsure' : 'plain';
}

/** What befell a jar by a clause, where that is not denied. */
function befell(clause: string): string | null {
  const found = MISHAP.exec(clause);
  return found && !denies(clause.slice(0, found.index)) ? found[0] : null;
}

/** Reads a remark for signs of spoilage and doubts. A negation ("no mould") is heard; a coloured thing ("orange zest") is asked about. */
export const readRemark = remembered(hearRemark);

function hearRemark(text: string): RemarkReading {
  const asks: RemarkReading['asks'][number][] = [];
  const said = withoutHarmless(withoutAnswered(plain(text)));
  const clauses = clausesOf(said);
  const signs = SIGNS.filter((sign) => {
    const told = clauses.map((clause) => ({ clause, how: signIn(clause, sign) }));
    for (const { clause, how } of told) {
      if (how === 'thing') asks.push({ kind: 'colour of a thing', words: clause.trim() });
      if (how === 'unsure') asks.push({ kind: 'uncertain sign', words: clause.trim() });
    }
    return told.some(({ how }) => how === 'unsure' || how === 'plain');
  });
  const finds = (told: Told): string | null => {
    for (const clause of clauses) {
      const found = FINDS[told].exec(clause);
      if (found && !denies(clause.slice(0, found.index))) return found[0];
    }
    return null;
  };
  for (const [told, kind] of [
    ['bubbles', 'bubbles'],
    ['like a fibre', 'fibre'],
    ['slime', 'slime'],
  ] as const) {
    const words = finds(told);
    if (words !== null) asks.push({ kind, words });
  }
  // "Do not" is no denial of what stands behind it here: it is what is said.
  const notEaten = clauses.some((clause) => FINDS['not eaten'].test(clause));
  const keptFor = KEPT_FOR.test(said);
  if (notEaten) asks.push({ kind: keptFor ? 'unsure' : 'uncertain sign', words: text.trim() });
  const power = POWER_CUT.exec(said);
  if (asks.length === 0 && /\?\s*$/.test(said)) asks.push({ kind: 'unsure', words: text.trim() });
  const mishap = clauses.find((clause) => befell(clause) !== null);
  if (mishap !== undefined) asks.push({ kind: 'mishap', words: mishap.trim() });
  return {
    signs,
    spoiledSaid: finds('spoiled') !== null || (notEaten && !keptFor),
    thrownOut: finds('thrown out') !== null && !HARMLESS.test(said),
    powerCut: power && !denies(said.slice(0, power.index)) ? { hours: lengthOf(said, power) } : null,
    asks,
  };
}
