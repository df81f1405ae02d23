// The rooms inside the folders: which stands on which. An arrow runs from a higher floor to a lower one, never back and
// never between rooms of one floor, and no files import each other in a circle, not even for their types.
import { describe, expect, it } from 'vitest';
import { arrowsOf, between, circles, filesUnder, type Arrows } from './import-graph';

/** For each folder, what lies in it (folders, and files that stand by themselves), lowest floor first. */
const FLOORS: Record<string, readonly (readonly string[])[]> = {
  core: [
    ['ledger', 'call-names.ts', 'plain-issue.ts', 'markup.ts'],
    ['quantities'],
    // What is read within any text: days, times, things said one after the other.
    ['text'],
    // Codes and shapes that several rooms take: here both sides of an arrow find their types.
    ['shapes'],
    ['contract.ts'],
    ['lineage', 'growth', 'trials'],
    ['plan', 'tables'],
    ['safety'],
    ['notes', 'shelf'],
    ['vigour', 'readings'],
    ['advice'],
    // Sentences at the edge: nothing below makes one, or reads one back.
    ['says'],
    ['sentences.ts'],
    ['rules', 'archive', 'hand-over', 'labels', 'pictures', 'demo'],
    ['reports'],
    ['schemas'],
  ],
  // Of the folders only: the files beside them are held by the check on circles.
  'main/ledger': [['migrations'], ['facts'], ['entries'], ['derived'], ['rules'], ['reads'], ['writes']],
  renderer: [
    ['theme'],
    ['state'],
    ['parts'],
    // Panels that open over any screen.
    ['out'],
    // The screens: none knows another. What two of them show is one of the parts.
    ['batch', 'costs', 'family', 'history', 'hold', 'notes', 'shelf', 'sources', 'start', 'trials', 'vigour'],
    ['app'],
    ['main.tsx'],
  ],
};

/** What a file lies in, one step below a folder: "lineage", "contract.ts". */
const roomIn =
  (folder: string) =>
  (file: string): string | null =>
    file.startsWith(`${folder}/`) ? (file.slice(folder.length + 1).split('/')[0] ?? null) : null;

/** The folders around a file: "core", "core/notes", "core/notes/rows". */
const foldersOf = (file: string): string[] =>
  file
    .split('/')
    .slice(0, -1)
    .map((_, at, parts) => parts.slice(0, at + 1).join('/'));

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
    const floors = FLOORS[folder] ?? [];
    const files = floors.flat().some((room) => room.includes('.'));
    const place = (file: string): string | null => {
      const room = roomIn(folder)(file);
      return room?.includes('.') && !files ? null : room;
    };
    expect(againstFloors(floors, between(arrowsOf(filesUnder(folder)), place))).toEqual([]);
  });
});

describe('no circle', () => {
  const arrows = arrowsOf(['core', 'main', 'renderer'].flatMap(filesUnder));

  it('runs through files', () => {
    expect(circles(arrows)).toEqual([]);
  });

  it('runs through what lies side by side in a folder', () => {
    const folders = new Set([...arrows.keys()].flatMap((file) => foldersOf(file)));
    // A circle of files alone is told above.
    const found = [...folders].flatMap((folder) =>
      circles(between(arrows, roomIn(folder)))
        .filter((group) => group.some((room) => !room.includes('.')))
        .map((group) => `${folder}: ${group.join(' ')}`),
    );
    expect(found).toEqual([]);
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
