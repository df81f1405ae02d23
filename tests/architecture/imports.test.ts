// Which folder may know of which, read from the real import specifiers, so that no comment can switch it off.
import { dirname, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codeOf, filesUnder, root, SPECIFIER, specifiersOf } from './import-graph';

/** The top folder a relative specifier lands in, or the package's name. */
function targetOf(file: string, specifier: string): string {
  if (!specifier.startsWith('.')) return specifier;
  return relative(root, resolve(root, dirname(file), specifier)).split('/')[0] ?? '';
}

const CORE_PACKAGES = ['zod', 'd3-hierarchy', 'papaparse', 'qrcode-generator', 'jstat'];
const RULES: Record<string, (target: string) => boolean> = {
  core: (target) => target === 'core' || CORE_PACKAGES.includes(target),
  main: (target) => !['renderer', 'tests', 'e2e', 'react', 'react-dom'].includes(target),
  renderer: (target) =>
    !['main', 'tests', 'e2e', 'electron', 'better-sqlite3'].includes(target) && !target.startsWith('node:'),
};

describe.each(Object.keys(RULES))('%s', (folder) => {
  it('imports only what it may', () => {
    const files = filesUnder(folder);
    expect(files.length).toBeGreaterThan(0);
    const wrong = files.flatMap((file) =>
      specifiersOf(file)
        .filter((specifier) => !RULES[folder]?.(targetOf(file, specifier)))
        .map((specifier) => `${file} → ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('the check itself', () => {
  it('sees imports in every form', () => {
    const code = `import a from 'node:fs'; import 'electron'; const b = await import("react"); export { c } from './c'; type D = Omit<E, 'from' | 'to'>;`;
    expect([...code.matchAll(SPECIFIER)].map((match) => match[2])).toEqual([
      'node:fs',
      'electron',
      'react',
      './c',
    ]);
  });

  it('tells where a path leads', () => {
    expect(targetOf('renderer/app/app.tsx', '../../main/host')).toBe('main');
    expect(targetOf('core/contract.ts', './ledger/basics')).toBe('core');
    expect(RULES['core']?.('node:fs')).toBe(false);
    expect(RULES['renderer']?.('main')).toBe(false);
  });
});

describe('core', () => {
  const REACHES_OUT = [
    /\bDate\.now\b/,
    /\bnew Date\(\s*\)/,
    /\bMath\.random\b/,
    /\bperformance\.now\b/,
    /\b(?:globalThis|window|document|process|localStorage)\.\w/,
    /\bcrypto\./,
    /\bsetTimeout\b|\bsetInterval\b|\bfetch\(/,
    /\bconsole\./,
  ];

  it('asks for no clock, chance or surroundings', () => {
    const wrong = filesUnder('core').flatMap((file) => {
      const code = codeOf(file);
      return REACHES_OUT.filter((pattern) => pattern.test(code)).map((pattern) => `${file}: ${pattern}`);
    });
    expect(wrong).toEqual([]);
  });
});

describe('main', () => {
  it('listens to the page in one file only', () => {
    const listening = filesUnder('main').filter((file) => /\bipcMain\b/.test(codeOf(file)));
    expect(listening).toEqual(['main/ipc.ts']);
  });
});
