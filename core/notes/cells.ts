// One row's cells → what is known of its jar apart from day, label and seeds. Whatever can't be read goes to the note.
import type { Amount, Temperature } from '../ledger/basics';
import type { Jar, Outcome, SetWord } from '../ledger/records';
import { SET_WORDS } from '../ledger/records';
import {
  findAmounts, parseAmount, parseHours, parsePh, parseTemperature, plain, tidy,
  type AmountAssumption,
} from '../quantities'; // prettier-ignore
import type { NoteColumn } from '../contract';
import type { Conventions, Question } from './conventions';
import type { Column } from './layout';
import { assumed, problem, question } from './says';
import { isNothing, milkName, readRemark, readSet, readTang, readWhey, readYesNo, saysNotSet } from './words';

export interface RowProblem {
  readonly row: number;
  readonly sentence: string;
  readonly column: string | null;
  readonly cell: string | null;
}

/** What is collected while a row is read. */
export class RowLog {
  readonly problems: RowProblem[] = [];
  readonly questions: Question[] = [];
  readonly assumptions: { row: number | null; sentence: string }[] = [];
  readonly note: string[] = [];
  constructor(readonly row: number) {}
  problem(sentence: string, column: string | null = null, cell: string | null = null): void {
    this.problems.push({ row: this.row, sentence, column, cell });
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
  keep(heading: string, text: string): void {
    this.note.push(`${heading}: ${text.trim()}`);
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
  readonly outcome: Omit<Outcome, 'jar'> | null;
}

export interface CellContext {
  readonly conventions: Conventions;
  readonly answers: Readonly<Record<string, string>>;
  /** First spelling of an addition or a milk, by its plain name. */
  readonly names: Map<string, string>;
  /** Unit taken for bare numbers of a column, by heading. */
  readonly bareUnits: ReadonlyMap<string, string>;
}

/** Says what had to be assumed to read an amount. */
export function sayAmount(
  log: RowLog,
  text: string,
  amount: Amount,
  assumptions: readonly AmountAssumption[],
): void {
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

function spelled(names: Map<string, string>, name: string): string {
  const key = plain(name);
  const first = names.get(key) ?? name;
  names.set(key, first);
  return first;
}

interface Cell {
  readonly column: Column;
  readonly text: string;
}

class FactReader {
  constructor(
    readonly cells: readonly Cell[],
    readonly log: RowLog,
    readonly context: CellContext,
  ) {}

  of(meaning: NoteColumn): Cell[] {
    return this.cells.filter(({ column, text }) => column.meaning === meaning && tidy(text) !== '');
  }

  hours(): number | null {
    const [cell] = this.of('hours');
    if (!cell || isNothing(cell.text)) return null;
    const { decimal } = this.context.conventions;
    const parsed = parseHours(cell.text, decimal);
    if (!parsed.ok) {
      if (parsed.code === 'hours below zero')
        this.log.problem(problem.hoursImpossible(cell.text), cell.column.heading, cell.text);
      else {
        this.log.ask('hours', question.notRead(cell.column.heading, cell.text.trim()));
        this.log.keep(cell.column.heading, cell.text);
      }
      return null;
    }
    const days =
      /^(?:d|days?|tage?|jours?|dias?|giorni|dagen|dagar|dage|dni)$/i.test(cell.column.unit ?? '') ||
      /^(?:days|tage|jours|dias|giorni|dagen|dagar|dage|dni)\b/i.test(plain(cell.column.heading));
    const bare = /^[\d\s.,/~-]+$/.test(tidy(cell.text));
    const hours = days && bare ? parsed.hours * 24 : parsed.hours;
    if (!(hours > 0) || hours > 1000) {
      this.log.problem(problem.hoursImpossible(cell.text.trim()), cell.column.heading, cell.text);
      return null;
    }
    if (days && bare) this.log.assume(assumed.unit(cell.text.trim(), 'days'));
    if (parsed.range) this.log.assume(assumed.middle(cell.text.trim(), `${hours} h`));
    if (parsed.about) this.log.assume(assumed.about(cell.text.trim()));
    if (hours < 3 || hours > 120) this.log.ask('hours', question.long(cell.text.trim()));
    return Number(hours.toFixed(4));
  }

  temperature(): Temperature | null {
    const [cell] = this.of('temperature');
    if (!cell || isNothing(cell.text)) return null;
    const text = cell.text.trim();
    const parsed = parseTemperature(text, {
      scale: this.context.conventions.scale,
      decimal: this.context.conventions.decimal,
    });
    if (!parsed.ok) {
      if (parsed.code === 'temperature impossible')
        this.log.problem(problem.temperatureImpossible(text), cell.column.heading, cell.text);
      else {
        this.log.ask('temperature', question.notRead(cell.column.heading, text));
        this.log.keep(cell.column.heading, text);
      }
      return null;
    }
    const { value } = parsed.temperature;
    if (value < 0 || value > 75) {
      this.log.problem(problem.temperatureImpossible(text), cell.column.heading, cell.text);
      return null;
    }
    if (parsed.scaleAssumed) this.log.assume(assumed.scale(text, parsed.scaleAssumed));
    if (parsed.range) this.log.assume(assumed.middle(text, `${Number(value.toFixed(2))} °C`));
    if (parsed.about) this.log.assume(assumed.about(text));
    if (value < 18 || value > 55) this.log.ask('temperature', question.warm(text));
    return parsed.temperature;
  }

  /** A cell of one amount, with the unit of its heading; null with the text kept where it can't be read. */
  amount(cell: Cell, liquid: boolean): Amount | null {
    const text = cell.text.trim();
    const bareUnit = this.context.bareUnits.get(cell.column.heading) ?? cell.column.unit ?? undefined;
    const parsed = parseAmount(
      text,
      { spoons: this.context.conventions.spoons, decimal: this.context.conventions.decimal, bareUnit },
      liquid,
    );
    if (parsed.ok && !tooMuch(parsed.amount)) {
      // A unit that stands in the heading is written, not assumed.
      sayAmount(
        this.log,
        text,
        parsed.amount,
        parsed.assumed.filter((one) => one.kind !== 'unit' || cell.column.unit === null),
      );
      return parsed.amount;
    }
    if (parsed.ok || parsed.code === 'amount below zero' || parsed.code === 'amount too large') {
      this.log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
      return null;
    }
    this.log.ask('amount', question.amountNotRead(cell.column.heading, text));
    this.log.keep(cell.column.heading, text);
    return null;
  }

  milk(): { milk: string | null; milkAmount: Amount | null } {
    let milk: string | null = null;
    let milkAmount: Amount | null = null;
    const [cell] = this.of('milk');
    if (cell && !isNothing(cell.text)) {
      const text = cell.text.trim();
      if (isNegative(text)) this.log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
      const found = findAmounts(
        text,
        { spoons: this.context.conventions.spoons, decimal: this.context.conventions.decimal },
        true,
      ).filter(({ amount }) => amount.unit === 'mL' || amount.unit === 'g');
      const [first] = found;
      if (/^[\d\s.,/½¼¾⅓⅔]+$/.test(text)) {
        const number = Number(tidy(text).replace(',', '.'));
        if (cell.column.unit !== null || this.context.bareUnits.has(cell.column.heading))
          milkAmount = this.amount(cell, true);
        else if (number >= 100) {
          milkAmount = { value: number, unit: 'mL', typed: text };
          this.log.assume(assumed.unit(text, 'mL'));
        } else {
          this.log.ask('milk', question.amountNotRead(cell.column.heading, text));
          this.log.keep(cell.column.heading, text);
        }
      } else if (first && found.length === 1) {
        const clean = tidy(text);
        const name = `${clean.slice(0, first.start)} ${clean.slice(first.end)}`
          .replace(/^[\s,;:()-]+|[\s,;:()-]+$/g, '')
          .replace(/^(?:of|de|d'|di|van|von|av|af)\s+/i, '')
          .replace(/[()]/g, ' ')
          .replace(/\s+/g, ' ')
          .trim();
        if (tooMuch(first.amount))
          this.log.problem(problem.amountImpossible(text), cell.column.heading, cell.text);
        milkAmount = { ...first.amount, typed: first.text.slice(0, 200) };
        sayAmount(this.log, first.text, first.amount, first.assumed);
        milk = name === '' ? null : (milkName(name) ?? spelled(this.context.names, name));
      } else {
        milk = milkName(text) ?? spelled(this.context.names, tidy(text));
        if (found.length > 1) this.log.ask('milk', question.amountNotRead(cell.column.heading, text));
      }
    }
    const [own] = this.of('milk amount');
    if (own && !isNothing(own.text)) milkAmount = this.amount(own, true) ?? milkAmount;
    return { milk: milk?.slice(0, 200) ?? null, milkAmount };
  }

  additions(): RowFacts['additions'] {
    const found: { name: string; actual: Amount | null }[] = [];
    const { conventions, names } = this.context;
    for (const cell of this.of('addition')) {
      if (isNothing(cell.text) || tidy(cell.text) === '0') continue;
      if (cell.column.additionName !== null) {
        const actual = this.amount(cell, false);
        if (actual && actual.value > 0)
          found.push({ name: spelled(names, cell.column.additionName), actual });
        continue;
      }
      if (isNegative(cell.text)) {
        this.log.problem(problem.amountImpossible(cell.text.trim()), cell.column.heading, cell.text);
        continue;
      }
      const pieces = cell.text.split(/\s*(?:\+|;|&|\n|,\s+|\s(?:and|und|et|y|e|og|och|i|plus)\s)\s*/i);
      for (const piece of pieces) {
        const clean = tidy(piece);
        if (clean === '') continue;
        const amounts = findAmounts(piece, { spoons: conventions.spoons, decimal: conventions.decimal });
        let name = clean;
        for (const amount of amounts.toReversed())
          name = `${name.slice(0, amount.start)} ${name.slice(amount.end)}`;
        name = name
          .replace(/[()]/g, ' ')
          .replace(/^[\s,:x×-]*(?:(?:of|de|d'|di|van|von|av|af|added)\s+)?|[\s,:-]+$/gi, '')
          .replace(/\s+/g, ' ')
          .trim();
        const [first] = amounts;
        if (first && tooMuch(first.amount))
          this.log.problem(problem.amountImpossible(piece.trim()), cell.column.heading, cell.text);
        if (first) sayAmount(this.log, first.text, first.amount, first.assumed);
        const actual = first ? { ...first.amount, typed: first.text.slice(0, 200) } : null;
        if (amounts.length > 1) {
          this.log.ask('addition', question.amountNotRead(cell.column.heading, piece.trim()));
          this.log.keep(cell.column.heading, piece);
        }
        const last = found.at(-1);
        if (name === '' && last && last.actual === null) last.actual = actual;
        else if (name === '') {
          this.log.ask('addition', question.notRead(cell.column.heading, piece.trim()));
          this.log.keep(cell.column.heading, piece);
        } else found.push({ name: spelled(names, name).slice(0, 200), actual });
      }
    }
    const amounts = this.of('addition amount').filter(({ text }) => !isNothing(text));
    for (const [at, cell] of amounts.entries()) {
      const target =
        found.length === amounts.length ? found[at] : found.find(({ actual }) => actual === null);
      const read = this.amount(cell, false);
      if (target && target.actual === null) target.actual = read;
      else if (read !== null) this.log.keep(cell.column.heading, cell.text);
    }
    return found;
  }

  outcome(): RowFacts['outcome'] {
    const { log } = this;
    const answers = this.context.answers;
    let setWord: SetWord | null = null;
    let setAtTakeOut: boolean | null = null;
    const texture: string[] = this.of('texture').map(({ text }) => text.trim());
    const [setCell] = this.of('set');
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
    const [phCell] = this.of('ph');
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
        log.ask('ph', question.notRead(phCell.column.heading, text));
        log.keep(phCell.column.heading, text);
      }
    }

    const whey = this.of('whey')[0];
    const readWheyAs = whey ? readWhey(whey.text) : null;
    if (whey && readWheyAs === null) log.keep(whey.column.heading, whey.text);
    else if (whey && readWheyAs !== null && plain(whey.text) !== readWheyAs) {
      log.assume(assumed.whey(whey.text.trim(), readWheyAs));
      log.keep(whey.column.heading, whey.text);
    }
    const tang = this.of('tang')[0];
    const readTangAs = tang ? readTang(tang.text) : null;
    if (tang && plain(tang.text) !== readTangAs) {
      if (readTangAs !== null) log.assume(assumed.tang(tang.text.trim(), readTangAs));
      log.keep(tang.column.heading, tang.text);
    }

    const signs: Outcome['signs'] = [];
    let spoiledSaid = false;
    let fibreDidThis = false;
    const said: NoteColumn[] = ['set', 'texture', 'smell', 'colour', 'whey', 'tang', 'note', 'spoiled'];
    for (const cell of this.cells) {
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
      const remark = readRemark(text);
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
      for (const ask of remark.asks) {
        if (ask.kind === 'bubbles' || ask.kind === 'colour of a thing') {
          const id = ask.kind === 'bubbles' ? 'bubbles' : 'thing';
          const given = answers[`${id}:${log.row}`]?.trim().toLowerCase();
          if (given === 'spoiled') spoiledSaid = true;
          if (given === undefined)
            log.ask(id, ask.kind === 'bubbles' ? question.bubbles(text) : question.thing(text), fineOrNot);
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
    for (const { text } of this.of('note')) {
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
      const text = this.of(meaning)
        .map((cell) => cell.text.trim())
        .join('; ');
      if (text.length > 200) log.keep(meaning, text);
      return text === '' ? null : text.slice(0, 200);
    };
    const textureText = texture.join('; ');
    if (textureText.length > 200) log.keep('texture', textureText);
    const outcome = {
      earlyCheckHours: null, earlySet: null, earlyPh: null, earlySour: null, setAfterHours: null, setByHours: null,
      setAtTakeOut, setWord, texture: textureText === '' ? null : textureText.slice(0, 200),
      whey: readWheyAs, tang: readTangAs, smell: line('smell'), colour: line('colour'), ph, phHow,
      signs, spoiledSaid, seenAt: null, openedDays: null, fibreDidThis, note: null,
    } satisfies Omit<Outcome, 'jar'>; // prettier-ignore
    const seen = setAtTakeOut !== null || setWord !== null || ph !== null || signs.length > 0 || spoiledSaid || fibreDidThis ||
      outcome.texture !== null || outcome.whey !== null || outcome.tang !== null || outcome.smell !== null || outcome.colour !== null; // prettier-ignore
    return seen ? outcome : null;
  }

  rest(): { volume: Amount | null; vessel: string | null } {
    const [volumeCell] = this.of('volume');
    const volume = volumeCell && !isNothing(volumeCell.text) ? this.amount(volumeCell, true) : null;
    const vessel = this.of('vessel')
      .map(({ text }) => text.trim())
      .join('; ');
    if (vessel.length > 200) this.log.keep('vessel', vessel);
    for (const cell of this.of('price')) this.log.keep(cell.column.heading, cell.text);
    for (const cell of this.of('note')) {
      if (cell.column.known && cell === this.of('note')[0]) this.log.note.unshift(cell.text.trim());
      else this.log.keep(cell.column.heading, cell.text);
    }
    for (const meaning of ['hours', 'temperature', 'milk', 'set', 'ph'] as const) {
      for (const cell of this.of(meaning).slice(1)) this.log.keep(cell.column.heading, cell.text);
    }
    return { volume, vessel: vessel === '' ? null : vessel.slice(0, 200) };
  }
}

/** Reads a row's cells; problems, questions, assumptions and what is kept go to the log. */
export function readFacts(cells: readonly Cell[], log: RowLog, context: CellContext): RowFacts {
  const reader = new FactReader(cells, log, context);
  const { milk, milkAmount } = reader.milk();
  const facts = {
    hours: reader.hours(),
    temperature: reader.temperature(),
    milk,
    milkAmount,
    additions: reader.additions(),
    outcome: reader.outcome(),
    ...reader.rest(),
  };
  return facts;
}

/** Final volume: as told, else milk and the seed's volume together, where both are known in mL. */
export function finalVolume(
  facts: RowFacts,
  seeds: readonly (Amount | null)[],
): Pick<Jar, 'finalVolume' | 'finalVolumeKnown'> {
  if (facts.volume?.unit === 'mL') return { finalVolume: facts.volume, finalVolumeKnown: 'measured' };
  if (facts.milkAmount?.unit !== 'mL' || facts.milkAmount.value <= 0)
    return { finalVolume: null, finalVolumeKnown: null };
  let value = facts.milkAmount.value;
  for (const seed of seeds) {
    if (seed === null) return { finalVolume: null, finalVolumeKnown: null };
    // Pieces and counts bring next to no volume.
    if (seed.unit === 'mL') value += seed.value;
    else if (seed.unit === 'g') return { finalVolume: null, finalVolumeKnown: null };
  }
  return {
    finalVolume: { value: Number(value.toPrecision(15)), unit: 'mL', typed: null },
    finalVolumeKnown: 'milk plus seed',
  };
}

export type { Cell };
