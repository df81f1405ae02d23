// How a jar came out, from the cells and remarks of its row: set word, pH, signs of spoilage, the gate at take-out.
import type { NoteColumn } from '../../contract';
import type { Outcome, SetWord } from '../../ledger/records';
import { SET_WORDS } from '../../ledger/jar-fields';
import { parsePh, plain, tidy } from '../../quantities/quantities';
import type { Cell, RowCells, RowFacts } from './row-cells';
import { assumed, problem, question } from '../notes-says';
import { readRemark } from '../../safety/remark-words';
import {
  isNothing,
  isUnknown,
  readSet,
  readTang,
  readWhey,
  readYesNo,
  saysNotSet,
} from '../cells/cell-words';

/** What is read of a jar's outcome, cell after cell. */
interface Seen {
  setWord: SetWord | null;
  setAtTakeOut: boolean | null;
  /** The words that tell how it set. */
  setText: string;
  texture: string[];
  ph: number | null;
  phHow: Outcome['phHow'];
  signs: Outcome['signs'];
  spoiledSaid: boolean;
  /** What of these two stands in words alone. */
  worded: { signs: Outcome['signs']; spoiledSaid: boolean };
  fibreDidThis: boolean;
  powerCut: true | null;
  powerCutHours: number | null;
}

/** The one answer to all rows whose words tell of spoilage. */
export const ALL_SUSPICIOUS = 'remark:suspicious';

/** The answer to a question of a row, in lower case. */
const answerTo = (id: string, { log, context }: RowCells): string | undefined =>
  context.answers[`${id}:${log.row}`]?.trim().toLowerCase();

/** How it set: one of the set words, else a question. */
function readSetCell(row: RowCells, seen: Seen): void {
  const { log } = row;
  const [cell] = row.of('set');
  if (!cell || isNothing(cell.text.replace(/^no$/i, 'no set'))) return;
  const text = cell.text.trim();
  seen.setText = text;
  const read = readSet(text);
  const given = answerTo('set', row);
  const answer = SET_WORDS.find((word) => word === given);
  if (answer === undefined && read.kind === 'word') {
    seen.setWord = read.word;
    if (read.exact) return;
    log.assume(assumed.setWord(text, read.word));
  } else if (answer !== undefined) seen.setWord = answer;
  else if (read.kind === 'not set' || given === 'not set') {
    seen.setAtTakeOut = false;
    seen.setWord = 'runny';
    log.assume(assumed.setWord(text, 'runny'));
  } else {
    if (read.kind === 'set') seen.setAtTakeOut = true;
    log.ask(
      'set',
      read.kind === 'pours' ? question.pours(text) : question.setUnknown(text),
      [...SET_WORDS, ...(read.kind === 'pours' ? ['not set'] : [])].map((word) => [word, word]),
    );
  }
  seen.texture.unshift(text);
}

function readPhCell(row: RowCells, seen: Seen): void {
  const { log } = row;
  const [cell] = row.of('ph');
  if (!cell || isNothing(cell.text)) return;
  const text = cell.text.trim();
  const { heading } = cell.column;
  const read = parsePh(text);
  if (read.ok) {
    seen.ph = read.ph;
    seen.phHow = read.how;
    if (read.range) log.assume(assumed.middle(text, `pH ${Number(read.ph.toFixed(3))}`));
    if (read.about || /^[<>≤≥]/.test(text)) log.assume(assumed.about(text));
  } else if (read.code === 'pH impossible') log.problem(problem.phImpossible(text), heading, cell.text);
  else {
    if (!isUnknown(text)) log.ask('ph', question.notRead(heading, text));
    log.keep(heading, text);
  }
}

/** Whey and tang in the words that records have; other words are kept beside them. */
function readWheyAndTang(row: RowCells): Pick<Outcome, 'whey' | 'tang'> {
  const { log } = row;
  const [wheyCell] = row.of('whey');
  const [tangCell] = row.of('tang');
  const whey = wheyCell ? readWhey(wheyCell.text) : null;
  const tang = tangCell ? readTang(tangCell.text) : null;
  if (wheyCell && plain(wheyCell.text) !== whey) {
    if (whey !== null) log.assume(assumed.whey(wheyCell.text.trim(), whey));
    log.keep(wheyCell.column.heading, wheyCell.text);
  }
  if (tangCell && plain(tangCell.text) !== tang) {
    if (tang !== null) log.assume(assumed.tang(tangCell.text.trim(), tang));
    log.keep(tangCell.column.heading, tangCell.text);
  }
  return { whey, tang };
}

