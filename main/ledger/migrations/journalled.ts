// SQL shared by migrations that make tables of records: a row is written only under an open act, and each write leaves the
// row's form before and after in the journal. Released text: the hashes in tests/ledger/migrations.test.ts hold it.

const columnName = (definition: string): string => definition.slice(0, definition.indexOf(' '));

/** Columns whose change is a change of the record: all but the bookkeeping of `revision`. */
const formOf = (columns: readonly string[], row: 'NEW' | 'OLD'): string => {
  const names = ['key', 'uid', ...columns.map(columnName)];
  // Nulls are left out: a third of the size, and "unknown" needs no word. Put together piece by piece, which takes half
  // the time of json_object merged into {}.
  const pieces = names.map(
    (name) => `CASE WHEN ${row}.${name} IS NOT NULL THEN '"${name}":' || json_quote(${row}.${name}) END`,
  );
  return `'{' || concat_ws(',', ${pieces.join(', ')}) || '}'`;
};

const guard = `SELECT RAISE(ABORT, 'no open act') WHERE (SELECT act FROM open_act) IS NULL;`;
const journalled = (table: string, row: 'NEW' | 'OLD', before: string, after: string): string =>
  `INSERT INTO journal (act, table_name, row_key, before, after)
     VALUES ((SELECT act FROM open_act), '${table}', ${row}.key, ${before}, ${after});`;

/** A table of records and its three triggers. @param columns definitions, each beginning with the column's name */
export const tableSql = (table: string, columns: readonly string[]): string => `
CREATE TABLE ${table} (
  key INTEGER PRIMARY KEY AUTOINCREMENT,
  uid TEXT NOT NULL UNIQUE CHECK (length(uid) = 36),
  revision INTEGER NOT NULL DEFAULT 1 CHECK (revision >= 1),
  ${columns.join(',\n  ')}
) STRICT;
CREATE TRIGGER ${table}_insert AFTER INSERT ON ${table} BEGIN
  ${guard}
  ${journalled(table, 'NEW', 'NULL', formOf(columns, 'NEW'))}
  DELETE FROM tombstone WHERE uid = NEW.uid;
END;
CREATE TRIGGER ${table}_update AFTER UPDATE ON ${table} BEGIN
  ${guard}
  SELECT RAISE(ABORT, 'a record keeps its key and id') WHERE NEW.key <> OLD.key OR NEW.uid <> OLD.uid;
  SELECT RAISE(ABORT, 'a revision rises by one') WHERE NEW.revision <> OLD.revision + 1;
  ${journalled(table, 'NEW', formOf(columns, 'OLD'), formOf(columns, 'NEW'))}
END;
CREATE TRIGGER ${table}_delete AFTER DELETE ON ${table} BEGIN
  ${guard}
  ${journalled(table, 'OLD', formOf(columns, 'OLD'), 'NULL')}
  INSERT INTO tombstone (uid, table_name, revision, act)
    VALUES (OLD.uid, '${table}', OLD.revision, (SELECT act FROM open_act));
END;`;
