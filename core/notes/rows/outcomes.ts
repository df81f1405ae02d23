// How a jar came out, from the cells and remarks of its row: set word, pH, signs of spoilage, the gate at take-out.
import type { Outcome, SetWord } from '../../ledger/records';
import { SET_WORDS } from '../../ledger/jar-fields';
import { isNothing, parsePh, plain, tidy } from '../../quantities/quantities';
import type { Cell, RowCells, RowFacts } from './row-cells';
import { hasTrait } from '../meanings';
import { assumed, problem, question } from '../notes-says';
import { readRemark } from '../../safety/remark-words';
import { readYesNo } from '../cells/cell-words';
import { leftOf, thingsSaid } from '../../text/clauses';
import {
  besideNotSet,
  besideTang,
  besideWhey,
  readSet,
  readTang,
  readWhey,
  saysNotSet,
  saysSour,
  saysWhey,
} from '../../text/look-words';

/** What is read of a jar's outcome, cell after cell. */
interface Seen {
  setWord: SetWord | null;
  setAtTakeOut: boolean | null;
  /** The words that tell how it set. */
  setText: string;
  /** They, where they go beside the texture. */
  setKept: string[];
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

/** What a jar that pours may have been. */
const POURING = ['runny', 'soft', 'not set'] as const;

/** Whether a thing that is said tells of whey or sourness alone: "no whey" beside "firm". */
const besideSet = (said: string): boolean => saysWhey(plain(said)) || saysSour(plain(said));

/** How it set: one of the set words, else a question. What the cell says of whey and sourness besides is no part of it. */
function readSetCell(row: RowCells, seen: Seen): void {
  const { log } = row;
  const [cell] = row.of('set');
  if (!cell || isNothing(cell.text.replace(/^no$/i, 'no set'))) return;
  const own = thingsSaid(cell.text.trim())
    .filter((said) => !besideSet(said))
    .join(', ');
  const text = own.trim() === '' ? cell.text.trim() : own;
  seen.setText = text;
  const read = readSet(text);
  const given = row.answer('set');
  const answer = SET_WORDS.find((word) => word === given);
  if (answer === undefined && read.kind === 'word') {
    seen.setWord = read.word;
    if (!read.exact) log.assume(assumed.setWord(text, read.word));
  } else if (answer !== undefined) seen.setWord = answer;
  else if (read.kind === 'not set' || given === 'not set') {
    seen.setAtTakeOut = false;
    seen.setWord = 'runny';
    log.assume(assumed.setWord(text, 'runny'));
  } else {
    if (read.kind === 'set') seen.setAtTakeOut = true;
    // Of what was thrown out nobody is asked how it set.
    else if (read.kind !== 'pours' && (namesSpoilage(text) || readRemark(text).thrownOut))
      return void seen.setKept.push(text);
    log.ask(
      'set',
      read.kind === 'pours' ? question.pours(text) : question.setUnknown(text),
      (read.kind === 'pours' ? POURING : SET_WORDS).map((word) => [word, word]),
    );
  }
  // What the records say themselves needs no words beside it.
  const said = leftOf(cell.text, besideSet);
  const left =
    seen.setAtTakeOut === false
      ? besideNotSet(said)
      : read.kind === 'word' && read.exact && text === said
        ? ''
        : said;
  if (left !== '') seen.setKept.push(left);
}

/** The first thing that some cells say of whey or of sourness alone, as the word that records have for it. */
function saidAmong<Word extends string>(
  { cells, log }: { readonly cells: readonly Cell[]; readonly log: RowCells['log'] },
  says: (said: string) => boolean,
  read: (text: string) => Word | null,
  take: (text: string, word: string) => string,
): Word | null {
  const said = cells
    .flatMap(({ text }) => thingsSaid(text.trim()))
    .find((one) => says(plain(one)))
    ?.trim();
  const word = said === undefined ? null : read(said);
  if (said !== undefined && word !== null && plain(said) !== word) log.assume(take(said, word));
  return word;
}

function readPhCell(row: RowCells, seen: Seen): void {
  const cell = row.told('ph');
  if (!cell) return;
  const text = cell.text.trim();
  const read = parsePh(text);
  if (read.ok) {
    seen.ph = read.ph;
    seen.phHow = read.how;
    row.sayFigure(
      text,
      { ...read, about: read.about || /^[<>≤≥]/.test(text) },
      `pH ${Number(read.ph.toFixed(3))}`,
    );
  } else if (read.code === 'pH impossible') row.log.problem(problem.phImpossible(text), cell);
  else row.figureUnread('ph', cell);
}

/** Whey or tang in the words that records have; what is said beside them is kept. */
function readWord<Word extends string>(
  { of, log }: { of: Cell | undefined; log: RowCells['log'] },
  read: (text: string) => Word | null,
  beside: (text: string) => string,
  said: (text: string, word: string) => string,
): Word | null {
  const word = of ? read(of.text) : null;
  if (!of || plain(of.text) === word) return word;
  if (word !== null) log.assume(said(of.text.trim(), word));
  const left = word === null ? of.text : beside(of.text);
  if (left !== '') log.keep({ ...of, text: left });
  return word;
}

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
  if (remark.asks.some(({ kind }) => kind === 'uncertain sign') && row.answer('sign') === 'fine') return;
  // Read as fine, or to be looked at: then it is no sign. What it says of warmth is heard all the same.
  const answered = row.answer('remark') ?? row.context.answers[ALL_SUSPICIOUS]?.trim().toLowerCase();
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
    const why = row.answer('thrown');
    if (why === undefined && !seen.spoiledSaid) seen.worded.spoiledSaid = true;
    if (why !== 'fine') seen.spoiledSaid = true;
    if (why === undefined && answered !== 'discard') {
      log.ask('thrown', question.thrownOut(text), FINE_OR_NOT);
      log.assume(assumed.spoiledSaid(text));
    }
  }
  if (remark.powerCut && seen.powerCut === null) {
    seen.powerCut = true;
    seen.powerCutHours = remark.powerCut.hours;
    log.assume(assumed.powerCut(text, remark.powerCut.hours));
  }
  // Whoever said that it is to be discarded is asked nothing more of these words.
  if (!excused && answered !== 'discard')
    for (const { kind } of remark.asks) askOf(kind, text, remark.signs.length > 0, row, seen);
  if (meaning === 'spoiled') log.keep(cell);
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
  // What befell a jar is asked about with its remark.
  if (kind === 'mishap') return;
  if (kind === 'unsure') log.ask('unsure', question.unsure(text));
  else if (kind === 'uncertain sign') {
    if (row.answer('sign') === undefined) log.ask('sign', question.uncertainSign(text), FINE_OR_NOT);
  } else if (kind === 'fibre') {
    const given = row.answer('fibre');
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
    const given = row.answer(id);
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

/** What was seen of a jar, or null where nothing is told. Missing is unknown. */
export function readOutcome(row: RowCells): RowFacts['outcome'] {
  const { log } = row;
  const seen: Seen = {
    setWord: null, setAtTakeOut: null, setText: '', setKept: [], ph: null, phHow: null, signs: [], spoiledSaid: false,
    worded: { signs: [], spoiledSaid: false }, fibreDidThis: false, powerCut: null, powerCutHours: null,
  }; // prettier-ignore
  readSetCell(row, seen);
  readPhCell(row, seen);
  const words = {
    whey:
      readWord({ of: row.of('whey')[0], log }, readWhey, besideWhey, assumed.whey) ??
      saidAmong({ cells: [...row.of('set'), ...row.of('note')], log }, saysWhey, readWhey, assumed.whey),
    tang:
      readWord({ of: row.of('tang')[0], log }, readTang, besideTang, assumed.tang) ??
      saidAmong({ cells: row.of('set'), log }, saysSour, readTang, assumed.tang),
  };
  for (const cell of row.cells) {
    if (tidy(cell.text) === '') continue;
    if (hasTrait(cell.column.meaning, 'prose')) hear(cell, row, seen);
    // In a column of milk or vessels it is read for something else: kept as words, it stops its jar until it is answered.
    else if (hasTrait(cell.column.meaning, 'stirred') && namesSpoilage(cell.text)) log.keep(cell);
  }
  holdAgainstGate(row, seen);
  const { setKept, setText: _text, worded, ...facts } = seen;
  const told = {
    ...words,
    texture: row.line('texture', setKept),
    smell: row.line('smell'),
    colour: row.line('colour'),
  };
  const { setAtTakeOut, setWord, ph, powerCut, signs, spoiledSaid, fibreDidThis } = facts;
  const some = [setAtTakeOut, setWord, ph, powerCut, ...Object.values(told)].some((one) => one !== null);
  if (!some && signs.length === 0 && !spoiledSaid && !fibreDidThis) return null;
  const apart = worded.signs.length > 0 || worded.spoiledSaid ? { worded } : {};
  return { ...NOTHING_SEEN, ...facts, ...told, ...apart };
}

/** What a question about words of spoilage in a row was answered by; null: not yet. */
export const saidOfSpoilage = (
  answers: Readonly<Record<string, string>>,
  row: number,
): 'fine' | 'spoiled' | null => {
  const said = ['sign', 'thrown', 'slime'].map((id) => answers[`${id}:${row}`]?.trim().toLowerCase());
  return said.includes('spoiled') ? 'spoiled' : said.includes('fine') ? 'fine' : null;
};

const NOTHING_SEEN: Omit<Outcome, 'jar'> = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: null, texture: null, whey: null, tang: null, smell: null, colour: null, ph: null, phHow: null,
  signs: [], bubbles: null, powerCut: null, powerCutHours: null, spoiledSaid: false, seenAt: null, openedDays: null,
  fibreDidThis: false, note: null,
}; // prettier-ignore
