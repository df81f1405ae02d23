// What a cell says seeded a jar: jars by day and letter, by name, by "previous"; pieces of products; received cultures.
import type { Source } from '../ledger/records';
import { findAmounts, plain, readNumber, tidy, type AmountOptions, type FoundAmount } from '../quantities';
import { dayText, findDay, type DayOrder } from './days';
import { assumed, problem } from './says';

/** A jar that a seed may name: of these notes or already in the ledger. */
export interface KnownJar {
  readonly id: string;
  readonly day: string;
  readonly letter: string;
  readonly word: string | null;
  /** Other texts that mean it, plain: a whole label, a name, a number. */
  readonly aliases: readonly string[];
  readonly label: string;
}

export interface SeedPart {
  readonly from: { readonly jar: KnownJar } | { readonly source: SourceMention };
  readonly amount: FoundAmount | null;
}

export interface SourceMention {
  readonly name: string;
  readonly form: Source['form'];
  readonly culture: boolean;
  /** Nothing but its place says that it is a product. */
  readonly guessed: boolean;
  readonly unnamed: boolean;
}

export interface SeedsReading {
  readonly parts: readonly SeedPart[];
  readonly problems: readonly string[];
  readonly assumptions: readonly string[];
  /** Words that named no seed: kept in the note. */
  readonly leftOver: readonly string[];
}

export interface SeedContext {
  readonly day: string;
  /** The id of the jar being seeded: "the only jar it fits" is never itself. */
  readonly self: string;
  readonly order: DayOrder;
  readonly amounts: AmountOptions;
  readonly jars: SeedIndex;
  /** Plain names of products seen with pieces anywhere, or in the ledger. */
  readonly sources: ReadonlySet<string>;
  /** No jar is older than this one, so a bare name can only be a product. */
  readonly first: boolean;
  /** The amount column counts pieces. */
  readonly piecesBeside: boolean;
}

/** Known jars by day, by letter and by every text that means one. */
export class SeedIndex {
  readonly byDay = new Map<string, KnownJar[]>();
  readonly byAlias = new Map<string, KnownJar[]>();
  readonly byLetter = new Map<string, KnownJar[]>();
  readonly days: string[];

  constructor(jars: Iterable<KnownJar>) {
    const put = (map: Map<string, KnownJar[]>, key: string, jar: KnownJar): void => {
      const there = map.get(key);
      if (!there) map.set(key, [jar]);
      else if (!there.includes(jar)) there.push(jar);
    };
    for (const jar of jars) {
      put(this.byDay, jar.day, jar);
      put(this.byLetter, jar.letter, jar);
      for (const alias of jar.aliases) put(this.byAlias, alias, jar);
    }
    this.days = [...this.byDay.keys()].toSorted();
  }
}

const STOP = new Set(
  "jar jars glas glass glaser pot pots bocal frasco tarro vasetto barattolo burk sloik sloika batch batches lot charge ansatz fournee lote lotto sats partia from of the made on vom von aus du de del der die das di da van do dos fra fran z ze la le les el il lo den det dem at with mit avec con a seed seeded starter culture some no nr letter one jar's is was and no. number buchstabe lettre letra lettera potje vidro".split(
    ' ',
  ),
);
const SAME_DAY =
  /\b(?:same (?:day|batch)|this batch|gleiche[rn]? tag|selbe[rn]? tag|meme jour|mismo dia|stesso giorno|zelfde dag|mesmo dia|samma dag|samme dag|ten sam dzien|tego samego dnia)\b/;
const PREVIOUS =
  /\b(?:previous|prev|prior|last|latest|most recent|letzte[rsnm]?|vorige[rsnm]?|vorherige[rsnm]?|precedente?|dernier(?:e)?|anterior|ultim[oa]|scors[oa]|laatste|vorig|forra|senaste|forrige|sidste|siste|poprzedni\w*|ostatni\w*)\b/;
const BEFORE_LAST =
  /\b(?:before last|vorletzt\w*|avant-dernier\w*|penultim\w*|antepenultim\w*|the one before)\b/;
const PREVIOUS_WORDS =
  /\b(?:previous|prev|prior|last|latest|most|recent|time|time's|week|week's|one|letzte\w*|vorige\w*|vorherige\w*|precedente?|dernier\w*|anterior|ultim[oa]|laatste|vorig|forra|senaste|forrige|sidste|siste|poprzedni\w*|ostatni\w*|vez|fois|volta|keer|gang(?:en)?|gange|mal|same|day|this|gleiche[rn]?|selbe[rn]?|tag|am|meme|jour|mismo|dia|stesso|giorno|zelfde|dag|mesmo|samma|samme|ten|sam|dzien)\b/g;
