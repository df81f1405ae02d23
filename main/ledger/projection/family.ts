// What lineage and the screens need of each jar, read in a few statements: for the whole ledger or for some jars.
import type { FamilyJar, FamilySeeding, FamilySource } from '../../../core/lineage/types';
import { isSpoiled } from '../../../core/ledger/gate';
import { holdHours, toHundredth } from '../../../core/ledger/hold-hours';
import { takenMl } from '../../../core/ledger/portions';
import type { Jar, Outcome, SetWord, Source, Strain } from '../../../core/ledger/records';
import type { Rows } from '../rows';

/** A jar as the screens name and draw it, lineage apart. `label` is filled in by the index, which knows the others. */
export interface JarFacts {
  readonly key: number;
  readonly uid: string;
  readonly batch: number;
  readonly madeOn: string | null;
  readonly word: string | null;
  readonly letter: string;
  readonly state: Jar['state'];
  readonly hold: number | null;
  readonly holdFromNotes: boolean;
  readonly holdHours: number | null;
  readonly finalVolumeMl: number | null;
  readonly countPerMl: number | null;
  readonly onShelf: boolean | null;
  readonly setWord: SetWord | null;
  readonly ph: number | null;
  readonly spoiled: boolean;
  readonly spoiledOpenedDays: number | null;
  readonly outcomeKnown: boolean;
  /** Names of what was stirred in. */
  readonly additions: readonly string[];
  readonly packages: readonly number[];
}

interface JarRow {
  key: number;
  uid: string;
  batch: number;
  made_on: string | null;
  word: string | null;
  letter: string;
  state: Jar['state'];
  hold: number | null;
  basis: string | null;
  hours: number | null;
  started_at: string | null;
  ended_at: string | null;
  final_volume_value: number | null;
  final_volume_unit: string | null;
  count_per_ml: number | null;
  on_shelf: number | null;
  milk_package: number | null;
  outcome: number | null;
  set_word: SetWord | null;
  ph: number | null;
  ph_how: Outcome['phHow'];
  set_at_take_out: number | null;
  signs: string | null;
  spoiled_said: number | null;
  seen_at: string | null;
  opened_days: number | null;
}

/** Restricts a statement to some keys, or to none when all are wanted. */
const among = (column: string, keys: readonly number[] | null): string =>
  keys ? `WHERE ${column} IN (SELECT value FROM json_each(?))` : '';
const given = (keys: readonly number[] | null): string[] => (keys ? [JSON.stringify(keys)] : []);

function multi<T>(): { add(key: number, value: T): void; get(key: number): readonly T[] } {
  const map = new Map<number, T[]>();
  return {
    add: (key, value) => {
      const list = map.get(key);
      if (list) list.push(value);
      else map.set(key, [value]);
    },
    get: (key) => map.get(key) ?? [],
  };
}

/** Facts of all jars, or of those with the given keys, by key. Planned jars and mistakes are among them. */
export function* readFacts(rows: Rows, keys: readonly number[] | null): Generator<JarFacts> {
  const additions = multi<string>();
  const packages = multi<number>();
  for (const row of rows.db
    .prepare(`SELECT jar, name, package FROM addition ${among('jar', keys)} ORDER BY key`)
    .iterate(...given(keys)) as IterableIterator<{ jar: number; name: string; package: number | null }>) {
    additions.add(row.jar, row.name);
    if (row.package !== null) packages.add(row.jar, row.package);
  }
  for (const row of rows.db
    .prepare(`SELECT jar, package FROM seeding ${among('jar', keys)} ORDER BY key`)
    .iterate(...given(keys)) as IterableIterator<{ jar: number; package: number | null }>) {
    if (row.package !== null) packages.add(row.jar, row.package);
  }
  const jars = rows.db
    .prepare(
      `SELECT j.key, j.uid, j.batch, b.made_on, b.word, j.letter, j.state, j.hold, h.basis, h.hours, h.started_at,
              h.ended_at, j.final_volume_value, j.final_volume_unit, j.count_per_ml, j.on_shelf, j.milk_package,
              o.key AS outcome, o.set_word, o.ph, o.ph_how, o.set_at_take_out, o.signs, o.spoiled_said, o.seen_at,
              o.opened_days
         FROM jar j JOIN batch b ON b.key = j.batch
         LEFT JOIN hold h ON h.key = j.hold LEFT JOIN outcome o ON o.jar = j.key
        ${among('j.key', keys)} ORDER BY j.key`,
    )
    .iterate(...given(keys)) as IterableIterator<JarRow>;
  for (const row of jars) {
    const used = [...(row.milk_package === null ? [] : [row.milk_package]), ...packages.get(row.key)];
    yield {
      key: row.key,
      uid: row.uid,
      batch: row.batch,
      madeOn: row.made_on,
      word: row.word,
      letter: row.letter,
      state: row.state,
      hold: row.hold,
      holdFromNotes: row.basis === 'notes',
      holdHours: toHundredth(
        holdHours({ hours: row.hours, startedAt: row.started_at, endedAt: row.ended_at }),
      ),
      finalVolumeMl: row.final_volume_unit === 'mL' ? row.final_volume_value : null,
      countPerMl: row.count_per_ml,
      onShelf: row.on_shelf === null ? null : row.on_shelf === 1,
      setWord: row.set_word,
      ph: row.ph,
      spoiled:
        row.outcome !== null &&
        isSpoiled({
          signs: JSON.parse(row.signs ?? '[]') as Outcome['signs'],
          spoiledSaid: row.spoiled_said === 1,
          setAtTakeOut: row.set_at_take_out === null ? null : row.set_at_take_out === 1,
          ph: row.ph,
          phHow: row.ph_how,
        }),
      spoiledOpenedDays: row.seen_at === 'after opening' ? row.opened_days : null,
      outcomeKnown: row.outcome !== null,
      additions: additions.get(row.key),
      packages: used.length > 1 ? [...new Set(used)].toSorted((a, b) => a - b) : used,
    };
  }
}

