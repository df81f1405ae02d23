// Words of spoilage in scripts whose words \b knows no ends of: Russian, Ukrainian, Japanese, Chinese, Korean, Hindi.
// From memory; only words that plainly say mould, rot, a foul smell, a colour of growth, or spoilage; "sour" is none of
// them. Matched against `plain` text put together again (NFC), in which й has become и, ё е and ї і.
import type { DiscardSign } from '../ledger/records';

/** Whether a text has letters that this file is about. */
const isBeyondLatin = (text: string): boolean =>
  /[\p{sc=Cyrillic}\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\p{sc=Devanagari}]/u.test(text);

const any = (...words: string[]): RegExp => new RegExp(words.join('|'), 'u');
const raw = String.raw;

/** Start of a Cyrillic word; what follows is a stem, with any ending. */
const stem = (...stems: string[]): string => raw`(?<!\p{L})(?:${stems.join('|')})\p{L}*`;
/** A Cyrillic colour with the endings of an adjective or a verb, and no other: черника is a berry. */
const hue = (...stems: string[]): string =>
  raw`(?<!\p{L})(?:${stems.join('|')})(?:ии|ыи|ои|ого|ому|ими|ыми|их|ых|им|ым|ая|ое|ые|ую|ою|оі|іи|іх|і|а|о|ы|е|и|у|оват\p{L}*)?(?!\p{L})`;

/** Things on which a colour of these languages is a growth's; alone it may be a lid's or a fruit's. */
const KOREAN_SPOTS = raw`(?=\s*(?:점|반점|얼룩|곰팡이))`;
const HINDI_SPOTS = raw`(?=\s*(?:रंग|धब्ब|दाग|फफू))`;

const SIGNS: readonly (readonly [DiscardSign, RegExp])[] = [
  ['pink', any(hue('розов', 'порозове(?:л|вш)', 'рожев', 'порожевіл'), 'ピンク色?', '粉红色?|粉紅色?|粉色', '분홍|핑크', 'गुलाबी')],
  ['red', any(hue('красн', 'покрасне(?:л|вш)', 'червон', 'почервоніл'), '赤い(?=斑|点|カビ)|赤カビ', '(?<!粉)(?:红色|紅色)|红斑|紅斑|红点|紅點', `(?:빨간|붉은)${KOREAN_SPOTS}`)],
  ['orange', any(hue('оранжев', 'помаранчев', 'жовтогаряч'), 'オレンジ色|橙色', '橘色|橘红|橘紅', '주황|오렌지색', `नारंगी${HINDI_SPOTS}`)],
  ['black', any(hue('черн', 'почерне(?:л|вш)', 'чорн', 'почорніл'), '黒い(?=斑|点|カビ)|黒カビ', '黑色?(?=霉|斑|点|點)', `(?:검은|까만)${KOREAN_SPOTS}`, `काल(?:ा|े|ी)${HINDI_SPOTS}`)],
  ['fuzz', any(
    stem('(?:за|по)?плес(?:ен|нев)', '(?:за|по)?пліс(?:ен|няв|нів)', 'цвіл'),
    // Not うかび, "floats up": whey does.
    'カビ(?!ア)|(?<!浮|う|ほ)かび(?=$|[ がはもたてのなだ臭、。,!?])|黴',
    '(?<!倒)霉|长毛了|長毛了',
    '곰팡이',
    'फफू(?:ं|ँ)द(?:ी|े)?',
  )],
  ['foul smell', any(
    stem('(?:про|с)?тух(?:л|ш)', '(?:с|за|под)?гни(?:л|ющ|ет|є)', '(?:за|про)?воня(?:л|ет|ют)', 'вонюч', 'смрад', 'прогоркл', 'тошнотворн', 'плохо пах', 'пах(?:нет|ло) (?:плохо|тухл|гнил)', raw`неприятн\p{L}+ запах`),
    raw`(?<!\p{L})вонь(?:ю)?(?!\p{L})`,
    stem('смерд', 'смор(?:ід|од)(?!ин)', 'погано пахн', 'пахн(?:е|уло) погано', raw`неприємн\p{L}+ запах`),
    '腐っ|腐敗|腐臭|異臭|悪臭|(?:変|嫌|いや)な(?:臭い|匂い|におい)',
    '腐烂|腐爛|腐败|恶臭|惡臭|臭味|发臭|發臭|异味|異味|馊|餿',
    '(?:상한|역한|이상한|나쁜|썩은) *냄새|썩(?:은|었|어|는)|부패|악취',
    'बदबू|दुर्ग(?:ं|ँ)ध|सड\u093c(?:ा|ी|े|न| ग)',
  )],
]; // prettier-ignore

const SPOILED = any(
  stem('испор[тч]', 'зіпс'),
  '傷ん(?:だ|で)',
  '变质|變質',
  '(?<!이|속)상했',
  'ख\u093c?राब हो ?(?:ग|चु)',
);

const LISTED_HAN =
  '(?:(?:发霉|發霉|霉斑|霉菌|霉味|霉|异味|異味|臭味|粉红色?|粉紅色?|变色|變色)[、和或及/ ]*){0,3}';

