// `check`: a worried keeper asks whether the ledger is whole. It finds what is wrong, says it in sentences, changes nothing.
import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeAll, describe, expect, it } from 'vitest';
import { findingSentence } from '../../core/says/check-says';
import { checkLedgerFile } from '../../main/check-ledger';
import { lookInto } from '../../main/ledger/open';
import { backupFolder, photographFolder } from '../../main/ledger/worker-protocol';
import { built } from '../ledger/built';
import { footprint, must, newFile, newFolder, openSession, smallFamily } from '../ledger/ledger-files';
import { everyKind } from '../archive/every-kind';

let program = '';
beforeAll(async () => {
  program = await built('main/headless.ts');
}, 60_000);

/** A ledger with all there is, closed, with a backup beside it. */
function whole(): string {
  const file = newFile();
  const session = everyKind(file);
  must(session, 'ledger.backup', {});
  session.close();
  return file;
}

/** Changes rows behind the back of the triggers, which then stand there as before. */
function behind(file: string, sql: string): void {
  const db = new Database(file);
  const triggers = db.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").all() as { name: string; sql: string }[]; // prettier-ignore
  db.pragma('foreign_keys = OFF');
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`);
  db.exec(sql);
  for (const one of triggers) db.exec(one.sql);
  db.close();
}

/** What a check of a file says, and that it changed nothing. */
function said(file: string): string[] {
  const before = footprint(dirname(file));
  const { findings } = checkLedgerFile(file);
  expect(footprint(dirname(file))).toEqual(before);
  return findings.map(findingSentence);
}

function run(...args: string[]): { status: number | null; lines: string[] } {
  const { status, stdout } = spawnSync(process.execPath, [program, 'check', ...args], { encoding: 'utf8' });
  return { status, lines: stdout.trimEnd().split('\n') };
}

describe('a check', () => {
  it('finds a whole ledger in order, its photographs and backups too', () => {
    const file = whole();
    expect(said(file)).toEqual([]);
    expect(checkLedgerFile(file)).toMatchObject({ photographs: 1, backups: 1 });
    const { status, lines } = run('--ledger', file);
    expect([status, lines]).toEqual([0, [expect.stringMatching(/^The ledger is in order: \d+ jars, \d+ acts, 1 photograph, 1 backup\. Nothing was changed\.$/)]]); // prettier-ignore
  });

  it('also while it is open elsewhere', () => {
    const file = newFile();
    const session = openSession(file, 'create');
    smallFamily(session);
    expect(checkLedgerFile(file).findings).toEqual([]);
    session.close();
  });

  it.each<[string, string, RegExp]>([
    ['a form that was not written down', "UPDATE record SET form_no = 9 WHERE kind = 'jar'", /another number of forms/],
    ['a row that no act made', "INSERT INTO appliance (key, name) VALUES (9999, 'x')", /point at something|no act made/],
    ['a row that went without a word', 'DELETE FROM acidity', /record of acidity is not there/],
    ['a seed of a later day', "UPDATE batch SET made_on = '2026-03-20' WHERE made_on = '2026-03-01'", /was made on 20 Mar 2026, after/],
    ['a portion of another jar', 'UPDATE portion SET jar = (SELECT max(key) FROM jar)', /./],
    ['an act that takes back a later one', 'UPDATE act SET undoes = key + 1 WHERE key = 1', /took back one that came later/],
  ])('finds %s', (_what, sql, says) => {
    const file = whole();
    behind(file, sql);
    expect(said(file).join('\n')).toMatch(says);
  }); // prettier-ignore

  it('finds pages that are damaged, photographs that are gone and backups that can’t be opened', () => {
    const file = whole();
    const sha = lookInto(file, (db) => String(db.prepare('SELECT sha FROM photograph').pluck().get()));
    rmSync(join(photographFolder(file), `${sha}.jpg`));
    const backup = join(backupFolder(file), readdirSync(backupFolder(file))[0] ?? '');
    chmodSync(backup, 0o644);
    writeFileSync(backup, readFileSync(backup).subarray(0, 5000));
    expect(said(file)).toEqual([
      expect.stringMatching(/^A photograph is not in the folder/),
      expect.stringMatching(/^The backup .*can’t be opened/),
    ]);
    const { status, lines } = run('--ledger', file);
    expect([status, lines.length, lines[2]]).toEqual([
      1,
      3,
      '2 things are not in order. Nothing was changed.',
    ]);
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 8192, 12_288);
    writeFileSync(file, bytes);
    expect(said(file)[0]).toMatch(/^The file is damaged: /);
  });

  it('says what it can’t look at', () => {
    const text = join(newFolder(), 'text.sqlite');
    writeFileSync(text, 'text');
    for (const args of [
      ['--ledger', newFile()],
      ['--ledger', text],
      [],
      ['more', '--ledger', text],
      ['--nwo', 'x'],
    ]) {
      const { status, lines } = run(...args);
      expect([args, status]).toEqual([args, 2]);
      expect(lines.join(' ')).toMatch(/^[A-Z/].*[.…]$/);
    }
  });
});
