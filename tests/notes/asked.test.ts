// What a sheet leaves open is asked with the answers it can have, and each answer settles it.
import { describe, expect, it } from 'vitest';
import { readNotes, remarksOfPlan, type NotesInput } from '../../core/notes/notes-door';
import { EMPTY, hash } from './read';

/** Without generations, so that the ledger may have sources. */
function read(text: string, more: Partial<NotesInput> = {}) {
  const reading = readNotes({
    file: 'notes.csv', text, mapping: {}, answers: {}, today: '2026-03-01', preferences: { spoons: 'US' }, ledger: EMPTY, hash, ...more,
  }); // prettier-ignore
  if (!reading.ok) throw new Error(`refused: ${reading.code}`);
  return reading;
}

const CAPSULES = { name: 'Blue Tin', culture: false, form: 'capsules' } as const;
const OTHERS = { name: 'Meadow Pot', culture: false, form: 'capsules' } as const;
const sheet = (seed: string): string => `date,jar,seed,amount\n2026-02-01,a,${seed}\n2026-02-08,a,2026-02-01 a,45 ml\n`;

describe('a product told by its form alone', () => {
  it.each(['Old Mill caps', 'Good Morning tablets', 'best barn capsules', 'Alte Mühle Kapseln'])(
    '%s: bought in pieces, whatever its name says beside that of a jar',
    (name) => {
      const { plan, preview } = read(sheet(`${name},`));
      expect(preview.questions).toEqual([]);
      expect(plan.jars).toHaveLength(2);
      expect(plan.sources.map((one) => one.name)).toEqual([name]);
    },
  );
  it.each(['the old one', 'the good jar', 'last one'])('%s: no product', (seed) =>
    expect(read(sheet(`${seed},`)).plan.sources).toEqual([]));

  it.each(['capsules,5', 'caps,5', '5 capsules,', 'the capsules,5', 'Kapseln,5'])('%s: the only one there is', (seed) => {
    const { plan, preview } = read(sheet(seed), { ledger: { ...EMPTY, sources: [CAPSULES] } });
    expect(plan.sources).toEqual([]);
    expect(plan.jars[0]?.seedings.map(({ source, amount }) => [source, amount?.value])).toEqual([['Blue Tin', 5]]);
    expect(preview.assumptions.some(({ sentence }) => /taken as Blue Tin, the only capsules/.test(sentence))).toBe(true);
  });

  it('one of two is asked for, and the answer brings the row in', () => {
    const ledger = { ...EMPTY, sources: [CAPSULES, OTHERS] };
    const open = read(sheet('5 caps,'), { ledger });
    expect(open.preview.questions.map(({ id, choices }) => [id, choices.map(({ value }) => value)])).toEqual([
      ['which:2', ['Blue Tin', 'Meadow Pot']],
    ]);
    expect(open.plan.jars).toEqual([]);
    const told = read(sheet('5 caps,'), { ledger, answers: { 'which:2': 'Meadow Pot' } });
    expect(told.plan.jars.map(({ seedings }) => seedings[0]?.source)).toEqual(['Meadow Pot', null]);
  });

  it.each(['capsules,5', 'a sachet,'])('%s: with none of it the row comes in all the same', (seed) => {
    expect(read(sheet(seed)).plan.jars).toHaveLength(2);
  });
});

describe('bare figures that can be no one unit', () => {
  const text = 'date,jar,seed,amount\n2026-02-01,a,Blue Tin,5 capsules\n2026-02-05,a,2026-02-01 a,3\n2026-02-09,a,2026-02-05 a,3 tbsp\n2026-02-12,a,2026-02-09 a,45\n';
  it('are asked about once, with both rows', () => {
    const asked = read(text).preview.questions.filter(({ blocks }) => blocks);
    expect(asked.map(({ id }) => id)).toEqual(['unit:amount']);
    expect(asked[0]?.sentence).toMatch(/“3” \(row 3\) and “45” \(row 5\)/);
  });
  it('are read by their size, or all in one unit, as it is answered', () => {
    const ml = (answer: string): (number | undefined)[] =>
      read(text, { answers: { 'unit:amount': answer } }).plan.jars.map(({ seedings }) => Number(seedings[0]?.amount?.value.toFixed(1)));
    // A US tablespoon is 14.78676478125 mL (NIST Handbook 44).
    expect(ml('by size')).toEqual([5, 44.4, 44.4, 45]);
    expect(ml('mL')).toEqual([5, 3, 44.4, 45]);
  });
});

