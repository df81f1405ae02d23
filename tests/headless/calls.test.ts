// `calls` as a program of its own: lines in, lines out, through pipes that are slow, cut short or killed.
import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { once } from 'node:events';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { built } from '../ledger/built';
import { batchOf, must, newFile, newFolder, NOW, openSession, plainJar } from '../ledger/ledger-files';
import { recordingEntry } from '../ledger/recording-entry';
import { runs } from '../runs';
import { commanded, type Said } from './in-process';

let program = '';
beforeAll(async () => {
  program = await built('main/headless.ts');
}, 60_000);

interface Reply {
  id?: unknown;
  ok: boolean;
  value?: Record<string, unknown>;
  error?: { code: string; sentence: string };
}

/** All at once: what is given to it, and all that it said. */
const run = (input: string | Buffer, args: readonly string[]): Promise<Said> =>
  commanded(['calls', ...args], input);

const replies = (said: string): Reply[] => {
  expect(said === '' || said.endsWith('}\n'), 'only whole lines').toBe(true);
  return said
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Reply);
};
const codes = (said: string): unknown[] => replies(said).map(({ ok, error }) => (ok ? 'ok' : error?.code));
const at = (file: string): string[] => ['--ledger', file, '--now', NOW];
const line = (name: string, input: unknown = {}, more: object = {}): string =>
  `${JSON.stringify({ name, input, ...more })}\n`;
const record = (day: number, more: object = {}): string =>
  line('batch.record', recordingEntry(day, null), more);

/** Running, and spoken with line by line. */
class Conversation {
  readonly child: ChildProcessWithoutNullStreams;
  readonly #lines: AsyncIterator<string>;
  readonly #over: Promise<unknown[]>;
  stderr = '';

  constructor(file: string, now: string[] = ['--now', NOW]) {
    this.child = spawn(process.execPath, [program, 'calls', '--ledger', file, ...now]);
    this.child.stderr.setEncoding('utf8').on('data', (text: string) => (this.stderr += text));
    this.#lines = createInterface(this.child.stdout)[Symbol.asyncIterator]();
    this.#over = once(this.child, 'close');
  }

  /** @returns the reply, or null where it ended without one */
  async ask(text: string): Promise<Reply | null> {
    this.child.stdin.write(text);
    const next = await this.#lines.next();
    return next.done ? null : (JSON.parse(next.value) as Reply);
  }

  /** @returns its exit code and the signal that ended it */
  async over(): Promise<[code: number | null, signal: string | null]> {
    const [code, signal] = await this.#over;
    return [code as number | null, signal as string | null];
  }
}

const jarsOf = (reply: Reply | null): string[] => reply?.value?.['jars'] as string[];

/** Jars in the file. */
function jarsIn(file: string): Set<string> {
  const session = openSession(file);
  const jars = new Set(must(session, 'family.get', {}).jars.map(({ id }) => id));
  expect(session.ledger.db.pragma('integrity_check', { simple: true })).toBe('ok');
  session.close();
  return jars;
}

