// One row's cells → what is known of its jar apart from day, label and seeds. Whatever can't be read goes to the note.
import type { Amount, Temperature } from '../../ledger/basics';
import type { Jar } from '../../ledger/records';
import {
  parseHours,
  parseTemperature,
  plain,
  tidy,
  type ParsedTemperature,
  type TemperatureScale,
} from '../../quantities/quantities';
import { readAdditions, readMilk } from './ingredients';
import { isNotes } from '../layout/headings';
import { hoursBetween, readMoment, readSpan } from '../../text/moments';
import { readOutcome } from './outcomes';
import { RowCells, type Cell, type CellContext, type RowFacts, type RowLog } from './row-cells';
import { assumed, problem, question } from '../notes-says';

const STAGES = /\s*(?:,\s+(?:then|dann|and|und)?|;|\+|→|->|\b(?:then|dann|and|und)\b)\s*/iu;
const STAGE = /^(.*?\d\s?(?:h|hrs?|hours?|std\.?|stunden))\s*(?:@|at|bei|,)?\s*(\d.*)$/iu;

/** "8 h at 38, then 20 h at 36": the hours of all parts, and the temperature where it is one; else null. */
function readStages(
  text: string,
  { decimal, scale }: CellContext['conventions'],
): { hours: number; degrees: string | null } | null {
  const parts = tidy(text)
    .split(STAGES)
    .map((part) => STAGE.exec(part));
  if (parts.length < 2) return null;
  const read = parts.flatMap((part) => {
    const [hours, degrees] = [
      parseHours(part?.[1] ?? '', decimal),
      parseTemperature(part?.[2] ?? '', { decimal, scale }),
    ];
    return hours.ok && isWarm(degrees) && degrees.ok
      ? [{ hours: hours.hours, celsius: degrees.temperature.value, text: part?.[2] ?? '' }]
      : [];
  });
  const [first] = read;
  if (read.length < parts.length || !first) return null;
  const same = read.every(({ celsius }) => Math.abs(celsius - first.celsius) < 0.05);
  return {
    hours: Number(read.reduce((sum, { hours }) => sum + hours, 0).toFixed(4)),
    degrees: same ? first.text : null,
  };
}

/** "36h @ 100F", or "100/36" under "Temp/Time": hours and degrees in one cell, where the other has no cell of its own. */
function splitHolds(cells: readonly Cell[], log: RowLog, { conventions }: CellContext): readonly Cell[] {
  const told = cells.filter(
    ({ column, text }) => ['hours', 'temperature'].includes(column.meaning) && tidy(text) !== '',
  );
  const [cell] = told;
  const as = (meaning: 'hours' | 'temperature', text: string): Cell[] =>
    cell && text !== '' ? [{ column: { ...cell.column, meaning, hoursEach: 1 }, text }] : [];
  const stages = cell && told.length === 1 ? readStages(cell.text, conventions) : null;
  if (cell && stages) {
    log.assume(assumed.stages(cell.text.trim(), String(stages.hours), stages.degrees));
    if (stages.degrees === null) log.keep(cell);
    return cells.flatMap((one) =>
      one === cell
        ? [...as('hours', `${stages.hours} h`), ...as('temperature', stages.degrees ?? '')]
        : [one],
    );
  }
  const parts =
    cell &&
    /^(.+?)\s*(?:@|,\s|;|\/|(?<=\d\s?°?\s?[CF])\s(?=\d)|(?<=\d\s?(?:h|hrs?|hours|std))\s(?=\d)|\s(?:at|bei|à|a|bij|vid|ved|w)\s)\s*(.+)$/iu.exec(
      tidy(cell.text),
    );
  if (!cell || !parts || told.length !== 1) return cells;
  const { decimal, scale } = conventions;
  const texts = [parts[1] ?? '', parts[2] ?? ''] as const;
  const heading = plain(cell.column.heading);
  const [atHours, atDegrees] = [
    heading.search(
      /time|hour|hrs|\bh\b|zeit|dauer|stunden|duree|heures|tiempo|horas|tempo\b|ore\b|uren|tijd/,
    ),
    heading.search(/temp(?!o|s\b)|warm|°|degree|grad|[@/]\s?[cf]\b/),
  ];
  const at = /\d\s*@\s*\d/.test(cell.text);
  const hoursIn = (text: string, first: boolean): boolean =>
    parseHours(text, decimal).ok &&
    (/\p{L}/u.test(text) ||
      (first && at) ||
      (atHours >= 0 && atDegrees >= 0 && atHours < atDegrees === first));
  const degreesIn = (text: string): boolean => isWarm(parseTemperature(text, { decimal, scale }));
  const hoursFirst = hoursIn(texts[0], true) && degreesIn(texts[1]);
  if (!hoursFirst && !(hoursIn(texts[1], false) && degreesIn(texts[0]))) return cells;
  const [hours, degrees] = hoursFirst ? texts : [texts[1], texts[0]];
  log.assume(assumed.heldAt(cell.text.trim(), hours, degrees));
  return cells.flatMap((one) =>
    one === cell ? [...as('hours', hours), ...as('temperature', degrees)] : [one],
  );
}

