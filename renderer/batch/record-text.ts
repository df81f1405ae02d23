// What stands in the cells of a recorded batch's sheet, and what typing in them comes to. Pure. A cell that was not typed in
// holds what is recorded; a jar that nobody looked at is noted once the gate is answered, for all that are well together or
// in its own column where it differs.
import { isSeenOut } from '../../core/ledger/seen-out';
import type { BatchReply, Input } from '../../core/contract';
import { JAR_FIELDS, OUTCOME_FIELDS, type FieldKind } from '../../core/ledger/jar-fields';
import { discardOf, takeOutGate, type GateVerdict } from '../../core/safety/take-out';
import { spoilagePassages, type SpoilagePassage } from '../../core/safety/remarks';
import { withMatesPowerCut } from '../../core/safety/hold-mates';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import { changedOnly } from '../parts/changed-only';
import { readField, writeField } from '../parts/field-text';
import type { Read, Reader, Writer } from '../parts/reading';
import { Taking, type Problems } from '../parts/taking';
import { additionEntries, milkEntry } from './batch-entry';
import { additionTexts, milkText } from './batch-repeat';
import { MILK_FIELDS, noAddition, type AdditionText } from './batch-text';
import {
  outcomeText,
  passagesAnswered,
  readOutcome,
  saysAnything,
  signsOf,
  type OutcomeFields,
  type OutcomeText,
} from './outcome-text';
import { gateText, HOLDS, readGate, type GateCells } from './gate-cells';

export type Jar = BatchReply['jars'][number];

/** Rows that are typed along, by what they are part of. */
export const SEEN_CELLS = ['setWord', 'ph', 'whey', 'smell', 'note', 'tang'] as const;
export const GATE_CELLS = ['setAtTakeOut', 'sour', 'signs', 'power'] as const;
export const ADDITION_CELLS = ['stirredIn', 'amount'] as const;
export type SeenCell = (typeof SEEN_CELLS)[number];
export type CellName =
  SeenCell | (typeof GATE_CELLS)[number] | (typeof ADDITION_CELLS)[number] | (typeof MILK_FIELDS)[number];
type Cells = Readonly<Record<CellName, string>>;

/** One jar, as typed. */
export interface TypedJar {
  readonly cells: Partial<Cells>;
  /** Answered by itself, in its own column. */
  readonly different: boolean;
  /** What was answered when its words seemed to tell of spoilage; asked anew once they change. */
  readonly answer: { readonly spoiled: true } | { readonly what: string } | null;
  /** Of a planned jar: it was swapped or left out. */
  readonly notMade?: boolean;
}
export interface RecordText {
  /** Sour and clean, curd holds, nothing seen, no power cut: said of all that are answered together. */
  readonly allWell: boolean;
  readonly phHow: OutcomeText['phHow'];
  readonly phChecked: OutcomeText['phChecked'];
  /** By the id of the jar. */
  readonly jars: Readonly<Record<string, TypedJar>>;
}

const untouched: TypedJar = { cells: {}, different: false, answer: null };
export const typedOf = (text: RecordText, jar: string): TypedJar => text.jars[jar] ?? untouched;
export const nothingTyped: RecordText = { allWell: false, phHow: '', phChecked: '', jars: {} };

/** The text with something else typed of one jar; an answer about its words counts no longer. */
export const withTyped = (text: RecordText, jar: string, part: Partial<TypedJar>): RecordText => ({
  ...text,
  jars: { ...text.jars, [jar]: { ...typedOf(text, jar), answer: null, ...part } },
});

/** A pH lies between 2 and 9, so that "43" can only be 4.3: two presses are enough. */
export const phTyped = (typed: string): string => typed.replace(/^([2-9])(\d{1,2})$/, '$1.$2');
/** "p" is spoonable, which begins as soft does. */
export const setTyped = (typed: string): string => (/^p$/i.test(typed.trim()) ? 'spoonable' : typed);

/** What typing in a cell comes to: how firm a curd is, typed where it is asked whether it is set, answers both, and stands in both. */
export const cellsTyped = (cell: CellName, value: string): Partial<Cells> => {
  const word = value.trim().toLowerCase();
  return cell === 'setAtTakeOut' && HOLDS.includes(word)
    ? { setAtTakeOut: value, setWord: word }
    : { [cell]: value };
};

