// The headless host: one JSON object on stdout, a sentence for everything it can't do.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commanded, type Said } from '../headless/in-process';
import { built } from './built';
import { batchOf, newFile, newFolder, NOW, plainJar } from './ledger-files';

interface Answer {
  readonly status: number;
  readonly stderr: string;
  readonly reply: {
    ok: boolean;
    value?: Record<string, unknown>;
    error?: { code: string; sentence: string };
  };
}

/** As a program of its own. */
async function started(args: readonly string[], input = ''): Promise<Said> {
  const program = await built('main/headless.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return { status: status ?? -1, said: stdout, stderr };
}

function answerOf({ status, said, stderr }: Said): Answer {
  expect(said.endsWith('}\n')).toBe(true);
  expect(said.indexOf('\n')).toBe(said.length - 1);
  return { status, stderr, reply: JSON.parse(said) as Answer['reply'] };
}

const run = async (args: readonly string[]): Promise<Answer> => answerOf(await commanded(args));

const call = (name: string, json: unknown, file: string, ...more: string[]): Promise<Answer> =>
  run(['call', name, JSON.stringify(json), '--ledger', file, '--now', NOW, ...more]);

it.each([
  ['what it answers', ['call', 'family.get', '{}', '--ledger', 'FILE', '--now', NOW], 0],
  ['what it refuses', ['call', 'family.get', '{', '--ledger', 'FILE'], 1],
  ['what it can’t make out', ['list'], 2],
] as const)(
  'as a program of its own it says and ends with the same: %s',
  async (_what, args, status) => {
    const file = newFile();
    const typed = args.map((arg) => (arg === 'FILE' ? file : arg));
    const said = await started(typed);
    expect(said).toEqual(await commanded(typed));
    expect([said.status, said.stderr]).toEqual([status, '']);
  },
  60_000,
);

describe('a ledger that is not there yet', () => {
  it('reads as empty and is not made', async () => {
    const file = newFile();
    const { status, reply, stderr } = await call('family.get', {}, file);
    expect([status, reply, stderr]).toEqual([0, { ok: true, value: { jars: [], lines: [] } }, '']);
    expect((await call('app.state', {}, file)).reply.value).toMatchObject({
      today: '2026-03-14',
      ledger: { jars: 0, file },
    });
    expect(readdirSync(dirname(file))).toEqual([]);
  });

  it('is made by the first thing recorded', async () => {
    const file = newFile();
    const { status, reply } = await call('batch.record', batchOf('2026-03-10', [plainJar('a')]), file);
    expect(status).toBe(0);
    expect(reply.value).toMatchObject({ jars: [expect.any(String)] });
    expect((await call('family.get', {}, file)).reply.value).toMatchObject({ jars: [{ label: '10 Mar a' }] });
    expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
  });

  it('is not made by a call that fails', async () => {
    const file = newFile();
    const missing = await call('notes.bringIn', { file: { path: join(dirname(file), 'none.csv') } }, file);
    expect([missing.status, missing.reply.error?.code]).toEqual([1, 'notes not found']);
    const badJar = { ...plainJar('a'), letter: ' ' };
    expect((await call('batch.record', batchOf('2026-03-10', [badJar]), file)).reply.ok).toBe(false);
    expect(readdirSync(dirname(file))).toEqual([]);
  });

  it('is not opened, nor recovered', async () => {
    const file = newFile();
    for (const [name, input] of [
      ['ledger.open', { file: null }],
      ['ledger.recover', { how: 'newest backup' }],
      ['ledger.backup', {}],
    ] as const) {
      const { status, reply } = await call(name, input, file);
      expect([status, reply.ok, reply.error?.code]).toEqual([1, false, 'no such file']);
    }
    expect(existsSync(file)).toBe(false);
  });
});

it('takes its JSON from a file or from standard input', async () => {
  const file = newFile();
  const json = JSON.stringify(batchOf('2026-03-10', [plainJar('a')]));
  const path = join(newFolder(), 'entry.json');
  writeFileSync(path, `\uFEFF${json}`);
  expect((await run(['call', 'batch.record', `@${path}`, '--ledger', file])).reply.ok).toBe(true);
  const typed = ['call', 'batch.record', '-', '--ledger', file];
  expect(answerOf(await started(typed, json)).reply.error?.code).toBe('same label');
});

it('plays the invented ledger and draws it, with columns as plain lists', async () => {
  const file = newFile();
  const demo = await run(['call', 'ledger.openDemo', '{}', '--ledger', file]);
  expect(demo.stderr).toBe('');
  expect(demo.reply.value).toMatchObject({ ledger: { demo: true } });
  const drawn = (await call('family.drawing', { spacing: 'calendar' }, file)).reply.value;
  expect(Array.isArray(drawn?.keys) && drawn.keys.length).toBeGreaterThan(50);
  expect((await call('ledger.openDemo', {}, file)).reply.error?.code).toBe('file exists');
});

const bad: readonly (readonly [string, readonly string[], string])[] = [
  ['nothing', [], 'usage'],
  ['another verb', ['list'], 'usage'],
  ['an unknown call', ['call', 'jar.eat', '{}', '--ledger', 'x.sqlite'], 'unknown call'],
  ['a name of Object', ['call', 'constructor', '{}', '--ledger', 'x.sqlite'], 'unknown call'],
  ['no ledger', ['call', 'family.get', '{}'], 'no ledger named'],
  ['no JSON', ['call', 'family.get', '{', '--ledger', 'x.sqlite'], 'invalid'],
  [
    'a JSON file that is not there',
    ['call', 'family.get', '@nowhere.json', '--ledger', 'x.sqlite'],
    'no such file',
  ],
  [
    'a moment that is none',
    ['call', 'family.get', '{}', '--ledger', 'x.sqlite', '--now', 'yesterday'],
    'usage',
  ],
  [
    'a day that is none',
    ['call', 'app.state', '{}', '--ledger', 'x.sqlite', '--now', '2026-02-30T08:00:00Z'],
    'usage',
  ],
  ['too much', ['call', 'family.get', '{}', 'more', '--ledger', 'x.sqlite'], 'usage'],
  ['an extra key', ['call', 'family.get', '{"all":true}', '--ledger', 'x.sqlite'], 'invalid'],
  [
    'a number that would be rounded',
    ['call', 'jar.get', '{"id":9007199254740993}', '--ledger', 'x.sqlite'],
    'invalid',
  ],
  ['a call of the window alone', ['call', 'ledger.leaveDemo', '{}', '--ledger', 'x.sqlite'], 'not from here'],
];
it.each(bad)('refuses %s', async (_what, args, code) => {
  const { status, reply } = await run(args);
  expect([status, reply.ok, reply.error?.code]).toEqual([code === 'usage' ? 2 : 1, false, code]);
  expect(reply.error?.sentence.length).toBeGreaterThan(10);
});

it('takes no option that it does not know, nor one twice: nothing is opened, read or recorded', async () => {
  const file = newFile();
  const entry = JSON.stringify(batchOf('2026-03-10', [plainJar('a')]));
  for (const [more, says] of [
    [['--nwo', NOW], 'There is no --nwo.'],
    [['--dry-run'], 'There is no --dry-run.'],
    [['-n'], 'There is no -n.'],
    [['--ledger', newFile()], '--ledger stands there twice.'],
  ] as const) {
    const { status, reply } = await run(['call', 'batch.record', entry, '--ledger', file, ...more]);
    expect([status, reply.error?.code]).toEqual([2, 'usage']);
    expect(reply.error?.sentence).toContain(says);
  }
  expect(readdirSync(dirname(file))).toEqual([]);
});

it('refuses a file that is no ledger, which stays as it was', async () => {
  const file = newFile();
  writeFileSync(file, 'Date,Jar\n');
  const { status, reply } = await call('family.get', {}, file);
  expect([status, reply.error?.code]).toEqual([1, 'not a ledger']);
  expect(reply.error?.sentence).toContain(file);
  expect((await call('batch.record', batchOf('2026-03-10', [plainJar('a')]), file)).reply.error?.code).toBe(
    'not a ledger',
  );
});

describe('schema', () => {
  it('prints what a record or a call looks like, without a ledger', async () => {
    expect((await run(['schema', 'jar'])).reply.value).toMatchObject({
      type: 'object',
      additionalProperties: false,
    });
    expect((await run(['schema', 'batch.record'])).reply.value).toMatchObject({
      kind: 'write',
      input: {},
      reply: {},
    });
    expect(Object.keys((await run(['schema'])).reply.value ?? {})).toEqual(['records', 'calls']);
  });

  it('refuses a name that nothing has', async () => {
    for (const name of ['toString', 'nothing']) {
      const { status, reply } = await run(['schema', name]);
      expect([status, reply.error]).toEqual([
        1,
        { code: 'unknown schema', sentence: `There is no record and no call named “${name}”.` },
      ]);
    }
    expect((await run(['schema', 'jar', 'batch'])).reply.error?.code).toBe('usage');
  });
});
