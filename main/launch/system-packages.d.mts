export function packagesMissing(found: {
  readonly display: boolean;
  readonly xvfb: boolean;
  readonly lddSays: string;
  readonly fonts: boolean;
}): string[][];
export function namesToInstall(
  missing: readonly (readonly string[])[],
  isKnown: (name: string) => boolean,
): { install: string[]; unknown: string[][] };
export function ensureSystemPackages(executable: string): void;
