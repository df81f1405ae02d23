// The table of the Electron security checklist in DEVELOPERS.md: all twenty items, each held by a test that names it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Whether a file has a test, or a check, that says it is of an item: "item 4: …", "items 2, 3 and 4: …". */
const namesItem = (text: string, item: number): boolean =>
  [...text.matchAll(/\bitems? ([\d, and]+):/g)].some(([, numbers]) =>
    (numbers ?? '').split(/[^\d]+/).includes(String(item)),
  ) || new RegExp(`\\bitem ${item}:`).test(text);

it('has each of the twenty items once, and the test it names is of that item', () => {
  const rows = [...read('DEVELOPERS.md').matchAll(/^\| (\d+)\. [^|]+\| [^|]+\| ([^|\s]+) +\|$/gm)];
  expect(rows.map(([, item]) => Number(item))).toEqual(Array.from({ length: 20 }, (_, at) => at + 1));
  for (const [, item, file] of rows)
    expect(namesItem(read(file ?? ''), Number(item)), `item ${item} in ${file}`).toBe(true);
});
