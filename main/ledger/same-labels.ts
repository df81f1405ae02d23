// Undoing must not bring back a label that a jar recorded since has taken. Equal labels that stood beside each other
// before were meant by the keeper, and may come back.
import { jarLabel } from '../../core/lineage/labels';
import { changeFrom, type JournalRow } from './acts';
import type { LaterRow } from './later';
import { Refused } from './refusal';
import type { Rows } from './rows';
import { type Columns, TABLES } from './tables';

/** Jars whose labels an undo brings back, gathered from the rows it inverts. */
export class Returning {
  readonly jars = new Set<number>();
  readonly batches = new Set<number>();

  take(row: JournalRow): void {
    if (row.before === null || (row.table_name !== 'jar' && row.table_name !== 'batch')) return;
    const { before, after } = changeFrom(row);
    if (row.table_name === 'jar' && relabels(JAR, after, before)) this.jars.add(row.row_key);
    if (row.table_name === 'batch' && relabels(BATCH, after, before)) this.batches.add(row.row_key);
  }
}

const JAR = ['letter', 'state'] as const;
const BATCH = ['made_on', 'word'] as const;

/** Whether going from one form to another changes what a jar is called, or whether it counts at all. */
const relabels = (columns: readonly string[], from: Columns | null, to: Columns | null): boolean =>
  to !== null && (from === null || columns.some((column) => from[column] !== to[column]));

interface Labelled {
  readonly key: number;
  readonly batch: number;
  readonly madeOn: string | null;
  readonly word: string | null;
  readonly letter: string;
}

const LABELLED = `SELECT j.key, j.batch, b.made_on AS madeOn, b.word, j.letter FROM jar j JOIN batch b ON b.key = j.batch
  WHERE j.state IN ('planned', 'made') AND b.made_on IS NOT NULL`;

/** Whether acts since gave a row its label, or part of it. */
function relabelledSince(rows: Rows, act: number, table: 'jar' | 'batch', key: number): boolean {
  const images = rows
    .prepare(
      'SELECT table_name, row_key, before, after FROM journal WHERE table_name = ? AND row_key = ? AND act > ?',
    )
    .all(table, key, act) as JournalRow[];
  return images.some((row) => {
    const { before, after } = changeFrom(row);
    return relabels(table === 'jar' ? JAR : BATCH, before, after);
  });
}

/**
 * Called inside the undo, its rows written.
 * @param target key of the act whose inverse is being written
 * @param later rows that acts after the target wrote, before this undo
 * @throws Refused 'label back'
 */
export function refuseEqualLabels(
  rows: Rows,
  target: number,
  later: readonly LaterRow[],
  returning: Returning,
): void {
  if (returning.jars.size === 0 && returning.batches.size === 0) return;
  for (const { kind, key } of later) {
    if (kind !== 'jar' && kind !== 'batch') continue;
    const column = kind === 'jar' ? 'j.key' : 'j.batch';
    const taken = rows.prepare(`${LABELLED} AND ${column} = ?`).all(key) as Labelled[];
    for (const jar of taken) {
      if (returning.jars.has(jar.key) || returning.batches.has(jar.batch)) continue;
      const back = sameLabel(rows, jar).find(
        (other) => returning.jars.has(other.key) || returning.batches.has(other.batch),
      );
      if (back && since(rows, target, kind, key))
        throw new Refused('label back', { label: jarLabel(back, false) });
    }
  }
}

const since = (rows: Rows, target: number, kind: 'jar' | 'batch', key: number): boolean =>
  relabelledSince(rows, target, TABLES[kind].table as 'jar' | 'batch', key);

function sameLabel(rows: Rows, jar: Labelled): Labelled[] {
  const lower = (text: string | null): string => text?.toLowerCase() ?? '';
  const others = rows.prepare(`${LABELLED} AND b.made_on = ? AND j.key <> ?`).all(jar.madeOn, jar.key);
  return (others as Labelled[]).filter(
    (other) => lower(other.letter) === lower(jar.letter) && lower(other.word) === lower(jar.word),
  );
}
