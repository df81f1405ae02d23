// What must hold of a ledger, as plain SQL over its file, written from the design's words and not from the rule book: nothing
// of core/rules is imported here. Each check lists the rows that break it. The facts are read through views, so that where
// they lie is said once.
import type Database from 'better-sqlite3';

/** The day of a moment as the keeper's clock had it. */
const dayOf = (moment: string): string => `date(${moment} + ${moment}_off * 60, 'unixepoch')`;

/** Where the facts lie; 1 g of a culture, of curd or of whey is taken as 1 mL. `gone`, `kept`, `warm` and so on are the words of the design. */
const VIEWS: Readonly<Record<string, string>> = {
  c_jar: `SELECT j.key, r.uid, j.state, j.letter, b.key AS batch, b.made_on AS day, b.word,
            coalesce(b.made_on, b.made_from) AS first, coalesce(b.made_on, b.made_to) AS last,
            CASE WHEN j.final_volume_u IN ('mL', 'g') THEN j.final_volume_v END AS ml
          FROM jar j JOIN record r ON r.key = j.key JOIN batch b ON b.key = j.batch`,
  c_portion: `SELECT key, jar, of_portion, part, kept_on AS kept, reserve, amount_v AS amount,
            coalesce(pieces, CASE amount_u WHEN 'pieces' THEN amount_v END) AS pieces,
            CASE WHEN amount_u IN ('mL', 'g') THEN amount_v END AS ml,
            CASE WHEN amount_u IN ('mL', 'g') AND amount_v > 0 THEN amount_v / pieces END AS each FROM portion`,
  // Of one that may have been another nobody knows how much it took; a powder that was weighed has no volume.
  c_seeding: `SELECT s.key, s.jar, s.from_jar AS seed, s.portion, s.source,
            CASE WHEN s.either IS NULL AND s.actual_u = 'pieces' THEN s.actual_v END AS pieces,
            CASE WHEN s.either IS NOT NULL THEN NULL
                 WHEN s.actual_u = 'mL' OR (s.actual_u = 'g' AND s.from_jar IS NOT NULL) THEN s.actual_v
                 WHEN s.actual_u = 'pieces' THEN s.actual_v * p.each END AS ml,
            j.state IN ('made', 'lost') AS took
          FROM seeding s JOIN jar j ON j.key = s.jar LEFT JOIN c_portion p ON p.key = s.portion`,
  c_moved: `SELECT m.key, coalesce(m.jar, p.jar) AS jar, m.portion, m.kind, coalesce(m.day, ${dayOf('m.at')}) AS day, m.at,
            CASE WHEN m.amount_u IN ('mL', 'g') THEN m.amount_v END AS ml, m.amount_v AS amount,
            coalesce(m.pieces, CASE m.amount_u WHEN 'pieces' THEN m.amount_v END) AS pieces
          FROM movement m LEFT JOIN portion p ON p.key = m.portion`,
  // Nothing is left: gone, or given or discarded with no amount; until a later word says where it is. Where it was before that
  // is no such word.
  c_gone: `SELECT m.key, m.jar, m.portion, m.day, m.at FROM c_moved m
            WHERE (m.kind = 'gone' OR (m.kind IN ('given', 'discarded') AND m.amount IS NULL AND m.pieces IS NULL))
              AND NOT EXISTS (SELECT 1 FROM c_moved l WHERE l.jar = m.jar AND l.portion IS m.portion AND l.key > m.key
                AND l.kind IN ('still there', 'fridge', 'freezer') AND NOT coalesce(l.day < m.day, 0))`,
  c_warm: `SELECT t.key, t.jar, t.hold, h.began, h.ended, t.came, t.went,
            coalesce(${dayOf('t.went')}, ${dayOf('h.ended')}) AS ended_on,
            CASE WHEN h.began IS NOT NULL AND h.ended IS NOT NULL THEN (h.ended - h.began) / 3600.0 ELSE h.hours END AS hours
           FROM stay t JOIN hold h ON h.key = t.hold`,
  c_seen: `SELECT o.key, o.jar, o.portion, o.at, o.stage, a.ph, o.set_after_hours, o.set_by_hours, o.days_open, o.power_cut_hours,
            coalesce(o.day, ${dayOf('o.at')}) AS day FROM observation o LEFT JOIN acidity a ON a.observation = o.key`,
  c_use: `SELECT t.jar, u.package, 'milk' AS is_of, NULL AS source FROM use u JOIN milk t ON t.key = u.milk
          UNION ALL SELECT t.jar, u.package, 'addition', NULL FROM use u JOIN addition t ON t.key = u.addition
          UNION ALL SELECT t.jar, u.package, 'source', t.source FROM use u JOIN seeding t ON t.key = u.seeding`,
};

