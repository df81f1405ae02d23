// Nothing is kept for tests alone: what a file exports is used by the program, in that file or in another.
import { dirname, relative, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { codeOf, filesUnder, root } from './import-graph';

/** What tests alone take from a file, and why they may. */
const TAKEN_BY_TESTS: Readonly<Record<string, readonly string[]>> = {
  'a step held to published values or worked examples by itself': [
    'core/advice/restart-curve.ts: costCurve', 'core/advice/seed-cost.ts: weakChance',
    'core/advice/seed-cost.ts: oddsPoints', 'core/growth/cardinal.ts: PUBLISHED_SETS',
    'core/growth/storage.ts: DOUBLINGS_PER_TENTH', 'core/growth/time-constant.ts: fitTimeConstant',
    'core/plan/scaling.ts: wilson', 'core/trials/choices.ts: power', 'core/trials/page.ts: pageBeyond',
    'core/trials/serving-order.ts: williams', 'core/vigour/ewma.ts: ewmaWidth',
    'core/vigour/mann-kendall.ts: exactUpperTail',
  ],
  'a step whose every case is held by itself': [ 'core/advice/restart-curve.ts: NO_DOUBT',
    'core/ledger/default-preferences.ts: regionOf',
    'core/lineage/calendar.ts: keepApart',
    'core/lineage/figures-with-why.ts: percent', 'core/lineage/labels.ts: readLabel',
    'core/plan/calendar-file.ts: calendarText', 'core/plan/calendar-file.ts: folded',
    'core/quantities/typed-days.ts: readTime', 'main/files/notes-file.ts: notesText',
    'main/walls.ts: isOwnPage', 'main/walls.ts: closeContents', 'renderer/batch/batch-text.ts: letterAt', 'renderer/batch/remember-entry.ts: gateOf',
    'renderer/batch/jar-says.ts: passedToday', 'renderer/batch/use-bands.ts: jarsAcross',
    'renderer/batch/mistake-question.tsx: fallingAway', 'renderer/family/dates.ts: splitLabel',
    'renderer/family/geometry.ts: newestEnd', 'renderer/family/months.tsx: writtenMonths',
    'renderer/parts/use-reader.ts: makeWriter', 'renderer/vigour/tabbed-numbers.ts: tabbed',
  ],
  'a table that tests go through whole, or a value that they hold to its like elsewhere': [
    'core/call-names.ts: READS', 'core/ledger/facts/all-facts.ts: FIELDS',
    'core/sentences.ts: refusals',
    'core/notes/layout/heading-phrases.ts: LANGUAGES', 'core/safety/harmless-words.ts: HARMLESS', 'core/safety/spoilage-words.ts: SPOILAGE',
    'core/safety/mishap-words.ts: MISHAPS',
    'main/ledger/open.ts: APPLICATION_ID', 'main/ledger/open.ts: PRAGMAS',
    'main/ledger/worker-protocol.ts: HOST_CALLS', 'main/page-protocol.ts: CONTENT_POLICY',
    'main/page-window.ts: PAPER', 'renderer/family/mounting.ts: MOST_MOUNTED',
    'renderer/family/use-walking.ts: STEPS',
  ],
  'judges without a ledger: benchmarks and simulated kitchens': [
    'core/advice/ranking-order.ts: reservesKept', 'core/advice/seed-level.ts: allAlike',
    'core/advice/seed-level.ts: worthFor', 'core/advice/seed-level.ts: promiseOf',
    'core/advice/weak.ts: WEAK_EDGE', 'core/vigour/evidence.ts: evidenceOf',
    'core/vigour/line.ts: keepersUsual', 'core/vigour/line.ts: judgeLine',
  ],
  'what is planted in the invented ledger, named beside the jars that it is planted in': [
    'core/demo/cases.ts: cases', 'core/demo/writes.ts: momentAfter',
  ],
  'the sheet that tokens.css is made from': [
    'renderer/theme/tokens.ts: colours', 'renderer/theme/tokens.ts: measures',
  ],
}; // prettier-ignore

const MADE = /^export (?:abstract )?(?:async )?(const|let|function\*?|class|interface|type|enum) (\w+)/gm;
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

/**
 * Values that are exported and that no other of these files takes; and types that not even their own file uses. A type
 * that stands in what a file exports is part of it.
 */
function unused(files: ReadonlyMap<string, string>): string[] {
  const taken = new Set([...files].flatMap(([file, code]) => takenBy(file, code)));
  return [...files].flatMap(([file, code]) => {
    const stem = file.replace(/\.\w+$/, '');
    const inFile = (name: string): boolean => (code.match(new RegExp(`\\b${name}\\b`, 'g')) ?? []).length > 1;
    return [...code.matchAll(MADE)]
      .filter(([, , name]) => !taken.has(`${stem}:${name}`) && !taken.has(`${stem}:*`))
      .filter(([, kind, name = '']) => !['type', 'interface'].includes(kind ?? '') || !inFile(name))
      .map(([, , name]) => `${file}: ${name}`);
  });
}

it('nothing is exported for tests alone but what is listed, and all of that still is', () => {
  const files = new Map(['core', 'main', 'renderer'].flatMap(filesUnder).map((file) => [file, codeOf(file)]));
  expect(unused(files).toSorted()).toEqual(Object.values(TAKEN_BY_TESTS).flat().toSorted());
});

it('such a name is found, and what another file takes is not', () => {
  const files = new Map([
    ['core/a.ts', 'export const one = 1;\nexport const two = 2;\nexport type Three = typeof two;\nexport type Four = Three;'],
    ['core/b.ts', "import { two } from './a';\nexport const five = two;\nconst six = five;"],
  ]); // prettier-ignore
  expect(unused(files)).toEqual(['core/a.ts: one', 'core/a.ts: Four', 'core/b.ts: five']);
});
