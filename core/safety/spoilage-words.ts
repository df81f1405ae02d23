// Words of spoilage as keepers write them, a table a row for each thing said in each language, with what stops and what must
// not: in the languages that notes are read in (layout/languages), the first six with phrases, the others with plain words only.
// Every other remark is quoted until it is answered, in whatever language. Common practice, no source. Words may stop a jar; none
// excuses one.
import type { DiscardSign } from '../ledger/records';
import { phrases } from './phrases';

/** What words tell: a sign; spoiled with no sign named; thrown out whole; what only the keeper can tell. */
export type Told =
  DiscardSign | 'spoiled' | 'thrown out' | 'not eaten' | 'bubbles' | 'slime' | 'like a fibre';

export interface SpoilageRow {
  readonly tells: Told;
  readonly language: 'en' | 'de' | 'fr' | 'es' | 'it' | 'nl' | 'pt' | 'sv' | 'da' | 'pl';
  /** Phrases, plain and in lower case; * is any ending, {name} one of a list, {name?} one or none. */
  readonly words: string;
  /** Where in a clause it must stand; anywhere where nothing is said. */
  readonly only?: 'at the end' | 'alone';
  readonly stops: readonly string[];
  readonly not: readonly string[];
}

/** Lists that phrases are put together from. */
const LISTS: Readonly<Record<string, string>> = {
  degree: 'very, really, quite, so, rather, pretty, a bit, a little, a touch, slightly, somewhat, kind of, sehr, etwas, leicht, ein bisschen, tres, un peu, muy, un poco, molto, un po, heel, erg, een beetje',
  be: 'had, has, have, was, were, is, are, got, been, all, half, had been, has been, have been, had all, were all',
  raised: 'lifted, popped, popped off, popped up, blew, blown, blew off, blown off, bulged, bulging, raised, came off, come off, flew off, puffed, puffy, puffing, puffed up, swollen, swelled, swelling, domed, bloated, ballooned',
  bad: 'bad, off, awful, wrong, terrible, horrible, nasty, disgusting, vile, rotten, putrid, like feet, like vomit, like sick, like rot, like rotten eggs, like bad eggs, like eggs, like sulphur, like sulfur, like sewage, like ammonia, like rubbish, like garbage, like drains, of feet, of vomit, of sick, of rot, of rotten eggs, of bad eggs, of sulphur, of sulfur, of sewage, of ammonia, of rubbish, of garbage, of drains',
  stench: 'bad, off, nasty, awful, horrible, disgusting, suspicious, rotten, foul, putrid',
  tint: 'green, greenish, blue, bluish, grey, greyish, gray, grayish',
  growth: 'spot*, patch*, speck*, dot*, fleck*, blotch*, growth*, fur, colon*',
  entered: 'got in*, gotten in*, leaked in*, came in*, come in*, seeped in*, ran in*, run in*, splashed in*, spilled in*, spilt in*, went in*, got inside, leaked inside',
  outOf: 'out, away, it out, it away, it all out, it all away, this out, that out, the jar out, the jar away, the whole jar out, the whole jar away, the lot out, the lot away, the whole lot out, the whole lot away, the whole thing out, the whole thing away, all of it out, all of it away',
}; // prettier-ignore

