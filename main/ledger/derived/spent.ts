// What was spent, from the prices and sizes of packages. A price counts only where the amount used and the size of the
// package are in one unit.
import type { Rows } from '../facts/fact-rows';

/** So many minor units of a currency, for the jar or batch with that key. */
export interface SpentRow {
  readonly key: number;
  readonly minor: number;
  readonly currency: string;
}

/** The price of an amount of a package `p`, in minor units. */
const priced = (value: string): string => `p.price_v * ${value} / p.size_v`;
const joined = (unit: string): string => `p.price_v IS NOT NULL AND p.size_v > 0 AND p.size_u = ${unit}`;

/** For the milk of each made jar. */
export function spentOnMilk(rows: Rows): SpentRow[] {
  const value = 'coalesce(u.amount_v, m.actual_v, j.final_volume_v)';
  return rows
    .prepare(
      `SELECT j.key, ${priced(value)} AS minor, p.price_u AS currency
         FROM use u JOIN package p ON p.key = u.package JOIN milk m ON m.key = u.milk JOIN jar j ON j.key = m.jar
        WHERE j.state = 'made' AND ${value} IS NOT NULL
          AND ${joined('coalesce(u.amount_u, m.actual_u, j.final_volume_u)')} ORDER BY j.key, u.key`,
    )
    .all() as SpentRow[];
}

/** For what was stirred into each jar. */
export function spentOnAdditions(rows: Rows): SpentRow[] {
  const value = 'coalesce(u.amount_v, a.actual_v, a.planned_v)';
  return rows
    .prepare(
      `SELECT a.jar AS key, ${priced(value)} AS minor, p.price_u AS currency
         FROM use u JOIN package p ON p.key = u.package JOIN addition a ON a.key = u.addition
        WHERE ${value} IS NOT NULL AND ${joined('coalesce(u.amount_u, a.actual_u, a.planned_u)')} ORDER BY a.key, u.key`,
    )
    .all() as SpentRow[];
}

/** For the sources that each batch's made jars were started from; its key is the batch's. */
export function spentOnSources(rows: Rows): SpentRow[] {
  const value = 'coalesce(u.amount_v, s.actual_v)';
  return rows
    .prepare(
      `SELECT j.batch AS key, ${priced(value)} AS minor, p.price_u AS currency
         FROM use u JOIN package p ON p.key = u.package JOIN seeding s ON s.key = u.seeding JOIN jar j ON j.key = s.jar
        WHERE s.source IS NOT NULL AND j.state = 'made' AND ${value} IS NOT NULL
          AND ${joined('coalesce(u.amount_u, s.actual_u)')} ORDER BY s.key, u.key`,
    )
    .all() as SpentRow[];
}

/** How often something was taken from a package, and what is left of it in the unit of its size. */
export interface LeftRow {
  readonly uses: number;
  /** Never below 0; null where its size or an amount taken is not known in one unit. */
  readonly left: number | null;
}

/** What is left of each package, by its key. Planned jars and mistakes took nothing. */
export function leftOfPackages(rows: Rows): ReadonlyMap<number, LeftRow> {
  const of = (what: 'v' | 'u'): string =>
    `coalesce(u.amount_${what}, m.actual_${what}, a.actual_${what}, a.planned_${what}, s.actual_${what},
       CASE WHEN m.key IS NOT NULL THEN j.final_volume_${what} END)`;
  const found = rows
    .prepare(
      `SELECT p.key, p.size_v AS size, count(u.key) AS uses,
              total(CASE WHEN ${of('u')} = p.size_u THEN ${of('v')} END) AS used,
              count(CASE WHEN ${of('u')} = p.size_u THEN 1 END) AS known
         FROM package p
         LEFT JOIN (SELECT u.*, coalesce(m.jar, a.jar, s.jar) AS jar FROM use u LEFT JOIN milk m ON m.key = u.milk
                      LEFT JOIN addition a ON a.key = u.addition LEFT JOIN seeding s ON s.key = u.seeding
                      JOIN jar j ON j.key = coalesce(m.jar, a.jar, s.jar) WHERE j.state IN ('made', 'lost')) u
                ON u.package = p.key
         LEFT JOIN milk m ON m.key = u.milk LEFT JOIN addition a ON a.key = u.addition
         LEFT JOIN seeding s ON s.key = u.seeding LEFT JOIN jar j ON j.key = u.jar
        GROUP BY p.key`,
    )
    .all() as { key: number; size: number | null; uses: number; used: number; known: number }[];
  return new Map(
    found.map(({ key, size, uses, used, known }) => [
      key,
      {
        uses,
        left: size === null || known < uses ? null : Math.max(0, Number((size - used).toPrecision(12))),
      },
    ]),
  );
}