/** What is recorded of a jar, as its cells show it. */
function recordedCells(record: Jar, writer: Writer): Cells {
  const { jar, additions, outcome } = record;
  const seen = SEEN_CELLS.map((cell) => [
    cell,
    writeField(OUTCOME_FIELDS[cell].kind, outcome?.[cell], writer),
  ]);
  const [first = noAddition] = additionTexts(additions, writer);
  return {
    ...(Object.fromEntries(seen) as Record<SeenCell, string>),
    ...gateText(outcomeText(outcome, null, writer)),
    ...milkText(jar, writer),
    stirredIn: first.name,
    amount: first.actual || first.planned,
  };
}

/** What one press says of each jar. */
const wellCells = ({ failed = false }: Asked, recorded: Pick<GateCells, 'power'>): GateCells => ({
  setAtTakeOut: 'yes',
  sour: 'yes',
  signs: 'none',
  power: failed ? recorded.power : 'no',
});
const isGateCell = (cell: CellName): cell is (typeof GATE_CELLS)[number] =>
  (GATE_CELLS as readonly string[]).includes(cell);

/** Whether that press speaks of a jar. */
const saidWell = (text: RecordText, { jar, outcome }: Jar, { together }: Asked): boolean =>
  !isSeenOut(outcome) && text.allWell && together.has(jar.id) && !typedOf(text, jar.id).different;

/** What stands in a cell: what was typed, what was said of all, or what is recorded. */
export function cellText(
  text: RecordText,
  record: Jar,
  asked: Asked,
  cell: CellName,
  writer: Writer,
): string {
  const recorded = recordedCells(record, writer);
  if (saidWell(text, record, asked) && isGateCell(cell)) return wellCells(asked, recorded)[cell];
  return typedOf(text, record.jar.id).cells[cell] ?? recorded[cell];
}

/** What each jar is answered with: alone in its column, together with others, or not before something else is known. */
export interface Asked {
  /** Jars that one press at the gate speaks of. */
  readonly together: ReadonlySet<string>;
  readonly mates: ReadonlyMap<string, MatesPowerCut | null>;
  /** It is noted that the warmth failed: then nothing is said of that by the one press, and what is noted stands. */
  readonly failed?: boolean;
}

interface JarRead {
  readonly changes: Input<'jar.correct'>['changes'] | null;
  readonly additions: Input<'addition.set'>['additions'] | null;
  readonly outcome: OutcomeFields | null;
  readonly readAs: 'fine' | null;
  /** Of what stands in its cells now. */
  readonly gate: GateVerdict;
  /** Its gate is answered, so that what was seen can be typed. */
  readonly answered: boolean;
  /** Words that may tell of spoilage and are not answered. */
  readonly asks: readonly SpoilagePassage[];
}

/** An outcome without the words that were answered before: they are not asked about again. */
export function unanswered(outcome: OutcomeFields, { remarks }: Pick<Jar, 'remarks'>): OutcomeFields {
  const answered = new Set(remarks.flatMap(({ readAs, text }) => (readAs === null ? [] : [text.trim()])));
  const open = (words: string | null): string | null =>
    words !== null && answered.has(words.trim()) ? null : words;
  return {
    ...outcome,
    colour: open(outcome.colour),
    smell: open(outcome.smell),
    texture: open(outcome.texture),
    note: open(outcome.note),
  };
}

/** The cells of what was seen over the answers of the gate. */
function typedOutcome(
  text: RecordText,
  record: Jar,
  cells: Cells,
  well: GateCells | null,
  taking: Taking,
  reader: Reader,
  writer: Writer,
): OutcomeText {
  const base = outcomeText(record.outcome, null, writer);
  const { cells: typed } = typedOf(text, record.jar.id);
  const at = (cell: CellName): string => `${record.jar.id}.${cell}`;
  const { setAtTakeOut, sour, signs, power } = cells;
  const gate: GateCells = well ?? { setAtTakeOut, sour, signs, power };
  const taken = (cell: SeenCell): string => {
    const kind: FieldKind = OUTCOME_FIELDS[cell].kind;
    const read: Read<unknown> = readField(kind, cells[cell], reader);
    taking.take(at(cell), read);
    // A word in any case is the word; what can't be read stays out of the judgement, and is said.
    return typeof kind === 'string' ? cells[cell] : read.ok ? String(read.value ?? '') : '';
  };
  const seen = Object.fromEntries(SEEN_CELLS.map((cell) => [cell, taken(cell)]));
  const newPh = typed.ph !== undefined || !isSeenOut(record.outcome);
  return {
    ...base,
    ...(well !== null || GATE_CELLS.some((cell) => typed[cell] !== undefined)
      ? readGate(gate, base, reader, (cell, sentence) => taking.say(at(cell), sentence))
      : {}),
    ...seen,
    ...(newPh && text.phHow !== '' ? { phHow: text.phHow, phChecked: text.phChecked } : {}),
  };
}

