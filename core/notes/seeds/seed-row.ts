// What seeded the jar of one row, and how much of each; what can't be is a problem of the row.
import type { NoteColumn } from '../../contract';
import { isNothing, isUnknown, plain, tidy } from '../../quantities/quantities';
import { findDay } from '../../text/days';
import { SEED_PART } from '../layout/column-cells';
import type { Conventions } from '../conventions/file-habits';
import type { NotesInput } from '../notes-plan';
import type { NoteRow } from '../rows/note-row';
import { readMilk } from '../rows/ingredients';
import { answerOf, type Cell, type CellContext, filled, LONGEST_NOTE, RowCells } from '../rows/row-cells';
import { problem, question } from '../notes-says';
import type { OpenName } from './ask-sources';
import { besideSeeds, type KnownSeeds } from './known-seeds';
import { readSeeds } from './read-seeds';
import { giveAmounts } from './seed-amounts';
import { namedWithPieces } from './seed-sources';

/** Reads the seeds and their amounts of a row into it. */
export function seedRow(row: NoteRow, known: KnownSeeds, conventions: Conventions, input: NotesInput): void {
  const told = filled(row.cells, 'seed').filter(({ text }) => !isNothing(text) && !isUnknown(text));
  const cells = told.length > 0 ? told : productsAmong(row, conventions);
  for (const cell of joinSeeds(cells)) readCell(cell, row, known, conventions, input);
  if (cells.length === 0) row.log.ask('seed', question.noSeed());
  askSeeds(row, cells[0], known);
  giveAmounts(row, conventions, input);
  const noted = row.log.noteText().length;
  if (noted > LONGEST_NOTE) row.log.problem(problem.noteTooLong(noted));
  const milk = row.facts?.milkAmount?.unit === 'mL' ? row.facts.milkAmount.value : 0;
  for (const { amount } of row.seeds)
    if (milk > 0 && amount?.unit === 'mL' && amount.value > 2 * milk) {
      // So little milk fills no jar: it is the milk that can't be.
      const [cell] =
        milk < LEAST_MILK
          ? row.cells.filter(({ column, text }) => OF_MILK.has(column.meaning) && /\d/.test(text))
          : [];
      const typed = cell ? cell.text.trim() : (amount.typed ?? '');
      row.log.problem(problem.amountImpossible(typed), cell ?? filled(row.cells, 'amount')[0]);
    }
}

/** Less milk (mL) fills no jar (common practice, no source). */
const LEAST_MILK = 50;
const OF_MILK: ReadonlySet<NoteColumn> = new Set(['milk', 'milk amount']);

/** "8 caps Blue Tin" under the amounts of a row that names no seed: a product with its count. */
const productsAmong = (row: NoteRow, options: Pick<Conventions, 'spoons' | 'decimal'>): Cell[] =>
  row.cells.filter(
    ({ column, text }) => column.meaning === 'amount' && namedWithPieces(text, options).length > 0,
  );

/** A day and a letter in columns of their own are one seed; other columns are seeds of their own. */
function joinSeeds(cells: readonly Cell[]): Cell[] {
  const [first, ...others] = cells;
  if (!first || others.length === 0) return [...cells];
  const isPart = (text: string): boolean => /^#?[\p{L}\p{N}]{1,3}$/u.test(tidy(text));
  if (!others.every(({ text }) => isPart(text)) && !isPart(first.text)) return [...cells];
  // "Parent A" and "Parent B" are two; "Seed date" or "Seed batch" and "Seed letter" are one.
  const parts = new Set(cells.map(({ column }) => SEED_PART.exec(plain(column.heading))?.[1]));
  if (parts.size < 2 && !cells.some(({ text }) => findDay(text) !== null)) return [...cells];
  return [{ column: first.column, text: cells.map(({ text }) => text.trim()).join(' ') }];
}

/** Reads one cell of seeds into its row. */
function readCell(
  cell: Cell,
  row: NoteRow,
  known: KnownSeeds,
  conventions: Conventions,
  input: NotesInput,
): void {
  const { log, identity } = row;
  const { text } = cell;
  const answer = input.answers[`which:${log.row}`] ?? '';
  const reading = readSeeds(text, {
    ...known,
    day: identity.day ?? '9999-12-31',
    self: row.id,
    word: identity.word,
    order: conventions.order,
    amounts: conventions,
    chosen: (names) => names.find((name) => plain(name) === plain(answer)) ?? null,
    letterAlone: input.answers['letter alone']?.trim().toLowerCase() ?? '',
    said: (name) => known.answered.get(plain(name)) ?? null,
    ...besideSeeds(row, conventions),
  });
  for (const name of reading.unknown) askOnce(name, 'unknown', row, known);
  if (reading.letterAlone) known.lettersAlone.push(row);
  const settledBy = [
    ...reading.unknown.map((name) => `source:${known.open.get(plain(name))?.name ?? name}`),
    ...(reading.letterAlone ? ['letter alone'] : []),
    ...(reading.choices.length > 0 ? [`which:${log.row}`] : []),
  ];
  for (const wrong of reading.problems)
    log.problem(
      wrong,
      cell,
      settledBy.length === reading.problems.length ? [...settledBy, ...reading.beside] : [null],
    );
  if (reading.choices.length > 0)
    log.ask(
      'which',
      question.whichProduct(text.trim()),
      reading.choices.map((name) => [name, name] as const),
    );
  for (const sentence of reading.assumptions) log.assume(sentence);
  for (const left of reading.leftOver) log.keep({ ...cell, text: left });
  if (reading.milk !== null)
    takeMilk({ ...cell, text: reading.milk }, row, { conventions, answers: input.answers });
  if (text.includes('?') && reading.problems.length === 0) {
    const said = answerOf(input.answers, 'seed', log.row);
    if (said === 'aside') log.problem(problem.seedNotFound(text), cell);
    else if (said !== 'right')
      log.ask('seed', question.seedUnsure(text.trim()), [
        ['right', 'It is right'],
        ['aside', 'It is not: leave the row aside'],
      ]);
  }
  row.seeds.push(...reading.parts.map((part) => ({ part, amount: null })));
}

/** "Into 1 L whole milk" beside a seed: the row's milk, where no column tells another; else kept. */
function takeMilk(cell: Cell, row: NoteRow, context: CellContext): void {
  if (!row.facts || row.facts.milk !== null || row.facts.milkAmount !== null) return row.log.keep(cell);
  const column = { ...cell.column, meaning: 'milk' as const, unit: null };
  row.facts = { ...row.facts, ...readMilk(new RowCells([{ ...cell, column }], row.log, context)) };
}

/** Notes that a name is to be asked about, once for all rows that have it. */
function askOnce(name: string, taken: OpenName['taken'], row: NoteRow, { open }: KnownSeeds): void {
  const there = open.get(plain(name)) ?? { name, taken, rows: [] };
  open.set(plain(name), there);
  if (there.rows.at(-1) !== row) there.rows.push(row);
}

/** What is asked about the seeds of a row; a seed made on a later day is a problem. */
function askSeeds(row: NoteRow, cell: Cell | undefined, known: KnownSeeds): void {
  const { seeds, log, identity } = row;
  for (const { part } of seeds) {
    if ('source' in part.from) {
      const { name, culture, guessed, said } = part.from.source;
      if (said !== true && (culture || guessed)) askOnce(name, culture ? 'culture' : 'product', row, known);
    } else {
      const last = identity.between?.to ?? identity.day;
      if (last !== null && (part.from.jar.from ?? part.from.jar.day) > last)
        log.problem(problem.seedLater(part.from.jar.label, last), cell);
    }
  }
}
