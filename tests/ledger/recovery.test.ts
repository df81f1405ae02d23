// Backups and the ways out of a damaged ledger.
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, vi } from 'vitest';
import { watchBackups } from '../../main/backup-watch';
import { backupsToRemove } from '../../main/ledger/retention';
import { NamedLedger } from '../../main/named-ledger';
import type { Refused } from '../../main/refusal';
import { Session } from '../../main/session';
import { everyKind } from '../archive/every-kind';
import {
  ask,
  batchOf,
  must,
  newFile,
  newSession,
  openSession,
  plainJar,
  plainSource,
  refusalOf,
  smallFamily,
  stateOf,
  NOW,
} from './ledger-files';

const PAGE = 4096;

/** Many jars, so that damage in the middle of the file leaves something on both sides. */
function wideLedger(): Session {
  const session = newSession();
  smallFamily(session);
  for (let day = 1; day <= 28; day++) {
    const jars = ['a', 'b', 'c', 'd'].map((letter) =>
      plainJar(letter, { note: `day ${day} ${letter} ${'.'.repeat(200)}` }),
    );
    must(session, 'batch.record', batchOf(`2025-02-${String(day).padStart(2, '0')}`, jars));
  }
  return session;
}

/** All rows of all tables. */
function everyRow({ ledger: { db } }: Session): Record<string, unknown[]> {
  const tables = db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[];
  return Object.fromEntries(
    tables.map((table) => [table, db.prepare(`SELECT * FROM ${table} ORDER BY 1, 2`).all()]),
  );
}

/** Fills whole pages with rubbish. */
function damage(file: string, pages: readonly number[]): void {
  const bytes = readFileSync(file);
  for (const page of pages) bytes.fill(0x5a, (page - 1) * PAGE, page * PAGE);
  writeFileSync(file, bytes);
}

describe('a backup', () => {
  it('is a whole ledger with everything that was acknowledged', () => {
    const session = wideLedger();
    const { file, bytes } = must(session, 'ledger.backup', {});
    expect(file).toMatch(/ledger-backups\/ledger-20260314T173000Z\.sqlite$/);
    expect(bytes).toBeGreaterThan(PAGE);
    const copy = openSession(file);
    expect(stateOf(copy)).toBe(stateOf(session));
    copy.close();
    // A second in the same second gets a name of its own.
    expect(must(session, 'ledger.backup', {}).file).not.toBe(file);
    session.close();
  });

  it('is due where there is something new and the last is a day old', () => {
    const session = newSession();
    expect(session.backupIfDue()).toBe(false);
    smallFamily(session);
    expect(session.backupIfDue()).toBe(true);
    expect(session.backupIfDue()).toBe(false);
    const { file } = session.ledger;
    session.close();
    const nextDay = openSession(file, 'open', '2026-03-15T18:31:00+01:00');
    expect(nextDay.backupIfDue()).toBe(false);
    must(nextDay, 'batch.record', batchOf('2026-03-15', [plainJar('a')]));
    expect(nextDay.backupIfDue()).toBe(true);
    nextDay.close();
  });
});

