// The rooms inside the folders: which stands on which. An arrow runs from a higher floor to a lower one, never back and
// never between rooms of one floor, and no files import each other in a circle, not even for their types.
import { describe, expect, it } from 'vitest';
import { arrowsOf, between, circles, filesUnder, type Arrows } from './import-graph';

/** For each folder, what lies in it (folders, and files that stand by themselves), lowest floor first. */
const FLOORS: Record<string, readonly (readonly string[])[]> = {
  core: [
    ['ledger', 'call-names.ts', 'plain-issue.ts'],
    ['quantities'],
    // Codes and shapes that several rooms take: here both sides of an arrow find their types.
    ['shapes'],
    ['contract.ts'],
    ['lineage', 'growth'],
    ['says'],
    ['safety', 'sentences.ts'],
    ['notes'],
    ['vigour', 'readings'],
    ['advice'],
    ['rules', 'archive', 'demo'],
    ['schemas'],
  ],
  renderer: [
    ['theme'],
    ['state'],
    ['parts'],
    // The screens: none knows another. What two of them show is one of the parts.
    ['batch', 'family', 'history', 'notes', 'sources', 'start', 'vigour'],
    ['app'],
    ['main.tsx'],
  ],
};

/** What a file lies in, one step below a folder: "lineage", "contract.ts". */
const roomIn =
  (folder: string) =>
  (file: string): string | null =>
    file.startsWith(`${folder}/`) ? (file.slice(folder.length + 1).split('/')[0] ?? null) : null;

/** Arrows that run up or along, and rooms that no floor names or that are no longer there. */
function againstFloors(floors: readonly (readonly string[])[], arrows: Arrows): string[] {
  const floorOf = new Map(floors.flatMap((rooms, floor) => rooms.map((room) => [room, floor] as const)));
  const unknown = [...arrows.keys()].filter((room) => !floorOf.has(room));
  const gone = [...floorOf.keys()].filter((room) => !arrows.has(room));
  const upward = [...arrows].flatMap(([from, targets]) =>
    [...targets]
      .filter((to) => (floorOf.get(to) ?? -1) >= (floorOf.get(from) ?? Infinity))
      .map((to) => `${from} → ${to}`),
  );
  return [...unknown.map((room) => `no floor for ${room}`), ...gone.map((room) => `no ${room}`), ...upward];
}

describe.each(Object.keys(FLOORS))('rooms of %s', (folder) => {
  it('stand on lower ones only', () => {
    const rooms = between(arrowsOf(filesUnder(folder)), roomIn(folder));
    expect(againstFloors(FLOORS[folder] ?? [], rooms)).toEqual([]);
  });
});

/** Circles between files that are still to be opened; nothing is added here. */
const STILL: readonly string[] = [
  'core/notes/conventions/bare-units.ts core/notes/conventions/file-conventions.ts',
  'core/notes/rows/note-rows.ts core/notes/rows/other-columns.ts core/notes/rows/same-place.ts',
  'core/notes/table/spaced-columns.ts core/notes/table/text-table.ts',
  'main/calls.ts main/ledger/session.ts',
  'main/files/archive/load-archive.ts main/files/archive/read-archive.ts',
  'main/ledger/ledger.ts main/ledger/rules/ask.ts main/ledger/rules/known.ts',
];

describe('files', () => {
  it('import each other in no circle', () => {
    const files = ['core', 'main', 'renderer'].flatMap(filesUnder);
    expect(
      circles(arrowsOf(files))
        .map((group) => group.join(' '))
        .filter((group) => !STILL.includes(group)),
    ).toEqual([]);
  });
});

describe('the check itself', () => {
  const graph = (lines: Record<string, readonly string[]>): Arrows =>
    new Map(Object.entries(lines).map(([from, to]) => [from, new Set(to)]));

  it('finds every circle, and none where there is none', () => {
    expect(circles(graph({ a: ['b', 'c'], b: ['d'], c: ['d'], d: [] }))).toEqual([]);
    expect(circles(graph({ a: ['b'], b: ['c'], c: ['a', 'd'], d: ['e'], e: ['d'], f: ['a'] }))).toEqual([
      ['d', 'e'],
      ['a', 'b', 'c'],
    ]);
  });

  it('names arrows that run up or along, and rooms that stand nowhere', () => {
    const floors = [['ground'], ['left', 'right'], ['top']];
    expect(againstFloors(floors, graph({ ground: [], left: ['ground'], right: [], top: ['left'] }))).toEqual(
      [],
    );
    expect(
      againstFloors(floors, graph({ ground: ['top'], left: ['right'], right: [], cellar: ['ground'] })),
    ).toEqual(['no floor for cellar', 'no top', 'ground → top', 'left → right']);
  });
});
