// Reads of batches, sources, packages, drafts and photographs.
import type { Parsed, Reply } from '../../../core/contract';
import type { Amount } from '../../../core/ledger/basics';
import { momentText } from '../../../core/ledger/stored-moments';
import { batchDay, calledDay, dayNamed } from '../../../core/lineage/labels';
import { wayTo } from '../../../core/lineage/way';
import { rangeOf } from '../derived/family-of-rows';
import { batchEntry, packageEntries, photographEntries, sourceEntries } from '../entries/larder-entries';
import type { KnownJar } from '../family-index';
import type { Ledger } from '../ledger';
import { Refused } from '../../refusal';
import { leftOfPackages } from '../derived/spent-rows';
import { familyMember, lineNames, seedLabel } from './read-views';
import { holdRecord, jarRecord, packageRecord, photographRecord, sourceRecord } from './read-records';

const byLetter = (a: KnownJar, b: KnownJar): number =>
  a.letter.length - b.letter.length || (a.letter < b.letter ? -1 : a.letter > b.letter ? 1 : a.key - b.key);

/** The batch's jars that can be seen: all but those entered by mistake. */
function jarsOfBatch(ledger: Ledger, batch: number): KnownJar[] {
  const keys = ledger.rows
    .prepare("SELECT key FROM jar WHERE batch = ? AND state <> 'mistake'")
    .pluck()
    .all(batch);
  return (keys as number[]).map((key) => ledger.index.jar(key)).toSorted(byLetter);
}

export function getBatch(ledger: Ledger, { id }: Parsed<'batch.get'>): Reply<'batch.get'> {
  const { rows } = ledger;
  const key = rows.keyOf('batch', id);
  const { uid, madeOn, madeFrom, madeTo, word, note } = batchEntry(rows, key);
  if (madeOn === null && madeFrom === null) throw new Refused('batch without a day');
  const holds = holdsOf(ledger, key);
  return {
    batch: { id: uid, madeOn, madeFrom, madeTo, word, note },
    holds: holds.map((hold) => holdRecord(ledger, hold, key)),
    plannedStarts: holds.flatMap((hold) => {
      const { uid: own, began, plannedFrom } = rows.get('hold', hold);
      return began === null && plannedFrom !== null ? [{ hold: own, at: plannedFrom }] : [];
    }),
    interruptions: holds.flatMap((hold) =>
      rows.where('interruption', 'hold', hold).map(({ uid: own, what, began, ended, hours, wasSet }) => ({
        id: own, hold: rows.uidOf('hold', hold), what, began, ended, hours, wasSet,
      })),
    ), // prettier-ignore
    jars: jarsOfBatch(ledger, key).map((jar) => jarRecord(ledger, jar.key)),
  };
}

/** Holds that were entered with a batch, and those that its jars stood in. */
const holdsOf = ({ rows }: Ledger, batch: number): number[] =>
  rows
    .prepare(
      `SELECT key FROM hold WHERE batch = ?
        UNION SELECT s.hold FROM jar j CROSS JOIN stay s ON s.jar = j.key WHERE j.batch = ? ORDER BY 1`,
    )
    .pluck()
    .all(batch, batch) as number[];

type ListedBatch = Reply<'batch.list'>['batches'][number];
interface BatchRow {
  readonly key: number;
  readonly uid: string;
  readonly madeOn: string | null;
  readonly madeFrom: string | null;
  readonly madeTo: string | null;
  readonly word: string | null;
}