describe('backups by themselves', () => {
  it('are made daily for as long as a ledger is open, and where the way is barred that is said and tried again', () => {
    vi.useFakeTimers({ now: Date.parse('2026-03-14T08:00:00Z') });
    const session = new Session({
      file: newFile(),
      mode: 'create',
      now: null,
      timeZone: 'Europe/Berlin',
      version: '0',
    });
    const end = watchBackups(
      () => session.backUpByItself(),
      (ms, work) => {
        const timer = setTimeout(work, ms);
        return () => clearTimeout(timer);
      },
    );
    const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    try {
      const folder = join(dirname(session.ledger.file), 'ledger-backups');
      const made = (): number => (existsSync(folder) ? readdirSync(folder).length : 0);
      const counted: number[] = [];
      for (let hour = 0; hour < 5 * 24; hour += 12) {
        // On the fourth day nothing new.
        if (hour < 72 || hour >= 96) must(session, 'source.save', plainSource(`Tin ${hour}`));
        vi.advanceTimersByTime(12 * 3_600_000);
        counted.push(made());
      }
      expect(counted).toEqual([1, 1, 2, 2, 3, 3, 4, 4, 5, 5]);
      expect(said).not.toHaveBeenCalled();
      rmSync(folder, { recursive: true });
      writeFileSync(folder, 'in the way');
      vi.advanceTimersByTime(24 * 3_600_000);
      must(session, 'source.save', plainSource('one more'));
      vi.advanceTimersByTime(3_600_000);
      expect(String(said.mock.calls.at(-1)?.[0])).toMatch(
        /Everything recorded is kept, but no backup of .* could be made/,
      );
      rmSync(folder);
      vi.advanceTimersByTime(3_600_000);
      expect(made()).toBe(1);
      end();
      must(session, 'source.save', plainSource('the last'));
      vi.advanceTimersByTime(48 * 3_600_000);
      expect(made()).toBe(1);
      // On closing whatever is new, and not twice.
      expect([session.backupIfDue(0), session.backupIfDue(0)]).toEqual([true, false]);
    } finally {
      end();
      said.mockRestore();
      vi.useRealTimers();
      session.close();
    }
  });

  it('are made from the command line too, once a day, by what records', () => {
    const file = newFile();
    const folder = join(dirname(file), 'ledger-backups');
    const ask = (name: 'source.save' | 'family.get', input: object): void => {
      const ledger = new NamedLedger(file, null);
      expect(ledger.answer(name, input).ok).toBe(true);
      ledger.close();
    };
    ask('source.save', plainSource('Blue Tin'));
    expect(readdirSync(folder).length).toBe(1);
    ask('source.save', plainSource('Meadow Pot'));
    expect(readdirSync(folder).length).toBe(1);
    rmSync(folder, { recursive: true });
    ask('family.get', {});
    expect(existsSync(folder)).toBe(false);
  });
});

describe('a clock that was wrong', () => {
  const days = (from: string, count: number): string[] =>
    Array.from({ length: count }, (_, day) =>
      new Date(Date.parse(from) + day * 86_400_000).toISOString().replace('.000Z', '+00:00'),
    );
  /** A day of the kitchen: something is recorded, and the backup of the day is made if it is due. */
  function dayOf(file: string, now: string, number: number): boolean {
    const session = openSession(file, 'open', now);
    must(session, 'source.save', plainSource(`Tin ${number}`));
    const made = session.backupIfDue();
    session.close();
    return made;
  }

  it.each([
    ['ahead by ten years', '2036-03-01T08:00:00Z'],
    ['ahead by a month', '2026-04-10T08:00:00Z'],
    ['behind, as with an empty battery', '1970-01-01T08:00:00Z'],
  ])('%s, neither ends the daily backups nor makes an old state the newest', (_how, wrongFrom) => {
    const first = newSession();
    const { file } = first.ledger;
    first.close();
    const all = [
      ...days('2026-03-01T08:00:00Z', 2),
      ...days(wrongFrom, 2),
      ...days('2026-03-07T08:00:00Z', 6),
    ];
    const made = all.map((now, number) => dayOf(file, now, number));
    expect(made).toEqual(all.map(() => true));
    // Twice on one day is once.
    expect(dayOf(file, all.at(-1) ?? '', 100)).toBe(false);
    const whole = openSession(file);
    whole.ledger.db.exec('DROP TRIGGER journal_kept');
    whole.close();
    const opened = openSession(file);
    const { trouble } = must(opened, 'app.state', {});
    expect(trouble?.backups.length).toBe(all.length);
    must(opened, 'ledger.recover', { how: 'newest backup' });
    // All but what was recorded after the day's backup.
    expect(must(opened, 'source.list', {}).sources.length).toBe(all.length);
    opened.close();
  });

  it('another ledger’s backups that lie there too are neither counted, offered nor removed', () => {
    const other = wideLedger();
    const theirs = must(other, 'ledger.backup', {}).file;
    other.close();
    const session = newSession();
    smallFamily(session);
    const { file } = session.ledger;
    const folder = join(dirname(file), 'ledger-backups');
    mkdirSync(folder);
    copyFileSync(theirs, join(folder, 'ledger-20260314T173000Z.sqlite'));
    copyFileSync(theirs, join(folder, 'ledger-20200101T000000Z.sqlite'));
    expect(session.backupIfDue()).toBe(true);
    session.ledger.db.exec('DROP TRIGGER journal_kept');
    session.close();
    const opened = openSession(file);
    expect(must(opened, 'app.state', {}).trouble?.backups.map(({ jars }) => jars)).toEqual([4]);
    expect(readdirSync(folder).length).toBe(3);
    opened.close();
  });

  it.each(['1900-01-01T00:00:00Z', '1969-12-31T23:00:00+02:00', '9999-12-31T23:59:59-12:00'])(
    'at %s ids, days and the names of backups are what they should be',
    (now) => {
      const session = openSession(newFile(), 'create', now);
      must(session, 'source.save', plainSource('Tin'));
      expect(basename(must(session, 'ledger.backup', {}).file)).toMatch(/^ledger-\d{8}T\d{6}Z\.sqlite$/);
      expect(session.backupIfDue()).toBe(false);
      session.close();
    },
  );
});

