// One row while it is read: its cells by meaning, and what is said about it.
import type { ToldOutcome } from '../told-outcome';
import type { NoteColumn } from '../../contract';
import type { Amount, Temperature } from '../../ledger/basics';
import { isNothing, isUnknown, parseAmount, tidy, type FoundAmount } from '../../quantities/quantities';
import type { Conventions } from '../conventions/file-habits';
import type { Question } from '../said';
import type { Column } from '../layout/column-meanings';
import { assumed, problem, question, quoted, type Wrong } from '../notes-says';

export interface RowProblem extends Wrong {
  readonly row: number;
  readonly column: string | null;
  readonly cell: string | null;
}

/** A jar's note holds so many characters. */
export const LONGEST_NOTE = 10_000;

/** What is collected while a row is read. */
export class RowLog {
  readonly problems: RowProblem[] = [];
  readonly questions: Question[] = [];
  readonly assumptions: { row: number | null; sentence: string }[] = [];
  /** The keeper's own note comes before what is kept of other cells. */
  readonly ownNote: string[] = [];
  readonly note: string[] = [];
  /** Kitchen measures whose size follows from the region, as they were used. */
  readonly measures: NonNullable<FoundAmount['measure']>[] = [];
  /** Which questions settle a problem, and rows it waits for besides, by their ids; [null]: none does. */
  readonly settledBy = new Map<RowProblem, readonly (string | null)[]>();
  constructor(readonly row: number) {}
  problem({ reason, sentence }: Wrong, cell?: Cell, settledBy: readonly (string | null)[] = [null]): void {
    const [column, text] = cell ? [cell.column.heading, quoted(cell.text)] : [null, null];
    const one = { row: this.row, reason, sentence, column, cell: text };
    this.problems.push(one);
    this.settledBy.set(one, settledBy);
  }
  assume(sentence: string): void {
    if (!this.assumptions.some((one) => one.sentence === sentence))
      this.assumptions.push({ row: this.row, sentence });
  }
  ask(kind: string, sentence: string, choices: readonly (readonly [string, string])[] = []): void {
    if (this.questions.some((one) => one.sentence === sentence)) return;
    const same = this.questions.filter((one) => one.id.startsWith(`${kind}:${this.row}`)).length;
    this.questions.push({
      id: `${kind}:${this.row}${same > 0 ? `:${same + 1}` : ''}`,
      row: this.row,
      sentence,
      choices: choices.map(([value, label]) => ({ value, label })),
      blocks: false,
    });
  }
  keep({ column, text }: Pick<Cell, 'text'> & { readonly column: Pick<Column, 'heading'> }): void {
    this.note.push(`${column.heading}: ${text.trim()}`);
  }
  /** Of what can't be read: asks about it, and keeps it in the note. */
  unread(kind: string, sentence: string, cell: Cell): void {
    this.ask(kind, sentence);
    this.keep(cell);
  }
  /** Says all that another log of the row says, too. */
  take(other: RowLog): void {
    this.problems.push(...other.problems);
    for (const [one, ids] of other.settledBy) this.settledBy.set(one, ids);
    this.questions.push(...other.questions);
    for (const { sentence } of other.assumptions) this.assume(sentence);
    this.ownNote.push(...other.ownNote);
    this.note.push(...other.note);
    this.measures.push(...other.measures);
  }
  /** All that goes to the jar's note, each once. */
  noteText(): string {
    return [...new Set([...this.ownNote, ...this.note])].join('\n');
  }
}

export interface RowFacts {
  readonly hours: number | null;
  readonly temperature: Temperature | null;
  readonly milk: string | null;
  readonly milkAmount: Amount | null;
  readonly additions: readonly { readonly name: string; readonly actual: Amount | null }[];
  readonly volume: Amount | null;
  readonly vessel: string | null;
  readonly outcome: ToldOutcome | null;
}

export interface CellContext {
  readonly conventions: Conventions;
  readonly answers: Readonly<Record<string, string>>;
}

/** Beside that what all rows of the file share. */
export interface FileContext extends CellContext {
  /** First spelling of an addition or a milk, by its plain name. */
  readonly names: Map<string, string>;
}

/** An amount as read, with what had to be assumed. */
export type SaidAmount = Pick<FoundAmount, 'amount' | 'assumed' | 'regional' | 'measure'>;

/** Says what had to be assumed to read an amount. */
export function sayAmount(
  log: RowLog,
  text: string,
  { amount, assumed: assumptions, regional, measure }: SaidAmount,
): void {
  if (regional && measure) log.measures.push(measure);
  for (const one of assumptions) {
    if (one.kind === 'range')
      log.assume(assumed.middle(text, `${Number(amount.value.toFixed(1))} ${amount.unit}`));
    else if (one.kind === 'about') log.assume(assumed.about(text));
    else if (one.kind === 'level') log.assume(assumed.level(text));
    else if (one.kind === 'fluid ounces') log.assume(assumed.fluid(text));
    else log.assume(assumed.unit(text, one.unit));
  }
}

