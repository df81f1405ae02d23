// Words that stand around seeds in a keeper's notes, in the languages keepers write in.
import { plain } from '../../quantities/quantities';

export const STOP = new Set(
  "jar jars glas glass glaser pot pots bocal frasco tarro vasetto barattolo burk sloik sloika batch batches lot charge ansatz fournee lote lotto sats partia from of the made on vom von aus du de del der die das di da van do dos fra fran z ze la le les el il lo den det dem at with mit avec con a seed seeded starter culture some no nr letter one jar's is was and no. number buchstabe lettre letra lettera potje vidro".split(
    ' ',
  ),
);
export const SAME_DAY =
  /\b(?:same (?:day|batch)|this batch|gleiche[rn]? tag|selbe[rn]? tag|meme jour|mismo dia|stesso giorno|zelfde dag|mesmo dia|samma dag|samme dag|ten sam dzien|tego samego dnia)\b/;
export const PREVIOUS =
  /\b(?:previous|prev|prior|last|latest|(?:jar|pot|glass|batch|lot|glas|ansatz|charge) (?:just )?(?:before|davor|vorher)|most recent|letzte[rsnm]?|vorige[rsnm]?|vorherige[rsnm]?|precedente?|dernier(?:e)?|anterior|ultim[oa]|scors[oa]|laatste|vorig|forra|senaste|forrige|sidste|siste|poprzedni\w*|ostatni\w*)\b/;
export const BEFORE_LAST =
  /\b(?:before last|vorletzt\w*|avant-dernier\w*|penultim\w*|antepenultim\w*|the one before)\b/;
export const PREVIOUS_WORDS =
  /\b(?:previous|prev|prior|last|latest|before|davor|vorher|most|recent|time|time's|week|week's|one|woche\w*|letzte\w*|vorige\w*|vorherige\w*|precedente?|dernier\w*|anterior|ultim[oa]|laatste|vorig|forra|senaste|forrige|sidste|siste|poprzedni\w*|ostatni\w*|vez|fois|volta|keer|gang(?:en)?|gange|mal|same|day|this|gleiche[rn]?|selbe[rn]?|tag|am|meme|jour|mismo|dia|stesso|giorno|zelfde|dag|mesmo|samma|samme|ten|sam|dzien)\b/g;
/** "Two weeks ago", "vor 2 Wochen": how many, and days or weeks. */
export const AGO =
  /\b(?:(\d{1,2}|an?|one|two|three|four) (day|week)s? (?:ago|before|earlier)|vor (\d{1,2}|einer|einem|zwei|drei|vier) (tag|woche)(?:en|n)?)\b/;
export const COUNTS: Readonly<Record<string, number>> = {
  a: 1, an: 1, one: 1, einer: 1, einem: 1, two: 2, zwei: 2, three: 3, drei: 3, four: 4, vier: 4,
}; // prettier-ignore
export const CULTURE =
  /\b(?:neighbou?r\w*|friend\w*|received|gift(?:ed)?|given|gave|swap(?:ped)?|club|someone|aunt|uncle|mother-in-law|sister|brother|colleague|past unknown|unknown past|nachbar\w*|freund\w*|geschenk\w*|bekommen|erhalten|verein|kollegin?|voisine?s?|amie?s?|recue?s?|offerte?|vecin[oa]s?|amig[oa]s?|regal[oa]\w*|recibid[oa]|vicin[oa]|amic[oa]|regalat[oa]|ricevut[oa]|buren|buurvrouw|buurman|vriend\w*|gekregen|vizinh[oa]s?|recebid[oa]|granne\w*|van(?:nen)?|fatt|nabo\w*|venn?(?:en)?|sasiad\w*|przyjaciel\w*|otrzyman\w*)\b/;
export const PRODUCT =
  /\b(?:starter(?: culture)? (?:powder|sachet|packet|from)|powder|product|probiotic\w*|store[- ]bought|shop[- ]bought|fresh start|from scratch|new start|freeze[- ]dried|pulver|produkt|poudre|polvo|polvere|poeder|po|proszek|sachet|packet)\b/;
