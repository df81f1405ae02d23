// How a jar set, in words of the languages that can be vouched for. Said of a jar they are read as its set word, and ask nothing.
import type { SetWord } from '../ledger/records';

/** In order of testing; what one matched is taken out before the next is tried ("very thick" is not also "thick"). */
export const SET_PHRASES: readonly (readonly [SetWord, RegExp])[] = [
  ['very firm', /\b(?:(?:very|v\.?|extra|super|really|extremely|rock) (?:firm|thick|solid|stiff|hard)|set hard|rock hard|stiff|hard|(?:sehr|extrem) (?:fest|dick)|steinhart|tres (?:ferme|epais\w*|pris)|muy (?:firme|espes[oa]|dur[oa])|molto (?:sod[oa]|compatt[oa]|dens[oa]|ferm[oa])|(?:zeer|heel|erg) (?:stevig|dik)|muito (?:firme|espess[oa])|(?:mycket|meget|veldig) (?:fast|tjock|tyk|tykk)|bardzo (?:gest\w+|zwart\w+|tward\w+|sztywn\w+|scisl\w+))\b/g],
  ['runny', /\b(?:(?:very|really|too|quite) (?:thin|loose)|runny|thin|drinkable|drinking|soupy|like (?:kefir|cream|drinking yogh?urt)|zahflussig|dunn|trinkbar|coulant|buvable|bevibile|bebible|dun|drinkbaar|rinnig|los|drickbar|tynd|tynn|rzadk\w+|lejac\w+)\b/g],
  ['soft', /\b(?:(?:weak|loose|soft|light|partial)(?:ly)?[- ]set|(?:barely|partly|partially|half|just) set|set (?:soft|loose|weak)(?:ly)?|soft|loose|weak|wobbly|jiggly|weich|locker|halbfest|mou|molle|souple|tendre|bland[oa]|suave|tiern[oa]|morbid[oa]|zacht|slap|mole|maci[oa]|mjuk|blod|myk|miekk\w+|luzn\w+|delikatn\w+)\b/g],
  ['spoonable', /\b(?:spoonable|scoopable|(?:like )?(?:a )?(?:custard|pudding)(?:y|-like|ig)?|creamy|loffelfest|loffelbar|cremig|sahnig|puddingartig|cremeux|cremeuse|onctueu\w+|a la cuillere|cremos[oa]|al cucchiaio|lepelbaar|romig|skedbar|kramig|cremet|kremet|kremow\w+|jak budyn)\b/g],
  ['firm', /\b(?:firm(?:ly)?|solid(?:ly)?|thick|(?:well|fully|nicely|good|properly|completely)[- ]set|set (?:well|nicely|fully|firm)|good set|clean break|sliceable|holds? (?:its )?shape|fest|stichfest|schnittfest|dick|ferme|epais\w*|bien pris|firme|espes[oa]|(?:bien )?cuajad[oa]|sod[oa]|compatt[oa]|dens[oa]|ferm[oa]|ben rappreso|stevig|dik|espess[oa]|fast|tjock|tyk|tykk|stiv|gest\w+|zwart\w+|scisl\w+|sztywn\w+)\b/g],
]; // prettier-ignore

/** What stands around such words and tells nothing more: "nice and firm", "eher weich". */
const AROUND =
  /\b(?:and|und|et|y|e|en|og|och|i|to|bis|nice|nicely|rather|quite|pretty|fairly|really|just|a bit|slightly|was|is|it|eher|ziemlich|recht|ganz|etwas|leicht|war|ist|es|assez|plutot|un peu|bien)\b/g;

/** Whether a text in plain letters holds nothing but such words: "sehr fest", "thick and creamy". What asks is more: "soft?". */
export function onlyHowSet(said: string): boolean {
  const left = SET_PHRASES.reduce((text, [, phrases]) => text.replace(phrases, ' '), said);
  return left !== said && !said.includes('?') && !/\p{L}/u.test(left.replace(AROUND, ' '));
}
