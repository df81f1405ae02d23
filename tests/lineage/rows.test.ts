// Rows: a line runs level, nothing overlaps, letters keep their order, and only the lane of a new jar changes.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawFamily, type Looks } from '../../core/lineage/drawing';
import { buildFamily, changeFamily, type Family } from '../../core/lineage/family';
import { type Hanging, layRows } from '../../core/lineage/drawing-rows';
import type { FamilyJar, FamilySeeding } from '../../core/lineage/lineage-shapes';
import { dayAfter, plainJar, plainSeeding, seededNumbers, syntheticFamily } from '../families';
import { familyOf, tell, type Told } from './short-families';

/** Jars told one by one: what each hangs from (none: a lane of its own), columns skipped, days waited. */
function hang(told: readonly { parent: number; skip?: number; wait?: number }[], oneLane = false): Hanging {
  const parent = Int32Array.from(told, (jar) => jar.parent);
  const column = new Int32Array(told.length);
  const day = new Int32Array(told.length);
  const laneOf = new Int32Array(told.length);
  let lanes = 0;
  told.forEach(({ parent: seed, skip = 0, wait = 1 }, jar) => {
    column[jar] = (seed < 0 ? 0 : (column[seed] as number)) + 1 + skip;
    day[jar] = (seed < 0 ? 0 : (day[seed] as number)) + wait;
    if (seed < 0) laneOf[jar] = oneLane ? 0 : lanes++;
  });
  return { order: Int32Array.from(parent.keys()), parent, column, day, laneOf, lanes: oneLane ? 1 : lanes };
}

const toldJars = fc
  .array(
    fc.record({
      pick: fc.nat(),
      root: fc.integer({ min: 0, max: 9 }),
      skip: fc.constantFrom(0, 0, 0, 0, 1, 3),
      wait: fc.integer({ min: 0, max: 9 }),
    }),
    { minLength: 1, maxLength: 60 },
  )
  .map((draws) =>
    draws.map(({ pick, root, skip, wait }, i) => ({
      // Recent jars are likelier seeds, so that lines get long.
      parent: i === 0 || root === 0 ? -1 : pick % 3 === 0 ? pick % i : i - 1 - (pick % Math.min(i, 4)),
      skip,
      wait,
    })),
  );

const childrenOf = ({ parent, order }: Hanging, jar: number): number[] =>
  [...order].filter((one) => parent[one] === jar);

/** The end of the path that goes on from a jar, told by walking all of its descent: latest day, then deepest, then first. */
function lastOf(tree: Hanging, jar: number): { day: number; column: number } {
  const below = childrenOf(tree, jar).map((child) => lastOf(tree, child));
  const own = { day: tree.day[jar] as number, column: tree.column[jar] as number };
  if (below.length === 0) return own;
  const best = below.reduce((a, b) => (b.day > a.day || (b.day === a.day && b.column > a.column) ? b : a));
  return { day: Math.max(best.day, own.day), column: best.column };
}

function goesOn(tree: Hanging, children: readonly number[]): number {
  return children.reduce((a, b) => {
    const [one, other] = [lastOf(tree, a), lastOf(tree, b)];
    return other.day > one.day || (other.day === one.day && other.column > one.column) ? b : a;
  });
}

