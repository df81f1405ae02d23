// What a cook writes of a clean jar under "smell" and "texture", in the languages that can be vouched for: words of the field's
// own that ask nothing. Common practice, no source. They are only left unasked: no word makes a jar fine, and a text with any
// other word in it, a denial or a question among them, is asked about as it stands. What may tell of milk that never soured
// ("milky", "sweet") or is a verdict and no smell ("ok", "normal") is not among them.
import { phrases } from './phrases';
import { SET_PHRASES } from '../text/set-phrases';

const SMELLS = new RegExp(
  phrases(
    `sour, tart, tangy, acidic, clean, fresh, mild, pleasant, buttery, yogurty, yoghurty, yogurt,
    yoghurt, like yogurt, like yoghurt, yogurt-like, yoghurt-like, of yogurt, of yoghurt, sauer,
    sauerlich, sauber, rein, frisch, angenehm, buttrig, joghurt, nach joghurt, acide, acidule,
    acidulee, propre, frais, fraiche, doux, douce, agreable, beurre, yaourt, de yaourt, acido,
    acida, limpio, limpia, fresco, fresca, suave, agradable, a yogur, pulito, pulita, delicato,
    delicata, gradevole, di yogurt, zuur, zurig, schoon, fris, aangenaam, naar yoghurt, limpo,
    limpa, agradavel, a iogurte, syrlig, ren, frisk, behaglig, behagelig, kwasny, kwaskowaty,
    czysty, swiezy, lagodny, przyjemny`,
  ),
  'g',
);
const TEXTURES = new RegExp(
  phrases(
    `smooth, silky, glossy, even, uniform, velvety, glatt, seidig, gleichmassig, samtig, lisse, soyeux,
    soyeuse, homogene, liso, lisa, sedoso, sedosa, homogeneo, homogenea, liscio, liscia, setoso,
    vellutato, omogeneo, omogenea, glad, zijdezacht, egaal, slat, jevn, jamn, gladki, gladka,
    jednolity, jednolita`,
  ),
  'g',
);
/** How much so, and what joins two of them. */
const BETWEEN = new RegExp(
  phrases(
    `and, very, quite, nicely, nice, slightly, a bit, a little, und, sehr, leicht, etwas, schon, et,
    tres, un peu, legerement, y, e, muy, un poco, ligeramente, molto, leggermente, en, heel, erg,
    licht, een beetje, muito, um pouco, og, och, mycket, lite, meget, lidt, veldig, litt, i, bardzo,
    lekko`,
  ),
  'g',
);

/** Whether a text in plain letters holds nothing but what a clean jar is called under such a field. */
export function onlyClean(said: string, field: 'smell' | 'texture'): boolean {
  const known = field === 'smell' ? [SMELLS] : [TEXTURES, ...SET_PHRASES.map(([, pattern]) => pattern)];
  const left = known.reduce((text, pattern) => text.replace(pattern, ' '), said);
  return left !== said && !said.includes('?') && !/[\p{L}\p{N}]/u.test(left.replace(BETWEEN, ' '));
}
