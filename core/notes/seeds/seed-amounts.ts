// How much of each seed: the amount column shared out over what a row names as its seeds.
import type { Amount } from '../../ledger/basics';
import {
  isNothing,
  isUnknown,
  cutOut,
  findAmounts,
  plain,
  tidy,
  type AmountOptions,
  type FoundAmount,
} from '../../quantities/quantities';
import { answerOf, filled, isNegative, sayAmount, tooMuch, type Cell } from '../rows/row-cells';
import { bareNumber, bareUnitOf } from '../conventions/bare-units';
import type { Conventions } from '../conventions/file-habits';
import { countsPieces } from '../layout/headings';
import { nameOfSeed } from '../named-seeds';
import type { NotesInput } from '../notes-plan';
import type { NoteRow } from '../rows/note-row';
import { findDay } from '../../text/days';
import { assumed, problem, question } from '../notes-says';
import { STRONG, WEAK } from '../cells/seed-words';
import { LONGEST_CELL } from '../table/table-rows';

/** The amounts of a cell: "3 tbsp + 3T", "3 tbsp each", "2 EL", in order. */
function readAmountList(
  text: string,
  options: AmountOptions,
): { amounts: readonly FoundAmount[]; each: boolean; rest: string } {
  const amounts = findAmounts(text, options, true);
  const around = cutOut(text, amounts);
  const each =
    /\b(?:each|apiece|of each|per jar|je(?:weils)?|chacun\w*|cada (?:uno|una|um|uma)?|ciascun\w*|elk|ieder|var(?:dera|je)?|hver|kazd\w+)\b/i.test(
      plain(around),
    );
  const rest = around
    .replace(
      /[+&;,/()]|\b(?:each|apiece|of each|and|und|je|jeweils|et|chacune?|cada|uno|una|y|e|ciascun[oa]|elk|en|och|og|hver|i)\b/gi,
      ' ',
    )
    .trim();
  return { amounts, each, rest };
}

/** Of several seeds those an amount can be of: in a form the product's of that form, pieces a product's, anything else a jar's. */
function fitting<Seed extends NoteRow['seeds'][number]>(
  seeds: readonly Seed[],
  { amount, form }: FoundAmount,
): Seed[] {
  // "8 caps" beside capsules and tablets are the capsules.
  const formed = seeds.filter(
    ({ part: { from } }) => form !== null && 'source' in from && from.source.form === form,
  );
  if (formed.length === 1) return formed;
  const isSource = ({ part }: Seed): boolean => 'source' in part.from;
  if (seeds.every(isSource) || !seeds.some(isSource)) return [];
  return seeds.filter((seed) => isSource(seed) === (amount.unit === 'pieces'));
}

/** A text that is one amount and nothing else. */
export function wholeAmount(text: string, options: AmountOptions): FoundAmount | null {
  const [found] = findAmounts(text, options, true);
  return found && found.start === 0 && found.end === tidy(text).length ? found : null;
}

/** "5%", or 5 under a heading in per cent. */
function readPercent(text: string, unit: string | null): number | null {
  const told = /^(?:~|ca\.?)?\s*(\d+(?:[.,]\d+)?)\s*(%?)$/.exec(tidy(text));
  return told && (told[2] === '%' || unit === '%') ? Number((told[1] ?? '').replace(',', '.')) : null;
}

