// Milk and additions of one row: names in one spelling, amounts where they are told.
import type { Amount } from '../../ledger/basics';
import { findAmounts, tidy } from '../../quantities/quantities';
import { bareHeading } from '../layout/headings';
import { isNegative, sayAmount, tooMuch, type RowCells, type RowFacts } from './row-cells';
import { assumed, problem, question } from '../notes-says';
import { isNothing, milkName, readYesNo } from '../cells/cell-words';

/** A milk's name in one spelling; said where the words themselves change. */
function nameOfMilk(row: RowCells, text: string): string {
  const name = milkName(text);
  if (name === null) return text;
  if (/\bfull\b/i.test(text)) row.log.assume(assumed.milk(text, name));
  return name;
}

/** The milk and how much of it. */
export function readMilk(row: RowCells): Pick<RowFacts, 'milk' | 'milkAmount'> {
  let milk: string | null = null;
  let milkAmount: Amount | null = null;
  const [cell] = row.of('milk');
  if (cell && !isNothing(cell.text)) {
    const text = cell.text.trim();
    if (isNegative(text)) row.log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
    const found = findAmounts(
      text,
      { spoons: row.context.conventions.spoons, decimal: row.context.conventions.decimal },
      true,
    ).filter(({ amount }) => amount.unit === 'mL' || amount.unit === 'g');
    const [first] = found;
    if (/^[\d\s.,/½¼¾⅓⅔]+$/.test(text)) {
      const number = Number(tidy(text).replace(',', '.'));
      if (cell.column.unit !== null || row.context.conventions.bareUnits.has(cell.column.heading))
        milkAmount = row.amount(cell, true);
      else if (number >= 100) {
        milkAmount = { value: number, unit: 'mL', typed: text };
        row.log.assume(assumed.unit(text, 'mL'));
      } else {
        row.log.ask('milk', question.amountNotRead(cell.column.heading, text));
        row.log.keep(cell.column.heading, text);
      }
    } else if (first && found.length === 1) {
      const clean = tidy(text);
      const name = `${clean.slice(0, first.start)} ${clean.slice(first.end)}`
        .replace(/^[\s,;:()-]+|[\s,;:()-]+$/g, '')
        .replace(/^(?:of|de|d'|di|van|von|av|af)\s+/i, '')
        .replace(/[()]/g, ' ')
        .replace(/\s+/g, ' ')
        .trim();
      if (tooMuch(first.amount))
        row.log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
      milkAmount = { ...first.amount, typed: first.text.slice(0, 200) };
      sayAmount(row.log, first.text, first);
      milk = name === '' ? null : nameOfMilk(row, name);
    } else {
      milk = nameOfMilk(row, tidy(text));
      if (found.length > 1) row.log.ask('milk', question.amountNotRead(cell.column.heading, text));
    }
  }
  // "Whole milk (ml)": the heading names it.
  if (milk === null && cell && milkAmount !== null)
    milk = milkName(bareHeading(cell.column.heading).replace(/\s(?:ml|l|cl|dl|qt|cups?)$/, ''));
  const [own] = row.of('milk amount');
  if (own && !isNothing(own.text)) milkAmount = row.amount(own, true) ?? milkAmount;
  return { milk: milk?.slice(0, 200) ?? null, milkAmount };
}

/** What was stirred in, and how much of each. */
export function readAdditions(row: RowCells): RowFacts['additions'] {
  const found: { name: string; actual: Amount | null }[] = [];
  const { conventions } = row.context;
  for (const cell of row.of('addition')) {
    if (isNothing(cell.text) || tidy(cell.text) === '0') continue;
    if (cell.column.additionName !== null) {
      const went = readYesNo(cell.text);
      if (went === true && !/\d/.test(cell.text))
        found.push({ name: cell.column.additionName, actual: null });
      if (went !== null && !/\d/.test(cell.text)) continue;
      const actual = row.amount(cell, false);
      if (actual && actual.value > 0) found.push({ name: cell.column.additionName, actual });
      continue;
    }
    if (isNegative(cell.text)) {
      row.log.problem(problem.amountImpossible(cell.text.trim()), cell.column.heading, cell.text);
      continue;
    }
    const pieces = cell.text.split(/\s*(?:\+|;|&|\n|,\s+|\s(?:and|und|et|y|e|og|och|i|plus)\s)\s*/i);
    for (const piece of pieces) {
      const clean = tidy(piece);
      if (clean === '') continue;
      const amounts = findAmounts(piece, { spoons: conventions.spoons, decimal: conventions.decimal });
      let name = clean;
      for (const amount of amounts.toReversed())
        name = `${name.slice(0, amount.start)} ${name.slice(amount.end)}`;
      name = name
        .replace(/[()]/g, ' ')
        .replace(/^[\s,:x×-]*(?:(?:of|de|d'|di|van|von|av|af|added)\s+)?|[\s,:-]+$/gi, '')
        .replace(/\s+/g, ' ')
        .trim();
      const [first] = amounts;
      if (first && tooMuch(first.amount))
        row.log.problem(problem.amountImpossible(piece.trim()), cell.column.heading, cell.text);
      if (first) sayAmount(row.log, first.text, first);
      const actual = first ? { ...first.amount, typed: first.text.slice(0, 200) } : null;
      if (amounts.length > 1) {
        row.log.ask('addition', question.amountNotRead(cell.column.heading, piece.trim()));
        row.log.keep(cell.column.heading, piece);
      }
      const last = found.at(-1);
      if (name === '' && last && last.actual === null) last.actual = actual;
      else if (name === '') {
        row.log.ask('addition', question.notRead(cell.column.heading, piece.trim()));
        row.log.keep(cell.column.heading, piece);
      } else found.push({ name: name.slice(0, 200), actual });
    }
  }
  const amounts = row.of('addition amount').filter(({ text }) => !isNothing(text));
  for (const [at, cell] of amounts.entries()) {
    const target = found.length === amounts.length ? found[at] : found.find(({ actual }) => actual === null);
    const read = row.amount(cell, false);
    if (target && target.actual === null) target.actual = read;
    else if (read !== null) row.log.keep(cell.column.heading, cell.text);
  }
  return found;
}
