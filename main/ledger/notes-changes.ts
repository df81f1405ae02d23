// A jar of the ledger that a row of notes changes: what was taken over, or what the answer to an open question changes.
import type { NotedRow, NotesPlan, PlannedChange, PlannedJar } from '../../core/notes/notes-door';
import { LONGEST_KEPT } from '../../core/notes/rows/same-row';
import type { Amount } from '../../core/ledger/basics';
import type { Seeding } from '../../core/ledger/records';
import { removeHold } from './entries/hold-entry';
import { changeJar, jarEntry } from './entries/jar-entry';
import {
  addAddition,
  type AdditionEntry,
  additionEntries,
  addSeeding,
  changeAddition,
  changeSeeding,
  type SeedingEntry,
  seedingEntries,
} from './entries/kept-entries';
import { addNoteRow, removeNoteRow } from './entries/note-row-entry';
import { addOutcome, changeOutcome } from './entries/outcome-entry';
import { tellsOfSpoiling } from '../../core/safety/remarks';
import type { OpenAct } from './facts/open-act';
import type { Ledger } from './ledger';
import type { Shared } from './notes-shared';
import { outcomeOf, type Seen } from './entries/outcome-of-jar';
import { replaceAdditions, replaceSeedings } from './writes/write-parts';

/** What seeded a planned jar, by key. */
export interface SeedOf {
  readonly from: { readonly fromJar: number | null; readonly source: number | null };
  readonly part: Seeding['part'];
  readonly amount: Amount | null;
}

/** A file's name as it is kept with its rows. */
export const fileName = (name: string): string => name.slice(0, 500) || 'notes';

/** The file whose rows are kept, with the headings that it has now and the rows of it that are there. */
export class KeptFile {
  readonly name: string;
  readonly #there: ReadonlyMap<string, number>;

  constructor(
    { rows }: Ledger,
    name: string,
    readonly headings: readonly string[],
  ) {
    this.name = fileName(name);
    const there = rows
      .prepare(
        `SELECT n.key, n.cells_sha, n.occurrence FROM note_file f CROSS JOIN note_row n ON n.file = f.key
          WHERE f.name = ? ORDER BY n.key`,
      )
      .all(this.name) as { key: number; cells_sha: string; occurrence: number }[];
    this.#there = new Map(there.map(({ key, cells_sha, occurrence }) => [`${cells_sha}:${occurrence}`, key]));
  }

  /** An older entry of the same cells, as they were before this import. */
  earlier({ sha, occurrence }: NotedRow): number | undefined {
    return this.#there.get(`${sha}:${occurrence}`);
  }
}

const kept = (text: string): string => text.slice(0, LONGEST_KEPT);

/**
 * Keeps which row of which file a jar is, with its cells and what was answered about it; an older entry of the same cells
 * moves to the end.
 */
export function noteRow(act: OpenAct, file: KeptFile, { line, noted }: PlannedJar, jar: number): void {
  const { name, headings } = file;
  const old = file.earlier(noted);
  if (old !== undefined) removeNoteRow(act, old);
  const cells = Object.entries(noted.cells).map(([heading, cell]) => [heading, kept(cell)]);
  const key = addNoteRow(act, {
    file: name,
    headings: headings
      .filter((heading) => !noted.without.includes(heading))
      .map((heading) => heading.slice(0, 500)),
    cells: JSON.stringify(Object.fromEntries(cells)),
    cellsSha: noted.sha,
    readSha: noted.read,
    occurrence: noted.occurrence,
    line,
    jar,
  });
  for (const { question, answer } of noted.answers)
    act.insert('noteAnswer', {
      noteRow: key,
      question: question.slice(0, 500),
      answer: kept(answer) || ' ',
    });
}

/** Only what is told: a blank in the notes takes nothing away. */
const told = <Fields extends object>(fields: Fields): Partial<Fields> =>
  Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== null && value !== undefined),
  ) as Partial<Fields>;

