// Bare numbers of an amount column whose heading tells no unit: which unit they are in, for the whole column at once.
import { findAmounts, readNumber, tidy } from '../../quantities';
import type { Layout } from '../layout/column-meanings';
import type { NotesInput } from '../notes-plan';
import type { FileSays } from '../said';
import { assumed, question } from '../says';
import type { Row } from '../table/text-table';
import type { Conventions } from './file-conventions';

/** A bare number, for amounts whose unit the column tells. */
export const bareNumber = (text: string): number | null => {
  const clean = tidy(text);
  const number = readNumber(clean, undefined, false);
  return number && number.length === clean.length ? number.value : null;
};

/** Bare numbers under an amount heading that tells no unit: the unit of its other cells, else a question that blocks. */
export function readBareUnits(
  layout: Layout,
  conventions: Omit<Conventions, 'bareUnits'>,
  answers: NotesInput['answers'],
  { said, questions }: FileSays,
): Map<string, string> {
  const units = new Map<string, string>();
  for (const column of layout.columns) {
    if (
      !['amount', 'addition amount', 'milk amount', 'volume'].includes(column.meaning) ||
      column.unit !== null
    )
      continue;
    const cells = layout.rows.map((row) => row.cells[column.index] ?? '').filter((cell) => tidy(cell) !== '');
    const bare = cells.find((cell) => bareNumber(cell) !== null);
    if (bare === undefined) continue;
    const id = `unit:${column.heading}`;
    const answer = answers[id]?.trim();
    const others = new Set(
      cells
        .flatMap((cell) => findAmounts(cell, { spoons: conventions.spoons, decimal: conventions.decimal }))
        .filter(({ amount }) => amount.unit === 'mL' || amount.unit === 'g')
        .map(({ text }) => /[\p{L}].*$/u.exec(text)?.[0].trim().replace(/\.$/, '') ?? ''),
    );
    const numbers = cells.flatMap((cell) => bareNumber(cell) ?? []);
    const [other] = others;
    if (answer) units.set(column.heading, answer);
    else if (
      other !== undefined &&
      new Set(
        [...others].map((word) => findAmounts(`1 ${word}`, { spoons: conventions.spoons })[0]?.amount.value),
      ).size === 1
    ) {
      units.set(column.heading, other);
    } else if (column.meaning !== 'addition amount' && numbers.every((number) => number >= 100))
      units.set(column.heading, 'mL');
    else if (
      column.meaning === 'amount' &&
      layout.rows.every(
        (row) => bareNumber(row.cells[column.index] ?? '') === null || rowHasOnlySources(row, layout),
      )
    )
      units.set(column.heading, 'pieces');
    else {
      questions.push({
        id,
        row: null,
        sentence: question.bareUnit(column.heading, tidy(bare)),
        choices: ['mL', 'tbsp', 'tsp', 'cup', 'g'].map((value) => ({ value, label: value })),
        blocks: true,
      });
      continue;
    }
    if (!answer)
      said.push({
        row: null,
        sentence: assumed.unit(`${column.heading}: ${tidy(bare)}`, units.get(column.heading) ?? ''),
      });
  }
  return units;
}

const rowHasOnlySources = (row: Row, layout: Layout): boolean =>
  layout.columns
    .filter(({ meaning }) => meaning === 'seed')
    .every(({ index }) => !/\d/.test(row.cells[index] ?? ''));