/** What the first addition's cells come to; null where nothing of it was typed. */
function typedAdditions(
  record: Jar,
  cells: Cells,
  typed: Partial<Cells>,
  taking: Taking,
  reader: Reader,
  writer: Writer,
) {
  if (ADDITION_CELLS.every((cell) => typed[cell] === undefined)) return null;
  const [first = noAddition, ...rest] = additionTexts(record.additions, writer);
  const planned = record.jar.state === 'planned' || (first.actual === '' && first.planned !== '');
  const now: AdditionText = {
    ...first,
    name: cells.stirredIn,
    [planned ? 'planned' : 'actual']: cells.amount,
  };
  const path = (field: string): string =>
    `${record.jar.id}.${field.endsWith('.name') ? 'stirredIn' : 'amount'}`;
  const entries = additionEntries([now, ...rest], path, reader, taking, record.jar.state === 'planned');
  const before = additionEntries([first, ...rest], 'x', reader, new Taking(), record.jar.state === 'planned');
  return JSON.stringify(entries) === JSON.stringify(before) ? null : entries;
}

/** What the cells of one jar come to. */
export function readJar(
  text: RecordText,
  record: Jar,
  asked: Asked,
  reader: Reader,
  writer: Writer,
  taking: Taking,
): JarRead {
  const { jar } = record;
  const { cells: typed, different, answer } = typedOf(text, jar.id);
  const recorded = recordedCells(record, writer);
  const cells: Cells = { ...recorded, ...typed };
  const well = saidWell(text, record, asked);
  const now = typedOutcome(
    text,
    record,
    cells,
    well ? wellCells(asked, recorded) : null,
    taking,
    reader,
    writer,
  );
  const { outcome: first, looked } = readOutcome(now, reader);
  const found = discardOf(first) !== null ? [] : spoilagePassages(unanswered(first, record));
  const settled = answer === null ? now : passagesAnswered(now, found, answer);
  const { outcome } = answer === null ? { outcome: first } : readOutcome(settled, reader);
  const before = milkEntry(milkText(jar, writer), 'x', reader, new Taking());
  const milk = { ...milkText(jar, writer), ...pick(cells) };
  const changes = changedOnly(
    before,
    milkEntry(milk, (field) => `${jar.id}.${field}`, reader, taking),
  );
  const seenTyped = [...SEEN_CELLS, ...GATE_CELLS].some(
    (cell) => typed[cell] !== undefined && typed[cell] !== recorded[cell],
  );
  const ownGate = [cells.setAtTakeOut, cells.sour, cells.signs].every((one) => one !== '');
  const answered = well || isSeenOut(record.outcome) || (different && ownGate);
  // A jar that nobody looked at is noted once something of its gate is answered: what was typed before waits for that.
  const begun = isSeenOut(record.outcome) || GATE_CELLS.some((cell) => (typed[cell] ?? '') !== '');
  const noted = (well || (seenTyped && begun)) && saysAnything(outcome);
  return {
    changes,
    additions: typedAdditions(record, cells, typed, taking, reader, writer),
    outcome: noted ? outcome : null,
    readAs: noted && settled.wordsFine ? 'fine' : null,
    gate: takeOutGate(
      withMatesPowerCut(outcome, asked.mates.get(jar.id) ?? null),
      looked || signsOf(now).length > 0,
      record.additions.map(({ name }) => name),
    ),
    answered,
    asks: noted && answer === null ? found : [],
  };
}

const pick = (cells: Cells) => Object.fromEntries(MILK_FIELDS.map((field) => [field, cells[field]]));

