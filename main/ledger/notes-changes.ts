// A jar of the ledger that a row of notes changes: what was taken over, or what the answer to an open question changes.
import type { NotesPlan, PlannedChange, PlannedJar } from '../../core/notes';
import type { Amount } from '../../core/ledger/basics';
import type { Outcome, Seeding } from '../../core/ledger/records';
import type { OpenAct } from './acts';
import type { Ledger } from './ledger';
import type { Shared } from './notes-shared';
import type { Stored } from './projection/records';
import { replaceRows } from './writes/parts';

/** What seeded a planned jar, by key. */
export interface SeedOf {
  readonly from: { readonly fromJar: number | null; readonly source: number | null };
  readonly part: Seeding['part'];
  readonly amount: Amount | null;
}

type Seen = Omit<Outcome, 'jar'>;

/** A file's name as it is kept with its rows. */
export const fileName = (name: string): string => name.slice(0, 500) || 'notes';

/** Keeps which row of which file a jar is, as it reads now; an older entry of the same reading moves to the end. */
export function noteRow(ledger: Ledger, act: OpenAct, file: string, planned: PlannedJar, jar: number): void {
  const record = {
    file: fileName(file),
    fingerprint: planned.fingerprint,
    occurrence: planned.occurrence,
    line: planned.line,
    jar,
  };
  const old = ledger.rows
    .prepare(
      `SELECT n.key FROM note_row n JOIN note_file f ON f.key = n.file
        WHERE n.cells_sha = ? AND n.occurrence = ? AND f.name = ?`,
    )
    .pluck()
    .get(record.fingerprint, record.occurrence, record.file);
  if (typeof old === 'number') act.remove('noteRow', old);
  act.insert('noteRow', record);
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
  if (changed.signs === undefined) return changed;
  // Signs recorded since stay.
  const kept = there.signs.filter((sign) => before?.signs.includes(sign) !== true);
  return { ...changed, signs: [...new Set([...kept, ...row.signs])] };
}

function changeOutcome(ledger: Ledger, act: OpenAct, key: number, change: PlannedChange): void {
  const { outcome } = change.planned;
  if (outcome === null) return;
  const [there] = ledger.rows.where('outcome', 'jar', key);
  if (!there) act.insert('outcome', { ...outcome, jar: key });
  else
    act.update(
      'outcome',
      there.key,
      change.whole ? outcomeTold(there, outcome) : outcomeAnswered(there, change.outcomeBefore, outcome),
    );
}

/** The hold of a changed row: another one of the batch, or a new one. One that no jar is left in goes. */
function changeHold(ledger: Ledger, act: OpenAct, shared: Shared, key: number, planned: PlannedJar): void {
  if (planned.hold === null) return;
  const jar = ledger.rows.get('jar', key);
  const old = jar.hold === null ? null : ledger.rows.get('hold', jar.hold);
  const hours = planned.hold.hours ?? old?.hours ?? null;
  const warmth = planned.hold.planned ?? old?.planned ?? null;
  const same = (one: number | undefined | null, other: number | undefined | null): boolean =>
    (one?.toFixed(2) ?? '') === (other?.toFixed(2) ?? '');
  if (old && same(old.hours, hours) && same(old.planned?.value, warmth?.value)) return;
  act.update('jar', key, { hold: shared.hold(jar.batch, { hours, planned: warmth }) });
  if (old?.basis === 'notes' && ledger.rows.where('jar', 'hold', old.key).length === 0)
    act.remove('hold', old.key);
}

function changeSeeds(
  ledger: Ledger,
  act: OpenAct,
  key: number,
  seeds: readonly SeedOf[],
  whole: boolean,
): void {
  const old = ledger.rows.where('seeding', 'jar', key);
  const same = (row: Stored['seeding'], { from }: SeedOf): boolean =>
    row.fromJar === from.fromJar && row.source === from.source;
  if (!whole) {
    for (const seed of seeds) {
      const row = old.find((one) => same(one, seed));
      if (row) act.update('seeding', row.key, { amount: seed.amount });
    }
    return;
  }
  if (seeds.length === 0) return;
  const next = seeds.map((seed): Stored['seeding'] => {
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
  replaceRows(
    act,
    'seeding',
    old,
    next,
    (row, record) => row.fromJar === record.fromJar && row.source === record.source,
    (record) => act.insert('seeding', record),
  );
}

function changeAdditions(ledger: Ledger, act: OpenAct, key: number, planned: PlannedJar): void {
  if (planned.additions.length === 0) return;
  const old = ledger.rows.where('addition', 'jar', key);
  const same = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();
  const next = planned.additions.map(({ name, actual }): Stored['addition'] => {
    const row = old.find((one) => same(one.name, name));
    return {
      jar: key,
      name: row?.name ?? name,
      planned: row?.planned ?? null,
      actual: actual ?? row?.actual ?? null,
      package: row?.package ?? null,
    };
  });
  replaceRows(
    act,
    'addition',
    old,
    next,
    (row, record) => same(row.name, record.name),
    (record) => act.insert('addition', record),
  );
}

/**
 * Writes what a row changes of a jar that is there. Blanks take nothing away, and spoilage is never taken back here.
 * @param seedsOf what seeded a planned jar, by key
 * @throws Refused where a seed can't be
 */
export function changeJar(
  ledger: Ledger,
  act: OpenAct,
  shared: Shared,
  change: PlannedChange,
  file: string,
  seedsOf: (planned: NotesPlan['jars'][number]) => SeedOf[],
): void {
  const { planned, whole } = change;
  const key = ledger.rows.keyOf('jar', change.uid);
  const jar = ledger.rows.get('jar', key);
  changeOutcome(ledger, act, key, change);
  if (change.amounts) changeSeeds(ledger, act, key, seedsOf(planned), whole);
  const { finalVolume, finalVolumeKnown, ...rest } = planned.fields;
  const summed = jar.finalVolumeKnown === null || jar.finalVolumeKnown === 'milk plus seed';
  if (change.amounts && finalVolume !== null && (summed || (whole && finalVolumeKnown === 'measured')))
    act.update('jar', key, { finalVolume, finalVolumeKnown });
  if (whole) {
    act.update('jar', key, told(rest));
    changeHold(ledger, act, shared, key, planned);
    changeAdditions(ledger, act, key, planned);
  }
  noteRow(ledger, act, file, planned, key);
}