/** What denies a word behind it. Little may stand between: a negation is not to reach over what it does not mean. */
const DENIED_BEFORE = any(
  raw`(?<!\p{L})(?:без|нет|нету|ни|немає|нема|ні|жодн\p{L}+|никак\p{L}+|ніяк\p{L}+)(?: (?!но |але |а )\p{L}+){0,2} ?$`,
  raw`(?<!\p{L})не(?: (?:было|було|стал\p{L}*|вид\p{L}*|замет\p{L}*|поміт\p{L}*|обнаруж\p{L}*|появил\p{L}*|совсем|очень|дуже))? ?$`,
  `(?:没有?|沒有?|无|無|未|不是?)(?:任何|一点|一點|明显|明顯|看到|看见|看見|闻到|聞到|见|見|发现|發現|出现|出現|有|长|長|发|發|变|變){0,2}${LISTED_HAN}(?:发|發|长|長)?$`,
  raw`(?:^| )(?:बिना|बिना किसी)(?: \S+)? ?$`,
);

const LISTED_KANA =
  '(?:(?:[・、やと/]|または) *(?:異臭|悪臭|腐敗|腐臭|変色|カビ|かび|ピンク色?|オレンジ色)){0,3}';
const LISTED_HANGUL = '(?:(?:이?나|와|과|/|·) *(?:악취|곰팡이|냄새|변색)){0,3}';

/** What denies a word before it. */
const DENIED_AFTER = any(
  raw`^ ?(?:тут |здесь |совсем |пока |еще |ще )?(?:нет|нету|немає|нема|не (?:вид|было|було|обнаруж|замет|появ|поміт)\p{L}*|отсутств\p{L}+|відсутн\p{L}+)(?!\p{L})`,
  `^(?:臭さ?|色)?(?:の発生)?${LISTED_KANA}(?:など)?(?:は|が|も|では|じゃ)? *(?:まだ|全く|全然|一切|特に)? *(?:なし|無し|ナシ|ない|無い|無く|なく|なかった|ありません|見られ(?:ない|ず|ません)|見え(?:ない|ません)|見当たら(?:ない|ず)|(?:(?:生え|出)て|て|して)い?(?:ない|なかった|ません))(?!か)`,
  `^(?:색|빛)?${LISTED_HANGUL}(?:는|은|이|가|도)? *(?:전혀 *|아직 *)?(?:없|안 ?(?:핌|피|생|보|남|나)|아니|아님|(?:보이|생기|피|나)지 ?않)`,
  '^(?: (?:बिल्कुल|भी|की|का|के|तो|दिखी|दिखाई|आई|आ|लगी|हुआ)){0,2} ?नही(?:ं|ँ)',
);

/** Things of a kitchen that have a colour and are no growth, right behind the colour. */
const THING =
  /^(?:[ 的のい])*(?:крышк|банк|этикетк|миск|чашк|ложк|ложечк|перец|перц|чаи|смородин|рис|сол[ьи]|икр|цедр|сок|вин|кришк|етикетк|盖|蓋|瓶|标签|標籤|ラベル|ふた|フタ|容器|碗|杯|糖|茶|塩|盐|鹽|胡椒|뚜껑|라벨|병|그릇|소금|컵|ढक्कन|लेबल|नमक|बर्तन)/u;

/** Said with a doubt of the keeper's own. */
const UNSURE =
  /(?<!\p{L})(?:может|возможно|наверно|кажется|похоже|можливо|мабуть|здається|схоже)|かも|可能|好像|아마|것 같|शायद|\?\s*$/u;

export interface FoundBeyond {
  readonly sign: DiscardSign;
  /** A coloured thing of the kitchen, to be asked about. */
  readonly thing: boolean;
  readonly unsure: boolean;
}

const found = (pattern: RegExp, clause: string): RegExpExecArray | null => {
  const hit = pattern.exec(clause);
  if (!hit) return null;
  const [before, after] = [clause.slice(0, hit.index), clause.slice(hit.index + hit[0].length)];
  return DENIED_BEFORE.test(before) || DENIED_AFTER.test(after) ? null : hit;
};

/**
 * Signs that a clause names in these scripts, and are not denied right before or after.
 * @param clause of `plain` text; it is composed here
 */
export function signsBeyondLatin(clause: string): readonly FoundBeyond[] {
  if (!isBeyondLatin(clause)) return [];
  const text = clause.normalize('NFC');
  const unsure = UNSURE.test(text);
  return SIGNS.flatMap(([sign, pattern]): FoundBeyond[] => {
    const hit = found(pattern, text);
    if (!hit) return [];
    const colour = sign === 'pink' || sign === 'red' || sign === 'orange' || sign === 'black';
    const thing = colour && THING.test(text.slice(hit.index + hit[0].length));
    return [{ sign, thing, unsure }];
  });
}

/** Whether a clause of `plain` text plainly says spoiled in these scripts. */
export const spoiledBeyondLatin = (clause: string): boolean =>
  isBeyondLatin(clause) && found(SPOILED, clause.normalize('NFC')) !== null;