/** Every row by the plain rule, written without contours: each block as the set of places it takes, moved step by step. */
function plainRows(tree: Hanging): number[] {
  type Block = Map<number, number>; // jar → row against the jar it is named by
  const placesOf = (block: Block, from: number): Set<string> => {
    const places = new Set<string>();
    for (const [jar, row] of block) {
      const seed = tree.parent[jar] as number;
      const first = block.has(seed) ? (tree.column[seed] as number) + 1 : from;
      for (let at = first; at <= (tree.column[jar] as number); at++) places.add(`${at} ${row}`);
    }
    return places;
  };
  const shifted = (block: Block, by: number): Block =>
    new Map([...block].map(([jar, row]) => [jar, row + by]));
  const pack = (children: readonly number[], from: number): Block => {
    const level = goesOn(tree, children);
    const at = children.indexOf(level);
    const all: Block = blockOf(level);
    const put = (child: number, out: number): void => {
      const block = blockOf(child);
      // In any column both take, this one lies wholly further out.
      const clear = (by: number): boolean =>
        [...placesOf(shifted(block, by), from)].every((place) =>
          [...placesOf(all, from)].every((other) => {
            const [column, row] = place.split(' ').map(Number) as [number, number];
            const [otherColumn, otherRow] = other.split(' ').map(Number) as [number, number];
            return column !== otherColumn || out * (row - otherRow) >= 1;
          }),
        );
      let by = -out * tree.parent.length;
      while (!clear(by)) by += out;
      for (const [jar, row] of shifted(block, by)) all.set(jar, row);
    };
    for (const child of children.slice(0, at).toReversed()) put(child, -1);
    for (const child of children.slice(at + 1)) put(child, 1);
    return all;
  };
  const blockOf = (jar: number): Block => {
    const children = childrenOf(tree, jar);
    const block: Block = new Map([[jar, 0]]);
    if (children.length === 0) return block;
    for (const [one, row] of pack(children, (tree.column[jar] as number) + 1)) block.set(one, row);
    return block;
  };
  const rows = Array.from({ length: tree.parent.length }, () => 0);
  let taken = 0;
  for (let lane = 0; lane < tree.lanes; lane++) {
    const roots = childrenOf(tree, -1).filter((jar) => tree.laneOf[jar] === lane);
    if (roots.length === 0) continue;
    const block = pack(roots, 0);
    const top = Math.min(...block.values());
    for (const [jar, row] of block) rows[jar] = row - top + taken;
    taken += Math.max(...block.values()) - top + 1;
  }
  return rows;
}

describe('rows', () => {
  it('are those of the plain rule, moved step by step until clear', () => {
    fc.assert(
      fc.property(toldJars, fc.boolean(), (told, oneLane) => {
        const tree = hang(told.slice(0, 26), oneLane);
        expect([...layRows(tree).row]).toEqual(plainRows(tree));
      }),
    );
  });

  it('never put two jars of one column on each other, nor a jar on a ribbon that skips its column', () => {
    fc.assert(
      fc.property(toldJars, fc.boolean(), (told, oneLane) => {
        const tree = hang(told, oneLane);
        const { row, lane } = layRows(tree);
        const taken = new Map<string, number>();
        row.forEach((at, jar) => {
          const seed = tree.parent[jar] as number;
          const from = seed < 0 ? (tree.column[jar] as number) : (tree.column[seed] as number) + 1;
          for (let column = from; column <= (tree.column[jar] as number); column++) {
            expect(taken.get(`${column} ${at}`)).toBeUndefined();
            taken.set(`${column} ${at}`, jar);
          }
          if (seed >= 0) expect(lane[jar]).toBe(lane[seed]);
        });
      }),
    );
  });

  it('keep the path that goes on straight, siblings in order, lanes as bands one under the other', () => {
    fc.assert(
      fc.property(toldJars, (told) => {
        const tree = hang(told);
        const { row, lane, top, bottom, level } = layRows(tree);
        row.forEach((at, jar) => {
          const children = childrenOf(tree, jar);
          const rows = children.map((child) => row[child] as number);
          expect(rows).toEqual(rows.toSorted((a, b) => a - b));
          expect(new Set(rows).size).toBe(rows.length);
          if (children.length > 0) expect(row[goesOn(tree, children)]).toBe(at);
          expect(at).toBeGreaterThanOrEqual(top[lane[jar] as number] as number);
          expect(at).toBeLessThanOrEqual(bottom[lane[jar] as number] as number);
        });
        for (let of = 0; of < tree.lanes; of++) {
          expect(top[of]).toBe(of === 0 ? 0 : (bottom[of - 1] as number) + 1);
          const own = [...row].filter((_, jar) => lane[jar] === of);
          expect([Math.min(...own), Math.max(...own)]).toEqual([top[of], bottom[of]]);
          const founder = childrenOf(tree, -1).find((jar) => lane[jar] === of) as number;
          expect(row[founder]).toBe(level[of]);
        }
      }),
    );
  });

  // Reingold & Tilford 1981, IEEE TSE SE-7(2):223-228: two of the aesthetics of a tidy drawing.
  it('draw the same descent the same wherever it hangs, and mirrored as its mirror', () => {
    fc.assert(
      fc.property(toldJars, (draws) => {
        // No two paths end on one day, so that nothing rests on which of them comes first.
        const told = draws.map((jar, i) => ({ ...jar, parent: i === 0 ? -1 : Math.max(0, jar.parent) }));
        const tree = hang(told, true);
        const day = tree.day.map((one, i) => one * 1000 + i);
        const alone = layRows({ ...tree, day }).row;
        const mirrored = layRows({ ...tree, day, order: tree.order.toReversed() });
        const high = mirrored.bottom[0] as number;
        expect([...mirrored.row]).toEqual([...alone].map((at) => high - at));
        const size = told.length;
        const below = (base: number) =>
          told.map((jar) =>
            jar.parent < 0 ? { ...jar, parent: 0, skip: 0 } : { ...jar, parent: jar.parent + base },
          );
        const twice = hang([{ parent: -1 }, ...below(1), ...below(1 + size)]);
        const days = twice.day.map((one, i) => one * 1000 + ((i - 1) % size));
        const both = layRows({ ...twice, day: days }).row;
        for (const from of [1, 1 + size])
          expect([...both.subarray(from, from + size)].map((at) => at - (both[from] as number))).toEqual(
            [...alone].map((at) => at - (alone[0] as number)),
          );
      }),
    );
  });

  it('of nothing are none', () => {
    const none = new Int32Array(0);
    const laid = layRows({ order: none, parent: none, column: none, day: none, laneOf: none, lanes: 0 });
    expect([laid.row.length, laid.top.length]).toEqual([0, 0]);
  });

  // Recursion would not come back from these, and walking every contour again would not end: 10^10 steps.
  it.each(['one line', 'a comb', 'two long branches, step by step', 'one jar that seeded all'])(
    'of 100,000 jars: %s',
    (shape) => {
      const told = Array.from({ length: 100_000 }, (_, i) => ({
        parent:
          i === 0 || shape === 'one line'
            ? i - 1
            : shape === 'a comb'
              ? i - 1 - ((i + 1) % 2)
              : shape === 'one jar that seeded all'
                ? 0
                : Math.max(0, i - 2),
      }));
      const { bottom } = layRows(hang(told));
      const rows = { 'one line': 1, 'a comb': 2, 'one jar that seeded all': 99_999 }[shape] ?? 2;
      expect((bottom[0] as number) + 1).toBe(rows);
    },
  );
});