/** A batch as the list shows it: what seeded it, what was stirred in, how each jar set. */
function listed(ledger: Ledger, batch: BatchRow, year: string): ListedBatch {
  const { family } = ledger.index;
  const called = calledDay(batch);
  const jars = jarsOfBatch(ledger, batch.key);
  const seeds = jars.flatMap(({ key }) =>
    (family.has(key) ? family.seedsOf(key) : ledger.rows.where('seeding', 'jar', key)).map((one) =>
      seedLabel(ledger, one),
    ),
  );
  return {
    id: batch.uid,
    madeOn: batch.madeOn,
    madeBetween: rangeOf(batch.madeFrom, batch.madeTo),
    word: batch.word,
    label: [batchDay(called, dayNamed(called)?.slice(0, 4) !== year), batch.word].filter(Boolean).join(' '),
    seeds: [...new Set(seeds)],
    additions: [...new Set(jars.flatMap(({ additions }) => additions))],
    plain: new Set(jars.map(({ additions }) => additions.length === 0)).size === 2,
    jars: jars.map((jar) => {
      const generation = family.has(jar.key) ? family.generationOf(jar.key) : null;
      return {
        id: jar.uid,
        label: jar.label,
        setWord: jar.setWord,
        outcomeKnown: jar.outcomeKnown,
        generation: generation?.deepest ?? null,
        atLeast: generation?.atLeast ?? false,
        spoiled: jar.spoiled,
        caution: generation ? family.cautionLevelOf(jar.key) : null,
      };
    }),
  };
}

/** Whether a batch says each word that was typed: its day with the year, its word, jars, seeds, what was stirred in, its note. */
function says(ledger: Ledger, row: BatchRow, batch: ListedBatch, words: readonly string[]): boolean {
  if (words.length === 0) return true;
  const told = [
    batchDay(calledDay(row), true),
    row.madeOn,
    row.madeFrom,
    row.madeTo,
    batch.word,
    ...batch.jars.flatMap(({ label, setWord }) => [label, setWord]),
    ...batch.seeds,
    ...batch.additions,
    batchEntry(ledger.rows, row.key).note,
  ];
  const text = told.filter(Boolean).join(' ').toLowerCase();
  return words.every((word) => text.includes(word));
}

/** As middleDay has it. */
const MIDDLE_DAY = `date(b.made_from, '+' || CAST((julianday(b.made_to) - julianday(b.made_from)) / 2 AS INTEGER) || ' days')`;

/** Batches that stand at some day, with a jar that can be seen. */
const listedOf = (known: string, day: string, hidden: string): string => `
  SELECT b.key AS key, r.uid, ${day} AS day, b.made_on AS madeOn, b.made_from AS madeFrom, b.made_to AS madeTo, b.word
    FROM batch b JOIN record r ON r.key = b.key
   WHERE ${known} IS NOT NULL AND (@day IS NULL OR (${day}, b.key) < (@day, @key))
     AND EXISTS (SELECT 1 FROM jar j WHERE j.batch = b.key AND j.state NOT IN (${hidden}))`;

/** Newest first, page by page; batches none of whose jars can be seen are left out. */
export function listBatches(
  ledger: Ledger,
  { before, limit, text }: Parsed<'batch.list'>,
): Reply<'batch.list'> {
  const from = before ? ledger.rows.keyOf('batch', before.id) : 0;
  const fromDay = before && (before.madeOn ?? dayNamed(calledDay(ledger.rows.get('batch', from))));
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  // Page by page, unless words are looked for: then any batch may be the next that says them.
  const found = ledger.rows
    .prepare(
      `${listedOf('b.made_on', 'b.made_on', "'mistake'")}
        UNION ALL ${listedOf('b.made_from', MIDDLE_DAY, "'mistake', 'lost'")}
        ORDER BY day DESC, key DESC LIMIT @most`,
    )
    .all({ day: fromDay, key: from, most: words.length > 0 ? -1 : limit + 1 }) as BatchRow[];
  const year = ledger.clock.today().slice(0, 4);
  const batches: ListedBatch[] = [];
  for (const row of found) {
    const batch = listed(ledger, row, year);
    if (!says(ledger, row, batch, words)) continue;
    if (batches.length === limit) return { batches, more: true };
    batches.push(batch);
  }
  return { batches, more: false };
}

export function listSources(ledger: Ledger): Reply<'source.list'> {
  const started = ledger.rows.prepare(
    `SELECT count(DISTINCT s.jar) FROM seeding s JOIN jar j ON j.key = s.jar
      WHERE s.source = ? AND j.state IN ('made', 'lost')`,
  );
  const batches = ledger.rows.prepare(
    'SELECT DISTINCT j.batch FROM seeding s JOIN jar j ON j.key = s.jar WHERE s.source = ?',
  );
  const nameOf = lineNames(ledger);
  const sources = sourceEntries(ledger.rows).map((row) => {
    const began = new Set(batches.pluck().all(row.key));
    return {
      ...sourceRecord(row),
      startedJars: Number(started.pluck().get(row.key)),
      lines: ledger.index.family.lines
        .filter(({ batch }) => began.has(batch))
        .map(({ batch }) => ({ id: ledger.rows.uidOf('batch', batch), name: nameOf(batch) })),
    };
  });
  return { sources: sources.toSorted((a, b) => a.name.localeCompare(b.name, 'en')) };
}

