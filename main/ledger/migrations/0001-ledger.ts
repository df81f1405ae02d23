// The first ledger: every record of core/ledger/records.ts as a STRICT table, the acts and their journal.
// Released: never edited again (tests/ledger/migrations.test.ts holds its hash); what changes comes as 0002.
//
// A row is written only under an open act (`open_act`), and each write leaves the row's form before and after in
// `journal`. Acts and journal refuse update and delete.
import { tableSql } from './journalled';

const text = (name: string, max: number, more = ''): string =>
  `${name} TEXT CHECK (length(${name}) <= ${max})${more}`;
const name = (column: string): string =>
  `${column} TEXT NOT NULL CHECK (length(${column}) BETWEEN 1 AND 200)`;
const day = (column: string): string =>
  `${column} TEXT CHECK (${column} GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]')`;
const oneOf = (column: string, words: readonly string[], more = ''): string =>
  `${column} TEXT CHECK (${column} IN (${words.map((word) => `'${word}'`).join(', ')}))${more}`;
const flag = (column: string, more = ' NOT NULL'): string =>
  `${column} INTEGER CHECK (${column} IN (0, 1))${more}`;
const list = (column: string): string =>
  `${column} TEXT NOT NULL CHECK (json_valid(${column}) AND json_type(${column}) = 'array')`;
const key = (column: string, table: string, more = ''): string =>
  `${column} INTEGER${more} REFERENCES ${table} (key) ON DELETE RESTRICT`;
const note = (): string[] => [
  text('note', 10_000),
  // For merging later: a private note stays with its keeper.
  'note_private INTEGER NOT NULL DEFAULT 1 CHECK (note_private IN (0, 1))',
];
const amount = (column: string): string[] => [
  `${column}_value REAL CHECK (${column}_value >= 0)`,
  `${column}_unit TEXT CHECK (${column}_unit IN ('mL', 'g', 'pieces', 'CFU'))`,
  text(`${column}_typed`, 200, ` CHECK ((${column}_value IS NULL) = (${column}_unit IS NULL))`),
];
const temperature = (column: string): string[] => [
  `${column}_value REAL CHECK (${column}_value BETWEEN -90 AND 150)`,
  text(`${column}_typed`, 200),
];
const price = (column: string): string[] => [
  `${column}_minor INTEGER CHECK (${column}_minor >= 0)`,
  `${column}_currency TEXT CHECK (${column}_currency GLOB '[A-Z][A-Z][A-Z]')`,
  text(`${column}_typed`, 200, ` CHECK ((${column}_minor IS NULL) = (${column}_currency IS NULL))`),
];

