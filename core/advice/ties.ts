// Near ties are ties: of costs closer than can be told apart, what is fresher comes first, and a reserve is kept back while
// something fresh is as good (design.md, Judgement 8).

/** Costs within this part of a jar are as good as equal: no keeper's record tells them apart. */
export const AS_GOOD_COST = 0.001;

export interface Tied {
  readonly cost: number;
  /** Things to be looked at or asked before it is used: fewer first. */
  readonly asks: number;
  readonly reserve: boolean;
  readonly days: number;
  /** What the jar scored itself: of jars as fresh, the one that came out better. */
  readonly own: number;
}

/** Puts what costs least first, and within reach of the least the freshest, reserves last. @param jar what a jar costs */
export function inTiedOrder<T>(items: readonly T[], of: (item: T) => Tied, jar: number): T[] {
  const left = items.map((item) => ({ item, by: of(item) })).toSorted((a, b) => a.by.cost - b.by.cost);
  const ordered: T[] = [];
  while (left.length > 0) {
    const least = left[0]?.by.cost ?? 0;
    const reach = left.findIndex(({ by }) => by.cost > least + AS_GOOD_COST * jar);
    const tied = left.splice(0, reach < 0 ? left.length : reach);
    tied.sort(
      (a, b) =>
        a.by.asks - b.by.asks ||
        Number(a.by.reserve) - Number(b.by.reserve) ||
        a.by.days - b.by.days ||
        b.by.own - a.by.own ||
        0,
    );
    ordered.push(...tied.map(({ item }) => item));
  }
  return ordered;
}
