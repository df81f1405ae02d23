// Whatever is bundled into the program goes out with the text of its licence; the build itself refuses a licence that may not.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/** Words that each licence's text has: the texts themselves (SPDX). */
const WORDS: Readonly<Record<string, RegExp>> = {
  MIT: /Permission is hereby granted, free of charge/,
  ISC: /Permission to use, copy, modify, and\/or distribute/,
  'BSD-2-Clause': /Redistribution and use in source and binary forms/,
  'BSD-3-Clause': /Redistribution and use in source and binary forms/,
  '0BSD': /Permission to use, copy, modify/,
  'Apache-2.0': /Apache License/,
  'OFL-1.1': /SIL Open Font License/i,
};

it('the built program holds the licence of each package in it, with its words', () => {
  const text = readFileSync(join(import.meta.dirname, '../../dist/main/LICENCES.txt'), 'utf8');
  const packages = [
    ...text.matchAll(/^(@?[\w./-]+) (\d[\w.-]*) \(([\w.-]+)\)\n([^]*?)(?=\n---\n|$(?![^]))/gm),
  ];
  const names = packages.map(([, name]) => name);
  expect(names).toEqual(
    expect.arrayContaining(['react', 'react-dom', 'zod', 'papaparse', 'qrcode-generator']),
  );
  expect(names.filter((name) => name?.startsWith('@fontsource'))).toHaveLength(2);
  for (const [, name = '', , licence = '', words = ''] of packages) {
    expect(WORDS[licence], `${name}: ${licence}`).toBeDefined();
    expect(words, name).toMatch(WORDS[licence] ?? /$^/);
  }
});
