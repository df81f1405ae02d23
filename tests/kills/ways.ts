// What the program may be at when it is killed, and what must be true of the files afterwards, however far it got.
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkLedgerFile } from '../../main/check-ledger';
import { backupFolder } from '../../main/ledger/worker-protocol';
import { ask, must, newFile, newFolder, openSession, smallFamily } from '../ledger/ledger-files';
import { recordingEntry } from '../ledger/recording-entry';

export interface Way {
  /** Files in a folder of their own that every run begins with a copy of. */
  readonly prepare: (folder: string) => void;
  /** What the program is asked, with what it reads from standard input. */
  readonly asked: (folder: string) => { readonly args: readonly string[]; readonly input?: string };
  /** What is wrong once it was killed; nothing, where all is as it must be. @param said its whole lines */
  readonly wrong: (folder: string, said: readonly string[]) => string[];
}

const ROWS = 400;
const FAMILY = 4;
const LINES = 25;

const ledgerIn = (folder: string): string => join(folder, 'ledger.sqlite');
const backupsIn = (folder: string): string[] => {
  const lie = backupFolder(ledgerIn(folder));
  if (!existsSync(lie)) return [];
  return readdirSync(lie).filter((name) => name.endsWith('.sqlite')).map((name) => join(lie, name)); // prettier-ignore
};
const call = (folder: string, name: string, input: unknown): readonly string[] => [
  'call', name, JSON.stringify(input), '--ledger', ledgerIn(folder),
]; // prettier-ignore
const acknowledged = (said: readonly string[]): boolean => said.some((line) => line.startsWith('{"ok":true'));

function makeFamily(file: string): string {
  const session = openSession(file, 'create');
  const { jars } = smallFamily(session);
  session.close();
  return jars[1];
}

/** What is wrong with a ledger itself, and whether it holds one of so many jars. */
function wrongWith(file: string, jars: readonly number[]): string[] {
  const session = openSession(file);
  const trouble = session.trouble?.refusal.code;
  if (trouble !== undefined) return [`the ledger can’t be opened: ${trouble}`];
  const there = must(session, 'family.get', {}).jars.length;
  session.close();
  const { findings } = checkLedgerFile(file);
  return [
    ...(jars.includes(there) ? [] : [`${there} jars are there, and not ${jars.join(' or ')}`]),
    ...findings.map((found) => JSON.stringify(found)),
  ];
}

/** Whether what lies under a name is whole: it can be read into a new ledger. */
function wrongFile(name: 'archive.read' | 'handOver.read', path: string, must: boolean): string[] {
  if (!existsSync(path)) return must ? ['it was said to be written, and is not there'] : [];
  const session = openSession(newFile(), 'create');
  const read = ask(session, name, { file: { path } });
  session.close();
  return read.ok ? [] : [`what was written can’t be read: ${read.error.code}`];
}

const family = (folder: string): void => void makeFamily(ledgerIn(folder));
const oneOf = (said: readonly string[], before: number, after: number): number[] =>
  acknowledged(said) ? [after] : [before, after];
const spoil = (file: string): void => {
  const bytes = readFileSync(file);
  bytes.fill(0x5a, 4096 * 12, 4096 * 14);
  writeFileSync(file, bytes);
};

