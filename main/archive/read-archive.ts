// Reads an archive of a whole ledger into an empty one. It may be anybody's file: what it is said to hold is bounded before
// it is unpacked, every line is held against its schema, and the ledger it makes against every rule there is, before
// anything is kept.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, rmSync, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import type { Parsed, Reply } from '../../core/contract';
import type { Job } from '../ledger/job';
import { readJpeg } from '../ledger/jpeg';
import type { Ledger } from '../ledger/ledger';
import { photographFolder } from '../ledger/worker-protocol';
import { Refused, refusedFor } from '../refusal';
import { keepFile } from '../ledger/writes/write-photographs';
import { fileSource } from '../files/file-source';
import { type Source, sourceOf } from '../files/zip';
import { loadLines } from './load-archive';
import { type OpenArchive, openArchive, Unreadable } from './open-archive';

/** Keeps an archive's photographs beside the ledger. @returns what to do where the rest fails: those that are new go again */
function keepPhotographs(archive: OpenArchive, ledger: Ledger, job: Job): { undo: () => void } {
  const folder = photographFolder(ledger.file);
  const made: string[] = [];
  const fresh = !existsSync(folder);
  const undo = (): void => {
    for (const file of made) rmSync(file, { force: true });
    if (fresh) rmSync(folder, { recursive: true, force: true });
  };
  try {
    if (archive.photographs.length > 0) mkdirSync(folder, { recursive: true });
    for (const [at, name] of archive.photographs.entries()) {
      job.step(at, archive.photographs.length, 'reading photographs');
      const bytes = archive.bytes(name);
      const own = basename(name);
      // Not shown before it was looked at: no photograph leaves the window with more in it than the picture.
      if (
        own !== `${createHash('sha256').update(bytes).digest('hex')}.jpg` ||
        readJpeg(bytes)?.carriesMore !== false
      )
        throw new Unreadable(`${name} in it is not a photograph of this program`);
      if (!existsSync(join(folder, own))) made.push(join(folder, own));
      keepFile(folder, own, bytes);
    }
  } catch (error) {
    undo();
    throw error;
  }
  return { undo };
}

/** @throws Refused 'no file there', 'archive unreadable' for what is no file */
function sourceAt(file: Parsed<'archive.read'>['file']): { source: Source; name: string; close: () => void } {
  if ('bytes' in file) return { source: sourceOf(file.bytes), name: file.name, close: () => undefined };
  const path = resolve(file.path);
  try {
    if (!statSync(path).isFile())
      throw new Refused('archive unreadable', { file: path, what: 'it is no file' });
    const source = fileSource(path);
    return { source, name: path, close: source.close };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT')
      throw new Refused('no file there', { file: path });
    throw refusedFor(error, path);
  }
}

/**
 * Reads an archive into an empty ledger, whole or not at all. Its id, its acts and the numbers of its records are the
 * archive's from then on.
 * @throws Refused 'ledger not empty', 'archive unreadable', 'archive newer', 'cancelled', and as the rule book says
 */
export function readArchive(
  ledger: Ledger,
  { file }: Parsed<'archive.read'>,
  job: Job,
): Reply<'archive.read'> {
  const { source, name, close } = sourceAt(file);
  try {
    const archive = openArchive(source, name);
    loadLines(ledger, archive, job, () => keepPhotographs(archive, ledger, job));
    const { rows } = ledger;
    return {
      jars: rows.count("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')"),
      records: rows.count('SELECT count(*) FROM record'),
      acts: rows.count('SELECT count(*) FROM act'),
      photographs: archive.photographs.length,
    };
  } catch (error) {
    if (error instanceof Unreadable)
      throw new Refused('archive unreadable', { file: name, what: error.message });
    throw error;
  } finally {
    close();
  }
}
