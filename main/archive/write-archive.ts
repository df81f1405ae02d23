// Writes a whole ledger as an archive (core/archive/archive-format.ts). It is made beside its place, read back and held against
// what was written, and only then takes its name: there is never a part of one.
import { createHash } from 'node:crypto';
import { closeSync, existsSync, openSync, readFileSync, rmSync, statSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';
import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  type Contents,
  CONTENTS_FILE,
  lineFile,
  photographFile,
} from '../../core/archive/archive-format';
import { ARCHIVE_README } from '../../core/archive/archive-read-me';
import type { Parsed, Reply } from '../../core/contract';
import { archiveSchema } from '../../core/schemas/json-schemas';
import type { Job } from '../ledger/job';
import type { Ledger } from '../ledger/ledger';
import { ownName, putNew } from '../ledger/place';
import { photographFolder } from '../ledger/worker-protocol';
import { Refused, refusedFor } from '../refusal';
import { chosenPath } from '../files/chosen-path';
import { fileSource } from '../files/file-source';
import { filesIn, unpackFile, ZipWriter } from '../files/zip';
import { countOfLines, linesOf, photographsOf } from './archive-lines';

/** A file of lines goes on in another one from here (bytes): none has to be held whole by whoever reads it. */
const MOST_OF_A_FILE = 8 * 1024 * 1024;
/** How often is told how far it is (lines). */
const EVERY = 500;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** An archive being written, and its table of contents. */
class Archive {
  readonly files: Contents['files'] = [];
  readonly #zip: ZipWriter;
  #of = '';
  #part = 0;
  #lines: string[] = [];
  #length = 0;

  constructor(write: (bytes: Uint8Array) => void) {
    this.#zip = new ZipWriter(write);
  }

  add(name: string, bytes: Uint8Array, how: 'packed' | 'stored' = 'packed'): void {
    this.#zip.add(bytesOf(name), bytes, how);
    this.files.push({ name, bytes: bytes.length, sha256: hashOf(bytes) });
  }

  line(of: string, line: object): void {
    if (of !== this.#of || this.#length >= MOST_OF_A_FILE) this.#next(of);
    const text = `${JSON.stringify(line)}\n`;
    this.#lines.push(text);
    this.#length += text.length;
  }

  /** Ends the file of lines at hand. */
  #next(of: string): void {
    if (this.#lines.length > 0) this.add(lineFile(this.#of, this.#part), bytesOf(this.#lines.join('')));
    this.#part = of === this.#of ? this.#part + 1 : 1;
    this.#of = of;
    this.#lines = [];
    this.#length = 0;
  }

  endLines(): void {
    this.#next('');
  }

  end(): void {
    const contents: Contents = { format: ARCHIVE_FORMAT, version: ARCHIVE_VERSION, files: this.files };
    this.#zip.add(bytesOf(CONTENTS_FILE), bytesOf(`${JSON.stringify(contents, null, 1)}\n`), 'packed');
    this.#zip.end();
  }
}

interface Held {
  readonly photographs: number;
  /** Photographs whose files are not beside the ledger any more, or not what they were. */
  readonly missing: number;
}

/** Everything that a ledger holds, into an archive. */
function fill(archive: Archive, ledger: Ledger, job: Job): Held {
  const rows = ledger.rows;
  archive.add('README.txt', bytesOf(ARCHIVE_README));
  archive.add('schema.json', bytesOf(`${JSON.stringify(archiveSchema(), null, 1)}\n`));
  const total = countOfLines(rows);
  let done = 0;
  for (const [of, line] of linesOf(rows)) {
    if (done++ % EVERY === 0) job.step(Math.min(done, total), total, 'writing records');
    archive.line(of, line);
  }
  archive.endLines();
  let missing = 0;
  const photographs = photographsOf(rows);
  for (const [at, sha] of photographs.entries()) {
    job.step(at, photographs.length, 'writing photographs');
    const file = join(photographFolder(ledger.file), `${sha}.jpg`);
    const bytes = existsSync(file) ? readFileSync(file) : null;
    if (bytes && hashOf(bytes) === sha) archive.add(photographFile(sha), bytes, 'stored');
    else missing += 1;
  }
  archive.end();
  return { photographs: photographs.length - missing, missing };
}

/** Reads an archive back. @throws Error where a file of it is not what was written */
function readBack(file: string, contents: Contents['files'], job: Job): void {
  const source = fileSource(file);
  try {
    const packed = new Map(filesIn(source).map((one) => [new TextDecoder().decode(one.name), one]));
    for (const [at, { name, bytes, sha256 }] of contents.entries()) {
      job.step(at, contents.length, 'reading it back');
      const found = packed.get(name);
      if (!found || hashOf(unpackFile(source, found, bytes)) !== sha256)
        throw new Error(`${name} of an archive is not what was written`);
    }
  } finally {
    source.close();
  }
}

/** Writes to a file of its own name beside the place. @returns what it holds */
function writePart(part: string, ledger: Ledger, job: Job): Held {
  const handle = openSync(part, 'wx');
  const { db } = ledger;
  try {
    // One state from the first line to the last, whatever other programs record meanwhile.
    db.exec('BEGIN');
    const archive = new Archive((bytes) => {
      for (let at = 0; at < bytes.length;) at += writeSync(handle, bytes, at);
    });
    const held = fill(archive, ledger, job);
    readBack(part, archive.files, job);
    return held;
  } finally {
    if (db.inTransaction) db.exec('COMMIT');
    closeSync(handle);
  }
}

/**
 * Writes the ledger as one archive where nothing lies yet.
 * @throws Refused 'file exists', 'cancelled', and for a place that can't be written to
 */
export function writeArchive(
  ledger: Ledger,
  input: Parsed<'archive.write'>,
  job: Job,
): Reply<'archive.write'> {
  const file = resolve(chosenPath(input.file, 'archive.write'));
  const part = ownName(file);
  try {
    if (existsSync(file)) throw new Refused('file exists', { file });
    const held = writePart(part, ledger, job);
    if (!putNew(part, file)) throw new Refused('file exists', { file });
    const { rows } = ledger;
    return {
      file,
      bytes: statSync(file).size,
      jars: rows.count("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')"),
      records: rows.count('SELECT count(*) FROM record'),
      acts: rows.count('SELECT count(*) FROM act'),
      ...held,
    };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw new Refused('no folder there', { file });
    throw refusedFor(error, file);
  } finally {
    rmSync(part, { force: true });
  }
}