/** Columns whose words are heard for signs of spoilage. */
const HEARD: readonly NoteColumn[] = ['set', 'texture', 'smell', 'colour', 'whey', 'tang', 'note', 'spoiled'];
/** Columns whose words become something else than words: what they say besides would be lost. */
const UNHEARD: readonly NoteColumn[] = ['milk', 'vessel', 'addition', 'addition amount', 'volume', 'amount'];
const COLOURS: readonly Outcome['signs'][number][] = ['pink', 'red', 'orange', 'black'];
/** Of what is stirred in or poured into a colour says nothing: black sesame, a red lid. */
const namesSpoilage = (text: string): boolean => {
  const { signs, spoiledSaid } = readRemark(text);
  return spoiledSaid || signs.some((sign) => !COLOURS.includes(sign));
};
const FINE_OR_NOT = [
  ['fine', 'It was fine'],
  ['spoiled', 'It was spoiled'],
] as const;

/** What one cell of words says of spoilage and power cuts. */
function hear(cell: Cell, row: RowCells, seen: Seen): void {
  const { log } = row;
  const { heading, meaning } = cell.column;
  const text = cell.text.trim();
  const yes = meaning === 'spoiled' ? readYesNo(text) : null;
  if (yes !== null) {
    seen.spoiledSaid ||= yes;
    if (yes) seen.worded.spoiledSaid = false;
    if (text.length > 1 && yes) log.assume(assumed.spoiledSaid(`${heading}: ${text}`));
    return;
  }
  // Under “smell”, “off” alone says that it smells off.
  const remark = readRemark(meaning === 'smell' ? `smells ${text}` : text);
  if (remark.asks.some(({ kind }) => kind === 'uncertain sign') && answerTo('sign', row) === 'fine') return;
  // Read as fine, or to be looked at: then it is no sign. What it says of warmth is heard all the same.
  const answered = answerTo('remark', row) ?? row.context.answers[ALL_SUSPICIOUS]?.trim().toLowerCase();
  const excused = answered === 'fine' || answered === 'look';
  const reported = excused ? [] : remark.signs.filter((sign) => !seen.signs.includes(sign));
  seen.signs.push(...reported);
  seen.worded.signs.push(...reported);
  if (reported.length > 0) log.assume(assumed.spoiled(text, reported));
  if (!excused && remark.spoiledSaid && !seen.spoiledSaid) {
    seen.spoiledSaid = true;
    seen.worded.spoiledSaid = true;
    if (reported.length === 0) log.assume(assumed.spoiledSaid(text));
  }
  if (!excused && remark.thrownOut && remark.signs.length === 0 && !remark.spoiledSaid) {
    const why = answerTo('thrown', row);
    if (why === undefined && !seen.spoiledSaid) seen.worded.spoiledSaid = true;
    if (why !== 'fine') seen.spoiledSaid = true;
    if (why === undefined) {
      log.ask('thrown', question.thrownOut(text), FINE_OR_NOT);
      log.assume(assumed.spoiledSaid(text));
    }
  }
  if (remark.powerCut && seen.powerCut === null) {
    seen.powerCut = true;
    seen.powerCutHours = remark.powerCut.hours;
    log.assume(assumed.powerCut(text, remark.powerCut.hours));
  }
  if (!excused) for (const { kind } of remark.asks) askOf(kind, text, remark.signs.length > 0, row, seen);
  if (meaning === 'spoiled') log.keep(heading, text);
}

/** Words that may mean spoilage: each with the id of its question and the question. */
const ASKED = {
  bubbles: ['bubbles', question.bubbles],
  slime: ['slime', question.slime],
  'colour of a thing': ['thing', question.thing],
} as const;