describe('which backups stay', () => {
  const HOUR = 3_600_000;
  const now = Date.UTC(2026, 2, 14, 12);
  const made = (hoursAgo: number) => ({
    name: `b${hoursAgo}`,
    madeAt: now - hoursAgo * HOUR,
    acts: 100_000 - hoursAgo,
  });

  it('three newest, one for each of fourteen days, one for each of twenty-four months', () => {
    const hourly = Array.from({ length: 24 * 800 }, (_, hours) => made(hours));
    const removed = new Set(backupsToRemove(hourly, now));
    const kept = hourly.filter(({ name }) => !removed.has(name));
    const days = new Set(kept.map(({ madeAt }) => new Date(madeAt).toISOString().slice(0, 10)));
    const months = new Set(kept.map(({ madeAt }) => new Date(madeAt).toISOString().slice(0, 7)));
    expect(kept.slice(0, 3).map(({ name }) => name)).toEqual(['b0', 'b1', 'b2']);
    expect(months.size).toBe(24);
    // 14 days (1 to 14 March) and the last day of each of the 23 months before; of 14 March the newest three.
    expect(days.size).toBe(14 + 23);
    expect(kept.length).toBe(3 + 13 + 23);
  });

  it('never the only ones, never those of the last hour, never one from the future', () => {
    expect(backupsToRemove([made(9000)], now)).toEqual([]);
    const burst = Array.from({ length: 20 }, (_, i) => ({
      name: `n${i}`,
      madeAt: now - i * 60_000,
      acts: 50 - i,
    }));
    expect(backupsToRemove(burst, now)).toEqual([]);
    // A hundred of them take no place of one that was made by a clock that was right.
    const ahead = Array.from({ length: 100 }, (_, i) => ({ name: `f${i}`, madeAt: now + (i + 1) * HOUR * 24, acts: i })); // prettier-ignore
    const daily = Array.from({ length: 10 }, (_, i) => made(24 * (i + 1)));
    expect(backupsToRemove([...ahead, ...daily], now)).toEqual([]);
    const future = Array.from({ length: 20 }, (_, i) => ({
      name: `f${i}`,
      madeAt: now + i * 60_000,
      acts: i,
    }));
    expect(backupsToRemove(future, now)).toEqual([]);
    expect(backupsToRemove([], now)).toEqual([]);
  });
});

