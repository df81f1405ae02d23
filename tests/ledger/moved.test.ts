// A ledger that is moved, deleted or replaced while it is open: noticed before a write is acknowledged, said, and nothing
// acknowledged is lost.
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  unlinkSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { photographFolder } from '../../main/ledger/worker-protocol';
import type { Session } from '../../main/session';
import {
  ask,
  batchOf,
  demoSession,
  must,
  newFolder,
  NOW,
  openSession,
  plainJar,
  plainSource,
  refusalOf,
  smallFamily,
  stateOf,
} from './ledger-files';

/** What can happen to a file behind a program's back. `file` is what the ledger was opened by. */
const mishaps: Record<string, { code: string; happen: (file: string) => void; link?: boolean }> = {
  'deleted': { code: 'ledger gone', happen: (file) => unlinkSync(file) },
  'moved elsewhere': { code: 'ledger gone', happen: (file) => renameSync(file, join(newFolder(), 'other.sqlite')) },
  'deleted with its log': {
    code: 'ledger gone',
    happen: (file) => ['', '-wal', '-shm'].forEach((end) => rmSync(file + end, { force: true })),
  },
  'replaced by an older copy, as by a program that syncs': {
    code: 'ledger replaced',
    happen: (file) => {
      copyFileSync(join(dirname(file), 'older'), `${file}.incoming`);
      renameSync(`${file}.incoming`, file);
    },
  },
  'replaced by a folder': {
    code: 'ledger replaced',
    happen: (file) => {
      unlinkSync(file);
      mkdirSync(file);
    },
  },
  'in a folder that was renamed': {
    code: 'ledger gone',
    happen: (file) => renameSync(dirname(file), `${dirname(file)}-renamed`),
  },
  'opened by a link that leads elsewhere now': {
    code: 'ledger replaced',
    link: true,
    happen: (file) => {
      unlinkSync(file);
      symlinkSync(join(dirname(file), 'older'), file);
    },
  },
  'opened by a link that leads nowhere now': {
    code: 'ledger gone',
    link: true,
    happen: (file) => unlinkSync(join(dirname(file), 'real', 'ledger.sqlite')),
  },
}; // prettier-ignore

/** An open ledger with some acts, in a folder of its own in a folder of its own, with an older copy of it beside. */
function opened(link: boolean): { session: Session; file: string } {
  const folder = join(newFolder(), 'jars');
  const file = join(folder, 'ledger.sqlite');
  const real = link ? join(folder, 'real', 'ledger.sqlite') : file;
  const first = openSession(real, 'create');
  must(first, 'source.save', plainSource('Old Tin'));
  first.close();
  copyFileSync(real, join(folder, 'older'));
  if (link) symlinkSync(join('real', 'ledger.sqlite'), file);
  const session = openSession(file);
  smallFamily(session);
  return { session, file };
}

/** The copy that a sentence names. */
const copyNamed = (sentence: string): string => / is saved in (.+\.sqlite)\. /.exec(sentence)?.[1] ?? '';

const copiesIn = (folder: string): string[] =>
  existsSync(folder) ? readdirSync(folder).filter((name) => name.includes('-kept-')) : [];

