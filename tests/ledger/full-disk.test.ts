// A disk that fills up, a real small one: at whatever page it is full, what was acknowledged is there afterwards, what was
// refused is not, and the sentence says that the disk is full.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Refusal } from '../../core/contract';
import type { Session } from '../../main/session';
import {
  ask,
  batchOf,
  must,
  newFolder,
  newSession,
  openSession,
  plainJar,
  plainSource,
  refusalOf,
  smallFamily,
} from './ledger-files';

/** A JPEG of so many bytes that holds nothing but a picture (marker values by ITU-T T.81, table B.1, from memory). */
const picture = (size: number): Uint8Array<ArrayBuffer> => {
  const before = [0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 30, 0, 40, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0]; // prettier-ignore
  const bytes = new Uint8Array(size).fill(1);
  bytes.set(before);
  bytes.set([0xff, 0xd9], size - 2);
  return bytes;
};

const PAGE = 4096;
const MEGABYTES = 6;

/** A file system of a few megabytes, or why there can't be one here. */
function smallDisk(): { folder: string } | { why: string } {
  const folder = newFolder();
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${MEGABYTES}m`, 'tmpfs', folder], {
    encoding: 'utf8',
  });
  if (mounted.status === 0) return { folder };
  return { why: (mounted.stderr || String(mounted.error)).trim() };
}

const disk = smallDisk();
const folder = 'folder' in disk ? disk.folder : '';
if ('why' in disk) console.warn(`No test of a full disk: none can be mounted here (${disk.why}).`);
afterAll(() => {
  if (folder !== '') spawnSync('umount', ['--lazy', folder]);
});

const filler = join(folder, 'filler');
/** Fills the disk but for so many pages. */
function leave(pages: number): void {
  rmSync(filler, { force: true });
  const { bavail } = statfsSync(folder);
  if (bavail > pages) writeFileSync(filler, Buffer.alloc((bavail - pages) * PAGE));
}
const sweep = (): void => {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true, force: true });
};
const makeRoom = (): void => rmSync(filler, { force: true });

// Where the disk has no room the copy of a lost ledger goes to the keeper's own folder: here to one of the test's.
process.env['HOME'] = newFolder();

/** What closing may say on stderr; the refusal of an answer is never said there. */
let said = '';
beforeEach(() => {
  if (folder === '') return;
  sweep();
  said = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said += String(text);
    return true;
  });
  return () => vi.restoreAllMocks();
});

const file = join(folder, 'ledger.sqlite');

let whole: Uint8Array | null = null;
/** The ledger that every step begins with, whole and closed: recorded once, and its bytes again for each step. */
function ready(): void {
  whole ??= recordedElsewhere();
  writeFileSync(file, whole);
}

function recordedElsewhere(): Uint8Array {
  const session = newSession();
  smallFamily(session);
  const { file: there } = session.ledger;
  session.close();
  return readFileSync(there);
}

const isFull = ({ code, sentence }: { code: string; sentence?: string }): void => {
  expect(code).toBe('disk full');
  if (sentence !== undefined) expect(sentence).toContain('The disk is full');
};

/** Room left, in pages: from none to more than any of these needs. */
const ROOMS = [0, 1, 3, 5, 8, 9, 10, 12, 16, 24, 32, 256];
/** Fewer, for what takes long. */
const FEW_ROOMS = [0, 2, 8, 16, 48, 64, 96, 160, 800];
/** For one file that is written in one go. */
const FEWEST_ROOMS = [0, 1, 2, 800];

const acts = (): number => {
  const session = openSession(file);
  const count = Number(session.ledger.db.prepare('SELECT count(*) FROM act').pluck().get());
  expect(session.ledger.db.pragma('integrity_check', { simple: true })).toBe('ok');
  session.close();
  return count;
};

/** Records four batches with so many pages left, and looks afterwards that what was acknowledged is there, and only that. */
function recordIn(pages: number): string {
  ready();
  const before = acts();
  said = '';
  leave(pages);
  const session = openSession(file);
  const results = Array.from({ length: 4 }, (_, number) =>
    ask(session, 'batch.record', batchOf(`2026-03-1${number}`, [plainJar('a', { note: 'x'.repeat(9000) })])),
  );
  session.close();
  for (const result of results) if (!result.ok) isFull(result.error);
  expect(said).not.toMatch(/fault|Nothing was changed/);
  const closed = said === '';
  if (!closed) expect(said).toMatch(/Everything recorded is kept, but .+ since the disk is full/);
  const kept = results.filter(({ ok }) => ok).length;
  makeRoom();
  expect([pages, acts()]).toEqual([pages, before + kept]);
  sweep();
  return kept === 0 ? 'none'
    : kept < 4 ? 'some'
    : closed ? 'all'
    : 'all, not closed'; // prettier-ignore
}

describe.runIf(folder !== '')('on a disk with so little room that', () => {
  it('an act may not fit: it is kept where it was acknowledged, and only there', () => {
    const outcomes = ROOMS.map(recordIn);
    expect(outcomes[0]).toBe('none');
    expect(outcomes.at(-1)).toBe('all');
    expect(outcomes).toContain('some');
    // The least room in which all fits: the log took the last page, so the file itself can't grow when it is closed.
    let [least, most] = [0, 256];
    while (least < most) {
      const middle = Math.floor((least + most) / 2);
      if (recordIn(middle).startsWith('all')) most = middle;
      else least = middle + 1;
    }
    expect(recordIn(most)).toBe('all, not closed');
  });

  it('a new ledger may not fit: it is made whole or not at all', () => {
    const outcomes = new Set<boolean>();
    for (const pages of new Set([...FEW_ROOMS, ...FEWEST_ROOMS])) {
      for (const mode of ['create', 'open or begin', 'demo'] as const) {
        // The invented ledger is written in one go.
        if (mode === 'demo' && !FEWEST_ROOMS.includes(pages)) continue;
        leave(pages);
        const session = openSession(file, mode);
        const { trouble } = must(session, 'app.state', {});
        const result = ask(session, 'source.save', plainSource('Another Tin'));
        session.close();
        if (trouble) expect(trouble.sentence).toContain('The disk is full');
        if (!result.ok) isFull(result.error);
        outcomes.add(result.ok);
        makeRoom();
        if (mode === 'open or begin') expect(existsSync(file)).toBe(result.ok);
        if (existsSync(file)) expect(acts() > 0 || !result.ok).toBe(true);
        expect(readdirSync(folder).filter((name) => !/^ledger\.sqlite(-wal|-shm)?$/.test(name))).toEqual([]);
        sweep();
      }
    }
    expect([...outcomes].toSorted()).toEqual([false, true]);
  });

  it.each([
    'backup',
    'photograph',
    'draft',
    'newest backup',
    'save what can be read',
    'gone',
    'archive',
    'hand-over',
    'received',
  ] as const)('%s may not fit: it says so and leaves nothing half made', (what) => {
    const outcomes = new Set<boolean>();
    for (const pages of ['archive', 'hand-over', 'received'].includes(what) ? FEWEST_ROOMS : FEW_ROOMS) {
      ready();
      let session = openSession(file);
      const jar = must(session, 'family.get', {}).jars[0]?.id ?? '';
      if (what === 'newest backup') must(session, 'ledger.backup', {});
      if (what === 'newest backup' || what === 'save what can be read') {
        session.close();
        damage();
        session = openSession(file);
      }
      const before = readFileSync(file);
      const names = (): string[] =>
        readdirSync(folder, { recursive: true, encoding: 'utf8' })
          .filter((name) => !/^filler$|-(wal|shm|backups|photographs)$/.test(name))
          .toSorted();
      const namesBefore = names();
      leave(pages);
      const result =
          what === 'backup' ? ask(session, 'ledger.backup', {})
          : what === 'photograph' ? ask(session, 'photograph.add', { jar, bytes: picture(60_000), caption: null })
          : what === 'draft' ? ask(session, 'draft.save', { key: 'a', json: JSON.stringify('x'.repeat(90_000)) })
          : what === 'gone' ? gone(session)
          : what === 'archive' ? ask(session, 'archive.write', { file: { path: join(folder, 'all.zip') } })
          : what === 'hand-over' ? ask(session, 'handOver.write', { jar, file: { path: join(folder, 'jar.zip') } })
          : what === 'received' ? ask(session, 'handOver.read', { file: { path: given() } })
          : ask(session, 'ledger.recover', { how: what }); // prettier-ignore
      session.close();
      outcomes.add(result.ok);
      if (!result.ok) {
        isFull(result.error);
        // A photograph whose record did not fit may stay: it lies under its hash and is taken up by the next try.
        if (what !== 'photograph') expect([pages, names()]).toEqual([pages, namesBefore]);
        if (what === 'newest backup' || what === 'save what can be read')
          expect(readFileSync(file).equals(before)).toBe(true);
      }
      expect(said).not.toMatch(/fault/);
      makeRoom();
      if (what === 'photograph' && result.ok) expect(acts()).toBe(5);
      sweep();
    }
    expect([...outcomes].toSorted()).toEqual(what === 'gone' ? [true] : [false, true]);
  });

  it('the folder of photographs or of backups can’t even be made: it says so', () => {
    ready();
    const session = openSession(file);
    const jar = must(session, 'family.get', {}).jars[0]?.id ?? '';
    leave(0);
    for (const refused of [
      refusalOf(session, 'photograph.add', { jar, bytes: picture(100), caption: null }),
      refusalOf(session, 'ledger.backup', {}),
    ])
      isFull(refused);
    session.close();
  });
});

/** A jar with its ancestry that comes from another ledger, as a file on a disk with room. */
function handedOver(): string {
  const path = join(newFolder(), 'given.zip');
  const giver = newSession();
  const { jars } = smallFamily(giver);
  must(giver, 'handOver.write', { jar: jars[1] ?? '', file: { path } });
  return path;
}
let givenPath: string | null = null;
const given = (): string => (givenPath ??= handedOver());

/** Rubbish in the pages of the journal's trigger and some more: seen at once when it is opened. */
function damage(): void {
  const bytes = readFileSync(file);
  bytes.fill(0x5a, PAGE * 12, PAGE * 14);
  writeFileSync(file, bytes);
}

/** The ledger is deleted while it is open: its copy goes where there is room. */
function gone(session: Session): { ok: true } | { ok: false; error: Refusal } {
  rmSync(file);
  const refused = refusalOf(session, 'family.get', {});
  const copy = / is saved in (.+\.sqlite)\. /.exec(refused.sentence)?.[1];
  if (copy === undefined) return { ok: false, error: refused };
  const saved = openSession(copy);
  expect(must(saved, 'family.get', {}).jars.length).toBe(4);
  saved.close();
  rmSync(copy);
  return { ok: true };
}