const PLAIN: Looks = {
  jar: () => ({ setWord: null, outcomeKnown: false, onShelf: null }),
  mayBeThere: () => true,
  lineName: String,
  lineId: String,
  strainsOf: () => [],
};

const LETTERS = 'abcd';

/** Weekly batches, each of so many jars, from one jar of the batch before; a fresh start opens a new line. */
function weekly(sizes: readonly number[], picks: readonly number[], fresh: readonly number[]): Family {
  const told: Told[] = [];
  let last: number[] = [];
  sizes.forEach((size, week) => {
    const seed = fresh.includes(week) ? undefined : last[(picks[week] ?? 0) % Math.max(1, last.length)];
    const own: number[] = [];
    for (let letter = 0; letter < size; letter++) {
      const key = told.length + 1;
      own.push(key);
      const from = seed === undefined ? [{ source: 1, pieces: 8 }] : [{ fromJar: seed, volumeMl: 40 }];
      told.push({
        key,
        batch: week + 1,
        letter: LETTERS[letter] as string,
        madeOn: dayAfter(7 * week),
        from,
      });
    }
    last = own;
  });
  return familyOf(told);
}

const rowsOf = (family: Family): number => drawFamily(family, PLAIN, 'generation').height;

describe('a kitchen’s families', () => {
  it('a year of weekly batches of three stays within five rows, whichever jar seeds the next', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 52, maxLength: 52 }), (picks) => {
        expect(rowsOf(weekly(picks.map(() => 3), picks, []))).toBeLessThanOrEqual(5); // prettier-ignore
      }),
    );
  });

  it('a hundred weekly batches of three and four jars with two fresh starts take about 20 rows', () => {
    const taken: number[] = [];
    for (let seed = 1; seed <= 40; seed++) {
      const random = seededNumbers(seed);
      const draw = (n: number): number => Math.floor(random() * n);
      const weeks = Array.from({ length: 100 }, () => 0);
      const sizes = weeks.map(() => 3 + draw(2));
      taken.push(rowsOf(weekly(sizes, weeks.map(() => draw(12)), [33, 67]))); // prettier-ignore
    }
    // Three lines, each with up to three mates above and three below the one that goes on.
    expect(Math.max(...taken)).toBeLessThanOrEqual(21);
    expect(Math.min(...taken)).toBeGreaterThanOrEqual(12);
  });
});

