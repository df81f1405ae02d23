// SQL for a table of records. Uid, making act, home and end of a record lie in its row of `record`, whose key it shares.
// A row is written only under the open act; a change, a taking away and a bringing back leave the form there was before
// in the journal. An insert leaves none: the row as it is, or the next form before, is what was inserted. Released text:
// tests/ledger/migrations.test.ts holds its hash.

const columnName = (definition: string): string => definition.slice(0, definition.indexOf(' '));
const isConstraint = (definition: string): boolean => /^(CONSTRAINT|UNIQUE|CHECK)\b/.test(definition);

/** The row as JSON, put together piece by piece. Nulls are left out: "unknown" needs no word. */
function imageOf(columns: readonly string[]): string {
  const pieces = columns
    .filter((definition) => !isConstraint(definition))
    .map(columnName)
    .map(
      (column) => `CASE WHEN OLD.${column} IS NOT NULL THEN '"${column}":' || json_quote(OLD.${column}) END`,
    );
  // The form at home that the row had then: undoing a merge forgets what it had learned.
  const home = `(SELECT '"home_form":' || home_form FROM record WHERE key = OLD.key)`;
  return `'{' || concat_ws(',', ${[...pieces, home].join(', ')}) || '}'`;
}

const journal = (op: string, row: 'NEW' | 'OLD', before: string): string =>
  `INSERT INTO journal (act, record, op, before) VALUES ((SELECT act FROM open_act), ${row}.key, '${op}', ${before});`;

/** A table of records and its triggers. @param columns definitions, each beginning with the column's name, then constraints */
export function recordTable(table: string, columns: readonly string[]): string {
  const image = imageOf(columns);
  return `
CREATE TABLE ${table} (
  key INTEGER PRIMARY KEY REFERENCES record (key),
  ${columns.join(',\n  ')}
) STRICT;
-- Nothing to do where its record was made in the same act, which nearly all are.
CREATE TRIGGER ${table}_insert AFTER INSERT ON ${table}
  WHEN NOT EXISTS (SELECT 1 FROM record WHERE key = NEW.key AND kind = '${table}' AND gone_in IS NULL
    AND made_in = (SELECT act FROM open_act)) BEGIN
  SELECT RAISE(ABORT, 'no open act') WHERE (SELECT act FROM open_act) IS NULL;
  SELECT RAISE(ABORT, 'a row has a record of its kind, made in its own act or taken away before')
    WHERE NOT EXISTS (SELECT 1 FROM record WHERE key = NEW.key AND kind = '${table}' AND gone_in IS NOT NULL);
  INSERT INTO journal (act, record, op) VALUES ((SELECT act FROM open_act), NEW.key, 'back');
  UPDATE record SET gone_in = NULL, form_no = form_no + 1 WHERE key = NEW.key;
END;
CREATE TRIGGER ${table}_update AFTER UPDATE ON ${table} BEGIN
  SELECT RAISE(ABORT, 'no open act') WHERE (SELECT act FROM open_act) IS NULL;
  SELECT RAISE(ABORT, 'a record keeps its key and id') WHERE NEW.key <> OLD.key;
  ${journal('change', 'OLD', image)}
  UPDATE record SET form_no = form_no + 1 WHERE key = OLD.key;
END;
CREATE TRIGGER ${table}_delete AFTER DELETE ON ${table} BEGIN
  SELECT RAISE(ABORT, 'no open act') WHERE (SELECT act FROM open_act) IS NULL;
  ${journal('take', 'OLD', image)}
  UPDATE record SET gone_in = (SELECT act FROM open_act), form_no = form_no + 1 WHERE key = OLD.key;
END;`;
}