describe('a reply', () => {
  it('is what call prints, with the id first where one was given', async () => {
    const file = newFile();
    must(openSession(file, 'create'), 'batch.record', batchOf('2026-03-10', [plainJar('a'), plainJar('b')]));
    const asked = [
      ['app.state', {}],
      ['family.get', {}],
      ['family.drawing', { spacing: 'calendar' }],
      ['family.get', { all: true }],
      ['jar.eat', {}],
      ['jar.get', { id: '01900000-0000-7000-8000-000000000000' }],
    ] as const;
    const ids = [7, 'seven', null, [1, { of: 'two' }], undefined, -0.5];
    const expected = asked.map(([name, input], index) => {
      const one = spawnSync(process.execPath, [program, 'call', name, JSON.stringify(input), ...at(file)], {
        encoding: 'utf8',
      });
      const id = ids[index];
      return id === undefined ? one.stdout : `{"id":${JSON.stringify(id)},${one.stdout.slice(1)}`;
    });
    const lines = asked.map(([name, input], index) => line(name, input, { id: ids[index] })).join('');
    const many = spawnSync(process.execPath, [program, 'calls', ...at(file)], {
      input: lines,
      encoding: 'utf8',
    });
    expect(many.stdout).toBe(expected.join(''));
    expect([many.status, many.stderr]).toEqual([1, '']);
    // What the other tests here go by says the same.
    expect(await run(lines, at(file))).toEqual({ status: 1, said: many.stdout, stderr: '' });
  });

  it('comes for each line also without its input, after a byte order mark, with CRLF, and at the end without a break', async () => {
    const { status, said } = await run(
      '\uFEFF{"name":"app.state","id":1}\r\n\t{"id":2,"name":"family.get","input":{}} \r\n{"name":"draft.list","id":3}',
      at(newFile()),
    );
    expect([status, replies(said).map(({ id, ok }) => [id, ok])]).toEqual([0, [[1, true], [2, true], [3, true]]]); // prettier-ignore
  });

  it('is not given to blank lines at the end, and nothing is asked of nothing', async () => {
    expect(codes((await run(`${line('app.state')}\n\r\n \n`, at(newFile()))).said)).toEqual(['ok']);
    expect(await run('', at(newFile()))).toEqual({ status: 0, said: '', stderr: '' });
  });

  it('says what is wrong with a line, and the rest goes on', async () => {
    const deep = `{"name":"app.state","id":${'['.repeat(300_000)}${']'.repeat(300_000)}}`;
    const bad = ['{', '', 'null', '5', '[]', '{}', '{"name":5}', '{"name":"app.state","inputs":{}}', '{"name":"constructor"}', deep]; // prettier-ignore
    const { status, said, stderr } = await run(
      `${bad.join('\n')}\n${line('app.state', {}, { id: 'last' })}`,
      at(newFile()),
    );
    const expected = bad.map(() => 'invalid');
    expected[8] = 'unknown call';
    expect(codes(said)).toEqual([...expected, 'ok']);
    expect([status, replies(said).at(-1)?.id, stderr]).toEqual([1, 'last', '']);
    for (const { ok, error } of replies(said)) if (!ok) expect(error?.sentence.length).toBeGreaterThan(10);
    expect(replies(said)[7]?.error?.sentence).toBe(
      'line takes no field called “inputs”. Please correct it and try again.',
    );
  });

  it('takes bytes as JSON writes them: a list of numbers, as the schema says', async () => {
    const bytes = [...Buffer.from('date,jar,seed\n2026-02-01,a,Blue Tin\n')];
    const asked = [{ name: 'n.csv', bytes }, { name: 'n.csv', bytes: [...bytes, 256] }].map((file) => line('notes.preview', { file })); // prettier-ignore
    const [good, bad] = replies((await run(asked.join(''), at(newFile()))).said);
    expect(good?.value).toMatchObject({ rows: [{ row: 2, state: 'new' }] });
    expect(bad?.error?.code).toBe('invalid');
  });

  it('keeps the id of a line that has more wrong with it', async () => {
    const wrong = [
      '{"name":"app.state","extra":1,"id":"x"}',
      '{"id":{"y":1}}',
      '{"name":"jar.get","input":{"id":9007199254740993},"id":7}',
      '{"name":"app.state","id":9007199254740993}',
    ];
    const told = replies((await run(wrong.join('\n'), at(newFile()))).said);
    expect(told.map(({ id, error }) => [id, error?.code])).toEqual(['x', { y: 1 }, 7, undefined].map((id) => [id, 'invalid'])); // prettier-ignore
    expect(told.slice(2).map(({ error }) => error?.sentence)).toEqual(
      ['id', 'id'].map(
        (path) => `${path}: this is a number beyond 9007199254740991, which can’t be kept as it is written. Please correct it and try again.`,
      ),
    ); // prettier-ignore
  });

  it('refuses what is not text, and bytes that end in the middle of a letter', async () => {
    const input = Buffer.concat([
      Buffer.from('{"name":"\xff"}\n', 'latin1'),
      Buffer.from(line('app.state')),
      Buffer.from([0xe2, 0x82]),
    ]);
    expect(codes((await run(input, at(newFile()))).said)).toEqual(['line not text', 'ok', 'line not text']);
  });
});

