// What fits on a screen: no line over 140 characters but in tables, where a row is a row. A sentence or a pattern can't be
// broken, so of a line that quotes one what stands around it counts. Functions are held by the linter (.oxlintrc.json).
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { filesUnder, root } from './import-graph';

const MOST = 140;
const MOST_AROUND = 100;
const QUOTED = /'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`|\/(?![ *])(?:[^/\\\n]|\\.)+\/[gimuy]*/g;

/** Whose lines are rows of a table. */
const isTable = (file: string): boolean => file === 'core/contract.ts' || file.startsWith('core/shapes/');

/** Lines that are still too long, by file; numbers only fall. */
const STILL: Readonly<Record<string, number>> = {
  'core/growth/proof.ts': 1,
  'core/lineage/figures-with-why.ts': 2,
  'core/notes/layout/column-cells.ts': 1,
  'core/notes/layout/headings.ts': 1,
  'core/notes/notes-says.ts': 1,
  'core/notes/plan/plan-jar.ts': 2,
  'core/notes/seeds/seed-by-day.ts': 2,
  'core/quantities/amounts.ts': 1,
  'core/readings/export-cells.ts': 1,
  'core/readings/export-rows.ts': 2,
  'core/readings/export-times.ts': 1,
  'core/readings/read-export.ts': 3,
  'core/rules/plan-facts.ts': 1,
  'core/trials/allergens.ts': 1,
  'core/trials/tasting.ts': 4,
  'main/ledger/derived/columns-of-jars.ts': 1,
  'main/ledger/judged.ts': 1,
  'main/ledger/reads/read-trials.ts': 1,
  'main/ledger/rules/load.ts': 1,
  'main/ledger/writes/write-export.ts': 1,
  'main/ledger/writes/write-trial.ts': 1,
  'renderer/batch/advised-seed.tsx': 1,
  'renderer/history/acts-by-day.ts': 1,
  'renderer/sources/packet.tsx': 2,
  'renderer/vigour/line-marks.tsx': 2,
  'renderer/vigour/line-plot.tsx': 1,
  'renderer/vigour/restart-panel.tsx': 1,
};

const tooLong = (line: string): boolean =>
  line.length > MOST &&
  (/^\s*(?:\/\/|\/?\*)/.test(line) || line.trim().replaceAll(QUOTED, '').length > MOST_AROUND);

it('no line is longer than can be read', () => {
  const over = ['core', 'main', 'renderer']
    .flatMap(filesUnder)
    .filter((file) => !isTable(file))
    .flatMap((file) => {
      const lines = readFileSync(join(root, file), 'utf8').split('\n').filter(tooLong).length;
      return lines > (STILL[file] ?? 0) ? [`${file}: ${lines} of at most ${STILL[file] ?? 0}`] : [];
    });
  expect(over).toEqual([]);
});

it('is told apart from a line that quotes a sentence', () => {
  expect(tooLong(`  const words = '${'word '.repeat(40)}';`)).toBe(false);
  expect(tooLong(`  const words = ${'word + '.repeat(40)}1;`)).toBe(true);
  expect(tooLong(`// ${'word '.repeat(40)}`)).toBe(true);
});
