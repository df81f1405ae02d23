// A keeper's spreadsheet, from text to what it would add: the rows one by one, then seeds across rows in any order.
import type { NoteColumn, NotesPreview } from '../contract';
import type { Amount } from '../ledger/basics';
import { jarLabel } from '../lineage/labels';
import { findAmounts, plain, tidy } from '../quantities';
import {
  RowLog,
  finalVolume,
  isNegative,
  readFacts,
  sayAmount,
  tooMuch,
  type Cell,
  type CellContext,
  type RowFacts,
} from './cells';
import { readConventions, type Conventions, type Question } from './conventions';
import { fillYears, nextLetter, readIdentity, type Identity } from './identity';
import { readLayout, type Layout, type Said } from './layout';
import type { NotesInput, NotesPlan, NotesReading, PlannedJar, PlannedSeeding } from './plan';
import { assumed, problem, question } from './says';
import {
  STRONG,
  SeedIndex,
  bareNumber,
  namedWithPieces,
  readAmountList,
  readSeeds,
  type KnownJar,
  type SeedPart,
  type SourceMention,
} from './seeds';
import { changedRow, fileLevelSays, previewRow } from './telling';
import { readTable, type Row } from './table';
import { isDitto, isNothing } from './words';

/** One row of a jar while the file is read. */
export interface NoteRow {
  readonly row: Row;
  readonly log: RowLog;
  readonly cells: readonly Cell[];
  readonly identity: Identity;
  readonly rawText: string;
  raw: string;
  occurrence: number;
  /** uid of the jar it already is. */
  here: string | null;
  /** The label is taken in the ledger by a jar this row is not, or not any more. */
  clash: string | null;
  repeats: number | null;
  facts: RowFacts | null;
  seeds: { part: SeedPart; amount: Amount | null }[];
}

const TOTALS =
  /^(?:grand )?(?:totals?|sum|subtotal|average|avg|mean|count|summe|gesamt\w*|durchschnitt|mittelwert|totaux|moyenne|totale|media|promedio|totaal|gemiddelde?|suma|razem|srednia|summa|snitt|i alt|gennemsnitt?|gjennomsnitt)\b/;
const seedColumns: readonly NoteColumn[] = ['seed'];

/** Cells of a row under their columns, after mending and ditto marks. */
function cellsOf(
  row: Row,
  above: readonly string[] | null,
  layout: Layout,
  answers: NotesInput['answers'],
  log: RowLog,
): { cells: Cell[]; texts: string[] } {
  const texts: string[] = [];
  const cells = layout.columns.map((column): Cell => {
    const answer = answers[`cell:${row.line}:${column.heading}`];
    let text = answer ?? row.cells[column.index] ?? '';
    if (answer === '') log.assume(assumed.mendedBlank(column.heading, row.cells[column.index] ?? ''));
    if (tidy(text) !== '' && isDitto(text) && above && tidy(above[column.index] ?? '') !== '') {
      const value = above[column.index] ?? '';
      log.assume(assumed.ditto(column.heading, tidy(text), tidy(value)));
      text = value;
    }
    texts[column.index] = text;
    return { column, text };
  });
  const extra = row.cells.slice(layout.columns.length).map(tidy).filter(Boolean).join(' ');
  if (extra !== '') {
    log.assume(assumed.extraCells(extra));
    log.note.push(extra);
  }
  return { cells: cells.filter(({ column }) => column.meaning !== 'ignore'), texts };
}

/** A row's own text by meaning, so that separators, quotes, case, spaces and the order of columns don't matter. */
function rawOf(row: Row, layout: Layout, toldDay: string): string {
  const parts = layout.columns.flatMap((column) => {
    if (column.meaning === 'date' || column.meaning === 'ignore') return [];
    const text = plain(row.cells[column.index] ?? '').replace(/\s*([,;+&/])\s*/g, '$1');
    return text === ''
      ? []
      : [`${column.known && column.meaning !== 'note' ? column.meaning : plain(column.heading)}=${text}`];
  });
  return JSON.stringify([toldDay, ...parts.toSorted()]);
}