export const FUNCTION_WORDS =
  /\b(?:who|whoever|what|whatever|where|no idea|idea|something|leftovers?|the|one|good|best|old|older|before|after|from|last|that|which|some|other|another|unknown|\?+|der|die|das|alte[rsn]?|gute[rsn]?|vor|nach|le|la|les|celui|celle|bon|bonne|vieux|avant|apres|el|buen[oa]?|viej[oa]|antes|despues|il|buon[oa]?|vecchi[oa]|prima|dopo|goede|oude|voor|na|bom|boa|velh[oa]|depois|gamla|goda|fore|efter|gode|gamle|for|etter|dobry|dobra|stary|przed|po|jar|jars|glas|glass|batch|pot|bocal|frasco|tarro|vasetto|burk|sloik\w*|don'?t|know|forgot|maybe|not|sure|dunno)\b/;
const PIECES = String.raw`(?:capsules?|caps|kaps|kps|tablets?|tabs|tabl|pills|sachets?|kapseln|tabletten|beutel|g[eé]lules|comprim[eé]s|c[aá]psulas|comprimidos|compresse|kapslar|tabletter|kapsler|kapsu[lł](?:ki|ek)|tablet(?:ki|ek))`;
/** A word for pieces of a product. */
export const PIECE_WORD = new RegExp(String.raw`(?:^|\s)${PIECES}(?=\s|$)`, 'iu');
/** It at the beginning. */
export const PIECE_FIRST = new RegExp(String.raw`^${PIECES}(?=\s|$)`, 'iu');
/** It within a text, also right beside a figure or a mark. */
export const PIECE_WITHIN = new RegExp(String.raw`\s*(?<!\p{L})${PIECES}(?!\p{L})\.?`, 'iu');
export const JAR_WORDS = new Set(
  'batch jar glas glass pot lot charge no nr week wk woche kw bocal frasco tarro vasetto burk sloik ansatz lote lotto sats'.split(
    ' ',
  ),
);
export const STRONG =
  /\s*(?:\+|;|&|\s(?:and|plus|und|sowie|mixed with|mit|with|avec|et|con|y|e|og|och|en|i|com|med|oraz|z)\s)\s*/i;
/** A part of a jar, or its frozen reserve, named beside it. */
export const PARTS_OF_JARS: readonly (readonly ['whey' | 'curd' | 'cubes', RegExp])[] = [
  [
    'whey',
    /\(?\b(?:whey|molke|petit[- ]lait|lactos[eé]rum|suero|siero|wei|soro|vassle|valle|myse|serwatka)\b(?:\s+(?:only|nur|from|of|off|out of|aus|von|vom|de|du|di|van|fr[aå]n|fra|z))?\s*\)?/iu,
  ],
  [
    'curd',
    /\(?\b(?:curds?|bruch|dickmilch|caill[eé]|cuajada|cagliata|wrongel|coalhada|ostmassa|ostemasse|skrzep)\b(?:\s+(?:only|from|of|out of|aus|von|vom|de|du|di|van|fr[aå]n|fra|z))?\s*\)?/iu,
  ],
  [
    'cubes',
    /\(?(?:\b\d{1,2}\s+|\ban?\s+)?\b(?:(?:frozen|freezer|thawed)(?:\s+(?:ice\s+)?(?:cubes?|portions?|reserve|pot|flakes?))?|(?:ice\s+)?cubes?|eisw(?:ü|ue)rfel|w(?:ü|ue)rfel|gefroren\w*|gla[cç]ons?|congel\w+|surgel\w+|cubitos?|cubetti|blokjes|kuber|terninger|kostki)\b(?:\s+(?:from|of|out of|aus|von|vom|de|du|di|van|fr[aå]n|fra|z))?\s*\)?/iu,
  ],
];
export const WEAK = /\s*(?:,\s+|,(?=\D)|\s\/\s|\/(?=\p{L})|(?<=\p{L})\/(?=\d))\s*/iu;

/** The words of a text, plain. */
export const words = (text: string): string[] =>
  plain(text)
    .replace(/\b(wk|kw|week|woche)(?=\d)/g, '$1 ')
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '');
/** Words that say something: not "jar", "the", "from". */
export const unused = (text: string): string[] => words(text).filter((word) => !STOP.has(word));
