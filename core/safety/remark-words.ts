// What free text says of spoilage and of what should be asked, read by lists of words for the languages of Latin script; the
// others stand in words-beyond-latin.ts. Words may stop a jar; none of them excuses one.
import type { DiscardSign } from '../ledger/records';
import { plain, remembered } from '../quantities/quantities';
import { withoutHarmless } from './harmless-words';
import { signsBeyondLatin, spoiledBeyondLatin } from './words-beyond-latin';

const SIGNS: readonly (readonly [DiscardSign, RegExp])[] = [
  ['pink', /\b(?:pink(?:ish)?|rosa(?:farben)?|rosee?s?|rosatre|rosastichig|rosafarg\w*|roze|rosad[oa]|cor-de-rosa|lyserod\w*|rozow\w*|pembe\w*)\b/],
  ['red', /\b(?:red(?:dish)?|rot(?:e[rsnm]?|lich\w*)?|rouge\w*|roj[oa]s?|ross[oa]|ross[ie]|rood|rode|vermelh[oa]s?|rott|czerwon\w+)\b/],
  ['orange', /\b(?:orange\w*|naranja|arancio\w*|arancione|oranje|laranja|pomaranczow\w+|turuncu\w*)\b/],
  ['black', /\b(?:black|schwarz\w*|noirs?|noires?|negr[oa]s?|ner[oaie]|zwarte?|pret[oa]s?|svart\w*|czarn\w+)\b/],
  ['fuzz', /\b(?:fuzz(?:y)?|fluff|fung(?:us|i)|furry|hairy|mou?ld(?:y|s)?|mildew|(?:green|blue|gr[ae]y)(?:ish)? (?:spots?|patch\w*|specks?|dots?|growth|fur)|(?:grune?|blaue?|graue?) (?:flecken?|punkte?|stellen?)|(?:taches?|points?) (?:vert|bleu|gris)\w*|manchas? (?:verdes?|azul\w*|gris\w*)|macchi[ae] (?:verd[ei]|blu|grigi\w*)|(?:groene|blauwe|grijze) (?:vlek\w*|stip\w*)|manchas? cinza\w*|(?:grona|gronne|bla|gra) (?:flackar|pletter|flekker)|zielon\w+ plam\w+|(?:ver|an|ange|be)?schimm(?!elfrei)\w+|moisi\w*|moho|mohos[oa]|muff[ae]|ammuffit\w+|bolor|mofo|mogel\w*|mogl\w*|muggen|skimmel\w*|plesn\w*|plesniow\w*|kuf(?:u|un|lu|len\w*)?)\b/],
  ['foul smell', /\b(?:foul|rotten|putrid|rancid|stinks?|stinky|stank|stench|(?:smell(?:s|ed)?|smelt) (?:very |really |quite |a (?:bit|little) |slightly |somewhat )?(?:bad|off|awful|wrong|terrible|horrible|nasty|rotten|(?:like|of) (?:feet|vomit|sick|rot|(?:rotten |bad )?eggs?|sulph?ur|sewage|ammonia|rubbish|garbage))|(?:bad|off|nasty|awful|suspicious) (?:smell|odou?r)|off[- ](?:smells?|odou?rs?|tastes?|flavou?rs?)|vomit|puke|faulig\w*|stinkt|stank|riecht (?:sehr |etwas )?(?:schlecht|ubel|faul|verdorben|nach (?:erbrochenem|schwefel|faulen eiern))|erbrochene\w*|vomi|vomito|pourri\w*|putrides?|fetides?|infectes?|ranci[es]?|nauseabond\w*|pue|mauvaises? odeurs?|sent (?:tres |un peu )?mauvais|huele mal|podrid[oa]|marci[oa]|puzza|stinkt|rotte|podre|cheira mal|rutten|luktar illa|radden|rattent|lukter vondt|smierdz\w+|zgnil\w+|cuchn\w+|(?:kotu|pis) kok\w*|kokmus\w*|curuk\w*|curumus\w*)\b/],
  ['foam', /\b(?:foam(?:y|ing|ed)?|froth(?:y|ing)?|schaum\w*|geschaumt|mousseu[sx]\w*|espum\w+|schium\w+|schuim\w*|skum\w*|pian[aye])\b/],
  ['lifted lid', /\b(?:blew (?:off )?(?:the |its |my )?lid|lids? (?:(?:had|has|have|was|were|is|are|got|been|all|half) )*(?:lifted|popped|blew|blown|bulged|bulging|raised|came off|come off|flew off|puff(?:ed|y|ing)|swollen|swelled|swelling|domed|bloated|ballooned)|(?:lifted|popped|bulging|bulged|raised|puff(?:ed|y)(?:[- ]up)?|swollen|swelled|domed|bloated|ballooned|blown(?:[- ]off)?) (?:the )?lids?|deckel (?:(?:hat|war|ist) )?(?:sich )?(?:hob|gehoben|gewolbt|aufgewolbt|aufgeblaht|angehoben|abgehoben|abgesprungen|abgeflogen|aufgesprungen|hochgegangen|hochgedruckt)\w*|(?:gewolbter|aufgeblahter) deckel|couvercle (?:(?:s'est|est|etait) )?(?:souleve|bombe|gonfle|saute)|tapa (?:hinchad|levantad|abombad)a|coperchio (?:gonfi|sollevat)o)\b/],
  ['torn curd', /\b(?:torn curd|curd (?:is |was )?torn|curds? (?:torn|ripped)|zerrissen\w*)\b/],
  ['bath water got in', /\b(?:(?:bath ?water|water(?: (?:from|out of) (?:the |my )?(?:water )?bath)?|(?:water )?bath) (?:has |had )?(?:got(?:ten)?|leaked|came|come|seeped|ran|run|splashed|spilled|spilt|went) in(?:to|side)?|(?:bath ?water|water from the bath) in (?:it|the jar)|badwasser (?:ist )?(?:drin|rein\w*|hinein\w*|eingedrungen|im glas)|wasser (?:(?:aus|vom) (?:dem )?(?:wasser)?bad (?:ist )?)?(?:drin|rein\w*|hinein\w*|eingedrungen|ins glas (?:gelaufen|gekommen)))\b/],
]; // prettier-ignore

const COLOURS: readonly DiscardSign[] = ['pink', 'red', 'orange', 'black'];
/** Things that have a colour and are no growth: a kitchen's fruit, lids, labels, spices. */
const THING =
  /^(?: (?:and|or) \w+)?\s*-?(?:zest|peel|juice|blossom|flavou?r|essence|oil|marmalade|slices?|segments?|rind|extract|water|syrup|lids?|labels?|caps?|jars?|bowls?|bands?|spoons?|pots?|tape|sticker|stickers|pens?|marker|ones?|towel|kettle|salt|tea|sesame|pepper|currants?|berr\w+|beans?|cherr\w+|fruits?|grapes?|wine|beans|ink|cups?|tops?(?= jar)|tray|box|deckel|glas|schale|saft|pot|couvercle|etiquette|bocal|tapa|tarro|frasco|coperchio|vasetto|deksel|kapa[kg]|kavanoz|lock|burk|pokryw\w+|sloik|dot sticker|paprika|rice|beet\w*|oats?|bran|(?:hot|outs?|plastic|rubber|bags?|lights?|lamp|led|cloth|seals?|gaskets?|foil|mugs?|elastic|baskets?|biro|chalk)\b)(?!\w*[- ]?(?:sized|shaped|ful|colou?red)\b)/;
const THING_BEFORE =
  /(?:blood|with an?|used (?:the|a|my|an)|in (?:the|a|my|an)|silicone|from an?|roten?|zest of an?|juice of an?|(?:marked|written|labell?ed|circled|noted) (?:in|with))\s+$/;
/** A thing of which a colour is all that is said: "lid is red". */
const THING_IS =
  /(?:^|\b(?:the|its|a|my) )(?:lid|label|cap|light|band|tape|spoon|bowl|sticker|thermometer)s?(?: is| was| are|:)? $/;
const MOULD_SHAPE = /\b(?:silicone|baking|muffin|jelly|ice|cake) mou?lds?|in(?:to)? (?:the |a )?mou?lds?\b/;
const NEGATION_WORD =
  /(?:\b(?:no|not|without|never|none|nothing|free of|isn'?t|wasn'?t|didn'?t|neither|nor|kein\w*|nicht|ohne|weder|pas d['e]?|pas|sans|aucune?|sin|ningun\w*|non|senza|nessun\w*|geen|niet|zonder|nao|sem|nenhum\w*|ingen|inget|inga|inte|utan|ikke|uden|uten|bez|brak|nie)\b)/;
const ENDS = [',', ';', '.', '!', '?'];
/** Whether what stands before a word denies it: a negation with no mark of punctuation after it. */
const denies = (before: string): boolean =>
  NEGATION_WORD.test(before.slice(Math.max(...ENDS.map((mark) => before.lastIndexOf(mark))) + 1));
/** Turkish denies behind the word: "küf yok". */
const DENIED_AFTER =
  /^(?: (?:kokusu|izi|lekesi))?(?: (?:ve|veya|ya da) (?:kotu |pis )?(?:koku|kuf|leke)\w*)?(?: hic)? (?:yok|degil|gorunmuyor|gormedim)\b/;
/** English may say so behind the word too: "looked for mould and found none", "pink streaks: none". */
const NONE_AFTER =
  /^(?: (?!some|but)\w+)?(?:[:,]| -)?(?: and)?(?: (?:was|were|have|had|i))?(?: found| seen| saw)? none\b/;
/** A question that its writer answered with no: "spoiled? no"; "no idea" is no answer. */
const ANSWERED_NO =
  /(?<![^,;.!?])[^,;.!?]*\?\s*(?:no|nope|nein|non|nee|nej|nie)\b(?! (?:idea|clue|doubt|way))/gi;
/** A text without the questions that it answers itself. */
export const withoutAnswered = (text: string): string => text.replaceAll(ANSWERED_NO, '');

const SPOILED =
  /\b(?:spoil(?:ed|t)|(?:tast(?:es|ed)|looks?|looked|seems?|seemed) (?:a (?:bit|little|touch) |slightly |somewhat |very |really |quite )?off(?![- ]\w)|^(?:a (?:bit|little|touch) |slightly |somewhat )off$|turned (?:bad|rotten|rancid)|(?:has|have|had) turned$|gone off|went off|gone bad|went bad|contaminated|verdorben|kontaminiert|gate|avarie\w*|contamine\w*|estropead[oa]|contaminad[oa]|mal estado|andat[oa] a male|guast[oa]|contaminat[oa]|bedorven|besmet|estragad[oa]|skamd|forstord|fordaervet|odelagt|bedervet|zepsut\w*|skazon\w*|bozulmus\w*)\b/;
const THROWN =
  /\b(?:threw (?:it |this |that |the (?:whole )?(?:jar|lot|thing) )?(?:all )?(?:out|away)|thrown (?:out|away)|tossed|discarded|binned|dumped|ditched|down the (?:sink|drain)|weggeworfen|entsorgt|weggekippt|weggeschuttet|jetee?s?|tirad[oa]|lo tire|la tire|desechad[oa]|buttat[oa]|gettat[oa]|weggegooid|deitad[oa] fora|jogad[oa] fora|slangd\w*|slangt|kastad|kastet|smidt ud|wyrzuc\w+)\b/;
const HARMLESS =
  /\b(?:dropped|broke|broken|spilled|spilt|smashed|cracked|too old|too long|forgot|no room|no space|ran out of (?:room|time)|extra|leftover|the rest|half|holiday|heruntergefallen|zerbrochen|ubrig|cass[eé]|tombe|too thin|too sour|too runny|didn'?t like)\b/;
const BUBBLES =
  /\b(?:fizz\w*|bubbl\w*|effervescen\w*|carbonat\w*|blasch\w*|blasen|blasig|sprudel\w*|prickel\w*|petill\w*|bulles?|gazeu\w*|burbuj\w*|bollicin\w*|frizzant\w*|efervesc\w*|bubbel\w*|bubbl\w*|borrel\w*|bolhas?|bobler|brus\w*|babelk\w*|gazowan\w*)\b/;
/** Threads or slime: some cultures pull threads, and some spoilage does; only the keeper can tell. */
const SLIME =
  /\b(?:slime|slimy|slimey|ropy|schleim|schleimig\w*|fadenziehend\w*|visqueu[sx]\w*|gluant\w*|viscid[oa]|babos[oa]|limos[oa]|slijm\w*|slemmig\w*|slimet\w*|sluzowat\w*|oslizl\w*)\b/;
/** Said of a jar that nobody is to eat. */
const NOT_EATEN =
  /\b(?:(?:do not|don'?t|never) (?:eat|taste|drink)|not (?:safe |fit )?to (?:be )?(?:eat|eaten)|not edible|inedible|(?:would not|wouldn'?t) eat|made (?:me|us|him|her|them) (?:sick|ill)|threw up|(?:sick|ill) after eating|nicht (?:mehr )?(?:essen|probieren|geniessbar)|ungeniessbar\w*|ne pas (?:manger|consommer|gouter)|no (?:comer|consumir|probar)|non (?:mangiare|consumare)|niet (?:op)?eten|nao comer|at (?:den )?inte|spis (?:den )?ikke|nie jesc)\b/;
/** Why a jar that is fine may be left alone. */
const KEPT_FOR =
  /\b(?:seeds?|reserve|starter|culture|mother|keep(?:ing)?|kept|saved?|until|till|before|yet|saat|impf\w*|ansatz|aufheben|bis|noch|vor)\b/;
const POWER_CUT =
  /\b(?:(?:breaker|fuse) (?:had |has )?(?:tripped|blew|blown)|unplugged by (?:mistake|accident)|accidentally unplugged|(?:switched|turned) itself off|power (?:(?:was|were|went|is|had (?:been|gone)|has (?:been|gone)|got) )?(?:out|down)|power (?:was|went|had (?:been|gone)|has (?:been|gone)|is|got) off|power[- ]?(?:cuts?|outages?|failures?|loss)|power failed|(?:lost|no|without) (?:the )?(?:power|electricity)(?![- ]?(?:cut|out|fail|loss))|outage|black ?out|electricity (?:(?:was|went|is|had (?:been|gone)) )?(?:out|off|failed)|stromausfall\w*|stromunterbrechung|(?:kein(?:en)?|ohne) strom|strom (?:(?:war|ist|fiel) )?(?:weg|aus|ausgefallen)|(?:coupure|panne) (?:de |d'|du )?(?:courant|electricite)|pas (?:de courant|d'electricite)|cortes? de (?:luz|energia|corriente)|apagon|sin luz|(?:interruzione|mancanza) (?:di|della) corrente|senza corrente|stroomuitval|stroomstoring|falta de (?:luz|energia)|stromavbrott\w*|strombrudd?\w*|stromafbrydelse|brak pradu|awaria pradu)\b/;
const LENGTH = String.raw`(\d+(?:[.,]\d+)?|an?|one|eine[rn]?)[ -]?(h|hrs?|hours?|std|stunden?|stundig\w*|heures?|horas?|or[ae]|uur|timmar|timmes?|timer|timers|godz\w*|min|mins|minutes?|minuten|minut\w*)\b`;
const LENGTH_AFTER = new RegExp(`^[^;!?]{0,40}?\\b${LENGTH}`);
const LENGTH_BEFORE = new RegExp(`\\b${LENGTH}[ -]?(?:long |of |de |d')?$`);

const FIBRE_LIKE =
  /\b(?:purple|violet|mauve|brown(?:ish)?|jelly|jellied|gel|gelled|gummy|lila|violett|braun\w*|gelee|gelig|brun[ea]?|marron|violett?[oa]?|morad[oa]|bruin|paars|brunt?|lilla|fioletow\w*|brazow\w*)\b/;

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
    readonly kind: 'bubbles' | 'fibre' | 'slime' | 'colour of a thing' | 'uncertain sign' | 'unsure';
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

const sentenceParts = (text: string): string[] =>
  text.split(
    // "no - pink" answers a question, and says why.
    /(?<=(?:^|[^\p{L}])(?:no|nein|non|nope|nee|nej|nie))\s+[-–—]\s+|(?<=[,;.!?。，；！？।])\s*(?:(?:but|aber|mais|pero|ma|maar|mas|men|ale|ama|но|але)\s+)?|\s+(?:but|aber|mais|pero|ma|maar|mas|men|ale|ama|но|але)\s+/iu,
  );

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

/** Reads a remark for signs of spoilage and doubts. A negation ("no mould") is heard; a coloured thing ("orange zest") is asked about. */
export const readRemark = remembered(hearRemark);

function hearRemark(text: string): RemarkReading {
  const signs: DiscardSign[] = [];
  const asks: RemarkReading['asks'][number][] = [];
  const said = withoutHarmless(withoutAnswered(plain(text)));
  for (const [sign, pattern] of SIGNS) {
    for (const clause of clausesOf(said)) {
      const found = pattern.exec(clause);
      if (!found) continue;
      const before = clause.slice(0, found.index);
      const after = clause.slice(found.index + found[0].length);
      if (denies(before) || /^[- ]free\b/.test(after) || DENIED_AFTER.test(after) || NONE_AFTER.test(after))
        continue;
      if (
        (COLOURS.includes(sign) &&
          (THING.test(after) ||
            THING_BEFORE.test(before) ||
            (THING_IS.test(before) && /^[\s.!]*$/.test(after)))) ||
        (sign === 'fuzz' && MOULD_SHAPE.test(clause))
      ) {
        asks.push({ kind: 'colour of a thing', words: clause.trim() });
        continue;
      }
      if (!signs.includes(sign)) signs.push(sign);
      if (
        /^\s*\w*\s*\?/.test(after) ||
        /\b(?:maybe|perhaps|possibly|vielleicht|peut-etre|quiza|forse|misschien|talvez|kanske|maske|kanskje|moze)\b/.test(
          clause,
        )
      ) {
        asks.push({ kind: 'uncertain sign', words: clause.trim() });
      }
    }
  }
  for (const clause of clausesOf(said)) {
    for (const { sign, thing, unsure } of signsBeyondLatin(clause)) {
      const words = clause.normalize('NFC').trim();
      if (thing) asks.push({ kind: 'colour of a thing', words });
      else {
        if (!signs.includes(sign)) signs.push(sign);
        if (unsure) asks.push({ kind: 'uncertain sign', words });
      }
    }
  }
  const unlessDenied = (pattern: RegExp): RegExpExecArray | null => {
    const found = pattern.exec(said);
    return found && !denies(said.slice(0, found.index)) ? found : null;
  };
  const bubbles = unlessDenied(BUBBLES);
  if (bubbles) asks.push({ kind: 'bubbles', words: bubbles[0] });
  const fibre = unlessDenied(FIBRE_LIKE);
  if (fibre) asks.push({ kind: 'fibre', words: fibre[0] });
  const slime = unlessDenied(SLIME);
  if (slime) asks.push({ kind: 'slime', words: slime[0] });
  const notEaten = NOT_EATEN.exec(said);
  if (notEaten) asks.push({ kind: KEPT_FOR.test(said) ? 'unsure' : 'uncertain sign', words: text.trim() });
  const power = unlessDenied(POWER_CUT);
  if (asks.length === 0 && /\?\s*$/.test(said)) asks.push({ kind: 'unsure', words: text.trim() });
  const thrown = unlessDenied(THROWN) !== null;
  return {
    signs,
    spoiledSaid:
      unlessDenied(SPOILED) !== null ||
      clausesOf(said).some(spoiledBeyondLatin) ||
      (notEaten !== null && !KEPT_FOR.test(said)),
    thrownOut: thrown && !HARMLESS.test(said),
    powerCut: power && { hours: lengthOf(said, power) },
    asks,
  };
}
