// Looks through a whole ledger, whoever wrote it: the file as SQLite sees it, the history against the rows, and every rule
// that must hold. Changes nothing.
import type Database from 'better-sqlite3';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import { jarLabel } from '../../core/lineage/labels';
import { labelParts } from '../../core/rules/asked-facts';
import { brokenInvariants } from '../../core/rules/book';
import type { Finding } from '../../core/says/check-says';
import { refusalSentence } from '../../core/sentences';
import { tableOf } from './facts/tables';
import { Rows } from './facts/fact-rows';
import { loadFacts } from './rules/load';

/** So many sentences of the rule book are told; of the others how many they are. */
const MOST_RULES = 20;

/** What the history must say, and how many records say otherwise. */
const HISTORY: Readonly<Record<string, string>> = {
  'an act was left open': 'SELECT count(*) FROM open_act WHERE act IS NOT NULL',
  'a record has another number of forms than were kept':
    'SELECT count(*) FROM record r WHERE form_no <> 1 + (SELECT count(*) FROM journal j WHERE j.record = r.key)',
  'a record ended otherwise than its history says': `
    SELECT count(*) FROM record r WHERE gone_in IS NOT (SELECT CASE op WHEN 'take' THEN act END FROM journal j
      WHERE j.record = r.key ORDER BY j.key DESC LIMIT 1)`,
  'something was taken away twice, or changed while it was away': `
    SELECT count(*) FROM (SELECT op, lag(op) OVER (PARTITION BY record ORDER BY key) AS before FROM journal)
     WHERE (op = 'back') <> coalesce(before = 'take', 0)`,
  'a record was changed before it was made':
    'SELECT count(*) FROM journal j JOIN record r ON r.key = j.record WHERE j.act < r.made_in',
  'an act took back one that came later': `
    SELECT (SELECT count(*) FROM act WHERE undoes >= key) + (SELECT count(*) FROM undone_with WHERE undoes >= act)`,
  ...Object.fromEntries(
    FACT_KINDS.map(tableOf).flatMap((table) => [
      [
        `a record of ${table} is not there`,
        `SELECT count(*) FROM record r WHERE kind = '${table}' AND gone_in IS NULL
            AND NOT EXISTS (SELECT 1 FROM ${table} t WHERE t.key = r.key)`,
      ],
      [
        `something stands in ${table} that no act made`,
        `SELECT count(*) FROM ${table} t WHERE NOT EXISTS
           (SELECT 1 FROM record r WHERE r.key = t.key AND r.kind = '${table}' AND r.gone_in IS NULL)`,
      ],
    ]),
  ),
};

const portionOf = (table: string, jar: string): string =>
  `SELECT count(*) FROM ${table} t JOIN portion p ON p.key = t.portion WHERE p.jar IS NOT t.${jar}`;

/** What the tables' own triggers hold, asked of what stands there. */
const TABLE_RULES: Readonly<Record<string, string>> = {
  'a portion that was looked at is of its jar': portionOf('observation', 'jar'),
  'a portion that was served is of its jar': portionOf('serving', 'jar'),
  'a portion that was chosen is of its jar': portionOf('choice', 'jar'),
  'a portion that seeds is of the jar that seeds': portionOf('seeding', 'from_jar'),
  'a portion is split off one that was there before, of the same jar': `
    SELECT count(*) FROM portion t JOIN portion p ON p.key = t.of_portion WHERE p.jar <> t.jar OR p.key >= t.key`,
  'a photograph is of the jar that was looked at': `
    SELECT count(*) FROM photograph t JOIN observation o ON o.key = t.observation WHERE o.jar <> t.jar`,
  'a probe sits in a jar of its hold': `
    SELECT count(*) FROM series t WHERE jar IS NOT NULL
       AND NOT EXISTS (SELECT 1 FROM stay s WHERE s.jar = t.jar AND s.hold = t.hold)`,
  'a treatment is of a jar of its trial': `
    SELECT count(*) FROM treatment t JOIN trial o ON o.key = t.trial JOIN jar j ON j.key = t.jar WHERE j.batch <> o.batch`,
  'readings are as many as they are said to be': `
    SELECT count(*) FROM reading_block b LEFT JOIN reading_block f ON f.key = b.follows
     WHERE b.n <> coalesce(f.n, 0) + (SELECT count(*) FROM reading r WHERE r.block = b.key)`,
};

const counted = (db: Database.Database, sql: string): number => Number(db.prepare(sql).pluck().get());

/** The file itself, page by page. */
export function* fileFindings(db: Database.Database): Generator<Finding> {
  const found = db.pragma('integrity_check(5)') as { integrity_check: string }[];
  for (const { integrity_check: what } of found)
    if (what !== 'ok') yield { code: 'file', what: what.slice(0, 200) };
}

/** References, history and tables. */
export function* recordFindings(db: Database.Database): Generator<Finding> {
  const lost = new Map<string, number>();
  for (const { table } of db.pragma('foreign_key_check') as { table: string }[])
    lost.set(table, (lost.get(table) ?? 0) + 1);
  for (const [kind, count] of lost) yield { code: 'points nowhere', kind, count };
  for (const [what, sql] of Object.entries(HISTORY)) {
    const count = counted(db, sql);
    if (count > 0) yield { code: 'history', what, count };
  }
  for (const [what, sql] of Object.entries(TABLE_RULES)) {
    const count = counted(db, sql);
    if (count > 0) yield { code: 'tables', what, count };
  }
}

/** The rule book, asked of everything. */
export function* ruleFindings(db: Database.Database): Generator<Finding> {
  const rows = new Rows(db);
  const all = (table: string): number[] => rows.prepare(`SELECT key FROM ${table}`).pluck().all() as number[];
  const everything = { jars: new Set(all('jar')), holds: all('hold'), packages: all('package') };
  const facts = loadFacts(rows, everything, (jar) => jarLabel(labelParts(jar), true));
  let count = 0;
  for (const broken of brokenInvariants(facts)) {
    count += 1;
    if (count <= MOST_RULES) yield { code: 'rule', sentence: refusalSentence(broken) };
  }
  if (count > MOST_RULES) yield { code: 'more rules', count: count - MOST_RULES };
}
