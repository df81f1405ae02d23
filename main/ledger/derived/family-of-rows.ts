// What lineage and the screens need of each jar, read in a few statements: for the whole ledger or for some jars.
import { heatingOf } from '../../../core/safety/milk-words';
import { isSeenOut } from '../../../core/ledger/seen-out';
import type { FamilyJar, FamilySeeding, FamilySource } from '../../../core/lineage/lineage-shapes';
import { ownSafety } from '../../../core/safety/own-safety';
import { stayedHours, toHundredth } from '../../../core/ledger/hold-hours';
import { type DayRange, middleDay } from '../../../core/quantities/day-ranges';
import { takenMl } from '../../../core/ledger/portions';
import type { Jar, SetWord, Source, Strain } from '../../../core/ledger/records';
import { sourceEntries } from '../entries/larder-entries';
import type { Row as FactRow } from '../facts/tables';
import type { Rows } from '../facts/fact-rows';
import { whereabouts } from '../entries/where-it-stands';
import { observations, outcomeFrom } from '../entries/outcome-of-jar';
import { seenOf } from './seen-of-jar';
import { remarksAbout, remarkStand } from './unread';
import type { JarSafety } from '../../../core/shapes/safety-codes';

type Moved = Pick<FactRow<'movement'>, 'kind' | 'day' | 'at' | 'amount' | 'pieces'>;

/** A jar as the screens name and draw it, lineage apart. `label` is filled in by the index, which knows the others. */
export interface JarFacts {
  readonly key: number;
  readonly uid: string;
  readonly batch: number;
  readonly madeOn: string | null;
  /** The days between which it was made, where only these are known, and the one in the middle where its label names it. */
  readonly madeBetween: DayRange | null;
  readonly about: string | null;
  readonly word: string | null;
  readonly letter: string;
  readonly state: Jar['state'];
  readonly hold: number | null;
  readonly holdHours: number | null;
  readonly finalVolumeMl: number | null;
  readonly countPerMl: number | null;
  readonly onShelf: boolean | null;
  readonly setWord: SetWord | null;
  readonly ph: number | null;
  /** Neither food nor seed, for whatever reason (`safety.discard`). */
  readonly spoiled: boolean;
  readonly safety: JarSafety;
  readonly rawMilk: boolean;
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
  made_from: string | null;
  made_to: string | null;
  word: string | null;
  letter: string;
  state: Jar['state'];
  volume: number | null;
}

interface StayRow {
  jar: number;
  hold: number;
  basis: string;
  hours: number | null;
  warm_from: number | null;
  warm_to: number | null;
}

/** Restricts a statement to some keys, or to none when all are wanted. */
const among = (column: string, keys: readonly number[] | null): string =>
  keys ? `WHERE ${column} IN (SELECT value FROM json_each(?))` : '';
const given = (keys: readonly number[] | null): string[] => (keys ? [JSON.stringify(keys)] : []);

interface Multi<T> {
  add(key: number, value: T): void;
  get(key: number): readonly T[];
  entries(): IterableIterator<[number, T[]]>;
}

function multi<T>(): Multi<T> {
  const map = new Map<number, T[]>();
  return {
    add: (key, value) => {
      const list = map.get(key);
      if (list) list.push(value);
      else map.set(key, [value]);
    },
    get: (key) => map.get(key) ?? [],
    entries: () => map.entries(),
  };
}

/** A range of days, where a row tells one. */
export const rangeOf = (from: string | null, to: string | null): DayRange | null =>
  from === null || to === null ? null : { from, to };

const ms = (seconds: number | null): number | null => (seconds === null ? null : seconds * 1000);

/** What hangs on each of some jars, or of all. */
class Hanging {
  readonly #rows: Rows;
  readonly #keys: readonly number[] | null;

  constructor(rows: Rows, keys: readonly number[] | null) {
    this.#rows = rows;
    this.#keys = keys;
  }

