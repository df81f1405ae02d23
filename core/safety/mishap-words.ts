// What befell a jar or its hold, as keepers write it: warmth that failed or ran away, a jar that stood out, a lid that was off, an
// accident, a creature, milk that is not what it should be. Nothing of it is a sign of spoilage or stops a jar: it is asked about by
// itself, so that no answer for many rows speaks for it. In the languages of spoilage-words.ts. Common practice, no source.
import { phrases } from './phrases';

interface MishapRow {
  readonly befell: 'warmth' | 'stood out' | 'lid' | 'accident' | 'creature' | 'milk';
  readonly language: 'en' | 'de' | 'fr' | 'es' | 'it' | 'nl' | 'pt' | 'sv' | 'da' | 'pl';
  /** Phrases, plain and in lower case, as in spoilage-words.ts. */
  readonly words: string;
  readonly asks: readonly string[];
  readonly not: readonly string[];
}

const LISTS: Readonly<Record<string, string>> = {
  device: 'cooler, fridge, freezer, bath, water bath, heater, heating, heating pad, heat pad, heat mat, mat, box, warm box, incubator, cooker, warmer, oven, thermostat, pump, machine, maker, yogurt maker, yoghurt maker, lamp, controller, timer, plug, bottle, flask',
  was: 'was, were, is, had, has, got, had been, has been, must have, it, they, jar, jars, went, must have been',
  failed: 'died, dead, broke, broken, broke down, failed, stopped, stopped working, quit, gave up, gave out, gave way, packed up, conked out, cut out, not working, unplugged itself, found unplugged, on the blink, faulty, stuck, leaked, leaking, died on us, let go, left off',
  hot: 'too hot, too warm, very hot, overheated, overheating, boiling, cooked, scorched, burnt, burned, hot, scalding',
  cold: 'cold, too cold, stone cold, cool, too cool, quite cold, very cold, frozen, lukewarm, room temperature, barely warm',
  place: 'counter, bench, worktop, table, side, shelf, windowsill, window sill, stove, sink, car, sun, porch, garage, kitchen, hob, top, doorstep, boot, trunk, bag, warm, heat, hall, room, night, day, weekend',
  long: 'overnight, all night, all day, all morning, all afternoon, all weekend, too long, for hours, the whole day, the whole night, for a day, for two days',
  gerat: 'gerat, heizung, heizmatte, matte, bad, wasserbad, kuhlschrank, gefrierschrank, box, warmebox, thermostat, pumpe, ofen, maschine, heizstab, lampe, stecker, brutkasten',
  kaputt: 'kaputt, defekt, ausgefallen, ausgestiegen, tot, gestorben, stehen geblieben, hin, abgeschaltet, ausgeschaltet, ausgesteckt',
  ist: 'ist, war, ging, wurde',
}; // prettier-ignore

