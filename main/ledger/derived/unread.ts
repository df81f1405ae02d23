// Remarks and how the keeper has read them. Only an answer is a fact: a plain word of spoilage makes a remark *discard* until then,
// no word makes it fine, and what nobody has answered is quoted wherever its jar is offered, in whatever language it is.
import { saysInWords } from '../../../core/safety/in-words';
import { tellsOfSpoiling, type RemarkStand } from '../../../core/safety/remarks';
import type { REMARKED_OF } from '../../../core/shapes/remark-calls';
import type { Rows } from '../facts/fact-rows';
import type { Stored } from '../facts/tables';

export interface Remarked {
  readonly key: number;
  readonly uid: string;
  /** What it is about, as the jar sees it: an observation is the jar's own. */
  readonly of: (typeof REMARKED_OF)[number];
  readonly field: Stored<'remark'>['field'];
  readonly text: string;
  readonly readAs: Stored<'remark'>['readAs'];
  /** A plain word of spoilage stands in it, and nobody has answered. */
  readonly stops: boolean;
}

/** Each remark with each jar that it is about: one on a batch, a hold or a package is about all that was of it. */
const about = (among: (column: string) => string): string => `
  SELECT r.key AS remark, r.jar FROM remark r WHERE r.jar IS NOT NULL ${among('r.jar')}
  UNION SELECT r.key, o.jar FROM observation o CROSS JOIN remark r ON r.observation = o.key WHERE 1 ${among('o.jar')}
  UNION SELECT r.key, p.jar FROM portion p CROSS JOIN remark r ON r.portion = p.key WHERE 1 ${among('p.jar')}
  UNION SELECT r.key, f.jar FROM photograph f CROSS JOIN remark r ON r.photograph = f.key WHERE 1 ${among('f.jar')}
  UNION SELECT r.key, d.jar FROM seeding d CROSS JOIN remark r ON r.seeding = d.key WHERE 1 ${among('d.jar')}
  UNION SELECT r.key, j.key FROM jar j CROSS JOIN remark r ON r.batch = j.batch WHERE 1 ${among('j.key')}
  UNION SELECT r.key, s.jar FROM stay s CROSS JOIN remark r ON r.hold = s.hold WHERE 1 ${among('s.jar')}`;
const ofPackages = (among: (column: string) => string): string =>
  ['milk', 'addition', 'seeding']
    .map(
      (kind) =>
        `UNION SELECT r.key, t.jar FROM ${kind} t CROSS JOIN use u ON u.${kind} = t.key CROSS JOIN remark r ON r.package = u.package WHERE 1 ${among('t.jar')}`,
    )
    .join(' ') +
  ` UNION SELECT r.key, j.key FROM jar j CROSS JOIN use u ON u.batch = j.batch CROSS JOIN remark r ON r.package = u.package WHERE 1 ${among('j.key')}`;

interface Found {
  jar: number;
  key: number;
  uid: string;
  of: Remarked['of'];
  field: Remarked['field'];
  text: string;
  read_as: Remarked['readAs'];
}

/**
 * Remarks by the key of each jar they are about, in the order they were written.
 * @param jars some jars, or all
 * @param packages whether those on packages are wanted: they are quoted, and stop nothing
 */
export function remarksAbout(
  rows: Rows,
  jars: readonly number[] | null,
  packages: boolean,
): ReadonlyMap<number, readonly Remarked[]> {
  const among = (column: string): string =>
    jars === null ? '' : `AND ${column} IN (SELECT value FROM json_each(@jars))`;
  const found = rows
    .prepare(
      `SELECT about.jar, r.key, c.uid, r.field, r.text, r.read_as,
              CASE WHEN r.batch IS NOT NULL THEN 'batch' WHEN r.hold IS NOT NULL THEN 'hold' WHEN r.portion IS NOT NULL THEN 'portion'
                   WHEN r.photograph IS NOT NULL THEN 'photograph' WHEN r.seeding IS NOT NULL THEN 'seeding'
                   WHEN r.package IS NOT NULL THEN 'package' ELSE 'jar' END AS of
         FROM (${about(among)} ${packages ? ofPackages(among) : ''}) about
        CROSS JOIN remark r ON r.key = about.remark CROSS JOIN record c ON c.key = r.key ORDER BY r.key`,
    )
    .all(...(jars === null ? [] : [{ jars: JSON.stringify(jars) }])) as Found[];
  const byJar = new Map<number, Remarked[]>();
  for (const { jar, read_as: readAs, ...row } of found) {
    // "Score: 8" is measured, not said: nothing is to be answered.
    if (readAs === null && !saysInWords(row.text, row.field)) continue;
    const stops = readAs === null && row.of !== 'package' && tellsOfSpoiling(row.text, row.field);
    const known = byJar.get(jar);
    const one = { ...row, readAs, stops };
    if (known) known.push(one);
    else byJar.set(jar, [one]);
  }
  return byJar;
}

/** What the remarks about a jar come to. */
export function remarkStand(remarks: readonly Remarked[] | undefined): RemarkStand {
  if (remarks === undefined) return null;
  if (remarks.some(({ stops }) => stops)) return 'stops';
  return remarks.some(({ readAs }) => readAs === 'look') ? 'looks' : null;
}

/** Whether a remark was read as one to look at first. A package speaks for no jar, so what it says is never more than that. */
export const asksToLook = ({ readAs, of }: Remarked): boolean =>
  readAs === 'look' || (of === 'package' && readAs === 'discard');