/** By key: the row within its lane, and the lane's head. */
function lanesOf(family: Family): Map<number, { lane: string; within: number }> {
  const { keys, y, lane, lanes } = drawFamily(family, PLAIN, 'generation');
  return new Map(
    Array.from(keys, (key, i) => {
      const head = lanes[lane[i] as number];
      return [key, { lane: `${head?.line ?? head?.name}`, within: (y[i] as number) - (head?.top ?? NaN) }];
    }),
  );
}

describe('a jar more', () => {
  it('changes rows in its own lane alone; the others shift as wholes', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.integer({ min: 2, max: 60 }), (seed, pick, jars) => {
        // Many lines: every batch of the told ones is founded anew now and then.
        const family = weeklyLines(seed, jars);
        const from = 1 + (pick % family.keys.length);
        const key = family.keys.length + 1;
        const jar: FamilyJar = plainJar({ key, batch: key, madeOn: '2999-01-01' });
        const seedings: FamilySeeding[] = [
          plainSeeding({ key: 9999, jar: key, fromJar: from, volumeMl: 40 }),
        ];
        const after = lanesOf(
          changeFamily(family, { jars: [jar], seedings: [{ jar: key, seedings }] }).family,
        );
        const own = after.get(key)?.lane;
        for (const [other, place] of lanesOf(family))
          if (place.lane !== own) expect(after.get(other)).toEqual(place);
      }),
    );
  });

  it('moves nothing where it only is eaten, shelved, seen or spoiled', () => {
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 1, max: 60 }), (seed, jars) => {
        const records = syntheticFamily({ jars, shape: 'bushy', seed });
        const plain = drawFamily(buildFamily(records), PLAIN, 'generation');
        const spoiled = records.jars.map((jar) => ({ ...jar, spoiled: jar.key % 3 === 0 }));
        const other = drawFamily(
          buildFamily({ ...records, jars: spoiled }),
          { ...PLAIN, jar: (key) => ({ setWord: 'firm', outcomeKnown: true, onShelf: key % 2 === 0 }) },
          'generation',
        );
        expect(other.y).toEqual(plain.y);
      }),
    );
  });
});

/** A family of several lines that mix now and then. */
function weeklyLines(seed: number, jars: number): Family {
  const random = seededNumbers(seed);
  const draw = (n: number): number => Math.floor(random() * n);
  const told: Told[] = Array.from({ length: jars }, (_, i) => {
    const key = i + 1;
    const seeds = i === 0 || draw(6) === 0 ? [] : draw(5) === 0 ? [1 + draw(i), 1 + draw(i)] : [1 + draw(i)];
    const from =
      seeds.length === 0
        ? [{ source: 1, pieces: 8 }]
        : [...new Set(seeds)].map((fromJar) => ({ fromJar, volumeMl: 30 + draw(30) }));
    return { key, batch: key, letter: 'a', madeOn: dayAfter(i), from };
  });
  return buildFamily(tell(told));
}

it('lanes stand in the order of founding, each with its line, its day and its level row', () => {
  const family = familyOf([
    { key: 1, batch: 7, madeOn: '2025-11-05', from: [{ source: 1, pieces: 8 }] },
    { key: 2, batch: 8, madeOn: '2025-10-19', letter: 'a', from: [{ source: 1, pieces: 8 }] },
    { key: 3, batch: 8, madeOn: '2025-10-19', letter: 'b', from: [{ source: 1, pieces: 8 }] },
    { key: 4, batch: 9, madeOn: '2025-11-09', from: [{ fromJar: 3, volumeMl: 40 }, { fromJar: 1, volumeMl: 9 }] },
    { key: 5, batch: 10, lost: true, madeOn: null },
    { key: 6, batch: 11, madeOn: '2025-11-20', from: [{ fromJar: 5, volumeMl: 40 }] },
  ]); // prettier-ignore
  const { lanes, lane } = drawFamily(family, PLAIN, 'generation');
  expect(lanes).toEqual([
    { line: '8', name: '8', founded: '2025-10-19', top: 0, bottom: 1, level: 1, x: 0 },
    { line: '7', name: '7', founded: '2025-11-05', top: 2, bottom: 2, level: 2, x: 0 },
    { line: null, name: 'unknown past', founded: null, top: 3, bottom: 3, level: 3, x: 0 },
  ]);
  // The mixed jar hangs in the lane of the seed with the larger share.
  expect([...lane]).toEqual([1, 0, 0, 0, 2, 2]);
});