describe('a line of more than 20 MB', () => {
  const limit = 20 * 1024 * 1024;
  const padded = (bytes: number): string => {
    const json = '{"name":"app.state","id":1}';
    return `${json}${' '.repeat(bytes - json.length)}\n`;
  };

  it('is refused, one just as long is not, and the rest goes on', async () => {
    const { status, said } = await run(padded(limit) + padded(limit + 1) + line('app.state'), at(newFile()));
    expect([status, codes(said)]).toEqual([1, ['ok', 'line too long', 'ok']]);
  });

  it('is not kept in memory while it goes on without end', async () => {
    const talk = new Conversation(newFile());
    expect((await talk.ask(line('app.state')))?.ok).toBe(true);
    const piece = Buffer.alloc(4_000_000, 'x');
    for (let sent = 0; sent < 75; sent++) {
      if (!talk.child.stdin.write(piece)) await once(talk.child.stdin, 'drain');
    }
    expect(await talk.ask('\n')).toMatchObject({ ok: false, error: { code: 'line too long' } });
    // 300 MB went in: kept, they would make 360 MB with the 60 MB or so of Node itself. The longest line that is held is 20 MB;
    // what was let go of stays a while where a busy machine tidies up late (seen: 261 MB).
    if (process.platform === 'linux') {
      const status = spawnSync('cat', [`/proc/${talk.child.pid}/status`], { encoding: 'utf8' }).stdout;
      expect(Number(/VmHWM:\s+(\d+) kB/.exec(status)?.[1])).toBeLessThan(320_000);
    }
    expect((await talk.ask(line('app.state')))?.ok).toBe(true);
    talk.child.stdin.end();
    expect(await talk.over()).toEqual([1, null]);
  });
});

describe('the moment', () => {
  it('holds from its line on, also on a line that is refused; one that is none changes nothing', async () => {
    const today = (now?: unknown, name = 'app.state'): string =>
      line(name, {}, now === undefined ? {} : { now });
    const { said } = await run(
      [today(), today('2026-05-01T09:00:00+02:00'), today(), today('2026-04-01T09:00:00+02:00', 'jar.eat'), today(),
        today('tomorrow'), today(5), today(null), today()].join(''), at(newFile()),
    ); // prettier-ignore
    expect(replies(said).map(({ value, error }) => value?.['today'] ?? error?.code)).toEqual([
      '2026-03-14', '2026-05-01', '2026-05-01', 'unknown call', '2026-04-01', 'usage', 'usage', 'usage', '2026-04-01',
    ]); // prettier-ignore
    expect(replies(said)[5]?.error?.sentence).toContain('such as 2026-03-14T18:30:00+01:00, not “tomorrow”');
  });
});

describe('a ledger that is not there yet', () => {
  it('reads as empty and is made by the first write that is kept', async () => {
    const file = newFile();
    const talk = new Conversation(file);
    expect(await talk.ask(line('family.get'))).toEqual({ ok: true, value: { jars: [], lines: [] } });
    expect((await talk.ask(line('batch.record', { ...batchOf('2026-03-10', []), jars: [] })))?.ok).toBe(
      false,
    );
    expect((await talk.ask(line('act.undo', { act: null })))?.error?.code).toBe('nothing to undo');
    expect(readdirSync(dirname(file))).toEqual([]);
    expect((await talk.ask(record(1)))?.ok).toBe(true);
    expect(existsSync(file)).toBe(true);
    expect((await talk.ask(line('family.get')))?.value?.['jars']).toHaveLength(1);
    talk.child.stdin.end();
    expect(await talk.over()).toEqual([1, null]);
    expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
  });

  it('made by another program meanwhile, it is that one which is read', async () => {
    const file = newFile();
    const talk = new Conversation(file);
    await talk.ask(line('app.state'));
    const other = openSession(file, 'create');
    must(other, 'batch.record', batchOf('2026-03-10', [plainJar('a')]));
    expect((await talk.ask(line('family.get')))?.value?.['jars']).toHaveLength(1);
    must(other, 'batch.record', batchOf('2026-03-11', [plainJar('a')]));
    expect((await talk.ask(line('family.get')))?.value?.['jars']).toHaveLength(2);
    expect((await talk.ask(line('batch.record', batchOf('2026-03-12', [plainJar('a')]))))?.ok).toBe(true);
    expect(must(other, 'family.get', {}).jars).toHaveLength(3);
    other.close();
    talk.child.stdin.end();
    expect(await talk.over()).toEqual([0, null]);
  });
});

it('opening, making and keeping ledgers is not done among many', async () => {
  const file = newFile();
  const names = ['open', 'create', 'openDemo', 'leaveDemo', 'recover', 'backup'].map(
    (name) => `ledger.${name}`,
  );
  const { status, said } = await run(names.map((name) => line(name, { file })).join(''), at(file));
  expect([status, codes(said)]).toEqual([1, names.map(() => 'not among many')]);
  expect(readdirSync(dirname(file))).toEqual([]);
});

