// How much of each seed: the amount column shared out over what a row names as its seeds.
import type { Amount } from '../../ledger/basics';
import { findAmounts, plain, tidy, type AmountOptions, type FoundAmount } from '../../quantities';
import { isNegative, sayAmount, tooMuch } from '../rows/row-cells';
import { bareNumber } from '../conventions/bare-units';
import type { Conventions } from '../conventions/file-conventions';
import type { NotesInput } from '../notes-plan';
import type { NoteRow } from '../rows/note-rows';
import { findDay } from '../cells/days';
import { assumed, problem, question } from '../says';
import { STRONG, WEAK } from '../cells/seed-words';
import { LONGEST_CELL } from '../table/text-table';
import { isNothing } from '../cells/words';

/** The amounts of a cell: "3 tbsp + 3T", "3 tbsp each", "2 EL", in order. */
function readAmountList(
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

/** Of several seeds of both kinds, those an amount can be of: pieces are a product's, anything else a jar's. */
function fitting<Seed extends NoteRow['seeds'][number]>(
  seeds: readonly Seed[],
  { amount }: FoundAmount,
): Seed[] {
  const isSource = ({ part }: Seed): boolean => 'source' in part.from;
  if (seeds.every(isSource) || !seeds.some(isSource)) return [];
  return seeds.filter((seed) => isSource(seed) === (amount.unit === 'pieces'));
}

/** A text that is one amount and nothing else. */
function wholeAmount(text: string, options: AmountOptions): FoundAmount | null {
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
  let rest = tidy(text);
  for (const { start, end } of findAmounts(rest, options, true).toReversed())
    rest = `${rest.slice(0, start)} ${rest.slice(end)}`;
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

/** Shares the amount column out over the seeds that tell no amount of their own. */
export function giveAmounts(row: NoteRow, conventions: Conventions, input: NotesInput): void {
  const amountCells = row.cells.filter(
    ({ column, text }) => column.meaning === 'amount' && tidy(text) !== '',
  );
  const [firstCell] = amountCells;
  const withUnit = ({ column, text }: (typeof amountCells)[number]): string =>
    amountCells.length > 1 && column.unit !== null && bareNumber(text) !== null
      ? `${text.trim()} ${column.unit}`
      : text.trim();
  const cell = firstCell && { ...firstCell, text: amountCells.map(withUnit).join(' + ') };
  const { log } = row;
  for (const seed of row.seeds) {
    seed.amount = seed.part.amount
      ? { ...seed.part.amount.amount, typed: seed.part.amount.text.slice(0, 200) }
      : null;
    if (seed.part.amount) sayAmount(log, seed.part.amount.text, seed.part.amount);
  }
  if (!cell || isNothing(cell.text)) return;
  if (cell.text.length > LONGEST_CELL) {
    log.ask('long', question.cellTooLong(cell.column.heading, cell.text, cell.text.length));
    return log.keep(cell.column.heading, cell.text);
  }
  const text = cell.text.trim();
  const options = { spoons: conventions.spoons, decimal: conventions.decimal };
  if (isNegative(text)) return log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
  const open = row.seeds.filter(({ amount }) => amount === null);
  const percent = readPercent(text, cell.column.unit);
  if (percent !== null) {
    const milk = row.facts?.milkAmount;
    if (milk?.unit !== 'mL' || open.length !== 1) {
      log.ask('amount', question.percentOfWhat(text));
      return log.keep(cell.column.heading, text);
    }
    const value = Number(((percent / 100) * milk.value).toPrecision(12));
    for (const seed of open) seed.amount = { value, unit: 'mL', typed: text.slice(0, 200) };
    return log.assume(
      assumed.percent(text, String(Number(value.toFixed(1))), String(Number(milk.value.toFixed(1)))),
    );
  }
  let { amounts, each, rest } = readAmountList(text, options);
  if (amounts.length === 0) {
    const number = bareNumber(text);
    const onlySources = row.seeds.length > 0 && row.seeds.every(({ part }) => 'source' in part.from);
    const unit =
      cell.column.unit ?? (onlySources ? 'pieces' : conventions.bareUnits.get(cell.column.heading));
    const parts = text.split(/[+&;/]|,\s+/).map((piece) => piece.trim());
    // "20/25" for two seeds is no fraction.
    const list = number !== null && !(open.length > 1 && parts.length === open.length) ? [text] : parts;
    const inUnit = list.map((piece) => wholeAmount(`${piece} ${unit}`, options));
    if (unit !== undefined && inUnit.every((amount) => amount !== null)) {
      amounts = inUnit.flatMap((amount) => amount ?? []).map((amount) => ({ ...amount, text: text }));
      rest = '';
      if (cell.column.unit === null && onlySources && unit === 'pieces') log.assume(assumed.pieces(text));
    }
  }
  if (amounts.some(({ amount }) => tooMuch(amount)))
    return log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
  if (amounts.length === 0) {
    log.ask('amount', question.amountNotRead(cell.column.heading, text));
    return log.keep(cell.column.heading, text);
  }
  if (tidy(rest) !== '') log.keep(cell.column.heading, text);
  for (const amount of amounts) sayAmount(log, amount.text, amount);
  const typed = (amount: (typeof amounts)[number]): Amount => ({
    ...amount.amount,
    typed: (amounts.length === 1 ? text : amount.text).slice(0, 200),
  });
  const [only] = amounts;
  if (row.seeds.length === 0) return log.keep(cell.column.heading, text);
  if (open.length === 0) {
    const own = row.seeds.map((seed) => seed.amount?.typed ?? '').join(' + ');
    if (plain(own) !== plain(text)) {
      log.ask('amount', question.twoAmounts(own, text));
      log.keep(cell.column.heading, text);
    }
  } else if (amounts.length === open.length) {
    for (const [at, seed] of open.entries()) {
      const amount = amounts[at];
      if (amount) seed.amount = typed(amount);
    }
  } else if (
    open.length === 1 &&
    amounts.length > 1 &&
    amounts.every(({ amount }) => amount.unit === only?.amount.unit)
  ) {
    // "2 tbsp + 1 tsp" of one seed. Where the seed's own words hint at a second one, that is asked and not added up.
    const named = row.cells
      .filter(({ column, text: seed }) => column.meaning === 'seed' && tidy(seed) !== '')
      .map((seed) => seed.text.trim())
      .join('; ');
    const answer = input.answers[`sum:${log.row}`]?.trim().toLowerCase();
    if (answer !== 'one' && namesMore(named, row.seeds.length, options)) {
      if (answer === undefined)
        log.ask('sum', question.sumOrSeeds(text, named), [
          ['one', 'One seed: add them up'],
          ['several', 'Several seeds: leave it blank'],
        ]);
      return log.keep(cell.column.heading, text);
    }
    const value = Number(amounts.reduce((sum, { amount }) => sum + amount.value, 0).toPrecision(15));
    for (const seed of open)
      seed.amount = { value, unit: only?.amount.unit ?? 'mL', typed: text.slice(0, 200) };
    log.assume(assumed.sum(text, `${Number(value.toFixed(1))} ${only?.amount.unit}`));
  } else if (amounts.length === 1 && only && fitting(open, only).length === 1) {
    // Of a jar and a product, millilitres are the jar's and pieces the product's.
    for (const seed of fitting(open, only)) {
      seed.amount = typed(only);
      log.assume(
        assumed.amountOf(
          text,
          'jar' in seed.part.from ? seed.part.from.jar.label : seed.part.from.source.name,
        ),
      );
    }
  } else if (amounts.length === 1 && only) {
    const id = `each:${log.row}`;
    const answer = input.answers[id]?.trim().toLowerCase();
    const all = !each && answer !== 'each' && open.length > 1;
    for (const seed of open)
      seed.amount = all
        ? { ...typed(only), value: Number((only.amount.value / open.length).toPrecision(15)) }
        : typed(only);
    if (all && answer === undefined) {
      log.assume(assumed.split(text, open.length));
      log.ask('each', question.eachOrAll(text, open.length), [
        ['all', 'All together'],
        ['each', 'Each of them'],
      ]);
    }
  } else {
    log.ask('amount', question.amountsDontFit(text, open.length));
    log.keep(cell.column.heading, text);
  }
}