/** Asks about words that may mean spoilage, and hears the answer. @param signed a plain sign stands beside them */
function askOf(
  kind: ReturnType<typeof readRemark>['asks'][number]['kind'],
  text: string,
  signed: boolean,
  row: RowCells,
  seen: Seen,
): void {
  const { log } = row;
  if (kind === 'unsure') log.ask('unsure', question.unsure(text));
  else if (kind === 'uncertain sign') {
    if (answerTo('sign', row) === undefined) log.ask('sign', question.uncertainSign(text), FINE_OR_NOT);
  } else if (kind === 'fibre') {
    const given = answerTo('fibre', row);
    seen.fibreDidThis ||= given === 'fibre';
    if (given === 'spoiled') seen.spoiledSaid = true;
    if (given !== undefined || signed) return;
    log.ask('fibre', question.fibre(text), [
      ['fibre', 'The fibre did this'],
      ['spoiled', 'It was spoiled'],
      ['unknown', 'Not known'],
    ]);
  } else {
    const [id, asks] = ASKED[kind];
    const given = answerTo(id, row);
    if (given === 'spoiled') seen.spoiledSaid = true;
    if (given === undefined) log.ask(id, asks(text), FINE_OR_NOT);
  }
}

/** The gate at take-out: not set, whatever pH is told, for that a meter was checked that day stands in no notes (core/safety). */
function holdAgainstGate(row: RowCells, seen: Seen): void {
  for (const { text } of row.of('note')) {
    if (seen.setAtTakeOut !== null || (seen.setWord !== null && seen.setWord !== 'runny')) break;
    if (!saysNotSet(text)) continue;
    seen.setAtTakeOut = false;
    seen.setText = text.trim();
  }
  if (seen.setAtTakeOut !== false) return;
  if (seen.ph === null || seen.ph > 4.6) seen.signs.push('not set and no pH at or below 4.6');
  row.log.assume(assumed.notSet(seen.setText, seen.ph));
}

/** Texts as one line that a record can hold; of a longer one all of it is kept in the note. */
function lineOf(name: string, texts: readonly string[], { log }: RowCells): string | null {
  const text = texts.join('; ');
  if (text.length > 200) log.keep(name, text);
  return text === '' ? null : text.slice(0, 200);
}

/** What was seen of a jar, or null where nothing is told. Missing is unknown. */
export function readOutcome(row: RowCells): RowFacts['outcome'] {
  const told = (meaning: NoteColumn): string[] => row.of(meaning).map(({ text }) => text.trim());
  const seen: Seen = {
    setWord: null, setAtTakeOut: null, setText: '', texture: told('texture'), ph: null, phHow: null, signs: [], spoiledSaid: false,
    worded: { signs: [], spoiledSaid: false }, fibreDidThis: false, powerCut: null, powerCutHours: null,
  }; // prettier-ignore
  readSetCell(row, seen);
  readPhCell(row, seen);
  const words = readWheyAndTang(row);
  for (const cell of row.cells) {
    if (tidy(cell.text) === '') continue;
    if (HEARD.includes(cell.column.meaning)) hear(cell, row, seen);
    // In a column of milk or vessels it is read for something else: kept as words, it stops its jar until it is answered.
    else if (UNHEARD.includes(cell.column.meaning) && namesSpoilage(cell.text))
      row.log.keep(cell.column.heading, cell.text);
  }
  holdAgainstGate(row, seen);
  const texture = lineOf('texture', seen.texture, row);
  const [smell, colour] = [lineOf('smell', told('smell'), row), lineOf('colour', told('colour'), row)];
  const { texture: _words, setText: _text, worded, ...facts } = seen;
  const outcome = {
    ...NOTHING_SEEN,
    ...facts,
    ...words,
    texture,
    smell,
    colour,
    ...(worded.signs.length > 0 || worded.spoiledSaid ? { worded } : {}),
  } satisfies RowFacts['outcome'];
  const anything = [
    facts.setAtTakeOut,
    facts.setWord,
    facts.ph,
    facts.powerCut,
    texture,
    words.whey,
    words.tang,
    smell,
    colour,
  ];
  const some = anything.some((one) => one !== null);
  return some || facts.signs.length > 0 || facts.spoiledSaid || facts.fibreDidThis ? outcome : null;
}

/** Whether a question about words of spoilage in a row was answered by "It was fine". */
export const saidFine = (answers: Readonly<Record<string, string>>, row: number): boolean =>
  ['sign', 'thrown', 'slime'].some((id) => answers[`${id}:${row}`]?.trim().toLowerCase() === 'fine');

const NOTHING_SEEN: Omit<Outcome, 'jar'> = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: null, texture: null, whey: null, tang: null, smell: null, colour: null, ph: null, phHow: null,
  signs: [], bubbles: null, powerCut: null, powerCutHours: null, spoiledSaid: false, seenAt: null, openedDays: null,
  fibreDidThis: false, note: null,
}; // prettier-ignore
