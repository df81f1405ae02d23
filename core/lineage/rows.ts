// A row for every jar, so that a line reads straight and no two jars of one column overlap. The layout is d3-hierarchy's
// tidy tree; only its node objects are built here, because its own constructor climbs to the root from every node and is
// quadratic on a long line (its computeHeight).
import { cluster, type HierarchyNode, type HierarchyPointNode, hierarchy, tree } from 'd3-hierarchy';

type RowNode = HierarchyNode<number>;

// d3-hierarchy exports its node class in effect but not in its types.
const NodeOf = hierarchy(-1).constructor as new (data: number) => RowNode;

/** Unused places a column may need beside the jars themselves before the other layout is taken. */
const FILLERS_PER_JAR = 4;

/** Depth and height stay 0: neither layout reads them when it is given a node size. */
function hang(child: RowNode, parent: RowNode): void {
  child.parent = parent;
  if (parent.children) parent.children.push(child);
  else parent.children = [child];
}

/**
 * Rows from the top, in steps of one jar.
 *
 * @param order all jars; those that hang from the same one stand in it from top to bottom
 * @param parent for each jar (by index) the jar it hangs from, or -1; same length as `column`
 * @param column for each jar its generation: larger than its parent's, but maybe by more than one
 * @returns for each jar its row, the topmost at 0; two jars of one column are at least 1 apart
 */
export function layRows(
  order: Int32Array,
  parent: Int32Array,
  column: Int32Array,
): Float64Array<ArrayBuffer> {
  const rows = new Float64Array(parent.length);
  if (order.length === 0) return rows;
  // Columns that no jar stands in take no part: a culture received at its generation 4000 needs no 4000 fillers.
  const used = [...new Set(column)].toSorted((a, b) => a - b);
  const rank = new Map(used.map((generation, i) => [generation, i]));
  const rankOf = (jar: number): number => rank.get(column[jar] as number) as number;
  let fillers = 0;
  for (const jar of order) {
    const above = parent[jar] as number;
    fillers += rankOf(jar) - (above < 0 ? -1 : rankOf(above)) - 1;
  }
  // A tidy tree tells columns by depth, so a jar further along is kept there by fillers. Where these would outnumber the
  // jars by far, a row for every leaf is taken instead: taller, and nothing can overlap whatever the column.
  const tidy = fillers <= FILLERS_PER_JAR * order.length;
  const root = new NodeOf(-1);
  const nodes = Array.from(parent, (_, jar) => new NodeOf(jar));
  for (const jar of order) {
    const above = parent[jar] as number;
    let from = above < 0 ? root : (nodes[above] as RowNode);
    if (tidy) {
      for (let r = (above < 0 ? -1 : rankOf(above)) + 1; r < rankOf(jar); r++) {
        const filler = new NodeOf(-1);
        hang(filler, from);
        from = filler;
      }
    }
    hang(nodes[jar] as RowNode, from);
  }
  const layout = tidy ? tree<number>() : cluster<number>();
  layout.nodeSize([1, 1]).separation(() => 1)(root);
  let top = Infinity;
  for (const jar of order) {
    const row = (nodes[jar] as HierarchyPointNode<number>).x;
    rows[jar] = row;
    if (row < top) top = row;
  }
  for (const jar of order) rows[jar] = (rows[jar] as number) - top;
  return rows;
}
