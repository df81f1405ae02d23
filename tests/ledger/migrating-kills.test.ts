// A program killed while it copies and migrates an older ledger leaves that ledger whole, of one version or the other.
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { copyFileSync, readdirSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeAll, expect, it } from 'vitest';
import { stillClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { Acts } from '../../main/ledger/facts/open-act';
import { Rows } from '../../main/ledger/facts/fact-rows';
import { latestOf, migrations } from '../../main/ledger/migrations/all-migrations';
import { closeLedger, openLedger } from '../../main/ledger/open';
import { backupFolder } from '../../main/ledger/worker-protocol';
import { built } from './built';
import { must, newFile, newFolder, NOW, openSession } from './ledger-files';
import { NEXT } from './next-version';

const now = latestOf(migrations);
const SOURCES = 4_000;
/** Milliseconds after it has begun, through the copy and the migration; last, once it is open. */
const MOMENTS = [0, 8, 16, 24, 32, 40, 55, 80, 'open'] as const;

let program = '';
const old = newFile();
beforeAll(async () => {
  program = await built('tests/ledger/open-until-killed.ts');
  const clock = stillClock(NOW);
  const newId = idGenerator({ milliseconds: clock.milliseconds, random: randomBytes });
  const db = openLedger(old, { clock, newId, demo: false, mode: 'create' });
  new Acts(new Rows(db), clock, newId).run('source.save', 'many', null, (act) => {
    for (let n = 0; n < SOURCES; n++)
      act.insert('source', { name: `product ${n}`, note: 'x'.repeat(300), notePrivate: true });
  });
  closeLedger(db);
}, 60_000);

/** Opens the file in a program of its own and kills it at that moment. */
function openAndKill(file: string, moment: number | 'open'): Promise<{ said: string; complained: string }> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [program, file], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let complained = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      if (said === '' && moment !== 'open') setTimeout(() => child.kill('SIGKILL'), moment);
      said += text;
      if (moment === 'open' && said.includes('open')) child.kill('SIGKILL');
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (complained += text));
    child.on('error', failed);
    child.on('close', () => done({ said, complained }));
  });
}

it('whenever it is killed', async () => {
  const versions = new Set<number>();
  for (const moment of MOMENTS) {
    const file = join(newFolder(), 'ledger.sqlite');
    copyFileSync(old, file);
    const { complained } = await openAndKill(file, moment);
    expect(complained).toBe('');
    const left = new Database(file);
    const version = Number(left.pragma('user_version', { simple: true }));
    versions.add(version);
    expect([now, NEXT.version]).toContain(version);
    expect(left.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(left.prepare('SELECT count(*) FROM source').pluck().get()).toBe(SOURCES);
    left.close();
    // A finished copy is whole; an unfinished one is never taken for a backup.
    for (const name of readdirSync(join(file, '..')).includes('ledger-backups')
      ? readdirSync(backupFolder(file))
      : []) {
      if (!name.endsWith('.sqlite')) continue;
      const copy = new Database(join(backupFolder(file), name), { readonly: true });
      expect(copy.prepare('SELECT count(*) FROM source').pluck().get()).toBe(SOURCES);
      copy.close();
    }
    const clock = stillClock(NOW);
    const newId = idGenerator({ milliseconds: clock.milliseconds, random: randomBytes });
    const opened = openLedger(file, {
      clock,
      newId,
      demo: false,
      mode: 'open',
      migrations: [...migrations, NEXT],
    });
    expect(opened.pragma('user_version', { simple: true })).toBe(NEXT.version);
    expect(opened.prepare('SELECT count(*) FROM source WHERE weather IS NULL').pluck().get()).toBe(SOURCES);
    closeLedger(opened);
  }
  expect([...versions].toSorted(), 'no kill fell before the migration was done').toEqual([now, NEXT.version]);
}, 120_000);

it('what a killed copy left behind goes with the next copy, once it can’t be under way any more', () => {
  const file = newFile();
  const session = openSession(file, 'create');
  must(session, 'jar.lost', { madeOn: null, label: 'the first', note: null });
  must(session, 'ledger.backup', {});
  const folder = backupFolder(file);
  const abandoned = join(folder, 'ledger-20260101T000000Z.sqlite.part');
  const underWay = join(folder, 'ledger-20260102T000000Z.sqlite.part');
  for (const part of [abandoned, underWay]) copyFileSync(file, part);
  const before = Date.now() / 1000 - 7200;
  utimesSync(abandoned, before, before);
  must(session, 'ledger.backup', {});
  const parts = readdirSync(folder).filter((name) => name.endsWith('.part'));
  expect(parts).toEqual(['ledger-20260102T000000Z.sqlite.part']);
  session.close();
});