describe.each(Object.entries(mishaps))('a ledger that is %s', (_what, { code, happen, link = false }) => {
  it('takes no more writes; what was acknowledged is in the copy that is named', () => {
    const { session, file } = opened(link);
    const all = stateOf(session);
    happen(file);
    const refused = refusalOf(session, 'batch.record', batchOf('2026-03-12', [plainJar('z')]));
    expect(refused.code).toBe(code);
    expect(refused.sentence).toContain('This was not recorded.');
    const copy = copyNamed(refused.sentence);
    const saved = openSession(copy);
    expect(stateOf(saved)).toBe(all);
    saved.close();
    // It goes on saying so, and makes no second copy.
    const state = must(session, 'app.state', {});
    expect(state.ledger).toBeNull();
    expect(state.trouble).toMatchObject({ kind: 'unreadable', sentence: expect.stringContaining(copy) });
    for (const name of ['family.get', 'draft.list', 'ledger.backup'] as const)
      expect(refusalOf(session, name, {}).code).toBe(code);
    session.close();
    expect(copiesIn(dirname(copy))).toEqual([basename(copy)]);
  });

  it('is noticed by a look, by idling and by closing as well', () => {
    for (const notice of ['look', 'state', 'idle', 'close'] as const) {
      const { session, file } = opened(link);
      happen(file);
      if (notice === 'look') expect(ask(session, 'family.get', {})).toMatchObject({ error: { code } });
      if (notice === 'state') expect(must(session, 'app.state', {}).trouble?.sentence).toContain('saved in');
      if (notice === 'idle') expect(session.changedElsewhere()).toBe(true);
      session.close();
      const around = [dirname(file), dirname(dirname(file)), join(dirname(file), 'real')];
      expect([notice, around.flatMap(copiesIn).length]).toEqual([notice, 1]);
    }
  });

  it('is noticed where it happens while a write is made, and that one is in the copy too', () => {
    const { session, file } = opened(link);
    const { acts } = session.ledger;
    const settle = acts.settle;
    // Within the transaction, behind the first look.
    acts.settle = (act) => {
      happen(file);
      return settle(act);
    };
    const refused = refusalOf(session, 'batch.record', batchOf('2026-03-12', [plainJar('z')]));
    expect([refused.code, refused.sentence]).toEqual([code, expect.stringContaining('this too')]);
    const saved = openSession(copyNamed(refused.sentence));
    expect(must(saved, 'family.get', {}).jars.map(({ label }) => label)).toContain('12 Mar z');
    saved.close();
    session.close();
  });
});

describe.each([
  ['nothing', () => 0],
  ['its first page', () => 4096],
  ['half', (size: number) => Math.floor(size / 2)],
])('a ledger that is cut to %s', (_what, left) => {
  it('takes no more writes; all that was acknowledged is in a copy, or its log lies beside it as it was', () => {
    const { session, file } = opened(false);
    const all = stateOf(session);
    const log = readFileSync(`${file}-wal`);
    expect(log.length).toBeGreaterThan(0);
    truncateSync(file, left(statSync(file).size));
    const { write } = process.stderr;
    process.stderr.write = () => true;
    const refused = refusalOf(session, 'batch.record', batchOf('2026-03-12', [plainJar('z')]));
    session.close();
    process.stderr.write = write;
    expect(refused.code).toBe('ledger replaced');
    const copy = copyNamed(refused.sentence);
    if (copy !== '') {
      const saved = openSession(copy);
      expect(stateOf(saved)).toBe(all);
      saved.close();
      return;
    }
    expect(refused.sentence).toContain('could not be saved elsewhere');
    const logs = readdirSync(dirname(file)).filter(
      (name) => name.includes('-damaged') && name.endsWith('-wal'),
    );
    expect(logs.map((name) => readFileSync(join(dirname(file), name)).equals(log))).toEqual([true]);
  });
});

it('a log left by what was open before is not taken for one of the file that took its place', () => {
  const { session, file } = opened(false);
  mishaps['replaced by an older copy, as by a program that syncs']?.happen(file);
  expect(session.changedElsewhere()).toBe(true);
  const again = openSession(file);
  expect(must(again, 'app.state', {}).ledger).toMatchObject({ jars: 0, sources: 1 });
  must(again, 'batch.record', batchOf('2026-03-12', [plainJar('z')]));
  again.close();
  session.close();
  const last = openSession(file);
  expect(must(last, 'family.get', {}).jars.length).toBe(1);
  expect(last.ledger.db.pragma('integrity_check', { simple: true })).toBe('ok');
  last.close();
});

it('where the place can take no copy, what is open is held and the next call tries again', () => {
  const { session, file } = opened(false);
  const all = stateOf(session);
  unlinkSync(file);
  const { db } = session.ledger;
  const prepare = db.prepare.bind(db);
  const stderr = process.stderr.write;
  // As on a full disk, wherever it is tried.
  db.prepare = ((sql: string) => {
    if (sql.startsWith('VACUUM')) throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
    return prepare(sql);
  }) as typeof db.prepare;
  process.stderr.write = () => true;
  const refused = refusalOf(session, 'family.get', {});
  expect([refused.code, refused.sentence]).toEqual([
    'ledger gone',
    expect.stringContaining('could not be saved elsewhere'),
  ]);
  process.stderr.write = stderr;
  db.prepare = prepare as typeof db.prepare;
  const saved = openSession(copyNamed(refusalOf(session, 'family.get', {}).sentence));
  expect(stateOf(saved)).toBe(all);
  saved.close();
  session.close();
});

