// Nothing is kept for tests alone: what a file exports is used by the program, in that file or in another.
import { dirname, relative, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { codeOf, filesUnder, root } from './import-graph';

/** What tests alone use, and why it stays. */
const STILL: Readonly<Record<string, string>> = {
  'core/demo/cases.ts: cases':
    'what is planted in the invented ledger, named beside the jars that it is planted in',
  'core/growth/cardinal.ts: PUBLISHED_SETS': 'published parameters, beside the model they are for',
  'core/growth/jar-temperature.ts: timeConstantFrom': 'the published method in its plain form',
  'core/growth/tool-checks.ts: meterCheckedOn': 'still to be asked by the gate',
  'core/lineage/labels.ts: labelJars': 'still to go',
  'core/trials/friedman.ts: friedmanByChiSquare': 'the approximation that the exact test is held against',
  'core/vigour/evidence.ts: evidenceOf': 'judges without a ledger: benchmarks',
  'core/vigour/line.ts: keepersUsual': 'judges without a ledger: benchmarks',
  'renderer/theme/contrast.ts: contrast': 'holds the tokens to AA',
  'renderer/theme/css.ts: tokensCss': 'holds tokens.css equal to the tokens',
  'renderer/theme/tokens.ts: pairs': 'holds the tokens to AA',
};

const MADE = /^export (?:abstract )?(?:async )?(?:const|let|function\*?|class|interface|type|enum) (\w+)/gm;
const TAKEN =
  /(?:import|export)\s+(?:type\s+)?(?:\w+\s*,\s*)?(\{[^}]*\}|\*(?:\s+as\s+\w+)?)\s*from\s*['"](\.[^'"]+)['"]/g;

/** "file:name" of each name that a file takes from another; "file:*" where it takes all. */
function takenBy(file: string, code: string): string[] {
  return [...code.matchAll(TAKEN)].flatMap(([, names = '', specifier = '']) => {
    const from = relative(root, resolve(root, dirname(file), specifier)).replace(/\.\w+$/, '');
    if (names.startsWith('*')) return [`${from}:*`];
    const each = names.slice(1, -1).split(',');
    return each.map(
      (name) =>
        `${from}:${name
          .trim()
          .replace(/^type /, '')
          .replace(/ as .*/, '')}`,
    );
  });
}

/** Names that are exported and used nowhere in these files but where they are made. */
function unused(files: ReadonlyMap<string, string>): string[] {
  const taken = new Set([...files].flatMap(([file, code]) => takenBy(file, code)));
  return [...files].flatMap(([file, code]) => {
    const stem = file.replace(/\.\w+$/, '');
    return [...code.matchAll(MADE)]
      .map(([, name = '']) => name)
      .filter((name) => !taken.has(`${stem}:${name}`) && !taken.has(`${stem}:*`))
      .filter((name) => (code.match(new RegExp(`\\b${name}\\b`, 'g')) ?? []).length === 1)
      .map((name) => `${file}: ${name}`);
  });
}

it('nothing is exported for tests alone', () => {
  const files = new Map(['core', 'main', 'renderer'].flatMap(filesUnder).map((file) => [file, codeOf(file)]));
  expect(unused(files).filter((one) => !(one in STILL))).toEqual([]);
});

it('such a name is found, and what another file or its own uses is not', () => {
  const files = new Map([
    [
      'core/a.ts',
      'export const one = 1;\nexport const two = 2;\nexport const three = two;\nexport type Four = 4;',
    ],
    ['core/b.ts', "import { three, type Four } from './a';\nexport const five = three as Four;"],
  ]);
  expect(unused(files)).toEqual(['core/a.ts: one', 'core/b.ts: five']);
});
