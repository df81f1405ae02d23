// The nearest jar on a way back that carries some mark. Unlike cautions, such a mark goes down the whole line.
import type { Family } from '../lineage/family';

/**
 * For each jar that descends from a marked one, the mark of the nearest (fewest seedings away). A marked jar hands down its
 * own mark, and is told of the nearest above it. One pass over the family.
 * @param marks by jar
 */
export function nearestMarks<Mark>(
  family: Family,
  marks: ReadonlyMap<number, Mark>,
): ReadonlyMap<number, Mark> {
  const found = new Map<number, Mark>();
  let open: { readonly jar: number; readonly mark: Mark }[] = [];
  // What seeds a marked jar's children is one step away, as a marked pot's own jars are.
  const first = [...marks].flatMap(([jar, mark]) => family.childrenOf(jar).map((child) => ({ jar: child, mark }))); // prettier-ignore
  for (const { jar, mark } of first) {
    if (found.has(jar)) continue;
    found.set(jar, mark);
    if (!marks.has(jar)) open.push({ jar, mark });
  }
  while (open.length > 0) {
    const further: typeof open = [];
    for (const { jar, mark } of open) {
      for (const child of family.childrenOf(jar)) {
        if (found.has(child)) continue;
        found.set(child, mark);
        if (!marks.has(child)) further.push({ jar: child, mark });
      }
    }
    open = further;
  }
  return found;
}