/** Whether the words for seeds hint at more of them than were read. */
function namesMore(text: string, seeds: number, options: AmountOptions): boolean {
  let rest = cutOut(text, findAmounts(text, options, true));
  for (let found = findDay(rest); found !== null; found = findDay(rest))
    rest = `${rest.slice(0, found.start)} day ${rest.slice(found.end)}`;
  const hints =
    rest
      .split(STRONG)
      .flatMap((piece) => piece.split(WEAK))
      .filter((piece) => /[\p{L}\p{N}]/u.test(piece)).length +
    (/[(,]\s*(?:and|plus|und|et|con|also|some|a bit of|rest of)\b/i.test(rest) ? 1 : 0);
  return hints > seeds;
}

/** What the amount cells of a row say together: their column, and the text of all. */
type Open = NoteRow['seeds'];

/** Shares the amount column out over the seeds that tell no amount of their own. */
export function giveAmounts(row: NoteRow, conventions: Conventions, input: NotesInput): void {
  const { log } = row;
  for (const seed of row.seeds) {
    const own = seed.part.amount;
    seed.amount = own ? { ...own.amount, typed: own.text.slice(0, 200) } : null;
    if (own) sayAmount(log, own.text, own);
  }
  const cell = amountCell(row);
  if (!cell || isNothing(cell.text) || isUnknown(cell.text)) return;
  // Nothing but the amounts named the seed, with its count.
  if (filled(row.cells, 'seed').length === 0 && row.seeds.length > 0) return;
  const { heading, unit } = cell.column;
  if (cell.text.length > LONGEST_CELL)
    return log.unread('long', question.cellTooLong(heading, cell.text, cell.text.length), cell);
  if (isNegative(cell.text)) return log.problem(problem.amountImpossible(cell.text), cell);
  const open = row.seeds.filter(({ amount }) => amount === null);
  const percent = readPercent(cell.text, unit);
  if (percent !== null) return givePercent(percent, cell, row, open);
  const { amounts, each, rest } = amountsOf(cell, row, open, conventions);
  if (amounts.some(({ amount }) => tooMuch(amount)))
    return log.problem(problem.amountImpossible(cell.text), cell);
  // "1 tbsp per cup" is a share of the milk.
  if (/(?:^|\s)(?:per|pro|je|par|por|pr)\b|\//i.test(rest) && !each)
    return log.unread('amount', question.amountNotRead(heading, cell.text), cell);
  // Without a unit the column as a whole is asked about.
  const asked =
    unit === null && bareNumber(cell.text) !== null && conventions.bareUnits.get(heading) === undefined;
  if (amounts.length === 0 && !asked) log.ask('amount', question.amountNotRead(heading, cell.text));
  if (amounts.length === 0 || tidy(rest) !== '') log.keep(cell);
  for (const amount of amounts) sayAmount(log, amount.text, amount);
  if (amounts.length > 0) shareOut({ amounts, each, cell, row, open, conventions, input });
}

/** The amount of a row, be it told in several cells; each with the unit of its own heading. */
function amountCell({ cells }: NoteRow): Cell | undefined {
  const told = filled(cells, 'amount');
  const withUnit = ({ column, text }: Cell): string =>
    told.length > 1 && column.unit !== null && bareNumber(text) !== null
      ? `${text.trim()} ${column.unit}`
      : text.trim();
  const [first] = told;
  return first && { ...first, text: told.map(withUnit).join(' + ') };
}

/** "5 %" of the milk. */
function givePercent(percent: number, cell: Cell, { log, facts }: NoteRow, open: Open): void {
  const { text } = cell;
  const milk = facts?.milkAmount;
  const [seed] = open;
  if (milk?.unit !== 'mL' || open.length !== 1 || !seed)
    return log.unread('amount', question.percentOfWhat(text), cell);
  const value = Number(((percent / 100) * milk.value).toPrecision(12));
  seed.amount = { value, unit: 'mL', typed: text.slice(0, 200) };
  log.assume(assumed.percent(text, String(Number(value.toFixed(1))), String(Number(milk.value.toFixed(1)))));
}

/** The amounts that a cell tells, bare numbers in the unit of their column; beside products alone they are pieces. */
function amountsOf(
  { column, text }: Cell,
  row: NoteRow,
  open: Open,
  conventions: Conventions,
): ReturnType<typeof readAmountList> {
  const list = readAmountList(text, conventions);
  // "3 + 1 tsp" under a heading in tablespoons: the bare figure is in the heading's.
  const figuresLeft = column.unit !== null && /\d/.test(list.rest);
  if (list.amounts.length > 0 && !figuresLeft) return list;
  const onlySources = row.seeds.length > 0 && row.seeds.every(({ part }) => 'source' in part.from);
  const figures = list.each ? tidy(list.rest) : text;
  const parts = figures.split(/[+&;/]|,\s+/).map((piece) => piece.trim());
  // "20/25" for two seeds is no fraction.
  const whole = bareNumber(figures) !== null && !(open.length > 1 && parts.length === open.length);
  const inUnit = (whole ? [figures] : parts).map((piece) => {
    const counted = onlySources && (column.unit === null || countsPieces(column.heading));
    const unit = counted ? 'pieces' : (column.unit ?? bareUnitOf(piece, column.heading, conventions));
    const inIt = unit === undefined ? null : wholeAmount(`${piece} ${unit}`, conventions);
    return wholeAmount(piece, conventions) ?? inIt;
  });
  if (inUnit.some((amount) => amount === null)) return list;
  if (column.unit === null && onlySources) row.log.assume(assumed.pieces(text));
  return {
    ...list,
    // A figure carries the unit of its heading along; of pieces it is one.
    amounts: inUnit.flatMap((amount) =>
      amount ? { ...amount, text: whole && amount.amount.unit === 'pieces' ? text : amount.text } : [],
    ),
    rest: '',
  };
}

interface Sharing {
  readonly amounts: readonly FoundAmount[];
  /** Told of each seed. */
  readonly each: boolean;
  readonly cell: Cell;
  readonly row: NoteRow;
  readonly open: Open;
  readonly conventions: Conventions;
  readonly input: NotesInput;
}

/** Gives amounts to the seeds that have none, as far as it is clear which is whose; else it is asked. */
function shareOut(sharing: Sharing): void {
  const { amounts, cell, row, open } = sharing;
  const { log, seeds } = row;
  const { text } = cell;
  const typed = (amount: FoundAmount): Amount => ({
    ...amount.amount,
    typed: (amounts.length === 1 && bareNumber(text) === null ? text : amount.text).slice(0, 200),
  });
  const [only] = amounts;
  const fits = only && amounts.length === 1 ? fitting(open, only) : [];
  if (seeds.length === 0 || !only) return log.keep(cell);
  if (open.length === 0) {
    const own = seeds.map((seed) => seed.amount?.typed ?? '').join(' + ');
    if (plain(own) !== plain(text)) log.unread('amount', question.twoAmounts(own, text), cell);
  } else if (amounts.length === open.length)
    for (const [at, seed] of open.entries()) seed.amount = typed(amounts[at] ?? only);
  else if (open.length === 1 && amounts.every(({ amount }) => amount.unit === only.amount.unit))
    addUp(sharing, only.amount.unit);
  else if (fits.length === 1)
    // Of a jar and a product, millilitres are the jar's and pieces the product's.
    for (const seed of fits) {
      const { from } = seed.part;
      seed.amount = typed(only);
      log.assume(assumed.amountOf(text, nameOfSeed(from)));
    }
  else if (amounts.length === 1) splitUp(sharing, typed(only));
  else log.unread('amount', question.amountsDontFit(text, open.length), cell);
}

/** "2 tbsp + 1 tsp" of one seed. Where the seed's own words hint at a second one, that is asked and not added up. */
function addUp({ amounts, cell, row, open, conventions, input }: Sharing, unit: Amount['unit']): void {
  const { log } = row;
  const named = filled(row.cells, 'seed')
    .map(({ text }) => text.trim())
    .join('; ');
  const answer = answerOf(input.answers, 'sum', log.row);
  if (answer !== 'one' && namesMore(named, row.seeds.length, conventions)) {
    if (answer === undefined)
      log.ask('sum', question.sumOrSeeds(cell.text, named), [
        ['one', 'One seed: add them up'],
        ['several', 'Several seeds: leave it blank'],
      ]);
    return log.keep(cell);
  }
  const value = Number(amounts.reduce((sum, { amount }) => sum + amount.value, 0).toPrecision(15));
  for (const seed of open) seed.amount = { value, unit, typed: cell.text.slice(0, 200) };
  log.assume(assumed.sum(cell.text, `${Number(value.toFixed(1))} ${unit}`));
}

/** One amount for several seeds: of each, or of all together, which is asked. */
function splitUp({ each, cell, row, open, input }: Sharing, amount: Amount): void {
  const answer = answerOf(input.answers, 'each', row.log.row);
  const all = !each && answer !== 'each' && open.length > 1;
  const value = all ? Number((amount.value / open.length).toPrecision(15)) : amount.value;
  for (const seed of open) seed.amount = { ...amount, value };
  if (!all || answer !== undefined) return;
  row.log.assume(assumed.split(cell.text, open.length));
  row.log.ask('each', question.eachOrAll(cell.text, open.length), [
    ['all', 'All together'],
    ['each', 'Each of them'],
  ]);
}
