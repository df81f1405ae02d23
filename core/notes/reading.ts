// A keeper's spreadsheet, from text to what it would add: the rows one by one, then seeds across rows in any order.
import type { NoteColumn, NotesPreview } from '../contract';
import { jarLabel } from '../lineage/labels';
import { findAmounts, plain, tidy } from '../quantities';
import { giveAmounts, readBareUnits } from './amounts-of-seeds';
import { readFacts } from './cells';
import { type Question, readConventions } from './conventions';
import { runsSideways } from './heading-lines';
import { labelKey } from './identity';
import { type Said, readLayout } from './layout';
import type { NotesInput, NotesPlan, NotesReading, PlannedChange, PlannedJar } from './plan';
import { type Cell, type CellContext, LONGEST_NOTE, RowLog } from './row-cells';
import { type NoteRow, collectRows, labelOf, nameRows } from './rows';
import { problem, question } from './says';
import { linesBelow, refuseLoops, seededBy, seedsFirst, waitForSeeds, waitToTakeOver } from './seed-order';
import { type KnownJar, SeedIndex, type SourceMention } from './seed-index';
import { bareProducts, namedWithPieces } from './seed-sources';
import { STRONG } from './seed-words';
import { readSeeds } from './seeds';
import { noteOf, planJar } from './plan-jar';
import { readTable, type Table } from './table';
import { answeredChange, askChanged, staysOpen, takeOver, takesOver } from './changes';
import { fileLevelSays, previewRow, spoonsSaid, withinBudget } from './telling';
import { isNothing } from './words';
import { leaveImpossible, possibleChanges } from './impossible';

/** Names that a file teaches, until it teaches no more: a second reading finds nothing that the first did not. */
const MOST_LESSONS = 8;

/** Reads a file as far as it can be: what it adds, and everything that is to be said about it. */
export function readNotes(input: NotesInput): NotesReading {
  const table = readTable(input.text, input.step, input.separator ?? null);
  const taught: Taught = { products: new Map(), cultures: new Set(), known: new Set() };
  for (let lesson = 1; ; lesson += 1) {
    const reading = readOnce(input, table, taught);
    if (!reading.ok || lesson === MOST_LESSONS || !learnt(reading.plan, taught)) return reading;
  }
}

/** Sources that the rows of a file make known to each other, in whichever order they stand. */
interface Taught {
  readonly products: Map<string, string>;
  readonly cultures: Set<string>;
  /** Names that the rows were read with besides, so that there is nothing to teach of them. */
  readonly known: Set<string>;
}

/** Takes in what a plan teaches. @returns whether any of it was new */
function learnt(plan: NotesPlan, { products, cultures, known }: Taught): boolean {
  const before = products.size + cultures.size;
  for (const { name, receivedFrom } of plan.sources) {
    if (known.has(plain(name))) continue;
    if (receivedFrom !== null) cultures.add(plain(name));
    else if (!products.has(plain(name))) products.set(plain(name), name);
  }
  return products.size + cultures.size > before;
}