it('a day that would lie after today the other way round settles the order of all', () => {
  const text = 'Made,Jar,Seed\n3/2/26,a,8 caps Blue Tin\n3/9/26,a,3/2 a\n';
  const days = (today: string): unknown => {
    const { plan, preview } = read(text, { today });
    return [preview.questions.filter(({ blocks }) => blocks).length, plan.jars.map(({ madeOn }) => madeOn)];
  };
  expect(days('2026-03-20')).toEqual([0, ['2026-03-02', '2026-03-09']]);
  expect(read(text, { today: '2026-03-20' }).preview.assumptions.some(({ sentence }) => /would lie after today/.test(sentence))).toBe(true);
  expect(read(text, { today: '2027-03-20' }).preview.questions.map(({ id }) => id)).toContain('day order');
});

it('figures that may be hours or degrees are asked about, and kept until it is answered', () => {
  const text = 'Made,Jar,Seed,Xyzzy\n2026-02-01,a,8 caps Blue Tin,38\n2026-02-08,a,2026-02-01 a,37\n';
  const open = read(text);
  expect(open.preview.questions.map(({ id }) => id)).toContain('means:Xyzzy');
  expect(open.plan.jars.map(({ hold, fields }) => [hold, fields.note])).toEqual([[null, 'Xyzzy: 38'], [null, 'Xyzzy: 37']]);
  const answered = read(text, { answers: { 'means:Xyzzy': 'temperature' } });
  expect(answered.plan.jars.map(({ hold }) => hold?.planned?.value)).toEqual([38, 37]);
});

