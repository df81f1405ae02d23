// What judgement makes of a ledger. What is recorded of each jar is kept between calls and read again only for jars that an
// act has touched since; a line is judged again only where something it rests on has changed. All reasoning is in core.
import { lineTold, type LineTold } from '../../core/advice/line-told';
import { MADE_AS_EVER, type JarRecord, type PortionRecord } from '../../core/vigour/evidence';
import { borrowedWeights } from '../../core/vigour/level/borrowed';
import type { LevelTree } from '../../core/vigour/level/tree';
import { JudgedFamily } from '../../core/vigour/judged-family';
import { JUDGED_UNASKED } from '../../core/vigour/judged-unasked';
import { shown } from '../../core/vigour/score';
import { portionEntries, portionEntry } from './entries/kept-entries';
import type { Ledger } from './ledger';
import { changesOf, countOfChanges } from './facts/act-changes';
import { madeOf, milks } from './derived/columns-of-jars';
import { outcomes } from './entries/outcome-of-jar';
import { Touched } from './derived/touched';
import { warmthOfJar, warmths } from './derived/warmth';
import { appliancesOfJars, followsIn, howJarsFollow, type Follows } from './how-jars-follow';

export class Judged {
  readonly all: JudgedFamily;
  readonly #weights = new Map<number, Float64Array>();
  readonly #scores = new Map<number, ReadonlyMap<number, number>>();
  #told: readonly LineTold[] | null = null;
  readonly #before: readonly LineTold[] | null;

  constructor(
    ledger: Ledger,
    readonly records: ReadonlyMap<number, JarRecord>,
    before: Judged | null,
  ) {
    this.all = new JudgedFamily(ledger.index.family, records, before?.all ?? null);
    this.#before = before && (before.#told ?? before.#before);
  }

  /** What is believed of each line's levels, one line apart or all. */
  trees(without: number | null = null): readonly LevelTree[] {
    return this.all.lines.filter((line) => line !== without).map((line) => this.all.line(line).level.tree);
  }

  /** Weights of the hypotheses of a line, what its keeper's other lines tell taken in. */
  weightsOf(line: number): Float64Array {
    const known =
      this.#weights.get(line) ?? borrowedWeights(this.all.line(line).level.tree, this.trees(line));
    this.#weights.set(line, known);
    return known;
  }