/** When a seeding was first written, when a jar was last marked as a mistake, and when days of being open were told. */
const HISTORY: Readonly<Record<string, string>> = {
  c_written: `SELECT s.key AS seeding, r.made_in AS act FROM seeding s JOIN record r ON r.key = s.key`,
  c_mistaken: `SELECT record AS jar, max(act) AS act FROM journal
                WHERE op = 'change' AND json_extract(before, '$.letter') IS NOT NULL
                  AND json_extract(before, '$.state') IS NOT 'mistake' GROUP BY 1`,
  c_told: `SELECT o.key AS observation, date(a.at + a.at_off * 60, 'unixepoch') AS day FROM observation o
             JOIN record r ON r.key = o.key
             JOIN act a ON a.key = r.made_in OR a.key IN (SELECT act FROM journal WHERE record = o.key)`,
};

/** What must hold → the rows that break it. `@today` is the day it is for the keeper. */
const CHECKS: Readonly<Record<string, string>> = {
  'no jar descends from itself': `
    WITH RECURSIVE up (jar, ancestor) AS (
      SELECT jar, seed FROM c_seeding WHERE seed IS NOT NULL
      UNION SELECT u.jar, s.seed FROM up u JOIN c_seeding s ON s.jar = u.ancestor WHERE s.seed IS NOT NULL)
    SELECT jar FROM up WHERE jar = ancestor`,
  'a seed is made no later than its jar': `
    SELECT s.key FROM c_seeding s JOIN c_jar j ON j.key = s.jar JOIN c_jar f ON f.key = s.seed WHERE f.first > j.last`,
  'what a jar descends from by way of jars of ranges is made no later than it': `
    WITH RECURSIVE before (jar, first) AS (
      SELECT s.jar, f.first FROM c_seeding s JOIN c_jar f ON f.key = s.seed
      UNION SELECT s.jar, b.first FROM before b JOIN c_jar r ON r.key = b.jar AND r.day IS NULL JOIN c_seeding s ON s.seed = b.jar)
    SELECT b.jar FROM before b JOIN c_jar j ON j.key = b.jar WHERE b.first > j.last`,
  'a jar of unknown day has no seeds': `SELECT s.key FROM c_seeding s JOIN c_jar j ON j.key = s.jar WHERE j.last IS NULL`,
  'a made jar is seeded by no planned one': `
    SELECT s.key FROM c_seeding s JOIN c_jar j ON j.key = s.jar JOIN c_jar f ON f.key = s.seed
     WHERE f.state IN ('planned', 'not made') AND j.state IN ('made', 'lost')`,
  'a jar entered by mistake seeded nothing that was written down later': `
    SELECT s.key FROM c_seeding s JOIN c_jar f ON f.key = s.seed JOIN c_mistaken m ON m.jar = f.key
      JOIN c_written w ON w.seeding = s.key WHERE f.state = 'mistake' AND w.act > m.act`,
  'a seeding comes from one jar or one source': `SELECT key FROM c_seeding WHERE (seed IS NULL) = (source IS NULL)`,
  'a portion that seeds is of the jar that seeds': `
    SELECT s.key FROM c_seeding s JOIN c_portion p ON p.key = s.portion WHERE p.jar IS NOT s.seed`,
  'no jar is older than anyone keeps one': `SELECT key FROM c_jar WHERE first < '1990-01-01'`,
  'no jar is made on a day to come': `SELECT key FROM c_jar WHERE state IN ('made', 'lost') AND first > @today`,
  'a jar that is made is made on a day, or between two': `
    SELECT key FROM c_jar WHERE state NOT IN ('lost', 'mistake') AND (first IS NULL OR last IS NULL OR (day IS NULL AND state = 'planned'))`,
  'a portion is kept once its jar was made': `
    SELECT p.key FROM c_portion p JOIN c_jar j ON j.key = p.jar WHERE p.kept < j.first`,
  'a portion is kept before it seeds': `
    SELECT s.key FROM c_seeding s JOIN c_portion p ON p.key = s.portion JOIN c_jar j ON j.key = s.jar WHERE p.kept > j.last`,
  'nothing is moved or gone before it was made or kept': `
    SELECT m.key FROM c_moved m JOIN c_jar j ON j.key = m.jar LEFT JOIN c_portion p ON p.key = m.portion
     WHERE m.day < j.first OR m.day < p.kept`,
  'nothing is moved, seen or kept on a day to come': `
    SELECT key FROM c_moved WHERE day > @today UNION ALL SELECT key FROM c_seen WHERE day > @today
    UNION ALL SELECT key FROM c_portion WHERE kept > @today`,
  'nothing is seen before it was made': `SELECT o.key FROM c_seen o JOIN c_jar j ON j.key = o.jar WHERE o.day < j.first`,
  'what is split off a portion was kept later, and is of the same jar': `
    SELECT p.key FROM c_portion p JOIN c_portion w ON w.key = p.of_portion WHERE p.kept < w.kept OR p.jar <> w.jar`,
  'what is gone seeds nothing': `
    SELECT s.key FROM c_seeding s JOIN c_jar j ON j.key = s.jar
      JOIN c_gone g ON g.jar = s.seed AND g.portion IS s.portion WHERE g.day < j.first`,
  'nothing is done with what is gone': `
    SELECT m.key FROM c_moved m JOIN c_gone g ON g.jar = m.jar AND g.portion IS m.portion AND g.key <> m.key
     WHERE m.kind <> 'still there'
       AND CASE WHEN m.at IS NOT NULL AND g.at IS NOT NULL THEN m.at > g.at ELSE m.day > g.day END
    UNION ALL SELECT p.key FROM c_portion p JOIN c_gone g ON g.jar = p.jar AND g.portion IS p.of_portion WHERE p.kept > g.day`,
  'cubes are frozen before they seed': `
    SELECT s.key FROM seeding s JOIN portion p ON p.key = s.portion AND p.place = 'fridge' JOIN c_jar j ON j.key = s.jar
     WHERE s.actual_u = 'pieces' AND s.either IS NULL
       AND j.last < (SELECT min(m.day) FROM c_moved m WHERE m.portion = p.key AND m.kind = 'freezer')`,
  'all seed of a jar fits into it': `
    SELECT j.key FROM c_jar j JOIN c_seeding s ON s.jar = j.key GROUP BY j.key HAVING sum(s.ml) > j.ml * 1.0101`,
  'no seed is more than its own jar held': `
    SELECT s.key FROM c_seeding s JOIN c_jar f ON f.key = s.seed WHERE s.ml > f.ml * 1.0101`,
  'a portion is no more than its jar held': `
    SELECT p.key FROM c_portion p JOIN c_jar j ON j.key = p.jar WHERE p.part IS NOT 'whey' AND p.ml > j.ml * 1.0101`,
  'a portion is of something': `SELECT key FROM c_portion WHERE amount = 0`,
  'what was kept and seeded of a jar is together no more than it held': `
    SELECT j.key FROM c_jar j WHERE j.ml * 1.0501 <
      (SELECT coalesce(sum(ml), 0) FROM c_portion WHERE jar = j.key AND part IS NOT 'whey' AND of_portion IS NULL) +
      (SELECT coalesce(sum(ml), 0) FROM c_moved WHERE jar = j.key AND portion IS NULL) +
      (SELECT coalesce(sum(ml), 0) FROM c_seeding WHERE seed = j.key AND portion IS NULL AND took)`,
  'what was taken of a portion is no more than was kept': `
    WITH taken (portion, pieces, ml) AS (
      SELECT portion, pieces, ml FROM c_seeding WHERE portion IS NOT NULL AND took
      UNION ALL SELECT portion, pieces, ml FROM c_moved WHERE portion IS NOT NULL
      UNION ALL SELECT of_portion, pieces, ml FROM c_portion WHERE of_portion IS NOT NULL)
    SELECT p.key FROM c_portion p JOIN taken t ON t.portion = p.key GROUP BY p.key
    HAVING sum(coalesce(t.pieces, t.ml / p.each)) > p.pieces * 1.0501 OR (p.pieces IS NULL AND sum(t.ml) > p.ml * 1.0501)`,
  'a jar holds a volume or a mass, and so is what was taken of it, or pieces': `
    SELECT key FROM jar WHERE final_volume_u NOT IN ('mL', 'g') UNION ALL SELECT key FROM portion WHERE amount_u = 'CFU'
    UNION ALL SELECT key FROM movement WHERE amount_u = 'CFU'`,
  'warmth was missing within its hold': `
    SELECT i.key FROM interruption i JOIN hold h ON h.key = i.hold
     WHERE i.began < h.began OR i.ended > h.ended OR i.ended < i.began
        OR coalesce((i.ended - i.began) / 3600.0, i.hours) > coalesce((h.ended - h.began) / 3600.0, h.hours) + 1e-6`,
  // Of what was given away whoever has it may tell.
  'what is gone or discarded is seen no more': `
    SELECT o.key FROM c_seen o JOIN c_gone g ON g.jar = o.jar AND g.portion IS o.portion
     WHERE o.day > g.day AND (o.at IS NULL OR g.at IS NULL OR o.at > g.at)
       AND NOT EXISTS (SELECT 1 FROM c_gone e JOIN c_moved m ON m.key = e.key
                        WHERE e.jar = o.jar AND e.portion IS o.portion AND m.kind = 'given')`,
  'what is eaten up is seen no more': `
    SELECT o.key FROM c_seen o JOIN c_jar j ON j.key = o.jar
     WHERE o.portion IS NULL AND NOT EXISTS (SELECT 1 FROM c_moved m WHERE m.jar = o.jar AND m.portion IS NULL
             AND (m.kind NOT IN ('eaten', 'opened') OR (m.kind = 'eaten' AND (m.ml IS NULL OR m.day IS NULL))))
       AND NOT EXISTS (SELECT 1 FROM c_portion p WHERE p.jar = o.jar)
       AND NOT EXISTS (SELECT 1 FROM c_seeding s WHERE s.seed = o.jar AND s.portion IS NULL)
       AND (SELECT sum(m.ml) FROM c_moved m WHERE m.jar = o.jar AND m.portion IS NULL AND m.kind = 'eaten' AND m.day < o.day) >= j.ml`,
  'a hold ends after it began': `SELECT key FROM hold WHERE ended < began`,
  'a stay ends after it began': `SELECT key FROM stay WHERE went < came`,
  'warmth ended no earlier than the jar was made': `
    SELECT w.jar FROM c_warm w JOIN c_jar j ON j.key = w.jar WHERE w.ended_on < j.first`,
  'a jar stands in a hold while it goes on': `
    SELECT key FROM c_warm WHERE came < began OR went < began OR came > ended OR went > ended`,
  'a jar stands in one hold at a time': `
    SELECT a.key FROM stay a JOIN stay b ON b.jar = a.jar AND b.key > a.key
     WHERE a.came < coalesce(b.went, b.came) AND b.came < coalesce(a.went, a.came) OR a.came = b.came`,
  'a jar that nobody timed stands in one hold at a time, from its beginning to its end': `
    WITH span (key, jar, hold, began, ended) AS (
      SELECT t.key, t.jar, t.hold, coalesce(t.came, h.began), coalesce(t.went, h.ended) FROM stay t JOIN hold h ON h.key = t.hold)
    SELECT a.key FROM span a JOIN span b ON b.jar = a.jar AND b.key > a.key
     WHERE a.began < coalesce(b.ended, b.began) AND b.began < coalesce(a.ended, a.began) OR a.began = b.began`,
  'warmth was missing no longer than it lasted': `
    SELECT o.jar FROM c_seen o JOIN c_warm w ON w.jar = o.jar GROUP BY o.key HAVING max(o.power_cut_hours) > sum(w.hours) + 1e-6
       AND count(w.hours) = count(*)`,
  'a jar sets between two times in order': `SELECT jar FROM c_seen WHERE set_by_hours < set_after_hours`,
  'a pH is one that a jar has': `SELECT jar FROM c_seen WHERE ph NOT BETWEEN 2 AND 9`,
  'a jar was as old as it was open when that was told': `
    SELECT o.jar FROM c_seen o JOIN c_jar j ON j.key = o.jar WHERE o.days_open IS NOT NULL AND o.days_open > max(0,
      coalesce(julianday(o.day), (SELECT max(julianday(t.day)) FROM c_told t WHERE t.observation = o.key)) - julianday(j.first))`,
  'of a planned jar nothing was seen, kept or moved': `
    SELECT key FROM c_jar j WHERE state IN ('planned', 'not made') AND (EXISTS (SELECT 1 FROM c_seen WHERE jar = j.key)
      OR EXISTS (SELECT 1 FROM c_portion WHERE jar = j.key) OR EXISTS (SELECT 1 FROM c_moved WHERE jar = j.key)
      OR EXISTS (SELECT 1 FROM stay WHERE jar = j.key AND (came IS NOT NULL OR went IS NOT NULL))
      OR EXISTS (SELECT 1 FROM lab_result WHERE jar = j.key) OR EXISTS (SELECT 1 FROM serving WHERE jar = j.key))`,
  'a package is used for what it is of': `
    SELECT u.jar FROM c_use u JOIN package p ON p.key = u.package
     WHERE p.of <> u.is_of OR (p.of = 'source' AND p.source IS NOT NULL AND p.source IS NOT u.source)`,
  'a package of a product is one of a source': `SELECT key FROM package WHERE source IS NOT NULL AND of <> 'source'`,
  'a package is opened once it was bought': `SELECT key FROM package WHERE opened_on < bought_on`,
};