describe('a ledger in order', () => {
  it('goes back to any of its backups, which say before what would be gone, and back again', () => {
    const session = newSession();
    smallFamily(session);
    const { file } = session.ledger;
    const early = must(session, 'ledger.backup', {}).file;
    const first = stateOf(session);
    must(session, 'batch.record', batchOf('2026-03-13', [plainJar('y')]));
    must(session, 'batch.record', batchOf('2026-03-14', [plainJar('z')]));
    const late = must(session, 'ledger.backup', {}).file;
    const second = stateOf(session);
    const listed = () =>
      must(session, 'ledger.backups', {}).backups.map((one) => [one.file, one.jars, one.gone, one.again]);
    expect(listed()).toEqual([[late, 6, 0, 0], [early, 4, 2, 0]]); // prettier-ignore
    expect(must(session, 'ledger.backups', {}).backups[1]?.says).toEqual([
      'recorded 14 Mar z',
      'recorded 13 Mar y',
    ]);

    const state = must(session, 'ledger.restore', { backup: early });
    expect(state).toMatchObject({ trouble: null, ledger: { jars: 4, file } });
    expect(stateOf(session)).toBe(first);
    // Recorded since: the two have parted.
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('x')]));
    const third = stateOf(session);
    expect(listed().slice(-2)).toEqual([[late, 6, 1, 2], [early, 4, 1, 0]]); // prettier-ignore
    must(session, 'ledger.restore', { backup: late });
    expect(stateOf(session)).toBe(second);
    // And what was there before that is a backup, too.
    const before = must(session, 'ledger.backups', {}).backups.find(
      ({ jars, again }) => jars === 5 && again === 1,
    );
    must(session, 'ledger.restore', { backup: before?.file ?? '' });
    expect(stateOf(session)).toBe(third);
    must(session, 'act.undo', { act: null });
    expect(stateOf(session)).toBe(first);
    session.close();
    openSession(file).close();
  });

  it('goes back to nothing but a whole backup of its own', () => {
    const session = newSession();
    smallFamily(session);
    const { file } = session.ledger;
    const copy = must(session, 'ledger.backup', {}).file;
    const before = stateOf(session);
    const other = newSession();
    smallFamily(other);
    const theirs = must(other, 'ledger.backup', {}).file;
    for (const no of [file, theirs, `${copy}x`, dirname(copy)])
      expect(refusalOf(session, 'ledger.restore', { backup: no }).code).toBe('not a backup');
    damage(copy, [3, 4, 5]);
    expect(must(session, 'ledger.backups', {}).backups).toEqual([]);
    expect(refusalOf(session, 'ledger.restore', { backup: copy }).code).toBe('not a backup');
    expect(stateOf(session)).toBe(before);
  });
});

