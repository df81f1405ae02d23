// What a remark says of whether its jar is still there, in the languages that can be vouched for. It is suggested where the keeper is
// asked, and answers for nobody; nothing is excused by it, and what is not understood suggests nothing.
import type { GoneWord } from '../shapes/safety-codes';
import { plain, remembered } from '../quantities/quantities';
import { phrases } from './phrases';
import { clausesOf, readRemark } from './remark-words';
import { DENIALS } from './thing-words';

/** English, German, French; in plain letters. */
const EATEN =
  'eaten, eaten up, ate it, ate it all, finished, finished off, polished off, aufgegessen, gegessen, verputzt, mange, mangee, mange tout';
const GONE =
  'gone, all gone, given away, gave it away, given to, gave it to, used up, verschenkt, weggegeben, aufgebraucht, donne, donnee, offert, offerte';

/** Some of it may be left, or it is still to come; and what is gone is not the jar. */
const NOT_ALL =
  'half, some, part, partly, most, mostly, a bit, a little, a spoon, spoonful*, almost, nearly, if, to be, will, should, must, can, could, best, before, by, half-, halb, halbe, halber, etwas, teil, teilweise, fast, ein wenig, bald, soll, muss, kann, wenn, moitie, un peu, presque, bientot, a manger, si';
const NOT_THE_JAR =
  'whey, lump*, bubble*, smell, taste, grain*, froth, lid, fibre, fiber, molke, klumpen, geruch, geschmack, grumeaux, odeur, gout, petit-lait';

const finds = (words: string): RegExp => new RegExp(phrases(words));
const [eaten, gone] = [finds(EATEN), finds(GONE)];
const [denied, notAll, notTheJar] = [finds(DENIALS), finds(NOT_ALL), finds(NOT_THE_JAR)];

function read(text: string): GoneWord | null {
  if (text.includes('?')) return null;
  for (const clause of clausesOf(plain(text))) {
    if (denied.test(clause) || notAll.test(clause) || notTheJar.test(clause)) continue;
    if (readRemark(clause).thrownOut) return 'discarded';
    if (eaten.test(clause)) return 'eaten up';
    if (gone.test(clause)) return 'gone';
  }
  return null;
}

/** What became of its jar by a remark: to be asked about, never taken for said. null: it tells nothing of it. */
export const goneInWords = remembered(read);
