// Every sentence that reading a spreadsheet says: problems (a row is left aside), questions, assumptions.
import type { DayRange } from '../quantities/day-ranges';
import { dayLabel } from '../lineage/labels';
import type { NoteColumn } from '../contract';
import { meaningWithin } from './meanings';
import { YEARS_POSSIBLE } from '../text/days';

/** A cell is quoted to so many characters. */
const MOST_QUOTED = 200;
/** The beginning of a text that is too long to be quoted whole; never half a character. */
export const quoted = (text: string): string =>
  text.length <= MOST_QUOTED ? text : `${text.slice(0, MOST_QUOTED - 1).replace(/[\uD800-\uDBFF]$/, '')}…`;

type Sentences = Readonly<Record<string, (...given: never[]) => string | Wrong>>;
const short = (given: unknown): unknown => (typeof given === 'string' ? quoted(given) : given);
/** The same sentences, with every text that goes into one cut to what is quoted. */
const quoting = <Table extends Sentences>(table: Table): Table =>
  Object.fromEntries(
    Object.entries(table).map(([name, sentence]) => [
      name,
      (...given: never[]) => sentence(...(given.map(short) as never[])),
    ]),
  ) as unknown as Table;

const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
/** The first of many. @param say how one is said */
function more<Item>(items: readonly Item[], most = 6, say: (item: Item) => string = String): string {
  const first = items.slice(0, most).map((item) => quoted(say(item)));
  return items.length > most ? `${first.join(', ')} and ${items.length - most} more` : list(first);
}

/** "row 3", "rows 3, 4 and 7". */
const inRows = (rows: readonly number[]): string =>
  `${rows.length === 1 ? 'row' : 'rows'} ${more(rows.map(String))}`;

/** What keeps a row aside: why in a few words, the same for all rows that wait for the same, and what is to be done. */
export interface Wrong {
  readonly reason: string;
  readonly sentence: string;
}
const wrong =
  <Given extends unknown[]>(reason: string, say: (...given: Given) => string) =>
  (...given: Given): Wrong => ({ reason, sentence: say(...given) });

export const problem = {
  /** What a rule says, which is short already. */
  rule: wrong('It can’t be so', (sentence: string) => sentence),
  ...quoting({
  seedNotFound: wrong('The seed was not found', (text: string) => `The seed “${text}” was not found among the jars of these notes or the ledger. Say which jar or product it was.`),
  seedSeveral: wrong('The seed could be several jars', (text: string, jars: readonly { readonly label: string }[]) => `The seed “${text}” could be ${more(jars, 6, ({ label }) => label)}. Say which one it was.`),
  whichProduct: wrong('The product could be several', (text: string, names: readonly string[]) => `“${text}” could be ${more(names)}. Say which one it was.`),
  seedLater: wrong('The seed was made later than the jar', (label: string, day: string) => `The seed ${label} was made later than this jar (${day}). A jar can’t be seeded from a later day. Correct the day or the seed.`),
  ownAncestor: wrong('The jar would be its own ancestor', (labels: readonly string[]) => `This jar would be its own ancestor: ${labels.slice(0, 8).join(' ← ')}${labels.length > 8 ? ' …' : ''}. Correct the seed in one of these rows.`),
  /** @param root the row that keeps all that hang on it */
  waits: (label: string, row: number, root: number): Wrong => ({
    reason: `Waits for row ${root}`,
    sentence: `This row waits for row ${row}: its seed ${label} is left aside there.`,
  }),
  temperatureImpossible: wrong('The temperature is impossible', (text: string) => `The temperature “${text}” is impossible for a jar held warm. Correct it, or leave it blank.`),
  hoursImpossible: wrong('The hours held are impossible', (text: string) => `“${text}” is impossible as the hours a jar was held. Correct it, or leave it blank.`),
  phImpossible: wrong('The pH is impossible', (text: string) => `“${text}” is impossible as the pH of a jar: it lies between 2 and 9. Correct it, or leave it blank.`),
  amountImpossible: wrong('The amount is impossible', (text: string) => `The amount “${text}” is impossible: it is below zero, next to nothing, or far more than a jar holds. Correct it, or what its column means.`),
  dayNotRead: wrong('The day could not be read', (text: string) => `The day “${text}” could not be read. Write it as 2025-10-15.`),
  dayImpossible: wrong('The day can’t be right', (text: string) => `The day “${text}” can’t be right. Write it as 2025-10-15, with a year from ${YEARS_POSSIBLE.first} to ${YEARS_POSSIBLE.last}.`),
  dayMissing: wrong('There is no day', () => 'This row has no day. Write the day the jar was made.'),
  dayFuture: wrong('The day lies after today', (text: string, today: string) => `The day “${text}” lies after today (${today}). Correct the day.`),
  sameLabel: wrong('Rows that differ are called the same', (label: string, rows: readonly number[]) => `The rows ${more(rows.map(String), 12)} are all called ${label} but differ. Give one of them another letter.`),
  cellTooLong: wrong('A cell is too long', (heading: string, text: string, length: number) => `“${text}” under “${heading}” is ${length} characters long, and a note holds 10000. Shorten it; if a quotation mark opens here and never closes, take it out.`),
  noteTooLong: wrong('The note is too long', (length: number) => `What would be kept in this jar’s note is ${length} characters long, and a note holds 10000. Shorten the row’s longest cell.`),
  labelTooLong: wrong('The name is too long', (text: string) => `“${text}” is too long for a name. Shorten it.`),
  }),
}; // prettier-ignore

