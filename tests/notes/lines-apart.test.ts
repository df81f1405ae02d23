// Two lines in one sheet, each with its own a and b on the same days: a column of a few names sets them apart, whatever its
// heading, and a seed is looked for in the row's own line.
import { expect, it } from 'vitest';
import { must, newSession } from '../ledger/ledger-files';

const sheet = (heading: string, rows: readonly string[]) => ({
  file: {
    name: 'jars.csv',
    bytes: new TextEncoder().encode(
      [`When made,${heading},Lid,Parent,Amt of parent,Hrs,Result`, ...rows].join('\n'),
    ),
  },
});
const ROWS = [
  '2026-01-05,Porch,A,8 caps Pine Hill,,36,firm',
  '2026-01-05,Porch,B,8 caps Pine Hill,,36,soft',
  '2026-01-05,Attic,A,8 caps Clover,,36,runny',
  '2026-01-05,Attic,B,8 caps Clover,,36,firm',
  '2026-01-12,Porch,A,Jan 5 A,45 ml,36,firm',
  '2026-01-12,Attic,A,Jan 5 A,45 ml,36,soft',
  '2026-01-12,Attic,B,Jan 5 B,45 ml,36,soft',
  '2026-01-19,Porch,A,Jan 12 A,45 ml,36,firm',
  '2026-01-19,Attic,A,Jan 12 B,45 ml,36,firm',
  '2026-01-26,Porch,A,Attic Jan 19 A,45 ml,36,firm',
];

it('what is plain had nothing stirred in, and a bare figure of warmth keeps the scale of its heading', () => {
  const session = newSession();
  const text = 'Made,Jar,Seed,Stirred in,Bath °F,Hrs\n2026-01-05,a,8 caps Pine Hill,plain,100,36\n2026-01-05,b,8 caps Pine Hill,2 tbsp inulin,100 F,35\n';
  must(session, 'notes.bringIn', { file: { name: 'a.csv', bytes: new TextEncoder().encode(text) } });
  const { jars } = must(session, 'family.get', {});
  const told = jars.map(({ id }) => must(session, 'jar.get', { id }));
  expect(told.map(({ view }) => view.additions)).toEqual([[], ['inulin']]);
  expect(told.map(({ hold }) => hold?.planned?.typed)).toEqual(['100 °F', '100 F']);
}); // prettier-ignore

it.each(['Line', 'Which', 'Zing', 'Place'])('under “%s”', (heading) => {
  for (const rows of [ROWS, ROWS.toReversed()]) {
    const session = newSession();
    const file = sheet(heading, rows);
    const { problems, questions, columns } = must(session, 'notes.preview', file);
    expect(columns.find((column) => column.heading === heading)?.meaning).toBe('label');
    expect(problems).toEqual([]);
    expect(questions.filter(({ blocks }) => blocks)).toEqual([]);
    must(session, 'notes.bringIn', file);
    const { jars, lines } = must(session, 'family.get', {});
    const called = (id: string | null) => jars.find((jar) => jar.id === id)?.label ?? null;
    const seeds = new Map(
      jars.map(({ label, seeds: from }) => [
        label,
        from.map(({ jar, source }) => called(jar) ?? source).join(),
      ]),
    );
    expect(Object.fromEntries(seeds)).toEqual({
      '5 Jan Porch a': 'Pine Hill',
      '5 Jan Porch b': 'Pine Hill',
      '5 Jan Attic a': 'Clover',
      '5 Jan Attic b': 'Clover',
      '12 Jan Porch a': '5 Jan Porch a',
      '12 Jan Attic a': '5 Jan Attic a',
      '12 Jan Attic b': '5 Jan Attic b',
      '19 Jan Porch a': '12 Jan Porch a',
      '19 Jan Attic a': '12 Jan Attic b',
      // What names another line itself is of that line.
      '26 Jan Porch a': '19 Jan Attic a',
    });
    expect(lines.map(({ name }) => name).toSorted()).toEqual(['Attic', 'Porch']);
    expect(must(session, 'notes.bringIn', file)).toMatchObject({ jars: 0, seedings: 0, changed: 0 });
  }
});