/** Whether a jar is of the family: planned jars and mistakes are not. */
export const isOfFamily = (facts: JarFacts): boolean => facts.state === 'made' || facts.state === 'lost';

export const familyJar = (facts: JarFacts, label: string): FamilyJar => ({
  key: facts.key,
  madeOn: facts.madeOn,
  batch: facts.batch,
  hold: facts.hold,
  holdFromNotes: facts.holdFromNotes,
  letter: facts.letter,
  label,
  lost: facts.state === 'lost',
  finalVolumeMl: facts.finalVolumeMl,
  countPerMl: facts.countPerMl,
  spoiled: facts.spoiled,
  spoiledOpenedDays: facts.spoiledOpenedDays,
  packages: facts.packages,
});

/** Declared count of all strains together in one piece; null where a part of it is not declared. */
export function countPerPiece(
  source: Pick<Source, 'blendTotalPerPiece'> & { strains: readonly Strain[] },
): number | null {
  if (source.blendTotalPerPiece !== null) return source.blendTotalPerPiece;
  let total = 0;
  for (const strain of source.strains) {
    if (strain.countPerPiece === null) return null;
    total += strain.countPerPiece;
  }
  return total > 0 ? total : null;
}

/** Seedings into all jars, or into those with the given keys. */
export function* readSeedings(rows: Rows, keys: readonly number[] | null): Generator<FamilySeeding> {
  const perPiece = new Map<number, number | null>();
  for (const source of rows.all('source')) perPiece.set(source.key, countPerPiece(source));
  const seedings = rows.db
    .prepare(
      `SELECT s.key, s.jar, s.from_jar, s.source, s.amount_value, s.amount_unit, p.pieces AS portion_pieces,
              CASE p.amount_unit WHEN 'mL' THEN p.amount_value END AS portion_ml
         FROM seeding s LEFT JOIN portion p ON p.key = s.portion ${among('s.jar', keys)} ORDER BY s.key`,
    )
    .iterate(...given(keys)) as IterableIterator<{
    key: number;
    jar: number;
    from_jar: number | null;
    source: number | null;
    amount_value: number | null;
    amount_unit: string | null;
    portion_pieces: number | null;
    portion_ml: number | null;
  }>;
  for (const row of seedings) {
    const amount = (unit: string): number | null => (row.amount_unit === unit ? row.amount_value : null);
    yield {
      key: row.key,
      jar: row.jar,
      fromJar: row.from_jar,
      source: row.source,
      // Cubes of a portion are weighed against other seeds by what they hold, never against capsules by their number.
      volumeMl:
        amount('mL') ??
        takenMl(
          {
            pieces: row.portion_pieces,
            amount: row.portion_ml === null ? null : { value: row.portion_ml, unit: 'mL', typed: null },
          },
          amount('pieces') === null ? null : { value: amount('pieces') ?? 0, unit: 'pieces', typed: null },
        ),
      pieces: row.from_jar === null ? amount('pieces') : null,
      countPerPiece: row.source === null ? null : (perPiece.get(row.source) ?? null),
      countDirect: amount('CFU'),
    };
  }
}

export const familySource = (
  source: { key: number; name: string } & Pick<Source, 'form' | 'knownGenerations'>,
): FamilySource => ({
  key: source.key,
  name: source.name,
  culture: source.form === 'culture',
  knownGenerations: source.knownGenerations,
});
