// Words of a kitchen that tell a coloured thing from a growth, and words that deny what stands behind them: lists, in the languages
// of spoilage-words.ts. A coloured thing is asked about; a denial only leaves its remark unanswered.

/** What has a colour and is no growth. */
export const THINGS =
  'zest, peel, juice, blossom, flavour, flavor, essence, oil, marmalade, slice, slices, segment, segments, rind, extract, water, syrup, lid, lids, label*, cap, caps, jar, jars, bowl*, band*, spoon*, pot, pots, tape, sticker*, pen, pens, marker*, one, ones, towel*, kettle, salt, tea, sesame, pepper*, currant*, berry, berries, bean, beans, cherr*, fruit*, grape*, wine, ink, cup, cups, top jar, tray*, box, boxes, dot sticker*, paprika, rice, beet*, oat, oats, bran, lentil*, onion*, sugar, hot, out, outs, plastic, rubber, bag, bags, light, lights, lamp, led, cloth, seal*, gasket*, foil, mug*, elastic*, basket*, biro, chalk, deckel*, glas, schale, saft, etikett*, pfeffer, tee, salz, couvercle*, etiquette*, bocal, poivre, jus, tapa, tarro, frasco, etiqueta, coperchio, vasetto, etichetta, deksel*, etiket, kapje';

/** What right before a colour makes it a thing's. */
export const BEFORE_A_THING =
  'blood, with a, with an, used the, used a, used my, used an, in the, in a, in my, in an, silicone, from a, from an, rote, roten, zest of a, zest of an, juice of a, juice of an, marked in, marked with, written in, written with, labelled in, labeled in, circled in, noted in, coperchio, tapa, couvercle';

/** What belongs to a jar and has a colour of its own. */
export const THINGS_OF_A_JAR =
  'lid, lids, label, labels, cap, caps, light, lights, band, bands, tape, spoon, spoons, bowl, bowls, sticker, stickers, thermometer';

/** Why a jar without any sign was thrown out, or that only a part of it was. */
export const HARMLESS_REASONS =
  "dropped, broke, broken, spilled, spilt, smashed, cracked, too old, too long, forgot, no room, no space, ran out of room, ran out of time, extra, leftover, the rest, half, holiday, too thin, too sour, too runny, didn't like, heruntergefallen, zerbrochen, ubrig, casse, cassee, tombe, tombee";

/** What stands right behind a word of spoilage, or behind a colon after it, and denies it. */
export const DENIALS_BEHIND =
  "none, no, nope, nil, not seen, not found, not present, not there, not visible, nowhere to be seen, wasn't there, weren't there, isn't there, was not there, keine, keiner, keines, keins, nein, keiner zu sehen, keine zu sehen, nichts zu sehen, nicht vorhanden, nicht zu sehen, aucun, aucune, non, rien, ninguno, ninguna, ningun, nada, nessuno, nessuna, niente, geen, nee, niet gezien, nenhum, nenhuma, nao, ingen, inga, inget, intet, nej, nie, nie ma, nie bylo, nie widac, brak, zadna, zadnej";

/** What makes a denial before a word none: it is not said, or it denies something else. */
export const NO_DENIALS =
  "can't say, cannot say, can not say, couldn't say, wouldn't say, won't say, can't swear, can't promise, can't be sure, can't rule out, cannot rule out, couldn't rule out, could not rule out, not sure, not certain, unsure, hard to say, unable to say, don't think, do not think, don't know, doubt, no doubt, no idea, no clue, no wonder, no question, no way, no denying, not only, not just, not merely, not without, none of us, nobody, no one, never seen so, never saw so, never had so, kein zweifel, keine zweifel, keine frage, ohne zweifel, zweifellos, nicht nur, nicht sicher, kann nicht sagen, sans doute, aucun doute, pas seulement, pas sur, pas sure, sin duda, ninguna duda, no solo, no solamente, no estoy seguro, no estoy segura, senza dubbio, nessun dubbio, non solo, non soltanto, non sono sicuro, non sono sicura, geen twijfel, zonder twijfel, niet alleen, niet zeker, sem duvida, nao so, nao apenas, utan tvekan, inte bara, inte saker, uden tvivl, ikke kun, ikke bare, ikke sikker, nie tylko, nie ma watpliwosci, bez watpienia";

export const DENIALS =
  "no, not, without, never, none, nothing, free of, free from, isn't, isnt, wasn't, wasnt, didn't, didnt, doesn't, doesnt, neither, nor, kein*, nicht, ohne, weder, pas, sans, aucun, aucune, aucunes, sin, ningun*, non, senza, nessun*, geen, niet, zonder, sem, nao, nenhum*, ingen, inget, inga, inte, utan, ikke, uden, uten, nie, bez, brak, zadn*, zero, couldn't find any, couldn't see any, can't find any, can't see any, cannot find any, cannot see any";
