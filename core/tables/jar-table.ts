// One row for each jar, in words that the reader of notes (core/notes) takes in as the same family: its day and name, what
// seeded it and how much, what went in, how it was held and how it came out.
import type { DayRange } from '../quantities/day-ranges';
import type { Amount } from '../ledger/basics';
import type { LabelParts } from '../lineage/labels';
import type { Addition, Hold, Jar, Outcome, Seeding } from '../ledger/records';
import type { TableCell } from './table-text';

/** What seeded a jar. A jar whose day is not known can be named by nobody: it is told as a culture of unknown past. */
export type TableSeed = Pick<Seeding, 'part' | 'amount'> &
  (
    | { readonly jar: LabelParts }
    | { readonly product: string }
    | { readonly culture: string; readonly generations: number | null }
  );

export interface TableJar extends LabelParts {
  /** Where no single day is known: the days between which it was made. */
  readonly madeBetween: DayRange | null;
  readonly jar: Pick<Jar, 'vessel' | 'finalVolume' | 'milk' | 'milkAmount' | 'note'>;
  readonly additions: readonly Pick<Addition, 'name' | 'actual'>[];
  readonly seeds: readonly TableSeed[];
  readonly hold: Pick<Hold, 'hours' | 'startedAt' | 'endedAt' | 'planned'> | null;
  readonly outcome: Omit<Outcome, 'jar'> | null;
  /** Remarks about it, its batch, its hold and what was kept of it, also those that its outcome has as smell or texture. */
  readonly remarks: readonly string[];
  /** One of them was read as *discard*. */
  readonly readAsDiscard: boolean;
}

/** An amount as everyone reads it: its value with a point, and its unit. */
const amountCell = (amount: Amount | null): string =>
  amount === null ? '' : `${Number(amount.value.toPrecision(15))} ${amount.unit}`;

/** A jar's name with its whole day: "2026-03-14 plain b", "about 2026-01-15 a". The same text names it where it seeds another. */
const nameCell = ({ madeOn, about, word, letter }: LabelParts): string =>
  [madeOn ?? (about ? `about ${about}` : undefined), word?.trim(), letter]
    .filter((part) => part !== undefined && part !== '')
    .join(' ');

function seedCell(seed: TableSeed): string {
  const name =
    'jar' in seed ? `${seed.part === 'whey' || seed.part === 'curd' ? `${seed.part} of ` : ''}${nameCell(seed.jar)}`
    : 'product' in seed ? `Product “${seed.product}”`
    : `Culture “${seed.culture}”${seed.generations === null ? '' : ` of generation ${seed.generations}`}`; // prettier-ignore
  return seed.amount === null ? name : `${name} (${amountCell(seed.amount)})`;
}

const HOUR_MS = 3_600_000;

/** Hours held: as told, else from when it began to when it ended. */
function hoursOf(hold: TableJar['hold']): number | null {
  if (hold === null) return null;
  if (hold.hours !== null || hold.startedAt === null || hold.endedAt === null) return hold.hours;
  return Number(((Date.parse(hold.endedAt) - Date.parse(hold.startedAt)) / HOUR_MS).toFixed(4));
}

const NOT_SET_SIGN = 'not set and no pH at or below 4.6';

function setCell(outcome: TableJar['outcome']): string {
  if (outcome === null) return '';
  if (outcome.setAtTakeOut === false || outcome.signs.includes(NOT_SET_SIGN)) return 'not set';
  return outcome.setWord ?? (outcome.setAtTakeOut === true ? 'set' : '');
}

const phCell = (outcome: TableJar['outcome']): string =>
  outcome?.ph === null || outcome === null ? ''
  : outcome.phHow === 'meter' || outcome.phHow === 'strip' ? `${outcome.ph} (${outcome.phHow})`
  : String(outcome.ph); // prettier-ignore

const signsOf = (outcome: TableJar['outcome']): string[] =>
  (outcome?.signs ?? []).filter((sign) => sign !== NOT_SET_SIGN);

const isSpoiled = ({ outcome, readAsDiscard }: TableJar): boolean =>
  outcome?.spoiledSaid === true || readAsDiscard || signsOf(outcome).length > 0;

/** Every remark once, but those that have a column of their own. */
function notesOf({ jar, outcome, remarks }: TableJar): string {
  const elsewhere = new Set([outcome?.smell, outcome?.colour, outcome?.texture]);
  const all = [jar.note, outcome?.note ?? null, ...remarks.filter((text) => !elsewhere.has(text))];
  return [...new Set(all.filter((text) => text !== null))].join('\n');
}

type Column = readonly [heading: string, cell: (jar: TableJar) => TableCell];

/** Seeds have a column each: a name may have a comma or an "and" in it. */
const seedColumns = (most: number): Column[] =>
  Array.from({ length: most }, (_, at): Column => {
    const heading = at === 0 ? 'Seeded from' : `Seeded from ${at + 1}`;
    return [heading, ({ seeds }) => (seeds[at] ? seedCell(seeds[at]) : '')];
  });

const BEFORE_SEEDS: readonly Column[] = [
  [
    'Date',
    ({ madeOn, madeBetween }) =>
      madeOn ?? (madeBetween && `between ${madeBetween.from} and ${madeBetween.to}`),
  ],
  ['Jar', nameCell],
];
const AFTER_SEEDS: readonly Column[] = [
  ['Milk', ({ jar }) => jar.milk],
  ['Milk amount', ({ jar }) => amountCell(jar.milkAmount)],
  ['Additions', ({ additions }) => additions.map(({ name, actual }) => `${amountCell(actual)} ${name}`.trim()).join('; ')],
  ['Final volume', ({ jar }) => amountCell(jar.finalVolume)],
  ['Vessel', ({ jar }) => jar.vessel],
  ['Hours held', ({ hold }) => hoursOf(hold)],
  ['Temperature °C', ({ hold }) => (hold?.planned ? Number(hold.planned.value.toFixed(2)) : null)],
  ['Set', ({ outcome }) => setCell(outcome)],
  ['pH', ({ outcome }) => phCell(outcome)],
  ['Whey', ({ outcome }) => outcome?.whey ?? null],
  ['Tang', ({ outcome }) => outcome?.tang ?? null],
  ['Smell', ({ outcome }) => outcome?.smell ?? null],
  ['Colour', ({ outcome }) => outcome?.colour ?? null],
  ['Texture', ({ outcome }) => outcome?.texture ?? null],
  ['Spoiled', (jar) => (isSpoiled(jar) ? 'yes' : '')],
  ['Observations', ({ outcome }) => signsOf(outcome).join(', ')],
  ['Notes', notesOf],
]; // prettier-ignore

/**
 * The columns of the table of jars.
 * @param mostSeeds seeds of the jar that has most
 */
export function jarColumns(mostSeeds: number): {
  readonly headings: readonly string[];
  readonly cellsOf: (jar: TableJar) => TableCell[];
} {
  const columns = [...BEFORE_SEEDS, ...seedColumns(Math.max(1, mostSeeds)), ...AFTER_SEEDS];
  return {
    headings: columns.map(([heading]) => heading),
    cellsOf: (jar) => columns.map(([, cell]) => cell(jar)),
  };
}
