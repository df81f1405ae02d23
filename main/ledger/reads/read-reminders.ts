// What is reminded of ahead of time: pieces for a fresh start, and a reserve of a line that has none. Facts round what core says.
import type { Reply } from '../../../core/contract';
import { reserveLacks, shortOf, type Stock } from '../../../core/plan/reminders';
import { orderSays, reserveSays } from '../../../core/says/today-says';
import { leftOfPackages } from '../derived/spent-rows';
import { judgedOf, type Judged } from '../judged';
import type { Ledger } from '../ledger';
import { verdictOf } from './read-judgement';
import { lineNames } from './read-views';

type Item = Reply<'today.list'>['items'][number];
type Shelf = Reply<'shelf.get'>;

/** Sources that the newest fresh start took pieces of, with what is left of all their packages. */
function stocks({ rows }: Ledger): Stock[] {
  const took = rows
    .prepare(
      `SELECT o.key, o.name, r.uid AS id, sum(s.actual_v) AS took
         FROM seeding s JOIN jar j ON j.key = s.jar AND j.state = 'made' JOIN source o ON o.key = s.source
         JOIN record r ON r.key = o.key
        WHERE s.actual_u = 'pieces' AND j.batch = (
          SELECT b.key FROM seeding n JOIN jar k ON k.key = n.jar AND k.state = 'made' JOIN batch b ON b.key = k.batch
           WHERE n.actual_u = 'pieces' AND n.source IS NOT NULL ORDER BY coalesce(b.made_on, b.made_to) DESC, b.key DESC LIMIT 1)
        GROUP BY o.key ORDER BY o.key`,
    )
    .all() as { key: number; name: string; id: string; took: number }[];
  const left = leftOfPackages(rows);
  return took.map(({ key, name, id, took: pieces }) => {
    const packages = rows.where('package', 'source', key);
    const known = packages.flatMap((one) => (one.size?.unit === 'pieces' ? (left.get(one.key)?.left ?? []) : []));
    const all = packages.length > 0 && known.length === packages.length;
    return { id, name, took: pieces, left: all ? known.reduce((sum, one) => sum + one, 0) : null };
  });
} // prettier-ignore

/** Whether some line asks for a fresh start, now or before long; its name. */
function toStartAfresh(ledger: Ledger, judged: Judged, nameOf: (line: number) => string): string | null {
  const line = judged.all.lines.find((one) => {
    const standing = judged.all.line(one).batches.at(-1)?.standing;
    return standing === 'slipping' || standing === 'worn out' || verdictOf(ledger, one) === 'start afresh';
  });
  return line === undefined ? null : nameOf(line);
}

function order(ledger: Ledger, judged: Judged, nameOf: (line: number) => string): Item[] {
  const short = shortOf(stocks(ledger));
  const line = short.length > 0 ? toStartAfresh(ledger, judged, nameOf) : null;
  if (line === null) return [];
  return short.map((stock) => ({
    id: `order ${stock.id}`,
    kind: 'order pieces',
    due: false,
    lateMinutes: 0,
    ...orderSays(line, stock),
    of: { kind: 'source', id: stock.id },
  }));
}

/** Lines that have nothing to fall back on, each with the jar that goes on, of which a reserve could be kept. */
export function reservesDue(
  judged: Judged,
  nameOf: (line: number) => string,
  items: readonly Omit<Shelf['items'][number], 'reserveOf'>[],
  today: string,
): { readonly line: string; readonly jar: { readonly id: string; readonly name: string }; readonly lacks: 'none' | 'too old' }[] {
  return judged.all.lines.flatMap((key) => {
    const line = nameOf(key);
    const jar = items.find(({ nextSeedOf, reserve, verbs }) => nextSeedOf.includes(line) && !reserve && verbs.includes('freeze'));
    const kept = items.filter(({ reserve, lines }) => reserve && lines.includes(line));
    const reserves = kept.map(({ seedBy }) => seedBy && seedBy.on);
    const lacks = reserveLacks({ batches: judged.all.line(key).batches.length, reserves }, today);
    return jar && lacks !== null ? [{ line, jar, lacks }] : [];
  });
} // prettier-ignore

/** @param shelf as it now stands */
export function reminders(ledger: Ledger, shelf: Shelf): Item[] {
  const judged = judgedOf(ledger);
  const nameOf = lineNames(ledger);
  const keep = reservesDue(judged, nameOf, shelf.items, shelf.today).map(({ line, jar, lacks }): Item => ({
    id: `reserve ${line}`,
    kind: 'reserve',
    due: false,
    lateMinutes: 0,
    ...reserveSays(line, jar.name, lacks),
    of: { kind: 'kept', id: jar.id },
  }));
  return [...order(ledger, judged, nameOf), ...keep];
}