/** Seeds first, so that a table stands after all it refers to. */
const tables: Record<string, readonly string[]> = {
  source: [
    name('name'),
    oneOf('form', ['capsules', 'tablets', 'sachets', 'powder', 'culture']),
    list('strains'),
    'blend_total_per_piece REAL CHECK (blend_total_per_piece > 0)',
    oneOf('guaranteed', ['manufacture', 'expiry']),
    text('received_from', 200),
    'known_generations INTEGER CHECK (known_generations >= 1)',
    ...note(),
  ],
  package: [
    oneOf('of', ['source', 'milk', 'addition'], ' NOT NULL'),
    key('source', 'source', " CHECK (source IS NULL OR of = 'source')"),
    name('name'),
    ...amount('size'),
    ...price('price'),
    day('bought_on'),
    day('opened_on'),
    day('best_before'),
    ...note(),
  ],
  // made_on is null only for the batch that stands for a lost jar of unknown day.
  batch: [day('made_on'), text('word', 200), ...note()],
  hold: [
    key('batch', 'batch', ' NOT NULL'),
    text('started_at', 40),
    text('ended_at', 40),
    'hours REAL CHECK (hours > 0)',
    ...temperature('planned'),
    oneOf('probe', ['air', 'bath', 'jar']),
    list('readings'),
    oneOf('basis', ['recorded', 'notes'], ' NOT NULL'),
    ...note(),
  ],
  jar: [
    key('batch', 'batch', ' NOT NULL'),
    'letter TEXT NOT NULL CHECK (length(letter) BETWEEN 1 AND 20)',
    key('hold', 'hold'),
    oneOf('state', ['planned', 'made', 'mistake', 'lost'], ' NOT NULL'),
    text('vessel', 200),
    ...amount('final_volume'),
    oneOf('final_volume_known', ['measured', 'filled to the vessel', 'milk plus seed']),
    text('milk', 200),
    ...amount('milk_amount'),
    key('milk_package', 'package'),
    'count_per_ml REAL CHECK (count_per_ml > 0)',
    flag('on_shelf', ''),
    day('gone_on'),
    ...note(),
  ],
  addition: [
    key('jar', 'jar', ' NOT NULL'),
    name('name'),
    ...amount('planned'),
    ...amount('actual'),
    key('package', 'package'),
  ],
  portion: [
    key('jar', 'jar', ' NOT NULL'),
    oneOf('part', ['whey', 'curd', 'mixed']),
    oneOf('place', ['fridge', 'freezer', 'dried'], ' NOT NULL'),
    'pieces INTEGER CHECK (pieces > 0)',
    ...amount('amount'),
    day('kept_on') + ' NOT NULL',
    day('gone_on'),
    flag('reserve'),
    ...note(),
  ],
  seeding: [
    key('jar', 'jar', ' NOT NULL'),
    key('from_jar', 'jar', ' CHECK (from_jar <> jar)'),
    key('portion', 'portion', ' CHECK (portion IS NULL OR from_jar IS NOT NULL)'),
    oneOf('part', ['whey', 'curd', 'mixed']),
    key('source', 'source', ' CHECK ((source IS NULL) <> (from_jar IS NULL))'),
    key('package', 'package'),
    ...amount('amount'),
  ],
  outcome: [
    key('jar', 'jar', ' NOT NULL UNIQUE'),
    'early_check_hours REAL CHECK (early_check_hours >= 0)',
    oneOf('early_set', ['loose', 'starting', 'set']),
    'early_ph REAL CHECK (early_ph BETWEEN 0 AND 14)',
    flag('early_sour', ''),
    'set_after_hours REAL CHECK (set_after_hours >= 0)',
    'set_by_hours REAL CHECK (set_by_hours >= 0)',
    flag('set_at_take_out', ''),
    oneOf('set_word', ['runny', 'soft', 'spoonable', 'firm', 'very firm']),
    text('texture', 200),
    oneOf('whey', ['none', 'a little', 'some', 'a lot']),
    oneOf('tang', ['none', 'mild', 'clear', 'sharp']),
    text('smell', 200),
    text('colour', 200),
    'ph REAL CHECK (ph BETWEEN 0 AND 14)',
    oneOf('ph_how', ['meter', 'strip']),
    list('signs'),
    oneOf('bubbles', ['none', 'fine']),
    flag('power_cut', ''),
    'power_cut_hours REAL CHECK (power_cut_hours IS NULL OR (power_cut_hours >= 0 AND power_cut IS 1))',
    flag('spoiled_said'),
    oneOf('seen_at', ['take-out', 'after opening']),
    'opened_days INTEGER CHECK (opened_days >= 0)',
    flag('fibre_did_this'),
    ...note(),
  ],
  photograph: [
    key('jar', 'jar', ' NOT NULL'),
    "sha256 TEXT NOT NULL CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*')",
    'width INTEGER NOT NULL CHECK (width > 0)',
    'height INTEGER NOT NULL CHECK (height > 0)',
    text('caption', 200),
  ],
  clearing: [
    key('jar', 'jar', ' NOT NULL'),
    key('of', 'jar', ' NOT NULL'),
    'reason TEXT NOT NULL CHECK (length(reason) BETWEEN 3 AND 10000)',
  ],
  preferences: [
    oneOf('theme', ['system', 'light', 'dark'], ' NOT NULL'),
    oneOf('temperatures', ['°C', '°F'], ' NOT NULL'),
    oneOf('volumes', ['metric', 'spoons'], ' NOT NULL'),
    oneOf('spoons', ['US', 'metric', 'Australia', 'UK imperial'], ' NOT NULL'),
    oneOf('dates', ['day first', 'month first'], ' NOT NULL'),
    "currency TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]')",
    'seed_fridge_days INTEGER CHECK (seed_fridge_days > 0)',
    'seed_freezer_days INTEGER CHECK (seed_freezer_days > 0)',
    'most_generations INTEGER CHECK (most_generations > 0)',
    'jar_follows_hours REAL CHECK (jar_follows_hours > 0)',
  ],
  // A row of a keeper's notes that came in: bringing the same file in again finds it here.
  note_row: [
    'file TEXT NOT NULL CHECK (length(file) BETWEEN 1 AND 500)',
    'fingerprint TEXT NOT NULL CHECK (length(fingerprint) BETWEEN 1 AND 200)',
    'occurrence INTEGER NOT NULL CHECK (occurrence >= 1)',
    'line INTEGER NOT NULL CHECK (line >= 1)',
    key('jar', 'jar'),
  ],
};