/** Rows of jars; totals and remarks that belong to no jar are left out and said. */
function collectRows(layout: Layout, conventions: Conventions, input: NotesInput, said: Said[]): NoteRow[] {
  const rows: NoteRow[] = [];
  let above: string[] | null = null;
  let dayAbove: Identity | null = null;
  for (const row of layout.rows) {
    const filled = layout.columns.filter(({ index }) => tidy(row.cells[index] ?? '') !== '');
    const [first] = filled;
    const text = filled.map(({ index }) => tidy(row.cells[index] ?? '')).join(' ');
    if (first && TOTALS.test(plain(row.cells[first.index] ?? ''))) {
      said.push({ row: row.line, sentence: assumed.total(text) });
      continue;
    }
    const has = (meaning: NoteColumn): boolean => filled.some((column) => column.meaning === meaning);
    if (
      !has('seed') &&
      !has('jar') &&
      (filled.length < 2 || (!has('date') && !has('label'))) &&
      !/\d{1,2}[./-]\d{1,2}|^\d{4}-/.test(text)
    ) {
      said.push({ row: row.line, sentence: assumed.comment(text || row.cells.map(tidy).join(' ').trim()) });
      continue;
    }
    const log = new RowLog(row.line);
    const { cells, texts } = cellsOf(row, above, layout, input.answers, log);
    const identity = readIdentity(cells, log, conventions.order, dayAbove);
    above = texts;
    dayAbove = identity.day !== null || identity.yearless !== null ? identity : dayAbove;
    const rawText = rawOf(row, layout, identity.toldDay);
    rows.push({
      row,
      log,
      cells,
      identity,
      rawText,
      raw: '',
      occurrence: 1,
      here: null,
      clash: null,
      repeats: null,
      facts: null,
      seeds: [],
    });
  }
  return rows;
}

const labelKey = (day: string | null, word: string | null, letter: string): string =>
  `${day}|${plain(word ?? '')}|${letter.toLowerCase()}`;

/** Finds what came in before, gives years and letters, and sets equal labels apart. */
function nameRows(rows: readonly NoteRow[], input: NotesInput): void {
  const { ledger } = input;
  const uids = new Map(ledger.jars.map((jar) => [jar.uid, jar]));
  const counts = new Map<string, number>();
  for (const row of rows) {
    row.raw = input.hash(row.rawText);
    row.occurrence = (counts.get(row.raw) ?? 0) + 1;
    counts.set(row.raw, row.occurrence);
    row.here = ledger.raw.get(`${row.raw}:${row.occurrence}`) ?? null;
    if (row.here === null && row.occurrence > 1 && row.identity.letter !== null)
      row.here = ledger.raw.get(`${row.raw}:1`) ?? null;
  }
  fillYears(
    rows.map((row) => ({
      identity: row.identity,
      log: row.log,
      known: (row.here === null ? null : uids.get(row.here)?.day) ?? null,
    })),
    input.today,
  );

  const taken = new Map<string, Set<string>>();
  const takenOn = (day: string | null, word: string | null): Set<string> => {
    const key = `${day}|${plain(word ?? '')}`;
    const there = taken.get(key) ?? new Set<string>();
    taken.set(key, there);
    return there;
  };
  for (const jar of ledger.jars) takenOn(jar.day, jar.word).add(jar.letter.toLowerCase());
  for (const { identity } of rows)
    if (identity.letter !== null) takenOn(identity.day, identity.word).add(identity.letter);
  for (const { identity, log, here } of rows) {
    if (identity.letter !== null) continue;
    identity.letter =
      (here === null ? null : uids.get(here)?.letter) ?? nextLetter(takenOn(identity.day, identity.word));
    takenOn(identity.day, identity.word).add(identity.letter);
    if (identity.longName !== null) {
      log.assume(assumed.named(identity.longName, identity.letter));
      log.note.push(identity.longName);
    } else log.assume(assumed.letter(identity.letter));
  }

  const inLedger = new Map(ledger.jars.map((jar) => [labelKey(jar.day, jar.word, jar.letter), jar.uid]));
  const byLabel = new Map<string, NoteRow[]>();
  for (const row of rows) {
    const { day, word, letter } = row.identity;
    if (day === null || letter === null) continue;
    const key = labelKey(day, word, letter);
    byLabel.set(key, [...(byLabel.get(key) ?? []), row]);
    if (row.here === null) row.clash = inLedger.get(key) ?? null;
    if (day > input.today) row.log.problem(problem.dayFuture(day, input.today));
  }
  for (const same of byLabel.values()) {
    if (same.length < 2) continue;
    const [first] = same;
    if (!first) continue;
    if (same.every((row) => row.rawText === first.rawText)) {
      for (const row of same.slice(1)) {
        row.repeats = first.row.line;
        row.log.assume(assumed.repeated(first.row.line));
      }
      continue;
    }
    for (const row of same) {
      if (row.here === null)
        row.log.problem(
          problem.sameLabel(
            labelOf(row),
            same.map((one) => one.row.line),
          ),
        );
    }
  }
}

