// A program killed at any moment loses nothing it acknowledged, and leaves a ledger that opens whole.
import { spawn } from 'node:child_process';
import { beforeAll, expect, it } from 'vitest';
import { built } from './built';
import { must, newFile, openSession } from './ledger-files';
import { runs } from '../runs';

const KILLS = runs(10);
const LIMIT_MS = 60_000 + KILLS * 4000;

let program = '';
beforeAll(async () => {
  program = await built('tests/ledger/record-until-killed.ts');
}, 60_000);

interface Run {
  /** Act and jar of each acknowledgement that came out whole. */
  readonly acknowledged: readonly (readonly [act: string, jar: string])[];
  readonly complained: string;
  readonly signal: string | null;
}

/**
 * Lets it record, then kills it so many milliseconds after it has acknowledged `acts` acts (0: has opened the file; null:
 * was started). However slow the machine is, that much is recorded.
 */
function recordAndKill(file: string, from: number, afterMs: number, acts: number | null): Promise<Run> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [program, file, String(from)], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    const killSoon = (): unknown => setTimeout(() => child.kill('SIGKILL'), afterMs);
    if (acts === null) killSoon();
    let lines = 0;
    let complained = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      const before = lines;
      lines += text.split('\n').length - 1;
      if (acts !== null && before <= acts && lines > acts) killSoon();
      said += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (complained += text));
    child.on('error', failed);
    child.on('close', (_code, signal) => {
      const whole = said
        .slice(0, said.lastIndexOf('\n') + 1)
        .split('\n')
        .slice(1, -1);
      const acknowledged = whole
        .map((line) => line.split(' '))
        .map(([act = '', jar = '']) => [act, jar] as const);
      done({ acknowledged, complained, signal });
    });
  });
}

it(
  `${KILLS} kills while recording lose no acknowledged act`,
  async () => {
    const file = newFile();
    openSession(file, 'create', null).close();
    const all: (readonly [act: string, jar: string])[] = [];
    for (let kill = 0; kill < KILLS; kill++) {
      // Spread over the first writes and a log that has grown; every fifth while it still opens the file.
      const first = kill % 5 === 0 ? null : (kill * 7) % 9;
      const run = await recordAndKill(
        file,
        all.length + kill,
        ((kill * 37) % 31) + (first === null ? 50 : 0),
        first,
      );
      expect(run.complained).toBe('');
      expect(run.signal).toBe('SIGKILL');
      all.push(...run.acknowledged);
      // The next program opens what this one left; here it is looked at by one that is not killed every tenth time.
      if (kill % 10 !== 9) continue;
      const session = openSession(file, 'open', null);
      const { db } = session.ledger;
      expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
      expect(db.pragma('foreign_key_check')).toEqual([]);
      const acts = new Set(db.prepare('SELECT uid FROM act').pluck().all());
      const jars = new Set(must(session, 'family.get', {}).jars.map(({ id }) => id));
      expect(all.filter(([act, jar]) => !acts.has(act) || !jars.has(jar))).toEqual([]);
      // An act is whole or not there: each has its batch and its jar.
      expect(db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(jars.size);
      expect(db.prepare("SELECT count(*) FROM record WHERE kind = 'jar'").pluck().get()).toBe(jars.size);
      expect(db.prepare('SELECT act FROM open_act').pluck().get()).toBeNull();
      session.close();
    }
    expect(all.length, 'too little was recorded to show anything').toBeGreaterThan(KILLS);
  },
  LIMIT_MS,
);
