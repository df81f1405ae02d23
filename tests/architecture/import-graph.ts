// Which file imports which, read from the real import specifiers, so that no comment can switch a check off.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '../..');

/** The code files below a folder, as paths from the root; declaration files are left out. */
export function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mts)$/.test(name) && !name.endsWith('.d.ts') && !name.endsWith('.d.mts'))
    .map((name) => join(folder, name));
}

/** Without comments and with strings kept: good enough for imports and for calls that core may not make. */
export function codeOf(file: string): string {
  return readFileSync(join(root, file), 'utf8')
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|[\s;{(,])\/\/.*$/gm, '$1');
}

/** A quoted "from" is a word of its own, such as the name of a field. */
export const SPECIFIER = /(?<!['"])(?:\bfrom\s*|\bimport\s*\(?\s*|\brequire\s*\(\s*)(['"])([^'"\n]+)\1/g;

export function specifiersOf(file: string): string[] {
  return [...codeOf(file).matchAll(SPECIFIER)].map((match) => match[2] ?? '');
}

/** From each of these files to those of them that it imports, types too. */
export type Arrows = ReadonlyMap<string, ReadonlySet<string>>;

export function arrowsOf(files: readonly string[]): Arrows {
  const known = new Set(files);
  const target = (file: string, specifier: string): string | undefined => {
    const path = relative(root, resolve(root, dirname(file), specifier));
    return [path, `${path}.ts`, `${path}.tsx`, `${path}/index.ts`].find((one) => known.has(one));
  };
  return new Map(
    files.map((file) => [
      file,
      new Set(
        specifiersOf(file)
          .filter((specifier) => specifier.startsWith('.'))
          .flatMap((specifier) => target(file, specifier) ?? []),
      ),
    ]),
  );
}

/** The same arrows with each file named by what it lies in; arrows within one such place are left out. */
export function between(arrows: Arrows, placeOf: (file: string) => string | null): Arrows {
  const places = new Map<string, Set<string>>();
  for (const [file, targets] of arrows) {
    const from = placeOf(file);
    if (from === null) continue;
    const known = places.get(from) ?? new Set();
    places.set(from, known);
    for (const target of targets) {
      const to = placeOf(target);
      if (to !== null && to !== from) known.add(to);
    }
  }
  return places;
}

/**
 * Groups in which each can be reached from each other, by Tarjan's algorithm (R. Tarjan, Depth-first search and linear
 * graph algorithms, SIAM J. Comput. 1, 1972): every circle lies within one of them.
 */
export function circles(arrows: Arrows): string[][] {
  const order = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (place: string): number => {
    order.set(place, order.size);
    let low = order.size - 1;
    open.push(place);
    for (const next of arrows.get(place) ?? []) {
      if (!order.has(next)) low = Math.min(low, visit(next));
      else if (open.includes(next)) low = Math.min(low, order.get(next) ?? low);
    }
    if (low === order.get(place)) {
      const group = open.splice(open.indexOf(place));
      if (group.length > 1) found.push(group.toSorted());
    }
    return low;
  };
  for (const place of arrows.keys()) if (!order.has(place)) visit(place);
  return found;
}
