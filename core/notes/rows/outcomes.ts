// How a jar came out, from the cells and remarks of its row: set word, pH, signs of spoilage, the gate at take-out.
import type { NoteColumn } from '../../contract';
import type { Outcome, SetWord } from '../../ledger/records';
import { SET_WORDS } from '../../ledger/records';
import { spoilageDenied, spoilagePassages } from '../../safety/remarks';
import { parsePh, plain, tidy } from '../../quantities';
import type { RowCells, RowFacts } from './row-cells';
import { assumed, problem, question } from '../says';
import { readRemark } from '../../safety/remark-words';
import { isNothing, isUnknown, readSet, readTang, readWhey, readYesNo, saysNotSet } from '../cells/words';

/** What was seen of a jar, or null where nothing is told. Missing is unknown. */
export function readOutcome(row: RowCells): RowFacts['outcome'] {
  const { log } = row;
  const { answers } = row.context;
  let setWord: SetWord | null = null;
  let setAtTakeOut: boolean | null = null;
  const texture: string[] = row.of('texture').map(({ text }) => text.trim());
  const [setCell] = row.of('set');
  let setText = '';
  if (setCell && !isNothing(setCell.text.replace(/^no$/i, 'no set'))) {
    setText = setCell.text.trim();
    const read = readSet(setText);
    const answer = SET_WORDS.find((word) => word === answers[`set:${log.row}`]?.trim().toLowerCase());
    if (answer) {
      setWord = answer;
      texture.unshift(setText);
    } else if (read.kind === 'word') {
      setWord = read.word;
      if (!read.exact) {
        log.assume(assumed.setWord(setText, read.word));
        texture.unshift(setText);
      }
    } else if (read.kind === 'set') {
      setAtTakeOut = true;
      texture.unshift(setText);
      log.ask(
        'set',
        question.setUnknown(setText),
        SET_WORDS.map((word) => [word, word]),
      );
    } else if (read.kind === 'not set') {
      setAtTakeOut = false;
      setWord = 'runny';
      texture.unshift(setText);
      log.assume(assumed.setWord(setText, 'runny'));
    } else {
      texture.unshift(setText);
      log.ask(
        'set',
        question.setUnknown(setText),
        SET_WORDS.map((word) => [word, word]),
      );
    }
  }

  let ph: number | null = null;
  let phHow: Outcome['phHow'] = null;
  const [phCell] = row.of('ph');
  if (phCell && !isNothing(phCell.text)) {
    const text = phCell.text.trim();
    const read = parsePh(text);
    if (read.ok) {
      ({ ph } = read);
      phHow = read.how;
      if (read.range) log.assume(assumed.middle(text, `pH ${Number(read.ph.toFixed(3))}`));
      if (read.about || /^[<>≤≥]/.test(text)) log.assume(assumed.about(text));
    } else if (read.code === 'pH impossible')
      log.problem(problem.phImpossible(text), phCell.column.heading, phCell.text);
    else {
      if (!isUnknown(text)) log.ask('ph', question.notRead(phCell.column.heading, text));
      log.keep(phCell.column.heading, text);
    }
  }

  const whey = row.of('whey')[0];
  const readWheyAs = whey ? readWhey(whey.text) : null;
  if (whey && readWheyAs === null) log.keep(whey.column.heading, whey.text);
  else if (whey && readWheyAs !== null && plain(whey.text) !== readWheyAs) {
    log.assume(assumed.whey(whey.text.trim(), readWheyAs));
    log.keep(whey.column.heading, whey.text);
  }
  const tang = row.of('tang')[0];
  const readTangAs = tang ? readTang(tang.text) : null;
  if (tang && plain(tang.text) !== readTangAs) {
    if (readTangAs !== null) log.assume(assumed.tang(tang.text.trim(), readTangAs));
    log.keep(tang.column.heading, tang.text);
  }

  const signs: Outcome['signs'] = [];
  let spoiledSaid = false;
  let fibreDidThis = false;
  let powerCut: true | null = null;
  let powerCutHours: number | null = null;
  const said: NoteColumn[] = ['set', 'texture', 'smell', 'colour', 'whey', 'tang', 'note', 'spoiled'];
  for (const cell of row.cells) {
    if (!said.includes(cell.column.meaning) || tidy(cell.text) === '') continue;
    const text = cell.text.trim();
    if (cell.column.meaning === 'spoiled') {
      const answer = readYesNo(text);
      if (answer !== null) {
        spoiledSaid ||= answer;
        if (text.length > 1 && answer) log.assume(assumed.spoiledSaid(`${cell.column.heading}: ${text}`));
        continue;
      }
    }
    // Under “smell”, “off” alone says that it smells off.
    const remark = readRemark(cell.column.meaning === 'smell' ? `smells ${text}` : text);
    const reported = remark.signs.filter((sign) => !signs.includes(sign));
    const answer = answers[`sign:${log.row}`]?.trim().toLowerCase();
    if (remark.asks.some((one) => one.kind === 'uncertain sign') && answer === 'fine') continue;
    signs.push(...reported);
    if (reported.length > 0) log.assume(assumed.spoiled(text, reported));
    if (remark.spoiledSaid && !spoiledSaid) {
      spoiledSaid = true;
      if (reported.length === 0) log.assume(assumed.spoiledSaid(text));
    }
    const fineOrNot = [
      ['fine', 'It was fine'],
      ['spoiled', 'It was spoiled'],
    ] as const;
    if (remark.thrownOut && remark.signs.length === 0 && !remark.spoiledSaid) {
      const why = answers[`thrown:${log.row}`]?.trim().toLowerCase();
      if (why !== 'fine') spoiledSaid = true;
      if (why === undefined) {
        log.ask('thrown', question.thrownOut(text), fineOrNot);
        log.assume(assumed.spoiledSaid(text));
      }
    }
    if (remark.powerCut && powerCut === null) {
      powerCut = true;
      powerCutHours = remark.powerCut.hours;
      log.assume(assumed.powerCut(text, powerCutHours));
    }
    for (const ask of remark.asks) {
      if (ask.kind === 'bubbles' || ask.kind === 'colour of a thing' || ask.kind === 'slime') {
        const id = { bubbles: 'bubbles', slime: 'slime', 'colour of a thing': 'thing' }[ask.kind];
        const given = answers[`${id}:${log.row}`]?.trim().toLowerCase();
        if (given === 'spoiled') spoiledSaid = true;
        if (given === undefined)
          log.ask(
            id,
            { bubbles: question.bubbles, slime: question.slime, 'colour of a thing': question.thing }[
              ask.kind
            ](text),
            fineOrNot,
          );
      } else if (ask.kind === 'fibre') {
        const given = answers[`fibre:${log.row}`]?.trim().toLowerCase();
        fibreDidThis ||= given === 'fibre';
        if (given === 'spoiled') spoiledSaid = true;
        if (given === undefined && remark.signs.length === 0) {
          log.ask('fibre', question.fibre(text), [
            ['fibre', 'The fibre did this'],
            ['spoiled', 'It was spoiled'],
            ['unknown', 'Not known'],
          ]);
        }
      } else if (ask.kind === 'uncertain sign') {
        if (answer === undefined) log.ask('sign', question.uncertainSign(text), fineOrNot);
      } else log.ask('unsure', question.unsure(text));
    }
    if (cell.column.meaning === 'spoiled') log.keep(cell.column.heading, text);
  }
  for (const { text } of row.of('note')) {
    if (setAtTakeOut === null && (setWord === null || setWord === 'runny') && saysNotSet(text)) {
      setAtTakeOut = false;
      setText = text.trim();
    }
  }
  // The gate at take-out: not set, and no pH at or below 4.6 shown.
  if (setAtTakeOut === false) {
    if (ph === null || ph > 4.6) {
      signs.push('not set and no pH at or below 4.6');
      log.assume(assumed.notSet(setText));
    } else log.assume(assumed.notSetSour(setText));
  }

  const line = (meaning: NoteColumn): string | null => {
    const text = row
      .of(meaning)
      .map((cell) => cell.text.trim())
      .join('; ');
    if (text.length > 200) log.keep(meaning, text);
    return text === '' ? null : text.slice(0, 200);
  };
  const textureText = texture.join('; ');
  if (textureText.length > 200) log.keep('texture', textureText);
  const words = { texture: textureText === '' ? null : textureText.slice(0, 200), smell: line('smell'), colour: line('colour') }; // prettier-ignore
  // Answered to be fine: the outcome says so itself, so that its words are no doubt later on.
  const passages =
    saidFine(answers, log.row) && signs.length === 0 && !spoiledSaid
      ? spoilagePassages({ ...words, note: null })
      : [];
  const outcome = {
    earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
    setAtTakeOut, setWord, ...words,
    whey: readWheyAs, tang: readTangAs, ph, phHow,
    signs, bubbles: null, powerCut, powerCutHours, spoiledSaid, seenAt: null, openedDays: null, fibreDidThis,
    note: passages.length === 0 ? null : spoilageDenied(null, passages, SAID_FINE),
  } satisfies Omit<Outcome, 'jar'>; // prettier-ignore
  const seen = setAtTakeOut !== null || setWord !== null || ph !== null || signs.length > 0 || spoiledSaid || fibreDidThis || powerCut !== null ||
    outcome.texture !== null || outcome.whey !== null || outcome.tang !== null || outcome.smell !== null || outcome.colour !== null; // prettier-ignore
  return seen ? outcome : null;
}