const CULTURE =
  /\b(?:neighbou?r\w*|friend\w*|received|gift(?:ed)?|given|gave|swap(?:ped)?|club|someone|aunt|uncle|mother-in-law|sister|brother|colleague|past unknown|unknown past|nachbar\w*|freund\w*|geschenk\w*|bekommen|erhalten|verein|kollegin?|voisine?s?|amie?s?|recue?s?|offerte?|vecin[oa]s?|amig[oa]s?|regal[oa]\w*|recibid[oa]|vicin[oa]|amic[oa]|regalat[oa]|ricevut[oa]|buren|buurvrouw|buurman|vriend\w*|gekregen|vizinh[oa]s?|recebid[oa]|granne\w*|van(?:nen)?|fatt|nabo\w*|venn?(?:en)?|sasiad\w*|przyjaciel\w*|otrzyman\w*)\b/;
const PRODUCT =
  /\b(?:starter(?: culture)? (?:powder|sachet|packet|from)|powder|product|probiotic\w*|store[- ]bought|shop[- ]bought|fresh start|from scratch|new start|freeze[- ]dried|pulver|produkt|poudre|polvo|polvere|poeder|po|proszek|sachet|packet)\b/;
const FUNCTION_WORDS =
  /\b(?:the|one|good|best|old|older|before|after|from|last|that|which|some|other|another|unknown|\?+|der|die|das|alte[rsn]?|gute[rsn]?|vor|nach|le|la|les|celui|celle|bon|bonne|vieux|avant|apres|el|buen[oa]?|viej[oa]|antes|despues|il|buon[oa]?|vecchi[oa]|prima|dopo|goede|oude|voor|na|bom|boa|velh[oa]|depois|gamla|goda|fore|efter|gode|gamle|for|etter|dobry|dobra|stary|przed|po|jar|jars|glas|glass|batch|pot|bocal|frasco|tarro|vasetto|burk|sloik\w*|don'?t|know|forgot|maybe|not|sure|dunno)\b/;

const PIECE_WORD =
  /(?:^|\s)(?:capsules?|caps|tablets?|tabs|pills|sachets?|kapseln|tabletten|beutel|gélules|comprimés|cápsulas|comprimidos|capsule|compresse|kapslar|tabletter|kapsler|kapsułki|tabletki)(?=\s|$)/i;

const JAR_WORDS = new Set(
  'batch jar glas glass pot lot charge no nr bocal frasco tarro vasetto burk sloik ansatz lote lotto sats'.split(
    ' ',
  ),
);

export const STRONG =
  /\s*(?:\+|;|&|\s(?:and|plus|und|sowie|mixed with|mit|with|avec|et|con|y|e|og|och|en|i|com|med|oraz|z)\s)\s*/i;
const WEAK = /\s*(?:,\s+|,(?=\D)|\s\/\s|\/(?=\p{L})|(?<=\p{L})\/(?=\d))\s*/iu;

type Resolved = { part: SeedPart; assumptions: string[]; leftOver: string[] };
type Tried = Resolved | { problem: string } | null;

const words = (text: string): string[] =>
  plain(text)
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '');
const unused = (text: string): string[] => words(text).filter((word) => !STOP.has(word));