export interface Violation {
  readonly check: string;
  readonly rows: readonly unknown[];
}

/** @returns what does not hold of a ledger; empty where it is as it must be */
export function checkLedger(db: Database.Database, today: string): Violation[] {
  for (const [name, sql] of Object.entries({ ...VIEWS, ...HISTORY }))
    db.exec(`CREATE TEMP VIEW IF NOT EXISTS ${name} AS ${sql}`);
  const found = Object.entries(CHECKS).flatMap(([check, sql]) => {
    const rows = db
      .prepare(sql)
      .pluck()
      .all(sql.includes('@today') ? { today } : {});
    return rows.length === 0 ? [] : [{ check, rows }];
  });
  const integrity = db.pragma('foreign_key_check') as unknown[];
  return integrity.length === 0 ? found : [...found, { check: 'references lead somewhere', rows: integrity }];
}

/** Jars that go by one label, as pairs of ids: who says that they are meant to is for the test to know. */
export function equalLabels(db: Database.Database): string[] {
  db.exec(`CREATE TEMP VIEW IF NOT EXISTS c_jar AS ${VIEWS.c_jar}`);
  // A range is called by the day in its middle, the earlier of two.
  const called = (jar: string): string =>
    `floor((julianday(${jar}.first) + julianday(${jar}.last)) / 2 + 0.5)`;
  return db
    .prepare(
      `SELECT a.uid || ' ' || b.uid FROM c_jar a JOIN c_jar b ON b.key > a.key AND (b.day IS NULL) = (a.day IS NULL)
          AND ${called('b')} = ${called('a')} AND lower(coalesce(b.word, '')) = lower(coalesce(a.word, '')) AND lower(b.letter) = lower(a.letter)
        WHERE a.state IN ('made', 'planned') AND b.state IN ('made', 'planned')`,
    )
    .pluck()
    .all() as string[];
}