const SAID_FINE = 'said to be fine when the notes were brought in';

/** Whether a question about words of spoilage in a row was answered by "It was fine". */
const saidFine = (answers: Readonly<Record<string, string>>, row: number): boolean =>
  ['sign', 'thrown', 'slime'].some((id) => answers[`${id}:${row}`]?.trim().toLowerCase() === 'fine');

const NOTHING_SEEN: Omit<Outcome, 'jar'> = {
  earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
  setAtTakeOut: null, setWord: null, texture: null, whey: null, tang: null, smell: null, colour: null, ph: null, phHow: null,
  signs: [], bubbles: null, powerCut: null, powerCutHours: null, spoiledSaid: false, seenAt: null, openedDays: null,
  fibreDidThis: false, note: null,
}; // prettier-ignore

/**
 * The outcome with the answer "It was fine" to words of spoilage that stand in the jar's note, so that they are no doubt
 * later on; an outcome with nothing but that answer where there was none.
 */
export function withAnswersToNote(
  outcome: Omit<Outcome, 'jar'> | null,
  note: string,
  answers: Readonly<Record<string, string>>,
  row: number,
): Omit<Outcome, 'jar'> | null {
  const there = outcome ?? NOTHING_SEEN;
  if (!saidFine(answers, row) || there.signs.length > 0 || there.spoiledSaid) return outcome;
  const passages = spoilagePassages({ colour: null, smell: null, texture: null, note }, there.note);
  return passages.length === 0
    ? outcome
    : { ...there, note: spoilageDenied(there.note, passages, SAID_FINE) };
}