function readOnce(input: NotesInput, table: Table, taught: Taught): NotesReading {
  const layout = readLayout(table, input.mapping);
  const headings = layout.columns.map(({ heading }) => heading);
  if (runsSideways(table)) return { ok: false, code: 'notes sideways', params: { headings } };
  if (layout.rows.length === 0) return { ok: false, code: 'notes empty', params: { headings } };
  const has = (meaning: NoteColumn): boolean => layout.columns.some((column) => column.meaning === meaning);
  if (!has('date') && !has('start') && !has('label') && !has('jar'))
    return {
      ok: false,
      code: layout.tabular ? 'notes without days' : 'notes not a table',
      params: { headings },
    };
  if (!has('seed'))
    return {
      ok: false,
      code: layout.tabular ? 'notes without seeds' : 'notes not a table',
      params: { headings },
    };
  const {
    conventions,
    questions: fileQuestions,
    assumptions: conventionsSaid,
  } = readConventions(layout, table.separator, input.preferences, input.answers);
  const said: Said[] = [...layout.assumptions, ...conventionsSaid];
  const questions: Question[] = [...fileQuestions];
  const bareUnits = readBareUnits(layout, conventions, input, said, questions);
  const rows = collectRows(layout, conventions, input, said);
  const context: CellContext = { conventions, answers: input.answers, names: new Map(), bareUnits };
  nameRows(rows, input, (row) =>
    readFacts(row.cells, new RowLog(row.row.line), { ...context, names: new Map() }, row.identity.day),
  );

  const options = { spoons: conventions.spoons, decimal: conventions.decimal };
  const sourceNames = new Map(input.ledger.sources.map(({ name }) => [plain(name), name]));
  const isCulture = new Set(
    input.ledger.sources.flatMap(({ name, culture }) => (culture ? [plain(name)] : [])),
  );
  const productNames = new Set([...sourceNames.keys()].filter((name) => !isCulture.has(name)));
  const cultures = new Set([...isCulture, ...taught.cultures]);
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
  for (const name of [...productNames, ...isCulture]) taught.known.add(name);
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
    const uid = row.here ?? row.clash;
    if (registered.has(key) || (uid !== null && input.ledger.mistaken.has(uid))) continue;
    registered.add(key);
    const { id } = row;
    byId.set(id, row);
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
  const bare = bareProducts(
    rows.flatMap((row) =>
      row.cells
        .filter(({ column }) => column.meaning === 'seed')
        .map(({ text }) => ({ text, first: row.identity.day !== null && row.identity.day <= earliestKnown })),
    ),
    index,
  );
  const asked = new Set<string>();

  for (const [at, row] of rows.entries()) {
    input.step?.(at, rows.length);
    row.facts = readFacts(row.cells, row.log, context, row.identity.day);
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
        self: row.id,
        order: conventions.order,
        amounts: options,
        jars: index,
        sources: productNames,
        cultures,
        taught: taught.products,
        bare,
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
        else if (source.guessed && !asked.has(plain(source.name))) {
          asked.add(plain(source.name));
          row.log.ask('product', question.product(source.name));
        }
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
    const noted = noteOf(row).length;
    if (noted > LONGEST_NOTE) row.log.problem(problem.noteTooLong(noted));
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
  leaveImpossible(rows, byId, input);

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
  const wanted = new Map<PlannedChange, NoteRow>();
  const seeded = seededBy(rows, byId);
  for (const row of rows) {
    // A row whose reading is the same as what came in before, only written otherwise, is here already.
    if (row.clash !== null && row.log.problems.length === 0) {
      const { fingerprint } = planJar(row, byId, ({ name }) => name, input);
      if (input.ledger.read.has(fingerprint.split(':')[1] ?? '')) row.here = row.clash;
    }
    let change: PlannedChange | null = null;
    if (row.here !== null) {
      change = answeredChange(row, input, context, () => planJar(row, byId, ({ name }) => name, input));
    } else if (row.clash !== null) {
      askChanged(row, input, () => linesBelow(row, seeded));
      row.taken =
        row.log.questions.some(({ id }) => id.startsWith('changed')) && takesOver(row, input.answers);
      if (row.taken) waitToTakeOver(row, byId);
      if (row.taken && row.log.problems.length === 0) {
        change = takeOver(row, planJar(row, byId, sourceOf, input));
        // The question is answered; it comes first of the row's.
        row.log.questions.shift();
      }
    }
    if (change !== null) wanted.set(change, row);
  }
  const changes = possibleChanges(jars, [...wanted.keys()], (change) => wanted.get(change), input);
  const changing = new Set(changes.flatMap((change) => wanted.get(change) ?? []));
  const refusedChanges = new Set([...wanted.values()].filter((row) => !changing.has(row)));
  const plan: NotesPlan = {
    sources: [...sources].map(([key, { name, source }]) => ({
      name,
      form: mixedForms.has(key) ? null : source.form,
      receivedFrom: source.culture ? name : null,
    })),
    jars,
    changes,
  };

  const spoons = spoonsSaid([...adding, ...[...changing].filter((row) => row.taken)], conventions);
  if (spoons.question) questions.push(spoons.question);
  said.push(...spoons.said, ...fileLevelSays(adding, layout));
  const telling = rows.filter((row) => row.here === null);
  const whole: NotesPreview = {
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
      ...rows.map((row) => previewRow(row, changing.has(row))),
    ].toSorted((a, b) => a.row - b.row),
    problems: rows
      .filter(
        (row) =>
          (row.here === null && (row.clash === null || row.taken) && row.repeats === null) ||
          refusedChanges.has(row),
      )
      .flatMap((row) => row.log.problems),
    questions: [
      ...questions,
      ...rows.flatMap((row) =>
        row.here === null
          ? row.log.questions
          : row.log.questions.filter(({ id }) => staysOpen(row, id, input)),
      ),
    ]
      .toSorted((a, b) => Number(b.urgent ?? false) - Number(a.urgent ?? false))
      .map((one) => ({ ...one, choices: [...one.choices] })),
    assumptions: [
      ...said,
      ...telling.filter((row) => row.clash === null || row.taken).flatMap((row) => row.log.assumptions),
    ],
  };
  return { ok: true, preview: withinBudget(whole, input.text.length), plan };
}

/** A day and a letter in columns of their own are one seed; other columns are seeds of their own. */
function joinSeeds(cells: readonly Cell[]): Cell[] {
  const [first, ...others] = cells;
  if (!first || others.length === 0) return [...cells];
  const isPart = (text: string): boolean => /^#?[\p{L}\p{N}]{1,3}$/u.test(tidy(text));
  if (!others.every(({ text }) => isPart(text)) && !isPart(first.text)) return [...cells];
  return [{ column: first.column, text: cells.map(({ text }) => text.trim()).join(' ') }];
}
