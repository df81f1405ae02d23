// Writes a ledger as tables into a folder of their own. It is made beside its place and takes its name once it is whole.
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Parsed, Reply } from '../../core/contract';
import { jarColumns } from '../../core/tables/jar-table';
import { type TableCell, tableText } from '../../core/tables/table-text';
import { TABLES_README } from '../../core/tables/tables-read-me';
import { chosenPath } from '../files/chosen-path';
import type { Job } from '../ledger/job';
import type { Ledger } from '../ledger/ledger';
import { ownName } from '../ledger/place';
import { Refused, refusedFor } from '../refusal';
import { type FactTable, factTables } from './fact-tables';
import { mostSeeds, tableJar, tellable } from './jar-rows';

/** Rows that are put into words, and written, at once. */
const AT_ONCE = 200;
/** A spreadsheet program takes a file for UTF-8 where it begins so. */
const MARK = '\u{FEFF}';

function* jarRows(ledger: Ledger, jars: readonly number[], cells: ReturnType<typeof jarColumns>['cellsOf']): Generator<TableCell[]> {
  for (const key of jars) yield cells(tableJar(ledger, key));
} // prettier-ignore

/** @returns rows below the headings */
function writeTable(
  folder: string,
  { name, headings, rows }: FactTable,
  step: (rows: number) => void,
): number {
  const file = join(folder, name);
  mkdirSync(dirname(file), { recursive: true });
  const handle = openSync(file, 'wx');
  let count = 0;
  try {
    writeSync(handle, `${MARK}${tableText([headings])}`);
    let waiting: (readonly TableCell[])[] = [];
    const put = (): void => {
      if (waiting.length > 0) writeSync(handle, tableText(waiting));
      count += waiting.length;
      waiting = [];
      step(count);
    };
    for (const row of rows) if (waiting.push(row) === AT_ONCE) put();
    put();
    return count;
  } finally {
    closeSync(handle);
  }
}

/** Writes all tables into a folder that is new. */
function fill(folder: string, ledger: Ledger, job: Job): Omit<Reply<'tables.write'>, 'folder'> {
  const jars = tellable(ledger);
  const { headings, cellsOf } = jarColumns(mostSeeds(ledger));
  const total = jars.length + ledger.rows.count('SELECT count(*) FROM record WHERE gone_in IS NULL');
  const tables = [{ name: 'jars.csv', headings, rows: jarRows(ledger, jars, cellsOf) }, ...factTables(ledger.rows)];
  let rows = 0;
  for (const table of tables) {
    const before = rows;
    rows += writeTable(folder, table, (count) => job.step(Math.min(before + count, total), total, 'writing tables'));
  }
  const handle = openSync(join(folder, 'README.txt'), 'wx');
  writeSync(handle, TABLES_README);
  closeSync(handle);
  return { files: tables.length + 1, jars: jars.length, rows };
} // prettier-ignore

/**
 * Writes the ledger as tables into a folder that is not there yet, or has nothing in it.
 * @throws Refused 'folder not empty', 'no folder there', 'cancelled', and for a place that can't be written to
 */
export function writeTables(ledger: Ledger, { folder: told }: Parsed<'tables.write'>, job: Job): Reply<'tables.write'> {
  const folder = resolve(chosenPath(told, 'tables.write'));
  const part = ownName(folder);
  const { db } = ledger;
  try {
    if (existsSync(folder) && readdirSync(folder).length > 0) throw new Refused('folder not empty', { folder });
    mkdirSync(part);
    // One state from the first row to the last, whatever other programs record meanwhile.
    db.exec('BEGIN');
    const done = fill(part, ledger, job);
    renameSync(part, folder);
    return { folder, ...done };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') throw new Refused('no folder there', { file: folder });
    if (code === 'ENOTEMPTY' || code === 'ENOTDIR' || code === 'EEXIST') throw new Refused('folder not empty', { folder });
    throw refusedFor(error, folder);
  } finally {
    if (db.inTransaction) db.exec('COMMIT');
    rmSync(part, { recursive: true, force: true });
  }
} // prettier-ignore