  /** @param sql with its restriction where the keys go, as "jar AMONG" */
  #iterate<T>(sql: (among: string) => string, column = 'jar'): IterableIterator<T> {
    const text = sql(among(column, this.#keys));
    // Of a few jars at once, with a statement that is kept; of all of them one row after the other.
    if (this.#keys !== null) return (this.#rows.prepare(text).all(...given(this.#keys)) as T[]).values();
    return this.#rows.db.prepare(text).iterate() as IterableIterator<T>;
  }

  additions(): Multi<string> {
    const found = multi<string>();
    const rows = this.#iterate<{ jar: number; name: string }>(
      (of) => `SELECT jar, name FROM addition ${of} ORDER BY key`,
    );
    for (const { jar, name } of rows) found.add(jar, name);
    return found;
  }

  /** Packages that went into each jar: with its milk, what was stirred in, what seeded it, or the pot of its batch. */
  packages(): Multi<number> {
    const found = multi<number>();
    if (this.#rows.count('SELECT EXISTS (SELECT 1 FROM use)') === 0) return found;
    const of = (table: string, column: string): string =>
      `SELECT t.jar, u.package FROM ${table} t JOIN use u ON u.${column} = t.key AMONG ORDER BY t.key, u.key`;
    for (const table of ['milk', 'addition', 'seeding'])
      for (const { jar, package: box } of this.#iterate<{ jar: number; package: number }>(
        (restricted) => of(table, table).replace('AMONG', restricted),
        't.jar',
      ))
        found.add(jar, box);
    const pots = this.#iterate<{ jar: number; package: number }>(
      (restricted) =>
        `SELECT j.key AS jar, u.package FROM use u JOIN jar j ON j.batch = u.batch ${restricted} ORDER BY u.key`,
      'j.key',
    );
    for (const { jar, package: box } of pots) found.add(jar, box);
    return found;
  }

  stays(): Multi<StayRow> {
    const found = multi<StayRow>();
    const rows = this.#iterate<StayRow>(
      (of) =>
        // Hours of a hold are not those of a jar that left it by itself.
        `SELECT s.jar, s.hold, h.basis, CASE WHEN s.went IS NULL THEN h.hours END AS hours,
           coalesce(s.came, h.began) AS warm_from, coalesce(s.went, h.ended) AS warm_to
           FROM stay s JOIN hold h ON h.key = s.hold ${of} ORDER BY s.key`,
      's.jar',
    );
    for (const row of rows) found.add(row.jar, row);
    return found;
  }

  /** Measured densities (CFU/mL). */
  counts(): ReadonlyMap<number, number> {
    const rows = this.#iterate<{ jar: number; value: number }>(
      (of) =>
        `SELECT jar, value FROM lab_result ${of === '' ? 'WHERE' : `${of} AND`} what = 'count' AND jar IS NOT NULL ORDER BY key DESC`,
    );
    return new Map(Array.from(rows, ({ jar, value }) => [jar, value]));
  }

  /** The day on which each jar was first opened, where that is known. */
  opened(): ReadonlyMap<number, string> {
    const rows = this.#iterate<{ jar: number; day: string }>(
      (of) =>
        `SELECT jar, min(coalesce(day, date(at + 60 * at_off, 'unixepoch'))) AS day FROM movement
          ${of === '' ? 'WHERE' : `${of} AND`} kind = 'opened' AND jar IS NOT NULL AND (day IS NOT NULL OR at IS NOT NULL) GROUP BY jar`,
    );
    return new Map(Array.from(rows, ({ jar, day }) => [jar, day]));
  }

  /** Jars made of raw milk, as far as its name says. */
  rawMilk(): ReadonlySet<number> {
    const rows = this.#iterate<{ jar: number; name: string }>(
      // Only names that may say so are read: most are the same few.
      (of) =>
        `SELECT jar, name FROM milk ${of === '' ? 'WHERE' : `${of} AND`} (name LIKE '%raw%' OR name LIKE '%pasteur%'
           OR name LIKE '%heated%' OR name LIKE '%milch%' OR name LIKE '%cru%')`,
    );
    return new Set(Array.from(rows).flatMap(({ jar, name }) => (heatingOf(name) === 'raw' ? [jar] : [])));
  }

  whereabouts(): ReadonlyMap<number, boolean | null> {
    const moved = multi<Moved>();
    const rows = this.#iterate<{
      jar: number;
      kind: Moved['kind'];
      day: string | null;
      amount_v: number | null;
      pieces: number | null;
    }>(
      (of) =>
        `SELECT jar, kind, day, amount_v, pieces FROM movement ${of === '' ? 'WHERE' : `${of} AND`} jar IS NOT NULL ORDER BY key`,
    );
    for (const { jar, kind, day, amount_v, pieces } of rows)
      moved.add(jar, {
        kind,
        day,
        pieces,
        at: null,
        amount: amount_v === null ? null : { value: amount_v, unit: 'mL', typed: null },
      });
    return new Map(Array.from(moved.entries(), ([jar, of]) => [jar, whereabouts(of).onShelf]));
  }
}