describe('a damaged ledger', () => {
  it('gives way to the newest good backup, and is kept beside it as it was', () => {
    const session = wideLedger();
    const { file } = session.ledger;
    const good = must(session, 'ledger.backup', {}).file;
    const saved = stateOf(session);
    must(session, 'batch.record', batchOf('2026-03-14', [plainJar('z')]));
    // A newer backup that is itself damaged is passed over.
    const bad = must(session, 'ledger.backup', {}).file;
    session.close();
    damage(bad, [3, 4, 5]);
    damage(file, [3, 4, 5]);
    const broken = readFileSync(file);

    const opened = openSession(file);
    const { trouble } = must(opened, 'app.state', {});
    expect(trouble?.kind).toBe('damaged');
    expect(trouble?.backups.map((one) => [one.file, one.jars])).toEqual([[good, 116]]);
    expect(readFileSync(file).equals(broken)).toBe(true);
    const state = must(opened, 'ledger.recover', { how: 'newest backup' });
    expect(state).toMatchObject({ trouble: null, ledger: { jars: 116 } });
    expect(stateOf(opened)).toBe(saved);
    const aside = readdirSync(dirname(file)).filter((name) => name.includes('-damaged-'));
    expect(aside.length).toBe(1);
    expect(readFileSync(join(dirname(file), aside[0] ?? '')).equals(broken)).toBe(true);
    expect(refusalOf(opened, 'ledger.recover', { how: 'newest backup' }).code).toBe('nothing to recover');
    opened.close();
  });

  it('gives up what can be read, in a ledger that keeps every rule', () => {
    const session = wideLedger();
    const { file } = session.ledger;
    const jarRoot = Number(
      session.ledger.db.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'journal'").pluck().get(),
    );
    session.close();
    damage(file, [jarRoot]);
    const broken = readFileSync(file);
    const opened = openSession(file);
    expect(refusalOf(opened, 'ledger.recover', { how: 'newest backup' }).code).toBe('no backup');
    const state = must(opened, 'ledger.recover', { how: 'save what can be read' });
    expect(state.trouble).toBeNull();
    // Only the journal was hit: every jar is still there, and new ones can be recorded.
    expect(state.ledger?.jars).toBe(116);
    must(opened, 'batch.record', batchOf('2026-03-14', [plainJar('z')]));
    expect(opened.ledger.db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(opened.ledger.db.pragma('foreign_key_check')).toEqual([]);
    opened.close();
    const aside = readdirSync(dirname(file)).find((name) => name.includes('-damaged-')) ?? '';
    expect(readFileSync(join(dirname(file), aside)).equals(broken)).toBe(true);
  });

  it('is told once it is open where opening can’t see it: a bit lost in an index; nothing recorded meanwhile is lost', () => {
    const whole = wideLedger();
    const { file, db } = whole.ledger;
    const root = Number(
      db.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'batch_day'").pluck().get(),
    );
    whole.close();
    const bytes = readFileSync(file);
    const at = bytes.indexOf('2025-02-14', (root - 1) * PAGE);
    expect(at).toBeLessThan(root * PAGE);
    bytes[at + 9] = (bytes[at + 9] as number) ^ 1;
    writeFileSync(file, bytes);
    const opened = openSession(file);
    must(opened, 'batch.record', batchOf('2026-03-14', [plainJar('z')]));
    const rows = everyRow(opened);
    expect(() => opened.checkPages()).toThrow('damaged');
    expect(must(opened, 'app.state', {}).trouble?.kind).toBe('damaged');
    must(opened, 'ledger.recover', { how: 'save what can be read' });
    expect(everyRow(opened)).toEqual(rows);
    while (opened.checkPages());
    expect(opened.ledger.pages?.done).toBe(true);
    opened.close();
  });

  it('gives up all its rows where the text of a rule or of an index is damaged', () => {
    const made = everyKind();
    const { file: original } = made.ledger;
    const whole = everyRow(made);
    made.close();
    for (const text of ['CREATE TRIGGER', 'CREATE INDEX', 'SELECT RAISE']) {
      const file = newFile();
      const bytes = readFileSync(original);
      // Wherever it stands: some of these are left over from pages that were split.
      for (let at = bytes.indexOf(text); at >= 0; at = bytes.indexOf(text, at)) {
        const last = at + text.length - 1;
        bytes[last] = (bytes[last] ?? 0) ^ 4;
      }
      writeFileSync(file, bytes);
      const opened = openSession(file);
      expect([text, must(opened, 'app.state', {}).trouble?.kind]).toEqual([text, 'damaged']);
      must(opened, 'ledger.recover', { how: 'save what can be read' });
      expect(everyRow(opened)).toEqual(whole);
      opened.close();
    }
  });

  it('gives up the rest where what readings belong to is lost', () => {
    const session = everyKind();
    const { file, db } = session.ledger;
    const root = db.prepare("SELECT rootpage FROM sqlite_schema WHERE name = 'reading_block'").pluck().get();
    session.close();
    damage(file, [Number(root)]);
    const opened = openSession(file);
    must(opened, 'ledger.recover', { how: 'save what can be read' });
    expect(opened.ledger.db.pragma('foreign_key_check')).toEqual([]);
    expect(everyRow(opened)['reading']).toEqual([]);
    expect(everyRow(opened)['jar']?.length).toBeGreaterThan(4);
    opened.close();
  });

  describe('that is so large that its pages are checked once it is open', () => {
    /** Damaged where opening does not look, and opened as a file of any size that is checked later. */
    const opened = (...kinds: readonly string[]): { session: Session; file: string; good: string } => {
      const whole = wideLedger();
      const { file, db } = whole.ledger;
      const good = must(whole, 'ledger.backup', {}).file;
      const root = db.prepare('SELECT rootpage FROM sqlite_schema WHERE name = ?').pluck();
      const pages = kinds.map((kind) => Number(root.get(kind)));
      whole.close();
      if (pages.length > 0) damage(file, pages);
      const session = new Session({ file, mode: 'open', now: NOW, timeZone: 'Europe/Berlin', version: '0.0.0', checkLaterFrom: 1 }); // prettier-ignore
      return { session, file, good };
    };
    /** Goes on to the end of the check. @returns how many tables were looked at, or what was found */
    const checked = (session: Session): number | string => {
      for (let tables = 1; ; tables++) {
        try {
          if (!session.checkPages()) return tables;
        } catch (error) {
          return (error as Refused).refusal.code;
        }
      }
    };

    it.each(['note_answer', 'mark', 'serving'])('reads answer before, then it is told (%s)', (kind) => {
      const { session, file, good } = opened(kind);
      expect(must(session, 'app.state', {}).trouble).toBeNull();
      expect(must(session, 'family.get', {}).jars.length).toBe(116);
      const before = readFileSync(file);
      expect(checked(session)).toBe('damaged');
      const { trouble, ledger } = must(session, 'app.state', {});
      expect([trouble?.kind, trouble?.backups.map((one) => one.file), ledger]).toEqual([
        'damaged',
        [good],
        null,
      ]);
      expect(refusalOf(session, 'family.get', {}).code).toBe('damaged');
      expect(readFileSync(file).equals(before)).toBe(true);
      must(session, 'ledger.recover', { how: 'newest backup' });
      expect(must(session, 'family.get', {}).jars.length).toBe(116);
      session.close();
    });

    it('nothing is recorded before it is known to be whole', () => {
      const { session, file } = opened('mark');
      const before = readFileSync(file);
      expect(refusalOf(session, 'batch.record', batchOf('2026-03-14', [plainJar('z')])).code).toBe('damaged');
      expect(must(session, 'app.state', {}).trouble?.kind).toBe('damaged');
      expect(readFileSync(file).equals(before)).toBe(true);
      session.close();
    });

    it('every table of a whole one is looked at, or all at once by the first thing recorded', () => {
      const { session } = opened();
      const { db } = session.ledger;
      const tables = db.prepare("SELECT count(*) FROM sqlite_schema WHERE type = 'table'").pluck().get();
      expect(checked(session)).toBe(tables);
      expect(session.checkPages()).toBe(false);
      session.close();
      const other = opened().session;
      must(other, 'batch.record', batchOf('2026-03-14', [plainJar('z')]));
      expect(other.ledger.pages?.done).toBe(true);
      other.close();
    });
  });

  it('of which nothing can be read is left as it was', () => {
    const session = wideLedger();
    const { file } = session.ledger;
    session.close();
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 100);
    writeFileSync(file, bytes);
    const opened = openSession(file);
    expect(refusalOf(opened, 'ledger.recover', { how: 'save what can be read' }).code).toBe(
      'nothing readable',
    );
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect(readdirSync(dirname(file))).toEqual([basename(file)]);
  });

  it('is not what a newer or foreign file is: those are never replaced', () => {
    const session = wideLedger();
    const { file } = session.ledger;
    must(session, 'ledger.backup', {});
    session.close();
    const db = new Database(file);
    db.pragma('user_version = 99');
    db.close();
    const bytes = readFileSync(file);
    const opened = openSession(file);
    for (const how of ['newest backup', 'save what can be read'] as const) {
      expect(ask(opened, 'ledger.recover', { how })).toMatchObject({
        ok: false,
        error: { code: 'newer ledger' },
      });
    }
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect(existsSync(`${file}-wal`)).toBe(false);
  });
});