/** The jar of a set whose letter stands next to a date: right after it, else right before it. */
function letterBeside(
  before: string,
  after: string,
  jars: readonly KnownJar[],
): { jar: KnownJar; before: string; after: string } | null {
  const byLetter = new Map<string, KnownJar[]>();
  for (const jar of jars) byLetter.set(jar.letter, [...(byLetter.get(jar.letter) ?? []), jar]);
  const oneOf = (letter: string, context: string): KnownJar | null => {
    const there = byLetter.get(plain(letter)) ?? [];
    if (there.length < 2) return there[0] ?? null;
    const said = ` ${words(context).join(' ')} `;
    const byWord = there.filter(
      (jar) => jar.word !== null && said.includes(` ${words(jar.word).join(' ')} `),
    );
    return byWord.length === 1 ? (byWord[0] ?? null) : null;
  };
  const next =
    /^[\s\-_/.,:#(]*(?:(?:jar|glas|glass|pot|batch|bocal|frasco|tarro|vasetto|burk|sloik)\s*)?[#(]?\s*([\p{L}\p{N}]{1,20})(?![\p{L}\p{N}])[)]?/iu.exec(
      after,
    );
  if (next) {
    const jar = oneOf(next[1] ?? '', `${before} ${after}`);
    if (jar) return { jar, before, after: after.slice(next[0].length) };
  }
  for (const jar of jars) {
    // A batch word between the day and the letter: "15 Oct plain b"; a name of several words.
    const said = ` ${words(after).join(' ')} `;
    const wanted = [jar.word, jar.letter].filter(Boolean).join(' ');
    if (wanted !== jar.letter || wanted.includes(' ')) {
      const phrase = ` ${words(wanted).join(' ')} `;
      if (said.includes(phrase)) return { jar, before, after: said.replace(phrase, ' ') };
    }
  }
  const last =
    /(?:^|[^\p{L}\p{N}])([\p{L}\p{N}]{1,20})[\s,(:\-/]*(?:(?:of|from|on|made|made on|batch|vom|von|aus|du|de|del|di|da|dal|van|do|fra|fran|från|z|ze|the|am|le)[\s,(:]+)*$/iu.exec(
      before,
    );
  if (last) {
    const jar = oneOf(last[1] ?? '', before);
    if (jar) return { jar, before: before.slice(0, last.index), after };
  }
  return null;
}

function pickAmount(
  text: string,
  context: SeedContext,
): { amount: FoundAmount | null; rest: string; several: boolean } {
  const found = findAmounts(text, context.amounts, true);
  if (found.length === 0) return { amount: null, rest: text, several: false };
  let rest = tidy(text);
  for (const amount of found.toReversed()) rest = `${rest.slice(0, amount.start)} ${rest.slice(amount.end)}`;
  return { amount: found[0] ?? null, rest, several: found.length > 1 };
}

/** A seed named by its day, or null where the text holds no day. */
function byDate(text: string, context: SeedContext): Tried {
  const clean = tidy(text);
  const found = findDay(clean);
  if (!found) return null;
  const read =
    context.order === 'day first'
      ? (found.dayFirst ?? found.monthFirst)
      : (found.monthFirst ?? found.dayFirst);
  if (!read) return { problem: problem.seedNotFound(text) };
  const assumptions: string[] = [];
  const monthDay = `${String(read.month).padStart(2, '0')}-${String(read.day).padStart(2, '0')}`;
  let day = read.year === null ? null : dayText(read, read.year);
  if (read.year === null) {
    const days = context.jars.days.filter((known) => known.slice(5) === monthDay);
    day = days.findLast((known) => known <= context.day) ?? days.at(-1) ?? null;
  }
  const jars = day === null ? [] : (context.jars.byDay.get(day) ?? []);
  const before = clean.slice(0, found.start);
  const after = clean.slice(found.end);
  const beside = letterBeside(before, after, jars);
  const shown = clean.slice(found.start, found.end);
  const finish = (jar: KnownJar, rest: string, amount: FoundAmount | null): Resolved => {
    if (read.year === null) assumptions.push(assumed.seedYear(text, jar.label));
    const over = unused(rest);
    const leftOver = over.length > 0 ? [rest.replace(/\s+/g, ' ').replace(/^[\s;,]+|[\s;,]+$/g, '')] : [];
    if (over.length > 0) assumptions.push(assumed.seedWords(text, jar.label, leftOver[0] ?? ''));
    return { part: { from: { jar }, amount }, assumptions, leftOver };
  };
  if (beside) {
    const { amount, rest, several } = pickAmount(`${beside.before} ; ${beside.after}`, context);
    // A second day, or a second letter of that day, is a second seed: the splitter takes this apart.
    if (
      several ||
      findDay(rest) ||
      words(rest).some((word) =>
        jars.some((jar) => jar.letter === word && jar !== beside.jar && word !== 'a'),
      )
    )
      return null;
    const joined = /[+;&,/]|\b(?:and|und|et|plus)\b/i.test(rest.replace(' ; ', ' '));
    if (joined && words(rest).some((word) => !STOP.has(word) || jars.some((jar) => jar.letter === word)))
      return null;
    return finish(beside.jar, rest, amount);
  }
  const { amount, rest } = pickAmount(`${before} ; ${after}`, context);
  if (findDay(rest)) return null;
  const over = unused(rest);
  if (jars.length === 0) return { problem: problem.seedNotFound(text) };
  // A letter that no jar of that day has.
  if (/^[\s\-_/.,:#(]*\p{L}(?![\p{L}\p{N}'])/u.test(after)) return { problem: problem.seedNotFound(text) };
  if (over.length === 1 && (over[0]?.length ?? 0) <= 3) return { problem: problem.seedNotFound(text) };
  const [only] = jars.filter((jar) => jar.id !== context.self);
  if (jars.filter((jar) => jar.id !== context.self).length === 1 && only) {
    assumptions.push(assumed.onlyJar(shown === text ? text : clean, only.label));
    return finish(only, rest, amount);
  }
  return {
    problem: problem.seedSeveral(
      text,
      jars.map((jar) => jar.label),
    ),
  };
}

/** A product's name out of what stands around its pieces. */
function sourceName(text: string): string {
  return tidy(text)
    .replace(/[()[\]{}:;=×*,]+/g, ' ')
    .replace(
      /^\s*(?:(?:starter|start|started (?:from|with)|new|fresh|from|of|de|d'|di|van|von|aus|av|af|com|con|avec|mit|with|x)\s+)+/i,
      '',
    )
    .replace(/\s+(?:x|of|each|je|à)\s*$/i, '')
    .replace(/^[\s\-.+/]+|[\s\-+/]+$/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

function mention(name: string, form: Source['form'], more: Partial<SourceMention> = {}): SourceMention {
  return {
    name: name === '' ? 'unnamed product' : name,
    form,
    culture: false,
    guessed: false,
    unnamed: name === '',
    ...more,
  };
}

const asPieces = (value: number, text: string): FoundAmount => ({
  amount: { value, unit: 'pieces', typed: text.slice(0, 200) },
  assumed: [],
  form: null,
  regional: false,
  metricWord: false,
  text,
  start: 0,
  end: 0,
});

const resolved = (
  source: SourceMention,
  taken: FoundAmount | null,
  assumptions: string[] = [],
): Resolved => ({
  part: { from: { source }, amount: taken },
  assumptions,
  leftOver: [],
});

/** A product, with or without a count. */
function bySource(text: string, context: SeedContext): Tried {
  const { amount, rest, several } = pickAmount(text, context);
  if (several) return null;
  const whole = sourceName(rest);
  // "Capsules Blue Tin (10 pieces)": the piece's word is not part of the name.
  const pieceWord =
    amount === null || (amount.amount.unit === 'pieces' && amount.form === null)
      ? PIECE_WORD.exec(whole)
      : null;
  const name = pieceWord ? sourceName(whole.replace(pieceWord[0], ' ')) : whole;
  if (STRONG.test(` ${name} `) && !context.sources.has(plain(name))) return null;
  const isCulture = CULTURE.test(plain(name)) && amount?.amount.unit !== 'pieces';
  if (isCulture)
    return resolved(mention(name, 'culture', { culture: true }), amount, [assumed.culture(name)]);
  if (amount && (amount.amount.unit === 'pieces' || amount.amount.unit === 'CFU')) {
    return resolved(mention(name, amount.form), amount, name === '' ? [assumed.unnamed(text)] : []);
  }
  if (context.sources.has(plain(name))) return resolved(mention(name, null), amount);
  const times =
    /^(.*?)\s*(?:[x×]\s?(\d{1,4})|(\d{1,4})\s?[x×])$/i.exec(tidy(text)) ??
    /^()(?:(\d{1,4})\s?[x×]?)\s+(\p{L}.*)$/iu.exec(tidy(text));
  if (times) {
    const before = times[1] ?? '';
    const named = sourceName(before === '' ? (times[3] ?? '') : before);
    const count = Number(times[2] ?? times[3]);
    const piece =
      /\s*\b(capsules?|caps|tablets?|tabs|pills|sachets?|kapseln|tabletten|beutel|gelules|comprimes|capsulas|comprimidos|capsule|compresse|kapslar|tabletter|kapsler|kapsulki|tabletki)\b\.?/i.exec(
        plain(named),
      );
    if (
      count > 0 &&
      named !== '' &&
      (piece || context.sources.has(plain(named)) || !FUNCTION_WORDS.test(plain(named)))
    ) {
      const bare = piece ? named.slice(0, piece.index) + named.slice(piece.index + piece[0].length) : named;
      return resolved(mention(sourceName(bare), null), asPieces(count, text), [assumed.pieces(text)]);
    }
  }
  if (name === '') return null;
  if (amount?.amount.unit === 'g' || PRODUCT.test(plain(name)) || context.piecesBeside) {
    return resolved(
      mention(name, /powder|pulver|poudre|polv|poeder/.test(plain(name)) ? 'powder' : null),
      amount,
      [assumed.product(name)],
    );
  }
  if (
    context.first &&
    words(name).length <= 5 &&
    !FUNCTION_WORDS.test(plain(name)) &&
    !PREVIOUS.test(plain(name))
  ) {
    return resolved(mention(name, null, { guessed: true }), amount, [assumed.product(name)]);
  }
  return null;
}

/** A jar named without a day: a whole label or name, a number, "same day a", "the previous batch". */
function byName(text: string, context: SeedContext): Tried {
  const exact = context.jars.byAlias.get(words(text).join(' ')) ?? [];
  if (exact.length === 1 && exact[0])
    return { part: { from: { jar: exact[0] }, amount: null }, assumptions: [], leftOver: [] };
  const { amount, rest, several } = pickAmount(text, context);
  if (several) return null;
  const said = plain(rest);
  const key = words(rest).join(' ');
  const bare = words(rest).filter((word) => !JAR_WORDS.has(word));
  const named =
    context.jars.byAlias.get(key) ??
    context.jars.byAlias.get(bare.join(' ')) ??
    context.jars.byAlias.get(unused(rest).join(' ')) ??
    [];
  if (named.length === 1 && named[0])
    return { part: { from: { jar: named[0] }, amount }, assumptions: [], leftOver: [] };
  const sameDay = SAME_DAY.test(said);
  const previous = !sameDay && (PREVIOUS.test(said) || BEFORE_LAST.test(said));
  if (sameDay || previous) {
    const back = BEFORE_LAST.test(said) ? 2 : 1;
    const earlier = context.jars.days.filter((day) => day < context.day);
    const day = sameDay ? context.day : earlier.at(-back);
    const jars = (day === undefined ? [] : (context.jars.byDay.get(day) ?? [])).filter(
      (jar) => jar.id !== context.self,
    );
    const left = words(said.replace(PREVIOUS_WORDS, ' ').replace(BEFORE_LAST, ' '));
    const letters = jars.filter((jar) => left.includes(jar.letter));
    const over = left.filter((word) => !STOP.has(word) && !jars.some((jar) => jar.letter === word));
    const fits = letters.length > 0 ? letters : jars;
    if (over.length > 0) return { problem: problem.seedNotFound(text) };
    if (fits.length === 1 && fits[0]) {
      return {
        part: { from: { jar: fits[0] }, amount },
        assumptions: [assumed.previous(text, fits[0].label)],
        leftOver: [],
      };
    }
    return {
      problem:
        jars.length === 0
          ? problem.seedNotFound(text)
          : problem.seedSeveral(
              text,
              fits.map((jar) => jar.label),
            ),
    };
  }
  if (named.length > 1)
    return {
      problem: problem.seedSeveral(
        text,
        named.map((jar) => jar.label),
      ),
    };
  const single = words(rest).filter((word) => word === words(rest).at(-1) || !STOP.has(word));
  const byLetter =
    single.length === 1
      ? (context.jars.byLetter.get(single[0] ?? '') ?? []).filter((jar) => jar.id !== context.self)
      : [];
  if (byLetter.length === 1 && byLetter[0]) {
    const jar = byLetter[0];
    return { part: { from: { jar }, amount }, assumptions: [assumed.onlyJar(text, jar.label)], leftOver: [] };
  }
  if (byLetter.length > 1)
    return {
      problem: problem.seedSeveral(
        text,
        byLetter.map((jar) => jar.label),
      ),
    };
  return null;
}

function tryPart(text: string, context: SeedContext): Tried {
  const name = byName(text, context);
  if (name && 'part' in name) return name;
  const date = byDate(text, context);
  if (date) return date;
  if (name) return name;
  return findDay(text) ? null : bySource(text, context);
}

/** Pieces of a text, each tried by itself; a bare letter takes the day beside it ("15 Oct a and b", "a and b of 15 Oct"). */
function tryAll(pieces: readonly string[], context: SeedContext): Tried[] {
  const days = pieces.map((piece) => {
    const found = findDay(piece);
    return found ? tidy(piece).slice(found.start, found.end) : null;
  });
  return pieces.map((piece, at) => {
    const day =
      days.slice(0, at).findLast((one) => one !== null) ?? days.slice(at).find((one) => one !== null);
    const isLetter = days[at] === null && /^(?:jar\s*)?[\p{L}\p{N}]{1,3}$/iu.test(piece.trim());
    const beside = isLetter && day ? tryPart(`${day} ${piece}`, context) : null;
    return beside && 'part' in beside ? beside : tryPart(piece, context);
  });
}

const good = (tried: readonly Tried[]): tried is Resolved[] =>
  tried.every((one) => one !== null && 'part' in one);

/** Reads what seeded a jar. Every part of the text ends as a seed, a problem, or words kept for the note. */
export function readSeeds(text: string, context: SeedContext): SeedsReading {
  const clean = text
    .replace(/[\r\n]+/g, ' ; ')
    .trim()
    .replace(/^(?:seed(?:ed)?(?: from| with| by)?|from|starter|aus|von|inoculum)\s*:\s*/i, '');
  const whole = tryPart(clean, context);
  const pieces = clean
    .split(STRONG)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
  const finer = pieces
    .flatMap((piece) => piece.split(WEAK))
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '');
  const tries: Tried[][] = [[whole]];
  if (pieces.length > 1) tries.push(tryAll(pieces, context));
  if (finer.length > pieces.length) tries.push(tryAll(finer, context));
  const chosen = tries.find(good);
  if (chosen) {
    return {
      parts: chosen.map((one) => (one as Resolved).part),
      problems: [],
      assumptions: chosen.flatMap((one) => (one as Resolved).assumptions),
      leftOver: chosen.flatMap((one) => (one as Resolved).leftOver),
    };
  }
  const either = clean.split(/\s+(?:or|oder|ou|o|of|eller|lub)\s+/i);
  const eitherTried = either.length > 1 ? tryAll(either, context) : [];
  if (eitherTried.length > 1 && good(eitherTried)) {
    const names = eitherTried.map(({ part: { from } }) =>
      'jar' in from ? from.jar.label : from.source.name,
    );
    return { parts: [], problems: [problem.seedSeveral(clean, names)], assumptions: [], leftOver: [] };
  }
  // Nothing fits whole: say what is missing in the coarsest cut that has a part that does fit, else of the whole text.
  const partly =
    tries.slice(1).find((tried) => tried.some((one) => one !== null && 'part' in one)) ?? tries[0] ?? [];
  const texts = partly === tries[0] ? [clean] : partly.length === pieces.length ? pieces : finer;
  const problems = partly.flatMap((one, at) =>
    one === null ? [problem.seedNotFound(texts[at] ?? clean)] : 'problem' in one ? [one.problem] : [],
  );
  return { parts: [], problems, assumptions: [], leftOver: [] };
}

/** Names of products that stand with pieces in a text: they are products wherever they stand without. */
export function namedWithPieces(text: string, amounts: AmountOptions): string[] {
  return text
    .replace(/[\r\n]+/g, ' ; ')
    .split(STRONG)
    .flatMap((piece) => {
      const [found, second] = findAmounts(piece, amounts);
      if (!found || second || found.amount.unit !== 'pieces') return [];
      const clean = tidy(piece);
      const name = sourceName(`${clean.slice(0, found.start)} ${clean.slice(found.end)}`);
      return name === '' ? [] : [plain(name)];
    });
}

/** The amounts of a cell: "3 tbsp + 3T", "3 tbsp each", "2 EL", in order. */
export function readAmountList(
  text: string,
  options: AmountOptions,
): { amounts: FoundAmount[]; each: boolean; rest: string } {
  const amounts = findAmounts(text, options, true);
  let rest = tidy(text);
  for (const amount of amounts.toReversed())
    rest = `${rest.slice(0, amount.start)} ${rest.slice(amount.end)}`;
  const each =
    /\b(?:each|apiece|of each|per jar|je(?:weils)?|chacun\w*|cada (?:uno|una|um|uma)?|ciascun\w*|elk|ieder|var(?:dera|je)?|hver|kazd\w+)\b/i.test(
      plain(rest),
    );
  rest = rest
    .replace(
      /[+&;,/()]|\b(?:each|apiece|of each|and|und|je|jeweils|et|chacune?|cada|uno|una|y|e|ciascun[oa]|elk|en|och|og|hver|i)\b/gi,
      ' ',
    )
    .trim();
  return { amounts, each, rest };
}

/** A bare number, for amounts whose unit the column tells. */
export const bareNumber = (text: string): number | null => {
  const clean = tidy(text);
  const number = readNumber(clean, undefined, false);
  return number && number.length === clean.length ? number.value : null;
};