export const MISHAPS: readonly MishapRow[] = [
  {
    befell: 'warmth', language: 'en',
    words: '{device} {was?} {failed}, {device} {was?} {hot}, {device} {was?} {cold}, {device} ran {hot}, {device} ran {cold}, {device} hit *, {device} reached *, {device} shot up, {device} got up to *, {device} got to *, {device} went up to *, {device} went down to *, {device} dropped to *, {device} fell to *, {device} overshot*, overshot, overheat*, ran hot, ran cold, ran too cool, ran too warm, got too hot, got too warm, got too cold, was too hot, was too warm, was too cold, went cold, gone cold, got cold, stone cold, cold by morning, cold in the morning, heat wave, heatwave, thermostat broke, thermostat died, boiled over, nearly boiled, almost boiled, froze at *, froze in *, froze solid, frozen solid, half frozen, partly frozen, forgot to turn *, forgot to switch *, forgot to plug *, forgot the heat*, forgot to put * in the fridge, never warmed, did not warm, didn\'t warm, fridge was off, freezer was off, hit 1*, hit 4*, hit 5*, hit 6*',
    asks: ['cooler died overnight, about 5 h', 'bath hit 120', 'fridge broke', 'heating pad gave out', 'the box was stone cold', 'thermostat stuck', 'got too hot', 'forgot to turn the bath on', 'froze at the back of the fridge', 'bath fell to 31'],
    not: ['bath at 38', 'the fridge shelf', 'froze no cubes', 'held in the cooler', 'the bath was never too hot', 'box 3'],
  },
  {
    befell: 'stood out', language: 'en',
    words: 'left out {long}, left it out, left them out, left the jar* out, left out on *, left out for *, left out at *, left out of the fridge, left on the {place}, left in the {place}, left standing, left at room temp*, left behind, sat out, sat on the {place}, sat in the {place}, stood out, stood on the {place}, out {long}, on the {place} {long}, in the {place} {long}, out of the fridge, not in the fridge, forgot it, forgot them, forgot about it, forgotten, forgot the jar*, forgot in *, forgot on *, late in the fridge, late into the fridge, chilled late, too long in the {place}, too long in the bath, hours late',
    asks: ['left on the counter all day', 'sat out overnight', 'left it out', 'forgotten in the car', 'stood on the bench all night', 'chilled late, 5 h', 'left out for 6 hours'],
    not: ['left out the fibre', 'took it out', 'left a spoonful', 'eaten out of the jar', 'not forgotten'],
  },
  {
    befell: 'lid', language: 'en',
    words: 'lid was off, lids were off, lid off, lids off, lid had come loose, lid fell off, lid fell in, lid slipped, lid slid off, lid not on, lid left off, left the lid off, without a lid, without lid, without its lid, lost its lid, uncovered, left open, jar was open, seal broke*, seal was broken, seal gone, cover off, cover blew off, no lid',
    asks: ['lid was off', 'lid off all night', 'left uncovered', 'seal broken', 'no lid'],
    not: ['lid on', 'loose lid', 'open since Monday', 'the lid was never off'],
  },
  {
    befell: 'accident', language: 'en',
    words: 'dropped it, dropped the *, dropped one, was dropped, got dropped, dropped and *, dropped on *, jar dropped, fell over, fell off, fell on, fell down, fell in, jar fell, knocked over, knocked it, knocked off, tipped over, tipped, toppled, spilled, spilt, cracked jar, jar cracked, jar is cracked, cracked glass, glass cracked, crack in *, chipped, glass broke, jar broke, jar is broken, broken glass, broken jar, shattered, smashed, splinter*, soap in *, soap got in, detergent*, something in it, something fell in, hair in *, dirty spoon, double dipped, double-dipped, licked, sneezed*, touched it, finger in *, shaken, thermometer broke',
    asks: ['dropped the jar', 'knocked over in the bath', 'jar cracked', 'glass chipped', 'a hair in it', 'dirty spoon'],
    not: ['pH dropped', 'fell asleep', 'a drop of whey', 'never dropped on the floor', 'not tipped'],
  },
  {
    befell: 'creature', language: 'en',
    words: 'mouse, mice, rat, rats, fly, flies, fruit fly, fruit flies, gnat, gnats, ant, ants, insect*, bug, bugs, beetle*, moth, moths, maggot*, larva, larvae, worm, worms, weevil*, cockroach*, roach*, spider*, wasp, wasps, cat got *, cat drank *, cat licked *, dog got *, dog drank *, dog licked *, droppings, vermin, mites',
    asks: ['mouse in the kitchen', 'a fly got in', 'ants round the lid', 'cat got at it'],
    not: ['no flies', 'fantastic', 'flying visit', 'category'],
  },
  {
    befell: 'milk', language: 'en',
    words: 'raw milk, raw, unpasteurised, unpasteurized, milk was old, old milk, milk was off, milk past *, past its date, past date, past its best, out of date, expired, use-by, use by date, milk was warm, milk stood *, milk had stood *, milk opened *, milk was opened *, milk not heated, unheated milk, did not heat the milk, new milk brand, new brand of milk, new brand, other brand, another brand, different brand, different milk, changed milk, changed the milk, swapped milk',
    asks: ['raw milk', 'new milk brand', 'milk was past its date', 'unpasteurized'],
    not: ['whole milk', 'drawn at noon', 'strawberry'],
  },
  { befell: 'warmth', language: 'de', words: '{gerat} {ist?} {kaputt}, {gerat} ging nicht, {gerat} fiel aus, {gerat} lief nicht, {gerat} zu heiss, {gerat} war zu heiss, {gerat} war zu kalt, {gerat} war kalt, {gerat} zu kalt, uberhitzt*, zu heiss geworden, zu warm geworden, zu kalt geworden, kalt geworden, ausgekuhlt, eingefroren im kuhlschrank, vergessen einzuschalten, nicht eingeschaltet', asks: ['Kühlschrank kaputt', 'Bad war zu heiß', 'überhitzt', 'ausgekühlt'], not: ['Bad bei 38', 'nie überhitzt'] },
  { befell: 'stood out', language: 'de', words: 'stehen gelassen, stehengelassen, stehen geblieben, draussen gestanden, draussen vergessen, ungekuhlt, nicht gekuhlt, nicht im kuhlschrank, vergessen, zu lange im bad, zu lange draussen, im auto', asks: ['auf der Theke stehen gelassen', 'eine Nacht ungekühlt', 'im Auto vergessen'], not: ['nicht vergessen'] },
  { befell: 'lid', language: 'de', words: 'deckel ab, deckel war ab, deckel offen, deckel war offen, deckel lose, deckel fehlt*, ohne deckel, nicht zugedeckt, unbedeckt, offen gestanden, offen gelassen', asks: ['Deckel war ab', 'ohne Deckel'], not: ['Deckel drauf', 'nie ohne Deckel'] },
  { befell: 'accident', language: 'de', words: 'heruntergefallen, runtergefallen, hingefallen, umgefallen, umgekippt, umgestossen, verschuttet, glas gesprungen, gesprungen, sprung im glas, zerbrochen, scherbe*, splitter', asks: ['umgekippt im Bad', 'Sprung im Glas'], not: ['nicht umgekippt'] },
  { befell: 'creature', language: 'de', words: 'maus, mause, fliege, fliegen, fruchtfliege*, ameise*, made, maden, kafer, motte*, insekt*, ungeziefer, schabe*', asks: ['eine Fliege im Glas', 'Ameisen am Deckel'], not: ['keine Fliegen'] },
  { befell: 'milk', language: 'de', words: 'rohmilch, rohe milch, milch abgelaufen, abgelaufen, abgelaufene milch, alte milch, andere milch, neue milchmarke, andere marke, neue marke', asks: ['Rohmilch', 'Milch war abgelaufen', 'andere Marke'], not: ['Vollmilch', 'keine Rohmilch'] },
  { befell: 'warmth', language: 'fr', words: 'surchauff*, trop chauffe, trop chaud, trop froid, refroidi, frigo en panne, en panne, oublie d\'allumer, oublie de brancher, gele', asks: ['frigo en panne', 'bain trop chaud'], not: ['pas trop chaud'] },
  { befell: 'stood out', language: 'fr', words: 'laisse dehors, laisse sur *, reste dehors, reste sur *, hors du frigo, oublie, oublies, pas au frigo', asks: ['laissé sur la table', 'oublié toute la nuit'], not: ['gardé au frigo'] },
  { befell: 'lid', language: 'fr', words: 'sans couvercle, couvercle ouvert, couvercle enleve, reste ouvert, laisse ouvert, mal ferme', asks: ['sans couvercle', 'resté ouvert'], not: ['couvercle posé'] },
  { befell: 'accident', language: 'fr', words: 'tombe, renverse*, fele, felee, casse, cassee, fendu, ebreche*', asks: ['bocal renversé', 'verre fêlé'], not: ['pas tombé'] },
  { befell: 'creature', language: 'fr', words: 'souris, mouche, mouches, moucheron*, fourmi, fourmis, insecte*, asticot*, cafard*', asks: ['une mouche dedans', 'souris dans la cuisine'], not: ['pas de mouches'] },
  { befell: 'milk', language: 'fr', words: 'lait cru, lait perime, perime, autre lait, autre marque, nouvelle marque', asks: ['lait cru', 'lait périmé'], not: ['lait entier'] },
  { befell: 'warmth', language: 'es', words: 'sobrecalent*, demasiado caliente, demasiado frio, se enfrio, nevera rota, nevera estropeada, averiad*, olvide encender, se congelo', asks: ['baño demasiado caliente', 'nevera averiada'], not: ['no demasiado caliente'] },
  { befell: 'stood out', language: 'es', words: 'fuera de la nevera, fuera toda *, olvidad*, se quedo fuera, en la mesa toda *', asks: ['olvidado en la mesa', 'se quedó fuera'], not: ['en la nevera'] },
  { befell: 'lid', language: 'es', words: 'sin tapa, sin tapar, destapad*, tapa abierta, quedo abierto, abierto toda *', asks: ['sin tapa', 'destapado'], not: ['tapa puesta'] },
  { befell: 'accident', language: 'es', words: 'se cayo, caido, volcad*, derramad*, rajad*, frasco roto, vidrio roto, agrietad*', asks: ['se cayó', 'frasco roto'], not: ['no volcado'] },
  { befell: 'creature', language: 'es', words: 'raton, ratones, mosca, moscas, hormiga, hormigas, insecto*, bicho, bichos, gusano*, cucaracha*', asks: ['una mosca dentro', 'hormigas'], not: ['sin moscas'] },
  { befell: 'milk', language: 'es', words: 'leche cruda, leche caducada, caducad*, otra leche, otra marca, marca nueva', asks: ['leche cruda', 'otra marca'], not: ['leche entera'] },
  { befell: 'warmth', language: 'it', words: 'surriscaldat*, troppo caldo, troppo calda, troppo freddo, raffreddat*, frigo rotto, guast*, dimenticato di accendere, congelat* nel frigo', asks: ['bagno troppo caldo', 'frigo rotto'], not: ['non troppo caldo'] },
  { befell: 'stood out', language: 'it', words: 'fuori dal frigo, fuori frigo, lasciato fuori, lasciato sul *, dimenticat*', asks: ['lasciato fuori', 'dimenticato sul tavolo'], not: ['tenuto nel frigo'] },
  { befell: 'lid', language: 'it', words: 'senza coperchio, coperchio aperto, scoperto, lasciato aperto', asks: ['senza coperchio'], not: ['coperchio chiuso'] },
  { befell: 'accident', language: 'it', words: 'caduto, caduta, rovesciat*, versato fuori, vetro rotto, vasetto rotto, crepa, incrinat*', asks: ['vasetto rotto', 'rovesciato'], not: ['non caduto'] },
  { befell: 'creature', language: 'it', words: 'topo, topi, mosca, mosche, moscerin*, formica, formiche, insett*, verme, vermi, scarafaggi*', asks: ['una mosca dentro', 'formiche'], not: ['senza mosche'] },
  { befell: 'milk', language: 'it', words: 'latte crudo, latte scaduto, scaduto, altro latte, altra marca, nuova marca', asks: ['latte crudo', 'latte scaduto'], not: ['latte intero'] },
  { befell: 'warmth', language: 'nl', words: 'oververhit*, te heet, te warm, te koud, afgekoeld, koelkast kapot, kapot, vergeten aan te zetten, bevroren', asks: ['bad te heet', 'koelkast kapot'], not: ['niet te warm'] },
  { befell: 'stood out', language: 'nl', words: 'buiten gestaan, buiten de koelkast, laten staan, vergeten, niet in de koelkast', asks: ['laten staan op het aanrecht', 'hele nacht vergeten'], not: ['niet vergeten'] },
  { befell: 'lid', language: 'nl', words: 'deksel eraf, deksel af, deksel open, zonder deksel, open gestaan, open gelaten', asks: ['zonder deksel', 'deksel eraf'], not: ['deksel erop'] },
  { befell: 'accident', language: 'nl', words: 'gevallen, omgevallen, omgestoten, gemorst, barst in *, gebarsten, gebroken', asks: ['omgevallen', 'barst in het glas'], not: ['niet gevallen'] },
  { befell: 'creature', language: 'nl', words: 'muis, muizen, vlieg, vliegen, fruitvlieg*, mier, mieren, insect*, made, maden', asks: ['een vlieg erin', 'mieren'], not: ['geen vliegen'] },
  { befell: 'milk', language: 'nl', words: 'rauwe melk, melk over datum, over datum, andere melk, ander merk, nieuw merk', asks: ['rauwe melk', 'ander merk'], not: ['volle melk'] },
  { befell: 'warmth', language: 'pt', words: 'sobreaquec*, quente demais, demasiado quente, frio demais, arrefeceu, frigorifico avariado, geladeira quebrada, avariad*', asks: ['banho quente demais', 'frigorífico avariado'], not: ['sem avaria'] },
  { befell: 'stood out', language: 'pt', words: 'fora do frigorifico, fora da geladeira, ficou fora, esquecid*', asks: ['ficou fora toda a noite', 'esquecido'], not: ['no frigorífico'] },
  { befell: 'lid', language: 'pt', words: 'sem tampa, destapad*, tampa aberta, ficou aberto', asks: ['sem tampa'], not: ['tampa fechada'] },
  { befell: 'accident', language: 'pt', words: 'caiu, caido, entornad*, derramad*, frasco partido, frasco quebrado, rachad*', asks: ['caiu', 'frasco partido'], not: ['não caiu'] },
  { befell: 'creature', language: 'pt', words: 'rato, ratos, mosca, moscas, formiga, formigas, inseto*, bicho, bichos, barata, baratas', asks: ['uma mosca', 'formigas'], not: ['sem moscas'] },
  { befell: 'milk', language: 'pt', words: 'leite cru, leite fora do prazo, fora do prazo, outro leite, outra marca, marca nova', asks: ['leite cru', 'fora do prazo'], not: ['leite gordo'] },
  { befell: 'warmth', language: 'sv', words: 'overhettad*, for varmt, for varm, for kallt, for kall, kallnat, kylskapet trasigt, trasig, trasigt, glomde satta pa', asks: ['badet för varmt', 'kylskåpet trasigt'], not: ['inte för varmt'] },
  { befell: 'stood out', language: 'sv', words: 'statt framme, stod framme, stod ute, utanfor kylen, glomd, glomt, glomde', asks: ['stod framme hela natten', 'glömde den'], not: ['inte glömd'] },
  { befell: 'lid', language: 'sv', words: 'utan lock, locket av, locket oppet, stod oppen, stod oppet', asks: ['utan lock', 'locket av'], not: ['locket på'] },
  { befell: 'accident', language: 'sv', words: 'tappade, tappad, valte, valt, spillde, spillt, sprucken, sprucket, gick sonder', asks: ['tappade burken', 'sprucken burk'], not: ['inte sprucken'] },
  { befell: 'creature', language: 'sv', words: 'mus, moss, fluga, flugor, bananfluga, bananflugor, myra, myror, insekt*', asks: ['en fluga i burken', 'myror'], not: ['inga flugor'] },
  { befell: 'milk', language: 'sv', words: 'opastoriserad*, ra mjolk, obehandlad mjolk, gammal mjolk, utgangen mjolk, annan mjolk, annat marke, nytt marke', asks: ['opastöriserad mjölk', 'annat märke'], not: ['röd mjölk'] },
  { befell: 'warmth', language: 'da', words: 'overophed*, for varm, for varmt, for kold, for koldt, kolnet, koleskabet i stykker, i stykker, glemte at taende', asks: ['badet for varmt', 'køleskabet i stykker'], not: ['ikke for varmt'] },
  { befell: 'stood out', language: 'da', words: 'stod fremme, staet fremme, stod ude, uden for koleskabet, glemt, glemte', asks: ['stod fremme hele natten'], not: ['ikke glemt'] },
  { befell: 'lid', language: 'da', words: 'uden lag, laget af, stod aben, stod abent', asks: ['uden låg'], not: ['låget på'] },
  { befell: 'accident', language: 'da', words: 'tabt, tabte, vaeltede, vaeltet, spildt, revnet, knust', asks: ['væltet i badet', 'revnet glas'], not: ['ikke revnet'] },
  { befell: 'creature', language: 'da', words: 'mus, flue, fluer, bananflue*, myre, myrer, insekt*', asks: ['en flue i glasset'], not: ['ingen fluer'] },
  { befell: 'milk', language: 'da', words: 'ra maelk, upasteuriseret, gammel maelk, anden maelk, andet maerke, nyt maerke', asks: ['rå mælk', 'andet mærke'], not: ['sødmælk'] },
  { befell: 'warmth', language: 'pl', words: 'przegrzan*, za goraco, za goracy, za zimno, wystygl*, zepsuta lodowka, lodowka zepsuta, awaria, nie wlaczyl*', asks: ['za gorąco w kąpieli', 'wystygło'], not: ['nie przegrzany'] },
  { befell: 'stood out', language: 'pl', words: 'stal na blacie, stalo na blacie, poza lodowka, zostawion*, zapomnian*, zapomnial*', asks: ['stał na blacie', 'zapomniany'], not: ['w lodówce'] },
  { befell: 'lid', language: 'pl', words: 'bez pokrywki, bez wieczka, bez zakretki, otwarty cala *, niezakrecon*', asks: ['bez pokrywki'], not: ['pokrywka zamknięta'] },
  { befell: 'accident', language: 'pl', words: 'upadl*, spadl*, przewrocil*, przewrocon*, rozlan*, pekniet*, rozbit*', asks: ['upadł', 'pęknięty słoik'], not: ['nie rozbity'] },
  { befell: 'creature', language: 'pl', words: 'mysz, myszy, mucha, muchy, muszka, muszki, mrowka, mrowki, owad*, robak*', asks: ['mucha w słoiku', 'mrówki'], not: ['bez much'] },
  { befell: 'milk', language: 'pl', words: 'surowe mleko, mleko surowe, przeterminowan*, inne mleko, inna marka, nowa marka', asks: ['surowe mleko', 'inna marka'], not: ['pełne mleko'] },
]; // prettier-ignore

/** Finds what befell a jar in a clause of a plain text. */
export const MISHAP = new RegExp(phrases(MISHAPS.map(({ words }) => words).join(', '), LISTS));
