// Seeds that are no jars: products with or without a count, cultures received from someone.
import type { Source } from '../../ledger/records';
import {
  cutOut,
  findAmounts,
  plain,
  tidy,
  type AmountOptions,
  type FoundAmount,
} from '../../quantities/quantities';
import { assumed, problem } from '../notes-says';
import type { SourceMention } from '../named-seeds';
import { pickAmount, seedOf, type Resolved, type SeedContext, type Tried } from './seed-index';
import {
  CULTURE,
  FUNCTION_WORDS,
  PIECE_FIRST,
  PIECE_WITHIN,
  PIECE_WORD,
  PREVIOUS,
  PRODUCT,
  SAME_DAY,
  STOP,
  STRONG,
  WEAK,
  words,
} from '../cells/seed-words';
import { isDitto } from '../cells/cell-words';

/** A product's name out of what stands around its pieces. */
export function sourceName(text: string): string {
  return tidy(text)
    .replace(/[()[\]{}:;=×*,"→←⇒⇐]+|[-=]>|<[-=]/g, ' ')
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
  measure: null,
  text,
  start: 0,
  end: 0,
});

const resolved = (source: SourceMention, taken: FoundAmount | null, assumptions: string[] = []): Resolved =>
  seedOf({ source }, taken, assumptions);

/** Whether a text goes on to count a second product: "3 Heron, 2 Lantern", but not "Heron, 2 caps" nor "2,5 Heron". */
function countsAnother(text: string, amounts: AmountOptions): boolean {
  const [first = '', ...others] = text.split(
    /[;+&/]|,(?!\d)|(?<!\d),|\s(?:and|und|et|y|e|og|och|en|plus)\s/iu,
  );
  return (
    /\p{L}{2}/u.test(first) &&
    others.some(
      (piece) =>
        /^\s*\d{1,4}\s*[x×]?\s*\p{L}{2}/iu.test(piece) && findAmounts(piece, amounts, true)[0]?.start !== 0,
    )
  );
}

/** The product that nothing but its form names, where only one has it: "capsules", "5 caps", "a sachet". */
function byForm(form: Source['form'], text: string, amount: FoundAmount | null, context: SeedContext): Tried {
  const names = form === null ? [] : (context.forms.get(form) ?? []);
  const chosen = names.length > 1 ? context.chosen(names) : null;
  const [only] = names;
  if (chosen !== null) return resolved(mention(chosen, form), amount);
  if (names.length > 1) return { problem: problem.whichProduct(text, names), choices: names };
  if (only === undefined) return null;
  return resolved(mention(only, form), amount, [assumed.onlyForm(text, only, form ?? '')]);
}

/** The form that a text names and nothing else: no product, no count but of it. */
function bareForm(text: string, amounts: AmountOptions): Source['form'] {
  const clean = tidy(text).replace(/^(?:an?|the|ein(?:e[nrs]?)?|une?|un[ao]?|en|ett?|some|my)\s+/i, '');
  const counted = /^\d/.test(clean) ? clean : `1 ${clean}`;
  const [found, second] = findAmounts(counted, amounts);
  if (found && !second && found.start === 0 && found.end === counted.length) return found.form;
  return /^(?:powder|pulver|poudre|polvo|polvere|poeder|pulverisat)$/i.test(clean) ? 'powder' : null;
}

export interface NamedForm {
  readonly name: string;
  /** With the word of its form, where that may be a part of the name: "Garden Caps". */
  readonly whole: string;
  readonly form: Source['form'];
}

/** Products by the form that they are named with: "Blue Tin capsules", "8 tablets Meadow Pot". */
export function formsNamed(text: string, amounts: AmountOptions): NamedForm[] {
  return text
    .replace(/[\r\n]+/g, ' ; ')
    .split(STRONG)
    .flatMap((piece) => piece.split(WEAK))
    .flatMap((piece) => {
      const clean = tidy(piece);
      const counted = findAmounts(clean, amounts).filter(({ form }) => form !== null);
      const word = PIECE_WORD.exec(clean);
      const form =
        counted[0]?.form ?? (word && (findAmounts(`1 ${word[0].trim()}`, amounts)[0]?.form ?? null));
      if (form === null || counted.length > 1 || bareForm(clean, amounts) !== null) return [];
      const [found] = counted;
      const rest = found ? cutOut(clean, [found]) : clean.replace(word?.[0] ?? '', ' ');
      const name = sourceName(rest.replace(PIECE_WORD, ' '));
      const whole = found || word?.index === 0 ? name : sourceName(clean);
      return name === '' || /^\d/.test(name) ? [] : [{ name, whole, form }];
    });
}

/** "Product: Garden Mix", "a product called Garden Mix": it is said to be one, and the word is no part of its name. */
const SAID_PRODUCT =
  /^(?:(?:an?|the|ein|une?|un[ao]?|en|ett?)\s+)?(?:products?|produkt|produit|producto|prodotto|produto)\s*(?::|called\s|named\s|genannt\s)?\s*(?=\p{L}{2})/iu;

/**
 * The word for pieces that a name ends with or begins with, where it is none of its own: beside a count, before the rest, or
 * where the rest is known without it. "Garden Caps", counted nowhere, is a name.
 */
function wordOfPieces(whole: string, amount: FoundAmount | null, context: SeedContext): string | null {
  if (amount !== null && (amount.amount.unit !== 'pieces' || amount.form !== null)) return null;
  const found = PIECE_WORD.exec(whole);
  if (!found) return null;
  const rest = plain(sourceName(whole.replace(found[0], ' ')));
  const known = context.products.has(rest) || context.taught.has(rest);
  return amount !== null || context.countBeside || found.index === 0 || known ? found[0] : null;
}

/** "Brook caps / Larch tablets": parts of a text that each have a word for pieces are products of their own. */
const namesSeveral = (text: string): boolean =>
  text
    .split(STRONG)
    .flatMap((piece) => piece.split(WEAK))
    .filter((piece) => PIECE_WORD.test(piece)).length > 1;

/** The form that a word for pieces tells. */
const formOf = (pieceWord: string | null, amounts: AmountOptions): Source['form'] =>
  pieceWord === null ? null : (findAmounts(`1 ${pieceWord.trim()}`, amounts)[0]?.form ?? null);

/** A product, with or without a count. */
export function bySource(told: string, context: SeedContext): Tried {
  const text = tidy(told).replace(SAID_PRODUCT, '');
  const { amount, rest, several } = pickAmount(text, context);
  if (several || countsAnother(text, context.amounts) || namesSeveral(text)) return null;
  const whole = sourceName(rest);
  // "Capsules Blue Tin (10 pieces)": the piece's word is not part of the name.
  const pieceWord = wordOfPieces(whole, amount, context);
  const name = pieceWord ? sourceName(whole.replace(pieceWord, ' ')) : whole;
  // What a column beside tells of pieces changes no name unsaid.
  const shortened = pieceWord !== null && amount === null && context.countBeside && !PIECE_FIRST.test(whole);
  const renamed = shortened ? [assumed.wordOfPieces(whole, name, pieceWord.trim())] : [];
  const said = name === '' ? null : context.said(name);
  if (said === 'jar') return null;
  if (said === 'culture') return resolved(mention(name, 'culture', { culture: true }), amount);
  if (said === 'product' || (text !== tidy(told) && name !== ''))
    return resolved(mention(name, amount?.form ?? null, { guessed: said === 'product' }), amount);
  const form = context.products.has(plain(text)) ? null : bareForm(text, context.amounts);
  const formed = form === null ? null : byForm(form, text, amount, context);
  if (formed) return formed;
  if (form !== null && name === '') return resolved(mention('', form), amount, [assumed.unnamed(text)]);
  const known = context.products.has(plain(name)) || context.taught.has(plain(name));
  if (STRONG.test(` ${name} `) && !known) return null;
  // "Anna's starter" is somebody's.
  const somebodys =
    /\p{L}'s\b/u.test(name) && !FUNCTION_WORDS.test(plain(name)) && !context.products.has(plain(name));
  const received = context.cultures.has(plain(name));
  const isCulture = (received || CULTURE.test(plain(name)) || somebodys) && amount?.amount.unit !== 'pieces';
  if (isCulture) return resolved(mention(name, 'culture', { culture: true }), amount);
  if (amount && (amount.amount.unit === 'pieces' || amount.amount.unit === 'CFU')) {
    return resolved(mention(name, amount.form), amount, name === '' ? [assumed.unnamed(text)] : []);
  }
  const times =
    amount !== null
      ? null
      : (/^(.*?)\s*(?:[x×]\s?(\d{1,4})|(\d{1,4})\s?[x×]|\((\d{1,4})\))$/i.exec(tidy(text)) ??
        /^()(?:(\d{1,4})\s?[x×]?)\s+(\p{L}.*)$/iu.exec(tidy(pieceWord ? name : text)));
  if (times) {
    const before = times[1] ?? '';
    const named = sourceName(before === '' ? (times[3] ?? '') : before);
    const count = Number(times[2] ?? times[3] ?? times[4]);
    const piece = PIECE_WITHIN.exec(named);
    if (
      count > 0 &&
      named !== '' &&
      (piece ||
        context.products.has(plain(named)) ||
        context.taught.has(plain(named)) ||
        !FUNCTION_WORDS.test(plain(named)))
    ) {
      const bare = piece ? named.slice(0, piece.index) + named.slice(piece.index + piece[0].length) : named;
      return resolved(mention(sourceName(bare), null), asPieces(count, text), [assumed.pieces(text)]);
    }
  }
  const bare = context.bare.get(plain(name)) ?? context.taught.get(plain(name));
  if (bare !== undefined && !context.products.has(plain(name)))
    return resolved(mention(bare, formOf(pieceWord, context.amounts), { guessed: true }), amount, renamed);
  if (context.products.has(plain(name)))
    return resolved(mention(name, formOf(pieceWord, context.amounts)), amount, renamed);
  // "Capsules of Blue Tin": a product, though nobody counted.
  if (pieceWord && amount === null && /^\p{L}/u.test(name))
    return resolved(mention(name, formOf(pieceWord, context.amounts), { guessed: true }), null, renamed);
  if (name === '') return null;
  if (amount?.amount.unit === 'g' || PRODUCT.test(plain(name)) || context.piecesBeside) {
    return resolved(
      mention(name, /powder|pulver|poudre|polv|poeder/.test(plain(name)) ? 'powder' : null, {
        guessed: true,
      }),
      amount,
    );
  }
  return null;
}

/** Names of products that stand with pieces in a text: they are products wherever they stand without. */
export function namedWithPieces(text: string, amounts: AmountOptions): string[] {
  return text
    .replace(/[\r\n]+/g, ' ; ')
    .split(STRONG)
    .flatMap((piece) => {
      const [found, second] = findAmounts(piece, amounts);
      if (!found || second || found.amount.unit !== 'pieces') return [];
      const name = sourceName(cutOut(piece, [found]));
      return name === '' ? [] : [plain(name)];
    });
}

/** The name in a text that may be a source nobody knows yet, or a jar that was not found; null where it is neither. */
export function unknownName(text: string): string | null {
  const name = sourceName(tidy(text).replace(SAID_PRODUCT, ''));
  const said = words(name).filter((word) => word.length > 2 && !STOP.has(word) && !FUNCTION_WORDS.test(word));
  const plainly = !/[\d?]/.test(name) && !PREVIOUS.test(plain(name)) && !SAME_DAY.test(plain(name));
  return said.length > 0 && plainly && words(name).length <= 5 && !isDitto(text) ? name : null;
}