export const question = {
  /** Of a sentence, which is short already. */
  wasItSo: (sentence: string) => `${sentence} Was it so all the same? Until it is answered the row stays aside.`,
  ...quoting({
  sheet: (sheets: number) => `This workbook has ${sheets} sheets with something in them. Which one holds the notes?`,
  sheetsAlike: (sheets: readonly string[]) => `All ${sheets.length} with the same headings, one after the other (${sheets.slice(0, 3).join(', ')}${sheets.length > 3 ? ' …' : ''})`,
  unknownColumn: (heading: string) => `The column “${heading}” is not one we know. Its text is kept in each jar’s note. What does it tell? What you answer holds for later files too.`,
  whichColumn: (days: boolean) => `No column is known to tell ${days ? 'on which day each jar was made' : 'what seeded each jar'}. Which one does?`,
  dayOrder: (example: string) => `Is “${example}” written with the day first or the month first? No date in the file settles it.`,
  bareUnit: (heading: string, example: string) => `Which unit do the amounts under “${heading}” have (for example “${example}”)?`,
  hoursOrDegrees: (heading: string) => `Are the figures under “${heading}” the hours held, or the temperature in °C? Until it is answered they are kept in each jar’s note.`,
  unitBySize: (heading: string, small: string, large: string, unit: string) => `Under “${heading}” stand ${small} and ${large} without a unit. Read as ${unit} the second is more than a seed can be; read as mL the first is next to nothing. Which unit do they have?`,
  endAlone: (end: string) => `“${end}” alone does not tell how long the jar was held. It is kept in the note.`,
  spoons: (word: string) => `Which spoon or cup does “${word}” mean? The notes don’t tell the region.`,
  eachOrAll: (text: string, seeds: number) => `Is “${text}” the amount of each of the ${seeds} seeds, or of all together?`,
  timesNotRead: (start: string, end: string) => `From “${start}” to “${end}” does not tell how long the jar was held. The hours are left blank and both are kept in the note.`,
  bubbles: (words: string) => `It says “${words}”. Fine bubbles alone are normal for this kind of culture. Was there any other sign of spoilage?`,
  fibre: (words: string) => `It says “${words}”. A purple or brown tint or a jelly can be the fibre. Was it the fibre, or spoilage?`,
  slime: (words: string) => `It says “${words}”. Some cultures pull threads, and slime can be spoilage. Was it as this line always is, or spoilage? When in doubt, discard.`,
  thing: (words: string) => `It says “${words}”. Is that a sign of spoilage? It was not taken as one.`,
  uncertainSign: (words: string) => `It says “${words}”. Was that a sign of spoilage? Until it is answered the jar counts as spoiled.`,
  unsure: (words: string) => `The remark “${words}” sounds unsure. It is kept in the note.`,
  thrownOut: (words: string) => `It was thrown out (“${words}”). Was it spoiled? Until you say so it counts as that.`,
  pours: (text: string) => `“${text}”: did it pour like milk when its hold ended, or was it set and thin? Until you answer it is kept as the texture.`,
  setUnknown: (text: string) => `“${text}” is none of the five words for how a jar set. Which one fits? Until then it is kept as it stands.`,
  percentOfWhat: (text: string) => `“${text}” is a share, and the row does not tell how much milk it is a share of. The amount is left blank and the text is kept in the note.`,
  whichProduct: (text: string) => `Which product is “${text}”? Until it is answered the row stays aside.`,
  seedUnsure: (text: string) => `The seed “${text}” sounds unsure. It was taken as written. Is it right?`,
  seedSpoiled: (label: string, hanging: number) => `The seed ${label} spoiled or was thrown out, by these notes. Was it this jar? If so, ${hanging === 1 ? 'this row is' : `all ${hanging} rows that descend from it are`} set aside.`,
  noSeed: () => 'Nothing says what seeded this jar. It is brought in without a seed.',
  letterAlone: (text: string, row: number, more: number) => `“${text}” (row ${row}${more > 0 ? ` and ${more} more` : ''}) names a jar by its letter or number alone, and several jars have it. Which one is meant each time?`,
  unknownSource: (name: string, rows: readonly number[]) => `“${name}” (${inRows(rows)}) is no jar and no source that is known. What is it? Until it is answered ${rows.length === 1 ? 'the row stays' : 'these rows stay'} aside.`,
  changed: (label: string, differences: readonly string[]) => `${label} is already in the ledger and this row now differs: ${differences.join('; ')}. Take it over? Until you say so the ledger stays as it is.`,
  spoiledNow: (
    row: number, label: string, signs: readonly string[], before: string | null, differences: readonly string[], hanging: readonly number[],
  ) =>
    [
      `Row ${row}: the notes now say that ${label} spoiled${signs.length > 0 ? ` (${list(signs)})` : ''}.`,
      `The ledger says ${before ?? 'nothing of the kind'}. Take it over?`,
      hanging.length === 1 && `Row ${more(hanging.map(String))} hangs on it and would be set aside.`,
      hanging.length > 1 && `Rows ${more(hanging.map(String))} hang on it and would be set aside.`,
      differences.length > 0 && `Also: ${differences.join('; ')}.`,
    ]
      .filter(Boolean)
      .join(' '),
  changedByPlace: (label: string, differences: readonly string[]) => `This row names no letter. By its day and its place in the file it is ${label}, and it now differs: ${differences.join('; ')}. Is it the same jar, or another one? Until you say so the ledger stays as it is.`,
  byPlace: (label: string) => `The row names no letter: it was taken for ${label} by its day and its place in the file. If it is another jar, say so.`,
  newColumn: (heading: string, rows: number) => `The column “${heading}” is new since these notes came in. It tells more of ${rows} ${rows === 1 ? 'row that is' : 'rows that are'} in the ledger already. Take it over? Until you say so the ledger stays as it is.`,
  byHand: (label: string) => `A jar ${label} is already in the ledger and did not come from these notes. The ledger was left as it is and this row was not added.`,
  warm: (text: string) => `“${text}” is an unusual temperature for a hold. It was kept as written. Is it right?`,
  long: (text: string) => `“${text}” is an unusual length for a hold. It was kept as written. Is it right?`,
  cellTooLong: (heading: string, text: string, length: number) => `“${text}” under “${heading}” is ${length} characters long, too long to be read. It is kept in the note.`,
  amountNotRead: (heading: string, text: string) => `“${text}” under “${heading}” could not be read as an amount. It is kept in the note.`,
  notRead: (heading: string, text: string) => `“${text}” under “${heading}” could not be read. It is kept in the note.`,
  twoAmounts: (own: string, column: string) => `The seed says “${own}” and the amount column says “${column}”. The first was taken.`,
  amountsDontFit: (text: string, seeds: number) => `“${text}” does not tell how much of each of the ${seeds} seeds. The amounts are left blank and the text is kept in the note.`,
  sumOrSeeds: (text: string, seeds: string) => `“${text}” holds several amounts, and “${seeds}” may name more than the one seed that was read. Is it all of one seed? Until it is answered the amount is left blank and the text is kept in the note.`,
  labelDay: (label: string, day: string) => `The label “${label}” and the day ${day} differ. The day of the date column was taken.`,
  }),
}; // prettier-ignore