/** All that a row tells of how a jar came out, over what is there. Spoilage is added and never taken back. */
function outcomeTold(there: Seen, row: Seen): Partial<Seen> {
  const { signs, spoiledSaid, fibreDidThis, ...rest } = row;
  return {
    ...told(rest),
    // What fails the gate stays failed: only the jar itself, corrected by hand, can say otherwise.
    setAtTakeOut: there.setAtTakeOut === false ? false : (row.setAtTakeOut ?? there.setAtTakeOut),
    signs: [...new Set([...there.signs, ...signs])],
    spoiledSaid: there.spoiledSaid || spoiledSaid,
    fibreDidThis: there.fibreDidThis || fibreDidThis,
  };
}

/** What answers change: fields that read otherwise with them than without. */
function outcomeAnswered(there: Seen, before: Seen | null, row: Seen): Partial<Seen> {
  const changed = Object.fromEntries(
    Object.entries(row).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(before?.[name as keyof Seen] ?? null),
    ),
  ) as Partial<Seen>;
  // What fails the gate stays failed, and what spoiled stays spoiled.
  if (there.setAtTakeOut === false) delete changed.setAtTakeOut;
  if (there.spoiledSaid) delete changed.spoiledSaid;
  if (changed.signs === undefined) return changed;
  // Signs recorded since stay.
  const kept = there.signs.filter((sign) => before?.signs.includes(sign) !== true);
  return { ...changed, signs: [...new Set([...kept, ...row.signs])] };
}

/**
 * A row's outcome without what it says of spoilage in words alone: that stays a remark, which stops its jar until the keeper has
 * answered it. Where no remark keeps the words, the signs are kept.
 */
export function unworded({ outcome, fields }: PlannedJar): Seen {
  if (outcome === null) throw new Error('a row without an outcome');
  const { worded, ...told } = outcome;
  if (!worded) return told;
  const said = [['note', fields.note], ['texture', told.texture], ['smell', told.smell], ['colour', told.colour]] as const;
  if (!said.some(([field, text]) => text !== null && tellsOfSpoiling(text, field))) return told;
  return {
    ...told,
    signs: told.signs.filter((sign) => !worded.signs.includes(sign)),
    spoiledSaid: told.spoiledSaid && !worded.spoiledSaid,
  };
} // prettier-ignore

function changeSeen(act: OpenAct, key: number, change: PlannedChange): void {
  if (change.planned.outcome === null) return;
  // A change is taken over because the keeper said so: what its words tell is answered, and a fact.
  const { worded: _words, ...outcome } = change.planned.outcome;
  const there = outcomeOf(act.rows, key);
  if (!there) addOutcome(act, key, outcome);
  else
    changeOutcome(
      act,
      key,
      change.whole
        ? outcomeTold(there, outcome)
        : outcomeAnswered(there, change.before?.outcome ?? null, outcome),
    );
}

/** The hold of a changed row: another one of the batch, or a new one. One that no jar is left in goes. */
function changeWarmth(act: OpenAct, shared: Shared, key: number, planned: PlannedJar): void {
  if (planned.hold === null) return;
  const jar = jarEntry(act.rows, key);
  const old = jar.hold === null ? null : act.rows.get('hold', jar.hold);
  const hours = planned.hold.hours ?? old?.hours ?? null;
  const warmth = planned.hold.planned ?? old?.planned ?? null;
  const same = (one: number | undefined | null, other: number | undefined | null): boolean =>
    (one?.toFixed(2) ?? '') === (other?.toFixed(2) ?? '');
  if (old && same(old.hours, hours) && same(old.planned?.value, warmth?.value)) return;
  changeJar(act, key, { hold: shared.hold(jar.batch, { hours, planned: warmth }) });
  if (old?.basis === 'notes' && act.rows.where('stay', 'hold', old.key).length === 0)
    removeHold(act, old.key);
}

