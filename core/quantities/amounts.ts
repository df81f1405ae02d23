// Amounts as people type them → a value in a stored unit, with everything that had to be assumed said.
import type { Amount } from '../ledger/basics';
import { readNumber, type DecimalMark } from './numbers';
import { remembered } from './remembered';
import { MEASURES, OUNCE_G, type KitchenMeasure, type SpoonSystem } from './spoons';
import { tidy } from './tidy-text';
import { UNITS, type PieceForm } from './units';

/** What had to be assumed to read an amount. The words of it are in core/sentences.ts or core/notes. */
export type AmountAssumption =
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
  | { readonly kind: 'about' }
  | { readonly kind: 'level'; readonly word: string }
  | { readonly kind: 'fluid ounces' }
  | { readonly kind: 'unit'; readonly unit: string };

export interface FoundAmount {
  readonly amount: Amount;
  readonly assumed: readonly AmountAssumption[];
  /** For pieces: what kind. */
  readonly form: PieceForm;
  /** Whether its size depends on the spoon system. */
  readonly regional: boolean;
  /** The kitchen measure it was told in, and the word for it as written; null for mL, grams, pieces. */
  readonly measure: { readonly name: KitchenMeasure; readonly word: string } | null;
  /** The amount's own text, and where it stands in the tidied text. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

export interface AmountOptions {
  readonly spoons: SpoonSystem;
  readonly decimal?: DecimalMark | undefined;
  /** Unit of a bare number (from a heading such as "Amount (ml)"), as a unit word. */
  readonly bareUnit?: string | undefined;
}

const HEAPED =
  /^\s*(heaped|heaping|rounded|scant|generous|big|large|small|level|geh(?:äufte?r?|\.)?|gestr(?:ichene?r?|\.)?|afgestreken|struke[nt]|rågade?|strøge[nt]|bombée?s?|colmad[ao]s?|rasas?|colm[oi]|volle?)\s+/i;