/** Facts of all jars, or of those with the given keys, by key. Planned jars and mistakes are among them. */
export function* readFacts(rows: Rows, keys: readonly number[] | null): Generator<JarFacts> {
  const hanging = new Hanging(rows, keys);
  const [additions, packages, stays] = [hanging.additions(), hanging.packages(), hanging.stays()];
  const [counts, kept, seen] = [hanging.counts(), hanging.whereabouts(), observations(rows, keys)];
  const [opened, raw, remarked] = [hanging.opened(), hanging.rawMilk(), remarksAbout(rows, keys, false)];
  const jars = rows.db
    .prepare(
      `SELECT j.key, r.uid, j.batch, b.made_on, b.made_from, b.made_to, b.word, j.letter, j.state,
              CASE j.final_volume_u WHEN 'mL' THEN j.final_volume_v END AS volume
         FROM jar j JOIN batch b ON b.key = j.batch JOIN record r ON r.key = j.key
        ${among('j.key', keys)} ORDER BY j.key`,
    )
    .iterate(...given(keys)) as IterableIterator<JarRow>;
  for (const row of jars) {
    rows.look?.();
    const used = packages.get(row.key);
    const warm = stays.get(row.key);
    const last = warm.at(-1);
    const observed = seen.get(row.key) ?? [];
    const outcome = outcomeFrom(observed);
    const names = additions.get(row.key);
    const madeBetween = rangeOf(row.made_from, row.made_to);
    const safety = ownSafety(
      seenOf(observed, names, opened.get(row.key) ?? null, ms(warm[0]?.warm_from ?? null)),
      remarkStand(remarked.get(row.key)),
      // The latest day it can have been made on: it stayed clean for so long at least.
      row.made_on ?? row.made_to,
    );
    yield {
      key: row.key,
      uid: row.uid,
      batch: row.batch,
      madeOn: row.made_on,
      madeBetween,
      about: row.state === 'lost' || madeBetween === null ? null : middleDay(madeBetween),
      word: row.word,
      letter: row.letter,
      // One that came to nothing is as good as only planned: it is never counted.
      state: row.state,
      hold: last?.hold ?? null,
      holdHours: toHundredth(
        stayedHours(
          warm.map(({ warm_from, warm_to, hours }) => ({ from: ms(warm_from), to: ms(warm_to), hours })),
        ),
      ),
      finalVolumeMl: row.volume,
      countPerMl: counts.get(row.key) ?? null,
      onShelf: kept.get(row.key) ?? null,
      setWord: outcome?.setWord ?? null,
      ph: outcome?.ph ?? null,
      spoiled: safety.discard !== null,
      safety,
      rawMilk: raw.has(row.key),
      outcomeKnown: isSeenOut(outcome),
      additions: names,
      packages: used.length > 1 ? [...new Set(used)].toSorted((a, b) => a - b) : used,
    };
  }
}

/** Whether a jar is of the family: planned jars and mistakes are not. */
export const isOfFamily = (facts: JarFacts): boolean => facts.state === 'made' || facts.state === 'lost';

export const familyJar = (facts: JarFacts, label: string): FamilyJar => ({
  key: facts.key,
  madeOn: facts.madeOn,
  madeBetween: facts.madeBetween,
  batch: facts.batch,
  hold: facts.hold,
  letter: facts.letter,
  label,
  lost: facts.state === 'lost',
  finalVolumeMl: facts.finalVolumeMl,
  countPerMl: facts.countPerMl,
  spoiled: facts.spoiled,
  safety: facts.safety,
  rawMilk: facts.rawMilk,
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
  for (const source of sourceEntries(rows)) perPiece.set(source.key, countPerPiece(source));
  const seedings = rows.db
    .prepare(
      `SELECT s.key, s.jar, s.from_jar, s.source, s.actual_v AS amount_value, s.actual_u AS amount_unit, s.either, p.kept_on,
              p.pieces AS portion_pieces, CASE p.amount_u WHEN 'mL' THEN p.amount_v END AS portion_ml
         FROM seeding s LEFT JOIN portion p ON p.key = s.portion ${among('s.jar', keys)} ORDER BY s.key`,
    )
    .iterate(...given(keys)) as IterableIterator<{
    key: number;
    jar: number;
    from_jar: number | null;
    source: number | null;
    amount_value: number | null;
    amount_unit: string | null;
    either: number | null;
    portion_pieces: number | null;
    portion_ml: number | null;
    kept_on: string | null;
  }>;
  for (const row of seedings) {
    // Of one that may have been another nobody knows what it brought: shares are then equal, and said to be assumed.
    const amount = (unit: string): number | null =>
      row.amount_unit === unit && row.either === null ? row.amount_value : null;
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
      takenOn: row.kept_on,
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
