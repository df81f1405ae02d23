// Columns told by names: of jars that seeds go by, of seeds that go by jars, of lines.
import type { NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { cellDay } from '../../text/days';
import { hasTrait } from '../meanings';
import { assumed } from '../notes-says';
import { share } from './column-cells';
import { downBatches, namedBySeeds } from './named-by-seeds';
import { namesOtherRows } from './seeds-by-days';
import { counts, type Draft, type Drafts, has, saying, sayFromCells } from './column-drafts';

/** Where no heading says what seeded each jar, or one says so above something else: cells that name jars of other rows. */
export function byOtherRows(drafts: Drafts): void {
  const { all, rows } = drafts;
  if (has(drafts, 'seed') || all.some(({ found }) => found?.meaning === 'seed')) return;
  const days = all.filter(({ cells, chosen, meaning }) =>
    chosen ? meaning === 'date' : share(cells, (cell) => cellDay(cell) !== null) >= 0.8,
  );
  for (const draft of all) {
    if (draft.chosen || days.length === 0) continue;
    const tells = days.some(({ index }) => index !== draft.index && namesOtherRows(draft.index, index, rows));
    if (!tells) continue;
    draft.meaning = 'seed';
    sayFromCells(drafts, draft, 'seed');
    return;
  }
}

/** What columns of jars' names, and of their seeds, may have been taken for. */
const MAY_NAME: ReadonlySet<NoteColumn | null> = new Set([
  null,
  'jar',
  'label',
  'colour',
  'vessel',
  'note',
  'addition',
]);

/** Of two columns one names jars and the other goes by those names: whatever stands above them. @returns whether one pair does */
function byPairs(drafts: Drafts, days: number): boolean {
  const open = drafts.all.filter(
    ({ chosen, meaning, cells }) => !chosen && MAY_NAME.has(meaning) && cells.length > 2,
  );
  const pairs = open.flatMap((jar) =>
    open.flatMap((seed) => {
      const named = seed === jar ? null : namedBySeeds(jar.index, [seed.index], drafts.rows, days);
      return named === null ? [] : [{ jar, seed, named }];
    }),
  );
  const [pair, other] = pairs;
  if (!pair || other) return false;
  if (pair.jar.meaning !== 'jar') saying(drafts, assumed.jarColumn(pair.jar.name, pair.named));
  sayFromCells(drafts, pair.seed, 'seed');
  Object.assign(pair.jar, { meaning: 'jar', spare: false });
  Object.assign(pair.seed, { meaning: 'seed', spare: false });
  return true;
}

/** A column of names that the seeds go by names the jars, and one that goes by the names of jars tells seeds, whatever stands above. */
export function bySeedNames(drafts: Drafts): void {
  const of = (...wanted: readonly NoteColumn[]): number[] =>
    drafts.all
      .filter(({ meaning }) => meaning !== null && wanted.includes(meaning))
      .map(({ index }) => index);
  const [jars, seeds, [days = -1]] = [of('jar', 'label'), of('seed'), of('date')];
  if (seeds.length === 0 && byPairs(drafts, days)) return;
  const counting = drafts.all.find(
    ({ chosen, meaning, found, cells }) =>
      !chosen && meaning === 'jar' && found !== null && counts(found, cells),
  );
  if (counting && seeds.length > 0 && namedBySeeds(counting.index, seeds, drafts.rows, days) === null) {
    const names = drafts.all.find(
      ({ index, chosen, meaning }) =>
        !chosen && hasTrait(meaning, 'names') && namedBySeeds(index, seeds, drafts.rows, days) !== null,
    );
    if (names) {
      Object.assign(counting, { meaning: null, spare: true });
      names.meaning = 'jar';
      saying(drafts, assumed.secondColumn(counting.name, 'jar'));
      return;
    }
  }
  if (jars.length > 0 === seeds.length > 0) return;
  for (const draft of drafts.all) {
    if (draft.chosen || (draft.meaning !== null && !hasTrait(draft.meaning, 'names'))) continue;
    const named =
      seeds.length > 0
        ? namedBySeeds(draft.index, seeds, drafts.rows, days)
        : jars.map((jar) => namedBySeeds(jar, [draft.index], drafts.rows, days)).find((one) => one !== null);
    if (named === null || named === undefined) continue;
    draft.meaning = seeds.length > 0 ? 'jar' : 'seed';
    draft.spare = false;
    if (seeds.length > 0) saying(drafts, assumed.jarColumn(draft.name, named));
    else sayFromCells(drafts, draft, 'seed');
    return;
  }
}

/** Longest name of a line, and most lines: more are no lines. */
const LINE_NAME = { longest: 30, most: 12 } as const;

const LETTER = /^#?\s*\p{L}$/u;

/** Words that come again and again, and set jars of one day and letter apart, tell lines or batches: "Porch", "Attic". */
export function byLines(drafts: Drafts): void {
  const { all, rows } = drafts;
  const label = all.find(({ meaning }) => meaning === 'label');
  const repeated = ({ cells }: Draft): boolean => new Set(cells.map(plain)).size <= cells.length / 3;
  if (label && (!label.chosen || !repeated(label))) return;
  const days = all.find(({ meaning }) => meaning === 'date')?.index ?? -1;
  const letters =
    all.find(({ chosen, cells }) => !chosen && share(cells, (cell) => LETTER.test(tidy(cell))) >= 0.9) ??
    all.find(({ meaning }) => meaning === 'jar');
  if (days < 0 || !letters) return;
  const alike = (by: readonly number[]): number => {
    const columns = by.map((index) => downBatches(index, days, rows).map(plain));
    return rows.length - new Set(rows.map((_, at) => columns.map((cells) => cells[at]).join('|'))).size;
  };
  const before = alike([days, letters.index]);
  if (before < 2) return;
  const apart = ({ index }: Draft): boolean => alike([days, letters.index, index]) <= before / 10;
  const line =
    label ??
    all.find(
      (draft) =>
        draft !== letters &&
        namesLines(draft, downBatches(draft.index, days, rows).map(plain)) &&
        apart(draft),
    );
  if (!line) return;
  // What was said of it before holds no more.
  const second = drafts.said.findIndex(({ sentence }) => sentence === assumed.secondColumn(line.name, 'jar'));
  if (second >= 0) drafts.said.splice(second, 1);
  Object.assign(line, { meaning: 'label', spare: false });
  Object.assign(letters, { meaning: 'jar', spare: false });
  saying(drafts, assumed.lines(line.name));
}

/** Whether a column of which nobody knows anything else holds a few names, each of many rows. */
function namesLines({ chosen, found, meaning }: Draft, values: readonly string[]): boolean {
  const cells = values.filter((value) => value !== '');
  const names = new Set(cells);
  return (
    !chosen &&
    (found === null || meaning === null || meaning === 'jar') &&
    cells.length >= values.length * 0.8 &&
    names.size <= Math.min(LINE_NAME.most, cells.length / 3) &&
    [...names].every((name) => /\p{L}/u.test(name) && name.length <= LINE_NAME.longest)
  );
}
