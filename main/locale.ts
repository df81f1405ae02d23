// Which locale the system speaks, for units, dates and money: not the language of its menus. Pure.

/**
 * The system's locale, or null where nobody set one.
 * @param ask the platform's own answer; not asked on Linux, where it names a language even when none is set
 */
export function localeOfSystem(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
  ask: () => string,
): string | null {
  if (platform !== 'linux') return ask() || null;
  const set = env['LC_ALL'] || env['LC_MEASUREMENT'] || env['LANG'];
  return set ? set : null;
}