/** More of this in one jar is a slip of the pen. */
export const tooMuch = (amount: Amount): boolean =>
  amount.unit === 'mL' || amount.unit === 'g'
    ? amount.value > 50_000
    : amount.unit === 'pieces' && amount.value > 1000;
export const isNegative = (text: string): boolean => /^-\s*[\d.,]*\d/.test(tidy(text));

export interface Cell {
  readonly column: Column;
  readonly text: string;
}

/** The cells of a meaning that something stands in. */
export const filled = (cells: readonly Cell[], meaning: NoteColumn): Cell[] =>
  cells.filter(({ column, text }) => column.meaning === meaning && tidy(text) !== '');

/** What the keeper answered to a question of a line, in lower case. */
export const answerOf = (answers: CellContext['answers'], id: string, line: number): string | undefined =>
  answers[`${id}:${line}`]?.trim().toLowerCase();

/** In these columns that nothing is known is asked about, or is a remark like any other. */
const ASKED_IN: readonly NoteColumn[] = ['date', 'jar', 'label', 'seed', 'spoiled', 'note'];

/** The cells of one row, asked for by what their column means. What is said not to be known is kept, and tells nothing. */
export class RowCells {
  readonly cells: readonly Cell[];
  constructor(
    all: readonly Cell[],
    readonly log: RowLog,
    readonly context: CellContext,
  ) {
    const unknown = all.filter(({ column, text }) => !ASKED_IN.includes(column.meaning) && isUnknown(text));
    for (const cell of unknown) log.keep(cell);
    this.cells = unknown.length === 0 ? all : all.filter((cell) => !unknown.includes(cell));
  }

  of(meaning: NoteColumn): Cell[] {
    return filled(this.cells, meaning);
  }

  /** The first cell of a meaning, unless it says that there is nothing. */
  told(meaning: NoteColumn): Cell | null {
    const [cell] = this.of(meaning);
    return cell && !isNothing(cell.text) ? cell : null;
  }

  /** What the keeper answered to a question of this row, in lower case. */
  answer(id: string): string | undefined {
    return answerOf(this.context.answers, id, this.log.row);
  }

  /** What cells of a meaning say, as one line that a record can hold; of a longer one all of it is kept in the note. */
  line(meaning: NoteColumn, before: readonly string[] = []): string | null {
    const text = [...before, ...this.of(meaning).map((cell) => cell.text.trim())].join('; ');
    if (text.length > 200) this.log.keep({ column: { heading: meaning }, text });
    return text === '' ? null : text.slice(0, 200);
  }

  /** A figure that can't be read: asked about, and kept. */
  figureUnread(kind: string, cell: Cell): void {
    this.log.unread(kind, question.notRead(cell.column.heading, cell.text.trim()), cell);
  }

  /** Says that a figure is the middle of two, or none too sure. @param shown the figure as it was taken */
  sayFigure(
    text: string,
    { range, about }: { readonly range: unknown; readonly about: boolean },
    shown: string,
  ): void {
    if (range) this.log.assume(assumed.middle(text, shown));
    if (about) this.log.assume(assumed.about(text));
  }

  /** A cell of one amount, with the unit of its heading; null with the text kept where it can't be read. */
  amount(cell: Cell, liquid: boolean): Amount | null {
    const text = cell.text.trim();
    const { heading, unit } = cell.column;
    const { conventions } = this.context;
    const bareUnit = conventions.bareUnits.get(heading) ?? unit ?? undefined;
    const parsed = parseAmount(text, { ...conventions, bareUnit }, liquid);
    if (parsed.ok && !tooMuch(parsed.amount)) {
      // A unit that stands in the heading is written, not assumed.
      const said = parsed.assumed.filter(({ kind }) => kind !== 'unit' || unit === null);
      sayAmount(this.log, text, { ...parsed, assumed: said });
      // A figure whose unit stood elsewhere carries it along: "3" alone would be read as anything later.
      const bare = bareUnit !== undefined && parsed.assumed.some(({ kind }) => kind === 'unit');
      return bare ? { ...parsed.amount, typed: `${text} ${bareUnit}` } : parsed.amount;
    }
    if (parsed.ok || parsed.code === 'amount below zero' || parsed.code === 'amount too large')
      this.log.problem(problem.amountImpossible(text), cell);
    // Without a unit the column as a whole is asked about.
    else if (parsed.code === 'amount without unit' && bareUnit === undefined) this.log.keep(cell);
    else this.log.unread('amount', question.amountNotRead(heading, text), cell);
    return null;
  }
}