it('the invented ledger is only said to be gone', () => {
  const session = demoSession();
  const { file } = session.ledger;
  unlinkSync(file);
  const refused = refusalOf(session, 'family.get', {});
  expect(refused.sentence).toContain('nothing of yours is lost');
  session.close();
  expect(readdirSync(dirname(file)).filter((name) => name.includes('kept'))).toEqual([]);
});

describe('a ledger opened by a link', () => {
  it.each([
    ['relative', (real: string, link: string) => symlinkSync(join('..', 'real', basename(real)), link)],
    ['absolute', (real: string, link: string) => symlinkSync(real, link)],
    [
      'to a link',
      (real: string, link: string) => {
        symlinkSync(real, `${link}.2`);
        symlinkSync(`${basename(link)}.2`, link);
      },
    ],
  ])('%s: all that belongs to it lies beside the file, not beside the link', (_kind, make) => {
    const folder = newFolder();
    mkdirSync(join(folder, 'real'));
    mkdirSync(join(folder, 'links'));
    const real = join(folder, 'real', 'heron.sqlite');
    const link = join(folder, 'links', 'mine.sqlite');
    make(real, link);
    // The link leads nowhere yet: what is made is the file it names.
    const session = openSession(link, 'create');
    smallFamily(session);
    expect(must(session, 'app.state', {}).ledger).toMatchObject({ file: link, name: 'mine' });
    expect(dirname(must(session, 'ledger.backup', {}).file)).toBe(join(folder, 'real', 'heron-backups'));
    expect(photographFolder(session.ledger.file)).toBe(join(folder, 'real', 'heron-photographs'));
    expect(existsSync(`${real}-wal`)).toBe(true);
    session.close();
    expect(readdirSync(join(folder, 'real')).toSorted()).toEqual(['heron-backups', 'heron.sqlite']);
    expect(readdirSync(join(folder, 'links')).every((name) => name.startsWith('mine.sqlite'))).toBe(true);
    // By either name it is one ledger.
    const both = [openSession(real), openSession(link)] as const;
    must(both[0], 'batch.record', batchOf('2026-03-12', [plainJar('z')]));
    expect(must(both[1], 'family.get', {}).jars.length).toBe(5);
    for (const one of both) one.close();
  });

  it('that leads to a folder, to nothing or in a circle is refused and left', () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'jars'));
    for (const [name, to, says] of [
      ['a', 'jars', /is a folder/],
      ['b', 'b', /There is no ledger at/],
      ['c', 'nothing', /There is no ledger at/],
    ] as const) {
      const link = join(folder, name);
      symlinkSync(to, link);
      const session = openSession(link);
      expect(must(session, 'app.state', {}).trouble?.sentence).toMatch(says);
      session.close();
    }
    expect(readdirSync(folder).toSorted()).toEqual(['a', 'b', 'c', 'jars']);
  });

  it('that is damaged is recovered where the file lies; the link stays one', () => {
    const folder = newFolder();
    const real = join(folder, 'real.sqlite');
    const first = openSession(real, 'create', NOW);
    smallFamily(first);
    must(first, 'ledger.backup', {});
    const { db } = first.ledger;
    db.exec('DROP TRIGGER journal_kept');
    first.close();
    const link = join(folder, 'link.sqlite');
    symlinkSync('real.sqlite', link);
    const session = openSession(link);
    expect(must(session, 'app.state', {}).trouble?.backups.length).toBe(1);
    expect(must(session, 'ledger.recover', { how: 'newest backup' }).ledger?.jars).toBe(4);
    session.close();
    const again = openSession(real);
    expect(must(again, 'app.state', {}).ledger?.jars).toBe(4);
    again.close();
  });
});