describe('a column that nobody is known to tell', () => {
  const SEEDED = (heading: string) => `Started;Jar;${heading};How much;Milk;Came out
02.03.25;a;Harbour drops + Quiet Meadow caps;40 ml;850 ml whole UHT;set
02.03.25;b;Harbour drops + Quiet Meadow caps;40 ml;850 ml whole UHT;soft
10.03.25;a;02.03.25 a;40 ml;850 ml whole UHT;set
17.03.25;a;10.03.25 a;40 ml;850 ml whole UHT;firm
17.03.25;b;10.03.25 a;40 ml;850 ml whole UHT;set
25.03.25;a;17.03.25 b;40 ml;850 ml whole UHT;runny
`; // prettier-ignore
  it.each(['Out of', 'End', 'Ended', 'Temp', 'pH', 'Hours', 'Vessel', 'Note', 'Smell', 'Zing', 'Price', 'Stop'])(
    'that names jars of other rows tells the seeds, also under “%s”',
    (heading) => {
      const named = read(SEEDED('Seed'));
      const { preview, plan } = read(SEEDED(heading));
      expect(preview.columns.find((column) => column.heading === heading)?.meaning).toBe('seed');
      expect(preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
      const seeds = (jars: typeof plan.jars) => jars.map(({ label, seedings }) => [label, seedings.map(({ fromRow, source }) => [fromRow, source])]);
      expect(seeds(plan.jars)).toEqual(seeds(named.plan.jars));
    },
  ); // prettier-ignore

  it('of seeds may be any that does not name the row’s own jar', () => {
    const { preview } = read('Date,Jar,End,Milk\n2026-02-01,a,the blue one,whole\n2026-02-08,a,what Ida gave,skimmed\n');
    expect(preview.questions.map(({ id, choices }) => [id, choices.map(({ value }) => value)])).toEqual([
      ['which seeds', ['End', 'Milk']],
    ]);
  }); // prettier-ignore

  it('of seeds is asked for, among those that may, and the answer brings the rows in', () => {
    const text = 'Made,Pot no,Brr,Mood\n2026-02-01,a,8 of the blue ones,good\n2026-02-08,a,first of all,bad\n';
    const open = read(text);
    expect(open.preview.questions.map(({ id, blocks, choices }) => [id, blocks, choices.map(({ value }) => value)])).toEqual([
      ['which seeds', true, ['Brr', 'Mood']],
    ]);
    expect(open.plan.jars).toEqual([]);
    const told = read(text, { answers: { 'which seeds': 'Brr' } });
    expect(told.preview.columns.map(({ meaning }) => meaning)).toEqual(['date', 'jar', 'seed', null]);
    expect(told.preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
  });
});

describe('a name that is neither a jar nor a known source', () => {
  const text = `date,jar,seed,amount,taste /10
2026-01-01,a,8 caps Blue Tin,,7
2026-02-01,a,Green Pot,45 ml,8
2026-02-01,b,Green Pot,45 ml,9
2026-02-08,a,2026-02-01 b,45 ml,6
`;
  const id = 'source:Green Pot';
  it('is asked about once for all its rows, and the answer brings them in', () => {
    const open = read(text);
    expect(open.preview.questions.filter((one) => one.id === id)).toMatchObject([
      { row: null, blocks: false, choices: [{ value: 'product' }, { value: 'culture' }, { value: 'jar' }] },
    ]);
    expect(open.preview.questions.find((one) => one.id === id)?.sentence).toMatch(/rows 3 and 4/);
    expect(open.plan.jars.map(({ line }) => line)).toEqual([2]);
    for (const [answer, receivedFrom] of [['product', null], ['culture', 'Green Pot']] as const) {
      const told = read(text, { answers: { [id]: answer } });
      expect(told.plan.jars.map(({ line }) => line)).toEqual([2, 3, 4, 5]);
      expect(told.plan.sources.at(-1)).toMatchObject({ name: 'Green Pot', receivedFrom });
      expect(told.preview.questions.map((one) => one.id)).not.toContain(id);
    }
    const mended = read(text, { answers: { [id]: 'jar', 'cell:3:seed': '2026-01-01 a', 'cell:4:seed': 'product Green Pot' } });
    expect(mended.plan.jars[1]?.seedings[0]?.fromRow).toBe('row:2');
  });
  it.each(['product Meadow Pot', 'Product: Meadow Pot', 'a product called Meadow Pot', 'Produkt Meadow Pot'])(
    '“%s” is a product of that name',
    (seed) => {
      const answers = { 'cell:3:seed': seed, 'cell:4:seed': seed };
      expect(read(text, { answers }).plan.sources.map(({ name }) => name)).toEqual(['Blue Tin', 'Meadow Pot']);
    },
  );
  it.each([
    ['Lantern', 'product', 'culture'],
    ['Blue Tin', 'product', 'culture'],
    ['Garden Caps', 'product', 'jar'],
    ['Meadow Pot', 'product', 'culture'],
    ['Blue Tin & Meadow Pot', 'product', 'culture'],
    ['Anna’s starter', 'culture', 'product'],
  ])('“%s” starts a line, first or later, is no jar, and is said once to be a %s: one answer says that it is a %s', (seed, taken, answer) => {
    const jar = (day: string, from: string): string => `2026-${day},a,${from}`;
    const name = (seed.split(' & ').at(-1) ?? '').replace('’', "'");
    for (const rows of [
      [jar('01-01', seed), jar('01-08', '2026-01-01 a')],
      [jar('01-01', '8 caps Heron'), jar('01-08', '2026-01-01 a'), jar('02-01', seed), jar('02-08', '2026-02-01 a'), jar('03-01', seed)],
    ]) {
      const { plan, preview } = read(['date,jar,seed', ...rows].join('\n'));
      expect(plan.jars).toHaveLength(rows.length);
      expect(preview.questions).toEqual([]);
      const [said, ...more] = preview.assumptions.filter(({ sentence }) => sentence.startsWith(`“${name}”`));
      expect(more).toEqual([]);
      expect(said).toMatchObject({ row: null, id: `source:${name}`, chosen: taken, choices: [{ value: 'product' }, { value: 'culture' }, { value: 'jar' }] });
      const told = read(['date,jar,seed', ...rows].join('\n'), { answers: { [`source:${name}`]: answer } });
      expect(told.preview.assumptions.filter(({ id }) => id === `source:${name}`)).toMatchObject([{ chosen: answer }]);
      const received = told.plan.sources.filter((one) => one.name === name).map(({ receivedFrom }) => receivedFrom);
      expect(received).toEqual(answer === 'jar' ? [] : [answer === 'culture' ? name : null]);
    }
  });
  it.each([
    ['Bertha', 'called Bertha'],
    ['Bertha', 'Bertha'],
    ['green jar', ''],
    ['Green Pot', ''],
    ['2026-01-01 a + Meadow Pot', ''],
  ])('“%s” may be a jar’s nickname where a note says “%s”: it is asked about, and nothing is said of it', (seed, note) => {
    const { plan, preview } = read(`date,jar,seed,note\n2026-01-01,a,8 caps Blue Tin,${note}\n2026-02-01,a,${seed},\n`);
    expect(plan.jars).toHaveLength(1);
    expect(preview.questions.map(({ id }) => id)).toEqual([expect.stringMatching(/^source:/)]);
    expect(preview.assumptions.filter(({ id }) => id !== undefined)).toEqual([]);
  });
  it('figures under a heading of words are kept as what they are, and nothing is asked of them', () => {
    const { plan, preview } = read(text);
    expect(plan.jars[0]).toMatchObject({ outcome: null, fields: { note: 'taste /10: 7' } });
    expect(preview.columns.at(-1)?.meaning).toBe('note');
    expect(preview.assumptions.map(({ sentence }) => sentence)).toContainEqual(expect.stringMatching(/“taste \/10” holds marks out of 10/));
    expect(remarksOfPlan(plan, {}, () => undefined)).toEqual([]);
  });
});

it.each([
  ['Garden Caps', '45 ml', 'Garden Caps'],
  ['Garden Caps', '8', 'Garden'],
  ['8 Garden caps', '', 'Garden'],
  ['Capsules of Garden', '', 'Garden'],
])('“%s” beside “%s” is called %s: a form is one only beside a count, or before the name', (seed, amount, name) => {
  const { plan } = read(`date,jar,seed,amount\n2026-02-01,a,${seed},${amount}\n2026-02-08,a,2026-02-01 a,45 ml\n`);
  expect(plan.sources.map((one) => one.name)).toEqual([name]);
});

it('an unusual length or warmth is right, or left blank, as it is answered', () => {
  const text = 'date,jar,seed,hours,temp\n2026-02-01,a,8 caps Blue Tin,150,20\n';
  const hold = (answer: string) => read(text, { answers: { 'hours:2': answer, 'temperature:2': answer } });
  expect(read(text).preview.questions.filter(({ choices }) => choices.length > 0).map(({ id }) => id)).toEqual(['hours:2', 'temperature:2']);
  expect(hold('right').plan.jars[0]?.hold).toMatchObject({ hours: 150, planned: { value: 20 } });
  expect(hold('blank').plan.jars[0]).toMatchObject({ hold: null, fields: { note: 'hours: 150\ntemp: 20' } });
});

describe('a question says how many rows its answer would bring in', () => {
  const rows = (seeds: readonly (readonly [jar: string, seed: string])[]): string =>
    `date,jar,seed,amount\n${seeds.map(([jar, seed], at) => `2026-01-${String(at + 1).padStart(2, '0')},${jar},${seed},40 ml\n`).join('')}`;
  const aside = (text: string, answers: NotesInput['answers'] = {}): number =>
    read(text, { answers }).preview.rows.filter(({ state }) => state === 'aside').length;
  it.each([
    ['a name nobody knows, with a line that hangs on it', [['a', 'The Heirloom'], ['b', '1 Jan a'], ['c', '2 Jan b'], ['d', '8 caps Blue Tin']], 'product', 3],
    ['a letter that several jars have', [['a', '8 caps Blue Tin'], ['a', '1 Jan a'], ['b', 'a'], ['c', '3 Jan b']], 'last before', 2],
    ['two names as one', [['a', 'The Heirloom + The Old Friend'], ['b', '1 Jan a']], 'product', 2],
    ['of a row that needs two answers neither alone brings it', [['a', 'The Heirloom'], ['b', '1 Jan a + the Bertha']], 'product', 1],
    ['a seed that nothing but a correction brings', [['a', '5 Oct z'], ['b', '1 Jan a']], 'product', 0],
  ] as const)('%s', (_name, seeds, answer, brings) => {
    const text = rows(seeds);
    const asked = read(text).preview.questions.filter((one) => one.brings !== undefined);
    expect(asked.map((one) => one.brings)).toEqual(brings === 0 ? [] : [brings]);
    for (const { id } of asked) expect(aside(text) - aside(text, { [id]: answer })).toBe(brings);
  });
});

describe('what is said not to be known', () => {
  it.each(['?', '??', 'TBD', 'unknown', 'not noted', 'unbekannt', 'no idea', 'weiss nicht'])('“%s” is kept, asks nothing and reads as nothing', (cell) => {
    const text = `Date,Jar,Seed,Amount,Milk,Fibre,Hours,Temp,Set,Whey,Tang,Smell,Colour,Texture,pH,Lid\n2026-01-05,a,8 caps Blue Tin,,,,,,,,,,,,,\n2026-01-12,a,2026-01-05 a${`,${cell}`.repeat(13)}\n`;
    const { plan, preview } = read(text);
    const [, jar] = plan.jars;
    expect([preview.problems, preview.questions]).toEqual([[], []]);
    expect([jar?.outcome, jar?.hold, jar?.additions, jar?.fields.milk, jar?.fields.vessel, jar?.seedings[0]?.amount]).toEqual([null, null, [], null, null, null]);
    for (const heading of ['Amount', 'Milk', 'pH', 'Smell']) expect(jar?.fields.note).toContain(`${heading}: ${cell}`);
    expect(remarksOfPlan(plan, {}, () => undefined)).toEqual([]);
  });

  it('a seed that nobody knows brings its jar in without one, and says so; whether it spoiled is asked', () => {
    const { plan, preview } = read('Date,Jar,Seed,Amount,Spoiled\n2026-01-05,a,?,,no\n2026-01-12,a,unknown,40 ml,?\n');
    expect([plan.jars.length, preview.problems]).toEqual([2, []]);
    expect(preview.questions.filter(({ id }) => id.startsWith('seed:'))).toHaveLength(2);
    expect(plan.jars[1]?.fields.note).toContain('Spoiled: ?');
  });

  it.each(['the jar before', 'jar before', 'batch before', 'Glas davor', 'the previous one'])('“%s” is the jar made last before', (seed) => {
    const { plan } = read(`Date,Jar,Seed,Amount\n2026-01-05,a,8 caps Blue Tin,\n2026-01-12,a,${seed},40 ml\n`);
    expect(plan.jars[1]?.seedings[0]?.fromRow).toBe('row:2');
  });
});

it.each(['4 Jan 19:00', '4 January 19:30', '4. Januar 19 Uhr', '4 Jan 7 pm', 'Jan 4 19:00', 'Jan 4, 07:00 pm'])('“%s” tells no year: what stands behind the day is a time', (start) => {
  const { plan, preview } = read(`Start,Out,Jar,Seed,Amount\n${start.includes(',') ? `"${start}"` : start},6 Jan 2026 7:00,a,8 caps Blue Tin,\n2026-01-12 19:00,2026-01-14 7:00,a,2026-01-04 a,45 ml\n`);
  expect(preview.problems).toEqual([]);
  expect(plan.jars.map(({ madeOn }) => madeOn)).toEqual(['2026-01-04', '2026-01-12']);
});

describe('what a row says of spoilage is asked once', () => {
  const text = 'Date,Jar,Seed,Amount,Notes\n2026-01-05,a,8 caps Blue Tin,,\n2026-01-12,a,2026-01-05 a,45 ml,"threw it all out, smelt odd"\n2026-01-19,a,2026-01-05 a,45 ml,slimy\n';
  const open = (answers: NotesInput['answers']): string[] => read(text, { answers }).preview.questions.map(({ id }) => id);
  const readAs = (answers: NotesInput['answers']): (string | null)[] => remarksOfPlan(read(text, { answers }).plan, answers, () => undefined).map((one) => one.readAs);
  it('an answer to the question answers the remark, and the other way round', () => {
    const asked = open({}).filter((id) => /^(?:sign|thrown|slime):/.test(id));
    expect(asked).toHaveLength(2);
    expect(readAs({})).toEqual([null, null]);
    for (const [answer, as] of [['spoiled', 'discard'], ['fine', 'fine']] as const)
      expect(readAs(Object.fromEntries(asked.map((id) => [id, answer])))).toEqual([as, as]);
    for (const as of ['fine', 'look', 'discard'])
      expect(open({ 'remark:3': as, 'remark:4': as }).filter((id) => asked.includes(id))).toEqual([]);
  });

  it.each([['a little whey on top', 'a little'], ['whey on top', 'some'], ['nice, no whey', 'none'], ['ein wenig Molke', 'a little'], ['pour off the whey', null], ['no whey? not sure', null]])(
    'a note of “%s” tells whey as %j', (note, whey) => {
      const { plan } = read(`Date,Jar,Seed,Notes\n2026-01-05,a,8 caps Blue Tin,"${note}"\n`);
      expect([plan.jars[0]?.outcome?.whey ?? null, plan.jars[0]?.fields.note]).toEqual([whey, note]);
    },
  ); // prettier-ignore
});

it.each([
  ['Date,Jar,Seed', '2026-01-12,a,2026-01-05 a', '2026-01-12,a,2026-01-05 b', 'Jar', 'b'],
  ['Label,Seed', '2026-01-12 a,2026-01-05 a', '2026-01-12 a,2026-01-05 b', 'Label', '2026-01-12 b'],
  ['Date,Seed', '2026-01-12 a,2026-01-05 a', '2026-01-12 a,2026-01-05 b', 'Date', '2026-01-12 b'],
])('%s: rows called the same are mended where they say what they are called', (headings, one, other, column, mended) => {
  const [first, second] = headings.includes('Jar') ? ['2026-01-05,a', '2026-01-05,b'] : ['2026-01-05 a', '2026-01-05 b'];
  const text = `${headings},Set\n${first},8 caps Blue Tin,firm\n${second},8 caps Blue Tin,soft\n${one},firm\n${other},soft\n`;
  const { preview } = read(text);
  expect(preview.problems.map((problem) => [problem.row, problem.column])).toEqual([[4, column], [5, column]]);
  const { plan } = read(text, { answers: { [`cell:5:${column}`]: mended } });
  expect(plan.jars.map(({ letter }) => letter)).toEqual(['a', 'b', 'a', 'b']);
}); // prettier-ignore

it('where the only days are those on which jars were taken out, it is asked on which they were made', () => {
  const text = 'Taken out,Jar,Seed,Held\n2026-01-07,a,8 caps Blue Tin,36 h\n2026-01-14,a,2026-01-07 a,34 h\n';
  expect(read(text).preview.questions.map(({ id, blocks }) => [id, blocks])).toEqual([['which days', true]]);
  const { plan, preview } = read(text, { answers: { 'which days': 'Taken out' } });
  expect([preview.problems, plan.jars.map(({ madeOn, hold }) => [madeOn, hold?.hours])]).toEqual([[], [['2026-01-07', 36], ['2026-01-14', 34]]]);
});

describe('a seed that the file itself says was thrown out', () => {
  const text = (seed: string) =>
    `Date,Jar,Seed,Notes\n2026-01-05,a,8 caps Blue Tin,\n2026-01-12,a,2026-01-05 a,"smelled of nail polish, thrown out"\n2026-01-12,b,2026-01-05 a,\n2026-01-21,a,${seed},\n2026-01-28,a,2026-01-21 a,\n`;
  const asked = (seed: string, answers: NotesInput['answers'] = {}) =>
    read(text(seed), { answers }).preview.questions.filter(({ id }) => id.startsWith('cell:'));
  it('is asked about, with what hangs on it, and its mates to choose from', () => {
    const [one, ...others] = asked('2026-01-12 a');
    expect([one?.id, others]).toEqual(['cell:5:Seed', []]);
    expect(one?.sentence).toMatch(/12 Jan 2026 a .*all 2 rows that descend from it are set aside/);
    expect(one?.choices.map(({ value }) => value)).toEqual(['2026-01-12 a', '2026-01-12 b']);
  });
  it('the answer is the seed', () => {
    const { plan, preview } = read(text('2026-01-12 a'), { answers: { 'cell:5:Seed': '2026-01-12 b' } });
    expect([plan.jars[3]?.seedings[0]?.fromRow, preview.questions.filter(({ id }) => id.startsWith('cell:'))]).toEqual(['row:4', []]);
    expect(asked('2026-01-12 a', { 'cell:5:Seed': '2026-01-12 a' })).toEqual([]);
  });
  it.each([['2026-01-12 b', {}], ['2026-01-12 a', { 'remark:3': 'fine', 'thrown:3': 'fine' }]])('nothing is asked of a seed that did not spoil: %s', (seed, answers) =>
    expect(asked(seed, answers)).toEqual([]));
}); // prettier-ignore