export const SPOILAGE: readonly SpoilageRow[] = [
  { tells: 'pink', language: 'en', words: 'pink, pinkish, pinky', stops: ['pink streaks', 'a pinkish rim'], not: ['no pink', 'pink lid'] },
  { tells: 'pink', language: 'de', words: 'rosa, rosafarben*, rosastichig*, pinke, pinken, pinker', stops: ['rosa Flecken'], not: ['kein Rosa', 'rosa Deckel'] },
  { tells: 'pink', language: 'fr', words: 'rosatre*, tache rose, taches roses, point rose, points roses, trace rose, traces roses, couleur rose, teinte rose, reflets roses', stops: ['des taches roses'], not: ['pas de taches roses', 'the curd rose'] },
  { tells: 'pink', language: 'es', words: 'rosado, rosada, rosados, rosadas', stops: ['manchas rosadas'], not: ['sin manchas rosadas'] },
  { tells: 'pink', language: 'nl', words: 'roze', stops: ['roze vlekken'], not: ['geen roze vlekken'] },
  { tells: 'red', language: 'en', words: 'red, reddish', stops: ['reddish spots'], not: ['red label', 'no red', 'bread'] },
  { tells: 'red', language: 'de', words: 'rot, rote, roter, rotes, roten, rotem, rotlich*', stops: ['rote Punkte'], not: ['roter Deckel'] },
  { tells: 'red', language: 'fr', words: 'rouge, rouges, rougeatre*', stops: ['points rouges'], not: ['sans points rouges'] },
  { tells: 'red', language: 'es', words: 'rojo, roja, rojos, rojas, rojiz*', stops: ['manchas rojas'], not: ['tapa roja'] },
  { tells: 'red', language: 'it', words: 'rosso, rossa, rossi, rosse, rossastr*', stops: ['macchie rosse'], not: ['coperchio rosso'] },
  { tells: 'red', language: 'nl', words: 'rood, rode', stops: ['rode stippen'], not: ['rode deksel'] },
  { tells: 'orange', language: 'en', words: 'orange, orangey, orangish', stops: ['orange growth'], not: ['orange zest'] },
  { tells: 'orange', language: 'de', words: 'orangefarben*, oranger, oranges, orangen', stops: ['orangefarbene Stellen'], not: ['keine orangefarbenen Stellen'] },
  { tells: 'orange', language: 'es', words: 'naranja, anaranjad*', stops: ['manchas naranja'], not: ['sin manchas naranja'] },
  { tells: 'orange', language: 'it', words: 'arancio*, arancione', stops: ['macchie arancioni'], not: ['senza macchie arancioni'] },
  { tells: 'orange', language: 'nl', words: 'oranje', stops: ['oranje vlekken'], not: ['geen oranje vlekken'] },
  { tells: 'black', language: 'en', words: 'black, blackish', stops: ['black specks'], not: ['black pepper', 'no black specks'] },
  { tells: 'black', language: 'de', words: 'schwarz*', stops: ['schwarze Punkte'], not: ['schwarzer Tee', 'keine schwarzen Punkte'] },
  { tells: 'black', language: 'fr', words: 'noir, noire, noirs, noires, noiratre*', stops: ['points noirs'], not: ['sans points noirs'] },
  { tells: 'black', language: 'es', words: 'negro, negra, negros, negras, negruzc*', stops: ['puntos negros'], not: ['sin puntos negros'] },
  { tells: 'black', language: 'it', words: 'nero, nera, neri, nere, nerastr*', stops: ['puntini neri'], not: ['nessun puntino nero'] },
  { tells: 'black', language: 'nl', words: 'zwart, zwarte', stops: ['zwarte stipjes'], not: ['zwarte deksel'] },
  {
    tells: 'fuzz', language: 'en',
    words: 'mould, mold, moulds, molds, mouldy, moldy, moulding over, gone mouldy, mildew*, fuzz, fuzzy, fluff, fung*, furry, hairy, whiskers, {tint} {growth}, {tint} and {tint} {growth}, growth on top, growth on the surface, growths',
    stops: ['mold', 'some mold on top', 'mouldy', 'small mould spot', 'green spots', 'mold in the jar', 'a furry skin', 'mould?'],
    not: ['no mold', 'silicone mold', 'mold no. 3', 'mould #2', 'no sign of mould', 'free of mould', 'mould-free', 'checked for mould and found none', 'light and fluffy'],
  },
  {
    tells: 'fuzz', language: 'de',
    words: 'schimmel, schimmels, schimmelig*, schimmelt*, schimmeln*, schimmelfleck*, schimmelpilz*, schimmelrasen, verschimmel*, angeschimmel*, schimmlig*, pelzig*, flaum*, grune flecken, grune punkte, grune stellen, blaue flecken, blaue punkte, graue flecken, graue punkte, graue stellen',
    stops: ['Schimmel am Rand', 'verschimmelt', 'grüne Flecken'], not: ['kein Schimmel', 'schimmelfrei', 'nicht verschimmelt'],
  },
  {
    tells: 'fuzz', language: 'fr',
    words: 'moisi, moisie, moisis, moisies, moisissure*, duvet, taches vertes, taches bleues, taches grises, points verts, points bleus, points gris',
    stops: ['un peu de moisissure', 'moisi'], not: ['pas de moisissure', 'sans moisissures'],
  },
  {
    tells: 'fuzz', language: 'es',
    words: 'moho, mohos, mohoso, mohosa, enmohecid*, pelusa, hongos, manchas verdes, manchas azules, manchas grises',
    stops: ['moho encima', 'manchas verdes'], not: ['sin moho'],
  },
  {
    tells: 'fuzz', language: 'it',
    words: 'muffa, muffe, ammuffit*, macchie verdi, macchie blu, macchie grigie, peluria',
    stops: ['muffa in superficie'], not: ['senza muffa', 'nessuna muffa'],
  },
  {
    tells: 'fuzz', language: 'nl',
    words: 'schimmelig*, beschimmeld*, groene vlekken, groene stippen, blauwe vlekken, grijze vlekken, pluis, pluizig',
    stops: ['beschimmeld', 'groene vlekken'], not: ['niet beschimmeld'],
  },
  {
    tells: 'foul smell', language: 'en',
    words: 'foul, rotten, rotting, putrid, rancid, stink*, stunk, stank, stench, vomit, puke, reeks, reeked, smell {degree?} {bad}, smells {degree?} {bad}, smelled {degree?} {bad}, smelt {degree?} {bad}, smelling {degree?} {bad}, {stench} smell*, {stench} odour*, {stench} odor*, off taste*, off flavour*, off flavor*, off odour*',
    stops: ['smells a bit off', 'a suspicious smell', 'stinks', 'smelt like rotten eggs', 'reeks'],
    not: ['does not smell off', 'smells of yoghurt', 'no off smell'],
  },
  {
    tells: 'foul smell', language: 'de',
    words: 'faulig*, stinkt, stinken*, stank, gestank, erbrochene*, ranzig*, riecht {degree?} schlecht, riecht {degree?} ubel, riecht {degree?} faul, riecht {degree?} verdorben, riecht {degree?} komisch, riecht nach erbrochenem, riecht nach schwefel, riecht nach faulen eiern, roch {degree?} schlecht, roch {degree?} ubel, ubler geruch, schlechter geruch',
    stops: ['riecht sehr übel', 'stinkt', 'riecht nach faulen Eiern'], not: ['stinkt nicht', 'riecht frisch'],
  },
  {
    tells: 'foul smell', language: 'fr',
    words: 'pourri, pourrie, pourris, pourries, putride*, fetide*, infecte*, rance*, nauseabond*, pue, vomi, mauvaise odeur, mauvaises odeurs, sent {degree?} mauvais, odeur suspecte',
    stops: ['mauvaise odeur', 'ça sent mauvais'], not: ['pas de mauvaise odeur'],
  },
  {
    tells: 'foul smell', language: 'es',
    words: 'huele {degree?} mal, olia {degree?} mal, mal olor, podrido, podrida, podridos, rancio, rancia, apesta*, vomito',
    stops: ['huele muy mal', 'podrido'], not: ['no huele mal', 'sin mal olor'],
  },
  {
    tells: 'foul smell', language: 'it',
    words: 'puzza, puzzava, puzzolente, marcio, marcia, rancido, rancida, cattivo odore, vomito, odore sgradevole',
    stops: ['puzza', 'cattivo odore'], not: ['non puzza', 'nessun cattivo odore'],
  },
  {
    tells: 'foul smell', language: 'nl',
    words: 'stinkt, stinken, stonk, rotte, ranzig*, ruikt {degree?} vies, ruikt {degree?} slecht, ruikt {degree?} bedorven, vieze geur, braaksel',
    stops: ['ruikt vies', 'stinkt'], not: ['stinkt niet'],
  },
  { tells: 'foam', language: 'en', words: 'foam, foamy, foaming, foamed, froth, frothy, frothing, frothed', stops: ['foam on top'], not: ['no foam', 'foam strip', 'in the foam box'] },
  { tells: 'foam', language: 'de', words: 'schaum*, geschaumt', stops: ['Schaum oben'], not: ['kein Schaum'] },
  { tells: 'foam', language: 'fr', words: 'mousseux, mousseuse, de la mousse, avec mousse, mousse en surface, mousse dessus', stops: ['de la mousse'], not: ['pas mousseux', 'like a mousse'] },
  { tells: 'foam', language: 'es', words: 'espuma, espumos*', stops: ['espuma arriba'], not: ['sin espuma'] },
  { tells: 'foam', language: 'it', words: 'schiuma, schiumos*', stops: ['schiuma sopra'], not: ['senza schiuma'] },
  { tells: 'foam', language: 'nl', words: 'schuim, schuimt, schuimig*, schuimend*', stops: ['schuim bovenop'], not: ['geen schuim'] },
  {
    tells: 'lifted lid', language: 'en',
    words: 'lid {be?} {be?} {raised}, lids {be?} {be?} {raised}, {raised} lid, {raised} lids, {raised} the lid, blew off its lid, blew the lid, blew its lid, blew my lid',
    stops: ['lid had blown off', 'puffed up lid', 'the lids were swollen', 'gas blew the lid off'], not: ['lid on loosely', 'the lid was never puffed up', 'lifted the lid to look'],
  },
  {
    tells: 'lifted lid', language: 'de',
    words: 'deckel aufgeblaht, deckel hob sich, deckel hat sich gehoben, deckel gehoben, deckel gewolbt, deckel hat sich gewolbt, deckel ist gewolbt, deckel war gewolbt, deckel angehoben, deckel hochgedruckt, deckel abgesprungen, deckel aufgesprungen, deckel ist abgesprungen, deckel ist aufgesprungen, deckel hochgegangen, gewolbter deckel, aufgeblahter deckel',
    stops: ['Deckel aufgebläht', 'Deckel hob sich'], not: ['Deckel nur aufgelegt'],
  },
  { tells: 'lifted lid', language: 'fr', words: "couvercle souleve, couvercle bombe, couvercle gonfle, couvercle a saute, couvercle s'est souleve, couvercle etait bombe, couvercle est bombe", stops: ['couvercle bombé'], not: ['couvercle posé'] },
  { tells: 'lifted lid', language: 'es', words: 'tapa hinchada, tapa levantada, tapa abombada', stops: ['tapa abombada'], not: ['tapa puesta'] },
  { tells: 'lifted lid', language: 'it', words: 'coperchio gonfio, coperchio sollevato, coperchio bombato', stops: ['coperchio gonfio'], not: ['coperchio appoggiato'] },
  { tells: 'torn curd', language: 'en', words: 'torn curd*, curd torn, curds torn, curd is torn, curd was torn, curds were torn, ripped curd*, curd ripped, curds ripped', stops: ['the curd was torn'], not: ['no torn curd'] },
  { tells: 'torn curd', language: 'de', words: 'zerrissen*', stops: ['Gallerte zerrissen'], not: ['nicht zerrissen'] },
  {
    tells: 'bath water got in', language: 'en',
    words: 'bath water {be?} {entered}, bathwater {be?} {entered}, water bath {be?} {entered}, bath {be?} {entered}, water {be?} {entered}, water from the bath {be?} {entered}, water out of the bath {be?} {entered}, bath water in the jar, bath water in it, bathwater in the jar, water from the bath in the jar, water from the bath in it',
    stops: ['water from the bath got in', 'bath water in the jar', 'water leaked in'], not: ['no water got in', 'bath at 38, water topped up', 'put the jars in the bath'],
  },
  {
    tells: 'bath water got in', language: 'de',
    words: 'badwasser drin, badwasser ist drin, badwasser rein*, badwasser ist rein*, badwasser hinein*, badwasser eingedrungen, badwasser im glas, wasser drin, wasser eingedrungen, wasser reingelaufen, wasser ist reingelaufen, wasser hineingelaufen, wasser ins glas gelaufen, wasser aus dem wasserbad eingedrungen, wasser aus dem bad eingedrungen',
    stops: ['Wasser aus dem Wasserbad eingedrungen', 'Badwasser im Glas'], not: ['kein Badwasser drin'],
  },
  {
    tells: 'spoiled', language: 'en',
    words: 'spoiled, spoilt, spoiling, spoilage, gone off, went off, going off, goes off, gone bad, went bad, going bad, turned bad, turned rotten, turned rancid, contaminated, contamination, tastes {degree?} off, tasted {degree?} off, looks {degree?} off, looked {degree?} off, seems {degree?} off, seemed {degree?} off',
    stops: ['went off', 'the milk went off at 9 pm', 'spoiled', 'tastes a bit off', 'gone off after a week'],
    not: ['Went off at 9 pm', 'timer went off', 'went off 9 pm', 'alarm gone off at six', 'not spoiled', 'not gone off', 'goes off at half past nine', 'no contamination'],
  },
  { tells: 'spoiled', language: 'en', only: 'at the end', words: 'has turned, have turned, had turned', stops: ['I think it has turned'], not: ['has turned out well', 'has turned thicker'] },
  { tells: 'spoiled', language: 'en', only: 'alone', words: 'a bit off, a little off, a touch off, slightly off, somewhat off', stops: ['a bit off', 'lovely set, but slightly off'], not: ['a bit off the target'] },
  { tells: 'spoiled', language: 'de', words: 'verdorben*, kontaminiert*, schlecht geworden, hinuber', stops: ['verdorben', 'schlecht geworden'], not: ['nicht verdorben'] },
  { tells: 'spoiled', language: 'fr', words: 'est gate, gatee, avarie, avariee, avaries, contamine, contaminee', stops: ['avarié'], not: ['pas avarié'] },
  { tells: 'spoiled', language: 'es', words: 'estropeado, estropeada, contaminado, contaminada, mal estado, echado a perder, echada a perder', stops: ['estropeado'], not: ['no estropeado'] },
  { tells: 'spoiled', language: 'it', words: 'andato a male, andata a male, guasto, guasta, contaminato, contaminata, avariato, avariata', stops: ['andato a male'], not: ['non guasto'] },
  { tells: 'spoiled', language: 'nl', words: 'bedorven, besmet, bederf', stops: ['bedorven'], not: ['niet bedorven'] },
  {
    tells: 'thrown out', language: 'en', words: 'threw {outOf}, thrown out, thrown away, throw out, tossed, discarded, discard, binned, dumped, ditched, down the sink, down the drain, in the bin, into the bin, composted',
    stops: ['threw it out', 'discarded', 'tossed in the bin'], not: ['discarded the whey', 'not thrown out'],
  },
  { tells: 'thrown out', language: 'de', words: 'weggeworfen, entsorgt, weggekippt, weggeschuttet, in den abfluss', stops: ['weggeworfen'], not: ['nicht weggeworfen'] },
  { tells: 'thrown out', language: 'fr', words: 'jete, jetee, jetes, jetees', stops: ['jeté'], not: ['pas jeté'] },
  { tells: 'thrown out', language: 'es', words: 'tirado, tirada, lo tire, la tire, desechado, desechada', stops: ['tirado'], not: ['no desechado'] },
  { tells: 'thrown out', language: 'it', words: 'buttato, buttata, gettato, gettata', stops: ['buttato via'], not: ['non buttato'] },
  { tells: 'thrown out', language: 'nl', words: 'weggegooid', stops: ['weggegooid'], not: ['niet weggegooid'] },
  {
    tells: 'not eaten', language: 'en',
    words: "do not eat, don't eat, dont eat, never eat, do not taste, don't taste, do not drink, don't drink, not safe to eat, not fit to eat, not safe to be eaten, not to be eaten, not edible, inedible, would not eat, wouldn't eat, not eating, made me sick, made us sick, made him sick, made her sick, made them sick, made me ill, made us ill, made him ill, made her ill, threw up, sick after eating, ill after eating",
    stops: ['do not eat', 'made me sick', 'inedible'], not: ['do eat soon'],
  },
  { tells: 'not eaten', language: 'de', words: 'nicht essen, nicht mehr essen, nicht probieren, nicht geniessbar, nicht mehr geniessbar, ungeniessbar*', stops: ['nicht mehr essen'], not: ['bald essen'] },
  { tells: 'not eaten', language: 'fr', words: 'ne pas manger, ne pas consommer, ne pas gouter', stops: ['ne pas manger'], not: ['bon à manger'] },
  { tells: 'not eaten', language: 'es', words: 'no comer, no consumir, no probar', stops: ['no comer'], not: ['para comer'] },
  { tells: 'not eaten', language: 'it', words: 'non mangiare, non consumare', stops: ['non mangiare'], not: ['da mangiare'] },
  { tells: 'not eaten', language: 'nl', words: 'niet eten, niet opeten', stops: ['niet eten'], not: ['snel opeten'] },
  { tells: 'bubbles', language: 'en', words: 'fizz*, bubbl*, effervescen*, carbonat*', stops: ['fizzy'], not: ['no bubbles'] },
  { tells: 'bubbles', language: 'de', words: 'blasch*, blasen, blasig*, sprudel*, prickel*', stops: ['Bläschen'], not: ['keine Blasen'] },
  { tells: 'bubbles', language: 'fr', words: 'petill*, bulle, bulles, gazeu*', stops: ['des bulles'], not: ['sans bulles'] },
  { tells: 'bubbles', language: 'es', words: 'burbuj*, efervesc*', stops: ['burbujas'], not: ['sin burbujas'] },
  { tells: 'bubbles', language: 'it', words: 'bollicin*, frizzant*', stops: ['bollicine'], not: ['senza bollicine'] },
  { tells: 'bubbles', language: 'nl', words: 'bubbel*, borrel*, belletjes', stops: ['bubbels'], not: ['geen bubbels'] },
  { tells: 'slime', language: 'en', words: 'slime, slimy, slimey, ropy', stops: ['slimy at first'], not: ['not slimy'] },
  { tells: 'slime', language: 'de', words: 'schleim, schleimig*, fadenziehend*', stops: ['schleimig'], not: ['nicht schleimig'] },
  { tells: 'slime', language: 'fr', words: 'visqueux, visqueuse, gluant*', stops: ['visqueux'], not: ['pas visqueux'] },
  { tells: 'slime', language: 'es', words: 'viscoso, viscosa, baboso, babosa', stops: ['baboso'], not: ['no baboso'] },
  { tells: 'slime', language: 'it', words: 'viscido, viscida, viscoso, bavoso', stops: ['viscido'], not: ['non viscido'] },
  { tells: 'slime', language: 'nl', words: 'slijm*', stops: ['slijmerig'], not: ['niet slijmerig'] },
  { tells: 'like a fibre', language: 'en', words: 'purple, violet, mauve, brown, brownish, jelly, jellied, gel, gelled, gummy', stops: ['a purple tint'], not: ['no jelly'] },
  { tells: 'like a fibre', language: 'de', words: 'lila, violett*, braun*, gelee, gelig', stops: ['bräunlich'], not: ['kein Gelee'] },
  { tells: 'like a fibre', language: 'fr', words: 'brun, brune, marron', stops: ['brun'], not: ['pas brun'] },
  { tells: 'like a fibre', language: 'es', words: 'morado, morada, marron', stops: ['morado'], not: ['no morado'] },
  { tells: 'like a fibre', language: 'it', words: 'viola, bruno, bruna, marrone', stops: ['marrone'], not: ['non marrone'] },
  { tells: 'like a fibre', language: 'nl', words: 'paars, bruin', stops: ['bruin'], not: ['niet bruin'] },
  { tells: 'pink', language: 'pt', words: 'cor-de-rosa, rosado, rosada, rosados, rosadas', stops: ['manchas rosadas'], not: ['sem manchas rosadas'] },
  { tells: 'pink', language: 'sv', words: 'rosa, rosafarg*', stops: ['rosa prickar'], not: ['inget rosa'] },
  { tells: 'pink', language: 'da', words: 'lyserod*, rosa', stops: ['lyserøde pletter'], not: ['ingen lyserøde pletter'] },
  { tells: 'pink', language: 'pl', words: 'rozow*', stops: ['różowe plamy'], not: ['bez różowych plam'] },
  { tells: 'red', language: 'pt', words: 'vermelh*', stops: ['pontos vermelhos'], not: ['sem pontos vermelhos'] },
  { tells: 'red', language: 'pl', words: 'czerwon*', stops: ['czerwone plamy'], not: ['bez czerwonych plam'] },
  { tells: 'orange', language: 'pt', words: 'laranja, alaranjad*', stops: ['manchas alaranjadas'], not: ['sem manchas alaranjadas'] },
  { tells: 'orange', language: 'pl', words: 'pomaranczow*', stops: ['pomarańczowe plamy'], not: ['bez pomarańczowych plam'] },
  { tells: 'black', language: 'pt', words: 'preto, preta, pretos, pretas', stops: ['pontos pretos'], not: ['sem pontos pretos'] },
  { tells: 'black', language: 'sv', words: 'svart, svarta', stops: ['svarta prickar'], not: ['inga svarta prickar'] },
  { tells: 'black', language: 'pl', words: 'czarn*', stops: ['czarne kropki'], not: ['bez czarnych kropek'] },
  { tells: 'fuzz', language: 'pt', words: 'bolor, bolorent*, mofo, mofad*, manchas verdes, manchas azuis, manchas cinza*', stops: ['bolor por cima'], not: ['sem bolor'] },
  { tells: 'fuzz', language: 'sv', words: 'mogel*, mogl*, grona flackar, gra flackar', stops: ['mögel på ytan', 'möglig'], not: ['inget mögel'] },
  { tells: 'fuzz', language: 'da', words: 'skimmel*, mugg*, mugne, gronne pletter, gronne flekker', stops: ['skimmel i kanten'], not: ['ingen skimmel'] },
  { tells: 'fuzz', language: 'pl', words: 'plesn*, splesni*, zaplesni*, zielone plamy', stops: ['pleśń na wierzchu'], not: ['bez pleśni'] },
  { tells: 'foul smell', language: 'pt', words: 'podre, podres, cheira mal, cheira {degree?} mal, mau cheiro, ranco', stops: ['cheira mal'], not: ['sem mau cheiro'] },
  { tells: 'foul smell', language: 'sv', words: 'luktar illa, luktade illa, rutten, ruttet, ruttna', stops: ['luktar illa'], not: ['inte rutten'] },
  { tells: 'foul smell', language: 'da', words: 'lugter darligt, lugter radden*, lugter raddent, radden, raddent, rattent, lukter vondt, stinker', stops: ['lugter dårligt', 'rådden'], not: ['ikke rådden'] },
  { tells: 'foul smell', language: 'pl', words: 'smierdz*, cuchn*, zgnil*, brzydko pachnie', stops: ['śmierdzi'], not: ['nie śmierdzi'] },
  { tells: 'foam', language: 'pt', words: 'espuma, espumos*', stops: ['espuma por cima'], not: ['sem espuma'] },
  { tells: 'foam', language: 'sv', words: 'skum, skummar, skummig*', stops: ['skum på ytan'], not: ['inget skum'] },
  { tells: 'foam', language: 'pl', words: 'piana, piany, pianie, pieni sie', stops: ['piana na wierzchu'], not: ['bez piany'] },
  { tells: 'spoiled', language: 'pt', words: 'estragado, estragada, azedou mal', stops: ['estragado'], not: ['não estragado'] },
  { tells: 'spoiled', language: 'sv', words: 'skamd, skamt, forstord, forstort', stops: ['skämd'], not: ['inte skämd'] },
  { tells: 'spoiled', language: 'da', words: 'fordaervet, odelagt, bedervet', stops: ['fordærvet'], not: ['ikke fordærvet'] },
  { tells: 'spoiled', language: 'pl', words: 'zepsut*, zepsulo sie, skazon*', stops: ['zepsuty'], not: ['nie zepsuty'] },
  { tells: 'thrown out', language: 'pt', words: 'deitado fora, deitada fora, jogado fora, jogada fora', stops: ['jogado fora'], not: ['não jogado fora'] },
  { tells: 'thrown out', language: 'sv', words: 'slangd*, slangt, slangde, kastad, kastat', stops: ['slängd'], not: ['inte slängd'] },
  { tells: 'thrown out', language: 'da', words: 'smidt ud, kastet', stops: ['smidt ud'], not: ['ikke smidt ud'] },
  { tells: 'thrown out', language: 'pl', words: 'wyrzuc*', stops: ['wyrzucony'], not: ['nie wyrzucony'] },
  { tells: 'bubbles', language: 'pt', words: 'bolhas, bolha, bolhinhas', stops: ['bolhas'], not: ['sem bolhas'] },
  { tells: 'bubbles', language: 'sv', words: 'bubblor, bubblig*, brus*', stops: ['bubblor'], not: ['inga bubblor'] },
  { tells: 'bubbles', language: 'da', words: 'bobler, boblende', stops: ['bobler'], not: ['ingen bobler'] },
  { tells: 'bubbles', language: 'pl', words: 'babelk*, gazowan*', stops: ['bąbelki'], not: ['bez bąbelków'] },
  { tells: 'slime', language: 'pl', words: 'sluz, sluzowat*, oslizl*', stops: ['śluzowaty'], not: ['nie śluzowaty'] },
  { tells: 'like a fibre', language: 'pt', words: 'roxo, roxa, castanho, marrom', stops: ['roxo'], not: ['não roxo'] },
  { tells: 'like a fibre', language: 'pl', words: 'fioletow*, brazow*', stops: ['fioletowy'], not: ['nie fioletowy'] },
]; // prettier-ignore

function finderOf(told: Told): RegExp {
  const wordsWhere = (where: SpoilageRow['only']): string =>
    SPOILAGE.flatMap(({ tells, words, only }) => (tells === told && only === where ? [words] : [])).join(
      ', ',
    );
  const [anywhere, atEnd, alone] = [wordsWhere(undefined), wordsWhere('at the end'), wordsWhere('alone')];
  const patterns = [
    phrases(anywhere, LISTS),
    ...(atEnd === '' ? [] : [`${phrases(atEnd, LISTS)}${END}`]),
    ...(alone === '' ? [] : [String.raw`(?<=^\W*)${phrases(alone, LISTS)}${END}`]),
  ];
  return new RegExp(patterns.join('|'));
}
const END = String.raw`(?=\W*$)`;

/** What finds each thing told in a clause of a plain text. */
export const FINDS: Readonly<Record<Told, RegExp>> = Object.fromEntries(
  [...new Set(SPOILAGE.map(({ tells }) => tells))].map((told) => [told, finderOf(told)]),
) as Record<Told, RegExp>;