const before = `
CREATE TABLE ledger (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  uid TEXT NOT NULL CHECK (length(uid) = 36),
  demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
  made_at TEXT NOT NULL
) STRICT;
CREATE TABLE act (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 60),
  at TEXT NOT NULL CHECK (length(at) BETWEEN 17 AND 40),
  subject TEXT NOT NULL CHECK (length(subject) <= 500),
  why TEXT CHECK (length(why) <= 10000),
  undoes INTEGER REFERENCES act (key)
) STRICT;
CREATE INDEX act_undoes ON act (undoes) WHERE undoes IS NOT NULL;
CREATE TABLE open_act (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  act INTEGER REFERENCES act (key)
) STRICT;
INSERT INTO open_act (one, act) VALUES (1, NULL);
CREATE TABLE journal (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  act INTEGER NOT NULL REFERENCES act (key),
  table_name TEXT NOT NULL,
  row_key INTEGER NOT NULL,
  before TEXT CHECK (json_valid(before)),
  after TEXT CHECK (json_valid(after)),
  CHECK (before IS NOT NULL OR after IS NOT NULL)
) STRICT;
CREATE INDEX journal_act ON journal (act);
CREATE INDEX journal_row ON journal (table_name, row_key);
CREATE TABLE tombstone (
  uid TEXT PRIMARY KEY NOT NULL CHECK (length(uid) = 36),
  table_name TEXT NOT NULL,
  revision INTEGER NOT NULL,
  act INTEGER NOT NULL REFERENCES act (key)
) STRICT;
CREATE TABLE draft (
  key TEXT PRIMARY KEY NOT NULL CHECK (length(key) BETWEEN 1 AND 100),
  json TEXT NOT NULL CHECK (length(json) <= 1000000),
  saved_at TEXT NOT NULL
) STRICT;
`;

// BEFORE INSERT as well: without recursive_triggers, INSERT OR REPLACE would walk past the delete trigger.
const neverChanged = (table: string): string => `
CREATE TRIGGER ${table}_kept BEFORE UPDATE ON ${table} BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;
CREATE TRIGGER ${table}_stays BEFORE DELETE ON ${table} BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;
CREATE TRIGGER ${table}_once BEFORE INSERT ON ${table}
  WHEN EXISTS (SELECT 1 FROM ${table} WHERE key = NEW.key) BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;`;

// A seed is never made on a later day, so a loop can only run through jars of one day: the search stays there.
// A jar of unknown day has no seedings at all, so no path can slip through it.
const seedingRules = (when: string, name: string): string => `
CREATE TRIGGER seeding_rules_${name} BEFORE ${when} ON seeding BEGIN
  SELECT RAISE(ABORT, 'a jar of unknown day has no seedings')
    WHERE (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.jar) IS NULL;
  SELECT RAISE(ABORT, 'a seed is made no later than its jar')
    WHERE (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.from_jar)
        > (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.jar);
  -- A seed of an earlier day ends the search before it begins.
  SELECT RAISE(ABORT, 'a jar is not its own ancestor')
    WHERE CASE WHEN NEW.from_jar = NEW.jar THEN 1
      WHEN (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.from_jar)
        = (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.jar)
      THEN NEW.jar IN (
      WITH RECURSIVE ancestor (key) AS (
        SELECT NEW.from_jar
        UNION
        SELECT s.from_jar FROM ancestor a
          JOIN seeding s ON s.jar = a.key
          JOIN jar j ON j.key = s.from_jar
          JOIN batch b ON b.key = j.batch
         WHERE b.made_on = (SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = NEW.jar)
      )
      SELECT key FROM ancestor WHERE key IS NOT NULL) END;
  SELECT RAISE(ABORT, 'a portion is of the jar that seeds')
    WHERE NEW.portion IS NOT NULL
      AND NEW.from_jar IS NOT (SELECT jar FROM portion WHERE key = NEW.portion);
END;`;