describe('what can’t begin ends with 2', () => {
  it.each([
    ['no ledger named', [], 'no ledger named'],
    ['a moment that is none', ['--ledger', 'x.sqlite', '--now', 'noon'], 'usage'],
    ['too much', ['more', '--ledger', 'x.sqlite'], 'usage'],
    ['an option that there is not', ['--ledger', 'x.sqlite', '--nwo', NOW], 'usage'],
  ])('%s', async (_what, args, code) => {
    const { status, said } = await run(line('app.state'), args);
    expect([status, codes(said)]).toEqual([2, [code]]);
  });

  it('a file that is no ledger, each line being told so', async () => {
    const file = join(newFolder(), 'notes.csv');
    writeFileSync(file, 'Date,Jar\n');
    const { status, said } = await run(line('family.get') + record(1) + line('app.state'), at(file));
    expect([status, codes(said)]).toEqual([2, ['not a ledger', 'not a ledger', 'ok']]);
    expect(replies(said)[2]?.value?.['trouble']).toMatchObject({ kind: 'foreign' });
    expect((await run('', at(file))).status).toBe(2);
  });
});

describe('a pipe', () => {
  it('that nobody drains holds up the calls themselves', async () => {
    const file = newFile();
    openSession(file, 'create').close();
    const child = spawn(process.execPath, [program, 'calls', ...at(file)], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    child.stdout.pause();
    // Each reply is about as long as a pipe holds: the draft is told back in full.
    const long = line('draft.save', { key: 'long', json: JSON.stringify('x'.repeat(200_000)) });
    child.stdin.write(long + Array.from({ length: 20 }, (_, n) => line('draft.list') + record(n)).join(''));
    const other = openSession(file);
    const drafts = (): number => must(other, 'draft.list', {}).drafts.length;
    for (let turn = 0; turn < 200 && drafts() === 0; turn++) await wait(25);
    expect(drafts()).toBe(1);
    await wait(300);
    // Of the batches only those whose reply fits behind what is read ahead on our side can have been recorded.
    expect(must(other, 'family.get', {}).jars.length).toBeLessThan(3);
    let said = '';
    child.stdout
      .setEncoding('utf8')
      .on('data', (text: string) => (said += text))
      .resume();
    child.stdin.end();
    await once(child, 'close');
    expect(codes(said)).toEqual(Array.from({ length: 41 }, () => 'ok'));
    expect(said.length).toBeGreaterThan(20 * 200_000);
    other.close();
  });

  it('whose reader goes ends it in order, with all that was answered kept', async () => {
    const file = newFile();
    const talk = new Conversation(file);
    const first = await talk.ask(record(1));
    expect(first?.ok).toBe(true);
    talk.child.stdout.destroy();
    talk.child.stdin.on('error', () => undefined).write(record(2) + record(3) + record(4));
    expect(await talk.over()).toEqual([1, null]);
    expect(talk.stderr).toBe('');
    expect(readdirSync(dirname(file)), 'the log is merged').toEqual(['ledger.sqlite']);
    expect(jarsIn(file)).toContain(jarsOf(first)[0]);
  });
});

it.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)('%s ends it in order between two calls', async (signal) => {
  const file = newFile();
  const talk = new Conversation(file);
  const first = await talk.ask(record(1));
  talk.child.kill(signal);
  expect(await talk.over()).toEqual([0, null]);
  expect(talk.stderr).toBe('');
  expect(readdirSync(dirname(file)), 'the log is merged').toEqual(['ledger.sqlite']);
  expect(jarsIn(file)).toContain(jarsOf(first)[0]);
});

const KILLS = runs(6);
it(`${KILLS} kills at any moment lose nothing of which a whole line was read`, async () => {
  const file = newFile();
  const read: string[] = [];
  let day = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const child = spawn(process.execPath, [program, 'calls', '--ledger', file]);
    child.stdin.on('error', () => undefined).write(Array.from({ length: 200 }, () => record(day++)).join(''));
    let said = '';
    let complained = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => (complained += text));
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      // From the first reply on, within the time of the writes that follow.
      if (said === '') setTimeout(() => child.kill('SIGKILL'), (kill * 37) % 61);
      said += text;
    });
    await once(child, 'close');
    expect([child.signalCode, complained]).toEqual(['SIGKILL', '']);
    for (const reply of replies(said.slice(0, said.lastIndexOf('\n') + 1))) {
      expect(reply.ok).toBe(true);
      read.push(...jarsOf(reply));
    }
  }
  const kept = jarsIn(file);
  expect(read.filter((jar) => !kept.has(jar))).toEqual([]);
  expect(read.length, 'too little was recorded to show anything').toBeGreaterThan(KILLS);
}, 120_000);
