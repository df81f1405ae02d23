// Cautions that were lifted with a written reason. A reason was written about the spoilage as it was known then: the
// journal tells what that was, so nothing more is kept, and undoing what made it worse brings the lift back.
import { type Spoilage, spoilageGrew, spoilageOf } from '../../core/ledger/spoilage';
import type { Outcome } from '../../core/ledger/records';
import type { FamilyClearing } from '../../core/lineage/types';
import type { Rows } from './rows';
import type { Columns } from './tables';

/** A row of outcomes, as the table or the journal has it, as spoilage. */
function spoilageIn(columns: Columns | null | undefined): Spoilage | null {
  if (!columns) return null;
  const flag = (value: unknown): boolean | null =>
    value === null || value === undefined ? null : value === 1;
  return spoilageOf({
    signs: JSON.parse(String(columns.signs ?? '[]')) as Outcome['signs'],
    spoiledSaid: flag(columns.spoiled_said) ?? false,
    setAtTakeOut: flag(columns.set_at_take_out),
    ph: (columns.ph ?? null) as number | null,
    phHow: (columns.ph_how ?? null) as Outcome['phHow'],
    seenAt: (columns.seen_at ?? null) as Outcome['seenAt'],
    openedDays: (columns.opened_days ?? null) as number | null,
  });
}

/**
 * The spoilage of a jar as it was known when an act was done. What the act itself wrote counts as known.
 * @param row the jar's outcome as it is now, where there is one: its own journal is found without looking at others
 */
function knownAt(rows: Rows, act: number, jar: number, row: number | null): Spoilage | null {
  const last = (found: unknown): Spoilage | null => {
    const image = found as { after: string | null } | undefined;
    return image?.after ? spoilageIn(JSON.parse(image.after) as Columns) : null;
  };
  if (row !== null) {
    const own = rows
      .prepare(
        `SELECT after FROM journal WHERE table_name = 'outcome' AND row_key = ? AND act <= ? ORDER BY key DESC LIMIT 1`,
      )
      .get(row, act);
    if (own !== undefined) return last(own);
  }
  // Taken away and noted anew since: an outcome that lay in another row.
  return last(
    rows
      .prepare(
        `SELECT after FROM journal WHERE table_name = 'outcome' AND act <= ?
            AND json_extract(coalesce(after, before), '$.jar') = ? ORDER BY key DESC LIMIT 1`,
      )
      .get(act, jar),
  );
}

/** All lifted cautions, each with whether more is known of the spoilage now than when it was lifted. */
export function readClearings(rows: Rows): FamilyClearing[] {
  return [...rows.all('clearing')].map(({ key, jar, of, reason }) => {
    // The first time it was written: lifting again what an undo took away writes no new reason.
    const lifted = rows
      .prepare(`SELECT min(act) FROM journal WHERE table_name = 'clearing' AND row_key = ?`)
      .pluck()
      .get(key) as number;
    const now = rows.prepare('SELECT * FROM outcome WHERE jar = ?').get(of) as Columns | undefined;
    const then = knownAt(rows, lifted, of, now === undefined ? null : Number(now.key));
    return { jar, of, reason, outdated: spoilageGrew(then, spoilageIn(now)) };
  });
}
