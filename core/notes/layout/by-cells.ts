// Columns told by what stands in them, where no heading tells.
import type { NoteColumn } from '../../contract';
import { plain } from '../../quantities/quantities';
import { assumed, question } from '../notes-says';
import {
  hoursOrDegrees,
  isClock,
  isNumber,
  isWarmth,
  MASS_UNIT,
  meaningOfCells,
  share,
  VOLUME_UNIT,
  withDay,
} from './column-cells';
import { headingUnit } from './headings';
import { marksOf } from './taster-marks';
import { withoutUnit } from './by-headings';
import { type Draft, type Drafts, has, saying, sayFromCells } from './column-drafts';

/** Marks out of ten are no words and no days: they are kept under their heading. */
export function byMarks(drafts: Drafts): void {
  for (const draft of drafts.all) {
    if (draft.chosen) continue;
    draft.marks = marksOf(draft.name, draft.cells, draft.found?.meaning ?? null);
    if (draft.marks === null) continue;
    draft.meaning = 'note';
    saying(drafts, assumed.mark(draft.name, draft.marks.most));
  }
}

/** Times of day under a heading that tells none: when the hold began, and when it ended. */
export function byClocks(drafts: Drafts): void {
  const clocks = drafts.all.filter(
    ({ meaning, found, cells }) =>
      meaning === null &&
      (found === null || ['date', 'hours', 'start'].includes(found.meaning)) &&
      share(cells, isClock) >= 0.8,
  );
  const [first, second] = clocks;
  const [start, end] = [has(drafts, 'start'), has(drafts, 'end')];
  const take = (draft: Draft | undefined, meaning: 'start' | 'end', what: string): void => {
    if (!draft) return;
    draft.meaning = meaning;
    draft.spare = false;
    saying(drafts, assumed.clockColumn(draft.name, what));
  };
  // One time alone tells no length.
  if (!start && (end || second)) take(first, 'start', 'when the hold began');
  if (!end && (start || second)) take(start ? first : second, 'end', 'when the hold ended');
}

/** Meanings that cells alone can show. */
const SHOWN_BY_CELLS = [
  'date',
  'seed',
  'temperature',
  'ph',
  'set',
  'milk',
  'addition',
  'jar',
  'hours',
  'amount',
] as const;

/** Then what stands in the columns that no heading told of. */
export function byCells(drafts: Drafts): void {
  const free = new Set<NoteColumn>(SHOWN_BY_CELLS.filter((meaning) => !has(drafts, meaning)));
  const label = drafts.all.find(({ meaning }) => meaning === 'label');
  if (label) free.delete('jar');
  if (has(drafts, 'start') && has(drafts, 'end')) free.delete('hours');
  // A label may tell the day as well.
  if (label && share(label.cells, withDay) >= 0.5) free.delete('date');
  for (const draft of drafts.all) {
    const { name, cells } = draft;
    if (draft.meaning !== null || draft.spare || cells.length === 0) continue;
    if (looksBefore(draft, drafts)) {
      draft.meaning = 'note';
      saying(drafts, assumed.keptApart(name, 'a look before the end'));
      continue;
    }
    const within = openTo(draft, free, drafts);
    const meaning =
      asksHoursOrDegrees(draft, within, drafts) ?? meaningOfCells(cells, within) ?? ofALetter(draft, within);
    if (meaning === null) continue;
    draft.meaning = meaning;
    if (meaning === 'note') continue;
    free.delete(meaning);
    sayFromCells(drafts, draft, meaning);
  }
}

/** "8h", "after 12 hours", and nothing else: when a jar was looked at. */
const LOOK = /^(?:after |nach |at )?(\d+(?:[.,]\d+)?) ?(?:h|hrs?|hours?|std|stunden)$/;

const lookedAfter = (name: string): number =>
  Number(LOOK.exec(plain(name))?.[1]?.replace(',', '.') ?? Number.NaN);

/** Whether a column tells what was seen at an hour before the last: that is no outcome. */
const looksBefore = ({ name }: Draft, drafts: Drafts): boolean =>
  has(drafts, 'hours') || has(drafts, 'set')
    ? LOOK.test(plain(name))
    : drafts.all.some((other) => lookedAfter(other.name) > lookedAfter(name));

const HOUR_UNIT = /^(?:h|hrs?|hours?|std|stunden|days?|tage?|d)\.?$/i;

/** What a column can be by the unit that its heading tells: an amount for each of several seeds, no hours in millilitres. */
function openTo({ name }: Draft, free: ReadonlySet<NoteColumn>, drafts: Drafts): ReadonlySet<NoteColumn> {
  const unit = headingUnit(name);
  if (unit === null || LOOK.test(plain(name))) return free;
  const told: NoteColumn | null = HOUR_UNIT.test(unit)
    ? 'hours'
    : /^(?:deg )?[CF]$/i.test(unit)
      ? 'temperature'
      : null;
  if (told !== null) return new Set(free.has(told) ? [told] : []);
  if (!VOLUME_UNIT.test(unit) && !MASS_UNIT.test(unit)) return free;
  const seeds = drafts.all.filter(({ meaning }) => meaning === 'seed').length;
  return new Set<NoteColumn>(
    (['amount', 'milk', 'addition'] as const).filter(
      (one) => free.has(one) || (one === 'amount' && seeds > 1),
    ),
  );
}

/** "A ml" above bare figures: how much of the seed that a letter stands for. */
const ofALetter = ({ name, cells }: Draft, open: ReadonlySet<NoteColumn>): NoteColumn | null =>
  headingUnit(name) !== null &&
  open.has('amount') &&
  /^(?:\p{L}|\d{1,2})$/u.test(withoutUnit(name, headingUnit(name))) &&
  share(cells, isNumber) >= 0.8
    ? 'amount'
    : null;

/** Bare figures from 30 to 48 are hours or degrees: with both still open and nothing else to tell, that is asked. */
function asksHoursOrDegrees(
  { name, cells, index }: Draft,
  free: ReadonlySet<NoteColumn>,
  drafts: Drafts,
): NoteColumn | null {
  if (!drafts.headed || !free.has('hours') || !free.has('temperature') || !hoursOrDegrees(cells)) return null;
  const open = drafts.all.filter(
    (one) =>
      one.index !== index &&
      one.meaning === null &&
      !one.spare &&
      one.cells.length > 0 &&
      share(one.cells, (cell) => isNumber(cell) || isWarmth(cell)) >= 0.8,
  );
  if (open.length > 0) return null;
  drafts.questions.push({
    id: `means:${name}`,
    row: null,
    sentence: question.hoursOrDegrees(name),
    choices: [
      { value: 'hours', label: 'The hours held' },
      { value: 'temperature', label: 'The temperature in °C' },
    ],
    blocks: false,
  });
  return 'note';
}