  /** What each line tells of the chances by generation. The same list as long as nothing of it changes. */
  get told(): readonly LineTold[] {
    if (this.#told) return this.#told;
    const now = this.all.lines.map((line) => lineTold(this.all.line(line)));
    const same = this.#before?.length === now.length && now.every((one, i) => one === this.#before?.[i]);
    this.#told = same && this.#before ? this.#before : now;
    return this.#told;
  }

  /** A jar's score, 0 to 100, by the first line it belongs to; null where it has none or is spoiled. */
  scoreOf(key: number): number | null {
    const jar = this.all.byKey.get(key);
    const line = jar?.lines[0];
    if (!jar || line === undefined || jar.spoiled) return null;
    let scores = this.#scores.get(line);
    if (!scores) {
      const scored = this.all.line(line).batches.flatMap((batch) => batch.scores);
      scores = new Map(scored.map((one) => [one.jar.key, shown(one.points)]));
      this.#scores.set(line, scores);
    }
    return scores.get(key) ?? null;
  }
}

/** Reads every jar's record in a few statements. */
function readAll({ rows, index }: Ledger, follows: Follows): Map<number, JarRecord> {
  const seen = outcomes(rows, null);
  const holds = warmths(rows);
  const made = madeOf(rows, null);
  const appliances = appliancesOfJars(rows, null);
  const portions = new Map<number, PortionRecord>(
    portionEntries(rows, null).map((portion) => [portion.key, portion]),
  );
  const taken = new Map<number, Map<number, PortionRecord>>();
  const fromPortions = rows.prepare('SELECT key, jar, portion FROM seeding WHERE portion IS NOT NULL').all();
  for (const { key, jar, portion } of fromPortions as { key: number; jar: number; portion: number }[]) {
    const record = portions.get(portion);
    if (record) taken.set(jar, (taken.get(jar) ?? new Map<number, PortionRecord>()).set(key, record));
  }
  return new Map(
    Array.from(milks(rows), ([key, milk]) => {
      const jar = index.jar(key);
      return [
        key,
        {
          key,
          outcome: seen.get(key) ?? null,
          additions: jar.additions.map((name) => ({ name })),
          milk,
          made: made.get(key) ?? MADE_AS_EVER,
          hold: holds(key),
          follows: followsIn(follows, appliances.get(key) ?? null),
          portions: taken.get(key) ?? new Map<number, PortionRecord>(),
        },
      ];
    }),
  );
}

function readOne({ rows, index }: Ledger, key: number, follows: Follows): JarRecord {
  const [milk] = rows.where('milk', 'jar', key);
  const seedings = rows.where('seeding', 'jar', key);
  return {
    key,
    outcome: outcomes(rows, [key]).get(key) ?? null,
    additions: index.jar(key).additions.map((name) => ({ name })),
    milk: milk?.name ?? null,
    made: madeOf(rows, key).get(key) ?? MADE_AS_EVER,
    hold: warmthOfJar(rows, key),
    follows: followsIn(follows, appliancesOfJars(rows, key).get(key) ?? null),
    portions: new Map(
      seedings.flatMap((seeding) =>
        seeding.portion === null ? [] : [[seeding.key, portionEntry(rows, seeding.portion)] as const],
      ),
    ),
  };
}

/** What acts after this one may have changed: jars by their record, and whether that of how jars follow a probe. */
function touchedSince({ rows }: Ledger, act: number): { jars: Set<number>; follows: boolean } | null {
  const acts = rows.prepare('SELECT key FROM act WHERE key > ? ORDER BY key').pluck().all(act) as number[];
  if (acts.reduce((sum, one) => sum + countOfChanges(rows, one), 0) > MANY) return null;
  const touched = new Touched(
    rows,
    acts.flatMap((one) => [...changesOf(rows, one)]),
  );
  return { jars: touched.jarKeys(), follows: touched.warmth };
}

interface Kept {
  readonly act: number;
  readonly follows: Follows;
  readonly records: Map<number, JarRecord>;
  readonly judged: Judged;
}
const kept = new WeakMap<Ledger, Kept>();
/** More jars, or facts, changed than this, and reading all again is quicker. */
const MANY = 500;

/** The judgement of a ledger as it now stands. */
export function judgedOf(ledger: Ledger): Judged {
  const act = ledger.rows.count('SELECT max(key) FROM act');
  const known = kept.get(ledger);
  if (known?.act === act) return known.judged;
  const touched = known && known.act < act ? touchedSince(ledger, known.act) : null;
  const now = !known || !touched || touched.follows ? howJarsFollow(ledger) : known.follows;
  const asText = ({ usual, of }: Follows): string => JSON.stringify([usual, [...of]]);
  const follows = known && asText(known.follows) === asText(now) ? known.follows : now;
  let records: Map<number, JarRecord>;
  if (known && touched && touched.jars.size <= MANY && follows === known.follows) {
    records = new Map(known.records);
    for (const key of touched.jars) {
      if (ledger.index.jars.has(key)) records.set(key, readOne(ledger, key, follows));
      else records.delete(key);
    }
  } else records = readAll(ledger, follows);
  const judged = new Judged(ledger, records, known?.judged ?? null);
  kept.set(ledger, { act, follows, records, judged });
  return judged;
}

/** Batches that are judged at a time: about ten milliseconds. */
const AT_A_TIME = 3;
const begun = new WeakMap<Ledger, { readonly judged: Judged; readonly steps: Iterator<undefined> }>();

/**
 * Judges a few more batches of what is judged unasked, so that other calls are answered between.
 * @returns whether any is left
 */
export function judgeMore(ledger: Ledger): boolean {
  if (ledger.index.jars.size > JUDGED_UNASKED) return false;
  const judged = judgedOf(ledger);
  let own = begun.get(ledger);
  if (own?.judged !== judged) begun.set(ledger, (own = { judged, steps: judged.all.judging() }));
  for (let batch = 0; batch < AT_A_TIME; batch++) if (own.steps.next().done === true) return false;
  return true;
}
