// The headless host as a program of its own: one JSON object on stdout, a sentence for everything it can't do.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { built } from './built';
import { batchOf, newFile, newFolder, NOW, plainJar } from './ledger-files';

let program = '';
beforeAll(async () => {
  program = await built('main/headless.ts');
}, 60_000);

interface Answer {
  readonly status: number | null;
  readonly stderr: string;
  readonly reply: {
    ok: boolean;
    value?: Record<string, unknown>;
    error?: { code: string; sentence: string };
  };
}

function run(args: readonly string[], input = ''): Answer {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  expect(stdout.endsWith('}\n')).toBe(true);
  expect(stdout.indexOf('\n')).toBe(stdout.length - 1);
  return { status, stderr, reply: JSON.parse(stdout) as Answer['reply'] };
}

const call = (name: string, json: unknown, file: string, ...more: string[]): Answer =>
  run(['call', name, JSON.stringify(json), '--ledger', file, '--now', NOW, ...more]);

describe('a ledger that is not there yet', () => {
  it('reads as empty and is not made', () => {
    const file = newFile();
    const { status, reply, stderr } = call('family.get', {}, file);
    expect([status, reply, stderr]).toEqual([0, { ok: true, value: { jars: [], lines: [] } }, '']);
    expect(call('app.state', {}, file).reply.value).toMatchObject({
      today: '2026-03-14',
      ledger: { jars: 0, file },
    });
    expect(readdirSync(dirname(file))).toEqual([]);
  });

  it('is made by the first thing recorded', () => {
    const file = newFile();
    const { status, reply } = call('batch.record', batchOf('2026-03-10', [plainJar('a')]), file);
    expect(status).toBe(0);
    expect(reply.value).toMatchObject({ jars: [expect.any(String)] });
    expect(call('family.get', {}, file).reply.value).toMatchObject({ jars: [{ label: '10 Mar a' }] });
    expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
  });

  it('is not made by a call that fails', () => {
    const file = newFile();
    const missing = call('notes.bringIn', { file: { path: join(dirname(file), 'none.csv') } }, file);
    expect([missing.status, missing.reply.error?.code]).toEqual([1, 'notes not found']);
    const badJar = { ...plainJar('a'), letter: ' ' };
    expect(call('batch.record', batchOf('2026-03-10', [badJar]), file).reply.ok).toBe(false);
    expect(readdirSync(dirname(file))).toEqual([]);
  });

  it('is not opened, nor recovered', () => {
    const file = newFile();
    for (const [name, input] of [
      ['ledger.open', { file: null }],
      ['ledger.recover', { how: 'newest backup' }],
      ['ledger.backup', {}],
    ] as const) {
      const { status, reply } = call(name, input, file);
      expect([status, reply.ok, reply.error?.code]).toEqual([1, false, 'no such file']);
    }
    expect(existsSync(file)).toBe(false);
  });
});

it('takes its JSON from a file or from standard input', () => {
  const file = newFile();
  const json = JSON.stringify(batchOf('2026-03-10', [plainJar('a')]));
  const path = join(newFolder(), 'entry.json');
  writeFileSync(path, `\uFEFF${json}`);
  expect(run(['call', 'batch.record', `@${path}`, '--ledger', file]).reply.ok).toBe(true);
  expect(run(['call', 'batch.record', '-', '--ledger', file], json).reply.error?.code).toBe('same label');
});

it('plays the invented ledger and draws it, with columns as plain lists', () => {
  const file = newFile();
  const demo = run(['call', 'ledger.openDemo', '{}', '--ledger', file]);
  expect(demo.stderr).toBe('');
  expect(demo.reply.value).toMatchObject({ ledger: { demo: true } });
  const drawn = call('family.drawing', { spacing: 'calendar' }, file).reply.value;
  expect(Array.isArray(drawn?.keys) && drawn.keys.length).toBeGreaterThan(50);
  expect(call('ledger.openDemo', {}, file).reply.error?.code).toBe('file exists');
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
it.each(bad)('refuses %s', (_what, args, code) => {
  const { status, reply } = run(args);
  expect([status, reply.ok, reply.error?.code]).toEqual([code === 'usage' ? 2 : 1, false, code]);
  expect(reply.error?.sentence.length).toBeGreaterThan(10);
});

it('takes no option that it does not know, nor one twice: nothing is opened, read or recorded', () => {
  const file = newFile();
  const entry = JSON.stringify(batchOf('2026-03-10', [plainJar('a')]));
  for (const [more, says] of [
    [['--nwo', NOW], 'There is no --nwo.'],
    [['--dry-run'], 'There is no --dry-run.'],
    [['-n'], 'There is no -n.'],
    [['--ledger', newFile()], '--ledger stands there twice.'],
  ] as const) {
    const { status, reply } = run(['call', 'batch.record', entry, '--ledger', file, ...more]);
    expect([status, reply.error?.code]).toEqual([2, 'usage']);
    expect(reply.error?.sentence).toContain(says);
  }
  expect(readdirSync(dirname(file))).toEqual([]);
});

it('refuses a file that is no ledger, which stays as it was', () => {
  const file = newFile();
  writeFileSync(file, 'Date,Jar\n');
  const { status, reply } = call('family.get', {}, file);
  expect([status, reply.error?.code]).toEqual([1, 'not a ledger']);
  expect(reply.error?.sentence).toContain(file);
  expect(call('batch.record', batchOf('2026-03-10', [plainJar('a')]), file).reply.error?.code).toBe(
    'not a ledger',
  );
});

describe('schema', () => {
  it('prints what a record or a call looks like, without a ledger', () => {
    expect(run(['schema', 'jar']).reply.value).toMatchObject({ type: 'object', additionalProperties: false });
    expect(run(['schema', 'batch.record']).reply.value).toMatchObject({
      kind: 'write',
      input: {},
      reply: {},
    });
    expect(Object.keys(run(['schema']).reply.value ?? {})).toEqual(['records', 'calls']);
  });

  it('refuses a name that nothing has', () => {
    for (const name of ['toString', 'nothing']) {
      const { status, reply } = run(['schema', name]);
      expect([status, reply.error]).toEqual([
        1,
        { code: 'unknown schema', sentence: `There is no record and no call named “${name}”.` },
      ]);
    }
    expect(run(['schema', 'jar', 'batch']).reply.error?.code).toBe('usage');
  });
});