/** How a cell of a column was read, or what becomes of the column. */
export const columnSays = quoting({
  read: (cell: string, as: string) => (cell === as ? `“${cell}” was read as it stands.` : `“${cell}” was read as ${as}.`),
  kept: (cell: string) => `“${cell}” is kept in the jar’s note.`,
  notRead: (cell: string) => `“${cell}” was not read. It is asked about, or kept in the jar’s note.`,
  marks: (most: number | null) => `Marks${most === null ? '' : ` out of ${most}`}, kept in each jar’s note as they stand.`,
  leftOut: () => 'Left out.',
  later: () => 'Read once the question above is answered.',
  nothing: () => 'Nothing stands in it.',
}); // prettier-ignore

export const assumed = quoting({
  column: (heading: string, meaning: NoteColumn) => `The column “${heading}” was taken as ${meaningWithin(meaning)}, from what stands in it.`,
  goesOn: (row: number) => `This line goes on with what row ${row} says. It was read as a part of it.`,
  partsOfDay: (headings: readonly string[]) => `${list(headings.map((heading) => `“${heading}”`))} were read as one column: the day.`,
  monthBelow: (text: string) => `“${text}” was taken as the month of the days below it.`,
  records: () => 'Each thing stands beside its own name: a name that comes again was taken to begin the next jar.',
  sharedBelow: (name: string, value: string) => `“${name}: ${value}” was taken to hold for the rows below it.`,
  crosses: (headings: readonly string[], meaning: string) => `${list(headings.map((heading) => `“${heading}”`))} ${headings.length === 1 ? 'has' : 'have'} crosses below. ${headings.length === 1 ? 'It was' : 'They were'} read as one column: ${meaning.charAt(0).toLowerCase()}${meaning.slice(1)}.`,
  unitsBeside: (units: string, heading: string) => `The column “${units}” was taken as the units of “${heading}”.`,
  tableJoined: (text: string) => `“${text}” heads another table, which tells more of jars above. It was joined to their rows.`,
  wide: (labels: readonly string[]) => `Each line tells of several jars in columns of their own: it was read as the jars ${list(labels)}.`,
  long: (item: string, value: string) => `Each line tells one thing of a jar: “${item}” was read as headings and “${value}” as what stands below them.`,
  pastOrder: (order: string, today: string) => `All dates were read with the ${order}: the other way some would lie after today (${today}).`,
  jarColumn: (heading: string, seed: string) => `The column “${heading}” was taken as the name of the jar: “${seed}” among the seeds stands in it.`,
  clockColumn: (heading: string, what: string) => `The column “${heading}” was taken as ${what}: times of day stand in it.`,
  additionColumn: (heading: string) => `The column “${heading}” was taken as how much of that was added.`,
  moreEmpty: (rows: number) => `${rows} more lines are empty.`,
  notListed: (what: string, left: number) => `${left} more ${what} are not listed here: there are too many for one view.`,
  keptApart: (heading: string, what: string) => `The column “${heading}” was taken as ${what}. It is kept in each jar’s note.`,
  keptPrice: (heading: string) => `The column “${heading}” was taken as the price. It is kept in each jar’s note.`,
  hoursNotDays: (heading: string) => `“${heading}” speaks of days, but no jar is held so many. The figures were read as hours.`,
  noHeadings: () => 'The file has no headings. The columns were taken from what stands in them.',
  mark: (heading: string, most: number | null) => `The column “${heading}” holds marks${most === null ? '' : ` out of ${most}`}. They are kept in each jar’s note as they stand.`,
  secondColumn: (heading: string, meaning: NoteColumn) => `“${heading}” is a second column for ${meaningWithin(meaning)}. Its text is kept in each jar’s note.`,
  dayOrder: (order: string, example: string) => `All dates were read with the ${order}, because of “${example}”.`,
  year: (text: string, day: string) => `“${text}” has no year. It was taken as ${day}.`,
  seedYear: (text: string, label: string) => `The seed “${text}” has no year. It was taken as ${label}.`,
  serial: (text: string, day: string) => `“${text}” was taken as a spreadsheet’s day number: ${day}.`,
  ownLine: (text: string, label: string) => `“${text}” was taken as ${label}, of the same line.`,
  lines: (heading: string) => `The column “${heading}” tells the lines or batches apart: jars of the same day and letter are two.`,
  roughly: (text: string, { from, to }: DayRange) =>
    `“${text}” is known only roughly: between ${dayLabel(from, true)} and ${dayLabel(to, true)}.`,
  dayFromAbove: (day: string) => `No day stands here. It was taken from the row above: ${day}.`,
  dayFromLabel: (text: string, day: string) => `The day ${day} was taken from the label “${text}”.`,
  letterOf: (text: string, letter: string) => `“${text}” was taken as the jar ${letter}. The rest is kept in its note.`,
  batchFromAbove: (word: string) => `No batch stands here. It was taken from the row above: ${word}.`,
  severalJars: (text: string, letters: readonly string[]) => `“${text}” was taken as ${letters.length} jars (${list(letters)}), each with the figures of this row.`,
  amountOf: (text: string, seed: string) => `“${text}” was taken as the amount of ${seed}.`,
  milk: (text: string, name: string) => `“${text}” was taken as ${name}.`,
  sum: (text: string, value: string) => `“${text}” was taken as ${value} in all.`,
  percent: (text: string, ml: string, milk: string) => `“${text}” was taken as ${ml} mL: that share of the ${milk} mL of milk.`,
  aside: (text: string, seed: string, rest: string) => `“${text}” was taken as ${seed}. The words “${rest}” are kept in the note.`,
  part: (text: string, part: string, label: string) => `“${text}” was taken as the ${part} of ${label}.`,
  letter: (letter: string) => `No letter stands here. The jar was given the letter ${letter}.`,
  named: (name: string, letter: string) => `The name “${name}” is too long for a label. The jar was given the letter ${letter} and the name is in its note.`,
  spoons: (words: readonly string[], measure: string, ml: string, reason: string) => `${list(words.map((word) => `“${word}”`))} ${words.length === 1 ? 'was' : 'were'} read as the ${measure} (${ml} mL), because ${reason}.`,
  heldAt: (text: string, hours: string, degrees: string) => `“${text}” was taken as held for ${hours}${/\p{L}/u.test(hours) ? '' : ' h'} at ${degrees}.`,
  stages: (text: string, hours: string, degrees: string | null) => `“${text}” was taken as ${hours} h held in all${degrees === null ? '. Its parts differ in temperature, which is left blank; the text is kept in the note' : ` at ${degrees}`}.`,
  heldFromTo: (start: string, end: string, hours: string, nextDay: number | null) => `From “${start}” to “${end}” was taken as ${hours} h held${nextDay === null ? '' : nextDay === 0 ? ', ending on the same day' : ', ending on the next day'}.`,
  otherScale: (text: string, scale: string, heading: string) => `“${text}” under “${heading}” was read as ${scale}: no jar could be held at that in the other scale.`,
  scale: (text: string, scale: string) => `“${text}” has no scale. It was read as ${scale}.`,
  middle: (text: string, value: string) => `“${text}” is a range. Its middle was taken: ${value}.`,
  about: (text: string) => `“${text}” was taken as exact.`,
  level: (text: string) => `“${text}” was taken as a level measure.`,
  fluid: (text: string) => `“${text}” was taken as fluid ounces.`,
  unit: (text: string, unit: string) => `“${text}” has no unit. It was taken as ${unit}.`,
  pieces: (text: string) => `“${text}” was taken as a number of pieces.`,
  milkPlusSeed: (jars: number, rows: string) => `The final volume was taken as milk plus seed in ${jars} ${jars === 1 ? 'jar' : 'jars'} (${rows}).`,
  volume: () => 'The final volume in the notes was taken as measured.',
  sharedHold: (rows: string) => `Jars of one day with the same hours and temperature were taken to have shared one hold (${rows}).`,
  smallLetters: (letter: string) => `The letters of jars are written small here: “${letter}” is ${letter.toLowerCase()}. Either finds the jar.`,
  oneBatch: (days: number) => `Jars of one day were taken as one batch (${days} ${days === 1 ? 'day' : 'days'}).`,
  setWord: (text: string, word: string) => `“${text}” was taken as the set word ${word}.`,
  notSet: (text: string, ph: number | null) =>
    `“${text}” was taken as not set when the hold ended, and ${ph === null || ph > 4.6 ? 'no pH at or below 4.6 is told' : `it is not told that the pH of ${ph} was shown by a meter checked that day`}: neither food nor seed.`,
  spoiled: (text: string, signs: readonly string[]) => `“${text}” was taken as spoiled (${list(signs)}).`,
  powerCut: (text: string, hours: number | null) => `“${text}” was taken as a power cut during the hold${hours === null ? '' : ` (${hours} h)`}. If the jar had not set by then, spoilage organisms had time. When in doubt, discard.`,
  spoiledSaid: (text: string) => `“${text}” was taken as spoiled.`,
  lastBefore: (text: string, label: string) => `“${text}” was taken as ${label}, the one made last before, as you said.`,
  onlyJar: (text: string, label: string) => `“${text}” was taken as ${label}, the only jar it fits.`,
  previous: (text: string, label: string) => `“${text}” was taken as ${label}.`,
  seedWords: (text: string, label: string, rest: string) => `“${text}” was taken as ${label}. The words “${rest}” are kept in the note.`,
  ditto: (heading: string, text: string, value: string) => `“${text}” under “${heading}” was taken as the row above: “${value}”.`,
  sheetsCounted: (begins: readonly { readonly sheet: string; readonly line: number }[]) =>
    `Rows are counted on from sheet to sheet: ${begins.slice(0, 20).map(({ sheet, line }) => `the first of “${sheet}” is row ${line}`).join(', ')}.`,
  mergedCell: (heading: string, value: string) => `Nothing stands under “${heading}” here, nor a day: it was taken from the row above: “${value}”.`,
  split: (text: string, seeds: number) => `“${text}” was taken as the amount of all ${seeds} seeds together, in equal parts.`,
  product: (name: string, rows: readonly number[]) => `“${name}” was taken as a product to start from (${inRows(rows)}).`,
  wordOfPieces: (text: string, name: string, word: string) => `“${text}” is called “${name}” here: “${word}” tells what it comes as.`,
  onlyForm: (text: string, name: string, form: string) => `“${text}” was taken as ${name}, the only ${form === 'powder' ? 'powder' : form} named here or in the ledger.`,
  unnamed: (text: string) => `“${text}” names no product. It was taken as one called “unnamed product”.`,
  culture: (name: string, rows: readonly number[]) => `“${name}” was taken as a received culture whose past is unknown (${inRows(rows)}).`,
  jar: (name: string, rows: readonly number[]) => `“${name}” (${inRows(rows)}) is a jar, as you said. Mend ${rows.length === 1 ? 'the row' : 'these rows'}.`,
  mendedBlank: (heading: string, text: string) => `“${text}” under “${heading}” was left blank, as you said.`,
  newColumn: (heading: string) => `The column “${heading}” is new since these notes came in. It changes no row that is in the ledger already.`,
  columnGone: (heading: string) => `The column “${heading}” is gone since these notes came in. What it told stays in the ledger.`,
  repeated: (row: number) => `This row repeats row ${row} and was taken once.`,
  total: (text: string) => `“${text}” was taken as a line of totals and left out.`,
  comment: (text: string) => `“${text}” was taken as a remark that belongs to no jar and left out.`,
  otherTable: (text: string) => `“${text}” heads another table, without seeds of jars. Its lines were left out.`,
  line: (text: string) => `“${text}” belongs to another table and was left out.`,
  sideways: () => 'The table lies on its side: each of its columns was read as a row. “Row 3” is its third column.',
  titles: (text: string) => `“${text}” stands above the headings and was left out.`,
  section: (text: string) => `“${text}” was taken as the day of the rows below.`,
  keptChoices: (choices: readonly string[]) => `What you chose for an earlier file with these headings was taken over: ${more(choices, 12)}.`,
  keptMeaning: (heading: string, meaning: string) => `“${heading}” tells ${meaning}`,
  keptUnit: (heading: string, unit: string) => `“${heading}” is in ${unit}`,
  keptChoice: (question: string, answer: string) => `${question}: ${answer}`,
  sectionYear: (text: string) => `“${text}” was taken as the year of the rows below, where their days have none.`,
  unitsBelow: (text: string) => `The line below the headings (“${text}”) was taken as their units.`,
  headingsBelow: (text: string) => `The line “${text}” was taken as a second line of headings.`,
  headingsAgain: () => 'The headings are repeated here. The line was left out.',
  decimal: (text: string, value: string) => `“${text}” was read as ${value}.`,
  whey: (text: string, word: string) => `“${text}” was taken as ${word === 'none' ? 'no' : word} whey.`,
  tang: (text: string, word: string) => `“${text}” was taken as ${word === 'none' ? 'no' : word} tang.`,
  extraCells: (text: string) => `“${text}” stands beyond the last heading. It is kept in the note.`,
}); // prettier-ignore
