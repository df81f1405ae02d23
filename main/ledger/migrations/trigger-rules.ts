// Rules that hold whoever writes, beside those of core. Released text: tests/ledger/migrations.test.ts holds its hash.

/** The same for an insert and for an update of those columns. */
export const both = (table: string, rule: string, columns: string, body: () => string): string => `
CREATE TRIGGER ${table}_${rule}_insert BEFORE INSERT ON ${table} BEGIN
  ${body()}
END;
CREATE TRIGGER ${table}_${rule}_update BEFORE UPDATE OF ${columns} ON ${table} BEGIN
  ${body()}
END;`;

// The earliest and the latest day that a jar can have been made on.
export const firstOf = (jar: string): string =>
  `(SELECT coalesce(b.made_on, b.made_from) FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = ${jar})`;
export const lastOf = (jar: string): string =>
  `(SELECT coalesce(b.made_on, b.made_to) FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = ${jar})`;

// A seed of an earlier day can't descend from the jar, so the search for a loop stays within one day. Where days are
// ranges that reasoning fails (a path may run through a jar of "January"), and all ancestors are searched. A jar of
// which nothing of its day is known has no seedings, so no path can slip through it.
export const RANGED = 'EXISTS (SELECT 1 FROM batch WHERE made_from IS NOT NULL)';
const seedingRules = (): string => `
  SELECT RAISE(ABORT, 'a jar of unknown day has no seedings') WHERE ${lastOf('NEW.jar')} IS NULL;
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE ${firstOf('NEW.from_jar')} > ${lastOf('NEW.jar')};
  SELECT RAISE(ABORT, 'a jar is not its own ancestor')
    WHERE CASE WHEN NEW.from_jar = NEW.jar THEN 1
      WHEN ${lastOf('NEW.from_jar')} >= ${firstOf('NEW.jar')} OR ${RANGED} THEN NEW.jar IN (
      WITH RECURSIVE ancestor (key) AS (
        SELECT NEW.from_jar
        UNION
        SELECT s.from_jar FROM ancestor a
          JOIN seeding s ON s.jar = a.key
          JOIN jar j ON j.key = s.from_jar
          JOIN batch b ON b.key = j.batch
         WHERE b.made_on >= ${firstOf('NEW.jar')} OR ${RANGED}
      )
      SELECT key FROM ancestor WHERE key IS NOT NULL) END;
  SELECT RAISE(ABORT, 'a portion is of the jar that seeds')
    WHERE NEW.portion IS NOT NULL AND NEW.from_jar IS NOT (SELECT jar FROM portion WHERE key = NEW.portion);`;

const batchDays = `
CREATE TRIGGER batch_day_rules AFTER UPDATE OF made_on, made_from, made_to ON batch BEGIN
  SELECT RAISE(ABORT, 'a jar of unknown day has no seedings')
    WHERE coalesce(NEW.made_on, NEW.made_to) IS NULL
      AND EXISTS (SELECT 1 FROM jar j JOIN seeding s ON s.jar = j.key WHERE j.batch = NEW.key);
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE EXISTS (
    SELECT 1 FROM jar j JOIN seeding s ON s.jar = j.key JOIN jar f ON f.key = s.from_jar JOIN batch b ON b.key = f.batch
     WHERE j.batch = NEW.key AND coalesce(b.made_on, b.made_from) > coalesce(NEW.made_on, NEW.made_to));
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE EXISTS (
    SELECT 1 FROM jar j JOIN seeding s ON s.from_jar = j.key JOIN jar c ON c.key = s.jar JOIN batch b ON b.key = c.batch
     WHERE j.batch = NEW.key AND coalesce(NEW.made_on, NEW.made_from) > coalesce(b.made_on, b.made_to));
END;`;

// A stay whose end is not known ends where it began; one whose start is not known is taken to fill its hold for its jar.
const stayRules = (): string => `
  SELECT RAISE(ABORT, 'stays of a jar do not overlap') WHERE EXISTS (
    SELECT 1 FROM stay s WHERE s.jar = NEW.jar AND s.key <> NEW.key AND CASE
      WHEN s.came IS NULL OR NEW.came IS NULL THEN s.hold = NEW.hold
      WHEN s.came = NEW.came THEN 1
      ELSE s.came < coalesce(NEW.went, NEW.came) AND NEW.came < coalesce(s.went, s.came) END);`;

const portionOfJar = (table: string, jar: string): string =>
  both(
    table,
    'portion',
    `${jar}, portion`,
    () => `
  SELECT RAISE(ABORT, 'a portion is of its jar')
    WHERE NEW.portion IS NOT NULL AND NEW.${jar} IS NOT (SELECT jar FROM portion WHERE key = NEW.portion);`,
  );

const staysWith = (table: string, column: string, what: string): string => `
CREATE TRIGGER ${table}_keeps_${column} BEFORE UPDATE OF ${column} ON ${table} WHEN NEW.${column} IS NOT OLD.${column} BEGIN
  SELECT RAISE(ABORT, '${what}');
END;`;

export const rules = `
${both('seeding', 'rules', 'jar, from_jar, portion', seedingRules)}
${batchDays}
${both('stay', 'rules', 'jar, hold, came, went', stayRules)}
${portionOfJar('observation', 'jar')}
${portionOfJar('serving', 'jar')}
${portionOfJar('choice', 'jar')}
${both(
  'portion',
  'rules',
  'jar, of_portion',
  () => `
  SELECT RAISE(ABORT, 'a portion is split off a portion of its jar')
    WHERE NEW.of_portion IS NOT NULL AND NEW.jar IS NOT (SELECT jar FROM portion WHERE key = NEW.of_portion);`,
)}
${both(
  'photograph',
  'rules',
  'jar, observation',
  () => `
  SELECT RAISE(ABORT, 'a photograph is of the jar that was looked at')
    WHERE NEW.observation IS NOT NULL AND NEW.jar IS NOT (SELECT jar FROM observation WHERE key = NEW.observation);`,
)}
${both(
  'series',
  'rules',
  'hold, jar',
  () => `
  SELECT RAISE(ABORT, 'a probe sits in a jar of its hold')
    WHERE NEW.jar IS NOT NULL AND NOT EXISTS (SELECT 1 FROM stay WHERE jar = NEW.jar AND hold = NEW.hold);`,
)}
${both(
  'treatment',
  'rules',
  'trial, jar',
  () => `
  SELECT RAISE(ABORT, 'a treatment is of a jar of its trial')
    WHERE (SELECT batch FROM jar WHERE key = NEW.jar) IS NOT (SELECT batch FROM trial WHERE key = NEW.trial);`,
)}
${staysWith('jar', 'batch', 'a jar stays in its batch')}
${staysWith('portion', 'jar', 'a portion stays with its jar')}
${staysWith('portion', 'of_portion', 'a portion stays with what it was split off')}
CREATE TRIGGER remark_unread BEFORE UPDATE OF text ON remark
  WHEN NEW.text <> OLD.text AND NEW.read_as IS NOT NULL AND NEW.read_as IS OLD.read_as BEGIN
  SELECT RAISE(ABORT, 'a changed remark is unread again');
END;
`;