/** Hours held; never a set time. */
function readHours(row: RowCells): number | null {
  const cell = row.told('hours');
  const { decimal, order } = row.context.conventions;
  if (!cell || readSpan(cell.text, order) !== null) return null;
  const text = cell.text.trim();
  // "36 h (power cut 2 h)": what stands in brackets is kept.
  const aside = /^(.*\d.*?)\s*\([^()]*\p{L}{3}[^()]*\)$/u.exec(tidy(text))?.[1];
  const whole = parseHours(loosely(text), decimal);
  const parsed = whole.ok || aside === undefined ? whole : parseHours(aside, decimal);
  if (parsed.ok && !whole.ok) row.log.keep(cell);
  const each = /^[\d\s.,/~-]+$/.test(tidy(text)) ? cell.column.hoursEach : 1;
  const hours = parsed.ok ? parsed.hours * each : null;
  if (parsed.ok ? !(parsed.hours > 0) || (hours ?? 0) > 1000 : parsed.code === 'hours below zero') {
    row.log.problem(problem.hoursImpossible(parsed.ok ? text : cell.text), cell);
    return null;
  }
  if (!parsed.ok || hours === null) {
    row.figureUnread('hours', cell);
    return null;
  }
  if (each !== 1) row.log.assume(assumed.unit(text, each > 1 ? 'days' : 'minutes'));
  row.sayFigure(text, parsed, `${hours} h`);
  if (!(hours < 3 || hours > 120) || !leftBlank(row, 'hours', question.long(text)))
    return Number(hours.toFixed(4));
  row.log.keep(cell);
  return null;
}

/** Hours from when the hold began to when it ended, where no hours are told; the times are kept in the note. */
function hoursFromTimes(row: RowCells, madeOn: string | null): number | null {
  const { log } = row;
  const { order } = row.context.conventions;
  const told = row.of('start');
  // A day with its time of day is when the hold began, where no column of its own says so.
  const timed = row.of('date').filter(({ text }) => (readMoment(text, order)?.minutes ?? null) !== null);
  const [ends, hoursCells] = [row.of('end'), row.of('hours')];
  // "19:00 – 7:00" in one cell.
  const spanned = hoursCells.filter(({ text }) => readSpan(text, order) !== null).slice(0, 1);
  const span = spanned[0] ? readSpan(spanned[0].text, order) : null;
  for (const cell of [...told, ...timed, ...ends, ...spanned]) log.keep(cell);
  if (madeOn === null || (span === null && (ends.length === 0 || hoursCells.length > 0))) return null;
  const said = (cells: readonly Cell[]): string => cells.map(({ text }) => text.trim()).join(' ');
  const [began, ended] = span ? [span.from, span.to] : [said(told.length > 0 ? told : timed), said(ends)];
  const [from, to] = [readMoment(began, order), readMoment(ended, order)];
  const held = from && to ? hoursBetween(from, to, madeOn) : null;
  if (held === null || held.hours > 240) {
    log.ask('times', began === '' ? question.endAlone(ended) : question.timesNotRead(began, ended));
    return null;
  }
  const hours = Number(held.hours.toFixed(4));
  log.assume(assumed.heldFromTo(began, ended, String(hours), held.nextDay));
  const odd = hours < 3 || hours > 120;
  return odd && leftBlank(row, 'hours', question.long(`${began} – ${ended}`)) ? null : hours;
}

/** "36+", "100ish", "38 ± 1 °C": as good as said, which "~" says to whoever reads figures. */
const loosely = (text: string): string =>
  text
    .trim()
    .replace(/^(.*\d)\s?(?:\+|-?ish)$/, '~$1')
    .replace(/^(\d+(?:[.,]\d+)?.*?)\s?(?:±|\+\/?-)\s?\d+(?:[.,]\d+)?(.*)$/, '~$1$2');

/** A warmth (°C) in which no such culture is usually held (common practice, no source). */
export const isOddWarmth = (celsius: number): boolean => celsius < 25 || celsius > 45;

/** Asks whether an unusual figure is right. @returns whether it was answered that it is not, so that nothing is known */
function leftBlank(row: RowCells, id: 'hours' | 'temperature', sentence: string): boolean {
  const answer = row.answer(id);
  if (answer !== 'right' && answer !== 'blank')
    row.log.ask(id, sentence, [
      ['right', 'It is right'],
      ['blank', 'Leave it blank'],
    ]);
  return answer === 'blank';
}

/** Whether a jar could be held at it: a bare number that fits no other way is read in the scale where it does. */
const isWarm = (parsed: ParsedTemperature): boolean =>
  parsed.ok && parsed.temperature.value >= 25 && parsed.temperature.value <= 48;

