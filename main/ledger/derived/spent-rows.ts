// What was taken of packages: for what, how much, and what the package says of its size and price.
import type { Taken } from '../../../core/advice/spent';
import type { Spent } from '../../../core/shapes/cost-codes';
import type { Amount } from '../../../core/ledger/basics';
import type { Rows } from '../facts/fact-rows';

interface TakenRow {
  readonly of: number;
  readonly jar: number;
  readonly name: string;
  readonly value: number | null;
  readonly unit: Amount['unit'] | null;
  readonly package: number | null;
  readonly size: number | null;
  readonly size_unit: Amount['unit'] | null;
  readonly minor: number | null;
  readonly currency: string | null;
}

const PACKAGE = `u.package, p.size_v AS size, p.size_u AS size_unit, p.price_v AS minor, p.price_u AS currency`;
const amount = (...from: string[]): string =>
  (['v', 'u'] as const)
    .map((part) => `coalesce(${from.map((one) => `${one}_${part}`).join(', ')}) AS ${part === 'v' ? 'value' : 'unit'}`)
    .join(', '); // prettier-ignore

const LITRE = { value: 1000, unit: 'mL' } as const;

/** Made jars' milk, what was stirred into them, and the sources that lines were started from: each with its package.
 * A culture that was received is not bought. @param litre what a litre of milk costs that came from no noted package */
export function takenOf(rows: Rows, litre: Spent | null = null): Taken[] {
  const read = (what: Taken['what'], sql: string): Taken[] =>
    (rows.prepare(sql).all() as TakenRow[]).map((row) => ({
      what,
      of: row.of,
      jar: row.jar,
      name: row.name,
      amount: row.value === null || row.unit === null ? null : { value: row.value, unit: row.unit },
      package:
        row.package === null
          ? what === 'milk' && litre !== null ? { size: LITRE, ...litre } : null
          : {
              size: row.size === null || row.size_unit === null ? null : { value: row.size, unit: row.size_unit },
              minor: row.minor,
              currency: row.currency,
            },
    })); // prettier-ignore
  return [
    ...read(
      'milk',
      `SELECT j.key AS of, j.key AS jar, coalesce(m.name, 'milk') AS name,
              ${amount('u.amount', 'm.actual', 'j.final_volume')}, ${PACKAGE}
         FROM milk m JOIN jar j ON j.key = m.jar LEFT JOIN use u ON u.milk = m.key LEFT JOIN package p ON p.key = u.package
        WHERE j.state = 'made' ORDER BY j.key, m.key, u.key`,
    ),
    ...read(
      'addition',
      `SELECT j.key AS of, j.key AS jar, a.name, ${amount('u.amount', 'a.actual', 'a.planned')}, ${PACKAGE}
         FROM addition a JOIN jar j ON j.key = a.jar LEFT JOIN use u ON u.addition = a.key
         LEFT JOIN package p ON p.key = u.package
        WHERE j.state = 'made' ORDER BY j.key, a.key, u.key`,
    ),
    ...read(
      'start',
      `SELECT j.batch AS of, j.key AS jar, o.name, ${amount('u.amount', 's.actual')}, ${PACKAGE}
         FROM seeding s JOIN jar j ON j.key = s.jar JOIN source o ON o.key = s.source
         LEFT JOIN use u ON u.seeding = s.key LEFT JOIN package p ON p.key = u.package
        WHERE j.state = 'made' AND NOT (o.form = 'culture' AND u.key IS NULL) ORDER BY j.batch, s.key, u.key`,
    ),
  ];
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
