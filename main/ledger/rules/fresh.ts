// What an act made new, and what stood before it, read from the journal.
import type { Fresh } from '../../../core/rules/consents';
import type { JarFact } from '../../../core/rules/facts';
import { changeFrom, type JournalRow } from '../acts';
import type { Rows } from '../rows';
import type { Columns } from '../tables';

/** Rows that an act wrote so that some column is another one than before, or the row is new. */
const newly = (table: string, columns: readonly string[], and = '1'): string =>
  `SELECT row_key FROM journal WHERE act = @act AND table_name = '${table}' AND after IS NOT NULL AND (before IS NULL
     OR ${columns.map((name) => `json_extract(before, '$.${name}') IS NOT json_extract(after, '$.${name}')`).join(' OR ')})
     AND ${and}`;
const after = (column: string): string => `json_extract(after, '$.${column}')`;

/** Seedings by a jar that did not seed the same jar before: one exchanged for another, of a pot, say, is no new seed. */
const NEW_SEEDINGS = `
  SELECT n.row_key FROM journal n WHERE n.act = @act AND n.table_name = 'seeding' AND n.before IS NULL
    AND json_extract(n.after, '$.from_jar') IS NOT NULL
    AND (json_extract(n.after, '$.jar'), json_extract(n.after, '$.from_jar')) NOT IN (
      SELECT json_extract(before, '$.jar'), json_extract(before, '$.from_jar') FROM journal
       WHERE act = @act AND table_name = 'seeding' AND after IS NULL AND json_extract(before, '$.from_jar') IS NOT NULL)
    AND NOT EXISTS (
      SELECT 1 FROM seeding s WHERE s.jar = json_extract(n.after, '$.jar') AND s.from_jar = json_extract(n.after, '$.from_jar')
         AND NOT EXISTS (SELECT 1 FROM journal i WHERE i.table_name = 'seeding' AND i.row_key = s.key
                            AND i.act = @act AND i.before IS NULL))`;

const NOTHING: Omit<Fresh, 'labels'> = {
  seedings: new Set(), kept: new Set(), portionsGone: new Set(), jarsGone: new Set(), reserves: new Set(), ends: new Set(),
  stays: new Set(), mistakes: new Set(),
}; // prettier-ignore

/**
 * What an act made new.
 * @param undone it is an undo or a redo: all it brings was said before, and only labels and days can meet what is new
 */
export function freshIn(rows: Rows, act: number, undone: boolean): Fresh {
  const keys = (sql: string): Set<number> => new Set(rows.prepare(sql).pluck().all({ act }) as number[]);
  const relabelled = keys(
    `SELECT key FROM jar WHERE batch IN (${newly('batch', ['made_on', 'word'], 'before IS NOT NULL')})`,
  );
  for (const jar of keys(newly('jar', ['letter', 'state']))) relabelled.add(jar);
  if (undone) return { ...NOTHING, labels: relabelled };
  return {
    labels: relabelled,
    seedings: keys(NEW_SEEDINGS),
    kept: keys(newly('portion', ['kept_on'])),
    portionsGone: keys(newly('portion', ['gone_on'])),
    jarsGone: keys(newly('jar', ['gone_on'])),
    reserves: keys(
      `${newly('portion', ['reserve', 'gone_on'], `${after('reserve')} = 1`)} AND ${after('gone_on')} IS NULL`,
    ),
    ends: keys(newly('hold', ['ended_at'])),
    stays: keys(newly('jar', ['hold'], `${after('hold')} IS NOT NULL`)),
    mistakes: keys(newly('jar', ['state'], `${after('state')} = 'mistake' AND before IS NOT NULL`)),
  };
}

interface Standing {
  readonly jar: Columns | null;
  readonly batch: Columns | null;
}

/**
 * Whether something was so of jars and their batches at some time before an act.
 * @param last only how it was right before the act counts
 */
export function stoodBefore(
  rows: Rows,
  act: number,
  jars: readonly JarFact[],
  last: boolean,
  isSo: (standing: readonly Standing[]) => boolean,
): boolean {
  const images = rows
    .prepare(
      `SELECT act, table_name, row_key, before, after FROM journal WHERE act < @act AND (
         (table_name = 'jar' AND row_key IN (SELECT value FROM json_each(@jars))) OR
         (table_name = 'batch' AND row_key IN (SELECT value FROM json_each(@batches)))) ORDER BY key`,
    )
    .all({
      act,
      jars: JSON.stringify(jars.map(({ key }) => key)),
      batches: JSON.stringify(jars.map(({ batch }) => batch)),
    }) as (JournalRow & { readonly act: number })[];
  const forms = new Map<string, Columns | null>();
  const standing = (): Standing[] =>
    jars.map(({ key, batch }) => ({
      jar: forms.get(`jar ${key}`) ?? null,
      batch: forms.get(`batch ${batch}`) ?? null,
    }));
  for (const [at, row] of images.entries()) {
    forms.set(`${row.table_name} ${row.row_key}`, changeFrom(row).after);
    // An act counts as a whole: in between nothing stood.
    if (!last && images[at + 1]?.act !== row.act && isSo(standing())) return true;
  }
  return last && isSo(standing());
}

const lower = (value: unknown): string => (typeof value === 'string' ? value.trim().toLowerCase() : '');
const counted = ({ jar }: Standing): boolean => jar?.state === 'made' || jar?.state === 'planned';

/** Whether all of them are there and go by one label. */
export const sameLabels = (standing: readonly Standing[]): boolean =>
  standing.every(counted) &&
  new Set(
    standing.map(({ jar, batch }) => `${String(batch?.made_on)}|${lower(batch?.word)}|${lower(jar?.letter)}`),
  ).size === 1;

/** Whether a jar is made on that day. */
export const madeOn =
  (day: string) =>
  ([standing]: readonly Standing[]): boolean =>
    (standing?.jar?.state === 'made' || standing?.jar?.state === 'lost') && standing.batch?.made_on === day;