const LEVEL = /^(level|gestr(?:ichene?r?|\.)?|afgestreken|struke[nt]|strøge[nt]|rasas?)$/i;
const STARTS =
  /(?:^|[\s(:;,+&=@-]|(?<!\d)\/)(?=[\d~≈.,]|(?:about|ca|half|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|quarter|halbe|demi|medi|mezz|halv|pół|eine?|zwei|drei|vier|fünf|zehn|une?|deux|trois|quatre|dos|tres|due|tre|twee|drie|två|dwa|dwie|trzy)[\s.])/giu;

const REGION =
  /^\s*(metric|U\.?S\.?(?:A\.?)?|American|imperial|imp\.?|UK|British|Australian|Aussie|Aus\.?)(?=\s)/i;
const regionOf = (word: string): SpoonSystem =>
  /^m/i.test(word)
    ? 'metric'
    : /^aus/i.test(word)
      ? 'Australia'
      : /^(?:us|u\.s|am)/i.test(word)
        ? 'US'
        : 'UK imperial';

type Unit = { meaning: (typeof UNITS)[number][1]; length: number };

function unitAt(text: string): Unit | null {
  for (const [pattern, meaning] of UNITS) {
    const found = pattern.exec(text);
    if (found) return { meaning, length: found[0].length };
  }
  return null;
}

function worth(
  unit: Unit['meaning'],
  spoons: SpoonSystem,
  liquid: boolean,
): { factor: number; unit: Amount['unit'] } {
  switch (unit.kind) {
    case 'kitchen':
      return { factor: MEASURES[unit.metric ? 'metric' : spoons][unit.measure], unit: 'mL' };
    case 'ounce':
      return liquid
        ? { factor: MEASURES[spoons]['fluid ounce'], unit: 'mL' }
        : { factor: OUNCE_G, unit: 'g' };
    case 'pieces':
      return { factor: 1, unit: 'pieces' };
    default:
      return { factor: unit.factor, unit: unit.kind };
  }
}

/** "29/7 c" is the jar c of a day: nobody measures 29 sevenths of a cup. */
function namesDay(number: string, unit: string): boolean {
  const [, over = '', under = ''] = /^\s*(\d{1,2})\/(\d{1,2})\s*$/.exec(number) ?? [];
  return /^c$/i.test(unit.trim()) && over !== '' && (Number(over) >= Number(under) || Number(under) > 8);
}

function amountAt(clean: string, start: number, options: AmountOptions, liquid: boolean): FoundAmount | null {
  const rest = clean.slice(start);
  const number = readNumber(rest, options.decimal);
  if (!number || number.value < 0) return null;
  let end = number.length;
  const assumed: AmountAssumption[] = [];
  const heaped = HEAPED.exec(rest.slice(end));
  if (heaped) end += heaped[0].length;
  // "3 metric tbsp", "1 US cup": the region is written.
  const region = REGION.exec(rest.slice(end));
  if (region) end += region[0].length;
  const gap = /^\s*[-x×]?\s*/i.exec(rest.slice(end))?.[0].length ?? 0;
  const unit = unitAt(rest.slice(end + gap));
  if (!unit || namesDay(rest.slice(0, number.length), rest.slice(end + gap, end + gap + unit.length)))
    return null;
  end += gap + unit.length;
  if (heaped && !LEVEL.test(heaped[1] ?? '')) assumed.push({ kind: 'level', word: heaped[1] ?? '' });
  if (number.range) assumed.push({ kind: 'range', low: number.range[0], high: number.range[1] });
  if (number.about) assumed.push({ kind: 'about' });
  if (unit.meaning.kind === 'ounce' && liquid) assumed.push({ kind: 'fluid ounces' });
  const { factor, unit: stored } = worth(
    unit.meaning,
    region ? regionOf(region[1] ?? '') : options.spoons,
    liquid,
  );
  const text = rest.slice(0, end).trim();
  // Guards against 0.1 + 0.2: nine significant digits more than any kitchen knows.
  const value = Number((number.value * factor).toPrecision(15));
  return {
    amount: { value, unit: stored, typed: text.slice(0, 200) },
    assumed,
    form: unit.meaning.kind === 'pieces' ? unit.meaning.form : null,
    regional: unit.meaning.kind === 'kitchen' && !unit.meaning.metric && !region,
    measure:
      unit.meaning.kind === 'kitchen'
        ? { name: unit.meaning.measure, word: rest.slice(end - unit.length, end).trim() }
        : null,
    text,
    start,
    end: start + end,
  };
}

const amountsIn = remembered(
  readAmounts,
  ({ spoons, decimal }: AmountOptions, liquid: boolean) => `${spoons} ${decimal} ${liquid}:`,
);

/**
 * Every amount with a unit in a text, left to right, not overlapping. Positions are in tidy(text).
 * @param liquid whether "oz" means fluid ounces here (milk, seed) and not a weight (a powder).
 */
export const findAmounts = (text: string, options: AmountOptions, liquid = false): readonly FoundAmount[] =>
  amountsIn(text, options, liquid);

/** A text without some of its parts, tidied: a space stands where each was. Parts by their place in tidy(text), in order. */
export function cutOut(text: string, parts: readonly Pick<FoundAmount, 'start' | 'end'>[]): string {
  const cut = (rest: string, { start, end }: Pick<FoundAmount, 'start' | 'end'>): string =>
    `${rest.slice(0, start)} ${rest.slice(end)}`;
  return parts.toReversed().reduce(cut, tidy(text));
}

function readAmounts(text: string, options: AmountOptions, liquid: boolean): readonly FoundAmount[] {
  const clean = tidy(text);
  const found: FoundAmount[] = [];
  let from = 0;
  for (const start of clean.matchAll(STARTS)) {
    const at = start.index + start[0].length;
    if (at < from) continue;
    const amount = amountAt(clean, at, options, liquid);
    if (!amount) continue;
    found.push(amount);
    from = amount.end;
  }
  return found;
}

export type ParsedAmount =
  | {
      readonly ok: true;
      readonly amount: Amount;
      readonly assumed: readonly AmountAssumption[];
      readonly form: PieceForm;
      readonly regional: boolean;
      readonly measure: FoundAmount['measure'];
    }
  | {
      readonly ok: false;
      readonly code: 'amount not read' | 'amount below zero' | 'amount without unit' | 'amount too large';
    };

/** More than this in one jar is a slip of the pen: 1,000 L or 1,000 kg; any count fits. */
const MOST = { mL: 1e6, g: 1e6, pieces: 1e5, CFU: 1e15 } as const;

/**
 * One amount and nothing else: "3 tbsp", "¼ cup", "100 ml", "10 capsules", "10 billion CFU", "2–3 EL".
 * The unit is mL, g, pieces or CFU; `typed` keeps what was typed. A spoon of powder stays mL, never grams.
 */
export function parseAmount(text: string, options: AmountOptions, liquid = false): ParsedAmount {
  const clean = tidy(text);
  if (/^-\s*[\d.,]/.test(clean)) return { ok: false, code: 'amount below zero' };
  let found = amountAt(clean, 0, options, liquid);
  const assumed: AmountAssumption[] = [];
  if (!found) {
    // The unit before the number: "ml 100", "capsules: 10".
    const turned = /^([\p{L}.]+)\s*:?\s*([\d.,/ ]+)$/u.exec(clean);
    if (turned && unitAt(turned[1] ?? '')) found = amountAt(`${turned[2]} ${turned[1]}`, 0, options, liquid);
  }
  if (!found) {
    const number = readNumber(clean, options.decimal, false);
    if (!number || number.length !== clean.length) return { ok: false, code: 'amount not read' };
    if (options.bareUnit === undefined) return { ok: false, code: 'amount without unit' };
    found = amountAt(`${clean} ${options.bareUnit}`, 0, options, liquid);
    if (!found) return { ok: false, code: 'amount not read' };
    assumed.push({ kind: 'unit', unit: options.bareUnit });
  } else if (found.end < clean.length && clean.slice(found.end).replace(/[\s.)]+/g, '') !== '') {
    return { ok: false, code: 'amount not read' };
  }
  if (found.amount.value > MOST[found.amount.unit]) return { ok: false, code: 'amount too large' };
  return {
    ok: true,
    amount: { ...found.amount, typed: text.trim().slice(0, 200) },
    assumed: [...assumed, ...found.assumed],
    form: found.form,
    regional: found.regional,
    measure: found.measure,
  };
}