function changeSeeds(
  act: OpenAct,
  key: number,
  seeds: readonly SeedOf[],
  { whole, columns }: PlannedChange,
): void {
  const old = seedingEntries(act.rows, key);
  const same = (row: SeedingEntry, { from }: SeedOf): boolean =>
    row.fromJar === from.fromJar && row.source === from.source;
  if (!whole) {
    for (const seed of seeds) {
      const row = old.find((one) => same(one, seed));
      // A column that is new fills what is not known; what is known was perhaps put right by hand.
      if (!row && columns)
        addSeeding(act, {
          jar: key,
          ...seed.from,
          portion: null,
          part: seed.part,
          package: null,
          amount: seed.amount,
        });
      else if (row && (!columns || row.amount === null)) changeSeeding(act, row.key, { amount: seed.amount });
    }
    return;
  }
  if (seeds.length === 0) return;
  const next = seeds.map((seed): SeedingEntry => {
    const row = old.find((one) => same(one, seed));
    return {
      jar: key,
      ...seed.from,
      portion: row?.portion ?? null,
      part: seed.part ?? row?.part ?? null,
      package: row?.package ?? null,
      amount: seed.amount ?? row?.amount ?? null,
    };
  });
  replaceSeedings(act, old, next, (row, told) => row.fromJar === told.fromJar && row.source === told.source);
}

function changeAdditions(act: OpenAct, key: number, planned: PlannedJar): void {
  if (planned.additions.length === 0) return;
  const old = additionEntries(act.rows, key);
  const same = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();
  const next = planned.additions.map(({ name, actual }): AdditionEntry => {
    const row = old.find((one) => same(one.name, name));
    return {
      jar: key,
      name: row?.name ?? name,
      planned: row?.planned ?? null,
      actual: actual ?? row?.actual ?? null,
      package: row?.package ?? null,
    };
  });
  replaceAdditions(act, old, next);
}

/** What a row tells with its new columns that it did not tell without: of the jar itself, its warmth and what was stirred in. */
function changeByColumns(
  act: OpenAct,
  shared: Shared,
  key: number,
  now: PlannedJar,
  before: PlannedJar,
): void {
  const other = (one: unknown, there: unknown): boolean => JSON.stringify(one) !== JSON.stringify(there);
  const { finalVolume: _volume, finalVolumeKnown: _known, note, ...fields } = now.fields;
  const fresh = Object.fromEntries(
    Object.entries(fields).filter(([name, value]) =>
      other(value, before.fields[name as keyof typeof fields]),
    ),
  ) as Partial<typeof fields>;
  const lines = (before.fields.note ?? '').split('\n');
  const said = (note ?? '').split('\n').filter((line) => line !== '' && !lines.includes(line));
  const there = jarEntry(act.rows, key).note;
  changeJar(act, key, {
    ...told(fresh),
    ...(said.length > 0
      ? {
          note: [there, ...said]
            .filter((line) => line !== null)
            .join('\n')
            .slice(0, 10_000),
        }
      : {}),
  });
  if (other(now.hold, before.hold)) changeWarmth(act, shared, key, now);
  const stirred = now.additions.filter((one) => !before.additions.some((old) => !other(one, old)));
  const old = additionEntries(act.rows, key);
  for (const { name, actual } of stirred) {
    const row = old.find((one) => one.name.toLowerCase() === name.toLowerCase());
    if (!row) addAddition(act, { jar: key, name, planned: null, actual, package: null });
    else if (row.actual === null) changeAddition(act, row.key, { actual });
  }
}

/**
 * Writes what a row changes of a jar that is there. Blanks take nothing away, and spoilage is never taken back here.
 * @param seedsOf what seeded a planned jar, by key
 * @throws Refused where a seed can't be
 */
export function changeFromRow(
  act: OpenAct,
  shared: Shared,
  change: PlannedChange,
  file: KeptFile,
  seedsOf: (planned: NotesPlan['jars'][number]) => SeedOf[],
): void {
  const { planned, whole } = change;
  const key = act.rows.keyOf('jar', change.uid);
  const jar = act.rows.get('jar', key);
  changeSeen(act, key, change);
  if (change.amounts) changeSeeds(act, key, seedsOf(planned), change);
  const { finalVolume, finalVolumeKnown, ...rest } = planned.fields;
  const summed = jar.finalVolumeKnown === null || jar.finalVolumeKnown === 'milk plus seed';
  if (change.amounts && finalVolume !== null && (summed || (whole && finalVolumeKnown === 'measured')))
    changeJar(act, key, { finalVolume, finalVolumeKnown });
  if (change.columns && change.before) changeByColumns(act, shared, key, planned, change.before);
  if (whole) {
    changeJar(act, key, told(rest));
    changeWarmth(act, shared, key, planned);
    changeAdditions(act, key, planned);
  }
  noteRow(act, file, planned, key);
}
