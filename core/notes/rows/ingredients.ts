// Milk and additions of one row: names in one spelling, amounts where they are told.
import type { Amount } from '../../ledger/basics';
import { isNothing, cutOut, findAmounts, tidy, type FoundAmount } from '../../quantities/quantities';
import { MASS_UNIT, VOLUME_UNIT } from '../layout/column-cells';
import { bareHeading } from '../layout/headings';
import { isNegative, sayAmount, tooMuch, type Cell, type RowCells, type RowFacts } from './row-cells';
import { assumed, problem, question } from '../notes-says';
import { milkName, readYesNo } from '../cells/cell-words';

/** A milk's name in one spelling; said where the words themselves change. */
function nameOfMilk(row: RowCells, text: string): string {
  const name = milkName(text);
  if (name === null) return text;
  if (/\bfull\b/i.test(text)) row.log.assume(assumed.milk(text, name));
  return name;
}

/** An amount that stands among words, said; too much of anything is a problem. */
function amountWithin({ log }: RowCells, found: FoundAmount, cell: Cell, text: string): Amount {
  if (tooMuch(found.amount)) log.problem(problem.amountImpossible(text.trim()), cell);
  sayAmount(log, found.text, found);
  return { ...found.amount, typed: found.text.slice(0, 200) };
}

/** What stands around an amount: a name without marks and "of". */
const nameAround = (text: string, of: RegExp): string =>
  text.replace(/[()]/g, ' ').replace(of, '').replace(/\s+/g, ' ').trim();
const OF_MILK = /^[\s,;:-]*(?:(?:in|into|to|of|de|d'|di|van|von|av|af)\s+)*|[\s,;:-]+$/gi;
const OF_ADDITION = /^[\s,:x×-]*(?:(?:of|de|d'|di|van|von|av|af|added)\s+)?|[\s,:-]+$/gi;

/** What one cell tells of the milk: its name, how much of it, or both. */
function milkOf(cell: Cell, row: RowCells): Pick<RowFacts, 'milk' | 'milkAmount'> {
  const { log } = row;
  const { conventions } = row.context;
  const { heading, unit } = cell.column;
  const text = cell.text.trim();
  if (isNegative(text)) log.problem(problem.amountImpossible(text), cell);
  if (/^[\d\s.,/½¼¾⅓⅔]+$/.test(text)) {
    const value = Number(tidy(text).replace(',', '.'));
    if (unit !== null || conventions.bareUnits.has(heading))
      return { milk: null, milkAmount: row.amount(cell, true) };
    if (value >= 100) {
      log.assume(assumed.unit(text, 'mL'));
      return { milk: null, milkAmount: { value, unit: 'mL', typed: text } };
    }
    log.unread('milk', question.amountNotRead(heading, text), cell);
    return { milk: null, milkAmount: null };
  }
  const found = findAmounts(text, conventions, true).filter(
    ({ amount: { unit } }) => unit === 'mL' || unit === 'g',
  );
  const [first, second] = found;
  if (first && !second) {
    const name = nameAround(cutOut(text, found), OF_MILK);
    const milkAmount = amountWithin(row, first, cell, text);
    return { milk: name === '' ? null : nameOfMilk(row, name), milkAmount };
  }
  if (second) log.ask('milk', question.amountNotRead(heading, text));
  return { milk: nameOfMilk(row, tidy(text)), milkAmount: null };
}

/** The milk and how much of it. */
export function readMilk(row: RowCells): Pick<RowFacts, 'milk' | 'milkAmount'> {
  const cell = row.told('milk');
  let { milk, milkAmount } = cell ? milkOf(cell, row) : { milk: null, milkAmount: null };
  // "Whole milk (ml)": the heading names it.
  if (milk === null && cell && milkAmount !== null)
    milk = milkName(bareHeading(cell.column.heading).replace(/\s(?:ml|l|cl|dl|qt|cups?)$/, ''));
  const own = row.told('milk amount');
  if (own) milkAmount = row.amount(own, true) ?? milkAmount;
  return { milk: milk?.slice(0, 200) ?? null, milkAmount };
}

type Added = { name: string; actual: Amount | null };

const BARE = /(?<![\p{L}\d.,/½¼¾⅓⅔-])(\d+(?:[.,]\d+)?)(?![\p{L}\d.,/%-])/u;
/** "oat bran 12" below "(g)": the one figure of a piece that tells no amount of its own has the unit of its heading. */
const inUnit = (piece: string, unit: string, { context }: RowCells): string =>
  (VOLUME_UNIT.test(unit) || MASS_UNIT.test(unit)) && findAmounts(piece, context.conventions).length === 0
    ? piece.replace(BARE, `$1 ${unit}`)
    : piece;

/** One piece of a cell that names what was stirred in: goes to what was found, or is asked about. */
function addPiece(written: string, cell: Cell, row: RowCells, found: Added[]): void {
  const { heading, unit } = cell.column;
  const piece = unit === null ? written : inUnit(written, unit, row);
  const amounts = findAmounts(piece, row.context.conventions);
  const name = nameAround(cutOut(piece, amounts), OF_ADDITION);
  const [first] = amounts;
  const actual = first ? amountWithin(row, first, cell, piece) : null;
  const kept = { ...cell, text: piece };
  if (amounts.length > 1) row.log.unread('addition', question.amountNotRead(heading, piece.trim()), kept);
  const last = found.at(-1);
  if (name !== '') found.push({ name: name.slice(0, 200), actual });
  else if (last && last.actual === null) last.actual = actual;
  else row.log.unread('addition', question.notRead(heading, piece.trim()), kept);
}

/** Said of a jar into which nothing was stirred. */
const isPlain = (text: string): boolean =>
  /^(?:plain|just milk|milk only|only milk|nothing added|control|pur|natur)$/i.test(tidy(text));

/** What was stirred in, and how much of each. */
export function readAdditions(row: RowCells): RowFacts['additions'] {
  const found: Added[] = [];
  for (const cell of row.of('addition')) {
    const name = cell.column.additionName;
    if (isNothing(cell.text) || isPlain(cell.text) || tidy(cell.text) === '0') continue;
    if (name !== null) {
      const went = /\d/.test(cell.text) ? null : readYesNo(cell.text);
      const actual = went === null ? row.amount(cell, false) : null;
      if (went === true || (actual && actual.value > 0)) found.push({ name, actual });
    } else if (isNegative(cell.text)) row.log.problem(problem.amountImpossible(cell.text.trim()), cell);
    else
      for (const piece of cell.text.split(/\s*(?:\+|;|&|\n|,\s+|\s(?:and|und|et|y|e|og|och|i|plus)\s)\s*/i))
        if (tidy(piece) !== '') addPiece(piece, cell, row, found);
  }
  const amounts = row.of('addition amount').filter(({ text }) => !isNothing(text));
  for (const [at, cell] of amounts.entries()) {
    const target = found.length === amounts.length ? found[at] : found.find(({ actual }) => actual === null);
    const read = row.amount(cell, false);
    if (target && target.actual === null) target.actual = read;
    else if (read !== null) row.log.keep(cell);
  }
  return found;
}
