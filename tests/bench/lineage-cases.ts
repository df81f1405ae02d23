// Lineage against what one would use without it: bare d3-hierarchy and bare better-sqlite3, on the same families.
import Database from 'better-sqlite3';
import { type HierarchyNode, stratify, tree } from 'd3-hierarchy';
import { suggestFreshStarts } from '../../core/advice/two-weak-in-a-row';
import { drawFamily, type Looks } from '../../core/lineage/drawing';
import { buildFamily, changeFamily, Family } from '../../core/lineage/family';
import { type Hanging, layRows } from '../../core/lineage/drawing-rows';
import type { FamilyRecords } from '../../core/lineage/lineage-shapes';
import { plainJar, plainSeeding, syntheticFamily } from '../families';
import type { Case } from './bench-cases';

const PLAIN_LOOKS: Looks = {
  jar: () => ({ setWord: 'firm', outcomeKnown: true, onShelf: null }),
  mayBeThere: () => true,
  lineName: String,
  lineId: String,
  strainsOf: () => [],
};

/** d3's constructor and its stratify climb from every node to the root: n²/2 steps on one line. */
const QUADRATIC_FROM = 50_000;
const tooDeep = (jars: number): string =>
  `its constructor climbs from each of ${jars.toLocaleString('en')} nodes to the root: about ${(jars ** 2 / 2).toExponential(0)} steps`;

interface TreeRow {
  readonly id: string;
  readonly parentId: string | null;
}

/** The tree d3 can take: each jar below one seed; jars from sources below a root of their own. */
function treeRows(records: FamilyRecords): TreeRow[] {
  const parent = new Map<number, number>();
  for (const { jar, fromJar } of records.seedings)
    if (fromJar !== null && !parent.has(jar)) parent.set(jar, fromJar);
  return [
    { id: 'root', parentId: null },
    ...records.jars.map(({ key }) => ({
      id: String(key),
      parentId: parent.has(key) ? String(parent.get(key)) : 'root',
    })),
  ];
}

const stratified = (rows: TreeRow[]): HierarchyNode<TreeRow> => stratify<TreeRow>()(rows);

/** The same family in SQLite, in memory, with the two indexes that the questions need. */
function inSqlite(records: FamilyRecords): Database.Database {
  const db = new Database(':memory:');
  db.exec(`CREATE TABLE jar (key INTEGER PRIMARY KEY, made_on TEXT) STRICT;
    CREATE TABLE seeding (key INTEGER PRIMARY KEY, jar INTEGER NOT NULL REFERENCES jar, from_jar INTEGER REFERENCES jar,
      source INTEGER, volume REAL) STRICT;
    CREATE INDEX seeding_jar ON seeding (jar, from_jar);
    CREATE INDEX seeding_from ON seeding (from_jar, jar);`);
  const jar = db.prepare('INSERT INTO jar VALUES (?, ?)');
  const seeding = db.prepare('INSERT INTO seeding VALUES (?, ?, ?, ?, ?)');
  db.transaction(() => {
    for (const one of records.jars) jar.run(one.key, one.madeOn);
    for (const one of records.seedings) seeding.run(one.key, one.jar, one.fromJar, one.source, one.volumeMl);
  })();
  return db;
}

const SHALLOWEST = `WITH RECURSIVE g(jar, n) AS (
    SELECT key, 1 FROM jar WHERE key NOT IN (SELECT jar FROM seeding WHERE from_jar IS NOT NULL)
    UNION SELECT s.jar, g.n + 1 FROM g JOIN seeding s ON s.from_jar = g.jar)
  SELECT jar, max(n) AS deepest, min(n) AS shallowest FROM g GROUP BY jar`;
const ANCESTORS = `WITH RECURSIVE up(jar) AS (
    SELECT from_jar FROM seeding WHERE jar = ? AND from_jar IS NOT NULL
    UNION SELECT s.from_jar FROM up JOIN seeding s ON s.jar = up.jar WHERE s.from_jar IS NOT NULL)
  SELECT jar FROM up`;
const DESCENDANTS = `WITH RECURSIVE down(jar) AS (
    SELECT jar FROM seeding WHERE from_jar = ?
    UNION SELECT s.jar FROM down JOIN seeding s ON s.from_jar = down.jar)
  SELECT jar FROM down`;

/** In SQL a bushy family is one row for every depth of every jar; beyond this many jars nobody would wait for it. */
const SQL_COUNT_UP_TO = { bushy: 10_000, line: 100_000, lines: 100_000 } as const;

/** What the rows of a family rest on, read back from its drawing. */
function hangingOf(family: Family): Hanging {
  const { keys, parent, generation, days, lane, lanes } = drawFamily(family, PLAIN_LOOKS, 'generation');
  // Keys are given out by day, batch and letter.
  return {
    order: Int32Array.from(keys.keys()),
    parent: Int32Array.from(parent),
    column: Int32Array.from(generation),
    day: Int32Array.from(days),
    laneOf: Int32Array.from(lane),
    lanes: lanes.length,
  };
}

/** Draws a version whose cautions nobody asked for yet, as after each act. */
function drawAnew(records: () => FamilyRecords): Case['ours'] {
  let family: Family | undefined;
  return {
    prepare: () => () => drawFamily(family as Family, PLAIN_LOOKS, 'generation').height,
    before: () => {
      const { version, clearings, missing, spoiled } = (family ??= buildFamily(records()));
      family = new Family(version, clearings, missing, spoiled);
    },
  };
}

