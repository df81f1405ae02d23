// What stands around the records: ledgers, acts, the open act, the journal, blocks of readings, drafts. Released text:
// tests/ledger/migrations.test.ts holds its hash.
import { ALWAYS, line, moment, text } from './column-forms';

// BEFORE INSERT as well: without recursive_triggers, INSERT OR REPLACE would walk past the delete trigger.
const neverChanged = (table: string, same = 'key = NEW.key'): string => `
CREATE TRIGGER ${table}_kept BEFORE UPDATE ON ${table} BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;
CREATE TRIGGER ${table}_stays BEFORE DELETE ON ${table} BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;
CREATE TRIGGER ${table}_once BEFORE INSERT ON ${table} WHEN EXISTS (SELECT 1 FROM ${table} WHERE ${same}) BEGIN
  SELECT RAISE(ABORT, '${table} is never changed');
END;`;

const underAnAct = (table: string): string => `
CREATE TRIGGER ${table}_open BEFORE INSERT ON ${table} WHEN (SELECT act FROM open_act) IS NULL BEGIN
  SELECT RAISE(ABORT, 'no open act');
END;`;

export const frame = `
-- This ledger (key 1, own) and those whose records came here by hand-over or merge.
CREATE TABLE ledger (
  key INTEGER PRIMARY KEY,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  ${line('name')},
  own INTEGER NOT NULL CHECK (own IN (0, 1) AND (own = 1) = (key = 1)),
  demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
  ${moment('made_at', ALWAYS).join(',\n  ')}
) STRICT;
CREATE TABLE act (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  kind TEXT NOT NULL CHECK (length(kind) BETWEEN 1 AND 100),
  ${moment('at', ALWAYS).join(',\n  ')},
  -- What it was about, labels as they were then.
  subject TEXT NOT NULL CHECK (length(subject) <= 500),
  ${text('why', 10_000)},
  undoes INTEGER REFERENCES act (key),
  ledger INTEGER NOT NULL DEFAULT 1 REFERENCES ledger (key)
) STRICT;
CREATE INDEX act_undoes ON act (undoes) WHERE undoes IS NOT NULL;
-- Acts that were undone together with the one that an act names: newest first they were taken back as one act.
CREATE TABLE undone_with (
  act INTEGER NOT NULL REFERENCES act (key),
  undoes INTEGER NOT NULL REFERENCES act (key),
  PRIMARY KEY (act, undoes)
) STRICT;
CREATE TABLE open_act (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  act INTEGER REFERENCES act (key)
) STRICT;
INSERT INTO open_act (one, act) VALUES (1, NULL);
-- Once for all kinds: permanent id, the act that made it, its home and its form there, its form here, the act that ended it.
CREATE TABLE record (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  kind TEXT NOT NULL,
  made_in INTEGER NOT NULL REFERENCES act (key),
  home INTEGER NOT NULL DEFAULT 1 REFERENCES ledger (key),
  home_form INTEGER CHECK (home_form IS NULL OR (home_form >= 1 AND home <> 1)),
  form_no INTEGER NOT NULL DEFAULT 1 CHECK (form_no >= 1),
  gone_in INTEGER REFERENCES act (key)
) STRICT;
CREATE INDEX record_made_in ON record (made_in);
CREATE TABLE journal (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  act INTEGER NOT NULL REFERENCES act (key),
  record INTEGER NOT NULL REFERENCES record (key),
  op TEXT NOT NULL CHECK (op IN ('change', 'take', 'back')),
  before TEXT CHECK (json_valid(before)),
  CHECK ((before IS NULL) = (op = 'back'))
) STRICT;
CREATE INDEX journal_act ON journal (act);
CREATE INDEX journal_record ON journal (record);
-- Readings lie once, however often their series is changed: insert only, not in the journal, they outlive an undo.
-- A block may go on from an earlier one: then it holds only what is new.
CREATE TABLE reading_block (
  key INTEGER PRIMARY KEY,
  sha TEXT NOT NULL UNIQUE CHECK (length(sha) = 64 AND sha NOT GLOB '*[^0-9a-f]*'),
  n INTEGER NOT NULL CHECK (n >= 1),
  follows INTEGER REFERENCES reading_block (key) CHECK (follows < key)
) STRICT;
-- In the order in which they were entered.
CREATE TABLE reading (
  block INTEGER NOT NULL REFERENCES reading_block (key),
  no INTEGER NOT NULL CHECK (no >= 1),
  ${moment('at', ALWAYS).join(',\n  ')},
  c REAL NOT NULL CHECK (c BETWEEN -90 AND 150),
  left_out INTEGER NOT NULL DEFAULT 0 CHECK (left_out IN (0, 1)),
  PRIMARY KEY (block, no)
) WITHOUT ROWID, STRICT;
CREATE TABLE draft (
  key TEXT PRIMARY KEY NOT NULL CHECK (length(key) BETWEEN 1 AND 100),
  json TEXT NOT NULL CHECK (length(json) <= 1000000),
  ${moment('saved_at', ALWAYS).join(',\n  ')}
) STRICT;
${neverChanged('act')}
${neverChanged('journal')}
${neverChanged('reading_block')}
${neverChanged('reading', 'block = NEW.block AND no = NEW.no')}
${underAnAct('reading_block')}
${underAnAct('reading')}
CREATE TRIGGER journal_open BEFORE INSERT ON journal WHEN NEW.act IS NOT (SELECT act FROM open_act) BEGIN
  SELECT RAISE(ABORT, 'no open act');
END;
-- A replaced id is caught by the references to its key, a replaced key here.
CREATE TRIGGER record_new BEFORE INSERT ON record
  WHEN NEW.made_in IS NOT (SELECT act FROM open_act) OR NEW.form_no <> 1 OR NEW.gone_in IS NOT NULL
    OR EXISTS (SELECT 1 FROM record WHERE key = NEW.key) BEGIN
  SELECT RAISE(ABORT, 'no open act') WHERE NEW.made_in IS NOT (SELECT act FROM open_act);
  SELECT RAISE(ABORT, 'a form number rises by one') WHERE NEW.form_no <> 1 OR NEW.gone_in IS NOT NULL;
  SELECT RAISE(ABORT, 'a record keeps its key and id');
END;
CREATE TRIGGER record_stays BEFORE DELETE ON record BEGIN
  SELECT RAISE(ABORT, 'a record keeps its key and id');
END;
CREATE TRIGGER record_rules BEFORE UPDATE ON record BEGIN
  SELECT RAISE(ABORT, 'no open act') WHERE (SELECT act FROM open_act) IS NULL;
  SELECT RAISE(ABORT, 'a record keeps its key and id')
    WHERE NEW.key <> OLD.key OR NEW.uid <> OLD.uid OR NEW.kind <> OLD.kind OR NEW.made_in <> OLD.made_in
      OR NEW.home <> OLD.home;
  -- The form at home is learned without a form here.
  SELECT RAISE(ABORT, 'a form number rises by one')
    WHERE NEW.form_no <> OLD.form_no + 1
      AND NOT (NEW.form_no = OLD.form_no AND NEW.gone_in IS OLD.gone_in AND NEW.home_form IS NOT OLD.home_form);
  SELECT RAISE(ABORT, 'a record ends in the open act')
    WHERE NEW.gone_in IS NOT OLD.gone_in AND NEW.gone_in IS NOT NULL AND NEW.gone_in <> (SELECT act FROM open_act);
END;
CREATE TRIGGER ledger_kept BEFORE UPDATE ON ledger
  WHEN NEW.key <> OLD.key OR NEW.uid <> OLD.uid OR NEW.own <> OLD.own BEGIN
  SELECT RAISE(ABORT, 'a ledger keeps its id');
END;
CREATE TRIGGER ledger_stays BEFORE DELETE ON ledger BEGIN
  SELECT RAISE(ABORT, 'a ledger keeps its id');
END;`;
