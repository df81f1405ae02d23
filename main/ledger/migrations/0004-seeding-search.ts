// A jar that has seeded nothing yet is nobody's ancestor: no search for a loop. As every jar is recorded and brought in before
// what it seeds, none is made but when a seed is added later, and the ledger's ranges of days cost nothing. The rules are
// those of trigger-rules.ts otherwise. Released text: tests/ledger/migrations.test.ts holds its hash.
import { both, RANGED, firstOf, lastOf } from './trigger-rules';

const seedingRules = (): string => `
  SELECT RAISE(ABORT, 'a jar of unknown day has no seedings') WHERE ${lastOf('NEW.jar')} IS NULL;
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE ${firstOf('NEW.from_jar')} > ${lastOf('NEW.jar')};
  SELECT RAISE(ABORT, 'a jar is not its own ancestor')
    WHERE CASE WHEN NEW.from_jar = NEW.jar THEN 1
      WHEN EXISTS (SELECT 1 FROM seeding WHERE from_jar = NEW.jar)
        AND (${lastOf('NEW.from_jar')} >= ${firstOf('NEW.jar')} OR ${RANGED}) THEN NEW.jar IN (
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

export default {
  version: 4,
  name: '0004-seeding-search',
  sql: `
DROP TRIGGER seeding_rules_insert;
DROP TRIGGER seeding_rules_update;
${both('seeding', 'rules', 'jar, from_jar, portion', seedingRules)}`,
} as const;
