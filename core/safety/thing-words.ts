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

export const DENIALS =
  "no, not, without, never, none, nothing, free of, free from, isn't, isnt, wasn't, wasnt, didn't, didnt, doesn't, doesnt, neither, nor, kein*, nicht, ohne, weder, pas, sans, aucun, aucune, aucunes, sin, ningun*, non, senza, nessun*, geen, niet, zonder, sem, nao, nenhum*, ingen, inget, inga, inte, utan, ikke, uden, uten, nie, bez, brak";