/** A temperature, and the other scale where the column's own can't be meant: "100" under "°C". */
function inEitherScale(
  text: string,
  { scale, decimal }: CellContext['conventions'],
): { parsed: ParsedTemperature; other: TemperatureScale | null } {
  const parsed = parseTemperature(text, { scale, decimal });
  if (scale === undefined || (parsed.ok && (parsed.scaleAssumed === null || isWarm(parsed))))
    return { parsed, other: null };
  const other = scale === '°C' ? '°F' : '°C';
  const turned = parseTemperature(text, { scale: other, decimal });
  return turned.ok && turned.scaleAssumed !== null && isWarm(turned)
    ? { parsed: turned, other }
    : { parsed, other: null };
}

/** "37.5/99.5": one warmth in both scales; the first of them with its scale. */
function inBothScales(text: string): string {
  const [, one = '', other = ''] = /^(\d+(?:[.,]\d+)?)\s*[/|(]\s*(\d+(?:[.,]\d+)?)\)?$/.exec(text) ?? [];
  const [first, second] = [one, other].map((figure) => Number(figure.replace(',', '.')));
  const same = (celsius = Number.NaN, fahrenheit = Number.NaN): boolean =>
    Math.abs(celsius * 1.8 + 32 - fahrenheit) <= 1;
  return same(first, second) ? `${one} °C` : same(second, first) ? `${one} °F` : text;
}

/** The temperature of the hold. */
function readTemperature(row: RowCells): Temperature | null {
  const cell = row.told('temperature');
  if (!cell) return null;
  const { log } = row;
  const text = cell.text.trim();
  const { conventions } = row.context;
  const { parsed, other } = inEitherScale(inBothScales(loosely(text)), conventions);
  const value = parsed.ok ? parsed.temperature.value : Number.NaN;
  if (parsed.ok ? value < 0 || value > 60 : parsed.code === 'temperature impossible') {
    log.problem(problem.temperatureImpossible(text), cell);
    return null;
  }
  if (!parsed.ok) {
    row.figureUnread('temperature', cell);
    return null;
  }
  if (other !== null) log.assume(assumed.otherScale(text, other, cell.column.heading));
  else if (parsed.scaleAssumed && conventions.scale === undefined)
    log.assume(assumed.scale(text, parsed.scaleAssumed));
  row.sayFigure(text, parsed, `${Number(value.toFixed(2))} °C`);
  // A bare figure is read again without its heading: its scale goes with it.
  const { scaleAssumed, temperature } = parsed;
  const typed = scaleAssumed && temperature.typed && `${temperature.typed} ${scaleAssumed}`;
  const told = typed ? { ...temperature, typed } : temperature;
  if (!isOddWarmth(value) || !leftBlank(row, 'temperature', question.warm(text))) return told;
  log.keep(cell);
  return null;
}

/** Columns that a jar has one of: what a further one tells is kept. */
const ONCE = ['hours', 'temperature', 'milk', 'milk amount', 'set', 'ph', 'volume', 'whey', 'tang'] as const;

/** Final volume and vessel; prices, further columns and notes are kept as text. */
function readRest(row: RowCells): Pick<RowFacts, 'volume' | 'vessel'> {
  const { log } = row;
  const cell = row.told('volume');
  const volume = cell ? row.amount(cell, true) : null;
  if (cell && volume !== null && volume.unit !== 'mL') log.keep(cell);
  for (const price of row.of('price')) log.keep(price);
  const notes = row.of('note');
  const own = notes.find(({ column }) => column.marks === null && isNotes(column.heading));
  for (const note of notes)
    if (note === own) log.ownNote.push(note.text.trim());
    else log.keep(note);
  for (const further of ONCE.flatMap((meaning) => row.of(meaning).slice(1))) log.keep(further);
  return { volume, vessel: row.line('vessel') };
}

/** Reads a row's cells; problems, questions, assumptions and what is kept go to the log. */
export function readFacts(
  cells: readonly Cell[],
  log: RowLog,
  context: CellContext,
  madeOn: string | null,
): RowFacts {
  const row = new RowCells(splitHolds(cells, log, context), log, context);
  const { milk, milkAmount } = readMilk(row);
  const told = readHours(row);
  // Also beside hours that are told: when it began and ended is kept.
  const hours = hoursFromTimes(row, madeOn) ?? told;
  return {
    hours,
    temperature: readTemperature(row),
    milk,
    milkAmount,
    additions: readAdditions(row),
    outcome: readOutcome(row),
    ...readRest(row),
  };
}

/** Milk and additions in the spelling that their names have first. @param names by plain name; new ones are put in */
export function spelledAlike(facts: RowFacts, names: Map<string, string>): RowFacts {
  const spelled = (name: string): string => {
    const first = names.get(plain(name)) ?? name;
    names.set(plain(name), first);
    return first;
  };
  const milk = facts.milk === null ? null : spelled(facts.milk);
  return {
    ...facts,
    milk,
    additions: facts.additions.map(({ name, actual }) => ({ name: spelled(name), actual })),
  };
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