type Sheet = Input<'jars.correct'>['jars'];

/**
 * What of the planned jars is told when they are made: what was typed over the plan is what went in, beside the plan. Null where
 * none of them is made.
 */
export function madeOf(
  text: RecordText,
  records: readonly Jar[],
  sent: Sheet,
): Pick<Input<'batch.made'>, 'notMade' | 'jars'> | null {
  const planned = records.filter(({ jar }) => jar.state === 'planned');
  const swapped = planned.filter(({ jar }) => typedOf(text, jar.id).notMade === true);
  if (swapped.length === planned.length) return null;
  const made = planned.filter((record) => !swapped.includes(record));
  return {
    notMade: swapped.map(({ jar }) => jar.id),
    jars: sent.flatMap(({ jar, changes, additions }) => {
      const record = made.find((one) => one.jar.id === jar);
      return record ? [{ jar, changes, additions: additions && wentIn(record, additions) }] : [];
    }),
  };
}

/** The amounts of a plan that was typed over: what was planned stays beside what went in. */
const wentIn = ({ additions: before }: Jar, now: NonNullable<Sheet[number]['additions']>) =>
  now.map((one) => {
    const was = before.find(({ name }) => name.toLowerCase() === one.name.toLowerCase())?.planned ?? null;
    return JSON.stringify(was) === JSON.stringify(one.planned)
      ? one
      : { ...one, planned: was, actual: one.planned };
  });

export interface SheetRead {
  readonly jars: Sheet;
  readonly problems: Problems;
  /** The first jar whose words may tell of spoilage, unanswered. */
  readonly odd: { readonly jar: string; readonly asks: readonly SpoilagePassage[] } | null;
  /** Something recorded is corrected, so that a reason may be given. */
  readonly corrects: boolean;
}

/** Everything that is recorded, and what is wrong, by jar and cell: 'ID.ph'. */
export function readSheet(
  text: RecordText,
  records: readonly Jar[],
  asked: Asked,
  reader: Reader,
  writer: Writer,
): SheetRead {
  const taking = new Taking();
  const read = records.map((record) => ({
    record,
    ...readJar(text, record, asked, reader, writer, taking),
  }));
  const jars = read.flatMap(({ record, changes, additions, outcome, readAs }) =>
    changes === null && additions === null && outcome === null
      ? []
      : [{ jar: record.jar.id, changes, additions, outcome, readAs }],
  );
  const waiting = records.find(
    ({ jar, outcome }) =>
      !isSeenOut(outcome) && SEEN_CELLS.some((cell) => (typedOf(text, jar.id).cells[cell] ?? '') !== ''),
  );
  if (waiting && jars.length === 0) {
    const { different } = typedOf(text, waiting.jar.id);
    taking.say(
      `${waiting.jar.id}.${different ? 'setAtTakeOut' : 'setWord'}`,
      'Look and smell first, and answer that above.',
    );
  }
  const odd = read.find(({ asks }) => asks.length > 0);
  return {
    jars,
    problems: taking.problems,
    odd: odd ? { jar: odd.record.jar.id, asks: odd.asks } : null,
    corrects: read.some(
      ({ record, changes, additions, outcome }) =>
        changes !== null || additions !== null || (outcome !== null && isSeenOut(record.outcome)),
    ),
  };
}

/** What stays typed once the rest is recorded: jars that were marked different and not answered yet. Null where nothing does. */
export function leftOver(text: RecordText, sent: Sheet): RecordText | null {
  const recorded = new Set(sent.map(({ jar }) => jar));
  const kept = Object.entries(text.jars).filter(
    ([jar, { cells, different }]) => !recorded.has(jar) && (different || Object.keys(cells).length > 0),
  );
  return kept.length === 0 ? null : { ...nothingTyped, jars: Object.fromEntries(kept) };
}

/** The kind of a cell, for what is understood and filled in while it is typed. */
export const kindOf = (cell: CellName): FieldKind =>
  cell === 'stirredIn' || cell === 'signs' || cell === 'power'
    ? 'line'
    : cell === 'amount'
      ? 'amount'
      : cell in JAR_FIELDS
        ? JAR_FIELDS[cell as keyof typeof JAR_FIELDS].kind
        : OUTCOME_FIELDS[cell as keyof typeof OUTCOME_FIELDS].kind;