export const labelOf = ({ identity }: NoteRow): string =>
  jarLabel({ madeOn: identity.day, word: identity.word, letter: identity.letter ?? '?' }, true);

/** Bare numbers under an amount heading that tells no unit: the unit of its other cells, else a question that blocks. */
function readBareUnits(
  layout: Layout,
  conventions: Conventions,
  input: NotesInput,
  said: Said[],
  questions: Question[],
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
    const answer = input.answers[id]?.trim();
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

/** Shares the amount column out over the seeds that tell no amount of their own. */
function giveAmounts(
  row: NoteRow,
  conventions: Conventions,
  bareUnits: ReadonlyMap<string, string>,
  input: NotesInput,
): void {
  const amountCells = row.cells.filter(
    ({ column, text }) => column.meaning === 'amount' && tidy(text) !== '',
  );
  const [firstCell] = amountCells;
  const cell = firstCell && { ...firstCell, text: amountCells.map(({ text }) => text.trim()).join(' + ') };
  const { log } = row;
  for (const seed of row.seeds) {
    seed.amount = seed.part.amount
      ? { ...seed.part.amount.amount, typed: seed.part.amount.text.slice(0, 200) }
      : null;
    if (seed.part.amount)
      sayAmount(log, seed.part.amount.text, seed.part.amount.amount, seed.part.amount.assumed);
  }
  if (!cell || isNothing(cell.text)) return;
  const text = cell.text.trim();
  const options = { spoons: conventions.spoons, decimal: conventions.decimal };
  if (isNegative(text)) return log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
  const open = row.seeds.filter(({ amount }) => amount === null);
  let { amounts, each, rest } = readAmountList(text, options);
  if (amounts.length === 0) {
    const number = bareNumber(text);
    const onlySources = row.seeds.length > 0 && row.seeds.every(({ part }) => 'source' in part.from);
    const unit = cell.column.unit ?? (onlySources ? 'pieces' : bareUnits.get(cell.column.heading));
    const list =
      unit === undefined || number === null ? text.split(/[+&;/]/).map((piece) => piece.trim()) : [text];
    if (unit !== undefined && list.every((piece) => bareNumber(piece) !== null)) {
      amounts = list
        .flatMap((piece) => findAmounts(`${piece} ${unit}`, options, true))
        .map((amount) => ({ ...amount, text: text }));
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
  for (const amount of amounts) sayAmount(log, amount.text, amount.amount, amount.assumed);
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

/** Marks jars that would descend from themselves. */
function refuseLoops(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): void {
  const state = new Map<NoteRow, 'open' | 'done'>();
  const path: NoteRow[] = [];
  const told = new Set<NoteRow>();
  const visit = (start: NoteRow): void => {
    const stack: { row: NoteRow; next: number }[] = [{ row: start, next: 0 }];
    state.set(start, 'open');
    path.push(start);
    while (stack.length > 0) {
      const top = stack.at(-1);
      if (!top) return;
      const seed = top.row.seeds[top.next];
      top.next += 1;
      if (!seed) {
        state.set(top.row, 'done');
        path.pop();
        stack.pop();
        continue;
      }
      const next = 'jar' in seed.part.from ? byId.get(seed.part.from.jar.id) : undefined;
      if (!next) continue;
      if (state.get(next) === 'open') {
        const loop = path.slice(path.indexOf(next));
        for (const row of loop) {
          if (told.has(row) || row.here !== null) continue;
          told.add(row);
          const cell = row.cells.find(({ column }) => seedColumns.includes(column.meaning));
          row.log.problem(
            problem.ownAncestor([...loop, next].map(labelOf)),
            cell?.column.heading ?? null,
            cell?.text ?? null,
          );
        }
      } else if (!state.has(next)) {
        state.set(next, 'open');
        path.push(next);
        stack.push({ row: next, next: 0 });
      }
    }
  };
  for (const row of rows) if (!state.has(row)) visit(row);
}

/** Rows whose seed is left aside wait for it, and so on down. */
function waitForSeeds(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): void {
  const aside = (row: NoteRow): boolean =>
    row.here === null && row.clash === null && row.log.problems.length > 0;
  for (let changed = true; changed;) {
    changed = false;
    for (const row of rows) {
      if (row.here !== null || row.clash !== null || row.log.problems.length > 0 || row.repeats !== null)
        continue;
      for (const { part } of row.seeds) {
        const seed = 'jar' in part.from ? byId.get(part.from.jar.id) : undefined;
        if (!seed || !aside(seed)) continue;
        row.log.problem(problem.waits(labelOf(seed), seed.row.line));
        changed = true;
      }
    }
  }
}

/** Seeds before what they seeded; days first, since most files run that way. */
function seedsFirst(rows: readonly NoteRow[], byId: ReadonlyMap<string, NoteRow>): NoteRow[] {
  const sorted = rows.toSorted(
    (a, b) => (a.identity.day ?? '').localeCompare(b.identity.day ?? '') || a.row.line - b.row.line,
  );
  const wanted = new Set(sorted);
  const done = new Set<NoteRow>();
  const out: NoteRow[] = [];
  for (const start of sorted) {
    const stack = [start];
    while (stack.length > 0) {
      const row = stack.at(-1);
      if (!row) break;
      const waiting = row.seeds
        .flatMap(({ part }) => ('jar' in part.from ? (byId.get(part.from.jar.id) ?? []) : []))
        .filter((seed) => wanted.has(seed) && !done.has(seed));
      const [next] = waiting;
      if (next) stack.push(next);
      else {
        stack.pop();
        if (!done.has(row)) {
          done.add(row);
          out.push(row);
        }
      }
    }
  }
  return out;
}

/** Reads a file as far as it can be: what it adds, and everything that is to be said about it. */
export function readNotes(input: NotesInput): NotesReading {
  const table = readTable(input.text);
  const layout = readLayout(table, input.mapping);
  const headings = layout.columns.map(({ heading }) => heading);
  if (layout.rows.length === 0) return { ok: false, code: 'notes empty', params: { headings } };
  const has = (meaning: NoteColumn): boolean => layout.columns.some((column) => column.meaning === meaning);
  if (!has('date') && !has('label') && !has('jar'))
    return { ok: false, code: 'notes without days', params: { headings } };
  if (!has('seed')) return { ok: false, code: 'notes without seeds', params: { headings } };
  const {
    conventions,
    questions: fileQuestions,
    assumptions: conventionsSaid,
  } = readConventions(layout, table.separator, input.preferences, input.answers);
  const said: Said[] = [...layout.assumptions, ...conventionsSaid];
  const questions: Question[] = [...fileQuestions];
  const bareUnits = readBareUnits(layout, conventions, input, said, questions);
  const rows = collectRows(layout, conventions, input, said);
  nameRows(rows, input);

  const options = { spoons: conventions.spoons, decimal: conventions.decimal };
  const sourceNames = new Map(input.ledger.sources.map(({ name }) => [plain(name), name]));
  const productNames = new Set(sourceNames.keys());
  for (const row of rows) {
    const counted = row.cells.some(
      ({ column, text }) =>
        column.meaning === 'amount' &&
        findAmounts(text, options).some(({ amount }) => amount.unit === 'pieces'),
    );
    for (const { column, text } of row.cells) {
      if (column.meaning !== 'seed') continue;
      for (const name of namedWithPieces(text, options)) productNames.add(name);
      // "Blue Tin" beside "10 caps".
      if (counted && !/\d/.test(text)) for (const name of text.split(STRONG)) productNames.add(plain(name));
    }
  }
  const firstDay = rows.reduce<string>(
    (least, { identity }) => (identity.day !== null && identity.day < least ? identity.day : least),
    '9999',
  );
  const earliestKnown = input.ledger.jars.reduce<string>(
    (least, { day }) => (day !== null && day < least ? day : least),
    firstDay,
  );

  const byId = new Map<string, NoteRow>();
  const known: KnownJar[] = [];
  const shadowed = new Set<string>();
  const registered = new Set<string>();
  for (const row of rows) {
    const { day, letter, word, aliases } = row.identity;
    if (day === null || letter === null || row.repeats !== null) continue;
    const key = labelKey(day, word, letter);
    if (registered.has(key)) continue;
    registered.add(key);
    const id = `row:${row.row.line}`;
    byId.set(id, row);
    const uid = row.here ?? row.clash;
    if (uid !== null) shadowed.add(uid);
    known.push({ id, day, letter, word, aliases, label: labelOf(row) });
  }
  for (const jar of input.ledger.jars) {
    if (shadowed.has(jar.uid) || jar.day === null || jar.planned) continue;
    known.push({
      id: `ledger:${jar.uid}`,
      day: jar.day,
      letter: jar.letter.toLowerCase(),
      word: jar.word,
      aliases: [],
      label: jarLabel({ madeOn: jar.day, word: jar.word, letter: jar.letter }, true),
    });
  }
  const index = new SeedIndex(known);
  const context: CellContext = { conventions, answers: input.answers, names: new Map(), bareUnits };

  for (const [at, row] of rows.entries()) {
    if (at % 200 === 0) input.step?.(at, rows.length);
    row.facts = readFacts(row.cells, row.log, context);
    const amountCell = row.cells.find(({ column, text }) => column.meaning === 'amount' && tidy(text) !== '');
    const piecesBeside =
      amountCell !== undefined &&
      findAmounts(amountCell.text, options).some(({ amount }) => amount.unit === 'pieces');
    const seedCells = row.cells.filter(
      ({ column, text }) => column.meaning === 'seed' && tidy(text) !== '' && !isNothing(text),
    );
    for (const cell of joinSeeds(seedCells)) {
      const reading = readSeeds(cell.text, {
        day: row.identity.day ?? '9999-12-31',
        self: `row:${row.row.line}`,
        order: conventions.order,
        amounts: options,
        jars: index,
        sources: productNames,
        first: row.identity.day !== null && row.identity.day <= earliestKnown,
        piecesBeside,
      });
      for (const sentence of reading.problems) row.log.problem(sentence, cell.column.heading, cell.text);
      for (const sentence of reading.assumptions) row.log.assume(sentence);
      for (const text of reading.leftOver) row.log.keep(cell.column.heading, text);
      if (cell.text.includes('?') && reading.problems.length === 0) {
        row.log.ask('seed', question.seedUnsure(cell.text.trim()));
      }
      row.seeds.push(...reading.parts.map((part) => ({ part, amount: null })));
    }
    if (seedCells.length === 0) row.log.ask('seed', question.noSeed());
    for (const { part } of row.seeds) {
      if ('source' in part.from) {
        const { source } = part.from;
        if (source.culture) row.log.ask('culture', question.culture(source.name));
        else if (source.guessed) row.log.ask('product', question.product(source.name));
      } else if (row.identity.day !== null && part.from.jar.day > row.identity.day) {
        const cell = seedCells[0];
        row.log.problem(
          problem.seedLater(part.from.jar.label, row.identity.day),
          cell?.column.heading ?? null,
          cell?.text ?? null,
        );
      }
    }
    giveAmounts(row, conventions, bareUnits, input);
    const milk = row.facts.milkAmount?.unit === 'mL' ? row.facts.milkAmount.value : null;
    for (const { amount } of row.seeds) {
      if (milk !== null && milk > 0 && amount?.unit === 'mL' && amount.value > 2 * milk) {
        row.log.problem(
          problem.amountImpossible(amount.typed ?? ''),
          amountCell?.column.heading ?? null,
          amountCell?.text ?? null,
        );
      }
    }
  }
  refuseLoops(rows, byId);
  waitForSeeds(rows, byId);

  const adding = rows.filter(
    (row) => row.here === null && row.clash === null && row.repeats === null && row.log.problems.length === 0,
  );
  const sources = new Map<string, { name: string; source: SourceMention }>();
  const jars: PlannedJar[] = [];
  const sourceOf = (source: SourceMention): string => {
    const key = plain(source.name);
    const there = sourceNames.get(key) ?? sources.get(key)?.name;
    if (sourceNames.has(key)) return there ?? source.name;
    const before = sources.get(key);
    if (!before) sources.set(key, { name: source.name.slice(0, 200), source });
    else if (before.source.form === null && source.form !== null) before.source = source;
    return sources.get(key)?.name ?? source.name;
  };
  const mixedForms = new Set<string>();
  for (const row of seedsFirst(adding, byId)) jars.push(planJar(row, byId, sourceOf, input));
  for (const row of adding)
    for (const { part } of row.seeds)
      if ('source' in part.from && part.from.source.form !== null) {
        const key = plain(part.from.source.name);
        const first = sources.get(key)?.source.form;
        if (first && first !== part.from.source.form) mixedForms.add(key);
      }
  const plan: NotesPlan = {
    sources: [...sources].map(([key, { name, source }]) => ({
      name,
      form: mixedForms.has(key) ? null : source.form,
      receivedFrom: source.culture ? name : null,
    })),
    jars,
  };

  for (const row of rows) {
    // A row whose reading is the same as what came in before, only written otherwise, is here already.
    if (row.clash !== null && row.log.problems.length === 0) {
      const { fingerprint } = planJar(row, byId, ({ name }) => name, input);
      if (input.ledger.read.has(fingerprint.split(':')[1] ?? '')) row.here = row.clash;
    }
    if (row.clash !== null && row.here === null) changedRow(row, input.ledger);
  }
  said.push(...fileLevelSays(adding, layout));
  const telling = rows.filter((row) => row.here === null);
  const preview: NotesPreview = {
    columns: layout.columns.map((column) => ({
      heading: column.heading,
      meaning: column.known ? column.meaning : null,
      examples: [
        ...new Set(
          layout.rows.map((row) => tidy(row.cells[column.index] ?? '').slice(0, 80)).filter(Boolean),
        ),
      ].slice(0, 3),
    })),
    rows: [
      ...layout.emptyLines.map((row) => ({
        row,
        state: 'empty' as const,
        label: null,
        seeds: [],
        says: 'Nothing stands here.',
      })),
      ...rows.map(previewRow),
    ].toSorted((a, b) => a.row - b.row),
    problems: telling
      .filter((row) => row.clash === null && row.repeats === null)
      .flatMap((row) => row.log.problems),
    questions: [...questions, ...telling.flatMap((row) => row.log.questions)].map((one) => ({
      ...one,
      choices: [...one.choices],
    })),
    assumptions: [
      ...said,
      ...telling.filter((row) => row.clash === null).flatMap((row) => row.log.assumptions),
    ],
  };
  return { ok: true, preview, plan };
}

/** A day and a letter in columns of their own are one seed; other columns are seeds of their own. */
function joinSeeds(cells: readonly Cell[]): Cell[] {
  const [first, ...others] = cells;
  if (!first || others.length === 0) return [...cells];
  const isPart = (text: string): boolean => /^#?[\p{L}\p{N}]{1,3}$/u.test(tidy(text));
  if (!others.every(({ text }) => isPart(text)) && !isPart(first.text)) return [...cells];
  return [{ column: first.column, text: cells.map(({ text }) => text.trim()).join(' ') }];
}

function planJar(
  row: NoteRow,
  byId: ReadonlyMap<string, NoteRow>,
  sourceOf: (source: SourceMention) => string,
  input: NotesInput,
): PlannedJar {
  const { identity, log } = row;
  const facts = row.facts as RowFacts;
  const seedings = row.seeds.map(({ part, amount }): PlannedSeeding => {
    if ('source' in part.from)
      return { fromLine: null, fromUid: null, source: sourceOf(part.from.source), amount };
    const { id } = part.from.jar;
    const seed = byId.get(id);
    const uid = seed ? (seed.here ?? seed.clash) : id.slice('ledger:'.length);
    return { fromLine: uid === null ? (seed?.row.line ?? null) : null, fromUid: uid, source: null, amount };
  });
  const note = [...new Set(log.note)].join('\n').slice(0, 10_000);
  const volume = finalVolume(
    facts,
    seedings.map(({ amount }) => amount),
  );
  const read = JSON.stringify([
    identity.day, plain(identity.word ?? ''), identity.letter, facts.hours, facts.temperature && Number(facts.temperature.value.toFixed(2)),
    plain(facts.milk ?? ''), facts.milkAmount?.value ?? null, facts.additions.map(({ name, actual }) => [plain(name), actual?.value ?? null]),
    row.seeds.map(({ part, amount }) => ['source' in part.from ? plain(part.from.source.name) : part.from.jar.label.toLowerCase(), amount?.value ?? null]),
    facts.outcome && [facts.outcome.setWord, facts.outcome.ph, facts.outcome.signs, facts.outcome.spoiledSaid, plain(facts.outcome.texture ?? '')], plain(note),
  ]); // prettier-ignore
  return {
    line: row.row.line,
    label: labelOf(row),
    madeOn: identity.day ?? '',
    word: identity.word,
    letter: identity.letter ?? '',
    hold:
      facts.hours === null && facts.temperature === null
        ? null
        : { hours: facts.hours, planned: facts.temperature },
    fields: {
      vessel: facts.vessel,
      ...volume,
      milk: facts.milk,
      milkAmount: facts.milkAmount,
      note: note === '' ? null : note,
    },
    additions: facts.additions.map(({ name, actual }) => ({ name, actual })),
    seedings,
    outcome: facts.outcome,
    fingerprint: `${row.raw}:${input.hash(read)}`,
    occurrence: row.occurrence,
  };
}