/** How high each lane is, beside its fullest column: fewer rows than that no drawing could have. */
function lanesTold(family: Family): string {
  const { y, generation, lane, lanes, height } = drawFamily(family, PLAIN_LOOKS, 'generation');
  const inColumn = new Map<string, number>();
  const fullest = lanes.map(() => 0);
  y.forEach((_, i) => {
    const of = lane[i] as number;
    const place = `${of} ${generation[i]}`;
    const count = (inColumn.get(place) ?? 0) + 1;
    inColumn.set(place, count);
    fullest[of] = Math.max(fullest[of] as number, count);
  });
  const told = lanes.map(({ top, bottom }, i) => `${bottom - top + 1} (${fullest[i]})`);
  const shown = told.length > 8 ? [...told.slice(0, 8), `and ${told.length - 8} more lanes`] : told;
  return `${height} rows; each lane’s, beside its fullest column: ${shown.join(', ')}`;
}

const shapes = ['bushy', 'line', 'lines'] as const;
const NAMES = { bushy: 'bushy family', line: 'one deep line', lines: 'many lines' } as const;
const sizes = [1_000, 10_000, 100_000] as const;

/** All lineage cases, bushy first. */
export const lineageCases: readonly Case[] = shapes.flatMap((shape) =>
  sizes.flatMap((jars): Case[] => {
    let kept: FamilyRecords | undefined;
    const records = (): FamilyRecords => (kept ??= syntheticFamily({ jars, shape, spoiledOneIn: 500 }));
    const group = `${NAMES[shape]}, ${jars.toLocaleString('en')} jars`;
    const d3 = (prepare: () => () => unknown) =>
      shape === 'line' && jars > QUADRATIC_FROM ? { skip: tooDeep(jars) } : { prepare };
    const bareTree = () =>
      d3(() => {
        const root = stratified(treeRows(records()));
        return () => tree<TreeRow>().nodeSize([1, 1])(root).x;
      });
    const walk = (up: boolean): Case => ({
      group,
      task: up ? 'ancestors of the newest' : 'descendants of the first',
      ours: {
        prepare: () => {
          const family = buildFamily(records());
          return () => (up ? family.ancestorsOf(jars) : family.descendantsOf(1)).length;
        },
      },
      others: {
        'd3-hierarchy': d3(() => {
          const root = stratified(treeRows(records()));
          const node = root.find((one) => one.id === String(up ? jars : 1)) as HierarchyNode<TreeRow>;
          return () => (up ? node.ancestors() : node.descendants()).length;
        }),
        'better-sqlite3': {
          prepare: () => {
            const read = inSqlite(records())
              .prepare(up ? ANCESTORS : DESCENDANTS)
              .pluck();
            return () => read.all(up ? jars : 1).length;
          },
        },
      },
    });
    return [
      {
        group,
        task: 'build and count',
        ours: { prepare: () => () => buildFamily(records()).keys.length },
        others: {
          'd3-hierarchy': d3(() => {
            const rows = treeRows(records());
            return () => stratified(rows).height;
          }),
          'better-sqlite3':
            jars > SQL_COUNT_UP_TO[shape]
              ? {
                  skip: 'one row for every depth of every jar: 0.5 s at 10,000 jars, 5 s at 20,000 and 15 s at 40,000 where this was written',
                }
              : {
                  prepare: () => {
                    const read = inSqlite(records()).prepare(SHALLOWEST).raw();
                    return () => read.all().length;
                  },
                },
        },
      },
      {
        group,
        task: 'lay out rows',
        ours: {
          prepare: () => {
            const hanging = hangingOf(buildFamily(records()));
            return () => layRows(hanging).row.length;
          },
        },
        others: { 'd3-hierarchy': bareTree() },
        prints: () => lanesTold(buildFamily(records())),
      },
      {
        group,
        task: 'draw (rows, days, order, cautions)',
        ours: drawAnew(records),
        others: { 'd3-hierarchy': bareTree() },
      },
      {
        group,
        task: 'build, count, lay out',
        ours: { prepare: () => () => drawFamily(buildFamily(records()), PLAIN_LOOKS, 'generation').height },
        others: {
          'd3-hierarchy': d3(() => {
            const rows = treeRows(records());
            return () => tree<TreeRow>().nodeSize([1, 1])(stratified(rows)).x;
          }),
        },
      },
      walk(true),
      walk(false),
      {
        group,
        task: 'record one more jar',
        ours: {
          prepare: () => {
            const family = buildFamily(records());
            const leaf = plainJar({ key: jars + 1, batch: jars + 1, madeOn: '2999-01-01' });
            const seedings = [plainSeeding({ key: 10 * jars, jar: leaf.key, fromJar: jars, volumeMl: 44 })];
            return () =>
              changeFamily(family, { jars: [leaf], seedings: [{ jar: leaf.key, seedings }] }).touched.length;
          },
        },
        others: {
          'count all again': { prepare: () => () => buildFamily(records()).keys.length },
        },
      },
      {
        group,
        task: 'calendar drawing',
        ours: {
          prepare: () => {
            const family = buildFamily(records());
            return () => drawFamily(family, PLAIN_LOOKS, 'calendar').height;
          },
        },
        others: {},
      },
      {
        group,
        task: 'look for weak batches in a row',
        ours: {
          prepare: () => {
            const family = buildFamily(records());
            return () => suggestFreshStarts(family, { setWord: () => 'soft' }).length;
          },
        },
        others: {},
      },
    ];
  }),
);