const after = `
CREATE UNIQUE INDEX preferences_one ON preferences ((1));
CREATE UNIQUE INDEX note_row_once ON note_row (file, fingerprint, occurrence);
CREATE INDEX note_row_jar ON note_row (jar);
CREATE INDEX batch_day ON batch (made_on);
CREATE INDEX hold_batch ON hold (batch);
CREATE INDEX jar_batch ON jar (batch);
CREATE INDEX jar_hold ON jar (hold);
CREATE INDEX jar_milk_package ON jar (milk_package) WHERE milk_package IS NOT NULL;
CREATE INDEX addition_jar ON addition (jar);
CREATE INDEX addition_package ON addition (package) WHERE package IS NOT NULL;
CREATE INDEX portion_jar ON portion (jar);
CREATE INDEX seeding_jar ON seeding (jar);
CREATE INDEX seeding_from_jar ON seeding (from_jar) WHERE from_jar IS NOT NULL;
CREATE INDEX seeding_source ON seeding (source) WHERE source IS NOT NULL;
CREATE INDEX seeding_portion ON seeding (portion) WHERE portion IS NOT NULL;
CREATE INDEX seeding_package ON seeding (package) WHERE package IS NOT NULL;
CREATE INDEX package_source ON package (source) WHERE source IS NOT NULL;
CREATE INDEX photograph_jar ON photograph (jar);
CREATE INDEX clearing_jar ON clearing (jar);
CREATE INDEX clearing_of ON clearing (of);
${neverChanged('act')}
${neverChanged('journal')}
CREATE TRIGGER journal_open BEFORE INSERT ON journal
  WHEN NEW.act IS NOT (SELECT act FROM open_act) BEGIN
  SELECT RAISE(ABORT, 'no open act');
END;
${seedingRules('INSERT', 'insert')}
${seedingRules('UPDATE OF jar, from_jar, portion', 'update')}
CREATE TRIGGER jar_stays_in_batch BEFORE UPDATE OF batch ON jar WHEN NEW.batch <> OLD.batch BEGIN
  SELECT RAISE(ABORT, 'a jar stays in its batch');
END;
CREATE TRIGGER portion_stays_in_jar BEFORE UPDATE OF jar ON portion WHEN NEW.jar <> OLD.jar BEGIN
  SELECT RAISE(ABORT, 'a portion stays with its jar');
END;
CREATE TRIGGER jar_hold_insert BEFORE INSERT ON jar WHEN NEW.hold IS NOT NULL BEGIN
  SELECT RAISE(ABORT, 'a hold is of the jar''s batch') WHERE NEW.batch IS NOT (SELECT batch FROM hold WHERE key = NEW.hold);
END;
CREATE TRIGGER jar_hold_update BEFORE UPDATE OF hold ON jar WHEN NEW.hold IS NOT NULL BEGIN
  SELECT RAISE(ABORT, 'a hold is of the jar''s batch') WHERE NEW.batch IS NOT (SELECT batch FROM hold WHERE key = NEW.hold);
END;
CREATE TRIGGER batch_day_rules AFTER UPDATE OF made_on ON batch WHEN NEW.made_on IS NOT OLD.made_on BEGIN
  SELECT RAISE(ABORT, 'a jar of unknown day has no seedings')
    WHERE NEW.made_on IS NULL AND EXISTS (SELECT 1 FROM jar j JOIN seeding s ON s.jar = j.key WHERE j.batch = NEW.key);
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE EXISTS (
    SELECT 1 FROM jar j JOIN seeding s ON s.jar = j.key JOIN jar f ON f.key = s.from_jar JOIN batch b ON b.key = f.batch
     WHERE j.batch = NEW.key AND b.made_on > NEW.made_on);
  SELECT RAISE(ABORT, 'a seed is made no later than its jar') WHERE EXISTS (
    SELECT 1 FROM jar j JOIN seeding s ON s.from_jar = j.key JOIN jar c ON c.key = s.jar JOIN batch b ON b.key = c.batch
     WHERE j.batch = NEW.key AND NEW.made_on > b.made_on);
END;
`;

export default {
  version: 1,
  name: '0001-ledger',
  sql: [before, ...Object.entries(tables).map(([table, columns]) => tableSql(table, columns)), after].join(
    '\n',
  ),
} as const;
