// The nearest jar on a way back that carries some mark, as far down as the mark is handed on.
import type { Family } from '../lineage/family';

/**
 * How a mark is handed on to a jar.
 * @param run what the way down to its seed came to; 0 at the marked jar
 * @returns what it comes to with this jar; null where the mark has ended on it
 */
type HandsOn<Mark> = (mark: Mark, jar: number, run: number) => number | null;

/**
 * For each jar that descends from a marked one, the mark of the nearest (fewest seedings away) that has not ended on every path.
 * A marked jar hands down its own mark, and is told of the nearest above it.
 * @param marks by jar @param handsOn without it a mark goes down the whole line
 */
export function nearestMarks<Mark>(
  family: Family,
  marks: ReadonlyMap<number, Mark>,
  handsOn: HandsOn<Mark> = () => 0,
): ReadonlyMap<number, Mark> {
  const found = new Map<number, Mark>();
  // The least that any way down to a jar came to: another that comes to less may reach further.
  const least = new Map<number, number>();
  // What seeds a marked jar's children is one step away, as a marked pot's own jars are.
  let open = [...marks].map(([jar, mark]) => ({ jar, mark, run: 0 }));
  while (open.length > 0) {
    const further: typeof open = [];
    for (const { jar, mark, run } of open) {
      for (const child of family.childrenOf(jar)) {
        const next = handsOn(mark, child, run);
        if (next === null || next >= (least.get(child) ?? Infinity)) continue;
        least.set(child, next);
        if (!found.has(child)) found.set(child, mark);
        if (!marks.has(child)) further.push({ jar: child, mark, run: next });
      }
    }
    open = further;
  }
  return found;
}