export const WAYS: Readonly<Record<string, Way>> = {
  recording: {
    prepare: family,
    asked: (folder) => ({
      args: ['calls', '--ledger', ledgerIn(folder)],
      input: Array.from(
        { length: LINES },
        (_, at) => `${JSON.stringify({ name: 'batch.record', input: recordingEntry(at, null) })}\n`,
      ).join(''),
    }),
    wrong: (folder, said) => {
      const session = openSession(ledgerIn(folder));
      const acts = new Set(session.ledger.db.prepare('SELECT uid FROM act').pluck().all());
      session.close();
      const lost = said.filter(
        (line) => !acts.has((JSON.parse(line) as { value: { act: string } }).value.act),
      );
      const jars = Array.from({ length: LINES + 1 }, (_, more) => FAMILY + more);
      return [
        ...lost.map((line) => `lost: ${line}`),
        ...wrongWith(ledgerIn(folder), jars.slice(said.length)),
      ];
    },
  },
  'bringing in notes': {
    prepare: (folder) => {
      family(folder);
      const rows = Array.from({ length: ROWS }, (_, at) => {
        const day = new Date(Date.UTC(2024, 0, 1 + at)).toISOString().slice(0, 10);
        return `${day},a,Meadow Pot,8 capsules,36,firm`;
      });
      writeFileSync(join(folder, 'notes.csv'), ['Date,Jar,Seed,Amount,Hours,Set', ...rows, ''].join('\n'));
    },
    asked: (folder) => ({
      args: call(folder, 'notes.bringIn', { file: { path: join(folder, 'notes.csv') } }),
    }),
    wrong: (folder, said) => wrongWith(ledgerIn(folder), oneOf(said, FAMILY, FAMILY + ROWS)),
  },
  'backing up': {
    prepare: family,
    asked: (folder) => ({ args: call(folder, 'ledger.backup', {}) }),
    wrong: (folder, said) => {
      const copies = backupsIn(folder);
      return [
        ...(acknowledged(said) && copies.length === 0 ? ['no backup is there'] : []),
        ...copies.flatMap((name) => {
          const copy = newFile();
          copyFileSync(name, copy);
          return wrongWith(copy, [FAMILY]);
        }),
        ...wrongWith(ledgerIn(folder), [FAMILY]),
      ];
    },
  },
  'going back while in order': {
    prepare: (folder) => {
      family(folder);
      const session = openSession(ledgerIn(folder));
      must(session, 'ledger.backup', {});
      must(session, 'jar.lost', { madeOn: null, label: 'one more', note: null });
      session.close();
    },
    asked: (folder) => ({ args: call(folder, 'ledger.restore', { backup: backupsIn(folder)[0] }) }),
    wrong: (folder, said) => {
      const session = openSession(ledgerIn(folder));
      const more = must(session, 'family.get', {}).jars.length > FAMILY;
      const { backups } = must(session, 'ledger.backups', {});
      session.close();
      return [
        ...(more || backups.some(({ jars }) => jars > FAMILY) ? [] : ['what was there before is gone']),
        ...wrongWith(ledgerIn(folder), oneOf(said, FAMILY + 1, FAMILY)),
      ];
    },
  },
  'writing an archive': {
    prepare: family,
    asked: (folder) => ({ args: call(folder, 'archive.write', { file: { path: join(folder, 'all.zip') } }) }),
    wrong: (folder, said) => [
      ...wrongFile('archive.read', join(folder, 'all.zip'), acknowledged(said)),
      ...wrongWith(ledgerIn(folder), [FAMILY]),
    ],
  },
  'reading an archive': {
    prepare: (folder) => {
      const file = newFile();
      makeFamily(file);
      const session = openSession(file);
      must(session, 'archive.write', { file: { path: join(folder, 'all.zip') } });
      session.close();
    },
    asked: (folder) => ({ args: call(folder, 'archive.read', { file: { path: join(folder, 'all.zip') } }) }),
    wrong: (folder, said) =>
      existsSync(ledgerIn(folder))
        ? wrongWith(ledgerIn(folder), [FAMILY])
        : acknowledged(said)
          ? ['it was said to be read, and is not there']
          : [],
  },
  'handing over': {
    prepare: (folder) => writeFileSync(join(folder, 'jar.txt'), makeFamily(ledgerIn(folder))),
    asked: (folder) => ({
      args: call(folder, 'handOver.write', {
        jar: readFileSync(join(folder, 'jar.txt'), 'utf8'),
        file: { path: join(folder, 'jar.zip') },
      }),
    }),
    wrong: (folder, said) => [
      ...wrongFile('handOver.read', join(folder, 'jar.zip'), acknowledged(said)),
      ...wrongWith(ledgerIn(folder), [FAMILY]),
    ],
  },
  receiving: {
    prepare: (folder) => {
      family(folder);
      const giver = newFile();
      const jar = makeFamily(giver);
      const session = openSession(giver);
      must(session, 'handOver.write', { jar, file: { path: join(folder, 'jar.zip') } });
      session.close();
    },
    asked: (folder) => ({ args: call(folder, 'handOver.read', { file: { path: join(folder, 'jar.zip') } }) }),
    // The jar and the one that seeded it.
    wrong: (folder, said) => wrongWith(ledgerIn(folder), oneOf(said, FAMILY, FAMILY + 2)),
  },
  'going back to a backup': {
    prepare: (folder) => {
      family(folder);
      const session = openSession(ledgerIn(folder));
      must(session, 'ledger.backup', {});
      session.close();
      spoil(ledgerIn(folder));
    },
    asked: (folder) => ({ args: call(folder, 'ledger.recover', { how: 'newest backup' }) }),
    wrong: (folder, said) => {
      const session = openSession(ledgerIn(folder));
      const damaged = session.trouble?.refusal.code === 'damaged';
      // Not done yet: then it is done now.
      if (damaged) must(session, 'ledger.recover', { how: 'newest backup' });
      session.close();
      return [
        ...(damaged && acknowledged(said) ? ['it was said to be done, and is not'] : []),
        ...wrongWith(ledgerIn(folder), [FAMILY]),
        // What was damaged is kept beside it, whatever happens.
        ...(readdirSync(folder).some((name) => name.includes('-damaged-'))
          ? []
          : ['the damaged one is gone']),
      ];
    },
  },
};

/** A fresh folder with a way's files. */
export function copyOf(folder: string): string {
  const copy = newFolder();
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    const from = join(entry.parentPath, entry.name);
    const to = join(copy, from.slice(folder.length));
    if (entry.isDirectory()) mkdirSync(to, { recursive: true });
    else copyFileSync(from, to);
  }
  return copy;
}
