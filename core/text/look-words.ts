// What free text says about how a jar came out: set words, whey, tang. Signs of spoilage: core/safety/remark-words.ts.
import type { Outcome, SetWord } from '../ledger/records';
import { plain } from '../quantities/quantities';
import { leftOf, thingsSaid } from './clauses';
import { SET_PHRASES } from './set-phrases';

/**
 * It pours: that may be a thin set, or milk that has not set, which is neither food nor seed (trade practice, no source). Words of
 * the languages that set words are read in; of any other the word is not known, and asked about for that.
 */
const POURS =
  /\b(?:liquid\w*|fluid\w*|watery|pours?|poured|pouring|pourable|as thin as (?:milk|water)|like (?:milk|water)|(?:wie|comme|comme (?:de l'?|du )|como|come|als|som|jak) (?:milch|wasser|du lait|lait|eau|l'eau|leche|agua|latte|acqua|melk|water|leite|mjolk|vatten|maelk|vand|vann|mleko|woda)|(?:dunn)?flussig\w*|wassrig\w*|liquide\w*|liquid[oa]s?|fluid[oa]s?|acuos[oa]|acquos[oa]|aguad[oa]|vloeibaar\w*|waterig\w*|flytande|vattnig\w*|flydende|vandet|rennende|flytende|vassen|plynn\w+|wodnist\w+)\b/;

/** Said of a jar on its way: what was loose at 12 h may be firm at the end. */
const ON_ITS_WAY =
  /\b(?:still|yet|noch|encore|aun|todavia|ancora|nog|ainda)\b|\b(?:at|after|by|nach|apres|tras|dopo|na) (?:about |ca\.? )?\d+ ?(?:h|hrs?|hours?|std|stunden|heures?|horas?|ore|uur)\b/;

const NOT_SET =
  /\b(?:not (?:yet )?set|(?:did ?n[o']?t|never|no) set|unset|still (?:just )?(?:milk|liquid)|failed to set|nicht (?:fest|gesetzt|gestockt|dick)\w*|(?:n'a )?pas pris|pas (?:de )?prise|no cuaj\w+|sin cuajar|non (?:si e )?rappreso|niet (?:gestold|gestremd|dik|gezet)|nao (?:coalhou|firmou)|(?:stelnade|satte sig) inte|inte (?:stelnat|satt)|ikke (?:stivnet|sat|satt)|nie (?:zgestn\w+|sciel\w+|zsiadl\w+))\b/;
/** Whether a remark plainly says that the jar had not set. */
export const saysNotSet = (text: string): boolean => NOT_SET.test(plain(text));
/** What a cell says beside that. */
export const besideNotSet = (text: string): string =>
  leftOf(text, (part) => NO.test(plain(part)) || !/[\p{L}\p{N}?]/u.test(plain(part).replace(NOT_SET, ' ')));

export const YES =
  /^(?:y|yes|yep|x|ok it set|set|it set|ja|oui|si|sim|tak|true|1|wahr|vrai|✓|✔|✅|☑|👍)\uFE0F?$/u;
export const NO = /^(?:n|no|nope|nein|non|nee|nao|nej|nei|nie|false|0|falsch|faux|❌|✗|✘|☐|👎)\uFE0F?$/u;
const SOFTENED = /\b(?:not|nicht|pas|no|non|niet|nao|inte|ikke|nie)\b/;

export type SetReading =
  | { readonly kind: 'word'; readonly word: SetWord; readonly exact: boolean }
  | { readonly kind: 'set' }
  | { readonly kind: 'not set' }
  /** It pours, which may be either. */
  | { readonly kind: 'pours' }
  | { readonly kind: 'unknown' };

/** A cell that tells how a jar set → one of the five set words, where it can be told. */
export function readSet(text: string): SetReading {
  const said = plain(text)
    .replace(/[.!]+$/, '')
    .trim();
  if (NOT_SET.test(said) || NO.test(said)) return { kind: 'not set' };
  if (YES.test(said)) return { kind: 'set' };
  if (POURS.test(said)) return { kind: 'pours' };
  if (SOFTENED.test(said)) return { kind: 'unknown' };
  const words: SetWord[] = [];
  let left = said;
  for (const [word, pattern] of SET_PHRASES) {
    const without = left.replace(pattern, ' ');
    if (without !== left) words.push(word);
    left = without;
  }
  const [word] = words;
  if (word === undefined || words.length > 1) return { kind: 'unknown' };
  if ((word === 'runny' || word === 'soft') && ON_ITS_WAY.test(said)) return { kind: 'unknown' };
  return { kind: 'word', word, exact: said === word };
}

/** Whether a cell tells how a jar set, in one of the words, as pouring or as not set. */
export const saysHowSet = (text: string): boolean =>
  saysNotSet(text) || ['word', 'pours'].includes(readSet(text).kind);

type Meant<Word> = readonly (readonly [Word | null, RegExp])[];
/** The word that a text means: of the first pattern that a part of it has; null where it has none. */
const meant = <Word>(text: string, words: Meant<Word>): Word | null => {
  const parts = thingsSaid(plain(text));
  return words.find(([, pattern]) => parts.some((part) => pattern.test(part)))?.[0] ?? null;
};

/** What stands around such words and tells nothing more. */
const AROUND =
  /\b(?:at all|gar|uberhaupt|a|an|ein|eine|un|une|en|et|of|the|very|quite|rather|some|bit|only|taste|tastes|tasted|whey|sehr|ganz|eher|ziemlich|nur|etwas|von|der|die|das|molke|schmeckt|tres|assez|du|de|la|le|petit[- ]lait|muy|suero|molto|siero|zeer|wei|muito|soro|mycket|meget|vassle|valle|myse|bardzo|serwatka|serwatki|on|top|oben)\b/g;

/** Whether a text says nothing but one of the words. @param noun what the others are said of: "slightly *sour*" */
function saysOnly<Word>(text: string, words: Meant<Word>, noun: RegExp): boolean {
  const said = plain(text);
  const pattern = words.find(([, one]) => one.test(said))?.[1];
  if (pattern === undefined || said.includes('?')) return false;
  const left = said.replace(new RegExp(pattern.source, 'g'), ' ').replace(AROUND, ' ').replace(noun, ' ');
  return !/[\p{L}\p{N}]/u.test(left);
}

const besideWord = <Word>(text: string, words: Meant<Word>, noun: RegExp): string =>
  leftOf(text, (part) => saysOnly(part, words, noun));

const WHEY_WORDS: Meant<NonNullable<Outcome['whey']>> = [
  ['none', /^(?:none|no|no whey|nil|0|-|nein|keine?|aucune?|pas|non|ningun\w*|nada|nessun\w*|niente|geen|nenhum\w*|inget|ingen|brak|nie)\b/],
  ['a little', /\b(?:not|nicht|pas|no|non|niet|nao|inte|ikke|nie) (?:so |too |very |that |sehr |zu |allzu )?(?:much|a lot|viel|beaucoup|much[oa]|molt[oa]|veel|muit[oa]|mycket|meget|mye|duzo)\b/],
  ['a lot', /\b(?:a? ?lots?|much|heavy|plenty|viel|beaucoup|much[oa]|molt[oa]|veel|muit[oa]|mycket|meget|mye|duzo)\b/],
  ['a little', /\b(?:little|bit|slight\w*|tiny|trace|drops?|wenig|etwas|peu|poc[oa]|un po|beetje|pouc[oa]|lite|lidt|litt|troche|malo)\b/],
  ['some', /^(?:whey|molke) (?:on top|off|obenauf|oben)$|\b(?:some|medium|moderate|mittel|moyen|algo|medio|wat|nagot|noget|noe|yes|ja|oui|si)\b/],
]; // prettier-ignore

/** How much whey, or null. */
export const readWhey = (text: string): Outcome['whey'] => meant(text, WHEY_WORDS);
/** What a cell of whey says beside that. */
export const besideWhey = (text: string): string => besideWord(text, WHEY_WORDS, /(?!)/);

/** A denial before a word for sour, with a little between: “not at all sour”, “kaum sauer”, “no acid yet”. */
const SOUR = String.raw`(?:sour\w*|tang\w*|tart\w*|acid\w*|sharp|sauer\w*|saure|acide\w*|zuur\w*|syrlig\w*|sur|kwasn\w+)`;
const DENIED = String.raw`(?:not|no|never|hardly|barely|isn'?t|wasn'?t|without|lacks?|nicht|kaum|kein\w*|ohne|pas|sans|sin|non|niet|geen|nauwelijks|nao|sem|inte|ingen|ikke|nie|bez)`;
const NOT_SOUR = new RegExp(
  String.raw`\b${DENIED}\b(?: \w+){0,2} ${SOUR}\b|\bunsour|\b${SOUR} (?:not|no|missing|lacking|fehlt)\b|\b${SOUR} ?\?`,
);

const TANG_WORDS: Meant<NonNullable<Outcome['tang']>> = [
  ['none', /^(?:none|no|not (?:sour|tangy)|0|-|keine?|aucune?|nada|geen|ingen|inget|brak)\b/],
  [null, NOT_SOUR],
  ['sharp', /\b(?:sharp|strong|very (?:sour|tangy|tart)|sehr sauer|kraftig|tres acide|fort|muy acid[oa]|fuerte|molto acid[oa]|zeer zuur|muito acid[oa]|mycket sur|meget syrlig|bardzo kwasn\w+)\b/],
  ['mild', /\b(?:mild|slight\w*|bit|etwas|wenig|gentle|light|little|leicht|douce?|leger|suave|leve|delicat[oa]|licht|svag|lagodn\w+)\b/],
  ['clear', /\b(?:clear|tangy|sour|tart|medium|normal|sauer|acide|acid[oa]|zuur|syrlig|sur|kwasn\w+)\b/],
]; // prettier-ignore

/** How sour, or null; what denies it, or asks, says only that: it is kept in its own words. */
export const readTang = (text: string): Outcome['tang'] => meant(text, TANG_WORDS);
/** What a cell of tang says beside that. */
export const besideTang = (text: string): string =>
  readTang(text) === null
    ? text.trim()
    : besideWord(text, TANG_WORDS, new RegExp(String.raw`\b${SOUR}\b`, 'g'));

/** Whey, in the languages that its amounts are read in. */
const WHEY = /\b(?:whey|molke|petit[- ]lait|suero|siero|soro|vassle|valle|myse|serwatk[ai])\b/;
/** Whether a thing that is said, in plain letters, tells how much whey and nothing else: "no whey", "viel Molke". */
export const saysWhey = (said: string): boolean =>
  WHEY.test(said) && readWhey(said.trim()) !== null && besideWhey(said.trim()) === '';

const OF_TASTE = new RegExp(String.raw`\b(?:mild\w*|${SOUR})\b`);
/** Whether it tells how sour, and nothing else: "very tangy", "mild". That it is not sour at all is more than that. */
export const saysSour = (said: string): boolean =>
  OF_TASTE.test(said) && !['none', null].includes(readTang(said.trim())) && besideTang(said.trim()) === '';
