// What the headings of columns tell, as far as their cells and the other columns agree.
import type { NoteColumn } from '../../contract';
import { isNothing, findAmounts, parseTemperature, plain, tidy } from '../../quantities/quantities';
import { daysBetween, findDay, withoutSureDays } from '../../text/days';
import { readSpan } from '../../text/moments';
import { PIECE_WITHIN } from '../cells/seed-words';
import { milkName, readYesNo } from '../cells/cell-words';
import { hasTrait } from '../meanings';
import { assumed } from '../notes-says';
import {
  FIBREISH,
  isAmount,
  isClock,
  isNumber,
  MOST_DAYS,
  MASS_UNIT,
  namesJar,
  fitsMeaning,
  provenOtherwise,
  SEED_PART,
  share,
  VOLUME_UNIT,
  withDay,
} from './column-cells';
import { bareHeading, headingMeaning, headingUnit, type HeadingMeaning } from './headings';
import { namedBySeeds } from './named-by-seeds';
import { counts, type Draft, type Drafts, has, saying, sayFromCells } from './column-drafts';

/** What the heading of a column means; words within a longer one mean nothing that none of its cells may be. */
export function foundFor({ name, cells }: Draft): HeadingMeaning | null {
  const found = /^Column \d+$/.test(name) ? null : headingMeaning(name.replace(/ #\d+$/, ''));
  const wordsAlone = share(cells, (cell) => !/\d/.test(cell)) >= 0.8;
  if (found === null || cells.length === 0 || fitsMeaning(found.meaning, cells)) return found;
  // "Time in" above "31h" is no time of day, and "Set to" above degrees says of no jar how it set.
  return ['start', 'end', 'set', 'seed'].includes(found.meaning) || (found.sure === 2 && wordsAlone)
    ? null
    : found;
}

/** Headings, the surest first, so that "Date" wins over "Date opened". */
export function byHeadings(drafts: Drafts): void {
  // What can't be what its heading says comes last: "Day" above weekdays, beside a "Date".
  const named = namedByHeadings(drafts);
  const order = drafts.all
    .filter(({ found, meaning }) => found !== null && meaning === null)
    .map((draft) => {
      drafts.look?.();
      return { draft, rank: rankOf(draft) + (draft === named ? 10 : 0) };
    })
    .toSorted((a, b) => b.rank - a.rank);
  for (const { draft } of order) {
    drafts.look?.();
    byHeading(draft, drafts);
  }
  for (const draft of drafts.all) draft.spare ||= draft.found !== null && draft.meaning === null;
}

/** Of several columns that may name the jars, "Which" and "Jar", the one that the seeds go by. */
function namedByHeadings({ all, rows }: Drafts): Draft | undefined {
  const of = (meaning: NoteColumn): Draft[] => all.filter(({ found }) => found?.meaning === meaning);
  const [jars, seeds] = [of('jar'), of('seed').map(({ index }) => index)];
  const days = of('date')[0]?.index ?? -1;
  return jars.length < 2 || seeds.length === 0
    ? undefined
    : jars.find(({ index }) => namedBySeeds(index, seeds, rows, days) !== null);
}

const rankOf = ({ found, cells }: Draft): number =>
  found === null ? 0 : (fitsMeaning(found.meaning, cells) && !counts(found, cells) ? 10 : 0) + found.sure;

/** Gives a column the meaning of its heading, as far as its cells and the other columns agree. */
function byHeading(draft: Draft, drafts: Drafts): void {
  const words = draft.found ? [draft.found.meaning, ...(draft.found.others ?? [])] : [];
  const told = words.find((meaning) => fitsMeaning(meaning, draft.cells)) ?? words[0] ?? 'note';
  if (
    draft.found &&
    counts(draft.found, draft.cells) &&
    drafts.all.some(({ cells }) => share(cells, namesJar) >= 0.6)
  ) {
    draft.spare = true;
    return;
  }
  const proven = provenOtherwise(told, draft.cells);
  if (proven) sayFromCells(drafts, draft, proven);
  const meaning = besideOthers(draft, proven ?? told, drafts);
  if (meaning === null) {
    draft.spare = true;
    return;
  }
  const others = drafts.all.filter((one) => one.found?.meaning === 'seed').length;
  const several = hasTrait(meaning, 'many') || (meaning === 'amount' && others > 1);
  draft.spare = has(drafts, meaning) && !several;
  if (draft.spare && draft.cells.length > 0) saying(drafts, assumed.secondColumn(draft.name, meaning));
  if (!draft.spare) draft.meaning = meaning;
}

/** Whether days of a second column are when holds ended that began on those of the first, told beside times of day. */
function endsHolds(draft: Draft, drafts: Drafts): boolean {
  const first = drafts.all.find(({ meaning }) => meaning === 'date');
  const timed = drafts.all.some(
    ({ found, cells }) =>
      found?.meaning === 'end' || found?.meaning === 'start' || share(cells, isClock) >= 0.8,
  );
  if (!first || !timed) return false;
  const pairs = drafts.rows
    .map(({ cells }) => [findDay(cells[first.index] ?? ''), findDay(cells[draft.index] ?? '')] as const)
    .filter(([began, ended]) => began !== null && ended !== null);
  return (['day first', 'month first'] as const).some((order) => {
    const days = pairs.map(([began, ended]) => (began && ended ? daysBetween(began, ended, order) : null));
    return (
      days.some((count) => count !== null && count > 0) &&
      share(days, (count) => count !== null && count >= 0 && count <= MOST_DAYS) >= 0.8
    );
  });
}

/** Headings that may be said of a time of day as well as of how long. */
const TIME_WORD =
  /^(?:time|zeit|uhrzeit|temps|heure|tiempo|hora|tempo|ora|tijd|tid|klokkeslett?|czas|godzina)$/;

/** What a heading means beside the others and above its cells: an amount beside the milk is the milk's; null: nothing. */
function besideOthers(draft: Draft, told: NoteColumn, drafts: Drafts): NoteColumn | null {
  const { index, name, cells } = draft;
  const others = drafts.all.filter((one) => one !== draft);
  let meaning = told;
  // "Time in" above "19:00 - 21.5. 7:00" tells both ends.
  if (meaning === 'start' && share(cells, (cell) => readSpan(cell, 'day first') !== null) >= 0.8)
    return 'hours';
  // "Start" without an end is the day, or nothing we know.
  if (meaning === 'start' && !drafts.all.some(({ found }) => found?.meaning === 'end')) {
    if (has(drafts, 'date') || share(cells, withDay) < 0.6) return null;
    meaning = 'date';
  }
  // "Time" above times of day tells no length.
  if (meaning === 'hours' && TIME_WORD.test(plain(name)) && share(cells, isClock) >= 0.8) {
    if (others.some(({ found }) => found?.meaning === 'end')) meaning = 'start';
    else if (share(cells, (cell) => /[ap]\.?m\b|uhr/i.test(cell)) >= 0.5) return null;
  }
  // "Bad °C" is a bath in German.
  const provesWarmth = (): boolean =>
    share(cells, (cell) => isNumber(cell) && parseTemperature(cell).ok) >= 0.8;
  const unit = headingUnit(name);
  if (
    (meaning === 'spoiled' || hasTrait(meaning, 'words')) &&
    unit !== null &&
    /^[CF]$/.test(unit) &&
    provesWarmth()
  )
    meaning = 'temperature';
  // "Date in, Time in, Date out, Time out"
  if (meaning === 'date' && has(drafts, 'date') && endsHolds(draft, drafts)) return 'end';
  const left = drafts.all[index - 1];
  const before = left?.meaning ?? left?.found?.meaning ?? null;
  // Cells are gone through only for the meanings that ask them: every column of every file comes by here.
  let amounts: number | null = null;
  const figures = (): number => (amounts ??= share(cells, isAmount));
  // "Milk, Amount": an amount beside a column that tells none of its own belongs to that.
  const tellsNone = (): boolean =>
    share(left?.cells ?? [], (cell) => findAmounts(cell, { spoons: 'US' }, true).length > 0) < 0.3;
  if (meaning === 'amount' && before === 'milk' && tellsNone()) meaning = 'milk amount';
  if (meaning === 'amount' && before === 'addition' && tellsNone()) meaning = 'addition amount';
  if (SEED_PART.test(plain(name)) && figures() < 0.8) meaning = 'seed';
  const otherSeed = others.some((one) => one.found?.meaning === 'seed' && share(one.cells, isAmount) < 0.8);
  // "Seed (g)" beside the seeds is how much of them.
  const volumes = (): boolean =>
    (unit !== null && (VOLUME_UNIT.test(unit) || (otherSeed && MASS_UNIT.test(unit)))) ||
    share(cells, isNumber) < 0.5;
  const least = otherSeed && unit !== null ? 0.4 : 0.8;
  if (meaning === 'seed' && volumes() && figures() >= least) meaning = 'amount';
  // "Seed ml" above days names the seeds all the same.
  const days = (): number => share(cells, (cell) => withoutSureDays(cell) !== tidy(cell));
  if (meaning === 'amount' && !has(drafts, 'seed') && !otherSeed && days() >= 0.5) meaning = 'seed';
  if (meaning === 'milk' && (has(drafts, 'milk') || saysHowMuch(name, cells)) && figures() >= 0.8)
    meaning = 'milk amount';
  // "Fibre tsp" above bare figures names what went in itself.
  if (
    meaning === 'addition' &&
    unit !== null &&
    share(cells, isNumber) >= 0.8 &&
    !others.some(({ found }) => found?.meaning === 'addition')
  )
    draft.additionName = withoutUnit(name, unit);
  if (meaning === 'addition' && figures() >= 0.8 && others.some(({ found }) => found?.meaning === 'addition'))
    meaning = 'addition amount';
  return meaning;
}

/** Bare figures that are no fat of a milk: all of litres, or all of millilitres. */
const saysHowMuch = (name: string, cells: readonly string[]): boolean => {
  const figures = cells.map((cell) => (isNumber(cell) ? Number(tidy(cell).replace(',', '.')) : Number.NaN));
  return (
    milkName(bareHeading(name)) === null &&
    cells.length > 0 &&
    (figures.every((one) => one <= 2.5) || figures.every((one) => one >= 100))
  );
};

/** A heading as written, without the unit it tells. */
export const withoutUnit = (written: string, unit: string | null): string => {
  // "+ inulin?" asks whether it went in.
  const name = tidy(written).replace(/^[+&]\s*|\s*\?+$/g, '');
  return unit === null
    ? name
    : tidy(name.replace(/[([{].*?[)\]}]/g, ' '))
        .trim()
        .replace(new RegExp(`[\\s,/]+(?:in )?${unit}\\.?$|^${unit}\\s+(?:of\\s+)?`, 'i'), '');
};

/** More grams than anyone stirs into a jar (common practice, no source). */
const weighsJars = (cell: string): boolean => Number(tidy(cell).replace(',', '.')) > 200;

/** "Inulin" above amounts, or above crosses where it went in. */
export function byAdditions(drafts: Drafts): void {
  if (!drafts.headed) return;
  // "With what" above counts of pieces is no addition.
  const seeds = drafts.all.find(
    ({ meaning, chosen, cells }) =>
      meaning === 'addition' && !chosen && share(cells, (cell) => PIECE_WITHIN.test(cell)) >= 0.5,
  );
  if (seeds && !has(drafts, 'seed')) {
    seeds.meaning = 'seed';
    sayFromCells(drafts, seeds, 'seed');
  }
  for (const draft of drafts.all)
    if (draft.chosen && draft.meaning === 'addition' && share(draft.cells, isAmount) >= 0.8)
      draft.additionName = withoutUnit(draft.name, headingUnit(draft.name));
  for (const draft of drafts.all) {
    const { name, cells } = draft;
    if (draft.meaning !== null || draft.spare || cells.length === 0) continue;
    const unit = headingUnit(name);
    // A jar weighs hundreds of grams: that much is stirred into none.
    const inUnits =
      unit !== null &&
      MASS_UNIT.test(unit) &&
      share(cells, (cell) => isAmount(cell) && !weighsJars(cell)) >= 0.8;
    const went = (cell: string): boolean => isAmount(cell) || readYesNo(cell) !== null || isNothing(cell);
    if (!inUnits && !(FIBREISH.test(plain(name)) && share(cells, went) >= 0.8)) continue;
    draft.additionName = withoutUnit(name, unit);
    draft.meaning = 'addition';
    saying(drafts, assumed.additionColumn(name));
  }
}