export function listPackages(ledger: Ledger): Reply<'package.list'> {
  const left = leftOfPackages(ledger.rows);
  return {
    packages: packageEntries(ledger.rows).map((row) => ({
      ...packageRecord(ledger, row),
      ...(left.get(row.key) ?? { uses: 0, left: null }),
    })),
  };
}

interface LastAmount {
  readonly name: string;
  readonly value: number;
  readonly unit: Amount['unit'];
  readonly typed: string | null;
}

/** As many of the last told as are looked through: who has more has used each thing lately. */
const LATEST = 3000;

/** How much of each thing was stirred into a jar last: what went in, else what was planned. */
export function usualAmounts(ledger: Ledger): Reply<'addition.usual'> {
  const told = ledger.rows
    .prepare(
      `SELECT a.name, coalesce(a.actual_v, a.planned_v) AS value,
              CASE WHEN a.actual_v IS NULL THEN a.planned_u ELSE a.actual_u END AS unit,
              CASE WHEN a.actual_v IS NULL THEN a.planned_t ELSE a.actual_t END AS typed
         FROM (SELECT * FROM addition ORDER BY key DESC LIMIT ${LATEST}) a JOIN jar j ON j.key = a.jar JOIN batch b ON b.key = j.batch
        WHERE j.state = 'made' AND coalesce(a.actual_v, a.planned_v) IS NOT NULL
        ORDER BY coalesce(b.made_on, b.made_to), a.key`,
    )
    .all() as LastAmount[];
  const last = new Map(told.map((one) => [one.name.toLowerCase(), one]));
  return {
    additions: [...last.values()].map(({ name, value, unit, typed }) => ({
      name,
      amount: { value, unit, typed },
    })),
  };
}

export function listDrafts(ledger: Ledger): Reply<'draft.list'> {
  const drafts = ledger.rows
    .prepare('SELECT key, json, saved_at, saved_at_off FROM draft ORDER BY saved_at DESC, key')
    .all() as { key: string; json: string; saved_at: number; saved_at_off: number }[];
  return {
    drafts: drafts.map(({ key, json, saved_at, saved_at_off }) => ({
      key,
      json,
      savedAt: momentText(saved_at, saved_at_off),
    })),
  };
}

export function listPhotographs(
  ledger: Ledger,
  { jar }: Parsed<'photograph.list'>,
): Reply<'photograph.list'> {
  const key = ledger.rows.keyOf('jar', jar);
  return {
    photographs: photographEntries(ledger.rows, key).map((row) => photographRecord(ledger, row)),
  };
}

/** One photograph a generation along a jar's way back. @throws Refused 'not found', 'is a mistake', 'only planned' */
export function photographsAlong(
  ledger: Ledger,
  { jar }: Parsed<'photograph.line'>,
): Reply<'photograph.line'> {
  const { rows, index } = ledger;
  const { family } = index;
  const taken = new Set(rows.prepare('SELECT DISTINCT jar FROM photograph').pluck().all() as number[]);
  return {
    photographs: wayTo(family, familyMember(ledger, jar).key).flatMap((key) => {
      const mates = () => rows.where('jar', 'batch', index.jar(key).batch).map((one) => one.key);
      const of = taken.has(key) ? key : mates().find((mate) => taken.has(mate) && family.has(mate));
      const [row] = of === undefined ? [] : photographEntries(rows, of);
      if (of === undefined || !row) return [];
      const { deepest, atLeast } = family.generationOf(of);
      const { uid, label } = index.jar(of);
      return [
        {
          jar: uid,
          label,
          generation: deepest,
          atLeast,
          mate: of !== key,
          photograph: photographRecord(ledger, row),
        },
      ];
    }),
  };
}
